//! What a plan has and its address has not.

use crate::say;

/// A part of a plan that no address carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LeftOut {
    /// Ground heights: walking is measured on the flat.
    Topography,
    /// The picture underneath.
    BaseImage,
    /// The steps that could be undone.
    History,
}

impl LeftOut {
    /// Those that are missing: ground heights, then base image.
    pub(super) fn of([topography, base_image]: [bool; 2]) -> Vec<Self> {
        let both = [(topography, Self::Topography), (base_image, Self::BaseImage)];
        both.into_iter()
            .filter_map(|(is_missing, part)| is_missing.then_some(part))
            .collect()
    }

    /// The sentence for whoever makes an address.
    #[must_use]
    pub fn before_copying(self) -> &'static str {
        match self {
            Self::Topography => say!("exchange-address-leaves-heights"),
            Self::BaseImage => say!("exchange-address-leaves-image"),
            Self::History => say!("exchange-address-leaves-history"),
        }
    }

    /// The sentence for whoever opens one.
    #[must_use]
    pub fn after_opening(self) -> &'static str {
        match self {
            Self::Topography => say!("exchange-address-without-heights"),
            Self::BaseImage => say!("exchange-address-without-image"),
            Self::History => say!("exchange-address-without-history"),
        }
    }
}
