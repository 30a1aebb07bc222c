//! The places at which a cut can matter, along one side of a sheet.
//!
//! # Method
//! Normal positions: sums of extents (Herz 1972; Christofides and Whitlock 1977). Raster points: of the normal
//! positions only those that are the largest one not above what another leaves of the side (Terno, Lindemann and
//! Scheithauer 1987; Scheithauer 1997).

/// Positions along one side, ascending, zero first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Raster {
    points: Vec<i64>,
    whole: i64,
    /// The index of the last point not above each whole number up to the side; empty where the side is too long.
    floors: Vec<u32>,
    /// True where copies have no limit and no sum that matters is left out.
    closed: bool,
}

/// Sides of more units than this are searched by halving and not looked up in a table.
const LONGEST_TABLE: i64 = 1 << 18;

/// Sides of more units than this have their sums gathered in a list and not in a table.
const LONGEST_MARKS: i64 = 1 << 20;

impl Raster {
    /// All sums of extents, each at most so many times, up to the side; none where they are more than `most`.
    pub(super) fn normal(extents: &[(i64, u64)], whole: i64, most: usize) -> Option<Raster> {
        let points = if whole <= LONGEST_MARKS { marked(extents, whole) } else { listed(extents, whole, most)? };
        let closed =
            extents.iter().all(|(extent, copies)| whole / extent.max(&1) < i64::try_from(*copies).unwrap_or(i64::MAX));
        (points.len() <= most).then(|| Raster { closed, ..Raster::of(points, whole) })
    }

    fn of(points: Vec<i64>, whole: i64) -> Raster {
        let mut floors = Vec::new();
        if whole <= LONGEST_TABLE {
            floors.reserve_exact(usize::try_from(whole + 1).unwrap_or(0));
            for (index, &point) in (0_u32..).zip(&points) {
                let next = points.get(index as usize + 1).copied().unwrap_or(whole + 1);
                floors.extend((point..next).map(|_| index));
            }
        }
        Raster { points, whole, floors, closed: false }
    }

    /// The raster points of normal positions of extents without a limit on copies.
    pub(super) fn reduced(&self) -> Raster {
        let mut points: Vec<i64> =
            self.points.iter().map(|point| self.point(self.floor(self.whole - point))).chain([0]).collect();
        points.sort_unstable();
        points.dedup();
        Raster { closed: self.closed, ..Raster::of(points, self.whole) }
    }

    /// Multiples of each extent alone, a few hundred of each: less than all that matters.
    pub(super) fn multiples(extents: impl Iterator<Item = i64>, whole: i64) -> Raster {
        const MOST: i64 = 256;
        let multiples =
            extents.flat_map(|extent| (1..=(whole / extent.max(1)).min(MOST)).map(move |times| times * extent));
        let mut points: Vec<i64> = multiples.chain([0]).collect();
        points.sort_unstable();
        points.dedup();
        Raster::of(points, whole)
    }

    /// About so many of the points, zero and the largest among them.
    ///
    /// Half of them are the smallest and the largest: whatever is small can then be sawn off the whole sheet without
    /// loss. The others lie evenly between.
    pub(super) fn thinned(&self, most: usize) -> Raster {
        let most = most.max(2);
        if self.points.len() <= most {
            return self.clone();
        }
        let ends = most / 4;
        let (small, rest) = self.points.split_at(ends);
        let (between, large) = rest.split_at(rest.len() - ends);
        let every = between.len().saturating_sub(1).div_ceil((most - ends * 2).max(2) - 1).max(1);
        let kept = between.iter().rev().step_by(every).chain(small).chain(large);
        let mut points: Vec<i64> = kept.copied().chain([0]).collect();
        points.sort_unstable();
        points.dedup();
        Raster::of(points, self.whole)
    }

    pub(super) fn len(&self) -> usize {
        self.points.len()
    }

    /// True where copies have no limit and no sum that matters is left out: the best of a point is then the best of
    /// every distance down to it that another point leaves.
    pub(super) fn is_closed(&self) -> bool {
        self.closed
    }

    /// True where so many of all whole numbers up to the side are points that it is faster to go through all of them.
    pub(super) fn is_dense(&self) -> bool {
        /// Whole numbers for each point at most: gathering points one by one takes so many times as long.
        const SPREAD: i64 = 4;
        self.closed && !self.floors.is_empty() && self.whole / SPREAD <= i64::try_from(self.points.len()).unwrap_or(0)
    }

    pub(super) fn points(&self) -> &[i64] {
        &self.points
    }

    pub(super) fn whole(&self) -> i64 {
        self.whole
    }

    /// The point of that index; the whole side beyond the last.
    pub(super) fn point(&self, index: usize) -> i64 {
        self.points.get(index).copied().unwrap_or(self.whole)
    }

    /// Index of the last point not above a distance; the first one for distances below zero.
    #[inline]
    pub(super) fn floor(&self, distance: i64) -> usize {
        if let Some(&index) = usize::try_from(distance).ok().and_then(|distance| self.floors.get(distance)) {
            return index as usize;
        }
        self.points.partition_point(|&point| point <= distance).saturating_sub(1)
    }

    /// Index of the first point not below a distance; the number of points where there is none.
    pub(super) fn ceil(&self, distance: i64) -> usize {
        self.points.partition_point(|&point| point < distance)
    }
}

/// Sums marked in a table of the whole side. Each entry counts the copies of the extent at hand that a sum takes.
fn marked(extents: &[(i64, u64)], whole: i64) -> Vec<i64> {
    const NEVER: u64 = u64::MAX;
    let length = usize::try_from(whole).unwrap_or(0) + 1;
    let mut taken = vec![NEVER; length];
    if let Some(zero) = taken.first_mut() {
        *zero = 0;
    }
    for &(extent, copies) in extents {
        let Ok(extent) = usize::try_from(extent) else { continue };
        if extent == 0 || extent >= length {
            continue;
        }
        for count in &mut taken {
            if *count != NEVER {
                *count = 0;
            }
        }
        for at in extent..length {
            let before = taken.get(at - extent).copied().unwrap_or(NEVER);
            if let Some(count) = taken.get_mut(at)
                && *count == NEVER
                && before < copies
            {
                *count = before + 1;
            }
        }
    }
    (0..).zip(taken).filter(|(_, taken)| *taken != NEVER).map(|(at, _)| at).collect()
}

/// Sums in an ascending list, none where they become too many.
fn listed(extents: &[(i64, u64)], whole: i64, most: usize) -> Option<Vec<i64>> {
    let mut points = vec![0];
    for &(extent, copies) in extents.iter().filter(|(extent, _)| *extent > 0) {
        let mut layer = points.clone();
        for _ in 0..copies {
            layer.retain_mut(|point| {
                *point += extent;
                *point <= whole && points.binary_search(point).is_err()
            });
            if layer.is_empty() {
                break;
            }
            points.extend(&layer);
            points.sort_unstable();
            if points.len() > most {
                return None;
            }
        }
    }
    Some(points)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_are_found_both_ways() {
        let extents = [(3, 2), (5, 1), (20, 9)];
        let expected = [0, 3, 5, 6, 8, 11];
        assert_eq!(marked(&extents, 14), expected);
        assert_eq!(listed(&extents, 14, 100).unwrap(), expected);
        assert_eq!(listed(&extents, 14, 4), None);
        assert_eq!(marked(&[(4, u64::MAX)], 13), [0, 4, 8, 12]);
    }

    #[test]
    fn floors_and_ceilings() {
        let raster = Raster::normal(&[(4, 9)], 13, 100).unwrap();
        assert_eq!([0, 3, 4, 12, 13, 99].map(|at| raster.floor(at)), [0, 0, 1, 3, 3, 3]);
        assert_eq!([0, 1, 4, 12, 13].map(|at| raster.ceil(at)), [0, 1, 1, 3, 4]);
        let long = Raster::normal(&[(1 << 30, 9)], 13 << 28, 100).unwrap();
        assert_eq!([0, (1 << 30) - 1, 1 << 30, 13 << 28].map(|at| long.floor(at)), [0, 0, 1, 3]);
    }

    #[test]
    fn raster_points_are_what_another_leaves() {
        // Of 0 4 7 8 11 12: 13 leaves 12, 9 leaves 8, 6 leaves 4, 5 leaves 4, 2 leaves 0, 1 leaves 0.
        let raster = Raster::normal(&[(4, 9), (7, 9)], 13, 100).unwrap();
        assert_eq!(raster.points(), [0, 4, 7, 8, 11, 12]);
        assert_eq!(raster.reduced().points(), [0, 4, 8, 12]);
        assert_eq!(raster.thinned(3).points(), [0, 7, 12]);
    }
}
