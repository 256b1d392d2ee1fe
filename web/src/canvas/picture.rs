//! What is to be drawn, as plain data: shapes, words and signs in drawing order. The browser paints it; tests read it.
//!
//! A [`Layer`] in plan meters is made once per change of the plan and painted under any camera: moving the view makes
//! nothing anew. Widths are in plan meters where a thing has a true width and in pixels where it is a drawn line.

use std::sync::Arc;

/// A color with its opacity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Color {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
    /// 0 clear to 1 solid.
    pub opacity: f32,
}

impl Color {
    /// The solid color `0xRRGGBB`.
    #[must_use]
    pub const fn solid(rgb: u32) -> Self {
        Self {
            red: (rgb >> 16) as u8,
            green: (rgb >> 8) as u8,
            blue: rgb as u8,
            opacity: 1.0,
        }
    }

    /// The same color at another opacity.
    #[must_use]
    pub const fn at(self, opacity: f32) -> Self {
        Self { opacity, ..self }
    }

    /// As a style sheet writes it.
    #[must_use]
    pub fn css(self) -> String {
        // In whole thousandths, which weigh less on the page than a float put into words.
        let thousandths = (self.opacity * 1000.0).round() as u32;
        let (whole, rest) = (thousandths / 1000, thousandths % 1000);
        format!("rgba({},{},{},{whole}.{rest:03})", self.red, self.green, self.blue)
    }
}

/// Polylines, rings and circles, filled or stroked together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Path {
    points: Vec<(f64, f64)>,
    runs: Vec<Run>,
    circles: Vec<Circle>,
}

/// One polyline or ring of a [`Path`]: the next so many points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Run {
    count: usize,
    is_closed: bool,
}

/// Some consecutive polylines and rings, or circles, of a [`Path`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece<'a> {
    points: &'a [(f64, f64)],
    runs: &'a [Run],
    /// Its circles.
    pub circles: &'a [Circle],
}

/// A circle of a [`Path`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Circle {
    /// Its middle.
    pub middle: (f64, f64),
    /// Its radius, in the unit of the path.
    pub radius: f64,
}

impl Path {
    /// Adds a polyline.
    pub fn line(&mut self, points: impl IntoIterator<Item = (f64, f64)>) {
        self.run(points, false);
    }

    /// Adds a ring, which closes itself.
    pub fn ring(&mut self, points: impl IntoIterator<Item = (f64, f64)>) {
        self.run(points, true);
    }

    /// Adds a circle.
    pub fn circle(&mut self, middle: (f64, f64), radius: f64) {
        self.circles.push(Circle { middle, radius });
    }

    /// Whether there is nothing to draw.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.runs.is_empty() && self.circles.is_empty()
    }

    /// Its polylines and rings: points, and whether the last joins the first.
    pub fn runs(&self) -> impl Iterator<Item = (&[(f64, f64)], bool)> {
        self.pieces().into_iter().flat_map(Piece::runs)
    }

    /// Its circles.
    #[must_use]
    pub fn circles(&self) -> &[Circle] {
        &self.circles
    }

    /// All of it, a few polylines, rings or circles at a time: where one of many changes, the other pieces stay as they
    /// are. Cost: linear in the number of pieces and runs.
    #[must_use]
    pub fn pieces(&self) -> Vec<Piece<'_>> {
        const RUNS: usize = 16;
        const CIRCLES: usize = 32;
        let mut rest = self.points.as_slice();
        let runs = self.runs.chunks(RUNS).map(|runs| {
            let count: usize = runs.iter().map(|run| run.count).sum();
            // A path holds the points of all its runs.
            let (points, after) = rest.split_at(count);
            rest = after;
            Piece {
                points,
                runs,
                circles: &[],
            }
        });
        let circles = self.circles.chunks(CIRCLES).map(|circles| Piece {
            points: &[],
            runs: &[],
            circles,
        });
        runs.chain(circles).collect()
    }

    fn run(&mut self, points: impl IntoIterator<Item = (f64, f64)>, is_closed: bool) {
        let start = self.points.len();
        self.points.extend(points);
        let count = self.points.len() - start;
        if count >= 2 {
            self.runs.push(Run { count, is_closed });
        } else {
            self.points.truncate(start);
        }
    }
}

impl<'a> Piece<'a> {
    /// Its polylines and rings: points, and whether the last joins the first.
    pub fn runs(self) -> impl Iterator<Item = (&'a [(f64, f64)], bool)> {
        let mut rest = self.points;
        self.runs.iter().map(move |run| {
            // A piece holds the points of all its runs.
            let (points, after) = rest.split_at(run.count);
            rest = after;
            (points, run.is_closed)
        })
    }
}

/// The width of a stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Width {
    /// A true width on the plan, in meters.
    Meters(f64),
    /// A drawn line, in pixels.
    Pixels(f64),
    /// A true width with a drawn line on either side: meters, and pixels of each line.
    Edged(f64, f64),
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Its color.
    pub color: Color,
    /// Its width.
    pub width: Width,
    /// Dashes and gaps in pixels; empty for a full line.
    pub dash_px: &'static [f64],
    /// Whether its ends are round rather than cut square.
    pub has_round_ends: bool,
}

/// A repeated mark laid over a fill, so that land is told apart without color. Spaced in pixels, fixed to the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Texture {
    /// Thin lines rising to the right.
    Diagonal,
    /// Thin lines both ways.
    Crossed,
    /// Thin upright lines.
    Upright,
    /// Dots.
    Dots,
    /// Short strokes, like grass.
    Grass,
    /// Broad bands rising to the right, for a second use on the same land.
    Bands,
    /// Waves, for water.
    Waves,
}

/// How an area is filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fill {
    /// A plain tint.
    Flat(Color),
    /// A texture in one color on clear ground.
    Textured(Texture, Color),
}

/// A path with its fill and stroke.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// What is drawn; shapes that share it are handed to the browser once.
    pub path: Arc<Path>,
    /// Drawn only inside this.
    pub clip: Option<Arc<Path>>,
    /// Filled by parity, so that rings inside rings are holes.
    pub fill: Option<Fill>,
    /// Stroked after the fill.
    pub stroke: Option<Stroke>,
    /// Drawn from this scale on, in pixels per meter.
    pub from_px_per_m: f64,
}

/// Words on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    /// Their middle.
    pub at: (f64, f64),
    /// Pixels they are shifted right and down from there.
    pub shift_px: (f64, f64),
    /// What they say.
    pub text: String,
    /// Height of the type, in pixels.
    pub size_px: f64,
    /// Whether they are bold.
    pub is_bold: bool,
    /// Their color.
    pub color: Color,
    /// The color drawn around them so that they stay legible.
    pub halo: Color,
    /// Angle against the horizontal, counterclockwise, in radians.
    pub angle_rad: f64,
    /// Where they hang.
    pub align: Align,
    /// Drawn from this scale on, in pixels per meter.
    pub from_px_per_m: f64,
}

/// Where words hang on their place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Centered on it.
    Middle,
    /// To its right.
    Right,
}

/// A sign of fixed size on screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sign {
    /// Where it stands.
    pub at: (f64, f64),
    /// Pixels it is shifted right and down from there.
    pub shift_px: (f64, f64),
    /// Its form.
    pub form: Form,
    /// Half its size, in pixels.
    pub radius_px: f64,
    /// Its inside.
    pub fill: Color,
    /// Its line.
    pub line: Color,
    /// Width of its line, in pixels.
    pub line_px: f64,
}

/// Forms of signs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A disk.
    Round,
    /// A square.
    Square,
    /// A square on its corner.
    Diamond,
    /// A triangle, point up.
    Triangle,
    /// An upright cross of two lines.
    Cross,
    /// A level line.
    Dash,
    /// A star of five points.
    Star,
}

/// Corners of a star of five points, one of them up, with y downward; from its middle to a point is 1, to a notch 0.45.
pub const STAR: [(f64, f64); 10] = [
    (0.0, -1.0),
    (0.265, -0.364),
    (0.951, -0.309),
    (0.428, 0.139),
    (0.588, 0.809),
    (0.0, 0.45),
    (-0.588, 0.809),
    (-0.428, 0.139),
    (-0.951, -0.309),
    (-0.265, -0.364),
];

/// One thing to draw.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A path.
    Shape(Shape),
    /// Words.
    Words(Words),
    /// A sign.
    Sign(Sign),
}

/// Things to draw, in order, made together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layer {
    /// The things, the first undermost.
    pub items: Vec<Item>,
}

impl Layer {
    /// Adds a filled path.
    pub fn fill(&mut self, path: impl Into<Arc<Path>>, fill: Fill) {
        let path = path.into();
        if !path.is_empty() {
            self.items.push(Item::Shape(Shape {
                path,
                clip: None,
                fill: Some(fill),
                stroke: None,
                from_px_per_m: 0.0,
            }));
        }
    }

    /// Adds a stroked path, drawn from a scale on.
    pub fn stroke(&mut self, path: impl Into<Arc<Path>>, stroke: Stroke, from_px_per_m: f64) {
        let path = path.into();
        if !path.is_empty() {
            self.items.push(Item::Shape(Shape {
                path,
                clip: None,
                fill: None,
                stroke: Some(stroke),
                from_px_per_m,
            }));
        }
    }
}

impl Stroke {
    /// A drawn line of so many pixels.
    #[must_use]
    pub const fn drawn(color: Color, width_px: f64) -> Self {
        Self {
            color,
            width: Width::Pixels(width_px),
            dash_px: &[],
            has_round_ends: true,
        }
    }

    /// A band of a true width, its ends cut square.
    #[must_use]
    pub const fn band(color: Color, width_m: f64) -> Self {
        Self {
            color,
            width: Width::Meters(width_m),
            dash_px: &[],
            has_round_ends: false,
        }
    }

    /// The same line in dashes.
    #[must_use]
    pub const fn dashed(self, dash_px: &'static [f64]) -> Self {
        Self { dash_px, ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_gives_back_its_runs() {
        let mut path = Path::default();
        path.line([(0.0, 0.0), (1.0, 0.0), (1.0, 1.0)]);
        path.line([(5.0, 5.0)]);
        path.ring([(2.0, 2.0), (3.0, 2.0), (3.0, 3.0)]);
        let runs: Vec<_> = path
            .runs()
            .map(|(points, is_closed)| (points.len(), is_closed))
            .collect();
        assert_eq!(runs, vec![(3, false), (3, true)], "a single point is not a run");
    }

    #[test]
    fn a_change_of_one_run_leaves_the_other_pieces_as_they_are() {
        let path = |moved: f64| {
            let mut path = Path::default();
            for at in 0..40 {
                let x = f64::from(at);
                let y = if at == 20 { moved } else { 0.0 };
                path.ring([(x, y), (x + 1.0, 0.0), (x, 1.0)]);
                path.circle((x, y), 2.0);
            }
            path
        };
        let (one, other) = (path(0.0), path(0.5));
        let differ: Vec<_> = one.pieces().iter().zip(other.pieces()).map(|(a, b)| *a != b).collect();
        assert_eq!(
            differ,
            [false, true, false, true, false],
            "40 rings in three pieces, 40 circles in two"
        );
        let total: usize = one.pieces().iter().map(|piece| piece.runs().count()).sum();
        assert_eq!((total, one.runs().count()), (40, 40));
    }

    #[test]
    fn colors_are_written_for_a_style_sheet() {
        assert_eq!(Color::solid(0xA0_20_F0).at(0.5).css(), "rgba(160,32,240,0.500)");
    }
}
