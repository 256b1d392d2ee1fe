use super::*;
use crate::figures::leaf::Cell;
use crate::figures::unit::ACRE_M2;
use crate::measures;
use crate::measures::form::tests::{check, number, plan, rectangle_ft};

/// The place of a kind in the order of [`constraint_kinds`].
fn place(kind: &str) -> usize {
    constraint_kinds().iter().position(|(id, _)| *id == kind).unwrap()
}

/// Case D-A17. Marshall Township, Pennsylvania, section 919, derived: 50 acres with 2 of rights-of-way, 5 of wetland, 4 of
/// other floodplain, 5 of steep and 10 of moderately steep land are constrained by 17.0 acres; 33.0 are left, 74.25 homes
/// at 2.25 to the acre, so 74. The moderately steep land stands under a kind of constraint whose share is set to 0.4.
#[test]
fn a_town_allows_whole_homes_on_the_land_that_is_left() {
    let mut document = plan(rectangle_ft(0, 0, 1_000, 1_000), Vec::new());
    let mut evaluated = || {
        let mut measured = measures::tests::village();
        measured.form.land.parts_m2 = Default::default();
        measured.form.land.parts_m2[6][5] = 50.0 * ACRE_M2;
        measured.form.land.constraints_m2 = Default::default();
        for (kind, acres) in [("wetland", 5.0), ("floodplain", 4.0), ("steep", 5.0), ("keep", 10.0)] {
            measured.form.land.constraints_m2[place(kind)][0] = acres * ACRE_M2;
        }
        measured.streets.standing_m2 = 2.0 * ACRE_M2;
        measured.form.allowance = AllowanceInputs::of(&document);
        let evaluation = measures::tests::evaluated(&measured);
        document.settings.chosen.insert(share_id("keep"), 0.4);
        document
            .settings
            .chosen
            .insert(HOMES_BY_LAND.to_owned(), 2.25 / ACRE_M2);
        evaluation
    };
    let unsaid = evaluated();
    check(
        "kept by choice",
        number(&unsaid, "land.allowance_taken") / ACRE_M2,
        13.0,
        1e-9,
    );
    assert_eq!(
        unsaid.value("land.allowed_homes"),
        Some(Cell::Unknown("no homes by land are set for the town's rule".to_owned()))
    );
    let said = evaluated();
    check(
        "constrained",
        number(&said, "land.allowance_taken") / ACRE_M2,
        17.0,
        1e-9,
    );
    check("adjusted", number(&said, "land.adjusted") / ACRE_M2, 33.0, 1e-9);
    check("homes", number(&said, "land.allowed_homes"), 74.0, 0.0);
}

#[test]
fn a_product_that_is_whole_but_for_its_last_bits_is_whole() {
    for homes in 1..2_000 {
        let land_m2 = f64::from(homes) * ACRE_M2 / 2.25;
        check("homes", whole_of(land_m2, 2.25 / ACRE_M2), f64::from(homes), 0.0);
    }
}

#[test]
fn a_setting_that_means_nothing_does_not_count() {
    let mut document = plan(rectangle_ft(0, 0, 1_000, 1_000), Vec::new());
    document.settings.chosen.insert(share_id("steep"), 1.5);
    document.settings.chosen.insert(HOMES_BY_LAND.to_owned(), -1.0);
    assert_eq!(AllowanceInputs::of(&document), AllowanceInputs::default());
    document.settings.chosen.insert(share_id("steep"), 0.25);
    check(
        "share",
        AllowanceInputs::of(&document).shares[place("steep")],
        0.25,
        0.0,
    );
}
