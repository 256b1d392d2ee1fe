//! Mix as those who live there meet it: how even the floor area of the five uses is that a home reaches on foot.
//!
//! Homes stand at the mean place of the homes on each part of a street of at most [`LONGEST_PART_UM`] between
//! intersections, and each place is searched from once; so a home at the end of a part is up to half its length from
//! where it is taken to stand. Floor area counts by the share of its front that is reached. Evenness is
//! [`mix::EVENNESS`] over the five uses, weighted by homes; those in which all reached floor is of one use count as 0.

use super::standing::{HomePlace, Shed, Standing};
use super::{MixedFront, SHED_WALKS_S};
use crate::measures::mix;
use crate::measures::walk::Walks;
use crate::network::{LinkId, Location, Source, Stretch};

/// The longest part of a street whose homes are searched from as one place: 100 m, a short block. Smaller is nearer to
/// every home's own reach and takes longer in proportion.
pub const LONGEST_PART_UM: u64 = 100_000_000;

/// Homes with floor area in reach, and their evenness added up, for each of [`SHED_WALKS_S`].
#[derive(Default)]
pub(super) struct ReachedMix {
    pub homes: [f64; SHED_WALKS_S.len()],
    pub sums: [f64; SHED_WALKS_S.len()],
    /// The same for the first of those walks, place by place.
    pub fronts: Vec<MixedFront>,
}

/// Works out mix as reached. Cost: a bounded search for each place homes stand at.
pub(super) fn reached_mix(walks: &Walks, standing: &Standing) -> ReachedMix {
    let network = walks.network().network();
    let mut shed = Shed::new(walks.network());
    let mut worked = ReachedMix::default();
    let farthest_s = SHED_WALKS_S[SHED_WALKS_S.len() - 1];
    for (id, link) in network.link_ids().zip(network.links()) {
        if standing.on(id)[0] <= 0.0 {
            continue;
        }
        for (place, front) in home_places(standing, id, link.length_um) {
            shed.spread(Source::location(place.at), farthest_s);
            for (walk, seconds) in SHED_WALKS_S.into_iter().enumerate() {
                let reached = standing.within(network, &shed.within(seconds));
                let mut evenness = [0.0];
                if (mix::EVENNESS.evaluate)(&[&reached[1..]], &mut evenness).is_ok() {
                    worked.homes[walk] += place.homes;
                    worked.sums[walk] += place.homes * evenness[0];
                    if walk == 0 {
                        worked.fronts.push(MixedFront {
                            line: network.stretch_points(front),
                            evenness: evenness[0],
                            homes: place.homes,
                        });
                    }
                }
            }
        }
    }
    worked
}

/// Where the homes of a link are taken to stand, and from where to where they front: one place for each of its equal
/// parts that holds any.
fn home_places(standing: &Standing, link: LinkId, length_um: u64) -> Vec<(HomePlace, Stretch)> {
    let parts = length_um.div_ceil(LONGEST_PART_UM).max(1);
    let mut places = Vec::new();
    for part in 0..parts {
        let [from_um, to_um] = [part, part + 1].map(|end| length_um * end / parts);
        let (mut homes, mut moment) = (0.0, 0.0);
        let mut front_um = [to_um, from_um];
        for (stretch, amounts) in standing.fronts_on(link) {
            let (low_um, high_um) = (stretch.from_um.max(from_um), stretch.to_um.min(to_um));
            // A single place on a cut belongs to the part after it.
            let is_in = stretch.length_um() == 0
                && from_um <= stretch.from_um
                && (stretch.from_um < to_um || part + 1 == parts);
            let held = if is_in {
                amounts[0]
            } else if low_um < high_um {
                amounts[0] * ((high_um - low_um) as f64 / stretch.length_um() as f64)
            } else {
                continue;
            };
            if held > 0.0 {
                front_um = [front_um[0].min(low_um), front_um[1].max(high_um)];
            }
            homes += held;
            moment += held * (low_um + high_um) as f64 / 2.0;
        }
        if homes > 0.0 {
            let at = Location {
                link,
                along_um: ((moment / homes).round() as u64).clamp(from_um, to_um),
            };
            let [from_um, to_um] = front_um;
            places.push((HomePlace { at, homes }, Stretch { link, from_um, to_um }));
        }
    }
    places
}
