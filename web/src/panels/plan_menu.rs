//! The plan's name, which opens its heading and its phases.

use crate::browser::view::{View, command, element};
use hobnail_core::say;

use super::fields::fields;
use crate::app::App;
use crate::app::store::Store;
use crate::live::memo;

/// The name as a heading, and below it on request what can be typed about the plan.
pub fn plan_menu(store: Store) -> View {
    let name = memo(move || store.plan.with(|plan| plan.name.clone()));
    let menu = move || {
        super::menu("plan", super::summary(element("h1").mark("data-plan-name").holds(name))).holds(
            element("div")
                .class("menu-card")
                .holds(element("p").class("choice-more").holds(say!("panels-plan-about")))
                .holds(fields(store, |forms| &forms.plan))
                .holds(
                    command()
                        .mark("data-phase-add")
                        .on_press(move || store.act(App::add_phase))
                        .holds(say!("panels-phase-add")),
                )
                .holds(super::bases::lines(store))
                .holds(super::base_image::lines(store)),
        )
    };
    let alone = move || element("h1").mark("data-plan-name").holds(name);
    let shown = move || if store.is_looking.get() { alone() } else { menu() };
    shown.into()
}
