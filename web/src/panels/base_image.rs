//! The picture under the drawing: chosen, faded, laid and taken away in the plan's menu; while it is being laid, what a
//! press on the drawing does.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::App;
use crate::app::live::memo;
use crate::app::shown::Help;
use crate::app::store::{CANVAS, PICTURE_INPUT, Store};
use crate::browser::{document, files, pictures};

fn command(name: &'static str, words: &'static str, work: impl Fn() + 'static) -> AnyView {
    let pressed = move |_| work();
    view! { <button type="button" class="command" data-command=name on:click=pressed>{words}</button> }.into_any()
}

fn choose() {
    files::choose(PICTURE_INPUT);
}

/// The way to begin with a picture.
pub fn start() -> AnyView {
    view! {
        <li>
            <button type="button" class="menu-line" data-begin="picture" on:click=|_| choose()>
                <span class="choice-name">{say!("picture-begin")}</span>
                <span class="choice-more">{say!("picture-begin-about")}</span>
            </button>
        </li>
    }
    .into_any()
}

/// The lines of the plan's menu, and the input that they open.
pub fn lines(store: Store) -> AnyView {
    let name = memo(move || store.base_image.with(|shown| shown.name.clone()));
    let percent = memo(move || store.base_image.with(|shown| shown.opacity_percent));
    let lay = move |is_by_length: bool| {
        store.help.set(Help::Closed);
        store.act(|app| app.begin_laying(is_by_length));
        document::focus_on(CANVAS);
    };
    let shown = move || {
        let name = name.get();
        if name.is_empty() {
            return command("picture", say!("picture-choose"), choose);
        }
        let fade = move |event| {
            let percent = event_target_value(&event).parse().unwrap_or_default();
            store.act(|app| app.fade_picture(percent));
        };
        view! {
            <p class="picture-name" data-picture-name>{name}</p>
            <label class="picture-fade">
                <span>{say!("picture-fade")}</span>
                <input type="range" min="0" max="100" step="5" data-picture-fade prop:value=move || percent.get().to_string() on:change=fade/>
            </label>
            <div class="group">
                {command("picture-points", say!("picture-by-points"), move || lay(false))}
                {command("picture-length", say!("picture-by-length"), move || lay(true))}
            </div>
            <div class="group">
                {command("picture", say!("picture-another"), choose)}
                {command("picture-remove", say!("picture-remove"), move || store.act(App::remove_picture))}
            </div>
        }
        .into_any()
    };
    view! {
        <section class="picture to-draw" aria-labelledby="picture-title">
            <h2 id="picture-title">{say!("picture-title")}</h2>
            {shown}
        </section>
        <input
            id=PICTURE_INPUT
            class="visually-hidden"
            type="file"
            accept=pictures::ACCEPTED
            tabindex="-1"
            aria-hidden="true"
            on:change=move |event| pictures::read_chosen(&event, move |read| store.lay_picture(read))
        />
    }
    .into_any()
}

/// While the picture is being laid: what is awaited, over the foot of the drawing.
pub fn laying(store: Store) -> AnyView {
    let shown = memo(move || store.base_image.with(|shown| (shown.awaits.clone(), shown.asks_length)));
    let card = move || {
        let (awaits, asks_length) = shown.get();
        let awaits = awaits?;
        let typed = move |event| {
            let text = event_target_value(&event);
            store.act(|app| app.type_picture_length(&text));
        };
        let length = asks_length.then(|| {
            view! {
                <label class="picture-length">
                    <span>{say!("picture-length-field")}</span>
                    <input type="text" inputmode="decimal" data-picture-length on:change=typed/>
                </label>
            }
            .into_any()
        });
        let section = view! {
            <section class="help" aria-label=say!("picture-title") data-laying>
                <p>{awaits}</p>
                {length}
                <div class="group">
                    {command("picture-done", say!("picture-done"), move || store.act(App::end_laying))}
                    {command("picture-back", say!("picture-back"), move || store.act(App::give_laying_up))}
                </div>
            </section>
        };
        Some(section.into_any())
    };
    card.into_any()
}
