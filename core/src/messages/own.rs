//! Messages put into words by the library itself, for the command line and for tests.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

use super::{Argument, IDS, Language, Speaker};

include!(concat!(env!("OUT_DIR"), "/messages.rs"));

/// Says messages as their files have them.
pub(super) const OWN: Speaker = Speaker {
    say: |language, message, names, values| say(language, IDS.get(message.place())?, names, values),
    find: |language, id| say(language, id, "", &[]),
};

fn say(language: Language, id: &str, names: &str, values: &[Argument<'_>]) -> Option<String> {
    let bundle = bundle(language);
    let pattern = bundle.get_message(id)?.value()?;
    let mut given = FluentArgs::new();
    for (name, value) in names.split(',').zip(values) {
        let value = match value {
            Argument::Count(count) => FluentValue::from(*count),
            Argument::Text(words) => FluentValue::from(*words),
        };
        given.set(name, value);
    }
    let mut faults = Vec::new();
    let words = bundle.format_pattern(pattern, Some(&given), &mut faults).into_owned();
    faults.is_empty().then_some(words)
}

fn bundle(language: Language) -> &'static FluentBundle<FluentResource> {
    static BUNDLES: [OnceLock<FluentBundle<FluentResource>>; Language::ALL.len()] = [const { OnceLock::new() }; 2];
    let (held, text) = match language {
        Language::English => (&BUNDLES[0], ENGLISH),
        Language::Spanish => (&BUNDLES[1], SPANISH),
    };
    held.get_or_init(|| made(language, text))
}

fn made(language: Language, text: &str) -> FluentBundle<FluentResource> {
    // A code of our own list is always one; a file with faults gives what it has, and a test reads every file.
    let languages = language.code().parse().into_iter().collect();
    let mut bundle = FluentBundle::new_concurrent(languages);
    // The words go onto a page as they are; marks of direction would only be in the way.
    bundle.set_use_isolating(false);
    let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(partly, _)| partly);
    bundle.add_resource_overriding(resource);
    bundle
}
