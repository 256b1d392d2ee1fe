//! A plan in an address: what is handed on, and how a plan that came in one is opened.
//!
//! The address is made anew each time it is asked for, from the plan as it stands. A plan that came in an address is
//! looked at first, and becomes one's own by a press of a button.

use hobnail_core::exchange::address::{self, LeftOut};
use hobnail_core::exchange::plan_file;
use hobnail_core::say;
use hobnail_core::text::exchanged;
use qrcodegen::{QrCode, QrCodeEcc};

use super::App;
use super::files::file_name;
use super::store::Store;
use super::words::sentence_case;
use crate::browser::{self, files, loader};

/// The longest address, in bytes, whose code can be read across a room: 113 modules to a side.
///
/// Common practice, no source.
const LONGEST_CODE_BYTES: usize = 1_200;

/// What the panel for sharing shows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shared {
    /// The whole address; `None` where this page knows of none that others could open.
    pub address: Option<String>,
    /// What is said of it: how long it is, or why there is none.
    pub words: String,
    /// What the address leaves out, one sentence each.
    pub left_out: Vec<&'static str>,
    /// The address as a code for the cameras of a room.
    pub code: Option<Code>,
    /// What is said where there is no code.
    pub no_code: Option<&'static str>,
    /// What came of the last press of a button.
    pub outcome: &'static str,
    /// Whether the system can hand the address on.
    pub can_hand_on: bool,
    /// Whether this page can be saved as one file with the plan inside.
    pub can_save_page: bool,
}

/// A code of dark and light squares.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Code {
    /// Squares to a side, with the light margin of four that the standard asks for.
    pub side: i32,
    /// The dark squares, as the data of a path of SVG, a square being one unit.
    pub path: String,
}

/// Light squares around a code (ISO/IEC 18004:2015, section 9.1).
const MARGIN: i32 = 4;

impl Code {
    /// The code of a text; `None` where no code holds as much.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        // Addresses have small letters, so that no shorter mode than bytes would be found for them.
        let squares = QrCode::encode_binary(text.as_bytes(), QrCodeEcc::Low).ok()?;
        let mut path = String::new();
        for y in 0..squares.size() {
            let mut x = 0;
            while x < squares.size() {
                let begun = x;
                while x < squares.size() && squares.get_module(x, y) {
                    x += 1;
                }
                if x > begun {
                    let (left, top, width) = (begun + MARGIN, y + MARGIN, x - begun);
                    path += &format!("M{left} {top}h{width}v1h-{width}z");
                }
                x += 1;
            }
        }
        Some(Self {
            side: squares.size() + 2 * MARGIN,
            path,
        })
    }
}

impl App {
    /// What can be handed on of the plan as it stands, from a page that others find at `page`.
    #[must_use]
    pub fn shared(&self, page: Option<&str>) -> Shared {
        let document = self.study().document();
        let mut left_out = address::left_out(document);
        left_out.push(LeftOut::History);
        let left_out = left_out.into_iter().map(LeftOut::before_copying).collect();
        let encoded = match address::encode(document) {
            Ok(encoded) => encoded,
            Err(fault) => {
                return Shared {
                    words: sentence_case(&format!("{fault}.")),
                    ..Shared::default()
                };
            }
        };
        let address = page.map(|page| [page, "#", address::NAME, &encoded.text].concat());
        let words = match &address {
            Some(address) => say!("share-address-length", count = address.len()),
            None => say!("share-no-address").to_owned(),
        };
        let is_short = address
            .as_ref()
            .is_some_and(|address| address.len() <= LONGEST_CODE_BYTES);
        let code = address.as_deref().filter(|_| is_short).and_then(Code::of);
        Shared {
            no_code: (address.is_some() && code.is_none()).then(|| say!("share-no-code")),
            address,
            words,
            left_out,
            code,
            ..Shared::default()
        }
    }
}

impl Store {
    /// Makes the address of the plan as it stands.
    pub fn share(self) {
        let page = browser::address::of_page();
        let shared = self.with(|app| app.shared(page.as_deref()));
        self.shared.set_if_new(Shared {
            can_hand_on: browser::address::can_hand_on(),
            can_save_page: loader::holds_page(),
            ..shared
        });
    }

    /// Puts the address on the clipboard, and says so.
    pub fn copy_address(self) {
        self.share();
        let Some(address) = self.shared.with_untracked(|shared| shared.address.clone()) else {
            return;
        };
        browser::document::after_this(async move {
            let is_copied = browser::address::copy(&address).await;
            self.say_of_address(if is_copied {
                say!("share-copied")
            } else {
                say!("share-not-copied")
            });
        });
    }

    /// Asks the system to hand the address on.
    pub fn hand_address_on(self) {
        self.share();
        let Some(address) = self.shared.with_untracked(|shared| shared.address.clone()) else {
            return;
        };
        let name = self.with(|app| app.study().document().heading.name.clone());
        browser::document::after_this(async move {
            let is_handed_on = browser::address::hand_on(&name, &address).await;
            self.say_of_address(if is_handed_on { "" } else { say!("share-not-handed-on") });
        });
    }

    fn say_of_address(self, sentence: &'static str) {
        let shared = self.shared.with_untracked(Clone::clone);
        self.shared.set_if_new(Shared {
            outcome: sentence,
            ..shared
        });
        self.act(|app| app.say(sentence));
    }

    /// Saves the page in one file, with the plan inside.
    pub fn save_page(self) {
        let (name, written) = self.with(|app| {
            let document = app.study().document();
            (document.heading.name.clone(), plan_file::write(document))
        });
        let name = exchanged(&file_name(&name), ".geojson", ".html");
        let saved = written
            .map_err(|fault| fault.to_string())
            .and_then(|text| loader::page_with(&text))
            .and_then(|page| files::save(&name, "text/html", &page));
        self.act(|app| match saved {
            Ok(()) => app.say(say!("page-saved", name = name)),
            Err(fault) => app.warn(fault),
        });
    }

    /// Opens the plan that came with this page, in its address or within its file, to be looked at; and each that comes
    /// in another address of it.
    pub(super) fn open_carried(self) {
        if !self.open_address()
            && let Some(text) = loader::carried_plan()
        {
            self.look_at(say!("share-this-file"), &text);
        }
        browser::address::on_change(move || {
            self.open_address();
        });
    }

    /// Opens the plan in the page's address; `false` where there is none.
    fn open_address(self) -> bool {
        let carried = browser::address::carried();
        if let Some(text) = &carried {
            self.look_by(|app| {
                let opened = address::decode(text).map_err(|fault| sentence_case(&format!("{fault}.")))?;
                app.look_at_plan(opened.document)?;
                let missing: Vec<&str> = opened.left_out.into_iter().map(LeftOut::after_opening).collect();
                if !missing.is_empty() {
                    app.warn(missing.join(" "));
                }
                Ok(())
            });
        }
        carried.is_some()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The side of a code of version 1 is 21, and its corners carry the finders of ISO/IEC 18004:2015, section 6.3.3:
    /// seven dark squares, then a light one.
    #[test]
    fn a_short_text_is_a_code_of_21_squares_with_its_margin() {
        let code = Code::of("HOBNAIL").unwrap();
        assert_eq!(code.side, 21 + 8);
        assert!(code.path.starts_with("M4 4h7v1h-7z"), "{}", code.path);
        assert_eq!(Code::of(&"a".repeat(4_000)), None);
    }
}
