//! Heights of the ground, where they are known.

use crate::number::within;
use crate::plan::PlanPoint;
use crate::plan::document::Topography;

/// A height grid that can be asked anywhere.
#[derive(Clone, Copy, Debug)]
pub struct Ground<'a> {
    topography: &'a Topography,
    columns: usize,
    rows: usize,
}

impl<'a> Ground<'a> {
    /// The ground of a grid; `None` where it has no full row.
    #[must_use]
    pub fn of(topography: &'a Topography) -> Option<Self> {
        let columns = topography.columns as usize;
        let rows = topography.heights_mm.len().checked_div(columns)?;
        (rows > 0 && topography.spacing_mm > 0).then_some(Self {
            topography,
            columns,
            rows,
        })
    }

    /// Height in meters at a place in meters, between the samples by straight lines along both axes. Beyond the grid the
    /// ground goes on as high as at its edge.
    #[must_use]
    pub fn height_m(&self, (x_m, y_m): (f64, f64)) -> f64 {
        let (west_m, south_m) = PlanPoint::to_m(self.topography.south_west);
        let spacing_m = f64::from(self.topography.spacing_mm) / 1e3;
        let (left, right, across) = cell((x_m - west_m) / spacing_m, self.columns);
        let (low, high, up) = cell((y_m - south_m) / spacing_m, self.rows);
        let sample = |column: usize, row: usize| {
            let held = self.topography.heights_mm.get(row * self.columns + column);
            held.map_or(0.0, |height_mm| f64::from(*height_mm) / 1e3)
        };
        let mix = |from: f64, to: f64, share: f64| from + (to - from) * share;
        let south = mix(sample(left, low), sample(right, low), across);
        let north = mix(sample(left, high), sample(right, high), across);
        mix(south, north, up)
    }
}

/// The samples before and after a place on a row of `count`, and how far between them it is.
fn cell(place: f64, count: usize) -> (usize, usize, f64) {
    let held = within(place, 0.0, (count - 1) as f64);
    let before = held.floor();
    let after = (before as usize + 1).min(count - 1);
    (before as usize, after, held - before)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(columns: u32, heights_mm: &[i32]) -> Topography {
        Topography {
            south_west: PlanPoint::new(1_000, 2_000),
            spacing_mm: 10_000,
            columns,
            heights_mm: heights_mm.to_vec(),
            source: "made up".to_owned(),
        }
    }

    #[test]
    fn heights_between_samples_and_beyond_the_grid() {
        let held = grid(3, &[0, 1_000, 4_000, 2_000, 3_000, 6_000]);
        let ground = Ground::of(&held).expect("two rows");
        let near = |place, expected: f64| {
            let height = ground.height_m(place);
            assert!((height - expected).abs() < 1e-12, "{place:?}: {height}, not {expected}");
        };
        near((1.0, 2.0), 0.0);
        near((6.0, 2.0), 0.5);
        near((21.0, 7.0), 5.0);
        near((6.0, 7.0), 1.5);
        near((-100.0, -100.0), 0.0);
        near((500.0, 7.0), 5.0);
    }

    #[test]
    fn a_grid_without_a_full_row_is_no_ground() {
        assert!(Ground::of(&grid(3, &[1, 2])).is_none());
        assert!(Ground::of(&grid(0, &[1, 2])).is_none());
        assert!(Ground::of(&grid(2, &[1, 2])).is_some());
    }
}
