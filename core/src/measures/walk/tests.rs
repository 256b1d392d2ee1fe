use super::*;
use crate::figures::Evaluation;
use crate::measures::tests::{evaluated, village};

fn number(evaluation: &Evaluation, id: &str, destination: usize) -> f64 {
    let index = evaluation.graph().index(id).unwrap();
    evaluation.cell(index, destination).number().unwrap()
}

#[test]
fn the_headlines_are_their_rows_of_the_tables() {
    let evaluation = evaluated(&village());
    for (headline, table, destination) in [
        ("walk.center_5min_homes", "walk.homes_within_5min", Destination::Center),
        (
            "walk.center_5min_homes_share",
            "walk.homes_share_within_5min",
            Destination::Center,
        ),
        (
            "walk.center_5min_homes_share_slower",
            "walk.homes_share_within_5min_slower",
            Destination::Center,
        ),
        (
            "walk.all_five_10min_homes_share",
            "walk.homes_share_within_10min",
            Destination::AllFive,
        ),
        (
            "walk.all_five_sure_10min_homes_share",
            "walk.homes_share_within_10min",
            Destination::AllFiveSure,
        ),
        (
            "walk.all_five_10min_homes_share_slower",
            "walk.homes_share_within_10min_slower",
            Destination::AllFive,
        ),
        (
            "walk.park_5min_homes_share",
            "walk.homes_share_within_5min",
            Destination::Park,
        ),
    ] {
        let row = number(&evaluation, table, destination as usize);
        assert_eq!(number(&evaluation, headline, 0).to_bits(), row.to_bits(), "{headline}");
    }
}

/// At 3.03 ft/s (0.923544 m/s) five minutes are what takes 206.591 s at the base speed of 1.34112 m/s.
#[test]
fn slower_walkers_reach_what_takes_less_at_base_speed() {
    let evaluation = evaluated(&village());
    let time_s = 300.0 * (3.03 * 0.3048) / 1.341_12;
    assert!((number(&evaluation, "walk.base_time_5min_slower", 0) - time_s).abs() < 1e-9);
    assert!((time_s - 206.591).abs() < 5e-4);
    // Between the given knots at 180 and 290 s the curve is straight; its own knots lie 10 s apart.
    let homes = 105.0 + 42.0 * (time_s - 180.0) / 110.0;
    let slower = number(
        &evaluation,
        "walk.homes_within_5min_slower",
        Destination::Center as usize,
    );
    assert!((slower - homes).abs() < 1e-9, "{slower}, by hand {homes}");
}

#[test]
fn knots_rise_and_hold_every_whole_minute() {
    assert!(KNOTS_S.windows(2).all(|pair| pair[0] < pair[1]));
    assert_eq!((KNOTS_S[0], KNOTS_S[KNOTS_S.len() - 1]), (0, curves::LAST_KNOT_S));
    assert!((0..=30).all(|minute| KNOTS_S.contains(&(minute * 60))));
}

#[test]
fn every_setting_has_its_own_id_and_says_where_its_default_comes_from() {
    let mut ids: Vec<&str> = settings::ALL.iter().map(|setting| setting.id).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), settings::ALL.len());
    for setting in settings::ALL {
        assert!(setting.default >= 0.0 && !setting.source().is_empty(), "{}", setting.id);
    }
    // 1,500 square feet are 139.35 m².
    assert!((settings::SHOPS_MINIMUM.default - 139.35).abs() < 0.01);
}
