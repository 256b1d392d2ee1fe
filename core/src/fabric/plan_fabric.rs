//! The fabric of one alternative: what its streets enclose, what land that leaves, and which use lies on it.

use crate::order::{OrderedMap, OrderedSet};
use std::sync::Arc;

use super::arrangement::Arrangement;
use super::block_outline::{BlockLengths, block_lengths};
use super::blocks::blocks;
use super::carriers::{Carrier, carriers};
use super::constraints::Constraint;
use super::face_cache::{FaceRings, LandCache};
use super::ids::{EdgeId, FaceId, HalfEdgeId};
use super::land::{Bounds, Land};
use super::links::StreetLinks;
use super::locator::Locator;
use super::outlines::Outliner;
use super::sides::{Side, add_sides};
use super::streets::DrawnLines;
use crate::plan::land::OwnerGroup;
use crate::plan::scope::Seen;
use crate::plan::{AlternativeId, Document, Mark, MarkId, PlanPoint, UseMark};

/// What one alternative's drawing makes of the land. A pure function of the document; nothing in it is an id to keep.
#[derive(Clone, Debug)]
pub struct Fabric {
    /// The drawn lines.
    pub lines: DrawnLines,
    /// Their arrangement.
    pub arrangement: Arrangement,
    /// Point location on it.
    pub locator: Locator,
    /// The street that carries each edge.
    pub carriers: Vec<Option<Carrier>>,
    /// Streets between intersections.
    pub links: StreetLinks,
    /// The bounded faces, in order of their ids: face `n` is at `n − 1`.
    pub faces: Vec<FaceOfLand>,
    /// Faces joined across paths and alleys.
    pub blocks: Vec<Vec<FaceId>>,
    /// The face each use mark speaks for; marks missing here are asleep.
    pub face_of_mark: OrderedMap<MarkId, FaceId>,
    /// Areas that constrain land, in order of their marks.
    pub constraints: Vec<Constraint>,
}

/// One bounded face.
#[derive(Clone, Debug)]
pub struct FaceOfLand {
    /// Its id in the arrangement.
    pub id: FaceId,
    /// A point inside it; one of its corners where it is too thin to hold a point of the grid.
    pub anchor: PlanPoint,
    /// Whether it lies in the site; where no boundary is drawn, whether a street runs along it.
    pub is_in_site: bool,
    /// The mark that says what it is used for.
    pub use_mark: Option<MarkId>,
    /// Its outline, shell first.
    pub outline: Arc<FaceRings>,
    /// Its buildable land.
    pub land: Arc<Land>,
    /// Its sides.
    pub sides: Vec<Side>,
    /// How long it is along the right-of-way as a block of its own, where its boundary passes no vertex twice.
    pub(super) as_block: Option<BlockLengths>,
}

impl Fabric {
    /// The fabric of `alternative`; empty where there is no such alternative. Land of faces that `cache` knows is taken
    /// from it; afterwards the cache holds this fabric's land and no other.
    ///
    /// Cost: O(n + k) for n drawn segments with k crossings, and a boolean operation for each face not in the cache.
    #[must_use]
    pub fn of(document: &Document, alternative: AlternativeId, cache: &mut LandCache) -> Self {
        Self::seen(&Seen::all_of(document), alternative, cache)
    }

    /// The fabric of what is looked at of `alternative`, likewise.
    #[must_use]
    pub fn seen(seen: &Seen<'_>, alternative: AlternativeId, cache: &mut LandCache) -> Self {
        let document = &seen.document;
        let none = OrderedMap::new();
        let marks = document
            .alternatives
            .get(&alternative)
            .map_or(&none, |alternative| &alternative.marks);
        let streets = marks.iter().filter_map(|(id, mark)| Some((*id, mark.as_street()?)));
        let lines = DrawnLines::of(document, streets, &seen.unbuilt);
        let constraints: Vec<Constraint> = constraints(marks, seen.left_out_owners).collect();
        Self::laid_out(lines, constraints, marks, cache, Vec::new())
    }

    /// The fabric of these lines and constraints, with the uses among `marks`. The memory of the `last` faces serves
    /// again.
    fn laid_out(
        lines: DrawnLines,
        constraints: Vec<Constraint>,
        marks: &OrderedMap<MarkId, Mark>,
        cache: &mut LandCache,
        mut last: Vec<FaceOfLand>,
    ) -> Self {
        let arrangement = Arrangement::noded(&lines.segments(), Some(&mut cache.noded));
        let carriers = carriers(&lines, &arrangement);
        let links = StreetLinks::of(&lines, &arrangement, &carriers);
        let locator = Locator::of(&arrangement);
        let blocks = blocks(&lines, &arrangement, &carriers);
        let bounded = constraints.iter().map(|one| (Bounds::of(&one.outline), one.clone()));
        let bounded: Vec<(Bounds, Constraint)> = bounded.collect();
        // Both sides of an edge have one width, which is asked for at every corner.
        let mut built_widths = Vec::with_capacity(carriers.len());
        for carrier in &carriers {
            built_widths.push(built_half_width_mm(&lines, *carrier));
        }
        let mut widths = built_widths.clone();
        if !lines.unbuilt.is_empty() {
            for (edge, width) in arrangement.edges().zip(&mut widths) {
                *width = half_width_mm(&lines, &arrangement, &carriers, edge);
            }
        }
        let half_width = |half_edge: HalfEdgeId| widths[half_edge.edge().0 as usize];
        let built_half_width = |half_edge: HalfEdgeId| built_widths[half_edge.edge().0 as usize];
        let in_site = InSite::of(&lines, &arrangement, &carriers);
        let mut outliner = Outliner::new(&arrangement);
        let mut faces = Vec::with_capacity(arrangement.face_count());
        for id in arrangement.bounded_faces() {
            let shape = cache.shape(&arrangement, &mut outliner, id, half_width, built_half_width, &bounded);
            let mut sides = last
                .get_mut(faces.len())
                .map(|held| std::mem::take(&mut held.sides))
                .unwrap_or_default();
            add_sides(&arrangement, &carriers, id, &mut sides);
            faces.push(FaceOfLand {
                id,
                anchor: shape.anchor,
                is_in_site: in_site.contains(id),
                use_mark: None,
                outline: shape.outline,
                land: shape.land,
                sides,
                as_block: shape.as_block,
            });
        }
        cache.end_fabric();
        let mut fabric = Self {
            lines,
            arrangement,
            locator,
            carriers,
            links,
            faces,
            blocks,
            face_of_mark: OrderedMap::new(),
            constraints,
        };
        fabric.lay_uses(marks);
        fabric
    }

    /// Brings the fabric up to the document: whole where streets, boundary or constraints have changed, else its uses
    /// alone. The result equals [`Fabric::seen`]. Gives back whether streets, boundary or constraints had changed.
    pub fn renew(&mut self, seen: &Seen<'_>, alternative: AlternativeId, cache: &mut LandCache) -> bool {
        let document = &seen.document;
        let none = OrderedMap::new();
        let marks = document
            .alternatives
            .get(&alternative)
            .map_or(&none, |alternative| &alternative.marks);
        let mut streets = marks.iter().filter_map(|(id, mark)| Some((*id, mark.as_street()?)));
        let is_other = self.lines.renew(document, &mut streets, &seen.unbuilt);
        let constraints: Vec<Constraint> = constraints(marks, seen.left_out_owners).collect();
        let is_same = !is_other && constraints == self.constraints;
        if is_same {
            self.lay_uses(marks);
        } else {
            let (lines, faces) = (std::mem::take(&mut self.lines), std::mem::take(&mut self.faces));
            *self = Self::laid_out(lines, constraints, marks, cache, faces);
        }
        !is_same
    }

    /// Brings the uses up to the document, whose streets, boundary and constraints have not changed.
    pub fn renew_uses(&mut self, seen: &Seen<'_>, alternative: AlternativeId) {
        let none = OrderedMap::new();
        let held = seen.document.alternatives.get(&alternative);
        self.lay_uses(held.map_or(&none, |held| &held.marks));
    }

    /// Gives each use mark the face around its anchor. Where several marks lie in one face the least id speaks for it.
    fn lay_uses(&mut self, marks: &OrderedMap<MarkId, Mark>) {
        self.face_of_mark.clear();
        self.faces.iter_mut().for_each(|face| face.use_mark = None);
        for (id, mark) in marks.iter().filter_map(|(id, mark)| Some((*id, mark.as_use()?))) {
            let face = self.locator.face_at(mark.anchor);
            if let Some(held) = self.face_mut(face) {
                held.use_mark.get_or_insert(id);
                self.face_of_mark.insert(id, face);
            }
        }
    }

    /// How long every block is along the right-of-way, in their order; `None` for a block without streets all round, or
    /// of no width. Equals what [`block_outlines`](super::block_outline::block_outlines) tells; cost: linear in the edges.
    #[must_use]
    pub fn block_lengths(&self) -> Vec<Option<BlockLengths>> {
        let known = |face| self.face(face)?.as_block;
        block_lengths(&self.lines, &self.arrangement, &self.carriers, &self.blocks, &known)
    }

    /// A bounded face.
    #[must_use]
    pub fn face(&self, id: FaceId) -> Option<&FaceOfLand> {
        self.faces.get(id.0.checked_sub(1)? as usize)
    }

    /// Half the right-of-way along a half-edge in millimeters; 0 where only the site boundary runs.
    #[must_use]
    pub fn half_width_mm(&self, half_edge: HalfEdgeId) -> f64 {
        half_width_mm(&self.lines, &self.arrangement, &self.carriers, half_edge.edge())
    }

    fn face_mut(&mut self, id: FaceId) -> Option<&mut FaceOfLand> {
        self.faces.get_mut(id.0.checked_sub(1)? as usize)
    }

    /// The bounded face a point lies in.
    #[must_use]
    pub fn face_at(&self, point: PlanPoint) -> Option<&FaceOfLand> {
        self.face(self.locator.face_at(point))
    }

    /// The faces with a use, with their marks, in order of the faces.
    pub fn used_faces<'a>(
        &'a self,
        document: &'a Document,
        alternative: AlternativeId,
    ) -> impl Iterator<Item = (&'a FaceOfLand, MarkId, &'a UseMark)> + 'a {
        self.faces.iter().filter_map(move |face| {
            let id = face.use_mark?;
            Some((face, id, document.mark(alternative, id)?.as_use()?))
        })
    }
}

impl FaceOfLand {
    /// Its buildable land in square meters.
    #[must_use]
    pub fn land_m2(&self) -> f64 {
        self.land.twice_area_mm2 as f64 / 2e6
    }
}

fn half_width_mm(lines: &DrawnLines, arrangement: &Arrangement, carriers: &[Option<Carrier>], edge: EdgeId) -> f64 {
    let kept_mm = lines.kept_right_of_way_mm(arrangement.sources(edge));
    (f64::from(kept_mm) / 2.0).max(built_half_width_mm(lines, carriers[edge.0 as usize]))
}

fn built_half_width_mm(lines: &DrawnLines, carrier: Option<Carrier>) -> f64 {
    f64::from(carrier.map_or(0, |carrier| lines.streets[carrier.street as usize].right_of_way_mm)) / 2.0
}

fn constraints(
    marks: &OrderedMap<MarkId, Mark>,
    left_out: &OrderedSet<OwnerGroup>,
) -> impl Iterator<Item = Constraint> {
    let made = |mark: &Mark| Constraint::of(mark, |owner| left_out.contains(&owner));
    marks.values().filter_map(made)
}

/// Which faces lie in the site.
struct InSite {
    is_in: Vec<bool>,
}

impl InSite {
    /// A face is in the site when an odd number of boundary edges lies between it and the outside. Without a boundary
    /// the site is what streets enclose: every face along a street that is there, not those that only rights-of-way kept
    /// for streets to come go around.
    fn of(lines: &DrawnLines, arrangement: &Arrangement, carriers: &[Option<Carrier>]) -> Self {
        if lines.boundary.len() < 4 {
            let mut is_in = vec![false; arrangement.face_count()];
            for edge in arrangement.edges().filter(|edge| carriers[edge.0 as usize].is_some()) {
                is_in[arrangement.face(edge.forward()).0 as usize] = true;
                is_in[arrangement.face(edge.backward()).0 as usize] = true;
            }
            return Self { is_in };
        }
        let mut is_in: Vec<Option<bool>> = vec![None; arrangement.face_count()];
        let mut neighbors: Vec<Vec<(u32, bool)>> = vec![Vec::new(); arrangement.face_count()];
        for edge in arrangement.edges() {
            let crosses = lines.boundary_covers(arrangement.sources(edge));
            let [left, right] = [edge.forward(), edge.backward()].map(|half_edge| arrangement.face(half_edge).0);
            neighbors[left as usize].push((right, crosses));
            neighbors[right as usize].push((left, crosses));
        }
        is_in[0] = Some(false);
        let mut open = vec![0_u32];
        while let Some(face) = open.pop() {
            let here = is_in[face as usize].unwrap_or(false);
            for &(other, crosses) in &neighbors[face as usize] {
                if is_in[other as usize].is_none() {
                    is_in[other as usize] = Some(here != crosses);
                    open.push(other);
                }
            }
        }
        Self {
            is_in: is_in.into_iter().map(|is_in| is_in.unwrap_or(false)).collect(),
        }
    }

    fn contains(&self, face: FaceId) -> bool {
        self.is_in[face.0 as usize]
    }
}

#[cfg(test)]
mod tests;
