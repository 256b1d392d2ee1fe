//! A study over random gestures: whatever was done, it stands as if opened anew, and undo brings back what was.

mod gestures;
mod scope;

use gestures::{Drawer, start_document};
use hobnail_core::network::{CostField, LinkId, Location};
use hobnail_core::plan::Document;
use hobnail_core::study::Study;

/// Everything a study shows, in comparable form.
fn shown(study: &Study) -> impl PartialEq + std::fmt::Debug + use<> {
    let evaluation = study.evaluation();
    let figures: Vec<_> = evaluation
        .graph()
        .indices()
        .map(|index| evaluation.cells(index))
        .collect();
    let fabric = study.fabric();
    let faces: Vec<_> = fabric
        .faces
        .iter()
        .map(|face| {
            (
                face.outline.clone(),
                face.anchor,
                face.land.as_ref().clone(),
                face.use_mark,
                face.sides.clone(),
            )
        })
        .collect();
    let at_links = |walk: &CostField| -> Vec<_> {
        (0..study.network().link_count() as u32)
            .map(|link| {
                walk.at(
                    study.network(),
                    Location {
                        link: LinkId(link),
                        along_um: 0,
                    },
                )
            })
            .collect()
    };
    let walk = study.walk().map(at_links).map_err(ToOwned::to_owned);
    (
        figures,
        faces,
        fabric.links.clone(),
        fabric.face_of_mark.clone(),
        walk,
        study.painted().to_vec(),
    )
}

fn opened_anew(study: &Study) -> Study {
    let mut anew = Study::open(study.document().clone()).unwrap();
    assert!(anew.show_alternative(study.alternative()));
    anew
}

/// Invariant 8: incremental equals from scratch, exactly.
#[test]
fn a_study_equals_one_opened_anew_after_any_gestures() {
    for seed in 0..24 {
        let mut drawer = Drawer::new(seed);
        let mut study = Study::open(start_document(&mut drawer)).unwrap();
        for step in 0..40 {
            drawer.act(&mut study);
            assert!(
                shown(&study) == shown(&opened_anew(&study)),
                "seed {seed}, step {step}: {}",
                drawer.last
            );
        }
    }
}

/// Invariant 5: edit then undo restores equality, for the document and for all that follows from it.
#[test]
fn undoing_every_step_restores_every_document_on_the_way() {
    for seed in 100..124 {
        let mut drawer = Drawer::new(seed);
        let mut study = Study::open(start_document(&mut drawer)).unwrap();
        let mut before: Vec<Document> = Vec::new();
        for _ in 0..30 {
            let document = study.document().clone();
            if drawer.gesture(&mut study) {
                before.push(document);
            }
        }
        let last = study.document().clone();
        for document in before.iter().rev() {
            assert!(study.undo().unwrap(), "seed {seed}");
            assert!(
                study.document() == document,
                "seed {seed}: undo did not restore the document"
            );
        }
        assert!(!study.undo().unwrap());
        assert!(shown(&study) == shown(&opened_anew(&study)), "seed {seed}");
        while study.redo().unwrap() {}
        assert!(study.document() == &last, "seed {seed}: redo did not lead back");
    }
}

/// A preview depends on where the pointer is, not on the way it took.
#[test]
fn a_gesture_depends_on_its_end_and_not_on_its_path() {
    for seed in 200..240 {
        let mut drawer = Drawer::new(seed);
        let mut study = Study::open(start_document(&mut drawer)).unwrap();
        for _ in 0..6 {
            drawer.gesture(&mut study);
        }
        let start = study.document().clone();
        let Some((edits, detours)) = drawer.drag(&study) else {
            continue;
        };
        // Two studies, since an id once given is never given again, not even after undo.
        let mut straight = Study::open(start.clone()).unwrap();
        straight.apply("Straight there", edits.clone()).unwrap();
        let mut detoured = Study::open(start).unwrap();
        detoured.begin("By detours").unwrap();
        for detour in detours {
            detoured.change(detour).unwrap();
        }
        detoured.change(edits).unwrap();
        detoured.commit().unwrap();
        assert!(detoured.document() == straight.document(), "seed {seed}");
    }
}

/// A drag that comes back leaves the plan as it was, in one gesture and in two.
#[test]
fn dragging_out_and_back_leaves_every_use() {
    let mut drags = 0;
    for seed in 300..360 {
        let mut drawer = Drawer::new(seed);
        let mut study = Study::open(start_document(&mut drawer)).unwrap();
        let start = study.document().clone();
        let Some((out, _)) = drawer.drag(&study) else { continue };
        study.begin("Out and back").unwrap();
        study.change(out.clone()).unwrap();
        study.change(Vec::new()).unwrap();
        assert_eq!(study.commit().unwrap(), None, "seed {seed}");
        assert!(study.document() == &start, "seed {seed}");

        study.apply("Out", out.clone()).unwrap();
        let outside = study.document().clone();
        if gestures::split_or_merged(&start, &outside) {
            continue;
        }
        let back = out.iter().map(hobnail_core::plan::Edit::reversed).collect();
        study.apply("Back", back).unwrap();
        // Anchors may have moved within their faces; what each face is used for has not.
        let start_study = Study::open(start).unwrap();
        for face in &start_study.fabric().faces {
            let (then, now) = (
                gestures::use_at(&start_study, face.anchor),
                gestures::use_at(&study, face.anchor),
            );
            assert_eq!(
                then, now,
                "seed {seed}: the use at {:?} differs after a drag there and back: {out:?}",
                face.anchor
            );
        }
        drags += 1;
    }
    assert!(drags > 10, "only {drags} drags left every face its own use");
}

/// Cutting a painted face leaves both halves painted alike, and taking the cut away again leaves one use.
#[test]
fn a_cut_and_its_removal_keep_the_use() {
    let mut cuts = 0;
    for seed in 400..440 {
        let mut drawer = Drawer::new(seed);
        let mut study = Study::open(start_document(&mut drawer)).unwrap();
        let Some(cut) = drawer.cut(&study) else { continue };
        let before = study.document().clone();
        study.apply("Cut", cut.edits.clone()).unwrap();
        let program_at = |study: &Study, inside| gestures::use_at(study, inside).map(|(program, _)| program);
        let programs: Vec<_> = cut.insides.iter().map(|inside| program_at(&study, *inside)).collect();
        assert_eq!(
            programs,
            [Some(cut.program.clone()), Some(cut.program.clone())],
            "seed {seed}"
        );
        let mend = cut.edits.iter().map(hobnail_core::plan::Edit::reversed).collect();
        study.apply("Mend", mend).unwrap();
        assert_eq!(
            program_at(&study, cut.insides[0]),
            Some(cut.program.clone()),
            "seed {seed}"
        );
        assert_eq!(
            gestures::use_count(study.document()),
            gestures::use_count(&before),
            "seed {seed}"
        );
        cuts += 1;
    }
    assert!(cuts > 20, "only {cuts} faces were cut");
}
