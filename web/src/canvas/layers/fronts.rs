//! The map of the least direct walks: a thick line along each front, and its rank in a disk beside it.

use std::sync::Arc;

use crate::canvas::layers::marks::place_of_sign;
use crate::canvas::offset::{between, length};
use crate::canvas::palette;
use crate::canvas::picture::{Align, Form, Item, Layer, Path, Sign, Stroke, Words};
use crate::canvas::scene::{Line, Scene};

/// Width of the lines, in pixels.
pub const LINE_PX: f64 = 6.0;

/// Radius of the disks, in pixels.
pub const DISK_PX: f64 = 11.0;

/// Height of the ranks in them, in pixels.
const RANK_PX: f64 = 14.0;

/// From the middle of a line to the middle of its disk, in pixels: the disk stays clear of the line's casing.
const ASIDE_PX: f64 = LINE_PX / 2.0 + DISK_PX + 4.0;

/// How far aside room is looked for, in meters: half a block.
const ROOM_M: f64 = 30.0;

/// A run shorter than this has no direction, in meters: points are rounded to the millimeter.
const LEAST_RUN_M: f64 = 1e-3;

/// A rank beside its front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disk {
    /// The middle of the front.
    pub at: (f64, f64),
    /// Pixels from there, right and down.
    pub shift_px: (f64, f64),
}

/// Where the ranks stand, the worst first: beside the middle of each front, on the side farther from other fronts and
/// from signs of places. A front too short for a line has its rank on itself.
#[must_use]
pub fn disks(scene: &Scene) -> Vec<Disk> {
    let middles: Vec<Middle> = scene.fronts.iter().map(middle).collect();
    let signs = scene.places.iter().filter_map(|place| place_of_sign(&place.extent));
    let taken: Vec<(f64, f64)> = middles.iter().map(|middle| middle.at).chain(signs).collect();
    let room_m2 = |own: usize, (x, y): (f64, f64)| {
        let others = taken.iter().enumerate().filter(|(place, _)| *place != own);
        let apart = others.map(|(_, other)| (other.0 - x) * (other.0 - x) + (other.1 - y) * (other.1 - y));
        apart.fold(f64::INFINITY, f64::min)
    };
    let disk = |(own, Middle { at: (x, y), left }): (usize, &Middle)| {
        let aside = |by_m: f64| room_m2(own, (x + left.0 * by_m, y + left.1 * by_m));
        let side = if aside(-ROOM_M) > aside(ROOM_M) {
            -ASIDE_PX
        } else {
            ASIDE_PX
        };
        Disk {
            at: (*x, *y),
            shift_px: (left.0 * side, -left.1 * side),
        }
    };
    middles.iter().enumerate().map(disk).collect()
}

/// The lines and their ranks, the worst on top.
#[must_use]
pub fn fronts(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let mut lines = Path::default();
    for line in &scene.fronts {
        lines.line(line.iter().copied());
    }
    let lines = Arc::new(lines);
    layer.stroke(lines.clone(), Stroke::drawn(palette::PAPER, LINE_PX + 3.0), 0.0);
    layer.stroke(lines, Stroke::drawn(palette::SHED_EDGE, LINE_PX), 0.0);
    for (rank, disk) in (1..).zip(disks(scene)).collect::<Vec<(u32, Disk)>>().into_iter().rev() {
        layer.items.push(Item::Sign(Sign {
            at: disk.at,
            shift_px: disk.shift_px,
            form: Form::Round,
            radius_px: DISK_PX,
            fill: palette::SHED_EDGE,
            line: palette::SHED_EDGE,
            line_px: palette::MEDIUM_PX,
        }));
        layer.items.push(Item::Words(Words {
            at: disk.at,
            shift_px: disk.shift_px,
            text: rank.to_string(),
            size_px: RANK_PX,
            is_bold: true,
            color: palette::PAPER,
            halo: palette::SHED_EDGE,
            angle_rad: 0.0,
            align: Align::Middle,
            from_px_per_m: 0.0,
        }));
    }
    layer
}

/// The middle of a line, and the direction to its left there; no direction where it has no length.
pub struct Middle {
    /// The middle.
    pub at: (f64, f64),
    /// The direction, of length 1 or 0.
    pub left: (f64, f64),
}

/// The middle of a line by its length.
#[must_use]
pub fn middle(line: &Line) -> Middle {
    let length_m = length(line);
    let onward = between(line, length_m / 2.0, length_m);
    let at = onward.first().or(line.first()).copied().unwrap_or_default();
    let steps = onward.iter().map(|next| (next.0 - at.0, next.1 - at.1));
    let mut steps = steps.map(|(x, y)| (x, y, (x * x + y * y).sqrt()));
    let left = steps
        .find(|(.., run_m)| *run_m > LEAST_RUN_M)
        .map_or((0.0, 0.0), |(x, y, run_m)| (-y / run_m, x / run_m));
    Middle { at, left }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranks_stand_beside_their_lines_away_from_each_other() {
        let scene = Scene {
            fronts: vec![
                vec![(0.0, 0.0), (80.0, 0.0)],
                vec![(0.0, 40.0), (80.0, 40.0)],
                vec![(200.0, 0.0), (200.0, 0.0)],
            ],
            ..Scene::default()
        };
        let disks = disks(&scene);
        assert_eq!(disks[0].at, (40.0, 0.0));
        assert!(disks[0].shift_px.1 >= DISK_PX + LINE_PX / 2.0, "below the lower line");
        assert!(
            disks[1].shift_px.1 <= -(DISK_PX + LINE_PX / 2.0),
            "above the upper line"
        );
        assert_eq!(disks[2].shift_px, (0.0, 0.0), "on a front without length");
        let bent = middle(&vec![(0.0, 0.0), (0.1, 0.0), (0.3, 0.0), (0.3, 0.3)]);
        assert_eq!(bent.left, (-1.0, 0.0), "a direction at a corner too");
        let layer = fronts(&scene);
        let ranks: Vec<&str> = layer
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Words(words) => Some(words.text.as_str()),
                _ => None,
            })
            .collect();
        assert_eq!(ranks, ["3", "2", "1"], "the worst on top");
    }
}
