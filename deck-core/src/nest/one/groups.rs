//! Rectangles by the room that they leave, and how many of a room there may be.

/// Room beside a rectangle and above it, by points.
pub(super) type Room = (u32, u32);

/// Rectangles that leave the same room.
#[derive(Debug, Clone, Default)]
pub(super) struct Group {
    /// Room above, by points.
    pub(super) above: u32,
    /// Those that were taken up, by reduced value, the highest first.
    pub(super) taken: Vec<(i64, u32)>,
    /// Values of the best that were made, as many as the beam is wide.
    best: Vec<i64>,
}

/// No group.
const NONE: u32 = u32::MAX;

/// All groups.
#[derive(Debug)]
pub(super) struct Groups {
    all: Vec<Group>,
    /// For each room, the group.
    at: Vec<u32>,
    /// For each room beside, the groups.
    rows: Vec<Vec<u32>>,
    columns: usize,
    /// Rectangles of a room that may be made.
    beam: usize,
    left_out: bool,
}

impl Groups {
    pub(super) fn new(rows: usize, columns: usize, beam: usize) -> Groups {
        let at = vec![NONE; rows * columns];
        Groups { all: Vec::new(), at, rows: vec![Vec::new(); rows], columns, beam, left_out: false }
    }

    /// True where the beam is as wide as anyone could wish.
    pub(super) fn is_wide(&self) -> bool {
        self.beam == usize::MAX
    }

    /// True where a rectangle was turned away.
    pub(super) fn left_out(&self) -> bool {
        self.left_out
    }

    /// The groups of each room beside, where there are any.
    pub(super) fn rows(&self) -> impl Iterator<Item = (usize, impl Iterator<Item = &Group>)> {
        self.rows
            .iter()
            .enumerate()
            .filter(|(_, row)| !row.is_empty())
            .map(|(beside, row)| (beside, row.iter().filter_map(|group| self.all.get(*group as usize))))
    }

    /// Adds a rectangle that is taken up.
    pub(super) fn take(&mut self, room: Room, reduced: i64, rect: u32) {
        if let Some(group) = self.group(room) {
            let place = group.taken.partition_point(|other| other.0 >= reduced);
            group.taken.insert(place, (reduced, rect));
        }
    }

    /// True where the beam is wide enough for another rectangle that leaves this room.
    pub(super) fn has_place(&mut self, reduced: i64, room: Room) -> bool {
        if self.is_wide() {
            return true;
        }
        let at = room.0 as usize * self.columns + room.1 as usize;
        let group = self.at.get(at).and_then(|group| self.all.get(*group as usize));
        let has = group.is_none_or(|group| group.best.len() < self.beam || group.best.last() < Some(&reduced));
        self.left_out |= !has;
        has
    }

    /// Counts a rectangle that was made.
    pub(super) fn take_place(&mut self, reduced: i64, room: Room) {
        let beam = self.beam;
        if self.is_wide() {
            return;
        }
        if let Some(group) = self.group(room) {
            let place = group.best.partition_point(|best| *best >= reduced);
            group.best.insert(place, reduced);
            group.best.truncate(beam);
        }
    }

    /// The group of a room, made where there is none.
    fn group(&mut self, room: Room) -> Option<&mut Group> {
        let place = self.at.get_mut(room.0 as usize * self.columns + room.1 as usize)?;
        if *place == NONE {
            *place = u32::try_from(self.all.len()).unwrap_or(NONE);
            self.all.push(Group { above: room.1, ..Group::default() });
            self.rows.get_mut(room.0 as usize)?.push(*place);
        }
        self.all.get_mut(*place as usize)
    }
}
