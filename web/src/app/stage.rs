//! The drawing on the screen: layers handed to the browser when the plan changes, painted once per frame when anything
//! did.

mod near;

use hobnail_core::measures::slopes;
use hobnail_core::measures::walk::destinations::Destination;
use hobnail_core::network::Reach;
use hobnail_core::plan::document::{Document, Topography, UnitSystem};
use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::{Footprint, Mark, PlanPoint};
use hobnail_core::say;
use hobnail_core::study::Study;
use std::sync::Arc;

use near::Near;

use super::maps::{FAR_MINUTES, Map, NEAR_MINUTES};
use super::places::Place;
use super::store::CANVAS;
use super::{App, alternatives, class_maps, detail_maps, maps, remarks, words};
use crate::browser::document;
use crate::browser::painter::{Painter, Prepared, View};
use crate::browser::pictures::Picture;
use crate::browser::still::MARGIN;
use crate::canvas::camera::Camera;
use crate::canvas::layers::lots::{BUILDINGS_FROM_PX_PER_M, lots};
use crate::canvas::layers::overlay::Selected;
use crate::canvas::layers::streets::STRIPS_FROM_PX_PER_M;
use crate::canvas::layers::trees::{TREES_FROM_PX_PER_M, trees};
use crate::canvas::layers::{
    classes, drafted, fronts, furniture, heights, land, marks, needs, nodes, overlay, routes, shed, streets,
};
use crate::canvas::palette;
use crate::canvas::picture::Layer;
use crate::canvas::room::Room;
use crate::canvas::scene::{Line, Scene, Shed};
use crate::canvas::scene_of::{meters, scene_of};
use crate::input::ScreenPoint;
use crate::tools::near::{is_inside, junctions};
use crate::tools::{Selection, ToolKind, shape};

/// Walks that are shown, in minutes, the widest first.
const SHED_MINUTES: [u32; 2] = [FAR_MINUTES, NEAR_MINUTES];

/// The layer that the picture lies on: the ground, so that it shows through what is traced and streets lie on it.
const PICTURE_ABOVE: usize = 1;

/// The layer that the ground's heights lie on, beneath the streets.
const HEIGHTS_ABOVE: usize = 2;

/// The layers that planting and lanes lie on.
const PLANTING_ABOVE: usize = 3;
const LANES_ABOVE: usize = 4;

/// Streets that a browser without the help of a graphics processor paints in every frame with their lots and trees: of the
/// village, which has a hundred, every fifth frame was missed while its view moved.
const MOST_WAYS_IN_A_FRAME: usize = 50;

/// Streets that it paints in two frames, nearly: of more, an edge of the screen may stand uncovered while the view moves,
/// rather than that the hand waits.
const MOST_WAYS_WITHOUT_A_WAIT: usize = 1_000;

/// How much of the screen that is at an edge; more is painted anew.
const MOST_UNCOVERED: f64 = 0.15;

/// Room that a sign keeps free of other names.
const SIGN_RADIUS_PX: f64 = 6.0;

/// The ground's heights as they are drawn: made anew only where the heights, the interval or the map are others.
#[derive(Default)]
struct Heights {
    held: Option<Topography>,
    mean_slope: f64,
    /// Where classes of slope end.
    borders: [i32; 4],
    /// The interval and its unit, and whether slopes are shown.
    made_for: Option<((f64, f64), bool)>,
    /// Slopes, and contours upon them.
    below: Vec<Prepared>,
    labels: Option<Prepared>,
}

impl Heights {
    fn take(&mut self, plan: &Document) {
        let topography = plan.topography.as_ref();
        if self.held.as_ref() != topography {
            *self = Self::default();
            self.held = topography.cloned();
            self.mean_slope = self
                .held
                .as_ref()
                .map_or(0.0, hobnail_core::report::drawing::ground::mean_slope);
            document::note(CANVAS, "data-contours", "");
        }
        let borders = slopes::borders(plan);
        if self.borders != borders {
            self.borders = borders;
            self.made_for = None;
        }
    }

    /// How far apart the contours are; nothing without any.
    fn words(&self, units: UnitSystem) -> Option<String> {
        let ((interval, _), _) = self.made_for?;
        let unit = match units {
            UnitSystem::Metric => "m",
            UnitSystem::UsCustomary => say!("drawing-feet"),
        };
        Some(say!("heights-contours", interval = interval.to_string() + " " + unit))
    }

    fn bring(&mut self, px_per_m: f64, units: UnitSystem, map: Map) {
        let Some(held) = &self.held else { return };
        let interval = heights::interval(px_per_m, self.mean_slope, units);
        let key = Some((interval, map == Map::Slope));
        if self.made_for == key {
            return;
        }
        self.made_for = key;
        let (lines, labels, count) = heights::contours(held, interval);
        self.below.clear();
        if map == Map::Slope {
            self.below.push(Prepared::of(heights::slopes(held, self.borders)));
        }
        self.below.push(Prepared::of(lines));
        self.labels = Some(Prepared::of(labels));
        // For tests: how many lines, and how far apart.
        document::note(
            CANVAS,
            "data-contours",
            &(count.to_string() + " " + &interval.0.to_string()),
        );
    }
}

/// The canvas and what the browser holds of the drawing.
pub struct Stage {
    painter: Painter,
    scene: Scene,
    below: Vec<Prepared>,
    planting: Near,
    lanes: Near,
    trees: Near,
    lots: Near,
    above: Vec<Prepared>,
    /// Ranks that keep free of names.
    disks: Vec<fronts::Disk>,
    /// Words, the most needed first.
    words: Vec<Prepared>,
    /// The ground's heights.
    heights: Heights,
    /// The picture under the drawing, once it is decoded.
    picture: Option<Picture>,
    /// The picture that is decoded or being decoded.
    asked_picture: Option<Arc<[u8]>>,
    /// Where scale bar and arrow stand, from the left and the bottom of the screen.
    corner_px: (f64, f64),
    /// How many times as large as usual words, signs and drawn lines are.
    scale: f64,
    /// How the plan lay when it was last painted straight onto the screen.
    whole_view: Option<View>,
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
            planting: Near::from(STRIPS_FROM_PX_PER_M),
            lanes: Near::from(STRIPS_FROM_PX_PER_M),
            trees: Near::from(TREES_FROM_PX_PER_M),
            lots: Near::from(BUILDINGS_FROM_PX_PER_M),
            above: Vec::new(),
            disks: Vec::new(),
            words: Vec::new(),
            heights: Heights::default(),
            picture: None,
            asked_picture: None,
            corner_px: (100.0, 60.0),
            scale: 1.0,
            whole_view: None,
        })
    }

    /// Takes the canvas's size on screen, in CSS pixels.
    pub fn fit_to_screen(&mut self) -> (f64, f64) {
        self.painter.fit_to_screen()
    }

    /// Draws words, signs and lines so many times as large as usual: as the page's own text is.
    pub fn draw_larger(&mut self, scale: f64) {
        self.scale = scale;
        // For tests, as the view.
        document::note(CANVAS, "data-scale", &scale.to_string());
        self.painter.draw_larger(scale);
    }

    /// Puts scale bar and arrow into the lower left of what is seen of the drawing, by its left, its right and the height of
    /// what lies below; keeps words clear of a card in the upper right corner, by its left and its bottom, and of the panel
    /// on the left, by its top and its bottom.
    pub const fn put_furniture(
        &mut self,
        seen_px: (f64, f64),
        bottom_px: f64,
        card_px: (f64, f64),
        rail_px: (f64, f64),
    ) {
        self.corner_px = (seen_px.0 + 16.0, bottom_px + 14.0);
        self.painter.keep_words_in(seen_px, card_px, rail_px);
    }

    /// Whether these bytes are of a picture that was not asked for yet; from here on it is.
    pub fn asks_for_picture(&mut self, bytes: Option<&Arc<[u8]>>) -> bool {
        let is_same = match (&self.asked_picture, bytes) {
            (Some(asked), Some(bytes)) => Arc::ptr_eq(asked, bytes),
            (None, None) => true,
            _ => false,
        };
        if !is_same {
            self.asked_picture = bytes.cloned();
            self.picture = None;
        }
        !is_same && bytes.is_some()
    }

    /// Takes a picture that was decoded; one that is no longer asked for is dropped.
    pub fn take_picture(&mut self, picture: Picture) {
        if self.asked_picture.as_ref().is_some_and(|bytes| picture.is_of(bytes)) {
            self.picture = Some(picture);
        }
    }

    /// Hands the plan as it is now to the browser.
    pub fn take_plan(&mut self, app: &App) {
        let study = app.study();
        self.scene = scene_of(&study.seen(), study.alternative(), study.fabric());
        self.heights.take(study.document());
        match app.map() {
            Map::Plain => {}
            Map::Walk(destination) => {
                let sheds = SHED_MINUTES.into_iter();
                self.scene.sheds = sheds
                    .filter_map(|minutes| shed_of(study, destination, minutes))
                    .collect();
            }
            Map::Five => self.scene.needs = needs_of(study),
            Map::Counted(_) => self.scene.nodes = maps::nodes(study, app.map()),
            Map::Routes => self.scene.routes = detail_maps::routes(study),
            Map::Mix => self.scene.needs = detail_maps::mix(study),
            Map::Indirect => self.scene.fronts = detail_maps::fronts(study),
            Map::Shared => {
                self.scene.routes = alternatives::shared_streets(study);
                // What is built would stand between lines that are told by their width.
                self.scene.is_bare = true;
            }
            Map::Density | Map::Phases | Map::Sections | Map::Owners | Map::Ground | Map::Slope => {
                // The legend is the panel's.
                let _ = class_maps::lay(study, app.map(), &mut self.scene);
            }
        }
        if app.map() == Map::Walk(Destination::Center) {
            self.scene.best = detail_maps::best(study);
        }
        let scene = &self.scene;
        let prepared = |before: &[Prepared], layers: Vec<Layer>| {
            let layers = layers.into_iter().enumerate();
            layers
                .map(|(place, layer)| Prepared::instead_of(before.get(place), layer))
                .collect()
        };
        let seen = study.seen();
        let drawn = seen.alternatives.get(&study.alternative());
        let mut paper = land::paper(scene);
        if let Some(drawn) = drawn {
            drafted::bubbles(&mut paper, drawn);
        }
        for near in [&mut self.planting, &mut self.lanes, &mut self.trees, &mut self.lots] {
            near.is_outdated = true;
        }
        if scene.is_ground {
            let buildings = classes::figure_and_ground(study.painted());
            self.below = prepared(&self.below, vec![land::paper(scene), buildings]);
            self.above = prepared(&self.above, vec![land::site(scene)]);
            self.disks = Vec::new();
            self.words = Vec::new();
            return;
        }
        self.below = prepared(
            &self.below,
            vec![
                paper,
                land::ground(scene),
                classes::washes(scene),
                streets::grounds(scene),
                streets::carriageways(scene),
                classes::bands(scene),
            ],
        );
        self.above = prepared(
            &self.above,
            vec![
                drawn.map(drafted::marks).unwrap_or_default(),
                land::boundaries(scene),
                shed::sheds(scene),
                needs::bands(scene),
                nodes::signs(scene),
                routes::bands(scene),
                // The larger sign lies below, so that one where the other stands is seen.
                shed::best(scene),
                marks::places(scene),
                fronts::fronts(scene),
                drawn.map(drafted::notes).unwrap_or_default(),
            ],
        );
        self.disks = fronts::disks(scene);
        self.words = prepared(
            &self.words,
            vec![
                marks::names(scene),
                drawn.map(drafted::note_words).unwrap_or_default(),
                shed::minutes(scene),
                needs::numbers(scene),
                streets::names(scene),
                classes::tags(scene),
                land::constraint_names(scene),
                if scene.is_bare {
                    Layer::default()
                } else {
                    land::labels(scene)
                },
                drawn.map(|drawn| drafted::words(&seen, drawn)).unwrap_or_default(),
            ],
        );
    }

    /// Paints one frame; `is_whole` where more than the view or what lies at hand has changed. Whether a large plan was only
    /// moved as it was painted, to be painted anew with `is_at_rest` once the view rests.
    ///
    /// A large plan is painted aside when its view moves first, and straight onto the screen while it changes, which a
    /// browser does beside our own work.
    pub fn paint(&mut self, app: &App, is_whole: bool, is_at_rest: bool) -> bool {
        let camera = app.camera();
        self.note_view(camera);
        let view = View {
            matrix: camera.screen_from_m_matrix(),
            px_per_unit: camera.px_per_m(),
        };
        let study = app.study();
        let is_still = self.is_large() && !is_whole;
        let most_uncovered = if self.scene.ways.len() > MOST_WAYS_WITHOUT_A_WAIT {
            MOST_UNCOVERED
        } else {
            0.0
        };
        let is_kept = is_still && !is_at_rest && self.painter.is_covered(&view, most_uncovered);
        let is_aside = is_still && !is_kept && (is_at_rest || self.whole_view != Some(view));
        if is_aside {
            let beside = self.painter.paint_aside(view);
            self.paint_plan(app, &beside);
        } else if !is_kept {
            self.paint_plan(app, &view);
        }
        if is_whole {
            self.painter.still = None;
            self.whole_view = Some(view);
        }
        let is_moved = (is_kept || is_aside) && self.painter.show_aside(&view, palette::AROUND);
        let scale = self.scale;
        // Words end where the scale bar does.
        let foot_px = camera.size_px().1 - self.corner_px.1;
        let mut room = Room::drawn_larger(scale).above(foot_px);
        let places = self.scene.places.iter();
        let signs = places.filter_map(|place| marks::place_of_sign(&place.extent));
        for at in signs.chain(self.scene.best) {
            let at = camera.screen_from_m(at);
            room.take((at.x_px, at.y_px), SIGN_RADIUS_PX);
        }
        let drawn = study.document().alternatives.get(&study.alternative());
        for (_, _, note) in drawn.into_iter().flat_map(remarks::numbered) {
            let at = camera.screen_from_m(note.at.to_m());
            room.take((at.x_px, at.y_px), SIGN_RADIUS_PX);
        }
        for disk in &self.disks {
            let at = camera.screen_from_m(disk.at);
            let (right_px, down_px) = disk.shift_px;
            room.take((at.x_px + right_px * scale, at.y_px + down_px * scale), fronts::DISK_PX);
        }
        let at = ScreenPoint::new(self.corner_px.0 / scale, foot_px / scale);
        let mut bar = furniture::bar(camera.px_per_m() / scale, 160.0, app.units());
        bar.contours = self.heights.words(app.units()).filter(|_| !self.scene.is_ground);
        let furniture = furniture::furniture(at, &bar);
        room.take_words_of(&furniture);
        for layer in &self.words {
            self.painter.paint_words(layer, &view, &mut room);
        }
        if let Some(labels) = self.heights.labels.as_ref().filter(|_| !self.scene.is_ground) {
            self.painter.paint_words(labels, &view, &mut room);
        }
        for layer in hand(app) {
            self.painter.paint(&Prepared::of(layer), &view);
        }
        self.painter.paint(&Prepared::of(furniture), &View::of_screen(scale));
        is_moved
    }

    /// Whether to paint it may take longer than a frame.
    const fn is_large(&self) -> bool {
        self.scene.ways.len() > MOST_WAYS_IN_A_FRAME
    }

    /// Paints the plan but for its words.
    fn paint_plan(&mut self, app: &App, view: &View) {
        let (camera, study) = (app.camera(), app.study());
        let margin = if self.is_large() { MARGIN } else { 0.0 };
        if !self.scene.is_ground {
            let scene = &self.scene;
            self.planting
                .bring(camera, margin, |window| streets::planting(scene, window));
            self.lanes.bring(camera, margin, |window| streets::lanes(scene, window));
        }
        if !self.scene.is_bare {
            self.lots
                .bring(camera, margin, |window| lots(study.document(), study.painted(), window));
            self.trees.bring(camera, margin, |window| trees(&self.scene, window));
        }
        self.heights
            .bring(camera.px_per_m() / self.scale, app.units(), app.map());
        self.painter.clear(palette::AROUND);
        for (place, layer) in self.below.iter().enumerate() {
            self.painter.paint(layer, view);
            if self.scene.is_ground {
                continue;
            }
            if place == HEIGHTS_ABOVE {
                for layer in &self.heights.below {
                    self.painter.paint(layer, view);
                }
            }
            let near = match place {
                PLANTING_ABOVE => self.planting.held.as_ref(),
                LANES_ABOVE => self.lanes.held.as_ref(),
                _ => None,
            };
            if let Some((_, layer)) = near {
                self.painter.paint(layer, view);
            }
            if place == PICTURE_ABOVE
                && let Some((image, corners)) = app.base_image()
                && let Some(straight) = self.picture.as_mut().and_then(|picture| picture.straight(&corners))
            {
                self.painter
                    .picture(straight, f64::from(image.opacity_thousandths) / 1000.0, view);
            }
        }
        for near in [&self.lots, &self.trees] {
            if let Some((_, layer)) = near.held.as_ref().filter(|_| !self.scene.is_bare) {
                self.painter.paint(layer, view);
            }
        }
        for layer in &self.above {
            self.painter.paint(layer, view);
        }
    }

    /// Writes on the canvas how the plan lies on it, so that a test can point at a place of the plan: pixels per meter,
    /// and where the plan's origin appears.
    fn note_view(&self, camera: &Camera) {
        let origin = camera.screen_from_m((0.0, 0.0));
        let view = format!("{} {} {}", camera.px_per_m(), origin.x_px, origin.y_px);
        document::note(CANVAS, "data-view", &view);
    }
}

/// Selection, hints and crosshair, the lowest first.
fn hand(app: &App) -> Vec<Layer> {
    let mut layers = Vec::new();
    if let Some(selected) = app.selection().and_then(|selection| selected(app, selection)) {
        layers.push(overlay::selection(&selected));
    } else if app.tool().kind() == ToolKind::Area && app.drafts().area.is_none() {
        // The boundary shows its corners while it is what is drawn.
        let site = app.study().document().site.boundary.clone();
        layers.push(overlay::selection(&Selected::Shape(Footprint::Area(site))));
    }
    let study = app.study();
    if let Some(Selection::Street(id) | Selection::Vertex(id, _)) = app.selection()
        && let Some(alternative) = study.document().alternatives.get(&study.alternative())
        && !study.is_in_gesture()
    {
        layers.push(overlay::junctions(&junctions(alternative, id, None)));
    }
    for id in app.picked() {
        let mark = study.document().mark(study.alternative(), *id);
        let one = match mark {
            Some(Mark::Use(held)) => Some(Selected::Use(held, app.points_of(*id))),
            other => other.and_then(one_of_many),
        };
        layers.extend(one.map(|one| overlay::selection(&one)));
    }
    let units = app.units();
    for at in app.circles_at() {
        layers.push(drafted::circle(at, units));
    }
    let land = app.tool().hints().land;
    if !land.is_empty() {
        let size = words::area(shape::area_m2(&land), units);
        layers.push(drafted::size(&meters(&land), size));
    }
    layers.push(overlay::hints(&app.tool().hints(), &|said| words::said(said, units)));
    layers.extend(app.pointed().map(overlay::pointed));
    layers.extend(app.lots_beside().as_ref().map(overlay::pointed));
    layers.extend(app.cut_line().as_ref().map(overlay::pointed));
    layers.extend(
        app.pointed_side()
            .map(|hints| overlay::hints(&hints, &|_| String::new())),
    );
    if app.base_image_shown().awaits.is_some()
        && let Some((_, corners)) = app.base_image()
    {
        layers.push(overlay::selection(&Selected::Line(corners.to_vec(), true)));
        layers.push(overlay::pointed(&Place {
            points: meters(&app.laying_points()),
            ..Place::default()
        }));
    }
    layers.extend(app.crosshair().map(overlay::crosshair));
    layers
}

/// A mark that is selected with others.
fn one_of_many(mark: &Mark) -> Option<Selected<'static>> {
    if let Mark::Street(street) = mark {
        return Some(Selected::Line(flatten(&street.line), false));
    }
    Some(match shape::of(mark)? {
        Footprint::Area(points) => Selected::Line(points, true),
        Footprint::Line(points) => Selected::Line(points, false),
        point @ Footprint::Point(_) => Selected::Shape(point),
    })
}

fn selected(app: &App, selection: Selection) -> Option<Selected<'_>> {
    let study = app.study();
    match (selection, study.document().mark(study.alternative(), selection.mark())?) {
        (Selection::Street(_), Mark::Street(street)) => Some(Selected::Street(street, None)),
        (Selection::Vertex(_, index), Mark::Street(street)) => Some(Selected::Street(street, Some(index))),
        (Selection::Use(id), Mark::Use(mark)) => Some(Selected::Use(mark, app.points_of(id))),
        (_, other) => shape::of(other).map(Selected::Shape),
    }
}

/// How many of the five daily needs are in reach along every front.
fn needs_of(study: &Study) -> Vec<(Line, u8)> {
    let network = study.network();
    let found = study.needs_reached(FAR_MINUTES * 60).into_iter();
    found
        .map(|part| {
            let held = part.needs.iter().filter(|is_reached| **is_reached).count();
            (meters(&network.stretch_points(part.stretch)), held as u8)
        })
        .collect()
}

/// From where a destination is within so many minutes; `None` where it is from nowhere.
fn shed_of(study: &Study, destination: Destination, minutes: u32) -> Option<Shed> {
    let reach: Reach = study.walks().reach(destination, minutes * 60);
    let network = study.network();
    let stretches: Vec<_> = reach
        .pieces()
        .iter()
        .map(|piece| meters(&network.stretch_points(*piece)))
        .collect();
    let ends = reach.frontier(network).into_iter();
    // The label stands at the northernmost end in the site, where it is least in the way.
    let site = &study.document().site.boundary;
    let is_in_site = |(x_m, y_m): (f64, f64)| PlanPoint::checked_from_m(x_m, y_m).is_some_and(|at| is_inside(at, site));
    let end = ends
        .filter_map(|place| network.position_m(place))
        .map(|at| (is_in_site(at), at))
        .reduce(|best, next| {
            let order = next.0.cmp(&best.0);
            let order = order.then(next.1.1.total_cmp(&best.1.1));
            if order.then(best.1.0.total_cmp(&next.1.0)).is_gt() {
                next
            } else {
                best
            }
        });
    (!stretches.is_empty()).then_some(Shed {
        minutes,
        stretches,
        end: end.map(|(_, at)| at),
    })
}
