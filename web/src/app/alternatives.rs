//! Alternatives of the plan: as small plans, copied, moved, deleted; and the map of the streets that they share.

use hobnail_core::figures::display::grouped;
use hobnail_core::plan::agreement::{NEAR_M, Stretch, street_agreement};
use hobnail_core::plan::document::{Alternative, UnitSystem};
use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::land::{Footprint, PlaceKind};
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{AlternativeId, Document, Edit, Mark, PlanPoint};
use hobnail_core::say;
use hobnail_core::study::Study;
use hobnail_core::text::parted;

use super::editor::drawn::{Drawing, Ink, Paper};
use super::maps::{Legend, Line, Map, Mark as Sign};
use super::{App, words};
use crate::canvas::layers::routes;
use crate::canvas::scene;

/// An alternative as a small plan.
#[derive(Clone, Debug, PartialEq)]
pub struct AlternativeShown {
    /// Which it is.
    pub id: AlternativeId,
    /// Its name.
    pub name: String,
    /// Who drew it, and how much.
    pub about: String,
    /// Site, streets, painted land and centers.
    pub drawing: Drawing,
    /// Whether it is in view.
    pub is_shown: bool,
}

/// Half the side of a square that stands for painted land, and for a center, in millimeters.
const LAND_MM: i32 = 22_000;
const CENTER_MM: i32 = 14_000;

impl App {
    /// The alternatives, each as a small plan.
    #[must_use]
    pub fn alternatives(&self) -> Vec<AlternativeShown> {
        let document = self.study.document();
        let view_mm = view_of(document);
        let shown = |(id, held): (&AlternativeId, &Alternative)| AlternativeShown {
            id: *id,
            name: held.name.clone(),
            about: about(held),
            drawing: small_plan(document, held, view_mm),
            is_shown: *id == self.study.alternative(),
        };
        document.alternatives.iter().map(shown).collect()
    }

    /// Copies the alternative in view and shows the copy.
    pub fn copy_alternative(&mut self) {
        let alternatives = &self.study.document().alternatives;
        let last = alternatives.keys().next_back();
        let id = last.and_then(|last| last.0.checked_add(1)).map(AlternativeId);
        let (Some(id), Some(held)) = (id, alternatives.get(&self.study.alternative())) else {
            return;
        };
        let mut copy = held.clone();
        copy.name = name_of_copy(&held.name, alternatives.values().map(|other| other.name.as_str()));
        self.step_with(say!("page-step-copy-alternative"), vec![put(id, None, Some(copy))]);
        self.show_alternative(id);
    }

    /// Lets the alternative in view change places with the one before it.
    pub fn move_alternative_earlier(&mut self) {
        let (document, later) = (self.study.document(), self.study.alternative());
        let before = document.alternatives.iter().rfind(|(id, _)| **id < later);
        let (Some((earlier, before)), Some(after)) = (before, document.alternatives.get(&later)) else {
            return;
        };
        let earlier = *earlier;
        let edits = vec![
            put(earlier, Some(before.clone()), Some(after.clone())),
            put(later, Some(after.clone()), Some(before.clone())),
        ];
        self.step_with(say!("page-step-move-alternative"), edits);
        self.show_alternative(earlier);
    }

    /// Deletes the alternative in view, unless it is the last one, and shows the one before it.
    pub fn delete_alternative(&mut self) {
        let (document, shown) = (self.study.document(), self.study.alternative());
        let others = || document.alternatives.keys().filter(|id| **id != shown);
        let next = others().rfind(|id| **id < shown).or_else(|| others().next());
        let Some(next) = next.copied() else {
            return self.warn(say!("page-alternative-last"));
        };
        let held = document.alternatives.get(&shown).cloned();
        self.show_alternative(next);
        self.step_with(say!("page-step-delete-alternative"), vec![put(shown, held, None)]);
    }

    /// Shows another alternative where a step took the one in view away.
    pub(super) fn leave_lost_alternative(&mut self) {
        let alternatives = &self.study.document().alternatives;
        let first = alternatives.keys().next().copied();
        if !alternatives.contains_key(&self.study.alternative())
            && let Some(first) = first
        {
            self.study.show_alternative(first);
            self.changes = super::Changes::ALL;
        }
    }
}

/// A name like that of what was copied first, numbered from the second copy on.
fn name_of_copy<'a>(name: &str, others: impl Iterator<Item = &'a str>) -> String {
    let copy = [" (", say!("page-copy")].concat();
    let begin = parted(name, &copy).map_or(name, |(begin, _)| begin).to_owned() + &copy;
    let copies = others.filter(|other| other.starts_with(&begin)).count();
    let number = if copies == 0 {
        String::new()
    } else {
        [" ", &(copies + 1).to_string()].concat()
    };
    [&begin, number.as_str(), ")"].concat()
}

const fn put(id: AlternativeId, before: Option<Alternative>, after: Option<Alternative>) -> Edit {
    Edit::Alternative { id, before, after }
}

/// The streets that are to be there, in whole steps of an alternative.
fn streets(held: &Alternative) -> impl Iterator<Item = Vec<PlanPoint>> {
    let streets = held.marks.values().filter_map(Mark::as_street);
    let streets = streets.filter(|street| street.status != Status::Removed);
    streets.map(|street| flatten(&street.line))
}

fn about(held: &Alternative) -> String {
    let count = say!("count-streets", count = streets(held).count());
    if held.table.is_empty() {
        count
    } else {
        [&held.table, ", ", &count].concat()
    }
}

/// What all small plans show: the site, or where nothing bounds it all that is drawn, with a margin.
fn view_of(document: &Document) -> [i32; 4] {
    let mut points = document.site.boundary.clone();
    if points.is_empty() {
        points.extend(document.alternatives.values().flat_map(streets).flatten());
    }
    let least = |pick: fn(&PlanPoint) -> i32| points.iter().map(pick).min().unwrap_or(-100_000);
    let most = |pick: fn(&PlanPoint) -> i32| points.iter().map(pick).max().unwrap_or(100_000);
    let (left, right) = (least(|at| at.x_mm), most(|at| at.x_mm));
    let (bottom, top) = (least(|at| at.y_mm), most(|at| at.y_mm));
    let margin = (right.saturating_sub(left).max(top.saturating_sub(bottom)) / 20).max(10_000);
    let [left, high] = [left, top.saturating_neg()].map(|edge| edge.saturating_sub(margin));
    let width = right.saturating_add(margin).saturating_sub(left);
    let height = bottom.saturating_neg().saturating_add(margin).saturating_sub(high);
    [left, high, width, height]
}

fn small_plan(document: &Document, held: &Alternative, view_mm: [i32; 4]) -> Drawing {
    let mut paper = Paper::default();
    course(&mut paper, Ink::Walk, &document.site.boundary);
    for mark in held.marks.values() {
        match mark {
            Mark::Use(used) => square(&mut paper, Ink::Planted, used.anchor, LAND_MM),
            Mark::Place(place) if place.kind == PlaceKind::Center => {
                let at = match &place.footprint {
                    Footprint::Point(at) => Some(at),
                    Footprint::Line(points) | Footprint::Area(points) => points.first(),
                };
                if let Some(at) = at {
                    square(&mut paper, Ink::Person, *at, CENTER_MM);
                }
            }
            _ => {}
        }
    }
    for street in streets(held) {
        course(&mut paper, Ink::Edge, &street);
    }
    paper.finished(view_mm, 0, String::new())
}

pub(super) fn square(paper: &mut Paper, ink: Ink, at: PlanPoint, half_mm: i32) {
    let corner = [
        at.x_mm.saturating_sub(half_mm),
        at.y_mm.saturating_neg().saturating_sub(half_mm),
    ];
    paper.rectangle(ink, corner, [half_mm * 2; 2]);
}

/// A line through these points, north upward.
pub(super) fn course(paper: &mut Paper, ink: Ink, points: &[PlanPoint]) {
    let Some((first, rest)) = points.split_first() else {
        return;
    };
    let mut path = String::new();
    for point in rest {
        path += "L";
        path += &point.x_mm.to_string();
        path += " ";
        path += &point.y_mm.saturating_neg().to_string();
    }
    paper.put(ink, first.x_mm, first.y_mm.saturating_neg(), &path);
}

fn stretches(study: &Study) -> Vec<Stretch> {
    let alternatives: Vec<&Alternative> = study.document().alternatives.values().collect();
    street_agreement(&alternatives)
}

/// The class of width of streets that so many of all alternatives share.
fn class(shared: u32, all: u32) -> u8 {
    let most = u32::from(routes::MOST);
    if all <= most {
        shared as u8
    } else {
        (shared * most).div_ceil(all) as u8
    }
}

fn count_of(study: &Study) -> u32 {
    study.document().alternatives.len() as u32
}

/// The streets of all alternatives, each as wide as there are alternatives that have one there.
#[must_use]
pub fn shared_streets(study: &Study) -> Vec<(scene::Line, u8)> {
    let all = count_of(study);
    if all < 2 {
        return Vec::new();
    }
    let stretches = stretches(study).into_iter();
    stretches
        .map(|stretch| (stretch.line, class(stretch.alternatives, all)))
        .collect()
}

/// A length in whole meters or feet, thousands parted.
fn length(length_m: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric => grouped(length_m, 0) + " m",
        UnitSystem::UsCustomary => say!("page-feet", number = grouped(length_m / words::METERS_PER_FOOT, 0)),
    }
}

/// What the map of shared streets means, and how long they are.
#[must_use]
pub fn shared_legend(study: &Study) -> Legend {
    let (all, units) = (count_of(study), study.document().settings.units);
    let mut legend = Legend {
        map: Map::Shared,
        ..Legend::default()
    };
    if all < 2 {
        legend.note = Some(say!("page-alternative-alone").to_owned());
        return legend;
    }
    let stretches = stretches(study);
    for shared in (1..=all).rev() {
        let of_these = stretches.iter().filter(|stretch| stretch.alternatives == shared);
        // Each of them draws its own line.
        let length_m = of_these.map(Stretch::length_m).sum::<f64>() / f64::from(shared);
        if length_m > 0.0 {
            legend.lines.push(Line {
                mark: Sign::Walks(class(shared, all)),
                words: say!("page-shared-in", shared = shared, all = all),
                value: Some(length(length_m, units)),
            });
        }
    }
    let near = words::length(NEAR_M, units);
    legend.note = Some(say!("page-shared-near", length = near));
    legend
}

#[cfg(test)]
mod tests;
