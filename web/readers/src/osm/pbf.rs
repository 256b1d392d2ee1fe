//! OpenStreetMap PBF, a block at a step.

use osmpbf::{BlobDecode, BlobReader, Element};

use super::{ATTRIBUTION, Assembly, Kind, PASSES, TagList};
use crate::bytes::Bytes;
use crate::fault::{Fault, Place, What};
use crate::output::Output;
use crate::read::{Progress, Work};

/// Reads a PBF file.
pub struct Pbf {
    bytes: Bytes,
    place: usize,
    assembly: Assembly,
    /// Which block this is, from 0.
    block: usize,
    /// Which kinds of elements each block holds, as the first pass found: blocks without any that a later pass looks at
    /// are not expanded again.
    kinds: Vec<[bool; 3]>,
}

impl Pbf {
    /// From its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self {
            bytes,
            place: 0,
            assembly: Assembly::default(),
            block: 0,
            kinds: Vec::new(),
        }
    }
}

impl Work for Pbf {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let place = Place::Byte(self.place as u64);
        let broken = |fault: osmpbf::Error| What::broken(fault).at(place.clone());
        let mut rest = self.bytes.from(self.place);
        let length = self.bytes.as_ref().len();
        if rest.is_empty() {
            (self.place, self.block) = (0, 0);
            return Ok(if self.assembly.next_pass(output)? {
                progress(&self.assembly, 0, length)
            } else {
                Progress::Done
            });
        }
        let Some(blob) = BlobReader::new(&mut rest).next() else {
            // A few bytes that are no block.
            return Err(What::broken("end of file within a block").at(place));
        };
        let left = rest.len();
        let blob = blob.map_err(broken)?;
        let known = self.kinds.get(self.block).copied();
        self.block += 1;
        let is_idle = |held: [bool; 3]| {
            !KINDS
                .iter()
                .zip(held)
                .any(|(kind, held)| held && self.assembly.wants(*kind))
        };
        if known.is_some_and(is_idle) {
            self.place = length - left;
            return Ok(progress(&self.assembly, self.place, length));
        }
        let mut held = [false; 3];
        match blob.decode().map_err(broken)? {
            BlobDecode::OsmHeader(header) => {
                let is_known = |name: &&String| !matches!(name.as_str(), "OsmSchema-V0.6" | "DenseNodes");
                if let Some(name) = header.required_features().iter().find(is_known) {
                    return Err(What::broken(name).at(place));
                }
                ATTRIBUTION.clone_into(&mut output.base.attribution);
            }
            BlobDecode::OsmData(block) => {
                let mut result = Ok(());
                block.for_each_element(|element| {
                    let kind = kind_of(&element);
                    held[kind as usize] = true;
                    if result.is_ok() && self.assembly.wants(kind) {
                        result = read(&mut self.assembly, output, &element);
                    }
                });
                result?;
            }
            BlobDecode::Unknown(_) => {}
        }
        if known.is_none() {
            self.kinds.push(held);
        }
        self.place = length - left;
        Ok(progress(&self.assembly, self.place, length))
    }
}

pub(super) fn progress(assembly: &Assembly, place: usize, length: usize) -> Progress {
    let share = place as f64 / length.max(1) as f64;
    Progress::Working((f64::from(assembly.pass()) + share) / f64::from(PASSES))
}

/// All kinds, at the places of their numbers.
const KINDS: [Kind; 3] = [Kind::Node, Kind::Way, Kind::Relation];

fn kind_of(element: &Element<'_>) -> Kind {
    match element {
        Element::Node(_) | Element::DenseNode(_) => Kind::Node,
        Element::Way(_) => Kind::Way,
        Element::Relation(_) => Kind::Relation,
    }
}

fn read(assembly: &mut Assembly, output: &mut Output, element: &Element<'_>) -> Result<(), Fault> {
    match element {
        Element::Node(node) => {
            let place = [node.decimicro_lon(), node.decimicro_lat()];
            assembly.node(output, node.id(), place, || list(node.tags()))
        }
        Element::DenseNode(node) => {
            let place = [node.decimicro_lon(), node.decimicro_lat()];
            assembly.node(output, node.id(), place, || list(node.tags()))
        }
        Element::Way(way) => assembly.way(output, way.id(), || way.refs().collect(), list(way.tags())),
        Element::Relation(relation) => assembly.relation(relation.id(), list(relation.tags()), || {
            let ways = relation
                .members()
                .filter(|member| member.member_type == osmpbf::RelMemberType::Way);
            ways.map(|member| (member.member_id, member.role().is_ok_and(|role| role == "inner")))
                .collect()
        }),
    }
}

fn list<'a>(tags: impl Iterator<Item = (&'a str, &'a str)>) -> TagList {
    tags.map(|(name, value)| (name.to_owned(), value.to_owned())).collect()
}
