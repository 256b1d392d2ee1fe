//! Readers of plans and their journals: what they open can be judged, saved and opened again, the same.

use std::time::{Duration, Instant};

use hobnail_core::exchange::address::{self, AddressFault};
use hobnail_core::exchange::{journal_file, plan_file};
use hobnail_core::plan::history::Limits;
use hobnail_core::plan::validate::validate;
use hobnail_core::report::measure_report::Measuring;

use crate::driver::fnv_1a;
use crate::memory::most_bytes;

/// A plan file, or any GeoJSON.
pub fn plan_file(input: &[u8]) {
    match plan_file::read(input) {
        Ok(opened) => {
            for fault in &opened.faults {
                let _ = fault.to_string();
            }
            for fault in validate(&opened.document) {
                let _ = fault.to_string();
            }
            let text = plan_file::write(&opened.document).expect("what was opened lies somewhere on Earth");
            let again = plan_file::read(text.as_bytes()).expect("what was saved opens");
            assert!(again.faults.is_empty(), "{:?}", again.faults);
            assert!(
                again.document == opened.document,
                "saved and opened, the plan is another"
            );
        }
        Err(refusal) => assert!(!refusal.to_string().is_empty()),
    }
}

/// A plan that opens, however odd, can be measured.
pub fn measured_plan(input: &[u8]) {
    if let Ok(measuring) = Measuring::open(input, None) {
        let report = measuring.report();
        assert!(!report.figures.is_empty(), "a plan without figures");
        assert!(report.to_json().is_ok(), "the report is no JSON");
    }
}

/// A journal as it is, and with every checksum set right, so that what the lines say is read too.
pub fn journal(input: &[u8]) {
    take_up(input);
    let mut sealed = Vec::new();
    for line in input.split(|byte| *byte == b'\n') {
        let mut parts = line.splitn(4, |byte| *byte == b' ');
        let (version, number) = (parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
        let text = [number, parts.nth(1).unwrap_or_default()].join(&b' ');
        let sum = format!("{:016x}", fnv_1a(&text));
        sealed.extend([version, number, sum.as_bytes(), &text[number.len() + 1..]].join(&b' '));
        sealed.push(b'\n');
    }
    take_up(&sealed);
}

fn take_up(input: &[u8]) {
    let opened = journal_file::read(
        input,
        Limits {
            steps: 3,
            bytes: 1 << 20,
        },
    );
    let losses = opened.losses();
    let Some(mut recovered) = opened.recovered else {
        assert!(!losses.is_empty(), "nothing was recovered and nothing said");
        return;
    };
    let _ = validate(&recovered.document);
    for entry in recovered.history.take_entries() {
        let line = journal_file::write_line(&entry);
        let read = journal_file::read_line(line.trim_end().as_bytes());
        assert!(read == Ok(entry), "an entry came back as another");
    }
    // Steps fit as far as they are in memory, or say that they do not.
    while let Ok(Some(_)) = recovered.history.undo(&mut recovered.document) {}
    while let Ok(Some(_)) = recovered.history.redo(&mut recovered.document) {}
}

/// An address as it is, and with its checksum set right, so that what it says is read too.
pub fn address(input: &[u8]) {
    let text = String::from_utf8_lossy(input);
    open_address(&text);
    open_address(&address::sealed(&text));
}

/// As [`address`], without saving what opens and telling it again, so that many more can be tried.
pub fn address_opened(input: &[u8]) {
    let text = String::from_utf8_lossy(input);
    for text in [address::sealed(&text), text.into_owned()] {
        if let Err(fault) = decoded(&text) {
            assert!(!fault.to_string().is_empty());
        }
    }
}

/// What opening an address may cost, whatever it says (`exchange/address`).
const LONGEST: Duration = Duration::from_millis(50);
const MOST_BYTES: usize = 64_000_000;

/// Opens it. Of a few tries the quickest counts, and only the time that this thread ran: others use the machine too.
fn decoded(text: &str) -> Result<address::Opened, AddressFault> {
    for tries_left in (0..5).rev() {
        let (start, ran_before) = (Instant::now(), ran());
        let (opened, bytes) = most_bytes(|| address::decode(text));
        assert!(bytes <= MOST_BYTES, "opening took {bytes} bytes");
        let mut time = start.elapsed();
        if let (true, Some(before), Some(after)) = (time > LONGEST, ran_before, ran()) {
            time = after.saturating_sub(before);
        }
        if time <= LONGEST {
            return opened;
        }
        assert!(tries_left > 0, "opening took {} ms", time.as_millis());
    }
    address::decode(text)
}

/// How long this thread has run on a processor, where the system says so.
fn ran() -> Option<Duration> {
    let said = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    let time_ns = said.split_whitespace().next()?.parse().ok()?;
    Some(Duration::from_nanos(time_ns))
}

fn open_address(text: &str) {
    match decoded(text) {
        Ok(opened) => {
            for fault in validate(&opened.document) {
                let _ = fault.to_string();
            }
            let file = plan_file::write(&opened.document).expect("what was opened lies somewhere on Earth");
            assert!(
                plan_file::read(file.as_bytes()).is_ok(),
                "what was opened can not be saved"
            );
            // What opens may hold too much to be told again, never anything else.
            if let Ok(again) = address::encode(&opened.document) {
                let again = address::decode(&again.text).expect("what was told opens");
                assert!(again.document == opened.document, "told again, the plan is another");
            }
        }
        Err(fault) => assert!(!fault.to_string().is_empty()),
    }
}
