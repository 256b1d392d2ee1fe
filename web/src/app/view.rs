//! What of the plan is in view, and what is laid over it: the map, and the places that panels speak of.

use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::{Mark, PlanPoint};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::{App, maps, places};
use crate::canvas::camera::{Camera, Insets, PlanBox};
use crate::input::ScreenPoint;
use crate::tools::shape;

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

    /// How far to the right the view is to move so that a card over the drawing, given by its left, top, right and bottom,
    /// no longer covers most of what is selected; none where it does not, or while something is drawn.
    #[must_use]
    pub fn covered_px(&self, [left_px, top_px, right_px, bottom_px]: [f64; 4]) -> f64 {
        const MARGIN_PX: f64 = 24.0;
        let study = &self.study;
        let selected = self.selection.filter(|_| !self.tool.is_busy());
        let mark = selected.and_then(|held| study.document().mark(study.alternative(), held.mark()));
        let points = match mark {
            Some(Mark::Street(street)) => flatten(&street.line),
            mark => mark.and_then(shape::of).map(shape::into_points).unwrap_or_default(),
        };
        let Some(area) = PlanBox::about(points) else { return 0.0 };
        let least = self.camera.screen_from_plan(area.least);
        let most = self.camera.screen_from_plan(area.most);
        let (width_px, height_px) = self.camera.size_px();
        let (west_px, east_px) = (least.x_px.max(0.0), most.x_px.min(width_px));
        let (north_px, south_px) = (most.y_px.max(0.0), least.y_px.min(height_px));
        let is_covered = |from_px: f64, to_px: f64, least_px: f64, most_px: f64| {
            2.0 * (most_px.min(to_px) - least_px.max(from_px)) >= most_px - least_px
        };
        // At the edge that the card stands at nothing is seen beside it.
        let is_left = left_px + right_px < width_px;
        let (from_px, to_px) = if is_left { (0.0, right_px) } else { (left_px, width_px) };
        if !is_covered(from_px, to_px, west_px, east_px) || !is_covered(top_px, bottom_px, north_px, south_px) {
            return 0.0;
        }
        if is_left {
            let room_px = width_px - self.insets.right_px - MARGIN_PX - most.x_px;
            (right_px + MARGIN_PX - least.x_px).min(room_px).max(0.0)
        } else {
            let room_px = self.insets.left_px + MARGIN_PX - least.x_px;
            (left_px - MARGIN_PX - most.x_px).max(room_px).min(0.0)
        }
    }

    /// Moves the view so far to the right, unless something is drawn.
    pub fn move_view(&mut self, right_px: f64) {
        if !self.tool.is_busy() {
            self.camera.pan(right_px, 0.0);
            self.changes.view = true;
        }
    }

    /// What a panel speaks of, shown on the drawing.
    #[must_use]
    pub const fn pointed(&self) -> Option<&places::Place> {
        self.pointed.as_ref()
    }

    /// Shows on the drawing what a panel speaks of; without it what the open basis is of, or nothing any more.
    pub fn point_out(&mut self, place: Option<places::Place>) {
        self.pointed_figures[0] = None;
        match place {
            None => self.find_pointed(),
            place => self.show_pointed(place),
        }
    }

    /// Shows on the drawing what a figure counted that a row speaks of, or no longer.
    pub fn point_out_figure(&mut self, figure: Option<String>) {
        if figure != self.pointed_figures[0] {
            self.pointed_figures[0] = figure;
            self.find_pointed();
        }
    }

    /// Keeps on the drawing what the figure counted whose basis stands open.
    pub fn open_basis(&mut self, figure: Option<String>) {
        self.pointed_figures[1] = figure;
        self.find_pointed();
    }

    /// Finds anew what is shown of a figure; the row that is spoken of comes before the open basis.
    pub(super) fn find_pointed(&mut self) {
        let figures = self.pointed_figures.iter().flatten();
        let place = figures
            .filter_map(|figure| places::of_figure(&self.study, figure))
            .next();
        self.show_pointed(place);
    }

    fn show_pointed(&mut self, place: Option<places::Place>) {
        if place != self.pointed {
            self.pointed = place;
            self.changes.view = true;
        }
    }

    /// Shows a place on the drawing and brings it into the middle of what is seen.
    pub fn go_to(&mut self, place: places::Place) {
        if let Some(area) = place.extent() {
            self.camera.bring(area, self.insets);
            self.changes.view = true;
            self.say(say!("page-places-shown", count = place.count()));
        }
        self.show_pointed(Some(place));
    }

    /// Brings what a figure counted into the middle of what is seen.
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
