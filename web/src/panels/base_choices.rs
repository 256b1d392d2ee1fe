//! What a file of base data holds, and what is chosen of it before it is taken.

use crate::browser::view::{View, element, is_checked, value_of};
use hobnail_core::say;

use super::bases::command;
use super::drawn::drawn;
use crate::app::bases::Extent;
use crate::app::bases::opened::{Field, Opened};
use crate::app::store::Store;

/// What would be taken: its share of the file, a number for each kind, and what is left out; or why nothing can be.
pub(super) fn what_is_taken(opened: &Opened) -> View {
    let told: View = match &opened.preview {
        Err(fault) => element("p").class("base-wrong").holds(fault.clone()).into(),
        Ok(taken) => {
            let kind = |[count, words]: [String; 2]| {
                element("li")
                    .holds(element("b").holds(count))
                    .holds([" ", &words].concat())
            };
            let mut left = taken.left_out();
            if taken.unchosen > 0 {
                left.insert(0, say!("bases-left-unchosen", count = taken.unchosen));
            }
            View::nothing()
                .and(
                    (!opened.base.features.is_empty())
                        .then(|| element("p").holds(taken.share(opened.base.features.len()))),
                )
                .and(element("p").holds(say!("bases-would-take")))
                .and(
                    element("ul")
                        .class("base-kinds")
                        .holds(taken.by_kind().into_iter().map(kind).collect::<View>()),
                )
                .and((!left.is_empty()).then(|| element("p").class("choice-more").holds(left.join(" "))))
        }
    };
    element("div")
        .class("base-preview")
        .with("role", "status")
        .mark("data-base-preview")
        .holds(told)
        .into()
}

/// All that is shown and chosen of a base.
pub(super) fn choices(store: Store, opened: &Opened) -> View {
    let has_heights = opened.base.grid.is_some();
    View::nothing()
        .and(about(opened))
        .and((has_heights || !opened.base.features.is_empty()).then(|| {
            element("div")
                .class("base-columns")
                .holds(
                    element("div")
                        .holds(opened.sketch.clone().map(drawn))
                        .holds(placing(store, opened))
                        .holds(layers(store, opened)),
                )
                .holds(if has_heights {
                    heights(store, opened)
                } else {
                    classes(store, opened)
                })
        }))
}

/// Where the data is from, in which coordinates, how large.
fn about(opened: &Opened) -> View {
    let (system, unit) = opened.system();
    let [lowest, cells] = opened.grid_words();
    let line = |(name, words, value): (&'static str, &'static str, String)| {
        (!value.is_empty()).then(|| {
            View::nothing()
                .and(element("dt").holds(words))
                .and(element("dd").with("data-base-about", name).holds(value))
        })
    };
    let lines = [
        ("credit", say!("bases-credit"), opened.base.attribution.clone()),
        ("system", say!("bases-system"), system),
        ("unit", say!("bases-unit"), unit.to_owned()),
        ("extent", say!("bases-size"), opened.extent().unwrap_or_default()),
        ("heights", say!("heights-in-file"), lowest),
        ("cells", say!("heights-cell"), cells),
    ];
    element("dl")
        .class("base-about")
        .holds(lines.into_iter().map(line).collect::<View>())
        .into()
}

fn option(value: usize, is_chosen: bool, words: impl Into<View>) -> View {
    element("option")
        .with("value", value)
        .property("selected", is_chosen)
        .holds(words)
        .into()
}

/// In which unit the heights are, and what they are not.
fn heights(store: Store, opened: &Opened) -> View {
    let chosen = move |event| {
        let place = value_of(&event).parse().unwrap_or(usize::MAX);
        store.choose_of_base(move |opened, _| opened.choose_height_unit(place));
    };
    let units = opened.height_units().into_iter().enumerate();
    let units = units.map(|(place, (words, is_chosen))| option(place, is_chosen, words));
    element("section")
        .with("aria-labelledby", "base-heights-title")
        .holds(
            element("h3")
                .with("id", "base-heights-title")
                .holds(say!("heights-title")),
        )
        .holds(
            element("label")
                .class("base-field base-wide")
                .holds(element("span").holds(say!("heights-unit")))
                .holds(
                    element("select")
                        .mark("data-base-height-unit")
                        .on("change", chosen)
                        .holds(units.collect::<View>()),
                ),
        )
        .holds(element("p").class("choice-more").holds(say!("heights-unit-about")))
        .holds(element("p").class("choice-more").holds(say!("heights-caution")))
        .into()
}

/// How much is taken, and where it comes to lie.
fn placing(store: Store, opened: &Opened) -> View {
    let is_site = matches!(opened.choices.extent, Extent::Site { .. });
    let extents = opened.extents();
    let chosen = move |event| {
        let place = value_of(&event).parse().unwrap_or_default();
        store.choose_of_base(move |opened, _| opened.choose_extent(place));
    };
    let extent = (!extents.is_empty()).then(|| {
        let options = extents.into_iter().enumerate();
        let options = options.map(|(place, (words, is_chosen))| option(place, is_chosen, words));
        element("label")
            .class("base-field base-wide")
            .holds(element("span").holds(say!("bases-extent-field")))
            .holds(
                element("select")
                    .mark("data-base-extent")
                    .on("change", chosen)
                    .holds(options.collect::<View>()),
            )
    });
    let field = |field: Field| {
        let (text, is_usable) = opened.typed(field);
        let typed = move |event| {
            let text = value_of(&event);
            store.choose_of_base(move |opened, _| opened.type_in(field, text));
        };
        let name = match field {
            Field::Distance if is_site => say!("bases-margin"),
            Field::Distance => say!("bases-radius"),
            Field::Longitude => say!("bases-longitude"),
            Field::Latitude => say!("bases-latitude"),
            Field::Unit => say!("bases-drawing-unit"),
            Field::East => say!("bases-zero-east"),
            Field::North => say!("bases-zero-north"),
            Field::Turn => say!("bases-turn"),
        };
        element("label")
            .class("base-field")
            .holds(element("span").holds(name))
            .holds(
                element("input")
                    .with("type", "text")
                    .with("inputmode", "decimal")
                    .with("data-base-field", field as usize)
                    .with("aria-invalid", (!is_usable).to_string())
                    .property("value", text.to_owned())
                    .on("change", typed),
            )
            .holds(element("span").class("form-unit").holds(opened.unit_of(field)))
    };
    element("section")
        .with("aria-labelledby", "base-place-title")
        .holds(element("h3").with("id", "base-place-title").holds(say!("bases-place")))
        .holds(extent)
        .holds(opened.fields.iter().copied().map(field).collect::<View>())
        .holds(element("p").class("choice-more").holds(opened.place_words()))
        .into()
}

/// The layers that hold something, each to be taken or not, where there are several.
fn layers(store: Store, opened: &Opened) -> View {
    let holding = opened
        .choices
        .layers
        .iter()
        .enumerate()
        .filter(|(place, _)| opened.count_in(*place) > 0);
    let holding: Vec<(usize, &bool)> = holding.collect();
    if holding.len() < 2 {
        return View::nothing();
    }
    let one = |(place, is_chosen): (usize, &bool)| {
        let changed = move |event| {
            let is_chosen = is_checked(&event);
            store.choose_of_base(move |opened, _| {
                if let Some(layer) = opened.choices.layers.get_mut(place) {
                    *layer = is_chosen;
                }
            });
        };
        element("label")
            .class("choice")
            .holds(
                element("input")
                    .with("type", "checkbox")
                    .with("data-base-layer", place)
                    .property("checked", *is_chosen)
                    .on("change", changed),
            )
            .holds(
                element("span")
                    .class("choice-name")
                    .holds(opened.layer_name(place).to_owned()),
            )
            .holds(
                element("span")
                    .class("choice-more")
                    .holds(opened.count_in(place).to_string()),
            )
    };
    element("fieldset")
        .class("base-layers")
        .holds(element("legend").holds(say!("bases-layers")))
        .holds(holding.into_iter().map(one).collect::<View>())
        .into()
}

/// The table of classes: what each becomes.
fn classes(store: Store, opened: &Opened) -> View {
    let (shown, all) = opened.classes();
    let all_at_once = (all > 1).then(|| {
        let changed = move |event| {
            let meaning = value_of(&event).parse().unwrap_or(usize::MAX);
            store.choose_of_base(move |opened, app| opened.choose_meaning_of_all(meaning, app));
        };
        let meanings = store.with(|app| opened.meanings_of_all(app)).into_iter().enumerate();
        element("label")
            .class("base-field base-all")
            .holds(element("span").holds(say!("bases-all-at-once")))
            .holds(
                element("select")
                    .mark("data-base-all")
                    .on("change", changed)
                    .holds(option(usize::MAX, true, say!("bases-as-chosen")))
                    .holds(
                        meanings
                            .map(|(at, (_, words))| option(at, false, words))
                            .collect::<View>(),
                    ),
            )
    });
    let row = |place: usize| -> Option<View> {
        let class = opened.base.classes.get(place)?;
        let (meanings, chosen) = store.with(|app| opened.meanings(place, app));
        let layer = opened.layer_name(class.layer).to_owned();
        let (name, of) = if class.tag.is_empty() {
            (layer, None)
        } else {
            (
                class.tag.replace('=', " = "),
                (opened.base.layers.len() > 1).then_some(layer),
            )
        };
        let changed = move |event| {
            let meaning = value_of(&event).parse().unwrap_or_default();
            store.choose_of_base(move |opened, app| opened.choose_meaning(place, meaning, app));
        };
        let meanings = meanings.into_iter().enumerate();
        let row = element("tr")
            .class_if("is-left-out", chosen == 0)
            .holds(
                element("th")
                    .with("scope", "row")
                    .holds(name.clone())
                    .holds(of.map(|of| element("span").class("choice-more").holds(of))),
            )
            .holds(element("td").holds(class.count.to_string()))
            .holds(
                element("td").holds(
                    element("select")
                        .with("data-base-class", class.tag.clone())
                        .with("aria-label", say!("bases-becomes-of", name = name))
                        .on("change", changed)
                        .holds(
                            meanings
                                .map(|(at, (_, words))| option(at, at == chosen, words))
                                .collect::<View>(),
                        ),
                ),
            );
        Some(row.into())
    };
    let head = |words: &'static str| element("th").with("scope", "col").holds(words);
    let more = (all > shown.len()).then(|| {
        command("base-all", say!("bases-show-all", count = all), move || {
            store.choose_of_base(|opened, _| opened.shows_all = true);
        })
    });
    element("section")
        .class("base-classes")
        .with("aria-labelledby", "base-classes-title")
        .holds(
            element("h3")
                .with("id", "base-classes-title")
                .holds(say!("bases-classes")),
        )
        .holds(all_at_once)
        .holds(
            element("table")
                .holds(
                    element("thead").holds(
                        element("tr")
                            .holds(head(say!("bases-in-file")))
                            .holds(head(say!("bases-count")))
                            .holds(head(say!("bases-becomes"))),
                    ),
                )
                .holds(element("tbody").holds(shown.into_iter().map(row).collect::<View>())),
        )
        .holds(more)
        .into()
}
