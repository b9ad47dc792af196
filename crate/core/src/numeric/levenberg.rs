//! Least squares by damped steps: one driver for every fit and every search.
//!
//! K. Levenberg, Quarterly of Applied Mathematics 2 (1944) 164; D. W. Marquardt,
//! "An algorithm for least-squares estimation of nonlinear parameters", J. SIAM 11
//! (1963) 431. A step that lowers the sum is taken and the damping falls; after any
//! other the damping rises and the step is tried again. What a step is, how slopes
//! are found and how the damping enters the equations is the problem's own affair.

use num_traits::{Float, NumCast};

/// A sum of squares that is to become small.
pub trait Squares {
    /// Of the sum and the damping.
    type Number: Float;
    /// A point, with whatever has been found out there.
    type Point;
    /// What tells the way down from a point.
    type Slopes;

    /// The sum at a point.
    fn sum(&self, point: &Self::Point) -> Self::Number;

    /// The slopes at a point.
    fn slopes(&self, point: &Self::Point) -> Self::Slopes;

    /// The slopes after a step; `before` are those it was taken with. Found anew unless said otherwise.
    fn slopes_after(&self, point: &Self::Point, before: Self::Slopes) -> Self::Slopes {
        drop(before);
        self.slopes(point)
    }

    /// Where a step of this damping leads; `None` where the equations have no answer.
    ///
    /// The slopes may be corrected by what is found there.
    fn step(
        &self,
        from: &Self::Point,
        slopes: &mut Self::Slopes,
        damping: Self::Number,
    ) -> Option<Self::Point>;

    /// Whether the sum is as low as anybody wants it.
    fn enough(&self, sum: Self::Number) -> bool {
        let _ = sum;
        false
    }
}

/// How long a search goes on, and how it is damped.
#[derive(Clone, Copy, Debug)]
pub struct Limits<F> {
    /// Damping of the first step.
    pub damping: F,
    /// Least that it falls to.
    pub least_damping: F,
    /// What the damping is multiplied by after a step that does not lower the sum.
    pub rise: F,
    /// Most steps that lower the sum.
    pub steps: usize,
    /// Most steps in a row that do not.
    pub failures: usize,
    /// Most steps of both kinds.
    pub trials: usize,
    /// A step that takes off less than this part of the sum is the last.
    pub gain: F,
}

/// A lower point than `start`, or `start`, and the sum there.
///
/// A sum that is no number counts as not lower, so steps into nowhere are not taken.
///
/// ```
/// use washpath_core::levenberg::{Limits, Squares, minimise};
///
/// /// The root of a number.
/// struct Root(f64);
///
/// impl Squares for Root {
///     type Number = f64;
///     type Point = f64;
///     type Slopes = f64;
///
///     fn sum(&self, x: &f64) -> f64 {
///         (x * x - self.0).powi(2)
///     }
///
///     fn slopes(&self, x: &f64) -> f64 {
///         2.0 * x
///     }
///
///     fn step(&self, x: &f64, slope: &mut f64, damping: f64) -> Option<f64> {
///         Some(x - *slope * (x * x - self.0) / (*slope * *slope * (1.0 + damping)))
///     }
/// }
///
/// let limits = Limits { damping: 1e-2, least_damping: 0.0, rise: 5.0, steps: 50, failures: 10, trials: 500, gain: 1e-6 };
/// let (root, _) = minimise(&Root(2.0), 1.0, &limits);
/// assert!((root - 2.0_f64.sqrt()).abs() < 1e-9);
/// ```
pub fn minimise<P: Squares>(
    problem: &P,
    start: P::Point,
    limits: &Limits<P::Number>,
) -> (P::Point, P::Number) {
    let fall = <P::Number as NumCast>::from(5.0).expect("f32 and f64 hold it");
    let (mut sum, mut point, mut damping) = (problem.sum(&start), start, limits.damping);
    if problem.enough(sum) {
        return (point, sum);
    }
    let mut slopes = problem.slopes(&point);
    let (mut steps, mut failures) = (0, 0);
    for _ in 0..limits.trials {
        let next = problem.step(&point, &mut slopes, damping).map(|next| (problem.sum(&next), next));
        let Some((lower, next)) = next.filter(|(next, _)| *next < sum) else {
            failures += 1;
            if failures == limits.failures {
                break;
            }
            damping = damping * limits.rise;
            continue;
        };
        let last = (sum - lower) / sum < limits.gain || problem.enough(lower);
        (point, sum, damping) = (next, lower, (damping / fall).max(limits.least_damping));
        (steps, failures) = (steps + 1, 0);
        if last || steps == limits.steps {
            break;
        }
        slopes = problem.slopes_after(&point, slopes);
    }
    (point, sum)
}
