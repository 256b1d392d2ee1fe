//! How a link's cost is shared out along it: in proportion to length, in whole units, exactly additive.
//!
//! The cost from a link's start to a position is `round(cost × along ÷ length)`; the cost between two positions is the
//! difference of the two. So pieces add up to the whole, and where cost is length (no topography) it is the length.

/// A link's whole cost one way, over its whole length.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    pub cost: u64,
    pub length_um: u64,
}

impl Scale {
    /// Cost between the link's start and `along_um`, rounded half up.
    pub fn up_to(self, along_um: u64) -> u64 {
        if self.cost == self.length_um {
            return along_um;
        }
        let numerator = u128::from(self.cost) * u128::from(along_um) + u128::from(self.length_um / 2);
        (numerator / u128::from(self.length_um)) as u64
    }

    /// The farthest position whose cost from the start is at most `budget`.
    pub fn last_within(self, budget: u64) -> u64 {
        if budget >= self.cost {
            return self.length_um;
        }
        if self.cost == self.length_um {
            return budget;
        }
        // floor((cost·p + half) / length) ≤ budget  ⇔  cost·p ≤ (budget + 1)·length − 1 − half.
        let (length, half) = (u128::from(self.length_um), u128::from(self.length_um / 2));
        let most = (u128::from(budget) + 1) * length - 1 - half;
        ((most / u128::from(self.cost)) as u64).min(self.length_um)
    }

    /// The first position whose cost from the start is at least `target`; `target` is at most the whole cost.
    pub fn first_reaching(self, target: u64) -> u64 {
        if target == 0 {
            return 0;
        }
        if self.cost == self.length_um {
            return target.min(self.length_um);
        }
        // floor((cost·p + half) / length) ≥ target  ⇔  cost·p ≥ target·length − half.
        let (length, half) = (u128::from(self.length_um), u128::from(self.length_um / 2));
        let least = (u128::from(target) * length).saturating_sub(half);
        (least.div_ceil(u128::from(self.cost)) as u64).min(self.length_um)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inverses_agree_with_trying_every_position() {
        for (cost, length_um) in [(7, 7), (3, 10), (25, 10), (1, 9), (9, 1), (1000, 7)] {
            let scale = Scale { cost, length_um };
            assert_eq!((scale.up_to(0), scale.up_to(length_um)), (0, cost));
            for budget in 0..=cost {
                let last = (0..=length_um).rfind(|&along| scale.up_to(along) <= budget);
                assert_eq!(Some(scale.last_within(budget)), last, "{scale:?} {budget}");
                let first = (0..=length_um).find(|&along| scale.up_to(along) >= budget);
                assert_eq!(Some(scale.first_reaching(budget)), first, "{scale:?} {budget}");
            }
        }
    }
}
