//! The plan's name, which opens its heading and its phases.

use hobnail_core::say;
use leptos::prelude::*;

use super::fields::fields;
use crate::app::App;
use crate::app::live::memo;
use crate::app::store::Store;

/// The name as a heading, and below it on request what can be typed about the plan.
pub fn plan_menu(store: Store) -> AnyView {
    let name = memo(move || store.plan.with(|plan| plan.name.clone()));
    let menu = move || {
        view! {
        <details class="menu" data-menu="plan">
            <summary class="command plan-name"><h1 data-plan-name>{name}</h1></summary>
            <div class="menu-card">
                <p class="choice-more">{say!("panels-plan-about")}</p>
                {fields(store, |forms| &forms.plan)}
                <button type="button" class="command" data-phase-add on:click=move |_| store.act(App::add_phase)>{say!("panels-phase-add")}</button>
                {super::base_image::lines(store)}
            </div>
        </details>
    }
    .into_any()
    };
    let alone = move || view! { <h1 data-plan-name>{name}</h1> }.into_any();
    let shown = move || if store.is_looking.get() { alone() } else { menu() };
    shown.into_any()
}
