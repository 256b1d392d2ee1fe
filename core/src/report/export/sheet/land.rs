//! The ground, its uses, what holds it back, lots and buildings, the site and its places.

use super::{
    FINE_MM, HEAVY_MM, Hatch, Item, LayerId, Look, MEDIUM_MM, SIGN_MM, Sheet, filled, hatch_of_constraint,
    hatch_of_use, lined, rings,
};
use crate::fabric::FaceOfLand;
use crate::measures::soft::{SoftAreas, portions};
use crate::order::OrderedMap;
use crate::plan::land::{ConstraintKind, Portion};
use crate::plan::{Document, Footprint, LandUse, Mark};
use crate::report::drawing::tones;
use crate::report::drawing::uses::uses_of;
use crate::report::drawing::ways::meters;
use crate::study::Study;

/// Things drawn, by use.
type ByUse = OrderedMap<LandUse, Vec<Item>>;

/// The paper of the site, and land tinted by use with its hatching: a second use of the same land over the first.
pub(super) fn add_ground(study: &Study, sheet: &mut Sheet) {
    let document = study.seen();
    let site = meters(&document.site.boundary);
    if site.len() > 2 {
        sheet.add(LayerId::Ground, filled(tones::PAPER), vec![Item::Rings(vec![site])]);
    }
    let soft_areas = SoftAreas::of(&document, study.alternative());
    let (mut first, mut second) = (ByUse::new(), ByUse::new());
    for face in &study.fabric().faces {
        let (main, other) = uses_of(&document, &program(study, &document, &soft_areas, face));
        for (by_use, land_use) in [(&mut first, main), (&mut second, other)] {
            if let Some(land_use) = land_use {
                let held = by_use.entry(land_use).or_default();
                held.push(Item::Rings(rings(&face.land.pieces)));
            }
        }
        add_lots_of_other_use(study, &document, face, main, &mut first);
    }
    sheet.uses = first.keys().copied().collect();
    sheet.is_mixed = !second.is_empty();
    for (land_use, items) in first {
        let look = Look {
            hatch: hatch_of_use(land_use).map(|hatch| (hatch, tones::tone(land_use))),
            ..filled(tones::tint(land_use))
        };
        sheet.add(LayerId::of(land_use), look, items);
    }
    for (land_use, items) in second {
        let look = Look {
            hatch: Some((Hatch::Bands, tones::tone(land_use))),
            ..Look::default()
        };
        sheet.add(LayerId::SecondUse, look, items);
    }
}

/// What a face is given to: by its own mark, or by the soft area around it.
fn program(study: &Study, document: &Document, soft_areas: &SoftAreas<'_>, face: &FaceOfLand) -> Vec<Portion> {
    let mark = face.use_mark.and_then(|id| document.mark(study.alternative(), id));
    match mark.and_then(Mark::as_use) {
        Some(held) => held.program.clone(),
        None => soft_areas
            .inherited_by(face)
            .map_or_else(Vec::new, |(_, area)| portions(area)),
    }
}

/// Lots along a side that has a building type of its own are tinted by that.
fn add_lots_of_other_use(
    study: &Study,
    document: &Document,
    face: &FaceOfLand,
    main: Option<LandUse>,
    by_use: &mut ByUse,
) {
    let mark = face.use_mark.and_then(|id| document.mark(study.alternative(), id));
    let Some(held) = mark.and_then(Mark::as_use).filter(|held| !held.sides.is_empty()) else {
        return;
    };
    let painted = study.painted().iter().find(|painted| painted.face == face.id);
    for lot in painted.iter().flat_map(|painted| &painted.laid.lots) {
        let is_own = held
            .program
            .iter()
            .all(|portion| portion.building_type != lot.building_type);
        let found = document.building_types.get(&lot.building_type).filter(|_| is_own);
        if let Some(land_use) = found
            .map(|found| found.land_use)
            .filter(|land_use| Some(*land_use) != main)
        {
            let items = by_use.entry(land_use).or_default();
            items.push(Item::Rings(vec![meters(&lot.outline)]));
        }
    }
}

/// Bubbles drawn before any street.
pub(super) fn add_soft_areas(study: &Study, sheet: &mut Sheet) {
    let document = study.seen();
    for_each(study, &document, |mark| {
        if let Mark::SoftArea(area) = mark {
            let tone = tones::tone(area.land_use);
            let look = Look {
                fill: Some((tones::tint(area.land_use), 0.6)),
                hatch: hatch_of_use(area.land_use).map(|hatch| (hatch, tone)),
                ..lined(tone, MEDIUM_MM, ".5 1.3")
            };
            sheet.add(LayerId::SoftAreas, look, vec![Item::Rings(vec![meters(&area.outline)])]);
            if !sheet.uses.contains(&area.land_use) {
                sheet.uses.push(area.land_use);
            }
        }
    });
}

/// What holds land back, water apart.
pub(super) fn add_constraints(study: &Study, sheet: &mut Sheet) {
    let document = study.seen();
    let mut by_kind: OrderedMap<ConstraintKind, Vec<Item>> = OrderedMap::new();
    for_each(study, &document, |mark| {
        if let Mark::Constraint(area) = mark {
            let items = by_kind.entry(area.kind).or_default();
            items.push(Item::Rings(vec![meters(&area.outline)]));
        }
    });
    sheet.constraints = by_kind.keys().copied().collect();
    let water = by_kind.remove(&ConstraintKind::Water);
    for (kind, items) in by_kind {
        sheet.add(LayerId::Constraints, look_of_constraint(kind), items);
    }
    if let Some(items) = water {
        sheet.add(LayerId::Water, look_of_constraint(ConstraintKind::Water), items);
    }
}

/// How land that something holds back looks.
pub(in crate::report::export) fn look_of_constraint(kind: ConstraintKind) -> Look {
    let color = tones::constraint(kind);
    Look {
        fill: Some((color, 0.14)),
        hatch: Some((hatch_of_constraint(kind), color)),
        ..lined(color, MEDIUM_MM, "1.8 .8")
    }
}

/// Lot lines as the finest line, buildings in a darker tone of their use.
pub(super) fn add_lots(study: &Study, sheet: &mut Sheet) {
    let document = study.seen();
    let mut lots = Vec::new();
    let mut buildings = ByUse::new();
    for lot in study.painted().iter().flat_map(|held| &held.laid.lots) {
        lots.push(Item::Rings(vec![meters(&lot.outline)]));
        let held = document.building_types.get(&lot.building_type);
        if let Some(held) = held.filter(|_| !lot.footprint.is_empty()) {
            let items = buildings.entry(held.land_use).or_default();
            items.push(Item::Rings(vec![meters(&lot.footprint)]));
        }
    }
    sheet.add(LayerId::Lots, lined(tones::SOFT_INK, FINE_MM, ""), lots);
    for (land_use, items) in buildings {
        let look = Look {
            stroke: Some((tones::INK, FINE_MM)),
            ..filled(tones::building(land_use))
        };
        sheet.add(LayerId::Buildings, look, items);
    }
}

/// Parcels, and what can not be crossed on foot.
pub(super) fn add_parcels_and_barriers(study: &Study, sheet: &mut Sheet) {
    let document = study.seen();
    let (mut parcels, mut barriers) = (Vec::new(), Vec::new());
    for_each(study, &document, |mark| match mark {
        Mark::Parcel(parcel) => parcels.push(Item::Rings(vec![meters(&parcel.outline)])),
        Mark::Barrier(barrier) => barriers.push(Item::Line(meters(&barrier.line))),
        _ => {}
    });
    sheet.add(LayerId::Parcels, lined(tones::SOFT_INK, MEDIUM_MM, "1.6 1"), parcels);
    sheet.add(LayerId::Barriers, lined(tones::INK, HEAVY_MM, ""), barriers);
}

/// The site's boundary, its accesses and the places people go to.
pub(super) fn add_site_and_places(study: &Study, scale: f64, sheet: &mut Sheet) {
    let document = study.seen();
    let site = meters(&document.site.boundary);
    if site.len() > 2 {
        let look = lined(tones::INK, HEAVY_MM, "6 1.4 .8 1.4 .8 1.4");
        sheet.add(LayerId::Site, look, vec![Item::Rings(vec![site])]);
    }
    let (mut accesses, mut extents, mut signs) = (Vec::new(), Vec::new(), Vec::new());
    for_each(study, &document, |mark| match mark {
        Mark::SiteAccess(access) => accesses.push(triangle(access.at.to_m(), SIGN_MM * scale / 1e3)),
        Mark::Place(place) => match &place.footprint {
            Footprint::Point(point) => signs.push(Item::Circle(point.to_m(), SIGN_MM * scale / 1e3)),
            Footprint::Line(line) => extents.push(Item::Line(meters(line))),
            Footprint::Area(outline) => extents.push(Item::Rings(vec![meters(outline)])),
        },
        _ => {}
    });
    let sign = Look {
        fill: Some((tones::PAPER, 1.0)),
        ..lined(tones::INK, MEDIUM_MM, "")
    };
    sheet.add(LayerId::Accesses, sign, accesses);
    let look = lined(tones::INK, HEAVY_MM, "");
    sheet.add(LayerId::Places, look, extents);
    let look = Look {
        fill: Some((tones::PAPER, 1.0)),
        ..look
    };
    sheet.add(LayerId::Places, look, signs);
}

/// A triangle about a place, its point to the north.
fn triangle((x, y): (f64, f64), radius_m: f64) -> Item {
    let (across, down) = (radius_m * 0.87, radius_m * 0.5);
    Item::Rings(vec![vec![
        (x - across, y - down),
        (x + across, y - down),
        (x, y + radius_m),
    ]])
}

/// Visits what is looked at of the alternative's marks, in order.
pub(super) fn for_each(study: &Study, document: &Document, mut visit: impl FnMut(&Mark)) {
    let held = document.alternatives.get(&study.alternative());
    held.into_iter()
        .flat_map(|held| held.marks.values())
        .for_each(&mut visit);
}
