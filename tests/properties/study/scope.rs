//! A part of a plan measures as a plan from which the rest was deleted, and looking at a part changes nothing drawn.

use hobnail_core::order::OrderedSet;

use hobnail_core::exchange::plan_file;
use hobnail_core::plan::land::{ConstraintArea, ConstraintKind, OwnerGroup, Parcel, Portion};
use hobnail_core::plan::scope::{Scope, Standing};
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{
    AlternativeId, Certainty, Document, Mark, MarkId, PhaseId, PlanPoint, Street, StreetSection, StreetSectionId,
    UseMark, Vertex,
};
use hobnail_core::study::Study;

use super::gestures::{Drawer, start_document};
use super::shown;
use crate::random::Random;

const SAMPLES: [&str; 2] = [
    include_str!("../../../sample-sketches/compact-village.geojson"),
    include_str!("../../../sample-sketches/repaired-strip.geojson"),
];

/// A sample whose marks have random phases and statuses, and a few parcels; with the alternative that is kept.
fn plan(random: &mut Random) -> (Document, AlternativeId) {
    let mut document = plan_file::read(random.pick(&SAMPLES).as_bytes()).unwrap().document;
    let ids: Vec<AlternativeId> = document.alternatives.keys().copied().collect();
    let alternative = *random.pick(&ids);
    document.alternatives.retain(|id, _| *id == alternative);
    let phases: Vec<PhaseId> = document.phases.keys().copied().collect();
    let held = document.alternatives.get_mut(&alternative).unwrap();
    for mark in held.marks.values_mut() {
        let phase = [None, Some(phases[0]), Some(phases[1])][random.within(0, 2) as usize];
        match mark {
            Mark::Street(street) => {
                street.phase = phase;
                street.status = *random.pick(&[
                    Status::Existing,
                    Status::Kept,
                    Status::New,
                    Status::New,
                    Status::Removed,
                ]);
            }
            Mark::Use(held) => held.phase = phase,
            Mark::Place(place) => {
                place.phase = phase;
                place.certainty = *random.pick(&[Certainty::Existing, Certainty::Committed, Certainty::HopedFor]);
            }
            _ => {}
        }
    }
    for _ in 0..3 {
        let (x, y) = (random.within(-300_000, 300_000), random.within(-300_000, 300_000));
        let (w, h) = (random.within(1_000, 300_000), random.within(1_000, 300_000));
        let id = document.next_mark_id();
        let parcel = Parcel {
            label: String::new(),
            outline: vec![(0, 0), (w, 0), (w, h), (0, h)]
                .into_iter()
                .map(|(dx, dy)| PlanPoint::new(x + dx, y + dy))
                .collect(),
            owner: *random.pick(&OwnerGroup::ALL),
            beside: None,
        };
        document
            .alternatives
            .get_mut(&alternative)
            .unwrap()
            .marks
            .insert(id, Mark::Parcel(parcel));
    }
    (document, alternative)
}

fn scope(random: &mut Random, document: &Document) -> Scope {
    let phases: Vec<PhaseId> = document.phases.keys().copied().collect();
    let some = |random: &mut Random| -> OrderedSet<PhaseId> {
        phases.iter().copied().filter(|_| random.within(0, 1) == 1).collect()
    };
    let standing = *random.pick(&[Standing::Today, Standing::Proposed, Standing::Proposed]);
    let phases = (standing == Standing::Proposed && random.within(0, 3) > 0).then(|| some(random));
    let owners = OwnerGroup::ALL.into_iter().filter(|_| random.within(0, 3) == 0);
    Scope {
        phases,
        left_out_owners: owners.collect(),
        standing,
    }
}

/// The plan with all deleted that the scope leaves out, by the rules as a person would state them.
fn cut_down(document: &Document, alternative: AlternativeId, scope: &Scope) -> Document {
    let mut cut = document.clone();
    let first = *document.phases.keys().next().unwrap();
    let built = |phase: Option<PhaseId>| {
        scope
            .phases
            .as_ref()
            .is_none_or(|phases| phases.contains(&phase.unwrap_or(first)))
    };
    let today = scope.standing == Standing::Today;
    let marks = &mut cut.alternatives.get_mut(&alternative).unwrap().marks;
    let lots: Vec<Parcel> = marks
        .values()
        .filter_map(|mark| match mark {
            Mark::Parcel(parcel) if scope.left_out_owners.contains(&parcel.owner) => Some(parcel.clone()),
            _ => None,
        })
        .collect();
    let within = |lot: &Parcel, p: PlanPoint| {
        let (low, high) = (lot.outline[0], lot.outline[2]);
        (low.x_mm..high.x_mm).contains(&p.x_mm) && (low.y_mm..high.y_mm).contains(&p.y_mm)
    };
    marks.retain(|_, mark| match mark {
        Mark::Street(street) => match street.status {
            Status::Existing | Status::Kept => true,
            Status::New => !today && built(street.phase),
            Status::Removed => today || !built(street.phase),
        },
        Mark::Use(held) => !today && built(held.phase),
        Mark::Place(place) => {
            use hobnail_core::plan::Footprint::{Area, Line, Point};
            let points = match &place.footprint {
                Point(point) => vec![*point],
                Line(points) | Area(points) => points.clone(),
            };
            let is_there = !lots.iter().any(|lot| points.iter().all(|point| within(lot, *point)));
            place.certainty == Certainty::Existing || (!today && built(place.phase) && is_there)
        }
        _ => true,
    });
    for mark in marks.values_mut() {
        if let Mark::Street(street) = mark
            && street.status == Status::Removed
        {
            street.status = Status::Kept;
        }
    }
    cut
}

/// Numbers of every figure but those of streets and blocks, which see a street that nobody uses as a street.
fn measured(study: &Study) -> Vec<(String, Vec<Option<f64>>)> {
    let evaluation = study.evaluation();
    let figures = evaluation.graph().indices().map(|index| {
        let cells = evaluation.cells(index).iter().map(|cell| cell.number()).collect();
        (evaluation.graph().node(index).id.clone(), cells)
    });
    let is_of_streets = |id: &str| ["streets.", "blocks.", "sun."].iter().any(|part| id.starts_with(part));
    figures.filter(|(id, _)| !is_of_streets(id)).collect()
}

#[track_caller]
fn check_alike(a: &Study, b: &Study, case: &str) {
    check_numbers(a, b, case, |_| true);
}

#[track_caller]
fn check_numbers(a: &Study, b: &Study, case: &str, is_compared: impl Fn(&str) -> bool) {
    let both = measured(a).into_iter().zip(measured(b));
    for ((id, a), (_, b)) in both.filter(|((id, _), _)| is_compared(id)) {
        assert_eq!(a.len(), b.len(), "{case}: {id}");
        for pair in a.iter().zip(&b) {
            let is_alike = match pair {
                (Some(a), Some(b)) => (a - b).abs() <= 1e-9 * a.abs().max(1.0),
                (a, b) => a == b,
            };
            assert!(is_alike, "{case}: {id} is {pair:?}");
        }
    }
}

/// Today, and without phases, exactly: streets, walks and all.
#[test]
fn a_scope_measures_as_the_plan_without_what_it_leaves_out() {
    for seed in 0..crate::cases(12) {
        let mut random = Random(seed);
        let (document, alternative) = plan(&mut random);
        let scope = Scope {
            left_out_owners: OrderedSet::new(),
            phases: None,
            standing: *random.pick(&[Standing::Today, Standing::Proposed]),
        };
        let cut = cut_down(&document, alternative, &scope);
        let mut study = Study::open(document).unwrap();
        assert!(study.set_scope(scope.clone()));
        assert!(
            shown(&study) == shown(&Study::open(cut).unwrap()),
            "seed {seed}: {scope:?}"
        );
    }
}

/// Some phases measure as the plan without the others, whose streets keep their land and nobody uses them.
#[test]
fn some_phases_measure_as_the_plan_without_the_others() {
    for seed in 20..20 + crate::cases(12) {
        let mut random = Random(seed);
        let (document, alternative) = plan(&mut random);
        let scope = Scope {
            left_out_owners: OrderedSet::new(),
            ..scope(&mut random, &document)
        };
        let mut cut = cut_down(&document, alternative, &scope);
        let unused = |id: StreetSectionId| StreetSectionId(id.0 + 1_000);
        for (id, section) in &document.street_sections {
            let section = StreetSection {
                walkable: false,
                cyclable: false,
                drivable: false,
                fronts_left: false,
                fronts_right: false,
                ..section.clone()
            };
            cut.street_sections.insert(unused(*id), section);
        }
        let marks = &mut cut.alternatives.get_mut(&alternative).unwrap().marks;
        for (id, mark) in &document.alternatives[&alternative].marks {
            if let (Mark::Street(street), Standing::Proposed) = (mark, scope.standing)
                && street.status == Status::New
                && !marks.contains_key(id)
            {
                let line = Street {
                    section: unused(street.section),
                    ..street.clone()
                };
                marks.insert(*id, Mark::Street(line));
                // A side along it is no side of a street.
                for mark in marks.values_mut() {
                    if let Mark::Use(held) = mark {
                        held.sides.retain(|side| side.street != *id);
                    }
                }
            }
        }
        let mut study = Study::open(document).unwrap();
        assert!(study.set_scope(scope.clone()));
        check_with_streets_nobody_uses(&study, &Study::open(cut).unwrap(), &format!("seed {seed}: {scope:?}"));
    }
}

/// As [`check_alike`], where `b` has a street nobody uses in place of each right-of-way that `a` keeps: land that has no
/// use in `a` is land of streets in `b`, and all other land is the same.
#[track_caller]
fn check_with_streets_nobody_uses(a: &Study, b: &Study, case: &str) {
    let is_land = |id: &str| id.starts_with("land.") || id.starts_with("density.");
    check_numbers(a, b, case, |id| !is_land(id));
    let bar = |study: &Study| {
        let evaluation = study.evaluation();
        let index = evaluation.graph().index("land.bar").unwrap();
        let cells = evaluation.cells(index);
        let mut parts: Vec<f64> = cells.iter().map(|cell| cell.number().unwrap()).collect();
        // The last two parts are streets and land without a use.
        let unused = parts.pop().unwrap();
        *parts.last_mut().unwrap() += unused;
        parts
    };
    for (a, b) in bar(a).iter().zip(bar(b)) {
        assert!(
            (a - b).abs() <= 1e-9 * a.abs().max(1.0),
            "{case}: land.bar is {a} and {b}"
        );
    }
}

/// Where each phase keeps to blocks and streets of its own, a phase alone is the plan from which the other was deleted.
#[test]
fn a_phase_with_streets_of_its_own_is_the_plan_without_the_other() {
    let mut document = plan_file::read(SAMPLES[0].as_bytes()).unwrap().document;
    let alternative = *document.alternatives.keys().next().unwrap();
    let template = document.alternatives[&alternative].marks.values();
    let street = template
        .filter_map(Mark::as_street)
        .find(|street| street.status == Status::New)
        .unwrap()
        .clone();
    let marks = &mut document.alternatives.get_mut(&alternative).unwrap().marks;
    marks.clear();
    for (phase, x) in [(0, -200), (1, 100)] {
        let at = |dx: i32, dy: i32| PlanPoint::new((x + dx) * 1000, dy * 1000);
        let corners = [at(0, 0), at(120, 0), at(120, 80), at(0, 80), at(0, 0)];
        let phase = PhaseId(phase);
        let around = Street {
            line: corners.into_iter().map(Vertex::at).collect(),
            phase: Some(phase),
            ..street.clone()
        };
        let held = UseMark {
            anchor: at(60, 40),
            program: vec![Portion {
                building_type: *document.building_types.keys().next().unwrap(),
                share_ppm: 1_000_000,
            }],
            land_m2: 0,
            sides: Vec::new(),
            phase: Some(phase),
        };
        marks.insert(MarkId(2 * phase.0), Mark::Street(around));
        marks.insert(MarkId(2 * phase.0 + 1), Mark::Use(held));
    }
    for phase in [0, 1] {
        let scope = Scope {
            phases: Some([PhaseId(phase)].into()),
            ..Scope::default()
        };
        let cut = cut_down(&document, alternative, &scope);
        assert_eq!(cut.alternatives[&alternative].marks.len(), 2);
        let mut study = Study::open(document.clone()).unwrap();
        assert!(study.set_scope(scope));
        check_alike(&study, &Study::open(cut).unwrap(), &format!("phase {phase}"));
        assert!(study.evaluation().value("homes.count").unwrap().number().unwrap() > 0.0);
    }
}

/// Land of owners left out is as land under a constraint that answers no but for walking; only its name differs.
#[test]
fn land_of_owners_left_out_is_held_back() {
    for seed in 50..50 + crate::cases(8) {
        let mut random = Random(seed);
        let (document, alternative) = plan(&mut random);
        let scope = scope(&mut random, &document);
        let scope = Scope { phases: None, ..scope };
        let mut cut = cut_down(&document, alternative, &scope);
        let marks = &mut cut.alternatives.get_mut(&alternative).unwrap().marks;
        let left_out: Vec<(MarkId, Parcel)> = marks
            .iter()
            .filter_map(|(id, mark)| match mark {
                Mark::Parcel(parcel) if scope.left_out_owners.contains(&parcel.owner) => Some((*id, parcel.clone())),
                _ => None,
            })
            .collect();
        for (id, parcel) in left_out {
            let area = ConstraintArea {
                name: String::new(),
                outline: parcel.outline,
                kind: ConstraintKind::Contaminated,
                is_buildable: false,
                counts_in_site: false,
                counts_in_buildable: false,
                is_walkable: true,
            };
            marks.insert(id, Mark::Constraint(area));
        }
        let mut study = Study::open(document).unwrap();
        assert!(study.set_scope(scope.clone()));
        let cut = Study::open(cut).unwrap();
        let lands = |study: &Study| -> Vec<_> {
            let faces = study.fabric().faces.iter();
            faces.map(|face| (face.land.pieces.clone(), face.use_mark)).collect()
        };
        assert!(lands(&study) == lands(&cut), "seed {seed}: {scope:?}");
        assert_eq!(study.painted(), cut.painted(), "seed {seed}: {scope:?}");
        for id in ["homes.count", "jobs.count", "walk.center_5min_homes_share"] {
            assert_eq!(
                study.evaluation().value(id),
                cut.evaluation().value(id),
                "seed {seed}: {id}"
            );
        }
    }
}

/// What is drawn does not depend on what is looked at, and looking at everything again shows what a new study shows.
#[test]
fn looking_at_a_part_changes_no_edit() {
    for seed in 500..512 {
        let mut drawers = [Drawer::new(seed), Drawer::new(seed)];
        let document = start_document(&mut drawers[0]);
        assert!(start_document(&mut drawers[1]) == document);
        let mut plain = Study::open(document.clone()).unwrap();
        let mut scoped = Study::open(document).unwrap();
        for step in 0..20 {
            let scope = Scope {
                phases: (step % 3 == 0).then(OrderedSet::new),
                left_out_owners: [OwnerGroup::Unwilling].into(),
                standing: *[Standing::Today, Standing::Proposed].get(step % 2).unwrap(),
            };
            assert!(scoped.set_scope(scope));
            drawers[0].act(&mut plain);
            drawers[1].act(&mut scoped);
            assert!(plain.document() == scoped.document(), "seed {seed}, step {step}");
        }
        assert!(scoped.set_scope(Scope::default()));
        assert!(shown(&plain) == shown(&scoped), "seed {seed}");
    }
}
