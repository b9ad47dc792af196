//! What the page has to know of the core before that has started: its limits, lists, words and thresholds.
//!
//! Told while the page is built, so that no number stands twice and nobody has to ask: a module of constants, of which
//! the bundle takes what is used.

use serde_json::{Value, json};
use washpath_core::rating;
use washpath_core::{
    LIMITS, LONGEST_BRIEF_NOTE, LONGEST_NOTE, LONGEST_PAINT_NAME, LONGEST_TARGETS_NAME, LONGEST_TASK,
    LONGEST_TITLE, Laid, Light, Load, MOST_KEPT_COLOURS, MOST_NAMED_TARGETS, MOST_OWN_PAINTS, MOST_PAINTS,
    MOST_PANS, MOST_PUDDLES, MOST_RECORDS, MOST_TASKS, NAMED_LOADS, NEARLY_GREY, Ratio, SHEET_RATIOS, Stock,
};

/// The file, beside the core's glue.
pub(crate) const FILE: &str = "facts.js";

/// The module's text: an export for each fact, with its type.
pub(crate) fn module() -> String {
    let mut text = "// Told by the core when the page was built.\n".to_owned();
    for (name, kind, value) in facts() {
        text += &format!("/** @type {{{kind}}} */\nexport const {name} = {value};\n");
    }
    text
}

fn facts() -> Vec<(&'static str, &'static str, Value)> {
    let loads = NAMED_LOADS.map(|named| json!([named.load, named.name, named.plain_sign]));
    vec![
        ("MOST_PANS", "number", json!(MOST_PANS)),
        ("MOST_PUDDLES", "number", json!(MOST_PUDDLES)),
        ("MOST_PLACES", "number", json!(MOST_NAMED_TARGETS)),
        ("MOST_COLOURS", "number", json!(MOST_KEPT_COLOURS)),
        ("MOST_OWN", "number", json!(MOST_OWN_PAINTS)),
        ("MOST_RECORDS", "number", json!(MOST_RECORDS)),
        ("MOST_TASKS", "number", json!(MOST_TASKS)),
        ("MOST_MIXED", "number", json!(MOST_PAINTS)),
        ("LONGEST_TITLE", "number", json!(LONGEST_TITLE)),
        ("LONGEST_PLACE_NAME", "number", json!(LONGEST_TARGETS_NAME)),
        ("LONGEST_PAINT_NAME", "number", json!(LONGEST_PAINT_NAME)),
        ("LONGEST_RECORD_NOTE", "number", json!(LONGEST_NOTE)),
        ("LONGEST_CLASS_NOTE", "number", json!(LONGEST_BRIEF_NOTE)),
        ("LONGEST_TASK", "number", json!(LONGEST_TASK)),
        ("LIGHTS", "string[]", json!(Light::ALL.map(Light::name).map(capital))),
        ("PAPERS", "string[]", json!(Stock::ALL.map(Stock::name).map(capital))),
        ("WAYS", "string[]", json!(Laid::ALL.map(Laid::name).map(capital))),
        ("LOADS", "[load: number, name: string, sign: string][]", json!(loads)),
        ("LEAST_LOAD", "number", json!(Load::THINNEST.value())),
        ("RATIOS", "[a: number, b: number][]", json!(SHEET_RATIOS.map(Ratio::parts))),
        ("TRANSPARENCY", "string[]", json!(rating::TRANSPARENCY_WORDS)),
        ("GRANULATION", "string[]", json!(rating::GRANULATION_WORDS)),
        ("STAINING", "string[]", json!(rating::STAINING_WORDS)),
        ("TRANSPARENT", "number", json!(rating::TRANSPARENT)),
        ("OPAQUE", "number", json!(rating::OPAQUE)),
        ("GRANULATES", "number", json!(rating::GRANULATES)),
        ("SMOOTH", "number", json!(rating::SMOOTH)),
        ("LIFTS", "number", json!(rating::LIFTS)),
        ("LIGHTFAST", "number", json!(rating::LIGHTFAST)),
        ("STRONG", "number", json!(f64::from((rating::STRONG * 100.0).round()) / 100.0)),
        ("WEAK", "number", json!(f64::from((rating::WEAK * 100.0).round()) / 100.0)),
        ("REACHED", "number", json!(LIMITS.close)),
        ("NEARLY_GREY", "number", json!(NEARLY_GREY)),
    ]
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fact_is_an_export() {
        let text = module();
        assert!(text.contains("export const MOST_PANS = 48;\n"), "{text}");
        assert!(text.contains("export const LIGHTS = [\"Daylight\",\"Warm daylight\""), "{text}");
        assert!(
            text.contains("export const LOADS = [[1.0,\"masstone\",\"1\"],[0.5,\"strong wash\",\"1/2\"]"),
            "{text}"
        );
        assert_eq!(text.matches("export const ").count(), facts().len());
    }
}
