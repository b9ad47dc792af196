//! What can go wrong, in words for the person who can mend it.

use std::fmt;

use crate::text::decimal::Decimal;

/// Everything this crate refuses, as one type.
///
/// The kinds are public because callers answer each differently: an unknown
/// version asks for a newer program, a damaged link for the link again.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Error {
    /// No paint of this key or number is on the shelf.
    UnknownPaint(String),
    /// The link says a version of the format this program does not read.
    UnknownVersion {
        /// The link's.
        version: u8,
        /// The newest that this program reads.
        newest: u8,
    },
    /// The link holds a section of this tag that this program does not read.
    UnknownSection(u32),
    /// The link is cut short, changed or not one of ours; says which.
    DamagedLink(&'static str),
    /// There are more of something than may be, or fewer.
    Count {
        /// So many there are.
        count: usize,
        /// What was counted.
        things: &'static str,
        /// What sets the limit, with its verb: "a kit keeps".
        holder: &'static str,
        /// Fewest.
        least: usize,
        /// Most.
        most: usize,
    },
    /// More pans than the tin holds.
    TinTooSmall {
        /// Pans packed.
        pans: usize,
        /// Pans the tin holds.
        capacity: usize,
    },
    /// A text has more characters than it may.
    TooLong {
        /// Which text.
        what: &'static str,
        /// Most characters.
        most: usize,
    },
    /// A number is not finite or out of its range.
    OutOfRange {
        /// Which number.
        what: String,
        /// The number.
        value: f32,
        /// Least it may be.
        least: f32,
        /// Most it may be.
        most: f32,
    },
    /// A load is none that is kept.
    Load {
        /// The load.
        load: f32,
        /// Whose, with an article.
        of: &'static str,
    },
    /// A colour is none that such a thing has.
    Colour {
        /// L*, a*, b*.
        lab: [f32; 3],
        /// What it cannot be, with an article, and why.
        what: &'static str,
    },
    /// A paper is so dark that washes are not seen on it.
    DarkPaper {
        /// L*, a*, b*.
        lab: [f32; 3],
        /// L* of the darkest.
        darkest: f32,
    },
    /// A part of a mixture is negative or not finite.
    Part(f32),
    /// A target's weight is negative or not finite.
    Weight(f32),
    /// Bytes do not make up whole rows of pixels.
    PictureSize {
        /// Bytes there are.
        bytes: usize,
        /// Pixels of a row.
        width: usize,
    },
    /// A text is no day of the calendar; shows it.
    Date(String),
    /// A text may mean several paints.
    Ambiguous {
        /// The text.
        name: String,
        /// Their keys.
        keys: Vec<String>,
    },
    /// The film of this own paint's swatches is asked for and not known.
    UnknownFilm(String),
    /// More paints must be in a kit than it holds.
    TooManyRequired {
        /// Paints that must be in it.
        required: usize,
        /// Paints it holds.
        size: usize,
    },
    /// Rules leave fewer paints than a kit holds.
    TooFewAllowed {
        /// Paints they allow.
        allowed: usize,
        /// Paints it holds.
        size: usize,
    },
    /// Rules ask for more paints of a group than there are, or than a kit holds.
    TooFewOfGroup {
        /// The group.
        group: &'static str,
        /// Fewest they ask for.
        least: usize,
    },
    /// Two things have one name.
    NamedTwice(String),
    /// A table could not be read; names the line and the reason.
    Table {
        /// Line in the file, counted from 1; 0 for the file as a whole.
        line: usize,
        /// What is wrong there.
        reason: String,
    },
    /// Something that is needed is not there; says what.
    Missing(&'static str),
    /// A number is not finite; says of what.
    NotFinite(&'static str),
    /// A photo does not tell what it was asked for: another place of it may.
    Picture(&'static str),
    /// A text is not written as it has to be; shows it, and says how.
    Unreadable(String),
    /// Things do not go together; says which.
    Refused(&'static str),
    /// A value is not what it has to be; shows it.
    Value(String),
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownPaint(key) => write!(f, "no paint \"{key}\" on the shelf"),
            Self::UnknownVersion { version, newest } => {
                write!(f, "the link is of version {version}; this program reads versions up to {newest}")
            }
            Self::UnknownSection(tag) => write!(
                f,
                "the link holds something this version does not know (section {tag}): open it with a newer one"
            ),
            Self::DamagedLink(reason) => write!(f, "the link is damaged: {reason}"),
            Self::Count { count, things, holder, least: 0, most } => {
                write!(f, "{count} {things}: {holder} at most {most}")
            }
            Self::Count { count, things, holder, least, most } => {
                write!(f, "{count} {things}: {holder} {least} to {most}")
            }
            Self::TinTooSmall { pans, capacity } => write!(f, "{pans} pans do not fit a tin of {capacity}"),
            Self::TooLong { what, most } => write!(f, "{what} is longer than {most} characters"),
            Self::OutOfRange { what, value, least, most } => {
                let [value, least, most] = [*value, *least, *most].map(Decimal);
                write!(f, "{what} is {value}, not between {least} and {most}")
            }
            Self::Load { load, of } => write!(f, "load {}: {of}'s is within 1/32 and 4", Decimal(*load)),
            Self::Colour { lab, what } => {
                let [l, a, b] = lab.map(Decimal);
                write!(f, "L* {l} a* {a} b* {b} cannot be {what}")
            }
            Self::DarkPaper { lab, darkest } => {
                let [l, a, b, darkest] = [lab[0], lab[1], lab[2], *darkest].map(Decimal);
                write!(
                    f,
                    "L* {l} a* {a} b* {b} cannot be a paper: washes are not seen on paper darker than L* {darkest}"
                )
            }
            Self::Part(part) => write!(f, "{} parts: a part is a number from 0 up", Decimal(*part)),
            Self::Weight(weight) => write!(f, "weight {}: a weight is a number from 0 up", Decimal(*weight)),
            Self::PictureSize { bytes, width } => {
                write!(f, "{bytes} bytes are not a picture {width} pixels wide")
            }
            Self::Date(date) => write!(f, "date \"{date}\": a day is written yyyy-mm-dd"),
            Self::Ambiguous { name, keys } => {
                write!(f, "\"{name}\" may be any of {}: name one", keys.join(", "))
            }
            Self::UnknownFilm(paint) => write!(f, "the film of {paint}'s swatches is not known"),
            Self::TooManyRequired { required, size } => {
                write!(f, "{required} paints are a must: the kit holds {size}")
            }
            Self::TooFewAllowed { allowed, size } => {
                write!(f, "the rules allow {allowed} paints: the kit holds {size}")
            }
            Self::TooFewOfGroup { group, least } => {
                write!(f, "the rules ask for {group}, at least {least}: there are not so many")
            }
            Self::NamedTwice(name) => write!(f, "two own paints are called \"{name}\""),
            Self::Table { line: 0, reason } => write!(f, "the table: {reason}"),
            Self::Table { line, reason } => write!(f, "line {line}: {reason}"),
            Self::NotFinite(what) => write!(f, "{what} is not finite"),
            Self::Missing(reason) | Self::Picture(reason) | Self::Refused(reason) => f.write_str(reason),
            Self::Unreadable(reason) | Self::Value(reason) => f.write_str(reason),
        }
    }
}

impl std::error::Error for Error {}

impl Error {
    /// A table's fault at a line (counted from 1).
    pub(crate) fn table(line: usize, reason: impl Into<String>) -> Self {
        Self::Table { line, reason: reason.into() }
    }
}
