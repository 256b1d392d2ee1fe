//! An address gives its plan back, but for what is said to be left out, and no text is more than refused.

use hobnail_core::exchange::address::{self, LeftOut};
use hobnail_core::plan::tie::release_unusable_ties;
use hobnail_core::plan::{AlternativeId, Document};

use crate::cases;
use crate::generate;
use crate::random::Random;

/// The document without what an address leaves out.
fn linkable(document: &Document) -> Document {
    Document {
        topography: None,
        base_image: None,
        ..document.clone()
    }
}

#[test]
fn address_then_open_is_the_identity_on_the_linkable_part() {
    for seed in 0..cases(150) {
        let document = generate::document(&mut Random(seed), 25);
        let told = address::encode(&document).unwrap();
        let opened = address::decode(&told.text).unwrap();
        assert_eq!(opened.document, linkable(&document), "seed {seed}");
        assert_eq!(told.left_out, address::left_out(&document), "seed {seed}");
        assert_eq!(opened.left_out, told.left_out, "seed {seed}");
        let missing = [document.topography.is_some(), document.base_image.is_some()];
        let said = [LeftOut::Topography, LeftOut::BaseImage].map(|part| told.left_out.contains(&part));
        assert_eq!(said, missing, "seed {seed}");
        assert_eq!(address::encode(&document).unwrap(), told, "seed {seed}");
    }
}

#[test]
fn alternatives_that_are_alike_come_back_and_take_little_room() {
    for seed in 0..cases(60) {
        let mut random = Random(seed);
        let mut document = linkable(&generate::document(&mut random, 25));
        let first = document.alternatives[&AlternativeId(0)].clone();
        document.alternatives = [(AlternativeId(0), first.clone())].into();
        let alone = address::encode(&document).unwrap().text.len();
        // One copy with the ids it had, one with marks taken out and edited under the same ids.
        document.alternatives.insert(AlternativeId(1), first.clone());
        let copied = address::encode(&document).unwrap().text.len();
        assert!(copied <= alone + 60, "seed {seed}: {alone}, then {copied}");
        let count = first.marks.len();
        let mut edited = first;
        edited.marks = edited.marks.into_iter().filter(|(id, _)| id.0 % 7 != 3).collect();
        document.alternatives.insert(AlternativeId(2), edited);
        for _ in 0..count / 4 {
            let edit = generate::edits::edit(&mut random, &document);
            edit.apply(&mut document).unwrap();
            if document.alternatives.is_empty() {
                return;
            }
        }
        let mut document = linkable(&document);
        // Edits by themselves settle no ties; history does, and lets none stand that can not be used.
        for held in document.alternatives.values_mut() {
            release_unusable_ties(&mut held.marks);
        }
        let opened = address::decode(&address::encode(&document).unwrap().text);
        assert_eq!(opened.map(|opened| opened.document), Ok(document), "seed {seed}");
    }
}

#[test]
fn broken_addresses_are_refused_or_open_as_some_plan() {
    for seed in 0..cases(150) {
        let mut random = Random(seed);
        let document = generate::document(&mut random, 6);
        let mut bytes = address::encode(&document).unwrap().text.into_bytes();
        for _ in 0..=random.below(3) {
            let place = 1 + random.below(bytes.len() as u64 - 1) as usize;
            match random.below(3) {
                0 => bytes[place] = *random.pick(b"ABCDEFabcdef0123-_"),
                1 => bytes.truncate(place.max(8)),
                _ => bytes.insert(place, *random.pick(b"ABCDEFabcdef0123-_")),
            }
        }
        let text = String::from_utf8(bytes).unwrap();
        if let Err(fault) = address::decode(&text) {
            assert!(!fault.to_string().is_empty(), "seed {seed}");
        }
        match address::decode(&address::sealed(&text)) {
            Err(fault) => assert!(!fault.to_string().is_empty(), "seed {seed}"),
            Ok(opened) => {
                if let Ok(told) = address::encode(&opened.document) {
                    let again = address::decode(&told.text).unwrap();
                    assert_eq!(again.document, opened.document, "seed {seed}");
                }
            }
        }
    }
}
