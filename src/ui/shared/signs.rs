//! Signs that go with a severity.

use crate::rules::Severity;
use leptos::prelude::*;

/// The shape that goes with a severity: colour, shape and word, never colour alone. Drawn, not a letter of
/// some font.
pub fn mark(s: Severity) -> AnyView {
    let (class, shape) = match s {
        Severity::Critical => ("verdict-sign fail", "M12 2a10 10 0 1 0 .01 0ZM8 8l8 8M16 8l-8 8"),
        Severity::Major => ("verdict-sign caution", "M12 3L22.5 21H1.5ZM12 9v6M12 18v.6"),
        Severity::Minor => ("verdict-sign caution", "M12 3L22.5 21H1.5ZM12 9v6M12 18v.6"),
        Severity::Note => (
            "verdict-sign note",
            "M8 2h8l6 6v8l-6 6H8l-6-6V8ZM9 9.5a3 3 0 1 1 4.5 2.6c-1 .6-1.5 1-1.5 2M12 17v.6",
        ),
        Severity::Good => ("verdict-sign ok", "M12 2a10 10 0 1 0 .01 0ZM7 12.5l3.4 3.4L17 9"),
    };
    view! { <svg class=class viewBox="0 0 24 24" aria-hidden="true"><path d=shape /></svg> }.into_any()
}
