//! The page's outermost element: what the drawing and the column of figures hang from.

use leptos::prelude::*;

/// The whole page.
#[component]
pub fn Page() -> impl IntoView {
    view! {
        <main>
            <h1>"Hobnail"</h1>
        </main>
    }
}
