//! A base that was read, with what a person chooses before it is taken, and what would be taken by that.

use hobnail_core::figures::display::grouped;
use hobnail_core::order;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::defaults::street_sections;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::projection::{GeographicPoint, Projection};
use hobnail_core::say;
use hobnail_core::text::holds;

use super::heights::{self, Request};
use super::place::is_placed;
use super::sketch::sketch;
use super::{Base, Becomes, Choices, Coordinates, Extent, Shape, Taken};
use crate::app::App;
use crate::app::editor::drawn::Drawing;
use crate::app::editor::quantity::number;
use crate::app::words::{self, METERS_PER_FOOT, Words, length_field};

/// A number that is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// How far beyond the site, or to each side of the origin.
    Distance,
    /// Where the plan's origin lies.
    Longitude,
    /// Where the plan's origin lies.
    Latitude,
    /// Meters in a unit of a drawing.
    Unit,
    /// Where a drawing's zero comes to lie.
    East,
    /// Where a drawing's zero comes to lie.
    North,
    /// By how much a drawing is turned.
    Turn,
}

/// How many fields there are.
const FIELDS: usize = 7;

/// How much can be taken.
const EXTENTS: [Extent; 3] = [
    Extent::Site { margin_m: 0.0 },
    Extent::Within,
    Extent::Around { radius_m: 0.0 },
];

/// What PROJ calls longitude and latitude.
const DEGREES: &str = "longlat";
/// And their datum, where it is that of the plan's place.
const WGS84: &str = "WGS84";

/// Classes that are shown before all are asked for.
pub const FIRST_CLASSES: usize = 12;

/// A base with its choices.
pub struct Opened {
    /// What was read.
    pub base: Base,
    /// What is chosen.
    pub choices: Choices,
    /// What would be taken, or why nothing can be.
    pub preview: Result<Taken, String>,
    /// What would be taken, as a small plan.
    pub sketch: Option<Drawing>,
    /// Whether all classes are shown.
    pub shows_all: bool,
    /// Whether the plan has a site.
    pub has_site: bool,
    /// The fields that are asked for.
    pub fields: Vec<Field>,
    /// Units that lengths are typed and shown in.
    pub units: UnitSystem,
    /// What stands in each field.
    typed: [String; FIELDS],
    /// Which of them hold nothing that can be used.
    is_wrong: [bool; FIELDS],
    /// Heights that are to be asked for.
    due: Option<Request>,
    /// Classes in the order in which they are shown: those that become something first, the larger before the smaller.
    order: Vec<usize>,
}

impl Opened {
    /// With what is chosen at first.
    #[must_use]
    pub fn new(base: Base, app: &App) -> Self {
        let document = app.study().document();
        let mut choices = Choices::first(&base, document);
        let has_site = document.site.boundary.len() > 2;
        if choices.extent == choices.extent.usual() {
            choices.extent = usual_extent(choices.extent, app.units());
        }
        let mut order: Vec<usize> = (0..base.classes.len()).collect();
        order::sort_by_key(&mut order, |place| {
            let class = base.classes.get(*place);
            class.map(|class| (class.becomes == Becomes::Nothing, u32::MAX - class.count))
        });
        let mut fields = vec![Field::Distance];
        if matches!(base.coordinates, Coordinates::Drawing { .. }) {
            fields.extend([Field::Unit, Field::East, Field::North, Field::Turn]);
        } else if !is_placed(document) {
            fields.extend([Field::Longitude, Field::Latitude]);
        }
        let mut opened = Self {
            base,
            choices,
            preview: Ok(Taken::default()),
            sketch: None,
            shows_all: false,
            has_site,
            fields,
            units: app.units(),
            typed: Default::default(),
            is_wrong: [false; FIELDS],
            due: None,
            order,
        };
        opened.write_fields();
        opened.look(app);
        opened
    }

    /// Puts into the fields what is chosen.
    fn write_fields(&mut self) {
        let choices = &self.choices;
        let (longitude, latitude) = choices.origin.to_deg();
        let (east_m, north_m) = choices.zero.to_m();
        let far_m = choices.extent.distance_m().unwrap_or_default();
        let meters = |length_m: f64| length_field(length_m * 1000.0, self.units);
        self.typed = [
            meters(far_m),
            format!("{longitude:.6}"),
            format!("{latitude:.6}"),
            choices.unit_m.to_string(),
            meters(east_m),
            meters(north_m),
            choices.turn_deg.to_string(),
        ];
        self.is_wrong = [false; FIELDS];
    }

    /// Works out anew what would be taken. Cost: that of [`Base::edits`].
    pub fn look(&mut self, app: &App) {
        let study = app.study();
        let found = if self.is_wrong.contains(&true) {
            Err(say!("bases-field-wrong").to_owned())
        } else {
            self.base.edits(study.document(), study.alternative(), &self.choices)
        };
        if self.base.grid.is_some() {
            let request = self.choices.heights_request(study.document()).ok();
            let held = self.base.heights.as_ref().map(|held| held.request);
            self.due = request.filter(|request| Some(*request) != held);
        }
        self.sketch = found.as_ref().ok().map(|(edits, _)| sketch(study.document(), edits));
        self.preview = found.map(|(_, taken)| taken);
    }

    /// The heights that are to be asked for, once.
    pub const fn take_due(&mut self) -> Option<Request> {
        self.due.take()
    }

    /// The units of height to choose from, in words, and which is chosen.
    #[must_use]
    pub fn height_units(&self) -> Vec<(&'static str, bool)> {
        let is_chosen = |unit_m: f64| (unit_m - self.choices.height_unit_m).abs() < 1e-9;
        let units = heights::units().into_iter();
        units.map(|(unit_m, words)| (words, is_chosen(unit_m))).collect()
    }

    /// Chooses a unit of height, by its place among those.
    pub fn choose_height_unit(&mut self, place: usize) {
        if let Some((unit_m, _)) = heights::units().get(place) {
            self.choices.height_unit_m = *unit_m;
        }
    }

    /// Lowest and highest height of the file, and how many of its cells have none.
    #[must_use]
    pub fn grid_words(&self) -> [String; 2] {
        let Some(grid) = self.base.grid else {
            return Default::default();
        };
        let [lowest, highest] = grid.range.map(|height| grouped(height, 1));
        let [cells, empty] = grid.cells.map(|count| grouped(count, 0));
        let [wide, high] = grid
            .cell_m
            .map(|side_m| words::length(side_m * self.choices.unit_m, self.units));
        [
            say!("heights-from-to", lowest = lowest, highest = highest),
            say!("heights-cells", cells = cells, empty = empty, wide = wide, high = high),
        ]
    }

    /// What stands in a field, and whether that can be used.
    #[must_use]
    pub fn typed(&self, field: Field) -> (&str, bool) {
        let place = field as usize;
        let text = self.typed.get(place).map_or("", String::as_str);
        (text, self.is_wrong.get(place) != Some(&true))
    }

    /// Takes what was typed into a field.
    pub fn type_in(&mut self, field: Field, text: String) {
        let scale = match self.units {
            UnitSystem::Metric => 1.0,
            UnitSystem::UsCustomary => METERS_PER_FOOT,
        };
        let value = signed(&text, self.units);
        let choices = &mut self.choices;
        let is_taken = value.is_some_and(|value| match field {
            Field::Distance => {
                choices.extent = choices.extent.reaching_m(value * scale);
                true
            }
            Field::Longitude | Field::Latitude => {
                let (longitude, latitude) = choices.origin.to_deg();
                let origin = if field == Field::Longitude {
                    GeographicPoint::checked_from_deg(value, latitude)
                } else {
                    GeographicPoint::checked_from_deg(longitude, value)
                };
                choices.origin = origin.unwrap_or(choices.origin);
                origin.is_some()
            }
            Field::Unit => {
                choices.unit_m = value;
                value > 0.0
            }
            Field::East | Field::North => {
                let (east_m, north_m) = choices.zero.to_m();
                let zero = if field == Field::East {
                    PlanPoint::checked_from_m(value * scale, north_m)
                } else {
                    PlanPoint::checked_from_m(east_m, value * scale)
                };
                choices.zero = zero.unwrap_or(choices.zero);
                zero.is_some()
            }
            Field::Turn => {
                choices.turn_deg = value;
                true
            }
        });
        let place = field as usize;
        if let (Some(typed), Some(is_wrong)) = (self.typed.get_mut(place), self.is_wrong.get_mut(place)) {
            *typed = text;
            *is_wrong = !is_taken;
        }
    }

    /// How much can be taken: in words, and whether it is chosen; nothing where there is no choice.
    #[must_use]
    pub fn extents(&self) -> Vec<(&'static str, bool)> {
        let words = [
            say!("bases-extent-site"),
            say!("bases-extent-within"),
            say!("bases-extent-around"),
        ];
        let is_chosen =
            |extent: &Extent| std::mem::discriminant(extent) == std::mem::discriminant(&self.choices.extent);
        let all = words.into_iter().zip(EXTENTS.iter().map(is_chosen));
        all.filter(|_| self.has_site).collect()
    }

    /// Chooses how much is taken, by its place among [`Self::extents`], as far as is usual.
    pub fn choose_extent(&mut self, place: usize) {
        if let Some(extent) = EXTENTS.get(place) {
            self.choices.extent = usual_extent(*extent, self.units);
            self.fields.retain(|field| *field != Field::Distance);
            if self.choices.extent != Extent::Within {
                self.fields.insert(0, Field::Distance);
            }
            self.write_fields();
        }
    }

    /// The classes of chosen layers by their places, as many as are shown, and how many there are.
    #[must_use]
    pub fn classes(&self) -> (Vec<usize>, usize) {
        let is_chosen = |place: &usize| {
            let class = self.base.classes.get(*place);
            class.is_some_and(|class| self.choices.layers.get(class.layer) == Some(&true))
        };
        let mut shown: Vec<usize> = self.order.iter().copied().filter(is_chosen).collect();
        let all = shown.len();
        if !self.shows_all {
            shown.truncate(FIRST_CLASSES);
        }
        (shown, all)
    }

    /// What a class can become, in words, and which of it is chosen. A class whose meaning is a street in a role of its
    /// own keeps that role.
    #[must_use]
    pub fn meanings(&self, class: usize, app: &App) -> (Vec<(Becomes, String)>, usize) {
        let Some(class) = self.base.classes.get(class) else {
            return (Vec::new(), 0);
        };
        let mut all = meanings_of(&class.shapes, app);
        let first = Becomes::suggested(class.suggested);
        for (becomes, _) in &mut all {
            if becomes.is_choice(first) {
                *becomes = first;
            }
        }
        let chosen = all.iter().position(|(becomes, _)| becomes.is_choice(class.becomes));
        (all, chosen.unwrap_or(0))
    }

    /// What any of the classes of chosen layers can become.
    #[must_use]
    pub fn meanings_of_all(&self, app: &App) -> Vec<(Becomes, String)> {
        meanings_of(&[Shape::Points, Shape::Lines, Shape::Areas], app)
    }

    /// Gives a class another meaning, by its place among [`Self::meanings`].
    pub fn choose_meaning(&mut self, class: usize, place: usize, app: &App) {
        let (all, _) = self.meanings(class, app);
        if let (Some(class), Some((becomes, _))) = (self.base.classes.get_mut(class), all.get(place)) {
            class.becomes = *becomes;
        }
    }

    /// Gives all classes of chosen layers that can have it a meaning, by its place among [`Self::meanings_of_all`].
    pub fn choose_meaning_of_all(&mut self, place: usize, app: &App) {
        let Some((becomes, _)) = self.meanings_of_all(app).into_iter().nth(place) else {
            return;
        };
        for class in &mut self.base.classes {
            let is_chosen = self.choices.layers.get(class.layer) == Some(&true);
            if is_chosen && class.shapes.iter().any(|shape| becomes.can_be(*shape)) {
                class.becomes = becomes;
            }
        }
    }

    /// How many features a layer has.
    #[must_use]
    pub fn count_in(&self, layer: usize) -> u32 {
        let within = self.base.classes.iter().filter(|class| class.layer == layer);
        within.map(|class| class.count).sum()
    }

    /// The name of a layer, as the file has it; those that the reader of OpenStreetMap made in this language.
    #[must_use]
    pub fn layer_name(&self, layer: usize) -> &str {
        const MADE: [(&str, Words); 6] = [
            ("streets", hobnail_core::message!("bases-layer-streets")),
            ("places", hobnail_core::message!("bases-layer-places")),
            ("constraints", hobnail_core::message!("bases-layer-areas")),
            ("barriers", hobnail_core::message!("bases-layer-barriers")),
            ("buildings", hobnail_core::message!("bases-layer-buildings")),
            ("other", hobnail_core::message!("bases-layer-other")),
        ];
        let name = self.base.layers.get(layer).map_or("", String::as_str);
        let is_made = holds(&self.base.attribution, "OpenStreetMap");
        let made = MADE.iter().find(|(made, _)| is_made && *made == name);
        made.map_or(name, |(_, words)| words.words())
    }

    /// How large what the chosen layers hold is, west to east and south to north; `None` where that is nothing or more
    /// than a plan can hold.
    #[must_use]
    pub fn extent(&self) -> Option<String> {
        let [west, south, east, north] = self.base.bounds(&self.choices.layers)?;
        let (wide_m, high_m) = match self.base.coordinates {
            Coordinates::Drawing { unit_m } => {
                let scale = self.choices.unit_m / unit_m / 1000.0;
                ((east - west) * scale, (north - south) * scale)
            }
            Coordinates::Degrees => {
                let middle = GeographicPoint::checked_from_deg(f64::midpoint(west, east), f64::midpoint(south, north))?;
                let projection = Projection::about(middle).ok()?;
                let (left_m, bottom_m) = projection.m_from_deg(west, south)?;
                let (right_m, top_m) = projection.m_from_deg(east, north)?;
                (right_m - left_m, top_m - bottom_m)
            }
        };
        let long = |length_m: f64| match self.units {
            UnitSystem::Metric => [grouped(length_m, 0), " m".to_owned()].concat(),
            UnitSystem::UsCustomary => say!("page-feet", number = grouped(length_m / METERS_PER_FOOT, 0)),
        };
        let [wide, high] = [wide_m, high_m].map(long);
        Some(say!("bases-extent", wide = wide, high = high))
    }

    /// What is to be known about where the base comes to lie.
    #[must_use]
    pub fn place_words(&self) -> &'static str {
        if matches!(self.base.coordinates, Coordinates::Drawing { .. }) {
            match self.base.grid {
                Some(_) => say!("heights-place"),
                None => say!("bases-place-drawing"),
            }
        } else if self.fields.contains(&Field::Longitude) {
            say!("bases-place-new")
        } else {
            say!("bases-place-fixed")
        }
    }

    /// The unit behind a field.
    #[must_use]
    pub fn unit_of(&self, field: Field) -> &'static str {
        match field {
            Field::Unit => "m",
            Field::Longitude | Field::Latitude | Field::Turn => "°",
            Field::Distance | Field::East | Field::North => match self.units {
                UnitSystem::Metric => "m",
                UnitSystem::UsCustomary => say!("page-unit-feet"),
            },
        }
    }

    /// Whether the coordinate system can be another than it was taken for.
    #[must_use]
    pub fn can_be_read_again(&self) -> bool {
        matches!(self.base.coordinates, Coordinates::Drawing { .. }) || !self.is_wgs84()
    }

    /// Whether positions were longitude and latitude of WGS84, or are those of a format that has no others.
    fn is_wgs84(&self) -> bool {
        let system = &self.base.system;
        system.is_empty() || holds(system, DEGREES) && holds(system, WGS84)
    }

    /// The coordinate system, and its unit in words.
    #[must_use]
    pub fn system(&self) -> (String, &'static str) {
        let system = self.base.system.clone();
        match self.base.coordinates {
            Coordinates::Drawing { .. } => (say!("bases-system-none").to_owned(), ""),
            Coordinates::Degrees if self.is_wgs84() => {
                (say!("bases-system-degrees").to_owned(), say!("bases-unit-degrees"))
            }
            Coordinates::Degrees => {
                let unit = if holds(&system, DEGREES) {
                    say!("bases-unit-degrees")
                } else if holds(&system, "us-ft") || holds(&system, "to_meter=0.304800609") {
                    say!("bases-unit-survey-feet")
                } else if holds(&system, "units=ft") || holds(&system, "to_meter=0.3048 ") {
                    say!("bases-unit-feet")
                } else if holds(&system, "to_meter=") {
                    say!("bases-unit-other")
                } else {
                    say!("bases-unit-meters")
                };
                (system, unit)
            }
        }
    }
}

/// What things of these shapes can become.
fn meanings_of(shapes: &[Shape], app: &App) -> Vec<(Becomes, String)> {
    let document = app.study().document();
    let held = &document.street_sections;
    let defaults = street_sections();
    // Sections that the plan no longer has come back with the streets that need them.
    let sections = defaults
        .iter()
        .map(|(id, section)| (*id, held.get(id).unwrap_or(section)));
    Becomes::choices(shapes, sections, document)
}

/// As far as is usual, in a round number of feet where lengths are in feet: an eighth of a mile, or half a mile.
fn usual_extent(extent: Extent, units: UnitSystem) -> Extent {
    match (extent, units) {
        (_, UnitSystem::Metric) => Extent::usual(extent),
        (Extent::Site { .. }, UnitSystem::UsCustomary) => extent.reaching_m(660.0 * METERS_PER_FOOT),
        (_, UnitSystem::UsCustomary) => extent.reaching_m(2640.0 * METERS_PER_FOOT),
    }
}

/// A number that may be below zero. A comma parts decimals in meters and thousands in feet.
fn signed(text: &str, units: UnitSystem) -> Option<f64> {
    let comma = match units {
        UnitSystem::Metric => ".",
        UnitSystem::UsCustomary => "",
    };
    let text = text.trim().replace(',', comma).replace('−', "-");
    match text.strip_prefix('-') {
        Some(rest) => number(rest).map(|value| -value),
        None => number(&text),
    }
}
