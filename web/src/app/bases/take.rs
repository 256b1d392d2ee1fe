//! A base taken into the plan: marks in one step, clipped, with the status of what stands.

use hobnail_core::fabric::regions::Ring;
use hobnail_core::figures::display::grouped;
use hobnail_core::plan::defaults::street_sections;
use hobnail_core::plan::document::Site;
use hobnail_core::plan::inside::{goes_around, segments_meet};
use hobnail_core::plan::land::{
    Barrier, Certainty, ConstraintArea, ConstraintKind, Footprint, Note, OutsideContext, Parcel, Place,
};
use hobnail_core::plan::street::{Status, Street};
use hobnail_core::plan::{AlternativeId, Document, Edit, Mark, MarkId, PlanPoint, StreetSectionId, Vertex};
use hobnail_core::report::drawing::ways::meters;
use hobnail_core::say;
use hobnail_core::text::holds;

use super::clip::{self, Sides};
use super::held::Held;
use super::place::{Placing, is_placed};
use super::sketch::points_of;
use super::{Base, Becomes, Choices, Class, Coordinates, Extent, Feature, Position, Shape};
use crate::app::App;
use crate::canvas::layers::fronts::middle;
use crate::canvas::layers::land::widest_place;
use crate::tools::drafts;
use crate::tools::shape::area_m2;

/// Most marks that are taken at once: a plan of more would no longer follow the hand.
pub const MOST_MARKS: usize = 20_000;

/// What was taken and what was not.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// Marks by kind: streets, places, constraints, barriers, buildings, parcels, notes, soft areas
    /// ([`Becomes::kind`]).
    pub marks: [u32; 8],
    /// Whether an outline becomes the boundary of the site.
    pub site: bool,
    /// Features of which something is taken.
    pub features: u32,
    /// Features of layers that are not chosen, or of classes that become nothing.
    pub unchosen: u32,
    /// Features of chosen layers and classes of which nothing lies within the extent.
    pub beyond: u32,
    /// Features whose shape is none that what they were to become can have.
    pub unfitting: u32,
    /// Marks that the plan has already, exactly.
    pub known: u32,
    /// Holes that were filled, since a plan's outlines have none and what they became is not divided.
    pub holes: u32,
    /// Heights of the ground.
    pub heights: u32,
    /// What is to be known of those, in sentences.
    pub of_heights: Vec<String>,
}

impl Taken {
    /// How many marks were taken.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.marks.iter().sum()
    }

    /// Marks by kind, those of which there are any: their number, and the word for so many.
    #[must_use]
    pub fn by_kind(&self) -> Vec<[String; 2]> {
        const KINDS: [&str; 8] = [
            "streets",
            "places",
            "areas",
            "barriers",
            "buildings",
            "parcels",
            "notes",
            "soft",
        ];
        let heights = [("heights", self.heights)];
        let held = KINDS.into_iter().zip(self.marks).chain(heights);
        let site = self.site.then_some(("site", 1)).into_iter();
        site.chain(held.filter(|(_, count)| *count > 0))
            .map(|(kind, count)| {
                [
                    grouped(f64::from(count), 0),
                    say!("bases-kind", kind = kind, count = count),
                ]
            })
            .collect()
    }

    /// How much of a file of so many features that is, in a sentence.
    #[must_use]
    pub fn share(&self, count: usize) -> String {
        let percent = u64::from(self.features) * 100 / (count as u64).max(1);
        say!("bases-share", taken = self.features, count = count, percent = percent)
    }

    /// What is not taken as it is in the file, a sentence for each reason.
    #[must_use]
    pub fn left_out(&self) -> Vec<String> {
        let mut said = self.of_heights.clone();
        if self.beyond > 0 {
            said.push(say!("bases-left-beyond", count = self.beyond));
        }
        if self.unfitting > 0 {
            said.push(say!("bases-left-unfitting", count = self.unfitting));
        }
        if self.known > 0 {
            said.push(say!("bases-left-known", count = self.known));
        }
        if self.holes > 0 {
            said.push(say!("bases-left-holes", count = self.holes));
        }
        said
    }
}

/// What is being taken.
struct Taking<'a> {
    document: &'a Document,
    alternative: AlternativeId,
    sides: Sides,
    /// The site, where nothing beyond it is taken.
    within: Option<&'a [PlanPoint]>,
    /// What outlines are cut to: the site, or the box.
    land: Vec<PlanPoint>,
    /// The site as it will be.
    boundary: Vec<PlanPoint>,
    held: Held<'a>,
    placing: Placing,
    next: MarkId,
    edits: Vec<Edit>,
    /// Homes of the feature that is being taken which are in no mark yet: its first part outside the site has them.
    homes: u32,
    taken: Taken,
}

impl Base {
    /// The edits that take this base into an alternative, and what they take. Nothing is changed by asking, so it also
    /// says beforehand what would be taken.
    ///
    /// # Errors
    /// A sentence: nothing lies within the extent, the base is on another part of Earth, there are more marks than
    /// `MOST_MARKS`, or a choice can not be.
    ///
    /// Cost: linear in the positions and in the points of the plan's marks, which are put in order by their ends to find
    /// those that it has already.
    pub fn edits(
        &self,
        document: &Document,
        alternative: AlternativeId,
        choices: &Choices,
    ) -> Result<(Vec<Edit>, Taken), String> {
        if self.grid.is_some() {
            return self.height_edits(document, choices);
        }
        let sides = choices.sides(document)?;
        let within = (choices.extent == Extent::Within).then_some(document.site.boundary.as_slice());
        let mut taking = Taking {
            document,
            alternative,
            sides,
            within,
            land: within.map_or_else(|| clip::corners(sides), <[PlanPoint]>::to_vec),
            boundary: document.site.boundary.clone(),
            held: Held::of(document.alternatives.get(&alternative)),
            placing: Placing::of(self, choices)?,
            next: document.next_mark_id(),
            edits: Vec::new(),
            homes: 0,
            taken: Taken::default(),
        };
        let is_same_place = document.heading.geographic_origin() == choices.origin;
        if self.coordinates == Coordinates::Degrees && is_placed(document) && !is_same_place {
            return Err(say!("bases-placed").to_owned());
        }
        let is_chosen = |class: &Class| choices.layers.get(class.layer).copied().unwrap_or(false);
        let of_site = self.features.iter().filter(|feature| {
            let class = self.classes.get(feature.class);
            class.is_some_and(|class| class.becomes == Becomes::Site && is_chosen(class))
        });
        taking.take_site(of_site);
        for feature in &self.features {
            let Some(class) = self.classes.get(feature.class) else {
                continue;
            };
            match class.becomes {
                // Taken before all others, which lie in it or outside of it.
                Becomes::Site if is_chosen(class) => {}
                Becomes::Nothing => taking.taken.unchosen += 1,
                _ if !is_chosen(class) => taking.taken.unchosen += 1,
                becomes => taking.take(feature, becomes),
            }
            if taking.edits.len() > MOST_MARKS {
                return Err(say!("bases-too-many", limit = MOST_MARKS));
            }
        }
        let Taking { mut edits, taken, .. } = taking;
        if edits.is_empty() {
            return Err(match (taken.known, taken.beyond) {
                (0, 0) => say!("bases-nothing-chosen").to_owned(),
                (0, beyond) => say!("bases-nothing-within", count = beyond),
                (known, _) => say!("bases-all-known", count = known),
            });
        }
        edits.extend(self.heading(document, choices));
        edits.extend(missing_sections(document, &edits));
        Ok((edits, taken))
    }

    /// The plan's place, where it has none yet, and who is to be named.
    pub(super) fn heading(&self, document: &Document, choices: &Choices) -> Option<Edit> {
        let before = document.heading.clone();
        let mut after = before.clone();
        if self.coordinates == Coordinates::Degrees {
            after.origin_longitude_ndeg = choices.origin.longitude_ndeg;
            after.origin_latitude_ndeg = choices.origin.latitude_ndeg;
        }
        if !self.attribution.is_empty() && !holds(&before.about, &self.attribution) {
            if !after.about.is_empty() {
                after.about.push(' ');
            }
            after.about.push_str(&self.attribution);
        }
        (before != after).then_some(Edit::Heading { before, after })
    }
}

/// Default street sections that these streets need and the plan no longer has.
fn missing_sections(document: &Document, edits: &[Edit]) -> Vec<Edit> {
    let mut missing: Vec<StreetSectionId> = Vec::new();
    for edit in edits {
        let Edit::Mark { after: Some(mark), .. } = edit else {
            continue;
        };
        let Some(street) = mark.as_street() else { continue };
        if !document.street_sections.contains_key(&street.section) && !missing.contains(&street.section) {
            missing.push(street.section);
        }
    }
    let defaults = street_sections();
    let added = |id: StreetSectionId| {
        let after = defaults.get(&id).cloned();
        after.is_some().then_some(Edit::StreetSection {
            id,
            before: None,
            after,
        })
    };
    missing.into_iter().filter_map(added).collect()
}

impl Taking<'_> {
    /// The largest outline of these becomes the site's; the others are left out.
    fn take_site<'a>(&mut self, features: impl Iterator<Item = &'a Feature>) {
        let mut largest: Option<Vec<PlanPoint>> = None;
        for feature in features {
            if feature.shape != Shape::Areas {
                self.taken.unfitting += 1;
                continue;
            }
            self.taken.holes += feature.holes.len() as u32;
            for part in &feature.parts {
                let mut outline = self.on_plan(part);
                outline.dedup();
                if outline.len() != part.len() || outline.len() < 3 {
                    self.taken.beyond += 1;
                } else if largest.as_ref().is_none_or(|held| area_m2(held) < area_m2(&outline)) {
                    self.taken.unchosen += u32::from(largest.is_some());
                    largest = Some(outline);
                } else {
                    self.taken.unchosen += 1;
                }
            }
        }
        let Some(boundary) = largest else { return };
        if boundary == self.boundary {
            self.taken.known += 1;
            return;
        }
        self.taken.features += 1;
        self.taken.site = true;
        self.boundary.clone_from(&boundary);
        let before = self.document.site.clone();
        let after = Site { boundary };
        self.edits.push(Edit::Site { before, after });
    }

    fn take(&mut self, feature: &Feature, becomes: Becomes) {
        let before = (self.edits.len(), self.taken.known);
        self.homes = feature.homes;
        let is_note = becomes == Becomes::Note;
        if !becomes.can_be(feature.shape) || is_note && feature.name.is_empty() && feature.words.is_empty() {
            self.taken.unfitting += 1;
            return;
        }
        for (place, part) in feature.parts.iter().enumerate() {
            // A street of several lines says its words once.
            if is_note && feature.shape == Shape::Lines && before != (self.edits.len(), self.taken.known) {
                break;
            }
            // A position that is too far away is beyond the extent too.
            let mut points = self.on_plan(part);
            if points.len() != part.len() && feature.shape != Shape::Points {
                continue;
            }
            if feature.shape != Shape::Points {
                points.dedup();
            }
            match feature.shape {
                Shape::Points => {
                    for point in points {
                        if clip::holds(self.sides, point) && self.within.is_none_or(|site| goes_around(site, point)) {
                            self.add(feature, becomes, Footprint::Point(point));
                        }
                    }
                }
                Shape::Lines => {
                    let mut lines = match self.within {
                        Some(site) => clip::line_within(site, &points),
                        None => clip::line(self.sides, &points),
                    };
                    if is_note {
                        lines.truncate(1);
                    }
                    for line in lines {
                        self.add(feature, becomes, Footprint::Line(line));
                    }
                }
                Shape::Areas => {
                    let holes = feature.holes.iter().filter(|(of, _)| *of == place);
                    let holes: Vec<Ring> = holes.map(|(_, hole)| self.on_plan(hole)).collect();
                    for outline in self.outlines(points, &holes, becomes) {
                        self.add(feature, becomes, Footprint::Area(outline));
                    }
                }
            }
        }
        if before == (self.edits.len(), self.taken.known) {
            self.taken.beyond += 1;
        }
        self.taken.features += u32::from(self.edits.len() > before.0);
    }

    /// The positions that are not too far away, in the plan.
    fn on_plan(&self, part: &[Position]) -> Vec<PlanPoint> {
        part.iter().filter_map(|point| self.placing.on_plan(*point)).collect()
    }

    /// What of an outline is taken, as outlines. Land that is held back or built upon is the same land in several pieces
    /// and is divided at its holes; words stand beside them; of all else holes are filled, and counted.
    fn outlines(&mut self, outline: Ring, holes: &[Ring], becomes: Becomes) -> Vec<Ring> {
        if !clip::reaches(self.sides, &outline) {
            return Vec::new();
        }
        let is_whole = self.within.is_none() && outline.iter().all(|point| clip::holds(self.sides, *point));
        let mut pieces = if is_whole && holes.is_empty() && outline.len() > 2 {
            vec![vec![outline]]
        } else {
            clip::land(&self.land, &outline, holes)
        };
        if matches!(becomes, Becomes::Constraint(_) | Becomes::Soft(_)) {
            let (outlines, filled) = clip::divided(pieces);
            self.taken.holes += filled;
            return outlines;
        }
        if becomes == Becomes::Note {
            return pieces.into_iter().map(clip::joined).collect();
        }
        for piece in &mut pieces {
            self.taken.holes += piece.len().saturating_sub(1) as u32;
            piece.truncate(1);
        }
        pieces.into_iter().flatten().collect()
    }

    fn add(&mut self, feature: &Feature, becomes: Becomes, footprint: Footprint) {
        let Some(mut mark) = self.mark(feature, becomes, footprint) else {
            return;
        };
        if let Mark::Outside(outside) = &mut mark {
            outside.homes = std::mem::take(&mut self.homes);
        }
        if self.held.has(&mark) {
            self.taken.known += 1;
            return;
        }
        if let Some(kind) = becomes.kind() {
            self.taken.marks[kind] += 1;
        }
        self.edits.push(Edit::Mark {
            alternative: self.alternative,
            id: self.next,
            before: None,
            after: Some(Box::new(mark)),
        });
        // A plan of as many marks as there are ids can not be opened; ids beyond are refused as taken.
        self.next = MarkId(self.next.0.saturating_add(1));
    }

    fn mark(&self, feature: &Feature, becomes: Becomes, footprint: Footprint) -> Option<Mark> {
        let name = feature.name.clone();
        let boundary = &self.boundary;
        Some(match (becomes, footprint) {
            (Becomes::Street(section, role), Footprint::Line(line)) => Mark::Street(Street {
                is_outside: lies_outside(boundary, &line),
                line: line.into_iter().map(Vertex::at).collect(),
                section,
                name,
                role,
                owner: feature.owner,
                status: Status::Existing,
                level: feature.level,
                phase: None,
            }),
            (Becomes::Place(kind), footprint) => Mark::Place(Place {
                name,
                kind,
                footprint,
                minimum_size_m2: 0,
                certainty: Certainty::Existing,
                phase: None,
            }),
            (Becomes::Constraint(kind), Footprint::Area(outline)) => held_back(name, outline, kind),
            (Becomes::Barrier, Footprint::Line(line)) => Mark::Barrier(Barrier {
                name,
                line,
                beside: None,
            }),
            (Becomes::Building, Footprint::Area(outline)) if !lies_outside(boundary, &outline) => {
                held_back(name, outline, ConstraintKind::Keep)
            }
            (Becomes::Building, footprint) => Mark::Outside(OutsideContext {
                name,
                footprint,
                homes: 0,
                jobs: 0,
                shop_floor_m2: 0,
            }),
            (Becomes::Parcel(owner), Footprint::Area(outline)) => Mark::Parcel(Parcel {
                label: name,
                outline,
                owner,
                beside: None,
            }),
            (Becomes::Soft(id), Footprint::Area(outline)) => drafts::soft(outline, Some(id), self.document),
            (Becomes::Note, footprint) => Mark::Note(Note {
                at: note_at(footprint)?,
                text: if feature.words.is_empty() {
                    name
                } else {
                    feature.words.clone()
                },
                ..Note::default()
            }),
            _ => return None,
        })
    }
}

/// Land that is held back: not built upon, and not counted as buildable. Water and wetland can not be walked across;
/// what stands or is conserved can be walked past. Common practice, no source; each can be changed.
fn held_back(name: String, outline: Vec<PlanPoint>, kind: ConstraintKind) -> Mark {
    Mark::Constraint(ConstraintArea {
        name,
        outline,
        kind,
        is_buildable: false,
        counts_in_site: true,
        counts_in_buildable: false,
        is_walkable: !matches!(kind, ConstraintKind::Water | ConstraintKind::Wetland),
    })
}

/// Where the words for a shape stand: at the middle of a line by its length, and where an area has room within.
fn note_at(footprint: Footprint) -> Option<PlanPoint> {
    let (east_m, north_m) = match footprint {
        Footprint::Point(at) => return Some(at),
        Footprint::Line(line) => middle(&meters(&line)).at,
        Footprint::Area(outline) => widest_place(&meters(&outline))?.0,
    };
    PlanPoint::checked_from_m(east_m, north_m)
}

/// Whether nothing of a line lies in the site; without a site everything lies in it.
fn lies_outside(boundary: &[PlanPoint], line: &[PlanPoint]) -> bool {
    let sides = || boundary.iter().zip(boundary.iter().cycle().skip(1));
    let meets = |pair: &[PlanPoint]| sides().any(|(&a, &b)| segments_meet([pair[0], pair[1]], [a, b]));
    boundary.len() > 2 && !line.iter().any(|point| goes_around(boundary, *point)) && !line.windows(2).any(meets)
}

impl App {
    /// Takes a base into the alternative that is shown, as one step, and says what was taken. `false` where nothing
    /// was; why is said, and the plan stays as it was.
    pub fn take_base(&mut self, base: &Base, choices: &Choices) -> bool {
        if self.refuses() {
            return false;
        }
        let found = base.edits(self.study.document(), self.study.alternative(), choices);
        let (edits, taken) = match found {
            Ok(found) => found,
            Err(fault) => {
                self.warn(fault);
                return false;
            }
        };
        let mut points = points_of(&edits);
        let revision = self.study.revision();
        let step = match taken.heights {
            0 => say!("bases-step"),
            _ => say!("heights-step"),
        };
        self.step_with(step, edits);
        if self.study.revision() == revision {
            return false;
        }
        points.extend_from_slice(&self.study.document().site.boundary);
        self.fit_points(points.into_iter());
        let kinds = taken.by_kind().into_iter();
        let list: Vec<String> = kinds.map(|parts| parts.join(" ")).collect();
        let said = say!("bases-taken", file = base.name, list = list.join(", "));
        let mut sentences = taken.left_out();
        sentences.insert(0, said);
        self.inform(sentences.join(" "));
        true
    }
}
