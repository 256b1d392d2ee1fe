//! Where places and pieces of links lie on the plan.

use super::graph::{Location, Network, Stretch};
use crate::plan::PlanPoint;

impl Network {
    /// The point of a location, to the nearest millimeter; `None` when there is no such link. Positions beyond the
    /// link's end are held at its end. O(log corners).
    #[must_use]
    pub fn point_at(&self, place: Location) -> Option<PlanPoint> {
        let (after, along_um) = self.vertex_after(place)?;
        let (start, end) = (self.vertices[after - 1], self.vertices[after]);
        let (start_um, end_um) = (self.vertex_along_um[after - 1], self.vertex_along_um[after]);
        let span_um = i128::from(end_um - start_um);
        if span_um == 0 {
            return Some(start);
        }
        let part_um = i128::from(along_um - start_um);
        let between = |from_mm: i32, to_mm: i32| {
            let step = (i128::from(to_mm) - i128::from(from_mm)) * part_um;
            // Half away from the start keeps the answer the same from either end up to ties.
            let rounded = (2 * step + span_um * step.signum()) / (2 * span_um);
            from_mm + rounded as i32
        };
        Some(PlanPoint::new(
            between(start.x_mm, end.x_mm),
            between(start.y_mm, end.y_mm),
        ))
    }

    /// The place of a location in meters east and north, not rounded; `None` when there is no such link.
    #[must_use]
    pub fn position_m(&self, place: Location) -> Option<(f64, f64)> {
        let (after, along_um) = self.vertex_after(place)?;
        let (start, end) = (self.vertices[after - 1].to_m(), self.vertices[after].to_m());
        let (start_um, end_um) = (self.vertex_along_um[after - 1], self.vertex_along_um[after]);
        if start_um == end_um {
            return Some(start);
        }
        let share = (along_um - start_um) as f64 / (end_um - start_um) as f64;
        Some((start.0 + (end.0 - start.0) * share, start.1 + (end.1 - start.1) * share))
    }

    /// The points of a stretch from its start to its end: both ends, to the nearest millimeter, and the corners
    /// strictly between them. Empty when there is no such link.
    #[must_use]
    pub fn stretch_points(&self, stretch: Stretch) -> Vec<PlanPoint> {
        let ends = [stretch.from_um, stretch.to_um].map(|along_um| Location {
            link: stretch.link,
            along_um,
        });
        let (Some((after, from_um)), Some((_, to_um))) = (self.vertex_after(ends[0]), self.vertex_after(ends[1]))
        else {
            return Vec::new();
        };
        let end_vertex = self.link(stretch.link).map_or(after, |link| link.end_vertex as usize);
        let corners = (after..end_vertex)
            .filter(|&vertex| self.vertex_along_um[vertex] > from_um)
            .take_while(|&vertex| self.vertex_along_um[vertex] < to_um)
            .map(|vertex| self.vertices[vertex]);
        let mut points: Vec<PlanPoint> = Vec::new();
        points.extend(self.point_at(ends[0]));
        points.extend(corners);
        points.extend(self.point_at(ends[1]));
        points
    }

    /// The vertex that ends the straight piece a location lies on, and how far along the vertices the location is.
    fn vertex_after(&self, place: Location) -> Option<(usize, u64)> {
        let link = self.link(place.link)?;
        let (first, end) = (link.first_vertex as usize, link.end_vertex as usize);
        let drawn_um = self.vertex_along_um[end - 1];
        let along_um = place.along_um.min(link.length_um);
        let along_um = if drawn_um == link.length_um {
            along_um
        } else {
            (u128::from(along_um) * u128::from(drawn_um) / u128::from(link.length_um)) as u64
        };
        let after = first + self.vertex_along_um[first..end].partition_point(|&vertex_um| vertex_um < along_um);
        Some((after.max(first + 1), along_um))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::network::{LinkDraft, LinkId, NodeId};

    #[test]
    fn places_and_pieces_follow_the_corners() {
        let nodes = [PlanPoint::new(0, 0), PlanPoint::new(100, 100)];
        let mut bent = LinkDraft::level(NodeId(0), NodeId(1), 200_000);
        bent.corners = vec![PlanPoint::new(100, 0)];
        let network = Network::build(&nodes, &[bent]).expect("one bent link");
        let link = LinkId(0);
        let at = |along_um| network.point_at(Location { link, along_um });
        assert_eq!(at(0), Some(PlanPoint::new(0, 0)));
        assert_eq!(at(60_400), Some(PlanPoint::new(60, 0)));
        assert_eq!(at(100_000), Some(PlanPoint::new(100, 0)));
        assert_eq!(at(130_500), Some(PlanPoint::new(100, 31)));
        assert_eq!(at(u64::MAX), Some(PlanPoint::new(100, 100)));
        assert_eq!(
            network.point_at(Location {
                link: LinkId(1),
                along_um: 0
            }),
            None
        );
        let piece = network.stretch_points(Stretch {
            link,
            from_um: 50_000,
            to_um: 150_000,
        });
        assert_eq!(
            piece,
            [PlanPoint::new(50, 0), PlanPoint::new(100, 0), PlanPoint::new(100, 50)]
        );
    }

    #[test]
    fn a_given_length_scales_positions() {
        let nodes = [PlanPoint::new(0, 0), PlanPoint::new(100, 0)];
        let network = Network::build(&nodes, &[LinkDraft::level(NodeId(0), NodeId(1), 1_000_000)]).expect("one link");
        let middle = network.point_at(Location {
            link: LinkId(0),
            along_um: 500_000,
        });
        assert_eq!(middle, Some(PlanPoint::new(50, 0)));
    }
}
