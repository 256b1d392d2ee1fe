//! The history: every step to go back to, a replay, and the moment that changes are shown against.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::App;
use crate::app::live::{Live, memo};
use crate::app::store::Store;

/// Id of the field with the name of a moment.
const NAME: &str = "moment-name";

/// The menu of the history.
#[component]
pub fn History(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let name = Live::new(String::new());
    let marked = memo(move || store.history.with(|history| history.marked.clone()));
    let replay_words = move || {
        if store.is_replaying.get() {
            say!("panels-replay-stop")
        } else {
            say!("panels-replay")
        }
    };
    let step = move |(place, words): (usize, String)| {
        let is_here = move || store.history.with(|history| history.done == place);
        view! {
            <li>
                <button
                    type="button"
                    class="menu-line step"
                    aria-current=move || is_here().then_some("step")
                    on:click=move |_| store.act(|app| app.go_to_step(place))
                >
                    <span class="choice-more">{place}</span>
                    {words}
                </button>
            </li>
        }
    };
    let steps = move || {
        let steps = store.history.with(|history| history.steps.clone());
        let begin = std::iter::once(say!("panels-history-begin").to_owned());
        let mut all: Vec<_> = begin.chain(steps).enumerate().collect();
        // The last is looked for most.
        all.reverse();
        all.into_iter().map(step).collect_view()
    };
    view! {
        <details class="menu history" data-menu="history">
            <summary class="command">{say!("panels-history")}</summary>
            <div class="menu-card">
                <ol class="steps">{steps}</ol>
                <button type="button" class="command" data-command="replay" on:click=move |_| store.replay()>{replay_words}</button>
                <form
                    class="moment"
                    data-field="Moment"
                    on:submit=move |event| {
                        event.prevent_default();
                        store.act(|app| app.mark_moment(&name.get_untracked()));
                        store.ask();
                    }
                >
                    <label for=NAME>{say!("panels-moment-name")}</label>
                    <input id=NAME type="text" maxlength="60" prop:value=move || name.get() on:input=move |event| name.set(event_target_value(&event))/>
                    <button type="submit" class="command" data-command="mark">{say!("panels-moment-mark")}</button>
                </form>
                {move || marked.get().map(|words| view! {
                    <p class="moment" data-marked>
                        {say!("panels-moment-compared", name = words)}
                        <button type="button" class="command" data-command="forget-moment" on:click=move |_| store.act(App::forget_moment)>{say!("panels-moment-forget")}</button>
                    </p>
                })}
            </div>
        </details>
    }
}
