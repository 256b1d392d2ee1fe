//! Every fault and every place has its words in each language, with the arguments that come with it.

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};
use hobnail_readers::fault::{Limited, Place, What};

use super::fixture;

fn every_fault() -> Vec<What> {
    let word = || "word".to_owned();
    let too_much = |of| What::TooMuch { limit: 5, of };
    vec![
        What::Empty,
        What::UnknownFormat,
        What::Broken { detail: word() },
        What::NotUtf8,
        too_much(Limited::Positions),
        too_much(Limited::Cells),
        too_much(Limited::Bytes),
        What::NoSystem,
        What::NoPlace,
        What::UnknownSystem { system: word() },
        What::UncertainDatum { system: word() },
        What::OffEarth,
        What::Missing { name: word() },
        What::OpenRing,
        What::MissingPoints { count: 2 },
        What::NotRead { kind: word(), count: 1 },
        What::FittedSplines { count: 3 },
        What::TooDeep { name: word() },
        What::NoCoordinates,
        What::NotANumber { value: word() },
        What::TooFewValues { expected: 4, found: 3 },
        What::NoHeights,
        What::PictureApart,
        What::UnnamedCorner,
        What::NoUnit,
        What::TrafficCounts { columns: word() },
        What::Zones { columns: word() },
        What::TooManyZones { limit: 5 },
        What::NothingWithin,
        What::More { count: 7 },
    ]
}

fn every_place() -> Vec<Place> {
    let layer = "streets".to_owned();
    vec![
        Place::File,
        Place::Byte(1),
        Place::Line(2),
        Place::Record { layer, number: 3 },
        Place::Named("way 5".to_owned()),
    ]
}

#[test]
fn every_fault_and_place_is_said_in_every_language() {
    for language in ["en", "es"] {
        let path = fixture("../../core/messages").join(language).join("readers.ftl");
        let file = std::fs::read_to_string(path).unwrap();
        let resource = FluentResource::try_new(file.clone()).unwrap_or_else(|(_, faults)| panic!("{faults:?}"));
        let mut bundle = FluentBundle::new(vec![language.parse().unwrap()]);
        bundle
            .add_resource(resource)
            .unwrap_or_else(|faults| panic!("{faults:?}"));
        let mut said = Vec::new();
        let faults = every_fault().into_iter().map(|what| (what.message(), what.arguments()));
        let places = every_place()
            .into_iter()
            .map(|place| (place.message(), place.arguments()));
        for (name, arguments) in faults.chain(places) {
            let message = bundle.get_message(name).and_then(|message| message.value());
            let pattern = message.unwrap_or_else(|| panic!("{language} does not say {name}"));
            let mut given = FluentArgs::new();
            for (name, value) in arguments {
                // A count is a number, so that the sentence knows its plural.
                match value.parse::<f64>() {
                    Ok(number) => given.set(name, number),
                    Err(_) => given.set(name, value),
                }
            }
            let mut missing = Vec::new();
            let words = bundle.format_pattern(pattern, Some(&given), &mut missing);
            assert!(missing.is_empty(), "{language} {name}: {missing:?}");
            assert!(!words.is_empty());
            said.push(name);
        }
        let lines = file.lines().filter(|line| line.starts_with("readers-"));
        let idle: Vec<&str> = lines
            .filter(|line| !said.iter().any(|name| line.starts_with(&format!("{name} ="))))
            .collect();
        assert_eq!(idle, Vec::<&str>::new(), "{language}");
    }
}
