//! A street section as bands to draw: where carriageway, planting and bicycle lanes lie across the right-of-way.

use crate::plan::{StreetSection, Strip, StripKind};

/// Across a street: everything in meters, offsets to the left of the line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Profile {
    /// Width of the right-of-way.
    pub right_of_way_m: f64,
    /// From curb to curb, medians included; `None` for a path.
    pub carriageway: Option<Band>,
    /// Planting strips, medians and swales.
    pub planted: Vec<Band>,
    /// Bicycle lanes.
    pub bicycle: Vec<Band>,
    /// Where a fine line parts two lanes.
    pub lane_lines_m: Vec<f64>,
    /// Where a row of trees stands.
    pub tree_rows_m: Vec<f64>,
}

/// One band: its middle to the left of the line, and its width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Middle of the band.
    pub left_m: f64,
    /// Width of the band.
    pub width_m: f64,
}

/// Narrowest strip that trees are drawn in.
const TREES_FROM_M: f64 = 1.2;

impl Profile {
    /// The bands of a street section.
    #[must_use]
    pub fn of(section: &StreetSection) -> Self {
        let right_of_way_m = f64::from(section.right_of_way_mm()) / 1000.0;
        let mut left_edge_m = right_of_way_m / 2.0;
        let placed: Vec<(StripKind, Band)> = section
            .strips
            .iter()
            .map(|strip| {
                let width_m = f64::from(strip.width_mm) / 1000.0;
                let band = Band {
                    left_m: left_edge_m - width_m / 2.0,
                    width_m,
                };
                left_edge_m -= width_m;
                (strip.kind, band)
            })
            .collect();
        let bands = |wanted: &[StripKind]| -> Vec<Band> {
            let wanted = placed.iter().filter(|(kind, _)| wanted.contains(kind));
            wanted.map(|(_, band)| *band).collect()
        };
        let planted = bands(&[StripKind::Planting, StripKind::Median, StripKind::Swale]);
        let tree_rows_m = bands(&[StripKind::Planting, StripKind::Median])
            .iter()
            .filter(|band| band.width_m >= TREES_FROM_M)
            .map(|band| band.left_m)
            .collect();
        let lane_lines_m = placed
            .windows(2)
            .filter_map(|pair| match pair {
                [(one, band), (other, _)] if is_paved(*one) && is_paved(*other) => {
                    Some(band.left_m - band.width_m / 2.0)
                }
                _ => None,
            })
            .collect();
        Self {
            right_of_way_m,
            carriageway: carriageway(&section.strips, right_of_way_m),
            planted,
            bicycle: bands(&[StripKind::Bicycle]),
            lane_lines_m,
            tree_rows_m,
        }
    }

    /// Half the width between the outer curbs about the line, or of the right-of-way where there is no carriageway.
    #[must_use]
    pub fn half_paved_m(&self) -> f64 {
        self.carriageway
            .map_or(self.right_of_way_m / 2.0, |band| band.left_m.abs() + band.width_m / 2.0)
    }
}

const fn is_paved(kind: StripKind) -> bool {
    matches!(kind, StripKind::Parking | StripKind::Bicycle | StripKind::Travel)
}

/// From the first paved strip to the last.
fn carriageway(strips: &[Strip], right_of_way_m: f64) -> Option<Band> {
    let first = strips.iter().position(|strip| is_paved(strip.kind))?;
    let last = strips.iter().rposition(|strip| is_paved(strip.kind))?;
    let width_m = |part: &[Strip]| part.iter().map(|strip| f64::from(strip.width_mm) / 1000.0).sum::<f64>();
    let before_m = width_m(strips.get(..first)?);
    let across_m = width_m(strips.get(first..=last)?);
    Some(Band {
        left_m: right_of_way_m / 2.0 - before_m - across_m / 2.0,
        width_m: across_m,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn section(strips: &[(StripKind, u32)]) -> StreetSection {
        StreetSection {
            name: String::new(),
            strips: strips
                .iter()
                .map(|&(kind, width_mm)| Strip { kind, width_mm })
                .collect(),
            target_speed_km_h: 30,
            walkable: true,
            cyclable: true,
            drivable: true,
            fronts_left: true,
            fronts_right: true,
        }
    }

    #[test]
    fn strips_lie_where_the_section_says() {
        let profile = Profile::of(&section(&[
            (StripKind::Walk, 2_000),
            (StripKind::Planting, 2_000),
            (StripKind::Parking, 2_000),
            (StripKind::Travel, 3_000),
            (StripKind::Travel, 3_000),
            (StripKind::Walk, 2_000),
        ]));
        assert!((profile.right_of_way_m - 14.0).abs() < 1e-9);
        assert_eq!(
            profile.carriageway,
            Some(Band {
                left_m: -1.0,
                width_m: 8.0
            })
        );
        assert_eq!(
            profile.planted,
            vec![Band {
                left_m: 4.0,
                width_m: 2.0
            }]
        );
        assert_eq!(profile.tree_rows_m, vec![4.0]);
        assert_eq!(profile.lane_lines_m, vec![1.0, -2.0]);
    }

    #[test]
    fn a_path_has_no_carriageway() {
        let profile = Profile::of(&section(&[(StripKind::Walk, 3_000)]));
        assert_eq!(profile.carriageway, None);
        assert!((profile.half_paved_m() - 1.5).abs() < 1e-9);
    }
}
