//! Marks: the word of their kind, their shape, and what they say about themselves.

use crate::exchange::fault::FileFaultKind;
use crate::exchange::json::Json;
use crate::exchange::stored::{Members, Reader, Stored, Writing, stored_record, stored_words};
use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::MarkId;
use crate::plan::land::{
    Barrier, Beside, Certainty, ConstraintArea, ConstraintKind, Crossing, Footprint, Fronting, Hand, Note,
    OutsideContext, OwnerGroup, Parcel, Place, PlaceKind, Portion, RemarkAnswer, SideUse, SiteAccess, SoftArea,
    UseMark,
};
use crate::plan::mark::{Mark, MarkKind};
use crate::plan::street::{Status, Street, StreetOwner, StreetRole, Tie, Vertex};
use crate::say;

use super::shape::{Shape, ShapeKind};

stored_words!(MarkKind {
    "street" => Street,
    "use" => Use,
    "soft_area" => SoftArea,
    "constraint" => Constraint,
    "place" => Place,
    "site_access" => SiteAccess,
    "parcel" => Parcel,
    "barrier" => Barrier,
    "crossing" => Crossing,
    "outside" => Outside,
    "note" => Note,
});

/// The kind this word names; `None` without a fault, so that the caller can say what becomes of it.
pub(crate) fn kind_word(word: &str) -> Option<MarkKind> {
    MarkKind::from_json(&Json::Text(word.to_owned()), &mut Reader::default())
}

/// How the points of a mark of this kind belong together, where every mark of the kind is alike.
pub(crate) const fn shape_of_kind(kind: MarkKind) -> Option<ShapeKind> {
    match kind {
        MarkKind::Street | MarkKind::Barrier => Some(ShapeKind::Line),
        MarkKind::SoftArea | MarkKind::Constraint | MarkKind::Parcel => Some(ShapeKind::Area),
        MarkKind::Use | MarkKind::SiteAccess | MarkKind::Crossing | MarkKind::Note => Some(ShapeKind::Point),
        MarkKind::Place | MarkKind::Outside => None,
    }
}

/// A mark's shape and members, its kind first.
pub(crate) fn mark_parts(mark: &Mark) -> (Shape, Writing) {
    let mut writing = Writing::default();
    writing.put("kind", &mark.kind());
    let shape = match mark {
        Mark::Street(street) => write_street(street, &mut writing),
        Mark::Use(held) => {
            writing.put("program", &held.program);
            writing.put("land_m2", &held.land_m2);
            writing.put("sides", &held.sides);
            writing.put("phase", &held.phase);
            Shape::point(held.anchor)
        }
        Mark::SoftArea(area) => {
            writing.put("program", &area.program);
            writing.put("land_use", &area.land_use);
            writing.put("intensity_ppm", &area.intensity_ppm);
            writing.put("phase", &area.phase);
            Shape::area(&area.outline)
        }
        Mark::Constraint(area) => {
            writing.put("name", &area.name);
            writing.put("constraint", &area.kind);
            writing.put("buildable", &area.is_buildable);
            writing.put("counts_in_site", &area.counts_in_site);
            writing.put("counts_in_buildable", &area.counts_in_buildable);
            writing.put("walkable", &area.is_walkable);
            Shape::area(&area.outline)
        }
        Mark::Place(place) => {
            writing.put("name", &place.name);
            writing.put("place", &place.kind);
            writing.put("minimum_size_m2", &place.minimum_size_m2);
            writing.put("certainty", &place.certainty);
            writing.put("phase", &place.phase);
            write_footprint(&place.footprint)
        }
        Mark::SiteAccess(access) => {
            writing.put("name", &access.name);
            writing.put("outside_trips_ppm", &access.outside_trips_ppm);
            Shape::point(access.at)
        }
        Mark::Parcel(parcel) => {
            writing.put("label", &parcel.label);
            writing.put("owner", &parcel.owner);
            writing.put("beside", &parcel.beside);
            Shape::area(&parcel.outline)
        }
        Mark::Barrier(barrier) => {
            writing.put("name", &barrier.name);
            writing.put("beside", &barrier.beside);
            Shape::line(&barrier.line)
        }
        Mark::Crossing(crossing) => {
            writing.put("delay_tenths_s", &crossing.delay_tenths_s);
            Shape::point(crossing.at)
        }
        Mark::Outside(outside) => {
            writing.put("name", &outside.name);
            writing.put("homes", &outside.homes);
            writing.put("jobs", &outside.jobs);
            writing.put("shop_floor_m2", &outside.shop_floor_m2);
            write_footprint(&outside.footprint)
        }
        Mark::Note(note) => {
            writing.put("text", &note.text);
            writing.put("author", &note.author);
            writing.put("votes", &note.votes);
            writing.put("present", &note.present);
            writing.put("answers", &note.answers);
            writing.put("figures", &note.figures);
            Shape::point(note.at)
        }
    };
    (shape, writing)
}

/// The mark of this kind and shape; takes the members it needs.
pub(crate) fn mark_from(kind: MarkKind, shape: Shape, members: &mut Members<'_>, reader: &mut Reader) -> Option<Mark> {
    // Members are all taken before any is needed, so that every fault is found.
    match kind {
        MarkKind::Street => read_street(shape, members, reader).map(Mark::Street),
        MarkKind::Use => {
            let (program, land_m2) = (members.take("program", reader), members.take("land_m2", reader));
            let (sides, phase) = (members.take("sides", reader), members.take("phase", reader));
            let anchor = shape.into_point(reader);
            Some(Mark::Use(UseMark {
                anchor: anchor?,
                program: program?,
                land_m2: land_m2?,
                sides: sides?,
                phase: phase?,
            }))
        }
        MarkKind::SoftArea => {
            let (program, land_use) = (members.take("program", reader), members.take("land_use", reader));
            let (intensity_ppm, phase) = (members.take("intensity_ppm", reader), members.take("phase", reader));
            Some(Mark::SoftArea(SoftArea {
                outline: shape.points,
                program: program?,
                land_use: land_use?,
                intensity_ppm: intensity_ppm?,
                phase: phase?,
            }))
        }
        MarkKind::Constraint => {
            let (name, held_by) = (members.take("name", reader), members.take("constraint", reader));
            let [is_buildable, counts_in_site, counts_in_buildable, is_walkable] =
                ["buildable", "counts_in_site", "counts_in_buildable", "walkable"]
                    .map(|switch| members.take::<bool>(switch, reader));
            Some(Mark::Constraint(ConstraintArea {
                name: name?,
                outline: shape.points,
                kind: held_by?,
                is_buildable: is_buildable?,
                counts_in_site: counts_in_site?,
                counts_in_buildable: counts_in_buildable?,
                is_walkable: is_walkable?,
            }))
        }
        MarkKind::Place => {
            let (name, place) = (members.take("name", reader), members.take("place", reader));
            let minimum_size_m2 = members.take("minimum_size_m2", reader);
            let (certainty, phase) = (members.take("certainty", reader), members.take("phase", reader));
            let footprint = read_footprint(shape, reader);
            Some(Mark::Place(Place {
                name: name?,
                kind: place?,
                footprint: footprint?,
                minimum_size_m2: minimum_size_m2?,
                certainty: certainty?,
                phase: phase?,
            }))
        }
        MarkKind::SiteAccess => {
            let (name, share) = (members.take("name", reader), members.take("outside_trips_ppm", reader));
            let at = shape.into_point(reader);
            Some(Mark::SiteAccess(SiteAccess {
                name: name?,
                at: at?,
                outside_trips_ppm: share?,
            }))
        }
        MarkKind::Parcel => {
            let (label, owner) = (members.take("label", reader), members.take("owner", reader));
            let beside = members.take("beside", reader);
            Some(Mark::Parcel(Parcel {
                label: label?,
                outline: shape.points,
                owner: owner?,
                beside: beside?,
            }))
        }
        MarkKind::Barrier => {
            let (name, beside) = (members.take("name", reader), members.take("beside", reader));
            Some(Mark::Barrier(Barrier {
                name: name?,
                line: shape.points,
                beside: beside?,
            }))
        }
        MarkKind::Crossing => {
            let delay_tenths_s = members.take("delay_tenths_s", reader);
            let at = shape.into_point(reader);
            Some(Mark::Crossing(Crossing {
                at: at?,
                delay_tenths_s: delay_tenths_s?,
            }))
        }
        MarkKind::Outside => {
            let (name, homes) = (members.take("name", reader), members.take("homes", reader));
            let (jobs, shop_floor_m2) = (members.take("jobs", reader), members.take("shop_floor_m2", reader));
            let footprint = read_footprint(shape, reader);
            Some(Mark::Outside(OutsideContext {
                name: name?,
                footprint: footprint?,
                homes: homes?,
                jobs: jobs?,
                shop_floor_m2: shop_floor_m2?,
            }))
        }
        MarkKind::Note => {
            let (text, author) = (members.take("text", reader), members.take("author", reader));
            let (votes, present) = (members.take("votes", reader), members.take("present", reader));
            let (answers, figures) = (members.take("answers", reader), members.take("figures", reader));
            let at = shape.into_point(reader);
            Some(Mark::Note(Note {
                at: at?,
                text: text?,
                author: author?,
                votes: votes?,
                present: present?,
                answers: answers?,
                figures: figures?,
            }))
        }
    }
}

/// Corner radii are `[vertex, radius_mm]` and ties `[vertex, street, segment, along_ppb]`, of those vertices that have
/// them.
fn write_street(street: &Street, writing: &mut Writing) -> Shape {
    writing.put("name", &street.name);
    writing.put("section", &street.section);
    writing.put("role", &street.role);
    writing.put("owner", &street.owner);
    writing.put("status", &street.status);
    writing.put("outside", &street.is_outside);
    writing.put("level", &street.level);
    writing.put("phase", &street.phase);
    let numbered = || (0_u32..).zip(&street.line);
    let corners: Vec<[u32; 2]> = numbered()
        .filter(|(_, vertex)| vertex.corner_radius_mm > 0)
        .map(|(index, vertex)| [index, vertex.corner_radius_mm])
        .collect();
    let ties: Vec<[u32; 4]> = numbered()
        .filter_map(|(index, vertex)| {
            let Tie {
                street,
                segment,
                along_ppb,
            } = vertex.tie?;
            Some([index, street.0, segment, along_ppb])
        })
        .collect();
    writing.put("corners", &corners);
    writing.put("ties", &ties);
    let points: Vec<PlanPoint> = street.line.iter().map(|vertex| vertex.point).collect();
    Shape::line(&points)
}

fn read_street(shape: Shape, members: &mut Members<'_>, reader: &mut Reader) -> Option<Street> {
    let (name, section) = (members.take("name", reader), members.take("section", reader));
    let (role, owner, status) = (
        members.take("role", reader),
        members.take("owner", reader),
        members.take("status", reader),
    );
    let (is_outside, level) = (members.take("outside", reader), members.take("level", reader));
    let phase = members.take("phase", reader);
    let corners: Option<Vec<[u32; 2]>> = members.take("corners", reader);
    let ties: Option<Vec<[u32; 4]>> = members.take("ties", reader);
    let mut line: Vec<Vertex> = shape.points.into_iter().map(Vertex::at).collect();
    let mut all_there = true;
    for [index, corner_radius_mm] in corners? {
        all_there &= with_vertex(&mut line, index, "corners", reader, |vertex| {
            vertex.corner_radius_mm = corner_radius_mm;
        });
    }
    for [index, street, segment, along_ppb] in ties? {
        all_there &= with_vertex(&mut line, index, "ties", reader, |vertex| {
            vertex.tie = Some(Tie {
                street: MarkId(street),
                segment,
                along_ppb,
            });
        });
    }
    if !all_there {
        return None;
    }
    Some(Street {
        line,
        section: section?,
        name: name?,
        role: role?,
        owner: owner?,
        status: status?,
        is_outside: is_outside?,
        level: level?,
        phase: phase?,
    })
}

/// Changes a vertex; a fault and `false` when the line has no such vertex.
fn with_vertex(
    line: &mut [Vertex],
    index: u32,
    member: &str,
    reader: &mut Reader,
    change: impl FnOnce(&mut Vertex),
) -> bool {
    let count = line.len();
    match line.get_mut(index as usize) {
        Some(vertex) => change(vertex),
        None => reader.within(member, |reader| {
            reader.fault(FileFaultKind::Expected {
                expected: say!("exchange-value-vertex-of", count = count),
                found: say!("exchange-value-vertex", index = index),
            });
        }),
    }
    (index as usize) < count
}

fn write_footprint(footprint: &Footprint) -> Shape {
    match footprint {
        Footprint::Point(point) => Shape::point(*point),
        Footprint::Line(points) => Shape::line(points),
        Footprint::Area(points) => Shape::area(points),
    }
}

fn read_footprint(shape: Shape, reader: &mut Reader) -> Option<Footprint> {
    match shape.kind {
        ShapeKind::Point => shape.into_point(reader).map(Footprint::Point),
        ShapeKind::Line => Some(Footprint::Line(shape.points)),
        ShapeKind::Area => Some(Footprint::Area(shape.points)),
    }
}

stored_words!(StreetRole {
    "thoroughfare" => Thoroughfare,
    "neighborhood_street" => NeighborhoodStreet,
    "lane" => Lane,
    "alley" => Alley,
    "path" => Path,
});

stored_words!(StreetOwner { "state" => State, "town" => Town, "private" => Private });

stored_words!(Status { "existing" => Existing, "kept" => Kept, "removed" => Removed, "new" => New });

stored_record!(Portion { "building_type" => building_type, "share_ppm" => share_ppm });

stored_record!(RemarkAnswer { "step" => step, "marks" => marks });

stored_record!(SideUse {
    "street" => street,
    "hand" => hand,
    "at_mm" => at,
    "fronting" => fronting,
    "building_type" => building_type,
    "shopfront" => shopfront,
    "stories" => stories,
    "setback_mm" => setback_mm,
});

stored_record!(Beside { "reach_mm" => reach_mm, "stories" => stories, "clear_mm" => clear_mm });

stored_words!(Hand { "left" => Left, "right" => Right });

stored_words!(Fronting { "front" => Front, "side" => Side, "rear" => Rear, "none" => None });

stored_words!(ConstraintKind {
    "water" => Water,
    "floodplain" => Floodplain,
    "wetland" => Wetland,
    "steep" => Steep,
    "easement" => Easement,
    "conservation" => Conservation,
    "contaminated" => Contaminated,
    "keep" => Keep,
});

stored_words!(PlaceKind {
    "center" => Center,
    "transit_stop" => TransitStop,
    "school" => School,
    "community_hall" => CommunityHall,
    "park" => Park,
    "shop" => Shop,
    "clinic" => Clinic,
});

stored_words!(Certainty { "existing" => Existing, "committed" => Committed, "hoped_for" => HopedFor });

stored_words!(OwnerGroup {
    "public" => Public,
    "willing" => Willing,
    "unknown" => Unknown,
    "unwilling" => Unwilling,
});
