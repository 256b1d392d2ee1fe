//! How the page is set: for which place, whether the plan is only looked at, and in which units.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::say;
use leptos::prelude::*;

use crate::app::live::memo;
use crate::app::mode::Mode;
use crate::app::store::{CANVAS, Store};
use crate::browser::document;
use crate::input::RemoteKey;

/// The menu.
pub fn page_menu(store: Store) -> AnyView {
    let place = move |mode: Mode| {
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name="mode"
                    value=mode.id()
                    prop:checked=move || store.mode.get() == mode
                    on:change=move |_| store.set_mode(mode)
                />
                <span class="choice-name">{mode.words()}</span>
            </label>
        }
        .into_any()
    };
    let keys = move || {
        let keys = if store.mode.get().is_board() {
            say!("mode-board-keys")
        } else {
            ""
        };
        keys.lines()
            .map(|line| view! { <p class="choice-more">{line}</p> }.into_any())
            .collect::<Vec<_>>()
    };
    let look = move |event| {
        if event_target_checked(&event) {
            store.look_only();
        } else {
            store.make_own();
        }
    };
    view! {
        <details class="menu page-menu" data-menu="page">
            <summary class="command">{say!("mode-menu")}</summary>
            <div class="menu-card">
                <div role="radiogroup" aria-labelledby="mode-title">
                    <p id="mode-title" class="palette-title">{say!("mode-title")}</p>
                    {Mode::ALL.map(place).into_iter().collect::<Vec<_>>()}
                </div>
                <p class="choice-more">{move || store.mode.get().about()}</p>
                <div class="remote-keys">{keys}</div>
                <label class="choice">
                    <input type="checkbox" id="look-only" prop:checked=move || store.is_looking.get() on:change=look/>
                    <span class="choice-name">{say!("mode-look-only")}</span>
                </label>
                {units(store)}
            </div>
        </details>
    }
    .into_any()
}

fn units(store: Store) -> AnyView {
    let is_metric = memo(move || store.plan.with(|plan| plan.is_metric));
    let one = move |(units, words, name): (UnitSystem, &'static str, &'static str)| {
        let is_chosen = move || is_metric.get() == (units == UnitSystem::Metric);
        view! {
            <button
                type="button"
                class="command"
                data-units=name
                aria-pressed=move || is_chosen().to_string()
                on:click=move |_| store.act(|app| app.show_units(units))
            >
                {words}
            </button>
        }
        .into_any()
    };
    let all = [
        (UnitSystem::UsCustomary, say!("panels-units-us"), "us"),
        (UnitSystem::Metric, say!("panels-units-metric"), "metric"),
    ];
    view! {
        <div class="group units to-draw" role="group" aria-label=say!("panels-units")>{all.map(one).into_iter().collect::<Vec<_>>()}</div>
    }
    .into_any()
}

/// What a keyboard's Enter and Escape do, for fingers; shown at a board, with the keys of a clicker.
pub fn by_tap(store: Store) -> AnyView {
    let is_busy = memo(move || store.hand.with(|hand| hand.is_busy));
    let one = move |(name, words, key, does): (&'static str, &'static str, &'static str, RemoteKey)| {
        let tap = move |event: leptos::ev::MouseEvent| {
            store.act(|app| app.remote(does));
            if event.detail() > 0 {
                document::focus_on(CANVAS);
            }
        };
        view! {
            <button type="button" class="command" data-command=name aria-disabled=move || (!is_busy.get()).to_string() on:click=tap>
                <span class="word">{words}</span>
                <kbd>{key}</kbd>
            </button>
        }
        .into_any()
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
    view! {
        <div class="group by-tap to-draw" role="group" aria-label=say!("mode-by-tap")>{all.map(one).into_iter().collect::<Vec<_>>()}</div>
    }
    .into_any()
}

/// That the plan is only looked at, and the way back to drawing; nothing where it can be changed.
pub fn looking_line(store: Store) -> AnyView {
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
            view! {
                <div class="looking" data-looking-line>
                    <p>{words}</p>
                    <button type="button" class="command" data-command="make-own" on:click=make_own>{say!("mode-make-own")}</button>
                </div>
            }
            .into_any()
        })
    };
    shown.into_any()
}
