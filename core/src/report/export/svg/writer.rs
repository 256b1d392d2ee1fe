//! The few elements that a drawing needs, as text.

use crate::report::export::sheet::{Hatch, Item, Look, Turn, Words};

/// How meters of the plan lie on the paper.
#[derive(Clone, Copy)]
pub(super) struct Frame {
    /// The north-west corner of the drawing.
    pub origin_m: (f64, f64),
    /// Scale.
    pub mm_per_m: f64,
    /// Paper left of it and above.
    pub margin_mm: f64,
}

impl Frame {
    fn on_paper(&self, (x_m, y_m): (f64, f64)) -> (f64, f64) {
        (
            (x_m - self.origin_m.0) * self.mm_per_m + self.margin_mm,
            (self.origin_m.1 - y_m) * self.mm_per_m + self.margin_mm,
        )
    }
}

/// Where words stand about their place.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// A drawing as it is written.
pub(super) struct Writer {
    frame: Frame,
    text: String,
    /// Hatchings that are used.
    hatches: Vec<(Hatch, u32)>,
}

/// Type that is set: the page's own where it is there, else what looks like it.
const TYPEFACES: &str = "'Atkinson Hyperlegible Next','Atkinson Hyperlegible',Verdana,Arial,sans-serif";

impl Writer {
    pub const fn new(frame: Frame) -> Self {
        Self {
            frame,
            text: String::new(),
            hatches: Vec::new(),
        }
    }

    /// Begins what is seen through a window of a size in millimeters, as far from the paper's edges as given.
    pub fn open_frame(&mut self, (width_mm, height_mm): (f64, f64), margin_mm: f64) {
        self.text.push_str("<clipPath id=\"frame\"><rect");
        for (name, value) in [
            ("x", margin_mm),
            ("y", margin_mm),
            ("width", width_mm),
            ("height", height_mm),
        ] {
            self.attribute(name, value);
        }
        self.text.push_str("/></clipPath>\n<g clip-path=\"url(#frame)\">\n");
    }

    /// Begins a layer.
    pub fn open_layer(&mut self, id: &str, title: &str) {
        self.text
            .extend(["<g id=\"", id, "\"><title>", &escaped(title), "</title>\n"]);
    }

    /// Begins things that look alike.
    pub fn open_look(&mut self, look: &Look) {
        self.text.push_str("<g");
        self.paint("fill", look.fill.map(|(color, _)| color));
        if let Some((_, opacity)) = look.fill.filter(|(_, opacity)| *opacity < 1.0) {
            self.attribute("fill-opacity", opacity);
        }
        self.paint("stroke", look.stroke.map(|(color, _)| color));
        if let Some((_, width_mm)) = look.stroke {
            self.attribute("stroke-width", width_mm);
        }
        if !look.dash_mm.is_empty() {
            self.text.extend([" stroke-dasharray=\"", look.dash_mm, "\""]);
        }
        self.text
            .push_str(" fill-rule=\"evenodd\" stroke-linejoin=\"round\">\n");
    }

    /// Begins things that are hatched.
    pub fn open_hatch(&mut self, hatch: Hatch, color: u32) {
        if !self.hatches.contains(&(hatch, color)) {
            self.hatches.push((hatch, color));
        }
        self.text.extend([
            "<g fill=\"url(#",
            &hatch_id(hatch, color),
            ")\" fill-rule=\"evenodd\">\n",
        ]);
    }

    /// Ends what was begun last.
    pub fn close(&mut self, element: &str) {
        self.text.extend(["</", element, ">\n"]);
    }

    /// Something of the plan.
    pub fn item(&mut self, item: &Item) {
        match item {
            Item::Rings(rings) => {
                self.text.push_str("<path d=\"");
                for ring in rings {
                    self.points(ring);
                    self.text.push('Z');
                }
                self.text.push_str("\"/>\n");
            }
            Item::Line(line) => {
                self.text.push_str("<path fill=\"none\" d=\"");
                self.points(line);
                self.text.push_str("\"/>\n");
            }
            Item::Contour((line, is_closed), _) => {
                self.text.push_str("<path d=\"");
                self.points(line);
                self.text.push_str(if *is_closed { "Z\"/>\n" } else { "\"/>\n" });
            }
            Item::Arcs(turns) => {
                self.text.push_str("<path fill=\"none\" d=\"");
                self.arcs(turns);
                self.text.push_str("\"/>\n");
            }
            Item::Band(line, width_m) => {
                for edge in super::edges_of_band(line, *width_m).iter().enumerate() {
                    let (place, points) = edge;
                    if place == 0 {
                        self.text.push_str("<path d=\"");
                        self.points(points);
                    } else {
                        self.text.push('L');
                        points.iter().rev().for_each(|at| self.point(*at));
                        self.text.push_str("Z\"/>\n");
                    }
                }
            }
            Item::Circle(at, radius_m) => {
                let (x, y) = self.frame.on_paper(*at);
                self.text.push_str("<circle");
                self.attribute("cx", x);
                self.attribute("cy", y);
                self.attribute("r", radius_m * self.frame.mm_per_m);
                self.text.push_str("/>\n");
            }
            Item::Words(words) => {
                let at = self.frame.on_paper(words.at);
                self.words(at, words, Anchor::Middle, true);
            }
        }
    }

    /// Words on the paper, the middle of their height at a place in millimeters; with the color of the paper around them
    /// where they lie on the drawing.
    pub fn words(&mut self, (x, y): (f64, f64), words: &Words, anchor: Anchor, has_halo: bool) {
        // Around the letters first, then the letters: not every program knows how to paint the line below the fill.
        for is_halo in [true, false].into_iter().filter(|is_halo| has_halo || !is_halo) {
            self.text.push_str("<text");
            self.attribute("x", x);
            self.attribute("y", y + words.size_mm * 0.36);
            self.attribute("font-size", words.size_mm);
            self.text.extend([" font-family=\"", TYPEFACES, "\""]);
            if words.is_bold {
                self.text.push_str(" font-weight=\"bold\"");
            }
            self.text.push_str(match anchor {
                Anchor::Start => "",
                Anchor::Middle => " text-anchor=\"middle\"",
                Anchor::End => " text-anchor=\"end\"",
            });
            if words.angle_rad != 0.0 {
                self.text.push_str(" transform=\"rotate(");
                number(-words.angle_rad.to_degrees(), &mut self.text);
                for part in [x, y] {
                    self.text.push(' ');
                    number(part, &mut self.text);
                }
                self.text.push_str(")\"");
            }
            self.text.push_str(if is_halo { "" } else { " stroke=\"none\"" });
            self.text.extend([">", &escaped(&words.text), "</text>\n"]);
        }
    }

    /// A path on the paper, in millimeters.
    pub fn path(&mut self, data: &str) {
        self.text.extend(["<path d=\"", data, "\"/>\n"]);
    }

    /// The whole picture, of a size in millimeters.
    pub fn done(self, (width_mm, height_mm): (f64, f64)) -> String {
        let mut text =
            String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"");
        for (name, size_mm) in [(" width=\"", width_mm), (" height=\"", height_mm)] {
            text.push_str(name);
            number(size_mm, &mut text);
            text.push_str("mm\"");
        }
        text.push_str(" viewBox=\"0 0 ");
        number(width_mm, &mut text);
        text.push(' ');
        number(height_mm, &mut text);
        text.push_str("\">\n<defs>\n");
        for (hatch, color) in &self.hatches {
            add_hatch(*hatch, *color, &mut text);
        }
        text.extend(["</defs>\n", &self.text, "</svg>\n"]);
        text
    }

    fn paint(&mut self, name: &str, color: Option<u32>) {
        self.text.extend([" ", name, "=\""]);
        match color {
            Some(color) => self.text.push_str(&hex(color)),
            None => self.text.push_str("none"),
        }
        self.text.push('"');
    }

    fn attribute(&mut self, name: &str, value: f64) {
        self.text.extend([" ", name, "=\""]);
        number(value, &mut self.text);
        self.text.push('"');
    }

    fn points(&mut self, line: &[(f64, f64)]) {
        self.text.push('M');
        line.iter().for_each(|at| self.point(*at));
    }

    /// A place, parted from the one before.
    fn point(&mut self, at: (f64, f64)) {
        let (x, y) = self.frame.on_paper(at);
        self.text.push(' ');
        number(x, &mut self.text);
        self.text.push(' ');
        number(y, &mut self.text);
    }

    fn arcs(&mut self, turns: &[Turn]) {
        let mut before: Option<Turn> = None;
        for turn in turns {
            match before {
                None => self.text.push('M'),
                Some(from) if from.2 != 0.0 => {
                    let radius_mm = super::radius(from, *turn) * self.frame.mm_per_m;
                    self.text.push('A');
                    for _ in 0..2 {
                        self.text.push(' ');
                        number(radius_mm, &mut self.text);
                    }
                    self.text.push_str(if from.2 > 0.0 { " 0 0 0" } else { " 0 0 1" });
                }
                Some(_) => self.text.push('L'),
            }
            self.point((turn.0, turn.1));
            before = Some(*turn);
        }
    }
}

/// A number of millimeters to the micrometer, without idle zeros.
pub(super) fn number(value: f64, text: &mut String) {
    let thousandths = (value * 1e3).round();
    text.push_str(&(thousandths / 1e3).to_string());
}

fn hex(color: u32) -> String {
    format!("#{color:06x}")
}

fn hatch_id(hatch: Hatch, color: u32) -> String {
    format!("hatch-{}-{color:06x}", hatch as u8)
}

/// A hatching as a tile: its size, its lines, and how wide they are, in millimeters.
fn add_hatch(hatch: Hatch, color: u32, text: &mut String) {
    let (size, lines, width, opacity) = match hatch {
        Hatch::Diagonal => ("2", "M-.5 .5L.5 -.5M0 2L2 0M1.5 2.5L2.5 1.5", ".2", ".6"),
        Hatch::Crossed => (
            "2",
            "M-.5 .5L.5 -.5M0 2L2 0M1.5 2.5L2.5 1.5M-.5 1.5L.5 2.5M0 0L2 2M1.5 -.5L2.5 .5",
            ".18",
            ".6",
        ),
        Hatch::Upright => ("1.6", "M.8 0V1.6", ".18", ".6"),
        Hatch::Dots => ("2", "M.5 .5h.01M1.5 1.5h.01", ".4", ".6"),
        Hatch::Grass => ("2.8", "M.5 1V.4M.9 1.1V.5M1.8 2.3V1.7M2.2 2.4V1.8", ".16", ".6"),
        Hatch::Bands => ("4.4", "M-1.1 1.1L1.1 -1.1M0 4.4L4.4 0M3.3 5.5L5.5 3.3", "1.3", ".55"),
        Hatch::Waves => ("3.2", "M0 .8q.8 -.7 1.6 0t1.6 0M0 2.4q.8 -.7 1.6 0t1.6 0", ".18", ".6"),
    };
    let id = hatch_id(hatch, color);
    text.extend([
        "<pattern id=\"",
        &id,
        "\" width=\"",
        size,
        "\" height=\"",
        size,
        "\" patternUnits=\"userSpaceOnUse\"><path d=\"",
        lines,
        "\" fill=\"none\" stroke=\"",
        &hex(color),
        "\" stroke-opacity=\"",
        opacity,
        "\" stroke-linecap=\"round\" stroke-width=\"",
        width,
        "\"/></pattern>\n",
    ]);
}

/// Text as XML has it; what XML can not hold is left out.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '\t' | '\n' | '\r' => escaped.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            other => escaped.push(other),
        }
    }
    escaped
}
