//! Opening and saving plans, and the samples that come with the page.

use hobnail_core::{message, say};
use std::cell::RefCell;

use hobnail_core::exchange::plan_file;
use hobnail_core::plan::Document;

use super::App;
use super::store::Store;
use super::words::Words;
use crate::browser::files::{self, Opened};
use crate::browser::notice;

/// A sample sketch that comes with the page.
#[derive(Clone, Copy, Debug)]
pub struct Sample {
    /// Its file.
    pub file: &'static str,
    /// What it is called.
    pub title: Words,
    /// What it shows.
    pub about: Words,
}

/// The folder of the samples, among the page's files.
const SAMPLE_FOLDER: &str = "sample-sketches";

/// Media type of GeoJSON (RFC 7946, section 12).
const GEOJSON: &str = "application/geo+json";

thread_local! {
    /// The plan after the last finished step: what is saved when the page fails.
    static LAST_GOOD: RefCell<Option<Document>> = const { RefCell::new(None) };
}

/// Keeps the plan as it stands, between gestures, in case the page fails.
pub fn keep(app: &App) {
    if !app.study().is_in_gesture() {
        LAST_GOOD.set(Some(app.study().document().clone()));
    }
}

/// Makes the plan that was kept last available to the notice of a failed page.
pub fn offer_when_failed() {
    notice::keep_by(|| {
        let document = LAST_GOOD.try_with(|kept| kept.try_borrow().ok()?.clone()).ok()??;
        let text = plan_file::write(&document).ok()?;
        Some((file_name(&document.heading.name), GEOJSON, text))
    });
}

impl Store {
    /// Opens a plan file that was read.
    pub fn open(self, opened: Opened) {
        let (name, text) = match opened {
            Ok(read) => read,
            Err(fault) => return self.act(|app| app.warn(fault)),
        };
        self.act(|app| {
            if let Err(fault) = open_text(app, &name, &text) {
                app.warn(fault);
            }
        });
        self.is_new.set(false);
    }

    /// Reads a sample and opens it.
    pub fn open_sample(self, sample: &'static Sample) {
        let path = format!("{SAMPLE_FOLDER}/{}", sample.file);
        files::read_own(&path, move |read| self.open(read));
    }

    /// Offers the plan as a file.
    pub fn save(self) {
        let (name, written) = self.with(|app| {
            let document = app.study().document();
            (file_name(&document.heading.name), plan_file::write(document))
        });
        self.offer(&name, GEOJSON, written.map_err(|fault| fault.to_string()));
    }

    /// Offers the licenses of all that the page is made of, which come with it.
    pub fn save_licenses(self) {
        files::read_own("licenses.txt", move |read| {
            self.offer(
                "hobnail-licenses.txt",
                "text/plain;charset=utf-8",
                read.map(|(_, text)| text),
            );
        });
    }

    /// Offers the remarks and what answers them as a text, to be read out or printed.
    pub fn save_remarks(self) {
        let (name, text) = self.with(|app| (file_name(&app.study().document().heading.name), app.remarks_text()));
        let stem = name.strip_suffix(".geojson").unwrap_or(&name);
        self.offer(&[stem, ".txt"].concat(), "text/plain;charset=utf-8", Ok(text));
    }

    fn offer(self, name: &str, media_type: &str, written: Result<String, String>) {
        let saved = written.and_then(|text| files::save(name, media_type, &text));
        self.act(|app| match saved {
            Ok(()) => app.say(say!("page-saved", name = name)),
            Err(fault) => app.warn(fault),
        });
    }
}

/// The samples, in the order they are offered.
pub const SAMPLES: [Sample; 4] = [
    Sample {
        file: "compact-village.geojson",
        title: message!("page-sample-village"),
        about: message!("page-sample-village-about"),
    },
    Sample {
        file: "conventional-subdivision.geojson",
        title: message!("page-sample-subdivision"),
        about: message!("page-sample-subdivision-about"),
    },
    Sample {
        file: "repaired-strip.geojson",
        title: message!("page-sample-strip"),
        about: message!("page-sample-strip-about"),
    },
    Sample {
        file: "blank-site.geojson",
        title: message!("page-sample-site"),
        about: message!("page-sample-site-about"),
    },
];

/// Opens the text of a plan file, or of any GeoJSON, and says what came of it.
///
/// # Errors
/// A sentence, when nothing of the file can be used.
pub(super) fn open_text(app: &mut App, name: &str, text: &str) -> Result<(), String> {
    let opened = plan_file::read(text.as_bytes()).map_err(|refusal| format!("{name}: {refusal}"))?;
    app.replace(opened.document)?;
    let faults = opened.faults.len();
    if let Some(first) = opened.faults.first() {
        let first = first.to_string();
        app.warn(if faults > 1 {
            say!(
                "page-opened-partly-more",
                name = name,
                first = first,
                count = faults - 1
            )
        } else {
            say!("page-opened-partly", name = name, first = first)
        });
    } else if !opened.done.is_empty() {
        app.say(format!(
            "{name}: {}.",
            plan_file::plain::summary(&opened.done).join("; ")
        ));
    }
    Ok(())
}

/// The name of a plan file, from the plan's name: its letters and digits, parted by hyphens.
pub(super) fn file_name(plan: &str) -> String {
    let kept: String = plan
        .chars()
        .map(|letter| {
            if letter.is_alphanumeric() {
                letter.to_ascii_lowercase()
            } else {
                ' '
            }
        })
        .collect();
    let parts: Vec<&str> = kept.split_whitespace().collect();
    let stem = if parts.is_empty() {
        "plan".to_owned()
    } else {
        parts.join("-")
    };
    format!("{stem}.geojson")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_name_is_plain() {
        assert_eq!(
            file_name("Tannery Green: Alternative 2"),
            "tannery-green-alternative-2.geojson"
        );
        assert_eq!(file_name("…"), "plan.geojson");
    }

    #[test]
    fn a_plan_that_is_saved_and_opened_is_the_same() {
        let mut app = App::new().expect("the tables fit together");
        let text = plan_file::write(app.study().document()).expect("it lies on Earth");
        let before = app.study().document().clone();
        open_text(&mut app, "plan.geojson", &text).expect("it opens");
        assert_eq!(*app.study().document(), before);
    }

    #[test]
    fn what_can_not_be_opened_leaves_the_plan_as_it_is() {
        let mut app = App::new().expect("the tables fit together");
        let before = app.study().document().clone();
        let fault = open_text(&mut app, "note.txt", "not a plan").expect_err("it is no plan");
        assert!(fault.starts_with("note.txt: "), "{fault}");
        assert_eq!(*app.study().document(), before);
    }
}
