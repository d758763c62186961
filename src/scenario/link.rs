//! A scenario as an address: `#s=` and the scenario file, percent-encoded.

use crate::scenario::Scenario;
use crate::scenario::file::{Fault, FileError, read_whole};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};

/// What a fragment may hold as it is (RFC 3986, section 3.5, less what chat programs cut at).
const KEEP: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

/// The fragment for a scenario, without `#`.
pub fn fragment(s: &Scenario) -> String {
    let json = serde_json::to_string(s).unwrap_or_default();
    format!("s={}", utf8_percent_encode(&json, KEEP))
}

/// Whether a fragment holds a set-up, readable or not.
pub fn holds_set_up(fragment: &str) -> bool {
    part(fragment).is_some()
}

fn part(fragment: &str) -> Option<&str> {
    fragment.trim_start_matches('#').split('&').find_map(|p| p.strip_prefix("s="))
}

/// The scenario of a fragment (with or without `#`), every number in its range; `None` when it
/// holds none.
///
/// # Errors
/// Why it is refused.
pub fn read_fragment(fragment: &str) -> Option<Result<Scenario, FileError>> {
    let decoded = percent_decode_str(part(fragment)?).decode_utf8();
    Some(decoded.map_err(|_| Fault::NotText.into()).and_then(|t| read_whole(&t)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_brings_back_the_same_set_up() {
        let mut s = Scenario::default();
        s.grab.above_dring_m = -0.35;
        s.lanyard.absorber = None;
        assert_eq!(read_fragment(&format!("#{}", fragment(&s))), Some(Ok(s)));
        assert_eq!(read_fragment("#top"), None);
        assert!(matches!(read_fragment("#s=%7B%22grab%22%3A1%7D"), Some(Err(e)) if e.path == "grab"));
        assert!(matches!(read_fragment("#s=%ff%fe"), Some(Err(e)) if e.fault == Fault::NotText));
    }
}
