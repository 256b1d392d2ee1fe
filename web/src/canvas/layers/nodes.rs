//! The map of what a counting rule counts: a disk at each intersection, a square at each head of a dead end, and a hollow
//! triangle where only other rules count something.

use crate::canvas::palette;
use crate::canvas::picture::{Color, Form, Item, Layer, Sign};
use crate::canvas::scene::{Node, Scene};

/// Form, half size in pixels and inside of a node's sign.
const fn look(node: Node) -> (Form, f64, Color) {
    match node {
        Node::Crossing => (Form::Round, 6.0, palette::SHED_EDGE),
        Node::Head => (Form::Square, 5.5, palette::SHED_EDGE),
        Node::LeftOut => (Form::Triangle, 6.5, palette::PAPER),
    }
}

/// The signs, what is counted on top.
#[must_use]
pub fn signs(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for kind in [Node::LeftOut, Node::Head, Node::Crossing] {
        let (form, radius_px, fill) = look(kind);
        let held = scene.nodes.iter().filter(|(_, node)| *node == kind);
        layer.items.extend(held.map(|(at, _)| {
            Item::Sign(Sign {
                at: *at,
                shift_px: (0.0, 0.0),
                form,
                radius_px,
                fill,
                line: if kind == Node::LeftOut {
                    palette::SHED_EDGE
                } else {
                    palette::PAPER
                },
                line_px: 1.5,
            })
        }));
    }
    layer
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counted_nodes_heads_and_others_are_told_apart_by_form() {
        let kinds = [Node::Crossing, Node::Head, Node::LeftOut];
        let scene = Scene {
            nodes: kinds.map(|kind| ((0.0, 0.0), kind)).to_vec(),
            ..Scene::default()
        };
        let forms: Vec<Form> = signs(&scene)
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Sign(sign) => Some(sign.form),
                _ => None,
            })
            .collect();
        assert_eq!(
            forms,
            [Form::Triangle, Form::Square, Form::Round],
            "those counted on top"
        );
    }
}
