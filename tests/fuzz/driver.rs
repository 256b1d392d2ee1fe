//! Runs one target over kept findings, seeds and mutations, and keeps what fails.

use std::cell::RefCell;
use std::fs::{self, File};
use std::io::{Seek, Write};
use std::panic::{self, AssertUnwindSafe};
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::time::{Duration, Instant};

use crate::mutate::{Chance, mutate};

/// Something that reads bytes others wrote and must never panic, whatever they are.
pub struct Target {
    /// Its name on the command line and its folder under `tests/fixtures/fuzz/`.
    pub name: &'static str,
    /// The reader: returns for every input, good or bad.
    pub read: fn(&[u8]),
    /// Files, or folders of files, relative to the top level, that are good inputs to start from.
    pub seeds: &'static [&'static str],
}

/// When to stop mutating.
#[derive(Clone, Copy)]
pub enum Effort {
    /// After so many mutations.
    Count(u64),
    /// After so much time.
    Time(Duration),
}

/// An input that takes longer is a finding: the page would stand still.
const TOO_LONG: Duration = Duration::from_secs(10);

/// An input that takes longer will not come back: it is printed and the program ends.
const NEVER: Duration = Duration::from_secs(60);

/// Tries the target; whether it held.
pub fn try_target(target: &Target, effort: Effort, seed: u64) -> bool {
    let fixtures = top_level().join("tests/fixtures/fuzz").join(target.name);
    let findings = fixtures.join("findings");
    let mut corpus = inputs_in(&fixtures.join("seeds"));
    for seeds in target.seeds {
        corpus.extend(inputs_in(&top_level().join(seeds)));
    }
    for input in inputs_in(&findings).iter().chain(&corpus) {
        if let Err(fault) = try_input(target, input) {
            report(target, input, &fault, None);
            return false;
        }
    }
    let mut chance = Chance::new(seed);
    let start = Instant::now();
    let mut tried = 0_u64;
    while match effort {
        Effort::Count(count) => tried < count,
        Effort::Time(time) => start.elapsed() < time,
    } {
        let input = mutate(&corpus, &mut chance);
        tried += 1;
        if let Err(fault) = try_input(target, &input) {
            report(target, &input, &fault, Some(&findings));
            return false;
        }
    }
    let seconds = start.elapsed().as_secs_f64();
    println!(
        "{}: {tried} inputs from {} seeds in {seconds:.1} s, seed {seed}",
        target.name,
        corpus.len()
    );
    true
}

/// The input that is being tried and since when, for the watchman.
static TRYING: Mutex<Option<(Instant, Vec<u8>)>> = Mutex::new(None);

thread_local! {
    static LAST_PANIC: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Tries one input; the fault in words when it panics or takes too long.
fn try_input(target: &Target, input: &[u8]) -> Result<(), String> {
    watch();
    keep(target.name, input);
    let start = Instant::now();
    *TRYING.lock().expect("no thread panics with the lock") = Some((start, input.to_vec()));
    let result = panic::catch_unwind(AssertUnwindSafe(|| (target.read)(input)));
    *TRYING.lock().expect("no thread panics with the lock") = None;
    match result {
        Err(_) => Err(LAST_PANIC.with_borrow(Clone::clone)),
        Ok(()) if start.elapsed() > TOO_LONG => Err(format!("took {:.1} s", start.elapsed().as_secs_f64())),
        Ok(()) => Ok(()),
    }
}

/// The file that holds what is being tried, and the target it is of.
static KEPT: Mutex<Option<(&str, File)>> = Mutex::new(None);

/// Writes down what is about to be tried: a stack that overflows ends the program without a word, and what it was reading
/// is then found in `fuzz-NAME` in the folder for temporary files, behind a line that says how many bytes it has.
/// The file stays open and is written over: to make a new one each time takes longer than most readers do.
fn keep(name: &'static str, input: &[u8]) {
    let mut kept = KEPT.lock().expect("no thread panics with the lock");
    if kept.as_ref().is_none_or(|(held, _)| *held != name) {
        let file = File::create(Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("fuzz-{name}")));
        *kept = Some((name, file.expect("the folder for temporary files can be written")));
    }
    if let Some((_, file)) = kept.as_mut() {
        let text = [format!("{:020}\n", input.len()).as_bytes(), input].concat();
        let written = file.rewind().and_then(|()| file.write_all(&text));
        written.expect("the folder for temporary files can be written");
    }
}

/// Starts, once, what listens to panics and to inputs that never come back.
fn watch() {
    static STARTED: std::sync::Once = std::sync::Once::new();
    STARTED.call_once(|| {
        panic::set_hook(Box::new(|fault| {
            LAST_PANIC.with_borrow_mut(|last| *last = fault.to_string());
        }));
        std::thread::spawn(|| {
            loop {
                std::thread::sleep(Duration::from_secs(1));
                if let Some((start, input)) = TRYING.lock().expect("no thread panics with the lock").as_ref()
                    && start.elapsed() > NEVER
                {
                    eprintln!(
                        "an input did not come back in {} s:\n{}",
                        NEVER.as_secs(),
                        in_words(input)
                    );
                    std::process::exit(1);
                }
            }
        });
    });
}

/// Prints the failing input and, when it is a new one, keeps it.
fn report(target: &Target, input: &[u8], fault: &str, findings: Option<&Path>) {
    eprintln!("{} failed: {fault}\non the input:\n{}", target.name, in_words(input));
    if let Some(folder) = findings {
        let file = folder.join(format!("{:016x}", fnv_1a(input)));
        let kept = fs::create_dir_all(folder).and_then(|()| fs::write(&file, input));
        match kept {
            Ok(()) => eprintln!("kept as {}", file.display()),
            Err(fault) => eprintln!("{} could not be kept: {fault}", file.display()),
        }
    }
}

fn in_words(input: &[u8]) -> String {
    let shown = input.get(..2_000).unwrap_or(input);
    let rest = if shown.len() < input.len() {
        format!("… ({} bytes)", input.len())
    } else {
        String::new()
    };
    format!("{}{rest}", shown.escape_ascii())
}

/// The FNV-1a hash, 64 bits: the name of a kept input's file, and the checksum of a journal's lines.
pub fn fnv_1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// The contents of a file, or of the files in a folder in the order of their names; nothing where there is neither.
fn inputs_in(path: &Path) -> Vec<Vec<u8>> {
    if path.is_file() {
        return vec![fs::read(path).expect("a file of the project can be read")];
    }
    let mut files: Vec<PathBuf> = fs::read_dir(path)
        .into_iter()
        .flatten()
        .map(|entry| entry.expect("a folder can be listed").path())
        .collect();
    files.sort();
    files
        .iter()
        .filter(|file| file.is_file())
        .map(|file| fs::read(file).expect("a file can be read"))
        .collect()
}

fn top_level() -> &'static Path {
    let mut folders = Path::new(env!("CARGO_MANIFEST_DIR")).ancestors();
    folders
        .find(|folder| folder.join("tests/fuzz").is_dir())
        .expect("packages stand below the top level")
}

/// Before every run: a reader with a fault in it is caught, so silence means that there was nothing to catch.
pub fn finds_a_planted_fault() {
    fn reads_no_three(input: &[u8]) {
        assert!(!input.contains(&b'3'), "planted: a three");
    }
    let target = Target {
        name: "planted",
        read: reads_no_three,
        seeds: &[],
    };
    let corpus = [br#"{"streets": 12}"#.to_vec()];
    let mut chance = Chance::new(1);
    let caught = (0..10_000).find_map(|_| try_input(&target, &mutate(&corpus, &mut chance)).err());
    let fault = caught.expect("the planted fault is found within 10,000 inputs");
    assert!(fault.contains("planted: a three"), "{fault}");
}
