//! Entities as pairs of a group code and a value, each on a line of its own.

use crate::report::export::sheet::Layer;

/// A corner of a polyline in meters, with the bulge of the way to the next: the tangent of a quarter of the arc's turn.
pub(super) type Vertex = (f64, f64, f64);

/// The layer of what stands around the drawing.
pub(super) const SHEET: &str = "sheet";

/// Handle of the block all entities stand in, the model's space.
pub(super) const MODEL: &str = "1F";

/// The first handle of an entity; those below are the frame's.
const FIRST_HANDLE: u32 = 0x100;

/// Entities as they are written.
pub(super) struct Writer {
    /// The text so far.
    pub text: String,
    /// The next handle.
    pub handle: u32,
    unit_m: f64,
}

impl Writer {
    pub const fn new(unit_m: f64) -> Self {
        Self {
            text: String::new(),
            handle: FIRST_HANDLE,
            unit_m,
        }
    }

    /// A group code and its value.
    pub fn pair(&mut self, code: u32, value: &str) {
        self.text.extend([&code.to_string(), "\n", value, "\n"]);
    }

    fn number(&mut self, code: u32, value: f64) {
        // To the tenth of a millimeter, or the ten-thousandth of a foot.
        let value = ((value * 1e4).round() / 1e4).to_string();
        let point = if value.contains('.') { "" } else { ".0" };
        self.text.extend([&code.to_string(), "\n", &value, point, "\n"]);
    }

    fn length(&mut self, code: u32, meters: f64) {
        self.number(code, meters / self.unit_m);
    }

    /// The beginning of an entity, of the color of its layer or one of its own.
    fn begin(&mut self, entity: &str, layer: &str, color: Option<u8>, class: &str) {
        self.pair(0, entity);
        let handle = format!("{:X}", self.handle);
        self.handle += 1;
        self.pair(5, &handle);
        self.pair(330, MODEL);
        self.pair(100, "AcDbEntity");
        self.pair(8, &layer_name(layer));
        if let Some(color) = color {
            self.pair(62, &color.to_string());
        }
        self.pair(100, class);
    }

    /// A line through corners, which may lie at a height, in units of the drawing.
    pub fn polyline(&mut self, layer: &str, corners: &[Vertex], is_closed: bool, height: Option<f64>) {
        if corners.len() < 2 {
            return;
        }
        self.begin("LWPOLYLINE", layer, None, "AcDbPolyline");
        self.pair(90, &corners.len().to_string());
        self.pair(70, if is_closed { "1" } else { "0" });
        if let Some(height) = height {
            self.number(38, height);
        }
        for (x, y, bulge) in corners {
            self.length(10, *x);
            self.length(20, *y);
            if *bulge != 0.0 {
                // In full: a bulge rounded like a length would move a wide arc by centimeters.
                self.pair(42, &bulge.to_string());
            }
        }
    }

    /// A circle.
    pub fn circle(&mut self, layer: &str, (x, y): (f64, f64), radius_m: f64) {
        self.begin("CIRCLE", layer, None, "AcDbCircle");
        self.place(10, (x, y));
        self.length(40, radius_m);
    }

    /// Words about their middle, or from their left end.
    pub fn text(&mut self, layer: &str, at: (f64, f64), text: &str, height_m: f64, angle_rad: f64, is_middle: bool) {
        self.begin("TEXT", layer, None, "AcDbText");
        self.place(10, at);
        self.length(40, height_m);
        self.pair(1, &plain(text));
        self.number(50, angle_rad.to_degrees());
        if is_middle {
            self.pair(72, "1");
            self.place(11, at);
        }
        self.pair(100, "AcDbText");
        if is_middle {
            self.pair(73, "2");
        }
    }

    /// Land filled with the color its layer has for that; rings inside others are holes.
    pub fn hatch(&mut self, layer: &Layer, rings: &[Vec<(f64, f64)>]) {
        let rings: Vec<_> = rings.iter().filter(|ring| ring.len() > 2).collect();
        if rings.is_empty() {
            return;
        }
        self.begin("HATCH", layer.id, Some(layer.fill), "AcDbHatch");
        self.place(10, (0.0, 0.0));
        for (code, value) in [
            (210, "0.0"),
            (220, "0.0"),
            (230, "1.0"),
            (2, "SOLID"),
            (70, "1"),
            (71, "0"),
        ] {
            self.pair(code, value);
        }
        self.pair(91, &rings.len().to_string());
        for (place, ring) in rings.iter().enumerate() {
            // A polyline: of the outside, or one within.
            self.pair(92, if place == 0 { "3" } else { "2" });
            self.pair(72, "0");
            self.pair(73, "1");
            self.pair(93, &ring.len().to_string());
            for (x, y) in *ring {
                self.length(10, *x);
                self.length(20, *y);
            }
            self.pair(97, "0");
        }
        // Filled by parity, a fill of one color, without seeds.
        for (code, value) in [(75, "0"), (76, "1"), (98, "0")] {
            self.pair(code, value);
        }
    }

    /// Three coordinates; `code` is that of the first.
    fn place(&mut self, code: u32, (x, y): (f64, f64)) {
        self.length(code, x);
        self.length(code + 10, y);
        self.pair(code + 20, "0.0");
    }
}

/// The name of a layer as drafting programs have it.
pub(super) fn layer_name(id: &str) -> String {
    id.to_ascii_uppercase()
}

/// Text on one line in ASCII: other letters by their number, as the format has them; a caret and a percent sign would
/// begin a code.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '^' => plain.push_str("^ "),
            '%' => plain.push_str("%%%"),
            ' '..='~' => plain.push(character),
            other if other.is_control() => plain.push(' '),
            other => {
                let mut units = [0; 2];
                for unit in other.encode_utf16(&mut units) {
                    plain.push_str(&format!("\\U+{unit:04X}"));
                }
            }
        }
    }
    plain
}
