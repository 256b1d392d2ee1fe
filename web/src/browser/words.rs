//! The script that puts messages into words (`web/words.js`), and the language of the window, which it remembers.

use hobnail_core::messages::{self, Argument, Language, Message, Speaker};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(js_namespace = hobnailWords)]
extern "C" {
    fn say(place: usize, names: &str, values: &js_sys::Array) -> Option<String>;

    fn find(id: &str) -> Option<String>;

    #[wasm_bindgen(js_name = find)]
    fn find_with(id: &str, values: &js_sys::Object) -> Option<String>;

    fn language() -> String;

    #[wasm_bindgen(js_name = startAgain, catch)]
    fn start_again_in(language: &str, plan: &str) -> Result<(), JsValue>;

    #[wasm_bindgen(js_name = handedOver)]
    fn handed_over_by_script() -> Option<String>;
}

/// Says every message of this thread by the script, in the window's language.
pub fn speak_by_script() {
    messages::speak_through(Speaker {
        say: by_script,
        find: |_, id| find(id),
    });
    messages::use_language(Language::of_code(&language()).unwrap_or_default());
}

fn by_script(_: Language, message: Message, names: &str, values: &[Argument<'_>]) -> Option<String> {
    let given = js_sys::Array::new();
    for value in values {
        given.push(&match value {
            Argument::Count(count) => JsValue::from(*count),
            Argument::Text(text) => JsValue::from_str(text),
        });
    }
    say(message.place(), names, &given)
}

/// The words of a message whose name and values come from the readers of base data; its name where it can not be said,
/// for people to report.
#[must_use]
pub fn say_by_name(id: &str, arguments: &[(String, String)]) -> String {
    let values = js_sys::Object::new();
    for (name, value) in arguments {
        // A count is a number, so that the sentence knows its plural; a file's own words stay as they are.
        let given = match value.parse::<u32>() {
            Ok(number) if name == "count" => JsValue::from(number),
            _ => JsValue::from_str(value),
        };
        // Setting a property of an object of our own does not fail.
        let _ = js_sys::Reflect::set(&values, &JsValue::from_str(name), &given);
    }
    find_with(id, &values).unwrap_or_else(|| id.to_owned())
}

/// Starts the page anew in a language; `plan` is told to the page that starts.
///
/// # Errors
/// The browser's own words, when it remembers nothing; the page then stays.
pub fn start_again(language: Language, plan: &str) -> Result<(), String> {
    start_again_in(language.code(), plan).map_err(|fault| js_sys::Object::from(fault).to_string().into())
}

/// What the page before this one handed over; told once.
#[must_use]
pub fn handed_over() -> Option<String> {
    handed_over_by_script()
}

/// The text in small letters, by the browser, whose tables of letters the page need not carry.
#[must_use]
#[expect(clippy::disallowed_methods, reason = "tests without a browser carry the tables")]
pub fn lowercase(text: &str) -> String {
    if cfg!(target_arch = "wasm32") {
        js_sys::JsString::from(text).to_lower_case().into()
    } else {
        text.to_lowercase()
    }
}

/// The text in capitals, likewise.
#[must_use]
#[expect(clippy::disallowed_methods, reason = "tests without a browser carry the tables")]
pub fn uppercase(text: &str) -> String {
    if cfg!(target_arch = "wasm32") {
        js_sys::JsString::from(text).to_upper_case().into()
    } else {
        text.to_uppercase()
    }
}
