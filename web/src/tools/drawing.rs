//! How streets are drawn and edited: what the hand has chosen for it, and what is said of lengths on the way.

use hobnail_core::messages::Message;
use hobnail_core::say;

/// How streets are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// Straight runs from point to point.
    Straight,
    /// A curve about the points, of the largest radii that fit.
    Curve,
    /// A grid of blocks between two corners.
    Blocks,
    /// Nothing is drawn: lengths and areas are measured.
    Tape,
}

/// What is chosen for drawing and editing streets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Drawing {
    /// How streets are drawn.
    pub manner: Manner,
    /// Whether points land on what is near.
    pub snaps: bool,
    /// Length and depth of the blocks of a grid, from middle to middle of streets, in millimeters.
    pub block_mm: [u32; 2],
    /// How far a copy is set off to a side, in millimeters.
    pub offset_mm: u32,
    /// How far a selection is turned, in thousandths of a degree.
    pub turn_millidegrees: u32,
}

/// A sentence about what is drawn; it is said where it is shown, in the units of the page.
#[derive(Clone, Debug, PartialEq)]
pub struct Sentence {
    /// Its message.
    pub message: Message,
    /// The names of what stands in the places of the message, each with a comma behind.
    pub names: &'static str,
    /// What stands there.
    pub given: Vec<Quantity>,
}

/// A [`Sentence`] by the name of its message, with what stands in its places.
macro_rules! sentence {
    ($id:literal $(, $name:ident = $quantity:expr)* $(,)?) => {
        $crate::tools::drawing::Sentence {
            message: hobnail_core::message!($id),
            names: concat!($(stringify!($name), ","),*),
            given: vec![$($quantity),*],
        }
    };
}
pub(crate) use sentence;

/// A number in a sentence about what is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quantity {
    /// A number of things.
    Count(u32),
    /// A length, in millimeters.
    Length(f64),
    /// An area, in square meters.
    Area(f64),
}

impl Drawing {
    /// What is chosen at first, in whole numbers of the units shown: blocks of 400 by 250 ft or 120 by 80 m, offsets of
    /// 100 ft or 30 m. Ordinary sizes: common practice, no source.
    #[must_use]
    pub const fn in_units(is_metric: bool) -> Self {
        Self {
            manner: Manner::Straight,
            snaps: true,
            block_mm: if is_metric {
                [120_000, 80_000]
            } else {
                [121_920, 76_200]
            },
            offset_mm: if is_metric { 30_000 } else { 30_480 },
            turn_millidegrees: 15_000,
        }
    }
}

impl Manner {
    /// All manners, in the order of the palette.
    pub const ALL: [Self; 4] = [Self::Straight, Self::Curve, Self::Blocks, Self::Tape];

    /// The words in the palette.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Straight => say!("tools-straight"),
            Self::Curve => say!("tools-curve"),
            Self::Blocks => say!("tools-blocks"),
            Self::Tape => say!("tools-tape"),
        }
    }
}
