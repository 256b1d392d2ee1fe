//! Land cut at an outline and divided at its holes, against geo's boolean operations.

use geo::{Area, BooleanOps, Coord, LineString, MultiPolygon, Polygon};
use hobnail_core::fabric::regions::{Ring, twice_area_mm2};
use hobnail_core::plan::land::Parcel;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::validate::validate;
use hobnail_core::plan::{Document, Mark, MarkId, PlanPoint};

use super::clip::{divided, land};

struct Random(u64);

impl Random {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % end
    }

    /// A star-shaped outline of some corners about a point, so that it does not cross itself, wound either way.
    fn outline(&mut self, [x, y]: [i32; 2], radius: i32) -> Ring {
        let count = 3 + self.below(9);
        let mut ring: Ring = (0..count)
            .map(|corner| {
                let angle = std::f64::consts::TAU * (corner as f64 + self.below(60) as f64 / 100.0) / count as f64;
                let far = f64::from(radius) * (0.3 + self.below(70) as f64 / 100.0);
                let along = |part: f64| (far * part).round() as i32;
                PlanPoint::new(x + along(angle.cos()), y + along(angle.sin()))
            })
            .collect();
        if self.below(2) == 0 {
            ring.reverse();
        }
        ring
    }
}

fn line(ring: &Ring) -> LineString {
    ring.iter()
        .map(|point| Coord {
            x: f64::from(point.x_mm),
            y: f64::from(point.y_mm),
        })
        .collect()
}

fn polygon(ring: &Ring) -> MultiPolygon {
    MultiPolygon::from(Polygon::new(line(ring), Vec::new()))
}

fn length_mm(ring: &Ring) -> f64 {
    let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
    pairs.map(|(from, to)| from.distance_um(*to) as f64 / 1_000.0).sum()
}

fn area_mm2(rings: &[Ring]) -> f64 {
    rings.iter().map(|ring| twice_area_mm2(ring).abs() as f64 / 2.0).sum()
}

#[test]
fn land_cut_at_a_site_and_divided_at_its_holes_is_what_geo_cuts() {
    let mut random = Random(17);
    let mut seen = [0_usize; 4];
    for case in 0..400 {
        let size = if case % 4 == 0 { 40 } else { 100_000 };
        let site = random.outline([0, 0], size);
        let at = [random.below(2 * size as u64), random.below(2 * size as u64)].map(|far| far as i32 - size);
        let outline = random.outline(at, if case % 3 == 0 { size / 6 } else { size });
        let holes: Vec<Ring> = (0..random.below(4))
            .map(|_| {
                let off = [0, 1].map(|axis| at[axis] + random.below(size as u64 / 2) as i32 - size / 4);
                random.outline(off, size / 5)
            })
            .collect();
        let mut expected = polygon(&site).intersection(&polygon(&outline));
        for hole in &holes {
            expected = expected.difference(&polygon(hole));
        }
        let all = [&site, &outline].into_iter().chain(&holes);
        let rounding_mm2 = 2.0 * all.map(length_mm).sum::<f64>();
        let pieces = land(&site, &outline, &holes);
        let with_holes: f64 = pieces
            .iter()
            .map(|piece| area_mm2(&piece[..1]) - area_mm2(&piece[1..]))
            .sum();
        let wanted = expected.unsigned_area();
        assert!(
            (with_holes - wanted).abs() <= rounding_mm2,
            "case {case}: {with_holes} {wanted}\n{site:?}\n{outline:?}\n{holes:?}"
        );
        let is_unchanged = pieces.iter().any(|piece| piece[0] == outline);
        seen[0] += usize::from(is_unchanged);
        seen[1] += usize::from(pieces.len() > 1);
        seen[2] += usize::from(pieces.is_empty());
        seen[3] += usize::from(pieces.iter().any(|piece| piece.len() > 1));
        let hole_count: usize = pieces.iter().map(|piece| piece.len() - 1).sum();
        let (outlines, filled) = divided(pieces);
        assert!(
            filled as usize <= hole_count && (size == 40 || filled == 0),
            "case {case}"
        );
        if filled == 0 {
            let found = area_mm2(&outlines);
            assert!(
                (found - wanted).abs() <= 2.0 * rounding_mm2,
                "case {case}: {found} {wanted}"
            );
            // Nowhere is land taken that geo leaves.
            let taken = outlines
                .iter()
                .map(polygon)
                .fold(MultiPolygon::new(Vec::new()), |all, one| all.union(&one));
            let beyond = taken.difference(&expected).unsigned_area();
            assert!(beyond <= 2.0 * rounding_mm2, "case {case}: {beyond}");
        }
        // In so few millimeters outlines come to touch themselves, which a plan says of them.
        if size > 40 {
            check_valid(case, &outlines);
        }
    }
    assert!(seen.iter().all(|count| *count > 10), "{seen:?}");
}

/// A plan can hold them: none crosses or touches itself.
#[track_caller]
fn check_valid(case: usize, outlines: &[Ring]) {
    let mut document = Document::new("Test", GeographicPoint::checked_from_deg(10.0, 0.0).unwrap());
    let held = document.alternatives.values_mut().next().unwrap();
    for (id, outline) in (1..).zip(outlines) {
        let parcel = Parcel {
            label: String::new(),
            outline: outline.clone(),
            owner: hobnail_core::plan::land::OwnerGroup::Unknown,
            beside: None,
        };
        held.marks.insert(MarkId(id), Mark::Parcel(parcel));
    }
    let faults = validate(&document);
    assert!(faults.is_empty(), "case {case}: {faults:?}\n{outlines:?}");
}
