//! Core's benches inside the browser: the same programs, with the browser's clock.
//!
//! Run by `cargo task bench` in headless Chromium, built as the page is, in a worker, where long work is allowed; a
//! native build of this file is empty.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used, reason = "tests fail by panicking")]
#![allow(
    clippy::duplicate_mod,
    reason = "every bench names what they share, as it must to be a program of its own"
)]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

#[path = "../../core/benches/address.rs"]
mod address;

#[path = "../../core/benches/noding.rs"]
mod noding;

#[path = "../../core/benches/streets.rs"]
mod streets;

#[path = "../../core/benches/study.rs"]
mod study;

#[path = "../../core/benches/paths.rs"]
mod paths;

#[path = "../../core/benches/figures.rs"]
mod figures;

wasm_bindgen_test_configure!(run_in_dedicated_worker);

#[wasm_bindgen_test]
fn address() {
    address::main();
}

#[wasm_bindgen_test]
fn noding() {
    noding::main().expect("a bench without arguments writes no files");
}

#[wasm_bindgen_test]
fn streets() {
    streets::main();
}

#[wasm_bindgen_test]
fn study() {
    study::main();
}

#[wasm_bindgen_test]
fn paths() {
    paths::main().expect("a bench without arguments writes no files");
}

#[wasm_bindgen_test]
fn figures() {
    figures::main().expect("the shipped tables fit");
}

/// The clock and the printer that the benches ask for where the standard library has none.
pub mod browser {
    use std::time::Duration;

    use wasm_bindgen::JsCast;
    use wasm_bindgen_test::console_log;
    use web_sys::WorkerGlobalScope;

    /// A moment by the browser's clock, in milliseconds since the worker began.
    #[derive(Clone, Copy)]
    pub struct Instant(f64);

    impl Instant {
        /// Now.
        pub fn now() -> Instant {
            let worker: WorkerGlobalScope = js_sys::global().dyn_into().expect("benches run in a worker");
            Instant(worker.performance().expect("a browser has a clock").now())
        }

        /// Time since then.
        pub fn elapsed(self) -> Duration {
            Duration::from_secs_f64((Instant::now().0 - self.0).max(0.0) / 1_000.0)
        }
    }

    /// Prints a line to the console, which the test program prints.
    pub fn print(line: &str) {
        console_log!("{line}");
    }
}
