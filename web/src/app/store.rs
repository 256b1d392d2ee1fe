//! The one application of the page, and the values its panels listen to.
//!
//! Whatever happens goes through [`Store::act`]: the application takes it, panels get what changed in the same event,
//! and the drawing is painted once before the next frame. After a fault of our own nothing is taken any more.

use hobnail_core::order::OrderedSet;
use hobnail_core::say;

use std::rc::Rc;
use std::sync::Arc;

use super::address::Shared;
use super::alternatives::AlternativeShown;
use super::background::Background;
use super::base_image::BaseImageShown;
use super::bases::{Bases, Opening};
use super::basis::BasisShown;
use super::covered::bounds;
use super::editor::edits::CLOSE_CUT;
use super::editor::{Change, EditorsShown, lines::Key as LineKey};
use super::figures::{Heading, Row};
use super::files;
use super::forms::Forms;
use super::keeping::{KeptShown, Recent};
use super::land_bar::{LandBar, land_bar};
use super::maps::{Legend, Map};
use super::mode::Mode;
use super::moments::HistoryShown;
use super::places::{self, NoteShown, Place};
use super::remarks::RemarksShown;
use super::scopes::{self, Measured};
use super::shown::{self, HandShown, Help, PlanShown};
use super::stage::Stage;
use super::{App, Changes};
use crate::browser::keeping::Keep;
use crate::browser::pictures::{Picture, PictureFile};
use crate::browser::reading::Source;
use crate::browser::{document, events, notice};
use crate::input::{Event, Key, Modifiers};
use crate::live::{Live, Stored};
use crate::tools::ToolKind;
use crate::tools::select::commands::Command;

/// Id of the canvas.
pub const CANVAS: &str = "drawing";
/// Id of the heading of the beginnings.
pub const WELCOME_TITLE: &str = "welcome-title";
/// Id of the cards beside the rail.
pub const PALETTES: &str = "palettes";

/// Id of the field for what a remark says.
pub const WORDS: &str = "words";
/// Id of the cut through a street.
pub const CUT: &str = "cut";
/// Id of the enlarged figures.
pub const ENLARGED: &str = "enlarged";
/// Id of the bar on top.
pub const BAR: &str = "bar";
/// Id of the rail of tools.
pub const RAIL: &str = "rail";
/// Id of the column of figures.
pub const COLUMN: &str = "figures";
/// Id of the card of the map.
pub const MAP_CARD: &str = "map-card";
/// Id of the status line.
pub const STATUS: &str = "status";
/// Ids of the fields for a typed length and bearing.
pub const TYPED: [&str; 2] = ["typed-length", "typed-bearing"];
/// Id of what is as wide as the page's text is large.
pub const TEXT_SIZE: &str = "text-size";
/// Id of the hidden file input.
pub const FILE_INPUT: &str = "open-file";
/// Id of the hidden input for base data.
pub const BASE_INPUT: &str = "open-base";
/// Id of the hidden input for a picture.
pub const PICTURE_INPUT: &str = "open-picture";

/// What is painted anew in the next frame.
#[derive(Clone, Copy, Debug, Default)]
struct Frame {
    /// The scene is made anew before.
    is_plan_new: bool,
    /// The plan, and not only its view and what lies at hand.
    is_whole: bool,
    /// The plan that was only moved.
    is_at_rest: bool,
}

/// The view rests by then.
const REST_MS: i32 = 120;

/// A second press is still one of two by then.
const DOUBLE_PRESS_MS: i32 = 400;

/// How much a key or button enlarges.
pub const ZOOM_STEP: f64 = 1.4;

/// The handle that panels hold.
#[derive(Clone, Copy)]
pub struct Store {
    app: Stored<App>,
    pub(super) stage: Stored<Option<Stage>>,
    /// What the next frame has to do; `None` while none is asked for.
    frame: Stored<Option<Frame>>,
    /// How many frames only moved what was painted.
    moved: Stored<u32>,
    /// Who does the long work.
    pub(super) background: Stored<Background>,
    /// The browser's store of plans, once it is open.
    pub(super) keep: Stored<Option<Keep>>,
    /// Whether the plan is kept there.
    pub kept: Live<KeptShown>,
    /// Kept plans that can be opened again.
    pub recent: Live<Vec<Recent>>,
    /// Whether the browser promises to hold on to what it keeps; `None` where it does not say.
    pub is_lasting: Live<Option<bool>>,
    /// Names, palettes and history.
    pub plan: Live<PlanShown>,
    /// The alternatives as small plans.
    pub alternatives: Live<Vec<AlternativeShown>>,
    /// Tool and selection.
    pub hand: Live<HandShown>,
    /// What can be typed or chosen.
    pub forms: Live<Forms>,
    /// What the site's land is used for.
    pub land_bar: Live<LandBar>,
    /// Figures: those of the first level, and those under open headings.
    pub figures: Live<Vec<Row>>,
    /// Figures enlarged for the back of the room.
    pub enlarged: Live<Vec<Row>>,
    /// The steps of the history.
    pub history: Live<HistoryShown>,
    /// Whether the steps are shown one after another.
    pub is_replaying: Live<bool>,
    /// The headings of the column that stand open.
    pub open_headings: Live<OrderedSet<Heading>>,
    /// The bases that stand open.
    pub bases_shown: Live<Vec<BasisShown>>,
    /// What the drawing leaves open.
    pub notes: Live<Vec<NoteShown>>,
    /// What was heard, and what answers it.
    pub remarks: Live<RemarksShown>,
    /// What part of the plan is measured.
    pub measured: Live<Measured>,
    /// The map over the drawing and what it means.
    pub legend: Live<Legend>,
    /// What the editors show.
    pub editors: Live<EditorsShown>,
    /// What was said last to those who listen.
    pub said: Live<String>,
    /// What went wrong last, or was done where the second is true.
    pub notice: Live<Option<(String, bool)>>,
    /// Whether nothing has been opened or begun yet.
    pub is_new: Live<bool>,
    /// What help shows.
    pub help: Live<Help>,
    /// What can be handed on.
    pub shared: Live<Shared>,
    /// The picture under the drawing.
    pub base_image: Live<BaseImageShown>,
    /// The base data that is being read, or was and is not taken yet.
    pub opening: Live<Option<Opening>>,
    /// The files of base data.
    pub(super) bases: Stored<Bases>,
    /// For which place the page is set.
    pub mode: Live<Mode>,
    /// Whether the plan is only looked at.
    pub is_looking: Live<bool>,
}

impl Store {
    /// A store over this application.
    #[must_use]
    pub fn new(app: App) -> Self {
        let store = Self {
            app: Stored::new(app),
            stage: Stored::new(None),
            frame: Stored::new(None),
            moved: Stored::new(0),
            background: Stored::new(Background::default()),
            keep: Stored::new(None),
            kept: Live::default(),
            recent: Live::default(),
            is_lasting: Live::default(),
            plan: Live::default(),
            alternatives: Live::default(),
            hand: Live::default(),
            forms: Live::default(),
            land_bar: Live::default(),
            figures: Live::default(),
            enlarged: Live::default(),
            history: Live::default(),
            is_replaying: Live::default(),
            open_headings: Live::default(),
            bases_shown: Live::default(),
            notes: Live::default(),
            remarks: Live::default(),
            measured: Live::default(),
            legend: Live::default(),
            editors: Live::default(),
            said: Live::default(),
            notice: Live::default(),
            is_new: Live::new(true),
            help: Live::default(),
            shared: Live::default(),
            base_image: Live::default(),
            opening: Live::default(),
            bases: Stored::new(Bases::default()),
            mode: Live::default(),
            is_looking: Live::default(),
        };
        files::offer_when_failed();
        store.act(|_| ());
        store.remember_mode();
        store.open_keep();
        store
    }

    /// Takes the canvas, once it stands in the page, and keeps to its size.
    pub fn take_canvas(self) {
        match Stage::on(CANVAS) {
            Ok(stage) => {
                self.stage.set(Some(stage));
                self.resize();
                self.act(App::fit);
                self.bring_picture();
                document::on_resize(move || self.resize());
                self.listen_to_keys();
                self.start_background();
            }
            Err(fault) => self.act(|app| app.warn(fault)),
        }
    }

    /// Does something to the application and shows what came of it.
    pub fn act(self, work: impl FnOnce(&mut App)) {
        // One routine for all that is done: the page would carry it a hundred times otherwise.
        self.act_on(Box::new(work));
    }

    fn act_on(self, work: Box<dyn FnOnce(&mut App) + '_>) {
        if notice::has_stopped() {
            return;
        }
        let started_ms = document::now_ms();
        let mut changes = Changes::default();
        let (mut writing, mut looked_up) = (None, None);
        let mut is_newly_shown = false;
        self.app.update(|app| {
            let before = (app.selection(), app.cut_street());
            work(app);
            app.cut_anew(before.0);
            let after = (app.selection(), app.cut_street());
            is_newly_shown = after != before && after != (None, None);
            writing = app.next_writing(document::clock_ms, document::fresh_name);
            looked_up = app.keeping.take_looked_up();
            self.kept.set_if_new(app.kept());
            changes = app.take_changes();
            self.show(app, changes);
            if changes.plan {
                files::keep(app);
            }
        });
        if let Some(writing) = writing {
            self.write(writing);
        }
        if let Some((id, number)) = looked_up {
            self.look_up(&id, number.0);
        }
        if changes.any() {
            self.ask_for_frame(changes);
        }
        if is_newly_shown {
            document::later(DOUBLE_PRESS_MS, move || self.uncover());
        }
        if changes.plan {
            self.bring_picture();
            // After the panels: they are brought up to date in tasks that were queued before this one.
            document::after_this(async move { note_ms("data-work-ms", document::now_ms() - started_ms) });
            self.ask();
        }
    }

    /// Takes one event at the drawing.
    pub fn handle(self, event: Event) {
        self.act(|app| app.handle(event));
        if matches!(event, Event::KeyDown(Key::Enter, _)) {
            // Afterwards, else the field would take the key as well.
            document::soon(move || self.type_words());
        }
    }

    /// Lets the keyboard type what a remark says that was just pinned down.
    pub fn type_words(self) {
        if self.update(App::take_awaits_words) {
            document::focus_on(WORDS);
        }
    }

    /// Reads from the application.
    pub fn with<T>(self, read: impl FnOnce(&App) -> T) -> T {
        self.app.with(read)
    }

    /// Does something to the application that shows nowhere.
    pub fn update<T>(self, work: impl FnOnce(&mut App) -> T) -> T {
        self.app.update(work)
    }

    /// Opens the basis of a figure, or closes it where it stands open.
    pub fn toggle_basis(self, id: &str) {
        self.act(|app| app.toggle_basis(id));
        self.ask();
    }

    /// Opens a heading of the column, or closes it.
    pub fn toggle_heading(self, heading: Heading) {
        self.act(|app| app.toggle_heading(heading));
        self.ask();
    }

    /// Lays another map over the drawing.
    pub fn show_map(self, map: Map) {
        self.act(|app| app.show_map(map));
        self.ask();
    }

    /// Shows on the drawing what a panel speaks of, or nothing any more.
    pub fn point_out(self, place: Option<Place>) {
        self.act(|app| app.point_out(place));
    }

    /// Does what a line of an editor asks for; the keyboard goes where the editor sends it.
    pub fn edit(self, key: LineKey, change: &Change) {
        self.act(|app| app.edit(key, change));
        if let Some(next) = self.update(App::take_focus) {
            // Where that line is not shown, as of a street that is selected no more, the keyboard goes on at the drawing.
            document::soon(move || {
                let id = next.id();
                let is_shown = bounds(&id).is_some();
                document::focus_on(if is_shown { &id } else { CANVAS });
            });
        }
    }

    /// Closes the cut by Escape, where the keyboard is in its panel, or at the drawing with nothing begun there; `false`
    /// where there is no cut, or the key is for something else.
    fn leave_cut(self, focus: events::Focus) -> bool {
        let is_within = document::has_focus_within("#cut");
        let is_at_hand = matches!(focus, events::Focus::Drawing | events::Focus::Rail);
        let is_meant = |app: &App| app.cut_street().is_some() && (is_within || (is_at_hand && app.is_at_rest()));
        if !self.with(is_meant) {
            return false;
        }
        if is_within {
            self.edit(LineKey::panel(CLOSE_CUT), &Change::Pick(1));
        } else {
            self.act(App::close_cut);
        }
        true
    }

    fn show(self, app: &App, changes: Changes) {
        // Lists, palettes and scopes need not follow every move of the hand: they are brought up to date when it lets go.
        if changes.plan && app.study().is_in_gesture() {
            let described = shown::described(app);
            if self.plan.with_untracked(|plan| plan.described != described) {
                self.plan.update(|plan| plan.described = described);
            }
        } else if changes.plan {
            self.plan.set_if_new(shown::plan(app));
            self.history.set_if_new(app.history_shown());
            self.alternatives.set_if_new(app.alternatives());
            self.notes.set_if_new(places::notes(app.study()));
            self.measured.set_if_new(scopes::measured(app.study()));
        }
        if changes.plan || changes.figures {
            self.land_bar.set_if_new(land_bar(app.study(), app.drawn()));
            self.open_headings.set_if_new(app.open_headings().clone());
            self.figures.set_if_new(app.rows());
            self.enlarged.set_if_new(app.enlarged_rows());
            self.bases_shown.set_if_new(app.bases_shown());
        }
        if (changes.remarks || changes.plan || changes.figures) && !app.study().is_in_gesture() {
            self.remarks.set_if_new(app.remarks_shown());
        }
        if changes.map || changes.plan || changes.figures {
            self.legend.set_if_new(app.legend());
        }
        if changes.hand || changes.plan {
            self.hand.set_if_new(shown::hand(app));
            self.forms.set_if_new(app.forms());
            self.editors.set_if_new(app.editors());
            self.base_image.set_if_new(app.base_image_shown());
        }
        if changes.said {
            self.said.set_if_new(app.said().to_owned());
            let is_calm = app.is_notice_calm();
            self.notice
                .set_if_new(app.notice().map(|words| (words.to_owned(), is_calm)));
        }
    }

    /// Has the picture under the drawing decoded, where it is not yet.
    fn bring_picture(self) {
        let wanted = self.with(|app| {
            let (image, _) = app.base_image()?;
            Some((image.media_type.clone(), Arc::clone(&image.bytes)))
        });
        let mut is_asked = false;
        self.stage.update(|stage| {
            let bytes = wanted.as_ref().map(|(_, bytes)| bytes);
            is_asked = stage.as_mut().is_some_and(|stage| stage.asks_for_picture(bytes));
        });
        let Some((media_type, bytes)) = wanted.filter(|_| is_asked) else {
            return;
        };
        Picture::decode(&media_type, bytes, move |picture| match picture {
            Some(picture) => {
                self.stage.update(|stage| {
                    if let Some(stage) = stage {
                        stage.take_picture(picture);
                    }
                });
                self.ask_for_frame(Changes::default());
            }
            None => self.act(|app| app.warn(say!("picture-not-shown"))),
        });
    }

    /// Lays a picture that was chosen or dropped under the drawing, where a world file says or in the middle of the view.
    pub fn lay_picture(self, read: Result<PictureFile, String>, world: Option<Source>) {
        match (read, world) {
            (Ok(file), Some(mut world)) => {
                world.picture = Some(Rc::new(file));
                return self.read_bases(vec![world]);
            }
            (Ok(file), None) => self.act(|app| app.lay_picture(file)),
            (Err(fault), _) => self.act(|app| app.warn(fault)),
        }
        self.is_new.set(false);
    }

    fn ask_for_frame(self, changes: Changes) {
        let mut is_first = false;
        self.frame.update(|asked| {
            is_first = asked.is_none();
            let held = asked.get_or_insert_default();
            held.is_plan_new |= changes.plan || changes.map;
            // The view and what lies at hand leave the plan as it was painted.
            let others = Changes {
                view: false,
                hand: false,
                ..changes
            };
            held.is_whole |= others != Changes::default() || changes == Changes::default();
        });
        if is_first {
            document::before_next_frame(move || self.paint());
        }
    }

    fn paint(self) {
        let Some(frame) = self.frame.update(Option::take) else {
            return;
        };
        if notice::has_stopped() {
            return;
        }
        let started_ms = document::now_ms();
        let mut is_moved = false;
        self.stage.update(|stage| {
            if let Some(stage) = stage {
                self.app.with(|app| {
                    if frame.is_plan_new {
                        stage.take_plan(app);
                    }
                    is_moved = stage.paint(app, frame.is_whole, frame.is_at_rest);
                });
            }
        });
        if is_moved {
            self.paint_when_at_rest();
        }
        note_ms("data-frame-ms", document::now_ms() - started_ms);
    }

    /// Paints all anew once no frame has moved the view for a while.
    fn paint_when_at_rest(self) {
        let moved = self.moved.update(|count| {
            *count += 1;
            *count
        });
        document::later(REST_MS, move || {
            if self.moved.with(|count| *count == moved) {
                self.ask_for_frame(Changes {
                    view: true,
                    ..Changes::default()
                });
                self.frame
                    .update(|asked| asked.get_or_insert_default().is_at_rest = true);
            }
        });
    }

    fn listen_to_keys(self) {
        document::on_key("keydown", move |event| {
            let focus = events::focus();
            if event.key() == "Escape" && (document::leave_menu() || self.leave_cut(focus)) {
                return;
            }
            if document::has_focus_within("#words") && events::ends_words(event) {
                // The drawing has the keyboard again; the field hands over what was typed as it is left.
                return document::focus_on(CANVAS);
            }
            if self.mode.get_untracked().is_board()
                && let Some(key) = events::remote_key(event, focus)
            {
                return self.act(|app| app.remote(key));
            }
            if let Some(Event::KeyDown(key, modifiers)) = events::key_down(event, focus) {
                self.key(key, modifiers, focus);
            }
        });
        document::on_key("keyup", move |event| {
            if let Some(event) = events::key_up(event) {
                self.handle(event);
            }
        });
    }

    fn key(self, key: Key, modifiers: Modifiers, focus: events::Focus) {
        if modifiers.control {
            match key {
                Key::Character('z') if modifiers.shift => self.act(App::redo),
                Key::Character('z') => self.act(App::undo),
                Key::Character('y') => self.act(App::redo),
                Key::Character('s') => self.save(),
                Key::Character('o') => crate::browser::files::choose(FILE_INPUT),
                Key::Character('d') if focus == events::Focus::Drawing => {
                    self.act(|app| app.command(Command::Duplicate))
                }
                Key::Left | Key::Right | Key::Up | Key::Down if focus == events::Focus::Drawing => {
                    self.handle(Event::KeyDown(key, modifiers));
                }
                _ => {}
            }
            return;
        }
        // The first digit opens the field and is typed there.
        if focus == events::Focus::Drawing && self.with(App::takes_length) {
            match key {
                Key::Character('0'..='9' | '.') => return document::focus_on(TYPED[0]),
                Key::Character('<') => return document::focus_on(TYPED[1]),
                _ => {}
            }
        }
        if matches!(
            focus,
            events::Focus::Field | events::Focus::List | events::Focus::Elsewhere
        ) {
            return;
        }
        let tool = match key {
            Key::Character(letter) => ToolKind::ALL.into_iter().find(|tool| tool.key() == letter),
            _ => None,
        };
        match (tool, key) {
            (Some(tool), _) => self.act(|app| app.choose_tool(tool)),
            (None, Key::Character('+' | '=')) => self.act(|app| app.zoom(ZOOM_STEP)),
            (None, Key::Character('-')) => self.act(|app| app.zoom(1.0 / ZOOM_STEP)),
            (None, Key::Character('0')) => self.act(App::fit),
            _ if focus == events::Focus::Drawing => self.handle(Event::KeyDown(key, modifiers)),
            _ => {}
        }
    }
}

/// Writes on the canvas how long a piece of work took, for tests that measure it.
fn note_ms(attribute: &str, work_ms: f64) {
    document::note(CANVAS, attribute, &format!("{work_ms:.2}"));
}
