//! A panel, and how the panels follow from the outline and the seams.

use super::taper::{Taper, taper};
use crate::geometry::{Bounds, CutLine, Path, Side, polygon};
use crate::length::{Area, Length};
use crate::outline::{Opening, Outline, Rim};
use crate::published::plywood_pounds;
use crate::seams::{Seam, SeamLayout};
use serde::{Deserialize, Serialize};

/// A board in its true shape, in deck coordinates.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Panel {
    /// Label, unique on the boat.
    pub label: String,
    /// The board that it is of, counted from the bow from 1.
    pub board: usize,
    /// Its edge: closed, with every side's kind.
    pub shape: Path<Edge>,
    /// The openings in it.
    pub openings: Vec<PanelOpening>,
    /// The least rectangle around it: what is sawn from the sheet first.
    pub bounds: Bounds,
    /// Where its edges at seams are not square to the boat: how they run on that rectangle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taper: Option<Taper>,
    /// Extent of that rectangle athwart.
    pub length: Length,
    /// Extent of that rectangle fore and aft.
    pub width: Length,
    /// The way the face grain, the strength axis, runs.
    pub strength_axis: Axis,
    /// Area without the openings.
    pub area: Area,
    /// Both diagonals of the rectangle: they are equal when it is square.
    pub diagonal: Length,
    /// Weight in pounds, dry; none where the thickness is not known.
    pub weight_lb: Option<f64>,
}

/// An opening in a panel.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PanelOpening {
    /// The opening's name.
    pub name: String,
    /// What it is for.
    pub purpose: Option<String>,
    /// Its edge, in deck coordinates.
    pub shape: Path<()>,
    /// The least rectangle around it.
    pub bounds: Bounds,
}

/// What a side of a panel is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Edge {
    /// On the outline of the deck.
    Perimeter {
        /// Which part of it.
        rim: Rim,
    },
    /// In the motor notch.
    Notch,
    /// At a seam.
    Seam {
        /// Number of the seam, from the bow.
        seam: usize,
        /// Number of the member under it; none where it was not told.
        member: Option<usize>,
    },
    /// At a joint along the boat.
    Joint {
        /// Number of the joint.
        joint: usize,
    },
}

/// A seam as far as panels are cut by it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct SeamLine {
    /// Aft edge of the board forward of it.
    pub fore: Length,
    /// Fore edge of the board aft of it.
    pub aft: Length,
    /// Number of the member that it lies on, where that is known.
    pub member: Option<usize>,
    /// How much further aft its starboard end lies than its port end, over the beam; stations are at the centreline.
    pub slant: Length,
}

impl SeamLine {
    /// A seam on a member that is not told.
    pub fn new(fore: Length, aft: Length) -> SeamLine {
        SeamLine { fore, aft, member: None, slant: Length::ZERO }
    }

    /// With its starboard end so much further aft than its port end.
    #[must_use]
    pub fn slanted(mut self, slant: Length) -> SeamLine {
        self.slant = slant;
        self
    }

    /// The line on a deck of that beam through a station at the centreline.
    fn line(&self, station: Length, beam: Length) -> CutLine {
        CutLine::slanted(station - self.slant / 2, self.slant, beam)
    }

    /// On the member of that number.
    #[must_use]
    pub fn on(mut self, member: usize) -> SeamLine {
        self.member = Some(member);
        self
    }
}

impl From<&Seam> for SeamLine {
    fn from(seam: &Seam) -> SeamLine {
        SeamLine::new(seam.fore, seam.aft).on(seam.member).slanted(seam.slant())
    }
}

/// The way a strength axis runs on the deck.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Axis {
    /// Across the boat: along the cross members.
    Athwart,
    /// Along the boat: across the cross members.
    ForeAndAft,
}

impl Edge {
    fn of(rim: Rim) -> Edge {
        match rim {
            Rim::Notch => Edge::Notch,
            rim => Edge::Perimeter { rim },
        }
    }
}

/// The panels of a layout, from the bow aft and from port to starboard.
///
/// # Examples
/// ```
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::outline::{Deck, Parametric};
/// use deck_core::panels::panels;
/// use deck_core::seams::{BoardStock, Rules, SeamProblem, seams};
/// use deck_core::Length;
/// let inches = Length::inches;
/// let outline = Deck::Parametric(Parametric::new(inches(96), inches(96))).outline()?;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(96), inches(24), inches(2)))?;
/// let sheets = vec![BoardStock { label: "48 x 96".into(), width: inches(48) }];
/// let found = seams(&SeamProblem::new(&frame, inches(96), sheets, Rules::new("1/2 in".parse()?)));
/// let boards = panels(&outline, &found.layouts[0], &[], "3/4 in".parse()?);
/// assert_eq!(boards.len(), 2);
/// assert_eq!(boards[0].weight_lb, Some(73.6)); // 32 ft² at 2.3 lb/ft²
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn panels(outline: &Outline, layout: &SeamLayout, openings: &[Opening], thickness: Length) -> Vec<Panel> {
    let seams: Vec<SeamLine> = layout.seams.iter().map(SeamLine::from).collect();
    panels_between(outline, &seams, layout.finish, openings, Some(thickness))
}

/// The panels between seams that are told by their stations, from the bow aft; the last board ends at `finish`. Without a
/// thickness they have no weight.
///
/// Seams are given in order from the bow, and lie within the outline. An opening that a seam crosses is in no panel.
pub fn panels_between(
    outline: &Outline,
    seams: &[SeamLine],
    finish: Length,
    openings: &[Opening],
    thickness: Option<Length>,
) -> Vec<Panel> {
    let rim = rim(outline);
    let edge = |index: usize, seam: &SeamLine| Edge::Seam { seam: index + 1, member: seam.member };
    let stern = (finish < outline.length()).then_some((CutLine::athwart(finish), Edge::Perimeter { rim: Rim::Stern }));
    let beam = outline.beam();
    let mut all = Vec::new();
    for index in 0..=seams.len() {
        // Board n lies between seams n - 1 and n; the first and the last have only one.
        let before = index.checked_sub(1).and_then(|before| Some((before, seams.get(before)?)));
        let fore = before.map(|(before, seam)| (seam.line(seam.aft, beam), edge(before, seam)));
        let aft = seams.get(index).map(|seam| (seam.line(seam.fore, beam), edge(index, seam))).or(stern);
        let (parts, board) = (rim.strip_along(fore, aft), index + 1);
        let count = parts.len();
        all.extend(
            parts
                .into_iter()
                .enumerate()
                .map(|(index, shape)| panel(label(board, index, count), board, shape, openings, thickness)),
        );
    }
    all
}

/// A panel of a shape that was cut out otherwise than between seams: a patch.
pub fn panel_cut_out(
    label: String,
    board: usize,
    shape: Path<Edge>,
    openings: &[Opening],
    thickness: Option<Length>,
) -> Panel {
    panel(label, board, shape, openings, thickness)
}

fn label(board: usize, index: usize, count: usize) -> String {
    match (count, index) {
        (1, _) => board.to_string(),
        (2, 0) => format!("{board}P"),
        (2, _) => format!("{board}S"),
        // More parts than letters no outline has; the number then follows the board's after a dot.
        (_, index) => match u8::try_from(index).ok().filter(|index| *index < 26) {
            Some(index) => format!("{board}{}", char::from(b'a' + index)),
            None => format!("{board}.{index}"),
        },
    }
}

/// The outline with its sides marked as a panel's are.
pub(super) fn rim(outline: &Outline) -> Path<Edge> {
    outline.path().map(|rim| Edge::of(*rim))
}

pub(super) fn panel(
    label: String,
    board: usize,
    shape: Path<Edge>,
    openings: &[Opening],
    thickness: Option<Length>,
) -> Panel {
    let bounds = shape.bounds();
    let openings: Vec<PanelOpening> = openings.iter().filter_map(|opening| within(opening, &shape, bounds)).collect();
    let holes: i128 = openings.iter().map(|opening| opening.shape.area()).sum();
    let area = Area::from_square_nanometres(shape.area() - holes);
    Panel {
        label,
        board,
        openings,
        taper: taper(&shape, bounds),
        length: bounds.breadth(),
        width: bounds.depth(),
        bounds,
        strength_axis: Axis::Athwart,
        area,
        diagonal: bounds.breadth().hypotenuse(bounds.depth()),
        weight_lb: thickness.map(|thickness| plywood_pounds(area, thickness)),
        shape,
    }
}

/// The opening, where it lies in the panel.
fn within(opening: &Opening, shape: &Path<Edge>, panel: Bounds) -> Option<PanelOpening> {
    let path = opening.path();
    let bounds = path.bounds();
    let apart = bounds.aft <= panel.fore
        || bounds.fore >= panel.aft
        || bounds.starboard <= panel.port
        || bounds.port >= panel.starboard;
    (!apart && polygon::contains(shape, &path)).then(|| PanelOpening {
        name: opening.name.clone(),
        purpose: opening.purpose.clone(),
        shape: path,
        bounds,
    })
}

impl Panel {
    /// The sides of one kind of edge.
    pub fn sides(&self, kind: impl Fn(Edge) -> bool) -> impl Iterator<Item = &Side<Edge>> {
        self.shape.sides().iter().filter(move |side| kind(side.edge))
    }
}
