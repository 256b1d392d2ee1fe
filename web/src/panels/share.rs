//! Sharing: the plan in an address, as a code for a room, or with the page in one file.

use crate::browser::view::{View, command, element, value_of};
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::say;

use crate::app::App;
use crate::app::address::{Code, Shared};
use crate::app::editor::quantity::number;
use crate::app::exports::{KINDS, Kind, scales};
use crate::app::store::Store;
use crate::app::words::Words;
use crate::browser::document;
use crate::live::{always, live_here, memo};

/// Id of the menu.
const MENU: &str = "share-menu";
/// Id of the code across the window.
const LARGE_CODE: &str = "large-code";

/// The menu that makes and shows the plan's address.
pub fn share(store: Store) -> View {
    let is_open = || document::is_open(MENU);
    // A step taken while the menu stands open is in the address too.
    always(move || {
        store.history.with(|_| ());
        if is_open() {
            store.share();
        }
    });
    let opened = move |_| {
        if is_open() {
            store.share();
        }
    };
    let shown = memo(move || store.shared.with(Clone::clone));
    super::menu("share", super::summary(say!("share-open")))
        .with("id", MENU)
        .on("toggle", opened)
        .holds(
            element("div")
                .class("menu-card share")
                .holds(move || card(store, shown.get())),
        )
        .into()
}

fn card(store: Store, shared: Shared) -> View {
    let command = |name: &'static str, words: &'static str, work: fn(Store)| {
        command()
            .with("data-command", name)
            .on_press(move || work(store))
            .holds(words)
            .into()
    };
    let mut commands: Vec<View> = Vec::new();
    if shared.address.is_some() {
        commands.push(command("copy-address", say!("share-copy"), Store::copy_address));
        if shared.can_hand_on {
            commands.push(command("hand-on", say!("share-hand-on"), Store::hand_address_on));
        }
    }
    if shared.can_save_page {
        commands.push(command("save-page", say!("share-save-page"), Store::save_page));
    }
    let address: Option<View> = shared.address.map(|address| {
        element("label")
            .class("share-address")
            .holds(element("span").holds(say!("share-address")))
            .holds(
                element("input")
                    .with("type", "text")
                    .mark("readonly")
                    .mark("data-address")
                    .property("value", address),
            )
            .into()
    });
    let left_out: Option<View> = (!shared.left_out.is_empty()).then(|| {
        let one = |words: &'static str| element("li").holds(words).into();
        element("div")
            .mark("data-left-out")
            .holds(element("p").holds(say!("share-left-out")))
            .holds(
                element("ul")
                    .class("share-left-out")
                    .holds(shared.left_out.into_iter().map(one).collect::<Vec<View>>()),
            )
            .into()
    });
    View::nothing()
        .and(element("p").class("share-words").holds(shared.words))
        .and(address)
        .and(left_out)
        .and(element("div").class("group").holds(commands))
        .and(shared.code.map(code))
        .and(
            shared
                .no_code
                .map(|words| element("p").class("share-words").mark("data-no-code").holds(words)),
        )
        .and(
            element("p")
                .class("share-words")
                .mark("data-share-outcome")
                .holds(shared.outcome),
        )
        .and(exports(store))
}

/// Files for other programs, and the scale of those that are drawings.
fn exports(store: Store) -> View {
    let scale = live_here(String::new());
    let units = store.with(App::units);
    let words = |scale: f64| match units {
        UnitSystem::Metric => ["1 : ", &scale.to_string()].concat(),
        UnitSystem::UsCustomary => say!("share-scale-feet", feet = (scale / 12.0).to_string()),
    };
    let one = |(place, chosen): (usize, f64)| {
        let is_usual = place == 1;
        element("option")
            .with("value", chosen.to_string())
            .with("selected", is_usual)
            .holds(words(chosen))
            .into()
    };
    let kind = move |(kind, name, words): (Kind, &'static str, Words)| {
        let save = move |_| {
            let chosen = number(&scale.get_untracked());
            store.export(kind, chosen.unwrap_or_else(|| scales(units)[1]));
        };
        command()
            .with("data-export", name)
            .on("click", save)
            .holds(words.words())
            .into()
    };
    element("section")
        .class("share-files")
        .with("aria-labelledby", "share-files-title")
        .holds(element("h2").with("id", "share-files-title").holds(say!("share-files")))
        .holds(
            element("label")
                .class("share-scale")
                .holds(element("span").holds(say!("share-scale")))
                .holds(
                    element("select")
                        .on("change", move |event| scale.set(value_of(&event)))
                        .mark("data-scale")
                        .holds(scales(units).into_iter().enumerate().map(one).collect::<Vec<View>>()),
                ),
        )
        .holds(
            element("div")
                .class("group")
                .holds(KINDS.map(kind).into_iter().collect::<Vec<View>>()),
        )
        .into()
}

/// The code, small in the menu, and across the window on request.
fn code(code: Code) -> View {
    let picture = move || {
        let side = code.side;
        let path = code.path.clone();
        element("svg")
            .class("code")
            .with("viewBox", format!("0 0 {side} {side}"))
            .with("role", "img")
            .with("aria-label", say!("share-code"))
            .with("data-code", side.to_string())
            .holds(element("path").with("d", path))
    };
    let show = move |_| {
        document::set_open(LARGE_CODE, true);
    };
    let close = move |_| {
        document::set_open(LARGE_CODE, false);
    };
    View::nothing()
        .and(picture())
        .and(
            command()
                .with("data-command", "show-code")
                .on("click", show)
                .holds(say!("share-code-large")),
        )
        .and(
            element("dialog")
                .with("id", LARGE_CODE)
                .class("code-large")
                .with("aria-label", say!("share-code"))
                .mark("data-code-large")
                .holds(picture())
                .holds(
                    command()
                        .with("data-command", "close-code")
                        .on("click", close)
                        .holds(say!("share-close")),
                ),
        )
}
