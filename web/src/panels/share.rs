//! Sharing: the plan in an address, as a code for a room, or with the page in one file.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::say;
use leptos::prelude::*;

use crate::app::App;
use crate::app::address::{Code, Shared};
use crate::app::exports::{KINDS, Kind, scales};
use crate::app::live::memo;
use crate::app::store::Store;
use crate::app::words::Words;

/// The menu that makes and shows the plan's address.
pub fn share(store: Store) -> AnyView {
    let menu = NodeRef::<leptos::html::Details>::new();
    let is_open = move || menu.get_untracked().is_some_and(|menu| menu.open());
    // A step taken while the menu stands open is in the address too.
    Effect::new(move |_| {
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
    view! {
        <details class="menu" node_ref=menu data-menu="share" on:toggle=opened>
            <summary class="command">{say!("share-open")}</summary>
            <div class="menu-card share">{move || card(store, shown.get())}</div>
        </details>
    }
    .into_any()
}

fn card(store: Store, shared: Shared) -> AnyView {
    let command = |name: &'static str, words: &'static str, work: fn(Store)| {
        view! {
            <button type="button" class="command" data-command=name on:click=move |_| work(store)>{words}</button>
        }
        .into_any()
    };
    let mut commands = Vec::new();
    if shared.address.is_some() {
        commands.push(command("copy-address", say!("share-copy"), Store::copy_address));
        if shared.can_hand_on {
            commands.push(command("hand-on", say!("share-hand-on"), Store::hand_address_on));
        }
    }
    if shared.can_save_page {
        commands.push(command("save-page", say!("share-save-page"), Store::save_page));
    }
    let address = shared.address.map(|address| {
        view! {
            <label class="share-address">
                <span>{say!("share-address")}</span>
                <input type="text" readonly data-address prop:value=address/>
            </label>
        }
        .into_any()
    });
    let left_out = (!shared.left_out.is_empty()).then(|| {
        let one = |words: &'static str| view! { <li>{words}</li> }.into_any();
        view! {
            <div data-left-out>
                <p>{say!("share-left-out")}</p>
                <ul class="share-left-out">{shared.left_out.into_iter().map(one).collect::<Vec<_>>()}</ul>
            </div>
        }
        .into_any()
    });
    view! {
        <p class="share-words">{shared.words}</p>
        {address}
        {left_out}
        <div class="group">{commands}</div>
        {shared.code.map(code)}
        {shared.no_code.map(|words| view! { <p class="share-words" data-no-code>{words}</p> }.into_any())}
        <p class="share-words" data-share-outcome>{shared.outcome}</p>
        {exports(store)}
    }
    .into_any()
}

/// Files for other programs, and the scale of those that are drawings.
fn exports(store: Store) -> AnyView {
    let scale = NodeRef::<leptos::html::Select>::new();
    let units = store.with(App::units);
    let words = |scale: f64| match units {
        UnitSystem::Metric => ["1 : ", &scale.to_string()].concat(),
        UnitSystem::UsCustomary => say!("share-scale-feet", feet = (scale / 12.0).to_string()),
    };
    let one = |(place, chosen): (usize, f64)| {
        let is_usual = place == 1;
        view! { <option value=chosen.to_string() selected=is_usual>{words(chosen)}</option> }.into_any()
    };
    let kind = move |(kind, name, words): (Kind, &'static str, Words)| {
        let save = move |_| {
            let chosen = scale.get_untracked().and_then(|scale| scale.value().parse().ok());
            store.export(kind, chosen.unwrap_or_else(|| scales(units)[1]));
        };
        view! { <button type="button" class="command" data-export=name on:click=save>{words.words()}</button> }
            .into_any()
    };
    view! {
        <section class="share-files" aria-labelledby="share-files-title">
            <h2 id="share-files-title">{say!("share-files")}</h2>
            <label class="share-scale">
                <span>{say!("share-scale")}</span>
                <select node_ref=scale data-scale>{scales(units).into_iter().enumerate().map(one).collect::<Vec<_>>()}</select>
            </label>
            <div class="group">{KINDS.map(kind).into_iter().collect::<Vec<_>>()}</div>
        </section>
    }
    .into_any()
}

/// The code, small in the menu, and across the window on request.
fn code(code: Code) -> AnyView {
    let large = NodeRef::<leptos::html::Dialog>::new();
    let picture = move || {
        let side = code.side;
        let path = code.path.clone();
        view! {
            <svg class="code" viewBox=format!("0 0 {side} {side}") role="img" aria-label=say!("share-code") data-code=side.to_string()>
                <path d=path></path>
            </svg>
        }
        .into_any()
    };
    let show = move |_| {
        if let Some(large) = large.get_untracked() {
            // A dialog that stands in the page and is closed can be shown.
            let _ = large.show_modal();
        }
    };
    let close = move |_| {
        if let Some(large) = large.get_untracked() {
            large.close();
        }
    };
    view! {
        {picture()}
        <button type="button" class="command" data-command="show-code" on:click=show>{say!("share-code-large")}</button>
        <dialog node_ref=large class="code-large" aria-label=say!("share-code") data-code-large>
            {picture()}
            <button type="button" class="command" data-command="close-code" on:click=close>{say!("share-close")}</button>
        </dialog>
    }
    .into_any()
}
