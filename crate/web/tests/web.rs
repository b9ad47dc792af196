//! The border and the drawing, in a browser.

#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, reason = "a test may fail by panic, its helpers too")]

use js_sys::{Array, JSON, Object, Reflect, Uint8ClampedArray};
use washpath_web::paints;
use washpath_web::studio::{Studio, decode_kit, encode_kit, read_paper};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{CanvasRenderingContext2d as Context, HtmlCanvasElement};

wasm_bindgen_test_configure!(run_in_browser);

const DAYLIGHT: usize = 0;
const SIZE: f64 = 600.0;

fn studio() -> Studio {
    Studio::new(object(r#"{"stock": 0, "own": null}"#), DAYLIGHT, false, false).unwrap()
}

fn canvas(size: f64) -> Context {
    let document = web_sys::window().unwrap().document().unwrap();
    let canvas: HtmlCanvasElement = document.create_element("canvas").unwrap().unchecked_into();
    canvas.set_width(size as u32);
    canvas.set_height(size as u32);
    canvas.get_context("2d").unwrap().unwrap().unchecked_into()
}

fn pixel(context: &Context, x: f64, y: f64) -> String {
    let data = context.get_image_data(x, y, 1.0, 1.0).unwrap().data();
    format!("#{:02x}{:02x}{:02x}", data[0], data[1], data[2])
}

fn field(value: &JsValue, name: &str) -> JsValue {
    Reflect::get(value, &name.into()).unwrap()
}

fn text(value: &JsValue, name: &str) -> String {
    field(value, name).as_string().unwrap()
}

fn object(json: &str) -> JsValue {
    JSON::parse(json).unwrap()
}

fn number_of(key: &str) -> u16 {
    let all: Array = paints().unwrap().unchecked_into();
    let found = all.iter().find(|paint| text(paint, "key") == key).unwrap();
    field(&found, "number").as_f64().unwrap() as u16
}

/// A paint alone, as parts.
fn alone(key: &str) -> JsValue {
    object(&format!("[[{}, 1]]", number_of(key)))
}

/// Two paints as a pair, laid in a way.
fn pair(a: &str, b: &str, laid: usize) -> JsValue {
    let [a, b] = [a, b].map(number_of);
    object(&format!(r#"{{"ends": [[[{a}, 1]], [[{b}, 1]]], "laid": {laid}}}"#))
}

/// Ultramarine and burnt sienna at masstone, one part each.
fn scene() -> JsValue {
    let (a, b) = (number_of("pb29"), number_of("pbr7-burnt-sienna"));
    object(&format!(
        r##"{{"size": {SIZE}, "kit": [{a}, {b}], "puddles": [{{"parts": [[{a}, 9], [{b}, 1]], "load": 0.25}}], "seen": [{{"parts": [[{a}, 1]], "load": 0.5, "seen": [50, 10, -20]}}], "showShelf": false,
        "pair": {{"ends": [[[{a}, 1]], [[{b}, 1]]], "laid": 0}}, "asked": [null, null], "share": 0.5, "load": 1, "ribbon": true,
        "pins": [{{"pair": {{"ends": [[[{a}, 1]], [[{b}, 1]]], "laid": 1}}, "load": 0.5}}], "cursor": 0, "cross": [5, -5], "ink": {{"paper": "#ffffff", "line": "#cccccc", "quiet": "#555555", "rim": "#555555", "doubt": "rgba(0,0,0,.06)", "strong": "#111111"}}}}"##
    ))
}

#[wasm_bindgen_test]
fn every_paint_comes_with_its_names() {
    let all: Array = paints().unwrap().unchecked_into();
    assert!(all.length() >= 40);
    for paint in all.iter() {
        for name in ["key", "code", "name", "tier", "source"] {
            assert!(!text(&paint, name).is_empty());
        }
    }
}

#[wasm_bindgen_test]
fn the_middle_of_a_dab_is_exactly_the_predicted_colour() {
    let studio = studio();
    for key in ["pb29", "pr254", "pbr7-raw-umber", "py184"] {
        let context = canvas(64.0);
        studio.draw_dab(&context, alone(key), Some(0.5), 64.0).unwrap();
        let swatch = studio.swatch(alone(key), 0.5).unwrap();
        assert_eq!(pixel(&context, 32.0, 32.0), text(&swatch, "css"), "{key}");
    }
}

#[wasm_bindgen_test]
fn a_dab_of_a_black_is_black_where_paint_pools_and_thins_out_across() {
    let (studio, context) = (studio(), canvas(64.0));
    studio.draw_dab(&context, alone("pbk6"), None, 64.0).unwrap();
    let light = |x: f64, y: f64| {
        let css = pixel(&context, x, y);
        i32::from_str_radix(&css[3..5], 16).unwrap()
    };
    let [pool, middle, thin] = [light(13.0, 25.0), light(32.0, 32.0), light(51.0, 39.0)];
    assert!(pool < 80 && pool < middle && middle + 40 < thin, "{pool} {middle} {thin}");
}

fn draw(studio: &Studio, context: &Context) {
    studio.draw_wheel(context, scene(), Array::new().into()).unwrap();
    studio.draw_path(context, scene()).unwrap();
    let labels = studio.draw_labels(context, scene()).unwrap();
    assert!(
        studio.draw_mark(context, scene(), &labels).unwrap(),
        "labels are out of the mark's way as drawn"
    );
}

#[wasm_bindgen_test]
fn labels_step_aside_for_the_mark_and_only_for_it() {
    let (studio, context) = (studio(), canvas(SIZE));
    let kit: Array = ["pb29", "pbr7-burnt-sienna", "pb60", "pv23", "pr179", "pr101-light-red", "pbk6"]
        .map(|key| JsValue::from(number_of(key)))
        .iter()
        .collect();
    let scene = scene();
    Reflect::set(&scene, &"kit".into(), &kit).unwrap();
    let mut labels = studio.draw_labels(&context, scene.clone()).unwrap();
    let mut moves = 0;
    for step in 0_u8..=100 {
        Reflect::set(&scene, &"share".into(), &(f64::from(step) / 100.0).into()).unwrap();
        if !studio.draw_mark(&context, scene.clone(), &labels).unwrap() {
            moves += 1;
            labels = studio.draw_labels(&context, scene.clone()).unwrap();
            assert!(studio.draw_mark(&context, scene.clone(), &labels).unwrap(), "step {step}");
        }
    }
    assert!((1..40).contains(&moves), "labels moved {moves} times in 100 steps");
}

#[wasm_bindgen_test]
fn the_handle_shows_the_mix_and_the_path_is_found_again() {
    let (studio, context) = (studio(), canvas(SIZE));
    draw(&studio, &context);
    let mix = studio.mix(pair("pb29", "pbr7-burnt-sienna", 0), 0.5, 1.0).unwrap();
    let css = text(&field(&mix, "swatch"), "css");
    let shown = (0..600)
        .step_by(2)
        .any(|x| (0..600).step_by(2).any(|y| pixel(&context, f64::from(x), f64::from(y)) == css));
    assert!(shown, "nothing on the canvas has the mix's colour {css}");
    let frame = washpath_web::studio::geometry::Frame::new(SIZE);
    for share in [0.05, 0.2, 0.5, 0.9] {
        let place = studio.wheel_point_of(pair("pb29", "pbr7-burnt-sienna", 0), share, 1.0).unwrap();
        let spot = frame.spot_at([place[0], place[1]]);
        let found = studio.share_at(scene(), spot.x, spot.y, false).unwrap().unwrap();
        assert!((found[0] - f64::from(share)).abs() < 0.01 && found[1] < 1.0, "{found:?}, not {share}");
    }
}

#[wasm_bindgen_test]
fn paints_are_found_where_they_are_drawn() {
    let (studio, context) = (studio(), canvas(SIZE));
    draw(&studio, &context);
    let ultramarine = number_of("pb29");
    // Blue is below: each question takes some milliseconds here.
    let found: Vec<(f64, f64)> = (200..400)
        .step_by(10)
        .flat_map(|x| (400..560).step_by(10).map(move |y| (f64::from(x), f64::from(y))))
        .filter(|(x, y)| studio.paint_at(scene(), *x, *y, 12.0).unwrap() == ultramarine)
        .collect();
    // Around its middle, most of what is drawn is blue; a letter may stand on it.
    let blue = found.iter().filter(|(x, y)| {
        let css = pixel(&context, *x, *y);
        let [red, blue] = [1, 5].map(|at| i32::from_str_radix(&css[at..at + 2], 16).unwrap());
        blue > red + 60
    });
    assert!(found.len() > 1 && blue.count() > found.len() / 3, "{} places", found.len());
    assert_eq!(studio.paint_at(scene(), 2.0, 2.0, 20.0).unwrap(), 0);
}

#[wasm_bindgen_test]
fn kits_go_out_and_come_back() {
    let kit = object(r#"{"title": "Harbour", "capacity": 12, "stock": 2, "pans": [[1], [2, 3]]}"#);
    let link = encode_kit(kit).unwrap();
    let back = decode_kit(&link).unwrap();
    assert_eq!(text(&back, "title"), "Harbour");
    let pans: Array = field(&back, "pans").unchecked_into();
    assert_eq!(String::from(JSON::stringify(&pans).unwrap()), "[[1],[2,3]]");
}

#[wasm_bindgen_test]
fn faults_come_as_plain_errors() {
    assert!(decode_kit("not a kit").is_err());
    assert!(decode_kit("").is_err());
    assert!(encode_kit(JsValue::NULL).is_err());
    assert!(encode_kit(object(r#"{"title": "", "capacity": 1, "stock": 0, "pans": [[1], [2]]}"#)).is_err());
    assert!(encode_kit(object(r#"{"title": "", "capacity": 1, "stock": 0, "pans": [[]]}"#)).is_err());
    assert!(studio().swatch(object("[[65000, 1]]"), 1.0).is_err());
    assert!(studio().draw_wheel(&canvas(10.0), Object::new().into(), Array::new().into()).is_err());
}

#[wasm_bindgen_test]
fn a_sheet_has_a_swatch_a_cell() {
    let studio = studio();
    let (shares, loads) = ([0.0, 0.5, 1.0], [1.0, 0.5]);
    let cells: Array = studio.sheet(pair("pb29", "pr254", 0), &shares, &loads).unwrap().unchecked_into();
    assert_eq!(cells.length(), 6);
    assert_eq!(text(&cells.get(0), "css"), text(&studio.swatch(alone("pb29"), 1.0).unwrap(), "css"));
}

#[wasm_bindgen_test]
fn a_drag_is_held_at_whole_parts_and_may_pass_them_by() {
    let studio = studio();
    let place = studio.wheel_point_of(pair("pb29", "pbr7-burnt-sienna", 0), 0.503, 1.0).unwrap();
    let frame = washpath_web::studio::geometry::Frame::new(SIZE);
    let spot = frame.spot_at([place[0], place[1]]);
    let share = |snapping| studio.share_at(scene(), spot.x, spot.y, snapping).unwrap().unwrap()[0];
    assert_eq!(share(true), 0.5);
    assert!((share(false) - 0.503).abs() < 0.002);
}

#[wasm_bindgen_test]
fn an_empty_place_is_answered_by_the_kits_nearest_mix() {
    let mut studio = studio();
    let kit = ["pb29", "pbr7-burnt-sienna", "py184"].map(number_of);
    let mix = studio.mix(pair("pb29", "py184", 0), 0.5, 0.5).unwrap();
    let place = studio.wheel_point_of(pair("pb29", "py184", 0), 0.5, 0.5).unwrap();
    let found = studio.nearest_recipe(&kit, place[0], place[1], 0.5).unwrap();
    assert!(field(&found, "off").as_f64().unwrap() < 1.0, "{found:?} for {mix:?}");
    assert!(studio.nearest_recipe(&[], 0.0, 0.0, 0.5).unwrap().is_undefined());
}

#[wasm_bindgen_test]
fn a_puddle_is_found_where_it_is_drawn() {
    let studio = studio();
    let frame = washpath_web::studio::geometry::Frame::new(SIZE);
    let place = studio.wheel_point_of(pair("pb29", "pbr7-burnt-sienna", 0), 0.1, 0.25).unwrap();
    let spot = frame.spot_at([place[0], place[1]]);
    assert_eq!(studio.puddle_at(scene(), spot.x, spot.y, 10.0).unwrap(), Some(0));
    assert_eq!(studio.puddle_at(scene(), 5.0, 5.0, 10.0).unwrap(), None);
}

#[wasm_bindgen_test]
fn a_wide_display_gets_what_srgb_cannot_hold() {
    let wide = Studio::new(object(r#"{"stock": 0, "own": null}"#), DAYLIGHT, true, false).unwrap();
    assert_eq!(wide.colour_space(), "display-p3");
    let css = |studio: &Studio| text(&studio.swatch(alone("pb15-3"), 0.25).unwrap(), "css");
    assert!(css(&wide).starts_with("color(display-p3 "), "{}", css(&wide));
    assert!(css(&studio()).starts_with('#'));
}

#[wasm_bindgen_test]
fn a_wash_has_the_mixs_colour_in_the_mean() {
    let studio = studio();
    let mix = studio.mix(pair("pb29", "pbr7-burnt-sienna", 0), 0.5, 0.25).unwrap();
    let css = text(&field(&mix, "swatch"), "css");
    let pixels = Uint8ClampedArray::new_with_length(4 * 100 * 50);
    studio.wash(pair("pb29", "pbr7-burnt-sienna", 0), 0.5, 0.25, 100, 50, 1.0, &pixels).unwrap();
    let bytes = pixels.to_vec();
    let painted: f64 = bytes.chunks_exact(4).map(|pixel| f64::from(pixel[3])).sum();
    let linear = |byte: u8| (f64::from(byte) / 255.0).powf(2.2);
    for (channel, at) in [1, 3, 5].into_iter().enumerate() {
        let wanted = linear(u8::from_str_radix(&css[at..at + 2], 16).unwrap());
        let mean =
            bytes.chunks_exact(4).map(|pixel| linear(pixel[channel]) * f64::from(pixel[3])).sum::<f64>()
                / painted;
        assert!((mean - wanted).abs() < 0.01, "{mean} for {wanted}");
    }
    for (width, height) in [(100_000, 100_000), (100, 51)] {
        assert!(studio.wash(pair("pb29", "pr254", 0), 0.5, 1.0, width, height, 1.0, &pixels).is_err());
    }
}

#[wasm_bindgen_test]
fn papers_are_read_and_refused_in_words() {
    assert_eq!(read_paper("lab(93 0 9)").unwrap(), [93.0, 0.0, 9.0]);
    assert!(read_paper("#000").is_err());
    assert!(read_paper("mauve-ish").is_err());
    let own = Studio::new(object(r#"{"stock": 0, "own": [75, 8, 24]}"#), DAYLIGHT, false, false).unwrap();
    assert_ne!(own.paper(), studio().paper());
    assert!(Studio::new(object(r#"{"stock": 0, "own": [5, 0, 0]}"#), DAYLIGHT, false, false).is_err());
}
