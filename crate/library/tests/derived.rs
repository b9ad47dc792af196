//! The derived shelf against the handbook's measured watercolours.
//!
//! Colours, tint hues and ratings: B. MacEvoy, handprint.com/HP/WCL, averages
//! over makers, 1998 to 2008 (`data/handbook.csv`).

use std::collections::HashSet;
use std::sync::LazyLock;

use washpath_core::{Film, Lab, Light, Paint, Path, Shelf, Stock, Tier, View, compare};
use washpath_library::{Anchored, File, derive, files};

static PAINTS: LazyLock<Vec<Anchored>> = LazyLock::new(|| derive().expect("whole tables"));
static FILES: LazyLock<[File; 3]> = LazyLock::new(|| files(&PAINTS).expect("whole tables"));
static SHELF: LazyLock<Shelf> = LazyLock::new(|| {
    let table = std::str::from_utf8(&FILES[0].bytes).expect("text");
    Shelf::from_csv(table).expect("a whole shelf")
});

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

#[test]
fn the_files_in_the_core_are_the_derived_ones() {
    for File { name, bytes } in FILES.iter() {
        let there = std::fs::read(format!("{}/../core/data/{name}", env!("CARGO_MANIFEST_DIR")));
        assert!(there.is_ok_and(|there| there == *bytes), "{name} is another: run the tool named library");
    }
}

/// What the program carries is the table with its spectra rounded anew: no
/// paint, and no mix of two, is moved by 0.06 CIEDE2000.
#[test]
fn packing_moves_no_mix() {
    let packed = Shelf::built_in();
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    let moved = |a: &Film, b: &Film| {
        let loads = [2.0, 1.0, 0.5, 0.25, 0.125, 0.062_5];
        loads.map(|load| compare(view.colour(a, load), view.colour(b, load)).delta_e)
    };
    let worst = |moves: Vec<[f32; 6]>| moves.into_iter().flatten().fold(0.0, f32::max);
    let pairs: Vec<_> = SHELF.paints().iter().zip(packed.paints()).collect();
    let singles = pairs.iter().map(|(table, packed)| moved(&table.film, &packed.film)).collect();
    let mut mixes = Vec::new();
    for (i, (table_a, packed_a)) in pairs.iter().enumerate() {
        for (table_b, packed_b) in pairs.iter().skip(i % 7).step_by(7) {
            for share in [0.1, 0.3, 0.5, 0.7, 0.9] {
                let between = |a: &Film, b: &Film| Film::between(a, b, share);
                mixes.push(moved(
                    &between(&table_a.film, &table_b.film),
                    &between(&packed_a.film, &packed_b.film),
                ));
            }
        }
    }
    let (singles, mixes) = (worst(singles), worst(mixes));
    println!("singles move by {singles:.3} at most, mixes by {mixes:.3}");
    assert!(singles.max(mixes) < 0.06, "singles move by {singles:.3}, mixes by {mixes:.3}");
    for (table, packed) in pairs {
        assert_eq!(
            Paint { film: Film::CLEAR, ..table.clone() },
            Paint { film: Film::CLEAR, ..packed.clone() }
        );
        assert_eq!(table.film.strength, packed.film.strength);
    }
}

#[test]
fn the_paints_a_painter_asks_for_are_there() {
    let wanted = "pb29 pb15-3 pb60 pb27 pb28 pb35 pb36 pg7 pg36 pg18 py35-lemon py35-light py35-medium \
        py35-deep py53 py42 py43 py184 py74 po20 po73 pr108 pr254 pr101-transparent-red pr101-light-red \
        pr101-indian-red pr101-caput-mortuum pr179 pv19-rose pv19-violet pr122 pv23 pbr7-burnt-sienna \
        pbr7-raw-sienna pbr7-raw-umber pbr7-burnt-umber pbk9 pw6";
    for key in wanted.split_whitespace() {
        assert!(SHELF.find(key).is_ok(), "no {key}");
    }
    for key in "py65 py83 py151 py153 py154 po49 po62 pr112 pr149 pr188 pr209 pv29 pb33 pg10 pbk6 pbk7 pbk31"
        .split(' ')
    {
        assert_eq!(SHELF.find(key).map(|paint| paint.tier), Ok(Tier::Estimated), "{key}");
    }
    assert!(SHELF.paints().len() >= 140, "{} paints", SHELF.paints().len());
    let names: HashSet<&str> = SHELF.paints().iter().map(|paint| pigment(&paint.code)).collect();
    assert!(names.len() >= 110, "{} Colour Index names", names.len());
}

/// Colour Index name without its crystal form.
fn pigment(code: &str) -> &str {
    code.split([':', '/']).next().unwrap_or(code)
}

/// Links carry numbers: a paint once given one keeps it.
#[test]
fn numbers_stay() {
    for (number, key) in
        [(1, "pb29"), (3, "pb15-3"), (38, "py3"), (59, "pr179"), (80, "pw4"), (81, "nr9"), (151, "pw6-buff")]
    {
        assert_eq!(SHELF.find(key).unwrap().number.get(), number, "{key}");
    }
}

#[test]
fn strengths_are_in_range_and_say_whence() {
    for paint in SHELF.paints() {
        assert!((0.3..=5.0).contains(&paint.film.strength), "{} {}", paint.key, paint.film.strength);
        assert!(!paint.strength_source.is_empty(), "{}", paint.key);
    }
    assert_eq!(SHELF.find("pb29").unwrap().film.strength, 1.0);
}

/// Lightness within 3.5 and, where there is a hue to speak of, hue within 6 degrees.
#[test]
fn every_masstone_has_the_handbooks_lightness_and_hue() {
    for paint in PAINTS.iter().filter(|paint| paint.wanted.l < 95.0) {
        let l = (paint.masstone.l - paint.wanted.l).abs();
        let hue = |lab: Lab<f64>| lab.b.atan2(lab.a).to_degrees();
        let turn = (hue(paint.masstone) - hue(paint.wanted) + 180.0).rem_euclid(360.0) - 180.0;
        let chroma = paint.wanted.a.hypot(paint.wanted.b);
        // Of dull paints a few degrees are not seen; perylene violet's is 11 off at chroma 20.
        let grey = chroma < 25.0;
        assert!(l < 3.5 && (grey || turn.abs() < 6.0), "{} L* {l:.1} off, hue {turn:.1}", paint.key);
    }
}

/// 0.5 in the median and 3.0 at most as derived; 3.6 for indigo, whose handbook
/// colour is from memory. The largest are paints whose handbook chroma is an
/// estimate.
#[test]
fn masstones_match_the_handbook() {
    let worst = PAINTS.iter().max_by(|a, b| a.difference.total_cmp(&b.difference)).unwrap();
    assert!(worst.difference < 3.7, "{}: {:.2}", worst.key, worst.difference);
    let median = median(PAINTS.iter().map(|paint| paint.difference).collect());
    assert!(median < 0.9, "median {median:.2}");
}

/// Half as dark is our reading of a tint; the handbook does not state its depth.
/// As derived: 79 % of the turns of 3 degrees or more, 93 % of those of 8; the
/// reds of opaque iron oxide, cobalt greens and violets turn the other way.
#[test]
fn tints_turn_as_the_handbooks_do() {
    let right = |least: f64| {
        let turns = PAINTS.iter().filter_map(|paint| paint.turns_as_wanted(least));
        let turns: Vec<bool> = turns.collect();
        turns.iter().filter(|right| **right).count() as f64 / turns.len() as f64
    };
    assert!(right(3.0) > 0.75, "{:.2} of all turns", right(3.0));
    assert!(right(8.0) > 0.9, "{:.2} of the wide ones", right(8.0));
    let coloured = PAINTS.iter().filter(|paint| paint.wanted.a.hypot(paint.wanted.b) > 5.0);
    let size = median(coloured.filter_map(Anchored::turns_too_far_by).map(f64::abs).collect());
    assert!(size < 5.0, "turns are {size:.1} degrees off in the median");
    println!("turns of 3 degrees {:.2}, of 8 {:.2}, size {size:.1}", right(3.0), right(8.0));
    let off = PAINTS.iter().filter_map(|paint| {
        let off = (paint.tint_hue - paint.wanted_tint_hue? + 180.0).rem_euclid(360.0) - 180.0;
        // White has no hue to compare.
        (paint.wanted.l < 95.0).then_some(off.abs())
    });
    let median = median(off.collect());
    assert!(median < 4.5, "median {median:.1} degrees");
}

#[test]
fn washes_fade_evenly_to_paper() {
    for paint in PAINTS.iter() {
        let lightness = paint.washes.map(|wash| wash.l);
        let darkens = lightness.windows(2).any(|pair| pair[1] < pair[0] - 0.05);
        assert!(!darkens || paint.wanted.l > 95.0, "{} {lightness:?}", paint.key);
        // Chroma may rise at first (a dark paint opens up) but falls only once.
        let chroma = paint.washes.map(|wash| wash.a.hypot(wash.b));
        let falls: Vec<bool> = chroma.windows(2).map(|pair| pair[1] < pair[0]).collect();
        // What is grey has no chroma to follow.
        assert!(falls.is_sorted() || chroma[0] < 4.0, "{} {chroma:?}", paint.key);
    }
}

#[test]
fn spectra_are_positive_and_smooth() {
    for paint in SHELF.paints() {
        let film = &paint.film;
        assert!(film.k.iter().chain(&film.s).all(|v| *v > 0.0 && *v < 60.0), "{}", paint.key);
        for pair in film.s.windows(2) {
            assert!((0.6..1.7).contains(&(pair[1] / pair[0])), "S of {}: {pair:?}", paint.key);
        }
        // The steepest edges known, of cadmium yellows, fall by a factor of 12 in 10 nm.
        for pair in film.k.windows(2) {
            // A white's edge in the violet is real.
            let smooth = (0.05..4.0).contains(&(pair[1] / pair[0])) || pair[0].max(pair[1]) < 0.2;
            assert!(smooth || paint.hue == "white", "K of {}: {pair:?}", paint.key);
        }
    }
}

/// Paints rated transparent pass the light, paints rated opaque hide the ground.
#[test]
fn opacity_follows_the_ratings() {
    let mean = |rated: std::ops::Range<f32>| {
        let ratios: Vec<f64> = SHELF
            .paints()
            .iter()
            .zip(PAINTS.iter())
            .filter(|(paint, _)| paint.transparency.is_some_and(|t| rated.contains(&t)))
            .map(|(_, derived)| derived.contrast_ratio)
            .collect();
        ratios.iter().sum::<f64>() / ratios.len() as f64
    };
    let (opaque, half, clear) = (mean(0.0..1.2), mean(1.2..2.5), mean(3.0..4.1));
    assert!(opaque > half + 0.1 && half > clear + 0.1 && clear < 0.2, "{opaque} {half} {clear}");
    for key in ["pb15-3", "pg7", "pr179", "pv19-rose", "pb60", "pb27", "pg18"] {
        let film = &SHELF.find(key).unwrap().film;
        assert!(film.s.iter().sum::<f32>() / 36.0 < 0.25, "{key} scatters");
    }
}

/// Common practice, no source: phthalo blue outweighs cobalt and the earths.
#[test]
fn strong_stainers_absorb_more_than_weak_paints() {
    let peak = |key: &str| SHELF.find(key).unwrap().film.k.iter().fold(0.0, |a: f32, b| a.max(*b));
    for strong in ["pb15-3", "pb27", "pr179"] {
        for weak in ["pb28", "pg18", "pg23", "pv14", "pv15", "pbr7-raw-umber"] {
            assert!(peak(strong) > 1.3 * peak(weak), "{strong} {} {weak} {}", peak(strong), peak(weak));
        }
    }
}

/// Common practice, no source: two transparent complements make a dark.
#[test]
fn clear_complements_mix_darker_than_either() {
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    for (a, b) in [("pg7", "pr179"), ("pb15-3", "pr177"), ("pg7", "pr264")] {
        let path = Path::new(&SHELF.find(a).unwrap().film, &SHELF.find(b).unwrap().film, &view, 1.0);
        let l: Vec<f32> = path.points(3).iter().map(|point| point.lab.l).collect();
        assert!(l[1] < l[0] - 5.0 && l[1] < l[2] - 5.0, "{a} {b} {l:?}");
    }
}

#[test]
fn second_sets_agree_with_a_fair_share() {
    let checked = SHELF.paints().iter().filter(|paint| paint.tier.name() == "cross-checked").count();
    assert!(checked >= 15, "{checked} cross-checked");
}
