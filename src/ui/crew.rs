//! The crew: who did what, who is due, what the crew has not understood; files in and out.

use super::desk::{Note, desk, today};
use super::engine;
use super::quiz::Notes;
use super::sheet::{Sheet, Write};
use super::state::settings;
use crate::engine::{Answer, Ask, Writing};
use crate::records::{Doubt, LARGEST_IMPORT_BYTES, Record, Refused};
use crate::roster::{DueKind, analysis, next_due};
use crate::texts::Key;
use crate::units::date;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// The text of a chosen file, if it is not too large.
async fn file_text(ev: &web_sys::Event) -> Option<Result<String, ()>> {
    let input = ev.target()?.dyn_into::<web_sys::HtmlInputElement>().ok()?;
    let file = input.files()?.get(0)?;
    let text = if file.size() > LARGEST_IMPORT_BYTES as f64 {
        Err(())
    } else {
        JsFuture::from(file.text()).await.ok().and_then(|t| t.as_string()).ok_or(())
    };
    input.set_value("");
    Some(text)
}

#[component]
pub fn Crew() -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let pasted = RwSignal::new(String::new());
    let said = RwSignal::new(String::new());
    let sheet = RwSignal::new(None::<Record>);
    let sure = RwSignal::new(false);
    let add = move |text: String| {
        engine::ask(&Ask::Crew(text), move |answer| {
            if let Some(Answer::Crew(names)) = answer {
                desk.crew.update(|c| {
                    for n in names {
                        if !c.contains(&n) {
                            c.push(n);
                        }
                    }
                });
                desk.keep_crew();
                let _ = pasted.try_set(String::new());
            }
        });
    };
    let take = move |ev: web_sys::Event| {
        spawn_local(async move {
            let refused = move |r: Refused| {
                let key = match r {
                    Refused::TooLarge => Key::RefusedTooLarge,
                    Refused::Broken => Key::RefusedBroken,
                    Refused::Foreign => Key::RefusedForeign,
                    Refused::Newer => Key::RefusedNewer,
                };
                let _ = said.try_set(settings.reader_now().t(key).to_owned());
            };
            let text = match file_text(&ev).await {
                None => return,
                Some(Err(())) => return refused(Refused::TooLarge),
                Some(Ok(t)) => t,
            };
            let held = desk.records.with_untracked(|all| all.iter().map(|r| r.id().to_owned()).collect());
            engine::ask(&Ask::Import(text, held), move |answer| match answer {
                Some(Answer::Import(Ok(i))) => {
                    let _ = said.try_set(settings.reader_now().f(
                        Key::ImportDone,
                        &[
                            ("fresh", &i.fresh.len().to_string()),
                            ("held", &i.held.to_string()),
                            ("edited", &i.edited.to_string()),
                        ],
                    ));
                    desk.crew.update(|c| {
                        for n in i.crew {
                            if !c.contains(&n) {
                                c.push(n);
                            }
                        }
                    });
                    desk.keep_crew();
                    desk.take_in(i.fresh);
                }
                Some(Answer::Import(Err(r))) => refused(r),
                _ => drop(said.try_set(settings.reader_now().t(Key::EngineMissing).to_owned())),
            });
        });
    };
    let reopen = move |r: Record| {
        engine::ask(&Ask::Reopen(Box::new(r.clone())), move |answer| {
            if let Some(Answer::Reopened(doubt, form)) = answer {
                let key = match doubt {
                    None => Key::DoubtNone,
                    Some(Doubt::Edited) => Key::DoubtEdited,
                    Some(Doubt::OtherVersion) => Key::DoubtVersion,
                    Some(Doubt::DoesNotReplay) => Key::DoubtReplay,
                };
                let _ = said.try_set(settings.reader_now().t(key).to_owned());
                if doubt.is_none() {
                    let s = super::desk::Sitting {
                        header: r.header.clone(),
                        mode: crate::quiz::Mode::Assessment,
                        answers: r.answers.clone(),
                    };
                    desk.form.set(Some(*form));
                    desk.sitting.set(Some(s));
                    desk.done.set(Some(r));
                    super::door::go(super::door::View::Quiz);
                }
            }
        });
    };
    let names = move || {
        let mut all = desk.crew.get();
        desk.records.with(|records| {
            for r in records {
                if !all.contains(&r.header.who) {
                    all.push(r.header.who.clone());
                }
            }
        });
        all
    };
    let people = move || {
        let r = settings.reader();
        let mid = date(&desk.mid_season.get());
        let now = date(&today());
        let records = desk.records.get();
        names()
            .into_iter()
            .map(|who| {
                let mine: Vec<&Record> = records.iter().filter(|q| q.header.who == who).collect();
                let last = mine.last().map(|q| (*q).clone());
                let told = last.as_ref().map_or(r.t(Key::CrewNone).to_owned(), |q| {
                    let s = q.score();
                    r.f(
                        if s.passes { Key::CrewPassed } else { Key::CrewNotPassed },
                        &[
                            ("day", q.finished.get(..10).unwrap_or_default()),
                            ("points", &format!("{:.0}\u{a0}%", (s.points_share * 100.0).floor())),
                        ],
                    )
                });
                let due = now.and_then(|now| next_due(&mine, mid, now)).map_or(
                    r.t(Key::DueNothing).to_owned(),
                    |(d, come)| {
                        let what = match d.kind {
                            DueKind::First => r.t(Key::DueFirst).to_owned(),
                            DueKind::Recheck(n) => r.f(Key::DueRecheck, &[("days", &n.to_string())]),
                            DueKind::MidSeason => r.t(Key::DueMid).to_owned(),
                        };
                        let when = d.on.map_or(String::new(), |d| d.to_string());
                        r.f(if come { Key::DueNow } else { Key::DueLater }, &[("what", &what), ("day", &when)])
                    },
                );
                let (show, name) = (last.clone(), who.clone());
                view! {
                    <li><p><strong>{if who.is_empty() { "—".to_owned() } else { who.clone() }}</strong></p>
                        <p>{told}</p><p class="sev">{due}</p>
                        <div class="row buttons">
                        {last.map(|q| { let again = q.clone(); view! {
                            <button type="button" class="reopen" on:click=move |_| reopen(again.clone())>{r.t(Key::CrewOpen)}</button>
                            <button type="button" class="sheet-of" on:click=move |_| {
                                sheet.set(show.clone());
                                request_animation_frame(|| { let _ = window().print(); });
                            }>{r.t(Key::Print)}</button>
                        } })}
                        {mine.is_empty().then(|| view! {
                            <button type="button" on:click=move |_| {
                                desk.crew.update(|c| c.retain(|n| *n != name));
                                desk.keep_crew();
                            }>{r.t(Key::CrewRemove)}</button>
                        })}
                        </div></li>
                }
            })
            .collect_view()
    };
    let kinds = move || {
        let r = settings.reader();
        desk.records.with(|records| {
            analysis(records)
                .into_iter()
                .map(|k| {
                    let apart = k.discrimination_ratio.map_or("—".to_owned(), |d| crate::texts::number(r.lang, d, 2));
                    view! {
                        <tr><th scope="row">{r.t(Key::ItemName(k.kind))}</th><td>{k.answered}</td>
                            <td>{format!("{:.0}\u{a0}%", (k.right_share * 100.0).floor())}</td><td>{apart}</td></tr>
                    }
                })
                .collect_view()
        })
    };
    let some = move || desk.records.with(|r| !r.is_empty());
    let every = Signal::derive(move || desk.records.get());
    view! {
        <main class="page crew">
            <Notes />
            <section>
                <h2>{settings.s(Key::CrewHeading)}</h2>
                <p class="lead">{settings.s(Key::CrewLead)}</p>
                <p id="crew-said" role="status">{move || said.get()}</p>
                <Show when=move || !names().is_empty() fallback=move || view! { <p>{settings.s(Key::CrewEmpty)}</p> }>
                    <ul class="people">{people}</ul>
                </Show>
                <form class="card" on:submit=move |ev: web_sys::SubmitEvent| { ev.prevent_default(); add(pasted.get_untracked()) }>
                    <label class="line"><span>{settings.s(Key::CrewPaste)}</span>
                        <textarea id="paste" rows="4" prop:value=move || pasted.get()
                            on:input=move |ev| pasted.set(event_target_value(&ev))></textarea></label>
                    <div class="row buttons">
                        <button type="submit" id="add-crew">{settings.s(Key::CrewAdd)}</button>
                        <label class="button"><input type="file" accept=".csv,text/csv,text/plain" class="vh" id="crew-file"
                            on:change=move |ev| spawn_local(async move { if let Some(Ok(t)) = file_text(&ev).await { add(t) } }) />
                            {settings.s(Key::CrewCsv)}</label>
                    </div>
                </form>
                <label class="line card"><span>{settings.s(Key::CrewMid)}</span>
                    <input type="date" id="mid" prop:value=move || desk.mid_season.get()
                        on:change=move |ev| desk.keep_mid_season(event_target_value(&ev)) /></label>
                <Show when=some>
                    <h3>{settings.s(Key::CrewAnalysis)}</h3>
                    <p class="hint">{settings.s(Key::CrewAnalysisHint)}</p>
                    <div class="scroll" tabindex="0" role="group" aria-label=settings.s(Key::CrewAnalysis)><table class="analysis"><thead><tr><th scope="col">{settings.s(Key::ColKind)}</th>
                        <th scope="col">{settings.s(Key::ColAnswered)}</th><th scope="col">{settings.s(Key::ColRight)}</th>
                        <th scope="col">{settings.s(Key::ColApart)}</th></tr></thead><tbody>{kinds}</tbody></table></div>
                </Show>
                <section class="card"><h3>{settings.s(Key::CrewFiles)}</h3>
                    <div class="row buttons">
                        <Write how=Writing::Archive records=every name="shortfall-records.json" label=Key::WriteArchive />
                        <Write how=Writing::Csv records=every name="shortfall-records.csv" label=Key::WriteCsv />
                        <Write how=Writing::Xapi records=every name="shortfall-xapi.json" label=Key::WriteXapi />
                        <label class="button"><input type="file" accept="application/json,.json" class="vh" id="import" on:change=take />
                            {settings.s(Key::CrewImport)}</label>
                    </div>
                    <p class="hint">{settings.s(Key::CrewFilesHint)}</p>
                </section>
                <section class="card"><h3>{settings.s(Key::ClearHeading)}</h3>
                    <p>{settings.s(Key::ClearHint)}</p>
                    <Show when=move || sure.get() fallback=move || view! {
                        <button type="button" id="clear" on:click=move |_| sure.set(true)>{settings.s(Key::ClearDevice)}</button>
                    }>
                        <div class="row buttons">
                            <button type="button" class="main" id="clear-sure" on:click=move |_| { sure.set(false); desk.note.set(Note::None); desk.clear() }>{settings.s(Key::ClearSure)}</button>
                            <button type="button" on:click=move |_| sure.set(false)>{settings.s(Key::ClearNot)}</button>
                        </div>
                    </Show>
                </section>
            </section>
            {move || sheet.get().map(|r| view! { <Sheet record=r /> })}
        </main>
    }
}
