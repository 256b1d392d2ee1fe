//! The walking network of a plan, the walks to every destination, and homes by walking time.
//!
//! One search serves all destinations that end at the same places; nothing is searched for that is not drawn, nor
//! beyond the last knot of the curves. Memory is kept from one edit to the next.

use super::WalkInput;
use super::curves::{HomeFronts, KNOTS_S, LAST_KNOT_S};
use super::destinations::Destination;
use super::settings;
use super::sources::{AllEnds, Front, ends, fronts};
use crate::fabric::Fabric;
use crate::measures::frontage::Painted;
use crate::measures::walk_network::WalkNetwork;
use crate::network::cost_pieces::CostPieces;
use crate::network::graph::NetworkFault;
use crate::network::weight_curve::WeightCurve;
use crate::network::{CostField, Direction, Location, Network, Reach, Source, Stretch};
use crate::order;
use crate::plan::{AlternativeId, Document, Mark, PlaceKind};
use crate::say;

/// How the walk to one destination is found.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Found {
    /// By a search of its own or shared with others.
    Search(usize),
    /// There is nothing of it, so nobody is within any time.
    Nobody,
    /// It can not be worked out: `no neighborhood center is drawn`.
    Unknown(String),
}

/// One search: costs to its sources, and from them where the ground slopes.
#[derive(Clone, Debug, Default)]
struct Search {
    sources: Vec<Source>,
    to: CostField,
    from: CostField,
    pieces: CostPieces,
    from_pieces: CostPieces,
    worse_pieces: CostPieces,
}

/// A part of a street from which the same of the five daily needs are within a walk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NeedsReached {
    /// The part, on the walking network.
    pub stretch: Stretch,
    /// Whether each of [`Destination::NEEDS`] is reached.
    pub needs: [bool; Destination::NEEDS.len()],
}

/// The walks of one plan. See the [module](self).
#[derive(Clone, Debug)]
pub struct Walks {
    network: WalkNetwork,
    fronts: Vec<Front>,
    homes: HomeFronts,
    searches: Vec<Search>,
    /// By destination; for a need also without what is hoped for.
    found: Vec<Found>,
    sure: Vec<Found>,
}

impl Walks {
    /// Works out every walk.
    ///
    /// # Errors
    /// What the network refuses; a fabric gives it no reason to.
    pub fn of(
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        painted: &Painted,
    ) -> Result<Self, Vec<NetworkFault>> {
        let mut walks = Self {
            network: WalkNetwork::of(document, alternative, fabric)?,
            fronts: Vec::new(),
            homes: HomeFronts::default(),
            searches: Vec::new(),
            found: Vec::new(),
            sure: Vec::new(),
        };
        walks.search(document, alternative, fabric, painted);
        Ok(walks)
    }

    /// Brings every walk up to the fabric; the result equals [`Walks::of`].
    ///
    /// # Errors
    /// What the network refuses; everything is then as it was.
    pub fn renew(
        &mut self,
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        painted: &Painted,
    ) -> Result<(), Vec<NetworkFault>> {
        self.network = WalkNetwork::of(document, alternative, fabric)?;
        self.search(document, alternative, fabric, painted);
        Ok(())
    }

    fn search(&mut self, document: &Document, alternative: AlternativeId, fabric: &Fabric, painted: &Painted) {
        self.fronts = fronts(painted);
        self.homes = HomeFronts::of(&self.network, &self.fronts);
        let all_ends: AllEnds = ends(document, alternative, fabric, painted, &self.fronts, &self.network);
        let is_walkable = self.network.network().links().iter().any(|link| link.walkable);
        let drawn = kinds_of_places(document, alternative);
        let mut used = 0;
        self.found.clear();
        self.sure.clear();
        for (destination, ends) in Destination::ALL.into_iter().zip(all_ends) {
            let is_drawn = drawn.iter().any(|kind| has_place(*kind, destination));
            let all = self.find(destination, ends.all, &mut used, is_walkable, is_drawn);
            let sure = if destination.need().is_some() {
                self.find(destination, ends.sure, &mut used, is_walkable, is_drawn)
            } else {
                all.clone()
            };
            self.found.push(all);
            self.sure.push(sure);
        }
        self.searches.truncate(used);
        let limit = LAST_KNOT_S * self.network.cost_per_s();
        for search in &mut self.searches {
            search.run(&self.network, &self.homes, limit);
        }
    }

    /// The search that serves these sources, begun if need be.
    fn find(
        &mut self,
        destination: Destination,
        sources: Vec<Source>,
        used: &mut usize,
        is_walkable: bool,
        is_drawn: bool,
    ) -> Found {
        if matches!(destination, Destination::AllFive | Destination::AllFiveSure) {
            return Found::Nobody;
        }
        if sources.is_empty() {
            return match nothing_drawn(destination) {
                _ if destination.need().is_some() => Found::Nobody,
                _ if is_drawn && !is_walkable => Found::Unknown(say!("measures-no-walkable-street").to_owned()),
                reason => Found::Unknown(reason.to_owned()),
            };
        }
        if let Some(same) = self
            .searches
            .iter()
            .take(*used)
            .position(|held| held.sources == sources)
        {
            return Found::Search(same);
        }
        if *used == self.searches.len() {
            self.searches.push(Search::default());
        }
        if let Some(search) = self.searches.get_mut(*used) {
            search.sources = sources;
        }
        *used += 1;
        Found::Search(*used - 1)
    }

    /// The walking network.
    #[must_use]
    pub const fn network(&self) -> &WalkNetwork {
        &self.network
    }

    /// What stands along the streets, in order of link and position.
    #[must_use]
    pub fn fronts(&self) -> &[Front] {
        &self.fronts
    }

    /// Where homes stand on the walking network.
    #[must_use]
    pub fn homes(&self) -> &HomeFronts {
        &self.homes
    }

    /// Costs of the walk to the nearest of a destination; `None` for all five, which is no walk to one place.
    ///
    /// # Errors
    /// Why there is none, in words.
    pub fn field(&self, destination: Destination) -> Result<Option<&CostField>, &str> {
        match self.found.get(destination as usize) {
            Some(Found::Search(search)) => Ok(self.searches.get(*search).map(|search| &search.to)),
            Some(Found::Unknown(reason)) => Err(reason),
            Some(Found::Nobody) | None if destination.need().is_some() => Err(nothing_drawn(destination)),
            Some(Found::Nobody) | None => Ok(None),
        }
    }

    /// The sources of the walk to a destination; none where there is nothing of it.
    #[must_use]
    pub fn sources(&self, destination: Destination) -> &[Source] {
        self.search_of(&self.found, destination)
            .map_or(&[], |search| &search.sources)
    }

    fn search_of(&self, found: &[Found], destination: Destination) -> Option<&Search> {
        match found.get(destination as usize) {
            Some(Found::Search(search)) => self.searches.get(*search),
            _ => None,
        }
    }

    /// The streets from which a destination is within `seconds` of walking at the base speed, there and, where the
    /// ground slopes, back. `seconds` are held to half an hour.
    #[must_use]
    pub fn reach(&self, destination: Destination, seconds: u32) -> Reach {
        let limit = u64::from(seconds).min(LAST_KNOT_S) * self.network.cost_per_s();
        let found = if destination == Destination::AllFiveSure {
            &self.sure
        } else {
            &self.found
        };
        let one = |destination| {
            let search = self.search_of(found, destination);
            search.map_or_else(Reach::default, |search| search.reach(&self.network, limit))
        };
        if matches!(destination, Destination::AllFive | Destination::AllFiveSure) {
            let needs = Destination::NEEDS.map(one);
            Reach::intersection(&needs.each_ref())
        } else {
            one(destination)
        }
    }

    /// Along every front, which of the five daily needs are within `seconds`: parts in order of link and position,
    /// each as long as nothing changes. Lots at the head of a dead end are a part without length.
    #[must_use]
    pub fn needs_reached(&self, seconds: u32) -> Vec<NeedsReached> {
        let reaches = Destination::NEEDS.map(|need| self.reach(need, seconds));
        let mut stretches: Vec<Stretch> = Vec::new();
        for front in &self.fronts {
            self.network
                .for_each_piece(front.stretch, |piece| stretches.push(piece));
        }
        let fronts = Reach::of_stretches(&stretches);
        let mut parts: Vec<NeedsReached> = Vec::new();
        for piece in fronts.pieces() {
            let on_link = reaches.each_ref().map(|reach| reach.on_link(piece.link));
            let inner = on_link
                .iter()
                .copied()
                .flatten()
                .flat_map(|held| [held.from_um, held.to_um]);
            let mut cuts: Vec<u64> = inner.filter(|cut| piece.from_um < *cut && *cut < piece.to_um).collect();
            cuts.extend([piece.from_um, piece.to_um]);
            order::sort(&mut cuts);
            cuts.dedup();
            for pair in cuts.windows(2) {
                let (from_um, to_um) = (pair[0], pair[1]);
                let needs = on_link.map(|held| held.iter().any(|held| held.from_um <= from_um && to_um <= held.to_um));
                match parts.last_mut() {
                    Some(last)
                        if last.needs == needs && last.stretch.link == piece.link && last.stretch.to_um == from_um =>
                    {
                        last.stretch.to_um = to_um;
                    }
                    _ => parts.push(NeedsReached {
                        stretch: Stretch {
                            link: piece.link,
                            from_um,
                            to_um,
                        },
                        needs,
                    }),
                }
            }
        }
        for place in stretches.into_iter().filter(|stretch| stretch.length_um() == 0) {
            let at = Location {
                link: place.link,
                along_um: place.from_um,
            };
            parts.push(NeedsReached {
                stretch: place,
                needs: reaches.each_ref().map(|reach| reach.contains(at)),
            });
        }
        order::sort_by_key(&mut parts, |part| part.stretch);
        parts.dedup();
        parts
    }

    /// The streets that homes front on. Lots at the head of a dead end front on a place without length, and are none of it.
    ///
    /// Cost: sorts the fronts.
    #[must_use]
    pub fn home_fronts(&self) -> Reach {
        let homes = Destination::Homes.need().unwrap_or_default();
        let mut stretches: Vec<Stretch> = Vec::new();
        for front in self.fronts.iter().filter(|front| front.amounts[homes] > 0.0) {
            self.network
                .for_each_piece(front.stretch, |piece| stretches.push(piece));
        }
        Reach::of_stretches(&stretches)
    }

    /// Homes from which each of the five daily needs is within each of these walks at the plan's pace, in seconds and
    /// rising, without what is only hoped for: outer by need, inner by walk.
    #[must_use]
    pub fn sure_homes_within(&self, walks_s: &[u64]) -> Vec<Vec<f64>> {
        let knots: Vec<u64> = walks_s
            .iter()
            .map(|time_s| time_s * self.network.cost_per_s())
            .collect();
        let mut curve = WeightCurve::new(&knots);
        let mut of_need = |need| match self.search_of(&self.sure, need) {
            Some(search) => self.homes.within(search.worse(&self.network), &mut curve),
            None => vec![0.0; walks_s.len()],
        };
        Destination::NEEDS.iter().map(|need| of_need(*need)).collect()
    }

    /// What the figures count.
    #[must_use]
    pub fn input(&self, document: &Document) -> WalkInput {
        let knots: Vec<u64> = KNOTS_S
            .iter()
            .map(|time_s| time_s * self.network.cost_per_s())
            .collect();
        let mut curve = WeightCurve::new(&knots);
        let mut by_search: Vec<Option<Vec<f64>>> = vec![None; self.searches.len()];
        let nobody = || vec![0.0; KNOTS_S.len()];
        let mut homes_within: Vec<Result<Vec<f64>, String>> = Vec::with_capacity(Destination::ALL.len());
        let mut five: Option<(Vec<&CostPieces>, Vec<f64>)> = None;
        for destination in Destination::ALL {
            let homes = match destination {
                Destination::AllFive | Destination::AllFiveSure => {
                    let found = if destination == Destination::AllFive {
                        &self.found
                    } else {
                        &self.sure
                    };
                    let needs = Destination::NEEDS.iter();
                    let pieces: Option<Vec<&CostPieces>> = needs
                        .map(|need| Some(self.search_of(found, *need)?.worse(&self.network)))
                        .collect();
                    match pieces {
                        None => nobody(),
                        Some(pieces) => {
                            // Where nothing is hoped for both are the same.
                            let same = five.take().filter(|(held, _)| same_pieces(held, &pieces));
                            let homes = same.map(|(_, homes)| homes).unwrap_or_else(|| {
                                let mut last = CostPieces::default();
                                last.fill_greatest(&pieces);
                                self.homes.within(&last, &mut curve)
                            });
                            five = Some((pieces, homes.clone()));
                            homes
                        }
                    }
                }
                _ => match self.found.get(destination as usize) {
                    Some(Found::Unknown(reason)) => {
                        homes_within.push(Err(reason.clone()));
                        continue;
                    }
                    Some(Found::Search(search)) => {
                        let held = self.searches.get(*search).zip(by_search.get_mut(*search));
                        held.map_or_else(nobody, |(search, homes)| {
                            homes
                                .get_or_insert_with(|| self.homes.within(search.worse(&self.network), &mut curve))
                                .clone()
                        })
                    }
                    Some(Found::Nobody) | None => nobody(),
                },
            };
            homes_within.push(Ok(homes));
        }
        WalkInput {
            homes_within,
            base_speed_m_per_s: self.network.base_speed_m_per_s(),
            settings: settings::ALL.iter().map(|setting| setting.of(document)).collect(),
        }
    }
}

fn same_pieces(one: &[&CostPieces], other: &[&CostPieces]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| std::ptr::eq(*one, *other))
}

impl Search {
    fn run(&mut self, network: &WalkNetwork, homes: &HomeFronts, limit: u64) {
        let held = network.network();
        // Sources come from the network's own walkable links, so none is refused.
        let _to = self.to.spread(held, &self.sources, Direction::To, Some(limit));
        self.pieces.fill(held, &self.to, &homes.links);
        if network.is_sloping() {
            let _from = self.from.spread(held, &self.sources, Direction::From, Some(limit));
            self.from_pieces.fill(held, &self.from, &homes.links);
            self.worse_pieces.fill_greatest(&[&self.pieces, &self.from_pieces]);
        }
    }

    /// Cost along the links of homes, the worse of there and back.
    fn worse(&self, network: &WalkNetwork) -> &CostPieces {
        if network.is_sloping() {
            &self.worse_pieces
        } else {
            &self.pieces
        }
    }

    fn reach(&self, network: &WalkNetwork, limit: u64) -> Reach {
        let held: &Network = network.network();
        let to = Reach::within(held, &self.to, limit);
        let both = if network.is_sloping() {
            Reach::intersection(&[&to, &Reach::within(held, &self.from, limit)])
        } else {
            to
        };
        if both.pieces().iter().all(|piece| network.is_street(piece.link)) {
            return both;
        }
        let streets = both
            .pieces()
            .iter()
            .copied()
            .filter(|piece| network.is_street(piece.link));
        Reach::of_stretches(&streets.collect::<Vec<_>>())
    }
}

/// The kinds of the places that are drawn, wherever they are.
fn kinds_of_places(document: &Document, alternative: AlternativeId) -> Vec<PlaceKind> {
    let marks = document.alternatives.get(&alternative).map(|held| held.marks.values());
    let places = marks.into_iter().flatten().filter_map(Mark::as_place);
    places.map(|place| place.kind).collect()
}

/// Whether a place of this kind is a destination by itself.
const fn has_place(kind: PlaceKind, destination: Destination) -> bool {
    matches!(
        (destination, kind),
        (Destination::Center, PlaceKind::Center)
            | (Destination::Park, PlaceKind::Park)
            | (Destination::School, PlaceKind::School)
            | (Destination::TransitStop, PlaceKind::TransitStop)
    )
}

/// Why nobody can walk to a destination of which nothing is drawn.
fn nothing_drawn(destination: Destination) -> &'static str {
    match destination {
        Destination::Center => say!("measures-no-center"),
        Destination::Homes => say!("measures-no-homes-where-walked"),
        Destination::Work => say!("measures-no-work"),
        Destination::Shops => say!("measures-no-shops"),
        Destination::Learning => say!("measures-no-learning"),
        Destination::Gathering => say!("measures-no-gathering"),
        Destination::AllFive | Destination::AllFiveSure => say!("measures-no-all-five"),
        Destination::Park => say!("measures-no-park"),
        Destination::School => say!("measures-no-school"),
        Destination::TransitStop => say!("measures-no-transit-stop"),
    }
}

#[cfg(test)]
pub(crate) mod tests;
