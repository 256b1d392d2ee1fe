//! From plan to screen and back. Plan axes are x east and y north in millimeters; the flip to screen's y down lives
//! here alone. Transforms are named destination first.

use hobnail_core::number;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::coordinates::LIMIT_MM;

use crate::input::ScreenPoint;

/// Nearest view: 1 mm of plan per this many pixels (a house door fills the screen beyond it).
const MOST_PX_PER_M: f64 = 80.0;
/// Farthest view: the whole legal plan of 200 km on a screen.
const LEAST_PX_PER_M: f64 = 0.004;

/// What part of the plan is on screen, and how large.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    center_x_m: f64,
    center_y_m: f64,
    px_per_m: f64,
    width_px: f64,
    height_px: f64,
}

/// Room kept free of the drawing when it is fitted: panels lie over it there.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Insets {
    /// Pixels from the left.
    pub left_px: f64,
    /// Pixels from the top.
    pub top_px: f64,
    /// Pixels from the right.
    pub right_px: f64,
    /// Pixels from the bottom.
    pub bottom_px: f64,
}

/// A rectangle of the plan, in millimeters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanBox {
    /// South-west corner.
    pub least: PlanPoint,
    /// North-east corner.
    pub most: PlanPoint,
}

impl PlanBox {
    /// The box about `points`; `None` when there are none.
    #[must_use]
    pub fn about(points: impl IntoIterator<Item = PlanPoint>) -> Option<Self> {
        points.into_iter().fold(None, |found: Option<Self>, point| {
            let Some(found) = found else {
                return Some(Self {
                    least: point,
                    most: point,
                });
            };
            Some(Self {
                least: PlanPoint::new(found.least.x_mm.min(point.x_mm), found.least.y_mm.min(point.y_mm)),
                most: PlanPoint::new(found.most.x_mm.max(point.x_mm), found.most.y_mm.max(point.y_mm)),
            })
        })
    }
}

impl Camera {
    /// A camera over the plan's origin for a screen of `width_px` by `height_px`, about one kilometer across.
    #[must_use]
    pub fn new(width_px: f64, height_px: f64) -> Self {
        let mut camera = Self {
            center_x_m: 0.0,
            center_y_m: 0.0,
            px_per_m: 1.0,
            width_px: 1.0,
            height_px: 1.0,
        };
        camera.resize(width_px, height_px);
        camera
    }

    /// Takes a new screen size, keeping the middle where it is.
    pub fn resize(&mut self, width_px: f64, height_px: f64) {
        self.width_px = width_px.max(1.0);
        self.height_px = height_px.max(1.0);
    }

    /// Screen width and height in pixels.
    #[must_use]
    pub const fn size_px(&self) -> (f64, f64) {
        (self.width_px, self.height_px)
    }

    /// Pixels per meter of plan.
    #[must_use]
    pub const fn px_per_m(&self) -> f64 {
        self.px_per_m
    }

    /// How much plan `px` pixels cover, in whole millimeters, at least one.
    #[must_use]
    pub fn mm_from_px(&self, px: f64) -> i64 {
        ((px / self.px_per_m * 1000.0).round() as i64).max(1)
    }

    /// Where a plan position in meters appears.
    #[must_use]
    pub fn screen_from_m(&self, (x_m, y_m): (f64, f64)) -> ScreenPoint {
        ScreenPoint::new(
            (x_m - self.center_x_m) * self.px_per_m + self.width_px / 2.0,
            (self.center_y_m - y_m) * self.px_per_m + self.height_px / 2.0,
        )
    }

    /// Where a plan point appears.
    #[must_use]
    pub fn screen_from_plan(&self, point: PlanPoint) -> ScreenPoint {
        self.screen_from_m(point.to_m())
    }

    /// What plan position lies under a screen point, in meters.
    #[must_use]
    pub fn m_from_screen(&self, at: ScreenPoint) -> (f64, f64) {
        (
            (at.x_px - self.width_px / 2.0) / self.px_per_m + self.center_x_m,
            self.center_y_m - (at.y_px - self.height_px / 2.0) / self.px_per_m,
        )
    }

    /// The plan point under a screen point, held within the legal plan.
    #[must_use]
    pub fn plan_from_screen(&self, at: ScreenPoint) -> PlanPoint {
        let (x_m, y_m) = self.m_from_screen(at);
        let limit_m = f64::from(LIMIT_MM) / 1000.0;
        let within = |m: f64| {
            if m.is_finite() {
                number::within(m, -limit_m, limit_m)
            } else {
                0.0
            }
        };
        PlanPoint::checked_from_m(within(x_m), within(y_m)).unwrap_or_default()
    }

    /// The six numbers of the transform from plan meters to screen pixels, in the order a canvas takes them.
    #[must_use]
    pub fn screen_from_m_matrix(&self) -> [f64; 6] {
        let origin = self.screen_from_m((0.0, 0.0));
        [self.px_per_m, 0.0, 0.0, -self.px_per_m, origin.x_px, origin.y_px]
    }

    /// Shifts the drawing by so many pixels to the right and down.
    pub fn pan(&mut self, right_px: f64, down_px: f64) {
        self.center_x_m -= right_px / self.px_per_m;
        self.center_y_m += down_px / self.px_per_m;
        self.hold_within_plan();
    }

    /// Makes the drawing `factor` times as large, keeping what lies under `at` where it is.
    pub fn zoom(&mut self, at: ScreenPoint, factor: f64) {
        if !(factor.is_finite() && factor > 0.0) {
            return;
        }
        let (x_m, y_m) = self.m_from_screen(at);
        self.px_per_m = (self.px_per_m * factor).clamp(LEAST_PX_PER_M, MOST_PX_PER_M);
        let after = self.screen_from_m((x_m, y_m));
        self.pan(at.x_px - after.x_px, at.y_px - after.y_px);
    }

    /// Shows all of `area` with a margin, clear of `insets`.
    pub fn fit(&mut self, area: PlanBox, insets: Insets) {
        const MARGIN: f64 = 1.08;
        const LEAST_EXTENT_M: f64 = 50.0;
        let ((west, south), (east, north)) = (area.least.to_m(), area.most.to_m());
        let free_width_px = (self.width_px - insets.left_px - insets.right_px).max(80.0);
        let free_height_px = (self.height_px - insets.top_px - insets.bottom_px).max(80.0);
        let across_m = (east - west).max(LEAST_EXTENT_M) * MARGIN;
        let up_m = (north - south).max(LEAST_EXTENT_M) * MARGIN;
        self.px_per_m = (free_width_px / across_m)
            .min(free_height_px / up_m)
            .clamp(LEAST_PX_PER_M, MOST_PX_PER_M);
        self.center_x_m = f64::midpoint(west, east);
        self.center_y_m = f64::midpoint(south, north);
        self.pan(
            (insets.left_px - insets.right_px) / 2.0,
            (insets.top_px - insets.bottom_px) / 2.0,
        );
    }

    /// Brings `area` into the middle of what is clear of `insets`, made smaller only where it would not fit.
    pub fn bring(&mut self, area: PlanBox, insets: Insets) {
        let before = self.px_per_m;
        self.fit(area, insets);
        let middle = ScreenPoint::new(
            (insets.left_px + self.width_px - insets.right_px) / 2.0,
            (insets.top_px + self.height_px - insets.bottom_px) / 2.0,
        );
        self.zoom(middle, (before / self.px_per_m).min(1.0));
    }

    /// The part of the plan on screen.
    #[must_use]
    pub fn visible(&self) -> PlanBox {
        PlanBox {
            least: self.plan_from_screen(ScreenPoint::new(0.0, self.height_px)),
            most: self.plan_from_screen(ScreenPoint::new(self.width_px, 0.0)),
        }
    }

    fn hold_within_plan(&mut self) {
        let limit_m = f64::from(LIMIT_MM) / 1000.0;
        self.center_x_m = self.center_x_m.clamp(-limit_m, limit_m);
        self.center_y_m = self.center_y_m.clamp(-limit_m, limit_m);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn north_is_up_and_the_origin_in_the_middle() {
        let camera = Camera::new(800.0, 600.0);
        assert_eq!(
            camera.screen_from_plan(PlanPoint::new(0, 0)),
            ScreenPoint::new(400.0, 300.0)
        );
        assert!(camera.screen_from_plan(PlanPoint::new(0, 5000)).y_px < 300.0);
        assert!(camera.screen_from_plan(PlanPoint::new(5000, 0)).x_px > 400.0);
    }

    #[test]
    fn what_is_brought_into_view_keeps_its_scale_where_it_fits() {
        let mut camera = Camera::new(800.0, 600.0);
        let insets = Insets {
            right_px: 200.0,
            ..Insets::default()
        };
        let area = |half_mm: i32| PlanBox {
            least: PlanPoint::new(1_000_000 - half_mm, -half_mm),
            most: PlanPoint::new(1_000_000 + half_mm, half_mm),
        };
        let before = camera.px_per_m();
        camera.bring(area(50_000), insets);
        assert!((camera.px_per_m() - before).abs() < 1e-9);
        let at = camera.screen_from_m((1000.0, 0.0));
        assert!(
            (at.x_px - 300.0).abs() < 1e-6 && (at.y_px - 300.0).abs() < 1e-6,
            "{at:?}"
        );
        camera.bring(area(5_000_000), insets);
        let east = camera.screen_from_m((6000.0, 0.0));
        assert!(camera.px_per_m() < before && east.x_px < 600.0, "{east:?}");
    }

    #[test]
    fn there_and_back_is_the_same_place() {
        let mut camera = Camera::new(1366.0, 768.0);
        camera.zoom(ScreenPoint::new(100.0, 700.0), 3.7);
        camera.pan(-241.5, 33.25);
        for point in [
            PlanPoint::new(123_456, -98_765),
            PlanPoint::new(-1, 1),
            PlanPoint::new(0, 0),
        ] {
            assert_eq!(camera.plan_from_screen(camera.screen_from_plan(point)), point);
        }
    }

    #[test]
    fn zooming_keeps_what_is_under_the_pointer() {
        let mut camera = Camera::new(1000.0, 500.0);
        let at = ScreenPoint::new(740.0, 90.0);
        let before = camera.plan_from_screen(at);
        camera.zoom(at, 2.5);
        assert_eq!(camera.plan_from_screen(at), before);
        camera.zoom(at, 1e9);
        let (x_m, y_m) = camera.m_from_screen(at);
        let (before_x_m, before_y_m) = before.to_m();
        assert!((x_m - before_x_m).abs() < 0.01 && (y_m - before_y_m).abs() < 0.01);
    }

    #[test]
    fn the_matrix_says_the_same_as_the_points() {
        let mut camera = Camera::new(900.0, 700.0);
        camera.pan(31.0, -7.0);
        let [a, b, c, d, e, f] = camera.screen_from_m_matrix();
        let (x, y) = (37.0, -12.5);
        let by_matrix = ScreenPoint::new(a * x + c * y + e, b * x + d * y + f);
        assert!(by_matrix.distance_px(camera.screen_from_m((x, y))) < 1e-9);
    }

    #[test]
    fn a_fitted_box_lies_clear_of_the_panels() {
        let mut camera = Camera::new(1366.0, 768.0);
        let insets = Insets {
            left_px: 90.0,
            top_px: 56.0,
            right_px: 330.0,
            bottom_px: 40.0,
        };
        let area = PlanBox {
            least: PlanPoint::new(-400_000, -100_000),
            most: PlanPoint::new(500_000, 600_000),
        };
        camera.fit(area, insets);
        let (low, high) = (camera.screen_from_plan(area.least), camera.screen_from_plan(area.most));
        assert!(low.x_px >= 90.0 && high.x_px <= 1366.0 - 330.0);
        assert!(high.y_px >= 56.0 && low.y_px <= 768.0 - 40.0);
    }

    #[test]
    fn wild_numbers_do_no_harm() {
        let mut camera = Camera::new(0.0, -3.0);
        camera.zoom(ScreenPoint::new(1.0, 1.0), f64::NAN);
        camera.zoom(ScreenPoint::new(1.0, 1.0), 0.0);
        camera.pan(1e300, -1e300);
        assert!(camera.plan_from_screen(ScreenPoint::new(0.0, 0.0)).is_legal());
    }
}
