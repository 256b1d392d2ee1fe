//! How steep the ground is, by Horn's weights, and in which class.
//!
//! For the nine heights a b c / d e f / g h i, row a at the north,
//! dz/dx = ((c + 2f + i) − (a + 2d + g)) / (8 · cell width) and dz/dy = ((g + 2h + i) − (a + 2b + c)) / (8 · cell height);
//! the slope is √(dz/dx² + dz/dy²), rise over run (B. K. P. Horn, "Hill shading and the reflectance map", *Proceedings
//! of the IEEE* 69, 1981). A cell without eight neighbors that all have heights has none: putting the middle's height in
//! place of a missing one would flatten the edge. Slopes fall as cells grow, whatever the ground.

use super::Grid;

/// Rise over run for each cell, row by row; `NaN` where it is not known. One pass over the cells.
#[must_use]
pub fn slopes(grid: &Grid) -> Vec<f32> {
    let mut slopes = vec![f32::NAN; grid.values.len()];
    for row in 1..grid.rows.saturating_sub(1) {
        let [width_m, height_m] = grid.cell_m(row);
        for column in 1..grid.columns.saturating_sub(1) {
            let index = row * grid.columns + column;
            let at = |over: usize, under: usize| {
                // Around an inner cell there is a cell on each side.
                f64::from(grid.values[(row + under - 1) * grid.columns + column + over - 1])
            };
            let east = (at(2, 0) + 2.0 * at(2, 1) + at(2, 2)) - (at(0, 0) + 2.0 * at(0, 1) + at(0, 2));
            let south = (at(0, 2) + 2.0 * at(1, 2) + at(2, 2)) - (at(0, 0) + 2.0 * at(1, 0) + at(2, 0));
            // The middle has no weight, but a slope where there is no ground would mean nothing.
            let middle = at(1, 1) * 0.0;
            let [x, y] = [
                east * grid.height_unit_m / (8.0 * width_m),
                south * grid.height_unit_m / (8.0 * height_m),
            ];
            slopes[index] = (x * x + y * y + middle).sqrt() as f32;
        }
    }
    slopes
}

/// To which class a slope on a border belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Border {
    /// To the steeper one, as soil groups have it.
    Steeper,
    /// To the flatter one, as "5 % or less" has it.
    Flatter,
}

/// Published classes of slope: the borders between them in percent, from the flattest, and to which side a border
/// belongs. Classes differ between places: a plan names those it uses.
pub struct Classes {
    /// What they are from.
    pub source: &'static str,
    /// Borders in percent.
    pub borders_percent: &'static [f64],
    /// Where a border belongs.
    pub border: Border,
}

/// Bands in common use for planning: below 8, to 15, to 25 and above.
pub const PLANNING: Classes = Classes {
    source: "common practice, no source",
    borders_percent: &[8.0, 15.0, 25.0],
    border: Border::Steeper,
};

/// Soil groups A to E+.
pub const SOIL: Classes = Classes {
    source: "Soil Judging in Iowa, 'Slope'",
    borders_percent: &[2.0, 5.0, 9.0, 14.0],
    border: Border::Steeper,
};

/// The class of a slope (rise over run), from 0; `None` where it is not known. A slope that is a border's to within a
/// millionth of a percent is on it.
#[must_use]
pub fn class(slope: f64, borders_percent: &[f64], border: Border) -> Option<u8> {
    if !slope.is_finite() {
        return None;
    }
    let percent = (slope * 1e8).round() / 1e6;
    let passed = borders_percent.iter().filter(|limit| match border {
        Border::Steeper => percent >= **limit,
        Border::Flatter => percent > **limit,
    });
    u8::try_from(passed.count()).ok()
}

/// The land of each class in square meters, from the flattest; what has no slope is in none.
#[must_use]
pub fn class_areas_m2(grid: &Grid, slopes: &[f32], borders_percent: &[f64], border: Border) -> Vec<f64> {
    let mut areas = vec![0.0; borders_percent.len() + 1];
    for (index, slope) in slopes.iter().enumerate() {
        let [width_m, height_m] = grid.cell_m(index / grid.columns.max(1));
        let class = class(f64::from(*slope), borders_percent, border);
        if let Some(area) = class.and_then(|class| areas.get_mut(usize::from(class))) {
            *area += width_m * height_m;
        }
    }
    areas
}

#[cfg(test)]
mod tests {
    use super::super::tests::grid;
    use super::*;

    /// Case F-01 of the collected check cases: GIS help "How Slope works", from memory; 3.80032 and 75.25762° as printed
    /// there are of rounded steps.
    #[test]
    fn a_window_has_the_slope_printed_for_it() {
        let grid = grid(3, 5.0, &[50.0, 45.0, 50.0, 30.0, 30.0, 30.0, 8.0, 10.0, 10.0]);
        let slope = f64::from(slopes(&grid)[4]);
        assert!((slope - 3.80033).abs() < 1e-4, "{slope}");
        assert!((slope.atan().to_degrees() - 75.2577).abs() < 1e-3);
    }

    /// Case F-02, derived: the plane 0.06 x + 0.08 y rises 10 % everywhere inside, whatever the cells.
    #[test]
    fn a_plane_is_as_steep_everywhere_and_has_no_slope_at_its_edge() {
        for cell_m in [1.0, 7.5, 30.0] {
            let values: Vec<f32> = (0..30)
                .map(|index| (0.06 * f64::from(index % 6) * cell_m - 0.08 * f64::from(index / 6) * cell_m) as f32)
                .collect();
            let grid = grid(6, cell_m, &values);
            for (index, slope) in slopes(&grid).into_iter().enumerate() {
                let is_inside = (1..5).contains(&(index % 6)) && (1..4).contains(&(index / 6));
                assert_eq!(slope.is_finite(), is_inside, "{index}");
                assert!(!is_inside || (slope - 0.1).abs() < 1e-6, "{slope}");
            }
        }
    }

    /// Case F-03: soil groups of Iowa, read: 2.0, 5.0, 8.9 and 14 % are B, C, C and E+.
    #[test]
    fn a_slope_on_a_border_belongs_where_the_classes_say() {
        let soil = |percent: f64| class(percent / 100.0, SOIL.borders_percent, SOIL.border);
        assert_eq!([2.0, 5.0, 8.9, 14.0].map(soil), [Some(1), Some(2), Some(2), Some(4)]);
        assert_eq!(class(0.05, &[5.0], Border::Flatter), Some(0));
        assert_eq!(class(f64::NAN, &[5.0], Border::Flatter), None);
    }

    #[test]
    fn land_of_classes_sums_to_the_land_with_slopes() {
        let values: Vec<f32> = (0..30).map(|index| ((index % 6) * (index / 6)) as f32).collect();
        let grid = grid(6, 10.0, &values);
        let areas = class_areas_m2(&grid, &slopes(&grid), PLANNING.borders_percent, PLANNING.border);
        assert!((areas.iter().sum::<f64>() - 12.0 * 100.0).abs() < 1e-6, "{areas:?}");
    }
}
