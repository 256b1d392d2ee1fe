//! Run by `cargo task test` in headless Chromium; a native build of this file is empty.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used, reason = "tests fail by panicking")]

use wasm_bindgen_test::wasm_bindgen_test_configure;

mod same_numbers;

wasm_bindgen_test_configure!(run_in_browser);
