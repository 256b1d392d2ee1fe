//! Tones of a drawing, on the screen and on paper, as `0xRRGGBB`.
//!
//! Land is tinted in the hues of the APA Land-Based Classification Standards, activity dimension, top categories
//! ("LBCS Color Coding Standards", American Planning Association, 1 April 2001): residential yellow, shopping and
//! business red, industrial purple, institutional blue, leisure light green, natural resources forest green. The hues
//! are kept and toned down so that lines and words stay legible on them; a texture says the same without color.

use crate::plan::building::LandUse;
use crate::plan::land::ConstraintKind;

/// Land of the site with no use.
pub const PAPER: u32 = 0xFA_F8_F2;
/// Lines and words.
pub const INK: u32 = 0x2B_27_22;
/// Lines of second rank.
pub const SOFT_INK: u32 = 0x7A_72_66;
/// Walks and the ground of a right-of-way.
pub const WALK: u32 = 0xF6_F2_E9;
/// Carriageways.
pub const PAVED: u32 = 0xDA_D5_CC;
/// Bicycle lanes.
pub const BICYCLE: u32 = 0xD8_C2_B4;
/// Planting strips, medians and swales.
pub const PLANTED: u32 = 0xCF_DD_BC;
/// Crowns of trees.
pub const CROWN: u32 = 0x93_B0_7F;
/// Outlines of crowns.
pub const CROWN_LINE: u32 = 0x62_80_55;
/// A street that is to be removed.
pub const REMOVED: u32 = 0xA8_3A_2C;
/// Contours of the ground: brown, as maps draw them by common practice.
pub const CONTOUR: u32 = 0x82_51_1F;
/// Heights written beside them.
pub const CONTOUR_WORDS: u32 = 0x6B_43_1B;
/// Open water.
pub const WATER: u32 = 0x4F_86_AD;

/// The tint of land by use.
#[must_use]
pub const fn tint(land_use: LandUse) -> u32 {
    match land_use {
        LandUse::Residential => 0xF5_E6_A6,
        LandUse::Business => 0xEB_A5_97,
        LandUse::Industrial => 0xCC_B0_DF,
        LandUse::Civic => 0xB4_B9_EA,
        LandUse::Leisure => 0xC6_E6_BC,
        LandUse::Natural => 0xA3_C6_9E,
    }
}

/// The deeper tone of the same hue, for textures and bands.
#[must_use]
pub const fn tone(land_use: LandUse) -> u32 {
    match land_use {
        LandUse::Residential => 0xD9_BC_4C,
        LandUse::Business => 0xC0_5A_49,
        LandUse::Industrial => 0x8D_5F_AE,
        LandUse::Civic => 0x5E_69_BC,
        LandUse::Leisure => 0x77_AE_6A,
        LandUse::Natural => 0x57_8B_55,
    }
}

/// The tone of a building: the tint of its use, darker.
#[must_use]
pub const fn building(land_use: LandUse) -> u32 {
    match land_use {
        LandUse::Residential => 0xC9_AC_4A,
        LandUse::Business => 0xB0_53_43,
        LandUse::Industrial => 0x7E_55_9B,
        LandUse::Civic => 0x53_5E_AD,
        LandUse::Leisure => 0x5F_93_54,
        LandUse::Natural => 0x4A_78_48,
    }
}

/// The color of land that something holds back.
#[must_use]
pub const fn constraint(kind: ConstraintKind) -> u32 {
    match kind {
        ConstraintKind::Water => WATER,
        ConstraintKind::Floodplain => 0x6C_9C_B8,
        ConstraintKind::Wetland => 0x4F_8A_86,
        ConstraintKind::Steep => 0x9A_7B_55,
        ConstraintKind::Easement => SOFT_INK,
        ConstraintKind::Conservation | ConstraintKind::Keep => 0x57_8B_55,
        ConstraintKind::Contaminated => 0x8A_5A_2B,
    }
}
