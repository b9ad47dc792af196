//! What a display shows of the shelf's mixes keeps their order: a purer mix does not look duller.

use washpath_core::colour::{chroma, delta_e, hue_angle, lab_of_rgb};
use washpath_core::{Lab, Light, Path, Shelf, Stock, View, share_at, shown};

/// Bytes of sRGB round a colour by less than this in C*.
const ROUNDING: f32 = 1.0;

/// How many places of a path are looked at.
const PLACES: usize = 25;

#[derive(Default)]
struct Order {
    steps: usize,
    /// Steps to a purer mix that is shown duller.
    duller: usize,
    /// The most C* that such a step loses on the display, where hue turns by less than a degree.
    most: f32,
}

impl Order {
    fn look(&mut self, from: Lab, to: Lab) {
        self.steps += 1;
        let (dull, pure) = if chroma(from) < chroma(to) { (from, to) } else { (to, from) };
        if chroma(pure) - chroma(dull) < 0.5 {
            return;
        }
        let [dull_shown, pure_shown] = [dull, pure].map(|lab| chroma(lab_of_rgb(shown(lab).rgb)));
        let loss = dull_shown - pure_shown;
        self.duller += usize::from(loss > ROUNDING);
        let turn = (hue_angle(pure) - hue_angle(dull) + 540.0).rem_euclid(360.0) - 180.0;
        if turn.abs() < 1.0 {
            self.most = self.most.max(loss);
        }
    }
}

/// Every path of the shelf, as masstones and as a quarter wash.
///
/// Taking chroma off at the same L*, which is simpler, shows 3.9 % of the steps duller, some by 30 of C*.
#[test]
fn a_purer_mix_does_not_look_duller() {
    let shelf = Shelf::built_in();
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    let mut order = Order::default();
    for (i, a) in shelf.paints().iter().enumerate() {
        for b in &shelf.paints()[i + 1..] {
            for load in [1.0, 0.25] {
                let path = Path::new(&a.film, &b.film, &view, load);
                let colours: Vec<Lab> =
                    (0..PLACES).map(|i| path.colour(share_at(i as f32 / (PLACES - 1) as f32))).collect();
                for pair in colours.windows(2) {
                    order.look(pair[0], pair[1]);
                }
            }
        }
    }
    let part = order.duller as f32 / order.steps as f32;
    println!("{} of {} steps, {part:.5}; {:.2} at the same hue", order.duller, order.steps, order.most);
    // Some are left where a display's range narrows as the hue turns, most of them near cyan.
    assert!(part < 0.001, "{part}");
    assert!(order.most < 2.0 * ROUNDING, "{}", order.most);
}

/// A bright yellow is drawn as one: not farther off than the sRGB yellow a designer would choose.
#[test]
fn a_bright_yellow_is_drawn_bright() {
    let shelf = Shelf::built_in();
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    let yellow = shelf.find("py154").unwrap();
    let lab = Path::new(&yellow.film, &yellow.film, &view, 1.0).colour(0.0);
    let drawn = lab_of_rgb(shown(lab).rgb);
    let chosen = lab_of_rgb([0xff, 0xcf, 0x00]);
    println!("{lab:?} {drawn:?} {} {}", delta_e(lab, drawn), delta_e(lab, chosen));
    assert!(delta_e(lab, drawn) < delta_e(lab, chosen) + 2.0);
}
