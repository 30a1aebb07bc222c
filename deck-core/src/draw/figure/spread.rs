//! Pushes labels apart along a line.

use super::Micrometres;

/// Places for the middles of labels, so that none overlap and the order stays, each as near as can be to where it belongs.
///
/// `wanted` holds the middle that each label would like and its extent along the line, in order of the middles. `gap` is
/// left between neighbours. The labels stay between `low` and `high` where there is room for all of them; where there is
/// not, they start at `low` and run over `high`.
///
/// # Method
/// The sum of squared displacements is least. With the extents taken off, the places must only be in order, which is
/// isotonic regression, solved by pooling adjacent violators (Ayer and others, Annals of Mathematical Statistics 26, 1955).
/// Bounds are met by clamping its result (Barlow and others, Statistical Inference under Order Restrictions, 1972; both
/// from memory).
///
/// # Cost
/// Linear in the number of labels.
pub fn spread(
    wanted: &[(Micrometres, Micrometres)],
    gap: Micrometres,
    low: Micrometres,
    high: Micrometres,
) -> Vec<Micrometres> {
    let offsets = offsets(wanted, gap);
    let free: Vec<Micrometres> = wanted.iter().zip(&offsets).map(|(label, offset)| label.0 - offset).collect();
    let half = |label: Option<&(Micrometres, Micrometres)>| label.map_or(0, |label| label.1 / 2);
    let least = low + half(wanted.first());
    let most = (high - half(wanted.last()) - offsets.last().copied().unwrap_or(0)).max(least);
    pooled(&free).into_iter().zip(offsets).map(|(place, offset)| place.clamp(least, most) + offset).collect()
}

/// Distances of the middles from the first one when the labels stand shoulder to shoulder.
fn offsets(wanted: &[(Micrometres, Micrometres)], gap: Micrometres) -> Vec<Micrometres> {
    let mut offset = 0;
    let mut before: Option<Micrometres> = None;
    wanted
        .iter()
        .map(|&(_, extent)| {
            // Halves are rounded up, so that odd extents do not overlap by a micrometre.
            offset += before.map_or(0, |before| (before + extent + 1) / 2 + gap);
            before = Some(extent);
            offset
        })
        .collect()
}

/// The nearest sequence that does not fall, block by block.
fn pooled(values: &[Micrometres]) -> Vec<Micrometres> {
    struct Block {
        sum: i128,
        count: i128,
    }
    let mut blocks: Vec<Block> = Vec::new();
    for &value in values {
        let mut block = Block { sum: i128::from(value), count: 1 };
        while let Some(last) = blocks.pop_if(|last| last.sum * block.count > block.sum * last.count) {
            block = Block { sum: last.sum + block.sum, count: last.count + block.count };
        }
        blocks.push(block);
    }
    let mut places = Vec::with_capacity(values.len());
    for block in blocks {
        // The mean of i64 values is one; rounding down keeps the order of the blocks.
        let mean = i64::try_from(block.sum.div_euclid(block.count)).unwrap_or(i64::MAX);
        places.extend((0..block.count).map(|_| mean));
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_that_have_room_stay() {
        assert_eq!(spread(&[(10, 4), (20, 4), (30, 4)], 1, 0, 100), [10, 20, 30]);
    }

    #[test]
    fn two_on_one_spot_part_evenly() {
        assert_eq!(spread(&[(50, 10), (50, 10)], 2, 0, 100), [44, 56]);
    }

    #[test]
    fn a_push_is_passed_on_and_the_bounds_hold() {
        let places = spread(&[(1, 10), (2, 10), (3, 10), (95, 10)], 0, 0, 100);
        assert_eq!(places, [5, 15, 25, 95]);
        let crowded = spread(&[(0, 30), (0, 30), (0, 30)], 0, 0, 60);
        assert_eq!(crowded, [15, 45, 75]);
        assert!(spread(&[], 1, 0, 10).is_empty());
    }

    #[test]
    fn nothing_ever_overlaps() {
        // A fixed scatter of wanted places from a small multiplicative generator.
        let mut state: i64 = 12_345;
        for count in 1..40 {
            let mut wanted: Vec<(i64, i64)> = (0..count)
                .map(|_| {
                    state = state * 16_807 % 2_147_483_647;
                    (state % 5000, 1 + state % 97)
                })
                .collect();
            wanted.sort_unstable();
            let places = spread(&wanted, 3, -100, 5100);
            for index in 1..wanted.len() {
                let room = places[index] - places[index - 1];
                assert!(2 * room >= wanted[index].1 + wanted[index - 1].1 + 6, "{places:?}");
            }
        }
    }
}
