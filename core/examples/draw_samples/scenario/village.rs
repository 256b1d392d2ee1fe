//! The compact village: streets that bend with the creek around one square, alleys behind its denser blocks, and paths
//! where cars need not go.

use hobnail_core::plan::MarkId;
use hobnail_core::plan::street::Status;

use super::palette::{
    BANK_STREET, FOOTPATH, GREEN_STREET, MAIN_STREET, REAR_ALLEY, SECOND, SHARED_LANE, STREET, THROUGH_STREET,
};
use super::sheet::{Sheet, at, bend, beside, on};
use super::site::{self, Land};
use super::village_uses;

/// The streets whose sides are painted.
pub struct Streets {
    /// The land as it is found.
    pub land: Land,
    /// Main street from the town road to the square.
    pub pearmain_west: MarkId,
    /// Main street along the square.
    pub pearmain_square: MarkId,
    /// Main street from the square to the state road.
    pub pearmain_south: MarkId,
    /// From the state road to the creek, west of the square.
    pub damson: MarkId,
    /// Along the creek green.
    pub bank: MarkId,
    /// Bends with the creek, halfway out.
    pub medlar: MarkId,
    /// Bends with the creek, behind the square.
    pub sorrel: MarkId,
    /// West side of the square.
    pub thimble: MarkId,
    /// South side of the square.
    pub candlewick: MarkId,
    /// Behind the square, before the hall.
    pub hall_row: MarkId,
    /// From the square's back to the footbridge.
    pub lantern: MarkId,
}

/// Draws the village.
pub fn draw() -> Result<Sheet, String> {
    let mut sheet = Sheet::numbered_from(0);
    let land = site::draw(&mut sheet)?;
    let farm_drive = site::farm_drive(&mut sheet, land, Status::Kept)?;
    site::keep_wood(&mut sheet)?;
    site::accesses(&mut sheet, land, &site::ACCESSES)?;
    let streets = streets(&mut sheet, land, farm_drive)?;
    village_uses::draw(&mut sheet, &streets)?;
    Ok(sheet)
}

fn streets(sheet: &mut Sheet, land: Land, farm_drive: MarkId) -> Result<Streets, String> {
    let (road, lane) = (land.state_road, land.town_road);
    // Three strokes, so that the sides along the square can be painted by themselves.
    let pearmain_west = sheet.street(
        MAIN_STREET,
        "Pearmain Street",
        &[
            on(lane, -459.0, -84.0),
            bend(-345.0, -74.0, 120.0),
            bend(-285.0, -75.0, 60.0),
            at(-238.0, -92.0),
        ],
    )?;
    let pearmain_square = sheet.street(
        MAIN_STREET,
        "Pearmain Street",
        &[on(pearmain_west, -238.0, -92.0), at(-182.0, -146.0)],
    )?;
    let pearmain_south = sheet.street(
        MAIN_STREET,
        "Pearmain Street",
        &[
            on(pearmain_square, -182.0, -146.0),
            bend(-165.0, -192.0, 60.0),
            bend(-163.0, -238.0, 120.0),
            on(road, -174.0, -349.0),
        ],
    )?;
    let damson = sheet.street(
        THROUGH_STREET,
        "Damson Street",
        &[
            on(road, -360.0, -345.7),
            at(-352.0, -247.0),
            at(-348.0, -160.0),
            at(-345.0, -74.0),
            at(-339.0, 10.0),
            at(-332.0, 95.0),
            at(-326.0, 178.0),
        ],
    )?;
    let bank = sheet.street(
        BANK_STREET.phase(SECOND),
        "Withy Bank",
        &[
            on(damson, -326.0, 178.0),
            bend(-242.0, 191.0, 100.0),
            bend(-120.0, 172.0, 90.0),
            bend(-22.0, 98.0, 120.0),
            bend(72.0, 2.0, 120.0),
            bend(106.0, -50.0, 90.0),
            bend(118.0, -140.0, 90.0),
            at(126.0, -228.0),
        ],
    )?;
    let teasel = sheet.street(
        THROUGH_STREET,
        "Teasel Street",
        &[
            on(lane, -459.6, -254.0),
            at(-352.0, -247.0),
            at(-262.0, -240.0),
            at(-163.0, -238.0),
            at(-70.0, -233.0),
            at(24.0, -230.0),
            on(bank, 126.0, -228.0),
        ],
    )?;
    let medlar = sheet.street(
        THROUGH_STREET.phase(SECOND),
        "Medlar Street",
        &[
            on(lane, -462.0, 92.0),
            at(-332.0, 95.0),
            bend(-222.0, 101.0, 60.0),
            bend(-160.0, 96.0, 60.0),
            bend(-4.0, -56.0, 60.0),
            bend(20.0, -116.0, 60.0),
            at(24.0, -230.0),
            on(road, 20.0, -347.0),
        ],
    )?;
    let sorrel = sheet.street(
        STREET,
        "Sorrel Street",
        &[
            on(damson, -339.0, 10.0),
            bend(-262.0, 14.0, 60.0),
            at(-222.0, 6.0),
            at(-84.0, -128.0),
            bend(-70.0, -182.0, 60.0),
            on(teasel, -70.0, -233.0),
        ],
    )?;
    let quince = sheet.street(
        STREET,
        "Quince Street",
        &[
            on(damson, -348.0, -160.0),
            at(-268.0, -161.0),
            on(teasel, -262.0, -240.0),
        ],
    )?;
    let thimble = sheet.street(
        STREET,
        "Thimble Street",
        &[
            on(pearmain_square, -238.0, -92.0),
            at(-222.0, 6.0),
            at(-216.0, 101.0),
            on(bank, -210.0, 188.0),
        ],
    )?;
    let candlewick = sheet.street(
        STREET,
        "Candlewick Street",
        &[
            on(pearmain_square, -182.0, -146.0),
            at(-84.0, -128.0),
            at(20.0, -116.0),
            on(bank, 113.0, -102.0),
        ],
    )?;
    sheet.street(
        SHARED_LANE,
        "Gatepost Lane",
        &[on(pearmain_square, -210.0, -119.0), on(quince, -268.0, -161.0)],
    )?;
    let hall_row = sheet.street(
        SHARED_LANE,
        "Hall Row",
        &[on(thimble, -229.0, -34.0), on(candlewick, -122.0, -134.0)],
    )?;
    let lantern = sheet.street(
        GREEN_STREET.phase(SECOND),
        "Lantern Street",
        &[on(sorrel, -153.0, -61.0), at(-78.0, 16.0), on(bank, -8.0, 85.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Lantern Passage",
        &[on(hall_row, -174.0, -83.0), on(sorrel, -153.0, -61.0)],
    )?;
    sheet.street(
        STREET.phase(SECOND),
        "Cress Street",
        &[on(medlar, -138.0, 74.6), on(bank, -88.0, 148.0)],
    )?;
    sheet.street(
        STREET.phase(SECOND),
        "Sallow Street",
        &[on(medlar, -18.0, -42.0), on(bank, 44.0, 30.0)],
    )?;
    for line in [
        vec![on(damson, -335.5, 53.0), on(thimble, -219.0, 54.0)],
        vec![on(damson, -329.0, 137.0), on(thimble, -213.0, 146.0)],
        vec![on(damson, -342.0, -32.0), on(thimble, -229.0, -34.0)],
        vec![
            on(thimble, -219.0, 54.0),
            bend(-188.0, 50.0, 30.0),
            on(lantern, -117.0, -24.0),
        ],
        vec![
            on(lantern, -117.0, -24.0),
            bend(-46.0, -94.0, 40.0),
            on(candlewick, -32.0, -122.0),
        ],
        vec![on(candlewick, -32.0, -122.0), on(teasel, -24.0, -231.0)],
        vec![on(candlewick, 68.0, -109.0), on(teasel, 74.0, -229.0)],
        vec![on(candlewick, -122.0, -134.0), on(teasel, -117.0, -236.0)],
        vec![on(damson, -356.0, -293.0), on(pearmain_south, -168.0, -292.0)],
        vec![on(pearmain_south, -168.0, -292.0), on(medlar, 22.0, -289.0)],
    ] {
        sheet.street(REAR_ALLEY, "", &line)?;
    }
    sheet.street(
        FOOTPATH,
        "Quince Walk",
        &[on(damson, -348.0, -160.0), on(lane, -459.6, -166.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Quince Walk",
        &[on(teasel, -262.0, -240.0), on(road, -267.0, -348.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Sorrel Walk",
        &[on(damson, -339.0, 10.0), on(lane, -461.0, 5.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Sorrel Walk",
        &[on(teasel, -70.0, -233.0), on(road, -74.0, -347.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Withy Walk",
        &[on(damson, -326.0, 178.0), on(lane, -463.0, 171.0)],
    )?;
    let mut creek_path = vec![on(lane, -464.0, 216.0)];
    creek_path.extend(
        beside(&site::creek(), -31.0)[6..42]
            .iter()
            .map(|&(x_m, y_m)| at(x_m, y_m)),
    );
    creek_path.push(on(road, 176.0, -345.0));
    let creek_path = sheet.street(FOOTPATH, "Creek Path", &creek_path)?;
    sheet.street(
        FOOTPATH,
        "Thimble Path",
        &[on(bank, -208.0, 187.0), on(creek_path, -204.0, 216.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Candlewick Path",
        &[on(bank, 113.0, -102.0), on(creek_path, 150.0, -100.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Teasel Path",
        &[on(bank, 126.0, -228.0), on(creek_path, 172.0, -228.0)],
    )?;
    let farm_path = sheet.street(
        FOOTPATH,
        "Farm Path",
        &[
            on(bank, -8.0, 85.0),
            bend(44.0, 138.0, 20.0),
            bend(140.0, 104.0, 60.0),
            at(236.0, 34.0),
            on(farm_drive, 300.0, -46.0),
        ],
    )?;
    sheet.street(
        FOOTPATH,
        "Wood Walk",
        &[
            on(farm_path, 236.0, 34.0),
            bend(280.0, 120.0, 40.0),
            bend(340.0, 190.0, 40.0),
            bend(402.0, 120.0, 40.0),
            bend(352.0, 20.0, 40.0),
            on(farm_drive, 300.0, -46.0),
        ],
    )?;
    Ok(Streets {
        land,
        pearmain_west,
        pearmain_square,
        pearmain_south,
        damson,
        bank,
        medlar,
        sorrel,
        thimble,
        candlewick,
        hall_row,
        lantern,
    })
}
