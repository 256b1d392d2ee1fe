//! The messages: every language says every one, with the same arguments, and the sources ask for those and no others.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, Resource};
use fluent_syntax::parser;

use crate::layout::{sources_below, top_level};

/// The languages, that of the sources first.
const LANGUAGES: [&str; 2] = ["en", "es"];

/// Beginnings of messages that are asked for by data: each shipped factor has its title and note there, and the readers of
/// base data name their faults.
const FAMILIES: [&str; 2] = ["factor-", "readers-"];

/// Before the name of a message that stands within another one.
const WITHIN: char = '@';

/// The messages of a language, each with the arguments it needs, by file.
fn messages(language: &str) -> BTreeMap<String, BTreeMap<String, BTreeSet<String>>> {
    let folder = top_level().join("core/messages").join(language);
    let mut files = BTreeMap::new();
    let mut all = BTreeSet::new();
    for entry in fs::read_dir(folder).expect("each language has a folder") {
        let path = entry.expect("the folder can be listed").path();
        let text = fs::read_to_string(&path).expect("messages are text");
        let name = path
            .file_name()
            .expect("a file has a name")
            .to_string_lossy()
            .into_owned();
        let resource: Resource<String> = parser::parse(text).unwrap_or_else(|(_, faults)| panic!("{name}: {faults:?}"));
        let mut held = BTreeMap::new();
        for entry in resource.body {
            match entry {
                Entry::Message(message) => {
                    let id = message.id.name;
                    assert!(
                        message.attributes.is_empty(),
                        "{name}: {id} has attributes, which nobody reads"
                    );
                    let pattern = message.value.unwrap_or_else(|| panic!("{name}: {id} says nothing"));
                    assert!(all.insert(id.clone()), "{language} says {id} twice");
                    held.insert(id, arguments(&pattern));
                }
                Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => {}
                other => panic!("{name} holds what is no message: {other:?}"),
            }
        }
        files.insert(name, held);
    }
    files
}

fn arguments(pattern: &Pattern<String>) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            in_expression(expression, &mut found);
        }
    }
    found
}

fn in_expression(expression: &Expression<String>, found: &mut BTreeSet<String>) {
    match expression {
        Expression::Inline(inline) => in_inline(inline, found),
        Expression::Select { selector, variants } => {
            in_inline(selector, found);
            found.extend(variants.iter().flat_map(|variant| arguments(&variant.value)));
        }
    }
}

fn in_inline(inline: &InlineExpression<String>, found: &mut BTreeSet<String>) {
    match inline {
        InlineExpression::VariableReference { id } => {
            found.insert(id.name.clone());
        }
        InlineExpression::Placeable { expression } => in_expression(expression, found),
        InlineExpression::MessageReference { id, attribute: None } => {
            found.insert(format!("{WITHIN}{}", id.name));
        }
        InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
        other => panic!("a message leads elsewhere: {other:?}"),
    }
}

/// What a message needs: its own arguments and those of the messages within it.
fn needed(id: &str, all: &BTreeMap<String, BTreeSet<String>>) -> BTreeSet<String> {
    let held = all.get(id).unwrap_or_else(|| panic!("there is no message {id}"));
    let parts = held.iter().flat_map(|part| match part.strip_prefix(WITHIN) {
        Some(within) => needed(within, all),
        None => BTreeSet::from([part.clone()]),
    });
    parts.collect()
}

/// Every message of a language with what it needs.
fn all_needed(language: &str) -> BTreeMap<String, BTreeSet<String>> {
    let all = messages(language).into_values().flatten().collect();
    let ids: Vec<&String> = BTreeMap::keys(&all).collect();
    ids.into_iter().map(|id| (id.clone(), needed(id, &all))).collect()
}

/// One asking for a message in a source: where, which, with what.
struct Asked {
    place: String,
    id: String,
    /// Nothing where only the message is named.
    given: Option<BTreeSet<String>>,
}

/// Every `say!("id", name = …)` of the sources, and every `sentence!` and `message!`, which are said later.
fn asked() -> Vec<Asked> {
    let mut found = Vec::new();
    for folder in ["core/src", "web/src"] {
        for (file, text) in sources_below(&top_level().join(folder)) {
            // The macro's own page shows it, and its tests ask for what is nowhere.
            if file.starts_with(top_level().join("core/src/messages")) {
                continue;
            }
            // Calls stand within calls.
            let calls = ["say!(", "sentence!(", "message!("].map(|opening| text.match_indices(opening));
            for (place, opening) in calls.into_iter().flatten() {
                let piece = text.get(place + opening.len()..).unwrap_or_default();
                let Some(call) = whole_call(piece) else {
                    panic!("{}: a call does not end: {piece:.60}", file.display())
                };
                let mut parts = call.into_iter();
                let id = parts.next().unwrap_or_default();
                let id = id.trim().trim_matches('"').to_owned();
                let given = parts.filter_map(|part| Some(part.split_once('=')?.0.trim().to_owned()));
                // A macro that hands a name on.
                if id.starts_with('$') {
                    continue;
                }
                let given = (opening != "message!(").then(|| given.collect());
                let place = file.display().to_string();
                found.push(Asked { place, id, given });
            }
        }
    }
    found
}

/// The arguments of a call whose opening parenthesis was just passed, parted at its own commas.
fn whole_call(text: &str) -> Option<Vec<String>> {
    let (mut parts, mut part) = (Vec::new(), String::new());
    let (mut depth, mut in_string, mut is_escaped) = (0, false, false);
    for letter in text.chars() {
        match letter {
            _ if in_string => {
                in_string = is_escaped || letter != '"';
                is_escaped = letter == '\\' && !is_escaped;
            }
            '"' => in_string = true,
            '(' | '[' | '{' => depth += 1,
            ')' if depth == 0 => {
                parts.push(part);
                return Some(parts);
            }
            ')' | ']' | '}' => depth -= 1,
            ',' if depth == 0 => {
                parts.push(std::mem::take(&mut part));
                continue;
            }
            _ => {}
        }
        part.push(letter);
    }
    None
}

#[test]
fn every_language_says_every_message_with_the_same_arguments() {
    let ids = |language| {
        let files = messages(language).into_iter();
        files
            .map(|(file, held)| (file, held.into_keys().collect::<BTreeSet<_>>()))
            .collect::<BTreeMap<_, _>>()
    };
    let [english, other] = LANGUAGES.map(ids);
    assert_eq!(english, other, "each language says the same in the same files");
    let [english, other] = LANGUAGES.map(all_needed);
    let differing = english.iter().filter(|(id, needed)| other.get(*id) != Some(needed));
    let faults: Vec<String> = differing
        .map(|(id, needed)| format!("{id} needs {needed:?} and {:?}", other.get(id)))
        .collect();
    assert_eq!(faults, Vec::<String>::new());
    assert!(english.len() > 1000);
}

#[test]
fn sources_ask_for_messages_that_are_there_with_what_they_need() {
    let known = all_needed(LANGUAGES[0]);
    let calls = asked();
    assert!(
        !calls.is_empty(),
        "few calls were found, so the search itself is wrong: {}",
        calls.len()
    );
    let mut faults = Vec::new();
    for call in &calls {
        match known.get(&call.id) {
            None => faults.push(format!("{}: there is no message {}", call.place, call.id)),
            Some(needed) if call.given.as_ref().is_some_and(|given| given != needed) => faults.push(format!(
                "{}: {} needs {needed:?} and is given {:?}",
                call.place, call.id, call.given
            )),
            Some(_) => {}
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}

#[test]
fn every_message_is_asked_for() {
    let mut used: BTreeSet<String> = asked().into_iter().map(|call| call.id).collect();
    let page = fs::read_to_string(top_level().join("index.html")).expect("the page is text");
    let in_page = page
        .split("data-say=\"")
        .skip(1)
        .filter_map(|piece| piece.split('"').next());
    used.extend(in_page.map(str::to_owned));
    let within = messages(LANGUAGES[0])
        .into_values()
        .flat_map(BTreeMap::into_values)
        .flatten();
    used.extend(within.filter_map(|part| Some(part.strip_prefix(WITHIN)?.to_owned())));
    let is_used = |id: &String| used.contains(id) || FAMILIES.iter().any(|family| id.starts_with(family));
    let idle: Vec<String> = messages(LANGUAGES[0])
        .into_values()
        .flat_map(BTreeMap::into_keys)
        // The tests of the macro ask for it.
        .filter(|id| !is_used(id) && id != "language-name")
        .collect();
    assert_eq!(idle, Vec::<String>::new());
}

/// Words that a source may hold: names of published sources, which stay as they are, of programs and of style classes.
const ALLOWED: [&str; 9] = [
    "Dubuque IA code",
    "Forest Grove OR development code",
    "Measuring Connectivity for Bicycling",
    "point line area",
    "hobnail export",
    "hobnail measure",
    "hobnail network",
    "palette editor",
    "command sign",
];

/// Where a line speaks to developers: reasons of lints, and what can not happen.
const FOR_DEVELOPERS: [&str; 4] = ["reason = ", "must_use = ", "expect(", "panic!("];

/// Two words of letters beside each other, as in a sentence.
fn is_a_phrase(text: &str) -> bool {
    let words: Vec<&str> = text.split(' ').collect();
    let is_word = |word: &str, least| word.len() >= least && word.bytes().all(|letter| letter.is_ascii_lowercase());
    words.windows(2).any(|pair| is_word(pair[0], 3) && is_word(pair[1], 2))
}

/// What stands in quotes on a line of source, names of style classes left out.
fn quoted(line: &str) -> Vec<&str> {
    let parts: Vec<&str> = line.split('"').collect();
    // Of an odd number of quotes the last begins no string that ends here.
    let strings = parts.chunks(2).filter(|pair| pair.len() == 2);
    strings
        .enumerate()
        .filter(|(place, pair)| !pair[0].ends_with(".class(") && place * 2 + 2 < parts.len())
        .map(|(_, pair)| pair[1])
        .collect()
}

#[test]
fn no_words_for_people_stand_in_sources() {
    let mut faults = Vec::new();
    for folder in ["core/src", "web/src"] {
        for (file, text) in sources_below(&top_level().join(folder)) {
            let path = file.display().to_string();
            // Tests and what only they use.
            let is_test = [
                "/tests",
                "tests.rs",
                "fixtures",
                "test_plans",
                "/figures/samples",
                "/figures/readback",
            ];
            if is_test.iter().any(|part| path.contains(part)) || path.ends_with("random_graphs.rs") {
                continue;
            }
            let source = text.split("#[cfg(test)]").next().unwrap_or_default();
            for line in source.lines() {
                let code = line.trim_start();
                if code.starts_with("//") || FOR_DEVELOPERS.iter().any(|part| code.contains(part)) {
                    continue;
                }
                let found = quoted(code).into_iter().filter(|text| is_a_phrase(text));
                let told = found.filter(|text| !ALLOWED.iter().any(|allowed| text.contains(allowed)));
                faults.extend(told.map(|text| format!("{path}: {text}")));
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
    assert!(is_a_phrase("no plan is open") && !is_a_phrase("menu-line step") && !is_a_phrase("homes.count"));
}
