//! Parts of the page as plain data: elements with attributes, handlers and what they hold.
//!
//! A panel says what there is to see; `shown` builds it once and changes afterwards only what differs.
//! What is given as a function is brought up to date whenever what it reads changes. Text is only ever text.

mod shown;
mod value;

use std::rc::Rc;

use wasm_bindgen::JsCast;

pub use shown::mount;
pub use value::{Value, Words};

use crate::live::Memo;

/// What happened at an element.
pub type Event = web_sys::Event;

/// Something to see, or nothing.
#[derive(Default)]
pub struct View(Kind);

#[derive(Default)]
enum Kind {
    #[default]
    Nothing,
    Words(Words),
    Element(Element),
    Several(Vec<View>),
    Live(Box<dyn Fn() -> View>),
}

type Handler = Rc<dyn Fn(Event)>;

/// An element.
pub struct Element(Box<Parts>);

struct Parts {
    tag: &'static str,
    attributes: Vec<(&'static str, Value)>,
    /// Words added to the class while their value is true.
    classes: Vec<(&'static str, Value)>,
    properties: Vec<(&'static str, Value)>,
    handlers: Vec<(&'static str, Handler)>,
    inside: Vec<View>,
}

/// An element of this name, empty.
#[must_use]
pub fn element(tag: &'static str) -> Element {
    Element(Box::new(Parts {
        tag,
        attributes: Vec::new(),
        classes: Vec::new(),
        properties: Vec::new(),
        handlers: Vec::new(),
        inside: Vec::new(),
    }))
}

/// A button.
#[must_use]
pub fn button() -> Element {
    element("button").with("type", "button")
}

/// A button that looks like a command.
#[must_use]
pub fn command() -> Element {
    button().class("command")
}

impl Element {
    /// With an attribute; `true` is an attribute without words, `false` and `None` are none.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.0.attributes.push((name, value.into()));
        self
    }

    /// With an attribute that has no words.
    #[must_use]
    pub fn mark(self, name: &'static str) -> Self {
        self.with(name, "")
    }

    /// Of this class.
    #[must_use]
    pub fn class(self, words: impl Into<Value>) -> Self {
        self.with("class", words)
    }

    /// Of this class too, while the value is true.
    #[must_use]
    pub fn class_if(mut self, words: &'static str, value: impl Into<Value>) -> Self {
        self.0.classes.push((words, value.into()));
        self
    }

    /// With a property of the element itself, such as what a field holds now.
    #[must_use]
    pub fn property(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.0.properties.push((name, value.into()));
        self
    }

    /// Does this when that happens.
    #[must_use]
    pub fn on(mut self, event: &'static str, work: impl Fn(Event) + 'static) -> Self {
        self.0.handlers.push((event, Rc::new(work)));
        self
    }

    /// Does this when it is pressed.
    #[must_use]
    pub fn on_press(self, work: impl Fn() + 'static) -> Self {
        self.on("click", move |_| work())
    }

    /// Holds this after what it holds already.
    #[must_use]
    pub fn holds(mut self, view: impl Into<View>) -> Self {
        self.0.inside.push(view.into());
        self
    }
}

/// What the field or list at which it happened holds.
#[must_use]
pub fn value_of(event: &Event) -> String {
    property_of(event, "value").as_string().unwrap_or_default()
}

/// Whether what it happened at is checked.
#[must_use]
pub fn is_checked(event: &Event) -> bool {
    property_of(event, "checked").is_truthy()
}

/// How many presses of mouse, pen or finger in a row this is; none for a press by a key.
#[must_use]
pub fn presses(event: &Event) -> i32 {
    event.dyn_ref::<web_sys::UiEvent>().map_or(0, web_sys::UiEvent::detail)
}

fn property_of(event: &Event, name: &str) -> wasm_bindgen::JsValue {
    let target = event.target().map(wasm_bindgen::JsValue::from).unwrap_or_default();
    js_sys::Reflect::get(&target, &name.into()).unwrap_or_default()
}

impl View {
    /// Nothing to see.
    #[must_use]
    pub fn nothing() -> Self {
        Self(Kind::Nothing)
    }

    /// This, and that after it.
    #[must_use]
    pub fn and(self, view: impl Into<View>) -> Self {
        let mut all = match self.0 {
            Kind::Nothing => Vec::new(),
            Kind::Several(all) => all,
            one => vec![Self(one)],
        };
        all.push(view.into());
        Self(Kind::Several(all))
    }
}

impl From<Element> for View {
    fn from(element: Element) -> Self {
        Self(Kind::Element(element))
    }
}

impl From<&'static str> for View {
    fn from(words: &'static str) -> Self {
        Self(Kind::Words(Words::Borrowed(words)))
    }
}

impl From<String> for View {
    fn from(words: String) -> Self {
        Self(Kind::Words(Words::Owned(words)))
    }
}

impl<T: Into<View>> From<Option<T>> for View {
    fn from(held: Option<T>) -> Self {
        held.map_or_else(View::nothing, Into::into)
    }
}

impl<T: Into<View>> From<Vec<T>> for View {
    fn from(views: Vec<T>) -> Self {
        views.into_iter().collect()
    }
}

impl<T: Into<View>, const COUNT: usize> From<[T; COUNT]> for View {
    fn from(views: [T; COUNT]) -> Self {
        views.into_iter().collect()
    }
}

impl<T: Into<View>> FromIterator<T> for View {
    fn from_iter<I: IntoIterator<Item = T>>(views: I) -> Self {
        Self(Kind::Several(views.into_iter().map(Into::into).collect()))
    }
}

impl<F: Fn() -> T + 'static, T: Into<View>> From<F> for View {
    fn from(work: F) -> Self {
        Self(Kind::Live(Box::new(move || work().into())))
    }
}

impl<T: Clone + Into<View> + 'static> From<Memo<T>> for View {
    fn from(value: Memo<T>) -> Self {
        Self(Kind::Live(Box::new(move || value.get().into())))
    }
}
