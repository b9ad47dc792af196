//! All samples but the published reflectances are written here, to the standard's text.

use super::reading::{MOST_SAMPLES, from_d50};
use super::*;
use crate::colour::{Lab, ciede2000};
use crate::optics::spectrum::{BANDS, Spectrum};
use crate::swatches::calibrate::Seen;
use crate::text::decimal::Decimal;
use proptest::prelude::*;

const NM: std::ops::RangeInclusive<u16> = 40..=70;

/// 31 cells from 400 to 700 nm, a value each by its wavelength.
fn cells(separator: &str, cell: impl Fn(u16) -> String) -> String {
    NM.map(cell).collect::<Vec<_>>().join(separator)
}

fn header(separator: &str) -> String {
    cells(separator, |tens| format!("{tens}0"))
}

fn names(measured: &Measured) -> Vec<&str> {
    measured.samples.iter().map(|sample| &*sample.name).collect()
}

fn faults(measured: &Measured) -> Vec<String> {
    measured.faults.iter().map(ToString::to_string).collect()
}

fn spectrum(measured: &Measured, sample: usize) -> Spectrum<f64> {
    match &measured.samples[sample].seen {
        Seen::Spectrum(reflectance) => **reflectance,
        Seen::Lab(_) => panic!("a colour, not a spectrum"),
    }
}

fn refusal(text: &str) -> String {
    read_measurements(text).unwrap_err().to_string()
}

#[test]
fn headers_name_wavelengths_in_many_ways() {
    for form in ["#", "# nm", "R#", "nm#", "SPECTRAL_NM_#", "SPECTRAL_NM#", "R_#", "R(# nm)", "\"#,0 nm\""] {
        let header = cells(";", |tens| form.replace('#', &format!("{tens}0")));
        let text = format!("Sample;{header}\nslate;{}\n", cells(";", |_| "0,25".into()));
        let measured = read_measurements(&text).unwrap_or_else(|error| panic!("{form}: {error}"));
        assert_eq!((names(&measured), spectrum(&measured, 0)), (vec!["slate"], [0.25; BANDS]), "{form}");
    }
    for field in
        ["SPECTRAL_NM_400", "SPECTRAL_NM400", "nm400", "R_400", "400nm", "400 nm (%)", "R400 [percent]"]
    {
        assert_eq!(wavelength(field), Some(400.0), "{field}");
    }
    for field in ["2024-10-05", "-400", "D50", "XYZ_X", "sample 400", "40", "4000", "400 500", "1:400", ""] {
        assert_eq!(wavelength(field), None, "{field}");
    }
}

#[test]
fn separators_units_and_layouts_agree() {
    let fraction = |tens: u16| 0.01 * f64::from(tens) + 0.005;
    let across = |separator: &str, comma: bool, scale: f64, unit: &str| {
        let cell = |tens: u16| {
            let text = Decimal((scale * fraction(tens)) as f32).to_string();
            if comma { text.replace('.', ",") } else { text }
        };
        let header = cells(separator, |tens| format!("{tens}0 nm{unit}"));
        format!(
            "\u{feff}device{separator}demo\r\nid{separator}{header}\r\na{separator}{}\r\n",
            cells(separator, cell)
        )
    };
    let down = |separator: &str, scale: f64| {
        let rows: Vec<String> = NM
            .map(|tens| format!("{tens}0{separator}{}\n", Decimal((scale * fraction(tens)) as f32)))
            .collect();
        format!("nm{separator}a\n{}", rows.concat())
    };
    let wanted = spectrum(&read_measurements(&across(",", false, 1.0, "")).unwrap(), 0);
    for (band, value) in wanted.iter().enumerate() {
        let tens = (38 + band as u16).clamp(40, 70);
        assert!((value - fraction(tens)).abs() < 1e-7, "band {band}: {value}");
    }
    for text in [
        across(";", true, 1.0, ""),
        across("\t", true, 100.0, ""),
        across(",", false, 100.0, " (%)"),
        across(";", false, 1.0, " fraction"),
        down(",", 1.0),
        down("\t", 100.0),
        down(";", 1.0),
    ] {
        let measured = read_measurements(&text).unwrap_or_else(|error| panic!("{error}: {text}"));
        assert_eq!((names(&measured), faults(&measured)), (vec!["a"], vec![]), "{text}");
        let found = spectrum(&measured, 0);
        assert!(found.iter().zip(&wanted).all(|(a, b)| (a - b).abs() < 1e-6), "{text}");
    }
}

#[test]
fn a_header_decides_what_dark_values_are() {
    let dark = |unit: &str| {
        let text =
            format!("{}\n{}\n", cells(",", |tens| format!("R{tens}0{unit}")), cells(",", |_| "1.2".into()));
        spectrum(&read_measurements(&text).unwrap(), 0)[9]
    };
    assert_eq!((dark(""), dark(" (%)")), (1.2, 0.012));
}

#[test]
fn samples_may_be_named_by_numbers_like_wavelengths() {
    let text = format!("id,{}\n450,{}\n", header(","), cells(",", |_| "0.5".into()));
    assert_eq!(names(&read_measurements(&text).unwrap()), ["450"]);
    let down: String = NM.map(|tens| format!("{tens}0,0.5,0.4\n")).collect();
    let measured = read_measurements(&format!("nm,tint 50%,full\n{down}")).unwrap();
    assert_eq!((names(&measured), spectrum(&measured, 0)), (vec!["tint 50%", "full"], [0.5; BANDS]));
}

#[test]
fn a_column_of_wavelengths_needs_no_header() {
    let text: String = NM.map(|tens| format!("{tens}0,0.5,0.{tens}\n")).collect();
    let measured = read_measurements(&text).unwrap();
    assert_eq!(names(&measured), ["1", "2"]);
    assert_eq!(spectrum(&measured, 0), [0.5; BANDS]);
    assert_eq!(spectrum(&measured, 1)[12], 0.5);
}

#[test]
fn bad_samples_are_named_and_left_out() {
    let row = |name: &str, value: &str| format!("{name},{},0.5\n", cells(",", |_| value.into()));
    let text = format!(
        "sample,{},M1\n{}{}{}{}{}{}{}",
        header(","),
        row("good", "0.5"),
        row("glow", "1.3"),
        row("below", "-0.01"),
        row("odd", "NaN"),
        "short,0.5,0.5\n",
        row("\"open", "0.5"),
        row(" ", "0.75"),
    );
    let measured = read_measurements(&text).unwrap();
    assert_eq!(names(&measured), ["good", "7"]);
    assert_eq!(
        faults(&measured),
        [
            "line 3: \"glow\" at 400 nm is 1.3, not between 0 and 1.2",
            "line 4: \"below\" at 400 nm is -0.01, not between 0 and 1.2",
            "line 5: \"odd\" at 400 nm is \"NaN\", not a number",
            "line 6: \"short\" has no value at 420 nm",
            "line 7: a quotation mark that is not closed within 4000 bytes",
        ]
    );
    let down: String =
        NM.map(|tens| format!("{tens}0;0,5;{}\n", if tens == 55 { "1,4" } else { "0,4" })).collect();
    let measured = read_measurements(&format!("nm;good;glow;empty\n{down}")).unwrap();
    assert_eq!(names(&measured), ["good"]);
    assert_eq!(
        faults(&measured),
        [
            "line 2: \"empty\" has no value at 400 nm",
            "line 17: \"glow\" at 550 nm is 1.4, not between 0 and 1.2"
        ]
    );
}

#[test]
fn files_without_a_sample_are_refused_in_words() {
    let row = |tens: std::ops::Range<u16>| tens.map(|tens| format!("{tens}0")).collect::<Vec<_>>().join(",");
    for (text, words) in [
        (String::new(), WANTED),
        ("a,b\n1,2\n".into(), WANTED),
        ("\"a\";\"b\"\n".into(), WANTED),
        ("\"a\n".into(), "line 1: a quotation mark that is not closed"),
        (header(","), "no sample below the header"),
        (format!("note\n{}\n", row(40..55)), "line 2: 15 wavelengths: at least 16"),
        (row(42..75), "line 1: wavelengths from 420 to 740 nm: at least 400 to 700"),
        (format!("450,{}", header(",")), "line 1: 400 nm behind 450 nm: wavelengths must ascend"),
        ("nm,a\n400,0.1\n400,0.1\n".into(), "line 3: 400 nm stands twice"),
        ("x".repeat(LONGEST_TABLE + 1), "the table: longer than 2000000 bytes"),
        ("400,".repeat(100_000), "within 50 rows and 1024 columns"),
        ("BEGIN_DATA_FORMAT\nA\n".into(), "no column of"),
        ("BEGIN_DATA\n1 2\nEND_DATA\n".into(), "no fields between BEGIN_DATA_FORMAT and END_DATA_FORMAT"),
        (format!("BEGIN_DATA_FORMAT\n{}", "A ".repeat(100_000)), "line 2: more than 1024 fields"),
    ] {
        let refusal = refusal(&text);
        assert!(refusal.contains(words), "{refusal}");
    }
}

const CGATS: &str = "CGATS.17
ORIGINATOR \"written for a test\"   # a comment
KEYWORD \"SAMPLE_NOTE\"
NUMBER_OF_FIELDS 33
NUMBER_OF_SETS 3
BEGIN_DATA_FORMAT
SAMPLE_ID SAMPLE_NAME FIELDS
END_DATA_FORMAT
BEGIN_DATA
# a comment of its own
1 \"burnt \"\"earth\"\"\" VALUES
2 chalk VALUES
3 short 12.5
END_DATA
";

#[test]
fn cgats_text_is_read() {
    for field in ["SPECTRAL_NM_", "SPECTRAL_NM", "SPEC_", "nm", "R_"] {
        let text = CGATS
            .replace("FIELDS\n", &(cells("\t", |tens| format!("{field}{tens}0")) + "\n"))
            .replace("VALUES", &cells(" ", |_| "2.5e+1".into()));
        let measured = read_measurements(&text).unwrap_or_else(|error| panic!("{error}: {text}"));
        assert_eq!(names(&measured), ["burnt \"earth\"", "chalk"]);
        assert_eq!(spectrum(&measured, 1), [0.25; BANDS]);
        assert_eq!(faults(&measured), ["line 13: 3 values, not 33"]);
        for ends in ["\r", "\r\n"] {
            assert_eq!(read_measurements(&text.replace('\n', ends)), Ok(measured.clone()), "{ends:?}");
        }
        let cut = text.replace("NUMBER_OF_SETS 3", "NUMBER_OF_SETS 4").replace("END_DATA\n", "");
        assert_eq!(
            faults(&read_measurements(&cut).unwrap()),
            [
                "the table: no END_DATA: the file may be cut short",
                "line 5: NUMBER_OF_SETS is 4, but the table has 3",
                "line 13: 3 values, not 33"
            ]
        );
    }
}

#[test]
fn what_a_meter_reads_below_nothing_is_nothing() {
    for (value, read) in [("-0.004", Some(0.0)), ("-0.0001", Some(0.0)), ("-0", Some(0.0)), ("-0.006", None)]
    {
        for (scale, percent) in [(1.0, ""), (100.0, " %")] {
            let value = (scale * value.parse::<f64>().unwrap()).to_string();
            let header = cells(",", |tens| format!("{tens}0 nm{percent}"));
            let text = format!("name,{header}\ndark,{}\n", cells(",", |_| value.clone()));
            let found = read_measurements(&text).ok().map(|measured| spectrum(&measured, 0)[0]);
            assert_eq!(found, read, "{value}{percent}");
        }
    }
}

#[test]
fn an_observer_of_ten_degrees_is_told_of_colours_and_not_of_spectra() {
    let told = |head: &str, fields: &str, values: &str| {
        let text = format!(
            "CGATS.17\n{head}\nBEGIN_DATA_FORMAT\n{fields}\nEND_DATA_FORMAT\nBEGIN_DATA\n{values}\nEND_DATA\n"
        );
        let measured = read_measurements(&text).unwrap();
        assert_eq!(measured.samples.len(), 1, "{text}");
        faults(&measured)
    };
    let said =
        "line 2: colours for the observer of 10 degrees are taken as if for 2: spectra would tell more";
    for head in [
        "MEASUREMENT_SOURCE \"MeasurementCondition=M1 Illumination=D50 ObserverAngle=10 WhiteBase=Abs\"",
        "OBSERVER \"10 degree\"",
        "WEIGHTING_FUNCTION \"OBSERVER, CIE 1964\"",
        "ILLUMINATION_NAME \"D65/10\"",
    ] {
        assert_eq!(told(head, "LAB_L LAB_A LAB_B", "60 20 -30"), [said], "{head}");
        let fields = cells(" ", |tens| format!("SPEC_{tens}0"));
        assert_eq!(told(head, &fields, &cells(" ", |_| "0.5".into())), [""; 0], "{head}");
    }
    for head in [
        "MEASUREMENT_SOURCE \"Illumination=D50 ObserverAngle=2 Aperture=10\"",
        "OBSERVER \"CIE 1931, 2 degree\"",
        "ILLUMINATION_NAME \"D50/2\"",
    ] {
        assert_eq!(told(head, "LAB_L LAB_A LAB_B", "60 20 -30"), [""; 0], "{head}");
    }
}

#[test]
fn colours_are_read_where_there_is_no_spectrum() {
    let cgats = |head: &str| {
        let text = format!(
            "CGATS.17\n{head}\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n\
             a 60 20 -30\nb 101 0 0\nEND_DATA\n"
        );
        read_measurements(&text).unwrap()
    };
    let measured = cgats("WEIGHTING_FUNCTION \"ILLUMINANT, D65\"");
    assert_eq!(
        measured.samples,
        [Measurement { name: "a".into(), seen: Seen::Lab(Lab::new(60.0, 20.0, -30.0)) }]
    );
    assert_eq!(faults(&measured), ["line 8: \"b\": L* is 101, not between 0 and 100"]);
    assert_eq!((measured.light, cgats("").light), (Light::D65, Light::D50));
    assert_ne!(cgats("").samples[0].seen, measured.samples[0].seen);
    let table = |header: &str| read_measurements(&format!("name;{header}\na;60;20;-30,0\n")).unwrap();
    assert_eq!(table("L*;a*;b*").samples, measured.samples);
    assert_eq!(table("CIE L;CIE a;CIE b").samples, measured.samples);
    assert_eq!(table("L (D50);a (D50);b (D50)").samples, cgats("").samples);
}

/// Reflectances of the ColorChecker, 380 to 730 nm by 10; their provenance is told in `tests/colour.rs`.
const PATCHES: &str =
    include_str!("../../../tests/reference/colorchecker_babel_average_reflectance_380_730_10nm.csv");

#[test]
fn published_spectra_come_back_from_every_second_band() {
    let whole = read_measurements(PATCHES).unwrap();
    assert_eq!(whole.samples.len(), 24);
    let halved: String = PATCHES
        .lines()
        .map(|line| {
            let cells: Vec<&str> = line.split(',').collect();
            let kept: Vec<&str> = cells[1..].iter().step_by(2).copied().collect();
            format!("{},{}\n", cells[0], kept.join(","))
        })
        .collect();
    let halved = read_measurements(&halved).unwrap();
    let worst = whole
        .samples
        .iter()
        .zip(&halved.samples)
        .map(|(whole, halved)| ciede2000(whole.seen.lab(), halved.seen.lab()))
        .fold(0.0, f64::max);
    // Measured: 0.09.
    assert!(worst < 0.1, "{worst}");
}

#[test]
fn colours_under_d50_come_near_those_under_d65() {
    let worst = read_measurements(PATCHES)
        .unwrap()
        .samples
        .iter()
        .map(|sample| {
            let Seen::Spectrum(reflectance) = &sample.seen else { panic!("no spectrum") };
            let weights = Light::D50.weights();
            let stated = crate::colour::lab(weights.tristimulus(reflectance), weights.white);
            ciede2000(from_d50(stated.l, stated.a, stated.b), sample.seen.lab())
        })
        .fold(0.0, f64::max);
    // Measured: 1.42.
    assert!(worst < 1.5, "{worst}");
}

#[test]
fn samples_past_the_limit_are_left_out_in_words() {
    let text = format!(
        "{}\n{}",
        header(","),
        format!("{}\n", cells(",", |_| "0.5".into())).repeat(MOST_SAMPLES + 9)
    );
    let measured = read_measurements(&text).unwrap();
    assert_eq!(measured.samples.len(), MOST_SAMPLES);
    assert_eq!(faults(&measured), ["line 502: more than 500 samples: the rest is left out"]);
}

#[test]
fn hostile_files_are_refused_soon() {
    let full = |piece: &str| piece.repeat(LONGEST_TABLE / piece.len() - 200);
    let header = format!("{}\n", header(","));
    for (head, piece) in [
        (&*header, "1\n"),
        (&*header, "\"\n"),
        (&*header, "\"a\n\"\"b\n"),
        ("nm,a\n", "400,1\n"),
        ("nm,a\n", "x,1\n"),
        ("", "400,1,"),
        ("", "\t"),
        ("", "BEGIN_DATA\n"),
        ("BEGIN_DATA_FORMAT\nA\nEND_DATA_FORMAT\nBEGIN_DATA\n", "1 2\n"),
        ("BEGIN_DATA_FORMAT\nA\nEND_DATA_FORMAT\nBEGIN_DATA\n", "\"\""),
        ("L,a,b\n", "101,0,0\n"),
    ] {
        let text = format!("{head}{}", full(piece));
        assert!(read_measurements(&text).is_err(), "{head}{piece}");
    }
}

proptest! {
    #[test]
    fn no_text_is_a_panic(text in "\\PC{0,200}") {
        let _ = read_measurements(&text);
    }

    #[test]
    fn no_text_made_of_our_signs_is_a_panic(
        words in proptest::collection::vec("BEGIN_DATA|END_DATA|BEGIN_DATA_FORMAT|END_DATA_FORMAT|NUMBER_OF_SETS|LAB_L|LAB_A|LAB_B|L|a|b|nm|name|[\n,;\t \"#.%-]|R?[3-7][0-9]0|0[.,][0-9]", 0..80)
    ) {
        let _ = read_measurements(&words.concat());
    }

    #[test]
    fn no_spoilt_file_is_a_panic(at in 0usize..600, sign in "[\n,;\t \"#.%a0é-]") {
        let text = format!("name,{}\na,{}\nb,{}\n", header(","), cells(",", |_| "0.5".into()), cells(",", |_| "0.6".into()));
        let mut signs: Vec<char> = text.chars().collect();
        let at = at % signs.len();
        signs.splice(at..=at, sign.chars());
        let _ = read_measurements(&signs.into_iter().collect::<String>());
    }
}
