//! How a street rises and falls: heights along it on pieces of at most 20 m, the steepest of them, and its low points.
//!
//! The ground's heights as they are: a built street is cut and filled. Planning level; the local code and a licensed
//! engineer decide what grade a street may have.

use super::walk_network::ground::Ground;
use crate::network::pace::LONGEST_PIECE_M;
use crate::number;
use crate::plan::Document;

/// The setting of the steepest a fire apparatus access road may be, in percent.
pub const FIRE_ACCESS: &str = "streets.steepest_fire_access";

/// The same where nothing is set: 10 %, unless the fire chief approves more. Town codes differ.
///
/// Source: International Fire Code, appendix D, binding only where it is adopted (read, in copies of it).
pub const FIRE_ACCESS_PERCENT: f64 = 10.0;

/// The steepest a walk may be without being a ramp, in percent; along a street it may follow the street's own grade.
///
/// Source: ICC A117.1, 403.3, 1 in 20 (read).
pub const WALK_PERCENT: f64 = 5.0;

/// The steepest a ramp may be, in percent.
///
/// Source: 2010 ADA Standards, 405.2, 1 in 12 (read).
pub const RAMP_PERCENT: f64 = 100.0 / 12.0;

/// What rises less than this on either side is no low point: less than grids of heights tell. Common practice, no source.
pub const LEAST_SAG_M: f64 = 0.1;

/// The steepest fire access of a plan, in percent: what was set, or the default.
#[must_use]
pub fn fire_access_percent(document: &Document) -> f64 {
    let set = document.settings.chosen.get(FIRE_ACCESS).copied();
    set.filter(|percent| percent.is_finite() && *percent > 0.0)
        .unwrap_or(FIRE_ACCESS_PERCENT)
}

/// Heights along a line, from its start.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Profile {
    /// How far along, in meters, and how high: the ends of equal pieces of at most 20 m.
    pub points: Vec<(f64, f64)>,
    /// Where each stands, in meters.
    pub places: Vec<(f64, f64)>,
}

impl Profile {
    /// The heights along a line in meters; no points for a line without length. Linear in pieces and corners.
    #[must_use]
    pub fn of(ground: &Ground<'_>, line: &[(f64, f64)]) -> Self {
        let runs = || line.iter().zip(line.iter().skip(1));
        let length_of = |(from, to): (&(f64, f64), &(f64, f64))| number::length(to.0 - from.0, to.1 - from.1);
        let length_m: f64 = runs().map(length_of).sum();
        let mut profile = Self::default();
        if length_m <= 0.0 || !length_m.is_finite() {
            return profile;
        }
        let pieces = (length_m / LONGEST_PIECE_M).ceil();
        let (mut walked_m, mut piece) = (0.0, 0.0);
        for (from, to) in runs() {
            let run_m = length_of((from, to));
            while piece < pieces && run_m > 0.0 && length_m * piece / pieces <= walked_m + run_m {
                let along_m = length_m * piece / pieces;
                let share = (along_m - walked_m) / run_m;
                let at = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
                profile.add(ground, along_m, at);
                piece += 1.0;
            }
            walked_m += run_m;
        }
        if let Some(end) = line.last() {
            profile.add(ground, length_m, *end);
        }
        profile
    }

    fn add(&mut self, ground: &Ground<'_>, along_m: f64, at: (f64, f64)) {
        self.points.push((along_m, ground.height_m(at)));
        self.places.push(at);
    }

    /// Grades of the pieces in percent, uphill positive along the line.
    pub fn grades_percent(&self) -> impl Iterator<Item = f64> {
        let ends = self.points.iter().zip(self.points.iter().skip(1));
        ends.map(|(from, to)| (to.1 - from.1) / (to.0 - from.0) * 100.0)
    }

    /// The steepest piece's grade in percent either way; 0 without pieces.
    #[must_use]
    pub fn steepest_percent(&self) -> f64 {
        let steeper = |most: f64, grade: f64| if grade.abs() > most.abs() { grade } else { most };
        self.grades_percent().fold(0.0, steeper)
    }

    /// Length of the pieces that are steeper than a limit, in meters.
    #[must_use]
    pub fn steeper_m(&self, percent: f64) -> f64 {
        let ends = self.points.iter().zip(self.points.iter().skip(1));
        let steep = ends
            .zip(self.grades_percent())
            .filter(|(_, grade)| is_steeper(*grade, percent));
        steep.map(|((from, to), _)| to.0 - from.0).sum()
    }

    /// Low points within the line, by their places among the points: where water would stand without a way off. On
    /// either side the ground rises by [`LEAST_SAG_M`] or more before it falls lower.
    #[must_use]
    pub fn sags(&self) -> Vec<usize> {
        let mut sags = Vec::new();
        // Not in front of the first fall.
        let mut low: Option<(usize, f64)> = None;
        let mut high_m = f64::NEG_INFINITY;
        for (place, (_, height_m)) in self.points.iter().enumerate() {
            match low {
                None if high_m - height_m >= LEAST_SAG_M => low = Some((place, *height_m)),
                None => high_m = high_m.max(*height_m),
                Some((_, low_m)) if *height_m < low_m => low = Some((place, *height_m)),
                Some((at, low_m)) if height_m - low_m >= LEAST_SAG_M => {
                    sags.push(at);
                    low = None;
                    high_m = *height_m;
                }
                Some(_) => {}
            }
        }
        sags
    }
}

/// Whether a grade either way is steeper than a limit; what is so to within a millionth is at the limit.
#[must_use]
pub fn is_steeper(grade_percent: f64, limit_percent: f64) -> bool {
    grade_percent.abs() > limit_percent + 1e-6
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::PlanPoint;
    use crate::plan::document::Topography;

    fn ground(columns: u32, heights_mm: Vec<i32>) -> Topography {
        Topography {
            south_west: PlanPoint::new(0, 0),
            spacing_mm: 10_000,
            columns,
            heights_mm,
            source: "made up".to_owned(),
        }
    }

    fn profile(held: &Topography, line: &[(f64, f64)]) -> Profile {
        Profile::of(&Ground::of(held).expect("whole rows"), line)
    }

    #[test]
    fn grades_on_a_plane_are_those_of_its_direction() {
        // 8 % to the east, 6 % down to the north.
        let plane = ground(40, (0..1200).map(|at| (at % 40) * 800 - (at / 40) * 600).collect());
        for (line, percent) in [
            (vec![(10.0, 50.0), (310.0, 50.0)], 8.0),
            (vec![(310.0, 50.0), (10.0, 50.0)], -8.0),
            (vec![(50.0, 10.0), (50.0, 245.0)], -6.0),
            // To the steepest: 0.8 east and 0.6 south.
            (vec![(20.0, 200.0), (180.0, 80.0)], 10.0),
        ] {
            let found = profile(&plane, &line);
            assert!(found.points.windows(2).all(|ends| ends[1].0 - ends[0].0 <= 20.0 + 1e-9));
            for grade in found.grades_percent() {
                assert!((grade - percent).abs() < 1e-9, "{line:?}: {grade}");
            }
            assert!((found.steepest_percent() - percent).abs() < 1e-9);
            let length_m = found.points.last().expect("points").0;
            for (limit, steeper_m) in [(percent.abs() - 0.1, length_m), (percent.abs(), 0.0)] {
                assert!((found.steeper_m(limit) - steeper_m).abs() < 1e-9, "{line:?} {limit}");
            }
            assert_eq!(found.sags(), Vec::<usize>::new());
        }
    }

    #[test]
    fn pieces_follow_the_line_around_its_corners() {
        let flat = ground(40, vec![3_000; 1200]);
        let line = [(0.0, 0.0), (30.0, 0.0), (30.0, 25.0), (30.0, 25.0), (41.0, 25.0)];
        let found = profile(&flat, &line);
        assert_eq!(found.points.len(), 5, "66 m are four pieces");
        assert_eq!(
            found.places,
            [(0.0, 0.0), (16.5, 0.0), (30.0, 3.0), (30.0, 19.5), (41.0, 25.0)]
        );
        assert!(profile(&flat, &[(1.0, 1.0), (1.0, 1.0)]).points.is_empty());
        assert!(profile(&flat, &[]).points.is_empty());
        assert_eq!(Profile::default().steepest_percent().to_bits(), 0.0_f64.to_bits());
    }

    #[test]
    fn low_points_are_where_water_would_stand() {
        let heights = [
            5_000, 4_000, 3_950, 4_020, 3_000, 2_000, 2_000, 4_000, 3_960, 4_100, 1_000,
        ];
        let two_rows: Vec<i32> = heights.into_iter().chain(heights).collect();
        let held = ground(11, two_rows);
        let found = profile(&held, &[(0.0, 0.0), (100.0, 0.0)]);
        assert_eq!(found.points.len(), 6, "of 20 m");
        assert_eq!(found.sags(), [3], "5.0, 3.95, 3.0, 2.0, 3.96, 1.0 is low at 60 m");
        // A centimeter is no low point, and neither is an end.
        let nearly = [5_000, 5_000, 4_000, 4_000, 4_050, 4_050, 3_000, 3_000];
        let held = ground(8, nearly.into_iter().chain(nearly).collect());
        assert_eq!(profile(&held, &[(0.0, 0.0), (70.0, 0.0)]).sags(), Vec::<usize>::new());
    }
}
