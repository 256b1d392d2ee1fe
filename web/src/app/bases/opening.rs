//! Files of base data on their way through the panel, one after the other: read in a worker, looked at, taken or not.

use hobnail_core::say;

use super::opened::Opened;
use super::place::in_reach_deg;
use super::{Base, FaultSaid};
use crate::app::App;
use crate::app::store::{CANVAS, Store};
use crate::browser::document;
use crate::browser::reading::{Heard, Options, Reading, Source};

/// Id of the panel.
pub const BASE: &str = "base";
/// Id of its title, which has the keyboard when something new is shown.
const TITLE: &str = "base-title";

/// Endings of files of base data, as a file input names them; the readers go by content.
pub const ACCEPTED: &str =
    ".osm,.pbf,.xml,.gz,.zip,.shp,.dbf,.prj,.shx,.cpg,.dxf,.csv,.tsv,.txt,.tif,.tiff,.asc,.hgt,.geojson,.json";

/// What the panel shows.
pub struct Opening {
    /// The file's name.
    pub name: String,
    /// The coordinate system and the columns of x and y, as they are typed to read the file again.
    pub again: [String; 3],
    /// How far it is.
    pub stage: Stage,
}

/// How far a file is.
pub enum Stage {
    /// So many hundredths are read.
    Reading(u32),
    /// Nothing could be read; why.
    Refused(Vec<FaultSaid>),
    /// It is read.
    Read(Box<Opened>),
}

/// The files of base data.
#[derive(Default)]
pub struct Bases {
    /// Those that were asked for and are not begun, the first last.
    waiting: Vec<Source>,
    source: Option<Source>,
    reading: Option<Reading>,
}

/// A change of what is chosen.
type Choosing<'a> = Box<dyn FnOnce(&mut Opened, &App) + 'a>;

impl Opening {
    /// Whether the file is a table, whose columns can be named.
    #[must_use]
    pub fn is_table(&self) -> bool {
        let name = self.name.to_ascii_lowercase();
        [".csv", ".tsv", ".txt"].iter().any(|ending| name.ends_with(ending))
    }
}

impl Store {
    /// Opens files of base data, one after the other.
    pub fn read_bases(self, mut sources: Vec<Source>) {
        if sources.is_empty() {
            return;
        }
        let mut refuses = false;
        self.act(|app| refuses = app.refuses());
        if refuses {
            return;
        }
        sources.reverse();
        self.bases
            .update(|bases| bases.waiting.splice(0..0, sources).for_each(drop));
        if self.opening.with_untracked(Option::is_none) {
            self.open_next_base();
        }
    }

    fn open_next_base(self) {
        let next = self.bases.update(|bases| {
            bases.source = bases.waiting.pop();
            bases.source.is_some()
        });
        if next {
            self.read_base(Default::default());
            document::set_open(BASE, true);
        }
    }

    /// Reads the file that is open, with the coordinate system and the columns that were typed.
    pub fn read_base(self, again: [String; 3]) {
        let Some(source) = self.bases.with(|bases| bases.source.clone()) else {
            return;
        };
        let [system, x, y] = again.each_ref().map(|text| text.trim().to_owned());
        let options = Options {
            box_deg: self.with(|app| in_reach_deg(app.study().document())),
            system: (!system.is_empty()).then_some(system),
            columns: (!x.is_empty() && !y.is_empty()).then_some([x, y]),
        };
        let name = source.name();
        self.act(|app| app.say(say!("bases-reading", file = name)));
        self.opening.set(Some(Opening {
            name,
            again,
            stage: Stage::Reading(0),
        }));
        match Reading::start(&source, &options, move |heard| self.hear(heard)) {
            Ok(reading) => self.bases.update(|bases| bases.reading = Some(reading)),
            Err(fault) => self.hear(Heard::Failed(fault)),
        }
    }

    fn hear(self, heard: Heard) {
        let stage = match heard {
            Heard::Heights(heights) => return self.choose_of_base(|opened, _| opened.base.heights = Some(*heights)),
            Heard::Share(share) => Stage::Reading((share * 100.0) as u32),
            Heard::Base(base) => match self.lay_by_world(&base) {
                None => Stage::Read(Box::new(self.read(*base))),
                Some(Ok(())) => return self.close_base(),
                Some(Err(words)) => Stage::Refused(vec![FaultSaid {
                    place: String::new(),
                    words,
                }]),
            },
            Heard::Refused(faults) => Stage::Refused(faults),
            Heard::Failed(words) => Stage::Refused(vec![FaultSaid {
                place: String::new(),
                words,
            }]),
        };
        let is_done = !matches!(stage, Stage::Reading(_));
        let has_heights = matches!(&stage, Stage::Read(opened) if opened.base.grid.is_some());
        self.opening.update(|opening| {
            if let Some(opening) = opening {
                opening.stage = stage;
            }
        });
        if is_done {
            // The worker has said all that it has to say, but for heights.
            if has_heights {
                self.choose_of_base(|_, _| {});
            } else {
                drop(self.bases.update(|bases| bases.reading.take()));
            }
            let said = self
                .opening
                .with_untracked(|opening| opening.as_ref().map(Opening::words));
            self.act(|app| app.say(said.unwrap_or_default()));
            // Once what is new stands in the page.
            document::soon(|| document::focus_on(TITLE));
        }
    }

    fn read(self, base: Base) -> Opened {
        self.with(|app| Opened::new(base, app))
    }

    /// Changes what is chosen, looks what would be taken then, and asks for heights where others are needed.
    pub fn choose_of_base(self, change: impl FnOnce(&mut Opened, &App)) {
        self.choose_boxed(Box::new(change));
    }

    // Written once, and not for each kind of change.
    fn choose_boxed(self, change: Choosing<'_>) {
        let mut due = None;
        self.opening.update(|opening| {
            if let Some(Opening {
                stage: Stage::Read(opened),
                ..
            }) = opening
            {
                self.with(|app| {
                    change(opened, app);
                    opened.look(app);
                });
                due = opened.take_due();
            }
        });
        if let Some(request) = due {
            self.bases
                .with(|bases| bases.reading.as_ref().map(|reading| reading.ask(&request)));
        }
    }

    /// Takes what is chosen into the plan; the panel then closes.
    pub fn take_base(self) {
        let mut is_taken = false;
        self.choose_of_base(|opened, _| is_taken = opened.preview.is_ok());
        if is_taken {
            self.opening.with_untracked(|opening| {
                if let Some(Opening {
                    stage: Stage::Read(opened),
                    ..
                }) = opening
                {
                    self.act(|app| is_taken = app.take_base(&opened.base, &opened.choices));
                }
            });
        }
        if is_taken {
            self.close_base();
        }
    }

    /// Closes the panel once what was read is in the plan.
    fn close_base(self) {
        self.is_new.set(false);
        document::set_open(BASE, false);
        document::focus_on(CANVAS);
    }

    /// Lays the picture that the file places; `None` where it places none.
    fn lay_by_world(self, base: &Base) -> Option<Result<(), String>> {
        let picture = self
            .bases
            .with(|bases| bases.source.as_ref().and_then(|source| source.picture.clone()))?;
        let mut laid = Ok(());
        self.act(|app| laid = app.lay_by_world(&picture, base));
        Some(laid)
    }

    /// The panel was closed: whatever was read is let go, and the next file is opened.
    pub fn let_base_go(self) {
        self.bases.update(|bases| {
            bases.reading = None;
            bases.source = None;
        });
        self.opening.set(None);
        self.open_next_base();
    }
}

impl Opening {
    /// How far it is, in a sentence.
    #[must_use]
    pub fn words(&self) -> String {
        match &self.stage {
            Stage::Reading(_) => say!("bases-reading", file = self.name),
            Stage::Refused(_) => say!("bases-refused", file = self.name),
            Stage::Read(opened) if opened.base.grid.is_some() => say!("heights-read", file = self.name),
            Stage::Read(opened) => say!("bases-read", file = self.name, count = opened.base.features.len()),
        }
    }
}
