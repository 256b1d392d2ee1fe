//! Where a base lies in the plan, and how much of it is taken: what a person chooses before it is.

use hobnail_core::number;
use hobnail_core::plan::projection::{GeographicPoint, Projection};
use hobnail_core::plan::{Document, PlanPoint};
use hobnail_core::say;

use super::clip::Sides;
use super::{Base, Coordinates, Position};

/// How far beyond the site a base is taken unless chosen otherwise, in meters: what streets lead to is seen. Common
/// practice, no source.
pub const USUAL_MARGIN_M: f64 = 200.0;

/// How far a base is taken to each side of its middle where no site is drawn, in meters: half a mile, a walk of ten
/// minutes. Common practice, no source.
pub const USUAL_RADIUS_M: f64 = 800.0;

/// A file that reaches no farther than this from its middle, in meters, is taken whole into a blank plan: two miles to each
/// side is a town and its surroundings, twice as far as anybody walks to a place for daily needs. Common practice, no
/// source.
pub const WHOLE_RADIUS_M: f64 = 3_200.0;

/// A file of more things than these is not taken whole unless chosen. Were all of them streets, they would be some 10,000
/// segments, whose figures follow a drag within a frame natively (`study/drag/grid/10000`: 17 ms on two busy cores).
pub const WHOLE_FEATURES: usize = super::take::MOST_MARKS / 8;

/// Farthest that can be chosen, in meters: a fifth of what a plan can hold.
pub const LARGEST_RADIUS_M: f64 = 20_000.0;

/// How much of a base is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Extent {
    /// What lies in the box around the site, and this far beyond.
    Site {
        /// In meters.
        margin_m: f64,
    },
    /// What lies in the site: lines and outlines are cut at its outline.
    Within,
    /// What lies this far or less to each side of the plan's origin.
    Around {
        /// In meters.
        radius_m: f64,
    },
}

impl Extent {
    /// How far it reaches, where that is asked, in meters.
    #[must_use]
    pub const fn distance_m(self) -> Option<f64> {
        match self {
            Self::Site { margin_m: far_m } | Self::Around { radius_m: far_m } => Some(far_m),
            Self::Within => None,
        }
    }

    /// The same, as far as this.
    #[must_use]
    pub const fn reaching_m(self, far_m: f64) -> Self {
        match self {
            Self::Site { .. } => Self::Site { margin_m: far_m },
            Self::Around { .. } => Self::Around { radius_m: far_m },
            Self::Within => Self::Within,
        }
    }

    /// The same, as far as is usual.
    #[must_use]
    pub const fn usual(self) -> Self {
        self.reaching_m(match self {
            Self::Site { .. } | Self::Within => USUAL_MARGIN_M,
            Self::Around { .. } => USUAL_RADIUS_M,
        })
    }
}

/// What a person chooses before a base is taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Choices {
    /// Which layers are taken, in their order.
    pub layers: Vec<bool>,
    /// How much is taken.
    pub extent: Extent,
    /// Where the plan's origin lies on Earth; a plan that already lies somewhere stays there.
    pub origin: GeographicPoint,
    /// Meters in one of a drawing's units.
    pub unit_m: f64,
    /// Meters in a unit of height.
    pub height_unit_m: f64,
    /// Where a drawing's zero comes to lie in the plan.
    pub zero: PlanPoint,
    /// By how much a drawing is turned about its zero, counterclockwise, in degrees.
    pub turn_deg: f64,
}

/// Whether a plan says where on Earth it lies: a new one is at longitude and latitude 0 until it is placed.
#[must_use]
pub fn is_placed(document: &Document) -> bool {
    let heading = &document.heading;
    heading.origin_longitude_ndeg != 0 || heading.origin_latitude_ndeg != 0
}

/// Whether nothing says yet which part of a base is wanted: the plan has neither a site nor streets.
fn is_blank(document: &Document) -> bool {
    let mut marks = document.alternatives.values().flat_map(|held| held.marks.values());
    document.site.boundary.len() < 3 && !marks.any(|mark| mark.as_street().is_some())
}

/// West, south, east and north in degrees of all that can be taken into a plan that lies somewhere: what is farther away
/// need not be read of a file. `None` for a plan that lies nowhere yet. A degree of latitude is 110 km or more.
#[must_use]
pub fn in_reach_deg(document: &Document) -> Option<[f64; 4]> {
    if !is_placed(document) {
        return None;
    }
    let farthest_mm =
        |far: i32, point: &PlanPoint| far.max(point.x_mm.saturating_abs()).max(point.y_mm.saturating_abs());
    let site_mm = document.site.boundary.iter().fold(0, farthest_mm);
    let high_deg = (f64::from(site_mm) / 1000.0 + LARGEST_RADIUS_M) / 110_000.0;
    let (longitude, latitude) = document.heading.geographic_origin().to_deg();
    let (south, north) = ((latitude - high_deg).max(-90.0), (latitude + high_deg).min(90.0));
    // As wide where it is widest; near a pole that is all around.
    let narrowest = number::cos(south.abs().max(north.abs()).to_radians());
    let wide_deg = (high_deg / narrowest.max(0.001)).min(360.0);
    Some([longitude - wide_deg, south, longitude + wide_deg, north])
}

impl Choices {
    /// What is chosen at first: all layers, the site with its surroundings or the surroundings of the middle, where the
    /// plan lies or, for a plan that lies nowhere yet, the middle of the base; a drawing's middle comes to lie in the
    /// plan's origin. Into a plan without site and streets a base is taken whole where it is no larger than
    /// `WHOLE_RADIUS_M` and `WHOLE_FEATURES`.
    #[must_use]
    pub fn first(base: &Base, document: &Document) -> Self {
        let layers = vec![true; base.layers.len()];
        let middle = base.bounds(&layers).map_or([0.0; 2], |[west, south, east, north]| {
            [f64::midpoint(west, east), f64::midpoint(south, north)]
        });
        let is_on_earth = base.coordinates == Coordinates::Degrees;
        let there = GeographicPoint::checked_from_deg(middle[0], middle[1]);
        let origin = there.filter(|_| is_on_earth && !is_placed(document));
        let zero = PlanPoint::checked_from_m(-middle[0] / 1000.0, -middle[1] / 1000.0);
        let mut first = Self {
            layers,
            extent: if document.site.boundary.len() > 2 {
                Extent::Site {
                    margin_m: USUAL_MARGIN_M,
                }
            } else {
                Extent::Around {
                    radius_m: USUAL_RADIUS_M,
                }
            },
            origin: origin.unwrap_or(document.heading.geographic_origin()),
            unit_m: match base.coordinates {
                Coordinates::Drawing { unit_m } => unit_m,
                Coordinates::Degrees => 1.0,
            },
            height_unit_m: base.grid.map_or(1.0, |grid| grid.unit_m),
            zero: zero.filter(|_| !is_on_earth).unwrap_or_default(),
            turn_deg: 0.0,
        };
        if is_blank(document) && base.features.len() <= WHOLE_FEATURES {
            let whole_m = first.reach_m(base).filter(|reach_m| *reach_m <= WHOLE_RADIUS_M);
            // In whole steps of ten meters, which are easier to read and to type.
            first.extent = whole_m.map_or(first.extent, |reach_m| {
                first.extent.reaching_m((reach_m / 10.0).ceil() * 10.0)
            });
        }
        first
    }

    /// How far the base reaches from the plan's origin, to the farthest side, in meters; `None` where that is more than a
    /// plan can hold, or nowhere.
    fn reach_m(&self, base: &Base) -> Option<f64> {
        let [west, south, east, north] = base.bounds(&self.layers)?;
        let placing = Placing::of(base, self).ok()?;
        let mut reach_mm = 0;
        for corner in [[west, south], [west, north], [east, south], [east, north]] {
            let point = placing.on_plan(corner)?;
            reach_mm = reach_mm.max(point.x_mm.abs()).max(point.y_mm.abs());
        }
        Some(f64::from(reach_mm) / 1000.0)
    }

    /// The box of the plan that is taken.
    ///
    /// # Errors
    /// A sentence, where the extent is none.
    pub(super) fn sides(&self, document: &Document) -> Result<Sides, String> {
        let (far_m, boundary): (f64, &[PlanPoint]) = match self.extent {
            Extent::Site { margin_m } => (margin_m, &document.site.boundary),
            Extent::Within => (0.0, &document.site.boundary),
            Extent::Around { radius_m } => (radius_m, &[PlanPoint::new(0, 0)]),
        };
        if !(0.0..=LARGEST_RADIUS_M).contains(&far_m) {
            return Err(say!("bases-no-extent", kilometers = (LARGEST_RADIUS_M / 1000.0) as u32));
        }
        let Some(first) = boundary.first() else {
            return Err(say!("bases-no-site").to_owned());
        };
        let start = [first.x_mm, first.y_mm, first.x_mm, first.y_mm];
        let [west, south, east, north] = boundary.iter().fold(start, |[west, south, east, north], point| {
            let (x, y) = (point.x_mm, point.y_mm);
            [west.min(x), south.min(y), east.max(x), north.max(y)]
        });
        // Legal coordinates are 100 km at most, and this is a fifth of that.
        let far_mm = (far_m * 1000.0).round() as i32;
        Ok([west - far_mm, south - far_mm, east + far_mm, north + far_mm])
    }
}

/// How positions of a base come into the plan.
pub(super) enum Placing {
    /// By the plane of the plan.
    Earth(Box<Projection>),
    /// Scaled, turned, shifted.
    Drawing {
        /// Meters of the plan in a drawing's millimeter, turned: along x, and across.
        turned: [f64; 2],
        zero_m: (f64, f64),
    },
}

impl Placing {
    /// How this base comes into the plan.
    ///
    /// # Errors
    /// A sentence, where what was chosen is no place, no unit or no turn.
    pub(super) fn of(base: &Base, choices: &Choices) -> Result<Self, String> {
        let Coordinates::Drawing { unit_m } = base.coordinates else {
            let projection = Projection::about(choices.origin).map_err(|fault| fault.to_string())?;
            return Ok(Self::Earth(Box::new(projection)));
        };
        let is_unit = choices.unit_m.is_finite() && choices.unit_m > 0.0 && unit_m > 0.0;
        if !is_unit || !choices.turn_deg.is_finite() || !choices.zero.is_legal() {
            return Err(say!("bases-no-unit").to_owned());
        }
        let scale = choices.unit_m / unit_m / 1000.0;
        let turn_rad = choices.turn_deg.to_radians();
        Ok(Self::Drawing {
            turned: [scale * number::cos(turn_rad), scale * number::sin(turn_rad)],
            zero_m: choices.zero.to_m(),
        })
    }

    /// A position in the plan; `None` where it is too far away or nowhere.
    pub(super) fn on_plan(&self, [x, y]: Position) -> Option<PlanPoint> {
        match self {
            Self::Earth(projection) => projection.plan_from_geographic(GeographicPoint::checked_from_deg(x, y)?),
            Self::Drawing {
                turned: [along, across],
                zero_m,
            } => PlanPoint::checked_from_m(zero_m.0 + along * x - across * y, zero_m.1 + across * x + along * y),
        }
    }
}
