//! What a film is looked at on and in: paper, surface and light.

use wide::f32x4;

use crate::colour::{Lab, WheelPoint, lab_of_ratios, wheel};
use crate::numeric::minimum::minimise;
use crate::optics::film::Film;
use crate::optics::layer::{MAX_LOAD, at, four_by_four, laid, put, reflectances};
use crate::optics::observer::Light;
use crate::optics::paper::Paper;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn};
use crate::optics::surface::Surface;

/// Thinnest wash the program speaks of: a thirty-second of masstone.
pub const THINNEST: f32 = 1.0 / 32.0;

/// Paper, surface and light, made ready for the mixing kernel.
#[derive(Clone, Debug)]
pub struct View {
    ground: Spectrum,
    surface: Surface,
    light: Light,
    wet: bool,
}

impl View {
    /// Washes on `paper` seen in `light`.
    #[must_use]
    pub fn new(paper: &Paper, light: Light) -> Self {
        let ground = from_fn(|band| Surface::WASH.inner(paper.reflectance[band]) as f32);
        Self { ground, surface: Surface::WASH.to_f32(), light, wet: false }
    }

    /// The same while paint and paper are wet: darker, and purer, than once they are dry.
    #[must_use]
    pub const fn wet(self, wet: bool) -> Self {
        Self { wet, ..self }
    }

    /// Reflectance of a film at a load, 0 to 1, surface included.
    ///
    /// Loads below 0 or not finite count as 0, above [`MAX_LOAD`] as that.
    #[must_use]
    pub fn reflectance(&self, film: &Film, load: f32) -> Spectrum {
        self.outer(film, load, &self.ground)
    }

    /// Reflectance of `upper` painted over the dry `lower`.
    #[must_use]
    pub fn glaze(&self, lower: (&Film, f32), upper: (&Film, f32)) -> Spectrum {
        let ground = reflectances(&lower.0.k, &lower.0.s, tame(lower.1), &self.ground);
        self.outer(upper.0, upper.1, &ground)
    }

    /// The light things are looked at in.
    #[must_use]
    pub const fn light(&self) -> Light {
        self.light
    }

    /// Colour of a reflectance in this view's light.
    #[must_use]
    pub fn colour_of(&self, reflectance: &Spectrum) -> Lab {
        self.light.colour_of(reflectance)
    }

    /// Colours of a film at a load in several lights: the film is worked out once.
    #[must_use]
    pub fn colours<const N: usize>(&self, film: &Film, load: f32, lights: [Light; N]) -> [Lab; N] {
        let reflectance = self.reflectance(film, load);
        lights.map(|light| light.colour_of(&reflectance))
    }

    /// Colour of a film at a load.
    #[must_use]
    pub fn colour(&self, film: &Film, load: f32) -> Lab {
        lab_of_ratios(self.ratios_of(film, load))
    }

    /// Colours of a film at several loads: in less time than one by one, as no root waits for another.
    pub(crate) fn washes<const N: usize>(&self, film: &Film, loads: [f32; N]) -> [Lab; N] {
        loads.map(|load| self.ratios_of(film, load)).map(lab_of_ratios)
    }

    /// Point of the wheel of a film at a load.
    #[must_use]
    pub fn wheel_point(&self, film: &Film, load: f32) -> WheelPoint {
        wheel(self.colour(film, load))
    }

    /// The load, from [`THINNEST`] to 1, at which a film stands farthest out on the wheel.
    ///
    /// Deep paints are brightest as washes, so this is found, not assumed.
    #[must_use]
    pub fn strongest_load(&self, film: &Film) -> f32 {
        let stops = THINNEST.log2();
        let octaves = minimise(stops, 0.0, 11, |stop| -self.wheel_point(film, stop.exp2()).radius());
        octaves.exp2()
    }

    /// Colour of the mix of `a` with this share of `b` by volume: as of [`Film::between`], which it does not make.
    #[must_use]
    #[inline(never)]
    pub fn colour_between(&self, a: &Film, b: &Film, share: f32, load: f32) -> Lab {
        let (masstones, load) = (Film::masstones(a, b, share), tame(load));
        let both = |a: &Spectrum, b: &Spectrum, four| {
            (at(a, four) * masstones.of_a + at(b, four) * masstones.of_b) * load
        };
        lab_of_ratios(self.ratios(|four| [both(&a.k, &b.k, four), both(&a.s, &b.s, four)]))
    }

    /// The kernel is called, not copied to wherever a colour is asked for.
    #[inline(never)]
    fn ratios_of(&self, film: &Film, load: f32) -> f32x4 {
        self.ratios(laid(&film.k, &film.s, tame(load)))
    }

    /// The same for a spectrum.
    #[inline(never)]
    fn outer(&self, film: &Film, load: f32, ground: &Spectrum) -> Spectrum {
        let mut seen = [0.0; BANDS];
        self.look(laid(&film.k, &film.s, tame(load)), ground, |four, values| put(&mut seen, four, values));
        seen
    }

    #[inline]
    fn ratios(&self, film: impl Fn(usize) -> [f32x4; 2]) -> f32x4 {
        let mut observer = self.light.observer();
        self.look(film, &self.ground, |four, values| observer.add(four, values));
        observer.ratios()
    }

    /// Reflectance of every four bands, surface included.
    #[inline]
    fn look(&self, film: impl Fn(usize) -> [f32x4; 2], ground: &Spectrum, mut see: impl FnMut(usize, f32x4)) {
        four_by_four(film, ground, |four, over, under| {
            let dry = self.surface.outer_of_ratio(over, under);
            see(four, if self.wet { self.surface.wetted(dry) } else { dry });
        });
    }
}

fn tame(load: f32) -> f32 {
    if load.is_finite() { load.clamp(0.0, MAX_LOAD) } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Shelf, Stock};

    /// Common practice, no source: a wash is darker and purer before it dries.
    #[test]
    fn wet_paint_is_darker_and_purer() {
        let dry = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let wet = dry.clone().wet(true);
        for key in ["pb29", "pr254", "py184", "pg18", "pbr7-raw-umber", "pbk6"] {
            let film = &Shelf::built_in().find(key).unwrap().film;
            for load in [1.0, 0.25] {
                let [dry, wet] = [&dry, &wet].map(|view| view.colour(film, load));
                assert!(wet.l < dry.l - 1.0, "{key} at {load}: {} and {}", dry.l, wet.l);
                let purity = |lab: Lab| crate::colour::chroma(lab) / lab.l;
                assert!(purity(wet) > purity(dry), "{key} at {load}");
            }
        }
    }

    #[test]
    fn colours_in_several_lights_are_those_of_their_views() {
        let paper = Stock::Cream.paper();
        let film = &Shelf::built_in().find("pb29").unwrap().film;
        let colours = View::new(&paper, Light::D65).colours(film, 0.5, Light::ALL);
        for (light, colour) in Light::ALL.into_iter().zip(colours) {
            assert_eq!(colour, View::new(&paper, light).colour(film, 0.5), "{}", light.name());
        }
    }
}
