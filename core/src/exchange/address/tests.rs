use super::*;
use crate::plan::document::{BaseImage, FactorOverride, Topography};
use crate::plan::ids::MarkId;
use crate::plan::land::{Barrier, Beside};
use crate::plan::mark::Mark;
use crate::plan::projection::GeographicPoint;
use crate::plan::street::{Status, Street, StreetOwner, StreetRole, Tie, Vertex};
use crate::plan::tie::foot;
use crate::plan::{AlternativeId, PlanPoint, StreetSectionId};

fn plan() -> Document {
    let origin = GeographicPoint {
        longitude_ndeg: -71_123_456_789,
        latitude_ndeg: 42_345_678_912,
    };
    Document::new("", origin)
}

fn street(points: &[(i32, i32)]) -> Street {
    Street {
        line: points.iter().map(|&(x, y)| Vertex::at(PlanPoint::new(x, y))).collect(),
        section: crate::plan::defaults::NEIGHBORHOOD_STREET,
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    }
}

fn with_streets(streets: &[Street]) -> Document {
    let mut document = plan();
    let marks = &mut document.alternatives.get_mut(&AlternativeId(0)).unwrap().marks;
    marks.extend((0..).map(MarkId).zip(streets.iter().cloned().map(Mark::Street)));
    document
}

/// The letters of a document that comes back as it was.
#[track_caller]
fn letters_of(document: &Document) -> usize {
    let told = encode(document).unwrap();
    assert_eq!(decode(&told.text).unwrap().document, *document);
    assert!(
        told.text
            .bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || b"-_".contains(&byte))
    );
    told.text.len()
}

#[test]
fn ten_unnamed_streets_take_at_most_250_letters() {
    let mut state = 5_u64;
    let mut within = |most: i32| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) % (2 * most as u64 + 1)) as i32 - most
    };
    // By hand on the 0.1 m grid, three and four points each, 150 m apart.
    let streets: Vec<Street> = (0..10)
        .map(|number| {
            let mut line = vec![(within(3000) * 100, within(3000) * 100)];
            for place in 0..2 + number % 2 {
                let (x, y) = line[place];
                line.push((x + within(1500) * 100, y + within(900) * 100));
            }
            street(&line)
        })
        .collect();
    let letters = letters_of(&with_streets(&streets));
    assert!(letters <= 250, "{letters}");
}

#[test]
fn a_new_plan_takes_next_to_nothing() {
    let letters = letters_of(&plan());
    assert!(letters <= 50, "{letters}");
}

#[test]
fn ties_come_back_wherever_they_are() {
    let main = street(&[(0, 0), (100_000, 3_000), (180_000, 90_000)]);
    for along_ppb in [0, 1, 123_456_789, 500_000_000, 1_000_000_000] {
        for segment in [0, 1] {
            let mut side = street(&[(0, 0), (40_300, -80_700)]);
            side.line[0] = Vertex {
                point: foot(&main.line, segment, along_ppb).unwrap(),
                corner_radius_mm: 0,
                tie: Some(Tie {
                    street: MarkId(0),
                    segment,
                    along_ppb,
                }),
            };
            letters_of(&with_streets(&[main.clone(), side.clone()]));
            // The one held on to may have the larger id.
            side.line[0].tie = Some(Tie {
                street: MarkId(1),
                segment,
                along_ppb,
            });
            letters_of(&with_streets(&[side, main.clone()]));
        }
    }
}

#[test]
fn settings_and_factors_come_back_to_the_bit() {
    let mut document = plan();
    for (name, value) in [
        ("a", 0.1),
        ("b", -0.0),
        ("c", 1e-300),
        ("d", 123_456_789.0),
        ("e", f64::MAX),
        ("f", 1.0 / 3.0),
    ] {
        document.settings.chosen.insert(name.to_owned(), value);
    }
    let factor = FactorOverride {
        low: 0.25,
        typical: 1e16,
        high: -17.0,
        source: "Counted on the spot\0, twice".to_owned(),
    };
    document.settings.overridden_factors.insert("car.km".to_owned(), factor);
    document.settings.rule_lists = vec!["town".to_owned(), "town".to_owned()];
    letters_of(&document);
    let told = encode(&document).unwrap().text;
    let zero = decode(&told).unwrap().document.settings.chosen["b"];
    assert!(zero.is_sign_negative());
}

#[test]
fn palettes_in_spanish_take_no_room() {
    use crate::messages::{Language, use_language};
    use_language(Language::Spanish);
    let document = plan();
    use_language(Language::English);
    assert_eq!(document.street_sections[&StreetSectionId(5)].name, "Callejón");
    let letters = letters_of(&document);
    assert!(letters <= 50, "{letters}");
}

#[test]
fn what_is_left_out_is_told_on_both_sides() {
    let mut document = plan();
    assert_eq!(left_out(&document), []);
    document.topography = Some(Topography {
        south_west: PlanPoint::new(0, 0),
        spacing_mm: 10_000,
        columns: 1,
        heights_mm: vec![3000],
        source: String::new(),
    });
    assert_eq!(left_out(&document), [LeftOut::Topography]);
    document.base_image = Some(BaseImage {
        name: "photo".to_owned(),
        media_type: "image/png".to_owned(),
        corners: [PlanPoint::new(0, 0); 4],
        opacity_thousandths: 500,
        bytes: vec![0; 100_000].into(),
    });
    let both = [LeftOut::Topography, LeftOut::BaseImage];
    assert_eq!(left_out(&document), both);
    let told = encode(&document).unwrap();
    assert_eq!(told.left_out, both);
    let opened = decode(&told.text).unwrap();
    assert_eq!(opened.left_out, both);
    (document.topography, document.base_image) = (None, None);
    assert_eq!(opened.document, document);
    for part in [LeftOut::Topography, LeftOut::BaseImage, LeftOut::History] {
        assert!(part.before_copying().ends_with('.') && part.after_opening().ends_with('.'));
    }
}

#[test]
fn every_letter_that_is_mistaken_or_missing_is_noticed() {
    let text = encode(&with_streets(&[street(&[(0, 0), (90_000, 1_200)])]))
        .unwrap()
        .text;
    for place in 1..text.len() {
        let cut = decode(&text[..place]);
        assert_eq!(cut, Err(AddressFault::Damaged), "cut at {place}");
        for other in ["A", "B", "Z", "a", "7", "-", "_"] {
            if &text[place..=place] == other {
                continue;
            }
            let mistaken = [&text[..place], other, &text[place + 1..]].concat();
            assert_eq!(decode(&mistaken), Err(AddressFault::Damaged), "{other} at {place}");
        }
    }
}

#[test]
fn what_is_no_address_is_refused_in_a_sentence() {
    let text = encode(&plan()).unwrap().text;
    let newer = text.replacen('1', "3", 1);
    let long = "1".to_owned() + &"A".repeat(LONGEST_TEXT);
    for (given, fault, words) in [
        ("", AddressFault::Empty, "holds no plan"),
        ("https://example.org/#", AddressFault::Empty, "nothing stands behind"),
        ("#figures", AddressFault::NoPlan, "something else"),
        (&newer, AddressFault::Newer, "newer version"),
        ("1", AddressFault::Damaged, "damaged"),
        ("1é", AddressFault::Damaged, "damaged"),
        (&long, AddressFault::TooMuch, "more than a plan may"),
    ] {
        assert_eq!(decode(given), Err(fault), "{given:.40}");
        assert!(fault.to_string().contains(words), "{fault}");
    }
}

#[test]
fn what_lines_ask_of_the_lots_beside_them_is_told_behind_the_rest() {
    let fence = |beside| {
        Mark::Barrier(Barrier {
            name: "Fence".to_owned(),
            line: vec![PlanPoint::new(0, 0), PlanPoint::new(40_000, 300)],
            beside,
        })
    };
    let with = |beside: [Option<Beside>; 3]| {
        let mut document = plan();
        let first = document.alternatives[&AlternativeId(0)].clone();
        document.alternatives.insert(AlternativeId(1), first);
        for (held, second) in document.alternatives.values_mut().zip([beside[1], beside[2]]) {
            held.marks.insert(MarkId(0), fence(beside[0]));
            held.marks.insert(MarkId(1), fence(second));
        }
        document
    };
    let low = Beside {
        stories: Some(3),
        ..Beside::default()
    };
    let far = Beside {
        reach_mm: u32::MAX,
        stories: None,
        clear_mm: Some(0),
    };
    let plain = encode(&with([None; 3])).unwrap().text;
    assert!(plain.starts_with(PLAIN), "older pages open what asks nothing");
    let mut texts = vec![plain.clone()];
    for beside in [
        [Some(low), None, None],
        [None, Some(low), Some(far)],
        [Some(far), Some(low), Some(low)],
    ] {
        let document = with(beside);
        let text = encode(&document).unwrap().text;
        assert!(text.starts_with(WITH_BESIDE));
        assert_eq!(decode(&text).unwrap().document, document);
        // The one letter taken for the other.
        let other = text.replacen(WITH_BESIDE, &PLAIN.to_string(), 1);
        assert_eq!(decode(&other), Err(AddressFault::Damaged));
        texts.push(text);
    }
    assert_eq!(
        decode(&plain.replacen(PLAIN, &WITH_BESIDE.to_string(), 1)),
        Err(AddressFault::Damaged)
    );
    // Those of this release open for ever.
    assert_eq!(
        texts[1],
        "2_41_TfQUtW4Lxq1VySB_5auwHBmVbEOVyFItjWeRVeAsXODsg_qwVQaaEjaVHV4"
    );
    assert!(
        texts[1].len() <= plain.len() + 12,
        "{} letters for {}",
        texts[1].len(),
        plain.len()
    );
}

#[test]
fn an_address_opens_behind_a_page_and_broken_over_lines() {
    let document = with_streets(&[street(&[(0, 0), (90_000, 1_200)])]);
    let text = encode(&document).unwrap().text;
    let (first, second) = text.split_at(9);
    let mailed = format!(" https://example.org/hobnail#{first}\r\n{second}\n");
    assert_eq!(decode(&mailed).unwrap().document, document);
}

#[test]
fn a_made_up_address_ends_before_it_holds_too_much() {
    // Nothing but zeros or ones is what is expected most, or least, again and again.
    for letter in ["A", "8", "x", "_AgD"] {
        for length in [4, 64, 1_000, 20_000] {
            let text = sealed(&("1".to_owned() + &letter.repeat(length / letter.len())));
            if let Err(fault) = decode(&text) {
                assert!(
                    matches!(fault, AddressFault::TooMuch | AddressFault::Impossible),
                    "{fault}"
                );
            }
        }
    }
}

#[test]
fn a_plan_too_large_is_refused() {
    let points: Vec<(i32, i32)> = (0..70_000)
        .map(|place| (place * 7 % 90_001, place * 13 % 80_021))
        .collect();
    assert_eq!(encode(&with_streets(&[street(&points)])), Err(TooLarge));
}

#[test]
fn what_was_shipped_is_told_by_this_version_still() {
    assert!(
        version_1::tells_what_was_shipped(),
        "version 1 tells plans otherwise than it did: its addresses are lost"
    );
}
