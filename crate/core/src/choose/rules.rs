//! Rules that a chosen kit keeps.

use crate::colour::{chroma, hue_angle};
use crate::optics::view::View;
use crate::paint::Paint;
use crate::paint::number::PaintNumber;

/// What a painter may want to do without.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Avoid {
    /// Paints whose caution names cadmium.
    Cadmium,
    /// Paints whose caution names cobalt.
    Cobalt,
    /// Paints with any caution.
    Caution,
}

/// Rules that a chosen kit keeps; the default asks for nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rules {
    /// Paints that are in it whatever the other rules say of them.
    pub must_have: Vec<PaintNumber>,
    /// Paints that are not.
    pub must_not: Vec<PaintNumber>,
    /// What no other paint may be.
    pub avoid: Vec<Avoid>,
    /// Least Blue Wool grade, 1 to 8, of tint and masstone; a paint without a grade does not count as fast.
    pub lightfast: Option<f32>,
    /// At least so many that granulate.
    pub granulating: usize,
    /// At least so many that are transparent.
    pub transparent: usize,
    /// A yellow, a magenta or crimson, and a blue to cyan among them.
    pub triad: bool,
}

/// CIELAB hue angles of the triad's yellow, magenta and blue, ultramarine the last; the second passes 360.
const TRIAD: [[f32; 2]; 3] = [[75.0, 110.0], [330.0, 390.0], [220.0, 300.0]];

/// C* at its strongest from which a paint serves in a triad.
const STRONG: f32 = 35.0;

impl Rules {
    /// Whether a paint may be in the kit.
    pub(crate) fn allow(&self, paint: &Paint) -> bool {
        let caution = paint.caution.to_ascii_lowercase();
        let avoided = |avoid: &Avoid| match avoid {
            Avoid::Cadmium => caution.contains("cadmium"),
            Avoid::Cobalt => caution.contains("cobalt"),
            Avoid::Caution => !caution.is_empty(),
        };
        let fast =
            self.lightfast.is_none_or(|least| paint.lightfastness().is_some_and(|grade| grade >= least));
        self.must_have.contains(&paint.number)
            || !self.must_not.contains(&paint.number) && !self.avoid.iter().any(avoided) && fast
    }

    /// Groups of paints of which a kit holds at least so many, with a name for each.
    pub(crate) fn groups(&self, paints: &[&Paint], view: &View) -> Vec<Group> {
        let members = |is: &dyn Fn(&Paint) -> bool| paints.iter().map(|paint| is(paint)).collect();
        let mut groups = vec![
            Group {
                name: "granulating paints",
                least: self.granulating,
                members: members(&Paint::granulates),
            },
            Group {
                name: "transparent paints",
                least: self.transparent,
                members: members(&Paint::is_transparent),
            },
        ];
        let names = ["a triad's yellow", "a triad's magenta", "a triad's blue"];
        for (name, [from, to]) in names.into_iter().zip(TRIAD).filter(|_| self.triad) {
            let serves = |paint: &Paint| {
                let lab = view.colour(&paint.film, view.strongest_load(&paint.film));
                let angle = hue_angle(lab);
                chroma(lab) >= STRONG
                    && ((from..=to).contains(&angle) || (from..=to).contains(&(angle + 360.0)))
            };
            groups.push(Group { name, least: 1, members: members(&serves) });
        }
        groups.retain(|group| group.least > 0);
        groups
    }
}

/// Paints of which a kit holds at least so many.
#[derive(Clone, Debug)]
pub(crate) struct Group {
    pub(crate) name: &'static str,
    pub(crate) least: usize,
    /// One flag a candidate.
    pub(crate) members: Vec<bool>,
}

impl Group {
    /// How many a kit lacks.
    pub(crate) fn lacks(&self, kit: impl Iterator<Item = usize>) -> usize {
        self.least.saturating_sub(kit.filter(|paint| self.members[*paint]).count())
    }
}
