//! The drawing on the screen: layers handed to the browser when the plan changes, painted once per frame when anything
//! did.

use hobnail_core::network::Reach;
use hobnail_core::plan::{Footprint, Mark, PlanPoint};
use hobnail_core::study::Study;

use super::store::CANVAS;
use super::{App, words};
use crate::browser::document;
use crate::browser::painter::{Painter, Prepared, View};
use crate::canvas::camera::Camera;
use crate::canvas::layers::overlay::Selected;
use crate::canvas::layers::trees::{TREES_FROM_PX_PER_M, Window, trees};
use crate::canvas::layers::{furniture, land, marks, overlay, shed, streets};
use crate::canvas::palette;
use crate::canvas::picture::Layer;
use crate::canvas::room::Room;
use crate::canvas::scene::{Scene, Shed};
use crate::canvas::scene_of::{meters, scene_of};
use crate::input::ScreenPoint;
use crate::tools::Selection;
use crate::tools::near::is_inside;

/// Walks that are shown, in minutes, the widest first.
const SHED_MINUTES: [u32; 2] = [10, 5];

/// Room that a sign keeps free of other names.
const SIGN_RADIUS_PX: f64 = 6.0;

/// The canvas and what the browser holds of the drawing.
pub struct Stage {
    painter: Painter,
    scene: Scene,
    below: Vec<Prepared>,
    trees: Option<(Window, Prepared)>,
    above: Vec<Prepared>,
    /// Words, the most needed first.
    words: Vec<Prepared>,
    /// Where scale bar and arrow stand, from the left and the bottom of the screen.
    corner_px: (f64, f64),
}

impl Stage {
    /// A stage on the canvas with this id.
    ///
    /// # Errors
    /// A sentence, when the browser can not draw.
    pub fn on(id: &str) -> Result<Self, String> {
        Ok(Self {
            painter: Painter::on(id)?,
            scene: Scene::default(),
            below: Vec::new(),
            trees: None,
            above: Vec::new(),
            words: Vec::new(),
            corner_px: (100.0, 60.0),
        })
    }

    /// Takes the canvas's size on screen, in CSS pixels.
    pub fn fit_to_screen(&mut self) -> (f64, f64) {
        self.painter.fit_to_screen()
    }

    /// Puts scale bar and arrow so far from the left and the bottom of the screen.
    pub const fn put_furniture(&mut self, left_px: f64, bottom_px: f64) {
        self.corner_px = (left_px, bottom_px);
    }

    /// Hands the plan as it is now to the browser.
    pub fn take_plan(&mut self, study: &Study) {
        let sheds = SHED_MINUTES
            .into_iter()
            .filter_map(|minutes| shed_of(study, minutes))
            .collect();
        self.scene = scene_of(study.document(), study.alternative(), study.fabric(), sheds);
        let scene = &self.scene;
        let prepared = |layers: Vec<Layer>| layers.into_iter().map(Prepared::of).collect();
        self.below = prepared(vec![land::ground(scene), streets::streets(scene)]);
        self.trees = None;
        self.above = prepared(vec![land::boundaries(scene), shed::sheds(scene), marks::places(scene)]);
        self.words = prepared(vec![
            marks::names(scene),
            shed::minutes(scene),
            streets::names(scene),
            land::constraint_names(scene),
            land::labels(scene),
        ]);
    }

    /// Paints one frame.
    pub fn paint(&mut self, app: &App) {
        let camera = app.camera();
        self.note_view(camera);
        let view = View {
            matrix: camera.screen_from_m_matrix(),
            px_per_unit: camera.px_per_m(),
        };
        self.bring_trees(camera);
        self.painter.clear(palette::AROUND);
        for layer in &self.below {
            self.painter.paint(layer, &view);
        }
        if let Some((_, trees)) = &self.trees {
            self.painter.paint(trees, &view);
        }
        for layer in &self.above {
            self.painter.paint(layer, &view);
        }
        let mut room = Room::default();
        for place in &self.scene.places {
            if let Some(at) = marks::place_of_sign(&place.extent) {
                let at = camera.screen_from_m(at);
                room.take((at.x_px, at.y_px), SIGN_RADIUS_PX);
            }
        }
        for layer in &self.words {
            self.painter.paint_words(layer, &view, &mut room);
        }
        for layer in hand(app) {
            self.painter.paint(&Prepared::of(layer), &view);
        }
        let (_, height_px) = camera.size_px();
        let at = ScreenPoint::new(self.corner_px.0, height_px - self.corner_px.1);
        let bar = furniture::bar(camera.px_per_m(), 160.0, app.units());
        self.painter
            .paint(&Prepared::of(furniture::furniture(at, &bar)), &View::SCREEN);
    }

    /// Writes on the canvas how the plan lies on it, so that a test can point at a place of the plan: pixels per meter,
    /// and where the plan's origin appears.
    fn note_view(&self, camera: &Camera) {
        let origin = camera.screen_from_m((0.0, 0.0));
        let view = format!("{} {} {}", camera.px_per_m(), origin.x_px, origin.y_px);
        document::note(CANVAS, "data-view", &view);
    }

    /// Trees are many: they are made for what is in view and a margin, and only from near.
    fn bring_trees(&mut self, camera: &Camera) {
        if camera.px_per_m() < TREES_FROM_PX_PER_M {
            self.trees = None;
            return;
        }
        let visible = camera.visible();
        let window = Window {
            least: visible.least.to_m(),
            most: visible.most.to_m(),
        };
        let is_covered = self
            .trees
            .as_ref()
            .is_some_and(|(made_for, _)| made_for.contains(&window));
        if !is_covered {
            let made_for = window.grown();
            self.trees = Some((made_for, Prepared::of(trees(&self.scene, &made_for))));
        }
    }
}

/// Selection, hints and crosshair, the lowest first.
fn hand(app: &App) -> Vec<Layer> {
    let mut layers = Vec::new();
    if let Some(selected) = app.selection().and_then(|selection| selected(app, selection)) {
        layers.push(overlay::selection(&selected));
    }
    let units = app.units();
    layers.push(overlay::hints(&app.tool().hints(), &|length_m| {
        words::length(length_m, units)
    }));
    layers.extend(app.crosshair().map(overlay::crosshair));
    layers
}

fn selected(app: &App, selection: Selection) -> Option<Selected<'_>> {
    let study = app.study();
    match (selection, study.document().mark(study.alternative(), selection.mark())?) {
        (Selection::Street(_), Mark::Street(street)) => Some(Selected::Street(street, None)),
        (Selection::Vertex(_, index), Mark::Street(street)) => Some(Selected::Street(street, Some(index))),
        (_, Mark::Place(place)) => Some(Selected::Outline(match &place.footprint {
            Footprint::Point(point) => vec![*point],
            Footprint::Line(points) | Footprint::Area(points) => points.clone(),
        })),
        (Selection::Use(id), Mark::Use(mark)) => {
            let face = study
                .fabric()
                .face_of_mark
                .get(&id)
                .and_then(|face| study.fabric().face(*face));
            let outline = face.and_then(|face| face.outline.first()).cloned().unwrap_or_default();
            Some(Selected::Use(mark, outline))
        }
        _ => None,
    }
}

/// What is within so many minutes of a center; `None` without one.
fn shed_of(study: &Study, minutes: u32) -> Option<Shed> {
    study.walk().ok()?;
    let reach: Reach = study.walk_shed(minutes * 60);
    let network = study.network();
    let stretches: Vec<_> = reach
        .pieces()
        .iter()
        .map(|piece| meters(&network.stretch_points(*piece)))
        .collect();
    let mut ends: Vec<(f64, f64)> = reach
        .frontier(network)
        .into_iter()
        .filter_map(|place| network.position_m(place))
        .collect();
    // The label stands at the northernmost end in the site, where it is least in the way.
    let site = &study.document().site.boundary;
    let is_in_site =
        |(x_m, y_m): &(f64, f64)| PlanPoint::checked_from_m(*x_m, *y_m).is_some_and(|at| is_inside(at, site));
    ends.sort_by(|one, other| {
        let order = is_in_site(other).cmp(&is_in_site(one));
        order.then(other.1.total_cmp(&one.1)).then(one.0.total_cmp(&other.0))
    });
    (!stretches.is_empty()).then_some(Shed {
        minutes,
        stretches,
        ends,
    })
}
