//! The things of a drawing as the file spells them, and as lines.

use std::borrow::Cow;
use std::f64::consts::{PI, TAU};

use super::fitted::Fitted;
use super::spline::Spline;
use super::words;
use crate::base::Position;
use crate::fault::{What, shortened};
use crate::output::LONGEST_TAG;

/// A thing, by the pairs the file has for it.
#[derive(Default)]
pub struct Entity {
    /// The file's word for it.
    pub kind: String,
    /// Its layer.
    pub layer: String,
    /// The line it begins at.
    pub line: u64,
    /// Whether it lies on the paper and not in the drawing.
    pub is_on_paper: bool,
    name: String,
    first: Position,
    second: Position,
    height: f64,
    radius: f64,
    values: [f64; 4],
    flags: i64,
    rows: i64,
    is_mirrored: bool,
    vertices: Vec<Vertex>,
    spline: Spline,
    fitted: Fitted,
    text: String,
}

/// A vertex of a polyline; the bulge is the tangent of a fourth of the angle to the next.
#[derive(Clone, Copy, Default)]
pub struct Vertex {
    point: Position,
    bulge: f64,
}

/// What is drawn.
pub enum Shape<'a> {
    /// A point.
    Point(Position),
    /// A line.
    Line(Position, Position),
    /// An arc, counter-clockwise, or a circle.
    Arc {
        /// Its center.
        center: Position,
        /// Its radius.
        radius: f64,
        /// From where to where, in radians; nothing for a circle.
        span: Option<[f64; 2]>,
        /// Whether x runs the other way.
        is_mirrored: bool,
    },
    /// An ellipse or part of one.
    Ellipse {
        /// Its center.
        center: Position,
        /// The end of the longer axis from there.
        axis: Position,
        /// Shorter by longer axis.
        ratio: f64,
        /// From where to where, in radians.
        span: [f64; 2],
        /// Whether it is seen from below.
        is_mirrored: bool,
    },
    /// A polyline.
    Polyline {
        /// Its vertices.
        vertices: &'a [Vertex],
        /// Whether it closes.
        is_closed: bool,
        /// Whether x runs the other way.
        is_mirrored: bool,
    },
    /// A spline.
    Spline {
        /// The curve.
        curve: Cow<'a, Spline>,
        /// Whether it closes.
        is_closed: bool,
        /// Whether the file gives points alone, and the curve is this reader's.
        is_fitted: bool,
    },
    /// An inserted block.
    Insert(Insert),
    /// What is not to be seen.
    Hidden,
    /// What is not read.
    Unknown,
}

/// A block's insertion.
pub struct Insert {
    /// The block's name.
    pub block: String,
    at: Position,
    scale: Position,
    turned_rad: f64,
    counts: [i64; 2],
    steps: Position,
    is_mirrored: bool,
}

/// A finite number of reasonable size.
pub fn number(text: &str) -> Result<f64, What> {
    let number = text.parse::<f64>().ok().filter(|number| number.abs() < 1e15);
    number.ok_or_else(|| What::NotANumber {
        value: shortened(text, 40),
    })
}

fn whole(text: &str) -> Result<i64, What> {
    number(text).map(|number| number as i64)
}

impl Entity {
    /// One without pairs yet.
    pub fn new(kind: &str, line: u64) -> Self {
        Self {
            kind: kind.to_owned(),
            layer: "0".to_owned(),
            line,
            values: if kind == "INSERT" {
                [1.0, 1.0, 0.0, 0.0]
            } else {
                [0.0; 4]
            },
            rows: 1,
            ..Self::default()
        }
    }

    /// Takes a pair. The same code means different things for different kinds.
    pub fn take(&mut self, code: i32, value: String) -> Result<(), What> {
        let is_polyline = self.kind == "LWPOLYLINE";
        if self.kind == "SPLINE" && self.take_of_spline(code, &value)? {
            return Ok(());
        }
        match code {
            1 | 3 => self.text.push_str(&value),
            2 => self.name = value,
            8 => self.layer = value,
            67 => self.is_on_paper = whole(&value)? != 0,
            10 if is_polyline => {
                let point = [number(&value)?, 0.0];
                self.vertices.push(Vertex { point, bulge: 0.0 });
            }
            20 if is_polyline => {
                let number = number(&value)?;
                if let Some(vertex) = self.vertices.last_mut() {
                    vertex.point[1] = number;
                }
            }
            42 if is_polyline => {
                let number = number(&value)?;
                if let Some(vertex) = self.vertices.last_mut() {
                    vertex.bulge = number;
                }
            }
            10 => self.first[0] = number(&value)?,
            20 => self.first[1] = number(&value)?,
            11 => self.second[0] = number(&value)?,
            21 => self.second[1] = number(&value)?,
            30 if !is_polyline => self.height = number(&value)?,
            38 => self.height = number(&value)?,
            40 => self.radius = number(&value)?,
            41 => self.values[0] = number(&value)?,
            42 => self.values[1] = number(&value)?,
            44 => self.values[2] = number(&value)?,
            45 => self.values[3] = number(&value)?,
            50 => self.second[0] = number(&value)?,
            51 => self.second[1] = number(&value)?,
            70 => self.flags = whole(&value)?,
            71 => self.rows = whole(&value)?,
            230 => self.is_mirrored = number(&value)? < 0.0,
            _ => {}
        }
        Ok(())
    }

    /// Takes a pair that means something of its own for a spline; whether it was one.
    fn take_of_spline(&mut self, code: i32, value: &str) -> Result<bool, What> {
        let (spline, fitted) = (&mut self.spline, &mut self.fitted);
        match code {
            10 => spline.points.push([number(value)?, 0.0]),
            20 => {
                let number = number(value)?;
                if let Some(point) = spline.points.last_mut() {
                    point[1] = number;
                }
            }
            11 => fitted.points.push([number(value)?, 0.0]),
            21 => {
                let number = number(value)?;
                if let Some(point) = fitted.points.last_mut() {
                    point[1] = number;
                }
            }
            12 => fitted.tangents[0][0] = number(value)?,
            22 => fitted.tangents[0][1] = number(value)?,
            13 => fitted.tangents[1][0] = number(value)?,
            23 => fitted.tangents[1][1] = number(value)?,
            40 => spline.knots.push(number(value)?),
            41 => spline.weights.push(number(value)?),
            71 => spline.degree = whole(value)?,
            _ => return Ok(false),
        }
        Ok(true)
    }

    /// What it says, where it is a text; what is longer than a tag ends with dots.
    pub fn words(&self) -> Option<String> {
        const DOTS: &str = "…";
        let mut words = match self.kind.as_str() {
            "TEXT" | "ATTRIB" => words::of_line(&self.text),
            "MTEXT" => words::of_lines(&self.text),
            _ => return None,
        };
        if words.len() > LONGEST_TAG {
            words = shortened(&words, LONGEST_TAG - DOTS.len()) + DOTS;
        }
        Some(words)
    }

    /// Adds a vertex of the old kind of polyline: points of a frame that a curve was fitted to are none.
    pub fn take_vertex(&mut self, vertex: &Entity) {
        if vertex.flags & 16 == 0 {
            if self.vertices.is_empty() && self.height == 0.0 {
                self.height = vertex.height;
            }
            self.vertices.push(Vertex {
                point: vertex.first,
                bulge: vertex.values[1],
            });
        }
    }

    /// Its height, where it is a polyline at one height that is not 0.
    pub fn elevation(&self) -> Option<f64> {
        let is_line = matches!(self.kind.as_str(), "LWPOLYLINE" | "POLYLINE");
        (is_line && self.height != 0.0).then_some(self.height)
    }

    /// The curve of a spline: that of its control points or, where it has none, one through its points.
    fn curve(&self) -> Shape<'_> {
        let is_closed = self.flags & 1 != 0;
        let is_fitted = self.spline.points.is_empty();
        let curve = if is_fitted {
            self.fitted.curve(is_closed).map(Cow::Owned)
        } else {
            self.spline.is_whole().then_some(Cow::Borrowed(&self.spline))
        };
        curve.map_or(Shape::Unknown, |curve| Shape::Spline {
            curve,
            is_closed,
            is_fitted,
        })
    }

    /// What it draws.
    pub fn shape(&self) -> Shape<'_> {
        let is_mirrored = self.is_mirrored;
        match self.kind.as_str() {
            "POINT" | "MTEXT" => Shape::Point(self.first),
            "TEXT" | "ATTRIB" if self.text.trim().is_empty() => Shape::Hidden,
            "ATTRIB" if self.flags & 1 != 0 => Shape::Hidden,
            "TEXT" | "ATTRIB" => Shape::Point(seen(self.first, is_mirrored)),
            "SPLINE" => self.curve(),
            "LINE" => Shape::Line(self.first, self.second),
            "CIRCLE" | "ARC" => Shape::Arc {
                center: self.first,
                radius: self.radius,
                span: (self.kind == "ARC").then(|| self.second.map(f64::to_radians)),
                is_mirrored,
            },
            "ELLIPSE" => Shape::Ellipse {
                center: self.first,
                axis: self.second,
                ratio: self.radius,
                span: [self.values[0], self.values[1]],
                is_mirrored,
            },
            // Meshes of faces are polylines in name only.
            "POLYLINE" if self.flags & (16 | 64) != 0 => Shape::Unknown,
            "LWPOLYLINE" | "POLYLINE" => Shape::Polyline {
                vertices: &self.vertices,
                is_closed: self.flags & 1 != 0,
                is_mirrored,
            },
            "INSERT" => Shape::Insert(Insert {
                block: self.name.clone(),
                at: self.first,
                scale: [self.values[0], self.values[1]],
                turned_rad: self.second[0].to_radians(),
                counts: [self.flags, self.rows],
                steps: [self.values[2], self.values[3]],
                is_mirrored,
            }),
            _ => Shape::Unknown,
        }
    }
}

/// Most columns or rows of an insertion, and most chords of a bend.
const MOST_COPIES: i64 = 1_000;
const MOST_CHORDS: f64 = 720.0;

impl Insert {
    /// Where its copies go.
    pub fn places(&self) -> impl Iterator<Item = Affine> {
        let [columns, rows] = self.counts.map(|count| count.clamp(1, MOST_COPIES));
        let (sine, cosine) = self.turned_rad.sin_cos();
        let turned = Affine {
            x: [cosine * self.scale[0], -sine * self.scale[1], self.at[0]],
            y: [sine * self.scale[0], cosine * self.scale[1], self.at[1]],
        };
        let seen = if self.is_mirrored {
            Affine::MIRRORED
        } else {
            Affine::NONE
        };
        let steps = self.steps;
        (0..rows * columns).map(move |copy| {
            // Copies stand along the turned axes, unscaled.
            let [right, up] = [(copy % columns) as f64 * steps[0], (copy / columns) as f64 * steps[1]];
            let moved = Affine::moved([cosine * right - sine * up, sine * right + cosine * up]);
            seen.after(&moved.after(&turned))
        })
    }
}

/// A change of the plane that keeps lines lines.
pub struct Affine {
    x: [f64; 3],
    y: [f64; 3],
}

impl Affine {
    /// No change.
    pub const NONE: Self = Self {
        x: [1.0, 0.0, 0.0],
        y: [0.0, 1.0, 0.0],
    };

    /// x the other way round: what is drawn to be seen from below.
    const MIRRORED: Self = Self {
        x: [-1.0, 0.0, 0.0],
        y: [0.0, 1.0, 0.0],
    };

    /// A move.
    pub fn moved([right, up]: Position) -> Self {
        Self {
            x: [1.0, 0.0, right],
            y: [0.0, 1.0, up],
        }
    }

    /// This after another.
    pub fn after(&self, first: &Self) -> Self {
        let row = |row: &[f64; 3]| {
            [
                row[0] * first.x[0] + row[1] * first.y[0],
                row[0] * first.x[1] + row[1] * first.y[1],
                row[0] * first.x[2] + row[1] * first.y[2] + row[2],
            ]
        };
        Self {
            x: row(&self.x),
            y: row(&self.y),
        }
    }

    /// Where a point goes.
    pub fn apply(&self, [x, y]: Position) -> Position {
        let at = |row: &[f64; 3]| row[0] * x + row[1] * y + row[2];
        [at(&self.x), at(&self.y)]
    }

    /// No length grows by more than this.
    pub fn largest_scale(&self) -> f64 {
        let squares: f64 = [self.x[0], self.x[1], self.y[0], self.y[1]]
            .iter()
            .map(|value| value * value)
            .sum();
        squares.sqrt().max(1e-9)
    }
}

/// The points of a shape and whether they enclose an area; `None` where there is nothing to see.
pub fn flatten(shape: &Shape<'_>, sagitta: f64) -> Option<(Vec<Position>, bool)> {
    match shape {
        Shape::Point(point) => Some((vec![*point], false)),
        Shape::Line(from, to) => (from != to).then(|| (vec![*from, *to], false)),
        Shape::Arc {
            center,
            radius,
            span,
            is_mirrored,
        } => {
            let around = |angle: f64| {
                let (sine, cosine) = angle.sin_cos();
                seen([center[0] + radius * cosine, center[1] + radius * sine], *is_mirrored)
            };
            let [from, to] = span.unwrap_or([0.0, TAU]);
            turn(from, to, span.is_none(), chords(*radius, sagitta)?, around)
        }
        Shape::Ellipse {
            center,
            axis,
            ratio,
            span,
            is_mirrored,
        } => {
            let across = if *is_mirrored { -ratio } else { *ratio };
            let around = |angle: f64| {
                let (sine, cosine) = angle.sin_cos();
                [
                    center[0] + axis[0] * cosine - axis[1] * across * sine,
                    center[1] + axis[1] * cosine + axis[0] * across * sine,
                ]
            };
            let longest = axis[0].hypot(axis[1]);
            let is_whole = (span[1] - span[0]).abs() > TAU - 1e-9 || span == &[0.0, 0.0];
            turn(span[0], span[1], is_whole, chords(longest, sagitta)?, around)
        }
        Shape::Polyline {
            vertices,
            is_closed,
            is_mirrored,
        } => {
            let mut points = Vec::new();
            for (index, vertex) in vertices.iter().enumerate() {
                points.push(vertex.point);
                let next = match vertices.get(index + 1) {
                    Some(next) => next,
                    None if *is_closed => vertices.first()?,
                    None => break,
                };
                bend(vertex, next.point, sagitta, &mut points);
            }
            points.dedup();
            let is_area = *is_closed && points.len() > 2;
            let points: Vec<Position> = points.into_iter().map(|point| seen(point, *is_mirrored)).collect();
            (points.len() > 1).then_some((points, is_area))
        }
        Shape::Spline { curve, is_closed, .. } => {
            let mut points = curve.flattened(sagitta)?;
            let is_area = *is_closed && points.len() > 3;
            if is_area && points.first() == points.last() {
                points.pop();
            }
            (points.len() > 1).then_some((points, is_area))
        }
        Shape::Insert(_) | Shape::Hidden | Shape::Unknown => None,
    }
}

fn seen([x, y]: Position, is_mirrored: bool) -> Position {
    [if is_mirrored { -x } else { x }, y]
}

/// The widest angle of a chord, in radians.
fn chords(radius: f64, sagitta: f64) -> Option<f64> {
    (radius > 0.0).then(|| {
        let share = (1.0 - sagitta / radius).clamp(-1.0, 1.0);
        (2.0 * share.acos()).clamp(TAU / MOST_CHORDS, PI / 4.0)
    })
}

/// Points around from one angle to another, counter-clockwise.
fn turn(
    from: f64,
    to: f64,
    is_whole: bool,
    widest: f64,
    around: impl Fn(f64) -> Position,
) -> Option<(Vec<Position>, bool)> {
    let span = if is_whole { TAU } else { (to - from).rem_euclid(TAU) };
    if span.is_nan() || span <= 0.0 {
        return None;
    }
    let count = (span / widest).ceil().max(2.0);
    let at = |index: usize| around(from + span * index as f64 / count);
    let last = count as usize;
    let points = (0..if is_whole { last } else { last + 1 }).map(at).collect();
    Some((points, is_whole))
}

/// The points between a vertex and the next where the file bends the line.
fn bend(vertex: &Vertex, to: Position, sagitta: f64, points: &mut Vec<Position>) {
    let [from, bulge] = [vertex.point, [vertex.bulge; 2]];
    let bulge = bulge[0];
    let [right, up] = [to[0] - from[0], to[1] - from[1]];
    let chord = right.hypot(up);
    if bulge == 0.0 || chord == 0.0 {
        return;
    }
    // The angle is four times the arc tangent of the bulge, above 0 to the left.
    let angle = 4.0 * bulge.atan();
    let radius = chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
    let Some(widest) = chords(radius, sagitta) else { return };
    // From the chord's middle to the center, along the chord's left.
    let off = (1.0 - bulge * bulge) / (4.0 * bulge);
    let center = [
        (from[0] + to[0]) / 2.0 - up * off,
        (from[1] + to[1]) / 2.0 + right * off,
    ];
    let start = (from[1] - center[1]).atan2(from[0] - center[0]);
    let count = (angle.abs() / widest).ceil().max(2.0);
    for index in 1..count as usize {
        let (sine, cosine) = (start + angle * index as f64 / count).sin_cos();
        points.push([center[0] + radius * cosine, center[1] + radius * sine]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bulge_of_one_is_half_a_circle_to_the_right_of_its_way() {
        let bulge = 1.0;
        let vertex = Vertex {
            point: [0.0, 0.0],
            bulge,
        };
        let mut points = Vec::new();
        bend(&vertex, [2.0, 0.0], 0.001, &mut points);
        // Counter-clockwise from (0, 0) to (2, 0) about (1, 0): below the chord.
        for [x, y] in &points {
            assert!(((x - 1.0).hypot(*y) - 1.0).abs() < 1e-12 && *y < 0.0);
        }
        assert!(points.len() > 20);
    }

    #[test]
    fn insertions_turn_scale_and_repeat() {
        let insert = Insert {
            block: String::new(),
            at: [10.0, 0.0],
            scale: [2.0, 2.0],
            turned_rad: PI / 2.0,
            counts: [2, 1],
            steps: [5.0, 0.0],
            is_mirrored: false,
        };
        let at: Vec<Position> = insert.places().map(|place| place.apply([1.0, 0.0])).collect();
        for (found, wanted) in at.iter().zip([[10.0, 2.0], [10.0, 7.0]]) {
            assert!(
                (found[0] - wanted[0]).abs() < 1e-12 && (found[1] - wanted[1]).abs() < 1e-12,
                "{found:?}"
            );
        }
        assert_eq!(at.len(), 2);
    }
}
