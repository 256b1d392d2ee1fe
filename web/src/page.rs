//! The page's outermost element: the drawing and the panels around it.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::App;
use crate::app::mode::Mode;
use crate::app::store::{Store, TEXT_SIZE};
use crate::browser::{files, pictures};
use crate::panels::bar::Bar;
use crate::panels::base_image::laying;
use crate::panels::column::Column;
use crate::panels::drawing::Drawing;
use crate::panels::editor::CutPanel;
use crate::panels::enlarged::Enlarged;
use crate::panels::help::help;
use crate::panels::map::MapPanel;
use crate::panels::palette::Palette;
use crate::panels::rail::Rail;
use crate::panels::status::Status;
use crate::panels::welcome::Welcome;

/// The whole page.
#[component]
pub fn Page() -> impl IntoView {
    match App::new() {
        Ok(app) => view! { <Desk store=Store::new(app)/> }.into_any(),
        Err(fault) => view! { <p class="fatal" role="alert">{fault.to_string()}</p> }.into_any(),
    }
}

#[component]
fn Desk(store: Store) -> impl IntoView {
    files::accept_drops();
    view! {
        <div class="desk" on:drop=move |event| match pictures::dropped(&event) {
            Some(picture) => {
                event.prevent_default();
                pictures::read(picture, move |read| store.lay_picture(read));
            }
            None => files::read_dropped(&event, move |opened| store.open_files(opened)),
        }>
            <a class="skip" href="#drawing">{say!("page-skip")}</a>
            <Bar store/>
            <section class="tools to-draw" aria-label=say!("page-drawing-tools")>
                <Rail store/>
                <Palette store/>
            </section>
            <Drawing store/>
            <MapPanel store/>
            {move || (store.mode.get() != Mode::Projector).then(|| view! { <Enlarged store/> })}
            <CutPanel store/>
            <Welcome store/>
            <Column store/>
            <Status store/>
            {help(store)}
            {laying(store)}
            <Notice store/>
            <span id=TEXT_SIZE class="text-size" aria-hidden="true"></span>
            <p class="visually-hidden" role="status" aria-live="polite" data-said>{move || store.said.get()}</p>
        </div>
    }
}

/// What went wrong, until it is dismissed.
#[component]
fn Notice(store: Store) -> impl IntoView {
    view! {
        <div role="alert" class="notice-place">
            {move || {
                store.notice.get().map(|words| {
                    view! {
                        <div class="notice" data-notice>
                            <p>{words}</p>
                            <button type="button" class="command" on:click=move |_| store.act(App::dismiss_notice)>{say!("page-dismiss")}</button>
                        </div>
                    }
                })
            }}
        </div>
    }
}
