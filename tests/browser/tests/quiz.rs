//! A whole quiz in a real browser: by mouse, by keyboard, in French, with a reload in the middle, with
//! storage full; the printed page by its text; files in and out.

use base64::Engine;
use browser_tests::{LAPTOP, Page, Res, Window, answer_first, begin_form};
use serde_json::{Value, json};
use thirtyfour::TypingData;
use thirtyfour::prelude::*;

async fn begin(page: &Page, assess: bool, seed: u32) -> Res {
    begin_form(page, "Noor Field", assess, seed).await
}

async fn progress(page: &Page, number: usize, word: &str) -> Res {
    page.wait_text("#progress", &format!("Question {number} {word} 12")).await
}

async fn finish(page: Page) -> Res {
    let errors = page.console_errors().await?;
    assert!(errors.is_empty(), "the console says: {errors:?}");
    page.close().await
}

async fn pdf_text(page: &Page) -> Res<(usize, String)> {
    let pdf = page.cdp("Page.printToPDF", json!({ "printBackground": true })).await?;
    let data = pdf["data"].as_str().ok_or("no PDF")?;
    let bytes = base64::engine::general_purpose::STANDARD.decode(data)?;
    let pages = pdf_extract::extract_text_from_mem_by_pages(&bytes)?;
    // Letters are placed one by one: spaces in the text are the extractor's guess.
    Ok((pages.len(), pages.join("").chars().filter(|c| !c.is_whitespace()).collect()))
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_quiz_by_mouse_ends_in_a_record_that_prints_and_replays() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    begin(&page, true, 7).await?;
    for n in 1..=12 {
        progress(&page, n, "of").await?;
        answer_first(&page).await?;
    }
    let outcome = {
        page.wait("#outcome").await?;
        page.text("#outcome").await?
    };
    assert!(outcome.contains("of the points"), "{outcome}");
    // One page, in both languages, that says what it is not.
    let (pages, text) = pdf_text(&page).await?;
    assert_eq!(pages, 1, "{text}");
    for words in [
        "Noor Field",
        "no certificate",
        "pas une attestation",
        "Form number",
        "Numéro du questionnaire",
        "signature",
    ] {
        assert!(text.contains(&words.replace(' ', "")), "no '{words}' on the page: {text}");
    }
    assert!(!text.contains("Lessons"), "the screen is printed too: {text}");
    // The crew's list has it; opened again it replays.
    page.click(".views button:nth-child(4)").await?;
    page.wait_text(".people", "Noor Field").await?;
    page.click(".reopen").await?;
    page.wait("#outcome").await?;
    assert_eq!(page.text("#outcome").await?, outcome);
    // After a reload it is still there.
    page.driver.refresh().await?;
    page.click(".views button:nth-child(4)").await?;
    page.wait_text(".people", "Noor Field").await?;
    // Of one person it says nothing of the questions yet; the topics stand as dots.
    assert!(page.text("#few").await?.contains("From five people on"));
    assert!(page.text(".topics").await?.contains("topics right"));
    // The printed page: a line for each miss, both signatures.
    page.js("window.print = () => {}").await?;
    page.click(".sheet-of").await?;
    page.wait_in_page(".sheet .misses li").await?;
    let sheet = page.js("return document.querySelector('.sheet').textContent").await?;
    let sheet = sheet.as_str().unwrap_or_default();
    for words in ["Your answer:", "Right:", "Worker’s signature and date", "Trainer’s signature and date"]
    {
        assert!(sheet.contains(words), "{words} in {sheet}");
    }
    finish(page).await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn practice_by_keyboard_alone_tells_each_answer() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    page.wait("#begin").await?;
    let press = async |key: TypingData| -> Res {
        page.driver.active_element().await?.send_keys(key).await?;
        Ok(())
    };
    // Tab to what is named, as a person would.
    let to = async |css: &str| -> Res {
        for _ in 0..40 {
            if page.js(&format!("return !!document.activeElement.matches('{css}')")).await?
                == Value::Bool(true)
            {
                return Ok(());
            }
            press(Key::Tab + "").await?;
        }
        Err(format!("{css} is not reached by Tab").into())
    };
    to("#begin").await?;
    press(Key::Enter + "").await?;
    for n in 1..=12 {
        progress(&page, n, "of").await?;
        let choices = page.driver.find_all(By::Css("input[name=option]")).await?.len();
        let grab = page.driver.find_all(By::Css("#grab-at")).await?.len();
        page.js("document.activeElement.blur(); document.querySelector('#stem').focus()").await?;
        if choices > 0 {
            to("input[name=option]").await?;
            press(Key::Space + "").await?;
        } else if grab > 0 {
            to("#grab-at").await?;
            press(Key::Right + "").await?;
        }
        to("#lock").await?;
        press(Key::Enter + "").await?;
        page.wait(".told").await?;
        let told = page.text(".told").await?;
        assert!(told.contains("Your answer"), "{told}");
        page.js("document.querySelector('#stem').focus()").await?;
        to("#on").await?;
        press(Key::Enter + "").await?;
    }
    page.wait_text(".result", "Nothing was recorded").await?;
    finish(page).await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn in_french_a_reload_in_the_middle_goes_on_at_the_same_question() -> Res {
    let page = Page::open_at(Window { lang: "fr", ..LAPTOP }, "#quiz").await?;
    page.click(".langs [lang=fr]").await?;
    begin(&page, true, 11).await?;
    for n in 1..=4 {
        progress(&page, n, "sur").await?;
        answer_first(&page).await?;
    }
    progress(&page, 5, "sur").await?;
    let stem = page.text("#stem").await?;
    page.driver.refresh().await?;
    page.wait_text(".halves", "4 sur 12").await?;
    page.click(".resume").await?;
    progress(&page, 5, "sur").await?;
    assert_eq!(page.text("#stem").await?, stem);
    for n in 5..=12 {
        progress(&page, n, "sur").await?;
        assert!(!page.text(".question").await?.contains('{'));
        answer_first(&page).await?;
    }
    page.wait_text("#outcome", "des points").await?;
    assert!(page.text(".result").await?.contains("Ce n’est pas une attestation"));
    // Nothing half done is left.
    page.click("#again").await?;
    page.wait("#begin").await?;
    assert!(page.driver.find_all(By::Css(".halves li")).await?.is_empty());
    finish(page).await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn with_storage_full_the_person_is_told_and_can_still_save() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    page.wait("#begin").await?;
    // Truly full: every request works, and the transaction is aborted at its commit.
    let origin = format!("http://{}", page.address);
    page.cdp("Storage.overrideQuotaForOrigin", json!({ "origin": origin, "quotaSize": 1 })).await?;
    begin(&page, true, 13).await?;
    for n in 1..=12 {
        progress(&page, n, "of").await?;
        answer_first(&page).await?;
    }
    page.wait("#outcome").await?;
    page.wait_text("#note", "does not keep").await?;
    // The file is still to be had.
    page.js("window.saved = []; URL.createObjectURL = (b) => { window.saved.push(b); return 'blob:none'; }; HTMLElement.prototype.click = function () {}").await?;
    page.js(
        "document.querySelector('.export .write').dispatchEvent(new MouseEvent('click', { bubbles: true }))",
    )
    .await?;
    for _ in 0..100 {
        if page.js("return window.saved.length").await? == json!(1) {
            break;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
    let size = page.js("return window.saved[0].size").await?;
    assert!(size.as_f64().unwrap_or(0.0) > 1000.0, "{size}");
    // The crew's list is not said to be kept either.
    page.click(".views button:nth-child(4)").await?;
    page.wait("#paste").await?.send_keys("Tad Quill\n").await?;
    page.click("#add-crew").await?;
    page.wait_text("#crew-said", "would not keep").await?;
    // With room again, what was made can still be kept: the form half done is in the file, the record
    // in this page.
    assert!(page.text(".people").await?.contains("Noor Field"));
    page.close().await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn files_are_merged_or_refused_and_clearing_clears() -> Res {
    let page = Page::open_at(LAPTOP, "#crew").await?;
    page.wait("#paste").await?.send_keys("Noor Field\nTad Quill\n").await?;
    page.click("#add-crew").await?;
    page.wait_text(".people", "Tad Quill").await?;
    assert!(page.text(".people").await?.contains("a first form that passes"));
    let folder = std::env::temp_dir().join(format!("shortfall-files-{}", std::process::id()));
    std::fs::create_dir_all(&folder)?;
    let import = async |name: &str, text: &str, says: &str| -> Res {
        let path = folder.join(name);
        std::fs::write(&path, text)?;
        page.js("document.querySelector('#import').style.cssText = 'position:static;width:99px;height:44px;clip-path:none'").await?;
        page.wait("#import").await?.send_keys(path.display().to_string()).await?;
        page.wait_text("#crew-said", says).await
    };
    import("broken.json", "{\"shortfall_records\":1,", "broken").await?;
    import("foreign.json", "{\"a\":1}", "not a file of records").await?;
    import("newer.json", "{\"shortfall_records\":99,\"records\":[]}", "newer version").await?;
    import("huge.json", &" ".repeat(64_000_001), "over 64 MB").await?;
    import("empty.json", "{\"shortfall_records\":1,\"crew\":[\"Bee Low\"],\"records\":[]}", "0 kept").await?;
    page.wait_text(".people", "Bee Low").await?;
    std::fs::remove_dir_all(&folder)?;
    page.driver.refresh().await?;
    page.wait_text(".people", "Bee Low").await?;
    page.click("#clear").await?;
    page.click("#clear-sure").await?;
    page.wait_text("#note", "cleared").await?;
    assert!(page.driver.find_all(By::Css(".people li")).await?.is_empty());
    page.driver.refresh().await?;
    page.wait("#paste").await?;
    assert!(page.driver.find_all(By::Css(".people li")).await?.is_empty());
    finish(page).await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_lesson_is_predicted_seen_and_compared() -> Res {
    let page = Page::open_at(LAPTOP, "#lessons").await?;
    page.wait(".lesson").await?;
    page.click(".lesson").await?;
    // Nothing is locked before a flag was moved.
    page.wait(".flag-field").await?;
    page.click("#lock").await?;
    assert!(page.text(".stem").await?.contains("Where do the boots stop?"));
    for _ in 0..8 {
        page.click(".flag-field .step").await?;
    }
    for _ in 0..3 {
        page.js("document.querySelectorAll('.flag-field [role=spinbutton]')[1].dispatchEvent(new KeyboardEvent('keydown', {key: 'PageDown', bubbles: true}))").await?;
    }
    page.click("#lock").await?;
    page.click("#skip").await?;
    page.wait("#lesson-told").await?;
    // 3.6 m less 0.8 and less 1.5: 0.7 m between them.
    page.wait_text(".compare", "You said 0.70 m between them").await?;
    assert!(page.text("#lesson-told").await?.starts_with("B: held this once. But: grab below the D-ring"));
    let table = page.text(".analysis").await?;
    assert!(table.contains("Free fall") && table.contains("Whole drop"), "{table}");
    // The clock runs, and both workers with it.
    let place =
        "return [...document.querySelectorAll('.pair-pane .figure .trunk')].map(e => e.getAttribute('d'))";
    page.click("#slow").await?;
    let start = page.js(place).await?;
    tokio::time::sleep(std::time::Duration::from_millis(1500)).await;
    let later = page.js(place).await?;
    assert!(later[0] != start[0] && later[later.as_array().map_or(0, Vec::len) / 2] != start[0]);
    page.click("#next-lesson").await?;
    page.wait_text("#room-h", "arrow").await?;
    // From a lesson to the bench and back to it.
    page.click(".flag-field .step").await?;
    page.click("#lock").await?;
    page.click("#skip").await?;
    page.click("#why").await?;
    page.click(".principle .plain").await?;
    page.click("#back-to-lesson").await?;
    page.wait_text("#room-h", "arrow").await?;
    page.click(".room-bar .back").await?;
    page.wait_text("#lesson-1", "off").await?;
    // Done is kept on the device; a fall on the bench adds its ending.
    page.driver.refresh().await?;
    page.wait_text(".lesson-list", "done").await?;
    page.click(".views button").await?;
    page.fall(0).await?;
    page.click(".views button:nth-child(2)").await?;
    page.wait_text(".endings", "stopped in the air").await?;
    finish(page).await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn quiz_and_crew_fit_a_small_phone_and_axe_finds_nothing() -> Res {
    let axe = browser_tests::axe()?;
    for lang in ["en", "fr"] {
        let page = Page::open_at(Window { width: 320, height: 640, ..LAPTOP }, "#quiz").await?;
        page.click(&format!(".langs [lang={lang}]")).await?;
        begin(&page, false, 42).await?;
        for _ in 0..12 {
            page.wait("#lock").await?;
            let wide = page.js("return [document.documentElement.scrollWidth, document.querySelector('#stem').innerText]").await?;
            assert!(wide[0].as_f64().unwrap_or(999.0) <= 320.0, "{lang}: {wide}");
            browser_tests::axe_clean(&page, &axe, "quiz").await?;
            answer_first(&page).await?;
            page.wait("#on").await?;
            page.click("#on").await?;
        }
        page.wait("#outcome").await?;
        page.click(".options > summary").await?;
        page.click(".views button:nth-child(4)").await?;
        page.wait("#paste").await?;
        let wide = page.js("return document.documentElement.scrollWidth").await?;
        assert!(wide.as_f64().unwrap_or(999.0) <= 320.0, "{lang} crew: {wide}");
        browser_tests::axe_clean(&page, &axe, "crew").await?;
        page.click(".options > summary").await?;
        page.click(".views button:nth-child(2)").await?;
        page.click(".lesson").await?;
        page.click(".flag-field .step").await?;
        page.click("#lock").await?;
        page.click("#skip").await?;
        page.wait("#lesson-told").await?;
        let wide = page.js("return document.documentElement.scrollWidth").await?;
        assert!(wide.as_f64().unwrap_or(999.0) <= 320.0, "{lang} lesson: {wide}");
        browser_tests::axe_clean(&page, &axe, "lesson").await?;
        page.close().await?;
    }
    Ok(())
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_second_tab_further_on_is_not_overwritten() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    begin(&page, true, 17).await?;
    answer_first(&page).await?;
    progress(&page, 2, "of").await?;
    let first = page.driver.window().await?;
    let second = page.driver.new_tab().await?;
    page.driver.switch_to_window(second).await?;
    page.driver.goto(format!("http://{}/#quiz", page.address)).await?;
    page.wait(".resume").await?;
    page.click(".resume").await?;
    for n in 2..=4 {
        progress(&page, n, "of").await?;
        answer_first(&page).await?;
    }
    progress(&page, 5, "of").await?;
    page.driver.switch_to_window(first).await?;
    answer_first(&page).await?;
    page.wait_text("#note", "another tab").await?;
    progress(&page, 5, "of").await?;
    finish(page).await
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_clock_set_back_is_told_and_recorded() -> Res {
    let page = Page::open_at(LAPTOP, "#quiz").await?;
    for back in [false, true] {
        if back {
            page.click("#again").await?;
            page.js("const D = Date; window.Date = class extends D { constructor(...a) { if (a.length) super(...a); else super(2001, 0, 1); } }").await?;
        }
        begin(&page, true, 19).await?;
        // What was missed comes once more: the second form is longer.
        let told = page.text("#progress").await?;
        let all: usize = told.rsplit(' ').next().unwrap_or_default().parse()?;
        assert!(if back { (13..=18).contains(&all) } else { all == 12 }, "{told}");
        for n in 1..=all {
            page.wait_text("#progress", &format!("Question {n} of {all}")).await?;
            answer_first(&page).await?;
        }
        page.wait("#outcome").await?;
    }
    page.wait_text("#note", "stood earlier").await?;
    let (_, text) = pdf_text(&page).await?;
    assert!(text.contains("stoodearlier") && text.contains("2001-01-01"), "{text}");
    finish(page).await
}
