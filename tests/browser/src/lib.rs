//! A real browser on the built app: own static server, driver on a free port, quiet flags.

use serde_json::{Value, json};
use std::error::Error;
use std::net::{SocketAddr, TcpListener};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;
use thirtyfour::prelude::*;

/// What a test step gives.
pub type Res<T = ()> = Result<T, Box<dyn Error + Send + Sync>>;

/// The project's folder.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A browser window on the app.
pub struct Page {
    /// The driver.
    pub driver: WebDriver,
    /// Address of the app.
    pub address: SocketAddr,
    chromedriver: Child,
    profile: PathBuf,
}

/// How the window is set up.
#[derive(Clone, Copy)]
pub struct Window {
    /// CSS pixels.
    pub width: u32,
    /// CSS pixels.
    pub height: u32,
    /// Asked for less motion.
    pub reduced_motion: bool,
    /// Language of the browser.
    pub lang: &'static str,
}

/// A laptop.
pub const LAPTOP: Window = Window { width: 1280, height: 800, reduced_motion: false, lang: "en" };

fn free_port() -> Res<u16> {
    Ok(TcpListener::bind(("127.0.0.1", 0))?.local_addr()?.port())
}

fn chrome() -> Option<String> {
    if let Ok(path) = std::env::var("CHROME") {
        return Some(path);
    }
    ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"].iter().find_map(|name| {
        let found =
            std::env::split_paths(&std::env::var_os("PATH")?).map(|d| d.join(name)).find(|p| p.is_file())?;
        Some(found.display().to_string())
    })
}

impl Page {
    /// Opens the app, with everything it asks of the network recorded.
    ///
    /// # Errors
    /// When the app is not built, or browser or driver are missing.
    pub async fn open(window: Window) -> Res<Page> {
        Page::open_at(window, "").await
    }

    /// Opens the app at a path or fragment.
    ///
    /// # Errors
    /// As [`Page::open`].
    pub async fn open_at(window: Window, rest: &str) -> Res<Page> {
        let page = Page::blank(window, &root().join("target/dist"), "no-cache").await?;
        page.go(rest).await?;
        page.wait("#scene").await?;
        Ok(page)
    }

    /// Goes to a path or fragment of the app.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub async fn go(&self, rest: &str) -> Res {
        Ok(self.driver.goto(format!("http://{}/{rest}", self.address)).await?)
    }

    /// A browser with nothing open yet, and a bundle served with this `Cache-Control`.
    ///
    /// # Errors
    /// As [`Page::open`].
    pub async fn blank(window: Window, dist: &Path, keep: &'static str) -> Res<Page> {
        if !dist.join("index.html").is_file() {
            return Err("the app is not built: run cargo xtask bundle".into());
        }
        let address = xtask::serve_cached(dist, 0, keep)?;
        let port = free_port()?;
        let chromedriver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()?;
        let profile = std::env::temp_dir().join(format!("shortfall-{}-{port}", std::process::id()));
        std::fs::create_dir_all(&profile)?;
        let mut caps = DesiredCapabilities::chrome();
        if let Some(path) = chrome() {
            caps.set_binary(&path)?;
        }
        let mut flags = vec![
            "--headless=new".to_owned(),
            "--no-sandbox".to_owned(),
            "--disable-gpu".to_owned(),
            "--disable-quic".to_owned(),
            "--no-first-run".to_owned(),
            "--disable-background-networking".to_owned(),
            "--disable-component-update".to_owned(),
            "--disable-sync".to_owned(),
            "--hide-scrollbars".to_owned(),
            format!("--lang={}", window.lang),
            format!("--window-size={},{}", window.width, window.height),
            format!("--user-data-dir={}", profile.display()),
        ];
        if window.reduced_motion {
            flags.push("--force-prefers-reduced-motion".to_owned());
        }
        for f in &flags {
            caps.add_arg(f)?;
        }
        caps.set("goog:loggingPrefs", json!({ "browser": "ALL", "performance": "ALL" }))?;
        let mut tries = 0;
        let driver = loop {
            match WebDriver::new(format!("http://127.0.0.1:{port}"), caps.clone()).await {
                Ok(d) => break d,
                Err(e) if tries >= 50 => return Err(Box::new(e)),
                Err(_) => tries += 1,
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        };
        let page = Page { driver, address, chromedriver, profile };
        page.size(window.width, window.height).await?;
        Ok(page)
    }

    /// Sets the size of the page itself, smaller than a window may be.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub async fn size(&self, width: u32, height: u32) -> Res {
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({
                "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false
            }),
        )
        .await?;
        Ok(())
    }

    /// One command of the browser's own protocol.
    ///
    /// # Errors
    /// When the browser refuses it.
    pub async fn cdp(&self, method: &str, params: Value) -> Res<Value> {
        Ok(self.driver.cdp().send_raw(method, params).await?)
    }

    /// Waits for a selector, ten seconds at most.
    ///
    /// # Errors
    /// When it does not come.
    pub async fn wait(&self, css: &str) -> Res<WebElement> {
        Ok(self
            .driver
            .query(By::Css(css))
            .wait(Duration::from_secs(10), Duration::from_millis(50))
            .first()
            .await?)
    }

    /// Waits for an element that need not be seen.
    ///
    /// # Errors
    /// When it does not come.
    pub async fn wait_in_page(&self, css: &str) -> Res {
        for _ in 0..100 {
            if !self.driver.find_all(By::Css(css)).await?.is_empty() {
                return Ok(());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Err(format!("{css} did not come").into())
    }

    /// Waits until the text of an element holds these words; the text it stood at when not.
    ///
    /// # Errors
    /// When the words do not come within 20 seconds.
    pub async fn wait_text(&self, css: &str, words: &str) -> Res {
        let mut text = String::new();
        for _ in 0..200 {
            // Not there yet, or drawn anew between finding and reading.
            text = self.text(css).await.unwrap_or_default();
            if text.contains(words) {
                return Ok(());
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
        Err(format!("no '{words}' in: {text}").into())
    }

    /// Runs a script and returns its value.
    ///
    /// # Errors
    /// When the script throws.
    pub async fn js(&self, script: &str) -> Res<Value> {
        Ok(self.driver.execute(script, vec![]).await?.json().clone())
    }

    /// Clicks an element by selector, as a person would after scrolling to it.
    ///
    /// # Errors
    /// When it is missing or covered.
    pub async fn click(&self, css: &str) -> Res {
        let e = self.wait(css).await?;
        e.scroll_into_view().await?;
        e.click().await?;
        Ok(())
    }

    /// Opens the drawer with the whole set-up, unless it is open.
    ///
    /// # Errors
    /// When the bench is not there or a fall is shown.
    pub async fn drawer(&self) -> Res {
        self.js("if (!document.querySelector('.layer[data-layer=set-up]')) { document.querySelector('#shut')?.click(); document.querySelector('#today').click() }").await?;
        self.wait(".layer .part").await?;
        Ok(())
    }

    /// Takes the layer away that lies over the picture, if there is one.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub async fn shut(&self) -> Res {
        self.js("document.querySelector('#shut')?.click()").await?;
        Ok(())
    }

    /// Chooses in the drawer.
    ///
    /// # Errors
    /// When there is no such choice.
    pub async fn choose(&self, name: &str, index: usize) -> Res {
        self.drawer().await?;
        self.js(&format!("document.querySelector(\"input[name={name}][value='{index}']\").click()")).await?;
        Ok(())
    }

    /// Opens a layer of a fall by its name (`why`, `change`, `wall`, `room`, `sure`), unless it is open.
    ///
    /// # Errors
    /// When no fall is shown or it has no such layer.
    pub async fn layer(&self, name: &str) -> Res {
        self.js(&format!("if (!document.querySelector('.layer[data-layer={name}]')) (document.querySelector('#tab-{name}') ?? document.querySelector('#{name}') ?? document.querySelector('#to-{name}')).click()")).await?;
        self.wait(&format!(".layer[data-layer={name}]")).await?;
        Ok(())
    }

    /// Answers (0 holds, 1 hits, 2 comes loose, 3 stop and ask), lets go, skips to the result.
    ///
    /// # Errors
    /// When the set-up cannot be played.
    pub async fn fall(&self, answer: usize) -> Res {
        self.js("document.querySelector('#shut')?.click()").await?;
        self.wait("#play").await?;
        self.js(&format!("document.querySelectorAll('.answer input')[{answer}].click()")).await?;
        self.click("#play").await?;
        self.click(".player .main").await?;
        self.wait("#verdict").await?;
        Ok(())
    }

    /// Text of the first element.
    ///
    /// # Errors
    /// When it is missing.
    pub async fn text(&self, css: &str) -> Res<String> {
        Ok(self.wait(css).await?.text().await?)
    }

    /// Drives the page with random input from now on; `window.randomSteps` counts.
    ///
    /// # Errors
    /// When the script throws.
    pub async fn random(&self, seed: u32) -> Res {
        self.js(&include_str!("../random.js").replace("SEED", &seed.to_string())).await?;
        Ok(())
    }

    /// Runs a script that calls `done(value)`, and returns the value.
    ///
    /// # Errors
    /// When the script throws or does not end.
    pub async fn js_async(&self, script: &str) -> Res<Value> {
        let script = format!("const done = arguments[arguments.length - 1]; {script}");
        Ok(self.driver.execute_async(&script, vec![]).await?.json().clone())
    }

    /// Gives a file input a file.
    ///
    /// # Errors
    /// When the file cannot be written or the input is missing.
    pub async fn give_file(&self, css: &str, name: &str, bytes: &[u8]) -> Res {
        let folder = self.profile.join("given");
        std::fs::create_dir_all(&folder)?;
        let path = folder.join(name);
        std::fs::write(&path, bytes)?;
        self.js(&format!("document.querySelector('{css}').style.cssText = 'position:static;width:99px;height:44px;clip-path:none'")).await?;
        self.wait(css).await?.send_keys(path.display().to_string()).await?;
        Ok(())
    }

    /// A picture of the page as PNG bytes.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub async fn screenshot(&self) -> Res<Vec<u8>> {
        Ok(self.driver.screenshot_as_png().await?)
    }

    /// Errors and warnings the page logged.
    ///
    /// # Errors
    /// When the driver gives no log.
    pub async fn console_errors(&self) -> Res<Vec<String>> {
        Ok(self
            .driver
            .get_log("browser")
            .await?
            .into_iter()
            .filter(|l| l.level == "SEVERE" || l.level == "WARNING")
            .map(|l| l.message)
            .collect())
    }

    /// Every address the page asked for.
    ///
    /// # Errors
    /// When the driver gives no log.
    pub async fn requests(&self) -> Res<Vec<String>> {
        Ok(self
            .driver
            .get_log("performance")
            .await?
            .iter()
            .filter_map(|l| serde_json::from_str::<Value>(&l.message).ok())
            .filter(|m| m["message"]["method"] == "Network.requestWillBeSent")
            .filter_map(|m| m["message"]["params"]["request"]["url"].as_str().map(str::to_owned))
            .collect())
    }

    /// Closes everything; so does a failed test, by dropping the page.
    ///
    /// # Errors
    /// None today.
    pub async fn close(self) -> Res {
        Ok(())
    }
}

impl Drop for Page {
    fn drop(&mut self) {
        // The driver ends its browser when asked; killed, it may leave it running.
        let quit = tokio::time::timeout(Duration::from_secs(5), self.driver.clone().quit());
        tokio::task::block_in_place(|| {
            let _ = tokio::runtime::Handle::current().block_on(quit);
        });
        let _ = self.chromedriver.kill();
        let _ = self.chromedriver.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
        // Its own clean-up would wait for a driver that is gone.
        let _ = self.driver.clone().leak();
    }
}

/// Begins a form under a name: practice, or an assessment that ends in a record.
///
/// # Errors
/// When the quiz is not open or does not begin.
pub async fn begin_form(page: &Page, who: &str, assess: bool, seed: u32) -> Res {
    page.wait("#begin").await?;
    if assess {
        page.js("document.querySelectorAll('input[name=mode]')[1].click()").await?;
    }
    page.wait("#who").await?.send_keys(who).await?;
    page.js(&format!(
        "const s = document.querySelector('#seed'); s.value = '{seed}'; s.dispatchEvent(new Event('change'))"
    ))
    .await?;
    page.click("#begin").await?;
    page.wait("#stem").await?;
    Ok(())
}

/// Answers the open question with its first choice, by mouse.
///
/// # Errors
/// When no question is open.
pub async fn answer_first(page: &Page) -> Res {
    page.wait("#lock").await?;
    if !page.driver.find_all(By::Css("input[name=option]")).await?.is_empty() {
        page.click("input[name=option]").await?;
    } else if !page.driver.find_all(By::Css("#grab-at")).await?.is_empty() {
        page.click(".question .number .step:last-child").await?;
    }
    page.click("#lock").await
}

/// The source of axe-core, as the set-up fetched it.
///
/// # Errors
/// When it was not fetched.
pub fn axe() -> Res<String> {
    let cache = std::env::var("XDG_CACHE_HOME")
        .map(PathBuf::from)
        .or_else(|_| std::env::var("HOME").map(|h| Path::new(&h).join(".cache")))?;
    Ok(std::fs::read_to_string(cache.join("shortfall-tools/node_modules/axe-core/axe.min.js"))?)
}

/// Runs axe-core on the page as it stands.
///
/// # Errors
/// What it finds, and where.
pub async fn axe_clean(page: &Page, axe: &str, place: &str) -> Res {
    page.js(axe).await?;
    let found = page
        .driver
        .execute_async(
            "const done = arguments[arguments.length - 1]; axe.run(document, { resultTypes: ['violations'] })\
             .then(r => done(r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.target.join(' ') + ' ' + n.failureSummary).slice(0, 3).join('; '))), e => done([String(e)]))",
            vec![],
        )
        .await?;
    match found.json().as_array() {
        Some(all) if all.is_empty() => Ok(()),
        _ => Err(format!("{place}: {}", found.json()).into()),
    }
}
