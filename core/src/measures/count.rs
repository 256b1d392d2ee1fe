//! From a fabric to the leaf values of the figures: what is counted on the drawing.

use crate::figures::axis::Entry;
use crate::measures::form::FormInputs;
use crate::measures::frontage::Painted;
use crate::measures::palette::BuiltType;
use crate::measures::streets::StreetInputs;
use crate::measures::walk::Walks;
use crate::measures::{BuildingTypeInput, MeasureInputs, mix};
use crate::plan::{Document, FloorUse};

/// The floor uses in the order of [`mix::uses`].
pub(super) const FLOOR_USES: [FloorUse; mix::USES] = [
    FloorUse::Home,
    FloorUse::Work,
    FloorUse::Shop,
    FloorUse::Learning,
    FloorUse::Gathering,
];

/// Those with jobs, in the same order.
pub(crate) const WORKPLACES: [FloorUse; mix::WORKPLACES] =
    [FloorUse::Work, FloorUse::Shop, FloorUse::Learning, FloorUse::Gathering];

/// Counts building types and walks; `streets` is what was counted of streets and blocks, `form` of land, lots and the
/// program.
#[must_use]
pub fn count(
    document: &Document,
    painted: &Painted,
    walks: &Walks,
    streets: StreetInputs,
    form: FormInputs,
) -> MeasureInputs {
    MeasureInputs {
        building_types: painted.palette.iter().map(building_type_input).collect(),
        walk: walks.input(document),
        streets,
        form,
        details: None,
    }
}

fn building_type_input(built: &BuiltType) -> BuildingTypeInput {
    let one = &built.held;
    BuildingTypeInput {
        entry: Entry::new(built.entry_id.clone(), one.name.clone()),
        homes_per_lot: f64::from(one.homes_per_lot),
        people_per_home: f64::from(one.persons_per_home_thousandths) / 1e3,
        floor_per_lot_m2: FLOOR_USES.map(|floor_use| one.floor_area_m2(floor_use) as f64),
        jobs_per_m2: WORKPLACES.map(|floor_use| {
            let jobs = one.jobs_ten_thousandths(floor_use) as f64 / 1e4;
            // Of no floor there are no jobs.
            jobs / (one.floor_area_m2(floor_use) as f64).max(1.0)
        }),
    }
}
