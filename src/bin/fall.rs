//! Headless: reads a scenario, prints the outcome as one JSON object.
//! `fall FILE`, `fall -`, `fall --schema`, `fall --example`. A bad file: exit 2 and one line.

use shortfall::report::{LARGEST_FILE_BYTES, outcome_json, read_scenario};
use shortfall::scenario::Scenario;
use std::io::Read;
use std::process::ExitCode;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    match run(&args) {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(line) => {
            eprintln!("{line}");
            ExitCode::from(2)
        }
    }
}

fn run(args: &[String]) -> Result<String, String> {
    let [arg] = args else {
        return Err("usage: fall FILE | fall - | fall --schema | fall --example".to_owned());
    };
    let show = |v: &serde_json::Value| serde_json::to_string_pretty(v).map_err(|e| e.to_string());
    match arg.as_str() {
        "--schema" => {
            show(&serde_json::to_value(schemars::schema_for!(Scenario)).map_err(|e| e.to_string())?)
        }
        "--example" => show(&serde_json::to_value(Scenario::default()).map_err(|e| e.to_string())?),
        path => {
            let mut text = String::new();
            let most = LARGEST_FILE_BYTES as u64 + 1;
            let read = if path == "-" {
                std::io::stdin().take(most).read_to_string(&mut text)
            } else {
                std::fs::File::open(path).and_then(|f| f.take(most).read_to_string(&mut text))
            };
            read.map_err(|e| format!("{path}: {e}"))?;
            let s = read_scenario(&text)?;
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
