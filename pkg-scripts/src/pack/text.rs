//! Bytes as letters that stand for themselves in HTML: 13 bits in two of them.
//!
//! 91 letters make 8281 pairs, enough for 8192 values: text is 16/13 of the
//! bytes, where base64 is 4/3. The letters are those from `#` to `~`, without
//! `<`, which alone could end the element the text stands in.

/// How many letters there are.
const LETTERS: u32 = 91;

/// Bits that go into a pair.
const BITS: u32 = 13;

/// Packs bytes; the last pair is filled up by zeros.
pub(super) fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 16 / 13 + 2);
    let (mut held, mut bits) = (0u32, 0);
    for byte in bytes {
        held = held << 8 | u32::from(*byte);
        bits += 8;
        if bits >= BITS {
            bits -= BITS;
            pair(&mut text, held >> bits);
            held &= (1 << bits) - 1;
        }
    }
    if bits > 0 {
        pair(&mut text, held << (BITS - bits));
    }
    text
}

fn pair(text: &mut String, value: u32) {
    text.push(letter(value / LETTERS));
    text.push(letter(value % LETTERS));
}

fn letter(digit: u32) -> char {
    let code = digit as u8 + b'#';
    char::from(if code < b'<' { code } else { code + 1 })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// As the page reads it: so many bytes, what fills the last pair is dropped.
    fn decode(text: &str, length: usize) -> Vec<u8> {
        let digit = |letter: u8| u64::from(letter) - if letter > b'<' { 36 } else { 35 };
        let (mut held, mut bits, mut bytes) = (0u64, 0, Vec::new());
        for pair in text.as_bytes().chunks_exact(2) {
            held = held << BITS | (digit(pair[0]) * u64::from(LETTERS) + digit(pair[1]));
            bits += BITS;
            while bits >= 8 && bytes.len() < length {
                bits -= 8;
                bytes.push((held >> bits) as u8);
            }
            held &= (1 << bits) - 1;
        }
        bytes
    }

    #[test]
    fn bytes_come_back() {
        for length in [0, 1, 2, 12, 13, 14, 255, 4096] {
            let bytes: Vec<u8> = (0..length).map(|i| (i * 167 + i / 7) as u8).collect();
            let text = encode(&bytes);
            assert_eq!(decode(&text, length), bytes);
            assert!(text.len() <= (length * 8).div_ceil(13) * 2);
        }
    }

    #[test]
    fn no_letter_means_anything_to_html() {
        let all: Vec<u8> = (0..=u16::MAX).flat_map(u16::to_be_bytes).collect();
        let text = encode(&all);
        assert!(text.bytes().all(|letter| (b'#'..=b'~').contains(&letter) && letter != b'<'));
    }
}
