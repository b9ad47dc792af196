//! Rows of equations: how a residual answers to each number that is sought.

/// How a residual answers to one number.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slope {
    /// Index of the number.
    pub(super) number: usize,
    /// The residual's change by it.
    pub(super) value: f64,
}

/// The numbers that a residual answers to; all others leave it as it is.
pub(super) type Row = Vec<Slope>;

/// Sum over a row of its slopes times the numbers they belong to.
pub(super) fn dot(row: &[Slope], numbers: &[f64]) -> f64 {
    row.iter().map(|slope| slope.value * numbers[slope.number]).sum()
}
