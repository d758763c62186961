//! The engine and the player in headless Chromium: simulated seconds a second, a whole fall's
//! time, script time of a frame while playing, a map's and a spread's time, size of the first load.

use browser_tests::{LAPTOP, Page, Res, root};

/// Times `fall_json`, the way to the worker and back included; the median of `n` runs, ms, and the run's simulated length, s.
const TIME_FALL: &str = "const f = window.wasmBindings.fall_json; const [s, done] = arguments;\
    (async () => { await f(s); const t = []; let out;\
    for (let i = 0; i < 20; i++) await f(s); for (let i = 0; i < 15; i++) { const a = performance.now(); out = await f(s); t.push(performance.now() - a); }\
    t.sort((x, y) => x - y); const e = JSON.parse(out).events; done([t[7], e[e.length - 1].time_s]); })();";

/// Draws a map; when it first shows and when it is done, ms.
const TIME_MAP: &str = "const done = arguments[0]; const a = performance.now(); let first = 0;\
    document.querySelector('#map-grab').click(); const look = () => { const now = performance.now() - a;\
    if (!first && document.querySelector('svg.map')) first = now;\
    if (document.querySelector('.roommap[data-done=true]')) done([first, now]); else setTimeout(look, 4); }; look();";

/// Runs the spread; when it is done, ms.
const TIME_SPREAD: &str = "const done = arguments[0]; const a = performance.now();\
    document.querySelector('#spread').click(); const look = () => {\
    if (document.querySelector('#spread')) done(performance.now() - a); else setTimeout(look, 4); }; setTimeout(look, 50);";

#[tokio::main]
async fn main() -> Res {
    let page = Page::open(LAPTOP).await?;
    println!(
        "{:<28}{:>12}{:>12}{:>18}{:>16}",
        "fall (wasm)", "median ms", "sim. s", "sim. s per s", "3 s take ms"
    );
    for (name, file) in [
        ("plain stop", r#"{}"#),
        ("low grab", r#"{"grab":{"above_dring_m":-0.4}}"#),
        ("reversed, to the ground", r#"{"grab":{"arrow":"down"}}"#),
        ("off the roof", r#"{"stance":{"roof":{"from_eave_m":1.5}}}"#),
    ] {
        let v = page.driver.execute_async(TIME_FALL, vec![file.into()]).await?;
        let (ms, sim) = (v.json()[0].as_f64().unwrap_or(0.0), v.json()[1].as_f64().unwrap_or(0.0));
        println!("{name:<28}{ms:>12.1}{sim:>12.2}{:>18.1}{:>16.1}", sim / ms * 1e3, 3.0 * ms / sim);
    }

    // Frame script time: every callback of requestAnimationFrame and the reactions it queued.
    page.js("window.frames = []; const raf = window.requestAnimationFrame.bind(window);\
             window.requestAnimationFrame = (f) => raf((t) => { const a = performance.now(); f(t);\
             queueMicrotask(() => queueMicrotask(() => window.frames.push(performance.now() - a))); })")
        .await?;
    page.js("document.querySelectorAll('.answer input')[0].click()").await?;
    page.click("#play").await?;
    tokio::time::sleep(std::time::Duration::from_secs(6)).await;
    let v = page.js("const f = window.frames.slice().sort((a, b) => a - b); return [f.length, f[f.length >> 1], f[Math.floor(f.length * 0.95)]]").await?;
    println!(
        "\nframe script time while playing: {} frames, median {:.2} ms, 95th percentile {:.2} ms",
        v[0],
        v[1].as_f64().unwrap_or(0.0),
        v[2].as_f64().unwrap_or(0.0)
    );

    page.js("document.querySelector('.player .main').click()").await?;
    page.wait("#to-room").await?;
    // The falls that the verdict asks for come first.
    tokio::time::sleep(std::time::Duration::from_secs(4)).await;
    page.layer("room").await?;
    page.wait("#map-grab").await?;
    let v = page.driver.execute_async(TIME_MAP, vec![]).await?;
    let at = |i: usize| v.json()[i].as_f64().unwrap_or(0.0);
    println!(
        "\nmap of 4,000 cells: first drawn after {:.0} ms, whole and checked after {:.0} ms",
        at(0),
        at(1)
    );

    page.layer("sure").await?;
    page.wait("#spread").await?;
    let v = page.driver.execute_async(TIME_SPREAD, vec![]).await?;
    println!("spread of 1,000 falls: whole after {:.0} ms", v.json().as_f64().unwrap_or(0.0));

    let (mut first, mut engine) = (0, 0);
    for e in std::fs::read_dir(root().join("target/dist"))? {
        let e = e?;
        let name = e.file_name().to_string_lossy().into_owned();
        if name.ends_with(".br") && !name.starts_with("sw.js") && !name.starts_with("random") {
            match &name {
                n if n.starts_with("engine") => engine += e.metadata()?.len(),
                n if n.starts_with("rooms") || n.starts_with("notices") || n.ends_with(".png.br") => {}
                _ => first += e.metadata()?.len(),
            }
        }
    }
    println!(
        "first load: {:.0} KiB in brotli; the engine, fetched behind it: {:.0} KiB",
        first as f64 / 1024.0,
        engine as f64 / 1024.0
    );
    page.close().await
}
