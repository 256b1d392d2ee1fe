//! Homes by walking time: exact at the knots, straight lines between.

use super::sources::Front;
use crate::measures::walk_network::WalkNetwork;
use crate::network::cost_pieces::CostPieces;
use crate::network::weight_curve::WeightCurve;
use crate::network::{LinkId, Stretch};
use crate::order;

/// Step between the first walking times of a curve, in seconds: 10 s is 13 m of street at a planning pace. Smaller makes
/// longer tables; larger blurs the edge of a shed.
const FINE_STEP_S: u64 = 10;

/// To here times are [`FINE_STEP_S`] apart: ten minutes at twice the base speed's slowest reading, with some to spare.
const FINE_END_S: u64 = 900;

/// Step between the later walking times.
const COARSE_STEP_S: u64 = 30;

/// The last walking time of a curve: half an hour. Nobody is searched for beyond it.
pub const LAST_KNOT_S: u64 = 1_800;

const FINE_KNOTS: usize = (FINE_END_S / FINE_STEP_S) as usize + 1;
const KNOTS: usize = FINE_KNOTS + ((LAST_KNOT_S - FINE_END_S) / COARSE_STEP_S) as usize;

/// The walking times of every curve, in seconds.
pub const KNOTS_S: [u64; KNOTS] = {
    let mut knots = [0; KNOTS];
    let mut place = 0;
    while place < KNOTS {
        knots[place] = if place < FINE_KNOTS {
            place as u64 * FINE_STEP_S
        } else {
            FINE_END_S + (place + 1 - FINE_KNOTS) as u64 * COARSE_STEP_S
        };
        place += 1;
    }
    knots
};

/// Homes along a stretch of the walking network.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HomeFront {
    /// The stretch.
    pub stretch: Stretch,
    /// Which of [`HomeFronts::links`] it lies on.
    pub place: usize,
    /// How many homes.
    pub homes: f64,
}

/// Where homes stand on the walking network.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HomeFronts {
    /// The links homes front on, in order.
    pub links: Vec<LinkId>,
    /// The stretches, in order of link.
    pub fronts: Vec<HomeFront>,
}

impl HomeFronts {
    /// The homes of these fronts; those on streets nobody walks are left out.
    #[must_use]
    pub fn of(network: &WalkNetwork, fronts: &[Front]) -> Self {
        let mut held = Self::default();
        for front in fronts {
            let [homes, ..] = front.amounts;
            if homes <= 0.0 {
                continue;
            }
            let length_um = front.stretch.length_um();
            network.for_each_piece(front.stretch, |stretch| {
                let share = if length_um == 0 {
                    1.0
                } else {
                    stretch.length_um() as f64 / length_um as f64
                };
                held.fronts.push(HomeFront {
                    stretch,
                    place: 0,
                    homes: homes * share,
                });
            });
        }
        order::sort_by_key(&mut held.fronts, |front| front.stretch);
        for front in &mut held.fronts {
            if held.links.last() != Some(&front.stretch.link) {
                held.links.push(front.stretch.link);
            }
            front.place = held.links.len() - 1;
        }
        held
    }

    /// Homes within each of [`KNOTS_S`], by the cost along [`HomeFronts::links`].
    #[must_use]
    pub fn within(&self, pieces: &CostPieces, curve: &mut WeightCurve) -> Vec<f64> {
        curve.clear();
        for front in &self.fronts {
            let Stretch { from_um, to_um, .. } = front.stretch;
            // Homes of one front are finite and far below the curve's limit: a front is at most 200 km long.
            let _is_added = curve.add_along(pieces.of_link(front.place), from_um, to_um, front.homes);
        }
        curve.weight_within()
    }
}
