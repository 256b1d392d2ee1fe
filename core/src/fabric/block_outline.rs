//! The outline of a block along the right-of-way: its perimeter, its sides, and how it lies.
//!
//! A block is what streets go around. Its outline is the boundary of the union of its faces, each edge moved inward by
//! half the right-of-way of the street along it; where that moves edges past one another (a bend rounded closer than the
//! right-of-way is wide) their neighbors meet instead. Corners turn as the right-of-way does: mitered, with a step where
//! a street becomes wider or narrower. Alleys and paths within do not split a block; dead ends that reach into it, and
//! streets that lie loose inside it, leave its outline as it is.
//!
//! Only a block with streets all round has an outline here: not one that the site boundary, or a path or alley at the
//! drawing's edge, closes. Not seen: a neck narrower than its rights-of-way, which parts the land of a block in two.

use super::arrangement::Arrangement;
use super::carriers::Carrier;
use super::ids::{FaceId, HalfEdgeId};
use super::land::MITER_LIMIT;
use super::streets::DrawnLines;
use crate::number;
use crate::plan::{PlanPoint, StreetRole};

/// How long the outline of a block is along the right-of-way, in millimeters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlockLengths {
    /// Its length all round.
    pub perimeter_mm: f64,
    /// The longest of its sides: from corner to corner, a corner being where it turns by more than 45° at one point.
    pub longest_side_mm: f64,
}

/// The outline of one block along the right-of-way. Lengths in millimeters.
#[derive(Clone, Debug, PartialEq)]
pub struct BlockOutline {
    /// How long it is.
    pub lengths: BlockLengths,
    /// The corners of the outline, counterclockwise, from [`BlockOutline::origin`].
    pub corners_mm: Vec<(f64, f64)>,
    /// Where the corners are measured from: a vertex of the streets around it.
    pub origin: PlanPoint,
}

/// The outline of every block, in their order; `None` for a block without streets all round, or of no width.
///
/// Cost: linear in the edges of all blocks.
#[must_use]
pub fn block_outlines(
    lines: &DrawnLines,
    arrangement: &Arrangement,
    carriers: &[Option<Carrier>],
    blocks: &[Vec<FaceId>],
) -> Vec<Option<BlockOutline>> {
    let mut outlines = vec![None; blocks.len()];
    for_each_ring(
        lines,
        arrangement,
        carriers,
        blocks,
        &|_| false,
        &mut |block, around, origin| {
            outlines[block] = around.map(|around| BlockOutline {
                lengths: measured(around),
                corners_mm: around.iter().map(|line| line.at(line.from)).collect(),
                origin,
            });
        },
    );
    outlines
}

/// The lengths of every block, in their order, as [`block_outlines`] has them. `known` tells the lengths of a face as a
/// block of its own as [`ring_lengths`] has them, or nothing.
pub(super) fn block_lengths(
    lines: &DrawnLines,
    arrangement: &Arrangement,
    carriers: &[Option<Carrier>],
    blocks: &[Vec<FaceId>],
    known: &dyn Fn(FaceId) -> Option<BlockLengths>,
) -> Vec<Option<BlockLengths>> {
    let mut lengths = vec![None; blocks.len()];
    let is_known = |face| known(face).is_some();
    for_each_ring(
        lines,
        arrangement,
        carriers,
        blocks,
        &is_known,
        &mut |block, around, _| {
            lengths[block] = match (around, &blocks[block][..]) {
                (Some(around), _) => Some(measured(around)),
                (None, [face]) => known(*face),
                _ => None,
            };
        },
    );
    lengths
}

/// The lengths of a ring of edges that move by these widths.
pub(super) fn ring_lengths(arrangement: &Arrangement, ring: &[HalfEdgeId], widths: &[f64]) -> Option<BlockLengths> {
    let mut moved = Vec::new();
    outline_of_ring(arrangement, ring, widths, &mut moved)?;
    Some(measured(&moved))
}

/// Told a block, its lines moved inward where they were worked, and where those are measured from.
type Visit<'a> = dyn FnMut(usize, Option<&[Line]>, PlanPoint) + 'a;

/// Calls `visit` with every block that has streets all round: its lines moved inward and where they are measured from;
/// no lines where `is_known` tells that nobody needs them.
fn for_each_ring(
    lines: &DrawnLines,
    arrangement: &Arrangement,
    carriers: &[Option<Carrier>],
    blocks: &[Vec<FaceId>],
    is_known: &dyn Fn(FaceId) -> bool,
    visit: &mut Visit<'_>,
) {
    let mut block_of_face = vec![None; arrangement.face_count()];
    for (block, faces) in blocks.iter().enumerate() {
        for face in faces {
            block_of_face[face.0 as usize] = Some(block);
        }
    }
    let block_of = |half_edge: HalfEdgeId| block_of_face[arrangement.face(half_edge).0 as usize];
    let mut walker = Walker {
        arrangement,
        places: vec![0; arrangement.vertices().len()],
        is_walked: vec![false; arrangement.edge_count() * 2],
        walked: Vec::new(),
        shell: Vec::new(),
    };
    let (mut widths, mut moved) = (Vec::new(), Vec::new());
    let half_width_mm = |half_edge: HalfEdgeId| {
        let carrier = carriers[half_edge.edge().0 as usize]?;
        let street = &lines.streets[carrier.street as usize];
        let is_street = !matches!(street.role, StreetRole::Alley | StreetRole::Path);
        is_street.then(|| f64::from(street.right_of_way_mm) / 2.0)
    };
    for (block, faces) in blocks.iter().enumerate() {
        if let [face] = faces[..]
            && is_known(face)
        {
            let mut loops = arrangement.outer_loop(face).into_iter();
            if loops.all(|start| arrangement.around(start).all(|part| half_width_mm(part).is_some())) {
                visit(block, None, PlanPoint::default());
            }
            continue;
        }
        let is_edge = |half_edge: HalfEdgeId| block_of(half_edge.twin()) != Some(block);
        walker.find_shell(faces, is_edge);
        widths.clear();
        widths.extend(walker.shell.iter().map_while(|part| half_width_mm(*part)));
        if widths.len() == walker.shell.len()
            && let Some(origin) = outline_of_ring(arrangement, &walker.shell, &widths, &mut moved)
        {
            visit(block, Some(&moved), origin);
        }
    }
}

/// Walks around unions of faces; keeps scratch memory between blocks.
struct Walker<'a> {
    arrangement: &'a Arrangement,
    /// Where a vertex stands in the walk, plus one; 0 when it does not.
    places: Vec<u32>,
    is_walked: Vec<bool>,
    walked: Vec<HalfEdgeId>,
    /// The outer ring found last; empty where there is none.
    shell: Vec<HalfEdgeId>,
}

impl Walker<'_> {
    /// Finds the outer ring of the union of `faces`, counterclockwise; `is_edge` tells their half-edges on its boundary.
    fn find_shell(&mut self, faces: &[FaceId], is_edge: impl Fn(HalfEdgeId) -> bool) {
        self.shell.clear();
        let mut largest = 0;
        for face in faces {
            // Only the outer loop: what lies loose inside a face is no part of the shell.
            let Some(start) = self.arrangement.outer_loop(*face) else {
                continue;
            };
            let arrangement = self.arrangement;
            for first in arrangement.around(start).filter(|half_edge| is_edge(*half_edge)) {
                if !self.is_walked[first.0 as usize] {
                    self.walk(first, &is_edge, &mut largest);
                }
            }
        }
    }

    /// Walks around the union from `first`; each time the walk returns to a vertex the ring it closes is cut off.
    fn walk(&mut self, first: HalfEdgeId, is_edge: &impl Fn(HalfEdgeId) -> bool, largest: &mut i128) {
        let mut walked = std::mem::take(&mut self.walked);
        walked.clear();
        let mut here = first;
        while !self.is_walked[here.0 as usize] {
            self.is_walked[here.0 as usize] = true;
            walked.push(here);
            self.places[self.arrangement.origin(here).0 as usize] = walked.len() as u32;
            let target = self.arrangement.target(here).0 as usize;
            if let Some(from) = self.places[target].checked_sub(1) {
                let ring = &walked[from as usize..];
                for part in ring {
                    self.places[self.arrangement.origin(*part).0 as usize] = 0;
                }
                let area = self.twice_area_mm2(ring);
                if area > *largest {
                    *largest = area;
                    self.shell.clear();
                    self.shell.extend_from_slice(ring);
                }
                walked.truncate(from as usize);
            }
            here = self.arrangement.next(here);
            while !is_edge(here) {
                // Within the union: on around the same vertex.
                here = self.arrangement.next(here.twin());
            }
        }
        self.walked = walked;
    }

    fn twice_area_mm2(&self, ring: &[HalfEdgeId]) -> i128 {
        let doubled = |&half_edge: &HalfEdgeId| {
            let p = self.arrangement.point(self.arrangement.origin(half_edge));
            let q = self.arrangement.point(self.arrangement.target(half_edge));
            i128::from((i64::from(p.x_mm) - i64::from(q.x_mm)) * (i64::from(p.y_mm) + i64::from(q.y_mm)))
        };
        ring.iter().map(doubled).sum()
    }
}

/// A line that an edge moves to: where it starts, its direction, and how far the edge moved to its left.
#[derive(Clone, Copy, Debug)]
struct Line {
    /// The edge's first end, before it moved.
    x: f64,
    y: f64,
    ux: f64,
    uy: f64,
    length: f64,
    width: f64,
    /// The neighbors still there.
    before: usize,
    after: usize,
    is_gone: bool,
    /// From where to where along it the outline runs, and how much of the outline lies between its end and the next.
    from: f64,
    to: f64,
    between: f64,
}

impl Line {
    /// The place `along` the moved line.
    fn at(&self, along: f64) -> (f64, f64) {
        (
            self.x - self.uy * self.width + self.ux * along,
            self.y + self.ux * self.width + self.uy * along,
        )
    }
}

/// Moves a ring of edges inward by these widths into `lines`, and gives back where those are measured from; nothing where
/// nothing is left of it.
fn outline_of_ring(
    arrangement: &Arrangement,
    ring: &[HalfEdgeId],
    widths: &[f64],
    lines: &mut Vec<Line>,
) -> Option<PlanPoint> {
    let point = |half_edge: HalfEdgeId| arrangement.point(arrangement.origin(half_edge));
    let origin = point(*ring.first()?);
    let relative = |at: PlanPoint| {
        (
            f64::from(at.x_mm) - f64::from(origin.x_mm),
            f64::from(at.y_mm) - f64::from(origin.y_mm),
        )
    };
    let count = ring.len();
    lines.clear();
    for (index, (half_edge, width)) in ring.iter().zip(widths).enumerate() {
        let (x, y) = relative(point(*half_edge));
        let (end_x, end_y) = relative(point(half_edge.twin()));
        let length = number::length(end_x - x, end_y - y);
        lines.push({
            Line {
                x,
                y,
                ux: (end_x - x) / length,
                uy: (end_y - y) / length,
                length,
                width: *width,
                before: (index + count - 1) % count,
                after: (index + 1) % count,
                is_gone: false,
                from: 0.0,
                to: length,
                between: 0.0,
            }
        });
    }
    for index in 0..count {
        turn_at_vertex(lines, index);
    }
    take_out_overrun(lines)?;
    lines.retain(|line| !line.is_gone);
    Some(origin)
}

/// Works the corner between an edge and the next, which share a vertex: as strips of right-of-way meet there.
fn turn_at_vertex(lines: &mut [Line], index: usize) {
    let (a, b) = (lines[index], lines[lines[index].after]);
    let (cross, dot) = (a.ux * b.uy - a.uy * b.ux, a.ux * b.ux + a.uy * b.uy);
    // How far the outline stops before the vertex along each line (beyond it where negative), and what lies between.
    let (back_a, back_b, between) = if b.width < a.width * dot {
        // The wider strip of the first ends in a wall, and the line of the second begins at that wall.
        (0.0, b.width * cross / dot, a.width - b.width / dot)
    } else if a.width < b.width * dot {
        (a.width * cross / dot, 0.0, b.width - a.width / dot)
    } else if cross == 0.0 {
        // Straight on at one width; or there and back, which no shell has.
        (0.0, 0.0, 0.0)
    } else {
        let (back_a, back_b) = ((b.width - a.width * dot) / cross, (a.width - b.width * dot) / cross);
        let is_too_far = number::length(back_a, a.width) > MITER_LIMIT * a.width.max(b.width);
        let is_bare = a.width <= 0.0 || b.width <= 0.0;
        if cross < 0.0 && (is_too_far || is_bare) {
            let (left, right) = (a.at(a.length), b.at(0.0));
            (0.0, 0.0, number::length(right.0 - left.0, right.1 - left.1))
        } else {
            (back_a, back_b, 0.0)
        }
    };
    let after = lines[index].after;
    lines[index].to = a.length - back_a;
    lines[index].between = between;
    lines[after].from = back_b;
}

/// Takes out every line whose neighbors meet before it begins; `None` when nothing is left.
fn take_out_overrun(lines: &mut [Line]) -> Option<()> {
    if lines.iter().all(|line| line.to - line.from >= 0.0) {
        return Some(());
    }
    let mut left = lines.len();
    let mut open: Vec<usize> = (0..lines.len()).rev().collect();
    while let Some(index) = open.pop() {
        let line = lines[index];
        if line.is_gone || line.to - line.from >= 0.0 {
            continue;
        }
        lines[index].is_gone = true;
        left -= 1;
        if left < 3 {
            return None;
        }
        let (before, after) = (line.before, line.after);
        lines[before].after = after;
        lines[after].before = before;
        meet(lines, before, after);
        open.extend([after, before]);
    }
    Some(())
}

/// Lets two lines that share no vertex meet where they cross; where they hardly turn, straight across.
fn meet(lines: &mut [Line], first: usize, second: usize) {
    let (a, b) = (lines[first], lines[second]);
    let cross = a.ux * b.uy - a.uy * b.ux;
    let (ax, ay) = a.at(0.0);
    let (bx, by) = b.at(0.0);
    let (dx, dy) = (bx - ax, by - ay);
    if cross.abs() > LEAST_TURN {
        lines[first].to = (dx * b.uy - dy * b.ux) / cross;
        lines[second].from = (dx * a.uy - dy * a.ux) / cross;
        lines[first].between = 0.0;
    } else {
        let (end_x, end_y) = a.at(a.length);
        lines[first].to = a.length;
        lines[second].from = 0.0;
        lines[first].between = number::length(bx - end_x, by - end_y);
    }
}

/// Sine of the least turn at which two lines are let meet where they cross: below it, a thousandth of a radian, they would
/// meet far away, and the straight way across is shorter by a millionth of its length at most.
const LEAST_TURN: f64 = 1e-3;

fn measured(around: &[Line]) -> BlockLengths {
    let length = |line: &Line| line.to - line.from + line.between;
    let turns_before = |index: usize| {
        let (a, b) = (&around[(index + around.len() - 1) % around.len()], &around[index]);
        let (cross, dot) = (a.ux * b.uy - a.uy * b.ux, a.ux * b.ux + a.uy * b.uy);
        cross.abs() > dot
    };
    // An outline without any corner is one side that begins where it does.
    let first = (0..around.len()).find(|index| turns_before(*index)).unwrap_or(0);
    let (mut longest_side_mm, mut side_mm) = (0.0_f64, 0.0);
    for step in 0..around.len() {
        let index = (first + step) % around.len();
        if step > 0 && turns_before(index) {
            longest_side_mm = longest_side_mm.max(side_mm);
            side_mm = 0.0;
        }
        side_mm += length(&around[index]);
    }
    BlockLengths {
        perimeter_mm: around.iter().map(length).sum(),
        longest_side_mm: longest_side_mm.max(side_mm),
    }
}

#[cfg(test)]
mod tests;
