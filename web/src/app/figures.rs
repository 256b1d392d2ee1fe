//! The column of figures: first-level lines, all others under headings that open, their ranges once they are drawn, and
//! where the doubt comes from.

use hobnail_core::order::{self, OrderedMap, OrderedSet};
use hobnail_core::{message, say};

use hobnail_core::figures::graph::{Graph, Node, NodeIndex, Operator};
use hobnail_core::figures::range::Range;
use hobnail_core::figures::value::{CellValue, Content, FigureValue};
use hobnail_core::study::Study;
use hobnail_core::study::first_level::{FIRST_LEVEL, first_level};
use hobnail_core::study::marked::ChangeShown;
use hobnail_core::study::protocol::{Answer, Question};
use hobnail_core::text;

use super::basis::Opened;
use super::words::Words;
use super::{land_bar, places};

/// A heading of the column, under which figures stand that are not on the first level.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Heading {
    /// Land.
    Land,
    /// Homes and people, jobs and floor with them.
    Homes,
    /// Walking.
    Walking,
    /// Mix.
    Mix,
    /// Streets.
    Streets,
    /// Blocks.
    Blocks,
    /// Sun.
    Sun,
    /// What belongs under none of these.
    Other,
}

impl Heading {
    /// All of them, in order.
    pub const ALL: [Self; 8] = [
        Self::Land,
        Self::Homes,
        Self::Walking,
        Self::Mix,
        Self::Streets,
        Self::Blocks,
        Self::Sun,
        Self::Other,
    ];

    /// Its words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Land => say!("page-heading-land"),
            Self::Homes => say!("page-heading-homes"),
            Self::Walking => say!("page-heading-walking"),
            Self::Mix => say!("page-heading-mix"),
            Self::Streets => say!("page-heading-streets"),
            Self::Blocks => say!("page-heading-blocks"),
            Self::Sun => say!("page-heading-sun"),
            Self::Other => say!("page-heading-other"),
        }
    }

    /// Where a figure stands, by the first part of its id.
    #[must_use]
    pub fn of(figure: &str) -> Self {
        match figure.split('.').next().unwrap_or_default() {
            "land" | "program" => Self::Land,
            "homes" | "people" | "jobs" | "lots" | "floor" | "density" => Self::Homes,
            "walk" => Self::Walking,
            "mix" => Self::Mix,
            "streets" => Self::Streets,
            "blocks" => Self::Blocks,
            "sun" => Self::Sun,
            _ => Self::Other,
        }
    }
}

/// Figures that are steps on the way to others and are found in their basis, by how their ids begin.
const STEPS: [&str; 1] = ["walk.base_time"];

/// What stands first under a heading, by how ids begin.
const FIRST: [&str; 5] = ["homes", "people", "jobs", "density", "land"];

/// Whether a figure is a step on the way to others: so are the tables that part each building type once more.
fn is_step(graph: &Graph, node: &Node) -> bool {
    let mut axes = node.axes.iter().map(|axis| graph.axis(*axis));
    let parts_types = node.axes.len() > 1 && axes.any(|axis| axis.id == "building_type");
    parts_types || STEPS.iter().any(|step| node.id.starts_with(step))
}

/// The figures under a heading, first-level ones and the land bar left out: what is drawn before what is rough, numbers
/// before tables, kinds of quantity together.
fn under(study: &Study, heading: Heading) -> Vec<NodeIndex> {
    let graph = study.graph();
    let is_here = |index: &NodeIndex| {
        let node = graph.node(*index);
        let is_worked = !matches!(node.operator, Operator::Leaf(_));
        is_worked
            && !is_step(graph, node)
            && node.id != land_bar::FIGURE
            && !FIRST_LEVEL.contains(&node.id.as_str())
            && Heading::of(&node.id) == heading
    };
    let mut held: Vec<NodeIndex> = graph.indices().filter(is_here).collect();
    order::sort_by_key(&mut held, |index| {
        let node = graph.node(*index);
        let family = FIRST.iter().position(|first| node.id.starts_with(first));
        (
            text::holds(&node.id, ".soft"),
            !node.axes.is_empty(),
            family.unwrap_or(FIRST.len()),
        )
    });
    held
}

/// The headings that have anything below them, in order.
#[must_use]
pub fn headings(study: &Study) -> Vec<Heading> {
    let mut held = Heading::ALL.to_vec();
    held.retain(|heading| !under(study, *heading).is_empty());
    held
}

/// Figures of the first level by what they are called in the little room they have there.
const SHORT_TITLES: [(&str, Words); 14] = [
    ("homes.of_asked", message!("page-short-homes-of-asked")),
    ("density.homes_per_buildable", message!("page-short-density")),
    ("homes.count", message!("page-short-homes")),
    ("streets.length_per_home", message!("page-short-length-per-home")),
    ("walk.center_5min_homes_share", message!("page-short-center")),
    ("walk.park_5min_homes_share", message!("page-short-park")),
    ("walk.all_five_10min_homes_share", message!("page-short-all-five")),
    (
        "walk.all_five_sure_10min_homes_share",
        message!("page-short-all-five-sure"),
    ),
    ("jobs.count", message!("page-short-jobs")),
    ("jobs.per_home", message!("page-short-jobs-per-home")),
    ("streets.ways_in_and_out", message!("page-short-ways")),
    ("streets.most_homes_behind_one", message!("page-short-behind-one")),
    ("blocks.perimeter_median", message!("page-short-perimeter-median")),
    ("blocks.perimeter_longest", message!("page-short-perimeter-longest")),
];

/// What a figure is called on the first level.
#[must_use]
pub fn short_title(row: &Row) -> String {
    let short = SHORT_TITLES.iter().find(|(id, _)| *id == row.id);
    short.map_or_else(
        || super::words::sentence_case(&row.title),
        |(_, title)| title.words().to_owned(),
    )
}

/// One line of the column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The heading it stands under; `None` on the first level.
    pub heading: Option<Heading>,
    /// The figure's id, stable for ever.
    pub id: String,
    /// What it is.
    pub title: String,
    /// Its number with unit, as exact as its range allows; for a table how many of its rows hold anything.
    pub value: String,
    /// Its likely range in words, once it is known.
    pub range: Option<String>,
    /// Why there is no number.
    pub reason: Option<String>,
    /// What has changed since the marked moment, in words, and whether it is larger than rounding and range.
    pub change: Option<(String, bool)>,
    /// Whether it is a table.
    pub is_table: bool,
    /// The rows of a table that hold anything: what each is for, and its number.
    pub cells: Vec<(String, String)>,
    /// Whether what it counted can be shown on the drawing.
    pub has_place: bool,
}

/// Ranges and influences that were drawn for one revision of the plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawn {
    revision: u64,
    /// By figure, each cell as shown with its range.
    ranges: OrderedMap<String, Vec<String>>,
    /// The ranges that first-level figures had last, of whatever revision: they change little with a step.
    bounds: [Option<(f64, f64)>; FIRST_LEVEL.len()],
    /// By figure, what its doubt comes from.
    influences: OrderedMap<String, Influences>,
    /// By figure, what has changed since the marked moment.
    changes: OrderedMap<String, ChangeShown>,
}

/// Where the doubt in a figure comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum Influences {
    /// Titles and shares of variance, the largest first.
    Shares(Vec<(String, f64)>),
    /// There are none, and why.
    None(String),
}

impl Drawn {
    /// Takes an answer; `false` when it is stale and was dropped.
    pub fn take(&mut self, study: &Study, revision: u64, answer: Answer) -> bool {
        if revision != study.revision() || study.is_in_gesture() {
            return false;
        }
        if self.revision != revision {
            *self = Self {
                revision,
                bounds: self.bounds,
                ..Self::default()
            };
        }
        match answer {
            Answer::Range { figure, shown, bounds } => {
                let place = FIRST_LEVEL.iter().position(|id| *id == figure);
                if let Some(held) = place.and_then(|place| self.bounds.get_mut(place)) {
                    *held = bounds.first().copied().flatten();
                }
                self.ranges.insert(figure, shown);
            }
            Answer::Sensitivity { figure, shares, reason } => {
                let influences = reason.map_or(Influences::Shares(shares), Influences::None);
                self.influences.insert(figure, influences);
            }
            Answer::Change { figure, change } => {
                if let Some(change) = change {
                    self.changes.insert(figure, change);
                }
            }
            // The study has taken them itself, or goes without.
            Answer::Details(_) | Answer::NoDetails(_) | Answer::Compared(_) => {}
        }
        true
    }

    /// Where the doubt in a figure comes from, when it was drawn for the plan as it stands.
    #[must_use]
    pub fn influences(&self, study: &Study, figure: &str) -> Option<&Influences> {
        self.influences
            .get(figure)
            .filter(|_| self.revision == study.revision())
    }

    /// A cell of a figure as its range lets it be shown, without the range itself; once that was drawn.
    #[must_use]
    pub fn value(&self, study: &Study, figure: &str, place: usize) -> Option<String> {
        let shown = self.ranges(study, figure)?.get(place)?;
        Some(parted(shown).0.to_owned())
    }

    /// The range that a first-level figure had last, by its place among them.
    #[must_use]
    pub fn range_at(&self, place: usize) -> Range {
        match self.bounds.get(place) {
            Some(Some((low, high))) => Range::Likely {
                low: *low,
                high: *high,
                failed: 0,
            },
            _ => Range::Certain,
        }
    }

    /// What has changed in a figure since the marked moment, once that was worked out for the plan as it stands.
    #[must_use]
    pub fn change(&self, study: &Study, figure: &str) -> Option<&ChangeShown> {
        self.changes.get(figure).filter(|_| self.revision == study.revision())
    }

    /// Drops what has changed since a moment that is marked no longer.
    pub fn forget_changes(&mut self) {
        self.changes = OrderedMap::new();
    }

    fn ranges(&self, study: &Study, figure: &str) -> Option<&[String]> {
        let held = self.ranges.get(figure).filter(|_| self.revision == study.revision());
        held.map(Vec::as_slice)
    }
}

/// The first-level figures of the open plan, in order, then those under each open heading; with the ranges that were
/// drawn for the plan as it stands. The figure of the land bar is left out while the bar shows it.
#[must_use]
pub fn rows(study: &Study, drawn: &Drawn, open: &OrderedSet<Heading>) -> Vec<Row> {
    let mut rows: Vec<Row> = first_level(study)
        .iter()
        .filter(|figure| figure.id != land_bar::FIGURE || !land_bar::land_bar(study, drawn).is_shown())
        .map(|figure| row(None, figure, drawn.ranges(study, &figure.id)))
        .collect();
    for heading in open {
        rows.extend(under(study, *heading).into_iter().map(|index| {
            let figure = study.figure_value(index);
            row(Some(*heading), &figure, drawn.ranges(study, &figure.id))
        }));
    }
    rows
}

/// These figures as rows.
#[must_use]
pub fn rows_of(study: &Study, drawn: &Drawn, ids: &[String]) -> Vec<Row> {
    let indices = ids.iter().filter_map(|id| study.graph().index(id));
    let figures = indices.map(|index| study.figure_value(index));
    figures
        .map(|figure| row(None, &figure, drawn.ranges(study, &figure.id)))
        .collect()
}

/// What is asked once the plan rests: the range of every first-level figure and of those a legend repeats, then walking
/// and mix in detail, then what the doubt of figures with an open basis comes from, then the ranges under open headings.
#[must_use]
pub fn questions(study: &Study, bases: &[Opened], legend: &[&str], open: &OrderedSet<Heading>) -> Vec<Question> {
    let graph = study.graph();
    let first = FIRST_LEVEL
        .iter()
        .chain(legend)
        .map(|id| Question::Range((*id).to_owned()));
    let doubt = bases.iter().map(|open| Question::Sensitivity(open.figure.clone()));
    let others = open
        .iter()
        .flat_map(|heading| under(study, *heading))
        .map(|index| Question::Range(graph.node(index).id.clone()));
    first.chain([Question::Details]).chain(doubt).chain(others).collect()
}

/// Axes whose entries are kinds of something.
const KINDS: [&str; 4] = ["building_type", "land_part", "use", "workplace"];

/// A number and its range, as the writer of ranges parts them.
fn parted(shown: &str) -> (&str, Option<&str>) {
    text::parted(shown, ", ").map_or((shown, None), |(value, range)| (value, Some(range)))
}

fn row(heading: Option<Heading>, figure: &FigureValue, ranges: Option<&[String]>) -> Row {
    let shown = |cell: &CellValue, place: usize| {
        let drawn = ranges
            .and_then(|ranges| ranges.get(place))
            .map_or(cell.shown.as_str(), String::as_str);
        let (value, range) = parted(drawn);
        (value.to_owned(), range.map(str::to_owned))
    };
    let mut row = Row {
        heading,
        id: figure.id.clone(),
        title: figure.title.clone(),
        value: String::new(),
        range: None,
        reason: None,
        change: None,
        is_table: matches!(figure.content, Content::Table { .. }),
        cells: Vec::new(),
        has_place: false,
    };
    match &figure.content {
        Content::Single(cell) if cell.value.is_some() => {
            (row.value, row.range) = shown(cell, 0);
            row.has_place = places::is_placed(&figure.id) && cell.value > Some(0.0);
        }
        Content::Single(cell) => {
            "—".clone_into(&mut row.value);
            row.reason.clone_from(&cell.reason);
        }
        Content::Table { axes, rows } => {
            let held = rows
                .iter()
                .enumerate()
                .filter(|(_, line)| line.value.value.is_some_and(|value| value > 0.0));
            row.cells = held
                .map(|(place, line)| {
                    let (value, range) = shown(&line.value, place);
                    let range = range.map_or_else(String::new, |range| format!(", {range}"));
                    (line.titles.join(", "), format!("{value}{range}"))
                })
                .collect();
            row.has_place = places::is_placed(&figure.id) && !row.cells.is_empty();
            row.value = match row.cells.len() {
                0 => say!("page-rows-none").to_owned(),
                1 => say!("page-rows-one").to_owned(),
                held if axes.iter().any(|axis| KINDS.contains(&axis.as_str())) => say!("page-rows-kinds", count = held),
                held => say!("page-rows", count = held),
            };
        }
    }
    row
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::Document;
    use hobnail_core::plan::projection::GeographicPoint;

    fn study() -> Study {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        Study::open(Document::new("Empty", origin)).expect("the tables fit together")
    }

    fn range(shown: &str) -> Answer {
        Answer::Range {
            figure: "homes.count".to_owned(),
            shown: vec![shown.to_owned()],
            bounds: vec![None],
        }
    }

    #[test]
    fn a_range_stands_beside_its_number() {
        let study = study();
        let mut drawn = Drawn::default();
        assert!(drawn.take(&study, study.revision(), range("about 40 homes, likely 32 to 47")));
        let rows = rows(&study, &drawn, &OrderedSet::new());
        let homes = rows.iter().find(|row| row.id == "homes.count").expect("the row");
        assert_eq!(homes.value, "about 40 homes");
        assert_eq!(homes.range.as_deref(), Some("likely 32 to 47"));
    }

    #[test]
    fn a_stale_range_is_dropped() {
        let mut study = study();
        let mut drawn = Drawn::default();
        let asked_at = study.revision();
        study.begin("draw").expect("no gesture is open");
        study.change(Vec::new()).expect("nothing to apply");
        study.cancel().expect("a gesture is open");
        assert!(!drawn.take(&study, asked_at, range("about 40 homes, likely 32 to 47")));
        assert_eq!(rows(&study, &drawn, &OrderedSet::new())[0].range, None);
    }

    #[test]
    fn what_can_not_be_worked_out_says_why() {
        let rows = rows(&study(), &Drawn::default(), &OrderedSet::new());
        let share = rows
            .iter()
            .find(|row| row.id == "walk.center_5min_homes_share")
            .expect("the row");
        assert_eq!(share.value, "—");
        assert!(share.reason.is_some());
    }
    #[test]
    fn every_figure_stands_on_the_first_level_or_under_one_heading() {
        let study = study();
        let all: OrderedSet<Heading> = headings(&study).into_iter().collect();
        let rows = rows(&study, &Drawn::default(), &all);
        let ids: OrderedSet<&str> = rows.iter().map(|row| row.id.as_str()).collect();
        assert_eq!(ids.len(), rows.len(), "none stands twice");
        assert!(
            !all.contains(&Heading::Other),
            "every figure has a heading of its own kind"
        );
        for heading in &all {
            assert!(rows.iter().any(|row| row.heading == Some(*heading)), "{heading:?}");
        }
        assert!(!ids.contains(land_bar::FIGURE), "the land bar stands for it");
        let open = Opened {
            figure: "homes.count".to_owned(),
            is_pinned: false,
        };
        let asked = questions(&study, &[open], &[], &all);
        assert_eq!(
            asked.len(),
            rows.len() + 3,
            "a range for each and for the land bar, the details, and one doubt"
        );
    }

    #[test]
    fn what_is_drawn_stands_before_what_is_rough_and_numbers_before_tables() {
        let study = study();
        let open = OrderedSet::from_iter([Heading::Homes]);
        let rows = rows(&study, &Drawn::default(), &open);
        let ids: Vec<&str> = rows.iter().map(|row| row.id.as_str()).collect();
        let at = |id: &str| ids.iter().position(|held| *held == id).expect(id);
        for pair in [
            ["people.count", "homes.by_phase"],
            ["homes.by_phase", "people.by_phase"],
            ["people.by_price_band", "jobs.by_phase"],
            ["jobs.by_building_type", "density.floor_by_phase"],
            ["density.floor_by_phase", "lots.by_building_type"],
            ["lots.by_building_type", "homes.soft"],
            ["homes.soft", "homes.soft_by_building_type"],
        ] {
            assert!(at(pair[0]) < at(pair[1]), "{pair:?}");
        }
        assert!(!ids.contains(&"homes.by_building_type_and_phase"), "found in its basis");
    }
}
