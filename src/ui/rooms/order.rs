//! Acts to be tapped in the order in which they are done.

use super::visit;
use crate::texts::{Gear as T, Text};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;

/// The acts as they are `shown` (numbers of `labels`, which stand in their order); what comes too early is told by
/// `late` and counts for nothing. When all are done the focus goes to `then`.
#[component]
pub fn InOrder(
    labels: Vec<Text>,
    shown: Vec<usize>,
    done: RwSignal<Vec<usize>>,
    late: RwSignal<bool>,
    then: &'static str,
) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let count = labels.len();
    let all = shown.into_iter().filter_map(|a| labels.get(a).map(|l| (a, *l))).map(|(a, label)| {
        let n = move || done.with(|d| d.iter().position(|x| *x == a).map(|i| i + 1));
        let take = move |_| {
            if n().is_some() {
                return;
            }
            let r = settings.reader_now();
            if done.with_untracked(Vec::len) == a {
                done.update(|d| d.push(a));
                late.set(false);
                if a + 1 == count {
                    view::to_view(then);
                }
                visit.said.set(format!("{}. {}", a + 1, r.t(label)));
            } else {
                visit.said.set(r.t(T::HooksLater).to_owned());
                late.set(true);
            }
        };
        view! { <li><button type="button" class="hook-act" aria-pressed=move || n().is_some().to_string() on:click=take><b aria-hidden="true">{move || n().map_or("·".to_owned(), |n| n.to_string())}</b>{settings.s(label)}</button></li> }
    });
    view! { <ul class="hook-acts">{all.collect_view()}</ul> }
}
