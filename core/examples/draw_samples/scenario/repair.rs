//! The worn-out strip and dead-end subdivision: as it stands, and repaired by new connections and loosened uses.

use hobnail_core::plan::MarkId;
use hobnail_core::plan::street::Status;

use super::conventional::{self, Streets};
use super::palette::{FOOTPATH, MAIN_STREET, SHARED_LANE, STREET};
use super::sheet::{Sheet, bend, on};
use super::{repair_uses, site};

/// The new streets whose sides are painted.
pub struct NewStreets {
    /// Main street west of the old entrance.
    pub mender_west: MarkId,
    /// Main street east of the old entrance.
    pub mender_east: MarkId,
    /// Beside the square.
    pub awl: MarkId,
    /// The town houses' old drive, behind the hall.
    pub town_houses: MarkId,
}

/// Marks of the repaired alternative are numbered from here.
const REPAIRED_FROM: u32 = 1000;

/// Draws the subdivision as it stands.
pub fn draw_today() -> Result<Sheet, String> {
    let mut sheet = Sheet::numbered_from(0);
    let land = site::draw(&mut sheet)?;
    site::accesses(&mut sheet, land, &site::ACCESSES[..1])?;
    let streets = conventional::streets(&mut sheet, land, Status::Existing)?;
    repair_uses::today(&mut sheet, &streets)?;
    Ok(sheet)
}

/// Draws the repair.
pub fn draw_repaired() -> Result<Sheet, String> {
    let mut sheet = Sheet::numbered_from(REPAIRED_FROM);
    let land = site::draw(&mut sheet)?;
    site::accesses(&mut sheet, land, &site::ACCESSES)?;
    let streets = conventional::streets(&mut sheet, land, Status::Kept)?;
    for strip in streets.strips {
        sheet.change_street(strip, |street| street.status = Status::Removed)?;
    }
    let new = connect(&mut sheet, &streets)?;
    repair_uses::repaired(&mut sheet, &new)?;
    Ok(sheet)
}

fn connect(sheet: &mut Sheet, streets: &Streets) -> Result<NewStreets, String> {
    let (road, lane) = (streets.land.state_road, streets.land.town_road);
    let mender_west = sheet.street(
        MAIN_STREET,
        "Mender Street",
        &[
            on(lane, -459.6, -254.0),
            bend(-400.0, -262.0, 60.0),
            bend(-320.0, -290.0, 60.0),
            on(streets.spine, -173.0, -291.0),
        ],
    )?;
    sheet.street(
        STREET,
        "Hinge Street",
        &[
            on(road, -360.0, -345.7),
            on(mender_west, -354.0, -278.0),
            bend(-338.0, -210.0, 60.0),
            on(streets.west_arm, -316.0, -138.0),
        ],
    )?;
    let ropewalk = sheet.street(
        STREET,
        "Ropewalk Street",
        &[
            on(road, 20.0, -347.0),
            bend(22.0, -240.0, 60.0),
            on(streets.east_arm, 14.0, -166.0),
        ],
    )?;
    let mender_east = sheet.street(
        MAIN_STREET,
        "Mender Street",
        &[
            on(streets.spine, -173.0, -291.0),
            bend(-80.0, -294.0, 120.0),
            on(ropewalk, 21.0, -286.0),
        ],
    )?;
    let awl = sheet.street(
        SHARED_LANE,
        "Awl Lane",
        &[on(mender_east, -106.0, -293.0), on(streets.town_houses, -106.0, -236.0)],
    )?;
    sheet.street(
        STREET,
        "Larder Street",
        &[on(lane, -459.0, -84.0), on(streets.west_arm, -394.0, -84.0)],
    )?;
    sheet.street(
        STREET,
        "Kettle Street",
        &[on(lane, -462.0, 92.0), on(streets.west_arm, -388.0, 92.0)],
    )?;
    let courts = &streets.courts;
    let by_car = [
        (courts[0], (-336.0, -30.0), streets.way, (-337.0, 11.5)),
        (courts[1], (-224.0, -28.0), streets.way, (-222.0, 18.0)),
        (courts[3], (-76.0, 6.0), streets.way, (-76.0, 32.0)),
        (courts[4], (-18.0, 58.0), streets.way, (-40.0, 76.0)),
        (courts[6], (-334.0, 56.0), streets.way, (-337.0, 11.5)),
        (courts[8], (-172.0, 64.0), streets.way, (-168.0, 16.0)),
        (courts[9], (-84.0, 122.0), streets.west_arm, (-86.0, 160.0)),
    ];
    for (court, head, street, place) in by_car {
        sheet.street(STREET, "", &[on(court, head.0, head.1), on(street, place.0, place.1)])?;
    }
    let on_foot = [
        (courts[2], (-166.0, -28.0), streets.way, (-168.0, 16.0)),
        (courts[7], (-254.0, 62.0), streets.way, (-252.0, 13.0)),
    ];
    for (court, head, street, place) in on_foot {
        sheet.street(FOOTPATH, "", &[on(court, head.0, head.1), on(street, place.0, place.1)])?;
    }
    sheet.street(
        FOOTPATH,
        "Stepping Path",
        &[
            on(courts[5], 78.0, -30.0),
            bend(160.0, -40.0, 40.0),
            on(courts[11], 250.0, -16.0),
        ],
    )?;
    sheet.street(
        STREET,
        "Bramble Street",
        &[
            on(courts[10], 258.0, -98.0),
            on(courts[11], 250.0, -16.0),
            on(courts[12], 216.0, 40.0),
        ],
    )?;
    sheet.street(
        STREET,
        "Hedge Street",
        &[
            on(courts[15], 246.0, 270.0),
            on(courts[14], 330.0, 270.0),
            on(courts[13], 414.0, 266.0),
        ],
    )?;
    Ok(NewStreets {
        mender_west,
        mender_east,
        awl,
        town_houses: streets.town_houses,
    })
}
