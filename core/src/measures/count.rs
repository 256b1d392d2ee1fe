//! From a fabric to the leaf values of the figures: what is counted on the drawing.

use crate::fabric::Fabric;
use crate::figures::axis::Entry;
use crate::measures::frontage::PaintedFace;
use crate::measures::{BuildingTypeInput, MeasureInputs, WalkCurve, mix};
use crate::network::profile::CostProfile;
use crate::network::weight_curve::WeightCurve;
use crate::network::{CostField, Network};
use crate::plan::{BuildingType, Document, FloorUse};

/// Step between the walking times of a curve, in seconds: 10 s is 13 m of street at a planning pace. Between knots the
/// curve is a straight line, at knots it is exact. Smaller makes longer tables; larger blurs the edge of a shed.
pub const WALK_KNOT_S: u64 = 10;

/// The last walking time of a curve before "the whole site", in seconds: half an hour.
pub const WALK_LAST_KNOT_S: u64 = 1_800;

/// The floor uses in the order of [`mix::USES`].
const FLOOR_USES: [FloorUse; mix::USES.len()] = [
    FloorUse::Home,
    FloorUse::Work,
    FloorUse::Shop,
    FloorUse::Learning,
    FloorUse::Gathering,
];

/// Counts a fabric. `walk` is the cost field of the walk to the center, or why there is none.
#[must_use]
pub fn count(
    document: &Document,
    fabric: &Fabric,
    painted: &[PaintedFace],
    network: &Network,
    walk: Result<&CostField, String>,
) -> MeasureInputs {
    let types: Vec<_> = document.building_types.iter().collect();
    let place_of = |id| types.iter().position(|(held, _)| **held == id);
    let mut lots = vec![vec![0.0; painted.len()]; types.len()];
    for (face, painted) in painted.iter().enumerate() {
        for (building_type, count) in &painted.lots {
            if let Some(place) = place_of(*building_type) {
                lots[place][face] += count;
            }
        }
    }
    let pace_mm_per_s = u64::from(document.settings.walking_pace_mm_per_s.max(1));
    MeasureInputs {
        building_types: types.iter().map(|(id, one)| building_type_input(id.0, one)).collect(),
        faces: painted
            .iter()
            .map(|painted| Entry::new(format!("mark_{}", painted.mark), face_name(fabric, painted)))
            .collect(),
        center_walk: walk.map(|field| walk_curve(document, painted, network, field, pace_mm_per_s)),
        base_speed_m_per_s: pace_mm_per_s as f64 / 1e3,
        lots,
    }
}

fn building_type_input(id: u32, one: &BuildingType) -> BuildingTypeInput {
    BuildingTypeInput {
        entry: Entry::new(format!("type_{id}"), one.name.clone()),
        homes_per_lot: f64::from(one.homes_per_lot),
        people_per_home: f64::from(one.persons_per_home_thousandths) / 1e3,
        floor_per_lot_m2: FLOOR_USES.map(|floor_use| one.floor_area_m2(floor_use) as f64),
    }
}

/// A face is told by where it is: the drawing shows it, the words only help to find it again.
fn face_name(fabric: &Fabric, painted: &PaintedFace) -> String {
    let (east_m, north_m) = fabric.face(painted.face).map_or((0.0, 0.0), |face| face.anchor.to_m());
    format!("face at {east_m:.0} m east, {north_m:.0} m north")
}

/// Homes within each walking time: exact at the knots. Homes of a lot are spread evenly over its front.
fn walk_curve(
    document: &Document,
    painted: &[PaintedFace],
    network: &Network,
    field: &CostField,
    pace_mm_per_s: u64,
) -> WalkCurve {
    let mut times_s: Vec<u64> = (0..=WALK_LAST_KNOT_S / WALK_KNOT_S)
        .map(|knot| knot * WALK_KNOT_S)
        .collect();
    // A pace of one millimeter per second is a thousand micrometers of cost per second.
    let um_per_s = pace_mm_per_s * 1000;
    // Beyond the farthest node lies at most one link: that is past everything reached.
    let longest_um = network.links().iter().map(|link| link.length_um).max().unwrap_or(0);
    let farthest_s = (field.farthest_node_cost().unwrap_or(0) + longest_um).div_ceil(um_per_s);
    times_s.push(farthest_s.max(WALK_LAST_KNOT_S + WALK_KNOT_S));
    let knots: Vec<u64> = times_s.iter().map(|time_s| time_s * um_per_s).collect();
    let mut curve = WeightCurve::new(&knots);
    for front in painted.iter().flat_map(|painted| &painted.fronts) {
        let homes: f64 = front
            .lots
            .iter()
            .filter_map(|(id, lots)| Some(lots * f64::from(document.building_types.get(id)?.homes_per_lot)))
            .sum();
        if homes <= 0.0 {
            continue;
        }
        if let Some(profile) = CostProfile::along(network, field, front.stretch) {
            // Homes are finite and below the curve's limit: a plan of 100 km squared has less than 10^12 square meters.
            let _is_added = curve.add(&profile, homes);
        }
    }
    WalkCurve {
        times_s: times_s.into_iter().map(|time_s| time_s as f64).collect(),
        homes: curve.weight_within(),
    }
}
