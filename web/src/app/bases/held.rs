//! Which marks a plan has already, found by where they begin and end.

use hobnail_core::order;
use hobnail_core::plan::{Alternative, Mark};

use super::sketch::shape_of;

/// The marks of an alternative that base data can become, by their ends.
pub(super) struct Held<'a> {
    marks: Vec<&'a Mark>,
    /// Numbers of ends in order, each with the place of its mark.
    by_ends: Vec<(u64, u32)>,
}

impl<'a> Held<'a> {
    /// Of an alternative; of none, nothing is held. Cost: linear in the points of its marks, and to put so many in order.
    pub fn of(alternative: Option<&'a Alternative>) -> Self {
        let held = alternative.into_iter().flat_map(|held| held.marks.values());
        let marks: Vec<&Mark> = held.collect();
        let keyed = marks
            .iter()
            .zip(0..)
            .filter_map(|(mark, place)| Some((ends(mark)?, place)));
        let mut by_ends: Vec<(u64, u32)> = keyed.collect();
        order::sort_keyed(&mut by_ends);
        Self { marks, by_ends }
    }

    /// Whether one of them is this mark, all that is said of it included. Cost: that of looking at those with its ends.
    pub fn has(&self, mark: &Mark) -> bool {
        let Some(key) = ends(mark) else { return false };
        let first = self.by_ends.partition_point(|(held, _)| *held < key);
        let with_its_ends = self.by_ends.iter().skip(first).take_while(|(held, _)| *held == key);
        with_its_ends
            .filter_map(|(_, place)| self.marks.get(*place as usize))
            .any(|held| *held == mark)
    }
}

/// A number that marks of the same first and last point share, and few others; `None` of marks that base data can not
/// become, which have none.
fn ends(mark: &Mark) -> Option<u64> {
    let (_, points) = shape_of(mark);
    // An odd factor, so that no two first points lose their difference: that of the golden ratio, as hashes often have.
    let both = [points.first()?, points.last()?]
        .map(|point| u64::from(point.x_mm.cast_unsigned()) << 32 | u64::from(point.y_mm.cast_unsigned()));
    Some(both[0].wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ both[1])
}

#[cfg(test)]
mod tests {
    use hobnail_core::plan::land::Footprint;
    use hobnail_core::plan::{Document, MarkId, PlanPoint};

    use super::*;
    use crate::app::bases::tests::{placed_app, read};
    use crate::app::bases::{Choices, Extent};
    use hobnail_readers::options::Options;

    /// As it is said: every mark is looked at.
    fn slowly(document: &Document, mark: &Mark) -> bool {
        let held = document.alternatives.values().next();
        held.is_some_and(|held| held.marks.values().any(|held| held == mark))
    }

    fn moved(points: &mut [PlanPoint], place: usize) {
        if let Some(point) = points.get_mut(place) {
            point.x_mm += 1;
        }
    }

    /// Marks that are nearly this one: one point is another, the way is the other way, the name or another detail is.
    fn like(mark: &Mark) -> Vec<Mark> {
        let mut all = vec![mark.clone(); 4];
        for (change, mark) in all.iter_mut().enumerate() {
            match mark {
                Mark::Street(street) => match change {
                    0 => street.line.reverse(),
                    1 => street.name.push('!'),
                    2 => street.level += 1,
                    _ => {
                        let middle = street.line.len() / 2;
                        street.line[middle].point.y_mm += 1;
                    }
                },
                Mark::Barrier(barrier) => moved(&mut barrier.line, change),
                Mark::Constraint(area) => moved(&mut area.outline, change),
                Mark::Parcel(parcel) => moved(&mut parcel.outline, change),
                Mark::Place(place) => match &mut place.footprint {
                    Footprint::Point(point) => point.x_mm += change as i32,
                    Footprint::Line(points) | Footprint::Area(points) => moved(points, change),
                },
                _ => {}
            }
        }
        all
    }

    #[test]
    fn what_is_found_by_its_ends_is_what_every_mark_is_looked_at_for() {
        let mut app = placed_app();
        let base = read("readers/network/streets.osm.pbf", Options::default());
        let choices = Choices {
            extent: Extent::Around { radius_m: 5_000.0 },
            ..Choices::first(&base, app.study().document())
        };
        assert!(app.take_base(&base, &choices));
        let mut document = app.study().document().clone();
        let village = hobnail_core::exchange::plan_file::read(include_bytes!(
            "../../../../sample-sketches/compact-village.geojson"
        ));
        let village = village.unwrap().document;
        let added: Vec<Mark> = village
            .alternatives
            .values()
            .next()
            .unwrap()
            .marks
            .values()
            .cloned()
            .collect();
        let held = document.alternatives.values_mut().next().unwrap();
        let before: Vec<Mark> = held.marks.values().cloned().collect();
        // Every other mark of the village is taken, so that some are there and some are not.
        for (id, mark) in (50_000..).zip(added.iter().step_by(2)) {
            held.marks.insert(MarkId(id), mark.clone());
        }
        let found = Held::of(document.alternatives.values().next());
        let (mut known, mut unknown) = (0, 0);
        for mark in before.iter().chain(&added) {
            for mark in like(mark).iter().chain([mark]) {
                if ends(mark).is_none() {
                    continue;
                }
                let expected = slowly(&document, mark);
                assert_eq!(found.has(mark), expected, "{mark:?}");
                *(if expected { &mut known } else { &mut unknown }) += 1;
            }
        }
        assert!(known > 100 && unknown > 100, "{known} {unknown}");
        assert!(!Held::of(None).has(&before[0]));
    }
}
