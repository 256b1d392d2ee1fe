//! Room for words: where names would be in each other's way the first is kept and the later ones are left out.

use super::picture::{Align, Words};

/// Width of a letter as a share of the type's height, on average.
const GLYPH_SHARE: f64 = 0.54;

/// Places on screen that are taken, as disks.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    taken: Vec<(f64, f64, f64)>,
    scale: f64,
}

impl Room {
    /// All of the screen is free; words and signs are drawn so many times as large as they say.
    #[must_use]
    pub const fn drawn_larger(scale: f64) -> Self {
        Self {
            taken: Vec::new(),
            scale,
        }
    }

    /// Takes a disk whatever lies there, such as a sign's.
    pub fn take(&mut self, (x_px, y_px): (f64, f64), radius_px: f64) {
        self.taken.push((x_px, y_px, radius_px * self.scale));
    }

    /// Takes the room for words at a place on screen; `false`, taking nothing, where some of it is taken already.
    pub fn take_words(&mut self, words: &Words, (x_px, y_px): (f64, f64)) -> bool {
        let disks = disks(words, (x_px, y_px), words.size_px * self.scale);
        let is_free = disks.iter().all(|one| {
            self.taken.iter().all(|other| {
                let (x, y) = (one.0 - other.0, one.1 - other.1);
                x * x + y * y >= (one.2 + other.2) * (one.2 + other.2)
            })
        });
        if is_free {
            self.taken.extend(disks);
        }
        is_free
    }
}

/// How wide words are in type of this size, nearly.
#[must_use]
pub fn width_px(words: &Words, size_px: f64) -> f64 {
    words.text.chars().count() as f64 * size_px * GLYPH_SHARE
}

/// How far words that hang at `x_px` are moved so that no edge of a drawing of this width cuts them: those beside a sign to
/// its other side, level ones about a middle just into sight. None are moved where there is no room or nothing of them is
/// in sight.
#[must_use]
pub fn moved_px(words: &Words, x_px: f64, scale: f64, drawing_px: f64) -> f64 {
    const MARGIN_PX: f64 = 4.0;
    let width_px = width_px(words, words.size_px * scale);
    let is_level = words.angle_rad.to_bits() == 0;
    match words.align {
        Align::Right => {
            let across_px = 2.0 * words.shift_px.0 * scale + width_px;
            let is_cut = x_px < drawing_px && x_px + width_px > drawing_px;
            if is_cut && x_px > across_px { -across_px } else { 0.0 }
        }
        Align::Middle if is_level => {
            let half_px = width_px / 2.0 + MARGIN_PX;
            let (least_px, most_px) = (half_px, drawing_px - half_px);
            let is_seen = x_px > -half_px && x_px < drawing_px + half_px;
            if is_seen && least_px <= most_px {
                x_px.clamp(least_px, most_px) - x_px
            } else {
                0.0
            }
        }
        Align::Middle => 0.0,
    }
}

/// Disks along the line of words that cover them.
fn disks(words: &Words, (x_px, y_px): (f64, f64), size_px: f64) -> Vec<(f64, f64, f64)> {
    let width_px = width_px(words, size_px);
    let radius_px = size_px * 0.6;
    let count = (width_px / radius_px / 1.5).ceil().max(1.0);
    let step_px = width_px / count;
    let start_px = match words.align {
        Align::Middle => -width_px / 2.0,
        Align::Right => 0.0,
    };
    let (sin, cos) = (
        hobnail_core::number::sin(words.angle_rad),
        hobnail_core::number::cos(words.angle_rad),
    );
    (0..count as usize)
        .map(|index| {
            let along_px = start_px + (index as f64 + 0.5) * step_px;
            (x_px + along_px * cos, y_px - along_px * sin, radius_px)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::palette;

    fn words(text: &str, angle_rad: f64) -> Words {
        Words {
            at: (0.0, 0.0),
            shift_px: (0.0, 0.0),
            text: text.to_owned(),
            size_px: 12.0,
            is_bold: false,
            color: palette::INK,
            halo: palette::PAPER,
            angle_rad,
            align: Align::Middle,
            from_px_per_m: 0.0,
        }
    }

    #[test]
    fn the_first_of_two_overlapping_names_is_kept() {
        let mut room = Room::drawn_larger(1.0);
        assert!(room.take_words(&words("Orchard Street", 0.0), (100.0, 100.0)));
        assert!(!room.take_words(&words("Mill Lane", 0.0), (140.0, 105.0)));
        assert!(room.take_words(&words("Mill Lane", 0.0), (140.0, 130.0)));
    }

    #[test]
    fn an_upright_name_takes_upright_room() {
        let mut room = Room::drawn_larger(1.0);
        assert!(room.take_words(&words("Orchard Street", std::f64::consts::FRAC_PI_2), (100.0, 100.0)));
        assert!(room.take_words(&words("Park", 0.0), (130.0, 100.0)));
        assert!(!room.take_words(&words("Park", 0.0), (100.0, 130.0)));
    }

    #[test]
    fn words_that_the_edge_would_cut_stand_on_the_other_side_of_their_sign() {
        let mut beside = words("Footbridge", 0.0);
        (beside.align, beside.shift_px) = (Align::Right, (10.0, 0.0));
        let width = width_px(&beside, 12.0);
        #[track_caller]
        fn check(moved_px: f64, expected: f64) {
            assert!((moved_px - expected).abs() < 1e-9, "{moved_px} instead of {expected}");
        }
        check(moved_px(&beside, 500.0, 1.0, 501.0 + width), 0.0);
        check(moved_px(&beside, 500.0, 1.0, 499.0 + width), -20.0 - width);
        check(moved_px(&beside, 500.0, 2.0, 499.0 + width), -40.0 - 2.0 * width);
        // No room on the other side, a sign that is out of sight.
        check(moved_px(&beside, 40.0, 1.0, 60.0), 0.0);
        check(moved_px(&beside, 700.0, 1.0, 600.0), 0.0);
    }

    #[test]
    fn level_words_about_a_middle_that_an_edge_would_cut_are_moved_into_sight() {
        let park = words("Park", 0.0);
        let half = width_px(&park, 12.0) / 2.0;
        let places = [
            (250.0, 0.0),
            (5.0, half - 1.0),
            (499.0, -(half + 3.0)),
            (-2.0, half + 6.0),
            (520.0, 0.0),
        ];
        for (x, expected) in places {
            let moved = moved_px(&park, x, 1.0, 500.0);
            assert!((moved - expected).abs() < 1e-9, "{x}: {moved} instead of {expected}");
        }
        assert_eq!(
            moved_px(&words("Park", 0.3), 5.0, 1.0, 500.0).to_bits(),
            0,
            "along a street"
        );
        assert_eq!(moved_px(&park, 5.0, 1.0, 20.0).to_bits(), 0, "no room at all");
    }

    #[test]
    fn larger_words_take_more_room() {
        let both = |scale| {
            let mut room = Room::drawn_larger(scale);
            [100.0, 125.0].map(|y| room.take_words(&words("Orchard Street", 0.0), (100.0, y)))
        };
        assert_eq!((both(1.0), both(2.0)), ([true, true], [true, false]));
    }
}
