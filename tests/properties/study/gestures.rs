//! Random gestures on a small plan, as a person would make them.

use hobnail_core::order::OrderedMap;

use crate::random::Random;

use hobnail_core::plan::document::{Alternative, Document};
use hobnail_core::plan::land::Portion;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    AlternativeId, BuildingTypeId, Certainty, Edit, Footprint, Mark, MarkId, Place, PlaceKind, PlanPoint, SideUse,
    Street, StreetRole, StreetSectionId, UseMark, Vertex,
};
use hobnail_core::study::Study;

const FIRST: AlternativeId = AlternativeId(0);

/// A seeded drawer.
pub struct Drawer {
    random: Random,
    /// What was done last, for the message of a failing test.
    pub last: String,
}

/// A street across a painted face.
pub struct Cut {
    pub edits: Vec<Edit>,
    pub insides: [PlanPoint; 2],
    pub program: Vec<Portion>,
}

impl Drawer {
    pub fn new(seed: u64) -> Self {
        Self {
            random: Random(seed),
            last: String::new(),
        }
    }

    fn next(&mut self) -> u64 {
        self.random.next()
    }

    fn below(&mut self, limit: usize) -> usize {
        (self.next() % limit as u64) as usize
    }

    fn point(&mut self) -> PlanPoint {
        let mut along = || (self.next() % 4_600) as i32 * 100 - 30_000;
        PlanPoint::new(along(), along())
    }

    fn pick<T: Copy>(&mut self, from: &[T]) -> Option<T> {
        if from.is_empty() {
            None
        } else {
            Some(from[self.below(from.len())])
        }
    }

    /// A whole gesture, an undo, a redo, or a change of alternative.
    pub fn act(&mut self, study: &mut Study) {
        match self.below(10) {
            0 => drop(study.undo().unwrap()),
            1 => drop(study.redo().unwrap()),
            2 => {
                let ids: Vec<AlternativeId> = study.document().alternatives.keys().copied().collect();
                let id = self.pick(&ids).unwrap();
                assert!(study.show_alternative(id));
            }
            3 => {
                study.begin("Given up").unwrap();
                for _ in 0..3 {
                    let edits = self.edits(study.document(), study.alternative(), study.next_mark_id());
                    if study.document().alternatives.len() == 1 {
                        // Edits are made for the gesture's start, so only the first can be made from the preview.
                        let _fits = study.change(edits).is_ok();
                    }
                }
                study.cancel().unwrap();
            }
            _ => drop(self.gesture(study)),
        }
    }

    /// One committed gesture; whether it left a step.
    pub fn gesture(&mut self, study: &mut Study) -> bool {
        let edits = self.edits(study.document(), study.alternative(), study.next_mark_id());
        study.apply("A gesture", edits).unwrap().is_some()
    }

    fn edits(&mut self, document: &Document, alternative: AlternativeId, next: MarkId) -> Vec<Edit> {
        let marks = &document.alternatives[&alternative].marks;
        let of_kind = |test: fn(&Mark) -> bool| -> Vec<MarkId> {
            marks.iter().filter(|(_, mark)| test(mark)).map(|(id, _)| *id).collect()
        };
        let streets = of_kind(|mark| mark.as_street().is_some());
        let uses = of_kind(|mark| mark.as_use().is_some());
        let put = |id: MarkId, mark: Option<Mark>| vec![Edit::mark(document, alternative, id, mark)];
        match self.below(9) {
            0 | 1 => {
                let (from, to) = (self.point(), self.point());
                self.last = format!("street from {from:?} to {to:?}");
                put(next, Some(street(vec![from, to], 2)))
            }
            2 => {
                let Some(id) = self.pick(&streets) else {
                    return Vec::new();
                };
                self.last = format!("street {id} removed");
                put(id, None)
            }
            3 | 4 => self.moved_vertex(document, alternative, &streets),
            5 => {
                let Some(id) = self.pick(&streets) else {
                    return Vec::new();
                };
                let Some(Mark::Street(held)) = marks.get(&id) else {
                    return Vec::new();
                };
                let section = StreetSectionId(self.below(document.street_sections.len()) as u32);
                self.last = format!("street {id} built to section {section}");
                put(
                    id,
                    Some(Mark::Street(Street {
                        section,
                        ..held.clone()
                    })),
                )
            }
            6 => {
                let at = self.point();
                self.last = format!("center at {at:?}");
                put(next, Some(center(at)))
            }
            7 => {
                let anchor = self.point();
                self.last = format!("use painted at {anchor:?}");
                let building_type = self.below(document.building_types.len()) as u32;
                put(next, Some(painted(anchor, building_type)))
            }
            _ => {
                let Some(id) = self.pick(&uses) else { return Vec::new() };
                self.last = format!("use {id} removed");
                put(id, None)
            }
        }
    }

    fn moved_vertex(&mut self, document: &Document, alternative: AlternativeId, streets: &[MarkId]) -> Vec<Edit> {
        let Some(id) = self.pick(streets) else {
            return Vec::new();
        };
        let Some(Mark::Street(held)) = document.mark(alternative, id) else {
            return Vec::new();
        };
        let mut moved = held.clone();
        let vertex = self.below(moved.line.len());
        moved.line[vertex] = Vertex::at(self.point());
        self.last = format!("vertex {vertex} of street {id} moved");
        vec![Edit::mark(document, alternative, id, Some(Mark::Street(moved)))]
    }

    /// A vertex dragged a little way: the edits at its end, and the previews on the way.
    pub fn drag(&mut self, study: &Study) -> Option<(Vec<Edit>, Vec<Vec<Edit>>)> {
        let (document, alternative) = (study.document(), study.alternative());
        let marks = &document.alternatives[&alternative].marks;
        let streets: Vec<MarkId> = marks
            .iter()
            .filter(|(_, mark)| mark.as_street().is_some())
            .map(|(id, _)| *id)
            .collect();
        let id = self.pick(&streets)?;
        let held = marks.get(&id)?.as_street()?.clone();
        let vertex = self.below(held.line.len());
        let mut to = |spread_mm: u64| {
            let mut moved = held.clone();
            let point = moved.line[vertex].point;
            let mut by = || (self.next() % (2 * spread_mm)) as i32 - spread_mm as i32;
            moved.line[vertex] = Vertex::at(PlanPoint::new(point.x_mm + by(), point.y_mm + by()));
            vec![Edit::mark(document, alternative, id, Some(Mark::Street(moved)))]
        };
        Some((to(12_000), vec![to(200_000), to(90_000), to(300_000)]))
    }

    /// A street across one painted face that has room for it.
    pub fn cut(&mut self, study: &Study) -> Option<Cut> {
        let (document, alternative) = (study.document(), study.alternative());
        let faces: Vec<_> = study.fabric().used_faces(document, alternative).collect();
        let (face, _, mark) = faces.get(self.below(faces.len().max(1)))?;
        let (mut low, mut high) = (face.outline[0][0], face.outline[0][0]);
        for point in &face.outline[0] {
            low = PlanPoint::new(low.x_mm.min(point.x_mm), low.y_mm.min(point.y_mm));
            high = PlanPoint::new(high.x_mm.max(point.x_mm), high.y_mm.max(point.y_mm));
        }
        let at_mm = low.x_mm + (high.x_mm - low.x_mm) / 10 * (2 + self.below(6) as i32);
        let middle_mm = (low.y_mm + high.y_mm) / 2;
        let line = vec![
            PlanPoint::new(at_mm, low.y_mm - 500),
            PlanPoint::new(at_mm, high.y_mm + 500),
        ];
        let edits = vec![Edit::mark(
            document,
            alternative,
            study.next_mark_id(),
            Some(street(line, 2)),
        )];
        let insides = [
            PlanPoint::new(at_mm - 4_000, middle_mm),
            PlanPoint::new(at_mm + 4_000, middle_mm),
        ];
        let is_inside = |point: &PlanPoint| study.fabric().face_at(*point).is_some_and(|held| held.id == face.id);
        insides.iter().all(is_inside).then(|| Cut {
            edits,
            insides,
            program: mark.program.clone(),
        })
    }
}

/// A grid of streets with most blocks painted, a center, and two alternatives.
pub fn start_document(drawer: &mut Drawer) -> Document {
    let mut document = Document::new(
        "Tried plan",
        GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        },
    );
    let mut marks = OrderedMap::new();
    let mut add = |mark: Mark| {
        let id = MarkId(marks.len() as u32);
        marks.insert(id, mark);
    };
    for line in 0..5 {
        let at = line * 90_000;
        let mut bend = || (drawer.next() % 20_000) as i32 - 10_000;
        add(street(
            vec![
                PlanPoint::new(at, -20_000),
                PlanPoint::new(at + bend(), 150_000),
                PlanPoint::new(at, 380_000),
            ],
            2,
        ));
        add(street(
            vec![
                PlanPoint::new(-20_000, at),
                PlanPoint::new(170_000, at + bend()),
                PlanPoint::new(380_000, at),
            ],
            3,
        ));
    }
    for column in 0..4 {
        for row in 0..4 {
            let anchor = PlanPoint::new(column * 90_000 + 45_000, row * 90_000 + 45_000);
            if (column, row) != (1, 2) {
                add(painted(anchor, (column + row) as u32 % 6));
            }
        }
    }
    add(center(PlanPoint::new(182_000, 181_000)));
    document.alternatives.insert(
        AlternativeId(1),
        Alternative {
            name: "Other".to_owned(),
            ..Alternative::default()
        },
    );
    document.alternatives.insert(
        FIRST,
        Alternative {
            name: "Grid".to_owned(),
            table: String::new(),
            marks,
        },
    );
    document
}

fn street(points: Vec<PlanPoint>, section: u32) -> Mark {
    Mark::Street(Street {
        line: points.into_iter().map(Vertex::at).collect(),
        section: StreetSectionId(section),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    })
}

fn center(at: PlanPoint) -> Mark {
    Mark::Place(Place {
        name: String::new(),
        kind: PlaceKind::Center,
        footprint: Footprint::Point(at),
        minimum_size_m2: 0,
        certainty: Certainty::Committed,
        phase: None,
    })
}

fn painted(anchor: PlanPoint, building_type: u32) -> Mark {
    Mark::Use(UseMark {
        anchor,
        program: vec![Portion {
            building_type: BuildingTypeId(building_type),
            share_ppm: 1_000_000,
        }],
        // As laid by a gesture that measured the land it painted; here the land is not yet known.
        land_m2: 0,
        sides: Vec::new(),
        phase: None,
    })
}

/// What the face at a point is used for.
pub fn use_at(study: &Study, point: PlanPoint) -> Option<(Vec<Portion>, Vec<SideUse>)> {
    let id = study.fabric().face_at(point)?.use_mark?;
    let held = study.document().mark(study.alternative(), id)?.as_use()?;
    Some((held.program.clone(), held.sides.clone()))
}

/// How many use marks a document has.
pub fn use_count(document: &Document) -> usize {
    document
        .alternatives
        .values()
        .flat_map(|held| held.marks.values())
        .filter(|mark| mark.as_use().is_some())
        .count()
}

/// Whether a gesture made or removed marks of uses: a face was cut or merged.
pub fn split_or_merged(before: &Document, after: &Document) -> bool {
    let ids = |document: &Document| -> Vec<(AlternativeId, MarkId)> {
        let held = document.alternatives.iter();
        held.flat_map(|(alternative, held)| held.marks.keys().map(|id| (*alternative, *id)))
            .collect()
    };
    ids(before) != ids(after)
}
