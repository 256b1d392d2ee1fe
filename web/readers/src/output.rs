//! Where the readers put what they find: projected, clipped, rounded and counted.

use crate::base::{Base, Coordinates, Feature, Format, Geometry, Layer, Position, Suggestion};
use crate::clip::{self, Sides};
use crate::fault::{Fault, Limited, Place, What, shortened};
use crate::grid::laid::Laid;
use crate::noted::{self, Noted};
use crate::options::{LOCAL, Options};
use crate::osm::tags::Tags;
use crate::system::System;

/// Most positions that are kept of one file: some 50 MB.
pub const MOST_POSITIONS: usize = 3_000_000;

/// Most layers that are told apart.
const MOST_LAYERS: usize = 1_000;

/// Most faults that are told one by one.
const MOST_FAULTS: usize = 200;

/// Most tags of a feature, and most bytes of a name or value.
const MOST_TAGS: usize = 64;
pub(crate) const LONGEST_TAG: usize = 256;

/// Most columns of traffic counts, or of zones, that are said: one for each of some years.
const MOST_COLUMNS: usize = 20;

/// Most zones that are told apart.
pub const MOST_ZONES: usize = 100;

/// Ten decimals would be more than a position is good for, nine are a tenth of a millimeter.
const DEGREE_STEPS: f64 = 1e9;

/// What is read, as it grows.
pub struct Output {
    /// What was found so far.
    pub base: Base,
    /// The choices.
    pub options: Options,
    sides: Option<Sides>,
    plan: Option<System>,
    placing: Placing,
    /// Whether the file is of no system by choice.
    is_local: bool,
    /// Whether the first position becomes 0, 0.
    awaits_zero: bool,
    positions: usize,
    untold: u64,
    has_left_out: bool,
    /// Columns that count traffic.
    counts: Vec<String>,
    /// Columns that say zones.
    zone_columns: Vec<String>,
    /// Zones that are told apart so far.
    zones: Vec<String>,
    has_more_zones: bool,
}

/// How positions of the file become those of the base.
#[derive(Clone, Debug)]
pub enum Placing {
    /// By a coordinate system.
    Earth(System),
    /// By a point of the drawing and its unit.
    Drawing {
        /// The point that becomes 0, 0.
        zero: Position,
        /// Meters in a unit.
        unit_m: f64,
    },
}

impl Output {
    /// Empty, for a file of this format.
    ///
    /// # Errors
    /// A fault when the plan's origin is not on Earth.
    pub fn new(format: Format, mut options: Options) -> Result<Self, Fault> {
        let is_local = |system: &mut String| system.trim().eq_ignore_ascii_case(LOCAL);
        let is_local = options.system.take_if(is_local).is_some();
        let plan = options
            .origin_deg
            .map(System::plan)
            .transpose()
            .map_err(|what| what.at(Place::File))?;
        let coordinates = if plan.is_some() {
            Coordinates::PlanMillimeters
        } else {
            Coordinates::Degrees
        };
        Ok(Self {
            base: Base {
                format,
                coordinates,
                system: String::new(),
                attribution: String::new(),
                layers: Vec::new(),
                grids: Vec::new(),
                pictures: Vec::new(),
                faults: Vec::new(),
            },
            sides: options.wide_box_deg(),
            options,
            plan,
            placing: Placing::Earth(System::degrees()),
            is_local,
            awaits_zero: false,
            positions: 0,
            untold: 0,
            has_left_out: false,
            counts: Vec::new(),
            zone_columns: Vec::new(),
            zones: Vec::new(),
            has_more_zones: false,
        })
    }

    /// The box with its margin, in degrees.
    #[must_use]
    pub fn sides(&self) -> Option<Sides> {
        self.sides
    }

    /// The system positions are understood in from here on: the chosen one before that which the file names.
    ///
    /// # Errors
    /// [`What::NoSystem`] when there is neither, [`What::UnknownSystem`] when it is not known.
    pub fn choose_system(&mut self, of_file: Option<Result<System, What>>, place: &Place) -> Result<System, Fault> {
        let chosen = self.options.system.as_deref().map(System::named);
        let found = chosen.or(of_file).unwrap_or(Err(What::NoSystem));
        let system = found.map_err(|what| what.at(place.clone()))?;
        if !system.is_certain {
            let told = What::UncertainDatum {
                system: shortened(&system.definition, 200),
            };
            self.fault(told.at(place.clone()));
        }
        self.place_by(Placing::Earth(system.clone()));
        Ok(system)
    }

    /// How lines, points and grids are understood from here on: in a system, or in none where a person chose so.
    ///
    /// # Errors
    /// [`What::NoPlace`] when there is neither, [`What::UnknownSystem`] when the system is not known.
    pub fn choose_place(
        &mut self,
        of_file: Option<Result<System, What>>,
        place: &Place,
    ) -> Result<Option<System>, Fault> {
        if self.is_local {
            if !matches!(self.placing, Placing::Drawing { .. }) {
                self.awaits_zero = true;
            }
            return Ok(None);
        }
        let is_nowhere = of_file.is_none();
        match self.choose_system(of_file, place) {
            Err(fault) if is_nowhere && fault.what == What::NoSystem => Err(What::NoPlace.at(fault.place)),
            chosen => chosen.map(Some),
        }
    }

    /// Lays a grid of no system as a drawing, with this position of it as its zero: where that lies in the plan is chosen
    /// later.
    pub fn lay_by_hand(&mut self, zero: Position) -> Laid {
        Laid::in_units_of(self.begin_at(zero))
    }

    /// Whether the file is of no system by choice.
    #[must_use]
    pub fn is_local(&self) -> bool {
        self.is_local
    }

    /// Takes a position as that which becomes 0, 0; meters in a unit.
    fn begin_at(&mut self, zero: Position) -> f64 {
        self.awaits_zero = false;
        let unit_m = self.options.unit_m.filter(|unit| *unit > 0.0 && unit.is_finite());
        if unit_m.is_none() {
            self.fault(What::NoUnit.at(Place::File));
        }
        let unit_m = unit_m.unwrap_or(1.0);
        self.place_by(Placing::Drawing { zero, unit_m });
        unit_m
    }

    /// How positions are understood from here on.
    pub fn place_by(&mut self, placing: Placing) {
        match &placing {
            Placing::Earth(system) => self.base.system.clone_from(&system.definition),
            Placing::Drawing { zero, unit_m } => {
                self.base.coordinates = Coordinates::DrawingMillimeters {
                    east: zero[0],
                    north: zero[1],
                    unit_m: *unit_m,
                };
            }
        }
        self.placing = placing;
    }

    /// Notes a fault; beyond some number they are counted only.
    pub fn fault(&mut self, fault: Fault) {
        if self.base.faults.len() < MOST_FAULTS {
            self.base.faults.push(fault);
        } else {
            self.untold += 1;
        }
    }

    /// Names a layer, so that a person can choose it though nothing of it is read.
    pub fn name_layer(&mut self, name: &str) {
        self.layer(name);
    }

    fn layer(&mut self, name: &str) -> Option<&mut Layer> {
        let name = shortened(name, LONGEST_TAG);
        let found = self.base.layers.iter().position(|layer| layer.name == name);
        let index = match found {
            Some(index) => index,
            None if self.base.layers.len() < MOST_LAYERS => {
                self.base.layers.push(Layer {
                    name,
                    features: Vec::new(),
                });
                self.base.layers.len() - 1
            }
            None => return None,
        };
        self.base.layers.get_mut(index)
    }

    /// Adds a feature with positions as the file has them.
    ///
    /// # Errors
    /// [`What::TooMuch`] when the file holds more than is kept.
    pub fn add(
        &mut self,
        layer: &str,
        geometry: Geometry,
        tags: Vec<(String, String)>,
        suggested: Suggestion,
        place: &Place,
    ) -> Result<(), Fault> {
        if !self.options.wants(layer) {
            self.name_layer(layer);
            return Ok(());
        }
        let counted = count(&geometry);
        let first = match &geometry {
            Geometry::Points(points) => points.first(),
            Geometry::Lines(lines) => lines.iter().flatten().next(),
            Geometry::Areas(areas) => areas.iter().flatten().flatten().next(),
        };
        if let Some(first) = first.copied().filter(|_| self.awaits_zero) {
            self.begin_at(first.map(f64::round));
        }
        let Some(geometry) = self.placed(geometry) else {
            if self.has_left_out_as_far() {
                return Ok(());
            }
            self.fault(What::OffEarth.at(place.clone()));
            return Ok(());
        };
        // What is clipped has been looked at all the same, but what is kept is what weighs.
        let kept = count(&geometry).min(counted.saturating_mul(2));
        self.positions = self.positions.saturating_add(kept);
        if self.positions > MOST_POSITIONS {
            let limit = MOST_POSITIONS as u64;
            let of = Limited::Positions;
            return Err(What::TooMuch { limit, of }.at(place.clone()));
        }
        let noted = self.noted(&geometry, &tags);
        // What a parcel lies in is said of each, but thousands of notes are not suggested.
        let is_suggested = noted.is_some() && suggested == Suggestion::Unknown && !noted::is_parcel(&tags);
        let suggested = if is_suggested { Suggestion::Note } else { suggested };
        let mut tags: Vec<(String, String)> = tags
            .into_iter()
            .take(MOST_TAGS)
            .map(|(name, value)| (shortened(&name, LONGEST_TAG), shortened(&value, LONGEST_TAG)))
            .collect();
        // Lists that grew have room for more than most features need: together it would be as much again.
        tags.shrink_to_fit();
        let feature = Feature {
            geometry,
            tags,
            suggested,
            noted: noted.map(Box::new),
        };
        if let Some(layer) = self.layer(layer) {
            layer.features.push(feature);
        }
        Ok(())
    }

    /// What a feature says in words; its columns are remembered, so that all of them are said once.
    fn noted(&mut self, geometry: &Geometry, tags: &Tags) -> Option<Noted> {
        // OpenStreetMap has no such columns, and many tags.
        if matches!(self.base.format, Format::OsmXml | Format::OsmPbf) {
            return None;
        }
        let counts = tags.iter().map(|(column, _)| column);
        for column in counts.filter(|column| noted::counts_traffic(column)) {
            remember(&mut self.counts, column, MOST_COLUMNS);
        }
        let is_area = matches!(geometry, Geometry::Areas(_));
        let Some(mut zoned) = noted::zoned(tags).filter(|_| is_area) else {
            return noted::counted(tags);
        };
        remember(&mut self.zone_columns, &zoned.column, MOST_COLUMNS);
        if !remember(&mut self.zones, &zoned.words, MOST_ZONES) {
            zoned.zone = None;
            self.has_more_zones = true;
        }
        Some(zoned)
    }

    /// Whether the geometry that was just refused lay outside the box, which is no fault.
    fn has_left_out_as_far(&mut self) -> bool {
        std::mem::take(&mut self.has_left_out)
    }

    /// A geometry in the base's positions, clipped; `None` where nothing of it is within the box or a position is not
    /// on Earth.
    fn placed(&mut self, geometry: Geometry) -> Option<Geometry> {
        self.has_left_out = false;
        let placed = match geometry {
            Geometry::Points(points) => {
                let points = self.located(&points)?;
                let within = points.into_iter().filter(|point| self.is_within(*point));
                let kept: Vec<Position> = within.collect();
                Geometry::Points(self.finished(kept)?)
            }
            Geometry::Lines(lines) => {
                let mut kept = Vec::new();
                for line in lines {
                    let line = self.located(&line)?;
                    let parts = match self.clipping() {
                        Some(sides) => clip::line(&sides, &line),
                        None => vec![line],
                    };
                    for part in parts {
                        let mut part = self.finished(part)?;
                        part.dedup();
                        if part.len() > 1 {
                            kept.push(part);
                        }
                    }
                }
                Geometry::Lines(kept)
            }
            Geometry::Areas(areas) => {
                let mut kept = Vec::new();
                for area in areas {
                    let mut rings = Vec::new();
                    for (index, ring) in area.into_iter().enumerate() {
                        let mut ring = self.located(&ring)?;
                        if let Some(sides) = self.clipping() {
                            ring = clip::ring(&sides, &ring);
                        }
                        let mut ring = self.finished(ring)?;
                        ring.dedup();
                        if ring.len() > 1 && ring.first() == ring.last() {
                            ring.pop();
                        }
                        if ring.len() > 2 {
                            rings.push(ring);
                        } else if index == 0 {
                            break;
                        }
                    }
                    if !rings.is_empty() {
                        rings.shrink_to_fit();
                        kept.push(rings);
                    }
                }
                kept.shrink_to_fit();
                Geometry::Areas(kept)
            }
        };
        let is_empty = match &placed {
            Geometry::Points(points) => points.is_empty(),
            Geometry::Lines(lines) => lines.is_empty(),
            Geometry::Areas(areas) => areas.is_empty(),
        };
        self.has_left_out = is_empty;
        (!is_empty).then_some(placed)
    }

    /// The box, where positions are on Earth.
    fn clipping(&self) -> Option<Sides> {
        self.sides.filter(|_| matches!(self.placing, Placing::Earth(_)))
    }

    fn is_within(&self, point: Position) -> bool {
        self.clipping().is_none_or(|sides| clip::holds(&sides, point))
    }

    /// Positions of the file in degrees, or in a drawing's millimeters, not yet rounded.
    fn located(&self, points: &[Position]) -> Option<Vec<Position>> {
        match &self.placing {
            Placing::Earth(system) => points.iter().map(|point| system.to_degrees(*point)).collect(),
            Placing::Drawing { zero, unit_m } => {
                let mm = |value: f64| {
                    let mm = value * unit_m * 1000.0;
                    (mm.abs() < FARTHEST_MM).then_some(mm)
                };
                points
                    .iter()
                    .map(|point| Some([mm(point[0] - zero[0])?, mm(point[1] - zero[1])?]))
                    .collect()
            }
        }
    }

    /// Rounded, and in the plan's millimeters where its origin is known.
    fn finished(&self, points: Vec<Position>) -> Option<Vec<Position>> {
        let is_drawing = matches!(self.placing, Placing::Drawing { .. });
        points
            .into_iter()
            .map(|point| match &self.plan {
                _ if is_drawing => Some(point.map(f64::round)),
                None => Some(point.map(|degrees| (degrees * DEGREE_STEPS).round() / DEGREE_STEPS)),
                Some(plan) => {
                    let mm = plan.from_degrees(point)?.map(|m| (m * 1000.0).round());
                    mm.iter().all(|value| value.abs() < FARTHEST_MM).then_some(mm)
                }
            })
            .collect()
    }

    /// A position of the file's present system as the base gives it; `None` where that is not possible.
    #[must_use]
    pub fn position(&self, point: Position) -> Option<Position> {
        self.finished(self.located(&[point])?)?.first().copied()
    }

    /// All that was read, or the faults where that is nothing.
    ///
    /// # Errors
    /// Every fault, when nothing at all was read.
    pub fn finish(mut self) -> Result<Base, Vec<Fault>> {
        let [counts, zones] = [&self.counts, &self.zone_columns].map(|columns| columns.join(", "));
        let is_said = [!counts.is_empty(), !zones.is_empty(), self.has_more_zones];
        let limit = MOST_ZONES as u64;
        let said = [
            What::TrafficCounts { columns: counts },
            What::Zones { columns: zones },
            What::TooManyZones { limit },
        ];
        let said = said.into_iter().zip(is_said).filter(|(_, is_said)| *is_said);
        self.base.faults.extend(said.map(|(what, _)| what.at(Place::File)));
        if self.untold > 0 {
            let count = self.untold;
            self.base.faults.push(What::More { count }.at(Place::File));
        }
        let mut base = self.base;
        let is_empty = base.layers.iter().all(|layer| layer.features.is_empty());
        if is_empty && base.grids.is_empty() && base.pictures.is_empty() && base.faults.is_empty() {
            base.faults.push(What::NothingWithin.at(Place::File));
        }
        if base.layers.is_empty() && base.grids.is_empty() && base.pictures.is_empty() {
            return Err(base.faults);
        }
        Ok(base)
    }
}

/// Farther than this from the origin nothing is placed: 1,000 km, ten times what a plan may hold.
const FARTHEST_MM: f64 = 1e9;

/// Whether a word is among these, as it is now if there was room for it.
fn remember(held: &mut Vec<String>, word: &str, most: usize) -> bool {
    let is_known = held.iter().any(|known| known == word);
    if !is_known && held.len() < most {
        held.push(shortened(word, LONGEST_TAG));
        return true;
    }
    is_known
}

fn count(geometry: &Geometry) -> usize {
    match geometry {
        Geometry::Points(points) => points.len(),
        Geometry::Lines(lines) => lines.iter().map(Vec::len).sum(),
        Geometry::Areas(areas) => areas.iter().flatten().map(Vec::len).sum(),
    }
}
