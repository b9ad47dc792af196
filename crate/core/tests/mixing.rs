//! What must hold for any paints: properties of mixtures, paths and kits.

use proptest::prelude::*;
use washpath_core::colour::chroma;
use washpath_core::spectrum::from_fn;
use washpath_core::{
    Film, Lab, Laid, Light, Path, Sheet, Shelf, Spectrum, Stock, View, mix, position_of, share_at,
};

fn spectrum(most: f32) -> impl Strategy<Value = Spectrum> {
    // Exponents, so that weak and strong bands are as likely.
    proptest::collection::vec(-6.0f32..1.0, 36)
        .prop_map(move |values| from_fn(|band| most * 10f32.powf(values[band])))
}

fn film() -> impl Strategy<Value = Film> {
    (spectrum(10.0), spectrum(3.0), 0.3f32..5.0).prop_map(|(k, s, strength)| Film { k, s, strength })
}

fn view() -> View {
    View::new(&Stock::BrightWhite.paper(), Light::D65)
}

fn close(a: Lab, b: Lab) -> bool {
    (a.l - b.l).abs() < 0.01 && (a.a - b.a).abs() < 0.02 && (a.b - b.b).abs() < 0.02
}

/// Farthest that two reflectances lie apart.
fn apart(a: &Spectrum, b: &Spectrum) -> f32 {
    a.iter().zip(b).map(|(a, b)| (a - b).abs()).fold(0.0, f32::max)
}

proptest! {
    #[test]
    fn thin_glazes_commute_and_are_mixes_to_first_order(a in film(), b in film(), share in 0.1f32..0.9) {
        let view = view();
        let densest = a.k.iter().chain(&a.s).chain(&b.k).chain(&b.s).fold(0.0f32, |most, v| most.max(*v));
        let laid = |laid: Laid, thickness: f32| {
            Path::new(&a, &b, &view, thickness / densest).laid(laid).reflectance(share)
        };
        // Halving the load quarters what is of second order; f32 leaves some noise.
        for glaze in [Laid::AOverB, Laid::BOverA] {
            let thick = apart(&laid(glaze, 0.1), &laid(Laid::Mixed, 0.1));
            let thin = apart(&laid(glaze, 0.05), &laid(Laid::Mixed, 0.05));
            prop_assert!(thin <= 0.35 * thick + 2e-6, "{thin} of {thick}");
        }
        let order = |t| apart(&laid(Laid::AOverB, t), &laid(Laid::BOverA, t));
        prop_assert!(order(0.05) <= 0.35 * order(0.1) + 2e-6);
    }

    #[test]
    fn a_glaze_of_nothing_is_the_paint(a in film(), load in 0.01f32..2.0) {
        let view = view();
        for laid in Laid::ALL {
            let path = Path::new(&a, &Film::CLEAR, &view, load).laid(laid);
            prop_assert!(close(path.colour(0.0), view.colour(&a, load)));
        }
    }

    #[test]
    fn reflectance_is_a_share(film in film(), load in 0.0f32..1000.0) {
        for r in view().reflectance(&film, load) {
            prop_assert!((0.0..=1.000_01).contains(&r), "{}", r);
        }
    }

    #[test]
    fn any_finite_number_gives_a_colour(film in film(), load in any::<f32>(), share in any::<f32>()) {
        let view = view();
        let lab = Path::new(&film, &Film::CLEAR, &view, load).colour(share);
        prop_assert!(lab.l.is_finite() && lab.a.is_finite() && lab.b.is_finite());
    }

    #[test]
    fn the_thinnest_wash_is_the_paper(film in film()) {
        let paper = view().colour(&Film::CLEAR, 1.0);
        prop_assert!(close(view().colour(&film, 0.0), paper));
        prop_assert!(close(view().colour(&film, 1e-8), paper));
    }

    #[test]
    fn order_and_units_of_parts_do_not_matter(a in film(), b in film(), parts in 0.1f32..9.0) {
        let one = mix(&[(&a, parts), (&b, 1.0)]).unwrap();
        let other = mix(&[(&b, 2.0), (&a, 2.0 * parts)]).unwrap();
        prop_assert!(close(view().colour(&one, 1.0), view().colour(&other, 1.0)));
    }

    #[test]
    fn a_paint_mixed_with_itself_is_itself(a in film(), share in 0.0f32..=1.0, load in 0.01f32..2.0) {
        let view = view();
        prop_assert!(close(Path::new(&a, &a, &view, load).colour(share), view.colour(&a, load)));
    }

    #[test]
    fn a_path_begins_and_ends_with_its_paints(a in film(), b in film(), load in 0.01f32..2.0) {
        let view = view();
        let points = Path::new(&a, &b, &view, load).points(9);
        prop_assert_eq!(points[0].lab, view.colour(&a, load));
        prop_assert_eq!(points[8].lab, view.colour(&b, load));
    }

    #[test]
    fn no_place_on_the_path_is_greyer_than_the_crossing(a in film(), b in film()) {
        let view = view();
        let path = Path::new(&a, &b, &view, 1.0);
        let crossing = path.crossing();
        prop_assert!((chroma(path.colour(crossing.share)) - crossing.chroma).abs() < 1e-4);
        for point in path.points(401) {
            // Spectra drawn band by band make several valleys; paints make one or two.
            prop_assert!(crossing.chroma <= chroma(point.lab) + 0.05, "{} at {}", chroma(point.lab), point.share);
        }
    }
}

#[test]
fn crossings_of_real_pairs_are_minima() {
    let (shelf, view) = (Shelf::built_in(), view());
    let paints = shelf.paints();
    for (i, a) in paints.iter().enumerate() {
        for b in &paints[..i] {
            let path = Path::new(&a.film, &b.film, &view, 1.0);
            let crossing = path.crossing();
            let least = path.points(801).iter().map(|p| chroma(p.lab)).fold(f32::INFINITY, f32::min);
            assert!(
                crossing.chroma <= least + 0.01,
                "{} and {}: {} above {least}",
                a.key,
                b.key,
                crossing.chroma
            );
        }
    }
}

#[test]
fn a_strong_paint_counts_for_more_of_the_same() {
    let shelf = Shelf::built_in();
    let weak = &shelf.find("pr108").unwrap().film;
    let strong = Film { strength: 3.0 * weak.strength, ..shelf.find("pb15-3").unwrap().film.clone() };
    let even = Film { strength: weak.strength, ..strong.clone() };
    // One part of the strong paint does what three of an even one do, at any load.
    let (one, three) =
        (mix(&[(weak, 3.0), (&strong, 1.0)]).unwrap(), mix(&[(weak, 1.0), (&even, 1.0)]).unwrap());
    for load in [1.0, 0.25] {
        assert!(close(view().colour(&one, load), view().colour(&three, load)));
    }
    // And a puddle keeps its strength when it is mixed on.
    let puddle = mix(&[(&one, 4.0), (weak, 4.0)]).unwrap();
    let at_once = mix(&[(weak, 7.0), (&strong, 1.0)]).unwrap();
    assert!(close(view().colour(&puddle, 1.0), view().colour(&at_once, 1.0)));
}

#[test]
fn shares_run_evenly_from_end_to_end() {
    assert_eq!((share_at(0.0), share_at(0.5), share_at(1.0)), (0.0, 0.5, 1.0));
    for i in 0..100 {
        let position = i as f32 / 100.0;
        assert!(share_at(position) < share_at(position + 0.01));
        assert!((position_of(share_at(position)) - position).abs() < 1e-3);
    }
}

#[test]
fn a_sheet_holds_the_paths_of_its_rows() {
    let (shelf, view) = (Shelf::built_in(), view());
    let (a, b) = (&shelf.paints()[0].film, &shelf.paints()[7].film);
    let (shares, loads) = ([0.0, 0.5, 1.0], [1.0, 0.25]);
    let sheet = Sheet::new(a, b, Laid::Mixed, &view, &shares, &loads);
    for (row, load) in loads.into_iter().enumerate() {
        for (column, share) in shares.into_iter().enumerate() {
            assert_eq!(sheet.cell(row, column), Some(Path::new(a, b, &view, load).colour(share)));
        }
    }
    assert_eq!((sheet.cell(0, 3), sheet.cell(2, 0)), (None, None));
}

#[test]
fn the_strongest_load_is_the_strongest() {
    let view = view();
    for paint in Shelf::built_in().paints() {
        let strongest = view.strongest_load(&paint.film);
        let radius = view.wheel_point(&paint.film, strongest).radius();
        for step in 0..=100 {
            let load = (-5.0 * step as f32 / 100.0).exp2();
            let other = view.wheel_point(&paint.film, load).radius();
            assert!(other <= radius + 0.01, "{}: {other} at {load}, {radius} at {strongest}", paint.key);
        }
    }
}

#[test]
fn the_paper_alone_is_nearly_white_and_named_right() {
    for stock in Stock::ALL {
        let view = View::new(&stock.paper(), Light::D65);
        let lab = view.colour(&Film::CLEAR, 1.0);
        let range = match stock {
            Stock::BrightWhite => 96.0..98.0,
            Stock::Natural => 94.0..96.5,
            Stock::Cream => 91.0..94.0,
            Stock::Grey => 63.0..69.0,
            Stock::Tan => 66.0..74.0,
            other => panic!("{} has no range yet", other.name()),
        };
        assert!(range.contains(&lab.l), "{}: L* {}", stock.name(), lab.l);
    }
}

#[test]
fn the_order_of_glazes_shows_where_the_upper_paint_hides() {
    let shelf = Shelf::built_in();
    let view = view();
    let [red, blue] = ["pr101-light-red", "pb15-3"].map(|key| &shelf.find(key).unwrap().film);
    let colour = |laid| Path::new(red, blue, &view, 1.0).laid(laid).colour(0.5);
    let [mix, red_over, blue_over] = Laid::ALL.map(colour);
    // Light red hides well: over the blue it stays red, under it it turns dark.
    assert!(red_over.a > mix.a && mix.a > blue_over.a, "{red_over:?} {mix:?} {blue_over:?}");
}
