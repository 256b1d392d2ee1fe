//! The picture under the drawing: laid by points known on both, by a known length, faded, or taken away.
//!
//! While it is being laid, presses on the drawing are its points and reach no tool. The picture is shown as it would
//! lie; only when the person is done it is one step of the history.

use hobnail_core::plan::document::BaseImage;
use hobnail_core::plan::placement::{OnPicture, Placement, moved, scaled};
use hobnail_core::plan::projection::{GeographicPoint, Projection};
use hobnail_core::plan::{Edit, PlanPoint};
use hobnail_core::say;

use super::bases::{Base, LARGEST_RADIUS_M as FARTHEST_M, is_placed};
use super::words::sentence_case;
use super::{App, words};
use crate::browser::pictures::PictureFile;
use crate::input::{Key, PointerKind};
use crate::tools::Input;

/// How much of a new picture shows, in thousandths.
const NEW_OPACITY_THOUSANDTHS: u16 = 600;

/// Most pairs of points: four straighten a picture.
const MOST_PAIRS: usize = 4;

/// How the picture is being laid.
#[derive(Clone, Debug, PartialEq)]
pub struct Laying {
    by: By,
    /// Where it lay when this began.
    before: [PlanPoint; 4],
    /// Where it lies now.
    now: [PlanPoint; 4],
}

#[derive(Clone, Debug, PartialEq)]
enum By {
    /// By points: places on the picture with their points on the plan, and a place whose point is not known yet.
    Points(Vec<(OnPicture, PlanPoint)>, Option<OnPicture>),
    /// By a length known between two points.
    Length(Vec<PlanPoint>),
}

/// What is shown of the picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BaseImageShown {
    /// Its name; empty where there is none.
    pub name: String,
    /// How much it shows, in percent.
    pub opacity_percent: u16,
    /// What a press on the drawing does now, while it is being laid.
    pub awaits: Option<String>,
    /// Whether a length is to be typed.
    pub asks_length: bool,
}

impl App {
    /// The picture under the drawing, and where it is shown.
    #[must_use]
    pub fn base_image(&self) -> Option<(&BaseImage, [PlanPoint; 4])> {
        let image = self.study.document().base_image.as_ref()?;
        let corners = self.laying.as_ref().map_or(image.corners, |laying| laying.now);
        Some((image, corners))
    }

    /// What is shown of the picture.
    #[must_use]
    pub fn base_image_shown(&self) -> BaseImageShown {
        let Some((image, _)) = self.base_image() else {
            return BaseImageShown::default();
        };
        let awaits = self.laying.as_ref().map(|laying| match &laying.by {
            By::Points(pairs, None) if pairs.is_empty() => say!("picture-first-place").to_owned(),
            By::Points(pairs, None) => say!("picture-next-place", count = pairs.len()),
            By::Points(_, Some(_)) => say!("picture-where").to_owned(),
            By::Length(ends) if ends.is_empty() => say!("picture-length-from").to_owned(),
            By::Length(ends) if ends.len() == 1 => say!("picture-length-to").to_owned(),
            By::Length(_) => say!("picture-length").to_owned(),
        });
        BaseImageShown {
            name: image.name.clone(),
            opacity_percent: image.opacity_thousandths / 10,
            awaits,
            asks_length: matches!(&self.laying, Some(Laying { by: By::Length(ends), .. }) if ends.len() == 2),
        }
    }

    /// The points of the picture that were pressed, for the drawing.
    #[must_use]
    pub fn laying_points(&self) -> Vec<PlanPoint> {
        let Some(laying) = &self.laying else { return Vec::new() };
        match &laying.by {
            By::Length(ends) => ends.clone(),
            By::Points(pairs, from) => {
                let from = from.and_then(|from| laying.on_plan(&laying.now, from));
                pairs.iter().map(|(_, point)| *point).chain(from).collect()
            }
        }
    }

    /// Lays a picture that was read in the middle of the view.
    pub fn lay_picture(&mut self, file: PictureFile) {
        let (width_px, height_px) = self.camera.size_px();
        let room = |size_px: f64, taken_px: f64| (size_px - taken_px).max(size_px / 4.0) * 0.8;
        let insets = self.insets;
        let (wide_px, high_px) = (
            room(width_px, insets.left_px + insets.right_px),
            room(height_px, insets.top_px + insets.bottom_px),
        );
        let aspect = file.size_px[0] / file.size_px[1];
        let high_px = high_px.min(wide_px / aspect);
        let wide_px = high_px * aspect;
        let left_px = (insets.left_px + width_px - insets.right_px - wide_px) / 2.0;
        let top_px = (insets.top_px + height_px - insets.bottom_px - high_px) / 2.0;
        let corner = |right: f64, down: f64| {
            let at = crate::input::ScreenPoint::new(left_px + right * wide_px, top_px + down * high_px);
            self.camera.plan_from_screen(at)
        };
        let corners = [corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 1.0), corner(0.0, 1.0)];
        self.laying = None;
        self.put_image(say!("picture-step-lay"), Some(new_image(&file, corners)));
    }

    /// Lays a picture where a world file says, which gives the corners in degrees, x and y by turns; a plan that lies
    /// nowhere yet gets its origin in the middle of the picture.
    ///
    /// # Errors
    /// A sentence, where it can not lie there; the plan is as it was then.
    pub fn lay_by_world(&mut self, file: &PictureFile, world: &Base) -> Result<(), String> {
        let document = self.study.document();
        let before = document.heading.clone();
        let is_placed = is_placed(document);
        let placed = corners_by_world(&world.corners, is_placed.then(|| before.geographic_origin()));
        let Some((origin, corners)) = placed else {
            let kilometers = (FARTHEST_M / 1000.0) as u32;
            return Err(say!("picture-far", file = file.name, kilometers = kilometers));
        };
        let mut edits = vec![Edit::BaseImage {
            before: document.base_image.clone(),
            after: Some(new_image(file, corners)),
        }];
        if !is_placed {
            let mut after = before.clone();
            after.origin_longitude_ndeg = origin.longitude_ndeg;
            after.origin_latitude_ndeg = origin.latitude_ndeg;
            edits.push(Edit::Heading { before, after });
        }
        let mut shown = corners.to_vec();
        shown.extend_from_slice(&document.site.boundary);
        self.laying = None;
        self.step_with(say!("picture-step-lay"), edits);
        self.fit_points(shown.into_iter());
        let moved = if is_placed { "no" } else { "yes" };
        let said = say!("picture-laid", file = file.name, world = world.name, moved = moved);
        self.inform(match world.faults.first() {
            Some(fault) => [&said, " ", &fault.words].concat(),
            None => said,
        });
        Ok(())
    }

    /// Takes the picture away.
    pub fn remove_picture(&mut self) {
        self.laying = None;
        self.put_image(say!("picture-step-remove"), None);
    }

    /// Shows more or less of the picture.
    pub fn fade_picture(&mut self, percent: u16) {
        if let Some(mut image) = self.study.document().base_image.clone() {
            image.opacity_thousandths = percent.min(100) * 10;
            self.put_image(say!("picture-step-fade"), Some(image));
        }
    }

    /// Begins to lay the picture by points, or by a length.
    pub fn begin_laying(&mut self, is_by_length: bool) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        if self.refuses() {
            return;
        }
        let Some(image) = &self.study.document().base_image else {
            return;
        };
        self.laying = Some(Laying {
            by: if is_by_length {
                By::Length(Vec::new())
            } else {
                By::Points(Vec::new(), None)
            },
            before: image.corners,
            now: image.corners,
        });
        self.laying_changed();
    }

    /// Leaves the picture where it lies now.
    pub fn end_laying(&mut self) {
        let Some(laying) = self.laying.take() else { return };
        if let Some(mut image) = self.study.document().base_image.clone() {
            image.corners = laying.now;
            self.put_image(say!("picture-step-place"), Some(image));
        }
        self.laying_changed();
    }

    /// Leaves the picture where it lay.
    pub fn give_laying_up(&mut self) {
        if self.laying.take().is_some() {
            self.laying_changed();
        }
    }

    /// Takes a typed length between the two points that were pressed.
    pub fn type_picture_length(&mut self, text: &str) {
        let length_mm = words::typed_length_mm(text, self.units());
        let Some(Laying {
            by: By::Length(ends),
            before,
            now,
        }) = &mut self.laying
        else {
            return;
        };
        let (Some(length_mm), [from, to]) = (length_mm, ends.as_slice()) else {
            return self.warn(say!("picture-no-length"));
        };
        match scaled(before, *from, *to, length_mm / 1000.0) {
            Ok(corners) => {
                *now = corners;
                self.end_laying();
            }
            Err(fault) => self.warn(sentence_case(&format!("{fault}."))),
        }
    }

    /// A press on the drawing while the picture is being laid; `false` where it is not.
    pub(super) fn press_on_picture(&mut self, point: PlanPoint) -> bool {
        let Some(laying) = &mut self.laying else { return false };
        if let Err(fault) = laying.press(point) {
            self.warn(sentence_case(&format!("{fault}.")));
        }
        self.laying_changed();
        true
    }

    /// A key while the picture is being laid; `false` where it is not, or the key means nothing to it.
    pub(super) fn key_on_picture(&mut self, key: Key) -> bool {
        let Some(laying) = &mut self.laying else { return false };
        match key {
            Key::Enter if self.crosshair.is_none() => self.end_laying(),
            Key::Escape if laying.take_back() => self.laying_changed(),
            Key::Escape => self.give_laying_up(),
            _ => return false,
        }
        true
    }

    fn laying_changed(&mut self) {
        self.changes.hand = true;
        self.changes.view = true;
        if let Some(words) = self.base_image_shown().awaits {
            self.say(words);
        }
    }

    /// A picture that was moved or taken away meanwhile is not laid on.
    pub(super) fn leave_lost_picture(&mut self) {
        let corners = self.study.document().base_image.as_ref().map(|image| image.corners);
        if self
            .laying
            .as_ref()
            .is_some_and(|laying| Some(laying.before) != corners)
        {
            self.laying = None;
        }
    }

    fn put_image(&mut self, label: &str, after: Option<BaseImage>) {
        let before = self.study.document().base_image.clone();
        if before != after {
            self.step_with(label, vec![Edit::BaseImage { before, after }]);
        }
    }
}

/// Where a picture lies on the plan by its corners in degrees, x and y by turns, and the plan's origin: the middle of the
/// picture where there was none. `None` where it lies too far away, is too large or is no picture's.
fn corners_by_world(degrees: &[f64], origin: Option<GeographicPoint>) -> Option<(GeographicPoint, [PlanPoint; 4])> {
    let &[west, north, _, _, east, south, _, _] = degrees else {
        return None;
    };
    let middle = GeographicPoint::checked_from_deg(f64::midpoint(west, east), f64::midpoint(north, south))?;
    let origin = origin.unwrap_or(middle);
    let projection = Projection::about(origin).ok()?;
    let (x_m, y_m) = projection.plan_from_geographic(middle)?.to_m();
    let mut corners = [PlanPoint::default(); 4];
    for (corner, degrees) in corners.iter_mut().zip(degrees.chunks_exact(2)) {
        *corner = projection.plan_from_geographic(GeographicPoint::checked_from_deg(degrees[0], degrees[1])?)?;
    }
    let is_near = x_m.abs().max(y_m.abs()) <= FARTHEST_M;
    (is_near && Placement::of_corners(&corners).is_ok()).then_some((origin, corners))
}

/// A picture that lies on these corners, as much of it shown as of every new one.
fn new_image(file: &PictureFile, corners: [PlanPoint; 4]) -> BaseImage {
    BaseImage {
        name: file.name.clone(),
        media_type: file.media_type.clone(),
        corners,
        opacity_thousandths: NEW_OPACITY_THOUSANDTHS,
        bytes: file.bytes.clone(),
    }
}

impl Laying {
    /// Where a place on the picture lies when the picture lies on these corners.
    fn on_plan(&self, corners: &[PlanPoint; 4], place: OnPicture) -> Option<PlanPoint> {
        let (x_m, y_m) = Placement::of_corners(corners).ok()?.on_plan(place);
        PlanPoint::checked_from_m(x_m, y_m)
    }

    /// Takes a point; a pair that can not be is taken back.
    fn press(&mut self, point: PlanPoint) -> Result<(), hobnail_core::plan::placement::PlacementFault> {
        let lies = Placement::of_corners(&self.now)?;
        match &mut self.by {
            By::Length(ends) if ends.len() < 2 => ends.push(point),
            By::Length(_) => {}
            By::Points(pairs, None) if pairs.len() < MOST_PAIRS => {
                self.by = By::Points(std::mem::take(pairs), Some(lies.on_picture(point.to_m())));
            }
            By::Points(_, None) => {}
            By::Points(pairs, from) => {
                pairs.extend(from.take().map(|place| (place, point)));
                let laid = self.laid();
                match (laid, &mut self.by) {
                    (Ok(corners), _) => self.now = corners,
                    (Err(fault), By::Points(pairs, _)) => {
                        pairs.pop();
                        return Err(fault);
                    }
                    (Err(fault), By::Length(_)) => return Err(fault),
                }
            }
        }
        Ok(())
    }

    /// Where the pairs lay the picture.
    fn laid(&self) -> Result<[PlanPoint; 4], hobnail_core::plan::placement::PlacementFault> {
        let By::Points(pairs, _) = &self.by else {
            return Ok(self.now);
        };
        let pairs: Vec<(PlanPoint, PlanPoint)> = pairs
            .iter()
            .filter_map(|(place, point)| Some((self.on_plan(&self.before, *place)?, *point)))
            .collect();
        moved(&self.before, &pairs)
    }

    /// Takes the last point back; `false` where there is none.
    fn take_back(&mut self) -> bool {
        let is_taken = match &mut self.by {
            By::Length(ends) => ends.pop().is_some(),
            By::Points(pairs, from) => from.take().is_some() || pairs.pop().is_some(),
        };
        // Pairs that were laid once can be laid again.
        self.now = self.laid().unwrap_or(self.now);
        is_taken
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::bases::{Coordinates, FaultSaid};

    fn at(x_m: i32, y_m: i32) -> PlanPoint {
        PlanPoint::new(x_m * 1000, y_m * 1000)
    }

    fn with_picture() -> App {
        let mut app = App::new().unwrap();
        app.lay_picture(PictureFile {
            name: "mill-survey.png".to_owned(),
            media_type: "image/png".to_owned(),
            bytes: [1, 2, 3].into(),
            size_px: [200.0, 100.0],
        });
        app
    }

    fn corners(app: &App) -> [PlanPoint; 4] {
        app.study().document().base_image.as_ref().unwrap().corners
    }

    #[test]
    fn a_new_picture_lies_in_view_as_wide_as_it_is() {
        let app = with_picture();
        let [a, b, c, d] = corners(&app).map(PlanPoint::to_m);
        assert!(((b.0 - a.0) / (a.1 - d.1) - 2.0).abs() < 0.01, "{a:?} {b:?} {d:?}");
        assert!((c.0 - b.0).abs() < 0.01);
        assert_eq!(app.study().history().undo_label(), Some(say!("picture-step-lay")));
    }

    #[test]
    fn points_lay_it_and_that_is_one_step() {
        let mut app = with_picture();
        let [top_left, top_right, ..] = corners(&app);
        let steps = |app: &App| app.study().history().undo_label().map(str::to_owned);
        app.begin_laying(false);
        for point in [top_left, at(0, 0), top_right, at(0, 0)] {
            assert!(app.press_on_picture(point));
        }
        assert!(app.notice().is_some(), "two places can not both lie there");
        assert_eq!(steps(&app).as_deref(), Some(say!("picture-step-lay")));
        // The picture was shifted meanwhile, and so was the place that is pressed now.
        let (_, shown) = app.base_image().unwrap();
        assert_eq!(shown[0], at(0, 0));
        assert!(app.press_on_picture(shown[1]));
        assert!(app.press_on_picture(at(0, 400)));
        app.end_laying();
        let laid = corners(&app);
        assert_eq!((laid[0], laid[1]), (at(0, 0), at(0, 400)));
        assert_eq!(steps(&app).as_deref(), Some(say!("picture-step-place")));
        app.undo();
        assert_eq!(corners(&app)[0], top_left);
    }

    #[test]
    fn a_typed_length_scales_it() {
        let mut app = with_picture();
        app.show_units(hobnail_core::plan::document::UnitSystem::Metric);
        let [top_left, top_right, ..] = corners(&app);
        app.begin_laying(true);
        app.press_on_picture(top_left);
        app.press_on_picture(top_right);
        assert!(app.base_image_shown().asks_length);
        app.type_picture_length("abc");
        assert!(app.notice().is_some() && app.base_image_shown().asks_length);
        app.type_picture_length("500");
        let [a, b, ..] = corners(&app).map(PlanPoint::to_m);
        assert!((b.0 - a.0 - 500.0).abs() < 0.002);
        assert_eq!(corners(&app)[0], top_left);
    }

    /// A picture of 200 by 100 pixels, laid on corners as the readers tell them.
    fn laid_by_world(app: &mut App, corners: &[f64]) -> Result<(), String> {
        laid_with(app, corners, Vec::new())
    }

    fn laid_with(app: &mut App, corners: &[f64], faults: Vec<FaultSaid>) -> Result<(), String> {
        let file = PictureFile {
            name: "map.jpg".to_owned(),
            media_type: "image/jpeg".to_owned(),
            bytes: [1, 2, 3].into(),
            size_px: [200.0, 100.0],
        };
        let world = Base {
            corners: corners.to_vec(),
            faults,
            ..Base::new("map.jgw", Coordinates::Degrees)
        };
        app.lay_by_world(&file, &world)
    }

    const WEST: f64 = -71.101;
    const EAST: f64 = -71.099;
    const CORNERS: [f64; 8] = [WEST, 42.301, EAST, 42.301, EAST, 42.299, WEST, 42.299];

    #[test]
    fn a_world_file_lays_it_and_gives_a_plan_without_a_place_its_origin() {
        let mut app = App::new().unwrap();
        laid_by_world(&mut app, &CORNERS).unwrap();
        let heading = &app.study().document().heading;
        assert_eq!(heading.geographic_origin().to_deg(), (-71.1, 42.3));
        // A minute of latitude is 1852 m or nearly, one of longitude less by the cosine: 0.001 degrees are 111.1 m and
        // 82.4 m.
        let [a, b, c, d] = corners(&app).map(PlanPoint::to_m);
        for ((x, y), signs) in [a, b, c, d]
            .into_iter()
            .zip([(-1.0, 1.0), (1.0, 1.0), (1.0, -1.0), (-1.0, -1.0)])
        {
            assert!(
                (x - signs.0 * 82.4).abs() < 0.2 && (y - signs.1 * 111.1).abs() < 0.2,
                "{x} {y}"
            );
        }
        let said = say!("picture-laid", file = "map.jpg", world = "map.jgw", moved = "yes");
        assert_eq!(app.notice(), Some(said.as_str()));
        let doubt = FaultSaid {
            place: String::new(),
            words: "The datum is not known.".to_owned(),
        };
        app.undo();
        laid_with(&mut app, &CORNERS, vec![doubt]).unwrap();
        assert_eq!(app.notice(), Some(format!("{said} The datum is not known.").as_str()));
        app.undo();
        let document = app.study().document();
        assert!(document.base_image.is_none() && !is_placed(document), "it was one step");
    }

    #[test]
    fn a_plan_that_lies_somewhere_stays_there_when_a_world_file_lays_a_picture() {
        let mut app = App::new().unwrap();
        laid_by_world(&mut app, &CORNERS).unwrap();
        let origin = app.study().document().heading.geographic_origin();
        let first = corners(&app);
        // A second one, a quarter turned and beside the first: columns run north.
        let turned = [EAST, 42.299, EAST, 42.301, EAST + 0.002, 42.301, EAST + 0.002, 42.299];
        laid_by_world(&mut app, &turned).unwrap();
        assert_eq!(app.study().document().heading.geographic_origin(), origin);
        let second = corners(&app);
        assert_eq!((second[0], second[1]), (first[2], first[1]));
        let said = say!("picture-laid", file = "map.jpg", world = "map.jgw", moved = "no");
        assert_eq!(app.notice(), Some(said.as_str()));
    }

    #[test]
    fn a_picture_of_another_place_is_refused_and_the_plan_stays() {
        let mut app = App::new().unwrap();
        laid_by_world(&mut app, &CORNERS).unwrap();
        let before = app.study().document().clone();
        let moved = |east: f64| -> Vec<f64> {
            let shifted = CORNERS.chunks(2).flat_map(|corner| [corner[0] + east, corner[1]]);
            shifted.collect()
        };
        // 0.25 degrees are 20.6 km there.
        let far = say!("picture-far", file = "map.jpg", kilometers = 20);
        assert_eq!(laid_by_world(&mut app, &moved(0.25)), Err(far.clone()));
        assert_eq!(laid_by_world(&mut app, &moved(100.0)), Err(far.clone()));
        assert_eq!(laid_by_world(&mut app, &[]), Err(far));
        let flat = [WEST, 42.3, EAST, 42.3, EAST, 42.3, WEST, 42.3];
        assert!(laid_by_world(&mut app, &flat).is_err());
        assert_eq!(*app.study().document(), before);
        assert_eq!(laid_by_world(&mut app, &moved(0.2)), Ok(()));
    }

    #[test]
    fn escape_takes_points_back_and_then_gives_up() {
        let mut app = with_picture();
        let before = corners(&app);
        app.begin_laying(false);
        app.press_on_picture(at(1, 1));
        app.press_on_picture(at(50, 50));
        assert!(app.key_on_picture(Key::Escape));
        assert_eq!(app.base_image().unwrap().1, before);
        assert!(app.key_on_picture(Key::Escape));
        assert!(!app.key_on_picture(Key::Escape));
        assert_eq!(corners(&app), before);
    }
}
