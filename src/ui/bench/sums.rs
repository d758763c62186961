//! Where the drop and the energy of a fall went: pieces with a word, a number and a bar each.

use super::state::bench;
use crate::grade::pieces::{Piece, drop, energy};
use crate::physics::trace::Trace;
use crate::texts::Stage as S;
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;

/// Pieces as a list; each bar begins where the last one ended, or all at the left.
#[component]
fn Pieces(
    id: &'static str,
    heading: S,
    of: fn(&Trace) -> Vec<(Piece, f64)>,
    quantity: Quantity,
) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let body = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        let pieces = of(&run.trace);
        let whole: f64 = pieces.iter().map(|p| p.1).sum::<f64>().max(1e-9);
        let mut from = 0.0;
        let rows = pieces
            .into_iter()
            .map(|(piece, size)| {
                let start = if quantity == Quantity::Length { from } else { 0.0 };
                from += size;
                let how = if piece == Piece::Room { Rounding::Down } else { Rounding::Up };
                let style = format!("margin-inline-start:{:.1}%;width:{:.1}%", 100.0 * start / whole, 100.0 * size / whole);
                view! {
                    <li><span>{r.t(piece.label())}</span><b>{r.q(quantity, size, how)}</b>
                        <span class="track" aria-hidden="true"><span class=if piece == Piece::Room { "fill room" } else { "fill" } prop:style=style></span></span></li>
                }
            })
            .collect_view();
        Some(rows)
    };
    view! { <section class="pieces" id=id><h3>{settings.s(heading)}</h3><ul>{body}</ul></section> }
}

/// The drop in pieces, and what is left under it.
#[component]
pub fn DropPieces() -> impl IntoView {
    view! { <Pieces id="drop-pieces" heading=S::DropHeading of=drop quantity=Quantity::Length /> }
}

/// The energy in pieces.
#[component]
pub fn EnergyPieces() -> impl IntoView {
    view! { <Pieces id="energy-pieces" heading=S::EnergyHeading of=energy quantity=Quantity::Energy /> }
}
