//! Whether the plan is kept in this browser, said beside its name.

use crate::browser::view::{View, command, element};
use hobnail_core::say;

use crate::app::App;
use crate::app::keeping::KeptShown;
use crate::app::store::Store;

/// Whether the plan is kept in this browser and, where it is not, what helps.
pub fn kept(store: Store) -> View {
    let command = move |name: &'static str, words: &'static str, work: fn(Store)| {
        command()
            .with("data-command", name)
            .on_press(move || work(store))
            .holds(words)
            .into()
    };
    View::nothing()
        .and(
            element("p")
                .class("kept to-draw")
                .with("role", "status")
                .with("data-kept", move || match store.kept.get() {
                    KeptShown::Nothing => "",
                    KeptShown::Kept => "yes",
                    KeptShown::Keeping => "soon",
                    KeptShown::NotKept { .. } => "no",
                })
                .with("data-plan", move || {
                    store.kept.with(|_| ());
                    store.with(|app| app.kept_id().map(str::to_owned))
                })
                .holds(move || store.kept.get().words()),
        )
        .and(move || {
            let KeptShown::NotKept {
                can_copy, can_reopen, ..
            } = store.kept.get()
            else {
                return Vec::new();
            };
            let mut commands: Vec<View> = vec![command("save-not-kept", say!("panels-save"), Store::save)];
            if can_copy {
                commands.push(command("keep-as-copy", say!("panels-keep-as-copy"), |store| {
                    store.act(App::keep_as_copy)
                }));
            }
            if can_reopen {
                commands.push(command(
                    "open-kept-again",
                    say!("panels-open-kept-again"),
                    Store::open_kept_again,
                ));
            }
            commands
        })
}
