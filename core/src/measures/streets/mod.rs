//! Streets and blocks: how long, how well connected, how many ways in and out, what fronts on them.
//!
//! Everything here is counted inside the site: [`site_streets`] says what that means. Ratios of links and nodes stand each under
//! the name of the rule they are counted by ([`crate::network::counting_rule`]) and are held against that rule's own
//! threshold alone. Blocks are those with streets all round ([`crate::fabric::block_outline`]), measured along the
//! right-of-way. What the street sections ask for (fire access, sight lines, traffic) is for local codes and licensed
//! practice.
//!
//! [`StreetInputs::of`] counts, [`declare`] declares the figures, and the counted places can be asked for as points.
//! What first-level figures and notes need is counted apart ([`StreetInputs::of_first_level`]): while a pointer moves
//! nobody looks at the rest, which takes longer.

pub mod bends;

pub mod boundary_gaps;

pub mod counted;

pub mod dead_ends;

pub mod frontage_shares;

pub mod methods;

pub mod site_streets;

pub mod street_sides;

pub mod ways;

mod declared;
mod filled;

pub use declared::declare;

use crate::fabric::Fabric;
use crate::fabric::block_outline::{BlockLengths, BlockOutline, block_outlines};
use crate::figures::axis::Entry;
use crate::measures::frontage::{Painted, PaintedFace};
use crate::measures::sun::{self, EastWest};
use crate::network::counting_rule::{
    COUNTING_RULES, CountedPart, CountingRule, DensityLand, NodeRule, count, counted_parts,
};
use crate::plan::document::UnitSystem;
use crate::plan::street::Status;
use crate::plan::{AlternativeId, Document, FloorUse, LandUse, PlanPoint, StreetSectionId};
use crate::say;

use boundary_gaps::boundary_gaps;
use counted::CountedStreets;
use dead_ends::dead_ends;
use frontage_shares::{FRONTING, frontage_m};
use site_streets::{SiteStreets, WAYS, Way, faces_in_site, has_boundary, named_place, points_of, street_name};
use street_sides::StreetSides;
use ways::{CountedPlace, Ways};

/// Why nothing is divided by the site's land.
#[must_use]
pub fn no_boundary() -> &'static str {
    say!("measures-no-boundary")
}

/// Half an acre in square meters: parks above it are left out of the land for one published intersection density.
const HALF_ACRE_M2: f64 = 2_023.428_211_2;

/// What is counted on streets and blocks, ready for the figures and for the drawing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StreetInputs {
    /// The units places are told in.
    pub units: UnitSystem,
    /// The plan's street sections.
    pub sections: Vec<Entry>,
    /// Length in meters by way, in the order of [`WAYS`], and by section.
    pub length_m: [Vec<f64>; WAYS.len()],
    /// What each rule counts, in the order of [`COUNTING_RULES`].
    pub rules: Vec<RuleCount>,
    /// The connected parts of the network under the textbook's rule, in order.
    pub parts: Vec<CountedPlace>,
    /// Links in each of those parts.
    pub part_links: Vec<f64>,
    /// Length of the dead ends in meters, at their heads.
    pub dead_ends: Vec<CountedPlace>,
    /// Ways in and out, and the homes behind single places.
    pub ways: Ways,
    /// From each way in to the next along the boundary, in meters.
    pub boundary_gaps: Vec<CountedPlace>,
    /// What streets are like to walk along and across.
    pub sides: StreetSides,
    /// Land of rights-of-way of streets that stand today and stay, in square meters.
    pub standing_m2: f64,
    /// Street frontage in meters by what fronts.
    pub frontage_m: [f64; FRONTING],
    /// The blocks with streets all round.
    pub blocks: Vec<BlockCount>,
    /// Street length in meters that lies east-west.
    pub east_west_m: f64,
    /// Blocks that lie east-west.
    pub east_west_blocks: u32,
    /// Lots with homes, and those of them with the sun.
    pub solar_lots: (f64, f64),
}

/// The id of a street section's entry on the axis `street_section`.
#[must_use]
pub fn section_entry_id(id: StreetSectionId) -> String {
    format!("section_{id}")
}

/// What one rule counts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RuleCount {
    /// Intersections where two, three, and four or more links meet. Two meet at a corner of two streets or a sharp bend.
    pub intersections: [u32; 3],
    /// Heads of dead ends.
    pub heads: u32,
    /// Halves of links: a stub may be one.
    pub link_halves: u64,
    /// The land its intersections are divided by, in square meters; `None` without a boundary.
    pub land_m2: Option<f64>,
    /// Where the counted nodes are: the intersections, then the heads of dead ends.
    pub points: Vec<PlanPoint>,
}

/// One block.
#[derive(Clone, Debug, PartialEq)]
pub struct BlockCount {
    /// A point in it.
    pub at: PlanPoint,
    /// Its perimeter along the right-of-way, in meters.
    pub perimeter_m: f64,
    /// Its longest side along the right-of-way, in meters.
    pub longest_side_m: f64,
}

impl StreetInputs {
    /// Counts one alternative. Cost: about linear in the edges of the fabric and the lots.
    #[must_use]
    pub fn of(document: &Document, alternative: AlternativeId, fabric: &Fabric, painted: &Painted) -> Self {
        let streets = SiteStreets::of(document, alternative, fabric);
        let outlines = block_outlines(&fabric.lines, &fabric.arrangement, &fabric.carriers, &fabric.blocks);
        let mut inputs = Self::first_level_of(document, alternative, fabric, painted, &streets);
        inputs.frontage_m = frontage_m(document, fabric, &streets, painted);
        inputs.sides = StreetSides::of(document, fabric, &streets, painted);
        inputs.standing_m2 = standing_m2(document, alternative, fabric, &streets);
        inputs.solar_lots = solar_lots(document, painted);
        inputs.boundary_gaps = boundary_gaps(&document.site.boundary, &inputs.ways.ways_in);
        let east_west = told_in_site(fabric, &outlines);
        let east_west =
            east_west.filter(|(_, outline): &(_, &BlockOutline)| sun::is_east_west_block(&outline.corners_mm));
        inputs.east_west_blocks = east_west.count() as u32;
        inputs.add_east_west(fabric, &streets);
        inputs.add_rules(document, alternative, fabric, &streets, painted);
        inputs
    }

    /// What first-level figures and notes need: lengths by section, ways in and out, dead ends, blocks. Everything else
    /// is empty. Cost: as that of everything, less.
    #[must_use]
    pub fn of_first_level(document: &Document, alternative: AlternativeId, fabric: &Fabric, painted: &Painted) -> Self {
        let streets = SiteStreets::of(document, alternative, fabric);
        Self::first_level_of(document, alternative, fabric, painted, &streets)
    }

    fn first_level_of(
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        painted: &Painted,
        streets: &SiteStreets,
    ) -> Self {
        let mut inputs = Self {
            units: document.settings.units,
            sections: document
                .street_sections
                .iter()
                .map(|(id, section)| Entry::new(section_entry_id(*id), section.name.clone()))
                .collect(),
            ways: ways::ways(document, alternative, fabric, streets, painted),
            blocks: told_in_site(fabric, &fabric.block_lengths())
                .map(|(at, lengths)| block_count(*lengths, at))
                .collect(),
            ..Self::default()
        };
        inputs.add_lengths(document, fabric, streets);
        let heads = dead_ends(streets).into_iter();
        inputs.dead_ends = heads
            .map(|dead_end| CountedPlace {
                title: named_place(
                    street_name(document, alternative, fabric, dead_end.street),
                    say!("measures-place-dead-end"),
                    dead_end.head,
                    document.settings.units,
                ),
                at: dead_end.head,
                count: dead_end.length_um as f64 / 1e6,
            })
            .collect();
        inputs
    }

    fn add_lengths(&mut self, document: &Document, fabric: &Fabric, streets: &SiteStreets) {
        let section_ids: Vec<_> = document.street_sections.keys().collect();
        let mut lengths_um = WAYS.map(|_| vec![0_u64; section_ids.len()]);
        for (_, link) in streets.inside() {
            let section = fabric.lines.streets[link.street as usize].section;
            if let Ok(section) = section_ids.binary_search(&&section) {
                lengths_um[link.way as usize][section] += link.length_um;
            }
        }
        self.length_m = lengths_um.map(|by_section| by_section.into_iter().map(|um| um as f64 / 1e6).collect());
    }

    fn add_east_west(&mut self, fabric: &Fabric, streets: &SiteStreets) {
        let near_east_west = EastWest::within(sun::STREET_DEGREES);
        let of_streets = streets.inside().filter(|(_, link)| link.way == Way::Street);
        let lengths_um = of_streets.map(|(place, _)| east_west_um_of(fabric, place, near_east_west));
        self.east_west_m = lengths_um.sum::<u64>() as f64 / 1e6;
    }

    fn add_rules(
        &mut self,
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        streets: &SiteStreets,
        painted: &Painted,
    ) {
        let counted_streets = CountedStreets::of(document, alternative, fabric, streets);
        let lands_m2 = has_boundary(fabric).then(|| {
            let whole_m2 = site_m2(fabric);
            (whole_m2, whole_m2 - left_out_m2(document, fabric, painted))
        });
        for rule in &COUNTING_RULES {
            let counted = count(rule, &counted_streets.network);
            let mut nodes = counted.nodes.clone();
            nodes.retain(|node| counted.heads.binary_search(node).is_err());
            nodes.extend(&counted.heads);
            let mut row = RuleCount {
                heads: counted.heads.len() as u32,
                link_halves: counted.link_halves,
                land_m2: lands_m2.map(|(whole_m2, less_m2)| match rule.density_land {
                    DensityLand::WholeSite => whole_m2,
                    DensityLand::LessWaterAndLargeParks => less_m2.max(0.0),
                }),
                points: counted_streets.points(&nodes),
                ..RuleCount::default()
            };
            for legs in counted.legs.iter().filter(|legs| **legs >= 2) {
                row.intersections[(*legs as usize - 2).min(2)] += 1;
            }
            if rule.id == TEXTBOOK {
                let parts = counted_parts(rule, &counted_streets.network, &counted);
                self.add_parts(&counted_streets, &parts);
            }
            self.rules.push(row);
        }
    }

    fn add_parts(&mut self, streets: &CountedStreets, parts: &[CountedPart]) {
        for part in parts {
            let at = streets
                .nodes
                .get(part.lowest_node as usize)
                .copied()
                .unwrap_or_default();
            self.parts.push(CountedPlace {
                title: named_place("", say!("measures-place-streets"), at, self.units),
                at,
                count: part.nodes as f64,
            });
            self.part_links.push(part.link_halves as f64 / 2.0);
        }
    }

    /// Where the nodes are that the rule of this id counts, the intersections and then the heads of dead ends; none for
    /// an id that is not known.
    #[must_use]
    pub fn counted_points(&self, rule: &str) -> &[PlanPoint] {
        let place = COUNTING_RULES.iter().position(|held| held.id == rule);
        place
            .and_then(|place| self.rules.get(place))
            .map_or(&[], |row| row.points.as_slice())
    }

    /// The place most homes hang on: the first of equals, so the nearest to the way in; `None` without a way in.
    #[must_use]
    pub fn worst_place(&self) -> Option<&CountedPlace> {
        let counts: Vec<f64> = self.ways.behind.iter().map(|place| place.count).collect();
        methods::place_of_largest(&counts).map(|place| &self.ways.behind[place])
    }

    /// The longest dead end.
    #[must_use]
    pub fn longest_dead_end(&self) -> Option<&CountedPlace> {
        let lengths: Vec<f64> = self.dead_ends.iter().map(|place| place.count).collect();
        methods::place_of_largest(&lengths).map(|place| &self.dead_ends[place])
    }

    /// The block with the longest perimeter.
    #[must_use]
    pub fn longest_block(&self) -> Option<&BlockCount> {
        let lengths: Vec<f64> = self.blocks.iter().map(|block| block.perimeter_m).collect();
        methods::place_of_largest(&lengths).map(|place| &self.blocks[place])
    }
}

/// The rule whose nodes and links the indices of the graph are worked from: it counts nothing that is not a link between
/// two nodes.
pub const TEXTBOOK: &str = "textbook";

/// Whether a rule counts heads of dead ends, so that a ratio of links to nodes means something under it.
const fn counts_heads(rule: &CountingRule) -> bool {
    !matches!(rule.nodes, NodeRule::Through)
}

fn east_west_um_of(fabric: &Fabric, link: u32, near_east_west: EastWest) -> u64 {
    let mut length_um = 0;
    let mut before: Option<PlanPoint> = None;
    for point in points_of(fabric, link) {
        if let Some(before) = before {
            let along = |from: i32, to: i32| f64::from(to) - f64::from(from);
            let (x, y) = (along(before.x_mm, point.x_mm), along(before.y_mm, point.y_mm));
            if near_east_west.holds(x, y) {
                length_um += before.distance_um(point);
            }
        }
        before = Some(point);
    }
    length_um
}

/// Land in the site of the rights-of-way of streets that stand today and stay: their length by half their width on every
/// side that lies in the site. Where two of them cross their land is counted twice.
fn standing_m2(document: &Document, alternative: AlternativeId, fabric: &Fabric, streets: &SiteStreets) -> f64 {
    let in_site = faces_in_site(fabric);
    let mut um_mm = 0_u128;
    for (place, link) in streets.inside() {
        let line = &fabric.lines.streets[link.street as usize];
        let held = document.mark(alternative, line.mark).and_then(|mark| mark.as_street());
        if !held.is_some_and(|street| matches!(street.status, Status::Existing | Status::Kept)) {
            continue;
        }
        let first = fabric.links.links[place as usize].half_edges.first();
        let sides = first.into_iter().flat_map(|first| [*first, first.twin()]);
        let sides = sides.filter(|side| in_site[fabric.arrangement.face(*side).0 as usize]);
        um_mm += u128::from(link.length_um) * u128::from(line.right_of_way_mm) * sides.count() as u128;
    }
    um_mm as f64 / 2e9
}

fn site_m2(fabric: &Fabric) -> f64 {
    let in_site = fabric.faces.iter().filter(|face| face.is_in_site);
    let twice_mm2: i128 = in_site.map(|face| fabric.arrangement.twice_area_mm2(face.id)).sum();
    twice_mm2 as f64 / 2e6
}

/// Lots with homes, and those of them that have the sun by the rule of Dubuque.
fn solar_lots(document: &Document, painted: &[PaintedFace]) -> (f64, f64) {
    let near_east_west = EastWest::within(sun::DUBUQUE.most_degrees);
    let has_homes = |id| {
        document
            .building_types
            .get(id)
            .is_some_and(|held| held.homes_per_lot > 0)
    };
    let (mut all, mut solar) = (0_u32, 0_u32);
    let lots = painted.iter().flat_map(|face| &face.laid.lots);
    for lot in lots.filter(|lot| has_homes(&lot.building_type)) {
        let outline = lot.outline.iter().map(|point| (point.x_mm, point.y_mm));
        all += 1;
        solar += u32::from(sun::is_solar_facing(&sun::DUBUQUE, near_east_west, lot.faces, outline));
    }
    (f64::from(all), f64::from(solar))
}

/// Of the blocks with streets all round whose land lies in the site, in order: a point in each, and what is told of it.
fn told_in_site<'a, T>(fabric: &'a Fabric, told: &'a [Option<T>]) -> impl Iterator<Item = (PlanPoint, &'a T)> {
    fabric.blocks.iter().zip(told).filter_map(|(faces, told)| {
        let mut held = faces.iter().filter_map(|face| fabric.face(*face));
        let (told, first) = (told.as_ref()?, held.next()?);
        (first.is_in_site && held.all(|face| face.is_in_site)).then_some((first.anchor, told))
    })
}

fn block_count(lengths: BlockLengths, at: PlanPoint) -> BlockCount {
    BlockCount {
        at,
        perimeter_m: lengths.perimeter_mm / 1e3,
        longest_side_m: lengths.longest_side_mm / 1e3,
    }
}

/// Land that [`DensityLand::LessWaterAndLargeParks`] leaves out, in square meters: what constraints hold back, parks of
/// more than half an acre by block face, and the land of buildings with learning in them.
fn left_out_m2(document: &Document, fabric: &Fabric, painted: &[PaintedFace]) -> f64 {
    let in_site = fabric.faces.iter().filter(|face| face.is_in_site);
    let twice_held_back_mm2: i128 = in_site.map(|face| face.land.constrained.twice_held_back_mm2()).sum();
    let of_type = |face: &PaintedFace, is_meant: &dyn Fn(&crate::plan::BuildingType) -> bool| -> f64 {
        let land = face.land_m2.iter();
        land.filter(|(id, _)| document.building_types.get(id).is_some_and(is_meant))
            .map(|(_, land_m2)| land_m2)
            .sum()
    };
    let painted_m2 = painted.iter().map(|face| {
        let park_m2 = of_type(face, &|held| {
            held.land_use == LandUse::Leisure && held.stories.is_empty()
        });
        let school_m2 = of_type(face, &|held| {
            held.stories.iter().any(|story| story.floor_use == FloorUse::Learning)
        });
        school_m2 + if park_m2 > HALF_ACRE_M2 { park_m2 } else { 0.0 }
    });
    twice_held_back_mm2 as f64 / 2e6 + painted_m2.sum::<f64>()
}

#[cfg(test)]
pub(crate) mod test_plans;

#[cfg(test)]
pub(crate) mod tests;
