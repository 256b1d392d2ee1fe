//! The map laid over the drawing: one at a time, with one legend.
//!
//! A map shows what figures say of the whole: its legend repeats their numbers, so that both can be seen to agree.

use hobnail_core::figures::value::{CellValue, Content, TableRow};
use hobnail_core::measures::walk::destinations::Destination;
use hobnail_core::network::counting_rule::{COUNTING_RULES, CountingRule};
use hobnail_core::study::Study;
use hobnail_core::{message, say};

use super::figures::Drawn;
use super::words::Words;
use super::{alternatives, class_maps, detail_maps, words};
use crate::canvas::scene::{Node, Scale, Scene};

/// The outer edge of the walk-shed, and the walk within which needs count as reached.
pub const FAR_MINUTES: u32 = 10;

/// The inner edge of the walk-shed.
pub const NEAR_MINUTES: u32 = 5;

/// Homes within the inner edge, by destination.
const NEAR_HOMES: &str = "walk.homes_share_within_5min";

/// Homes within the outer edge, by destination.
const FAR_HOMES: &str = "walk.homes_share_within_10min";

/// Intersections, by counting rule.
const INTERSECTIONS: &str = "streets.intersections";

/// Heads of dead ends counted, by counting rule.
const HEADS: &str = "streets.counted_heads";

/// How many daily needs there are.
pub const NEEDS: u8 = Destination::NEEDS.len() as u8;

/// What is laid over the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Map {
    /// Nothing.
    Plain,
    /// From where a destination is within five and ten minutes.
    Walk(Destination),
    /// How many of the five daily needs each front reaches within ten minutes.
    Five,
    /// How many walks go along each street.
    Routes,
    /// From where walks to the center are least direct.
    Indirect,
    /// How mixed the floor area is that homes reach along each front.
    Mix,
    /// Streets that alternatives share.
    Shared,
    /// Homes of each block by its land.
    Density,
    /// What is built in which phase.
    Phases,
    /// The street section of each street.
    Sections,
    /// Parcels by group of owners.
    Owners,
    /// The buildings alone.
    Ground,
    /// How steep the ground is.
    Slope,
    /// Which intersections a counting rule counts, by its place among [`COUNTING_RULES`].
    Counted(usize),
}

impl Default for Map {
    fn default() -> Self {
        Self::Walk(Destination::Center)
    }
}

impl Map {
    /// The maps that are no walk and no counting rule, with their names in the page and their words.
    pub const OTHERS: [(Self, &'static str, Words); 12] = [
        (Self::Plain, "plain", message!("page-map-plain")),
        (Self::Ground, "ground", message!("maps-ground")),
        (Self::Slope, "slope", message!("heights-map")),
        (Self::Five, "five", message!("page-map-five")),
        (Self::Routes, "routes", message!("page-map-routes")),
        (Self::Indirect, "indirect", message!("page-map-indirect")),
        (Self::Mix, "mix", message!("maps-mix")),
        (Self::Density, "density", message!("maps-density")),
        (Self::Sections, "sections", message!("maps-sections")),
        (Self::Phases, "phases", message!("maps-phases")),
        (Self::Owners, "owners", message!("maps-owners")),
        (Self::Shared, "shared", message!("page-map-shared")),
    ];

    fn other(self) -> Option<(&'static str, Words)> {
        let found = Self::OTHERS.iter().find(|(map, ..)| *map == self);
        found.map(|(_, id, words)| (*id, *words))
    }

    /// All maps, in the order they are chosen from.
    #[must_use]
    pub fn all() -> Vec<Self> {
        let walks = Destination::ALL.into_iter().map(Self::Walk);
        let counted = (0..COUNTING_RULES.len()).map(Self::Counted);
        let others = Self::OTHERS.into_iter().map(|(map, ..)| map);
        others.chain(walks).chain(counted).collect()
    }

    /// Its name in the page.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Walk(destination) => format!("walk-{}", destination.id()),
            Self::Counted(place) => format!("counted-{}", place + 1),
            _ => self.other().map_or("", |(id, _)| id).to_owned(),
        }
    }

    /// Its words.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Walk(destination) => say!("page-map-walk", destination = destination.title()),
            Self::Counted(_) => words::sentence_case(self.rule().map_or("", |rule| rule.name())),
            _ => self.other().map_or("", |(_, words)| words.words()).to_owned(),
        }
    }

    /// Whether it shows what is worked out once the drawing rests.
    #[must_use]
    pub const fn shows_details(self) -> bool {
        matches!(
            self,
            Self::Routes | Self::Indirect | Self::Mix | Self::Walk(Destination::Center)
        )
    }

    /// The counting rule it shows.
    #[must_use]
    pub fn rule(self) -> Option<&'static CountingRule> {
        match self {
            Self::Counted(place) => COUNTING_RULES.get(place),
            _ => None,
        }
    }
}

/// How a line of the legend looks on the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// The wash with the edge of five minutes.
    Near,
    /// The wash with the edge of ten minutes.
    Far,
    /// Fronts that reach so many needs.
    Needs(u8),
    /// A node of the streets.
    Node(Node),
    /// Segments with walks of a class.
    Walks(u8),
    /// One of the least direct fronts, by rank.
    Front(u8),
    /// The best single point for a center.
    Best,
    /// Land or streets of a class.
    Class(Scale, u8),
    /// Streets steeper than a limit, by its place.
    Steep(u8),
    /// Nothing: a figure of the whole, by its name in the page.
    Figure(&'static str),
}

/// A line of the legend.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// How it looks.
    pub mark: Mark,
    /// What it means.
    pub words: String,
    /// The figure that says how much of it there is, as shown.
    pub value: Option<String>,
}

/// The legend of the map in view.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Legend {
    /// The map.
    pub map: Map,
    /// Its lines.
    pub lines: Vec<Line>,
    /// Why there is nothing to see, or how it was worked.
    pub note: Option<String>,
}

impl Legend {
    /// All of it as one sentence, for those who listen.
    #[must_use]
    pub fn in_words(&self) -> String {
        let lines = self.lines.iter().filter_map(|line| {
            let value = line.value.as_ref()?;
            Some(format!("{}: {value}", line.words))
        });
        let lines: Vec<String> = lines.collect();
        let end = if lines.is_empty() { "" } else { "." };
        let parts = [say!("page-map-said", map = self.map.words()), lines.join("; ") + end];
        let held: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        [held.join(" "), self.note.clone().unwrap_or_default()]
            .join(" ")
            .trim()
            .to_owned()
    }
}

/// The figures that legends repeat.
#[must_use]
pub fn figures_of(map: Map) -> &'static [&'static str] {
    match map {
        Map::Walk(_) => &[NEAR_HOMES, FAR_HOMES],
        Map::Five => &[FAR_HOMES],
        Map::Counted(_) => &[INTERSECTIONS],
        // What details and classes say is counted and has no range.
        _ => &[],
    }
}

/// The legend of a map over the plan as it stands, with the ranges that were drawn for it.
#[must_use]
pub fn legend(study: &Study, drawn: &Drawn, map: Map) -> Legend {
    let pace = f64::from(study.document().settings.walking_pace_mm_per_s) / 1000.0;
    let pace = words::pace(pace, study.document().settings.units);
    let homes = |figure, destination: Destination| {
        entry(study, drawn, figure, destination.id()).map(|share| say!("page-share-of-homes", share = share))
    };
    match map {
        Map::Plain => Legend {
            map,
            ..Legend::default()
        },
        Map::Walk(destination) => {
            let line = |mark, minutes: u32, figure| Line {
                mark,
                words: say!("page-minutes", count = minutes),
                value: homes(figure, destination).ok(),
            };
            let why_not = homes(NEAR_HOMES, destination).err();
            let mut note = why_not.map_or_else(
                || say!("page-at-pace", pace = pace),
                |why| format!("{}.", words::sentence_case(&why)),
            );
            let mut lines = vec![
                line(Mark::Near, NEAR_MINUTES, NEAR_HOMES),
                line(Mark::Far, FAR_MINUTES, FAR_HOMES),
            ];
            if destination == Destination::Center {
                match detail_maps::best_line(study, drawn) {
                    Ok(best) => lines.push(best),
                    Err(why) => note = say!("page-best-point-not", note = note, why = why),
                }
            }
            Legend {
                map,
                lines,
                note: Some(note),
            }
        }
        Map::Five => {
            let lines = (0..=NEEDS).rev().map(|needs| Line {
                mark: Mark::Needs(needs),
                words: match needs {
                    NEEDS => say!("page-needs-all").to_owned(),
                    0 => say!("page-needs-none").to_owned(),
                    needs => say!("page-needs", count = needs),
                },
                value: (needs == NEEDS)
                    .then(|| homes(FAR_HOMES, Destination::AllFive).ok())
                    .flatten(),
            });
            Legend {
                map,
                lines: lines.collect(),
                note: Some(say!("page-within-minutes", count = FAR_MINUTES, pace = pace)),
            }
        }
        Map::Routes => detail_maps::routes_legend(study, drawn),
        Map::Indirect => detail_maps::fronts_legend(study, drawn),
        Map::Mix => detail_maps::mix_legend(study),
        Map::Shared => alternatives::shared_legend(study),
        Map::Density | Map::Phases | Map::Sections | Map::Owners | Map::Ground | Map::Slope => {
            class_maps::lay(study, map, &mut Scene::default()).unwrap_or_default()
        }
        Map::Counted(_) => {
            let rule = map.rule().map_or("", |rule| rule.id);
            let line = |node, words: &str, value| Line {
                mark: Mark::Node(node),
                words: words.to_owned(),
                value,
            };
            let heads = entry(study, drawn, HEADS, rule);
            let why_not = heads
                .as_ref()
                .err()
                .map(|why| format!("{}.", words::sentence_case(why)));
            let mut lines = vec![line(
                Node::Crossing,
                say!("page-node-counted"),
                entry(study, drawn, INTERSECTIONS, rule).ok(),
            )];
            lines.extend(
                heads
                    .ok()
                    .map(|count| line(Node::Head, say!("page-node-heads"), Some(count))),
            );
            lines.push(line(Node::LeftOut, say!("page-node-left-out"), None));
            Legend {
                map,
                lines,
                note: why_not,
            }
        }
    }
}

/// What the rule of a map counts, and what it leaves out; nothing for a map that is of no rule.
#[must_use]
pub fn nodes(study: &Study, map: Map) -> Vec<((f64, f64), Node)> {
    let counted = study.counted_nodes(map.rule().map_or("", |rule| rule.id));
    let kinds = [
        (counted.intersections, Node::Crossing),
        (counted.heads, Node::Head),
        (counted.left_out, Node::LeftOut),
    ];
    let mut nodes = Vec::new();
    for (points, kind) in kinds {
        nodes.extend(points.iter().map(|point| (point.to_m(), kind)));
    }
    nodes
}

/// One cell of a figure.
pub(super) struct Cell {
    /// The entries it stands at.
    at: Vec<String>,
    /// Their titles.
    pub title: String,
    /// It as the column shows it; or why there is no number.
    pub value: Result<String, String>,
}

/// All cells of a figure; none where there is no such figure.
pub(super) fn cells(study: &Study, drawn: &Drawn, figure: &str) -> Vec<Cell> {
    let Some(index) = study.graph().index(figure) else {
        return Vec::new();
    };
    let rows = match study.figure_value(index).content {
        Content::Single(value) => vec![(Vec::new(), String::new(), value)],
        Content::Table { rows, .. } => {
            let parted = |row: TableRow| (row.at, row.titles.join(", "), row.value);
            rows.into_iter().map(parted).collect()
        }
    };
    let cell = |(place, (at, title, value)): (usize, (Vec<String>, String, CellValue))| Cell {
        at,
        title,
        value: match value.reason {
            Some(reason) => Err(reason),
            None => Ok(drawn.value(study, figure, place).unwrap_or(value.shown)),
        },
    };
    rows.into_iter().enumerate().map(cell).collect()
}

/// One entry of a table as the column shows it; or why there is no number.
fn entry(study: &Study, drawn: &Drawn, figure: &str, at: &str) -> Result<String, String> {
    let mut cells = cells(study, drawn, figure).into_iter();
    let found = cells.find(|cell| cell.at.iter().any(|id| id == at));
    found.map_or_else(|| Err(say!("page-no-figure", figure = figure)), |cell| cell.value)
}
