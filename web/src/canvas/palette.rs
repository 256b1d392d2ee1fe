//! Colors and line weights of the drawing.
//!
//! What is drawn on paper too has the tones of [`tones`], which say where the hues of land come from.

use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::land::{ConstraintKind, OwnerGroup};
use hobnail_core::report::drawing::tones;
use hobnail_core::say;

use super::picture::{Color, Texture};
use super::scene::Scale;

pub use hobnail_core::report::drawing::words::{constraint_word, use_word};

/// The finest line: strips of a street, hatching.
pub const FINE_PX: f64 = 0.75;
/// The ordinary line: edges of rights-of-way, outlines.
pub const MEDIUM_PX: f64 = 1.25;
/// The heaviest line: the site, what is selected.
pub const HEAVY_PX: f64 = 2.5;

/// Land outside the site.
pub const AROUND: Color = Color::solid(0xEC_E7_DB);
/// Land of the site with no use.
pub const PAPER: Color = Color::solid(tones::PAPER);
/// Lines and words.
pub const INK: Color = Color::solid(tones::INK);
/// Lines of second rank.
pub const SOFT_INK: Color = Color::solid(tones::SOFT_INK);
/// Walks and the ground of a right-of-way.
pub const WALK: Color = Color::solid(tones::WALK);
/// Carriageways.
pub const PAVED: Color = Color::solid(tones::PAVED);
/// Bicycle lanes.
pub const BICYCLE: Color = Color::solid(tones::BICYCLE);
/// Planting strips, medians and swales.
pub const PLANTED: Color = Color::solid(tones::PLANTED);
/// Crowns of trees.
pub const CROWN: Color = Color::solid(tones::CROWN);
/// Outlines of crowns.
pub const CROWN_LINE: Color = Color::solid(tones::CROWN_LINE);
/// A street that is to be removed.
pub const REMOVED: Color = Color::solid(tones::REMOVED);
/// The walk-shed.
pub const SHED: Color = Color::solid(0x1E_5F_9E);
/// The edge of the walk-shed.
pub const SHED_EDGE: Color = Color::solid(0x0F_43_5A);
/// Open water.
pub const WATER: Color = Color::solid(tones::WATER);
/// Land in no lot.
pub const NO_LOT: Color = Color::solid(0x8A_5A_2B);
/// The paper of a note.
pub const NOTE: Color = Color::solid(0xFD_F3_C4);
/// What is selected or about to be acted upon.
pub const CHOSEN: Color = Color::solid(0xC2_3B_0A);
/// Contours of the ground.
pub const CONTOUR: Color = Color::solid(tones::CONTOUR);
/// Their heights.
pub const CONTOUR_WORDS: Color = Color::solid(tones::CONTOUR_WORDS);
/// Clear.
pub const CLEAR: Color = Color::solid(0xFF_FF_FF).at(0.0);

/// The tint of land by use.
#[must_use]
pub const fn tint(land_use: LandUse) -> Color {
    Color::solid(tones::tint(land_use))
}

/// The deeper tone of the same hue, for textures and bands.
#[must_use]
pub const fn tone(land_use: LandUse) -> Color {
    Color::solid(tones::tone(land_use))
}

/// The tone of a building: the tint of its use, darker.
#[must_use]
pub const fn building(land_use: LandUse) -> Color {
    Color::solid(tones::building(land_use))
}

/// The color of fronts that reach so many of the five daily needs: one hue, the deeper the more.
#[must_use]
pub const fn needs(count: u8) -> Color {
    Color::solid(match count {
        0 => 0xFF_FF_FF,
        1 => 0xD3_E4_E9,
        2 => 0xA5_C8_D3,
        3 => 0x71_A4_B6,
        4 => 0x3C_77_90,
        _ => 0x0F_43_5A,
    })
}

/// Hues of classes that have no order; after these they begin anew, cut by white.
const KINDS: [u32; 8] = [
    0x3E_7C_B8, 0xE2_A2_3F, 0x5A_9E_78, 0xB3_5C_8D, 0x8A_C6_D9, 0x85_5A_3C, 0xC8_C4_5A, 0x6E_6A_9E,
];

/// How a class without an order is cut by white: dashes of a street, the texture of land, and strokes across a sign 34
/// pixels wide. The first eight are whole.
#[must_use]
pub const fn class_cuts(class: u8) -> (&'static [f64], Option<Texture>, &'static str) {
    match class as usize / KINDS.len() {
        0 => (&[], None, ""),
        1 => (&[10.0, 5.0], Some(Texture::Upright), "M11.5 3 V19 M22.5 3 V19"),
        _ => (
            &[4.0, 4.0],
            Some(Texture::Crossed),
            "M7 3 V19 M13.7 3 V19 M20.3 3 V19 M27 3 V19",
        ),
    }
}

/// The color of a class; a number on the drawing says the same without color.
#[must_use]
pub const fn class(scale: Scale, class: u8) -> Color {
    const RAMP: [u32; 6] = [0xF6_E8_D7, 0xEB_C4_9B, 0xDB_97_5F, 0xBF_68_35, 0x92_42_1C, 0x63_26_0D];
    Color::solid(match scale {
        Scale::Ramp => RAMP[if class < 6 { class as usize } else { 5 }],
        Scale::Kinds => KINDS[class as usize % KINDS.len()],
    })
}

/// The texture that says the use without color; homes, the commonest, have none.
#[must_use]
pub const fn texture(land_use: LandUse) -> Option<Texture> {
    match land_use {
        LandUse::Residential => None,
        LandUse::Business => Some(Texture::Diagonal),
        LandUse::Industrial => Some(Texture::Crossed),
        LandUse::Civic => Some(Texture::Upright),
        LandUse::Leisure => Some(Texture::Dots),
        LandUse::Natural => Some(Texture::Grass),
    }
}

/// The color and texture of land that something holds back.
#[must_use]
pub const fn constraint(kind: ConstraintKind) -> (Color, Texture) {
    let texture = match kind {
        ConstraintKind::Water | ConstraintKind::Floodplain => Texture::Waves,
        ConstraintKind::Wetland | ConstraintKind::Conservation => Texture::Grass,
        ConstraintKind::Steep => Texture::Diagonal,
        ConstraintKind::Easement => Texture::Upright,
        ConstraintKind::Keep => Texture::Dots,
        ConstraintKind::Contaminated => Texture::Crossed,
    };
    (Color::solid(tones::constraint(kind)), texture)
}

/// A color darkened until it is legible as lines and words.
#[must_use]
pub fn darkened(color: Color) -> Color {
    let darker = |channel: u8| (f32::from(channel) * 0.6) as u8;
    Color {
        red: darker(color.red),
        green: darker(color.green),
        blue: darker(color.blue),
        opacity: 1.0,
    }
}

/// The word for a group of owners.
#[must_use]
pub fn owner_word(owner: OwnerGroup) -> &'static str {
    match owner {
        OwnerGroup::Public => say!("drawing-owner-public"),
        OwnerGroup::Willing => say!("drawing-owner-willing"),
        OwnerGroup::Unknown => say!("drawing-owner-unknown"),
        OwnerGroup::Unwilling => say!("drawing-owner-unwilling"),
    }
}

/// The texture and dashes of a parcel by its group of owners, in ink: never told by color.
#[must_use]
pub const fn parcel(owner: OwnerGroup) -> (Option<Texture>, &'static [f64]) {
    match owner {
        OwnerGroup::Public => (Some(Texture::Dots), &[]),
        OwnerGroup::Willing => (None, &[]),
        OwnerGroup::Unknown => (None, &[6.0, 4.0]),
        OwnerGroup::Unwilling => (Some(Texture::Crossed), &[2.0, 3.0]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published hues: LBCS color coding, activity dimension (RGB triples as printed there). Toning keeps the hue
    /// within 15 degrees.
    ///
    /// Case C-A1, derived from the triples: industry is A020F0 and leisure 90EE90. The hexadecimal numbers of the standard's
    /// own text have green and blue changed about, which no tint may follow.
    #[test]
    fn tints_keep_the_published_hues() {
        let published = [
            (LandUse::Residential, (255, 255, 0)),
            (LandUse::Business, (255, 0, 0)),
            (LandUse::Industrial, (160, 32, 240)),
            (LandUse::Civic, (0, 0, 255)),
            (LandUse::Leisure, (144, 238, 144)),
            (LandUse::Natural, (34, 139, 34)),
        ];
        let hex = |place: usize| {
            let (red, green, blue): (u8, u8, u8) = published[place].1;
            format!("{red:02X}{green:02X}{blue:02X}")
        };
        assert_eq!([hex(2), hex(4)], ["A020F0", "90EE90"]);
        let industry = tint(LandUse::Industrial);
        let changed_about = hue_degrees(160, 240, 32);
        assert!((hue_degrees(industry.red, industry.green, industry.blue) - changed_about).abs() > 90.0);
        for (land_use, (red, green, blue)) in published {
            let wanted = hue_degrees(red, green, blue);
            for color in [tint(land_use), tone(land_use), building(land_use)] {
                let hue = hue_degrees(color.red, color.green, color.blue);
                let apart = (hue - wanted).abs().min(360.0 - (hue - wanted).abs());
                assert!(apart <= 15.0, "{land_use:?}: {hue} degrees is not {wanted}");
            }
        }
    }

    #[test]
    fn ink_is_legible_on_every_tint() {
        for land_use in [
            LandUse::Residential,
            LandUse::Business,
            LandUse::Industrial,
            LandUse::Civic,
            LandUse::Leisure,
            LandUse::Natural,
        ] {
            let ratio = contrast(INK, tint(land_use));
            assert!(ratio >= 7.0, "{land_use:?}: {ratio}");
            let ratio = contrast(SHED_EDGE, tint(land_use));
            assert!(ratio >= 4.5, "bands and lines of maps on {land_use:?}: {ratio}");
        }
        assert!(contrast(SHED_EDGE, PAPER) >= 4.5);
        assert!(contrast(CHOSEN, PAPER) >= 4.5);
    }

    /// Web Content Accessibility Guidelines 2.2, success criterion 1.4.11: 3 to 1 for graphics that mean something.
    #[test]
    fn contours_and_what_holds_land_back_stand_out_on_every_tint() {
        use LandUse::{Business, Civic, Industrial, Leisure, Natural, Residential};
        let tints = [Residential, Business, Industrial, Civic, Leisure, Natural].map(tint);
        let lines = crate::tools::drafts::CONSTRAINTS.map(|kind| darkened(constraint(kind).0));
        for line in lines.into_iter().chain([CONTOUR, CONTOUR_WORDS]) {
            for ground in tints.into_iter().chain([PAPER, AROUND]) {
                let ratio = contrast(line, ground);
                assert!(ratio >= 3.0, "{line:?} on {ground:?}: {ratio}");
            }
        }
    }

    #[test]
    fn classes_of_one_hue_are_cut_differently() {
        for class in 0..24 {
            let one = (super::class(Scale::Kinds, class), class_cuts(class));
            for other in 0..class {
                assert_ne!(
                    one,
                    (super::class(Scale::Kinds, other), class_cuts(other)),
                    "{class} and {other}"
                );
            }
        }
    }

    #[test]
    fn more_needs_are_always_darker() {
        for count in 0..5 {
            assert!(
                contrast(needs(count + 1), needs(count)) >= 1.25,
                "{count} and {} are told apart",
                count + 1
            );
        }
    }

    fn hue_degrees(red: u8, green: u8, blue: u8) -> f64 {
        let (red, green, blue) = (f64::from(red), f64::from(green), f64::from(blue));
        let most = red.max(green).max(blue);
        let spread = most - red.min(green).min(blue);
        let sextant = if most <= red {
            ((green - blue) / spread).rem_euclid(6.0)
        } else if most <= green {
            (blue - red) / spread + 2.0
        } else {
            (red - green) / spread + 4.0
        };
        sextant * 60.0
    }

    /// Contrast ratio as WCAG 2.2 defines it.
    fn contrast(one: Color, other: Color) -> f64 {
        let luminance = |color: Color| {
            let channel = |value: u8| {
                let share = f64::from(value) / 255.0;
                if share <= 0.040_45 {
                    share / 12.92
                } else {
                    ((share + 0.055) / 1.055).powf(2.4)
                }
            };
            0.2126 * channel(color.red) + 0.7152 * channel(color.green) + 0.0722 * channel(color.blue)
        };
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }
}
