//! What stands in the page of a view, and how it is changed into what another view says.
//!
//! Elements that are alike stay the same elements, so the keyboard stays where it is and what was typed stays typed.

use std::cell::RefCell;
use std::rc::Rc;

use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Node;

use super::{Element, Event, Handler, Kind, Value, View, Words};
use crate::live::{self, Watch};

/// Names elements of drawings; see Scalable Vector Graphics 2, section 5.1.
const DRAWINGS: &str = "http://www.w3.org/2000/svg";

/// Where something stands: within the parent, before a neighbor or else at its end.
#[derive(Clone)]
struct Place {
    parent: Node,
    before: Option<Node>,
    /// Whether the parent belongs to a drawing.
    is_drawing: bool,
}

/// What stands in the page.
#[derive(Default)]
enum Shown {
    #[default]
    Nothing,
    Words(Node, Words),
    Element(Box<ShownElement>),
    Several(Vec<Shown>),
    Live(ShownLive),
}

struct ShownElement {
    node: web_sys::Element,
    tag: &'static str,
    attributes: Vec<&'static str>,
    watches: Vec<Watch>,
    handlers: Vec<Listening>,
    inside: Vec<Shown>,
}

/// What follows what it reads; an empty text after it keeps its place.
struct ShownLive {
    end: Node,
    inside: Rc<RefCell<Shown>>,
    watch: Option<Watch>,
}

struct Listening {
    event: &'static str,
    /// What is done now; the page's listener stays the same while it changes.
    work: Rc<RefCell<Handler>>,
    listener: Closure<dyn Fn(Event)>,
}

/// Shows the view at the end of the page's body, as long as the page lives, and follows changes from now on.
pub fn mount(view: View) {
    let Some(body) = crate::browser::document::document().and_then(|document| document.body()) else {
        return;
    };
    live::call_to_catch_up(|| crate::browser::document::after_this(async { live::catch_up() }));
    let place = Place {
        parent: body.into(),
        before: None,
        is_drawing: false,
    };
    std::mem::forget(Shown::new(view, &place));
}

impl Place {
    fn put(&self, node: &Node) {
        // A node that was just made can be put anywhere.
        let _ = self.parent.insert_before(node, self.before.as_ref());
    }

    fn document(&self) -> Option<web_sys::Document> {
        self.parent.owner_document()
    }
}

impl Shown {
    fn new(view: View, place: &Place) -> Self {
        let Some(document) = place.document() else {
            return Self::Nothing;
        };
        match view.0 {
            Kind::Nothing => Self::Nothing,
            Kind::Words(words) => {
                let node = document.create_text_node(&words).into();
                place.put(&node);
                Self::Words(node, words)
            }
            Kind::Element(element) => ShownElement::new(element, place, &document)
                .map_or(Self::Nothing, |shown| Self::Element(Box::new(shown))),
            Kind::Several(views) => Self::Several(views.into_iter().map(|view| Self::new(view, place)).collect()),
            Kind::Live(work) => {
                let end: Node = document.create_text_node("").into();
                place.put(&end);
                let mut shown = ShownLive {
                    end,
                    inside: Rc::new(RefCell::new(Self::Nothing)),
                    watch: None,
                };
                shown.follow(work, place.is_drawing);
                Self::Live(shown)
            }
        }
    }

    /// Becomes what this view says.
    fn become_(&mut self, view: View, place: &Place) {
        match (&mut *self, view.0) {
            (Self::Nothing, Kind::Nothing) => {}
            (Self::Words(node, held), Kind::Words(words)) => {
                if *held != words {
                    node.set_node_value(Some(&words));
                    *held = words;
                }
            }
            (Self::Element(shown), Kind::Element(element)) if shown.tag == element.0.tag => {
                shown.become_(element, place.is_drawing);
            }
            (Self::Several(shown), Kind::Several(views)) => become_all(shown, views, place),
            (Self::Live(shown), Kind::Live(work)) => shown.follow(work, place.is_drawing),
            (_, kind) => {
                std::mem::replace(self, Self::Nothing).leave();
                *self = Self::new(View(kind), place);
            }
        }
    }

    /// The first of its nodes.
    fn first(&self) -> Option<Node> {
        match self {
            Self::Nothing => None,
            Self::Words(node, _) => Some(node.clone()),
            Self::Element(shown) => Some(shown.node.clone().into()),
            Self::Several(all) => all.iter().find_map(Self::first),
            Self::Live(shown) => Some(shown.inside.borrow().first().unwrap_or_else(|| shown.end.clone())),
        }
    }

    /// Leaves the page.
    fn leave(self) {
        match self {
            Self::Nothing => {}
            Self::Words(node, _) => take_out(&node),
            Self::Element(shown) => shown.node.remove(),
            Self::Several(all) => all.into_iter().for_each(Self::leave),
            Self::Live(mut shown) => {
                drop(shown.watch.take());
                shown.inside.take().leave();
                take_out(&shown.end);
            }
        }
    }
}

fn take_out(node: &Node) {
    if let Some(parent) = node.parent_node() {
        // It is one of its parent's.
        let _ = parent.remove_child(node);
    }
}

/// Each becomes what stands in its place; what is left over leaves, what is missing is added.
fn become_all(shown: &mut Vec<Shown>, views: Vec<View>, place: &Place) {
    while shown.len() > views.len() {
        if let Some(last) = shown.pop() {
            last.leave();
        }
    }
    let mut views: Vec<Option<View>> = views.into_iter().map(Some).collect();
    let added = views.split_off(shown.len());
    // From the last to the first, so that each knows what it stands before.
    let mut here = place.clone();
    for (one, view) in shown.iter_mut().zip(&mut views).rev() {
        if let Some(view) = view.take() {
            one.become_(view, &here);
        }
        here.before = one.first().or(here.before);
    }
    shown.extend(added.into_iter().flatten().map(|view| Shown::new(view, place)));
}

impl ShownLive {
    fn follow(&mut self, work: Box<dyn Fn() -> View>, is_drawing: bool) {
        drop(self.watch.take());
        let (end, inside) = (self.end.clone(), Rc::clone(&self.inside));
        self.watch = Some(live::watch(move || {
            let view = work();
            let Some(parent) = end.parent_node() else { return };
            let place = Place {
                parent,
                before: Some(end.clone()),
                is_drawing,
            };
            inside.borrow_mut().become_(view, &place);
        }));
    }
}

impl ShownElement {
    fn new(element: Element, place: &Place, document: &web_sys::Document) -> Option<Self> {
        let tag = element.0.tag;
        let is_drawing = place.is_drawing || tag == "svg";
        let made = if is_drawing {
            document.create_element_ns(Some(DRAWINGS), tag)
        } else {
            document.create_element(tag)
        };
        let mut shown = Self {
            // Only a name that is none cannot be made, and names stand in the panels.
            node: made.ok()?,
            tag,
            attributes: Vec::new(),
            watches: Vec::new(),
            handlers: Vec::new(),
            inside: Vec::new(),
        };
        shown.become_(element, place.is_drawing);
        place.put(&shown.node);
        Some(shown)
    }

    fn become_(&mut self, element: Element, is_in_drawing: bool) {
        let parts = *element.0;
        self.watches.clear();
        let names: Vec<&'static str> = parts.attributes.iter().map(|(name, _)| *name).collect();
        for name in &self.attributes {
            if !names.contains(name) {
                // Names stand in the panels.
                let _ = self.node.remove_attribute(name);
            }
        }
        self.attributes = names;
        let mut classes = parts.classes;
        for (name, value) in parts.attributes {
            let value = if name == "class" && !classes.is_empty() {
                together(value, std::mem::take(&mut classes))
            } else {
                value
            };
            self.follow(value, move |node, value| put_attribute(node, name, value));
        }
        if !classes.is_empty() {
            self.attributes.push("class");
            let value = together(Value::None, classes);
            self.follow(value, |node, value| put_attribute(node, "class", value));
        }
        self.listen(parts.handlers);
        let inside = Place {
            parent: self.node.clone().into(),
            before: None,
            is_drawing: is_in_drawing || self.tag == "svg",
        };
        become_all(&mut self.inside, parts.inside, &inside);
        // What a list of choices holds can only be set once it has them.
        for (name, value) in parts.properties {
            self.follow(value, move |node, value| put_property(node, name, value));
        }
    }

    fn follow(&mut self, value: Value, put: impl Fn(&web_sys::Element, Value) + 'static) {
        match value {
            Value::Live(work) => {
                let node = self.node.clone();
                self.watches.push(live::watch(move || put(&node, work())));
            }
            fixed => put(&self.node, fixed),
        }
    }

    fn listen(&mut self, handlers: Vec<(&'static str, Handler)>) {
        let is_wanted = |event: &str| handlers.iter().any(|(name, _)| *name == event);
        self.handlers.retain(|held| {
            let is_wanted = is_wanted(held.event);
            if !is_wanted {
                let listener = held.listener.as_ref().unchecked_ref();
                // It was added with the same name.
                let _ = self.node.remove_event_listener_with_callback(held.event, listener);
            }
            is_wanted
        });
        for (event, work) in handlers {
            match self.handlers.iter().find(|held| held.event == event) {
                Some(held) => *held.work.borrow_mut() = work,
                None => self.handlers.push(listening(&self.node, event, work)),
            }
        }
    }
}

fn listening(node: &web_sys::Element, event: &'static str, work: Handler) -> Listening {
    let work = Rc::new(RefCell::new(work));
    let held = Rc::clone(&work);
    let listener = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        let work = Rc::clone(&held.borrow());
        // It may happen while something is being shown, such as when what has the keyboard leaves the page.
        live::unheard(|| work(event));
    });
    // A name and a listener are all that it can be refused for.
    let _ = node.add_event_listener_with_callback(event, listener.as_ref().unchecked_ref());
    Listening { event, work, listener }
}

/// The classes of an element with those that come and go.
fn together(fixed: Value, classes: Vec<(&'static str, Value)>) -> Value {
    Value::Live(Box::new(move || {
        let mut words = match now(&fixed) {
            Value::Words(words) => words.into_owned(),
            _ => String::new(),
        };
        for (class, value) in &classes {
            if matches!(now(value), Value::Flag(true)) {
                words.push(' ');
                words.push_str(class);
            }
        }
        words.into()
    }))
}

/// The value at this moment.
fn now(value: &Value) -> Value {
    match value {
        Value::None => Value::None,
        Value::Words(words) => Value::Words(words.clone()),
        Value::Flag(is_so) => Value::Flag(*is_so),
        Value::Live(work) => work(),
    }
}

fn put_attribute(node: &web_sys::Element, name: &str, value: Value) {
    let words = match value {
        Value::Words(words) => words,
        Value::Flag(true) => Words::Borrowed(""),
        _ => {
            // Names stand in the panels.
            let _ = node.remove_attribute(name);
            return;
        }
    };
    if node.get_attribute(name).as_deref() != Some(&words) {
        // As above.
        let _ = node.set_attribute(name, &words);
    }
}

fn put_property(node: &web_sys::Element, name: &str, value: Value) {
    let value: JsValue = match &value {
        Value::Words(words) => words.as_ref().into(),
        Value::Flag(is_so) => (*is_so).into(),
        _ => "".into(),
    };
    let name = name.into();
    // An element takes any property.
    if js_sys::Reflect::get(node, &name).as_ref() != Ok(&value) {
        let _ = js_sys::Reflect::set(node, &name, &value);
    }
}
