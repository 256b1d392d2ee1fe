//! Where people walk to.

use crate::say;

/// A destination of the walking figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Destination {
    /// The neighborhood center.
    Center,
    /// Other homes: neighbors.
    Homes,
    /// Work.
    Work,
    /// Shops.
    Shops,
    /// Learning.
    Learning,
    /// Gathering.
    Gathering,
    /// The last of the five daily needs.
    AllFive,
    /// The same, places that are only hoped for left out.
    AllFiveSure,
    /// A park or square.
    Park,
    /// A school.
    School,
    /// A transit stop.
    TransitStop,
}

impl Destination {
    /// Every destination, in the order of the axis.
    pub const ALL: [Self; 11] = [
        Self::Center,
        Self::Homes,
        Self::Work,
        Self::Shops,
        Self::Learning,
        Self::Gathering,
        Self::AllFive,
        Self::AllFiveSure,
        Self::Park,
        Self::School,
        Self::TransitStop,
    ];

    /// The five daily needs, in the order of [`super::super::mix::uses`].
    pub const NEEDS: [Self; 5] = [Self::Homes, Self::Work, Self::Shops, Self::Learning, Self::Gathering];

    /// Its entry on the axis `destination`, stable for ever.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Center => "center",
            Self::Homes => "homes",
            Self::Work => "work",
            Self::Shops => "shops",
            Self::Learning => "learning",
            Self::Gathering => "gathering",
            Self::AllFive => "all_five",
            Self::AllFiveSure => "all_five_sure",
            Self::Park => "park",
            Self::School => "school",
            Self::TransitStop => "transit_stop",
        }
    }

    /// Its words.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Center => say!("measures-to-center"),
            Self::Homes => say!("measures-to-homes"),
            Self::Work => say!("measures-to-work"),
            Self::Shops => say!("measures-to-shops"),
            Self::Learning => say!("measures-to-learning"),
            Self::Gathering => say!("measures-to-gathering"),
            Self::AllFive => say!("measures-to-all-five"),
            Self::AllFiveSure => say!("measures-to-all-five-sure"),
            Self::Park => say!("measures-to-park"),
            Self::School => say!("measures-to-school"),
            Self::TransitStop => say!("measures-to-transit-stop"),
        }
    }

    /// Which of the five daily needs it is, by its place in [`Destination::NEEDS`].
    #[must_use]
    pub fn need(self) -> Option<usize> {
        Self::NEEDS.iter().position(|held| *held == self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measures::mix;

    #[test]
    fn the_needs_are_the_uses_in_their_order() {
        for (need, (id, _)) in Destination::NEEDS.iter().zip(mix::uses()) {
            assert_eq!(need.id(), id);
        }
        for (place, destination) in Destination::ALL.iter().enumerate() {
            assert_eq!(*destination as usize, place);
        }
    }
}
