//! How long the core's sums take on this machine, one figure a line: name, tab, nanoseconds.
//!
//! All figures, or those named after `--`. Each figure is the best of several runs: other work on the machine only ever adds.

use std::hint::black_box;
use std::time::{Duration, Instant};

use washpath_core::{
    BANDS, Choice, Chooser, Coverage, Error, Lab, Laid, Light, PaintNumber, Path, Reach, Report, Rules,
    Sheet, Shelf, Spectrum, Stock, Target, Targets, View, Wish, find_matches, horizon, layer,
    neutral_partners, next_paints, shading_partners, share_at, substitute,
};

const RUNS: usize = 9;
const RUN: Duration = Duration::from_millis(60);

fn main() -> Result<(), Error> {
    let shelf = Shelf::built_in();
    let (a, b) = (&shelf.find("pb29")?.film, &shelf.find("pbr7-burnt-sienna")?.film);
    let paper = Stock::BrightWhite.paper();
    let view = View::new(&paper, Light::D65);
    let ground: Spectrum = paper.reflectance.map(|value| value as f32);

    figure("arithmetic limit", || arithmetic(black_box(&a.k), black_box(&a.s), black_box(&ground)));
    figure("film", || layer::reflectances(black_box(&a.k), &a.s, black_box(0.5), &ground));
    figure("mix to Lab", || view.colour_between(a, b, black_box(0.4), black_box(0.5)));
    let path = Path::new(a, b, &view, 1.0);
    figure("path", || black_box(&path).points(33));
    figure("crossing", || black_box(&path).crossing());
    let shares: Vec<f32> = (0..33).map(|i| share_at(i as f32 / 32.0)).collect();
    let loads: Vec<f32> = (0..12).map(|i| (-0.45 * i as f32).exp2()).collect();
    figure("sheet", || Sheet::new(a, b, Laid::Mixed, &view, black_box(&shares), black_box(&loads)));
    figure("neutral partners", || neutral_partners(black_box(a), 1.0, &view, shelf.paints()));
    figure("shading partners", || shading_partners(black_box(a), 1.0, &view, shelf.paints()));

    // A kit of every tenth paint: all hues, earths and blacks among them.
    let kit: Vec<PaintNumber> =
        shelf.paints().iter().step_by(10).take(15).map(|paint| paint.number).collect();
    figure("reach of 15 paints", || Reach::new(black_box(&kit), shelf, &view));
    let reach = Reach::new(&kit, shelf, &view)?;
    figure("outline", || black_box(&reach).outline());
    figure("darks", || black_box(&reach).darks());
    let gamut = Targets::gamut();
    figure("coverage", || Coverage::new(black_box(&reach), &gamut));
    let horizon = horizon(shelf, &view)?;
    figure("report on 15 paints", || Report::new(black_box(&kit), shelf, &view, &horizon));
    let all: Vec<PaintNumber> = shelf.paints().iter().map(|paint| paint.number).collect();
    figure("next paint of the shelf", || next_paints(black_box(&kit), &all, shelf, &view, Wish::Reach));
    figure("substitute of the shelf", || substitute(black_box(all[0]), &all, &kit, shelf, &view));
    let targets: Vec<Target> = gamut
        .colours()
        .iter()
        .enumerate()
        .filter(|(i, _)| i % 9 < 7)
        .map(|(_, lab)| Target::new(*lab, 1.0))
        .take(500)
        .collect();
    let targets = Targets::new(&targets)?;
    figure("best 12 of 120 for 500 colours", || best_12(&all[..120], &targets, shelf, &view));
    figure("nearest place", || black_box(&reach).nearest_on_wheel(-12.0, 20.0, None));
    let target = Lab::new(45.0, -12.0, 10.0);
    figure("recipes of 15 paints", || find_matches(black_box(target), &reach, shelf));
    figure("nearest place at a load", || black_box(&reach).nearest_on_wheel(-12.0, 20.0, Some(0.3)));
    figure("strongest load", || view.strongest_load(black_box(a)));
    growth(&all, &targets, shelf, &view)
}

/// How the time of searches grows with what they are asked about: `growth`, a name and a size.
fn growth(all: &[PaintNumber], targets: &Targets, shelf: &Shelf, view: &View) -> Result<(), Error> {
    let horizon = horizon(shelf, view)?;
    let target = Lab::new(45.0, -12.0, 10.0);
    for paints in [6, 9, 12, 15, 18, 21, 24] {
        let kit: Vec<PaintNumber> = all.iter().step_by(6).copied().take(paints).collect();
        let reach = Reach::new(&kit, shelf, view)?;
        figure(&format!("growth reach {paints}"), || Reach::new(black_box(&kit), shelf, view));
        figure(&format!("growth report {paints}"), || Report::new(black_box(&kit), shelf, view, &horizon));
        figure(&format!("growth recipes {paints}"), || find_matches(black_box(target), &reach, shelf));
    }
    for candidates in [30, 60, 90, 120] {
        figure(&format!("growth choice {candidates}"), || best_12(&all[..candidates], targets, shelf, view));
    }
    Ok(())
}

fn best_12(
    candidates: &[PaintNumber],
    targets: &Targets,
    shelf: &Shelf,
    view: &View,
) -> Result<Choice, Error> {
    let rules = Rules::default();
    let mut chooser = Chooser::new(12, candidates, targets, &rules, shelf, view)?;
    while !chooser.step(1_000).finished {}
    chooser.choice().cloned()
}

/// As many divisions, roots, products and sums as a mix takes, none waiting for another band's.
///
/// A mix's 36 bands take 1 division, 1 root and some 50 products and sums each.
fn arithmetic(x: &Spectrum, y: &Spectrum, z: &Spectrum) -> Spectrum {
    let mut out = [0.0; BANDS];
    for band in 0..BANDS {
        let (x, y, z) = (x[band], y[band] + 1.0, z[band] + 1.0);
        let divided = x / y + z.sqrt();
        let mut sums = [x, y, z, divided, x];
        for _ in 0..5 {
            sums = sums.map(|sum| sum * y + z);
        }
        out[band] = sums.iter().sum();
    }
    out
}

fn figure<T>(name: &str, mut work: impl FnMut() -> T) {
    let mut asked = std::env::args().skip(1).peekable();
    if asked.peek().is_some() && !asked.any(|asked| asked == name) {
        return;
    }
    let mut best = f64::INFINITY;
    let start = Instant::now();
    black_box(work());
    // So many at a go that reading the clock costs nothing, and long work is done once.
    let batch = if start.elapsed() > RUN / 64 { 1 } else { 64 };
    for _ in 0..RUNS {
        let (start, mut times) = (Instant::now(), 0u32);
        while start.elapsed() < RUN {
            for _ in 0..batch {
                black_box(work());
            }
            times += batch;
        }
        best = best.min(start.elapsed().as_nanos() as f64 / f64::from(times));
    }
    println!("{name}\t{best:.1}");
}
