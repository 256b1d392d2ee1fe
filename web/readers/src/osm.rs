//! OpenStreetMap: nodes, ways and relations put together to streets, places and land.
//!
//! Both spellings, XML and PBF, are read three times from end to end, so that only what is wanted is ever in memory:
//! first which nodes lie within the box and which relations are areas worth reading; then the ways that have a node in
//! the box and mean something by the table of [`tags`]; then the places of those ways' nodes. A way that crosses the box
//! and its margin without a node in it is not seen. Coordinates are OpenStreetMap's own ten-millionths of a degree: up to
//! 11 mm.

pub mod pbf;
pub mod tags;
pub mod xml;

use crate::base::{Geometry, Position, Suggestion};
use crate::clip;
use crate::fault::{Fault, Limited, Place, What};
use crate::output::{MOST_POSITIONS, Output};
use crate::rings::with_holes;

/// Who must be named wherever data of OpenStreetMap or a picture of it is shown.
pub const ATTRIBUTION: &str = "© OpenStreetMap contributors, ODbL 1.0";

/// Ten-millionths of a degree in a degree.
const STEPS: f64 = 1e7;

/// Names and values.
pub type TagList = Vec<(String, String)>;

/// How often the file is read.
pub const PASSES: u32 = 3;

/// What elements are.
#[derive(Clone, Copy, PartialEq)]
pub enum Kind {
    /// A place.
    Node,
    /// Nodes in a row.
    Way,
    /// Ways that belong together.
    Relation,
}

struct Way {
    id: i64,
    tags: TagList,
    suggested: Option<Suggestion>,
    nodes: Vec<i64>,
}

struct Relation {
    id: i64,
    tags: TagList,
    suggested: Suggestion,
    outer: Vec<i64>,
    inner: Vec<i64>,
}

/// What is put together over the passes.
#[derive(Default)]
pub struct Assembly {
    pass: u32,
    within: Vec<i64>,
    relations: Vec<Relation>,
    members: Vec<i64>,
    ways: Vec<Way>,
    held: usize,
    needed: Vec<i64>,
    places: Vec<Option<[i32; 2]>>,
}

impl Assembly {
    /// Which pass this is, from 0.
    #[must_use]
    pub fn pass(&self) -> u32 {
        self.pass
    }

    /// Whether elements of this kind are looked at in this pass; the others need not be read.
    #[must_use]
    pub fn wants(&self, kind: Kind) -> bool {
        match kind {
            Kind::Node => self.pass != 1,
            Kind::Way => self.pass == 1,
            Kind::Relation => self.pass == 0,
        }
    }

    /// A node, with its place in ten-millionths of a degree and its tags, which are asked for when they matter.
    ///
    /// # Errors
    /// [`What::TooMuch`].
    pub fn node(
        &mut self,
        output: &mut Output,
        id: i64,
        place: [i32; 2],
        tags: impl FnOnce() -> TagList,
    ) -> Result<(), Fault> {
        match self.pass {
            0 => {
                let position = degrees(place);
                if output.sides().is_some_and(|sides| !clip::holds(&sides, position)) {
                    return Ok(());
                }
                if output.sides().is_some() {
                    self.hold(1)?;
                    self.within.push(id);
                }
                let tags = tags();
                match tags::suggestion(&tags) {
                    Some(suggested @ Suggestion::Place { .. }) => {
                        let named = Place::Named(format!("node {id}"));
                        let layer = tags::layer(&suggested);
                        output.add(layer, Geometry::Points(vec![position]), tags, suggested, &named)
                    }
                    _ => Ok(()),
                }
            }
            2 => {
                if let Ok(index) = self.needed.binary_search(&id)
                    && let Some(known) = self.places.get_mut(index)
                {
                    *known = Some(place);
                }
                Ok(())
            }
            _ => Ok(()),
        }
    }

    /// A way, with the numbers of its nodes.
    ///
    /// # Errors
    /// [`What::TooMuch`].
    pub fn way(
        &mut self,
        output: &Output,
        id: i64,
        nodes: impl FnOnce() -> Vec<i64>,
        mut tags: TagList,
    ) -> Result<(), Fault> {
        if self.pass != 1 {
            return Ok(());
        }
        let suggested = tags::suggestion(&tags);
        let is_member = self.members.binary_search(&id).is_ok();
        if suggested.is_none() && !is_member {
            return Ok(());
        }
        let mut nodes = nodes();
        let is_within = output.sides().is_none() || nodes.iter().any(|node| self.within.binary_search(node).is_ok());
        if !is_within && !is_member {
            return Ok(());
        }
        self.hold(nodes.len())?;
        tags.shrink_to_fit();
        nodes.shrink_to_fit();
        self.ways.push(Way {
            id,
            tags,
            suggested,
            nodes,
        });
        Ok(())
    }

    /// A relation, with its members that are ways: number and role.
    ///
    /// # Errors
    /// [`What::TooMuch`].
    pub fn relation(
        &mut self,
        id: i64,
        tags: TagList,
        members: impl FnOnce() -> Vec<(i64, bool)>,
    ) -> Result<(), Fault> {
        if self.pass != 0 {
            return Ok(());
        }
        let is_area = tags
            .iter()
            .any(|(name, value)| name == "type" && (value == "multipolygon" || value == "boundary"));
        let Some(suggested) = tags::suggestion(&tags).filter(|found| is_area && tags::is_area(&tags, found)) else {
            return Ok(());
        };
        let members = members();
        self.hold(members.len())?;
        let of = |inner: bool| {
            members
                .iter()
                .filter(move |member| member.1 == inner)
                .map(|member| member.0)
        };
        self.relations.push(Relation {
            id,
            tags,
            suggested,
            outer: of(false).collect(),
            inner: of(true).collect(),
        });
        Ok(())
    }

    /// Counts what is held, so that memory is bounded whatever the file says.
    fn hold(&mut self, count: usize) -> Result<(), Fault> {
        self.held = self.held.saturating_add(count.max(1));
        // A node's number is half a position; a fourth of what is held may be of ways that are cut away.
        let most = 4 * MOST_POSITIONS;
        if self.held > most {
            let limit = most as u64;
            let of = Limited::Positions;
            return Err(What::TooMuch { limit, of }.at(Place::File));
        }
        Ok(())
    }

    /// The file's end was reached; whether it is to be read again.
    ///
    /// # Errors
    /// [`What::TooMuch`].
    pub fn next_pass(&mut self, output: &mut Output) -> Result<bool, Fault> {
        match self.pass {
            0 => {
                self.within.sort_unstable();
                let members = self.relations.iter().flat_map(|one| one.outer.iter().chain(&one.inner));
                self.members = members.copied().collect();
                self.members.sort_unstable();
                self.members.dedup();
            }
            1 => {
                self.within = Vec::new();
                self.needed = self.ways.iter().flat_map(|way| way.nodes.iter().copied()).collect();
                self.needed.sort_unstable();
                self.needed.dedup();
                self.places = vec![None; self.needed.len()];
            }
            _ => {
                self.build(output)?;
                return Ok(false);
            }
        }
        self.pass += 1;
        Ok(true)
    }

    /// The features, once every place is known.
    fn build(&mut self, output: &mut Output) -> Result<(), Fault> {
        output.base.attribution = ATTRIBUTION.to_owned();
        let ways = std::mem::take(&mut self.ways);
        // Ways come in the order of the file, which need not be that of their numbers.
        let mut index: Vec<(i64, usize)> = ways.iter().enumerate().map(|(index, way)| (way.id, index)).collect();
        index.sort_unstable();
        for relation in std::mem::take(&mut self.relations) {
            let place = Place::Named(format!("relation {}", relation.id));
            let (outer, is_whole) = self.rings(&ways, &index, &relation.outer);
            let (inner, are_holes_whole) = self.rings(&ways, &index, &relation.inner);
            let (areas, are_all_tried) = with_holes(outer, inner);
            if !(is_whole && are_holes_whole && are_all_tried) {
                output.fault(What::OpenRing.at(place.clone()));
            }
            if !areas.is_empty() {
                let layer = tags::layer(&relation.suggested);
                output.add(layer, Geometry::Areas(areas), relation.tags, relation.suggested, &place)?;
            }
        }
        for way in ways {
            let Some(suggested) = way.suggested else { continue };
            let place = Place::Named(format!("way {}", way.id));
            let (runs, missing) = self.runs(&way.nodes);
            if missing > 0 {
                let count = missing as u64;
                output.fault(What::MissingPoints { count }.at(place.clone()));
            }
            let is_ring = missing == 0 && way.nodes.len() > 3 && way.nodes.first() == way.nodes.last();
            let geometry = if is_ring && tags::is_area(&way.tags, &suggested) {
                Geometry::Areas(runs.into_iter().map(|ring| vec![ring]).collect())
            } else {
                Geometry::Lines(runs.into_iter().filter(|run| run.len() > 1).collect())
            };
            let is_empty = matches!(&geometry, Geometry::Lines(lines) if lines.is_empty());
            if !is_empty {
                output.add(tags::layer(&suggested), geometry, way.tags, suggested, &place)?;
            }
        }
        Ok(())
    }

    fn place(&self, node: i64) -> Option<Position> {
        let index = self.needed.binary_search(&node).ok()?;
        self.places.get(index).copied().flatten().map(degrees)
    }

    /// The line through nodes, broken where the file lacks one, and how many it lacks.
    fn runs(&self, nodes: &[i64]) -> (Vec<Vec<Position>>, usize) {
        let mut runs = vec![Vec::new()];
        let mut missing = 0;
        for node in nodes {
            match (self.place(*node), runs.last_mut()) {
                (Some(place), Some(run)) => run.push(place),
                _ => {
                    missing += 1;
                    runs.push(Vec::new());
                }
            }
        }
        runs.retain(|run| !run.is_empty());
        (runs, missing)
    }

    /// Rings put together of member ways, end to end; and whether every way found its ring.
    fn rings(&self, ways: &[Way], index: &[(i64, usize)], members: &[i64]) -> (Vec<Vec<Position>>, bool) {
        let mut parts: Vec<&[i64]> = Vec::new();
        let mut is_whole = true;
        for member in members {
            let found = index.binary_search_by(|(id, _)| id.cmp(member)).ok();
            let way = found.and_then(|at| ways.get(index.get(at)?.1));
            match way {
                Some(way) if way.nodes.len() > 1 => parts.push(&way.nodes),
                _ => is_whole = false,
            }
        }
        let (chains, are_closed) = closed(parts);
        is_whole &= are_closed;
        let mut rings = Vec::new();
        for chain in chains {
            let (mut runs, missing) = self.runs(&chain);
            match runs.pop() {
                Some(ring) if missing == 0 && ring.len() > 3 => rings.push(ring),
                _ => is_whole = false,
            }
        }
        (rings, is_whole)
    }
}

/// Chains of parts that close, and whether all parts are in one.
fn closed(parts: Vec<&[i64]>) -> (Vec<Vec<i64>>, bool) {
    // Ends of parts, so that the next one is found without trying all.
    let mut ends: Vec<(i64, usize)> = Vec::new();
    for (index, part) in parts.iter().enumerate() {
        ends.extend(part.first().map(|end| (*end, index)));
        ends.extend(part.last().map(|end| (*end, index)));
    }
    ends.sort_unstable();
    let mut is_used = vec![false; parts.len()];
    let mut skipped = vec![0; ends.len()];
    let (mut chains, mut is_whole) = (Vec::new(), true);
    for start in 0..parts.len() {
        if is_used[start] {
            continue;
        }
        is_used[start] = true;
        let mut chain = parts[start].to_vec();
        while chain.first() != chain.last() {
            let Some(end) = chain.last().copied() else { break };
            let from = ends.partition_point(|(node, _)| *node < end);
            // Parts that are used stay so, and are passed over once.
            // A chain's end is the end of a part, so it is among them.
            let mut at = skipped[from].max(from);
            while ends.get(at).is_some_and(|(node, part)| *node == end && is_used[*part]) {
                at += 1;
            }
            skipped[from] = at;
            let Some((_, next)) = ends.get(at).filter(|(node, _)| *node == end) else {
                break;
            };
            is_used[*next] = true;
            let part = parts[*next];
            if part.first() == Some(&end) {
                chain.extend(part.iter().skip(1));
            } else {
                chain.extend(part.iter().rev().skip(1));
            }
        }
        if chain.first() == chain.last() {
            chains.push(chain);
        } else {
            is_whole = false;
        }
    }
    (chains, is_whole)
}

fn degrees([longitude, latitude]: [i32; 2]) -> Position {
    [f64::from(longitude) / STEPS, f64::from(latitude) / STEPS]
}
