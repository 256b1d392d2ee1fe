//! Textures as repeated tiles, drawn once per color and density of the screen.

use hobnail_core::order::OrderedMap;

use wasm_bindgen::JsCast;
use web_sys::{CanvasPattern, CanvasRenderingContext2d, DomMatrix, HtmlCanvasElement};

use super::painter::context_of;
use crate::canvas::picture::Texture;

/// Tiles drawn so far.
#[derive(Default)]
pub struct Textures {
    held: OrderedMap<(Texture, String), CanvasPattern>,
}

impl Textures {
    /// The texture in one color, set so that its grain keeps its size on screen and its place on the plan.
    ///
    /// `device_px_per_unit` is the scale of the transform it is filled under. `None` where the browser has no patterns.
    pub fn get(&mut self, texture: Texture, css: &str, ratio: f64, device_px_per_unit: f64) -> Option<CanvasPattern> {
        let key = (texture, css.to_owned());
        if !self.held.contains_key(&key) {
            self.held.insert(key.clone(), tile(texture, css, ratio)?);
        }
        let pattern = self.held.get(&key)?;
        let matrix = DomMatrix::new().ok()?;
        matrix.set_a(1.0 / device_px_per_unit);
        matrix.set_d(-1.0 / device_px_per_unit);
        // The binding names the older matrix type; browsers take the current one.
        pattern.set_transform(matrix.unchecked_ref());
        Some(pattern.clone())
    }
}

/// One tile of the texture, repeated.
fn tile(texture: Texture, css: &str, ratio: f64) -> Option<CanvasPattern> {
    let size_px = match texture {
        Texture::Diagonal | Texture::Crossed => 8.0,
        Texture::Upright => 7.0,
        Texture::Dots => 12.0,
        Texture::Grass => 18.0,
        Texture::Bands | Texture::Waves => 16.0,
    };
    let size = (size_px * ratio).round();
    let canvas: HtmlCanvasElement = super::document::document()?
        .create_element("canvas")
        .ok()?
        .dyn_into()
        .ok()?;
    canvas.set_width(size as u32);
    canvas.set_height(size as u32);
    let context = context_of(&canvas).ok()?;
    context.set_stroke_style_str(css);
    context.set_fill_style_str(css);
    match texture {
        Texture::Diagonal => rising(&context, size, 0.9 * ratio),
        Texture::Bands => rising(&context, size, 0.36 * size),
        Texture::Crossed => {
            rising(&context, size, 0.9 * ratio);
            falling(&context, size, 0.9 * ratio);
        }
        Texture::Upright => {
            context.fill_rect((size / 2.0).floor(), 0.0, ratio.round().max(1.0), size);
        }
        Texture::Dots => {
            for (x, y) in [(0.25, 0.25), (0.75, 0.75)] {
                dot(&context, x * size, y * size, 1.1 * ratio);
            }
        }
        Texture::Grass => {
            for (x, y) in [(0.2, 0.3), (0.7, 0.8)] {
                for lean in [-0.10, 0.0, 0.10] {
                    stroke(
                        &context,
                        &[(x * size, y * size), ((x + lean) * size, (y - 0.2) * size)],
                        0.9 * ratio,
                    );
                }
            }
        }
        Texture::Waves => {
            for y in [0.25, 0.75] {
                let wave: Vec<_> = (0..=8)
                    .map(|step| {
                        let share = f64::from(step) / 8.0;
                        let rise = hobnail_core::number::sin(share * std::f64::consts::TAU) * 0.07;
                        (share * size, (y + rise) * size)
                    })
                    .collect();
                stroke(&context, &wave, 0.9 * ratio);
            }
        }
    }
    context
        .create_pattern_with_html_canvas_element(&canvas, "repeat")
        .ok()
        .flatten()
}

/// A line from corner to corner, and its neighbors, so that tiles join.
fn rising(context: &CanvasRenderingContext2d, size: f64, width: f64) {
    for shift in [-size, 0.0, size] {
        stroke(
            context,
            &[(shift - size, size * 2.0), (shift + size * 2.0, -size)],
            width,
        );
    }
}

fn falling(context: &CanvasRenderingContext2d, size: f64, width: f64) {
    for shift in [-size, 0.0, size] {
        stroke(
            context,
            &[(shift - size, -size), (shift + size * 2.0, size * 2.0)],
            width,
        );
    }
}

fn stroke(context: &CanvasRenderingContext2d, points: &[(f64, f64)], width: f64) {
    context.set_line_width(width);
    context.begin_path();
    for (index, (x, y)) in points.iter().enumerate() {
        if index == 0 {
            context.move_to(*x, *y);
        } else {
            context.line_to(*x, *y);
        }
    }
    context.stroke();
}

fn dot(context: &CanvasRenderingContext2d, x: f64, y: f64, radius: f64) {
    context.begin_path();
    // The radius is never negative.
    let _ = context.arc(x, y, radius, 0.0, std::f64::consts::TAU);
    context.fill();
}
