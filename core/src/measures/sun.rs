//! How streets, blocks and lots lie to the sun: from true north.
//!
//! Bearings are degrees clockwise from true north. The plan's y axis is true north at its origin; elsewhere it turns away
//! from it by the longitude's difference times the sine of the latitude, which within a neighborhood (2 km at 45°) is
//! less than 0.02° and is left out. Nothing here sees shade: trees, slopes and neighbors are not looked at.

use crate::number;
use crate::order;

/// How far a street may turn from east-west to lie east-west: 20°.
/// Source: Dubuque IA code, solar subdivision: "streets within 20 degrees of east-west where possible".
pub const STREET_DEGREES: f64 = 20.0;

/// How far a block's axis may turn from east-west: 15°.
/// Source: LEED v4 for Neighborhood Development, solar orientation, block option (from memory).
pub const BLOCK_DEGREES: f64 = 15.0;

/// A rule that says which lots have the sun.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SolarLotRule {
    /// Title of the code.
    pub source: &'static str,
    /// Least depth of the lot, in millimeters.
    pub least_depth_mm: u32,
    /// How far its front line may turn from east-west, in degrees.
    pub most_degrees: f64,
    /// Share of lots asked for.
    pub least_share: f64,
}

/// At least 75 ft deep, front line within 30° of east-west, 70 % of lots.
pub const DUBUQUE: SolarLotRule = SolarLotRule {
    source: "Dubuque IA code, solar subdivision",
    least_depth_mm: 22_860,
    most_degrees: 30.0,
    least_share: 0.7,
};

/// The same depth, turn and share; a lot for several dwellings counts once for each.
pub const EUGENE: SolarLotRule = SolarLotRule {
    source: "Eugene OR code, 9.2790",
    ..DUBUQUE
};

/// At least 90 ft deep, front line within 30° of east-west, 80 % of lots.
pub const FOREST_GROVE: SolarLotRule = SolarLotRule {
    source: "Forest Grove OR development code, solar access",
    least_depth_mm: 27_432,
    most_degrees: 30.0,
    least_share: 0.8,
};

/// One lot as the sun sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LotToSun {
    /// Bearing of its front line in degrees clockwise from true north; either direction along it.
    pub front_bearing_degrees: f64,
    /// Its depth in millimeters.
    pub depth_mm: u32,
    /// Dwellings on it.
    pub dwellings: u32,
}

/// How far a line of this bearing turns from east-west, 0 to 90 degrees. The bearing is folded to half a turn.
///
/// ```
/// use hobnail_core::measures::sun::degrees_from_east_west;
/// assert_eq!([90.0, 75.0, 270.0, 359.0, -30.0].map(degrees_from_east_west), [0.0, 15.0, 0.0, 89.0, 60.0]);
/// ```
#[must_use]
pub fn degrees_from_east_west(bearing_degrees: f64) -> f64 {
    let folded = bearing_degrees.rem_euclid(180.0);
    (folded - 90.0).abs()
}

/// The bearing of a direction on the plan, `x` east and `y` north, in degrees clockwise from true north, 0 to 360.
///
/// ```
/// use hobnail_core::measures::sun::bearing_degrees;
/// assert_eq!(bearing_degrees(1.0, 0.0), 90.0);
/// assert_eq!(bearing_degrees(0.0, -1.0), 180.0);
/// ```
#[must_use]
pub fn bearing_degrees(x: f64, y: f64) -> f64 {
    let degrees = number::atan2(x, y) * 180.0 / std::f64::consts::PI;
    if degrees < 0.0 { degrees + 360.0 } else { degrees }
}

/// Whether a lot has the sun by a rule: deep enough, and its front line near enough to east-west.
///
/// ```
/// use hobnail_core::measures::sun::{DUBUQUE, LotToSun, is_solar_lot};
/// let lot = LotToSun { front_bearing_degrees: 75.0, depth_mm: 30_000, dwellings: 1 };
/// assert!(is_solar_lot(&DUBUQUE, &lot));
/// ```
#[must_use]
pub fn is_solar_lot(rule: &SolarLotRule, lot: &LotToSun) -> bool {
    lot.depth_mm >= rule.least_depth_mm && degrees_from_east_west(lot.front_bearing_degrees) <= rule.most_degrees
}

/// Whether a lot that faces a street in the direction `faces` (east, north) has the sun by a rule: its front line lies
/// across that direction, and its depth is how far its `outline` reaches along it.
#[must_use]
pub fn is_solar_facing(
    rule: &SolarLotRule,
    near_east_west: EastWest,
    [east, north]: [i32; 2],
    outline: impl Iterator<Item = (i32, i32)>,
) -> bool {
    let (x, y) = (f64::from(east), f64::from(north));
    if !near_east_west.holds(y, x) {
        return false;
    }
    let along = outline.map(|(east, north)| f64::from(east) * x + f64::from(north) * y);
    let (low, high) = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
        (low.min(at), high.max(at))
    });
    // To the millimeter that outlines are drawn on.
    high - low >= (f64::from(rule.least_depth_mm) - 0.5) * number::length(x, y)
}

/// How many lots there are and how many of them have the sun; where `by_dwelling`, each counted once for every dwelling.
#[must_use]
pub fn count_lots(rule: &SolarLotRule, lots: impl Iterator<Item = LotToSun>, by_dwelling: bool) -> (f64, f64) {
    let mut counted = (0.0, 0.0);
    for lot in lots {
        let weight = if by_dwelling { f64::from(lot.dwellings) } else { 1.0 };
        counted.0 += weight;
        counted.1 += if is_solar_lot(rule, &lot) { weight } else { 0.0 };
    }
    counted
}

/// Directions within so many degrees of east-west.
#[derive(Clone, Copy, Debug)]
pub struct EastWest {
    /// The most rise over run.
    tangent: f64,
}

impl EastWest {
    /// Directions within `degrees` of east-west, less than 90.
    #[must_use]
    pub fn within(degrees: f64) -> Self {
        Self {
            tangent: number::tan(degrees * std::f64::consts::PI / 180.0),
        }
    }

    /// Whether a direction on the plan is one of them.
    #[must_use]
    pub fn holds(self, x: f64, y: f64) -> bool {
        y.abs() <= x.abs() * self.tangent
    }
}

/// How much longer a block must be east to west than north to south to be taken as longer: none; and by how much it may
/// be shorter and still be taken as equal, 0.1 m, since free points are drawn on tenths of a meter.
const EQUAL_SIDES_MM: f64 = 100.0;

/// Whether a block lies east-west: one of its axes is within [`BLOCK_DEGREES`] of east-west, and along that axis it is at
/// least as long as across. Its axes are the sides of the least rectangle around it.
///
/// Source: LEED v4 for Neighborhood Development, solar orientation, block option (from memory); the rectangle is ours,
/// for blocks that are none. Cost: O(h²) for an outline whose hull has h corners.
#[must_use]
pub fn is_east_west_block(corners: &[(f64, f64)]) -> bool {
    let hull = hull_of(corners);
    if hull.len() < 3 {
        return false;
    }
    let east_west_within = EastWest::within(BLOCK_DEGREES);
    let mut least: Option<(f64, bool)> = None;
    for (index, (x, y)) in hull.iter().enumerate() {
        let (next_x, next_y) = hull[(index + 1) % hull.len()];
        let length = number::length(next_x - x, next_y - y);
        let (ux, uy) = ((next_x - x) / length, (next_y - y) / length);
        let extent = |ux: f64, uy: f64| {
            let along = hull.iter().map(|(x, y)| x * ux + y * uy);
            let (low, high) = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
                (low.min(at), high.max(at))
            });
            high - low
        };
        let (along, across) = (extent(ux, uy), extent(-uy, ux));
        // The axis nearer to east-west, its length, and the other's.
        let (x, y, east_west, north_south) = if ux.abs() >= uy.abs() {
            (ux, uy, along, across)
        } else {
            (-uy, ux, across, along)
        };
        let lies = east_west_within.holds(x, y) && east_west >= north_south - EQUAL_SIDES_MM;
        let area = along * across;
        if least.is_none_or(|(held, _)| area < held) {
            least = Some((area, lies));
        }
    }
    least.is_some_and(|(_, lies)| lies)
}

/// The corners of the convex hull of some points, counterclockwise.
/// Source: A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", Information Processing Letters
/// 9, 1979 (from memory).
fn hull_of(points: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut sorted = points.to_vec();
    order::sort_by(&mut sorted, |a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let cross = |o: (f64, f64), a: (f64, f64), b: (f64, f64)| (a.0 - o.0) * (b.1 - o.1) - (a.1 - o.1) * (b.0 - o.0);
    let mut hull: Vec<(f64, f64)> = Vec::with_capacity(sorted.len() + 1);
    let mut half = |points: &mut dyn Iterator<Item = (f64, f64)>| {
        let start = hull.len();
        for point in points {
            while hull.len() >= start + 2 && cross(hull[hull.len() - 2], hull[hull.len() - 1], point) <= 0.0 {
                hull.pop();
            }
            hull.push(point);
        }
        // The last point is the first of the other half.
        hull.pop();
    };
    half(&mut sorted.iter().copied());
    half(&mut sorted.iter().rev().copied());
    hull
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lot(front_bearing_degrees: f64, depth_ft: f64) -> LotToSun {
        LotToSun {
            front_bearing_degrees,
            depth_mm: (depth_ft * 304.8).round() as u32,
            dwellings: 1,
        }
    }

    /// Check case S-A1: Dubuque IA code, solar subdivision: 75 feet deep, front line within 30° of east-west. Derived from
    /// the rule.
    #[test]
    fn s_a1_front_line_of_60_degrees_and_depth_of_75_feet() {
        let cases = [lot(60.0, 80.0), lot(59.0, 80.0), lot(90.0, 74.0)];
        assert_eq!(cases.map(|lot| is_solar_lot(&DUBUQUE, &lot)), [true, false, false]);
        // Forest Grove OR asks for 90 feet.
        assert_eq!(
            [80.0, 90.0].map(|depth| is_solar_lot(&FOREST_GROVE, &lot(90.0, depth))),
            [false, true]
        );
    }

    /// Check case S-A2: LEED v4 for Neighborhood Development, solar orientation: long axis within 15° of east-west.
    /// Derived from the rule, which is from memory.
    #[test]
    fn s_a2_long_axis_within_15_degrees() {
        let lies = [75.0, 74.0, 105.0, 106.0].map(|bearing| degrees_from_east_west(bearing) <= BLOCK_DEGREES);
        assert_eq!(lies, [true, false, true, false]);
        // The same for blocks of 200 × 100 turned that way, a hair off where it would be the limit itself.
        let turned = |bearing: f64| {
            let angle = (90.0 - bearing) * std::f64::consts::PI / 180.0;
            let (ux, uy) = (number::cos(angle), number::sin(angle));
            let corner = |along: f64, across: f64| (along * ux - across * uy, along * uy + across * ux);
            [corner(0.0, 0.0), corner(2e5, 0.0), corner(2e5, 1e5), corner(0.0, 1e5)]
        };
        let lies = [75.001, 74.0, 104.999, 106.0].map(|bearing| is_east_west_block(&turned(bearing)));
        assert_eq!(lies, [true, false, true, false]);
        // Turned by a right angle its long axis is north-south.
        assert!(!is_east_west_block(&turned(0.0)));
    }

    #[test]
    fn a_square_block_lies_east_west_and_a_sliver_does_not_matter() {
        assert!(is_east_west_block(&[
            (0.0, 0.0),
            (9e4, 0.0),
            (9e4, 9e4 + 50.0),
            (0.0, 9e4)
        ]));
        assert!(!is_east_west_block(&[
            (0.0, 0.0),
            (9e4, 0.0),
            (9e4, 9.1e4),
            (0.0, 9.1e4)
        ]));
        assert!(!is_east_west_block(&[(0.0, 0.0), (9e4, 0.0)]));
    }

    #[test]
    fn a_lot_that_faces_south_has_its_front_line_east_west() {
        let outline = [(0, 0), (15_000, 0), (15_000, 30_000), (0, 30_000)];
        let near = EastWest::within(DUBUQUE.most_degrees);
        let is_solar = |faces| is_solar_facing(&DUBUQUE, near, faces, outline.into_iter());
        assert!(is_solar([0, -1_000_000]) && is_solar([0, 1_000_000]));
        // Facing east it is 15 m deep, and its front line lies north-south.
        assert!(!is_solar([1_000_000, 0]));
        // Turned until its front line is 30° from east-west, and a hair more.
        assert!(is_solar([577_350, -1_000_000]) && !is_solar([577_351, -1_000_000]));
        let shallow = [(0, 0), (30_000, 0), (30_000, 22_859), (0, 22_859)];
        assert!(!is_solar_facing(&DUBUQUE, near, [0, 1], shallow.into_iter()));
        assert!(!is_solar_facing(&DUBUQUE, near, [0, 1], std::iter::empty()));
    }

    #[test]
    fn a_lot_for_several_dwellings_counts_once_for_each_where_the_rule_says() {
        let lots = [
            LotToSun {
                dwellings: 2,
                ..lot(90.0, 80.0)
            },
            lot(0.0, 80.0),
        ];
        assert_eq!(count_lots(&EUGENE, lots.into_iter(), true), (3.0, 2.0));
        assert_eq!(count_lots(&DUBUQUE, lots.into_iter(), false), (2.0, 1.0));
    }

    #[test]
    fn streets_lie_east_west_within_20_degrees_either_way() {
        // The tangent of 20° is 0.3640.
        let lies = [(1_000.0, 363.0), (1_000.0, 365.0), (-1_000.0, 363.0), (0.0, 1.0)];
        assert_eq!(
            lies.map(|(x, y)| EastWest::within(STREET_DEGREES).holds(x, y)),
            [true, false, true, false]
        );
    }
}
