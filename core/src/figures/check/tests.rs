use super::*;
use crate::figures::expression::{Comparison, choose, constant, figure};
use crate::figures::samples::{LARGEST, every_operator};
use crate::figures::unit;

/// A small sound graph with one thing wrong.
#[track_caller]
fn check(spoil: impl FnOnce(&mut GraphBuilder), expected: &[&str]) {
    let mut graph = GraphBuilder::new();
    graph.open_axis("kind", "kind");
    graph.open_axis("knot", "knot");
    let _ = graph.counted("land", "land", unit::LAND).over(&["kind"]);
    let _ = graph.counted("homes", "homes", unit::HOMES).over(&["kind"]);
    let _ = graph.counted("knots", "knots", unit::MINUTES).over(&["knot"]);
    let _ = graph.counted("times", "times", unit::MINUTES);
    spoil(&mut graph);
    let faults = graph.build().expect_err("the graph has a fault");
    let found: Vec<String> = faults.iter().map(ToString::to_string).collect();
    assert_eq!(found, expected);
}

#[test]
fn a_graph_of_every_operator_builds_in_working_order() {
    let graph = every_operator().build().unwrap();
    for index in graph.indices() {
        for need in graph.node(index).operator.references() {
            assert!(*need < index, "{} comes before what it needs", graph.node(index).id);
        }
    }
    let index = graph.index("tank.level").unwrap();
    assert_eq!(graph.node(index).title, "level");
    assert_eq!(graph.index("tank.lid"), None);
}

#[test]
fn unlike_units_are_found_wherever_they_meet() {
    check(
        |graph| {
            graph
                .figure("sum", "sum", unit::HOMES)
                .over(&["kind"])
                .formula(figure("homes") + figure("land"))
        },
        &["`sum` brings home and m² together in a sum"],
    );
    check(
        |graph| {
            let least = figure("land").at_most(figure("homes"));
            graph
                .figure("least", "least", unit::LAND)
                .over(&["kind"])
                .formula(least);
        },
        &["`least` brings m² and home together in the smaller of two"],
    );
    check(
        |graph| {
            let chosen = choose(
                figure("homes"),
                Comparison::Above,
                figure("land"),
                figure("land"),
                figure("homes"),
            );
            graph
                .figure("chosen", "chosen", unit::HOMES)
                .over(&["kind"])
                .formula(chosen);
        },
        &[
            "`chosen` brings home and m² together in a comparison",
            "`chosen` brings m² and home together in a choice",
        ],
    );
    check(
        |graph| {
            graph
                .figure("density", "density", unit::HOMES)
                .over(&["kind"])
                .formula(figure("homes") / figure("land"))
        },
        &["`density` is declared in home but worked out in home/m²"],
    );
    check(
        |graph| {
            graph
                .figure("growth", "growth", unit::NUMBER)
                .over(&["kind"])
                .formula(figure("homes").exponential())
        },
        &["`growth` needs a plain number for an exponential or logarithm, not home"],
    );
    check(
        |graph| {
            let raised = figure("land").to_power(constant(0.3, unit::NUMBER));
            graph
                .figure("raised", "raised", unit::LAND)
                .over(&["kind"])
                .formula(raised);
        },
        &["`raised` raises m² to a power that is not constant or leaves no whole power"],
    );
    check(
        |graph| {
            let raised = constant(2.0, unit::NUMBER).to_power(figure("homes"));
            graph
                .figure("raised", "raised", unit::NUMBER)
                .over(&["kind"])
                .formula(raised);
        },
        &["`raised` needs a plain number for an exponent, not home"],
    );
    check(
        |graph| {
            let _ = graph.counted("ys", "ys", unit::HOMES).over(&["knot"]);
            graph
                .figure("read", "read", unit::HOMES)
                .over(&["kind"])
                .lookup("knots", "ys", "knot", "land");
        },
        &["`read` brings s and m² together in a curve lookup"],
    );
    check(
        |graph| {
            graph
                .figure("level", "level", unit::MINUTES)
                .over(&["kind"])
                .running_balance("times", "homes", "kind", None, Some("land"))
        },
        &[
            "`level` brings s and home together in a running balance",
            "`level` brings s and m² together in a running balance",
        ],
    );
    check(
        |graph| {
            graph
                .figure("largest", "largest", unit::HOMES)
                .method(&LARGEST, &["homes", "times"], &["kind"])
        },
        &[
            "`largest` gives its method 2 inputs instead of 1",
            "`largest` brings m and home together in a method's input",
            "`largest` is declared in home but worked out in m",
        ],
    );
}

#[test]
fn axes_that_do_not_fit_are_found() {
    check(
        |graph| graph.figure("copy", "copy", unit::HOMES).formula(figure("homes")),
        &["`copy` is declared over [] but worked out over [kind]"],
    );
    check(
        |graph| graph.figure("all", "all", unit::MINUTES).sum("times", &["kind"]),
        &["`all` works along the axis `kind`, which `times` does not have"],
    );
    check(
        |graph| {
            graph
                .figure("all", "all", unit::HOMES)
                .over(&["kind"])
                .sum("homes", &["kind"])
        },
        &["`all` is declared over [kind] but worked out over []"],
    );
    check(
        |graph| {
            graph
                .figure("read", "read", unit::HOMES)
                .over(&["kind"])
                .lookup("knots", "homes", "knot", "knots")
        },
        &[
            "`read` works along the axis `knot`, which `homes` does not have",
            "`read` works along the axis `knot`, which `knots` must not have",
            "`read` is declared over [kind] but worked out over [kind, knot]",
        ],
    );
    check(
        |graph| {
            graph
                .figure("level", "level", unit::HOMES)
                .over(&["kind"])
                .running_balance("homes", "homes", "kind", None, None);
        },
        &["`level` works along the axis `kind`, which `homes` must not have"],
    );
}

#[test]
fn names_that_do_not_fit_are_found() {
    check(
        |graph| {
            let _ = graph.counted("Land.by-kind", "x", unit::LAND);
            let _ = graph.counted("land", "x", unit::LAND).over(&["kind", "kind"]);
            let _ = graph.counted("roofs", "x", unit::LAND).over(&["roof"]);
            let _ = graph.figure("nothing", "x", unit::LAND);
            graph
                .figure("more", "x", unit::LAND)
                .formula(figure("lost") + figure("lost"));
            graph.fixed_axis("kind", "x", &[("a", "a"), ("a", "b")]);
        },
        &[
            "`Land.by-kind` is not lower-case words joined by dots and underscores",
            "`kind` is declared more than once",
            "the axis `kind` has the entry `a` twice",
            "`land` is declared more than once",
            "`land` names the axis `kind` twice",
            "`more` refers to `lost`, which is not declared",
            "`nothing` does not say how it is worked out",
            "`roofs` names the axis `roof`, which is not declared",
        ],
    );
}

#[test]
fn every_cycle_is_found() {
    check(
        |graph| {
            for (id, need) in [("a", "b"), ("b", "c"), ("c", "a"), ("d", "d"), ("e", "a")] {
                graph
                    .figure(id, id, unit::MINUTES)
                    .formula(figure(need) + figure("times"));
            }
        },
        &["`a` needs itself through a, b, c", "`d` needs itself through d"],
    );
}

#[test]
fn an_entry_must_be_on_its_axis_for_good() {
    check(
        |graph| {
            graph.fixed_axis("season", "season", &[("dry", "dry"), ("wet", "wet")]);
            let _ = graph.counted("rain", "rain", unit::LENGTH).over(&["season", "kind"]);
            graph
                .figure("cold", "cold", unit::LENGTH)
                .over(&["kind"])
                .entry("rain", "season", "cold");
            graph
                .figure("open", "open", unit::LENGTH)
                .over(&["season"])
                .entry("rain", "kind", "cottage");
            graph
                .figure("other", "other", unit::HOMES)
                .over(&["kind"])
                .entry("rain", "season", "dry");
            graph
                .figure("there", "there", unit::LAND)
                .over(&["kind"])
                .entry("land", "season", "dry");
        },
        &[
            "`cold` names the entry `cold`, which the axis `season` does not have for good",
            "`open` names the entry `cottage`, which the axis `kind` does not have for good",
            "`other` is declared in home but worked out in m",
            "`there` works along the axis `season`, which `land` does not have",
        ],
    );
}
