//! Roles: what a paint is there for in its kit, computed from colours.

use crate::colour::WheelPoint;
use crate::colour::outline::Outline;
use crate::paint::Paint;
use crate::paint::number::PaintNumber;
use crate::reach::Reach;

/// What a paint is there for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// One of the three paints whose mixes span the largest area of the wheel.
    Primary,
    /// Not one of the three, but it stands well outside of what they span.
    Secondary,
    /// It makes a pure or near grey with that paint.
    Complement(PaintNumber),
    /// Its masstone is dark: L* at most 30.
    Dark,
    /// An earth.
    Earth,
    /// It granulates.
    Texture,
}

/// L* of a masstone up to which a paint is a dark.
const DARK: f32 = 30.0;

/// How far outside of the primaries' outline, in parts of it, a secondary stands.
const WIDENS: f32 = 1.1;

/// Places in the kit of the three paints that span the largest area of the wheel, by all three pairs.
pub(crate) fn primaries(reach: &Reach, outlines: &[(Vec<usize>, Outline)]) -> Vec<usize> {
    let count = reach.paints().len();
    let pair = |a: usize, b: usize| {
        // Singles come first, then pairs in order.
        count + a * count - a * (a + 1) / 2 + b - a - 1
    };
    let mut best = (0.0, Vec::new());
    for a in 0..count {
        for b in a + 1..count {
            for c in b + 1..count {
                let [ab, ac, bc] = [pair(a, b), pair(a, c), pair(b, c)].map(|at| &outlines[at].1);
                let area = ab.area_with([ac, bc]);
                if area > best.0 {
                    best = (area, vec![a, b, c]);
                }
            }
        }
    }
    best.1
}

/// Roles that where a paint stands gives it, its primaries and their outline known.
pub(crate) fn own_roles(
    paint: &Paint,
    is_primary: bool,
    primaries: &Outline,
    strongest: WheelPoint,
    masstone_lightness: f32,
) -> Vec<Role> {
    let widens = strongest.radius() > WIDENS * primaries.radius(strongest.angle());
    [
        (is_primary, Role::Primary),
        (!is_primary && widens, Role::Secondary),
        (masstone_lightness <= DARK, Role::Dark),
        (paint.is_earth(), Role::Earth),
        (paint.granulates(), Role::Texture),
    ]
    .into_iter()
    .filter(|(is, _)| *is)
    .map(|(_, role)| role)
    .collect()
}
