//! Messages as bytes: the number that joins an answer to its question, then the message.

use serde::{Deserialize, Serialize};

/// A message as bytes.
///
/// # Errors
/// When the message cannot be written.
pub fn pack<T: Serialize>(id: u32, message: &T) -> Result<Vec<u8>, postcard::Error> {
    postcard::to_allocvec(&(id, message))
}

/// The number of a message, and the bytes of the rest.
///
/// # Errors
/// When the bytes are no such message.
pub fn number(bytes: &[u8]) -> Result<(u32, &[u8]), postcard::Error> {
    postcard::take_from_bytes(bytes)
}

/// Reads the rest of a message.
///
/// # Errors
/// When the bytes are no such message.
pub fn unpack<T: for<'a> Deserialize<'a>>(rest: &[u8]) -> Result<T, postcard::Error> {
    postcard::from_bytes(rest)
}
