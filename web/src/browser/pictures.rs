//! Pictures under the drawing: read from files, made small enough to keep, decoded, and straightened onto a canvas.

use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::placement::Placement;
use hobnail_core::say;
use std::sync::Arc;

use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, HtmlImageElement};

use super::painter::context_of;

/// A picture as it is kept in the plan.
pub struct PictureFile {
    /// The file's name.
    pub name: String,
    /// Its media type.
    pub media_type: String,
    /// Its bytes.
    pub bytes: Arc<[u8]>,
    /// Width and height of the file, in pixels: what is kept may have fewer.
    pub size_px: [f64; 2],
}

/// What files are taken as pictures, and what may lie beside them, as a file input names them.
pub const ACCEPTED: &str = "image/png,image/jpeg,image/webp,.wld,.jgw,.pgw,.wpw,.jpgw,.pngw,.jpegw,.prj";

/// A picture with more bytes or a longer side is made smaller before it is kept: the plan's file holds it.
const MOST_BYTES: usize = 1_500_000;
const MOST_SIDE_PX: f64 = 3_000.0;

/// How it is then kept.
const SMALLER: (&str, f64) = ("image/jpeg", 0.85);

/// The longest side of a straightened picture.
const STRAIGHT_SIDE_PX: f64 = 2_400.0;

/// Parts to a side that a straightened picture is put together from, each by an affine map.
const PARTS: u32 = 40;

/// A decoded picture, and how it lies on the plan once that was asked for.
pub struct Picture {
    bytes: Arc<[u8]>,
    image: HtmlImageElement,
    straight: Option<Straight>,
}

/// A picture laid on a canvas whose sides run east and south.
pub struct Straight {
    corners: [PlanPoint; 4],
    /// The canvas.
    pub canvas: HtmlCanvasElement,
    /// Its top left corner, in meters.
    pub north_west: (f64, f64),
    /// Meters per pixel of it.
    pub m_per_px: f64,
}

/// Reads a file as a picture.
pub fn read(file: web_sys::File, then: impl FnOnce(Result<PictureFile, String>) + 'static) {
    super::document::after_this(async move {
        let name = file.name();
        let refused = || say!("picture-not-read", file = name);
        then(read_file(&file).await.ok_or_else(refused));
    });
}

async fn read_file(file: &web_sys::File) -> Option<PictureFile> {
    let image = image_of(file).await?;
    let (width_px, height_px) = (f64::from(image.natural_width()), f64::from(image.natural_height()));
    let is_large = file.size() > MOST_BYTES as f64 || width_px.max(height_px) > MOST_SIDE_PX;
    let smaller = if is_large { Some(smaller(&image).await?) } else { None };
    let kept = smaller.as_ref().unwrap_or(file);
    let bytes = JsFuture::from(kept.array_buffer()).await.ok()?;
    Some(PictureFile {
        name: file.name(),
        media_type: kept.type_(),
        bytes: js_sys::Uint8Array::new(&bytes).to_vec().into(),
        size_px: [width_px, height_px],
    })
}

/// A blob, decoded; `None` where the browser can not.
async fn image_of(blob: &web_sys::Blob) -> Option<HtmlImageElement> {
    let address = web_sys::Url::create_object_url_with_blob(blob).ok()?;
    let image = HtmlImageElement::new().ok()?;
    image.set_src(&address);
    let decoded = JsFuture::from(image.decode()).await;
    // An address of our own is always known.
    let _ = web_sys::Url::revoke_object_url(&address);
    (decoded.is_ok() && image.natural_width() > 0 && image.natural_height() > 0).then_some(image)
}

/// The picture with fewer pixels, on white where it can be seen through.
async fn smaller(image: &HtmlImageElement) -> Option<web_sys::Blob> {
    let longest_px = f64::from(image.natural_width().max(image.natural_height()));
    drawn(image, (MOST_SIDE_PX / longest_px).min(1.0), SMALLER).await
}

/// A drawing in SVG as a picture of so many dots per inch; `None` where the browser has no canvas as large.
pub fn png_of(drawing: String, dots_per_inch: f64, then: impl FnOnce(Option<web_sys::Blob>) + 'static) {
    let options = web_sys::BlobPropertyBag::new();
    options.set_type("image/svg+xml");
    let parts = js_sys::Array::of1(&JsValue::from_str(&drawing));
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options);
    super::document::after_this(async move {
        let made = async {
            let image = image_of(&blob.ok()?).await?;
            // The size that the drawing has by itself, in pixels of CSS, of which 96 are an inch (CSS Values and Units
            // Module Level 3, section 5.2).
            drawn(&image, dots_per_inch / 96.0, ("image/png", 1.0)).await
        };
        then(made.await);
    });
}

/// A picture drawn so many times as large on white, in another format.
async fn drawn(image: &HtmlImageElement, scale: f64, (format, quality): (&str, f64)) -> Option<web_sys::Blob> {
    let size_px = |natural: u32| (f64::from(natural) * scale).round().max(1.0);
    let (width_px, height_px) = (size_px(image.natural_width()), size_px(image.natural_height()));
    let (canvas, context) = canvas_of(width_px, height_px)?;
    context.set_fill_style_str("#fff");
    context.fill_rect(0.0, 0.0, width_px, height_px);
    context
        .draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, width_px, height_px)
        .ok()?;
    let made = js_sys::Promise::new(&mut |resolve, _| {
        let take = Closure::once_into_js(move |blob: JsValue| {
            // A function that settles a promise takes anything.
            let _ = resolve.call1(&JsValue::NULL, &blob);
        });
        // The canvas holds only what came from a file or from us, so it can be read.
        let _ = canvas.to_blob_with_type_and_encoder_options(take.unchecked_ref(), format, &quality.into());
    });
    JsFuture::from(made).await.ok()?.dyn_into().ok()
}

/// A canvas aside from the page, in its own pixels; `None` where the browser has no memory for it.
pub fn canvas_of(width_px: f64, height_px: f64) -> Option<(HtmlCanvasElement, CanvasRenderingContext2d)> {
    let element = super::document::document()?.create_element("canvas").ok()?;
    let canvas: HtmlCanvasElement = element.dyn_into().ok()?;
    canvas.set_width(width_px as u32);
    canvas.set_height(height_px as u32);
    let context = context_of(&canvas).ok()?;
    Some((canvas, context))
}

impl Picture {
    /// Decodes the bytes of a picture.
    pub fn decode(media_type: &str, bytes: Arc<[u8]>, then: impl FnOnce(Option<Self>) + 'static) {
        let options = web_sys::BlobPropertyBag::new();
        options.set_type(media_type);
        let parts = js_sys::Array::of1(&js_sys::Uint8Array::from(&*bytes));
        let blob = web_sys::Blob::new_with_u8_array_sequence_and_options(&parts, &options);
        super::document::after_this(async move {
            let image = match &blob {
                Ok(blob) => image_of(blob).await,
                Err(_) => None,
            };
            then(image.map(|image| Self {
                bytes,
                image,
                straight: None,
            }));
        });
    }

    /// Whether these bytes are what was decoded.
    #[must_use]
    pub fn is_of(&self, bytes: &Arc<[u8]>) -> bool {
        Arc::ptr_eq(&self.bytes, bytes)
    }

    /// The picture laid on these corners; `None` where the browser gives no canvas, or the corners are no picture's.
    pub fn straight(&mut self, corners: &[PlanPoint; 4]) -> Option<&Straight> {
        if self
            .straight
            .as_ref()
            .is_none_or(|straight| straight.corners != *corners)
        {
            self.straight = self.laid(corners);
        }
        self.straight.as_ref()
    }

    fn laid(&self, corners: &[PlanPoint; 4]) -> Option<Straight> {
        let placement = Placement::of_corners(corners).ok()?;
        let at = corners.map(PlanPoint::to_m);
        let least = |side: fn(&(f64, f64)) -> f64| at.iter().map(side).fold(f64::INFINITY, f64::min);
        let most = |side: fn(&(f64, f64)) -> f64| at.iter().map(side).fold(f64::NEG_INFINITY, f64::max);
        let (west, east) = (least(|at| at.0), most(|at| at.0));
        let (south, north) = (least(|at| at.1), most(|at| at.1));
        let (width_px, height_px) = (
            f64::from(self.image.natural_width()),
            f64::from(self.image.natural_height()),
        );
        let side_px = width_px.max(height_px).min(STRAIGHT_SIDE_PX);
        let m_per_px = (east - west).max(north - south) / side_px;
        let (canvas, context) = canvas_of(
            ((east - west) / m_per_px).ceil().max(1.0),
            ((north - south) / m_per_px).ceil().max(1.0),
        )?;
        let on_canvas = |right: f64, down: f64| {
            let (x, y) = placement.on_plan([right, down]);
            ((x - west) / m_per_px, (north - y) / m_per_px)
        };
        let is_affine = {
            let (fourth, third) = (on_canvas(1.0, 1.0), on_canvas(0.0, 1.0));
            let (first, second) = (on_canvas(0.0, 0.0), on_canvas(1.0, 0.0));
            (fourth.0 - third.0 - second.0 + first.0).abs() + (fourth.1 - third.1 - second.1 + first.1).abs() < 0.5
        };
        let parts = if is_affine { 1 } else { PARTS };
        let share = 1.0 / f64::from(parts);
        for row in 0..parts {
            for column in 0..parts {
                let (right, down) = (f64::from(column) * share, f64::from(row) * share);
                // The parts lap over each other by a pixel, so that no seam shows.
                let lap = if is_affine { 0.0 } else { 1.0 / side_px };
                let to = |value: f64| (value + share + lap).min(1.0);
                let (first, second) = (on_canvas(right, down), on_canvas(to(right), down));
                let third = on_canvas(right, to(down));
                let (wide, high) = ((to(right) - right) * width_px, (to(down) - down) * height_px);
                // Six finite numbers are always accepted.
                let _ = context.set_transform(
                    (second.0 - first.0) / wide,
                    (second.1 - first.1) / wide,
                    (third.0 - first.0) / high,
                    (third.1 - first.1) / high,
                    first.0,
                    first.1,
                );
                context
                    .draw_image_with_html_image_element_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
                        &self.image,
                        right * width_px,
                        down * height_px,
                        wide,
                        high,
                        0.0,
                        0.0,
                        wide,
                        high,
                    )
                    .ok()?;
            }
        }
        Some(Straight {
            corners: *corners,
            canvas,
            north_west: (west, north),
            m_per_px,
        })
    }
}
