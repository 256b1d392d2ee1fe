//! Same file, same numbers: what the browser works out is what the native program does, to the bit.

use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn number_gives_the_bits_written_down() {
    assert_eq!(hobnail_in_browser::fingerprint_of_number(), hobnail_in_browser::NUMBER);
}
