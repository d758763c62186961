//! `cargo xtask serve | test | bench | bundle | fall …`: each does its own set-up.
//!
//! Tools of the pinned versions go into the user's cache and are built once. What cannot be had
//! ends in one line that says what is missing and how to get it.

use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode, Stdio};

const TRUNK: &str = "0.21.14";
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

fn run(what: &str, c: &mut Command) -> Done {
    println!("xtask: {what}");
    match c.status() {
        Ok(s) if s.success() => Ok(()),
        Ok(s) => Err(format!("{what} failed ({s})")),
        Err(e) => Err(format!("{what}: {:?} cannot be started: {e}", c.get_program())),
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

fn has(name: &str, version: &str) -> Done<bool> {
    Ok(output(tool(name)?.arg("--version")).is_some_and(|v| v.split_whitespace().any(|w| w == version)))
}

fn install(name: &str, version: &str, extra: &[&str]) -> Done {
    let bin = if name == "wasm-bindgen-cli" { "wasm-bindgen" } else { name };
    if has(bin, version)? {
        return Ok(());
    }
    let dir = cache()?;
    if output(Command::new("cargo-binstall").arg("-V")).is_some() {
        let ok = run(
            &format!("fetch {name} {version}"),
            Command::new("cargo-binstall")
                .args(["--no-confirm", "--version", version, "--root"])
                .arg(&dir)
                .arg(name),
        );
        if ok.is_ok() && has(bin, version)? {
            return Ok(());
        }
    }
    let mut c = cargo();
    c.current_dir(&dir).args(["install", name, "--version", version, "--root"]).arg(&dir).args(extra);
    // Where `--debug` is asked for, without the debug information itself.
    c.env("CARGO_PROFILE_DEV_DEBUG", "0");
    run(&format!("build {name} {version} (once; some minutes)"), &mut c)
}

fn locked_version(package: &str) -> Done<String> {
    let lock = std::fs::read_to_string(root().join("Cargo.lock")).map_err(|e| format!("Cargo.lock: {e}"))?;
    let name = format!("name = \"{package}\"");
    lock.split("[[package]]")
        .find(|p| p.lines().any(|l| l == name))
        .and_then(|p| p.lines().find_map(|l| l.strip_prefix("version = \"")?.strip_suffix('"')))
        .map(str::to_owned)
        .ok_or_else(|| format!("Cargo.lock names no {package}"))
}

fn wasm_target() -> Done {
    let dir = output(Command::new("rustc").args(["--print", "target-libdir", "--target", WASM]));
    if dir.is_some_and(|d| Path::new(&d).is_dir()) {
        return Ok(());
    }
    run(&format!("add the {WASM} target"), Command::new("rustup").args(["target", "add", WASM]))
        .map_err(|e| format!("{e}; install rustup from rust-lang.org, or your system's std for {WASM}"))
}

/// wasm-opt from PATH, else npm's binaryen, else none, and it says so.
fn wasm_opt() -> Done<bool> {
    if output(tool("wasm-opt")?.arg("--version")).is_some() {
        return Ok(true);
    }
    let npm = if cfg!(windows) { "npm.cmd" } else { "npm" };
    let dir = cache()?;
    let got = Command::new(npm)
        .args(["install", "--silent", "--no-audit", "--no-fund", "--prefix"])
        .arg(&dir)
        .arg(format!("binaryen@{BINARYEN}"))
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    if got.is_ok_and(|s| s.success()) && output(tool("wasm-opt")?.arg("--version")).is_some() {
        return Ok(true);
    }
    println!("xtask: no wasm-opt (and no npm to fetch it): the build goes on, larger than it need be");
    Ok(false)
}

// ---- tasks ----

/// Builds the app into target/dist, served as it is.
fn bundle() -> Done {
    wasm_target()?;
    install("wasm-bindgen-cli", &locked_version("wasm-bindgen")?, &[])?;
    // Trunk only moves files about: without optimisation it builds in half the time and is as quick.
    install("trunk", TRUNK, &["--locked", "--debug", "--no-default-features"])?;
    // Trunk runs cargo offline, so that it fetches no tools of its own: packages come first.
    run("fetch the packages", cargo().args(["fetch", "--quiet", "--locked"]))?;
    let mut c = tool("trunk")?;
    c.args(["build", "--release", "--offline", "--skip-version-check"]);
    if !wasm_opt()? {
        // Trunk would fetch what it does not find.
        let html = std::fs::read_to_string(root().join("public/index.html")).map_err(|e| e.to_string())?;
        let plain = root().join("public/index-plain.html");
        std::fs::write(&plain, html.replace(" data-wasm-opt=\"z\"", " data-wasm-opt=\"0\""))
            .map_err(|e| e.to_string())?;
        let built = run("build the app", c.arg("public/index-plain.html"));
        let _ = std::fs::remove_file(&plain);
        built?;
        let dist = root().join("target/dist");
        if dist.join("index-plain.html").is_file() {
            std::fs::rename(dist.join("index-plain.html"), dist.join("index.html"))
                .map_err(|e| e.to_string())?;
        }
    } else {
        run("build the app", &mut c)?;
    }
    finish(&root().join("target/dist"))
}

/// Writes the content security policy and the service worker for what was built.
fn finish(dist: &Path) -> Done {
    run(
        "finish the bundle",
        cargo().args(["run", "--quiet", "--package", "browser-tests", "--bin", "finish", "--"]).arg(dist),
    )
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
    run("check the formatting", cargo().args(["fmt", "--all", "--check"]))?;
    wasm_target()?;
    let deny = ["--", "-D", "warnings"];
    run(
        "clippy, core",
        cargo()
            .args(["clippy", "-q", "--no-default-features", "--features", "headless", "--all-targets"])
            .args(deny),
    )?;
    run(
        "clippy, tools",
        cargo().args(["clippy", "-q", "-p", "xtask", "-p", "browser-tests", "--all-targets"]).args(deny),
    )?;
    // In release, to share macros and build scripts with the bundle.
    run(
        "clippy, page",
        cargo()
            .args(["clippy", "-q", "--release", "--target", WASM, "--bin", "shortfall", "--bin", "rooms"])
            .args(deny),
    )?;
    run(
        "clippy, engine",
        cargo()
            .args(["clippy", "-q", "--release", "--target", WASM, "--no-default-features"])
            .args(["--features", "worker", "--bin", "engine"])
            .args(deny),
    )?;
    run("core tests", cargo().args(["test", "--no-default-features", "--features", "headless"]))?;
    run("tool tests", cargo().args(["test", "-p", "xtask"]))?;
    advisories()?;
    bundle()?;
    browser()?;
    run(
        "browser tests",
        cargo().args(["test", "-p", "browser-tests", "--", "--test-threads=1"]).env("PATH", tool_path()?),
    )
}

/// Known holes in what we depend on, where the advisory database can be reached; else it says that
/// nobody looked.
fn advisories() -> Done {
    const DATABASE: &str = "https://github.com/RustSec/advisory-db";
    const AUDIT: &str = "0.22.0";
    let reached = Command::new("git")
        .args([
            "-c",
            "http.lowSpeedLimit=1000",
            "-c",
            "http.lowSpeedTime=8",
            "ls-remote",
            "--heads",
            DATABASE,
        ])
        .env("GIT_TERMINAL_PROMPT", "0")
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|s| s.success());
    if !reached {
        println!("xtask: advisories NOT checked: the database cannot be reached from here");
        return Ok(());
    }
    if !has("cargo-audit", AUDIT)? {
        install("cargo-audit", AUDIT, &["--locked"])?;
    }
    run("check the advisories", tool("cargo-audit")?.args(["audit", "--deny", "unsound", "--deny", "yanked"]))
}

/// A browser and its driver, else one line how to get them.
fn browser() -> Done {
    let driver = output(Command::new("chromedriver").arg("--version")).is_some();
    let chrome = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"]
        .iter()
        .any(|b| output(Command::new(b).arg("--version")).is_some())
        || env::var_os("CHROME").is_some();
    if driver && chrome {
        return axe();
    }
    // A Debian-like machine where we may install: do it.
    if cfg!(target_os = "linux")
        && output(Command::new("apt-get").arg("--version")).is_some()
        && output(Command::new("id").arg("-u")).as_deref() == Some("0")
    {
        let apt = |args: &[&str]| {
            let mut c = Command::new("apt-get");
            c.args(args).env("DEBIAN_FRONTEND", "noninteractive").stdout(Stdio::null());
            run(&format!("apt-get {}", args.join(" ")), &mut c)
        };
        apt(&["update", "-qq"])?;
        apt(&["install", "-y", "-qq", "chromium", "chromium-driver"])?;
        return axe();
    }
    Err("no Chromium with chromedriver: install both (Debian: apt-get install chromium chromium-driver; macOS: brew install --cask chromium chromedriver), or set CHROME to the browser's path".into())
}

/// axe-core from npm, for the accessibility test.
fn axe() -> Done {
    let dir = cache()?;
    if dir.join("node_modules/axe-core/axe.min.js").is_file() {
        return Ok(());
    }
    let npm = if cfg!(windows) { "npm.cmd" } else { "npm" };
    run(
        "fetch axe-core",
        Command::new(npm)
            .args(["install", "--silent", "--no-audit", "--no-fund", "--prefix"])
            .arg(&dir)
            .arg("axe-core@4"),
    )
    .map_err(|e| format!("{e}; the accessibility test needs axe-core: install Node.js with npm"))
}

fn bench() -> Done {
    run(
        "native benchmark",
        cargo().args(["bench", "--no-default-features", "--features", "headless", "--bench", "falls"]),
    )?;
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
    let args = ["bench", "--quiet", "--no-default-features", "--features", "headless", "--bench", "falls"];
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
        .args(["--no-default-features", "--features", "headless", "--bin", "fall", "--"])
        .args(args)
        .status();
    match status.map(|s| s.code()) {
        Ok(Some(0)) => ExitCode::SUCCESS,
        Ok(Some(c)) => ExitCode::from(u8::try_from(c).unwrap_or(1)),
        _ => ExitCode::FAILURE,
    }
}
