//! Feeds the core's readers with texts and bytes nobody would write: random ones, and valid ones that were spoilt.
//!
//! `COUNT SEED`. One seed always gives the same fragments. A reader that
//! panics stops the program, which names the fragment; so does one that takes
//! longer than [`LONGEST`].

use std::env;
use std::error::Error;
use std::fs;
use std::panic;
use std::path::Path;
use std::process::ExitCode;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use base64ct::{Base64UrlUnpadded, Encoding};
use fastrand::Rng;
use washpath_core::{Picture, Shelf, link, notation, read_log, read_measurements};

/// What a reader may take.
const LONGEST: Duration = Duration::from_millis(50);

/// Runs of a slow fragment: other work on the machine only ever adds.
const RUNS: usize = 5;

/// The fragment at hand, for whoever panics.
static AT: AtomicU64 = AtomicU64::new(0);

const CRC: crc::Crc<u16> = crc::Crc::<u16>::new(&crc::CRC_16_IBM_SDLC);

/// What readers are likely to trip over.
const THORNS: [&str; 40] = [
    "",
    " ",
    "\n",
    "\r\n",
    "\t",
    ",",
    ";",
    ",,,,",
    "\"",
    "\"\"",
    "'",
    "#",
    "(",
    ")",
    "%",
    "+",
    "-",
    "--",
    ".",
    "/",
    "0",
    "-0",
    "1",
    "255",
    "256",
    "65536",
    "4294967296",
    "18446744073709551616",
    "1e308",
    "-1e309",
    "1e-320",
    "NaN",
    "inf",
    "\0",
    "\u{feff}",
    "é",
    "水",
    "🎨",
    "BEGIN_DATA\n",
    "END_DATA\n",
];

const COLOURS: [&str; 9] = [
    "#a1b2c3",
    "#abc",
    "rgb(161, 178, 195)",
    "rgb(10% 20% 30%)",
    "lab(50 20 -30)",
    "lch(50 40 270)",
    "L*80 a*0 b*0",
    "L=45, a=-12, b=10",
    "50 20 -30",
];

const LOG: &str = "date,recipe,load,L,a,b,paper,note
2026-10-03,1 pb29 + 2 pbr7-burnt-sienna,0.25,50,8,-38,,
2026-10-04,1 py184,1,88,-4,90,Cream,\"a \"\"loose\"\" wash, wet\"
";

/// Readers, each with what it reads when all is well.
struct Readers {
    shelf: &'static Shelf,
    links: Vec<Vec<u8>>,
    measurements: [String; 2],
    shelves: String,
}

impl Readers {
    const KINDS: [&'static str; 7] =
        ["link", "colour", "log", "measurement CSV", "CGATS", "shelf CSV", "picture"];

    fn new() -> Result<Self, Box<dyn Error>> {
        let root = Path::new(env!("CARGO_MANIFEST_DIR"));
        let mut links = Vec::new();
        for name in ["links_v1.csv", "links_v2.csv", "links_own.csv"] {
            let table = fs::read_to_string(root.join("tests/reference").join(name))?;
            let texts = table.lines().skip(1).filter_map(|line| line.split(',').next());
            // A few rows run over two lines: what is no base64 there is no link.
            links.extend(texts.filter_map(|text| Base64UrlUnpadded::decode_vec(text).ok()));
        }
        let shelves = fs::read_to_string(root.join("data/shelf.csv"))?;
        let shelves = shelves.lines().take(4).collect::<Vec<_>>().join("\n");
        Ok(Self { shelf: Shelf::built_in(), links, measurements: measurements(), shelves })
    }

    /// Makes one fragment of a kind and has it read; answers whether it was taken, and the time.
    fn read(&self, kind: usize, random: &mut Rng) -> (bool, Duration) {
        let begun = |read: &dyn Fn() -> bool| {
            let begin = Instant::now();
            let taken = read();
            let mut time = begin.elapsed();
            for _ in 1..RUNS {
                if time > LONGEST / 5 {
                    let begin = Instant::now();
                    read();
                    time = time.min(begin.elapsed());
                }
            }
            (taken, time)
        };
        match kind {
            0 => {
                let text = self.link(random);
                begun(&|| link::decode(&text, self.shelf).is_ok())
            }
            1 => {
                let text = fragment(COLOURS[random.usize(..COLOURS.len())], random);
                begun(&|| notation::parse(&text).is_ok())
            }
            2 => {
                let text = fragment(LOG, random);
                begun(&|| read_log(&text, self.shelf, None).is_ok_and(|read| read.faults.is_empty()))
            }
            3 | 4 => {
                let text = fragment(&self.measurements[kind - 3], random);
                begun(&|| read_measurements(&text).is_ok_and(|read| read.faults.is_empty()))
            }
            5 => {
                let text = fragment(&self.shelves, random);
                begun(&|| Shelf::from_csv(&text).is_ok())
            }
            _ => {
                let (width, height) = (random.usize(..40), random.usize(..14));
                let spare = if random.u8(..8) == 0 { random.usize(..9) } else { 0 };
                let bytes: Vec<u8> = (0..4 * width * height + spare).map(|_| random.u8(..)).collect();
                let [x, y, radius, lightness] = [(); 4].map(|()| number(random));
                begun(&|| {
                    let Ok(picture) = Picture::new(&bytes, width) else { return false };
                    picture.sample(x, y, radius).is_ok() & picture.balanced(x, y, radius, lightness).is_ok()
                })
            }
        }
    }

    /// Mostly a link whose bytes were spoilt before it was sealed again, so that its checksum holds.
    fn link(&self, random: &mut Rng) -> String {
        let mut bytes = self.links[random.usize(..self.links.len())].clone();
        if random.u8(..4) == 0 {
            return fragment(&Base64UrlUnpadded::encode_string(&bytes), random);
        }
        bytes.truncate(bytes.len().saturating_sub(2));
        spoil(&mut bytes, random);
        bytes.extend(CRC.checksum(&bytes).to_le_bytes());
        Base64UrlUnpadded::encode_string(&bytes)
    }
}

/// Two samples of a meter as CSV, and as CGATS (ISO 28178).
fn measurements() -> [String; 2] {
    let nm: Vec<u32> = (380..=730).step_by(10).collect();
    let join = |values: &mut dyn Iterator<Item = String>, by: &str| values.collect::<Vec<_>>().join(by);
    let levels = |from: f64, by: &str| {
        join(&mut nm.iter().map(|nm| format!("{:.4}", from + f64::from(*nm) / 1e4)), by)
    };
    let head = join(&mut nm.iter().map(u32::to_string), ",");
    let csv = format!("name,{head}\ngrey,{}\nlight,{}\n", levels(0.3, ","), levels(0.6, ","));
    let fields = join(&mut nm.iter().map(|nm| format!("SPECTRAL_NM_{nm}")), " ");
    let cgats = format!(
        "CGATS.17\nORIGINATOR \"test\"\nNUMBER_OF_FIELDS {}\nBEGIN_DATA_FORMAT\nSAMPLE_ID SAMPLE_NAME {fields}\n\
         END_DATA_FORMAT\nNUMBER_OF_SETS 2\nBEGIN_DATA\n1 \"grey wash\" {}\n2 light {}\nEND_DATA\n",
        nm.len() + 2,
        levels(0.3, " "),
        levels(0.6, " ")
    );
    [csv, cgats]
}

/// A text of noise, or a valid one that was spoilt.
fn fragment(valid: &str, random: &mut Rng) -> String {
    let mut bytes = valid.as_bytes().to_vec();
    if random.u8(..8) == 0 {
        bytes = (0..random.usize(..400)).map(|_| random.u8(..)).collect();
    } else {
        spoil(&mut bytes, random);
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// One to four times: other bytes, thorns, what is cut, moved or said again.
fn spoil(bytes: &mut Vec<u8>, random: &mut Rng) {
    for _ in 0..random.usize(1..=4) {
        let from = random.usize(..=bytes.len());
        let to = (from + random.usize(..=40)).min(bytes.len());
        match random.u8(..8) {
            0 if from < bytes.len() => bytes[from] = random.u8(..),
            1 if from < bytes.len() => bytes[from] ^= 1 << random.u8(..8),
            2 => drop(bytes.drain(from..to)),
            3 => bytes.truncate(from),
            4 => {
                let again = bytes[from..to].repeat(random.usize(1..=60));
                bytes.splice(from..from, again);
            }
            5 => {
                let moved: Vec<u8> = bytes.drain(from..to).collect();
                let at = random.usize(..=bytes.len());
                bytes.splice(at..at, moved);
            }
            _ => {
                let thorn = THORNS[random.usize(..THORNS.len())].bytes();
                bytes.splice(from..if random.bool() { to.min(from + 4) } else { from }, thorn);
            }
        }
    }
}

/// A number of a size that fits, or of none.
fn number(random: &mut Rng) -> f32 {
    const WILD: [f32; 6] = [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, f32::MAX, -1.0, 0.0];
    if random.u8(..4) == 0 { WILD[random.usize(..WILD.len())] } else { random.f32() * 60.0 }
}

fn main() -> Result<ExitCode, Box<dyn Error>> {
    let mut words = env::args().skip(1);
    let mut next = || words.next().ok_or("COUNT and SEED are wanted").map(|word| word.parse::<u64>());
    let (count, seed) = (next()??, next()??);
    let say = panic::take_hook();
    panic::set_hook(Box::new(move |about| {
        let at = AT.load(Ordering::Relaxed);
        eprintln!("fragment {at} of seed {seed} ({}) panics", kind(at).1);
        say(about);
    }));

    let readers = Readers::new()?;
    let mut taken = [0u64; Readers::KINDS.len()];
    let mut slowest = (Duration::ZERO, 0);
    for at in 0..count {
        AT.store(at, Ordering::Relaxed);
        // Each fragment has a seed of its own, so that it can be made alone.
        let mut random = Rng::with_seed(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15).wrapping_add(at));
        let (read, time) = readers.read(kind(at).0, &mut random);
        taken[kind(at).0] += u64::from(read);
        slowest = slowest.max((time, at));
    }
    let (time, at) = slowest;
    println!("{count} fragments of seed {seed}; the slowest, {at} ({}), took {time:.2?}", kind(at).1);
    for (name, taken) in Readers::KINDS.iter().zip(taken) {
        println!("  {name:<16} {taken} were valid still");
    }
    if time > LONGEST {
        eprintln!("a reader may take {LONGEST:?}");
        return Ok(ExitCode::FAILURE);
    }
    Ok(ExitCode::SUCCESS)
}

/// Kinds take turns.
fn kind(at: u64) -> (usize, &'static str) {
    let kind = (at % Readers::KINDS.len() as u64) as usize;
    (kind, Readers::KINDS[kind])
}
