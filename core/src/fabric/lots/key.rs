//! What the lots of a face depend on, from the drawing.

use super::{Front, LandShare, LotKey, LotType};
use crate::fabric::plan_fabric::{Fabric, FaceOfLand};
use crate::fabric::sides::{Side, lots_front, side_spoken_of};
use crate::number;
use crate::plan::land::{Fronting, Portion};
use crate::plan::{BuildingTypeId, Document, PlanPoint, SideUse};

/// What the lots of `face` depend on under a program and what is said of its sides.
///
/// Lots front on the sides whose street section allows it, or as said; on the heads of dead ends that both lie in the
/// face. Where several things are said of one side the first counts.
#[must_use]
pub fn lot_key(
    document: &Document,
    fabric: &Fabric,
    face: &FaceOfLand,
    program: &[Portion],
    said: &[SideUse],
) -> LotKey {
    let mut said_of: Vec<Option<&SideUse>> = vec![None; face.sides.len()];
    for side_use in said {
        if let Some(side) = side_spoken_of(&fabric.arrangement, &fabric.lines, &face.sides, side_use) {
            said_of[side].get_or_insert(side_use);
        }
    }
    let mut fronts = Vec::new();
    for (index, (side, said)) in face.sides.iter().zip(&said_of).enumerate() {
        let Some((street, _)) = side.street else { continue };
        if !lots_front(&fabric.lines, side, *said) {
            continue;
        }
        let own = said
            .filter(|said| said.fronting == Fronting::Front)
            .and_then(|said| said.building_type)
            .and_then(|id| lot_type(document, id));
        let half_width_mm = fabric.lines.streets[street as usize].right_of_way_mm.div_ceil(2);
        let front = Front {
            side: index as u32,
            is_head: false,
            centerline: centerline(fabric, side),
            half_width_mm,
            own,
            setback_mm: said.and_then(|said| said.setback_mm),
        };
        let head = own.is_none().then(|| head_of(face, side, &front)).flatten();
        fronts.push(front);
        fronts.extend(head);
    }
    let shares = program.iter().filter_map(|portion| {
        Some(LandShare {
            lot_type: lot_type(document, portion.building_type)?,
            share_ppm: portion.share_ppm,
        })
    });
    LotKey {
        land: std::sync::Arc::clone(&face.land),
        fronts,
        program: shares.collect(),
    }
}

/// A building type as lots are laid for it; `None` when the palette lacks it.
#[must_use]
pub fn lot_type(document: &Document, id: BuildingTypeId) -> Option<LotType> {
    let held = document.building_types.get(&id)?;
    Some(LotType {
        id,
        width_mm: held.lot_width_mm,
        depth_mm: held.lot_depth_mm,
        coverage_thousandths: held.coverage_thousandths,
        has_homes: held.homes_per_lot > 0,
        is_built: held.homes_per_lot > 0 || !held.stories.is_empty(),
    })
}

fn centerline(fabric: &Fabric, side: &Side) -> Vec<PlanPoint> {
    let arrangement = &fabric.arrangement;
    let first = side.half_edges.first().map(|half_edge| arrangement.origin(*half_edge));
    let targets = side.half_edges.iter().map(|half_edge| arrangement.target(*half_edge));
    first
        .into_iter()
        .chain(targets)
        .map(|vertex| arrangement.point(vertex))
        .collect()
}

/// The head of the dead end at the end of a side: as wide as the right-of-way, beyond the street's end by half of it.
fn head_of(face: &FaceOfLand, side: &Side, front: &Front) -> Option<Front> {
    let back = side.half_edges.last()?.twin();
    let turns_back = face.sides.iter().any(|other| other.half_edges.first() == Some(&back));
    let [.., before, tip] = front.centerline.as_slice() else {
        return None;
    };
    let (x, y) = (
        f64::from(tip.x_mm) - f64::from(before.x_mm),
        f64::from(tip.y_mm) - f64::from(before.y_mm),
    );
    let length = number::length(x, y);
    if !turns_back || length <= 0.0 {
        return None;
    }
    let reach = f64::from(front.half_width_mm) / length;
    // Across the street, from its left to its right, so that what lies beyond is on the left.
    let moved = |sign: f64| {
        PlanPoint::new(
            tip.x_mm + (sign * y * reach).round() as i32,
            tip.y_mm - (sign * x * reach).round() as i32,
        )
    };
    Some(Front {
        is_head: true,
        centerline: vec![moved(-1.0), moved(1.0)],
        ..front.clone()
    })
}
