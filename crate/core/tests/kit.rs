//! What the trade knows of kits: primaries, secondaries.

use washpath_core::{
    Coverage, Light, Outline, PaintNumber, Reach, Report, Role, Shelf, Stock, Targets, View, Within,
};

/// A dozen as painters pack them: primaries, secondaries, earths, a dark.
const DOZEN: [&str; 12] = [
    "py154",
    "pr122",
    "pb15-3",
    "pr254",
    "po73",
    "pg7",
    "pb29",
    "pv23",
    "py43",
    "pbr7-burnt-sienna",
    "pbr7-burnt-umber",
    "pbk31",
];

fn view() -> View {
    View::new(&Stock::BrightWhite.paper(), Light::D65)
}

fn number(key: &str) -> PaintNumber {
    Shelf::built_in().find(key).expect(key).number
}

fn reach(paints: &[PaintNumber]) -> Reach {
    Reach::new(paints, Shelf::built_in(), &view()).expect("a known kit")
}

fn triads() -> Vec<[PaintNumber; 3]> {
    let dozen = DOZEN.map(number);
    let mut triads = Vec::new();
    for a in 0..12 {
        for b in a + 1..12 {
            triads.extend((b + 1..12).map(|c| [dozen[a], dozen[b], dozen[c]]));
        }
    }
    triads
}

fn reached(paints: &[PaintNumber]) -> Within<f32> {
    Coverage::new(&reach(paints), &Targets::gamut()).expect("a small kit").reached()
}

#[test]
fn yellow_magenta_and_cyan_reach_more_than_any_other_three() {
    // Common practice, no source.
    let within_5 = |triad: &[PaintNumber; 3]| reached(triad).close;
    let best = triads().into_iter().max_by(|a, b| within_5(a).total_cmp(&within_5(b))).unwrap();
    let keys = best.map(|paint| Shelf::built_in().get(paint).unwrap().key.clone());
    assert_eq!(keys, ["py154", "pr122", "pb15-3"]);
}

#[test]
fn the_primaries_of_a_dozen_are_a_yellow_a_magenta_and_a_cyan() {
    // Common practice, no source.
    let kit = DOZEN.map(number);
    let report = Report::new(&kit, Shelf::built_in(), &view(), &Outline::default()).unwrap();
    let primaries = report.worths.iter().filter(|worth| worth.roles.contains(&Role::Primary));
    let keys: Vec<String> =
        primaries.map(|worth| Shelf::built_in().get(worth.paint).unwrap().key.clone()).collect();
    assert_eq!(keys, ["py154", "pr122", "pb15-3"]);
}

#[test]
fn secondaries_widen_a_triad() {
    // Common practice, no source: an orange, a violet and a green of their own are brighter than mixed ones.
    let triad = ["py154", "pr122", "pb15-3"].map(number);
    let (outline, before) = (reach(&triad).outline(), reached(&triad));
    for secondary in ["po73", "pg7", "pv23"] {
        let wider: Vec<_> = triad.into_iter().chain([number(secondary)]).collect();
        let after = reached(&wider);
        assert!(after.same > before.same && after.close > before.close, "{secondary}: {after:?}");
        let share = outline.area_share(&reach(&wider).outline());
        assert!(share < 1.0, "{secondary} leaves {share}");
    }
}
