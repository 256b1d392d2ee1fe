//! Several files opened together: the plans of a workshop's tables, as alternatives on the base of the first.

use hobnail_core::exchange::plan_file;
use hobnail_core::plan::Document;
use hobnail_core::plan::gather::add_alternatives;
use hobnail_core::say;

use super::store::Store;
use super::words::sentence_case;
use crate::browser::files::{Opened, Sorted};
use crate::browser::pictures;

impl Store {
    /// Opens what was chosen or dropped together: plans first, then a picture under them, then base data.
    pub fn open_sorted(self, sorted: Sorted) {
        self.open_files(sorted.plans);
        let world = sorted.world;
        if let Some(picture) = sorted.picture {
            pictures::read(picture, move |read| self.lay_picture(read, world));
        }
        self.read_bases(sorted.bases);
    }

    /// Opens the files that were chosen or dropped together: one as a plan, several as alternatives of one.
    pub fn open_files(self, mut files: Vec<Opened>) {
        if files.len() < 2 {
            return files.pop().into_iter().for_each(|file| self.open(file));
        }
        let many = files.len();
        let (joined, told) = joined(files);
        let Some(document) = joined else {
            return self.act(|app| app.warn(sentence_case(&format!("{}.", told.join("; ")))));
        };
        self.act(|app| {
            let alternatives = document.alternatives.len();
            match app.replace(document) {
                Ok(()) => app.say(say!("gather-opened", files = many, alternatives = alternatives)),
                Err(fault) => return app.warn(fault),
            }
            if !told.is_empty() {
                let reasons = told.join("; ");
                app.warn(say!("gather-not-all", reasons = reasons));
            }
        });
        self.is_new.set(false);
    }
}

/// The plans of these files in one, on the base of the first that can be read, and what was not taken in.
fn joined(files: Vec<Opened>) -> (Option<Document>, Vec<String>) {
    let mut base: Option<Document> = None;
    let mut told = Vec::new();
    for file in files {
        let read = file.and_then(|(name, text)| match plan_file::read(text.as_bytes()) {
            Ok(opened) => Ok((name, opened)),
            Err(refusal) => Err(format!("{name}: {refusal}")),
        });
        let (name, opened) = match read {
            Ok(read) => read,
            Err(fault) => {
                told.push(fault);
                continue;
            }
        };
        told.extend(opened.faults.iter().map(|fault| format!("{name}: {fault}")));
        let table = name.rsplit_once('.').map_or(name.as_str(), |(stem, _)| stem);
        match &mut base {
            None => {
                let mut document = opened.document;
                for held in document.alternatives.values_mut().filter(|held| held.table.is_empty()) {
                    table.clone_into(&mut held.table);
                }
                base = Some(document);
            }
            Some(base) => match add_alternatives(base, table, opened.document) {
                Ok(differing) => told.extend(differing),
                Err(fault) => told.push(fault),
            },
        }
    }
    (base, told)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BLANK: &str = include_str!("../../../sample-sketches/blank-site.geojson");
    const VILLAGE: &str = include_str!("../../../sample-sketches/compact-village.geojson");

    fn file(name: &str, text: &str) -> Opened {
        Ok((name.to_owned(), text.to_owned()))
    }

    #[test]
    fn the_first_file_that_can_be_read_is_the_base() {
        let files = vec![
            Err("the file table-0.geojson could not be read".to_owned()),
            file("table-1.geojson", "{"),
            file("table-2.geojson", BLANK),
            file("table-3.geojson", VILLAGE),
            file("table-4.geojson", VILLAGE),
        ];
        let (document, told) = joined(files);
        let document = document.unwrap();
        let tables: Vec<&str> = document.alternatives.values().map(|held| held.table.as_str()).collect();
        assert_eq!(tables, ["table-2", "table-3"], "{told:?}");
        assert!(
            told[0].contains("table-0") && told[1].starts_with("table-1.geojson: "),
            "{told:?}"
        );
        assert_eq!(
            told.last().map(String::as_str),
            Some("table-4 draws nothing that is not there already")
        );
    }

    #[test]
    fn files_that_can_not_be_read_leave_no_plan() {
        let (document, told) = joined(vec![file("a.txt", "a"), file("b.txt", "b")]);
        assert!(document.is_none());
        assert_eq!(told.len(), 2);
    }
}
