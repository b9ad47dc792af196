use super::*;
use crate::optics::observer::Light;
use crate::optics::paper::Stock;
use crate::reach::horizon::horizon;

fn number(key: &str) -> PaintNumber {
    Shelf::built_in().find(key).unwrap().number
}

fn report(keys: &[&str]) -> Report {
    let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
    let kit: Vec<_> = keys.iter().map(|key| number(key)).collect();
    Report::new(&kit, shelf, &view, &horizon(shelf, &view).unwrap()).unwrap()
}

#[test]
fn an_empty_kit_lacks_everything() {
    let report = report(&[]);
    assert_eq!(report.reached, Within::default());
    assert_eq!((report.gaps.len(), report.gaps[0].reached), (1, 0.0));
    assert!(report.worths.is_empty() && report.neutrals.is_empty());
    assert!(report.darks.iter().any(|dark| dark.with.is_some()));
}

#[test]
fn a_kit_without_blues_has_its_gap_there() {
    let report = report(&["py154", "pr254", "pbr7-burnt-sienna"]);
    let widest = report.gaps.iter().max_by(|a, b| (a.to - a.from).total_cmp(&(b.to - b.from))).unwrap();
    assert!(widest.hues.contains(&Hue::Blue) || widest.hues.contains(&Hue::BlueGreen), "{widest:?}");
    assert!(widest.reached < GAP);
}

#[test]
fn two_paints_of_one_family_and_hue_are_duplicates() {
    let report = report(&["py151", "py154", "pb29", "pv19-rose", "pbr7-burnt-sienna"]);
    assert_eq!(report.duplicates.len(), 1, "{:?}", report.duplicates);
    assert_eq!(report.duplicates[0].paints, [number("py151"), number("py154")]);
}

#[test]
fn roles_follow_from_colours() {
    let kit = ["py154", "pv19-rose", "pb15-3", "pbr7-burnt-sienna", "pb29", "po73"];
    let report = report(&kit);
    let roles =
        |key: &str| report.worths.iter().find(|worth| worth.paint == number(key)).unwrap().roles.clone();
    assert!(roles("pbr7-burnt-sienna").contains(&Role::Earth));
    assert!(roles("pb29").contains(&Role::Texture));
    assert!(roles("py154").contains(&Role::Primary));
    assert!(roles("pb29").contains(&Role::Complement(number("pbr7-burnt-sienna"))), "{:?}", roles("pb29"));
    assert_eq!(report.worths.iter().filter(|worth| worth.roles.contains(&Role::Primary)).count(), 3);
}

#[test]
fn what_deepens_a_dark_is_darker() {
    let report = report(&["py154", "pr254", "pb35"]);
    for deeper in &report.darks {
        if let (Some(now), Some(Deepener { mix: then, .. })) = (&deeper.dark.mix, &deeper.with) {
            assert!(then.lab.l <= now.lab.l - DEEPER);
            assert_eq!(dark_family(then.lab), deeper.dark.hue);
        }
    }
}

#[test]
fn the_least_lightfast_is_told() {
    assert_eq!(report(&["pb29", "nr9"]).least_lightfast.map(|graded| graded.paint), Some(number("nr9")));
}
