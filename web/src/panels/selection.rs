//! What can be done to the selection: commands with words and keys, and the numbers they take.

use crate::browser::view::{View, command, element, presses};
use hobnail_core::say;

use super::field::number_field;
use crate::app::App;
use crate::app::editing::{Field, SelectionShown};
use crate::app::store::{CANVAS, Store};
use crate::browser::document;
use crate::live::memo;
use crate::tools::select::commands::Command;

/// The panel; nothing where nothing is selected.
pub fn selection_panel(store: Store) -> View {
    let words = memo(move || {
        let words = |shown: &SelectionShown| shown.words.clone();
        store.hand.with(|hand| hand.selection.as_ref().map(words))
    });
    let commands = memo(move || {
        let held = |shown: &SelectionShown| shown.commands.clone();
        store
            .hand
            .with(|hand| hand.selection.as_ref().map(held).unwrap_or_default())
    });
    let largest = memo(move || store.hand.with(|hand| Some(hand.selection.as_ref()?.radius.clone()?.1)));
    let has_radius = memo(move || largest.get().is_some());
    let button = move |id: &'static str, words: &'static str, key: String, work: fn(&mut App, usize), place: usize| {
        let shortcut = key.clone();
        command()
            .with("data-command", id)
            .with("aria-keyshortcuts", shortcut)
            .on("click", move |event| {
                store.act(|app| work(app, place));
                if presses(&event) > 0 {
                    document::focus_on(CANVAS);
                }
            })
            .holds(element("span").class("word").holds(words))
            .holds(element("kbd").holds(if id == "remove" {
                say!("panels-key-delete").to_owned()
            } else {
                key
            }))
            .into()
    };
    let of = move |command: Command| {
        let place = Command::ALL
            .iter()
            .position(|held| *held == command)
            .unwrap_or_default();
        let key = command.key().to_ascii_uppercase().to_string();
        let work = |app: &mut App, place: usize| {
            if let Some(command) = Command::ALL.get(place) {
                app.command(*command);
            }
        };
        let button: View = button(command.words(), command.words(), key, work, place);
        let field = match command {
            Command::TurnLeft => Some(number_field(store, Field::Turn, say!("panels-turn-by"))),
            Command::OffsetLeft => Some(number_field(store, Field::Offset, say!("panels-offset-by"))),
            _ => None,
        };
        View::nothing().and(field).and(button)
    };
    let is_offset = |command: &Command| matches!(command, Command::OffsetLeft);
    let folded = memo(move || commands.with(|held| held.iter().any(is_offset)));
    // What is done once in a while stands folded, so that the card covers little of the drawing.
    let of_kind = move |is_folded: bool| {
        move || {
            let held = commands.get().into_iter();
            held.filter(|command| command.turns_or_sets_off() == is_folded)
                .map(of)
                .collect::<View>()
        }
    };
    let is_open = memo(move || words.with(Option::is_some));
    View::from(move || {
        is_open.get().then(|| {
            element("div")
                .class("palette selection")
                .with("data-palette", "selection")
                .holds(element("p").class("palette-title").holds(say!("panels-selection")))
                .holds(element("p").class("choice-more").holds(words))
                .holds(move || {
                    has_radius.get().then(|| {
                        element("div")
                            .class("numbers")
                            .holds(number_field(store, Field::Radius, say!("panels-radius")))
                            .holds(element("p").class("choice-more").holds(move || {
                                largest
                                    .get()
                                    .map(|largest| say!("panels-radius-most", length = largest))
                            }))
                    })
                })
                .holds(
                    element("div")
                        .class("commands")
                        .holds(button(
                            "move",
                            say!("panels-move"),
                            "M".to_owned(),
                            |app, _| app.pick_up(),
                            0,
                        ))
                        .holds(button(
                            "remove",
                            say!("panels-delete"),
                            "Delete".to_owned(),
                            |app, _| app.delete(),
                            0,
                        ))
                        .holds(of_kind(false)),
                )
                .holds(
                    element("details")
                        .class("folded")
                        .with("data-folded", "commands")
                        .holds(element("summary").holds(move || {
                            if folded.get() {
                                say!("panels-turn-mirror-offset")
                            } else {
                                say!("panels-turn-mirror")
                            }
                        }))
                        .holds(element("div").class("commands").holds(of_kind(true))),
                )
                .holds(element("p").class("choice-more").holds(say!("panels-selection-about")))
        })
    })
}
