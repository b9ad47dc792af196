//! Shapes as a brush lays them: a map of few labels, smoothed by the majority around each pixel.

/// Pixels in rows of `width`, each with one of `kinds` labels.
pub(crate) struct Map {
    pub label: Vec<usize>,
    /// Whether a pixel counts: what is wholly transparent has no colour.
    pub seen: Vec<bool>,
    pub width: usize,
    pub kinds: usize,
}

/// Pixels of one label in a window: how many, and the sums of their two values.
type Tally = (usize, [f64; 2]);

impl Map {
    /// Gives each pixel the label that most pixels in the square around it have; one that no other outnumbers stays.
    pub fn smooth(&mut self, radius: usize) {
        let nothing = vec![[0.0; 2]; self.label.len()];
        self.label = self.around(radius, &nothing).into_iter().map(|(label, _)| label).collect();
    }

    /// The commonest label around each pixel, and what the values of the pixels that have it are on average.
    pub fn around(&self, radius: usize, values: &[[f32; 2]]) -> Vec<(usize, [f32; 2])> {
        let height = self.label.len() / self.width;
        let mut found = Vec::with_capacity(self.label.len());
        for y in 0..height {
            let rows = y.saturating_sub(radius)..(y + radius + 1).min(height);
            let mut window = vec![(0, [0.0; 2]); self.kinds];
            let pixels = |x: usize| rows.clone().map(move |row| row * self.width + x);
            for x in 0..self.width + radius {
                if x < self.width {
                    pixels(x).for_each(|i| self.count(&mut window, i, values[i], true));
                }
                if x > 2 * radius {
                    pixels(x - 2 * radius - 1).for_each(|i| self.count(&mut window, i, values[i], false));
                }
                if x >= radius {
                    let i = y * self.width + x - radius;
                    found.push(commonest(&window, self.label[i], values[i]));
                }
            }
        }
        found
    }

    /// Lets a pixel into a window, or out of it.
    fn count(&self, window: &mut [Tally], i: usize, [a, b]: [f32; 2], joins: bool) {
        if !self.seen[i] {
            return;
        }
        let (count, [sum_a, sum_b]) = &mut window[self.label[i]];
        let sign = if joins { 1.0 } else { -1.0 };
        *count = if joins { *count + 1 } else { *count - 1 };
        *sum_a += sign * f64::from(a);
        *sum_b += sign * f64::from(b);
    }
}

/// The label with most pixels and their mean values; a pixel's own where none has more, or where none counts.
fn commonest(window: &[Tally], own: usize, value: [f32; 2]) -> (usize, [f32; 2]) {
    let most = window.iter().map(|(count, _)| *count).max().unwrap_or(0);
    if most == 0 {
        return (own, value);
    }
    let label = if window[own].0 == most {
        own
    } else {
        window.iter().position(|(count, _)| *count == most).unwrap_or(own)
    };
    let (count, sums) = window[label];
    (label, sums.map(|sum| (sum / count as f64) as f32))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two halves, 40 pixels wide and high, with every seventh pixel of the other label.
    fn speckled() -> Map {
        let label = (0..1600).map(|i| usize::from((i % 40 >= 20) != (i % 7 == 0))).collect();
        Map { label, seen: vec![true; 1600], width: 40, kinds: 2 }
    }

    #[test]
    fn speckle_goes_and_edges_stay() {
        let mut map = speckled();
        map.smooth(2);
        for (i, label) in map.label.iter().enumerate() {
            let x = i % 40;
            // At an edge the window is divided: it may wander by a pixel.
            assert!((19..=20).contains(&x) || *label == usize::from(x >= 20), "{i}: {label}");
        }
    }

    #[test]
    fn the_window_is_the_square_around_each_pixel() {
        let map = speckled();
        let values: Vec<[f32; 2]> = (0..1600).map(|i| [(i * i % 31) as f32, (i % 11) as f32]).collect();
        for (i, (label, mean)) in map.around(3, &values).into_iter().enumerate() {
            let (x, y) = (i % 40, i / 40);
            let near = (0..1600_usize).filter(|j| (j % 40).abs_diff(x) <= 3 && (j / 40).abs_diff(y) <= 3);
            let (same, other): (Vec<usize>, Vec<usize>) = near.partition(|j| map.label[*j] == label);
            assert!(same.len() >= other.len(), "{i}");
            for (part, mean) in mean.into_iter().enumerate() {
                let sum: f32 = same.iter().map(|j| values[*j][part]).sum();
                assert!((mean - sum / same.len() as f32).abs() < 1e-3, "{i}");
            }
        }
    }

    #[test]
    fn what_is_transparent_has_no_say() {
        let mut map =
            Map { label: vec![0, 1, 1, 0], seen: vec![true, false, false, true], width: 4, kinds: 2 };
        map.smooth(3);
        assert_eq!(map.label, [0, 0, 0, 0]);
        let mut nothing = Map { label: vec![1, 0], seen: vec![false; 2], width: 2, kinds: 2 };
        nothing.smooth(1);
        assert_eq!(nothing.label, [1, 0]);
    }
}
