//! A sheet being drawn: marks get their ids in the order they are drawn, and a vertex may hold on to a street that is
//! already there.

use hobnail_core::order::OrderedMap;

use hobnail_core::number;
use hobnail_core::plan::land::{
    Certainty, ConstraintArea, ConstraintKind, Fronting, Hand, Note, OutsideContext, Portion, SiteAccess,
};
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    BuildingTypeId, Footprint, Mark, MarkId, PhaseId, Place, PlaceKind, PlanPoint, SideUse, Street, StreetRole,
    StreetSectionId, UseMark, Vertex, tie,
};

/// A place on the sheet: meters east and north of the origin.
pub type At = (f64, f64);

/// What all streets of one kind share.
#[derive(Clone, Copy)]
pub struct StreetKind {
    /// The street section.
    pub section: StreetSectionId,
    /// What it does in the network.
    pub role: StreetRole,
    /// Who owns it.
    pub owner: StreetOwner,
    /// Whether it stands, stays, goes or comes.
    pub status: Status,
    /// Whether it lies outside the site.
    pub is_outside: bool,
    /// The phase it is built in.
    pub phase: Option<PhaseId>,
}

impl StreetKind {
    /// The same kind in another status.
    pub fn status(self, status: Status) -> Self {
        Self { status, ..self }
    }

    /// The same kind, built in `phase`.
    pub fn phase(self, phase: PhaseId) -> Self {
        Self {
            phase: Some(phase),
            ..self
        }
    }
}

/// A vertex as it is drawn.
#[derive(Clone, Copy)]
pub struct Corner {
    at: At,
    radius_m: f64,
    on: Option<MarkId>,
}

/// A sharp, free vertex.
pub fn at(x_m: f64, y_m: f64) -> Corner {
    Corner {
        at: (x_m, y_m),
        radius_m: 0.0,
        on: None,
    }
}

/// A vertex rounded by `radius_m`.
pub fn bend(x_m: f64, y_m: f64, radius_m: f64) -> Corner {
    Corner {
        at: (x_m, y_m),
        radius_m,
        on: None,
    }
}

/// A vertex that holds on to `street` at the place nearest to (`x_m`, `y_m`).
pub fn on(street: MarkId, x_m: f64, y_m: f64) -> Corner {
    Corner {
        at: (x_m, y_m),
        radius_m: 0.0,
        on: Some(street),
    }
}

/// One side of a face, as it is painted.
#[derive(Clone, Copy)]
pub struct Side {
    street: MarkId,
    at: At,
    fronting: Fronting,
    building_type: Option<BuildingTypeId>,
    shopfront: bool,
    stories: Option<u8>,
    setback_m: Option<f64>,
}

impl Side {
    /// Lots of `building_type` front on `street` near `at`.
    pub fn front(street: MarkId, at: At, building_type: BuildingTypeId) -> Self {
        Self {
            street,
            at,
            fronting: Fronting::Front,
            building_type: Some(building_type),
            shopfront: false,
            stories: None,
            setback_m: None,
        }
    }

    /// Lots stand to `street` near `at` as `fronting` says, with the face's own types.
    pub fn other(street: MarkId, at: At, fronting: Fronting) -> Self {
        Self {
            street,
            at,
            fronting,
            building_type: None,
            shopfront: false,
            stories: None,
            setback_m: None,
        }
    }

    /// The same side with its ground floor open to the street as shops, built to the walk.
    pub fn shops(self) -> Self {
        Self {
            shopfront: true,
            setback_m: Some(0.0),
            ..self
        }
    }

    /// The same side, at most `stories` high.
    pub fn stories(self, stories: u8) -> Self {
        Self {
            stories: Some(stories),
            ..self
        }
    }

    /// The same side, its buildings `setback_m` behind the right-of-way.
    pub fn setback(self, setback_m: f64) -> Self {
        Self {
            setback_m: Some(setback_m),
            ..self
        }
    }
}

/// An alternative being drawn.
pub struct Sheet {
    first: u32,
    marks: OrderedMap<MarkId, Mark>,
}

impl Sheet {
    /// An empty sheet whose marks are numbered from `first`: ids are unique over the alternatives of a document.
    pub fn numbered_from(first: u32) -> Self {
        Self {
            first,
            marks: OrderedMap::new(),
        }
    }

    /// What has been drawn.
    pub fn into_marks(self) -> OrderedMap<MarkId, Mark> {
        self.marks
    }

    /// Puts `mark` on the sheet under the next id.
    fn add(&mut self, mark: Mark) -> MarkId {
        let id = MarkId(self.marks.last().map_or(self.first, |(id, _)| id.0 + 1));
        self.marks.insert(id, mark);
        id
    }

    /// Draws a street.
    pub fn street(&mut self, kind: StreetKind, name: &str, corners: &[Corner]) -> Result<MarkId, String> {
        let line = corners
            .iter()
            .map(|corner| self.vertex(*corner))
            .collect::<Result<Vec<_>, _>>()
            .map_err(|why| format!("{name}: {why}"))?;
        Ok(self.add(Mark::Street(Street {
            line,
            section: kind.section,
            name: name.to_owned(),
            role: kind.role,
            owner: kind.owner,
            status: kind.status,
            is_outside: kind.is_outside,
            level: 0,
            phase: kind.phase,
        })))
    }

    /// Gives the face around `at` a use: `portions` in percent of its buildable land.
    pub fn land(
        &mut self,
        at: At,
        portions: &[(BuildingTypeId, u32)],
        sides: &[Side],
        phase: PhaseId,
    ) -> Result<MarkId, String> {
        let anchor = free_point(at)?;
        let sides = sides
            .iter()
            .map(|side| self.side(*side, anchor))
            .collect::<Result<_, _>>()?;
        let program = portions
            .iter()
            .map(|&(building_type, percent)| Portion {
                building_type,
                share_ppm: percent * 10_000,
            })
            .collect();
        Ok(self.add(Mark::Use(UseMark {
            anchor,
            program,
            land_m2: 0,
            sides,
            phase: Some(phase),
        })))
    }

    /// Marks land that something holds back: not built upon, part of the site, and open to walk across unless it is
    /// water.
    pub fn constraint(&mut self, name: &str, kind: ConstraintKind, outline: &[At]) -> Result<MarkId, String> {
        let outline = free_points(outline)?;
        Ok(self.add(Mark::Constraint(ConstraintArea {
            name: name.to_owned(),
            outline,
            kind,
            is_buildable: false,
            counts_in_site: true,
            counts_in_buildable: false,
            is_walkable: kind != ConstraintKind::Water,
        })))
    }

    /// Names a place people go to.
    pub fn place(&mut self, name: &str, kind: PlaceKind, footprint: Footprint, certainty: Certainty, phase: PhaseId) {
        self.add(Mark::Place(Place {
            name: name.to_owned(),
            kind,
            footprint,
            minimum_size_m2: 0,
            certainty,
            phase: Some(phase),
        }));
    }

    /// Marks a connection to the existing street network, on `street` at the place nearest to `near`.
    pub fn access(&mut self, name: &str, street: MarkId, near: At) -> Result<MarkId, String> {
        let at = self.vertex(on(street, near.0, near.1))?.point;
        Ok(self.add(Mark::SiteAccess(SiteAccess {
            name: name.to_owned(),
            at,
            outside_trips_ppm: None,
        })))
    }

    /// Marks what lies outside the site.
    pub fn outside(&mut self, context: OutsideContext) {
        self.add(Mark::Outside(context));
    }

    /// Pins a remark.
    pub fn note(&mut self, at: At, author: &str, text: &str, votes: u32, present: u32) -> Result<MarkId, String> {
        let at = free_point(at)?;
        Ok(self.add(Mark::Note(Note {
            at,
            text: text.to_owned(),
            author: author.to_owned(),
            votes,
            present,
            ..Note::default()
        })))
    }

    /// Changes streets that are already drawn, as when one goes or is built to another section.
    pub fn change_street(&mut self, id: MarkId, change: impl FnOnce(&mut Street)) -> Result<(), String> {
        let Some(Mark::Street(street)) = self.marks.get_mut(&id) else {
            return Err(format!("mark {id} is not a street"));
        };
        change(street);
        Ok(())
    }

    /// The centerline of a street that is already drawn.
    fn line_of(&self, street: MarkId) -> Result<&[Vertex], String> {
        let drawn = self.marks.get(&street).and_then(Mark::as_street);
        drawn.map_or_else(
            || Err(format!("mark {street} is not a street")),
            |street| Ok(street.line.as_slice()),
        )
    }

    fn vertex(&self, corner: Corner) -> Result<Vertex, String> {
        let Some(street) = corner.on else {
            return Ok(Vertex {
                point: free_point(corner.at)?,
                corner_radius_mm: (corner.radius_m * 1000.0) as u32,
                tie: None,
            });
        };
        let line = self.line_of(street)?;
        let (tie, point) = tie::nearest_tie(street, line, free_point(corner.at)?)
            .ok_or_else(|| format!("street {street} has no segment to hold on to"))?;
        Ok(Vertex {
            point,
            corner_radius_mm: 0,
            tie: Some(tie),
        })
    }

    fn side(&self, side: Side, anchor: PlanPoint) -> Result<SideUse, String> {
        let line = self.line_of(side.street)?;
        let (tie, _) = tie::nearest_tie(side.street, line, free_point(side.at)?)
            .ok_or_else(|| format!("street {} has no segment to face", side.street))?;
        let segment = tie.segment as usize;
        let is_left = line[segment].point.cross(line[segment + 1].point, anchor) > 0;
        Ok(SideUse {
            street: side.street,
            hand: if is_left { Hand::Left } else { Hand::Right },
            at: free_point(side.at)?,
            fronting: side.fronting,
            building_type: side.building_type,
            shopfront: side.shopfront,
            stories: side.stories,
            setback_mm: side.setback_m.map(|setback_m| (setback_m * 1000.0) as u32),
        })
    }
}

/// A free point, on the 0.1 m that hand drawing lands on.
pub fn free_point((x_m, y_m): At) -> Result<PlanPoint, String> {
    let tenth = |meters: f64| (meters * 10.0).round() / 10.0;
    PlanPoint::checked_from_m(tenth(x_m), tenth(y_m)).ok_or_else(|| format!("({x_m}, {y_m}) is not on the plan"))
}

/// Free points.
pub fn free_points(line: &[At]) -> Result<Vec<PlanPoint>, String> {
    line.iter().map(|at| free_point(*at)).collect()
}

/// The strip of land along `line` that reaches `left_m` to its left and `right_m` to its right, as an outline.
pub fn band(line: &[At], left_m: f64, right_m: f64) -> Vec<At> {
    let mut outline = beside(line, left_m);
    outline.extend(beside(line, -right_m).into_iter().rev());
    outline
}

/// `line` moved `left_m` to its left.
pub fn beside(line: &[At], left_m: f64) -> Vec<At> {
    (0..line.len())
        .map(|index| {
            let here = line[index];
            let (before, after) = (line[index.saturating_sub(1)], line[(index + 1).min(line.len() - 1)]);
            let (along_x, along_y) = (after.0 - before.0, after.1 - before.1);
            let length = number::length(along_x, along_y);
            (here.0 - along_y / length * left_m, here.1 + along_x / length * left_m)
        })
        .collect()
}
