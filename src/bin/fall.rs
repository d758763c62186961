//! Headless: reads a scenario, prints the outcome as one JSON object.
//!
//! A bad file or argument: exit 2 and one line. Nobody listening or a full disc: exit 1, no noise.

use shortfall::grade::report::outcome_json;
use shortfall::scenario::Scenario;
use shortfall::scenario::file::{LARGEST_FILE_BYTES, read_scenario};
use shortfall::studies::published::Drop;
use std::ffi::OsString;
use std::io::{Read, Write};
use std::process::ExitCode;

const HELP: &str = "\
fall FILE        the fall of the set-up in FILE, as one JSON object
fall -           the same, from standard input
fall --drop FILE a rigid mass on a line: mass_kg, free_fall_m, rope_m, rope_modulus_n and, if any, link_m,
                 absorber, max_extension_m, grab
fall --example   a set-up to begin from
fall --schema    JSON Schema of a set-up
fall --help      this

Numbers are SI. Exit 0: computed; 2: the file or an argument is refused, in one line; 1: it could not
be written.";

fn main() -> ExitCode {
    let args: Vec<OsString> = std::env::args_os().skip(1).collect();
    match run(&args) {
        Ok(text) => {
            let mut out = std::io::stdout().lock();
            // A reader that left early (`fall … | head`) is no error worth a word.
            match writeln!(out, "{text}").and_then(|()| out.flush()) {
                Ok(()) => ExitCode::SUCCESS,
                Err(e) if e.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::FAILURE,
                Err(e) => {
                    let _ = writeln!(std::io::stderr(), "not written: {e}");
                    ExitCode::FAILURE
                }
            }
        }
        Err(line) => {
            let _ = writeln!(std::io::stderr(), "{line}");
            ExitCode::from(2)
        }
    }
}

fn run(args: &[OsString]) -> Result<String, String> {
    if let [first, file] = args
        && first == "--drop"
    {
        let text = read(file)?;
        let drop: Drop = serde_json::from_str(&text).map_err(|e| e.to_string())?;
        drop.check().map_err(|e| e.0.to_owned())?;
        return serde_json::to_string_pretty(&drop.run()).map_err(|e| e.to_string());
    }
    if args.is_empty() {
        return Ok(HELP.to_owned());
    }
    let [arg] = args else {
        return Err(
            "usage: fall FILE | fall - | fall --drop FILE | fall --example | fall --schema | fall --help"
                .to_owned(),
        );
    };
    let show = |v: &serde_json::Value| serde_json::to_string_pretty(v).map_err(|e| e.to_string());
    match arg.to_str() {
        Some("--help" | "-h") => Ok(HELP.to_owned()),
        #[cfg(feature = "headless")]
        Some("--schema") => {
            show(&serde_json::to_value(schemars::schema_for!(Scenario)).map_err(|e| e.to_string())?)
        }
        #[cfg(not(feature = "headless"))]
        Some("--schema") => {
            Err("the schema is left out of this build: build with --features headless".to_owned())
        }
        Some("--example") => show(&serde_json::to_value(Scenario::default()).map_err(|e| e.to_string())?),
        Some(other) if other.starts_with("--") => Err(format!("no such argument: {other} (try --help)")),
        _ => {
            let text = read(arg)?;
            let s = read_scenario(&text).map_err(|e| e.to_string())?;
            let out = outcome_json(&s);
            if let Some(p) = out["problems"].get(0) {
                return Err(format!(
                    "{}: {}",
                    p["field"].as_str().unwrap_or("?"),
                    p["code"].as_str().unwrap_or("?")
                ));
            }
            show(&out)
        }
    }
}

/// The text of a file, or of standard input for `-`.
fn read(arg: &OsString) -> Result<String, String> {
    let mut bytes = Vec::new();
    let most = LARGEST_FILE_BYTES as u64 + 1;
    let read = if arg == "-" {
        std::io::stdin().take(most).read_to_end(&mut bytes)
    } else {
        std::fs::File::open(arg).and_then(|f| f.take(most).read_to_end(&mut bytes))
    };
    let name = arg.to_string_lossy();
    read.map_err(|e| format!("{name}: {e}"))?;
    String::from_utf8(bytes).map_err(|_| format!("{name}: not UTF-8 text"))
}
