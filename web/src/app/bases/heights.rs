//! Heights of a file on their way into the plan: asked of whoever reads the file, for the area and the unit that are
//! chosen, and held until they are taken.
//!
//! The readers (`web/readers/src/grid/resampled.rs`) give them on a regular grid of the plan, and say how many of them
//! are those of a neighbor, since a plan's heights have no gaps.

use hobnail_core::plan::document::{Topography, UnitSystem};
use hobnail_core::plan::{Document, Edit, PlanPoint};
use hobnail_core::say;

use super::place::{Choices, is_placed};
use super::{Base, Taken};
use crate::app::{App, words};

/// What grids of a file are, before any of it is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GridSaid {
    /// West, south, east and north, as the base gives positions.
    pub bounds_deg: [f64; 4],
    /// Width and height of a cell, in meters.
    pub cell_m: [f64; 2],
    /// How many cells there are, and how many of them have no height.
    pub cells: [f64; 2],
    /// The lowest and the highest height, in units of the file.
    pub range: [f64; 2],
    /// Meters in a unit of height, as the file says or is taken to mean.
    pub unit_m: f64,
}

impl GridSaid {
    /// What the readers told, in their order; `None` where there are no grids.
    #[must_use]
    pub fn told(numbers: &[f64]) -> Option<Self> {
        let [
            west,
            south,
            east,
            north,
            wide,
            high,
            cells,
            empty,
            lowest,
            highest,
            unit_m,
        ] = *numbers
        else {
            return None;
        };
        Some(Self {
            bounds_deg: [west, south, east, north],
            cell_m: [wide, high],
            cells: [cells, empty],
            range: [lowest, highest],
            unit_m,
        })
    }
}

/// What is asked of the readers: west, south, east and north of the area in millimeters, longitude and latitude of the
/// plan's origin in degrees, meters in a unit of height; and for grids that are placed by hand, where their zero lies to the
/// east and north in meters, meters in one of their units, and their turn in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Request(pub [f64; 11]);

/// Heights as the readers gave them.
#[derive(Clone, Debug, PartialEq)]
pub struct Heights {
    /// For what they were asked.
    pub request: Request,
    /// The heights; their source is not said yet.
    topography: Topography,
    /// How many points the area has.
    asked: u32,
    /// How many of the heights are those of a neighbor.
    filled: u32,
}

/// Units that heights come in: meters in one, and its words.
#[must_use]
pub fn units() -> [(f64, &'static str); 3] {
    [
        (1.0, say!("bases-unit-meters")),
        (0.3048, say!("bases-unit-feet")),
        (1200.0 / 3937.0, say!("bases-unit-survey-feet")),
    ]
}

impl Heights {
    /// What the readers told: their numbers and the heights; `None` where these are none of theirs.
    #[must_use]
    pub fn told(numbers: &[f64], heights_mm: Vec<i32>) -> Option<Self> {
        let (request, told) = numbers.split_first_chunk()?;
        let [x_mm, y_mm, spacing_mm, columns, asked, filled] = *told else {
            return None;
        };
        Some(Self {
            request: Request(*request),
            topography: Topography {
                south_west: PlanPoint::new(x_mm as i32, y_mm as i32),
                spacing_mm: spacing_mm as u32,
                columns: columns as u32,
                heights_mm,
                source: String::new(),
            },
            asked: asked as u32,
            filled: filled as u32,
        })
    }
}

impl Choices {
    /// What is to be asked for by these choices.
    ///
    /// # Errors
    /// A sentence, where the extent is none.
    pub fn heights_request(&self, document: &Document) -> Result<Request, String> {
        let [west, south, east, north] = self.sides(document)?.map(f64::from);
        let (longitude, latitude) = self.origin.to_deg();
        let (zero_east_m, zero_north_m) = self.zero.to_m();
        Ok(Request([
            west,
            south,
            east,
            north,
            longitude,
            latitude,
            self.height_unit_m,
            zero_east_m,
            zero_north_m,
            self.unit_m,
            self.turn_deg,
        ]))
    }
}

impl Base {
    /// The edits that take the heights of this base, and what they take.
    ///
    /// # Errors
    /// A sentence: the heights are not there yet, none lies in the area, more than half are missing, the base is on
    /// another part of Earth, or the plan has them already.
    pub(super) fn height_edits(&self, document: &Document, choices: &Choices) -> Result<(Vec<Edit>, Taken), String> {
        if is_placed(document) && document.heading.geographic_origin() != choices.origin {
            return Err(say!("bases-placed").to_owned());
        }
        let request = choices.heights_request(document)?;
        let held = self.heights.as_ref().filter(|held| held.request == request);
        let held = held.ok_or_else(|| say!("heights-asked").to_owned())?;
        let count = held.topography.heights_mm.len() as u32;
        if count == 0 {
            return Err(say!("heights-elsewhere").to_owned());
        }
        if held.filled * 2 > count {
            return Err(say!("heights-too-few", filled = held.filled, count = count));
        }
        let mut after = held.topography.clone();
        after.source = say!(
            "heights-source",
            file = self.name,
            credit = self.attribution,
            filled = held.filled
        )
        .trim()
        .to_owned();
        let before = document.topography.clone();
        let after = Some(after);
        if before == after {
            return Err(say!("heights-known").to_owned());
        }
        let mut taken = Taken {
            heights: count,
            ..Taken::default()
        };
        let said = range_words(&held.topography, document.settings.units);
        taken.of_heights.extend(said);
        if before.is_some() {
            taken.of_heights.push(say!("heights-instead").to_owned());
        }
        if held.filled > 0 {
            taken.of_heights.push(say!("heights-filled", count = held.filled));
        }
        let beyond = held.asked.saturating_sub(count);
        if beyond > 0 {
            let percent = (u64::from(beyond) * 100).div_ceil(u64::from(held.asked.max(1)));
            taken
                .of_heights
                .push(say!("heights-beyond", percent = percent.to_string()));
        }
        let mut edits = vec![Edit::Topography { before, after }];
        edits.extend(self.heading(document, choices));
        Ok((edits, taken))
    }
}

/// How far the points of heights are apart and between which heights, in a sentence; `None` without any.
fn range_words(held: &Topography, units: UnitSystem) -> Option<String> {
    let lowest = *held.heights_mm.iter().min()?;
    let highest = *held.heights_mm.iter().max()?;
    let long = |mm: f64| words::length(mm / 1000.0, units);
    Some(say!(
        "heights-range",
        spacing = long(f64::from(held.spacing_mm)),
        lowest = long(f64::from(lowest)),
        highest = long(f64::from(highest))
    ))
}

/// The corners of heights, to bring them into view.
pub(super) fn corners(topography: &Topography) -> [PlanPoint; 2] {
    let columns = topography.columns.max(1);
    let rows = topography.heights_mm.len() as u32 / columns;
    let along = |from: i32, count: u32| {
        let length = count.saturating_sub(1).saturating_mul(topography.spacing_mm);
        from.saturating_add_unsigned(length)
    };
    let from = topography.south_west;
    [from, PlanPoint::new(along(from.x_mm, columns), along(from.y_mm, rows))]
}

impl App {
    /// Takes the heights of the ground out of the plan, as one step.
    pub fn remove_heights(&mut self) {
        let before = self.study.document().topography.clone();
        if before.is_some() && !self.refuses() {
            self.step_with(
                say!("heights-remove-step"),
                vec![Edit::Topography { before, after: None }],
            );
        }
    }

    /// The heights of the plan in words; empty where it has none.
    #[must_use]
    pub fn heights_words(&self) -> String {
        let held = self.study.document().topography.as_ref();
        held.and_then(|held| Some(range_words(held, self.units())? + " " + &held.source))
            .unwrap_or_default()
    }
}
