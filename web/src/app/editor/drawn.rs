//! Drawings of street sections: paths in millimeters, true to scale, in a few inks that the style sheet knows.
//!
//! x runs to the right along the cut and y down from the pavement.

use hobnail_core::plan::{Strip, StripKind};

/// An ink: a class of the style sheet. In this order they are laid over one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each ink is named after what it draws")]
pub enum Ink {
    Building,
    Walk,
    Planted,
    Paved,
    Parking,
    Bicycle,
    Floor,
    Trunk,
    Crown,
    Car,
    Passing,
    Person,
    Ground,
    Steep,
    Edge,
    Dimension,
}

const INKS: [&str; 16] = [
    "building",
    "walk",
    "planted",
    "paved",
    "parking",
    "bicycle",
    "floor",
    "trunk",
    "crown",
    "car",
    "passing",
    "person",
    "ground",
    "steep",
    "edge",
    "dimension",
];

/// Words of a drawing, their middle at x and their foot at y, in millimeters.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// Where their middle is.
    pub x_mm: i32,
    /// Where they stand.
    pub y_mm: i32,
    /// The words.
    pub text: String,
}

/// A drawing, as a view in millimeters.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// Left, top, width and height of what is seen.
    pub view_mm: [i32; 4],
    /// Pixels to a meter, where it has a size of its own; else it fills its place.
    pub px_per_m: Option<f64>,
    /// Ink and path, the lowest first.
    pub paths: Vec<(&'static str, String)>,
    /// Size of the words.
    pub letter_mm: i32,
    /// Words.
    pub labels: Vec<Label>,
    /// What it shows, in words.
    pub described: String,
}

/// What is drawn upon.
#[derive(Default)]
pub struct Paper {
    paths: [String; INKS.len()],
    /// Words.
    pub labels: Vec<Label>,
}

/// How high a walk lies above the carriageway, and how thick the ground is drawn.
const CURB_MM: i32 = 150;
const GROUND_MM: i32 = 400;
/// How deep a swale is.
const SWALE_MM: i32 = 500;

/// The height that drawings of strips alone need: a tree.
pub const TREE_MM: i32 = 5_300;

const TRUNK: &str = "m-70 0l20 -2300h100l20 2300z";
const CROWN: &str = "m0 -5200c950 0 1600 600 1600 1500c0 950 -700 1600 -1600 1600c-900 0 -1600 -650 -1600 -1600c0 -900 650 -1500 1600 -1500z";
const CAR: &str = "m-900 -230v-470q0 -120 130 -170l190 -80l110 -370q30 -100 130 -100h680q100 0 130 100l110 370l190 80\
                   q130 50 130 170v470zm90 0v230h230v-230zm1390 0v230h230v-230z";
const PERSON: &str = "m0 -1750a125 125 0 1 0 1 0zm-200 300q200 -80 400 0l-60 700h-60l-20 750h-120l-20 -750h-60z";
const RIDER: &str = "m-35 0v-680h70v680zm-165 -1400q200 -80 400 0l-90 640h-220zm200 -320a125 125 0 1 0 1 0z";

/// Least widths that hold what is drawn on them.
const TREE_FROM_MM: i32 = 900;
const CAR_FROM_MM: i32 = 1_800;
const PERSON_FROM_MM: i32 = 600;

impl Paper {
    /// Begins at a place, and goes on as told from there.
    pub fn put(&mut self, ink: Ink, x_mm: i32, y_mm: i32, path: &str) {
        let Some(held) = self.paths.get_mut(ink as usize) else {
            return;
        };
        for part in ["M", &x_mm.to_string(), " ", &y_mm.to_string(), path] {
            held.push_str(part);
        }
    }

    /// A line to another place.
    pub fn line(&mut self, ink: Ink, [x_mm, y_mm]: [i32; 2], [to_x_mm, to_y_mm]: [i32; 2]) {
        let to = "L".to_owned() + &to_x_mm.to_string() + " " + &to_y_mm.to_string();
        self.put(ink, x_mm, y_mm, &to);
    }

    /// A rectangle from its top left.
    pub fn rectangle(&mut self, ink: Ink, [x_mm, y_mm]: [i32; 2], [width_mm, height_mm]: [i32; 2]) {
        let (width, height) = (width_mm.to_string(), height_mm.to_string());
        let around = "h".to_owned() + &width + "v" + &height + "h-" + &width + "z";
        self.put(ink, x_mm, y_mm, &around);
    }

    /// Words.
    pub fn label(&mut self, x_mm: i32, y_mm: i32, text: impl Into<String>) {
        self.labels.push(Label {
            x_mm,
            y_mm,
            text: text.into(),
        });
    }

    /// The strips from `left_mm` on, with the ground line over them, and what stands there; lanes hold a passing car
    /// where `has_passing`.
    pub fn strips(&mut self, strips: &[Strip], left_mm: i32, has_passing: bool) {
        let mut x_mm = left_mm;
        for strip in strips {
            let width_mm = width_of(strip);
            let middle_mm = x_mm + width_mm / 2;
            let (ink, top_mm) = ground_of(strip.kind);
            self.rectangle(ink, [x_mm, top_mm], [width_mm, GROUND_MM - top_mm]);
            if strip.kind == StripKind::Swale {
                let slope = "l".to_owned() + &(width_mm / 2).to_string() + " " + &SWALE_MM.to_string();
                self.put(Ink::Ground, x_mm, top_mm, &slope);
                self.line(Ink::Ground, [middle_mm, SWALE_MM], [x_mm + width_mm, top_mm]);
            } else {
                self.line(Ink::Ground, [x_mm, top_mm], [x_mm + width_mm, top_mm]);
            }
            self.line(Ink::Floor, [x_mm, top_mm], [x_mm, GROUND_MM]);
            match strip.kind {
                StripKind::Planting | StripKind::Median if width_mm >= TREE_FROM_MM => {
                    self.put(Ink::Trunk, middle_mm, top_mm, TRUNK);
                    self.put(Ink::Crown, middle_mm, top_mm, CROWN);
                }
                StripKind::Parking if width_mm >= CAR_FROM_MM => self.put(Ink::Car, middle_mm, top_mm, CAR),
                StripKind::Travel if has_passing && width_mm >= CAR_FROM_MM => {
                    self.put(Ink::Passing, middle_mm, top_mm, CAR);
                }
                StripKind::Walk if width_mm >= PERSON_FROM_MM => self.put(Ink::Person, middle_mm, top_mm, PERSON),
                StripKind::Bicycle if width_mm >= PERSON_FROM_MM => self.put(Ink::Person, middle_mm, top_mm, RIDER),
                _ => {}
            }
            x_mm += width_mm;
        }
        self.line(Ink::Floor, [x_mm, 0], [x_mm, GROUND_MM]);
    }

    /// Ground beside the street, as high as a walk.
    pub fn yard(&mut self, left_mm: i32, width_mm: i32) {
        self.rectangle(Ink::Planted, [left_mm, -CURB_MM], [width_mm, GROUND_MM + CURB_MM]);
        self.line(Ink::Ground, [left_mm, -CURB_MM], [left_mm + width_mm, -CURB_MM]);
    }

    /// A person on the ground beside the street.
    pub fn person(&mut self, x_mm: i32) {
        self.put(Ink::Person, x_mm, -CURB_MM, PERSON);
    }

    /// The finished drawing.
    #[must_use]
    pub fn finished(self, view_mm: [i32; 4], letter_mm: i32, described: String) -> Drawing {
        let mut paths = Vec::new();
        for (ink, path) in INKS.into_iter().zip(self.paths) {
            if !path.is_empty() {
                paths.push((ink, path));
            }
        }
        Drawing {
            view_mm,
            px_per_m: None,
            paths,
            letter_mm,
            labels: self.labels,
            described,
        }
    }
}

/// The drawing of strips alone, the first at x = 0.
#[must_use]
pub fn of_strips(strips: &[Strip], described: String) -> Drawing {
    let mut paper = Paper::default();
    paper.strips(strips, 0, false);
    let width_mm: i32 = strips.iter().map(width_of).sum();
    paper.finished(
        [
            -60,
            -TREE_MM - CURB_MM,
            width_mm + 120,
            TREE_MM + CURB_MM + GROUND_MM + 60,
        ],
        0,
        described,
    )
}

/// Width of a strip as it is drawn; none is wider than the widest right-of-way.
#[must_use]
pub fn width_of(strip: &Strip) -> i32 {
    strip
        .width_mm
        .min(hobnail_core::fabric::streets::WIDEST_RIGHT_OF_WAY_MM)
        .cast_signed()
}

const fn ground_of(kind: StripKind) -> (Ink, i32) {
    match kind {
        StripKind::Walk => (Ink::Walk, -CURB_MM),
        StripKind::Planting | StripKind::Median => (Ink::Planted, -CURB_MM),
        StripKind::Swale => (Ink::Planted, 0),
        StripKind::Parking => (Ink::Parking, 0),
        StripKind::Bicycle => (Ink::Bicycle, 0),
        StripKind::Travel => (Ink::Paved, 0),
    }
}
