//! Journals as text: one entry to a line, each line whole in itself.
//!
//! A line is the format's version, the entry's number, a checksum and the entry as JSON, parted by single spaces:
//! `1 12 a1b2c3d4e5f60718 {"entry":"undo"}`. The checksum is the 64-bit FNV-1a hash of the text `12 {"entry":"undo"}`,
//! in hexadecimal, so a line that was cut, mixed up or altered is not taken for another. Lines may be kept one by one,
//! and a journal is their concatenation.

use std::fmt;

use super::json::{Json, parse};
use super::stored::v1::{document_from_json, document_to_json, transaction_from_json, transaction_to_json};
use super::stored::{Members, Reader, Writing};
use crate::plan::history::Limits;
use crate::plan::journal::{self, Entry, EntryNumber, NumberedEntry, Recovered, Snapshot};
use crate::say;

/// Version of the line format and of what stands in it.
const VERSION: &str = "1";

/// What a journal file gave.
#[derive(Clone, Debug)]
pub struct Opened {
    /// The document and its history; `None` when no snapshot is intact.
    pub recovered: Option<Recovered>,
    /// Lines that could not be used.
    pub damage: Vec<DamagedLine>,
}

/// A line that could not be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DamagedLine {
    /// The line, from 1.
    pub line: usize,
    /// What is wrong with it.
    pub damage: Damage,
}

/// What is wrong with a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// It is not a journal line, or was cut short.
    NotALine,
    /// It was written by another version of this program.
    OtherVersion,
    /// It was altered: its checksum does not fit.
    Altered,
    /// It is intact and says something that can not be.
    Unreadable,
}

impl fmt::Display for DamagedLine {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&match self.damage {
            Damage::NotALine => say!("exchange-journal-no-line", line = self.line),
            Damage::OtherVersion => say!("exchange-journal-other-version", line = self.line),
            Damage::Altered => say!("exchange-journal-altered", line = self.line),
            Damage::Unreadable => say!("exchange-journal-unreadable", line = self.line),
        })
    }
}

impl Opened {
    /// What was lost, in sentences; empty when nothing was.
    #[must_use]
    pub fn losses(&self) -> Vec<String> {
        let mut sentences: Vec<String> = self.damage.iter().map(ToString::to_string).collect();
        match &self.recovered {
            Some(recovered) => sentences.extend(recovered.losses.iter().map(ToString::to_string)),
            None => sentences.push(say!("exchange-journal-no-snapshot").to_owned()),
        }
        sentences
    }
}

/// The line of an entry, with its line end.
#[must_use]
pub fn write_line(held: &NumberedEntry) -> String {
    let mut json = String::new();
    entry_to_json(&held.entry).write_to(&mut json);
    let text = format!("{} {json}", held.number);
    format!("{VERSION} {} {:016x} {json}\n", held.number, checksum(text.as_bytes()))
}

/// Reads a journal and takes it up at its last snapshot ([`journal::recover`]).
#[must_use]
pub fn read(bytes: &[u8], limits: Limits) -> Opened {
    let (entries, damage) = read_lines(bytes);
    Opened {
        recovered: journal::recover(&entries, limits),
        damage,
    }
}

/// The intact entries of a journal in the order they stand there, and what became of the other lines.
#[must_use]
pub fn read_lines(bytes: &[u8]) -> (Vec<NumberedEntry>, Vec<DamagedLine>) {
    let (mut entries, mut damaged) = (Vec::new(), Vec::new());
    for (index, line) in bytes.split(|byte| *byte == b'\n').enumerate() {
        if line.is_empty() {
            continue;
        }
        match read_line(line) {
            Ok(entry) => entries.push(entry),
            Err(damage) => damaged.push(DamagedLine {
                line: index + 1,
                damage,
            }),
        }
    }
    (entries, damaged)
}

/// The entry of one line, without its line end.
///
/// # Errors
/// [`Damage`] when the line is not exactly what was written.
pub fn read_line(line: &[u8]) -> Result<NumberedEntry, Damage> {
    let text = std::str::from_utf8(line).map_err(|_| Damage::NotALine)?;
    let mut parts = text.splitn(4, ' ');
    let (version, number) = (parts.next(), parts.next());
    let (sum, json) = (
        parts.next().ok_or(Damage::NotALine)?,
        parts.next().ok_or(Damage::NotALine)?,
    );
    if version != Some(VERSION) {
        return Err(Damage::OtherVersion);
    }
    let number = number.ok_or(Damage::NotALine)?;
    if sum != format!("{:016x}", checksum(format!("{number} {json}").as_bytes())) {
        return Err(Damage::Altered);
    }
    let number = EntryNumber(number.parse().map_err(|_| Damage::Unreadable)?);
    let json = parse(json.as_bytes()).map_err(|_| Damage::Unreadable)?;
    let mut reader = Reader::default();
    let entry = entry_from_json(&json, &mut reader);
    match entry {
        Some(entry) if reader.fault_count() == 0 => Ok(NumberedEntry { number, entry }),
        _ => Err(Damage::Unreadable),
    }
}

fn entry_to_json(entry: &Entry) -> Json {
    let mut writing = Writing::default();
    match entry {
        Entry::Snapshot(snapshot) => {
            writing.put_word("entry", "snapshot");
            writing.put_json("document", document_to_json(&snapshot.document));
            writing.put("done", &snapshot.done);
            writing.put("undone", &snapshot.undone);
        }
        Entry::Commit(transaction) => {
            writing.put_word("entry", "commit");
            transaction_to_json(transaction, &mut writing);
        }
        Entry::Undo => writing.put_word("entry", "undo"),
        Entry::Redo => writing.put_word("entry", "redo"),
        Entry::Moment(name) => {
            writing.put_word("entry", "moment");
            writing.put("name", name);
        }
    }
    writing.done()
}

fn entry_from_json(json: &Json, reader: &mut Reader) -> Option<Entry> {
    let mut members = Members::of(json, reader)?;
    let word: String = members.take("entry", reader)?;
    let entry = match word.as_str() {
        "snapshot" => {
            let document = members.take_json("document", reader)?;
            let document = reader.within("document", |reader| document_from_json(document, reader));
            let (done, undone) = (members.take("done", reader), members.take("undone", reader));
            let document = document?;
            if document.alternatives.is_empty() {
                return None;
            }
            Some(Entry::Snapshot(Box::new(Snapshot {
                document,
                done: done?,
                undone: undone?,
            })))
        }
        "commit" => transaction_from_json(&mut members, reader).map(|held| Entry::Commit(held.into())),
        "undo" => Some(Entry::Undo),
        "redo" => Some(Entry::Redo),
        "moment" => members.take("name", reader).map(Entry::Moment),
        _ => None,
    };
    members.finish(reader);
    entry
}

/// 64-bit FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; the constants are those of draft-eastlake-fnv).
fn checksum(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

#[cfg(test)]
mod tests;
