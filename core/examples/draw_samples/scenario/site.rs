//! The land that all samples share: boundary, roads at its edges, creek, wood, farm drive, what lies outside.

use hobnail_core::plan::document::Site;
use hobnail_core::plan::land::{Certainty, ConstraintKind, OutsideContext};
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{Footprint, MarkId, PlaceKind};

use super::palette::{FARM_LANE, FIRST, STATE_ROAD, TOWN_ROAD};
use super::sheet::{At, Corner, Sheet, at, band, bend, free_point, free_points, on};

/// Where the two edge roads cross, the site's south-west corner.
const SOUTH_WEST: At = (-460.0, -345.0);
/// Where the state road bends.
const ROAD_BEND: At = (-230.0, -349.0);
/// Where the site leaves the state road.
const SOUTH_EAST: At = (450.0, -343.6);
/// Where the site leaves the town road.
const NORTH_WEST: At = (-466.0, 312.0);
/// Where the town road bends.
const LANE_BEND: At = (-459.0, -60.0);

/// The site's boundary: along the middle of the two edge roads, as old deeds have it, then along hedges.
const BOUNDARY: [At; 9] = [
    SOUTH_WEST,
    ROAD_BEND,
    SOUTH_EAST,
    (458.0, -40.0),
    (452.0, 304.0),
    (210.0, 312.0),
    (-120.0, 320.0),
    NORTH_WEST,
    LANE_BEND,
];

/// The creek, downstream, before its bends are smoothed.
const CREEK: [At; 15] = [
    (-545.0, 276.0),
    (-470.0, 242.0),
    (-385.0, 276.0),
    (-285.0, 236.0),
    (-195.0, 262.0),
    (-105.0, 246.0),
    (-22.0, 176.0),
    (28.0, 142.0),
    (92.0, 66.0),
    (158.0, 14.0),
    (192.0, -70.0),
    (178.0, -160.0),
    (216.0, -232.0),
    (196.0, -306.0),
    (226.0, -385.0),
];

const WOOD: [At; 9] = [
    (262.0, 74.0),
    (330.0, 30.0),
    (400.0, 44.0),
    (456.0, 22.0),
    (451.0, 300.0),
    (330.0, 304.0),
    (268.0, 256.0),
    (222.0, 236.0),
    (232.0, 150.0),
];

const WETLAND: [At; 7] = [
    (62.0, 176.0),
    (88.0, 148.0),
    (132.0, 138.0),
    (176.0, 156.0),
    (188.0, 206.0),
    (138.0, 252.0),
    (82.0, 236.0),
];

/// The creek's middle, downstream: its corners cut twice at a quarter, which draws a smooth bend.
pub fn creek() -> Vec<At> {
    let mut line = CREEK.to_vec();
    for _ in 0..2 {
        let cut = line.windows(2).flat_map(|ends| {
            let ((ax, ay), (bx, by)) = (ends[0], ends[1]);
            [
                (0.75 * ax + 0.25 * bx, 0.75 * ay + 0.25 * by),
                (0.25 * ax + 0.75 * bx, 0.25 * ay + 0.75 * by),
            ]
        });
        line = cut.collect();
    }
    line
}

/// Which edge road an access is on.
#[derive(Clone, Copy)]
pub enum Edge {
    /// The state road along the south edge.
    South,
    /// The town road along the west edge.
    West,
}

/// Where the town and the state would let streets connect: the road, a place near, and what to call it.
pub const ACCESSES: [(Edge, At, &str); 6] = [
    (Edge::South, (-174.0, -349.0), "Marrenby Road, middle"),
    (Edge::South, (-360.0, -345.7), "Marrenby Road, west"),
    (Edge::South, (20.0, -347.0), "Marrenby Road, east"),
    (Edge::West, (-459.6, -254.0), "Cartwhistle Lane, south"),
    (Edge::West, (-459.0, -84.0), "Cartwhistle Lane, middle"),
    (Edge::West, (-462.0, 92.0), "Cartwhistle Lane, north"),
];

/// Marks accesses.
pub fn accesses(sheet: &mut Sheet, land: Land, accesses: &[(Edge, At, &str)]) -> Result<(), String> {
    for &(edge, near, name) in accesses {
        let street = match edge {
            Edge::South => land.state_road,
            Edge::West => land.town_road,
        };
        sheet.access(name, street, near)?;
    }
    Ok(())
}

/// The site.
pub fn site() -> Result<Site, String> {
    Ok(Site {
        boundary: free_points(&BOUNDARY)?,
    })
}

/// Streets of the land as it is found.
#[derive(Clone, Copy)]
pub struct Land {
    /// The state road along the south edge.
    pub state_road: MarkId,
    /// The town road along the west edge.
    pub town_road: MarkId,
}

fn corner((x_m, y_m): At) -> Corner {
    at(x_m, y_m)
}

/// Draws what every sample finds: roads at the edges, creek and marsh, transit stop, the old village.
pub fn draw(sheet: &mut Sheet) -> Result<Land, String> {
    let state_road = sheet.street(
        STATE_ROAD,
        "Marrenby Road",
        &[
            at(-900.0, -337.0),
            corner(SOUTH_WEST),
            corner(ROAD_BEND),
            corner(SOUTH_EAST),
            at(820.0, -341.0),
        ],
    )?;
    let town_road = sheet.street(
        TOWN_ROAD,
        "Cartwhistle Lane",
        &[
            at(-464.0, -760.0),
            corner(SOUTH_WEST),
            corner(LANE_BEND),
            corner(NORTH_WEST),
            at(-471.0, 560.0),
        ],
    )?;
    let row = sheet.street(
        TOWN_ROAD,
        "Fuller's Row",
        &[
            on(town_road, -461.4, -478.0),
            bend(-300.0, -484.0, 40.0),
            on(state_road, -296.0, -347.0),
        ],
    )?;
    sheet.street(
        TOWN_ROAD,
        "Nettle Row",
        &[
            on(town_road, -462.2, -610.0),
            at(-386.0, -606.0),
            on(row, -380.0, -481.0),
        ],
    )?;
    let creek = creek();
    let creek_land = band(&creek, 28.0, 28.0);
    sheet.constraint("Sallowby Creek, floodplain", ConstraintKind::Floodplain, &creek_land)?;
    sheet.constraint("Sallowby Creek", ConstraintKind::Water, &band(&creek, 3.0, 3.0))?;
    sheet.constraint("Cressel Marsh", ConstraintKind::Wetland, &WETLAND)?;
    sheet.place(
        "Tibberow stop",
        PlaceKind::TransitStop,
        Footprint::Point(free_point((-140.0, -338.0))?),
        Certainty::Existing,
        FIRST,
    );
    sheet.outside(OutsideContext {
        name: "Marrenby, the old village".to_owned(),
        footprint: Footprint::Area(free_points(&[
            (-640.0, -372.0),
            (-480.0, -372.0),
            (-270.0, -376.0),
            (-262.0, -520.0),
            (-300.0, -660.0),
            (-600.0, -668.0),
        ])?),
        homes: 240,
        jobs: 85,
        shop_floor_m2: 420,
    });
    Ok(Land { state_road, town_road })
}

/// Draws the drive to the farmstead, which stands, stays or goes as `status` says.
pub fn farm_drive(sheet: &mut Sheet, land: Land, status: Status) -> Result<MarkId, String> {
    sheet.street(
        FARM_LANE.status(status),
        "Farm drive",
        &[
            on(land.state_road, 330.0, -344.0),
            bend(331.0, -246.0, 80.0),
            bend(288.0, -140.0, 80.0),
            at(300.0, -46.0),
        ],
    )
}

/// Keeps the wood as it is.
pub fn keep_wood(sheet: &mut Sheet) -> Result<MarkId, String> {
    sheet.constraint("Sparrowhatch Wood", ConstraintKind::Keep, &WOOD)
}
