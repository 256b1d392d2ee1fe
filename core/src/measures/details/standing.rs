//! What stands along the walking network, link by link, and how much of it a walk reaches.

use crate::fabric::Fabric;
use crate::measures::count::FLOOR_USES;
use crate::measures::frontage::Painted;
use crate::measures::mix;
use crate::measures::palette::BuiltType;
use crate::measures::walk_network::WalkNetwork;
use crate::network::{CostField, Direction, LinkId, Location, Network, Reach, Source, Stretch};
use crate::order;
use crate::plan::Document;

/// How many kinds are told apart: homes, then the floor area of each use.
pub(super) const KINDS: usize = 1 + mix::USES;

/// Homes, and floor area in square meters in the order of [`mix::uses`].
pub(super) type Amounts = [f64; KINDS];

/// What fronts on the walking network.
pub(super) struct Standing {
    /// In order of link and position.
    fronts: Vec<(Stretch, Amounts)>,
    /// Fronts of link `n` are those from `first[n]` to before `first[n + 1]`.
    first: Vec<u32>,
    /// By link, all that fronts on it.
    whole: Vec<Amounts>,
}

impl Standing {
    pub(super) fn of(painted: &Painted, network: &WalkNetwork) -> Self {
        let per_lot: Vec<Amounts> = painted
            .palette
            .iter()
            .map(|BuiltType { held, .. }| {
                let mut amounts = [f64::from(held.homes_per_lot), 0.0, 0.0, 0.0, 0.0, 0.0];
                for (amount, floor_use) in amounts.iter_mut().skip(1).zip(FLOOR_USES) {
                    *amount = held.floor_area_m2(floor_use) as f64;
                }
                amounts
            })
            .collect();
        let mut fronts: Vec<(Stretch, Amounts)> = Vec::new();
        for front in painted.iter().flat_map(|face| &face.fronts) {
            let mut amounts = [0.0; KINDS];
            for (id, lots) in &front.lots {
                if let Some(place) = painted.palette.place(*id) {
                    add(&mut amounts, &per_lot[place], *lots);
                }
            }
            let length_um = front.stretch.length_um();
            network.for_each_piece(front.stretch, |piece| {
                let mut part = [0.0; KINDS];
                add(&mut part, &amounts, share_of(piece.length_um(), length_um));
                fronts.push((piece, part));
            });
        }
        order::sort_by_key(&mut fronts, |(stretch, _)| *stretch);
        let links = network.network().link_count();
        let mut whole = vec![[0.0; KINDS]; links];
        let mut first = vec![0_u32; links + 1];
        for (stretch, amounts) in &fronts {
            // Pieces lie on the network's own links.
            let link = stretch.link.0 as usize;
            add(&mut whole[link], amounts, 1.0);
            first[link + 1] += 1;
        }
        for link in 0..links {
            first[link + 1] += first[link];
        }
        Self { fronts, first, whole }
    }

    /// All that fronts on a link.
    pub(super) fn on(&self, link: LinkId) -> &Amounts {
        self.whole.get(link.0 as usize).unwrap_or(&[0.0; KINDS])
    }

    /// What fronts on a link, in order of position.
    pub(super) fn fronts_on(&self, link: LinkId) -> &[(Stretch, Amounts)] {
        let place = link.0 as usize;
        let ends = self.first.get(place).zip(self.first.get(place + 1));
        ends.and_then(|(&first, &end)| self.fronts.get(first as usize..end as usize))
            .unwrap_or_default()
    }

    /// What fronts on the reached pieces, a stretch by the share of it that is reached. O(pieces + fronts on links
    /// reached in part).
    pub(super) fn within(&self, network: &Network, reach: &Reach) -> Amounts {
        let mut sum = [0.0; KINDS];
        for piece in reach.pieces() {
            let is_whole = network
                .link(piece.link)
                .is_some_and(|link| piece.length_um() == link.length_um);
            if is_whole {
                add(&mut sum, self.on(piece.link), 1.0);
                continue;
            }
            for (stretch, amounts) in self.fronts_on(piece.link) {
                let (from_um, to_um) = (stretch.from_um.max(piece.from_um), stretch.to_um.min(piece.to_um));
                if from_um < to_um || (from_um == to_um && stretch.length_um() == 0) {
                    add(&mut sum, amounts, share_of(to_um - from_um, stretch.length_um()));
                }
            }
        }
        sum
    }
}

/// The share of a stretch that a part of it is; a single place is all of itself.
fn share_of(part_um: u64, whole_um: u64) -> f64 {
    if whole_um == 0 {
        1.0
    } else {
        part_um as f64 / whole_um as f64
    }
}

fn add(sum: &mut Amounts, amounts: &Amounts, times: f64) {
    for (sum, amount) in sum.iter_mut().zip(amounts) {
        *sum += amount * times;
    }
}

/// Searches from one place after another; where the ground slopes the worse of there and back counts.
pub(super) struct Shed<'a> {
    network: &'a WalkNetwork,
    to: CostField,
    from: CostField,
}

impl<'a> Shed<'a> {
    pub(super) fn new(network: &'a WalkNetwork) -> Self {
        Self {
            network,
            to: CostField::new(),
            from: CostField::new(),
        }
    }

    /// Searches around a place on a street, as far as `seconds` at the plan's pace.
    pub(super) fn spread(&mut self, source: Source, seconds: u64) {
        let (network, limit) = (self.network.network(), seconds * self.network.cost_per_s());
        // Sources are the network's own nodes and places on its walkable links, so none is refused.
        let _to = self.to.spread(network, &[source], Direction::To, Some(limit));
        if self.network.is_sloping() {
            let _from = self.from.spread(network, &[source], Direction::From, Some(limit));
        }
    }

    /// What is within `seconds`, at most those it was spread to.
    pub(super) fn within(&self, seconds: u64) -> Reach {
        let (network, limit) = (self.network.network(), seconds * self.network.cost_per_s());
        let to = Reach::within(network, &self.to, limit);
        if self.network.is_sloping() {
            Reach::intersection(&[&to, &Reach::within(network, &self.from, limit)])
        } else {
            to
        }
    }
}

/// Homes taken to stand at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct HomePlace {
    /// Where.
    pub at: Location,
    /// How many.
    pub homes: f64,
}

/// The homes of a stretch at the middles of its equal parts, each at most `longest_um` long.
pub(super) fn sampled(stretch: Stretch, homes: f64, longest_um: u64) -> impl Iterator<Item = HomePlace> {
    let length_um = stretch.length_um();
    let parts = length_um.div_ceil(longest_um).max(1);
    (0..parts).map(move |part| HomePlace {
        at: Location {
            link: stretch.link,
            along_um: stretch.from_um + length_um * (2 * part + 1) / (2 * parts),
        },
        homes: homes / parts as f64,
    })
}

/// Where a link lies on the plan: the middle of a stretch of it, for words and for the drawing.
pub(super) fn middle_of(network: &Network, stretch: Stretch) -> crate::plan::PlanPoint {
    let at = Location {
        link: stretch.link,
        along_um: stretch.from_um + stretch.length_um() / 2,
    };
    network.point_at(at).unwrap_or_default()
}

/// The name of the street a link is part of; empty where it has none. Pieces that a barrier parts have none.
pub(super) fn street_of<'a>(
    document: &'a Document,
    alternative: crate::plan::AlternativeId,
    fabric: &Fabric,
    link: LinkId,
) -> &'a str {
    let street = fabric.links.links.get(link.0 as usize).map(|held| held.street);
    street.map_or("", |street| {
        crate::measures::streets::site_streets::street_name(document, alternative, fabric, street)
    })
}
