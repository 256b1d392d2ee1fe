use super::*;

#[derive(Clone, Debug, PartialEq)]
struct Held {
    name: String,
    lengths: Vec<f64>,
    pairs: Vec<Option<(u32, i32)>>,
    kinds: Vec<Kind>,
}

#[derive(Clone, Debug, PartialEq)]
enum Kind {
    Plain,
    Told(Box<(u32, bool)>),
    Both {
        is_clear: bool,
        outcome: Result<(), String>,
    },
}

passed!(struct Held { name, lengths, pairs, kinds });
passed!(enum Kind { 0 = Plain, 1 = Told(text), 2 = Both { is_clear, outcome } });

fn held() -> Held {
    Held {
        name: "Längs der Straße".to_owned(),
        lengths: vec![0.1, -0.0, f64::INFINITY, f64::MIN_POSITIVE],
        pairs: vec![None, Some((u32::MAX, i32::MIN))],
        kinds: vec![
            Kind::Plain,
            Kind::Told(Box::default()),
            Kind::Both {
                is_clear: true,
                outcome: Ok(()),
            },
            Kind::Both {
                is_clear: false,
                outcome: Err("no".to_owned()),
            },
        ],
    }
}

#[test]
fn what_is_passed_arrives_as_it_was() {
    let told = held();
    let arrived: Held = from_bytes(&to_bytes(&told)).unwrap();
    assert_eq!(arrived, told);
    assert!(arrived.lengths[1].is_sign_negative());
    let set: OrderedSet<u64> = [7, 3, 9].into();
    assert_eq!(from_bytes(&to_bytes(&set)), Some(set));
}

#[test]
fn what_was_cut_off_or_goes_on_is_refused() {
    let bytes = to_bytes(&held());
    for length in 0..bytes.len() {
        assert_eq!(from_bytes::<Held>(&bytes[..length]), None, "of {length} bytes");
    }
    let mut longer = bytes;
    longer.push(0);
    assert_eq!(from_bytes::<Held>(&longer), None);
}

#[test]
fn what_is_no_value_is_refused() {
    assert_eq!(from_bytes::<bool>(&[2]), None);
    assert_eq!(from_bytes::<Kind>(&[3]), None);
    // A length beyond what is there, and letters that are none.
    assert_eq!(from_bytes::<String>(&[255; 8]), None);
    assert_eq!(from_bytes::<Vec<u32>>(&[255; 12]), None);
    assert_eq!(from_bytes::<String>(&[1, 0, 0, 0, 0, 0, 0, 0, 0xFF]), None);
}
