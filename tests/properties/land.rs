//! Land, homes and floor: parts sum to the whole; a cut without a street, a move, a mirror and quarter turns change no
//! land figure.

use hobnail_core::order::OrderedMap;

use hobnail_core::exchange::plan_file;
use hobnail_core::fabric::FaceId;
use hobnail_core::fabric::lots::Lot;
use hobnail_core::figures::leaf::Cell;
use hobnail_core::measures::land::claims::ClaimCache;
use hobnail_core::measures::land::count::LandCount;
use hobnail_core::plan::inside::goes_around;
use hobnail_core::plan::land::{Hand, Portion};
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    AlternativeId, BuildingTypeId, Document, Edit, Footprint, LandUse, Mark, MarkId, PlanPoint, SoftArea, Street,
    StreetRole, StreetSection, StreetSectionId, Vertex,
};
use hobnail_core::study::Study;

use crate::generate;
use crate::random::Random;

pub const SAMPLES: [&str; 4] = [
    include_str!("../../sample-sketches/blank-site.geojson"),
    include_str!("../../sample-sketches/compact-village.geojson"),
    include_str!("../../sample-sketches/conventional-subdivision.geojson"),
    include_str!("../../sample-sketches/repaired-strip.geojson"),
];

/// A street section that takes no land and that nobody uses.
const LINE: StreetSectionId = StreetSectionId(u32::MAX);

/// A sample with some uses taken away, soft areas drawn over it, and no side with a building type of its own.
fn sketch(random: &mut Random) -> Study {
    let mut document = plan_file::read(random.pick(&SAMPLES).as_bytes()).unwrap().document;
    if random.within(0, 3) == 0 {
        document.site.boundary.clear();
    }
    let nothing = StreetSection {
        name: String::new(),
        strips: Vec::new(),
        target_speed_km_h: 0,
        walkable: false,
        cyclable: false,
        drivable: false,
        fronts_left: false,
        fronts_right: false,
    };
    document.street_sections.insert(LINE, nothing);
    let types: Vec<BuildingTypeId> = document.building_types.keys().copied().collect();
    let ids: Vec<AlternativeId> = document.alternatives.keys().copied().collect();
    let alternative = *random.pick(&ids);
    document.alternatives.retain(|id, _| *id == alternative);
    let next = document.next_mark_id().0;
    let marks = &mut document.alternatives.get_mut(&alternative).unwrap().marks;
    marks.retain(|_, mark| mark.as_use().is_none() || random.within(0, 3) > 0);
    for mark in marks.values_mut() {
        if let Mark::Use(held) = mark {
            held.sides.clear();
        }
    }
    for place in 0..random.within(0, 3) as u32 {
        let (x, y) = (random.within(-400_000, 300_000), random.within(-300_000, 300_000));
        let (w, h) = (random.within(50_000, 300_000), random.within(50_000, 300_000));
        let corners = [(0, 0), (w, 10_000), (w - 20_000, h), (5_000, h)];
        let portion = |share_ppm, building_type| Portion {
            building_type,
            share_ppm,
        };
        let area = SoftArea {
            outline: corners.iter().map(|(dx, dy)| PlanPoint::new(x + dx, y + dy)).collect(),
            program: vec![
                portion(600_000, *random.pick(&types)),
                portion(250_000, *random.pick(&types)),
            ],
            land_use: LandUse::Residential,
            intensity_ppm: random.within(300_000, 1_000_000) as u32,
            phase: None,
        };
        marks.insert(MarkId(next + place), Mark::SoftArea(area));
    }
    let mut study = Study::open(document).unwrap();
    assert!(study.show_alternative(alternative));
    study
}

fn number(study: &Study, id: &str) -> f64 {
    match study.evaluation().value(id) {
        Some(Cell::Number(value)) => value,
        other => panic!("{id}: {other:?}"),
    }
}

fn total(study: &Study, id: &str) -> f64 {
    let evaluation = study.evaluation();
    let cells = evaluation.cells(evaluation.graph().index(id).unwrap());
    cells.iter().filter_map(Cell::number).sum()
}

/// Every land figure by its id and cell, in square meters or as a share.
fn land(study: &Study) -> OrderedMap<(String, usize), Option<f64>> {
    let evaluation = study.evaluation();
    let is_land = |id: &str| id.starts_with("land.") && !id.contains("_in_lots") && id != "land.open_space";
    // What lots, and people who live in whole lots, use and ask for.
    let of_lots = [
        "land.in_no_lot",
        "land.park_land_elsewhere",
        "land.park_land_per_person",
        "land.parks_elsewhere",
        "land.school_",
    ];
    let is_land = |id: &str| is_land(id) && !of_lots.iter().any(|begun| id.starts_with(begun));
    let figures = evaluation.graph().indices();
    figures
        .filter(|index| is_land(&evaluation.graph().node(*index).id))
        .flat_map(|index| {
            let id = evaluation.graph().node(index).id.clone();
            let cells = evaluation.cells(index).into_iter().enumerate();
            cells
                .map(move |(cell, value)| ((id.clone(), cell), value.number()))
                .collect::<Vec<_>>()
        })
        .collect()
}

#[track_caller]
fn check_same_land(before: &Study, after: &Study, within_m2: f64, case: &str) {
    let (before, after) = (land(before), land(after));
    assert_eq!(before.len(), after.len(), "{case}");
    for (at, value) in &before {
        let is_same = match (value, after[at]) {
            (Some(a), Some(b)) => (a - b).abs() <= within_m2,
            (a, b) => *a == b,
        };
        assert!(
            is_same,
            "{case}: {at:?} was {value:?}, is {:?}, allowed {within_m2}",
            after[at]
        );
    }
}

/// Twice the square millimeters that rounding to the grid may move: a millimeter along all that is drawn.
fn rounding_m2(study: &Study) -> f64 {
    let arrangement = &study.fabric().arrangement;
    let length_m: f64 = arrangement
        .edges()
        .map(|edge| arrangement.length_um(edge) as f64 / 1e6)
        .sum();
    let outlines = study.document().alternatives[&study.alternative()].marks.values();
    let around_m: f64 = outlines
        .filter_map(|mark| match mark {
            Mark::Constraint(area) => Some(&area.outline),
            Mark::SoftArea(area) => Some(&area.outline),
            _ => None,
        })
        .flat_map(|outline| outline.iter().zip(outline.iter().cycle().skip(1)))
        .map(|(a, b)| a.distance_um(*b) as f64 / 1e6)
        .sum();
    2e-3 * (length_m + around_m)
}

#[test]
fn parts_of_land_homes_and_floor_sum_to_the_whole() {
    for seed in 0..crate::cases(40) {
        let study = sketch(&mut Random(seed));
        let (document, fabric) = (study.document(), study.fabric());
        let count = LandCount::of(
            document,
            study.alternative(),
            fabric,
            study.painted(),
            &mut ClaimCache::default(),
        );
        let site: i128 = count.parts.iter().flatten().sum();
        assert_eq!(site, count.site, "seed {seed}");
        let in_faces: i128 = fabric
            .faces
            .iter()
            .filter(|face| face.is_in_site)
            .map(|face| fabric.arrangement.twice_area_mm2(face.id))
            .sum();
        if count.has_boundary {
            assert_eq!(site, in_faces, "seed {seed}");
        } else {
            assert!(site >= in_faces, "seed {seed}");
        }
        let alike = |what: &str, a: f64, b: f64| {
            assert!(
                (a - b).abs() <= 1e-12 * a.abs().max(1.0),
                "seed {seed}: {what} {a} and {b}"
            );
        };
        alike("site", number(&study, "land.site"), count.site as f64 / 2e6);
        let (bar, site_m2) = (total(&study, "land.bar"), number(&study, "land.site"));
        assert_eq!(bar.to_bits(), site_m2.to_bits(), "seed {seed}: {bar} and {site_m2}");
        alike("shares", total(&study, "land.bar_share"), 1.0);
        let parts = ["land.right_of_way", "land.held_back", "land.buildable"].map(|id| number(&study, id));
        alike(
            "streets, held back, buildable",
            parts.iter().sum(),
            number(&study, "land.site"),
        );
        alike(
            "held back",
            total(&study, "land.held_back_by_kind"),
            number(&study, "land.held_back"),
        );
        for (quantity, whole) in [
            ("homes.", "homes.count"),
            ("people.", "people.count"),
            ("jobs.", "jobs.count"),
            ("density.floor_", "density.floor_area"),
        ] {
            for by in [
                "by_building_type",
                "by_price_band",
                "by_phase",
                "by_building_type_and_price_band",
                "by_building_type_and_phase",
            ] {
                let table = format!("{quantity}{by}");
                alike(&table, total(&study, &table), number(&study, whole));
            }
        }
        let floor = number(&study, "density.floor_area");
        alike("floor", total(&study, "mix.floor_area_by_building_type"), floor);
        alike("floor by use", total(&study, "mix.floor_area"), floor);
        let soft: f64 = total(&study, "land.soft");
        alike("soft", soft, number(&study, "land.of_soft_areas"));
    }
}

/// Whatever a file holds, land is counted without complaint and sums up.
#[test]
fn land_of_any_document_sums_to_its_faces() {
    for seed in 1_000..1_000 + crate::cases(60) {
        let mut random = Random(seed);
        let mut study = Study::open(generate::document(&mut random, 30)).unwrap();
        let ids: Vec<AlternativeId> = study.document().alternatives.keys().copied().collect();
        for alternative in ids {
            assert!(study.show_alternative(alternative));
            let (document, fabric) = (study.document(), study.fabric());
            let count = LandCount::of(
                document,
                alternative,
                fabric,
                study.painted(),
                &mut ClaimCache::default(),
            );
            assert_eq!(count.parts.iter().flatten().sum::<i128>(), count.site, "seed {seed}");
        }
    }
}

fn line(from: PlanPoint, to: PlanPoint) -> Mark {
    Mark::Street(Street {
        line: vec![Vertex::at(from), Vertex::at(to)],
        section: LINE,
        name: String::new(),
        role: StreetRole::Path,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    })
}

/// Lots that a cut goes through, and one at each end of it on either side, may be lost or won; so may what rounding to
/// whole lots leaves, and no other face's lots change.
#[track_caller]
fn check_same_lots(before: &Study, after: &Study, face: FaceId, cut: [PlanPoint; 2], seed: u64) {
    let Some(painted) = before.painted().iter().find(|held| held.face == face) else {
        return;
    };
    let side = |point: PlanPoint| point.side_of(cut[0], cut[1]);
    let is_cut = |lot: &&Lot| {
        let sides: Vec<_> = lot.outline.iter().map(|point| side(*point)).collect();
        sides.iter().any(|held| *held != sides[0])
    };
    let lots = &painted.laid.lots;
    let met = lots.iter().filter(is_cut).count();
    let (less, more) = (
        total(before, "lots.by_building_type"),
        total(after, "lots.by_building_type"),
    );
    assert!(
        (more - less).abs() <= met as f64 + 4.0,
        "seed {seed}: {less} lots, then {more}; {met} of {} cut",
        lots.len()
    );
}

#[test]
fn splitting_a_block_with_no_street_between_changes_no_land() {
    let mut splits = 0;
    for seed in 0..crate::cases(80) {
        let mut random = Random(seed);
        let mut study = sketch(&mut random);
        let before = Study::open(study.document().clone()).unwrap();
        let faces: Vec<usize> = (0..study.fabric().faces.len())
            .filter(|face| study.fabric().faces[*face].use_mark.is_some())
            .collect();
        if faces.is_empty() {
            continue;
        }
        let face = study.fabric().faces[*random.pick(&faces)].clone();
        let shell = face.outline[0].clone();
        let middle = |side: usize| {
            let (a, b) = (shell[side], shell[(side + 1) % shell.len()]);
            PlanPoint::new(i32::midpoint(a.x_mm, b.x_mm), i32::midpoint(a.y_mm, b.y_mm))
        };
        // From one long edge to another, so that each end is out of reach of every other street.
        let is_long = |side: &usize| shell[*side].distance_um(shell[(side + 1) % shell.len()]) > 45_000_000;
        let long: Vec<usize> = (0..shell.len()).filter(is_long).collect();
        if long.len() < 2 {
            continue;
        }
        let first = random.within(0, long.len() as i32 - 1) as usize;
        let second = (first + random.within(1, long.len() as i32 - 1) as usize) % long.len();
        let ends = [middle(long[first]), middle(long[second])];
        let inside = PlanPoint::new(
            i32::midpoint(ends[0].x_mm, ends[1].x_mm),
            i32::midpoint(ends[0].y_mm, ends[1].y_mm),
        );
        // A line that leaves the block, or runs along it within a right-of-way, is another matter.
        let is_land = face.land.pieces.iter().any(|piece| goes_around(&piece[0], inside));
        if study.fabric().locator.face_at(inside) != face.id || !is_land {
            continue;
        }
        let cut = line(ends[0], ends[1]);
        let faces_before = study.fabric().faces.len();
        let edit = Edit::mark(study.document(), study.alternative(), study.next_mark_id(), Some(cut));
        study.apply("Split", vec![edit]).unwrap();
        if study.fabric().faces.len() != faces_before + 1 {
            continue;
        }
        check_same_land(&before, &study, rounding_m2(&study), &format!("seed {seed}"));
        check_same_lots(&before, &study, face.id, ends, seed);
        splits += 1;
    }
    assert!(splits > 20, "only {splits} blocks were split");
}

pub type Motion<'a> = &'a dyn Fn(PlanPoint) -> PlanPoint;

/// The document with every point moved by `to`, which may mirror; its sides and sections are mirrored with it.
pub fn transformed(document: &Document, mirrors: bool, to: Motion<'_>) -> Document {
    let mut moved = document.clone();
    let all = |points: &mut Vec<PlanPoint>| points.iter_mut().for_each(|point| *point = to(*point));
    let footprint = |held: &mut Footprint| match held {
        Footprint::Point(point) => *point = to(*point),
        Footprint::Line(points) | Footprint::Area(points) => points.iter_mut().for_each(|point| *point = to(*point)),
    };
    all(&mut moved.site.boundary);
    if mirrors {
        for section in moved.street_sections.values_mut() {
            std::mem::swap(&mut section.fronts_left, &mut section.fronts_right);
            section.strips.reverse();
        }
    }
    for mark in moved.alternatives.values_mut().flat_map(|held| held.marks.values_mut()) {
        match mark {
            Mark::Street(street) => street
                .line
                .iter_mut()
                .for_each(|vertex| vertex.point = to(vertex.point)),
            Mark::Use(held) => {
                held.anchor = to(held.anchor);
                for side in &mut held.sides {
                    side.at = to(side.at);
                    if mirrors {
                        side.hand = if side.hand == Hand::Left {
                            Hand::Right
                        } else {
                            Hand::Left
                        };
                    }
                }
            }
            Mark::SoftArea(area) => all(&mut area.outline),
            Mark::Constraint(area) => all(&mut area.outline),
            Mark::Place(place) => footprint(&mut place.footprint),
            Mark::SiteAccess(access) => access.at = to(access.at),
            Mark::Parcel(parcel) => all(&mut parcel.outline),
            Mark::Barrier(barrier) => all(&mut barrier.line),
            Mark::Crossing(crossing) => crossing.at = to(crossing.at),
            Mark::Outside(outside) => footprint(&mut outside.footprint),
            Mark::Note(note) => note.at = to(note.at),
        }
    }
    moved
}

#[test]
fn moving_mirroring_and_quarter_turns_change_no_land() {
    for seed in 0..crate::cases(10) {
        let mut random = Random(seed);
        let study = sketch(&mut random);
        let (dx, dy) = (
            random.within(-3_000_000, 3_000_000),
            random.within(-3_000_000, 3_000_000),
        );
        let at = PlanPoint::new;
        let motions: [(&str, bool, Motion<'_>); 5] = [
            ("moved", false, &|p| at(p.x_mm + dx, p.y_mm + dy)),
            ("mirrored", true, &|p| at(-p.x_mm, p.y_mm)),
            ("a quarter turn", false, &|p| at(-p.y_mm, p.x_mm)),
            ("a half turn", false, &|p| at(-p.x_mm, -p.y_mm)),
            ("mirrored, three quarters of a turn", true, &|p| at(-p.y_mm, -p.x_mm)),
        ];
        for (motion, mirrors, to) in motions {
            let moved = Study::open(transformed(study.document(), mirrors, to)).unwrap();
            check_same_land(&study, &moved, rounding_m2(&study), &format!("seed {seed}, {motion}"));
        }
    }
}
