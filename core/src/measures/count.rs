//! From a fabric to the leaf values of the figures: what is counted on the drawing.

use crate::order::OrderedMap;

use crate::fabric::Fabric;
use crate::figures::axis::Entry;
use crate::measures::form::FormInputs;
use crate::measures::frontage::{Painted, PaintedFace};
use crate::measures::palette::BuiltType;
use crate::measures::streets::StreetInputs;
use crate::measures::walk::Walks;
use crate::measures::{BuildingTypeInput, MeasureInputs, mix};
use crate::plan::document::UnitSystem;
use crate::plan::{Document, FloorUse, MarkId};
use crate::say;

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

/// Counts a fabric and the walks in it; `streets` is what was counted of streets and blocks, `form` of land and the
/// program.
#[must_use]
pub fn count(
    document: &Document,
    fabric: &Fabric,
    painted: &Painted,
    walks: &Walks,
    streets: StreetInputs,
    form: FormInputs,
) -> MeasureInputs {
    let types = &painted.palette;
    let mut lots = vec![vec![0.0; painted.len()]; types.len()];
    for (face, painted) in painted.iter().enumerate() {
        for (building_type, count) in &painted.lots {
            if let Some(place) = types.place(*building_type) {
                lots[place][face] += count;
            }
        }
    }
    MeasureInputs {
        building_types: types.iter().map(building_type_input).collect(),
        faces: face_entries(fabric, painted, document.settings.units),
        lots,
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

/// One entry for each painted face. A use mark speaks for one face; a soft area for every block that takes its program.
fn face_entries(fabric: &Fabric, painted: &[PaintedFace], units: UnitSystem) -> Vec<Entry> {
    let mut faces_of: OrderedMap<MarkId, u32> = OrderedMap::new();
    let entries = painted.iter().map(|painted| {
        let faces = faces_of.entry(painted.mark).or_insert(0);
        *faces += 1;
        let id = match faces {
            1 => format!("mark_{}", painted.mark),
            more => format!("mark_{}_{more}", painted.mark),
        };
        Entry::new(id, face_name(fabric, painted, units))
    });
    entries.collect()
}

/// A face is told by where it is: the drawing shows it, the words only help to find it again.
fn face_name(fabric: &Fabric, painted: &PaintedFace, units: UnitSystem) -> String {
    let at = fabric
        .face(painted.face)
        .map_or_else(Default::default, |face| face.anchor);
    say!("measures-face-at").to_owned() + " " + &at.in_words(units)
}
