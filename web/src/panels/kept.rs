//! Whether the plan is kept in this browser, said beside its name.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::App;
use crate::app::keeping::KeptShown;
use crate::app::store::Store;

/// Whether the plan is kept in this browser and, where it is not, what helps.
#[component]
pub fn Kept(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let command = move |name: &'static str, words: &'static str, work: fn(Store)| {
        view! {
            <button type="button" class="command" data-command=name on:click=move |_| work(store)>{words}</button>
        }
        .into_any()
    };
    view! {
        <p
            class="kept to-draw"
            role="status"
            data-kept=move || match store.kept.get() {
                KeptShown::Nothing => "",
                KeptShown::Kept => "yes",
                KeptShown::Keeping => "soon",
                KeptShown::NotKept { .. } => "no",
            }
            data-plan=move || {
                store.kept.with(|_| ());
                store.with(|app| app.kept_id().map(str::to_owned))
            }
        >
            {move || store.kept.get().words()}
        </p>
        {move || {
            let KeptShown::NotKept { can_copy, can_reopen, .. } = store.kept.get() else { return Vec::new() };
            let mut commands = vec![command("save-not-kept", say!("panels-save"), Store::save)];
            if can_copy {
                commands.push(command("keep-as-copy", say!("panels-keep-as-copy"), |store| store.act(App::keep_as_copy)));
            }
            if can_reopen {
                commands.push(command("open-kept-again", say!("panels-open-kept-again"), Store::open_kept_again));
            }
            commands
        }}
    }
}
