//! `cargo xtask serve | test | bench | bundle | fall …`: each does its own set-up.
//!
//! Tools of the pinned versions go into the user's cache and are built once. What cannot be had
//! ends in one line that says what is missing and how to get it.

use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode, Stdio};
use std::sync::Mutex;
use std::time::{Duration, Instant};

const BINARYEN: &str = "132.0.0";
const WASM: &str = "wasm32-unknown-unknown";

type Done<T = ()> = Result<T, String>;

fn main() -> ExitCode {
    let args: Vec<String> = env::args().skip(1).collect();
    let rest = args.get(1..).unwrap_or_default();
    let done = match args.first().map(String::as_str) {
        Some("serve") => serve(rest),
        Some("test") => test(),
        Some("bench") => bench(),
        Some("bundle") => bundle(),
        Some("fall") => return fall(rest),
        Some("picture") => picture(),
        _ => Err("usage: cargo xtask serve [PORT] | test | bench | bundle | picture | fall FILE|-|--schema|--example".into()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(line) => {
            eprintln!("xtask: {line}");
            ExitCode::FAILURE
        }
    }
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map_or_else(PathBuf::new, Path::to_path_buf)
}

fn cargo() -> Command {
    let mut c = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    c.current_dir(root());
    c
}

/// Cargo for what runs in a browser. Its panics name their files without this machine's folders: the same bytes
/// wherever it is built, and a download that is 1.6 KiB smaller.
fn cargo_wasm() -> Command {
    const FLAGS: &str = "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS";
    let mut c = cargo();
    if env::var_os(FLAGS).is_some() {
        return c;
    }
    let home = env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| {
        env::var_os("HOME").or_else(|| env::var_os("USERPROFILE")).map(|h| PathBuf::from(h).join(".cargo"))
    });
    let folders = home.and_then(|h| fs::read_dir(h.join("registry/src")).ok());
    let flags: Vec<String> = folders
        .into_iter()
        .flat_map(Iterator::flatten)
        .map(|f| format!("--remap-path-prefix={}/=", f.path().display()))
        // Cargo splits what it is given at blanks.
        .filter(|f| !f.contains(' '))
        .collect();
    c.env(FLAGS, flags.join(" "));
    c
}

/// How long each step took.
static STEPS: Mutex<Vec<(String, Duration)>> = Mutex::new(Vec::new());

fn run(what: &str, c: &mut Command) -> Done {
    println!("xtask: {what}");
    let began = Instant::now();
    let status = c.status();
    if let Ok(mut steps) = STEPS.lock() {
        steps.push((what.to_owned(), began.elapsed()));
    }
    match status {
        Ok(s) if s.success() => Ok(()),
        Ok(s) => Err(format!("{what} failed ({s})")),
        Err(e) => Err(format!("{what}: {:?} cannot be started: {e}", c.get_program())),
    }
}

/// Tells the ten slowest steps.
fn tell_steps() {
    let Ok(mut steps) = STEPS.lock() else { return };
    let whole: Duration = steps.iter().map(|s| s.1).sum();
    steps.sort_by_key(|s| std::cmp::Reverse(s.1));
    println!("\nxtask: {} s in all; the slowest steps:", whole.as_secs());
    for (what, took) in steps.iter().take(10) {
        println!("{:>6} s  {what}", took.as_secs());
    }
}

fn output(c: &mut Command) -> Option<String> {
    let out = c.stderr(Stdio::null()).output().ok()?;
    out.status.success().then(|| String::from_utf8_lossy(&out.stdout).trim().to_owned())
}

// ---- tools ----

/// Folder in the user's cache for built tools.
fn cache() -> Done<PathBuf> {
    let base = env::var_os("XDG_CACHE_HOME")
        .map(PathBuf::from)
        .or_else(|| env::var_os("HOME").map(|h| PathBuf::from(h).join(".cache")))
        .or_else(|| env::var_os("LOCALAPPDATA").map(PathBuf::from))
        .ok_or("no home folder: set XDG_CACHE_HOME to a folder for built tools")?;
    let dir = base.join("shortfall-tools");
    std::fs::create_dir_all(&dir).map_err(|e| format!("{}: {e}", dir.display()))?;
    Ok(dir)
}

/// PATH with the cached tools first.
fn tool_path() -> Done<OsString> {
    let c = cache()?;
    let mut all = vec![c.join("bin"), c.join("node_modules").join(".bin")];
    all.extend(env::split_paths(&env::var_os("PATH").unwrap_or_default()));
    env::join_paths(all).map_err(|e| e.to_string())
}

fn tool(name: &str) -> Done<Command> {
    let mut c = Command::new(name);
    c.env("PATH", tool_path()?).current_dir(root());
    // Windows looks a program up on the parent's PATH, so name it in full where it is cached.
    let cached = cache()?.join("bin").join(format!("{name}{}", env::consts::EXE_SUFFIX));
    if cached.is_file() {
        let mut full = Command::new(cached);
        full.env("PATH", tool_path()?).current_dir(root());
        return Ok(full);
    }
    Ok(c)
}

fn wasm_target() -> Done {
    let dir = output(Command::new("rustc").args(["--print", "target-libdir", "--target", WASM]));
    if dir.is_some_and(|d| Path::new(&d).is_dir()) {
        return Ok(());
    }
    run(&format!("add the {WASM} target"), Command::new("rustup").args(["target", "add", WASM]))
        .map_err(|e| format!("{e}; install rustup from rust-lang.org, or your system's std for {WASM}"))
}

/// wasm-opt from PATH, else npm's binaryen; whether there is one.
fn wasm_opt() -> Done<bool> {
    if output(tool("wasm-opt")?.arg("--version")).is_some() {
        return Ok(true);
    }
    let got = npm("binaryen", &format!("binaryen@{BINARYEN}"));
    Ok(got.is_ok() && output(tool("wasm-opt")?.arg("--version")).is_some())
}

/// A package from npm into the cache.
fn npm(what: &str, package: &str) -> Done {
    let npm = if cfg!(windows) { "npm.cmd" } else { "npm" };
    run(
        &format!("fetch {what}"),
        Command::new(npm)
            .args(["install", "--silent", "--no-audit", "--no-fund", "--prefix"])
            .arg(cache()?)
            .arg(package)
            .stdout(Stdio::null())
            .stderr(Stdio::null()),
    )
}

// ---- tasks ----

/// Builds the app into target/dist, served as it is.
fn bundle() -> Done {
    wasm_target()?;
    if !wasm_opt()? {
        println!("xtask: no wasm-opt (and no npm to fetch it): the build goes on, larger than it need be");
    }
    let build = ["build", "--quiet", "--locked", "--target", WASM];
    run(
        "build the page and the rooms (first time: 2 to 3 minutes)",
        cargo_wasm().args(build).args([
            "--release",
            "--features",
            "ui",
            "--bin",
            "shortfall",
            "--bin",
            "rooms",
        ]),
    )?;
    run(
        "build the engine (first time: half a minute)",
        cargo_wasm().args(build).args(["--profile", "engine", "--features", "worker", "--bin", "engine"]),
    )?;
    let built = target().join(WASM);
    let dist = root().join("target/dist");
    run(
        "make the bundle (first time: a minute and a half to build what makes it)",
        cargo()
            .args([
                "run",
                "--quiet",
                "--locked",
                "--package",
                "xtask",
                "--features",
                "bundle",
                "--bin",
                "bundle",
                "--",
            ])
            .args([built, root(), dist])
            .env("PATH", tool_path()?),
    )
}

/// Where cargo builds.
fn target() -> PathBuf {
    env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

fn serve(args: &[String]) -> Done {
    let port = match args.first() {
        Some(p) => p.parse().map_err(|_| format!("{p} is not a port"))?,
        None => 8080,
    };
    bundle()?;
    let dist = root().join("target/dist");
    // The asked-for port, else any free one.
    let address = xtask::serve(&dist, port).or_else(|_| xtask::serve(&dist, 0)).map_err(|e| e.to_string())?;
    println!("\nShortfall is at http://{address}/ (Ctrl-C ends it)");
    loop {
        std::thread::park();
    }
}

fn test() -> Done {
    let done = all_tests();
    tell_steps();
    done
}

fn all_tests() -> Done {
    // What is missing is told before anything takes its time.
    browser()?;
    wasm_target()?;
    run("check the formatting", cargo().args(["fmt", "--all", "--check"]))?;
    let deny = ["--", "-D", "warnings"];
    run(
        "clippy, core",
        cargo().args(["clippy", "-q", "--features", "headless", "--all-targets"]).args(deny),
    )?;
    run(
        "clippy, tools",
        cargo()
            .args(["clippy", "-q", "-p", "xtask", "-p", "browser-tests", "--features", "xtask/bundle"])
            .arg("--all-targets")
            .args(deny),
    )?;
    // In release, to share macros and build scripts with the bundle.
    let release = ["clippy", "-q", "--release", "--target", WASM];
    run(
        "clippy, page",
        cargo_wasm()
            .args(release)
            .args(["--features", "ui", "--bin", "shortfall", "--bin", "rooms"])
            .args(deny),
    )?;
    run(
        "clippy, engine",
        cargo_wasm()
            .args(["clippy", "-q", "--profile", "engine", "--target", WASM])
            .args(["--features", "worker", "--bin", "engine"])
            .args(deny),
    )?;
    run(
        "documentation",
        cargo().args(["doc", "-q", "--no-deps", "--features", "headless"]).env("RUSTDOCFLAGS", "-D warnings"),
    )?;
    for tests in core_tests()? {
        run(
            &format!("core tests: {tests}"),
            cargo().args(["test", "-q", "--features", "headless"]).args(match tests.as_str() {
                "lib" => vec!["--lib", "--bins"],
                name => vec!["--test", name],
            }),
        )?;
    }
    run("tool tests", cargo().args(["test", "-q", "-p", "xtask", "--features", "bundle"]))?;
    advisories()?;
    bundle()?;
    run(
        "browser tests",
        cargo().args(["test", "-p", "browser-tests", "--", "--test-threads=2"]).env("PATH", tool_path()?),
    )
}

/// The unit tests, then each file of tests; a step each, so that the slow ones are seen.
fn core_tests() -> Done<Vec<String>> {
    let mut all = vec!["lib".to_owned()];
    let folder = root().join("tests");
    let entries = fs::read_dir(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
    let mut names: Vec<String> = entries
        .flatten()
        .filter_map(|e| e.file_name().to_string_lossy().strip_suffix(".rs").map(str::to_owned))
        .collect();
    names.sort();
    all.extend(names);
    Ok(all)
}

/// Known holes in what we depend on, where the advisory database can be reached; else it says that
/// nobody looked. Licences and sources are also checked when the bundle is made.
fn advisories() -> Done {
    const DATABASE: &str = "https://github.com/RustSec/advisory-db";
    let slow = ["-c", "http.lowSpeedLimit=1000", "-c", "http.lowSpeedTime=8"];
    let reached = Command::new("git")
        .args(slow)
        .args(["ls-remote", "--heads", DATABASE])
        .env("GIT_TERMINAL_PROMPT", "0")
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|s| s.success());
    if !reached {
        println!("xtask: advisories NOT checked: the database cannot be reached from here");
        return Ok(());
    }
    let there = |c: &mut Command| output(c.arg("--version")).is_some();
    if !there(&mut tool("cargo-deny")?) {
        run(
            "build cargo-deny (once; some minutes)",
            cargo()
                .current_dir(cache()?)
                .args(["install", "cargo-deny", "--locked", "--debug", "--root"])
                .arg(cache()?)
                .env("CARGO_PROFILE_DEV_DEBUG", "0"),
        )?;
    }
    run("advisories, licences, sources", tool("cargo-deny")?.args(["--all-features", "check"]))
}

/// A browser, its driver and npm, else one line how to get them.
fn browser() -> Done {
    let there = |name: &str| output(Command::new(name).arg("--version")).is_some();
    let chromes = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
    let missing = || {
        let mut all = Vec::new();
        if !chromes.iter().any(|c| there(c)) && env::var_os("CHROME").is_none() {
            all.push("chromium");
        }
        if !there("chromedriver") {
            all.push("chromium-driver");
        }
        if !there(if cfg!(windows) { "npm.cmd" } else { "npm" }) {
            all.push("npm");
        }
        all
    };
    let wanted = missing();
    // A Debian-like machine where we may install: do it.
    if !wanted.is_empty()
        && cfg!(target_os = "linux")
        && there("apt-get")
        && output(Command::new("id").arg("-u")).as_deref() == Some("0")
    {
        let apt = |args: &[&str]| {
            let mut c = Command::new("apt-get");
            c.args(args).env("DEBIAN_FRONTEND", "noninteractive").stdout(Stdio::null());
            run(&format!("apt-get {}", args.join(" ")), &mut c)
        };
        apt(&["update", "-qq"])?;
        apt(&[&["install", "-y", "-qq", "--no-install-recommends"], wanted.as_slice()].concat())?;
    }
    let wanted = missing();
    if !wanted.is_empty() {
        return Err(format!(
            "not there: {}. Debian: apt-get install chromium chromium-driver npm; macOS: brew install --cask chromium chromedriver, brew install node; or set CHROME to the browser's path",
            wanted.join(", ")
        ));
    }
    // axe-core, for the accessibility test.
    if cache()?.join("node_modules/axe-core/axe.min.js").is_file() {
        return Ok(());
    }
    npm("axe-core", "axe-core@4")
}

fn bench() -> Done {
    run("native benchmark", cargo().args(["bench", "--features", "headless", "--bench", "falls"]))?;
    bundle()?;
    browser()?;
    run(
        "browser benchmark",
        cargo().args(["run", "--quiet", "-p", "browser-tests", "--bin", "bench"]).env("PATH", tool_path()?),
    )?;
    rivals()
}

/// General-purpose engines from npm on the same nine bodies, for comparison only.
fn rivals() -> Done {
    let dir = root().join("target/rivals");
    fs::create_dir_all(&dir).map_err(|e| format!("{}: {e}", dir.display()))?;
    let npm = if cfg!(windows) { "npm.cmd" } else { "npm" };
    run(
        "fetch other engines",
        Command::new(npm)
            .args(["install", "--silent", "--no-audit", "--no-fund", "--prefix"])
            .arg(&dir)
            .args(["@dimforge/rapier2d-compat@0.21", "planck@1"]),
    )?;
    let args = ["bench", "--quiet", "--features", "headless", "--bench", "falls"];
    let bodies = output(cargo().args(args).args(["--", "--bodies"])).ok_or("no bodies from the benchmark")?;
    let file = dir.join("bodies.json");
    fs::write(&file, bodies).map_err(|e| format!("{}: {e}", file.display()))?;
    let from = fs::File::open(&file).map_err(|e| format!("{}: {e}", file.display()))?;
    run(
        "the same bodies in other engines",
        Command::new("node").arg(root().join("tests/bench/rivals.mjs")).arg(&dir).stdin(from),
    )
}

/// Takes the README's picture anew.
fn picture() -> Done {
    bundle()?;
    browser()?;
    run("take the picture", cargo().args(["run", "--quiet", "-p", "browser-tests", "--bin", "picture"]))
}

fn fall(args: &[String]) -> ExitCode {
    let status = cargo()
        .current_dir(env::current_dir().unwrap_or_else(|_| root()))
        .args(["run", "--quiet", "--manifest-path"])
        .arg(root().join("Cargo.toml"))
        .args(["--features", "headless", "--bin", "fall", "--"])
        .args(args)
        .status();
    match status.map(|s| s.code()) {
        Ok(Some(0)) => ExitCode::SUCCESS,
        Ok(Some(c)) => ExitCode::from(u8::try_from(c).unwrap_or(1)),
        _ => ExitCode::FAILURE,
    }
}
