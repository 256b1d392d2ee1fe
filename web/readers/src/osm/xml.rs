//! OpenStreetMap XML, some thousand elements at a step.

use std::borrow::Cow;
use std::io::Cursor;

use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use super::pbf::progress;
use super::{ATTRIBUTION, Assembly, Kind, TagList};
use crate::bytes::Bytes;
use crate::fault::{Fault, Place, What, shortened};
use crate::output::Output;
use crate::read::{Progress, Work};

/// Events of the XML at a step: about a hundredth of a second.
const EVENTS: usize = 20_000;

/// Most tags, nodes or members of one element: OpenStreetMap itself allows 2,000 nodes and 32,000 members.
const MOST_PARTS: usize = 100_000;

/// Reads an XML file.
pub struct Xml {
    bytes: Bytes,
    reader: Reader<Cursor<Bytes>>,
    buffer: Vec<u8>,
    assembly: Assembly,
    open: Option<Open>,
}

/// The element whose end has not been reached.
struct Open {
    kind: Kind,
    id: i64,
    place: [i32; 2],
    tags: TagList,
    nodes: Vec<i64>,
    members: Vec<(i64, bool)>,
}

impl Xml {
    /// From its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self {
            reader: Reader::from_reader(Cursor::new(bytes.clone())),
            bytes,
            buffer: Vec::new(),
            assembly: Assembly::default(),
            open: None,
        }
    }

    fn start(
        &mut self,
        output: &mut Output,
        element: &BytesStart<'_>,
        is_empty: bool,
        at: &Place,
    ) -> Result<(), Fault> {
        let kind = match element.name().as_ref() {
            "node" => Kind::Node,
            "way" => Kind::Way,
            "relation" => Kind::Relation,
            name => {
                self.part(element, name, at)?;
                return Ok(());
            }
        };
        if !self.assembly.wants(kind) {
            self.open = None;
            return Ok(());
        }
        let attributes = attributes(element, at)?;
        // What was deleted is told of in files of changes.
        let is_there = text(&attributes, "visible") != Some("false");
        let id = number(&attributes, "id", at)?.unwrap_or_default();
        let mut place = [0; 2];
        if kind == Kind::Node && is_there {
            for (value, name) in place.iter_mut().zip(["lon", "lat"]) {
                let given = text(&attributes, name).unwrap_or_default();
                let degrees = given.parse::<f64>().ok().filter(|degrees| degrees.abs() <= 180.0);
                let Some(degrees) = degrees else {
                    let value = shortened(given, 40);
                    return Err(What::NotANumber { value }.at(at.clone()));
                };
                *value = (degrees * super::STEPS).round() as i32;
            }
        }
        self.open = is_there.then(|| Open {
            kind,
            id,
            place,
            tags: Vec::new(),
            nodes: Vec::new(),
            members: Vec::new(),
        });
        if is_empty { self.end(output) } else { Ok(()) }
    }

    /// A tag, a way's node or a relation's member.
    fn part(&mut self, element: &BytesStart<'_>, name: &str, at: &Place) -> Result<(), Fault> {
        let Some(open) = &mut self.open else { return Ok(()) };
        if !matches!(name, "tag" | "nd" | "member") {
            return Ok(());
        }
        // Nodes are looked at once with and once without their tags, ways once.
        let attributes = attributes(element, at)?;
        match name {
            "tag" if open.tags.len() < MOST_PARTS => {
                let [key, value] = ["k", "v"].map(|name| text(&attributes, name).unwrap_or_default().to_owned());
                open.tags.push((key, value));
            }
            "nd" if open.nodes.len() < MOST_PARTS => open.nodes.extend(number(&attributes, "ref", at)?),
            "member" if open.members.len() < MOST_PARTS && text(&attributes, "type") == Some("way") => {
                let is_inner = text(&attributes, "role") == Some("inner");
                open.members
                    .extend(number(&attributes, "ref", at)?.map(|way| (way, is_inner)));
            }
            _ => {}
        }
        Ok(())
    }

    fn end(&mut self, output: &mut Output) -> Result<(), Fault> {
        let Some(open) = self.open.take() else { return Ok(()) };
        match open.kind {
            Kind::Node => self.assembly.node(output, open.id, open.place, || open.tags),
            Kind::Way => self.assembly.way(output, open.id, || open.nodes, open.tags),
            Kind::Relation => self.assembly.relation(open.id, open.tags, || open.members),
        }
    }
}

impl Work for Xml {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let length = self.bytes.as_ref().len();
        ATTRIBUTION.clone_into(&mut output.base.attribution);
        for _ in 0..EVENTS {
            let mut buffer = std::mem::take(&mut self.buffer);
            buffer.clear();
            let at = Place::Byte(self.reader.buffer_position());
            let event = self.reader.read_event_into(&mut buffer);
            let event = event.map_err(|fault| What::broken(fault).at(at.clone()))?;
            let is_end = match event {
                Event::Start(element) => {
                    self.start(output, &element, false, &at)?;
                    false
                }
                Event::Empty(element) => {
                    self.start(output, &element, true, &at)?;
                    false
                }
                Event::End(element) => {
                    if matches!(element.name().as_ref(), "node" | "way" | "relation") {
                        self.end(output)?;
                    }
                    false
                }
                Event::Eof => true,
                _ => false,
            };
            self.buffer = buffer;
            if is_end {
                self.reader = Reader::from_reader(Cursor::new(self.bytes.clone()));
                self.open = None;
                return Ok(if self.assembly.next_pass(output)? {
                    progress(&self.assembly, 0, length)
                } else {
                    Progress::Done
                });
            }
        }
        let place = usize::try_from(self.reader.buffer_position()).unwrap_or(length);
        Ok(progress(&self.assembly, place, length))
    }
}

/// Names and values of an element, those of the file's bytes where nothing in them is spelled otherwise.
type Attributes<'a> = Vec<(&'a str, Cow<'a, str>)>;

/// The attributes of an element, read.
fn attributes<'a>(element: &'a BytesStart<'_>, at: &Place) -> Result<Attributes<'a>, Fault> {
    let broken = |fault: &dyn std::fmt::Display| What::broken(fault).at(at.clone());
    let mut found = Vec::new();
    for attribute in element.attributes().with_checks(false) {
        let attribute = attribute.map_err(|fault| broken(&fault))?;
        let value = attribute
            .normalized_value(quick_xml::XmlVersion::Implicit1_0)
            .map_err(|fault| broken(&fault))?;
        found.push((attribute.key.into_inner(), value));
    }
    Ok(found)
}

fn text<'a>(attributes: &'a Attributes<'_>, name: &str) -> Option<&'a str> {
    attributes
        .iter()
        .find(|(key, _)| *key == name)
        .map(|(_, value)| value.as_ref())
}

fn number(attributes: &Attributes<'_>, name: &str, at: &Place) -> Result<Option<i64>, Fault> {
    let Some(given) = text(attributes, name) else {
        return Ok(None);
    };
    let read = given.parse().map(Some);
    read.map_err(|_| {
        let value = shortened(given, 40);
        What::NotANumber { value }.at(at.clone())
    })
}
