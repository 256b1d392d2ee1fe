//! The language of the window.

use crate::browser::view::{View, command};
use hobnail_core::messages::{self, Language};

use crate::app::store::Store;

/// A button for each language that the window does not speak, named in that language so that whoever needs it finds it.
pub fn languages(store: Store) -> View {
    let others = Language::ALL.into_iter().filter(|other| *other != messages::language());
    let one = |other: Language| {
        command()
            .with("lang", other.code())
            .with("data-language", other.code())
            .on_press(move || store.use_language(other))
            .holds(other.own_name())
    };
    others.map(one).collect::<View>()
}
