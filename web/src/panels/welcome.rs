//! What to begin with or go on with, shown while nothing is drawn and nothing was opened.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::files::{SAMPLES, Sample};
use crate::app::keeping::Recent;
use crate::app::live::{Live, memo};
use crate::app::shown::Help;
use crate::app::store::{CANVAS, FILE_INPUT, Store};
use crate::browser::{document, files};
use crate::tools::ToolKind;

/// Ways to begin with nothing drawn: the tool, its name in the page, and words.
fn starts() -> [(ToolKind, &'static str, &'static str, &'static str); 2] {
    [
        (
            ToolKind::Area,
            "site",
            say!("panels-begin-site"),
            say!("panels-begin-site-about"),
        ),
        (
            ToolKind::Street,
            "streets",
            say!("panels-begin-streets"),
            say!("panels-begin-streets-about"),
        ),
    ]
}

/// Begins with nothing drawn; where this browser keeps no plan the first steps are shown.
fn begin_anew(store: Store) {
    store.is_new.set(false);
    if store.recent.with_untracked(Vec::is_empty) {
        store.help.set(Help::FirstSteps);
    }
}

/// The card of beginnings.
#[component]
pub fn Welcome(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let sample = move |sample: &'static Sample| {
        view! {
            <li>
                <button type="button" class="menu-line" data-begin=sample.file on:click=move |_| {
                    store.open_sample(sample);
                    document::focus_on(CANVAS);
                }>
                    <span class="choice-name">{sample.title.words()}</span>
                    <span class="choice-more">{sample.about.words()}</span>
                </button>
            </li>
        }
    };
    let start = move |(tool, name, title, about): (ToolKind, &'static str, &'static str, &'static str)| {
        let begin = move |_| {
            begin_anew(store);
            store.act(|app| app.choose_tool(tool));
            document::focus_on(CANVAS);
        };
        view! {
            <li>
                <button type="button" class="menu-line" data-begin=name on:click=begin>
                    <span class="choice-name">{title}</span>
                    <span class="choice-more">{about}</span>
                </button>
            </li>
        }
        .into_any()
    };
    move || {
        store.is_new.get().then(|| {
            view! {
                <section class="welcome" aria-labelledby="welcome-title" data-welcome>
                    <RecentPlans store/>
                    <h2 id="welcome-title" class="to-draw">{say!("panels-begin")}</h2>
                    <ul class="to-draw">
                        {starts().into_iter().map(start).collect::<Vec<AnyView>>()}
                        {super::base_image::start()}
                    </ul>
                    <h2>{move || if store.is_looking.get() { say!("mode-look-at") } else { say!("panels-begin-samples") }}</h2>
                    <ul>{SAMPLES.iter().map(sample).collect_view()}</ul>
                    <div class="welcome-more">
                        <button type="button" class="command to-draw" data-begin="blank" on:click=move |_| {
                            begin_anew(store);
                            document::focus_on(CANVAS);
                        }>
                            {say!("panels-begin-blank")}
                        </button>
                        {super::program::program_button(store, say!("panels-begin-program"))}
                        <button type="button" class="command" data-begin="file" on:click=move |_| files::choose(FILE_INPUT)>
                            {say!("panels-begin-file")}
                        </button>
                    </div>
                </section>
            }
        })
    }
}

/// Plans that this browser keeps; nothing where it keeps none.
#[component]
fn RecentPlans(store: Store) -> impl IntoView {
    // The plan of which is asked whether it shall be forgotten.
    let asked = Live::new(String::new());
    let one = move |plan: Recent| {
        let (id, opened) = (plan.id.clone(), plan.id.clone());
        let (name, when) = (plan.name.clone(), plan.when.clone());
        let is_asked = {
            let id = plan.id.clone();
            memo(move || asked.with(|asked| *asked == id))
        };
        let of_plan = say!("panels-forget-plan", name = name);
        // One button asks and then forgets, so that the keyboard stays on it; a double click only asks.
        let forget = move |clicks: i32| {
            if !is_asked.get_untracked() {
                asked.set(id.clone());
            } else if clicks < 2 {
                store.forget(plan.clone());
            }
        };
        let words = move || {
            if is_asked.get() {
                say!("panels-forget-for-good")
            } else {
                say!("panels-forget")
            }
        };
        let keep = move || {
            let keep = move |_| asked.set(String::new());
            let button =
                view! { <button type="button" class="command" data-keep on:click=keep>{say!("panels-keep")}</button> };
            is_asked.get().then(|| button.into_any())
        };
        view! {
            <li class="recent">
                <button type="button" class="menu-line" data-recent=opened.clone() on:click=move |_| {
                    store.open_kept(opened.clone());
                    document::focus_on(CANVAS);
                }>
                    <span class="choice-name">{name}</span>
                    <span class="choice-more">{when}</span>
                </button>
                <button type="button" class="command" data-forget title=of_plan on:click=move |event| forget(event.detail())>
                    {words}
                </button>
                {keep}
            </li>
        }
        .into_any()
    };
    move || {
        let plans = store.recent.get();
        (!plans.is_empty()).then(|| {
            view! {
                <h2>{say!("panels-go-on")}</h2>
                <ul>{plans.into_iter().map(one).collect::<Vec<_>>()}</ul>
            }
            .into_any()
        })
    }
}
