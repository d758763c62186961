//! The house rules that a compiler does not check: arrows between modules, unit suffixes, paths named in the docs, places in both languages, no 'safe' as a verdict.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::texts::places_in;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn sources(dir: &str) -> Vec<(String, String)> {
    fn walk(dir: &Path, out: &mut Vec<PathBuf>) {
        for e in fs::read_dir(dir).expect("reads").flatten() {
            if e.path().is_dir() {
                walk(&e.path(), out);
            } else if e.path().extension().is_some_and(|x| x == "rs") {
                out.push(e.path());
            }
        }
    }
    let mut files = Vec::new();
    walk(&root().join(dir), &mut files);
    files
        .into_iter()
        .map(|f| {
            let name = f.strip_prefix(root()).expect("inside").to_string_lossy().replace('\\', "/");
            (name, fs::read_to_string(&f).expect("reads"))
        })
        .collect()
}

/// Code without its test module and comments.
fn code(text: &str) -> String {
    let text = text.split("#[cfg(test)]").next().unwrap_or_default();
    text.lines().filter(|l| !l.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// The core's modules in the order of the arrows, and what each may use besides those it stands under.
const MODULES: [&str; 14] = [
    "units", "draw", "scenario", "geometry", "strength", "physics", "rules", "grade", "studies", "practice",
    "quiz", "scene", "texts", "worker",
];

/// What starts it all and what shows it may use anything.
const ABOVE: [&str; 4] = ["ui", "bin", "lib", "main"];

/// Where a file stands: its first folder under `src`, or its own name.
fn module_of(name: &str) -> &str {
    name.trim_start_matches("src/").split(['/', '.']).next().unwrap_or_default()
}

/// Modules named after `crate::` in a file's code.
fn used_by(text: &str) -> Vec<String> {
    let names = code(text);
    let parts = names.split("crate::").skip(1);
    parts.map(|p| p.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect()).collect()
}

/// One order for all: whoever uses only what stands before has no circle. A module in no list fails.
#[test]
fn arrows_between_modules_go_one_way() {
    let place = |m: &str| MODULES.iter().position(|x| *x == m);
    for (name, text) in sources("src") {
        let module = module_of(&name);
        if ABOVE.contains(&module) {
            continue;
        }
        let own = place(module).unwrap_or_else(|| panic!("{module} is in no list"));
        for used in used_by(&text) {
            let at = place(&used).unwrap_or_else(|| panic!("{name} uses {used}, which is in no list"));
            assert!(at <= own, "{name} uses {used}, which stands above it");
        }
    }
}

/// Both downloads are built on `shared`; neither sees the other, and `shared` sees neither.
#[test]
fn rooms_never_see_the_bench() {
    for (name, text) in sources("src/ui") {
        let text = code(&text);
        let sees = |other: &str| {
            [
                format!("ui::{other}"),
                format!("ui::{{{other}"),
                format!("super::{other}::"),
                format!("super::super::{other}"),
                format!("self::{other}::"),
            ]
            .iter()
            .any(|way| text.contains(way))
        };
        let from = name.trim_start_matches("src/ui/").split('/').next().unwrap_or_default().to_owned();
        let barred: &[&str] = match from.as_str() {
            "shared" => &["bench", "rooms"],
            "bench" => &["rooms"],
            "rooms" => &["bench"],
            "mod.rs" => &[],
            other => panic!("{other} is in no list"),
        };
        for other in barred {
            assert!(!sees(other), "{name} sees {other}");
        }
    }
}

#[test]
fn only_ui_names_leptos() {
    for (name, text) in sources("src") {
        let text = code(&text);
        let ui = name.starts_with("src/ui/")
            || name == "src/main.rs"
            || ["src/bin/engine.rs", "src/bin/rooms.rs"].contains(&name.as_str());
        assert!(ui || !(text.contains("leptos") || text.contains("web_sys")), "{name} names the screen");
    }
}

#[test]
fn the_page_never_calls_the_engine_itself() {
    // It would pull the rigid bodies into the first load.
    for (name, text) in sources("src/ui") {
        let text = code(&text);
        for bad in [
            "simulate",
            "physics::settle",
            "settled_trace",
            "physics::room_m",
            "physics::Run",
            "Report::run",
            "outcome_json",
            "effects(&",
            "along_wall::swing",
            "swings(&",
            "spread::falls",
            "go_on",
            "run_room_m",
            "reach_of_m",
            "published::Drop",
            "quiz::form",
            "day::judge",
            "day::risk",
            "::crew(",
            "worker::answers",
            "worker::reply",
        ] {
            assert!(!text.contains(bad), "{name} calls {bad}");
        }
    }
}

#[test]
fn every_f64_field_and_constant_ends_in_its_unit() {
    let units = [
        "_m", "_s", "_kg", "_n", "_j", "_m_s", "_m_s2", "_n_per_m", "_m_per_n", "_rad", "_kg_m2", "_per_s",
        "_deg", "_px", "_sign",
    ];
    // Plain numbers: shares, ratios, coefficients; and geometry's own x and y.
    let plain = [
        "_share",
        "_cos",
        "cos",
        "sin",
        "friction",
        "_residual",
        "_ratio",
        "_limit",
        "low",
        "middle",
        "high",
        "x",
        "y",
        "mass",
        "length",
        "radius",
        "min",
        "max",
        "step",
        "value",
        "si",
    ];
    for (name, text) in sources("src") {
        if name.starts_with("src/ui/") || name == "src/units.rs" || name.starts_with("src/texts/") {
            continue;
        }
        for line in code(&text).lines() {
            let l = line.trim().trim_start_matches("pub ").trim_start_matches("const ");
            let Some((field, kind)) = l.split_once(": ") else { continue };
            if !kind.starts_with("f64") || field.contains([' ', '(', '|', '.']) || l.starts_with("let") {
                continue;
            }
            let f = field.to_lowercase();
            let ok = units.iter().any(|u| f.ends_with(u)) || plain.iter().any(|p| f.ends_with(p));
            assert!(ok, "{name}: {field} says no unit");
        }
    }
}

#[test]
fn docs_name_paths_that_exist() {
    for doc in ["README.md", "DEVELOPERS.md"] {
        let text = fs::read_to_string(root().join(doc)).expect("reads");
        for word in text.split(['`', '(', ')']) {
            let looks = ["src/", "tests/", "public/", "xtask/", ".ci/"].iter().any(|p| word.starts_with(p));
            if looks && !word.contains([' ', '*', '{', '<']) {
                assert!(root().join(word.trim_end_matches('/')).exists(), "{doc} names {word}");
            }
        }
    }
}

/// Every text of the tables with its name, English and French, as it stands in their sources.
fn all_texts() -> Vec<(String, String, String)> {
    let literals = |line: &str| -> Vec<String> {
        let (mut out, mut now, mut escaped) = (Vec::new(), None::<String>, false);
        for c in line.chars() {
            match (&mut now, c) {
                (Some(text), c) if escaped => {
                    text.push(c);
                    escaped = false;
                }
                (Some(_), '\\') => escaped = true,
                (Some(text), '"') => {
                    out.push(core::mem::take(text));
                    now = None;
                }
                (Some(text), c) => text.push(c),
                (None, '"') => now = Some(String::new()),
                (None, _) => {}
            }
        }
        out
    };
    let mut all = Vec::new();
    for table in ["page", "bench", "rooms", "codes", "findings"] {
        let name = format!("src/texts/{table}.rs");
        let text = fs::read_to_string(root().join(&name)).expect("reads");
        let mut heading = String::new();
        for line in text.lines().filter(|l| !l.trim_start().starts_with("//")) {
            let first = line.trim().split([',', ' ']).next().unwrap_or_default().to_owned();
            if let [en, fr] = literals(line).as_slice()
                && line.trim_end().ends_with(';')
            {
                all.push((format!("{name}: {heading} {first}"), en.clone(), fr.clone()));
            } else if line.trim_end().ends_with('{') {
                heading = first;
            }
        }
    }
    // Thirteen hundred: fewer would mean that the reading above no longer fits the tables.
    assert!(all.len() > 1_300, "{}", all.len());
    all
}

#[test]
fn both_languages_name_the_same_places() {
    for (k, en, fr) in all_texts() {
        assert!(!en.is_empty() && !fr.is_empty(), "{k}");
        assert_eq!(places_in(&en), places_in(&fr), "{k}");
    }
}

#[test]
fn french_keeps_its_marks_off_line_starts() {
    for (k, _, fr) in all_texts() {
        for bad in [" :", " ;", " ?", " !", "« ", " »"] {
            assert!(!fr.contains(bad), "{k}: a plain space at '{bad}'");
        }
    }
}

#[test]
fn no_verdict_says_safe() {
    for (k, en, fr) in all_texts() {
        for (text, words) in [(en, ["safe", "unsafe"]), (fr, ["sécuritaire", "sûr"])] {
            for w in text.to_lowercase().split(|c: char| !c.is_alphanumeric()) {
                assert!(!words.contains(&w), "{k}: {w}");
            }
        }
    }
}
