//! The compact village: streets that bend with the creek around one square, blocks one lot deep to each side of their
//! alleys, walks that homes face, and paths where cars need not go.

use hobnail_core::plan::MarkId;
use hobnail_core::plan::street::Status;

use super::palette::{
    BANK_STREET, FOOTPATH, GREEN_STREET, MAIN_STREET, REAR_ALLEY, SECOND, SHARED_LANE, SHARED_WALK, STREET,
    THROUGH_STREET,
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
            bend(-286.0, -76.0, 110.0),
            at(-240.4, -106.0),
        ],
    )?;
    let pearmain_square = sheet.street(
        MAIN_STREET,
        "Pearmain Street",
        &[on(pearmain_west, -240.4, -106.0), at(-196.6, -148.4)],
    )?;
    let pearmain_south = sheet.street(
        MAIN_STREET,
        "Pearmain Street",
        &[
            on(pearmain_square, -196.6, -148.4),
            bend(-172.0, -192.0, 60.0),
            bend(-163.0, -242.0, 120.0),
            on(road, -174.0, -349.0),
        ],
    )?;
    let damson = sheet.street(
        THROUGH_STREET,
        "Damson Street",
        &[
            on(road, -360.0, -345.7),
            at(-352.0, -250.0),
            at(-348.0, -160.0),
            at(-345.0, -74.0),
            at(-339.0, 10.0),
            at(-332.0, 95.0),
            at(-325.5, 182.0),
        ],
    )?;
    let bank = sheet.street(
        BANK_STREET.phase(SECOND),
        "Withy Bank",
        &[
            on(damson, -325.5, 182.0),
            bend(-242.0, 193.0, 100.0),
            bend(-123.0, 169.0, 90.0),
            bend(-26.0, 94.0, 120.0),
            bend(68.0, -2.0, 120.0),
            bend(104.0, -52.0, 90.0),
            bend(117.0, -140.0, 90.0),
            at(126.0, -240.0),
        ],
    )?;
    let teasel = sheet.street(
        THROUGH_STREET,
        "Teasel Street",
        &[
            on(lane, -459.6, -254.0),
            at(-352.0, -250.0),
            at(-262.0, -245.0),
            at(-163.0, -242.0),
            at(-68.0, -240.0),
            at(27.0, -240.0),
            on(bank, 126.0, -240.0),
        ],
    )?;
    let medlar = sheet.street(
        THROUGH_STREET.phase(SECOND),
        "Medlar Street",
        &[
            on(lane, -462.0, 92.0),
            at(-332.0, 95.0),
            bend(-222.0, 101.0, 60.0),
            bend(-165.0, 91.0, 60.0),
            bend(-8.0, -61.0, 60.0),
            bend(20.0, -116.0, 60.0),
            at(27.0, -240.0),
            on(road, 20.0, -347.0),
        ],
    )?;
    let sorrel = sheet.street(
        STREET,
        "Sorrel Street",
        &[
            on(damson, -339.0, 10.0),
            bend(-262.0, 18.0, 60.0),
            at(-221.0, 16.0),
            at(-73.0, -126.5),
            bend(-70.0, -182.0, 60.0),
            on(teasel, -68.0, -240.0),
        ],
    )?;
    let quince = sheet.street(
        STREET,
        "Quince Street",
        &[
            on(damson, -348.0, -160.0),
            at(-268.0, -161.0),
            on(teasel, -262.0, -245.0),
        ],
    )?;
    let thimble = sheet.street(
        STREET,
        "Thimble Street",
        &[
            on(pearmain_square, -240.4, -106.0),
            at(-221.0, 16.0),
            at(-216.0, 101.0),
            on(bank, -210.0, 190.0),
        ],
    )?;
    let candlewick = sheet.street(
        STREET,
        "Candlewick Street",
        &[
            on(pearmain_square, -196.6, -148.4),
            at(-73.0, -126.5),
            at(20.0, -116.0),
            on(bank, 113.0, -102.0),
        ],
    )?;
    let gatepost = sheet.street(
        SHARED_LANE,
        "Gatepost Lane",
        &[on(pearmain_square, -240.4, -106.0), on(quince, -268.0, -161.0)],
    )?;
    let hall_row = sheet.street(
        SHARED_LANE,
        "Hall Row",
        &[on(thimble, -230.0, -42.0), on(candlewick, -124.0, -135.5)],
    )?;
    let lantern = sheet.street(
        GREEN_STREET.phase(SECOND),
        "Lantern Street",
        &[on(sorrel, -147.0, -55.0), at(-78.0, 16.0), on(bank, -10.0, 80.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Lantern Passage",
        &[on(hall_row, -180.0, -89.0), on(sorrel, -147.0, -55.0)],
    )?;
    let cress = sheet.street(
        STREET.phase(SECOND),
        "Cress Street",
        &[on(medlar, -141.0, 68.0), on(bank, -88.0, 143.0)],
    )?;
    let sallow = sheet.street(
        STREET.phase(SECOND),
        "Sallow Street",
        &[on(medlar, -21.0, -48.0), on(bank, 42.0, 24.0)],
    )?;
    for (section, name, line) in [
        (
            SHARED_WALK,
            "Quince Walk",
            vec![on(damson, -348.0, -160.0), on(lane, -459.6, -166.0)],
        ),
        (
            SHARED_WALK,
            "Sorrel Walk",
            vec![on(damson, -339.0, 10.0), on(lane, -461.0, 5.0)],
        ),
        (
            SHARED_WALK,
            "Withy Walk",
            vec![on(damson, -325.5, 182.0), on(lane, -463.0, 176.0)],
        ),
        (
            FOOTPATH,
            "Quince Walk",
            vec![on(teasel, -262.0, -245.0), on(road, -267.0, -348.0)],
        ),
        (
            FOOTPATH,
            "Sorrel Walk",
            vec![on(teasel, -68.0, -240.0), on(road, -70.0, -347.0)],
        ),
    ] {
        sheet.street(section, name, &line)?;
    }
    let behind_sorrel = sheet.street(REAR_ALLEY, "", &[on(damson, -336.0, 53.0), on(thimble, -218.5, 58.0)])?;
    sheet.street(
        FOOTPATH,
        "Sorrel Walk",
        &[on(sorrel, -298.0, 14.0), on(behind_sorrel, -296.0, 55.0)],
    )?;
    for line in [
        // Between the town road and Damson Street.
        vec![on(damson, -350.0, -203.5), on(lane, -459.7, -207.0)],
        vec![on(damson, -346.5, -117.0), on(lane, -459.3, -127.0)],
        vec![on(damson, -342.0, -32.0), on(lane, -460.0, -37.0)],
        vec![on(damson, -336.0, 53.0), on(lane, -461.5, 47.0)],
        vec![on(damson, -329.0, 137.0), on(lane, -462.5, 133.0)],
        // Between Damson Street and Thimble Street.
        vec![on(damson, -342.0, -32.0), on(thimble, -228.0, -26.0)],
        vec![on(damson, -329.0, 137.0), on(thimble, -213.0, 145.0)],
        // Around the square.
        vec![on(damson, -346.5, -117.0), on(gatepost, -252.0, -131.0)],
        vec![on(damson, -350.0, -203.5), on(pearmain_south, -168.0, -200.0)],
        vec![on(candlewick, -124.0, -135.5), on(teasel, -114.0, -241.0)],
        // Bending with the creek.
        vec![
            on(thimble, -218.5, 58.0),
            bend(-190.0, 50.0, 30.0),
            on(lantern, -115.0, -22.0),
        ],
        vec![
            on(lantern, -115.0, -22.0),
            bend(-46.0, -89.0, 40.0),
            on(candlewick, -27.0, -121.0),
        ],
        vec![on(candlewick, -27.0, -121.0), on(teasel, -21.0, -240.0)],
        vec![
            on(thimble, -213.0, 145.0),
            bend(-150.0, 134.0, 60.0),
            on(cress, -114.0, 106.0),
        ],
        vec![on(medlar, -110.0, 38.0), on(bank, -50.0, 112.0)],
        vec![on(medlar, -52.0, -18.0), on(bank, 16.0, 52.0)],
        vec![
            on(sallow, 10.0, -12.0),
            bend(53.0, -64.0, 60.0),
            on(candlewick, 70.0, -108.0),
        ],
        vec![on(candlewick, 70.0, -108.0), on(teasel, 76.0, -240.0)],
        // Along the state road.
        vec![on(lane, -459.8, -296.6), on(damson, -356.0, -293.0)],
        vec![on(damson, -356.0, -293.0), on(pearmain_south, -165.0, -290.0)],
        vec![on(pearmain_south, -165.0, -290.0), on(medlar, 24.0, -288.0)],
    ] {
        sheet.street(REAR_ALLEY, "", &line)?;
    }
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
        &[on(bank, -210.0, 190.0), on(creek_path, -204.0, 216.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Candlewick Path",
        &[on(bank, 113.0, -102.0), on(creek_path, 150.0, -100.0)],
    )?;
    sheet.street(
        FOOTPATH,
        "Teasel Path",
        &[on(bank, 126.0, -240.0), on(creek_path, 172.0, -240.0)],
    )?;
    let farm_path = sheet.street(
        FOOTPATH,
        "Farm Path",
        &[
            on(bank, -10.0, 80.0),
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
        bank,
        medlar,
        sorrel,
        thimble,
        candlewick,
        hall_row,
        lantern,
    })
}
