//! Methods over what is listed: how many, the largest, the one in the middle; and the planar indices of a graph.

use crate::figures::expression::{Binary, Expression};
use crate::figures::method::{Method, MethodInput, MethodStep, MethodTerm};
use crate::figures::unit::{self, Dimension, Unit};
use crate::order;
use crate::say;

/// How many lengths are listed.
pub static HOW_MANY_LENGTHS: Method = Method {
    name: || say!("measures-count-name"),
    words: || say!("measures-count-words"),
    inputs: &[unit::LENGTH.dimension],
    gives: Dimension::NONE,
    evaluate: how_many,
    steps: how_many_steps,
};

/// How many counts are listed.
pub static HOW_MANY: Method = Method {
    name: || say!("measures-count-name"),
    words: || say!("measures-count-words"),
    inputs: &[Dimension::NONE],
    gives: Dimension::NONE,
    evaluate: how_many,
    steps: how_many_steps,
};

/// How many of the counts listed are not zero.
pub static HOW_MANY_SOME: Method = Method {
    name: || say!("measures-count-some-name"),
    words: || say!("measures-count-some-words"),
    inputs: &[Dimension::NONE],
    gives: Dimension::NONE,
    evaluate: how_many_some,
    steps: how_many_some_steps,
};

/// The longest of the lengths listed.
pub static LONGEST: Method = Method {
    name: || say!("measures-longest-name"),
    words: || say!("measures-largest-words"),
    inputs: &[unit::LENGTH.dimension],
    gives: unit::LENGTH.dimension,
    evaluate: largest,
    steps: longest_steps,
};

/// The most homes of those listed.
pub static MOST_HOMES: Method = Method {
    name: || say!("measures-most-name"),
    words: || say!("measures-largest-words"),
    inputs: &[unit::HOMES.dimension],
    gives: unit::HOMES.dimension,
    evaluate: largest,
    steps: most_homes_steps,
};

/// The length in the middle of those listed.
pub static MEDIAN_LENGTH: Method = Method {
    name: || say!("measures-median-name"),
    words: || say!("measures-median-words"),
    inputs: &[unit::LENGTH.dimension],
    gives: unit::LENGTH.dimension,
    evaluate: median,
    steps: median_steps,
};

/// Alpha of a planar graph: its independent cycles over the most it can have.
pub static ALPHA: Method = Method {
    name: || say!("measures-alpha-name"),
    words: || say!("measures-alpha-words"),
    inputs: &[Dimension::NONE, Dimension::NONE],
    gives: Dimension::NONE,
    evaluate: alpha,
    steps: alpha_steps,
};

/// Gamma of a planar graph: its links over the most it can have.
pub static GAMMA: Method = Method {
    name: || say!("measures-gamma-name"),
    words: || say!("measures-gamma-words"),
    inputs: &[Dimension::NONE, Dimension::NONE],
    gives: Dimension::NONE,
    evaluate: gamma,
    steps: gamma_steps,
};

/// Why a list without lines has no largest and no middle.
fn nothing_listed() -> &'static str {
    say!("measures-nothing-listed")
}

fn how_many(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([listed], [result]) = (inputs, results) else {
        return Err(say!("measures-one-list").to_owned());
    };
    *result = listed.len() as f64;
    Ok(())
}

fn how_many_some(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([listed], [result]) = (inputs, results) else {
        return Err(say!("measures-one-list").to_owned());
    };
    *result = some_of(listed);
    Ok(())
}

fn some_of(listed: &[f64]) -> f64 {
    listed.iter().filter(|count| **count > 0.0).count() as f64
}

fn largest(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([listed], [result]) = (inputs, results) else {
        return Err(say!("measures-one-list").to_owned());
    };
    let place = place_of_largest(listed).ok_or_else(nothing_listed)?;
    *result = listed[place];
    Ok(())
}

fn median(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([listed], [result]) = (inputs, results) else {
        return Err(say!("measures-one-list").to_owned());
    };
    let (low, high) = places_in_middle(listed).ok_or_else(nothing_listed)?;
    *result = (listed[low] + listed[high]) / 2.0;
    Ok(())
}

/// The place of the largest number, the first of equals.
pub fn place_of_largest(listed: &[f64]) -> Option<usize> {
    (0..listed.len()).reduce(|best, place| if listed[place] > listed[best] { place } else { best })
}

/// The places of the two numbers in the middle, the same twice for an odd number of them.
fn places_in_middle(listed: &[f64]) -> Option<(usize, usize)> {
    let mut places: Vec<usize> = (0..listed.len()).collect();
    order::sort_by(&mut places, |a, b| listed[*a].total_cmp(&listed[*b]));
    let middle = places.len() / 2;
    let high = *places.get(middle)?;
    let low = if places.len().is_multiple_of(2) {
        places[middle - 1]
    } else {
        high
    };
    Some((low, high))
}

/// A planar index needs three nodes.
fn nodes_of(inputs: &[&[f64]]) -> Result<(f64, f64), String> {
    let ([of], [nodes]) = (
        inputs.first().copied().unwrap_or_default(),
        inputs.get(1).copied().unwrap_or_default(),
    ) else {
        return Err(say!("measures-two-numbers").to_owned());
    };
    if *nodes < 3.0 {
        return Err(say!("measures-few-nodes").to_owned());
    }
    Ok((*of, *nodes))
}

fn alpha(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let (cycles, nodes) = nodes_of(inputs)?;
    results.fill(cycles / (2.0 * nodes - 5.0));
    Ok(())
}

fn gamma(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let (links, nodes) = nodes_of(inputs)?;
    results.fill(links / (3.0 * (nodes - 2.0)));
    Ok(())
}

fn input(input: usize, cell: usize) -> Expression<MethodTerm> {
    Expression::Figure(MethodTerm::Input { input, cell })
}

const fn plain(value: f64) -> Expression<MethodTerm> {
    Expression::Constant(value, unit::NUMBER)
}

fn binary(operation: Binary, left: Expression<MethodTerm>, right: Expression<MethodTerm>) -> Expression<MethodTerm> {
    Expression::Binary(operation, Box::new(left), Box::new(right))
}

fn how_many_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    let count = inputs.first().map_or(0.0, |listed| listed.values.len() as f64);
    count_step(say!("measures-list-lines"), count)
}

fn how_many_some_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    let count = inputs.first().map_or(0.0, |listed| some_of(&listed.values));
    count_step(say!("measures-list-lines-some"), count)
}

fn count_step(title: &str, count: f64) -> Vec<MethodStep> {
    vec![MethodStep {
        title: title.to_owned(),
        unit: unit::COUNT,
        formula: Expression::Constant(count, unit::COUNT),
    }]
}

fn longest_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    largest_steps(inputs, unit::LENGTH)
}

fn most_homes_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    largest_steps(inputs, unit::HOMES)
}

fn largest_steps(inputs: &[MethodInput], unit: Unit) -> Vec<MethodStep> {
    let step = |listed: &MethodInput| {
        let place = place_of_largest(&listed.values)?;
        Some(MethodStep {
            title: listed.labels.get(place).cloned().unwrap_or_default(),
            unit,
            formula: input(0, place),
        })
    };
    inputs.first().and_then(step).into_iter().collect()
}

fn median_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    let step = |listed: &MethodInput| {
        let (low, high) = places_in_middle(&listed.values)?;
        let label = |place: usize| listed.labels.get(place).cloned().unwrap_or_default();
        Some(if low == high {
            MethodStep {
                title: say!("measures-middle-one", label = label(low)),
                unit: unit::LENGTH,
                formula: input(0, low),
            }
        } else {
            MethodStep {
                title: say!("measures-middle-two", low = label(low), high = label(high)),
                unit: unit::LENGTH,
                formula: binary(
                    Binary::Divide,
                    binary(Binary::Add, input(0, low), input(0, high)),
                    plain(2.0),
                ),
            }
        })
    };
    inputs.first().and_then(step).into_iter().collect()
}

fn alpha_steps(_inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    vec![
        MethodStep {
            title: say!("measures-most-cycles").to_owned(),
            unit: unit::NUMBER,
            formula: binary(
                Binary::Subtract,
                binary(Binary::Multiply, plain(2.0), input(1, 0)),
                plain(5.0),
            ),
        },
        MethodStep {
            title: say!("measures-alpha").to_owned(),
            unit: unit::NUMBER,
            formula: binary(Binary::Divide, input(0, 0), Expression::Figure(MethodTerm::Step(0))),
        },
    ]
}

fn gamma_steps(_inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    vec![
        MethodStep {
            title: say!("measures-most-links").to_owned(),
            unit: unit::NUMBER,
            formula: binary(
                Binary::Multiply,
                plain(3.0),
                binary(Binary::Subtract, input(1, 0), plain(2.0)),
            ),
        },
        MethodStep {
            title: say!("measures-gamma").to_owned(),
            unit: unit::NUMBER,
            formula: binary(Binary::Divide, input(0, 0), Expression::Figure(MethodTerm::Step(0))),
        },
    ]
}
