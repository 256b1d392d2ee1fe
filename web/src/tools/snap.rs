//! Where a drawn point lands, and why there. The reason is shown wherever there is one.

use hobnail_core::plan::street::{Tie, Vertex};
use hobnail_core::plan::{Alternative, MarkId, PlanPoint};
use hobnail_core::say;

use super::near::{self, Foot};
use super::{At, Sight};

/// The grid on which free points land, in millimeters: 0.1 m.
pub const GRID_MM: i32 = 100;

/// A place for a point, and the reason for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Snap {
    /// Where the point lands.
    pub point: PlanPoint,
    /// The street it holds on to.
    pub tie: Option<Tie>,
    /// Why there.
    pub reason: Reason,
}

/// Why a point lands where it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// Two streets cross there.
    Intersection,
    /// A street ends there.
    StreetEnd,
    /// A street has a corner there.
    Corner,
    /// The street being drawn began there.
    OwnStart,
    /// On a street.
    OnStreet,
    /// On the site's boundary.
    SiteBoundary,
    /// On the edge of an area, or on a barrier.
    AreaEdge,
    /// Where a street would go on.
    Extension,
    /// Where the run before would go on.
    StraightOn,
    /// Square to a street or to the run before.
    Square,
    /// Parallel to a street.
    Parallel,
    /// Where two guides cross.
    Guides,
    /// As far along the street as the block before is long.
    EqualBlock,
    /// Where a typed length or bearing puts it.
    Typed,
    /// Nothing is near: on the 0.1 m grid.
    Grid,
    /// Whatever is near, since snapping is off or suspended: on the 0.1 m grid.
    Free,
}

impl Reason {
    /// The words shown beside the point; none where it lands on nothing.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Intersection => say!("tools-snap-intersection"),
            Self::StreetEnd => say!("tools-snap-street-end"),
            Self::Corner => say!("tools-snap-corner"),
            Self::OwnStart => say!("tools-snap-own-start"),
            Self::OnStreet => say!("tools-snap-on-street"),
            Self::SiteBoundary => say!("tools-snap-site"),
            Self::AreaEdge => say!("tools-snap-edge"),
            Self::Extension => say!("tools-snap-extension"),
            Self::StraightOn => say!("tools-snap-straight-on"),
            Self::Square => say!("tools-snap-square"),
            Self::Parallel => say!("tools-snap-parallel"),
            Self::Guides => say!("tools-snap-guides"),
            Self::EqualBlock => say!("tools-snap-equal-block"),
            Self::Typed => say!("tools-snap-typed"),
            Self::Free => say!("tools-snap-free"),
            Self::Grid => "",
        }
    }
}

impl Snap {
    /// The vertex of a street drawn to this place.
    #[must_use]
    pub const fn vertex(self) -> Vertex {
        Vertex {
            point: self.point,
            corner_radius_mm: 0,
            tie: self.tie,
        }
    }
}

/// Where a point of street `drawn` (or of a new one) at `from` lands. `own_start` is where a street being drawn began.
///
/// In order: an intersection, an end or corner, the own start, a street, the site's boundary, each within reach; else
/// the grid. A hold that would go in a circle is left out; the place is the same.
#[must_use]
pub fn snap(from: PlanPoint, drawn: Option<MarkId>, own_start: Option<PlanPoint>, sight: &Sight<'_>) -> Snap {
    snap_beside(from, drawn.as_slice(), own_start, sight)
}

/// [`snap`] where a point of several streets lands: none of them holds it.
#[must_use]
pub fn snap_beside(from: PlanPoint, drawn: &[MarkId], own_start: Option<PlanPoint>, sight: &Sight<'_>) -> Snap {
    let Some(alternative) = sight.drawn() else {
        return on_grid(from);
    };
    let reach_mm = sight.reach_mm;
    let held = |foot: Foot, reason: Reason| Snap {
        point: foot.point,
        tie: Some(foot.tie).filter(|tie| !drawn.iter().any(|drawn| holds_on(alternative, tie.street, *drawn))),
        reason,
    };
    if let Some(start) = own_start
        && (from.squared_distance_mm2(start) as f64).sqrt() <= reach_mm
    {
        return Snap {
            point: start,
            tie: None,
            reason: Reason::OwnStart,
        };
    }
    if let Some(foot) = near::crossing_beside(from, alternative, drawn, reach_mm) {
        return held(foot, Reason::Intersection);
    }
    if let Some((foot, is_end)) = nearest_corner(from, alternative, drawn, reach_mm) {
        return held(foot, if is_end { Reason::StreetEnd } else { Reason::Corner });
    }
    if let Some((_, foot)) = near::street_beside(from, alternative, drawn, reach_mm) {
        return held(foot, Reason::OnStreet);
    }
    if let Some((point, distance_mm)) = near::foot_on_outline(from, &sight.document.site.boundary)
        && distance_mm <= reach_mm
    {
        return Snap {
            point,
            tie: None,
            reason: Reason::SiteBoundary,
        };
    }
    on_grid(from)
}

/// [`snap_beside`] for a hand that drags: on the grid alone with snapping off or Alt held.
#[must_use]
pub fn dragged(at: At, drawn: &[MarkId], sight: &Sight<'_>) -> Snap {
    if sight.is_free(at) {
        free(at.point)
    } else {
        snap_beside(at.point, drawn, None, sight)
    }
}

/// The free place on the 0.1 m grid nearest to `from`.
#[must_use]
pub fn on_grid(from: PlanPoint) -> Snap {
    let round = |mm: i32| (f64::from(mm) / f64::from(GRID_MM)).round() as i32 * GRID_MM;
    Snap {
        point: PlanPoint::new(round(from.x_mm), round(from.y_mm)),
        tie: None,
        reason: Reason::Grid,
    }
}

/// The place on the 0.1 m grid nearest to `from`, whatever is near.
#[must_use]
pub fn free(from: PlanPoint) -> Snap {
    Snap {
        reason: Reason::Free,
        ..on_grid(from)
    }
}

/// Whether street `from` holds on to street `to`, directly or through others (or is it).
#[must_use]
pub fn holds_on(alternative: &Alternative, from: MarkId, to: MarkId) -> bool {
    let mut seen = hobnail_core::order::OrderedSet::new();
    let mut waiting = vec![from];
    while let Some(id) = waiting.pop() {
        if id == to {
            return true;
        }
        if !seen.insert(id) {
            continue;
        }
        if let Some(street) = alternative.marks.get(&id).and_then(|mark| mark.as_street()) {
            waiting.extend(street.line.iter().filter_map(|vertex| vertex.tie).map(|tie| tie.street));
        }
    }
    false
}

/// The nearest vertex of any street not among `except`, as a foot on its street, and whether it is an end.
fn nearest_corner(
    from: PlanPoint,
    alternative: &Alternative,
    except: &[MarkId],
    reach_mm: f64,
) -> Option<(Foot, bool)> {
    near::streets(alternative)
        .filter(|(id, _)| !except.contains(id))
        .filter_map(|(id, street)| {
            let (index, distance_mm) = near::nearest_vertex(from, street, reach_mm)?;
            let last = street.line.len().checked_sub(1)?;
            let (segment, along_ppb) = if index < last {
                (index, 0)
            } else {
                (last.checked_sub(1)?, 1_000_000_000)
            };
            let tie = Tie {
                street: id,
                segment: segment as u32,
                along_ppb,
            };
            let foot = Foot {
                tie,
                point: street.line.get(index)?.point,
                distance_mm,
            };
            Some((foot, index == 0 || index == last))
        })
        .min_by(|(one, _), (other, _)| one.distance_mm.total_cmp(&other.distance_mm))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{Scene, street, tied};

    fn crossing_streets() -> Scene {
        Scene::with(&[
            (1, street(&[(0, 0), (200_000, 0)])),
            (2, street(&[(80_000, -90_000), (80_000, 90_000)])),
        ])
    }

    #[test]
    fn every_place_has_its_reason() {
        let scene = crossing_streets();
        let sight = scene.sight();
        let at = |x, y| snap(PlanPoint::new(x, y), None, None, &sight);
        assert_eq!(at(81_000, 700).reason, Reason::Intersection);
        assert_eq!(at(81_000, 700).point, PlanPoint::new(80_000, 0));
        assert_eq!(at(-900, 300).reason, Reason::StreetEnd);
        assert_eq!(at(40_033, 1_500).reason, Reason::OnStreet);
        assert_eq!(
            at(40_033, 1_500).point,
            PlanPoint::new(40_033, 0),
            "a tied point is not on the grid"
        );
        assert_eq!(at(40_033, 40_071).reason, Reason::Grid);
        assert_eq!(at(40_033, 40_071).point, PlanPoint::new(40_000, 40_100));
        assert_eq!(at(-40_033, -40_071).point, PlanPoint::new(-40_000, -40_100));
        assert_eq!(at(-499_000, 100_000).reason, Reason::SiteBoundary);
    }

    #[test]
    fn a_corner_is_told_from_an_end() {
        let scene = Scene::with(&[(1, street(&[(0, 0), (50_000, 0), (50_000, 50_000)]))]);
        let sight = scene.sight();
        assert_eq!(
            snap(PlanPoint::new(50_400, 200), None, None, &sight).reason,
            Reason::Corner
        );
        let end = snap(PlanPoint::new(50_400, 50_200), None, None, &sight);
        assert_eq!(end.reason, Reason::StreetEnd);
        let tie = end.tie.expect("a hold");
        assert_eq!((tie.segment, tie.along_ppb), (1, 1_000_000_000));
    }

    #[test]
    fn no_hold_goes_in_a_circle() {
        let mut side = street(&[(100_000, 0), (100_000, 80_000)]);
        tied(&mut side, 0, 1, 0, 500_000_000);
        let scene = Scene::with(&[(1, street(&[(0, 0), (200_000, 0)])), (2, side)]);
        let sight = scene.sight();
        let end_of_first = snap(PlanPoint::new(100_500, 60_000), Some(MarkId(1)), None, &sight);
        assert_eq!(end_of_first.reason, Reason::OnStreet);
        assert_eq!(end_of_first.tie, None, "street 2 already holds on to street 1");
        assert_eq!(end_of_first.point, PlanPoint::new(100_000, 60_000));
    }
}
