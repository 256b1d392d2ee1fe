//! Every published version of a format keeps a sample that must still open, and still says the same.

use hobnail_core::order::OrderedSet;

use hobnail_core::exchange::{address, journal_file, plan_file};
use hobnail_core::plan::history::Limits;
use hobnail_core::plan::journal::Entry;
use hobnail_core::plan::{Mark, MarkKind};

fn fixture(name: &str) -> String {
    let path = format!("{}/../tests/fixtures/{name}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|fault| panic!("{path}: {fault}"))
}

#[test]
fn a_plan_file_of_version_1_opens_whole() {
    let text = fixture("plan_file/version_1.geojson");
    let opened = plan_file::read(text.as_bytes()).unwrap();
    assert_eq!(opened.faults, []);
    let marks = opened
        .document
        .alternatives
        .values()
        .flat_map(|held| held.marks.values());
    let kinds: OrderedSet<MarkKind> = marks.map(Mark::kind).collect();
    assert_eq!(kinds.len(), 11, "{kinds:?}");
    let document = &opened.document;
    assert!(document.topography.is_some() && document.base_image.is_some() && !document.site.boundary.is_empty());
    assert!(!document.settings.overridden_factors.is_empty() && !document.program.is_empty());
    assert_eq!(plan_file::write(document).unwrap(), text);
}

#[test]
fn a_journal_of_version_1_is_taken_up_whole() {
    let text = fixture("journal/version_1.journal");
    let (entries, damage) = journal_file::read_lines(text.as_bytes());
    assert_eq!(damage, []);
    assert_eq!(entries.iter().map(journal_file::write_line).collect::<String>(), text);
    let kinds: OrderedSet<u8> = entries
        .iter()
        .map(|held| match held.entry {
            Entry::Snapshot(_) => 0,
            Entry::Commit(_) => 1,
            Entry::Undo => 2,
            Entry::Redo => 3,
            Entry::Moment(_) => 4,
        })
        .collect();
    assert_eq!(kinds.len(), 5);
    assert_eq!(
        journal_file::read(text.as_bytes(), Limits::default()).losses(),
        Vec::<String>::new()
    );
}

#[test]
fn addresses_of_version_1_open_as_they_did() {
    for name in ["everything", "village"] {
        let text = fixture(&format!("address/version_1/{name}.txt"));
        let opened = address::decode(&text).unwrap();
        let expected = fixture(&format!("address/version_1/{name}.geojson"));
        assert_eq!(plan_file::write(&opened.document).unwrap(), expected, "{name}");
    }
}
