//! Areas of the center's walk-shed, each by a method with a name, for they differ widely.
//!
//! - frontages: the land of lots, each by the share of its front that is reached; so to lot depth, without streets,
//!   parks and land in no lot.
//! - hull: the convex hull of the reached streets. On an endless fine square grid it is 2/π of the circle, so no such
//!   grid does better. Around several centers there is none, for it would take the land between their walk-sheds too.
//! - buffer: the reached streets widened by [`crate::measures::walk::settings::SHED_BUFFER_WIDTH`] to each side.
//!
//! Each is held against the circle of the same walking distance around one point. A center drawn as a square or a stretch
//! reaches from all of it, so its ratios come out higher than those of a point; with several centers there is no ratio.
//!
//! The published target of 0.60 (workable 0.50) is of the Western Australian "Liveable Neighbourhoods" (from memory),
//! which takes the land really reached along streets, blocks with their streets and parks, by the circle of the same
//! distance about the center's middle. It is none of these three, so none of them is held against it.

use super::standing::Standing;
use super::{SHED_METHODS, SHED_WALKS_S};
use crate::fabric::Fabric;
use crate::figures::leaf::Cell;
use crate::measures::frontage::{PaintedFace, front_of_lot};
use crate::measures::walk::Walks;
use crate::measures::walk::destinations::Destination;
use crate::measures::walk::settings::SHED_BUFFER_WIDTH;
use crate::network::shed_area::{buffer_area_m2, hull_area_m2};
use crate::network::{Location, Reach};
use crate::plan::{AlternativeId, Document, Mark, PlaceKind};
use crate::say;

/// The areas in square meters, outer by method in the order of [`shed_methods`], inner by walk; `circles` is what
/// [`circle_count`] tells.
pub(super) fn shed_areas(
    document: &Document,
    fabric: &Fabric,
    painted: &[PaintedFace],
    walks: &Walks,
    circles: &Cell,
) -> Vec<Cell> {
    if let Err(reason) = walks.field(Destination::Center) {
        let all = SHED_METHODS * SHED_WALKS_S.len();
        return vec![Cell::Unknown(reason.to_owned()); all];
    }
    let reaches = SHED_WALKS_S.map(|seconds| walks.reach(Destination::Center, seconds as u32));
    let network = walks.network().network();
    let frontages = land_of_frontages(fabric, painted, walks, &reaches);
    let hulls = reaches.each_ref().map(|reach| match circles {
        Cell::Number(_) => Cell::Number(hull_area_m2(network, reach)),
        several => several.clone(),
    });
    let width_m = SHED_BUFFER_WIDTH.of(document);
    let mut cells: Vec<Cell> = Vec::new();
    cells.extend(frontages.map(Cell::Number).into_iter().chain(hulls));
    cells.extend(
        reaches
            .iter()
            .map(|reach| match buffer_area_m2(network, reach, width_m) {
                Some(area_m2) => Cell::Number(area_m2),
                None => Cell::Unknown(say!("measures-band-width").to_owned()),
            }),
    );
    cells
}

fn land_of_frontages(
    fabric: &Fabric,
    painted: &[PaintedFace],
    walks: &Walks,
    reaches: &[Reach; SHED_WALKS_S.len()],
) -> [f64; SHED_WALKS_S.len()] {
    let mut sums_m2 = [0.0; SHED_WALKS_S.len()];
    for held in painted {
        let Some(face) = fabric.face(held.face) else { continue };
        for lot in &held.laid.lots {
            let front = front_of_lot(fabric, face, lot);
            let (mut length_um, mut reached_um) = (0, [0; SHED_WALKS_S.len()]);
            for stretch in front {
                // A single place counts as a micrometer, so that it is reached or not.
                let is_place = stretch.length_um() == 0;
                length_um += if is_place { 1 } else { stretch.length_um() };
                walks.network().for_each_piece(stretch, |piece| {
                    let at = Location {
                        link: piece.link,
                        along_um: piece.from_um,
                    };
                    for (reached_um, reach) in reached_um.iter_mut().zip(reaches) {
                        *reached_um += if is_place {
                            u64::from(reach.contains(at))
                        } else {
                            reach.length_on_um(piece)
                        };
                    }
                });
            }
            let lot_m2 = lot.twice_area_mm2 as f64 / 2e6;
            for (sum_m2, reached_um) in sums_m2.iter_mut().zip(reached_um) {
                *sum_m2 += lot_m2 * (reached_um as f64 / length_um.max(1) as f64);
            }
        }
    }
    sums_m2
}

/// How many centers a circle is drawn around: one, or why the ratio to one circle says nothing.
pub(super) fn circle_count(document: &Document, alternative: AlternativeId) -> Cell {
    let marks = document.alternatives.get(&alternative).map(|held| &held.marks);
    let is_center = |mark: &&Mark| mark.as_place().is_some_and(|place| place.kind == PlaceKind::Center);
    match marks.map_or(0, |marks| marks.values().filter(is_center).count()) {
        0 => Cell::Unknown(say!("measures-no-center").to_owned()),
        1 => Cell::Number(1.0),
        _ => Cell::Unknown(say!("measures-several-centers").to_owned()),
    }
}

/// Homes within `seconds` of the center as drawn.
pub(super) fn homes_of_center(walks: &Walks, standing: &Standing, seconds: u64) -> Cell {
    if let Err(reason) = walks.field(Destination::Center) {
        return Cell::Unknown(reason.to_owned());
    }
    let reach = walks.reach(Destination::Center, seconds as u32);
    let [homes, ..] = standing.within(walks.network().network(), &reach);
    Cell::Number(homes)
}
