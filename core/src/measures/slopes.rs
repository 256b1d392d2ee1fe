//! How steep the ground is, by Horn's weights on the plan's heights, and in which class of a published text.
//!
//! For the nine heights a b c / d e f / g h i, row a at the north,
//! dz/dx = ((c + 2f + i) − (a + 2d + g)) / (8 · spacing) and dz/dy = ((a + 2b + c) − (g + 2h + i)) / (8 · spacing);
//! the slope is √(dz/dx² + dz/dy²), rise over run (B. K. P. Horn, "Hill shading and the reflectance map", *Proceedings
//! of the IEEE* 69, 1981). Samples at the edge, without eight neighbors, have none. Slopes fall as the spacing grows,
//! whatever the ground. A planning grid is no survey: steep and unstable ground, drainage and grading are for licensed
//! practice.

use crate::plan::document::Topography;
use crate::plan::inside::goes_around;
use crate::plan::{Document, PlanPoint};

/// Settings of where classes of slope end, in percent, from the flattest.
pub const BORDERS: [&str; 4] = [
    "ground.slope_border_1",
    "ground.slope_border_2",
    "ground.slope_border_3",
    "ground.slope_border_4",
];

/// Where classes of slope end unless a plan sets it, in thousandths of a percent.
///
/// Source: the slope zones of a city code, chapter 17.52 (Ord. 1000, 2022; ecode360 page 43293071; read, the fifth zone
/// from 30 % is inferred): 5 % or less, 5 to 7.99, 8 to 14.9, 15 to 29.9, 30 and over. It leaves exactly 5 % in two zones;
/// here a slope on a border is in the steeper class.
pub const SHIPPED: [i32; 4] = [5_000, 8_000, 15_000, 30_000];

/// The steepest border that is taken, in thousandths of a percent.
pub const STEEPEST: i32 = 200_000;

/// How many classes there are.
pub const CLASSES: usize = SHIPPED.len() + 1;

/// Slopes in thousandths of a percent in a percent.
pub const THOUSANDTHS: i32 = 1_000;

/// Where classes of slope end in a plan, in thousandths of a percent, from the flattest: what was set, or what is
/// shipped. A file may hold them in any order: one that is not steeper than the one before is not taken.
#[must_use]
pub fn borders(document: &Document) -> [i32; 4] {
    let (mut borders, mut before) = (SHIPPED, 0);
    for (border, id) in borders.iter_mut().zip(&BORDERS) {
        let set = document
            .settings
            .chosen
            .get(*id)
            .map_or(0, |percent| thousandths(*percent));
        *border = if before < set && set <= STEEPEST {
            set
        } else {
            before.max(*border)
        };
        before = *border;
    }
    borders
}

/// A slope in percent in thousandths of a percent; 0 where it is no number.
fn thousandths(percent: f64) -> i32 {
    (percent * f64::from(THOUSANDTHS)).round() as i32
}

/// Slopes of the samples that have eight neighbors.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Slopes {
    /// Samples of a row: two less than the heights have.
    pub columns: usize,
    /// Slopes in thousandths of a percent, rows from south to north.
    pub values: Vec<i32>,
}

impl Slopes {
    /// The slopes of a plan's heights; none where these are fewer than three rows of three. Linear in the samples.
    #[must_use]
    pub fn of(topography: &Topography) -> Self {
        let columns = topography.columns as usize;
        let rows = topography.heights_mm.len().checked_div(columns).unwrap_or_default();
        if columns < 3 || rows < 3 || topography.spacing_mm == 0 {
            return Self::default();
        }
        let run_mm = 8.0 * f64::from(topography.spacing_mm);
        let mut values = Vec::with_capacity((columns - 2) * (rows - 2));
        for row in 1..rows - 1 {
            for column in 1..columns - 1 {
                let at = |over: usize, up: usize| {
                    // Around an inner sample there is one on each side.
                    i64::from(topography.heights_mm[(row + up - 1) * columns + column + over - 1])
                };
                let east = (at(2, 0) + 2 * at(2, 1) + at(2, 2)) - (at(0, 0) + 2 * at(0, 1) + at(0, 2));
                let north = (at(0, 2) + 2 * at(1, 2) + at(2, 2)) - (at(0, 0) + 2 * at(1, 0) + at(2, 0));
                let (east, north) = (east as f64 / run_mm, north as f64 / run_mm);
                let slope = (east * east + north * north).sqrt() * 100.0 * f64::from(THOUSANDTHS);
                values.push(slope.round() as i32);
            }
        }
        Self {
            columns: columns - 2,
            values,
        }
    }

    /// Land of each class between these borders in square meters, from the flattest: that of the samples inside the
    /// site, or of all where no site is drawn. Linear in the samples, times the corners of the site.
    #[must_use]
    pub fn class_areas_m2(&self, topography: &Topography, site: &[PlanPoint], borders: [i32; 4]) -> [f64; CLASSES] {
        let spacing_m = f64::from(topography.spacing_mm) / 1000.0;
        let mut areas_m2 = [0.0; CLASSES];
        for (place, slope) in self.values.iter().enumerate() {
            let from = topography.south_west;
            let along = |place: usize| (place as i32 + 1).saturating_mul(topography.spacing_mm.cast_signed());
            let at = PlanPoint::new(
                from.x_mm.saturating_add(along(place % self.columns)),
                from.y_mm.saturating_add(along(place / self.columns)),
            );
            if site.len() < 3 || goes_around(site, at) {
                areas_m2[class_of(*slope, borders)] += spacing_m * spacing_m;
            }
        }
        areas_m2
    }
}

/// The class of a slope between borders, all in thousandths of a percent, from 0; a slope on a border is in the steeper
/// class.
#[must_use]
pub fn class_of(slope: i32, borders: [i32; 4]) -> usize {
    let passed = borders.iter().filter(|border| slope >= **border);
    passed.count()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ground(columns: u32, spacing_mm: u32, heights_mm: &[i32]) -> Topography {
        Topography {
            south_west: PlanPoint::new(0, 0),
            spacing_mm,
            columns,
            heights_mm: heights_mm.to_vec(),
            source: "made up".to_owned(),
        }
    }

    /// Case F-01 of the collected check cases: the window 50 45 50 / 30 30 30 / 8 10 10 on cells of 5 has dz/dx 0.05 and
    /// dz/dy −3.8, so 380.033 % (GIS help "How Slope works", from memory; printed there as 3.80032).
    #[test]
    fn a_window_has_the_slope_printed_for_it() {
        // Rows from south to north.
        let heights = [8, 10, 10, 30, 30, 30, 50, 45, 50].map(|height| height * 1_000);
        let found = Slopes::of(&ground(3, 5_000, &heights));
        assert_eq!((found.columns, found.values), (1, vec![380_033]));
    }

    /// Case F-02, derived: the plane 0.06 x + 0.08 y rises 10 % everywhere inside, whatever the spacing.
    #[test]
    fn a_plane_is_as_steep_everywhere() {
        for spacing_mm in [1_000, 7_500, 30_000] {
            let heights: Vec<i32> = (0..30)
                .map(|at| (at % 6) * spacing_mm * 6 / 100 + (at / 6) * spacing_mm * 8 / 100)
                .collect();
            let found = Slopes::of(&ground(6, spacing_mm.cast_unsigned(), &heights));
            assert_eq!((found.columns, found.values.len()), (4, 12));
            assert!(found.values.iter().all(|slope| *slope == 10_000), "{found:?}");
        }
    }

    #[test]
    fn a_slope_on_a_border_is_in_the_steeper_class() {
        let classes = [0, 4_999, 5_000, 7_990, 8_000, 14_900, 15_000, 29_900, 30_000, 900_000]
            .map(|slope| class_of(slope, SHIPPED));
        assert_eq!(classes, [0, 0, 1, 1, 2, 2, 3, 3, 4, 4]);
    }

    /// Case F-03: soil groups of Iowa, 0-2 A, 2-5 B, 5-9 C, 9-14 D, above that E+, the border in the steeper one (*Soil
    /// Judging in Iowa*, "Slope", read): 2.0, 5.0, 8.9 and 14 % are B, C, C and E+.
    #[test]
    fn soil_groups_are_those_of_the_text() {
        let group = |slope| class_of(slope, [2_000, 5_000, 9_000, 14_000]);
        assert_eq!([2_000, 5_000, 8_900, 14_000].map(group), [1, 2, 2, 4]);
    }

    #[test]
    fn land_of_classes_sums_to_the_land_with_slopes_or_to_the_site() {
        let heights: Vec<i32> = (0..3600)
            .map(|at| (at % 60) * (at % 60) * 40 + (at / 60) * 300)
            .collect();
        let held = ground(60, 10_000, &heights);
        let slopes = Slopes::of(&held);
        let whole = slopes.class_areas_m2(&held, &[], SHIPPED);
        assert!((whole.iter().sum::<f64>() - 58.0 * 58.0 * 100.0).abs() < 1e-6);
        assert!(whole.iter().all(|area| *area > 0.0), "{whole:?}");
        let corner = |x: i32, y: i32| PlanPoint::new(x * 1_000, y * 1_000);
        let site = [corner(95, 95), corner(305, 95), corner(305, 205), corner(95, 205)];
        let inside = slopes.class_areas_m2(&held, &site, SHIPPED);
        assert!((inside.iter().sum::<f64>() - 21.0 * 11.0 * 100.0).abs() < 1e-6);
    }

    #[test]
    fn a_plan_sets_its_own_borders() {
        let origin = crate::plan::projection::GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        let mut document = Document::new("a plan", origin);
        assert_eq!(borders(&document), SHIPPED);
        let chosen = &mut document.settings.chosen;
        for (id, percent) in BORDERS.into_iter().zip([10.0, 12.5, -3.0, f64::NAN]) {
            chosen.insert(id.to_owned(), percent);
        }
        assert_eq!(
            borders(&document),
            [10_000, 12_500, 15_000, 30_000],
            "what is no slope is not taken"
        );
        let classes = [9_999, 10_000, 12_499, 12_500, 30_000].map(|slope| class_of(slope, borders(&document)));
        assert_eq!(classes, [0, 1, 1, 2, 4]);
        for (place, percent) in [(0, 40.0), (1, 12.5), (3, 1e9)] {
            document.settings.chosen.insert(BORDERS[place].to_owned(), percent);
        }
        assert_eq!(borders(&document), [40_000; 4], "they never fall");
    }

    #[test]
    fn too_few_heights_have_no_slope() {
        assert_eq!(Slopes::of(&ground(2, 10_000, &[0; 20])), Slopes::default());
        assert_eq!(Slopes::of(&ground(0, 10_000, &[0; 20])), Slopes::default());
        assert_eq!(Slopes::of(&ground(3, 0, &[0; 9])), Slopes::default());
    }
}
