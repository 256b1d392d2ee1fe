use hobnail_core::order::OrderedMap;

use hobnail_core::plan::PlanPoint;

use super::*;
use crate::app::App;
use crate::canvas::camera::Insets;
use crate::input::{Button, Event, Key, Modifiers, Pointer, PointerKind};
use crate::tools::ToolKind;

const NOW_MS: f64 = 1_700_000_000_000.0;

/// A browser's store that does what the real one does, at once: all of a writing, or nothing where the record is not
/// the one expected.
#[derive(Default)]
struct Store {
    plans: OrderedMap<String, Found>,
    lines: OrderedMap<(String, u64), String>,
    is_full: bool,
    written: usize,
}

impl Store {
    fn write(&mut self, writing: &Writing) -> Outcome {
        let record = self.plans.get(&writing.id).and_then(|held| held.record.clone());
        if record != writing.expected {
            return Outcome::Changed(record);
        }
        if self.is_full {
            return Outcome::Full;
        }
        self.written += 1;
        if writing.record.is_none() {
            self.plans.remove(&writing.id);
            self.lines.retain(|(id, _), _| *id != writing.id);
            return Outcome::Written;
        }
        for (number, line) in &writing.lines {
            self.lines.insert((writing.id.clone(), *number), line.clone());
        }
        let held = self.plans.entry(writing.id.clone()).or_default();
        held.record = writing.record.clone();
        held.unfinished = writing.unfinished.clone();
        Outcome::Written
    }

    fn read(&self, id: &str) -> Found {
        let lines = self.lines.iter().filter(|((held, _), _)| held == id);
        Found {
            lines: lines.map(|(_, line)| line.as_str()).collect(),
            ..self.plans.get(id).cloned().unwrap_or_default()
        }
    }

    /// Answers all that the application wants written, until it wants nothing more.
    fn serve(&mut self, app: &mut App, name: fn() -> String) {
        while let Some(writing) = next(app, name) {
            let outcome = self.write(&writing);
            take(app, &writing, outcome);
        }
    }

    fn only(&self) -> Found {
        assert_eq!(self.plans.len(), 1);
        self.read(self.plans.keys().next().unwrap())
    }
}

/// What the page asks after every event.
fn next(app: &mut App, name: fn() -> String) -> Option<Writing> {
    let writing = app.next_writing(|| NOW_MS, name);
    app.take_changes();
    writing
}

fn take(app: &mut App, writing: &Writing, outcome: Outcome) {
    let lost = app.keeping.take_outcome(&writing.id, writing.record.clone(), outcome);
    assert_eq!(lost, None);
}

fn first() -> String {
    "first".to_owned()
}

fn second() -> String {
    "second".to_owned()
}

fn app() -> App {
    let mut app = App::new().expect("the tables fit together");
    let mut document = app.study().document().clone();
    document.heading.name = "Mill Hollow".to_owned();
    document.site.boundary = [(-200, -150), (200, -150), (200, 150), (-200, 150)]
        .map(|(x_m, y_m)| PlanPoint::new(x_m * 1000, y_m * 1000))
        .to_vec();
    app.replace(document).expect("it opens");
    open(app)
}

fn open(mut app: App) -> App {
    app.resize(1000.0, 800.0, Insets::default());
    app.fit();
    app.keeping.take_place(true);
    app
}

fn reopened(store: &Store, id: &str) -> App {
    let mut app = open(App::new().expect("the tables fit together"));
    app.resume(id, &store.read(id)).expect("it opens");
    app.fit();
    app
}

fn click(app: &mut App, x_m: f64, y_m: f64) {
    let pointer = Pointer {
        id: 1,
        at: app.camera().screen_from_m((x_m, y_m)),
        kind: PointerKind::Mouse,
        modifiers: Modifiers::default(),
    };
    app.choose_tool(ToolKind::Street);
    app.handle(Event::Move(pointer));
    app.handle(Event::Down(pointer, Button::Primary));
    app.handle(Event::Up(pointer));
}

fn press(app: &mut App, key: Key) {
    app.handle(Event::KeyDown(key, Modifiers::default()));
}

fn draw(app: &mut App, y_m: f64) {
    click(app, -100.0, y_m);
    click(app, 100.0, y_m);
    press(app, Key::Enter);
}

fn is_not_kept(app: &App) -> bool {
    matches!(app.kept(), KeptShown::NotKept { .. })
}

#[test]
fn a_plan_that_was_never_changed_leaves_nothing() {
    let mut app = app();
    assert_eq!(next(&mut app, first), None);
    assert_eq!(app.kept(), KeptShown::Nothing);
}

#[test]
fn what_was_drawn_is_opened_again_with_its_steps() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    let writing = next(&mut app, first).expect("a street is worth keeping");
    assert!(writing.is_strict && writing.expected.is_none());
    assert_eq!(app.kept(), KeptShown::Keeping);
    let outcome = store.write(&writing);
    take(&mut app, &writing, outcome);
    assert_eq!(app.kept(), KeptShown::Kept);
    draw(&mut app, 50.0);
    store.serve(&mut app, first);
    app.undo();
    store.serve(&mut app, first);
    let drawn = app.study().document().clone();

    let mut again = reopened(&store, "first");
    assert_eq!(*again.study().document(), drawn);
    assert_eq!(again.kept(), KeptShown::Kept);
    assert_eq!(next(&mut again, second), None);
    again.redo();
    assert_eq!(again.study().fabric().lines.streets.len(), 2);
    store.serve(&mut again, second);
    again.undo();
    again.undo();
    assert_eq!(again.study().fabric().lines.streets.len(), 0);
    store.serve(&mut again, second);
    assert_eq!(*reopened(&store, "first").study().document(), *again.study().document());
}

#[test]
fn steps_go_out_at_once_and_a_preview_waits_for_the_answer() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    let one = next(&mut app, first).expect("a step");
    draw(&mut app, 30.0);
    let two = next(&mut app, first).expect("a second step, before the first is answered");
    assert_eq!(two.expected, one.record);
    click(&mut app, -100.0, 60.0);
    click(&mut app, 0.0, 60.0);
    assert_eq!(next(&mut app, first), None);
    for writing in [one, two] {
        let outcome = store.write(&writing);
        take(&mut app, &writing, outcome);
    }
    let preview = next(&mut app, first).expect("the preview is due");
    assert!(preview.unfinished.is_some() && preview.lines.is_empty() && !preview.is_strict);
}

#[test]
fn a_street_that_was_not_finished_is_the_last_step_of_the_plan() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    store.serve(&mut app, first);
    for x_m in [-100.0, 0.0, 80.0] {
        click(&mut app, x_m, 60.0);
        store.serve(&mut app, first);
    }
    let seen = app.study().document().clone();
    assert!(app.study().is_in_gesture());
    // Where the pointer rests no corner was set.
    let away = Pointer {
        id: 1,
        at: app.camera().screen_from_m((20.0, 110.0)),
        kind: PointerKind::Mouse,
        modifiers: Modifiers::default(),
    };
    app.handle(Event::Move(away));
    store.serve(&mut app, first);
    assert_ne!(*app.study().document(), seen, "it is shown");

    let mut again = reopened(&store, "first");
    assert_eq!(*again.study().document(), seen);
    assert!(again.said().contains("not finished"), "{}", again.said());
    store.serve(&mut again, second);
    assert_eq!(store.only().unfinished, None);
    assert_eq!(*reopened(&store, "first").study().document(), seen);
    again.undo();
    assert_eq!(again.study().fabric().lines.streets.len(), 1);
}

#[test]
fn a_stroke_that_does_not_fit_is_left_out_and_said() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    store.serve(&mut app, first);
    let drawn = app.study().document().clone();
    store.plans.get_mut("first").unwrap().unfinished = Some("draw street\nnot edits".to_owned());
    let again = reopened(&store, "first");
    assert_eq!(*again.study().document(), drawn);
    assert!(again.notice().is_some_and(|notice| notice.contains("left out")));
}

#[test]
fn the_first_stroke_is_kept_while_it_is_drawn_and_gone_when_it_is_given_up() {
    let (mut app, mut store) = (app(), Store::default());
    click(&mut app, -100.0, 0.0);
    click(&mut app, 100.0, 0.0);
    store.serve(&mut app, first);
    let again = reopened(&store, "first");
    assert_eq!(*again.study().document(), *app.study().document());

    for _ in 0..2 {
        app.handle(Event::KeyDown(Key::Escape, Modifiers::default()));
    }
    assert!(!app.study().is_in_gesture());
    store.serve(&mut app, first);
    assert!(store.plans.is_empty() && store.lines.is_empty());
    assert_eq!(app.kept(), KeptShown::Nothing);

    draw(&mut app, 20.0);
    store.serve(&mut app, first);
    assert_eq!(*reopened(&store, "first").study().document(), *app.study().document());
}

#[test]
fn what_was_not_written_is_said_at_once_and_sent_again_with_the_next_step() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    store.serve(&mut app, first);
    store.is_full = true;
    draw(&mut app, 20.0);
    let failing = next(&mut app, first).expect("a step");
    draw(&mut app, 40.0);
    let following = next(&mut app, first).expect("a step");
    for writing in [failing, following] {
        let outcome = store.write(&writing);
        take(&mut app, &writing, outcome);
        assert!(is_not_kept(&app));
    }
    assert!(app.kept().words().contains("full"), "{}", app.kept().words());
    assert_eq!(next(&mut app, first), None);

    store.is_full = false;
    draw(&mut app, 60.0);
    store.serve(&mut app, first);
    assert_eq!(app.kept(), KeptShown::Kept);
    let mut again = reopened(&store, "first");
    assert_eq!(*again.study().document(), *app.study().document());
    for _ in 0..4 {
        again.undo();
    }
    assert_eq!(again.study().fabric().lines.streets.len(), 0);
}

#[test]
fn the_second_window_stops_says_so_and_can_go_on_as_a_copy() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    store.serve(&mut app, first);
    let mut other = reopened(&store, "first");
    draw(&mut other, 20.0);
    store.serve(&mut other, second);
    let kept = store.read("first");

    draw(&mut app, 40.0);
    draw(&mut app, 60.0);
    store.serve(&mut app, first);
    let KeptShown::NotKept {
        words,
        can_copy,
        can_reopen,
    } = app.kept()
    else {
        panic!("{:?}", app.kept())
    };
    assert!(can_copy && can_reopen && words.contains("another window"), "{words}");
    draw(&mut app, 80.0);
    store.serve(&mut app, first);
    assert_eq!(store.read("first"), kept);

    app.keep_as_copy();
    store.serve(&mut app, second);
    assert_eq!(app.kept(), KeptShown::Kept);
    assert_eq!(store.read("first"), kept);
    let mut again = reopened(&store, "second");
    assert_eq!(*again.study().document(), *app.study().document());
    for _ in 0..4 {
        again.undo();
    }
    assert_eq!(again.study().fabric().lines.streets.len(), 0);
}

#[test]
fn a_window_whose_plan_was_forgotten_elsewhere_says_so() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    store.serve(&mut app, first);
    store = Store::default();
    draw(&mut app, 20.0);
    store.serve(&mut app, first);
    assert!(app.kept().words().contains("forgot"), "{}", app.kept().words());
    assert!(store.plans.is_empty());
    app.keep_as_copy();
    store.serve(&mut app, second);
    assert_eq!(*reopened(&store, "second").study().document(), *app.study().document());
}

#[test]
fn without_a_store_the_page_says_so_once_something_is_drawn() {
    let mut app = app();
    app.keeping.take_place(false);
    assert_eq!(next(&mut app, first), None);
    assert_eq!(app.kept(), KeptShown::Nothing);
    draw(&mut app, 0.0);
    assert_eq!(next(&mut app, first), None);
    assert!(is_not_kept(&app));
    assert!(app.kept().words().contains("save it as a file"));
}

#[test]
fn what_is_drawn_before_the_store_is_open_waits_for_it() {
    let mut app = app();
    app.keeping = Keeping::default();
    draw(&mut app, 0.0);
    assert_eq!(next(&mut app, first), None);
    assert_eq!(app.kept(), KeptShown::Keeping);
    app.keeping.take_place(true);
    let writing = next(&mut app, first).expect("it is open now");
    assert_eq!(writing.lines.len(), 2, "the snapshot and the street");
}

#[test]
fn another_plan_is_another_record_and_a_loss_of_the_one_before_is_said() {
    let (mut app, mut store) = (app(), Store::default());
    draw(&mut app, 0.0);
    let writing = next(&mut app, first).expect("a step");
    app.replace(app.study().document().clone()).expect("it opens");
    let lost = app
        .keeping
        .take_outcome(&writing.id, writing.record.clone(), Outcome::Full);
    assert!(lost.is_some());
    store.write(&writing);
    draw(&mut app, 20.0);
    store.serve(&mut app, second);
    assert_eq!(store.plans.len(), 2);
}

#[test]
fn kept_plans_are_offered_the_newest_first() {
    let hours = |hours: u64, name: &str| write_record(3, 0, NOW_MS as u64 - hours * 3_600_000, name);
    let mut kept: Vec<(String, String)> = (1..12)
        .map(|hour| (format!("id {hour}"), hours(hour * 7 % 11 + 1, "Some plan")))
        .collect();
    kept.push(("newest".to_owned(), hours(0, "Mill Hollow, second sheet")));
    kept.push(("later".to_owned(), "2 what a later version writes".to_owned()));
    let offered = recent(kept, NOW_MS);
    assert_eq!(offered.len(), MOST_RECENT);
    assert_eq!(offered[0].name, "Mill Hollow, second sheet");
    let when: Vec<&str> = offered.iter().map(|plan| plan.when.as_str()).collect();
    assert_eq!(when[..4], ["just now", "1 hour ago", "2 hours ago", "3 hours ago"]);
    assert_eq!(ago(59 * 60_000), "59 minutes ago");
    assert_eq!(ago(50 * 3_600_000), "2 days ago");
}

#[test]
fn steps_that_have_left_memory_are_read_again() {
    use hobnail_core::plan::history::History;

    let (mut app, mut store) = (app(), Store::default());
    let document = app.study().document().clone();
    let limits = Limits {
        steps: 2,
        bytes: u64::MAX,
    };
    let history = History::new(&document, limits);
    app.take_study(Study::resume(document.clone(), history).expect("it opens"));
    for y_m in 0..6 {
        draw(&mut app, f64::from(y_m) * 20.0);
        store.serve(&mut app, first);
    }
    let drawn = app.study().document().clone();
    let mut looked_up = 0;
    for step in [App::undo, App::redo, App::undo] {
        for _ in 0..6 {
            step(&mut app);
            if let Some((id, number)) = app.keeping.take_looked_up() {
                looked_up += 1;
                let line = store.lines.get(&(id, number.0)).cloned();
                app.recall(line.as_deref());
            }
            store.serve(&mut app, first);
        }
        let is_undone = app.study().history().undo_count() == 0;
        assert_eq!(
            *app.study().document(),
            if is_undone { document.clone() } else { drawn.clone() }
        );
    }
    assert!(looked_up > 3, "{looked_up}");
    assert_eq!(app.notice(), None);

    app.redo();
    let count = app.study().history().undo_count();
    app.recall(None);
    assert!(app.notice().is_some());
    assert_eq!(app.study().history().undo_count(), count);
}
