//! A cut across a street: where it runs, and which building stands on it on either side.
//!
//! The cut runs square to the street's centerline. On each hand the building is the nearest whose footprint the cut
//! crosses, on land along that side of the street and no farther than [`FARTHEST_MM`] beyond the right-of-way. Its height
//! is the sum of its building type's story heights; roofs are not known.

use hobnail_core::number::within;
use hobnail_core::plan::land::Hand;
use hobnail_core::plan::{FloorUse, MarkId, PlanPoint};
use hobnail_core::study::Study;

/// How far beyond the right-of-way a building still belongs to the street: 40 m, more than any front yard.
pub const FARTHEST_MM: f64 = 40_000.0;

/// Places tried for the first cut, along the street.
const TRIED: u16 = 20;
const WHOLE: u16 = 1000;

/// A building on the cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standing {
    /// The name of its type, as built.
    pub name: String,
    /// From the centerline to its front.
    pub front_mm: i32,
    /// From the centerline to its rear.
    pub rear_mm: i32,
    /// Use and height of its stories, from the ground up.
    pub stories: Vec<(FloorUse, i32)>,
}

/// A cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Where it crosses the centerline, in meters.
    pub at_m: (f64, f64),
    /// The direction to the left of the street, as a unit.
    left: (f64, f64),
    /// Length of the street and how far along it the cut is.
    pub length_m: f64,
    /// How far along the street the cut is.
    pub along_m: f64,
    /// Half the right-of-way.
    pub half_mm: i32,
    /// What stands to the left and to the right.
    pub sides: [Option<Standing>; 2],
}

impl Standing {
    /// Its height.
    #[must_use]
    pub fn height_mm(&self) -> i32 {
        self.stories.iter().map(|(_, height_mm)| *height_mm).sum()
    }
}

impl Cut {
    /// The line of the cut on the plan, in meters: across the right-of-way and the fronts beside it.
    #[must_use]
    pub fn line_m(&self) -> Vec<(f64, f64)> {
        const BEYOND_MM: i32 = 12_000;
        let end = |sign: f64| {
            let reach_m = sign * f64::from(self.half_mm + BEYOND_MM) / 1000.0;
            (self.at_m.0 + self.left.0 * reach_m, self.at_m.1 + self.left.1 * reach_m)
        };
        vec![end(1.0), end(-1.0)]
    }

    /// Width between the buildings' fronts; `None` where one side is open.
    #[must_use]
    pub fn front_to_front_mm(&self) -> Option<i32> {
        match &self.sides {
            [Some(left), Some(right)] => Some(left.front_mm + right.front_mm),
            _ => None,
        }
    }

    /// Height of the buildings, the mean of those that stand.
    #[must_use]
    pub fn mean_height_mm(&self) -> Option<i32> {
        let heights: Vec<i32> = self.sides.iter().flatten().map(Standing::height_mm).collect();
        heights.iter().sum::<i32>().checked_div(heights.len() as i32)
    }
}

/// The cut at a place along a street, in thousandths of its length; `None` where there is no such street on the ground.
#[must_use]
pub fn through(study: &Study, street: MarkId, along_thousandths: u16) -> Option<Cut> {
    let fabric = study.fabric();
    let (index, line) = (0_u32..)
        .zip(&fabric.lines.streets)
        .find(|(_, line)| line.mark == street)?;
    let lengths = || {
        line.points
            .windows(2)
            .filter_map(|ends| Some((ends.first()?, ends.last()?)))
    };
    let length_m: f64 = lengths().map(|(a, b)| a.distance_um(*b) as f64 / 1e6).sum();
    let along_m = length_m * f64::from(along_thousandths.min(WHOLE)) / f64::from(WHOLE);
    let mut before_m = 0.0;
    let mut found = None;
    for (a, b) in lengths() {
        let piece_m = a.distance_um(*b) as f64 / 1e6;
        if piece_m <= 0.0 {
            continue;
        }
        let ((ax, ay), (bx, by)) = (a.to_m(), b.to_m());
        let (east, north) = ((bx - ax) / piece_m, (by - ay) / piece_m);
        let into_m = within(along_m - before_m, 0.0, piece_m);
        found = Some(((ax + east * into_m, ay + north * into_m), (east, north)));
        before_m += piece_m;
        if before_m >= along_m {
            break;
        }
    }
    let (at_m, (east, north)) = found?;
    let mut cut = Cut {
        at_m,
        left: (-north, east),
        length_m,
        along_m,
        half_mm: line.right_of_way_mm.cast_signed() / 2,
        sides: [None, None],
    };
    let left = standing(study, &cut, (index, Hand::Left));
    let right = standing(study, &cut, (index, Hand::Right));
    cut.sides = [left, right];
    Some(cut)
}

/// The place along a street where most sides are built on, the nearest to its middle.
#[must_use]
pub fn best_place(study: &Study, street: MarkId) -> u16 {
    let mut best = (0, WHOLE / 2);
    for step in 0..=TRIED {
        // From the middle outward, to both hands in turn.
        let away = step.div_ceil(2) * WHOLE / TRIED;
        let place = if step % 2 == 1 {
            WHOLE / 2 + away
        } else {
            (WHOLE / 2).saturating_sub(away)
        };
        let built = through(study, street, place).map_or(0, |cut| cut.sides.iter().flatten().count());
        if built > best.0 {
            best = (built, place);
        }
    }
    best.1
}

/// The building on one hand of a cut.
fn standing(study: &Study, cut: &Cut, facing: (u32, Hand)) -> Option<Standing> {
    let painted = study.painted();
    let outward = if facing.1 == Hand::Left { 1.0 } else { -1.0 };
    let outward = (cut.left.0 * outward, cut.left.1 * outward);
    let farthest_mm = f64::from(cut.half_mm) + FARTHEST_MM;
    let mut nearest: Option<(f64, f64, usize, usize)> = None;
    for (face_index, face) in painted.iter().enumerate() {
        let sides = study.fabric().face(face.face).map(|face| face.sides.as_slice());
        let is_along = sides.unwrap_or_default().iter().any(|side| side.street == Some(facing));
        if !is_along {
            continue;
        }
        for (lot_index, lot) in face.laid.lots.iter().enumerate() {
            let Some((near_mm, far_mm)) = crossed(&lot.footprint, cut.at_m, outward) else {
                continue;
            };
            let is_nearer = nearest.is_none_or(|held| near_mm < held.0);
            if near_mm <= farthest_mm && is_nearer {
                nearest = Some((near_mm, far_mm, face_index, lot_index));
            }
        }
    }
    let (near_mm, far_mm, face, lot) = nearest?;
    let built = painted.get(face)?.built.get(lot)?;
    let held = painted.palette.get(*built)?;
    Some(Standing {
        name: held.name.clone(),
        front_mm: near_mm.round() as i32,
        rear_mm: far_mm.round() as i32,
        stories: held
            .stories
            .iter()
            .map(|story| (story.floor_use, story.height_mm.cast_signed()))
            .collect(),
    })
}

/// From where to where a ray from `at_m` crosses a ring, in millimeters; `None` where it passes by.
fn crossed(ring: &[PlanPoint], at_m: (f64, f64), (east, north): (f64, f64)) -> Option<(f64, f64)> {
    let local = |point: &PlanPoint| {
        let (x, y) = point.to_m();
        let (x, y) = (x - at_m.0, y - at_m.1);
        // Along the ray, and to its side.
        (x * east + y * north, y * east - x * north)
    };
    let mut span: Option<(f64, f64)> = None;
    for (place, point) in ring.iter().enumerate() {
        let next = ring.get(place + 1).or_else(|| ring.first())?;
        let ((a, a_side), (b, b_side)) = (local(point), local(next));
        if (a_side > 0.0) == (b_side > 0.0) {
            continue;
        }
        let along = a + (b - a) * a_side / (a_side - b_side);
        if along > 0.0 {
            let (least, most) = span.unwrap_or((along, along));
            span = Some((least.min(along), most.max(along)));
        }
    }
    span.map(|(least, most)| (least * 1000.0, most * 1000.0))
}
