//! How the page is set: for which place, whether the plan is only looked at, and in which units.

use crate::browser::view::{Event, View, command, element, is_checked, presses};
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::say;

use crate::app::App;
use crate::app::mode::Mode;
use crate::app::store::{CANVAS, Store};
use crate::browser::document;
use crate::input::RemoteKey;
use crate::live::memo;

/// The menu.
pub fn page_menu(store: Store) -> View {
    let place = move |mode: Mode| {
        element("label")
            .class("choice")
            .holds(
                element("input")
                    .with("type", "radio")
                    .with("name", "mode")
                    .with("value", mode.id())
                    .property("checked", move || store.mode.get() == mode)
                    .on("change", move |_| store.set_mode(mode)),
            )
            .holds(element("span").class("choice-name").holds(mode.words()))
            .into()
    };
    let keys = move || {
        let keys = if store.mode.get().is_board() {
            say!("mode-board-keys")
        } else {
            ""
        };
        keys.lines()
            .map(|line| element("p").class("choice-more").holds(line))
            .collect::<View>()
    };
    let look = move |event| {
        if is_checked(&event) {
            store.look_only();
        } else {
            store.make_own();
        }
    };
    let knows_pen = memo(move || store.hand.with(|hand| hand.knows_pen));
    let pen = move || {
        let choice = element("label")
            .class("choice")
            .holds(
                element("input")
                    .with("type", "checkbox")
                    .with("id", "pen-draws")
                    .with("checked", true)
                    .on("change", move |_| store.act(App::forget_pen)),
            )
            .holds(element("span").class("choice-name").holds(say!("mode-pen-draws")));
        if knows_pen.get() {
            choice.into()
        } else {
            View::default()
        }
    };
    super::menu("page", super::summary(say!("mode-menu")))
        .holds(
            element("div")
                .class("menu-card")
                .holds(
                    element("div")
                        .with("role", "radiogroup")
                        .with("aria-labelledby", "mode-title")
                        .holds(
                            element("p")
                                .with("id", "mode-title")
                                .class("palette-title")
                                .holds(say!("mode-title")),
                        )
                        .holds(Mode::ALL.map(place).into_iter().collect::<Vec<View>>()),
                )
                .holds(
                    element("p")
                        .class("choice-more")
                        .holds(move || store.mode.get().about()),
                )
                .holds(element("div").class("remote-keys").holds(keys))
                .holds(element("div").holds(pen))
                .holds(
                    element("label")
                        .class("choice")
                        .holds(
                            element("input")
                                .with("type", "checkbox")
                                .with("id", "look-only")
                                .property("checked", move || store.is_looking.get())
                                .on("change", look),
                        )
                        .holds(element("span").class("choice-name").holds(say!("mode-look-only"))),
                )
                .holds(units(store)),
        )
        .into()
}

fn units(store: Store) -> View {
    let is_metric = memo(move || store.plan.with(|plan| plan.is_metric));
    let one = move |(units, words, name): (UnitSystem, &'static str, &'static str)| {
        let is_chosen = move || is_metric.get() == (units == UnitSystem::Metric);
        command()
            .with("data-units", name)
            .with("aria-pressed", move || is_chosen().to_string())
            .on_press(move || store.act(|app| app.show_units(units)))
            .holds(words)
            .into()
    };
    let all = [
        (UnitSystem::UsCustomary, say!("panels-units-us"), "us"),
        (UnitSystem::Metric, say!("panels-units-metric"), "metric"),
    ];
    element("div")
        .class("group units to-draw")
        .with("role", "group")
        .with("aria-label", say!("panels-units"))
        .holds(all.map(one).into_iter().collect::<Vec<View>>())
        .into()
}

/// What a keyboard's Enter and Escape do, for fingers; shown at a board, with the keys of a clicker.
pub fn by_tap(store: Store) -> View {
    let is_busy = memo(move || store.hand.with(|hand| hand.is_busy));
    let one = move |(name, words, key, does): (&'static str, &'static str, &'static str, RemoteKey)| {
        let tap = move |event: Event| {
            store.act(|app| app.remote(does));
            if presses(&event) > 0 {
                document::focus_on(CANVAS);
            }
        };
        command()
            .with("data-command", name)
            .with("aria-disabled", move || (!is_busy.get()).to_string())
            .on("click", tap)
            .holds(element("span").class("word").holds(words))
            .holds(element("kbd").holds(key))
            .into()
    };
    let all = [
        (
            "finish",
            say!("mode-finish"),
            say!("mode-key-finish"),
            RemoteKey::Confirm,
        ),
        (
            "give-up",
            say!("mode-give-up"),
            say!("mode-key-give-up"),
            RemoteKey::GiveUp,
        ),
    ];
    element("div")
        .class("group by-tap to-draw")
        .with("role", "group")
        .with("aria-label", say!("mode-by-tap"))
        .holds(all.map(one).into_iter().collect::<Vec<View>>())
        .into()
}

/// That the plan is only looked at, and the way back to drawing; nothing where it can be changed.
pub fn looking_line(store: Store) -> View {
    // The button goes away when it is pressed: the keyboard goes on at the drawing.
    let make_own = move |_| {
        store.make_own();
        document::focus_on(CANVAS);
    };
    let shown = move || {
        let words = if store.is_new.get() {
            say!("mode-looking-next")
        } else {
            say!("mode-looking")
        };
        store.is_looking.get().then(|| {
            element("div")
                .class("looking")
                .mark("data-looking-line")
                .holds(element("p").holds(words))
                .holds(
                    command()
                        .with("data-command", "make-own")
                        .on("click", make_own)
                        .holds(say!("mode-make-own")),
                )
        })
    };
    shown.into()
}
