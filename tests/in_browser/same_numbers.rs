//! Same file, same numbers: what the browser works out is what the native program does, to the byte.

use hobnail_in_browser::measured::{MEASURED, report};
use hobnail_in_browser::{networks, number_bits};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn number_gives_the_bits_written_down_in_the_browser() {
    assert_eq!(number_bits::fingerprint(), number_bits::WRITTEN_DOWN);
}

#[wasm_bindgen_test]
fn every_sample_measures_in_the_browser_as_written_down() {
    for sample in MEASURED {
        let report = report(sample.plan, sample.alternative).expect("a sample can be measured");
        let pairs = sample.report.lines().zip(report.lines()).zip(1..);
        for ((native, here), line) in pairs {
            assert_eq!(native, here, "{}, line {line}", sample.written_down_in);
        }
        assert!(report == sample.report, "{}: other bytes", sample.written_down_in);
    }
}

#[wasm_bindgen_test]
fn every_network_measures_in_the_browser_as_written_down() {
    let here = networks::fingerprints().expect("every network can be measured");
    assert_eq!(here, networks::WRITTEN_DOWN);
}
