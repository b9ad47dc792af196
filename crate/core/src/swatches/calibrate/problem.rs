//! The least-squares problem of paints that meet in swatches, and its solution.

use super::band_matrix::BandMatrix;
use super::component::Component;
use super::curves::{Curves, LEAST};
use super::film::slopes;
use super::ground::{Ground, surface_of};
use super::prior::{Hold, Prior};
use super::residual::lab_residuals;
use super::row::{Row, Slope};
use super::swatch::{Seen, Swatch};
use crate::numeric::levenberg::{Limits, Squares, minimise};
use crate::optics::observer::Light;
use crate::optics::spectrum::{BANDS, Spectrum};
use crate::optics::surface::Surface;

/// What a cube root of reflectance may miss by, as 1 / 0.01: 1.16 L*.
const ROOT_WEIGHT: f64 = 100.0;

/// Residual from which a swatch begins to be doubted.
const DOUBT: f64 = 3.0;

/// Well-posed fits end after 10 to 30 steps.
const LIMITS: Limits<f64> = Limits {
    damping: 1e-2,
    least_damping: 1e-9,
    rise: 5.0,
    steps: 60,
    failures: 10,
    trials: usize::MAX,
    gain: 1e-6,
};

/// Longest step in ln K or ln S, so that a bad slope does not overshoot.
const LONGEST_STEP: f64 = 2.0;

/// One component, ready to be solved.
///
/// Variables stand band by band, then paint by paint, K before S, so that all
/// but CIELAB swatches couple only variables close to each other.
pub(super) struct Problem<'a> {
    priors: Vec<&'a Prior>,
    expected: Vec<f64>,
    swatches: Vec<Laid<'a>>,
    inner_paper: Spectrum<f64>,
    band_weights: Spectrum<f64>,
    width: usize,
}

/// A swatch, the load of each paint in it, and its surface.
struct Laid<'a> {
    swatch: &'a Swatch,
    loads: Vec<(usize, f64)>,
    surface: Surface<f64>,
}

/// Half the Hessian and half the gradient of the sum; a target may be absent.
pub(super) struct Normal {
    matrix: BandMatrix,
    gradient: Vec<f64>,
}

impl Normal {
    /// Adds the residual `r` of slopes `row`, both already weighted by `w`.
    fn add(&mut self, row: &[Slope], r: f64, w: f64) {
        for (at, slope) in row.iter().enumerate() {
            self.gradient[slope.number] += w * slope.value * r;
            for other in &row[..=at] {
                self.matrix.add(slope.number, other.number, w * slope.value * other.value);
            }
        }
    }
}

impl<'a> Problem<'a> {
    pub(super) fn new(
        ground: &'a Ground,
        priors: &'a [Prior],
        swatches: &'a [Swatch],
        component: &Component,
    ) -> Self {
        let local = |paint: usize| component.paints.iter().position(|p| *p == paint);
        let swatches: Vec<_> = component
            .swatches
            .iter()
            .map(|index| {
                let swatch = &swatches[*index];
                let loads = ground.loads(&swatch.parts);
                Laid {
                    swatch,
                    loads: loads.into_iter().filter_map(|(p, x)| Some((local(p)?, x))).collect(),
                    surface: surface_of(ground.surface, &ground.floors, &swatch.parts),
                }
            })
            .collect();
        let priors: Vec<&Prior> = component.paints.iter().map(|paint| &priors[*paint]).collect();
        let variables = 2 * priors.len() * BANDS;
        let coupled = swatches.iter().any(|laid| matches!(laid.swatch.seen, Seen::Lab(_)));
        let mut problem = Self {
            expected: vec![0.0; variables],
            // The bend of a curve reaches two bands back: 4 variables a paint.
            width: if coupled { variables } else { 4 * priors.len() },
            priors,
            swatches,
            inner_paper: ground.inner_paper(),
            band_weights: band_weights(),
        };
        for band in 0..BANDS {
            for paint in 0..problem.priors.len() {
                let curves = &problem.priors[paint].curves;
                let [k, s] = [curves.k[band], curves.s[band]].map(|value| value.max(LEAST).ln());
                let at = problem.index(band, paint);
                problem.expected[at] = k;
                problem.expected[at + 1] = s;
            }
        }
        problem
    }

    /// The fitted paints and the minimised sum.
    pub(super) fn solve(&self) -> (Vec<Curves>, f64) {
        let (u, cost) = minimise(self, self.start(), &LIMITS);
        (self.curves(&u), cost)
    }

    /// What is expected; where nothing is of K, that of a film that hides its paper.
    ///
    /// The sum has other valleys: paints that darken slowly with quantity also
    /// look like weak ones. A masstone hides, so the search begins there.
    fn start(&self) -> Vec<f64> {
        let mut u = self.expected.clone();
        for (paint, prior) in self.priors.iter().enumerate() {
            let alone = self.swatches.iter().filter_map(|laid| match (&laid.swatch.seen, &laid.loads[..]) {
                (Seen::Spectrum(r), [(p, load)]) if *p == paint => Some((r, laid.surface, load.ln().abs())),
                _ => None,
            });
            let masstone = alone.min_by(|a, b| a.2.total_cmp(&b.2));
            let (Some((reflectance, surface, _)), true) = (masstone, prior.k.level == 0.0) else { continue };
            for band in 0..BANDS {
                let r = surface.inner(reflectance[band]).clamp(1e-3, 0.99);
                // Kubelka 1931: K / S of an opaque film.
                u[self.index(band, paint)] =
                    ((1.0 - r).powi(2) / (2.0 * r)).ln() + u[self.index(band, paint) + 1];
            }
        }
        u
    }

    /// The swatches' part of the sum.
    fn data(&self, u: &[f64], mut normal: Option<&mut Normal>) -> f64 {
        let values: Vec<f64> = u.iter().map(|u| u.exp()).collect();
        let mut cost = 0.0;
        for Laid { swatch, loads, surface } in &self.swatches {
            let film: Vec<Band> = (0..BANDS).map(|band| self.band(band, loads, *surface, &values)).collect();
            match &swatch.seen {
                Seen::Spectrum(measured) => {
                    for (band, film) in film.iter().enumerate() {
                        let weight = ROOT_WEIGHT * self.band_weights[band] * swatch.trust;
                        let root = film.r.cbrt();
                        let slope = weight / (3.0 * root * root);
                        let row = self.row(band, film, loads, &values, slope, normal.is_some());
                        cost += weigh(&mut normal, &row, weight * (root - measured[band].cbrt()));
                    }
                }
                Seen::Lab(measured) => {
                    let reflectance: Spectrum<f64> = std::array::from_fn(|band| film[band].r);
                    for residual in lab_residuals(&reflectance, *measured) {
                        let row: Row = (0..BANDS)
                            .flat_map(|band| {
                                let slope = residual.slopes[band] * swatch.trust;
                                self.row(band, &film[band], loads, &values, slope, normal.is_some())
                            })
                            .collect();
                        cost += weigh(&mut normal, &row, residual.value * swatch.trust);
                    }
                }
            }
        }
        cost
    }

    /// The film of a swatch at one band, surface included.
    fn band(&self, band: usize, loads: &[(usize, f64)], surface: Surface<f64>, values: &[f64]) -> Band {
        let sum = |offset: usize| -> f64 {
            loads.iter().map(|(paint, x)| x * values[self.index(band, *paint) + offset]).sum()
        };
        let [inner, by_k, by_s] = slopes(sum(0), sum(1), self.inner_paper[band]);
        let through = (1.0 - surface.k1) * (1.0 - surface.k2) / (1.0 - surface.k2 * inner).powi(2);
        // A cube root's slope at nothing at all is endless.
        Band { r: surface.outer(inner).max(1e-6), by_k: through * by_k, by_s: through * by_s }
    }

    /// Slopes of `slope` times the band's reflectance by every variable in it.
    fn row(
        &self,
        band: usize,
        film: &Band,
        loads: &[(usize, f64)],
        values: &[f64],
        slope: f64,
        wanted: bool,
    ) -> Row {
        let loads = if wanted { loads } else { &[] };
        let mut row = Vec::with_capacity(2 * loads.len());
        for (paint, x) in loads {
            let at = self.index(band, *paint);
            row.push(Slope { number: at, value: slope * film.by_k * x * values[at] });
            row.push(Slope { number: at + 1, value: slope * film.by_s * x * values[at + 1] });
        }
        row
    }

    /// The part of the sum that holds the curves to what is expected.
    fn held(&self, u: &[f64], mut normal: Option<&mut Normal>) -> f64 {
        let off = |i: usize| u[i] - self.expected[i];
        let mut cost = 0.0;
        for (paint, prior) in self.priors.iter().enumerate() {
            for (offset, hold) in [(0, prior.k), (1, prior.s)] {
                let at = |band: usize| self.index(band, paint) + offset;
                for band in 0..BANDS {
                    for row in hold_rows(hold, band, at) {
                        let r: f64 = row.iter().map(|slope| slope.value * off(slope.number)).sum();
                        cost += r * r;
                        if let Some(normal) = &mut normal {
                            normal.add(&row, r, 1.0);
                        }
                    }
                }
            }
        }
        cost
    }

    fn curves(&self, u: &[f64]) -> Vec<Curves> {
        (0..self.priors.len())
            .map(|paint| Curves {
                k: std::array::from_fn(|band| u[self.index(band, paint)].exp()),
                s: std::array::from_fn(|band| u[self.index(band, paint) + 1].exp()),
            })
            .collect()
    }

    fn index(&self, band: usize, paint: usize) -> usize {
        2 * (band * self.priors.len() + paint)
    }
}

impl Squares for Problem<'_> {
    type Number = f64;
    /// ln K and ln S.
    type Point = Vec<f64>;
    type Slopes = Normal;

    fn sum(&self, u: &Vec<f64>) -> f64 {
        self.data(u, None) + self.held(u, None)
    }

    fn slopes(&self, u: &Vec<f64>) -> Normal {
        let mut normal =
            Normal { matrix: BandMatrix::new(u.len(), self.width), gradient: vec![0.0; u.len()] };
        self.data(u, Some(&mut normal));
        self.held(u, Some(&mut normal));
        normal
    }

    fn step(&self, u: &Vec<f64>, normal: &mut Normal, damping: f64) -> Option<Vec<f64>> {
        let downhill: Vec<f64> = normal.gradient.iter().map(|g| -g).collect();
        let mut matrix = normal.matrix.clone();
        for i in 0..u.len() {
            matrix.add(i, i, damping * (matrix.diagonal(i) + 1e-6));
        }
        let step = matrix.solve(&downhill)?;
        Some(u.iter().zip(step).map(|(u, d)| u + d.clamp(-LONGEST_STEP, LONGEST_STEP)).collect())
    }
}

/// Reflectance at a band and its slopes by the film's K and S.
struct Band {
    r: f64,
    by_k: f64,
    by_s: f64,
}

/// Adds a residual to the equations, if wanted, and returns Cauchy's loss of it.
fn weigh(normal: &mut Option<&mut Normal>, row: &[Slope], r: f64) -> f64 {
    let doubt = (r / DOUBT).powi(2);
    if let Some(normal) = normal {
        normal.add(row, r, 1.0 / (1.0 + doubt));
    }
    DOUBT * DOUBT * doubt.ln_1p()
}

/// The rows by which a hold ties the deviation at a band to those before it.
fn hold_rows(hold: Hold, band: usize, at: impl Fn(usize) -> usize) -> Vec<Row> {
    let slope = |band: usize, value: f64| Slope { number: at(band), value };
    let mut rows = Vec::with_capacity(3);
    if hold.level > 0.0 {
        rows.push(vec![slope(band, hold.level)]);
    }
    if hold.slope > 0.0 && band >= 1 {
        rows.push(vec![slope(band - 1, -hold.slope), slope(band, hold.slope)]);
    }
    if hold.bend > 0.0 && band >= 2 {
        rows.push(vec![
            slope(band - 2, hold.bend),
            slope(band - 1, -2.0 * hold.bend),
            slope(band, hold.bend),
        ]);
    }
    rows
}

/// Square roots of a tenth plus twelve times a band's share in X, Y and Z.
fn band_weights() -> Spectrum<f64> {
    let weights = Light::D65.weights();
    std::array::from_fn(|band| {
        let share: f64 = (0..3).map(|i| weights.xyz[i][band].max(0.0) / weights.white[i]).sum();
        (0.1 + 12.0 * share).sqrt()
    })
}
