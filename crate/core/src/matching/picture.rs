//! Pictures as a browser decodes them: sampled, and balanced to white.

use palette::chromatic_adaptation::adaptation_matrix;
use palette::convert::{Convert, FromColorUnclamped, IntoColorUnclamped};
use palette::lms::matrix::Bradford;
use palette::white_point::D65;
use palette::{LinSrgb, Srgb, Xyz};

use crate::colour::Lab;
use crate::error::Error;

/// sRGB pixels, four bytes each: red, green, blue, and alpha not multiplied in; row by row.
#[derive(Clone, Copy, Debug)]
pub struct Picture<'a> {
    rgba: &'a [u8],
    width: usize,
}

/// Y from which a sample may stand for white or grey.
const DARKEST_REFERENCE: f32 = 0.02;

/// Least part of a sample that must not be transparent.
const LEAST_ALPHA: f32 = 1e-3;

impl<'a> Picture<'a> {
    /// A picture of rows of `width` pixels.
    ///
    /// # Errors
    ///
    /// No pixel, or bytes that are not whole rows.
    pub fn new(rgba: &'a [u8], width: usize) -> Result<Self, Error> {
        if width == 0 || rgba.is_empty() || !rgba.len().is_multiple_of(4 * width) {
            return Err(Error::PictureSize { bytes: rgba.len(), width });
        }
        Ok(Self { rgba, width })
    }

    pub(crate) const fn width(self) -> usize {
        self.width
    }

    /// Its pixels as red, green, blue, alpha.
    pub(crate) fn pixels(self) -> impl Iterator<Item = [u8; 4]> + 'a {
        self.rgba.chunks_exact(4).map(|pixel| [pixel[0], pixel[1], pixel[2], pixel[3]])
    }

    /// Mean colour over a disc, in linear light; what is transparent counts by its alpha.
    ///
    /// The disc holds at least the pixel at its middle.
    ///
    /// # Errors
    ///
    /// A disc off the picture, or where all is transparent.
    pub fn sample(self, x: f32, y: f32, radius: f32) -> Result<Lab, Error> {
        Ok(Lab::from_color_unclamped(Xyz::<D65, f32>::from_color_unclamped(self.mean(x, y, radius)?)))
    }

    /// The picture with what lies in a disc turned into a neutral of a lightness, and the rest along with it.
    ///
    /// Adapted as a whole from the disc's white to D65 (Bradford), in linear
    /// light. Bytes as they came in; alpha stays.
    ///
    /// # Errors
    ///
    /// As [`Self::sample`]; a disc too dark to tell the light by.
    pub fn balanced(self, x: f32, y: f32, radius: f32, lightness: f32) -> Result<Vec<u8>, Error> {
        let reference: Xyz<D65, f32> = self.mean(x, y, radius)?.into_color_unclamped();
        if reference.y < DARKEST_REFERENCE {
            return Err(Error::Picture("this place is too dark to tell the light by: choose white or grey"));
        }
        let wanted: Xyz<D65, f32> = Lab::new(lightness, 0.0, 0.0).into_color_unclamped();
        let white = |xyz: Xyz<D65, f32>| Xyz::<D65, f32>::new(xyz.x / xyz.y, 1.0, xyz.z / xyz.y);
        let adapt = adaptation_matrix::<f32, D65, D65, Bradford>(Some(white(reference)), Some(white(wanted)));
        let gain = wanted.y / reference.y;
        let balance = |linear: LinSrgb<f32>| -> LinSrgb<f32> {
            let xyz = Xyz::<D65, f32>::from_color_unclamped(linear);
            let xyz: Xyz<D65, f32> = adapt.convert(xyz);
            Xyz::<D65, f32>::new(xyz.x * gain, xyz.y * gain, xyz.z * gain).into_color_unclamped()
        };
        // All of it is linear: three columns say what it does to any pixel.
        let columns = [LinSrgb::new(1.0, 0.0, 0.0), LinSrgb::new(0.0, 1.0, 0.0), LinSrgb::new(0.0, 0.0, 1.0)];
        let [r, g, b] = columns.map(balance);
        let turn = |[red, green, blue, alpha]: [u8; 4]| {
            let linear: LinSrgb<f32> = Srgb::new(red, green, blue).into_linear();
            let turned = Srgb::<u8>::from_linear(r * linear.red + g * linear.green + b * linear.blue);
            [turned.red, turned.green, turned.blue, alpha]
        };
        Ok(self.pixels().flat_map(turn).collect())
    }

    fn mean(self, x: f32, y: f32, radius: f32) -> Result<LinSrgb<f32>, Error> {
        let height = self.rgba.len() / 4 / self.width;
        let inside = (0.0..self.width as f32).contains(&x) && (0.0..height as f32).contains(&y);
        if !inside || !radius.is_finite() {
            return Err(Error::Picture("this place is off the picture"));
        }
        let radius = radius.max(0.5);
        let rows = (y - radius).max(0.0) as usize..=((y + radius) as usize).min(height - 1);
        let (mut sum, mut weight) = (LinSrgb::new(0.0, 0.0, 0.0), 0.0);
        for row in rows {
            let squared = radius * radius - (row as f32 + 0.5 - y).powi(2);
            let half = squared.max(0.0).sqrt();
            let (from, to) = ((x - half).max(0.0) as usize, ((x + half) as usize).min(self.width - 1));
            for pixel in
                self.rgba[4 * (row * self.width + from)..=4 * (row * self.width + to) + 3].chunks_exact(4)
            {
                let alpha = f32::from(pixel[3]) / 255.0;
                let linear: LinSrgb<f32> = Srgb::new(pixel[0], pixel[1], pixel[2]).into_linear();
                sum += linear * alpha;
                weight += alpha;
            }
        }
        if weight < LEAST_ALPHA {
            return Err(Error::Picture("this place is transparent: there is no colour to take"));
        }
        Ok(sum / weight)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{chroma, lab_of_rgb};

    /// Left half one colour, right half another.
    fn halves(left: [u8; 4], right: [u8; 4]) -> Vec<u8> {
        (0..20).flat_map(|_| (0..40).flat_map(move |x| if x < 20 { left } else { right })).collect()
    }

    fn close(a: Lab, b: Lab) {
        assert!(
            (a.l - b.l).abs() < 0.05 && (a.a - b.a).abs() < 0.1 && (a.b - b.b).abs() < 0.1,
            "{a:?} {b:?}"
        );
    }

    #[test]
    fn a_disc_within_one_colour_is_that_colour() {
        let bytes = halves([200, 40, 30, 255], [20, 40, 200, 255]);
        let picture = Picture::new(&bytes, 40).unwrap();
        close(picture.sample(8.0, 10.0, 6.0).unwrap(), lab_of_rgb([200, 40, 30]));
        close(picture.sample(39.9, 19.9, 6.0).unwrap(), lab_of_rgb([20, 40, 200]));
    }

    #[test]
    fn the_mean_is_of_light_and_not_of_bytes() {
        // Half black, half white sends back half the light: L* 76, not 53.
        let bytes = halves([0, 0, 0, 255], [255, 255, 255, 255]);
        let mean = Picture::new(&bytes, 40).unwrap().sample(20.0, 10.0, 9.0).unwrap();
        assert!((mean.l - 76.07).abs() < 3.0, "{mean:?}");
    }

    #[test]
    fn what_is_transparent_takes_no_part() {
        let bytes = halves([200, 40, 30, 255], [0, 255, 0, 0]);
        let picture = Picture::new(&bytes, 40).unwrap();
        close(picture.sample(20.0, 10.0, 9.0).unwrap(), lab_of_rgb([200, 40, 30]));
        assert!(picture.sample(34.0, 10.0, 3.0).is_err());
    }

    #[test]
    fn balance_makes_the_reference_neutral_and_moves_the_rest_along() {
        // Grey and white under a warm light.
        let bytes = halves([240, 220, 180, 255], [120, 110, 90, 128]);
        let balanced = Picture::new(&bytes, 40).unwrap().balanced(8.0, 8.0, 4.0, 96.0).unwrap();
        let picture = Picture::new(&balanced, 40).unwrap();
        let [white, grey] = [8.0, 32.0].map(|x| picture.sample(x, 8.0, 4.0).unwrap());
        assert!((white.l - 96.0).abs() < 0.4 && chroma(white) < 0.6, "{white:?}");
        assert!(chroma(grey) < 3.0, "{grey:?}");
        assert_eq!(balanced[4 * 30 + 3], 128, "alpha stays");
    }

    #[test]
    fn faults_are_named() {
        assert!(Picture::new(&[], 1).is_err());
        assert!(Picture::new(&[0; 12], 2).is_err());
        assert!(Picture::new(&[0; 12], 0).is_err());
        let black = [0, 0, 0, 255].repeat(4);
        let picture = Picture::new(&black, 2).unwrap();
        assert!(picture.balanced(0.5, 0.5, 1.0, 96.0).unwrap_err().to_string().contains("too dark"));
        for at in [-1.0, 2.0, f32::NAN] {
            assert!(picture.sample(at, 0.5, 1.0).is_err());
        }
        assert!(picture.sample(0.5, 0.5, f32::INFINITY).is_err());
    }
}
