//! Walking and mix in detail: what takes longer than a frame.
//!
//! None of this is worked out while somebody draws. Once the drawing rests [`WalkDetails`] are worked out beside it and
//! the open plan takes them; until then the figures say [`waiting`]. Everything is worked at the plan's own walking
//! pace, and is of the plan as drawn: soft areas have no fronts and count in none of it.
//!
//! - [`shed_areas`]: areas of the center's walk-shed, by method.
//! - [`directness`]: how direct walks to the center and to the daily needs are, and where they are least.
//! - [`best_center`]: the point with most homes within five minutes.
//! - [`routes`]: walks from homes to the nearest of each need, segment by segment.
//! - [`reached_mix`]: evenness of the floor area homes reach.
//! - [`cells`]: dissimilarity of neighboring hectares.

pub mod best_center;

pub mod directness;

pub mod reached_mix;

pub mod routes;

pub mod shed_areas;

pub mod cells;

mod declared;
mod standing;
mod straight;

use crate::fabric::Fabric;
use crate::figures::leaf::Cell;
use crate::measures::frontage::Painted;
use crate::measures::walk::destinations::Destination;
use crate::measures::walk::{KNOTS_S, Walks};
use crate::passing::passed;
use crate::plan::{AlternativeId, Document, PlanPoint};
use crate::say;

pub use declared::{declare, set};

/// Why there is no number while somebody draws.
#[must_use]
pub fn waiting() -> &'static str {
    say!("measures-waiting")
}

/// How many [`shed_methods`] there are.
pub const SHED_METHODS: usize = 3;

/// The methods of a walk-shed's area, in the order of their table.
#[must_use]
pub fn shed_methods() -> [(&'static str, &'static str); SHED_METHODS] {
    [
        ("frontages", say!("measures-method-frontages")),
        ("hull", say!("measures-method-hull")),
        ("buffer", say!("measures-method-buffer")),
    ]
}

/// The walks of sheds and of what is reached, in seconds.
pub const SHED_WALKS_S: [u64; 2] = [300, 600];

/// Where directness is worked out to, in the order of its table.
pub const TO: [Destination; 6] = [
    Destination::Center,
    Destination::Homes,
    Destination::Work,
    Destination::Shops,
    Destination::Learning,
    Destination::Gathering,
];

/// What was worked out of one plan. Cells stand in the order of their tables; a cell that can not be worked out says
/// why.
#[derive(Clone, Debug, PartialEq)]
pub struct WalkDetails {
    /// Areas of the center's shed in square meters: outer by [`shed_methods`], inner by [`SHED_WALKS_S`].
    pub shed_areas_m2: Vec<Cell>,
    /// How many centers a circle is drawn around: one.
    pub circles: Vec<Cell>,
    /// Homes within five minutes of the center as drawn.
    pub drawn_center_homes: Vec<Cell>,
    /// The best point for a center.
    pub best_center: Option<PlanPoint>,
    /// Homes within five minutes of it.
    pub best_center_homes: Vec<Cell>,
    /// Homes with a walk to each of [`TO`].
    pub directness_homes: Vec<Cell>,
    /// Their directness, added up.
    pub directness_sums: Vec<Cell>,
    /// What nine tenths of them do not exceed.
    pub directness_most_of: Vec<Cell>,
    /// The fronts with the least direct walks to a center, the worst first.
    pub indirect_fronts: Vec<IndirectFront>,
    /// Walks along each street link of the walking network, in order of link number.
    pub walks_by_link: Vec<f64>,
    /// The busiest segment in words and its walks.
    pub busiest_segment: Option<(String, f64)>,
    /// Where that segment is on the plan.
    pub busiest_line: Vec<PlanPoint>,
    /// Length of segments by walks along them, in meters: over all, and over the busiest tenth.
    pub walked_m: Vec<Cell>,
    /// Homes with floor area in reach, for each of [`SHED_WALKS_S`].
    pub mix_homes: Vec<Cell>,
    /// Evenness of the floor area they reach, added up.
    pub mix_sums: Vec<Cell>,
    /// The same for the first of those walks along each front with homes, in order of the network's links.
    pub mixed_fronts: Vec<MixedFront>,
    /// Homes by how many of the five daily needs they reach, added up, for each of [`SHED_WALKS_S`].
    pub needs_reached: Vec<Cell>,
    /// Homes within each walk of each of the five daily needs without what is only hoped for: outer by need, inner by
    /// [`SHED_WALKS_S`].
    pub sure_needs: Vec<Cell>,
    /// Hectare cells with floor area.
    pub cells: Vec<Cell>,
    /// Shares of unlike neighbors of those cells, added up.
    pub unlike_neighbors: Vec<Cell>,
}

passed!(struct WalkDetails { shed_areas_m2, circles, drawn_center_homes, best_center, best_center_homes, directness_homes, directness_sums, directness_most_of, indirect_fronts, walks_by_link, busiest_segment, busiest_line, walked_m, mix_homes, mix_sums, mixed_fronts, needs_reached, sure_needs, cells, unlike_neighbors });

/// Homes along one street between intersections from which the walk to the nearest center is far from straight.
#[derive(Clone, Debug, PartialEq)]
pub struct IndirectFront {
    /// Where it is, in words.
    pub title: String,
    /// Where it is on the plan.
    pub line: Vec<PlanPoint>,
    /// Mean directness of its homes.
    pub directness: f64,
    /// Its homes.
    pub homes: f64,
}

passed!(struct IndirectFront { title, line, directness, homes });

/// Homes along one part of a street, and how even the floor area of the five uses is that they reach.
#[derive(Clone, Debug, PartialEq)]
pub struct MixedFront {
    /// Where they front on the plan.
    pub line: Vec<PlanPoint>,
    /// Evenness of the floor area within the first of [`SHED_WALKS_S`]: 0 where all is of one use, 1 where the five are
    /// even.
    pub evenness: f64,
    /// The homes.
    pub homes: f64,
}

passed!(struct MixedFront { line, evenness, homes });

impl WalkDetails {
    /// Works everything out for one plan.
    ///
    /// Cost: a bounded search for each part of a street with homes and for each candidate of the best center, twelve
    /// searches without a limit, and what [`directness`] says.
    #[must_use]
    pub fn of(
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        painted: &Painted,
        walks: &Walks,
    ) -> Self {
        let standing = standing::Standing::of(painted, walks.network());
        let directness = directness::directness(document, alternative, fabric, painted, walks);
        let routes = routes::routes(document, alternative, fabric, walks);
        let best = best_center::best_center(walks.network(), &standing, SHED_WALKS_S[0]);
        let mixed = reached_mix::reached_mix(walks, &standing);
        let cells = cells::cells(painted);
        let circles = shed_areas::circle_count(document, alternative);
        let of_cells = |number: fn(&cells::Cells) -> f64| match &cells {
            Ok(cells) => vec![Cell::Number(number(cells))],
            Err(reason) => vec![Cell::Unknown((*reason).to_owned())],
        };
        Self {
            shed_areas_m2: shed_areas::shed_areas(document, fabric, painted, walks, &circles),
            circles: vec![circles],
            drawn_center_homes: vec![shed_areas::homes_of_center(walks, &standing, SHED_WALKS_S[0])],
            best_center: best.map(|best| best.at),
            best_center_homes: vec![best.map_or_else(
                || Cell::Unknown(say!("measures-no-homes-where-walked").to_owned()),
                |best| Cell::Number(best.homes),
            )],
            directness_homes: directness.homes,
            directness_sums: directness.sums,
            directness_most_of: directness.most_of,
            indirect_fronts: directness.worst,
            walks_by_link: routes.by_link,
            busiest_segment: routes.busiest,
            busiest_line: routes.busiest_line,
            walked_m: routes.walked_m.map(Cell::Number).to_vec(),
            mix_homes: mixed.homes.map(Cell::Number).to_vec(),
            mix_sums: mixed.sums.map(Cell::Number).to_vec(),
            mixed_fronts: mixed.fronts,
            needs_reached: needs_reached(document, walks),
            sure_needs: walks
                .sure_homes_within(&SHED_WALKS_S)
                .into_iter()
                .flatten()
                .map(Cell::Number)
                .collect(),
            cells: of_cells(|cells| cells.count),
            unlike_neighbors: of_cells(|cells| cells.unlike),
        }
    }
}

/// Homes by how many of the five daily needs are within each walk, added up: exact along every front.
fn needs_reached(document: &Document, walks: &Walks) -> Vec<Cell> {
    let within = walks.input(document).homes_within;
    let reached = SHED_WALKS_S.map(|seconds| {
        let knot = KNOTS_S.iter().position(|knot| *knot == seconds);
        let homes = Destination::NEEDS.iter().filter_map(|need| {
            let curve = within.get(*need as usize)?.as_ref().ok()?;
            curve.get(knot?)
        });
        Cell::Number(homes.sum())
    });
    reached.to_vec()
}

#[cfg(test)]
pub(crate) mod tests;
