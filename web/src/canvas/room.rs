//! Room for words: where names would be in each other's way the first is kept. What stands beside a sign is put on the
//! other side of it, above or below it, broken over lines or cut short before it is left out; the sign stays.

use hobnail_core::number::within;

use super::picture::{Align, Item, Layer, Words};

/// Width of a letter as a share of the type's height, on average.
const GLYPH_SHARE: f64 = 0.54;

/// From line to line, as a share of the type's height.
pub const LEADING: f64 = 1.15;

/// Letters in a line of words beside a sign: all of them, or fewer where there is no room.
const LETTERS: [usize; 3] = [usize::MAX, 20, 12];

/// Words are broken over so many lines; what is left then is cut.
const MOST_LINES: usize = 3;

/// What stands for words that were cut.
const CUT: char = '…';

/// Places on screen that are taken, as disks.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    taken: Vec<(f64, f64, f64)>,
    scale: f64,
    /// How far down words beside signs may reach.
    bottom_px: f64,
}

/// Where lines lie from the place that they hang on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// They begin there.
    After,
    /// They end there.
    Before,
    /// Their middles are there.
    About,
}

impl Side {
    /// The share of a line that lies before that place.
    const fn share_before(self) -> f64 {
        match self {
            Self::After => 0.0,
            Self::Before => 1.0,
            Self::About => 0.5,
        }
    }
}

/// Words as they stand on screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Where they hang: the middle of their lines, from top to bottom.
    pub at_px: (f64, f64),
    /// Where they lie from there.
    pub side: Side,
    /// What they say, line by line.
    pub lines: Vec<String>,
}

impl Room {
    /// All of the screen is free; words and signs are drawn so many times as large as they say.
    #[must_use]
    pub const fn drawn_larger(scale: f64) -> Self {
        Self {
            taken: Vec::new(),
            scale,
            bottom_px: f64::INFINITY,
        }
    }

    /// The same as far down as this: what lies below is covered.
    #[must_use]
    pub const fn above(mut self, bottom_px: f64) -> Self {
        self.bottom_px = bottom_px;
        self
    }

    /// Takes a disk whatever lies there, such as a sign's.
    pub fn take(&mut self, (x_px, y_px): (f64, f64), radius_px: f64) {
        self.taken.push((x_px, y_px, radius_px * self.scale));
    }

    /// Takes the room of a layer's words, in pixels of the screen, whatever lies there.
    pub fn take_words_of(&mut self, layer: &Layer) {
        for item in &layer.items {
            if let Item::Words(words) = item {
                let at_px = (words.at.0 * self.scale, words.at.1 * self.scale);
                let share = if words.align == Align::Middle { 0.5 } else { 0.0 };
                let size_px = words.size_px * self.scale;
                self.taken
                    .extend(disks(&words.text, at_px, share, size_px, words.angle_rad));
            }
        }
    }

    /// Takes the room for words that hang at a place on screen, where what lies between `from_px` and `to_px` from the
    /// left is seen; `None`, taking nothing, where there is none for them.
    ///
    /// Words about a middle that are level are moved just into sight. Those beside a sign stand to its right or else to its
    /// left, above or below, whole or else in fewer and fewer letters a line.
    ///
    /// Cost: linear in what is taken, for each way that they could stand.
    pub fn stand(&mut self, words: &Words, (x_px, y_px): (f64, f64), (from_px, to_px): (f64, f64)) -> Option<Standing> {
        let size_px = words.size_px * self.scale;
        let is_beside = words.align == Align::Right;
        for letters in LETTERS {
            let lines = broken(&words.text, letters);
            let widths = lines.iter().map(|line| width_px(line, size_px));
            let width_px = widths.fold(0.0, f64::max);
            let leading_px = LEADING * size_px;
            let half_px = (lines.len() - 1) as f64 / 2.0 * leading_px;
            let sign_px = words.shift_px.0 * self.scale;
            let (left_px, middle_px) = (x_px - 2.0 * sign_px, x_px - sign_px);
            let away_px = sign_px + size_px / 2.0 + half_px;
            // Beside a sign level with it is their middle, or else the last of their lines, or the first.
            let ways = [
                (Side::After, x_px, 0.0),
                (Side::After, x_px, -half_px),
                (Side::After, x_px, half_px),
                (Side::Before, left_px, 0.0),
                (Side::Before, left_px, -half_px),
                (Side::Before, left_px, half_px),
                (Side::About, middle_px, -away_px),
                (Side::About, middle_px, away_px),
            ];
            let about = [(Side::About, into_sight(words, x_px, width_px, (from_px, to_px)), 0.0)];
            for &(side, x_px, down_px) in if is_beside { ways.as_slice() } else { &about } {
                let left_px = x_px - side.share_before() * width_px;
                let at_px = (x_px, y_px + down_px);
                let is_covered = left_px < from_px
                    || left_px + width_px > to_px
                    || at_px.1 + half_px + size_px * 0.6 > self.bottom_px;
                if is_beside && is_covered {
                    continue;
                }
                let mut all = Vec::new();
                let mut line_px = at_px.1 - half_px;
                for line in &lines {
                    let share = side.share_before();
                    all.extend(disks(line, (x_px, line_px), share, size_px, words.angle_rad));
                    line_px += leading_px;
                }
                if self.takes(all) {
                    return Some(Standing { at_px, side, lines });
                }
            }
            if !is_beside {
                return None;
            }
        }
        None
    }

    /// Takes these disks; `false`, taking nothing, where some of it is taken already.
    fn takes(&mut self, disks: Vec<(f64, f64, f64)>) -> bool {
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

/// A text in lines of so many letters at most, but for longer words.
fn broken(text: &str, letters: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ') {
        match lines.last_mut() {
            Some(line) if line.chars().count() + word.chars().count() < letters => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    if lines.len() > MOST_LINES {
        lines.truncate(MOST_LINES);
        if let Some(line) = lines.last_mut() {
            line.truncate(line.trim_end_matches([',', CUT]).len());
            line.push(CUT);
        }
    }
    lines
}

/// How wide a line is in type of this size, nearly.
fn width_px(line: &str, size_px: f64) -> f64 {
    line.chars().count() as f64 * size_px * GLYPH_SHARE
}

/// Where level words about a middle stand so that no edge of what is seen of the drawing cuts them; they stay where there
/// is no room or nothing of them is in sight.
fn into_sight(words: &Words, x_px: f64, width_px: f64, (from_px, to_px): (f64, f64)) -> f64 {
    const MARGIN_PX: f64 = 4.0;
    let half_px = width_px / 2.0 + MARGIN_PX;
    let is_level = words.angle_rad.to_bits() == 0;
    let is_seen = x_px > from_px - half_px && x_px < to_px + half_px;
    if is_level && is_seen && from_px + half_px <= to_px - half_px {
        within(x_px, from_px + half_px, to_px - half_px)
    } else {
        x_px
    }
}

/// Disks that cover a line of which this share lies before the place that it hangs on.
fn disks(line: &str, (x_px, y_px): (f64, f64), share: f64, size_px: f64, angle_rad: f64) -> Vec<(f64, f64, f64)> {
    let width_px = width_px(line, size_px);
    let radius_px = size_px * 0.6;
    let count = (width_px / radius_px / 1.5).ceil().max(1.0);
    let step_px = width_px / count;
    let (sin, cos) = (
        hobnail_core::number::sin(angle_rad),
        hobnail_core::number::cos(angle_rad),
    );
    (0..count as usize)
        .map(|index| {
            let along_px = (index as f64 + 0.5) * step_px - share * width_px;
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

    const ALL: (f64, f64) = (f64::NEG_INFINITY, f64::INFINITY);

    fn takes(room: &mut Room, text: &str, angle_rad: f64, at_px: (f64, f64)) -> bool {
        room.stand(&words(text, angle_rad), at_px, ALL).is_some()
    }

    fn beside(text: &str) -> Words {
        let mut beside = words(text, 0.0);
        (beside.align, beside.shift_px) = (Align::Right, (10.0, 0.0));
        beside
    }

    #[test]
    fn the_first_of_two_overlapping_names_is_kept() {
        let mut room = Room::drawn_larger(1.0);
        assert!(takes(&mut room, "Orchard Street", 0.0, (100.0, 100.0)));
        assert!(!takes(&mut room, "Mill Lane", 0.0, (140.0, 105.0)));
        assert!(takes(&mut room, "Mill Lane", 0.0, (140.0, 130.0)));
    }

    #[test]
    fn an_upright_name_takes_upright_room() {
        let mut room = Room::drawn_larger(1.0);
        assert!(takes(
            &mut room,
            "Orchard Street",
            std::f64::consts::FRAC_PI_2,
            (100.0, 100.0)
        ));
        assert!(takes(&mut room, "Park", 0.0, (130.0, 100.0)));
        assert!(!takes(&mut room, "Park", 0.0, (100.0, 130.0)));
    }

    #[test]
    fn words_that_the_edge_would_cut_stand_on_the_other_side_of_their_sign() {
        let beside = beside("Footbridge");
        let width = width_px(&beside.text, 12.0);
        #[track_caller]
        fn check(beside: &Words, x_px: f64, scale: f64, to_px: f64, expected: Option<f64>) {
            let stood = Room::drawn_larger(scale).stand(beside, (x_px, 100.0), (0.0, to_px));
            assert_eq!(stood.map(|stood| stood.at_px.0), expected);
        }
        check(&beside, 500.0, 1.0, 501.0 + width, Some(500.0));
        check(&beside, 500.0, 1.0, 499.0 + width, Some(480.0));
        check(&beside, 500.0, 2.0, 499.0 + 2.0 * width, Some(460.0));
        // No room on any side, a sign that is out of sight.
        check(&beside, 15.0, 1.0, 20.0, None);
        check(&beside, 900.0, 1.0, 600.0, None);
    }

    #[test]
    fn level_words_about_a_middle_that_an_edge_would_cut_are_moved_into_sight() {
        let half = width_px("Park", 12.0) / 2.0;
        let stands = |angle_rad: f64, x_px: f64, seen_px: (f64, f64)| {
            let stood = Room::drawn_larger(1.0).stand(&words("Park", angle_rad), (x_px, 100.0), seen_px);
            stood.expect("nothing is taken").at_px.0
        };
        let places = [
            (250.0, 250.0),
            (105.0, 100.0 + half + 4.0),
            (499.0, 500.0 - half - 4.0),
            (98.0, 100.0 + half + 4.0),
            (520.0, 520.0),
            (70.0, 70.0),
        ];
        for (x, expected) in places {
            let stood = stands(0.0, x, (100.0, 500.0));
            assert!((stood - expected).abs() < 1e-9, "{x}: {stood} instead of {expected}");
        }
        assert_eq!(
            stands(0.3, 105.0, (100.0, 500.0)).to_bits(),
            105_f64.to_bits(),
            "along a street"
        );
        assert_eq!(
            stands(0.0, 5.0, (0.0, 20.0)).to_bits(),
            5_f64.to_bits(),
            "no room at all"
        );
    }

    #[test]
    fn words_beside_a_sign_are_broken_or_cut_before_they_are_left_out() {
        let remark = beside("Footbridge wide enough for a farm cart, closed to cars");
        let width = width_px(&remark.text, 12.0);
        // What stands on a drawing of this width about a sign in its middle.
        let on = |drawing_px: f64| {
            let at_px = (drawing_px / 2.0 + 10.0, 100.0);
            let stood = Room::drawn_larger(1.0).stand(&remark, at_px, (0.0, drawing_px));
            stood.map(|stood| (stood.side, stood.lines.join("|")))
        };
        let line = |side, text: &str| Some((side, text.to_owned()));
        assert_eq!(on(2.0 * width + 21.0), line(Side::After, &remark.text));
        let in_three = "Footbridge wide|enough for a farm|cart, closed to cars";
        assert_eq!(on(width), line(Side::About, &remark.text));
        assert_eq!(on(width - 1.0), line(Side::After, in_three));
        assert_eq!(on(200.0), line(Side::About, in_three));
        assert_eq!(on(100.0), line(Side::About, "Footbridge|wide enough|for a farm…"));
        assert_eq!(on(60.0), None);
    }

    #[test]
    fn words_in_the_way_of_others_stand_on_the_other_side() {
        let mut room = Room::drawn_larger(1.0);
        let mut stood = |text: &str| {
            let stood = room.stand(&beside(text), (110.0, 100.0), (0.0, 800.0));
            stood.map(|stood| (stood.side, stood.at_px))
        };
        // Away from the middle of a sign at 100 by its 10 and half the type's 12.
        assert_eq!(stood("Mill Lane"), Some((Side::After, (110.0, 100.0))));
        assert_eq!(stood("Mill Lane"), Some((Side::Before, (90.0, 100.0))));
        assert_eq!(stood("Mill Lane"), Some((Side::About, (100.0, 84.0))));
        assert_eq!(stood("Mill Lane"), Some((Side::About, (100.0, 116.0))));
        assert_eq!(stood("Mill Lane"), None);
    }

    #[test]
    fn words_stand_above_what_covers_the_drawing() {
        let mut room = Room::drawn_larger(1.0).above(110.0);
        let mut stood = || {
            let stood = room.stand(&beside("Mill Lane"), (110.0, 100.0), (105.0, 800.0));
            stood.map(|stood| (stood.side, stood.at_px.1))
        };
        assert_eq!(stood(), Some((Side::After, 100.0)));
        assert_eq!(stood(), None, "the left ends at 105, and there is no room below");
    }

    #[test]
    fn lines_give_way_to_what_is_above_or_below() {
        #[track_caller]
        fn check(taken_px: f64, expected_px: f64) {
            let mut room = Room::drawn_larger(1.0);
            room.take((150.0, taken_px), 6.0);
            let stood = room.stand(
                &beside("Footbridge wide enough for a cart"),
                (110.0, 100.0),
                (0.0, 260.0),
            );
            let stood = stood.expect("there is room");
            assert_eq!((stood.at_px.1, stood.lines.len()), (expected_px, 2));
        }
        let half_px = LEADING * 12.0 / 2.0;
        check(200.0, 100.0);
        check(116.0, 100.0 - half_px);
        check(84.0, 100.0 + half_px);
    }

    #[test]
    fn lines_hold_all_words_or_say_that_they_do_not() {
        let text = "a bb ccc dddd eeeee ffffff ggggggg hhhhhhhh";
        for letters in 1..60 {
            let lines = broken(text, letters);
            let is_fit = |line: &String| line.trim_end_matches(CUT).chars().count() <= letters || !line.contains(' ');
            assert!(
                lines.iter().all(is_fit) && lines.len() <= MOST_LINES,
                "{letters}: {lines:?}"
            );
            let said = lines.join(" ");
            let start = said.strip_suffix(CUT).unwrap_or(text);
            assert!(
                text.starts_with(start) && (said == text) != said.ends_with(CUT),
                "{said}"
            );
        }
        // What was cut already is not cut twice.
        assert_eq!(
            broken("for a long farm…, 22\u{a0}of\u{a0}31\u{a0}dots", 5),
            ["for a", "long", "farm…"]
        );
    }

    #[test]
    fn what_lies_over_the_drawing_keeps_words_away() {
        let mut room = Room::drawn_larger(2.0);
        let bar = Layer {
            items: vec![Item::Words(Words {
                at: (50.0, 50.0),
                ..words("500 ft", 0.0)
            })],
        };
        room.take_words_of(&bar);
        assert!(!takes(&mut room, "Mill Lane", 0.0, (100.0, 100.0)));
        assert!(takes(&mut room, "Mill Lane", 0.0, (100.0, 200.0)));
    }

    #[test]
    fn larger_words_take_more_room() {
        let both = |scale| {
            let mut room = Room::drawn_larger(scale);
            [100.0, 125.0].map(|y| takes(&mut room, "Orchard Street", 0.0, (100.0, y)))
        };
        assert_eq!((both(1.0), both(2.0)), ([true, true], [true, false]));
    }
}
