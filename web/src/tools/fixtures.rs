//! Small plans for the tests of the tools.

use hobnail_core::order::OrderedMap;

use hobnail_core::plan::document::{Heading, Settings, Site, UnitSystem};
use hobnail_core::plan::land::Portion;
use hobnail_core::plan::street::{Status, Street, StreetOwner, StreetRole, StreetSection, Tie, Vertex};
use hobnail_core::plan::{
    Alternative, AlternativeId, BuildingTypeId, Document, Mark, MarkId, PlanPoint, StreetSectionId, Strip, StripKind,
    UseMark,
};

use super::drafts::Drafts;
use super::{At, Brush, Choices, Land, Selection, Sight, Step};
use crate::input::Modifiers;

/// A plan with one alternative, and enclosed land where a test says so.
pub(crate) struct Scene {
    pub(crate) document: Document,
    pub(crate) lands: Vec<Land>,
    pub(crate) choices: Choices,
    pub(crate) drafts: Drafts,
    pub(crate) selection: Option<Selection>,
    pub(crate) picked: Vec<MarkId>,
    land_at: Box<dyn Fn(PlanPoint) -> Option<Land>>,
}

pub(crate) const DRAWN: AlternativeId = AlternativeId(0);

pub(crate) fn street(points: &[(i32, i32)]) -> Street {
    Street {
        line: points.iter().map(|&(x, y)| Vertex::at(PlanPoint::new(x, y))).collect(),
        section: StreetSectionId(0),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    }
}

pub(crate) fn tied(street: &mut Street, index: usize, to: u32, segment: u32, along_ppb: u32) {
    street.line[index].tie = Some(Tie {
        street: MarkId(to),
        segment,
        along_ppb,
    });
}

pub(crate) fn use_mark(x: i32, y: i32, building_type: u32) -> UseMark {
    UseMark {
        anchor: PlanPoint::new(x, y),
        program: vec![Portion {
            building_type: BuildingTypeId(building_type),
            share_ppm: 1_000_000,
        }],
        land_m2: 0,
        sides: Vec::new(),
        phase: None,
    }
}

pub(crate) fn alternative_with(streets: &[(u32, Street)]) -> Alternative {
    let marks = streets
        .iter()
        .map(|(id, street)| (MarkId(*id), Mark::Street(street.clone())))
        .collect();
    Alternative {
        name: "First".to_owned(),
        table: String::new(),
        marks,
    }
}

pub(crate) fn at(x: i32, y: i32) -> At {
    At {
        point: PlanPoint::new(x, y),
        modifiers: Modifiers::default(),
    }
}

impl Scene {
    pub(crate) fn with(streets: &[(u32, Street)]) -> Self {
        let section = StreetSection {
            name: "Street".to_owned(),
            strips: vec![Strip {
                kind: StripKind::Travel,
                width_mm: 16_000,
            }],
            target_speed_km_h: 30,
            walkable: true,
            cyclable: true,
            drivable: true,
            fronts_left: true,
            fronts_right: true,
        };
        let corners = [
            (-500_000, -500_000),
            (500_000, -500_000),
            (500_000, 500_000),
            (-500_000, 500_000),
        ];
        let document = Document {
            heading: Heading {
                name: "Test".to_owned(),
                about: String::new(),
                origin_longitude_ndeg: 0,
                origin_latitude_ndeg: 0,
            },
            site: Site {
                boundary: corners.map(|(x, y)| PlanPoint::new(x, y)).to_vec(),
            },
            program: Vec::new(),
            street_sections: OrderedMap::from([(StreetSectionId(0), section)]),
            building_types: OrderedMap::new(),
            phases: OrderedMap::new(),
            settings: Settings {
                walking_pace_mm_per_s: 1_250,
                units: UnitSystem::Metric,
                chosen: OrderedMap::new(),
                overridden_factors: OrderedMap::new(),
                rule_lists: Vec::new(),
            },
            topography: None,
            base_image: None,
            alternatives: OrderedMap::from([(DRAWN, alternative_with(streets))]),
        };
        Self {
            document,
            lands: Vec::new(),
            choices: Choices {
                section: StreetSectionId(0),
                building_type: Some(BuildingTypeId(3)),
                brush: Brush::Nearest,
                drawing: super::drawing::Drawing::in_units(true),
            },
            drafts: Drafts::first(),
            selection: None,
            picked: Vec::new(),
            land_at: Box::new(|_| None),
        }
    }

    pub(crate) fn with_lands(mut self, lands: Vec<Land>) -> Self {
        self.lands.clone_from(&lands);
        self.land_at = Box::new(move |point| {
            lands
                .iter()
                .find(|land| super::near::is_inside(point, &land.outline))
                .cloned()
        });
        self
    }

    pub(crate) fn put(&mut self, id: u32, mark: Mark) {
        let alternative = self.document.alternatives.get_mut(&DRAWN).expect("the alternative");
        alternative.marks.insert(MarkId(id), mark);
    }

    pub(crate) fn sight(&self) -> Sight<'_> {
        Sight {
            document: &self.document,
            alternative: DRAWN,
            reach_mm: 2_000.0,
            land_at: self.land_at.as_ref(),
            choices: &self.choices,
            drafts: &self.drafts,
            selection: self.selection,
            picked: &self.picked,
            typed: super::guides::Typed::default(),
            next_id: self.document.next_mark_id(),
        }
    }

    /// The document after the last preview among `steps` is applied to this one.
    pub(crate) fn after(&self, steps: &[Step]) -> Document {
        let mut document = self.document.clone();
        let last = steps.iter().rev().find_map(|step| match step {
            Step::Change(edits) => Some(edits),
            _ => None,
        });
        for edit in last.into_iter().flatten() {
            edit.apply(&mut document)
                .expect("the edit fits the plan at the gesture's start");
        }
        document
    }
}
