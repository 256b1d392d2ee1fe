//! What to begin with, shown while nothing is drawn and nothing was opened.

use leptos::prelude::*;

use crate::app::files::{SAMPLES, Sample};
use crate::app::store::{CANVAS, FILE_INPUT, Store};
use crate::browser::{document, files};

/// The card of beginnings.
#[component]
pub fn Welcome(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let sample = move |sample: &'static Sample| {
        view! {
            <li>
                <button type="button" class="menu-line" data-begin=sample.file on:click=move |_| store.open_sample(sample)>
                    <span class="choice-name">{sample.title}</span>
                    <span class="choice-more">{sample.about}</span>
                </button>
            </li>
        }
    };
    move || {
        store.is_new.get().then(|| {
            view! {
                <section class="welcome" aria-labelledby="welcome-title" data-welcome>
                    <h2 id="welcome-title">"Begin with"</h2>
                    <ul>{SAMPLES.iter().map(sample).collect_view()}</ul>
                    <div class="welcome-more">
                        <button type="button" class="command" data-begin="blank" on:click=move |_| {
                            store.is_new.set(false);
                            document::focus_on(CANVAS);
                        }>
                            "A blank sheet"
                        </button>
                        <button type="button" class="command" data-begin="file" on:click=move |_| files::choose(FILE_INPUT)>
                            "A file of your own…"
                        </button>
                    </div>
                </section>
            }
        })
    }
}
