//! Paints layers on a canvas. What changed of a path crosses into the browser at most once per change of the plan, when
//! it is first seen; a frame under a moved camera only names paths again.

use hobnail_core::order::OrderedMap;
use hobnail_core::say;
use std::rc::Rc;

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CanvasRenderingContext2d, CanvasWindingRule, HtmlCanvasElement, Path2d};

use super::paths::Held;
use super::pictures::Straight;
use super::still::Still;
use super::textures::Textures;
use crate::canvas::picture::{Color, Fill, Form, Item, Layer, STAR, Sign, Stroke, Width, Words};
use crate::canvas::room::{LEADING, Room, Side};

const TYPEFACE: &str = "\"Atkinson Hyperlegible Next\", system-ui, sans-serif";

/// How layers lie on the screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Screen pixels from the unit of the layer, as a canvas takes it.
    pub matrix: [f64; 6],
    /// Screen pixels per unit of the layer.
    pub px_per_unit: f64,
}

impl View {
    /// Layers given in screen pixels, so many times as large.
    #[must_use]
    pub const fn of_screen(scale: f64) -> Self {
        Self {
            matrix: [scale, 0.0, 0.0, scale, 0.0, 0.0],
            px_per_unit: scale,
        }
    }
}

/// A layer whose paths the browser holds, each from the first time it is painted on.
pub struct Prepared {
    items: Vec<PreparedItem>,
}

enum PreparedItem {
    Shape {
        path: Rc<Held>,
        clip: Option<Rc<Held>>,
        fill: Option<Fill>,
        stroke: Option<Stroke>,
        from_px_per_m: f64,
    },
    Words(Words),
    Sign(Sign),
}

impl Prepared {
    /// Makes a layer ready to be painted.
    #[must_use]
    pub fn of(layer: Layer) -> Self {
        Self::instead_of(None, layer)
    }

    /// Makes a layer ready to be painted in the place of another, of which it keeps what is the same.
    #[must_use]
    pub fn instead_of(before: Option<&Self>, layer: Layer) -> Self {
        let (mut last_path, mut last_clip) = (None, None);
        let before = |place: usize| match before.and_then(|before| before.items.get(place)) {
            Some(PreparedItem::Shape { path, clip, .. }) => (Some(path), clip.as_ref()),
            _ => (None, None),
        };
        let items = layer.items.into_iter().enumerate().map(|(place, item)| match item {
            Item::Shape(shape) => {
                let (path, clip) = before(place);
                PreparedItem::Shape {
                    path: Held::of(shape.path, &mut last_path, path),
                    clip: shape.clip.map(|new| Held::of(new, &mut last_clip, clip)),
                    fill: shape.fill,
                    stroke: shape.stroke,
                    from_px_per_m: shape.from_px_per_m,
                }
            }
            Item::Words(words) => PreparedItem::Words(words),
            Item::Sign(sign) => PreparedItem::Sign(sign),
        });
        Self { items: items.collect() }
    }
}

/// A canvas and what is needed to paint on it.
pub struct Painter {
    pub(super) canvas: HtmlCanvasElement,
    /// What is painted on: the canvas, or what is aside.
    pub(super) context: CanvasRenderingContext2d,
    /// That of the canvas.
    pub(super) shown: CanvasRenderingContext2d,
    /// The plan as it was painted aside, while that is how it is.
    pub still: Option<Still>,
    textures: Textures,
    pub(super) ratio: f64,
    /// How many times as large drawn lines, words and signs are as they say.
    scale: f64,
    pub(super) size_px: (f64, f64),
    /// Left and right of what is seen between the panels: from the left, from there on.
    seen_px: (f64, f64),
    /// Left and bottom of a card in the upper right corner that covers words too.
    card_px: (f64, f64),
    /// Top and bottom of the panel on the left.
    rail_px: (f64, f64),
    /// Width, height and density last fitted to, to tell whether they changed.
    fitted: Option<[u64; 3]>,
    css_colors: OrderedMap<[u32; 4], String>,
}

impl Painter {
    /// A painter for the canvas with this id.
    ///
    /// # Errors
    /// A sentence, when there is no such canvas or the browser can not draw on it.
    pub fn on(id: &str) -> Result<Self, String> {
        let document = super::document::document().ok_or_else(|| say!("page-no-page-to-draw").to_owned())?;
        let canvas: HtmlCanvasElement = document
            .get_element_by_id(id)
            .and_then(|element| element.dyn_into().ok())
            .ok_or_else(|| say!("page-no-canvas", canvas = id))?;
        let context = context_of(&canvas)?;
        Ok(Self {
            canvas,
            shown: context.clone(),
            context,
            still: None,
            textures: Textures::default(),
            ratio: 0.0,
            scale: 1.0,
            size_px: (0.0, 0.0),
            seen_px: (f64::NEG_INFINITY, f64::INFINITY),
            card_px: (f64::INFINITY, 0.0),
            rail_px: (0.0, 0.0),
            fitted: None,
            css_colors: OrderedMap::new(),
        })
    }

    /// Takes the canvas's size on screen and the screen's density; returns the size in CSS pixels.
    pub fn fit_to_screen(&mut self) -> (f64, f64) {
        let bounds = self.canvas.get_bounding_client_rect();
        let size_px = (bounds.width().max(1.0), bounds.height().max(1.0));
        let ratio = super::document::device_pixel_ratio();
        let fitted = Some([size_px.0, size_px.1, ratio].map(f64::to_bits));
        if fitted != self.fitted {
            self.fitted = fitted;
            self.size_px = size_px;
            self.ratio = ratio;
            self.canvas.set_width((size_px.0 * ratio).round() as u32);
            self.canvas.set_height((size_px.1 * ratio).round() as u32);
            self.textures = Textures::default();
        }
        size_px
    }

    /// Keeps words between panels: what is seen of the drawing reaches from the first to the second of `seen_px`, and less
    /// far beside a card in the upper right corner, by its left and its bottom; on the left it begins further beyond the top
    /// and the bottom of the panel there.
    pub const fn keep_words_in(&mut self, seen_px: (f64, f64), card_px: (f64, f64), rail_px: (f64, f64)) {
        self.seen_px = seen_px;
        self.card_px = card_px;
        self.rail_px = rail_px;
    }

    /// Draws lines, words, signs and textures so many times as large; what has a true width on the plan keeps it.
    pub fn draw_larger(&mut self, scale: f64) {
        if scale.to_bits() != self.scale.to_bits() {
            self.scale = scale;
            self.textures = Textures::default();
            self.still = None;
        }
    }

    /// Covers everything with one color.
    pub fn clear(&mut self, color: Color) {
        let css = self.css(color);
        self.context.set_transform_to(1.0, [1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);
        self.context.set_fill_style_str(&css);
        // Twice the screen is more than it has with its margins.
        let sides = [self.canvas.width(), self.canvas.height()].map(|px| 2.0 * f64::from(px));
        self.context.fill_rect(0.0, 0.0, sides[0], sides[1]);
    }

    /// Paints the words of a layer that have room, and takes that room.
    pub fn paint_words(&mut self, prepared: &Prepared, view: &View, room: &mut Room) {
        for item in &prepared.items {
            if let PreparedItem::Words(words) = item
                && view.px_per_unit >= words.from_px_per_m
            {
                self.words(words, view, room);
            }
        }
    }

    /// Paints a layer.
    pub fn paint(&mut self, prepared: &Prepared, view: &View) {
        for item in &prepared.items {
            match item {
                PreparedItem::Shape {
                    path,
                    clip,
                    fill,
                    stroke,
                    from_px_per_m,
                } if view.px_per_unit >= *from_px_per_m => {
                    let clip = clip.as_ref().and_then(|clip| clip.made());
                    if let Some(path) = path.made() {
                        self.shape(path, clip, *fill, *stroke, view);
                    }
                }
                PreparedItem::Shape { .. } => {}
                PreparedItem::Words(words) if view.px_per_unit >= words.from_px_per_m => {
                    self.words(words, view, &mut Room::drawn_larger(self.scale));
                }
                PreparedItem::Words(_) => {}
                PreparedItem::Sign(sign) => self.sign(sign, view),
            }
        }
    }

    /// Paints a picture that was laid on the plan.
    pub fn picture(&self, straight: &Straight, opacity: f64, view: &View) {
        let [a, b, c, d, ..] = view.matrix;
        let (x, y) = on_screen(straight.north_west, view);
        let m = straight.m_per_px;
        self.context
            .set_transform_to(self.ratio, [a * m, b * m, -c * m, -d * m, x, y]);
        self.context.set_global_alpha(opacity);
        // A canvas that can not be read can still be drawn.
        let _ = self
            .context
            .draw_image_with_html_canvas_element(&straight.canvas, 0.0, 0.0);
        self.context.set_global_alpha(1.0);
    }

    fn shape(&mut self, path: &Path2d, clip: Option<&Path2d>, fill: Option<Fill>, stroke: Option<Stroke>, view: &View) {
        self.context.set_transform_to(self.ratio, view.matrix);
        if let Some(clip) = clip {
            self.context.save();
            self.context
                .clip_with_path_2d_and_winding(clip, CanvasWindingRule::Evenodd);
        }
        match fill {
            Some(Fill::Flat(color)) => {
                let css = self.css(color);
                self.context.set_fill_style_str(&css);
                self.context
                    .fill_with_path_2d_and_winding(path, CanvasWindingRule::Evenodd);
            }
            Some(Fill::Textured(texture, color)) => {
                let css = self.css(color);
                let density = self.ratio * self.scale;
                if let Some(pattern) = self.textures.get(texture, &css, density, view.px_per_unit * self.ratio) {
                    self.context.set_fill_style_canvas_pattern(&pattern);
                    self.context
                        .fill_with_path_2d_and_winding(path, CanvasWindingRule::Evenodd);
                }
            }
            None => {}
        }
        if let Some(stroke) = stroke {
            let css = self.css(stroke.color);
            let width_px = match stroke.width {
                Width::Pixels(px) => px * self.scale,
                Width::Meters(m) => m * view.px_per_unit,
                Width::Edged(m, px) => m * view.px_per_unit + 2.0 * px * self.scale,
            };
            self.context.set_stroke_style_str(&css);
            line_style(&self.context, width_px / view.px_per_unit, stroke.has_round_ends);
            if stroke.dash_px.is_empty() {
                self.context.stroke_with_path(path);
            } else {
                dash(&self.context, stroke.dash_px, self.scale / view.px_per_unit);
                self.context.stroke_with_path(path);
                dash(&self.context, &[], 1.0);
            }
        }
        if clip.is_some() {
            self.context.restore();
        }
    }

    /// Paints words where there is room for them.
    fn words(&mut self, words: &Words, view: &View, room: &mut Room) {
        const MARGIN_PX: f64 = 200.0;
        let (at_px, seen_px) = self.place_of(words, view);
        let (x, y) = at_px;
        let is_seen =
            x > -MARGIN_PX && y > -MARGIN_PX && x < self.size_px.0 + MARGIN_PX && y < self.size_px.1 + MARGIN_PX;
        if !is_seen {
            return;
        }
        let Some(standing) = room.stand(words, at_px, seen_px) else {
            return;
        };
        let (x, y) = standing.at_px;
        let (color, halo) = (self.css(words.color), self.css(words.halo));
        let context = &self.context;
        let weight = if words.is_bold { 700 } else { 400 };
        let size_px = words.size_px * self.scale;
        context.set_font(&format!("{weight} {size_px}px {TYPEFACE}"));
        context.set_text_baseline("middle");
        context.set_text_align(match standing.side {
            Side::About => "center",
            // Up to their sign, however wide they are.
            Side::Before => "right",
            Side::After => "left",
        });
        let (sin, cos) = (
            hobnail_core::number::sin(words.angle_rad),
            hobnail_core::number::cos(words.angle_rad),
        );
        context.set_transform_to(self.ratio, [cos, -sin, sin, cos, x, y]);
        context.set_stroke_style_str(&halo);
        context.set_fill_style_str(&color);
        line_style(context, 4.0 * self.scale, true);
        let mut down_px = (1.0 - standing.lines.len() as f64) / 2.0 * LEADING * size_px;
        for line in &standing.lines {
            // Text of any kind is accepted.
            let _ = context.stroke_text(line, 0.0, down_px);
            let _ = context.fill_text(line, 0.0, down_px);
            down_px += LEADING * size_px;
        }
    }

    fn sign(&mut self, sign: &Sign, view: &View) {
        let (x, y) = on_screen(sign.at, view);
        let (x, y) = (x + sign.shift_px.0 * self.scale, y + sign.shift_px.1 * self.scale);
        let (fill, line) = (self.css(sign.fill), self.css(sign.line));
        let context = &self.context;
        let (r, line_px) = (sign.radius_px * self.scale, sign.line_px * self.scale);
        context.set_transform_to(self.ratio, [1.0, 0.0, 0.0, 1.0, x, y]);
        context.begin_path();
        match sign.form {
            Form::Round => drop(context.arc(0.0, 0.0, r, 0.0, std::f64::consts::TAU)),
            Form::Square => context.rect(-r, -r, 2.0 * r, 2.0 * r),
            Form::Diamond => corners(
                context,
                &[(0.0, -1.3 * r), (1.3 * r, 0.0), (0.0, 1.3 * r), (-1.3 * r, 0.0)],
            ),
            Form::Triangle => corners(context, &[(0.0, -r), (r, 0.8 * r), (-r, 0.8 * r)]),
            Form::Cross => {
                context.move_to(-r, 0.0);
                context.line_to(r, 0.0);
                context.move_to(0.0, -r);
                context.line_to(0.0, r);
            }
            Form::Dash => {
                context.move_to(-r, 0.0);
                context.line_to(r, 0.0);
            }
            Form::Star => corners(context, &STAR.map(|(x, y)| (x * r, y * r))),
        }
        context.set_stroke_style_str("rgba(250,248,242,0.9)");
        line_style(context, line_px + 3.0 * self.scale, true);
        context.stroke();
        context.set_fill_style_str(&fill);
        context.fill();
        context.set_stroke_style_str(&line);
        line_style(context, line_px, true);
        context.stroke();
    }

    /// Where words hang on screen, and from where to where the drawing is seen there.
    fn place_of(&self, words: &Words, view: &View) -> ((f64, f64), (f64, f64)) {
        let (x, y) = on_screen(words.at, view);
        let (x, y) = (x + words.shift_px.0 * self.scale, y + words.shift_px.1 * self.scale);
        let half_px = words.size_px * self.scale;
        let (mut from_px, mut to_px) = self.seen_px;
        if y - half_px < self.card_px.1 {
            to_px = self.card_px.0;
        }
        if y + half_px < self.rail_px.0 || y - half_px > self.rail_px.1 {
            from_px = 0.0;
        }
        ((x, y), (from_px, to_px))
    }

    fn css(&mut self, color: Color) -> String {
        let key = [
            u32::from(color.red),
            u32::from(color.green),
            u32::from(color.blue),
            color.opacity.to_bits(),
        ];
        self.css_colors.entry(key).or_insert_with(|| color.css()).clone()
    }
}

trait ContextExt {
    fn set_transform_to(&self, ratio: f64, matrix: [f64; 6]);
}

impl ContextExt for CanvasRenderingContext2d {
    /// Sets device pixels from the layer's unit; the origin falls on a whole device pixel, so that textures stay crisp.
    fn set_transform_to(&self, ratio: f64, [a, b, c, d, e, f]: [f64; 6]) {
        let (e, f) = ((e * ratio).round(), (f * ratio).round());
        // Six finite numbers are always accepted.
        let _ = self.set_transform(a * ratio, b * ratio, c * ratio, d * ratio, e, f);
    }
}

fn on_screen((x, y): (f64, f64), view: &View) -> (f64, f64) {
    let [a, b, c, d, e, f] = view.matrix;
    (a * x + c * y + e, b * x + d * y + f)
}

fn corners(context: &CanvasRenderingContext2d, points: &[(f64, f64)]) {
    for (index, (x, y)) in points.iter().enumerate() {
        if index == 0 {
            context.move_to(*x, *y);
        } else {
            context.line_to(*x, *y);
        }
    }
    context.close_path();
}

fn line_style(context: &CanvasRenderingContext2d, width: f64, has_round_ends: bool) {
    context.set_line_width(width);
    context.set_line_cap(if has_round_ends { "round" } else { "butt" });
    context.set_line_join("round");
}

fn dash(context: &CanvasRenderingContext2d, dash_px: &[f64], scale: f64) {
    let lengths: js_sys::Array = dash_px.iter().map(|px| JsValue::from_f64(px * scale)).collect();
    // Lengths that are finite and not negative are always accepted.
    let _ = context.set_line_dash(&lengths);
}

/// The two-dimensional context of a canvas.
///
/// # Errors
/// A sentence, when the browser has none.
pub fn context_of(canvas: &HtmlCanvasElement) -> Result<CanvasRenderingContext2d, String> {
    canvas
        .get_context("2d")
        .ok()
        .flatten()
        .and_then(|context| context.dyn_into().ok())
        .ok_or_else(|| say!("page-no-drawing").to_owned())
}
