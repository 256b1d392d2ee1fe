//! How the uses lie beside one another: dissimilarity over hectare cells.
//!
//! `(1 ÷ K) Σ over cells Σ over the 8 neighbors X ÷ 8`, X being 1 where the neighbor's use is another (R. Cervero and
//! K. Kockelman, "Travel demand and the 3Ds", 1997, from memory). K counts cells of 100 m by 100 m that hold floor
//! area; a cell's use is the one with most floor area, of equals the one first listed. A neighbor without floor area is
//! no difference. Cells lie along the way most lots face, in the middle of the box around all lots, so that moving, turning
//! or mirroring the plan changes nothing. The floor area of a lot is spread evenly over the box around the lot.

use crate::measures::count::FLOOR_USES;
use crate::measures::frontage::Painted;
use crate::measures::mix;
use crate::number;
use crate::say;

/// The side of a cell: 100 m, a hectare.
const CELL_M: f64 = 100.0;

/// Cells along one side at most: beyond 20 km plans are no neighborhoods.
const MOST_CELLS: f64 = 200.0;

type Floor = [f64; mix::USES];

/// Cells with floor area, and the shares of unlike neighbors added up.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Cells {
    pub count: f64,
    pub unlike: f64,
}

/// A box and the floor area in it.
#[derive(Clone, Copy)]
pub(super) struct FloorBox {
    pub low: (f64, f64),
    pub high: (f64, f64),
    pub floor: Floor,
}

/// The way most lots face as a cosine and a sine, up to a quarter turn: that of the sum over lots of the fourth power of
/// their direction as a complex number, by land. East where there is none.
fn main_direction(painted: &Painted) -> (f64, f64) {
    let (mut east, mut north) = (0.0, 0.0);
    for lot in painted.iter().flat_map(|face| &face.laid.lots) {
        let [x, y] = lot.faces.map(f64::from);
        let (squared_x, squared_y) = (x * x - y * y, 2.0 * x * y);
        let length = x * x + y * y;
        if length > 0.0 {
            let land = lot.twice_area_mm2 as f64 / (length * length);
            east += land * (squared_x * squared_x - squared_y * squared_y);
            north += land * 2.0 * squared_x * squared_y;
        }
    }
    let angle_rad = number::atan2(north, east) / 4.0;
    (number::cos(angle_rad), number::sin(angle_rad))
}

/// Counts the cells of a plan's lots. Cost: the lots and the cells.
pub(super) fn cells(painted: &Painted) -> Result<Cells, &'static str> {
    let (cos, sin) = main_direction(painted);
    let lots = painted.iter().flat_map(|face| face.laid.lots.iter().zip(&face.built));
    let boxes = lots.filter_map(|(lot, built)| {
        let held = painted.palette.get(*built)?;
        let counts = f64::from(lot.counts_ppm) / 1e6;
        let floor = FLOOR_USES.map(|floor_use| held.floor_area_m2(floor_use) as f64 * counts);
        let turned = |(x, y): (f64, f64)| (x * cos + y * sin, y * cos - x * sin);
        let mut points = lot.outline.iter().map(|point| turned(point.to_m()));
        let first = points.next()?;
        let (mut low, mut high) = (first, first);
        for point in points {
            low = (low.0.min(point.0), low.1.min(point.1));
            high = (high.0.max(point.0), high.1.max(point.1));
        }
        Some(FloorBox { low, high, floor })
    });
    unlike_neighbors(&boxes.collect::<Vec<_>>())
}

/// Counts the cells over boxes of floor area.
pub(super) fn unlike_neighbors(boxes: &[FloorBox]) -> Result<Cells, &'static str> {
    let holding: Vec<&FloorBox> = boxes
        .iter()
        .filter(|held| held.floor.iter().any(|floor| *floor > 0.0))
        .collect();
    let Some(first) = holding.first() else {
        return Err(say!("measures-no-floor"));
    };
    let (mut low, mut high) = (first.low, first.high);
    for held in &holding {
        low = (low.0.min(held.low.0), low.1.min(held.low.1));
        high = (high.0.max(held.high.0), high.1.max(held.high.1));
    }
    let [(west, columns), (south, rows)] = [(low.0, high.0), (low.1, high.1)].map(|(low, high)| {
        // Rounding adds no cell.
        let count = ((high - low) / CELL_M - 1e-6).ceil().max(1.0);
        ((low + high - count * CELL_M) / 2.0, count)
    });
    if columns > MOST_CELLS || rows > MOST_CELLS {
        return Err(say!("measures-lots-too-far"));
    }
    let (columns, rows) = (columns as usize, rows as usize);
    let mut floors: Vec<Floor> = vec![[0.0; mix::USES]; columns * rows];
    for held in holding {
        for (row, up) in shares(held.low.1 - south, held.high.1 - south, rows) {
            for (column, across) in shares(held.low.0 - west, held.high.0 - west, columns) {
                let cell = floors.get_mut(row * columns + column);
                for (sum, floor) in cell.into_iter().flatten().zip(held.floor) {
                    *sum += floor * up * across;
                }
            }
        }
    }
    let uses: Vec<Option<usize>> = floors.iter().map(main_use).collect();
    let use_at = |row: Option<usize>, column: Option<usize>| {
        let (row, column) = (row?, column.filter(|column| *column < columns)?);
        uses.get(row * columns + column).copied().flatten()
    };
    let mut counted = Cells::default();
    for row in 0..rows {
        for column in 0..columns {
            let Some(own) = use_at(Some(row), Some(column)) else {
                continue;
            };
            counted.count += 1.0;
            for near_row in [row.checked_sub(1), Some(row), Some(row + 1)] {
                for near_column in [column.checked_sub(1), Some(column), Some(column + 1)] {
                    let is_unlike = use_at(near_row, near_column).is_some_and(|other| other != own);
                    counted.unlike += if is_unlike { 1.0 / 8.0 } else { 0.0 };
                }
            }
        }
    }
    Ok(counted)
}

/// The cells a span lies over, and the share of it in each.
fn shares(low: f64, high: f64, count: usize) -> impl Iterator<Item = (usize, f64)> {
    let last = count.saturating_sub(1);
    let cell = move |at: f64| ((at / CELL_M).floor().max(0.0) as usize).min(last);
    let (first, end) = (cell(low), cell(high));
    (first..=end).map(move |place| {
        let from = if place == first { low } else { place as f64 * CELL_M };
        let to = if place == end {
            high
        } else {
            (place + 1) as f64 * CELL_M
        };
        let share = if high > low { (to - from) / (high - low) } else { 1.0 };
        (place, share)
    })
}

/// The use with most floor area; a later one must have more by a millionth, so that rounding decides nothing.
fn main_use(floor: &Floor) -> Option<usize> {
    let mut main: Option<usize> = None;
    let mut most = 0.0;
    for (place, amount) in floor.iter().enumerate() {
        if *amount > most * (1.0 + 1e-6) && *amount > 1e-6 {
            (main, most) = (Some(place), *amount);
        }
    }
    main
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hectare(column: i32, row: i32, use_place: usize) -> FloorBox {
        let (x, y) = (f64::from(column) * CELL_M, f64::from(row) * CELL_M);
        let mut floor = [0.0; 5];
        floor[use_place] = 1_000.0;
        FloorBox {
            low: (x, y),
            high: (x + CELL_M, y + CELL_M),
            floor,
        }
    }

    /// Derived from the definition. Shops amid eight hectares of homes: the middle has eight unlike neighbors, each other
    /// one; so does each of the eight but for its own one: (8/8 + 8 × 1/8) ÷ 9.
    #[test]
    fn a_shop_amid_homes() {
        let mut boxes: Vec<FloorBox> = (0..9).map(|cell| hectare(cell % 3, cell / 3, 0)).collect();
        boxes[4] = hectare(1, 1, 2);
        assert_eq!(
            unlike_neighbors(&boxes),
            Ok(Cells {
                count: 9.0,
                unlike: 2.0
            })
        );
    }

    #[test]
    fn one_use_is_alike_and_empty_land_is_no_difference() {
        let boxes: Vec<FloorBox> = [(0, 0), (3, 0), (0, 4)].map(|(x, y)| hectare(x, y, 1)).to_vec();
        assert_eq!(
            unlike_neighbors(&boxes),
            Ok(Cells {
                count: 3.0,
                unlike: 0.0
            })
        );
        assert!(unlike_neighbors(&[]).is_err());
    }

    /// A chessboard of two uses, 4 by 4: of 42 pairs of neighbors 24 share a side (unlike) and 18 a corner (alike).
    #[test]
    fn a_chessboard() {
        let boxes: Vec<FloorBox> = (0..16)
            .map(|cell| hectare(cell % 4, cell / 4, ((cell % 4 + cell / 4) % 2) as usize))
            .collect();
        assert_eq!(
            unlike_neighbors(&boxes),
            Ok(Cells {
                count: 16.0,
                unlike: 48.0 / 8.0
            })
        );
    }
}
