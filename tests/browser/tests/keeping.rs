//! Nothing lost, nothing falsified, no dead end: full storage, two tabs, links, updates, a network that
//! fails, numbers that cannot be, and what is drawn from seeds, in a real browser.

use browser_tests::{LAPTOP, Page, Res, Window, answer_first, begin_form, root};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;
use thirtyfour::prelude::*;

async fn pause(ms: u64) {
    tokio::time::sleep(Duration::from_millis(ms)).await;
}

/// Puts a text into the app's store, as an earlier visit would have left it.
async fn keep(page: &Page, shelf: &str, key: &str, text: &str) -> Res {
    let done = page
        .js_async(&format!(
            "const r = indexedDB.open('shortfall', 1); r.onsuccess = () => {{ const t = r.result.transaction(['{shelf}'], 'readwrite'); \
             t.objectStore('{shelf}').put({}, {}); t.oncomplete = () => {{ r.result.close(); done(true); }}; t.onabort = () => done('aborted'); }}",
            Value::from(text),
            Value::from(key)
        ))
        .await?;
    assert_eq!(done, json!(true));
    Ok(())
}

/// What is kept on a shelf: pairs of key and text.
async fn kept(page: &Page, shelf: &str) -> Res<Vec<(String, String)>> {
    let all = page
        .js_async(&format!(
            "const r = indexedDB.open('shortfall', 1); r.onsuccess = () => {{ const s = r.result.transaction(['{shelf}']).objectStore('{shelf}'); \
             const out = []; s.openCursor().onsuccess = (e) => {{ const c = e.target.result; if (!c) {{ r.result.close(); return done(out); }} out.push([c.key, c.value]); c.continue(); }}; }}"
        ))
        .await?;
    Ok(serde_json::from_value(all)?)
}

async fn begin(page: &Page, who: &str, seed: u32) -> Res {
    begin_form(page, who, true, seed).await
}

async fn answer_from(page: &Page, first: usize, last: usize) -> Res {
    for n in first..=last {
        page.wait_text("#progress", &format!("Question {n} of")).await?;
        answer_first(page).await?;
    }
    Ok(())
}

async fn finish(page: Page) -> Res {
    let errors = page.console_errors().await?;
    assert!(errors.is_empty(), "the console says: {errors:?}");
    page.close().await
}

fn link(json: &str) -> String {
    let code: String = json
        .bytes()
        .map(|b| if b.is_ascii_alphanumeric() { char::from(b).to_string() } else { format!("%{b:02X}") })
        .collect();
    format!("#s={code}")
}

/// A bug: any link with `random` in its hash clicked through the trainer's own data.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn no_link_drives_the_page() -> Res {
    let page = Page::open_at(LAPTOP, "#random=7&long").await?;
    pause(1500).await;
    assert_eq!(page.js("return window.randomSteps === undefined").await?, true);
    assert_eq!(page.text(".views button").await?, page.text(".views button").await?.trim());
    let names: Vec<String> = fs::read_dir(root().join("target/dist"))?
        .flatten()
        .map(|e| e.file_name().to_string_lossy().into_owned())
        .collect();
    assert!(!names.iter().any(|n| n.contains("random")), "{names:?}");
    finish(page).await
}

/// A bug: a form with all answers given but not sealed came back to an empty page, each time; here its
/// record could not be written. A second one: a record that was never kept was gone without a word.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_form_answered_whole_but_not_ended_ends_on_going_on() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    begin(&page, "Noor Field", 23).await?;
    answer_from(&page, 1, 11).await?;
    page.wait_text("#progress", "Question 12 of").await?;
    page.js("const put = IDBObjectStore.prototype.put; IDBObjectStore.prototype.put = function (...a) { if (this.name === 'records') throw new DOMException('full', 'QuotaExceededError'); return put.apply(this, a); }").await?;
    answer_first(&page).await?;
    page.wait("#outcome").await?;
    page.wait_text("#note", "does not keep").await?;
    let outcome = page.text("#outcome").await?;
    page.driver.refresh().await?;
    page.wait_text(".halves", "12 of 12").await?;
    page.click(".resume").await?;
    page.wait_text("#outcome", &outcome).await?;
    assert_eq!(kept(&page, "records").await?.len(), 1);
    assert!(kept(&page, "kept").await?.iter().all(|(k, _)| !k.starts_with("sitting ")));
    page.close().await
}

/// A bug: one sitting could end as two records, the second after its answers were shown.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn one_sitting_in_two_tabs_is_one_record() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    begin(&page, "Noor Field", 29).await?;
    answer_from(&page, 1, 11).await?;
    page.wait_text("#progress", "Question 12 of").await?;
    let first = page.driver.window().await?;
    let second = page.driver.new_tab().await?;
    page.driver.switch_to_window(second.clone()).await?;
    page.go("#quiz").await?;
    page.click(".resume").await?;
    page.wait_text("#progress", "Question 12 of").await?;
    // A third tab that hears nothing of the others.
    let third = page.driver.new_tab().await?;
    page.driver.switch_to_window(third).await?;
    page.go("#quiz").await?;
    page.click(".resume").await?;
    page.wait_text("#progress", "Question 12 of").await?;
    page.js("BroadcastChannel.prototype.postMessage = () => {}; window.stop; EventTarget.prototype.addEventListener.call(window, 'message', () => {})").await?;
    page.driver.switch_to_window(second.clone()).await?;
    answer_first(&page).await?;
    page.wait("#outcome").await?;
    page.driver.switch_to_window(first).await?;
    page.wait_text("#note", "finished or dropped in another tab").await?;
    assert!(page.driver.find_all(By::Css("#stem")).await?.is_empty());
    assert_eq!(kept(&page, "records").await?.len(), 1);
    page.close().await
}

/// A bug: adding a name in one tab wiped the other's names.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn names_added_in_two_tabs_are_all_kept() -> Res {
    let page = Page::open_at(LAPTOP, "#crew").await?;
    page.wait("#paste").await?;
    let first = page.driver.window().await?;
    let second = page.driver.new_tab().await?;
    page.driver.switch_to_window(second).await?;
    page.go("#crew").await?;
    page.wait("#paste").await?.send_keys("Bee Low\n").await?;
    page.click("#add-crew").await?;
    page.wait_text(".people", "Bee Low").await?;
    page.wait_text("#crew-said", "1 added").await?;
    page.driver.switch_to_window(first).await?;
    // The first tab has heard of it, and adds without losing it.
    page.wait_text(".people", "Bee Low").await?;
    page.wait("#paste").await?.send_keys("Tad Quill\n").await?;
    page.click("#add-crew").await?;
    page.wait_text(".people", "Tad Quill").await?;
    page.driver.refresh().await?;
    page.wait_text(".people", "Tad Quill").await?;
    assert!(page.text(".people").await?.contains("Bee Low"));
    finish(page).await
}

/// Two bugs: a record dated 9999 ended the crew's room for good, and one imported from the future had
/// 'the clock stood earlier' sealed into honest records.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_record_from_the_future_ends_nothing_and_says_nothing_of_the_clock() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    begin(&page, "Noor Field", 31).await?;
    answer_from(&page, 1, 12).await?;
    page.wait("#outcome").await?;
    let (id, text) = kept(&page, "records").await?.remove(0);
    let mut far: Value = serde_json::from_str(&text)?;
    far["finished"] = "9999-12-31T23:00:00Z".into();
    far["header"]["who"] = "Tad Quill".into();
    keep(&page, "records", "f".repeat(64).as_str(), &far.to_string()).await?;
    // And one that this version cannot read: kept, counted and told.
    keep(&page, "records", "e".repeat(64).as_str(), "{\"header\":{\"schema\":7}}").await?;
    page.go("#crew").await?;
    page.driver.refresh().await?;
    page.wait_text(".people", "Tad Quill").await?;
    assert!(page.text(".people").await?.contains("Noor Field"));
    page.wait_text(".crew", "1 records on this device cannot be read").await?;
    assert!(kept(&page, "records").await?.iter().any(|(k, _)| *k == id));
    page.go("#quiz").await?;
    begin(&page, "Bee Low", 31).await?;
    answer_from(&page, 1, 12).await?;
    page.wait("#outcome").await?;
    assert_eq!(page.text("#note").await?, "");
    let honest = kept(&page, "records").await?.into_iter().find(|(_, t)| t.contains("Bee Low"));
    assert!(honest.is_some_and(|(_, t)| t.contains("\"clock_set_back\":false")));
    finish(page).await
}

/// A bug: a link with one number out of range, opened at load, overwrote the kept set-up by the default;
/// a valid one replaced it with no way back.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_link_is_looked_at_and_mine_is_one_step_back() -> Res {
    let page = Page::open(LAPTOP).await?;
    let open_latch = "return document.querySelector('input[name=latch][value=\"1\"]').checked";
    let latch = async || -> Res<Value> {
        page.drawer().await?;
        page.js(open_latch).await
    };
    page.choose("latch", 1).await?;
    // Out of range: refused in a sentence, nothing has changed, not even after a reload.
    page.driver.goto("about:blank").await?;
    page.go(&link(r#"{"house":{"eave_height_m":900}}"#)).await?;
    page.wait_text(".notice", "outside what can be entered").await?;
    assert_eq!(latch().await?, true);
    page.driver.refresh().await?;
    page.wait("#scene").await?;
    assert_eq!(latch().await?, true);
    // A good one while the page is open takes the message away and can be left again.
    page.go(&link(r#"{"grab":{"arrow":"down"}}"#)).await?;
    page.wait("#back-to-mine").await?;
    assert!(page.driver.find_all(By::Css(".notice")).await?.is_empty());
    assert_eq!(latch().await?, false);
    // Reloaded it is still looked at, and mine still kept.
    page.driver.refresh().await?;
    page.wait("#back-to-mine").await?;
    assert_eq!(latch().await?, false);
    // Edited and reloaded, mine is still one step back.
    page.choose("bolt", 1).await?;
    page.driver.refresh().await?;
    page.wait("#back-to-mine").await?;
    page.drawer().await?;
    assert_eq!(
        page.js("return document.querySelector('input[name=bolt][value=\"1\"]').checked").await?,
        true
    );
    page.shut().await?;
    page.click("#back-to-mine").await?;
    assert_eq!(latch().await?, true);
    assert!(page.driver.find_all(By::Css("#back-to-mine")).await?.is_empty());
    // Another tab's set-up does not take this one's place.
    let first = page.driver.window().await?;
    let second = page.driver.new_tab().await?;
    page.driver.switch_to_window(second).await?;
    page.go("").await?;
    page.wait("#scene").await?;
    page.choose("latch", 0).await?;
    page.driver.switch_to_window(first).await?;
    page.driver.refresh().await?;
    page.wait("#scene").await?;
    assert_eq!(latch().await?, true);
    finish(page).await
}

/// Messages are sentences in the reader's language, without what the file holds.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_file_that_is_refused_says_why_in_a_sentence() -> Res {
    let page = Page::open(LAPTOP).await?;
    page.click(".langs [lang=fr]").await?;
    let input = ".files input[type=file]";
    page.drawer().await?;
    for (text, says) in [
        (r#"{"shortfall_records":1,"records":[]}"#.to_owned(), "fichier de fiches"),
        (r#"{"schema":99,"helmet":1}"#.to_owned(), "version plus récente"),
        (format!("{{\"{}\\n\\u001b[31m\":1}}", "x".repeat(6000)), "un montage n’a pas"),
        ("{\"house\":{\"eave_height_m\":\"high\"}}".to_owned(), "house.eave_height_m"),
        ("{\"house\":".to_owned(), "trop tôt"),
        ("<html>".to_owned(), "pas un montage"),
    ] {
        page.give_file(input, "a.json", text.as_bytes()).await?;
        page.wait_text(".notice", says).await?;
        let told = page.text(".notice").await?;
        assert!(told.chars().count() < 300 && !told.contains("expected"), "{told}");
    }
    page.give_file(input, "a.json", b"{\"grab\":{\"arrow\":\"down\"}}").await?;
    page.wait("input[name=arrow][value='1']:checked").await?;
    assert!(page.driver.find_all(By::Css(".notice")).await?.is_empty());
    finish(page).await
}

/// A copy of the bundle, as another version would be: other page, other name of its main module.
fn other_version(from: &Path, to: &Path) -> Res {
    fs::create_dir_all(to)?;
    for e in fs::read_dir(from)?.flatten() {
        let name = e.file_name().to_string_lossy().into_owned();
        if !name.ends_with(".br") {
            fs::copy(e.path(), to.join(&name))?;
        }
    }
    let read = |n: &str| fs::read_to_string(to.join(n));
    let (index, worker) = (read("index.html")?, read("sw.js")?);
    let version = index
        .split("name=\"version\" content=\"")
        .nth(1)
        .and_then(|t| t.split('"').next())
        .ok_or("the page tells no version")?
        .to_owned();
    let fresh = "0123456789abcdef";
    let names: Vec<String> =
        fs::read_dir(to)?.flatten().map(|e| e.file_name().to_string_lossy().into_owned()).collect();
    let swap = |text: String| text.replace(&version, fresh);
    let (mut index, mut worker) = (swap(index), swap(worker));
    for n in names.iter().filter(|n| n.starts_with("shortfall-")) {
        let new = n.replace("shortfall-", "shortfall-2");
        fs::rename(to.join(n), to.join(&new))?;
        index = index.replace(n.as_str(), &new);
        worker = worker.replace(n.as_str(), &new);
    }
    // The inline start script names the modules, so its hash in the policy is another one.
    let script = index.split("<script type=\"module\">").nth(1).and_then(|t| t.split("</script>").next());
    let script = script.ok_or("the page has no module script")?;
    use base64::Engine;
    use sha2::{Digest, Sha256};
    let hash = base64::engine::general_purpose::STANDARD.encode(Sha256::digest(script.as_bytes()));
    let index = index.replacen("'wasm-unsafe-eval'", &format!("'wasm-unsafe-eval' 'sha256-{hash}'"), 1);
    fs::write(to.join("index.html"), index)?;
    fs::write(to.join("sw.js"), worker)?;
    Ok(())
}

fn put_in_place(from: &Path, at: &Path) -> Res {
    let _ = fs::remove_dir_all(at);
    fs::create_dir_all(at)?;
    for e in fs::read_dir(from)?.flatten() {
        fs::copy(e.path(), at.join(e.file_name()))?;
    }
    Ok(())
}

/// Two versions of the bundle, and a folder that is served.
fn versions(name: &str) -> Res<(PathBuf, PathBuf, PathBuf)> {
    let base = std::env::temp_dir().join(format!("shortfall-{name}-{}", std::process::id()));
    let (one, two, served) = (base.join("one"), base.join("two"), base.join("served"));
    put_in_place(&root().join("target/dist"), &one)?;
    other_version(&one, &two)?;
    put_in_place(&one, &served)?;
    Ok((one, two, served))
}

async fn version(page: &Page) -> Res<String> {
    let v = page.js("return document.querySelector('meta[name=version]').content").await?;
    Ok(v.as_str().unwrap_or_default().to_owned())
}

async fn offline_ready(page: &Page) -> Res {
    let ready = page
        .js_async("navigator.serviceWorker.ready.then(async () => { while (!navigator.serviceWorker.controller) await new Promise(r => setTimeout(r, 50)); done(true); })")
        .await?;
    assert_eq!(ready, json!(true));
    Ok(())
}

/// A bug: after an update on a host that lets files be cached, the page could be dead for good; and a
/// reload never brought the new version.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn an_update_is_offered_taken_and_whole_where_files_are_cached() -> Res {
    let (_, two, served) = versions("update")?;
    let page = Page::blank(LAPTOP, &served, "max-age=86400").await?;
    page.go("").await?;
    page.wait("#scene").await?;
    offline_ready(&page).await?;
    let old = version(&page).await?;
    put_in_place(&two, &served)?;
    page.driver.refresh().await?;
    page.wait("#scene").await?;
    assert_eq!(version(&page).await?, old);
    page.wait_text("#update", "new version").await?;
    // Never in the middle of a form.
    page.click(".views button:nth-child(3)").await?;
    page.wait("#begin").await?;
    assert!(page.driver.find_all(By::Css("#update")).await?.is_empty());
    page.click(".views button:nth-child(1)").await?;
    page.click("#update button").await?;
    for _ in 0..100 {
        if version(&page).await.is_ok_and(|v| v != old) {
            break;
        }
        pause(100).await;
    }
    assert_eq!(version(&page).await?, "0123456789abcdef");
    page.wait("#play").await?;
    // A file lost from the cache is fetched and kept again.
    let lost = page
        .js_async("(async () => { const k = (await caches.keys()).find(k => k.endsWith('0123456789abcdef')); const c = await caches.open(k); const n = (await c.keys()).map(r => r.url).find(u => u.includes('engine_bg')); await c.delete(n); done(n); })()")
        .await?;
    page.driver.refresh().await?;
    page.wait("#play").await?;
    let mut healed = json!(false);
    for _ in 0..100 {
        healed = page.js_async(&format!("caches.match({lost}).then(r => done(!!r))")).await?;
        if healed == json!(true) {
            break;
        }
        pause(100).await;
    }
    assert_eq!(healed, json!(true));
    page.close().await
}

/// An old page from the browser's own cache beside new files mends itself.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn an_old_page_beside_new_files_is_fetched_anew() -> Res {
    let (_, two, served) = versions("anew")?;
    let page = Page::blank(LAPTOP, &served, "max-age=86400").await?;
    page.go("").await?;
    page.wait("#scene").await?;
    offline_ready(&page).await?;
    page.js_async("(async () => { for (const r of await navigator.serviceWorker.getRegistrations()) await r.unregister(); for (const k of await caches.keys()) await caches.delete(k); done(true); })()").await?;
    page.driver.goto("about:blank").await?;
    put_in_place(&two, &served)?;
    // The modules are not in the browser's cache, the page is.
    fs::write(served.join("note.txt"), "x")?;
    page.go("?x").await?;
    page.wait("#scene").await?;
    page.go("").await?;
    page.wait("#scene").await?;
    page.wait("#play").await?;
    page.close().await
}

/// What is fetched of the bundle is as its hash says, or nothing is installed.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_damaged_file_is_never_installed() -> Res {
    let (_, two, served) = versions("damage")?;
    let page = Page::blank(LAPTOP, &served, "no-cache").await?;
    page.go("").await?;
    page.wait("#scene").await?;
    offline_ready(&page).await?;
    let old = version(&page).await?;
    let rooms = fs::read_dir(&two)?
        .flatten()
        .find(|e| e.file_name().to_string_lossy().starts_with("rooms_bg"))
        .ok_or("no rooms")?;
    let body = fs::read(rooms.path())?;
    put_in_place(&two, &served)?;
    fs::write(served.join(rooms.file_name()), &body[..body.len() / 2])?;
    page.driver.refresh().await?;
    page.wait("#scene").await?;
    pause(2500).await;
    assert!(page.driver.find_all(By::Css("#update")).await?.is_empty());
    assert_eq!(version(&page).await?, old);
    page.close().await
}

async fn block(page: &Page, urls: &[&str]) -> Res {
    page.cdp("Network.enable", json!({})).await?;
    page.cdp("Network.setBypassServiceWorker", json!({ "bypass": true })).await?;
    page.cdp("Network.setBlockedURLs", json!({ "urls": urls })).await?;
    Ok(())
}

/// A bug: with the engine not fetched, 'Working the fall out' stood for ever.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn an_engine_that_does_not_come_is_told_and_tried_again() -> Res {
    let (whole, _, served) = versions("engine")?;
    let engine = fs::read_dir(&whole)?.flatten().map(|e| e.file_name()).find(|n| {
        let n = n.to_string_lossy();
        n.starts_with("engine_bg") && n.ends_with(".wasm")
    });
    let engine = engine.ok_or("no engine")?;
    let packed = format!("{}.br", engine.to_string_lossy());
    for gone in [served.join(&engine), served.join(&packed)] {
        fs::remove_file(gone)?;
    }
    let page = Page::blank(LAPTOP, &served, "no-store").await?;
    page.go("").await?;
    page.wait("#scene").await?;
    page.js("document.querySelectorAll('.answer input')[0].click()").await?;
    page.click("#play").await?;
    page.wait_text(".engine-lost", "did not answer, twice").await?;
    // Half of it, then the whole.
    let body = fs::read(whole.join(&engine))?;
    fs::write(served.join(&engine), &body[..body.len() / 2])?;
    page.click(".engine-lost button").await?;
    page.wait_text(".engine-lost", "did not answer, twice").await?;
    fs::write(served.join(&engine), &body)?;
    page.click(".engine-lost button").await?;
    page.wait(".player .main").await?;
    page.click(".player .main").await?;
    page.wait("#verdict").await?;
    assert!(page.driver.find_all(By::Css(".engine-lost")).await?.is_empty());
    page.close().await
}

/// A bug: with the rooms' module not fetched or cut off, 'One moment' stood for ever.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn rooms_that_do_not_come_are_told_and_tried_again() -> Res {
    for part in ["*rooms_bg*", "*rooms-*.js"] {
        let page = Page::blank(LAPTOP, &root().join("target/dist"), "no-store").await?;
        block(&page, &[part]).await?;
        page.go("#lessons").await?;
        page.wait_text("#rooms-missing", "could not be loaded").await?;
        block(&page, &[]).await?;
        page.click("#rooms-missing button").await?;
        page.wait(".lesson").await?;
        assert!(page.driver.find_all(By::Css("#rooms-missing")).await?.is_empty());
        page.close().await?;
    }
    Ok(())
}

/// Two bugs: a lanyard of -1 and then the worker moved, an eave of 0 and then a part dragged, ended the
/// page.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn no_typed_number_ends_the_page() -> Res {
    let page = Page::open(LAPTOP).await?;
    let set = async |id: &str, v: &str| -> Res {
        page.drawer().await?;
        page.js(&format!("const f = document.getElementById('{id}'); f.value = '{v}'; f.dispatchEvent(new Event('change', {{ bubbles: true }}))")).await?;
        Ok(())
    };
    for (id, v) in
        [("f-lanyard-length_m", "-1"), ("f-house-eave_height_m", "0"), ("f-ladder-length_m", "1e12")]
    {
        set(id, v).await?;
        for part in 0..4 {
            page.js("document.getElementById('scene').focus()").await?;
            for key in ["ArrowRight", "Enter", "ArrowUp", "PageDown", "Enter"] {
                page.js(&format!("document.querySelector('.drawing').dispatchEvent(new KeyboardEvent('keydown', {{ bubbles: true, key: '{key}' }}))")).await?;
            }
            page.js(&format!("const h = document.querySelectorAll('.handle .spot')[{part}]; const b = h.getBoundingClientRect(); \
                for (const [k, dx] of [['pointerdown', 0], ['pointermove', 60], ['pointermove', -90], ['pointerup', 0]]) \
                h.dispatchEvent(new PointerEvent(k, {{ bubbles: true, pointerId: 1, clientX: b.x + 5 + dx, clientY: b.y + 5 + dx }}))")).await?;
        }
    }
    assert!(page.driver.find_all(By::Css("#ended")).await?.is_empty());
    page.click(".views button:nth-child(2)").await?;
    page.wait(".lesson").await?;
    let errors: Vec<String> =
        page.console_errors().await?.into_iter().filter(|e| !e.contains("setPointerCapture")).collect();
    assert!(errors.is_empty(), "{errors:?}");
    page.close().await
}

/// The random input that once ended in a panic (bounds that crossed).
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn random_input_990001_ends_nothing() -> Res {
    let page = Page::open(LAPTOP).await?;
    page.random(990_001).await?;
    pause(30_000).await;
    assert!(page.js("return window.randomSteps").await?.as_f64().unwrap_or(0.0) > 200.0);
    assert!(page.driver.find_all(By::Css("#ended")).await?.is_empty());
    finish(page).await
}

/// A page that has ended all the same says so and saves everything.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_page_that_ended_saves_everything() -> Res {
    let page = Page::open_at(LAPTOP, "#crew").await?;
    page.wait("#paste").await?.send_keys("Bee Low\n").await?;
    page.click("#add-crew").await?;
    page.wait_text(".people", "Bee Low").await?;
    page.js("window.saved = []; URL.createObjectURL = (b) => { window.saved.push(b); return 'blob:none'; }; window.shortfallEnded()").await?;
    page.wait_text("#ended", "still on this device").await?;
    page.click("#ended button:last-child").await?;
    for _ in 0..50 {
        if page.js("return window.saved.length").await? == json!(1) {
            break;
        }
        pause(100).await;
    }
    let text = page.js_async("window.saved[0].text().then(done)").await?;
    let file = text.as_str().unwrap_or_default().to_owned();
    assert!(file.contains("Bee Low") && file.contains("shortfall.scenario"), "{file}");
    // And the crew's page opens that file again.
    page.go("#crew").await?;
    page.driver.refresh().await?;
    page.click("#clear").await?;
    page.click("#clear-sure").await?;
    page.wait_text("#note", "cleared").await?;
    page.give_file("#import", "everything.json", file.as_bytes()).await?;
    page.wait_text(".people", "Bee Low").await?;
    page.close().await
}

/// A crew's list as older spreadsheets write it; too many names are counted.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_crew_list_from_an_older_spreadsheet() -> Res {
    let page = Page::open_at(LAPTOP, "#crew").await?;
    page.wait("#paste").await?;
    page.give_file("#crew-file", "a.csv", b"nom;ville\r\n\xc9lise Low;Bas-Ruisseau\r\n").await?;
    page.wait_text(".people", "Élise Low").await?;
    let many: String = (0..600).map(|n| format!("Painter {n}\n")).collect();
    page.give_file("#crew-file", "b.csv", many.as_bytes()).await?;
    page.wait_text("#crew-said", "101 left out").await?;
    finish(page).await
}

/// Installable, and with the headers that hosts are asked to send.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn the_app_can_be_installed_and_says_how_it_is_served() -> Res {
    let page = Page::open(LAPTOP).await?;
    let m = page
        .js_async("fetch(document.querySelector('link[rel=manifest]').href).then(r => r.json()).then(async m => { const ok = []; for (const i of m.icons) ok.push((await fetch(i.src)).status); done([m, ok]); })")
        .await?;
    assert_eq!(m[0]["display"], "standalone");
    assert_eq!(m[1], json!([200, 200, 200, 200]));
    let errors = page.cdp("Page.getInstallabilityErrors", json!({})).await?;
    let errors: Vec<&str> = errors["installabilityErrors"]
        .as_array()
        .map(|a| a.iter().filter_map(|e| e["errorId"].as_str()).collect())
        .unwrap_or_default();
    assert!(errors.iter().all(|e| *e == "in-incognito"), "{errors:?}");
    let sent = page
        .js_async("fetch('./').then(r => done(['x-content-type-options', 'referrer-policy', 'cross-origin-opener-policy', 'content-security-policy'].map(h => r.headers.get(h))))")
        .await?;
    assert_eq!(sent, json!(["nosniff", "no-referrer", "same-origin", "frame-ancestors 'none'"]));
    finish(page).await
}

/// A bug: the browser drew other questions from a form's number than the tests prove natively (draws
/// hung on the width of a machine word).
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn two_hundred_forms_shifts_roofs_and_sheds_are_the_native_ones() -> Res {
    let page = Page::open(LAPTOP).await?;
    let want = fs::read_to_string(root().join("tests/snapshots/draws.txt"))?;
    let mut got = String::new();
    for n in 0..20 {
        let some =
            page.js_async(&format!("window.wasmBindings.draws({}, 10).then(done, done)", n * 10)).await?;
        got += some.as_str().unwrap_or_default();
    }
    for (a, b) in want.lines().zip(got.lines()) {
        assert_eq!(a, b);
    }
    assert_eq!(want.lines().count(), got.lines().count());
    finish(page).await
}

/// A bug: the page was 45 px too wide at 320 px in large lettering.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn large_lettering_fits_a_small_phone() -> Res {
    let page = Page::open(Window { width: 320, height: 640, ..LAPTOP }).await?;
    for lang in ["en", "fr"] {
        page.click(&format!(".langs [lang={lang}]")).await?;
        page.js("document.documentElement.classList.add('large')").await?;
        for view in 1..=4 {
            page.js(&format!("document.querySelector('.views button:nth-child({view})').click()")).await?;
            page.wait(["#play", ".lesson", "#begin", "#paste"][view - 1]).await?;
            let wide = page
                .js("return [document.documentElement.scrollWidth, [...document.querySelectorAll('body *')].filter(e => e.getClientRects().length && e.getBoundingClientRect().right > 321 && !e.closest('svg, .scroll, .vh')).slice(0, 4).map(e => e.outerHTML.slice(0, 120))]")
                .await?;
            assert!(wide[0].as_f64().unwrap_or(999.0) <= 320.0, "{lang} {view}: {wide}");
        }
    }
    finish(page).await
}

/// A bug, half mended: each fall keeps some of the page's memory. Counted by allocations it was 9 kB and is
/// 5, readers that the library's signals remember of views that are gone; with what lies between, the
/// module's memory grows by some 10 kB a fall, half a megabyte at a time. This holds it from growing worse.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn falls_give_their_memory_back() -> Res {
    let page = Page::blank(LAPTOP, &root().join("target/dist"), "no-cache").await?;
    page.cdp("Page.enable", json!({})).await?;
    page.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": "addEventListener('shortfall-started', (e) => { window.module = e.detail.wasm; })" })).await?;
    page.go("").await?;
    page.wait("#play").await?;
    let falls = async |n: u32| -> Res<(f64, f64)> {
        for _ in 0..n {
            page.js("document.querySelector('.answer input').click()").await?;
            page.js("document.querySelector('#play').click()").await?;
            page.wait(".player .main").await?;
            page.js("document.querySelector('.player .main').click()").await?;
            page.wait("#change").await?;
            page.js("document.querySelector('#leave-fall').click()").await?;
            page.wait("#play").await?;
        }
        pause(500).await;
        page.cdp("HeapProfiler.collectGarbage", json!({})).await?;
        let heap = page.cdp("Runtime.getHeapUsage", json!({})).await?["usedSize"].as_f64().unwrap_or(0.0);
        let linear = page.js("return window.module.memory.buffer.byteLength").await?.as_f64().unwrap_or(0.0);
        Ok((heap, linear))
    };
    let before = falls(20).await?;
    let after = falls(90).await?;
    let grown = ((after.0 - before.0) / 90.0, (after.1 - before.1) / 90.0);
    println!("a fall keeps {:.0} bytes of heap, {:.0} of the module's memory", grown.0, grown.1);
    assert!(grown.0 < 4_000.0 && grown.1 < 20_000.0, "{grown:?}: {before:?} {after:?}");
    finish(page).await
}

/// Three bugs that a hostile tester found: a link in a new tab took the place of one's own set-up for good,
/// a second link over an edited first lost the one or the other at a reload, and a broken link left the
/// page saying that one's own set-up came by a link.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn links_upon_links_in_new_tabs_lose_nothing() -> Res {
    let page = Page::open(LAPTOP).await?;
    let grab = async || -> Res<String> {
        page.drawer().await?;
        let v = page.js("return document.getElementById('f-grab-above_dring_m').value").await?;
        Ok(v.as_str().unwrap_or_default().to_owned())
    };
    let more =
        "document.querySelector('#f-grab-above_dring_m').nextElementSibling.nextElementSibling.click()";
    page.drawer().await?;
    page.js(more).await?;
    let mine = grab().await?;
    assert_eq!(mine, "0.20");
    // In a new tab, edited there, and the app opened anew in a third.
    let second = page.driver.new_tab().await?;
    page.driver.switch_to_window(second).await?;
    page.go(&link(r#"{"grab":{"above_dring_m":-0.5}}"#)).await?;
    page.wait("#back-to-mine").await?;
    assert!(page.text("#by-link").await?.contains("not kept yet"));
    page.drawer().await?;
    page.js(more).await?;
    let theirs = grab().await?;
    let third = page.driver.new_tab().await?;
    page.driver.switch_to_window(third).await?;
    page.go("").await?;
    page.wait("#back-to-mine").await?;
    assert_eq!(grab().await?, theirs);
    // Another link over that, reloaded: first back to the edited one, then to the first of all.
    page.go(&link(r#"{"grab":{"above_dring_m":0.1}}"#)).await?;
    page.driver.refresh().await?;
    page.wait("#back-to-mine").await?;
    assert_eq!(grab().await?, "0.10");
    // A broken one changes nothing, also not what a reload shows.
    page.go("#s=[]").await?;
    page.wait_text(".notice", "Not opened").await?;
    page.driver.refresh().await?;
    page.wait("#back-to-mine").await?;
    assert_eq!(grab().await?, "0.10");
    page.shut().await?;
    page.click("#back-to-mine").await?;
    assert_eq!(grab().await?, theirs);
    page.shut().await?;
    page.click("#back-to-mine").await?;
    assert_eq!(grab().await?, mine);
    assert!(page.driver.find_all(By::Css("#back-to-mine")).await?.is_empty());
    page.driver.refresh().await?;
    page.wait("#scene").await?;
    assert_eq!(grab().await?, mine);
    finish(page).await
}
