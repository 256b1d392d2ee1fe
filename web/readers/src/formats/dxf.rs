//! Drawings as DXF, of text or in bytes: lines, polylines, arcs, circles, ellipses, splines, points, texts and inserted
//! blocks, by layer.
//!
//! A file is pairs of a number that says what follows and a value ("DXF Reference", 2012). The reader is our own:
//! the crate `dxf` writes out every kind of thing a drawing can hold and alone takes half of this module's weight. What
//! is not read is counted by its kind. Splines given by points alone are laid through them (`fitted`). Bends are flattened
//! so that a chord is nowhere farther from its arc than 10 mm.
//! A text is a point where it stands, with its words as its name. Blocks are put in their places; what lies on layer 0 in
//! a block is on the layer of the insertion.
//!
//! A drawing has no place on Earth unless a coordinate system is chosen: without one, positions are millimeters about
//! the middle of what is drawn, in the unit that the file names (`$INSUNITS`).

mod fitted;
mod pairs;
mod shapes;
mod spline;
mod words;

use std::collections::BTreeMap;

use pairs::Pairs;
pub use pairs::is_binary;
use shapes::{Affine, Entity, Shape, flatten};

use crate::base::{Geometry, Position, Suggestion};
use crate::bytes::Bytes;
use crate::fault::{Fault, Limited, Place, What, shortened};
use crate::output::{MOST_POSITIONS, Output, Placing};
use crate::read::{Progress, Work};

/// Pairs at a step.
const PAIRS: usize = 100_000;

/// The kind of all texts, by which they are told from points.
const TEXT: &str = "TEXT";

/// Deepest blocks within blocks.
const DEEPEST: usize = 8;

/// Most things that are drawn, blocks put in their places.
const MOST_DRAWN: usize = 1_000_000;

/// Reads a drawing.
pub struct Dxf {
    pairs: Pairs,
    section: Section,
    variable: String,
    unit: Option<i64>,
    block: Option<String>,
    blocks: BTreeMap<String, Block>,
    drawn: Vec<Entity>,
    /// The thing whose pairs are being read.
    open: Option<Entity>,
    layers: Vec<String>,
    not_read: BTreeMap<String, u64>,
    /// Splines whose curve is this reader's.
    fitted: u64,
}

#[derive(Clone, Copy, Default, PartialEq)]
enum Section {
    #[default]
    None,
    Named,
    Header,
    Tables,
    Blocks,
    Entities,
    Other,
}

#[derive(Default)]
struct Block {
    base: Position,
    entities: Vec<Entity>,
}

/// Whether a text begins like a drawing.
#[must_use]
pub fn is_drawing(text: &str) -> bool {
    let mut lines = text.lines().map(str::trim);
    while let (Some(code), Some(value)) = (lines.next(), lines.next()) {
        match (code, value) {
            ("0", "SECTION") => return true,
            ("999", _) => {}
            _ => return false,
        }
    }
    false
}

impl Dxf {
    /// From its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self {
            pairs: Pairs::new(bytes),
            section: Section::None,
            variable: String::new(),
            unit: None,
            block: None,
            blocks: BTreeMap::new(),
            drawn: Vec::new(),
            open: None,
            layers: Vec::new(),
            not_read: BTreeMap::new(),
            fitted: 0,
        }
    }

    /// Takes a pair; whether it was the last.
    fn pair(&mut self) -> Result<bool, Fault> {
        let Some((code, value)) = self.pairs.next()? else {
            return Ok(true);
        };
        let at = self.pairs.at(self.pairs.number());
        if code == 0 {
            self.close();
            return Ok(self.begin(&value));
        }
        match self.section {
            Section::Named if code == 2 => {
                self.section = match value.as_str() {
                    "HEADER" => Section::Header,
                    "TABLES" => Section::Tables,
                    "BLOCKS" => Section::Blocks,
                    "ENTITIES" => Section::Entities,
                    _ => Section::Other,
                }
            }
            Section::Header if code == 9 => self.variable = value,
            Section::Header if code == 70 && self.variable == "$INSUNITS" => self.unit = value.parse().ok(),
            Section::Tables if code == 2 && self.variable == "LAYER" => self.layers.push(value),
            Section::Blocks | Section::Entities => self.detail(code, value, &at)?,
            _ => {}
        }
        Ok(false)
    }

    /// What a pair of code 0 begins; whether it is the end of the file.
    fn begin(&mut self, kind: &str) -> bool {
        match (kind, self.section) {
            ("SECTION", _) => self.section = Section::Named,
            ("ENDSEC", _) => self.section = Section::None,
            ("EOF", _) => return true,
            (_, Section::Tables) => kind.clone_into(&mut self.variable),
            ("BLOCK", Section::Blocks) => self.block = Some(String::new()),
            ("ENDBLK", Section::Blocks) => self.block = None,
            (_, Section::Blocks | Section::Entities) => self.open = Some(Entity::new(kind, self.pairs.number())),
            _ => {}
        }
        false
    }

    /// A pair of a thing, or of a block's head.
    fn detail(&mut self, code: i32, value: String, at: &Place) -> Result<(), Fault> {
        if let Some(entity) = &mut self.open {
            return entity.take(code, value).map_err(|what| what.at(at.clone()));
        }
        let Some(name) = &mut self.block else { return Ok(()) };
        match code {
            2 => {
                name.clone_from(&value);
                self.blocks.entry(value).or_default();
            }
            10 | 20 => {
                let number = shapes::number(&value).map_err(|what| what.at(at.clone()))?;
                let axis = usize::from(code == 20);
                if let Some(block) = self.blocks.get_mut(name.as_str()) {
                    block.base[axis] = number;
                }
            }
            _ => {}
        }
        Ok(())
    }

    /// Puts the thing that has ended where it belongs.
    fn close(&mut self) {
        let Some(entity) = self.open.take() else { return };
        let target = match (&self.block, self.section) {
            (Some(name), Section::Blocks) => match self.blocks.get_mut(name.as_str()) {
                Some(block) => &mut block.entities,
                None => return,
            },
            (_, Section::Entities) => &mut self.drawn,
            _ => return,
        };
        // The old kind of polyline comes as a head and its vertices, each a thing of its own.
        match entity.kind.as_str() {
            "VERTEX" => {
                if let Some(head) = target.last_mut().filter(|head| head.kind == "POLYLINE") {
                    head.take_vertex(&entity);
                }
            }
            "SEQEND" => {}
            _ => target.push(entity),
        }
    }

    /// All that is drawn, flattened, with its layer and place.
    fn flattened(&mut self, unit_m: f64, output: &mut Output) -> Result<Vec<Drawn>, Fault> {
        let mut flat = Flat {
            pairs: &self.pairs,
            blocks: &self.blocks,
            not_read: &mut self.not_read,
            fitted: &mut self.fitted,
            sagitta: SAGITTA_M / unit_m,
            found: Vec::new(),
            count: 0,
            positions: 0,
            too_deep: None,
        };
        for entity in &self.drawn {
            flat.add(entity, &Affine::NONE, None, entity.line, 0)?;
        }
        let too_deep = flat.too_deep;
        let found = flat.found;
        if let Some((name, line)) = too_deep {
            output.fault(What::TooDeep { name }.at(self.pairs.at(line)));
        }
        Ok(found)
    }

    fn finish(&mut self, output: &mut Output) -> Result<(), Fault> {
        let of_file = self.unit.and_then(unit_m);
        let unit = output
            .options
            .unit_m
            .filter(|unit| *unit > 0.0 && unit.is_finite())
            .or(of_file);
        let has_system = output.options.system.is_some();
        let mut unit_m = unit.unwrap_or(1.0);
        if has_system {
            let system = output.choose_system(None, &Place::File)?;
            unit_m = system.unit_m().unwrap_or(1.0);
        } else if unit.is_none() {
            output.fault(What::NoUnit.at(Place::File));
        }
        let drawn = self.flattened(unit_m, output)?;
        if !has_system {
            let zero = middle(&drawn);
            output.place_by(Placing::Drawing { zero, unit_m });
        }
        for name in &self.layers {
            output.name_layer(name);
        }
        for one in drawn {
            let kind = if one.words.is_some() { TEXT } else { &one.kind };
            let mut tags = vec![("kind".to_owned(), kind.to_owned())];
            tags.extend(one.words.map(|words| ("name".to_owned(), words)));
            let suggested = match one.elevation {
                Some(height) => {
                    tags.push(("elevation".to_owned(), height.to_string()));
                    Suggestion::Contour
                }
                None => Suggestion::Unknown,
            };
            let place = self.pairs.at(one.line);
            output.add(&one.layer, one.geometry, tags, suggested, &place)?;
        }
        if self.fitted > 0 {
            let count = self.fitted;
            output.fault(What::FittedSplines { count }.at(Place::File));
        }
        for (kind, count) in std::mem::take(&mut self.not_read) {
            output.fault(What::NotRead { kind, count }.at(Place::File));
        }
        Ok(())
    }
}

impl Work for Dxf {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        for _ in 0..PAIRS {
            if self.pair()? {
                self.close();
                self.finish(output)?;
                return Ok(Progress::Done);
            }
        }
        Ok(Progress::Working(self.pairs.share() * 0.9))
    }
}

/// Farthest that a chord may be from its arc.
const SAGITTA_M: f64 = 0.01;

/// Meters in a drawing's unit, by the number of `$INSUNITS`; `None` for none.
fn unit_m(code: i64) -> Option<f64> {
    Some(match code {
        1 => 0.0254,
        2 => 0.3048,
        3 => 1609.344,
        4 => 0.001,
        5 => 0.01,
        6 => 1.0,
        7 => 1000.0,
        10 => 0.9144,
        14 => 0.1,
        21 => 1200.0 / 3937.0,
        _ => return None,
    })
}

/// The middle of all that is drawn, in whole units.
fn middle(drawn: &[Drawn]) -> Position {
    let (mut least, mut most) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for one in drawn {
        let lines: Vec<&Vec<Position>> = match &one.geometry {
            Geometry::Points(points) => vec![points],
            Geometry::Lines(lines) => lines.iter().collect(),
            Geometry::Areas(areas) => areas.iter().flatten().collect(),
        };
        for point in lines.into_iter().flatten() {
            for axis in 0..2 {
                least[axis] = least[axis].min(point[axis]);
                most[axis] = most[axis].max(point[axis]);
            }
        }
    }
    let middle = [0, 1].map(|axis| ((least[axis] + most[axis]) / 2.0).round());
    if middle.iter().all(|value| value.is_finite()) {
        middle
    } else {
        [0.0; 2]
    }
}

/// A thing drawn in its place.
struct Drawn {
    layer: String,
    kind: String,
    /// What it says, where it is a text.
    words: Option<String>,
    geometry: Geometry,
    elevation: Option<f64>,
    line: u64,
}

/// Blocks being put in their places.
struct Flat<'a> {
    pairs: &'a Pairs,
    blocks: &'a BTreeMap<String, Block>,
    not_read: &'a mut BTreeMap<String, u64>,
    fitted: &'a mut u64,
    sagitta: f64,
    found: Vec<Drawn>,
    count: usize,
    positions: usize,
    too_deep: Option<(String, u64)>,
}

impl Flat<'_> {
    fn add(
        &mut self,
        entity: &Entity,
        place: &Affine,
        layer: Option<&str>,
        line: u64,
        depth: usize,
    ) -> Result<(), Fault> {
        self.count += 1;
        let too_much = |limit: usize| {
            let limit = limit as u64;
            let of = Limited::Positions;
            What::TooMuch { limit, of }.at(self.pairs.at(line))
        };
        if self.count > MOST_DRAWN {
            return Err(too_much(MOST_DRAWN));
        }
        if entity.is_on_paper {
            return Ok(());
        }
        // Layer 0 in a block is that of the insertion.
        let layer = match layer {
            Some(outer) if entity.layer == "0" => outer,
            _ => &entity.layer,
        };
        match entity.shape() {
            Shape::Insert(insert) => {
                let Some(block) = self.blocks.get(&insert.block) else {
                    return Ok(());
                };
                if depth >= DEEPEST {
                    self.too_deep.get_or_insert((insert.block.clone(), line));
                    return Ok(());
                }
                for step in insert.places() {
                    let inner = place.after(&step.after(&Affine::moved([-block.base[0], -block.base[1]])));
                    for part in &block.entities {
                        self.add(part, &inner, Some(layer), line, depth + 1)?;
                    }
                    self.count += 1;
                    if self.count > MOST_DRAWN {
                        return Err(too_much(MOST_DRAWN));
                    }
                }
            }
            Shape::Unknown => *self.not_read.entry(shortened(&entity.kind, 40)).or_default() += 1,
            shape => {
                let sagitta = self.sagitta / place.largest_scale();
                let Some((points, is_area)) = flatten(&shape, sagitta) else {
                    return Ok(());
                };
                let points: Vec<Position> = points.into_iter().map(|point| place.apply(point)).collect();
                self.positions += points.len();
                if self.positions > MOST_POSITIONS {
                    return Err(too_much(MOST_POSITIONS));
                }
                let is_fitted = matches!(shape, Shape::Spline { is_fitted: true, .. });
                *self.fitted += u64::from(is_fitted);
                let geometry = if points.len() == 1 {
                    Geometry::Points(points)
                } else if is_area {
                    Geometry::Areas(vec![vec![points]])
                } else {
                    Geometry::Lines(vec![points])
                };
                self.found.push(Drawn {
                    layer: layer.to_owned(),
                    kind: entity.kind.clone(),
                    words: entity.words(),
                    geometry,
                    elevation: entity.elevation(),
                    line,
                });
            }
        }
        Ok(())
    }
}
