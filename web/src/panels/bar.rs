//! The bar on top: the plan's name, its alternatives, undo and redo, samples, open, save and share.

use hobnail_core::say;
use leptos::prelude::*;

use super::alternatives::alternatives;
use super::history::History;
use super::icons::BackIcon;
use super::kept::Kept;
use crate::app::App;
use crate::app::files::SAMPLES;
use crate::app::live::memo;
use crate::app::store::{BAR, FILE_INPUT, Store};
use crate::browser::{document, files};

/// The bar.
#[component]
pub fn Bar(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let name = memo(move || store.plan.with(|plan| plan.name.clone()));
    let undo = memo(move || store.plan.with(|plan| plan.undo.clone()));
    let redo = memo(move || store.plan.with(|plan| plan.redo.clone()));
    let is_busy = memo(move || store.hand.with(|hand| hand.is_busy));
    Effect::new(move |_| {
        let name = name.get();
        if !store.is_new.get() {
            document::set_title(&format!("{name} – Hobnail"));
        }
    });
    view! {
        <header id=BAR class="bar">
            <div class="names">
                <span class="program">"Hobnail"</span>
                {super::plan_menu::plan_menu(store)}
            </div>
            {super::mode::looking_line(store)}
            <Kept store/>
            {alternatives(store)}
            <div class="group steps-back to-draw" role="group" aria-label=say!("panels-history")>
                <button
                    type="button"
                    class="command"
                    data-command="undo"
                    aria-keyshortcuts="Control+Z"
                    aria-disabled=move || (undo.get().is_none() && !is_busy.get()).to_string()
                    on:click=move |_| store.act(App::undo)
                >
                    <BackIcon/>
                    <span class="word">{say!("panels-undo")}</span>
                    <kbd>{say!("mode-key-undo")}</kbd>
                    <span class="command-more" data-undo-word>{move || undo.get()}</span>
                </button>
                <button
                    type="button"
                    class="command forward"
                    data-command="redo"
                    aria-keyshortcuts="Control+Shift+Z"
                    aria-disabled=move || redo.get().is_none().to_string()
                    on:click=move |_| store.act(App::redo)
                >
                    <BackIcon/>
                    <span class="word">{say!("panels-redo")}</span>
                    <kbd>{say!("mode-key-redo")}</kbd>
                    <span class="command-more">{move || redo.get()}</span>
                </button>
                <History store/>
            </div>
            <div class="group files to-draw" role="group" aria-label=say!("panels-plan")>
                <Samples store/>
                <button type="button" class="command" data-command="open" aria-keyshortcuts="Control+O" on:click=move |_| files::choose(FILE_INPUT)>
                    {say!("panels-open")}
                </button>
                <input
                    id=FILE_INPUT
                    class="visually-hidden"
                    type="file"
                    multiple
                    accept=".geojson,.json,application/geo+json"
                    tabindex="-1"
                    aria-hidden="true"
                    on:change=move |event| files::read_chosen(&event, move |opened| store.open_files(opened))
                />
                <button type="button" class="command" data-command="save" aria-keyshortcuts="Control+S" on:click=move |_| store.save()>
                    {say!("panels-save")}
                </button>
            </div>
            {super::share::share(store)}
        </header>
    }
}

#[component]
fn Samples(store: Store) -> impl IntoView {
    let menu = NodeRef::<leptos::html::Details>::new();
    let one = move |sample: &'static crate::app::files::Sample| {
        view! {
            <li>
                <button
                    type="button"
                    class="menu-line"
                    data-sample=sample.file
                    on:click=move |_| {
                        if let Some(menu) = menu.get() {
                            menu.set_open(false);
                        }
                        store.open_sample(sample);
                    }
                >
                    <span class="choice-name">{sample.title.words()}</span>
                    <span class="choice-more">{sample.about.words()}</span>
                </button>
            </li>
        }
    };
    view! {
        <details class="menu" node_ref=menu data-menu="samples">
            <summary class="command">{say!("panels-samples")}</summary>
            <ul>{SAMPLES.iter().map(one).collect_view()}</ul>
        </details>
    }
}
