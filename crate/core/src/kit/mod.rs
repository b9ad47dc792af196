//! Kits: the pans a painter packs.

pub(crate) mod brief;
pub mod link;
pub(crate) mod named_targets;
pub(crate) mod puddle;
pub(crate) mod targets;

use crate::error::Error;
use crate::kit::brief::Brief;
use crate::kit::named_targets::NamedTargets;
use crate::kit::puddle::Puddle;
use crate::optics::paper::{KitPaper, Stock};
use crate::paint::number::PaintNumber;
use crate::swatches::own_paint::OwnPaint;
use crate::text::limits::counted;
use crate::text::words::{clean, short_line};

/// Most pans a kit can hold.
pub const MOST_PANS: usize = 48;

/// Longest title in characters.
pub const LONGEST_TITLE: usize = 60;

/// Most puddles that are kept with a kit.
pub const MOST_PUDDLES: usize = 24;

/// Most sets of targets a kit keeps.
pub const MOST_NAMED_TARGETS: usize = 4;

/// Most own paints a kit brings along: as many as the page keeps, as it keeps kits by this text.
pub const MOST_OWN_PAINTS: usize = 60;

/// A pan: one paint, or two side by side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Pan {
    /// Filled with one paint.
    Whole(PaintNumber),
    /// Split: two half fills side by side.
    Split(PaintNumber, PaintNumber),
}

impl Pan {
    /// The paints in it, left to right.
    pub fn paints(self) -> impl Iterator<Item = PaintNumber> {
        let (first, second) = match self {
            Self::Whole(paint) => (paint, None),
            Self::Split(left, right) => (left, Some(right)),
        };
        std::iter::once(first).chain(second)
    }
}

/// A kit. Built by [`Kit::new`], so that its limits hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kit {
    title: String,
    capacity: usize,
    paper: KitPaper,
    pans: Vec<Pan>,
    puddles: Vec<Puddle>,
    targets: Vec<NamedTargets>,
    own_paints: Vec<OwnPaint>,
    brief: Brief,
}

impl Kit {
    /// A kit of `pans` in a tin that holds `capacity`, painted on `stock`.
    ///
    /// The title is trimmed; control characters in it become spaces.
    ///
    /// # Errors
    ///
    /// A capacity of 0 or above [`MOST_PANS`], more pans than it holds, a
    /// title longer than [`LONGEST_TITLE`] characters.
    pub fn new(title: &str, capacity: usize, stock: Stock, pans: Vec<Pan>) -> Result<Self, Error> {
        let title = short_line(title, "the title", LONGEST_TITLE)?;
        counted(capacity, 1..=MOST_PANS, "pans", "a tin holds")?;
        if pans.len() > capacity {
            return Err(Error::TinTooSmall { pans: pans.len(), capacity });
        }
        Ok(Self {
            title,
            capacity,
            paper: KitPaper::Stock(stock),
            pans,
            puddles: Vec::new(),
            targets: Vec::new(),
            own_paints: Vec::new(),
            brief: Brief::default(),
        })
    }

    /// The same kit on this paper.
    #[must_use]
    pub fn with_paper(self, paper: KitPaper) -> Self {
        Self { paper, ..self }
    }

    /// The same kit with these puddles.
    ///
    /// # Errors
    ///
    /// More than [`MOST_PUDDLES`].
    pub fn with_puddles(self, puddles: Vec<Puddle>) -> Result<Self, Error> {
        counted(puddles.len(), 0..=MOST_PUDDLES, "puddles", "a kit keeps")?;
        Ok(Self { puddles, ..self })
    }

    /// The same kit with these targets.
    ///
    /// # Errors
    ///
    /// More than [`MOST_NAMED_TARGETS`].
    pub fn with_targets(self, targets: Vec<NamedTargets>) -> Result<Self, Error> {
        counted(targets.len(), 0..=MOST_NAMED_TARGETS, "places", "a kit keeps")?;
        Ok(Self { targets, ..self })
    }

    /// The same kit with the painter's own paints it is made of, numbered from [`PaintNumber::FIRST_OWN`] on.
    ///
    /// # Errors
    ///
    /// More than [`MOST_OWN_PAINTS`]; two of one name.
    pub fn with_own_paints(self, own_paints: Vec<OwnPaint>) -> Result<Self, Error> {
        counted(own_paints.len(), 0..=MOST_OWN_PAINTS, "own paints", "a kit brings")?;
        let twice = own_paints
            .iter()
            .enumerate()
            .find(|(i, paint)| own_paints[..*i].iter().any(|other| other.name() == paint.name()));
        if let Some((_, paint)) = twice {
            return Err(Error::NamedTwice(paint.name().to_owned()));
        }
        Ok(Self { own_paints, ..self })
    }

    /// The same kit with a note and tasks for a class.
    #[must_use]
    pub fn with_brief(self, brief: Brief) -> Self {
        Self { brief, ..self }
    }

    /// The same kit without characters in its texts that nobody sees; paints that then have one name are told apart.
    ///
    /// Whoever takes texts from a person cleans them so before they go into a
    /// link; [`link::decode`](crate::link::decode()) does it with those of old links.
    #[must_use]
    pub fn cleaned(mut self) -> Self {
        clean(&mut self.title);
        self.targets.iter_mut().for_each(NamedTargets::clean);
        self.brief.clean();
        for i in 0..self.own_paints.len() {
            let (others, rest) = self.own_paints.split_at_mut(i);
            rest[0].clean();
            let name = rest[0].name().to_owned();
            let mut number = 1;
            while others.iter().any(|other| other.name() == rest[0].name()) {
                number += 1;
                rest[0].rename(&name, number);
            }
        }
        self
    }

    /// The note and tasks for a class, perhaps empty.
    #[must_use]
    pub const fn brief(&self) -> &Brief {
        &self.brief
    }

    /// The own paints it brings along; the first has number [`PaintNumber::FIRST_OWN`].
    #[must_use]
    pub fn own_paints(&self) -> &[OwnPaint] {
        &self.own_paints
    }

    /// The targets it is for, in order.
    #[must_use]
    pub fn targets(&self) -> &[NamedTargets] {
        &self.targets
    }

    /// Its title, perhaps empty.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// Pans the tin holds, 1 to [`MOST_PANS`].
    #[must_use]
    pub const fn capacity(&self) -> usize {
        self.capacity
    }

    /// The paper it paints on.
    #[must_use]
    pub const fn paper(&self) -> KitPaper {
        self.paper
    }

    /// Its paper by name; of an own paper the one that is chosen where none is.
    #[must_use]
    pub fn stock(&self) -> Stock {
        match self.paper {
            KitPaper::Stock(stock) => stock,
            KitPaper::Own(_) => Stock::default(),
        }
    }

    /// The puddles kept with it, in order.
    #[must_use]
    pub fn puddles(&self) -> &[Puddle] {
        &self.puddles
    }

    /// The pans, in order.
    #[must_use]
    pub fn pans(&self) -> &[Pan] {
        &self.pans
    }

    /// Every paint packed, in order, each once.
    #[must_use]
    pub fn paints(&self) -> Vec<PaintNumber> {
        let mut paints = Vec::new();
        for paint in self.pans.iter().flat_map(|pan| pan.paints()) {
            if !paints.contains(&paint) {
                paints.push(paint);
            }
        }
        paints
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_paint_packed_twice_is_one_paint() {
        let kit = Kit::new(
            " Harbour\n",
            3,
            Stock::Cream,
            vec![Pan::Split(1.into(), 2.into()), Pan::Whole(2.into())],
        )
        .unwrap();
        assert_eq!(kit.title(), "Harbour");
        assert_eq!(kit.paints(), [1, 2].map(PaintNumber::new));
    }

    #[test]
    fn limits_are_named() {
        let error = |title: &str, capacity, pans| {
            Kit::new(title, capacity, Stock::Cream, pans).unwrap_err().to_string()
        };
        assert_eq!(error("", 0, vec![]), "0 pans: a tin holds 1 to 48");
        assert_eq!(error("", 1, vec![Pan::Whole(1.into()); 2]), "2 pans do not fit a tin of 1");
        assert_eq!(error(&"x".repeat(61), 1, vec![]), "the title is longer than 60 characters");
        let puddle = Puddle::new(crate::Recipe::paint(1.into()), 1.0).unwrap();
        let kit = Kit::new("", 1, Stock::Cream, vec![]).unwrap();
        let error = kit.with_puddles(vec![puddle; 25]).unwrap_err();
        assert_eq!(error.to_string(), "25 puddles: a kit keeps at most 24");
    }
}
