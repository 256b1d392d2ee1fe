//! Paths as the browser holds them. A path that takes the place of another keeps the pieces that are the same, so that a
//! drag hands over what it moved and not the whole plan.

use std::cell::{OnceCell, RefCell};
use std::rc::Rc;
use std::sync::Arc;

use web_sys::Path2d;

use crate::canvas::picture::{Path, Piece};

/// A path, and what the browser made of it once it was needed.
pub struct Held {
    path: Arc<Path>,
    /// `None` only where the browser has no paths.
    made: OnceCell<Option<Made>>,
    /// What was made last in its place.
    before: RefCell<Option<Rc<Self>>>,
}

struct Made {
    whole: Path2d,
    pieces: Vec<Path2d>,
}

impl Held {
    /// The path, held for a layer: what `last` holds, where that is the same path, since shapes that share a path follow
    /// each other; or what stood in its place `before`, where that is equal; else anew.
    pub fn of(path: Arc<Path>, last: &mut Option<Rc<Self>>, before: Option<&Rc<Self>>) -> Rc<Self> {
        match (&last, before) {
            (Some(held), _) if Arc::ptr_eq(&held.path, &path) => Rc::clone(held),
            (_, Some(before)) if before.path == path => Rc::clone(before),
            _ => Rc::clone(last.insert(Rc::new(Self {
                path,
                made: OnceCell::new(),
                before: RefCell::new(before.and_then(Self::made_last)),
            }))),
        }
    }

    /// The browser's path; `None` only where it has no paths.
    pub fn made(&self) -> Option<&Path2d> {
        let made = self.made.get_or_init(|| {
            let before = self.before.take();
            Made::of(&self.path, before.as_deref())
        });
        made.as_ref().map(|made| &made.whole)
    }

    /// This one where it was made, else what was made last in its place.
    fn made_last(self: &Rc<Self>) -> Option<Rc<Self>> {
        match self.made.get() {
            Some(_) => Some(Rc::clone(self)),
            None => self.before.borrow().clone(),
        }
    }
}

impl Made {
    fn of(path: &Path, before: Option<&Held>) -> Option<Self> {
        let old = before.map(|before| before.path.pieces()).unwrap_or_default();
        let old_made = before.and_then(|before| before.made.get()?.as_ref());
        let mut pieces = Vec::new();
        for (place, piece) in path.pieces().into_iter().enumerate() {
            let same = old_made.filter(|_| old.get(place) == Some(&piece));
            match same.and_then(|made| made.pieces.get(place)) {
                Some(held) => pieces.push(held.clone()),
                None => pieces.push(path_2d(piece)?),
            }
        }
        let whole = match pieces.as_slice() {
            [only] => only.clone(),
            many => {
                let whole = Path2d::new().ok()?;
                for piece in many {
                    whole.add_path(piece);
                }
                whole
            }
        };
        Some(Self { whole, pieces })
    }
}

fn path_2d(piece: Piece<'_>) -> Option<Path2d> {
    let held = Path2d::new().ok()?;
    for (points, is_closed) in piece.runs() {
        if let Some((first, rest)) = points.split_first() {
            held.move_to(first.0, first.1);
            for point in rest {
                held.line_to(point.0, point.1);
            }
            if is_closed {
                held.close_path();
            }
        }
    }
    for circle in piece.circles {
        let (x, y) = circle.middle;
        held.move_to(x + circle.radius, y);
        // Radii are never negative.
        let _ = held.arc(x, y, circle.radius, 0.0, std::f64::consts::TAU);
    }
    Some(held)
}
