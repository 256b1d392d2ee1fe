//! What of the plan is in view, and what is laid over it: the map, and the places that panels speak of.

use hobnail_core::study::Study;

use super::{App, maps, places};
use crate::canvas::camera::{Camera, Insets, PlanBox};
use crate::input::ScreenPoint;

impl App {
    /// What part of the plan is in view.
    #[must_use]
    pub const fn camera(&self) -> &Camera {
        &self.camera
    }

    /// Takes the size of the drawing on screen, and where panels lie over it.
    pub fn resize(&mut self, width_px: f64, height_px: f64, insets: Insets) {
        self.camera.resize(width_px, height_px);
        self.insets = insets;
        self.changes.view = true;
    }

    /// Shows all that is drawn.
    pub fn fit(&mut self) {
        if let Some(area) = extent(&self.study) {
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

    /// What a panel speaks of, shown on the drawing.
    #[must_use]
    pub const fn pointed(&self) -> Option<&places::Place> {
        self.pointed.as_ref()
    }

    /// Shows on the drawing what a panel speaks of, or nothing any more.
    pub fn point_out(&mut self, place: Option<places::Place>) {
        if place != self.pointed {
            self.pointed = place;
            self.changes.view = true;
        }
    }

    /// Shows a place on the drawing and brings it into the middle of what is seen.
    pub fn go_to(&mut self, place: places::Place) {
        if let Some(middle) = place.middle() {
            let at = self.camera.screen_from_m(middle);
            let (width_px, height_px) = self.camera.size_px();
            let Insets {
                left_px,
                top_px,
                right_px,
                bottom_px,
            } = self.insets;
            let (x_px, y_px) = (
                (left_px + width_px - right_px) / 2.0,
                (top_px + height_px - bottom_px) / 2.0,
            );
            self.camera.pan(x_px - at.x_px, y_px - at.y_px);
            self.changes.view = true;
        }
        self.point_out(Some(place));
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
