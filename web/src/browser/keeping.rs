//! The browser's own store of plans: journals line by line, so that a closed tab or a crash loses nothing.
//!
//! Three tables: what is known of each plan by its id, journal lines by id and entry number, and by id the gesture that
//! was not finished. All of them hold text; what it says is the caller's.

use std::cell::Cell;
use std::rc::Rc;

use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest, IdbRequest, IdbTransaction};

const NAME: &str = "hobnail";
const PLANS: &str = "plans";
const LINES: &str = "lines";
const UNFINISHED: &str = "unfinished";

/// What is to be written of one plan: all of it or, where the plan is not as it was left, nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Writing {
    /// The plan's id.
    pub id: String,
    /// The record this window last wrote or read; `None` where there must be none yet.
    pub expected: Option<String>,
    /// The new record; `None` removes the plan with all its lines.
    pub record: Option<String>,
    /// Journal lines by entry number.
    pub lines: Vec<(u64, String)>,
    /// The gesture in progress, if there is one.
    pub unfinished: Option<String>,
    /// Whether it must be on the disk before it counts as written.
    pub is_strict: bool,
}

/// What became of a writing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It is written.
    Written,
    /// Nothing was written: the record is this one, not the one expected.
    Changed(Option<String>),
    /// Nothing was written: there is no room.
    Full,
    /// Nothing was written: the browser refused.
    Refused,
}

/// A plan as it was read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// Its record; `None` where there is no such plan any more.
    pub record: Option<String>,
    /// Its journal.
    pub lines: String,
    /// The gesture that was not finished.
    pub unfinished: Option<String>,
}

/// Called once with what came of it.
pub type Then<T> = Box<dyn FnOnce(T)>;

/// The open store.
#[derive(Clone)]
pub struct Keep {
    database: IdbDatabase,
}

/// Opens the store; `None` where the browser has none or does not let this page use it, as in some private windows.
pub fn open(then: Then<Option<Keep>>) {
    let Some(request) = ask_to_open() else {
        return then(None);
    };
    let making = request.clone();
    request.set_onupgradeneeded(Some(&once(Box::new(move |_| {
        if let Some(database) = database_of(&making) {
            for table in [PLANS, LINES, UNFINISHED] {
                // A table that can not be made lets the opening fail, which is heard below.
                let _ = database.create_object_store(table);
            }
        }
    }))));
    let opened = request.clone();
    let heard = once(Box::new(move |_| {
        then(database_of(&opened).map(|database| {
            let closing = database.clone();
            // A later version of this page, in another window, waits until this one lets go.
            database.set_onversionchange(Some(&once(Box::new(move |_| closing.close()))));
            Keep { database }
        }));
    }));
    request.set_onsuccess(Some(&heard));
    request.set_onerror(Some(&heard));
}

fn ask_to_open() -> Option<IdbOpenDbRequest> {
    let factory = web_sys::window()?.indexed_db().ok()??;
    factory.open_with_u32(NAME, 1).ok()
}

fn database_of(request: &IdbOpenDbRequest) -> Option<IdbDatabase> {
    request.result().ok()?.dyn_into().ok()
}

impl Keep {
    /// Writes; `then` is told once the browser says that it is done, or is not.
    pub fn write(&self, writing: Writing, then: Then<Outcome>) {
        let id = JsValue::from_str(&writing.id);
        let durability = if writing.is_strict { "strict" } else { "relaxed" };
        let begun = self.begin("readwrite", durability).and_then(|transaction| {
            let held = transaction.object_store(PLANS)?.get(&id)?;
            Ok((transaction, held))
        });
        let Ok((transaction, held)) = begun else {
            return then(Outcome::Refused);
        };
        let changed = Rc::new(Cell::new(None));
        let (told, within, read) = (Rc::clone(&changed), transaction.clone(), held.clone());
        held.set_onsuccess(Some(&once(Box::new(move |_| {
            let record = text_of(&read);
            let is_as_left = record == writing.expected;
            if !is_as_left {
                told.set(Some(Outcome::Changed(record)));
            }
            if !is_as_left || put(&within, &id, &writing).is_err() {
                // A transaction that is already over can not be given up, and needs not be.
                let _ = within.abort();
            }
        }))));
        let over = transaction.clone();
        at_end(
            &transaction,
            Box::new(move |is_done| {
                let is_full = || over.error().is_some_and(|fault| fault.name() == "QuotaExceededError");
                then(match changed.take() {
                    _ if is_done => Outcome::Written,
                    Some(changed) => changed,
                    None if is_full() => Outcome::Full,
                    None => Outcome::Refused,
                });
            }),
        );
    }

    /// Reads one plan; `None` where the browser refuses.
    pub fn read(&self, id: &str, then: Then<Option<Found>>) {
        let id = JsValue::from_str(id);
        let begun = self.begin("readonly", "default").and_then(|transaction| {
            let record = transaction.object_store(PLANS)?.get(&id)?;
            let lines = transaction.object_store(LINES)?.get_all_with_key(&lines_of(&id)?)?;
            let unfinished = transaction.object_store(UNFINISHED)?.get(&id)?;
            Ok((transaction, record, lines, unfinished))
        });
        let Ok((transaction, record, lines, unfinished)) = begun else {
            return then(None);
        };
        at_end(
            &transaction,
            Box::new(move |is_done| {
                then(is_done.then(|| Found {
                    record: text_of(&record),
                    lines: texts_of(&lines).concat(),
                    unfinished: text_of(&unfinished),
                }));
            }),
        );
    }

    /// Reads one journal line; `None` where there is none or the browser refuses.
    pub fn read_line(&self, id: &str, number: u64, then: Then<Option<String>>) {
        let key = Array::of2(&JsValue::from_str(id), &JsValue::from_f64(number as f64));
        let begun = self.begin("readonly", "default").and_then(|transaction| {
            let line = transaction.object_store(LINES)?.get(&key)?;
            Ok((transaction, line))
        });
        let Ok((transaction, line)) = begun else {
            return then(None);
        };
        at_end(&transaction, Box::new(move |_| then(text_of(&line))));
    }

    /// The ids and records of all plans; nothing where the browser refuses.
    pub fn list(&self, then: Then<Vec<(String, String)>>) {
        let begun = self.begin("readonly", "default").and_then(|transaction| {
            let plans = transaction.object_store(PLANS)?;
            Ok((transaction, plans.get_all_keys()?, plans.get_all()?))
        });
        let Ok((transaction, ids, records)) = begun else {
            return then(Vec::new());
        };
        at_end(
            &transaction,
            Box::new(move |_| then(texts_of(&ids).into_iter().zip(texts_of(&records)).collect())),
        );
    }

    /// A transaction over all tables. The bindings do not know durability yet, so the browser's function is called by
    /// its name; a browser that does not know it either passes over it.
    fn begin(&self, mode: &str, durability: &str) -> Result<IdbTransaction, JsValue> {
        let begin: Function = Reflect::get(&self.database, &"transaction".into())?.dyn_into()?;
        let options = Object::new();
        Reflect::set(&options, &"durability".into(), &durability.into())?;
        let tables = Array::of3(&PLANS.into(), &LINES.into(), &UNFINISHED.into());
        begin.call3(&self.database, &tables, &mode.into(), &options)?.dyn_into()
    }
}

/// Asks for all that is to be written. Requests that fail later end the transaction.
fn put(transaction: &IdbTransaction, id: &JsValue, writing: &Writing) -> Result<(), JsValue> {
    let lines = transaction.object_store(LINES)?;
    if writing.record.is_none() {
        lines.delete(&lines_of(id)?)?;
    }
    for (number, line) in &writing.lines {
        let key = Array::of2(id, &JsValue::from_f64(*number as f64));
        lines.put_with_key(&JsValue::from_str(line), &key)?;
    }
    put_or_delete(&transaction.object_store(PLANS)?, id, writing.record.as_deref())?;
    put_or_delete(
        &transaction.object_store(UNFINISHED)?,
        id,
        writing.unfinished.as_deref(),
    )
}

fn put_or_delete(table: &IdbObjectStore, id: &JsValue, text: Option<&str>) -> Result<(), JsValue> {
    match text {
        Some(text) => table.put_with_key(&JsValue::from_str(text), id)?,
        None => table.delete(id)?,
    };
    Ok(())
}

/// The keys of a plan's lines, whatever their numbers.
fn lines_of(id: &JsValue) -> Result<JsValue, JsValue> {
    let last = Array::of2(id, &JsValue::from_f64(f64::INFINITY));
    Ok(IdbKeyRange::bound(&Array::of1(id), &last)?.into())
}

fn text_of(request: &IdbRequest) -> Option<String> {
    request.result().ok()?.as_string()
}

fn texts_of(request: &IdbRequest) -> Vec<String> {
    let texts: Array = request.result().unwrap_or_default().unchecked_into();
    if !texts.is_array() {
        return Vec::new();
    }
    texts.iter().filter_map(|text| text.as_string()).collect()
}

/// Calls `then` when the transaction has ended: with `true` where all of it is done, with `false` where none is.
fn at_end(transaction: &IdbTransaction, then: Then<bool>) {
    let heard = once(Box::new(move |event: Event| then(event.type_() == "complete")));
    transaction.set_oncomplete(Some(&heard));
    transaction.set_onabort(Some(&heard));
}

/// A function for the browser that is called at most once.
pub(super) fn once(work: Then<Event>) -> Function {
    Closure::once_into_js(work).unchecked_into()
}
