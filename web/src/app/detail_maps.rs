//! Maps of what is worked out once the drawing rests: walking routes, the least direct walks to a center, and the best
//! single point for one. While details are to come they show nothing, and their legends say the figures' own words.

use hobnail_core::figures::display::digits;
use hobnail_core::figures::leaf::Cell;
use hobnail_core::measures::details::{WalkDetails, waiting};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::figures::Drawn;
use super::maps::{Legend, Line, Map, Mark, cells};
use super::words;
use crate::canvas::layers::routes::MOST;
use crate::canvas::scene;
use crate::canvas::scene_of::meters;

/// Walks along the busiest segment.
const BUSIEST: &str = "walk.busiest_segment_walks";

/// Share of walking on the busiest tenth of street length.
const BUSIEST_TENTH: &str = "walk.busiest_tenth_share";

/// Directness of the walks from each of the worst fronts.
const WORST: &str = "walk.worst_directness";

/// Homes of each of those.
const WORST_HOMES: &str = "walk.worst_directness_homes";

/// Homes around the best point.
const BEST: &str = "walk.best_center_5min_homes";

/// Homes around the center as drawn.
const DRAWN_CENTER: &str = "walk.drawn_center_homes";

/// Round limits between classes of walks, the lowest first: the last four of 1, 2, 5, 10, 20, 50 … that are less than
/// `most`; 1 where none is. So the highest class always holds the busiest segment, and the lowest ends at a tenth to a
/// twenty-fifth of it.
#[must_use]
pub fn limits(most: f64) -> Vec<f64> {
    let mut limits = vec![1.0];
    let factors = [2.0, 2.5, 2.0].into_iter().cycle();
    let round = factors.scan(1.0, |limit, factor| {
        *limit *= factor;
        Some(*limit)
    });
    limits.extend(round.take_while(|limit| *limit < most));
    let surplus = limits.len().saturating_sub(usize::from(MOST) - 1);
    limits.drain(..surplus);
    limits
}

/// The class of so many walks: 0 where there are none, then one more for each limit they exceed.
#[must_use]
pub fn class(walks: f64, limits: &[f64]) -> u8 {
    if walks > 0.0 {
        1 + limits.iter().filter(|limit| walks > **limit).count() as u8
    } else {
        0
    }
}

/// The walks of a class in words.
fn class_words(class: u8, limits: &[f64], is_highest: bool) -> String {
    let Some(below) = usize::from(class).checked_sub(1) else {
        return say!("page-walks-none").to_owned();
    };
    let least = below.checked_sub(1).and_then(|place| limits.get(place));
    let most = limits.get(below).filter(|_| least.is_none() || !is_highest);
    match (least, most) {
        (None, Some(1.0)) => say!("page-walks-up-to-one").to_owned(),
        (None, Some(most)) => say!("page-walks-up-to", most = digits(*most)),
        (Some(least), Some(most)) => say!("page-walks-between", least = digits(*least), most = digits(*most)),
        (Some(least), None) => say!("page-walks-over", least = digits(*least)),
        (None, None) => String::new(),
    }
}

fn most_walks(details: &WalkDetails) -> f64 {
    details.walks_by_link.iter().copied().fold(0.0, f64::max)
}

/// Every segment of street, and the class of the walks along it; nothing while details are to come.
#[must_use]
pub fn routes(study: &Study) -> Vec<(scene::Line, u8)> {
    let Some(details) = study.details() else {
        return Vec::new();
    };
    let limits = limits(most_walks(details));
    let network = study.network();
    let links = network.link_ids().zip(&details.walks_by_link);
    links
        .map(|(id, walks)| (meters(network.link_points(id)), class(*walks, &limits)))
        .collect()
}

/// The fronts with the least direct walks to a center, the worst first; nothing while details are to come.
#[must_use]
pub fn fronts(study: &Study) -> Vec<scene::Line> {
    let fronts = study.details().map(|details| details.indirect_fronts.iter());
    fronts.into_iter().flatten().map(|front| meters(&front.line)).collect()
}

/// Limits between classes of evenness, closer where places mostly of homes lie, so that those are told apart; no source.
/// Seven tenths homes and the rest work and shops alike come to 0.51, nine tenths homes to 0.24 (derived).
const MIX_LIMITS: [f64; 4] = [0.1, 0.25, 0.4, 0.6];

/// The class of an evenness: 0 where all floor area is of one use, then 1 to 5.
fn mix_class(evenness: f64) -> u8 {
    if evenness > 0.0 {
        1 + MIX_LIMITS.iter().filter(|limit| evenness > **limit).count() as u8
    } else {
        0
    }
}

/// Fronts with homes, and the class of the mix that they reach; nothing while details are to come.
#[must_use]
pub fn mix(study: &Study) -> Vec<(scene::Line, u8)> {
    let fronts = study.details().map(|details| details.mixed_fronts.iter());
    let fronts = fronts.into_iter().flatten();
    fronts
        .map(|front| (meters(&front.line), mix_class(front.evenness)))
        .collect()
}

/// What the map of mix means, and how many homes are in each class.
pub(super) fn mix_legend(study: &Study) -> Legend {
    let mut legend = Legend {
        map: Map::Mix,
        ..Legend::default()
    };
    let Some(details) = study.details() else {
        legend.note = Some(words::sentence_case(waiting()) + ".");
        return legend;
    };
    let mut homes = [0.0; MIX_LIMITS.len() + 2];
    for front in &details.mixed_fronts {
        // Classes end with one more than there are limits.
        homes[usize::from(mix_class(front.evenness))] += front.homes;
    }
    let place = |place: Option<usize>| place.and_then(|place| MIX_LIMITS.get(place)).copied().map(digits);
    for (class, homes) in homes.into_iter().enumerate().rev() {
        let (low, high) = (place(class.checked_sub(2)), place(class.checked_sub(1)));
        let words = match (low, high) {
            (None, None) => say!("maps-mix-one").to_owned(),
            (None, Some(high)) => say!("maps-mix-up-to", high = high),
            (Some(low), Some(high)) => say!("maps-mix-between", low = low, high = high),
            (Some(low), None) => say!("maps-mix-over", low = low),
        };
        legend.lines.push(Line {
            mark: Mark::Needs(class as u8),
            words,
            value: Some(say!("maps-homes", count = (homes + 0.5) as u32)),
        });
    }
    let pace = f64::from(study.document().settings.walking_pace_mm_per_s) / 1000.0;
    let pace = words::pace(pace, study.document().settings.units);
    legend.note = Some(if details.mixed_fronts.is_empty() {
        say!("maps-nothing").to_owned()
    } else {
        say!("maps-mix-note", pace = pace)
    });
    legend
}

/// The best single point for a center, where more homes reach it than the drawn center; nothing while details are to come.
#[must_use]
pub fn best(study: &Study) -> Option<(f64, f64)> {
    /// Less than this many homes more is no better place.
    const MORE_HOMES: f64 = 0.5;
    let details = study.details()?;
    let number = |cells: &[Cell]| match cells.first() {
        Some(Cell::Number(homes)) => Some(*homes),
        _ => None,
    };
    let drawn = number(&details.drawn_center_homes).unwrap_or(f64::NEG_INFINITY);
    let best = number(&details.best_center_homes).filter(|best| *best > drawn + MORE_HOMES);
    best.and_then(|_| Some(details.best_center?.to_m()))
}

/// What the map of walking routes means.
pub(super) fn routes_legend(study: &Study, drawn: &Drawn) -> Legend {
    let mut legend = Legend {
        map: Map::Routes,
        ..Legend::default()
    };
    if let Some(details) = study.details() {
        let most = most_walks(details);
        let limits = limits(most);
        let highest = class(most, &limits);
        let is_idle = details.walks_by_link.iter().any(|walks| class(*walks, &limits) == 0);
        let least = u8::from(!is_idle);
        legend.lines.extend((least..=highest).rev().map(|class| Line {
            mark: Mark::Walks(class),
            words: class_words(class, &limits, class == highest),
            value: None,
        }));
    }
    let mut why_not = None;
    for (figure, name) in [(BUSIEST, "busiest"), (BUSIEST_TENTH, "busiest-tenth")] {
        let Some(cell) = cells(study, drawn, figure).into_iter().next() else {
            continue;
        };
        match cell.value {
            Ok(value) if figure == BUSIEST => legend.lines.push(Line {
                mark: Mark::Figure(name),
                words: say!("page-walks-busiest", street = cell.title),
                value: Some(say!("page-walks", walks = value)),
            }),
            Ok(value) => legend.lines.push(Line {
                mark: Mark::Figure(name),
                words: say!("page-walks-busiest-tenth").to_owned(),
                value: Some(value),
            }),
            Err(why) => why_not = why_not.or(Some(why)),
        }
    }
    legend.note = Some(why_not.map_or_else(
        || say!("page-walks-about").to_owned(),
        |why| format!("{}.", words::sentence_case(&why)),
    ));
    legend
}

/// What the map of the least direct walks means.
pub(super) fn fronts_legend(study: &Study, drawn: &Drawn) -> Legend {
    let mut legend = Legend {
        map: Map::Indirect,
        ..Legend::default()
    };
    let mut note = say!("page-indirect-about").to_owned();
    let rows = cells(study, drawn, WORST).into_iter();
    for (number, (worst, homes)) in (1..).zip(rows.zip(cells(study, drawn, WORST_HOMES))) {
        match (worst.value, homes.value) {
            (Ok(directness), Ok(homes)) => legend.lines.push(Line {
                mark: Mark::Front(number),
                words: worst.title,
                value: Some(say!("page-indirect-row", times = directness, homes = homes)),
            }),
            (Err(why), _) | (_, Err(why)) => note = format!("{}.", words::sentence_case(&why)),
        }
    }
    legend.note = Some(note);
    legend
}

/// The line of the best single point, or that none is better than the drawn center.
///
/// # Errors
/// Why there is none.
pub(super) fn best_line(study: &Study, drawn: &Drawn) -> Result<Line, String> {
    let value = |figure| {
        let cell = cells(study, drawn, figure).into_iter().next();
        cell.map_or_else(|| Err(String::new()), |cell| cell.value)
    };
    let reached = value(BEST)?;
    if best(study).is_none() {
        return Ok(Line {
            mark: Mark::Figure("best"),
            words: say!("page-best-drawn").to_owned(),
            value: Some(say!("page-best-none").to_owned()),
        });
    }
    // Where no center is drawn the note says so already.
    let words = match value(DRAWN_CENTER) {
        Ok(homes) => say!("page-best-reach-drawn", homes = reached, drawn = homes),
        Err(_) => say!("page-best-reach", homes = reached),
    };
    Ok(Line {
        mark: Mark::Best,
        words: say!("page-best-point").to_owned(),
        value: Some(words),
    })
}

#[cfg(test)]
mod tests;
