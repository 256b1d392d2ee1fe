//! What of the plan is in view, and what is laid over it: the map, and the places that panels speak of.

use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::{Mark, MarkId, PlanPoint};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::{App, maps, places};
use crate::canvas::camera::{Camera, Insets, PlanBox};
use crate::input::ScreenPoint;
use crate::tools::{Selection, shape};

impl App {
    /// What part of the plan is in view.
    #[must_use]
    pub const fn camera(&self) -> &Camera {
        &self.camera
    }

    /// Takes the size of the drawing on screen, and where panels lie over it. Where all was shown all is shown still; a
    /// view that somebody moved keeps its middle.
    pub fn resize(&mut self, width_px: f64, height_px: f64, insets: Insets) {
        let shows_all = self.fitted == Some(self.camera);
        self.camera.resize(width_px, height_px);
        self.insets = insets;
        self.changes.view = true;
        if shows_all && !self.tool.is_busy() {
            self.fit();
        }
    }

    /// Shows all that is drawn.
    pub fn fit(&mut self) {
        if let Some(area) = extent(&self.study) {
            self.camera.fit(area, self.insets);
            self.fitted = Some(self.camera);
        }
        self.changes.view = true;
    }

    /// Shows all of these points.
    pub fn fit_points(&mut self, points: impl Iterator<Item = PlanPoint>) {
        if let Some(area) = PlanBox::about(points) {
            self.camera.fit(area, self.insets);
        }
        self.changes.view = true;
    }

    /// Makes the drawing so many times as large, about the middle of the screen.
    pub fn zoom(&mut self, factor: f64) {
        let (width_px, height_px) = self.camera.size_px();
        let middle = ScreenPoint::new(width_px / 2.0, height_px / 2.0);
        self.camera.zoom(middle, factor);
        self.changes.view = true;
    }

    /// How far to the right and down the view is to move so that a card over the drawing, given by its left, top, right and
    /// bottom, does not cover the middle of what is selected, or a street that is cut; not at all where it does not, or
    /// while something is drawn.
    #[must_use]
    pub fn covered_px(&self, [left_px, top_px, right_px, bottom_px]: [f64; 4]) -> (f64, f64) {
        const MARGIN_PX: f64 = 24.0;
        const ACROSS: f64 = 0.6;
        const STAYS: (f64, f64) = (0.0, 0.0);
        let shown = self.cut_street().or(self.selection.map(Selection::mark));
        let points = shown.filter(|_| !self.tool.is_busy()).map(|id| self.points_of(id));
        let Some(area) = PlanBox::about(points.unwrap_or_default()) else {
            return STAYS;
        };
        let width_px = self.camera.size_px().0;
        let least = self.camera.screen_from_plan(area.least);
        let most = self.camera.screen_from_plan(area.most);
        let x_px = f64::midpoint(least.x_px, most.x_px);
        let y_px = f64::midpoint(least.y_px, most.y_px);
        // A card across the foot, such as the cut's: above it all of a street that fits, else where it is cut.
        if right_px - left_px > width_px * ACROSS {
            let free_px = top_px - self.insets.top_px;
            let is_high = least.y_px - most.y_px > free_px - MARGIN_PX;
            let cut = self.cut_line().and_then(|place| {
                let &[left, right] = place.lines.first()?.as_slice() else {
                    return None;
                };
                Some(f64::midpoint(
                    self.camera.screen_from_m(left).y_px,
                    self.camera.screen_from_m(right).y_px,
                ))
            });
            let middle_px = cut.filter(|_| is_high).unwrap_or(y_px);
            let is_covered = if is_high { middle_px } else { least.y_px } > top_px;
            let down_px = self.insets.top_px + free_px / 2.0 - middle_px;
            return if is_covered { (0.0, down_px) } else { STAYS };
        }
        if y_px < top_px || y_px > bottom_px {
            return STAYS;
        }
        // Between the card and the side that it stands at is only the rail. All of what is selected moves beside the card,
        // or no more than its middle into the middle of what is free: a road may go on far beyond the screen.
        if left_px + right_px > width_px {
            if x_px > left_px {
                let middle_px = f64::midpoint(self.insets.left_px, left_px);
                return ((left_px - MARGIN_PX - most.x_px).max(middle_px - x_px), 0.0);
            }
        } else if x_px < right_px {
            let middle_px = f64::midpoint(right_px, width_px - self.insets.right_px);
            return ((right_px + MARGIN_PX - least.x_px).min(middle_px - x_px), 0.0);
        }
        STAYS
    }

    /// Points about a mark: of a use those about its land.
    pub(super) fn points_of(&self, id: MarkId) -> Vec<PlanPoint> {
        let (document, fabric) = (self.study.document(), self.study.fabric());
        match document.mark(self.study.alternative(), id) {
            Some(Mark::Street(street)) => flatten(&street.line),
            Some(Mark::Use(_)) => {
                let face = fabric.face_of_mark.get(&id).and_then(|face| fabric.face(*face));
                face.and_then(|face| face.outline.first()).cloned().unwrap_or_default()
            }
            mark => mark.and_then(shape::of).map(shape::into_points).unwrap_or_default(),
        }
    }

    /// Moves the view so far to the right and down, unless something is drawn.
    pub fn move_view(&mut self, (right_px, down_px): (f64, f64)) {
        if !self.tool.is_busy() {
            self.camera.pan(right_px, down_px);
            self.changes.view = true;
        }
    }

    /// What a panel speaks of, shown on the drawing.
    #[must_use]
    pub const fn pointed(&self) -> Option<&places::Place> {
        self.pointed.as_ref()
    }

    /// Shows on the drawing what a panel speaks of; without it what a basis that stands open is of, or nothing
    /// any more.
    pub fn point_out(&mut self, place: Option<places::Place>) {
        self.pointed_figure = None;
        match place {
            None => self.find_pointed(),
            place => self.show_pointed(place),
        }
    }

    /// Shows on the drawing what a figure counted that a row speaks of, or no longer.
    pub fn point_out_figure(&mut self, figure: Option<String>) {
        if figure != self.pointed_figure {
            self.pointed_figure = figure;
            self.find_pointed();
        }
    }

    /// Finds anew what is shown of a figure; the row that is spoken of comes first, then the basis opened last. Land is
    /// shown of a row alone: for as long as a basis stands open the plan would be hard to read beneath it.
    pub(super) fn find_pointed(&mut self) {
        let spoken_of = self.pointed_figure.as_ref();
        let place = spoken_of.and_then(|figure| places::of_figure(&self.study, figure));
        let mut opened = self.opened_bases.iter().rev();
        let place = place.or_else(|| opened.find_map(|open| places::few_of_figure(&self.study, &open.figure)));
        self.show_pointed(place);
    }

    fn show_pointed(&mut self, place: Option<places::Place>) {
        if place != self.pointed {
            self.pointed = place;
            self.changes.view = true;
        }
    }

    /// Shows a place on the drawing, and brings it into the middle of what is seen where it is not in sight.
    pub fn go_to(&mut self, place: places::Place) {
        if let Some(area) = place.extent() {
            if !self.is_in_sight(area) {
                self.camera.bring(area, self.insets);
                self.changes.view = true;
            }
            self.say(say!("page-places-shown", count = place.count()));
        }
        self.show_pointed(Some(place));
    }

    /// Whether all of an area lies on what is seen of the drawing.
    fn is_in_sight(&self, area: PlanBox) -> bool {
        let (width_px, height_px) = self.camera.size_px();
        let Insets {
            left_px,
            right_px,
            top_px,
            bottom_px,
        } = self.insets;
        [area.least, area.most].into_iter().all(|corner| {
            let at = self.camera.screen_from_plan(corner);
            (left_px..=width_px - right_px).contains(&at.x_px) && (top_px..=height_px - bottom_px).contains(&at.y_px)
        })
    }

    /// Brings what a figure counted into sight.
    pub fn go_to_figure(&mut self, figure: &str) {
        if let Some(place) = places::of_figure(&self.study, figure) {
            self.go_to(place);
        }
    }

    /// What is laid over the drawing.
    #[must_use]
    pub const fn map(&self) -> maps::Map {
        self.map
    }

    /// What the signs of the map mean.
    #[must_use]
    pub fn legend(&self) -> maps::Legend {
        maps::legend(&self.study, &self.drawn, self.map)
    }

    /// Lays another map over the drawing.
    pub fn show_map(&mut self, map: maps::Map) {
        if map == self.map {
            return;
        }
        self.map = map;
        self.changes.map = true;
        self.say(self.legend().in_words());
    }
}

/// The part of the plan that holds something: the site and all streets; `None` on a blank sheet.
fn extent(study: &Study) -> Option<PlanBox> {
    let site = study.document().site.boundary.iter().copied();
    let streets = study
        .fabric()
        .lines
        .streets
        .iter()
        .flat_map(|street| street.points.iter().copied());
    if study.document().site.boundary.is_empty() {
        PlanBox::about(streets)
    } else {
        PlanBox::about(site)
    }
}

#[cfg(test)]
mod tests {
    use super::super::editor::Change;
    use super::super::editor::edits::SHOW_CUT;
    use super::super::editor::lines::Key;
    use super::super::tests::{app, click, draw};
    use super::*;
    use crate::tools::ToolKind;

    /// A street from south to north that is selected, and the west of it.
    fn with_street(x_m: f64) -> (App, (f64, f64)) {
        let mut app = app();
        draw(&mut app, &[(x_m, -50.0), (x_m, 50.0)]);
        app.choose_tool(ToolKind::Select);
        click(&mut app, x_m, 20.0);
        assert!(app.selection().is_some(), "it was clicked");
        (app, (x_m, 0.0))
    }

    #[test]
    fn what_a_card_covers_is_moved_beside_it() {
        #[track_caller]
        fn check(x_m: f64, card: [f64; 4], expected_px: f64) {
            let (mut app, middle) = with_street(x_m);
            app.move_view(app.covered_px(card));
            let x_px = app.camera().screen_from_m(middle).x_px;
            assert!((x_px - expected_px).abs() < 0.1, "{x_px}");
            assert_eq!(app.covered_px(card), (0.0, 0.0), "it is beside it now");
        }
        check(-150.0, [100.0, 60.0, 400.0, 700.0], 424.0);
        // A card on the right, as at a board with its tools there.
        check(150.0, [600.0, 60.0, 900.0, 700.0], 576.0);
    }

    #[test]
    fn of_a_road_that_goes_on_beyond_the_screen_the_middle_is_moved_beside_the_card() {
        let mut app = app();
        draw(&mut app, &[(-5_000.0, 0.0), (4_600.0, 0.0)]);
        app.choose_tool(ToolKind::Select);
        click(&mut app, -150.0, 0.0);
        let card = [100.0, 60.0, 400.0, 700.0];
        let moved = app.covered_px(card);
        app.move_view(moved);
        let middle_px = app.camera().screen_from_m((-200.0, 0.0)).x_px;
        let free_px = f64::midpoint(400.0, app.camera().size_px().0);
        assert!((middle_px - free_px).abs() < 1.0, "{middle_px} {moved:?}");
        assert_eq!(app.covered_px(card), (0.0, 0.0), "it is beside it now");
    }

    #[test]
    fn a_street_that_is_cut_is_moved_above_the_cut() {
        let (mut app, middle) = with_street(0.0);
        let (width_px, height_px) = app.camera().size_px();
        let card = [10.0, height_px * 0.4, width_px - 10.0, height_px];
        app.edit(Key::panel(SHOW_CUT), &Change::Pick(1));
        assert!(app.cut_street().is_some(), "it is cut");
        let moved = app.covered_px(card);
        app.move_view(moved);
        let y_px = app.camera().screen_from_m(middle).y_px;
        assert!((y_px - height_px * 0.2).abs() < 1.0, "{y_px} of {height_px}, {moved:?}");
        assert_eq!(app.covered_px(card), (0.0, 0.0), "it is above it now");
    }

    #[test]
    fn what_is_in_sight_stays_where_it_is() {
        let (mut app, _) = with_street(-150.0);
        for card in [
            // Farther up, not as far to the right.
            [100.0, 60.0, 400.0, 300.0],
            [100.0, 60.0, 120.0, 700.0],
        ] {
            assert_eq!(app.covered_px(card), (0.0, 0.0));
        }
        click(&mut app, 0.0, 0.0);
        assert!(app.selection().is_none());
        assert_eq!(app.covered_px([100.0, 60.0, 400.0, 700.0]), (0.0, 0.0));
    }

    #[test]
    fn the_view_stays_while_something_is_drawn() {
        let (mut app, middle) = with_street(-150.0);
        app.choose_tool(ToolKind::Street);
        click(&mut app, 0.0, 0.0);
        let before = app.camera().screen_from_m(middle);
        app.move_view((100.0, 50.0));
        assert_eq!(app.camera().screen_from_m(middle), before);
    }
}
