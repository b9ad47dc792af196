//! How sure a colour is that is seen or predicted.

/// CIELAB units by which a colour read by eye or from a photo is off, in each axis.
const BY_EYE: f64 = 1.5;

/// The same of a meter.
const BY_METER: f64 = 0.5;

/// CIELAB units, in each axis, that the film model misses of mixes of paints that are known:
/// 2.2 CIEDE2000 in the median (`evaluate mixtures`, learned from half of all pairs).
const MODEL: f64 = 1.4;

/// Median length of a normal deviate in three dimensions, over the root of its summed variances.
const MEDIAN: f64 = 0.889;

/// Median CIEDE2000 of a summed variance of three axes, with what the model misses.
pub(super) fn expected(variance: f64) -> f64 {
    MEDIAN * (variance + 3.0 * MODEL * MODEL).sqrt()
}

/// Variance of one axis of a colour that is seen: the eye's and the model's.
pub(super) fn seen_variance(by_meter: bool) -> f64 {
    let own = if by_meter { BY_METER } else { BY_EYE };
    own * own + MODEL * MODEL
}
