//! How direct the walk is from homes to the nearest center and to the nearest of each daily need: its length by the
//! straight distance to the nearest of it.
//!
//! Lengths are of streets alone, without waits and slopes, and exact. Both distances end where the place meets the
//! street. Homes stand on their fronts, in the middles of equal parts of at most [`LONGEST_PART_UM`]. Homes nearer than
//! [`NEAREST_UM`] are there already and left out, and so are homes that can not walk there at all. Form: pedestrian
//! route directness ([`crate::network::directness`]), 1 or more.

use super::standing::{HomePlace, middle_of, sampled, street_of};
use super::straight::Straight;
use super::{IndirectFront, TO};
use crate::fabric::Fabric;
use crate::figures::leaf::Cell;
use crate::measures::frontage::PaintedFace;
use crate::measures::streets::site_streets::named_place;
use crate::measures::walk::Walks;
use crate::measures::walk::destinations::Destination;
use crate::measures::walk::sources::ends;
use crate::measures::walk_network::WalkNetwork;
use crate::network::{CostField, Direction, LinkId, Source, Stretch};
use crate::order;
use crate::plan::{AlternativeId, Document, PlanPoint};
use crate::say;

/// The longest front that is walked from as one place: 10 m, the width of a lot or two.
pub const LONGEST_PART_UM: u64 = 10_000_000;

/// Walks shorter than this have no directness: 1 m. Rounding to the millimeter would show in them.
pub const NEAREST_UM: u64 = 1_000_000;

/// Why there is no directness where nobody has a walk.
fn no_walks() -> &'static str {
    say!("measures-no-walks")
}

/// How many of the least direct stretches of front are kept.
pub const MOST_FRONTS: usize = 10;

/// What is worked out, by destination in the order of [`TO`].
#[derive(Default)]
pub(super) struct Directness {
    /// Homes with a walk to it.
    pub homes: Vec<Cell>,
    /// Their directness, added up.
    pub sums: Vec<Cell>,
    /// What nine tenths of them do not exceed.
    pub most_of: Vec<Cell>,
    /// The least direct stretches of front on the way to a center, the worst first.
    pub worst: Vec<IndirectFront>,
}

/// Works out directness. Cost: a search without a limit for each destination, and for each place homes stand at the
/// pieces of the destination's streets about as far west and east as the walk is long.
pub(super) fn directness(
    document: &Document,
    alternative: AlternativeId,
    fabric: &Fabric,
    painted: &[PaintedFace],
    walks: &Walks,
) -> Directness {
    let mut worked = Directness::default();
    let lengths = WalkNetwork::of_lengths(document, alternative, fabric);
    let lengths = match lengths {
        Ok(lengths) => lengths,
        Err(faults) => {
            let reason = faults.first().map_or_else(String::new, ToString::to_string);
            TO.iter().for_each(|_| worked.add_unknown(&reason));
            return worked;
        }
    };
    let homes: Vec<HomePlace> = walks
        .homes()
        .fronts
        .iter()
        .flat_map(|front| sampled(front.stretch, front.homes, LONGEST_PART_UM))
        .collect();
    let ends = ends(document, alternative, fabric, painted, walks.fronts(), &lengths);
    for destination in TO {
        if let Err(reason) = walks.field(destination) {
            worked.add_unknown(reason);
            continue;
        }
        let sources = ends
            .get(destination as usize)
            .map_or(&[][..], |ends| ends.all.as_slice());
        let at_the_street: Vec<Source> = sources.iter().map(|source| source.starting_at(0)).collect();
        let ratios = ratios(&lengths, &at_the_street, &homes);
        worked.add(&ratios);
        if destination == Destination::Center {
            worked.worst = worst(&ratios, &lengths, |link, at| {
                named_place(
                    street_of(document, alternative, fabric, link),
                    say!("measures-place-front"),
                    at,
                    document.settings.units,
                )
            });
        }
    }
    worked
}

/// Each place with a walk to the sources, and its directness.
pub(super) fn ratios(lengths: &WalkNetwork, sources: &[Source], homes: &[HomePlace]) -> Vec<(f64, HomePlace)> {
    let network = lengths.network();
    let mut field = CostField::new();
    // Sources lie on the network's walkable links, so none is refused.
    let _to = field.spread(network, sources, Direction::To, None);
    let straight = Straight::of(network, sources);
    let ratio = |place: &HomePlace| {
        let walk_um = field.at(network, place.at).filter(|walk_um| *walk_um >= NEAREST_UM)?;
        let walk_m = walk_um as f64 / 1e6;
        // A millimeter more, since corners are rounded to it.
        let straight_m = straight.distance_m(network.position_m(place.at)?, walk_m + 1e-3)?;
        (straight_m > 0.0).then(|| (walk_m / straight_m, *place))
    };
    homes.iter().filter_map(ratio).collect()
}

impl Directness {
    fn add_unknown(&mut self, reason: &str) {
        for cells in [&mut self.homes, &mut self.sums, &mut self.most_of] {
            cells.push(Cell::Unknown(reason.to_owned()));
        }
    }

    fn add(&mut self, ratios: &[(f64, HomePlace)]) {
        let homes: f64 = ratios.iter().map(|(_, place)| place.homes).sum();
        if homes <= 0.0 {
            return self.add_unknown(no_walks());
        }
        let sum: f64 = ratios.iter().map(|(ratio, place)| ratio * place.homes).sum();
        let mut sorted: Vec<(f64, f64)> = ratios.iter().map(|(ratio, place)| (*ratio, place.homes)).collect();
        order::sort_by(&mut sorted, |a, b| a.0.total_cmp(&b.0));
        let mut passed = 0.0;
        let most_of = sorted.iter().find(|(_, homes_here)| {
            passed += homes_here;
            passed >= 0.9 * homes
        });
        self.homes.push(Cell::Number(homes));
        self.sums.push(Cell::Number(sum));
        self.most_of.push(most_of.or(sorted.last()).map_or_else(
            || Cell::Unknown(no_walks().to_owned()),
            |(ratio, _)| Cell::Number(*ratio),
        ));
    }
}

/// The links whose homes have the least direct walks in the mean; of equals the one farther west, then south.
fn worst(
    ratios: &[(f64, HomePlace)],
    lengths: &WalkNetwork,
    title: impl Fn(LinkId, PlanPoint) -> String,
) -> Vec<IndirectFront> {
    let network = lengths.network();
    let mut fronts: Vec<(f64, PlanPoint, Stretch, f64)> = Vec::new();
    // Places stand in order of link.
    for on_link in ratios.chunk_by(|a, b| a.1.at.link == b.1.at.link) {
        let Some((_, first)) = on_link.first() else { continue };
        let along = || on_link.iter().map(|(_, place)| place.at.along_um);
        let stretch = Stretch {
            link: first.at.link,
            from_um: along().min().unwrap_or(0),
            to_um: along().max().unwrap_or(0),
        };
        let homes: f64 = on_link.iter().map(|(_, place)| place.homes).sum();
        let sum: f64 = on_link.iter().map(|(ratio, place)| ratio * place.homes).sum();
        fronts.push((sum / homes, middle_of(network, stretch), stretch, homes));
    }
    order::sort_by(&mut fronts, |a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let fronts = fronts.into_iter().take(MOST_FRONTS);
    let fronts = fronts.map(|(directness, at, stretch, homes)| IndirectFront {
        title: title(stretch.link, at),
        line: network.stretch_points(stretch),
        directness,
        homes,
    });
    fronts.collect()
}
