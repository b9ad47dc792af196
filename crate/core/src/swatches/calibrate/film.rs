//! A film and its slopes: how R answers to K and S.

/// Reflectance of a film over `ground`, with its derivatives by K and by S.
///
/// K and S are those of the whole film, load included, both above 0. The sums
/// of [`crate::optics::layer::reflectance`], differentiated by hand:
///
/// ```text
/// z = K (K + 2 S)      t = tanh(sqrt z) / sqrt z      dt/dz = (1 - z t² - t) / 2z
/// ```
pub(super) fn slopes(k: f64, s: f64, ground: f64) -> [f64; 3] {
    let z = k * (k + 2.0 * s);
    let a = k + s;
    let (t, dt) = thickness(z);
    let (top, bottom) = (ground + t * (s - a * ground), 1.0 + t * (a - s * ground));
    let r = top / bottom;
    let by = |dz: f64, da: f64, ds: f64| {
        let (dtop, dbottom) = (
            dt * dz * (s - a * ground) + t * (ds - da * ground),
            dt * dz * (a - s * ground) + t * (da - ds * ground),
        );
        (dtop - r * dbottom) / bottom
    };
    [r, by(2.0 * a, 1.0, 0.0), by(2.0 * k, 1.0, 1.0)]
}

/// t and dt/dz; below 1e-4 by their series, whose next term is under 1e-12.
fn thickness(z: f64) -> (f64, f64) {
    if z < 1e-4 {
        return (1.0 - z / 3.0 + 2.0 * z * z / 15.0, -1.0 / 3.0 + 4.0 * z / 15.0 - 17.0 * z * z / 105.0);
    }
    let b = z.sqrt();
    let t = b.tanh() / b;
    (t, (1.0 - z * t * t - t) / (2.0 * z))
}

#[cfg(test)]
mod tests {
    use super::slopes;
    use crate::optics::layer::reflectance;

    #[test]
    fn slopes_are_those_of_the_layer() {
        // Central differences of a step 1e-5 are good to about 1e-9.
        const STEP: f64 = 1e-5;
        for k in [1e-4, 0.004, 0.3, 2.0, 40.0] {
            for s in [1e-4, 0.01, 1.0, 7.0] {
                for ground in [0.0, 0.4, 0.95] {
                    let [r, dk, ds] = slopes(k, s, ground);
                    let at = |k: f64, s: f64| reflectance(k, s, 1.0, ground);
                    assert!((r - at(k, s)).abs() < 1e-11);
                    assert!(
                        (dk - (at(k + STEP, s) - at(k - STEP, s)) / (2.0 * STEP)).abs() < 1e-6,
                        "{k} {s}"
                    );
                    assert!(
                        (ds - (at(k, s + STEP) - at(k, s - STEP)) / (2.0 * STEP)).abs() < 1e-6,
                        "{k} {s}"
                    );
                }
            }
        }
    }
}
