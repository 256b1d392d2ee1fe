//! Names of things within one document. An id is never reused, so a selection, a tie or a journal entry stays true.

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u32);

        impl crate::passing::Passed for $name {
            fn pass(&self, to: &mut Vec<u8>) {
                self.0.pass(to);
            }

            fn taken(from: &mut &[u8]) -> Option<Self> {
                u32::taken(from).map(Self)
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                write!(formatter, "{}", self.0)
            }
        }
    };
}

id!(
    /// A mark, unique over all alternatives of its document.
    MarkId
);
id!(
    /// An alternative of the document.
    AlternativeId
);
id!(
    /// A street section of the document's palette.
    StreetSectionId
);
id!(
    /// A building type of the document's palette.
    BuildingTypeId
);
id!(
    /// A phase of the document.
    PhaseId
);
