//! What passes between page and worker as text arrives as it was.

use hobnail_core::exchange::passed::{document_from_text, document_to_text, edits_from_text, edits_to_text};
use hobnail_core::plan::Edit;

use crate::cases;
use crate::generate;
use crate::generate::edits::gesture;
use crate::random::Random;

#[test]
fn documents_and_edits_arrive_as_they_were() {
    for seed in 0..cases(150) {
        let document = generate::document(&mut Random(seed), 25);
        assert_eq!(
            document_from_text(&document_to_text(&document)).as_ref(),
            Some(&document),
            "seed {seed}"
        );
        let edits: Vec<Edit> = gesture(&mut Random(seed + 1_000), &document);
        assert_eq!(edits_from_text(&edits_to_text(&edits)), Some(edits), "seed {seed}");
    }
}

#[test]
fn what_is_cut_short_or_is_something_else_is_refused() {
    let document = generate::document(&mut Random(7), 10);
    let text = document_to_text(&document);
    for cut in (0..text.len()).step_by(97) {
        if text.is_char_boundary(cut) {
            assert_eq!(document_from_text(&text[..cut]), None, "cut at {cut}");
        }
    }
    assert_eq!(edits_from_text(&text), None);
    assert_eq!(document_from_text("[]"), None);
}
