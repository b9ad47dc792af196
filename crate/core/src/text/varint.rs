//! Whole numbers in as few bytes as they need.
//!
//! ```text
//! varint   = 7 bits a byte, low bits first, high bit set on all but the last
//! signed   = varint of 2 n from 0 up, of -2 n - 1 below
//! ```

/// Appends a number.
pub(crate) fn push(bytes: &mut Vec<u8>, mut value: u32) {
    while value >= 0x80 {
        bytes.push(value as u8 | 0x80);
        value >>= 7;
    }
    bytes.push(value as u8);
}

/// Appends a number that may be below 0.
pub(crate) fn push_signed(bytes: &mut Vec<u8>, value: i16) {
    let value = i32::from(value);
    push(bytes, (value << 1 ^ value >> 31) as u32);
}

/// Takes a number off the front; nothing where the bytes end within it or it has more than three.
pub(crate) fn take(bytes: &mut &[u8]) -> Option<u32> {
    let mut value = 0;
    for shift in [0, 7, 14] {
        let (byte, rest) = bytes.split_first()?;
        *bytes = rest;
        value |= u32::from(byte & 0x7f) << shift;
        if byte & 0x80 == 0 {
            return Some(value);
        }
    }
    None
}

/// Takes a number that may be below 0.
pub(crate) fn take_signed(bytes: &mut &[u8]) -> Option<i16> {
    let value = take(bytes)?;
    Some((value >> 1) as i16 ^ -((value & 1) as i16))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_signed_number_comes_back() {
        let mut bytes = Vec::new();
        (i16::MIN..=i16::MAX).for_each(|value| push_signed(&mut bytes, value));
        let mut rest = &bytes[..];
        for value in i16::MIN..=i16::MAX {
            assert_eq!(take_signed(&mut rest), Some(value));
        }
        assert_eq!(take(&mut rest), None);
    }

    #[test]
    fn an_endless_number_is_none() {
        assert_eq!(take(&mut &[0x80, 0x80, 0x80, 0][..]), None);
        assert_eq!(take(&mut &[0x80][..]), None);
    }
}
