//! Licence notices of everything that is inside the bundle: each text once, with the crates under it.

use super::Done;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::process::Command;

/// The notices as one text.
///
/// # Errors
/// When cargo cannot tell the crates, or one of them names no licence.
pub fn all(root: &Path) -> Done<String> {
    let allowed = allowed(&fs::read_to_string(root.join("deny.toml"))?);
    let mut texts: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for package in inside(root)? {
        let name = format!("{} {}", str_of(&package, "name"), str_of(&package, "version"));
        let licence = str_of(&package, "license").to_owned();
        if !is_allowed(&licence, &allowed) {
            return Err(format!("{name}: '{licence}' is no licence that deny.toml allows").into());
        }
        if str_of(&package, "source") != CRATES_IO {
            return Err(format!("{name} does not come from crates.io").into());
        }
        let folder = Path::new(str_of(&package, "manifest_path")).parent().unwrap_or(root).to_owned();
        let text = notice(&folder, &licence).unwrap_or_else(|| standard(root, &package, &licence));
        texts.entry(text.trim().replace("\r\n", "\n")).or_default().insert(format!("{name} ({licence})"));
    }
    let mut out = String::from("Shortfall is built with the work of others, under these licences.\n");
    for (text, crates) in texts {
        let names: Vec<String> = crates.into_iter().collect();
        out.push_str(&format!("\n{}\n\n{}\n\n{text}\n", "=".repeat(72), names.join("\n")));
    }
    Ok(out)
}

/// What a crate itself says: of licences to choose from the shortest text, of several that all hold every one.
fn notice(folder: &Path, licence: &str) -> Option<String> {
    let mut files: Vec<_> = fs::read_dir(folder)
        .ok()?
        .flatten()
        .filter(|e| {
            let n = e.file_name().to_string_lossy().to_uppercase();
            e.path().is_file()
                && ["LICENSE", "LICENCE", "UNLICENSE", "NOTICE"].iter().any(|x| n.starts_with(x))
        })
        .collect();
    files.sort_by_key(fs::DirEntry::file_name);
    let texts: Vec<String> = files.iter().filter_map(|f| fs::read_to_string(f.path()).ok()).collect();
    if licence.contains(" AND ") && !texts.is_empty() {
        return Some(texts.join("\n\n"));
    }
    texts.into_iter().min_by_key(String::len)
}

/// The usual text of a licence that a crate names and does not bring along.
fn standard(root: &Path, package: &Value, licence: &str) -> String {
    let file = if licence.contains("MIT") { "LICENSE-MIT" } else { "LICENSE-APACHE" };
    let text = fs::read_to_string(root.join(file)).unwrap_or_default();
    let authors: Vec<&str> =
        package["authors"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    let own = text.lines().find(|l| l.starts_with("Copyright (c)")).unwrap_or_default();
    let whose = format!(
        "Copyright (c) {}",
        if authors.is_empty() { "its authors".into() } else { authors.join(", ") }
    );
    if own.is_empty() { text } else { text.replace(own, &whose) }
}

/// What cargo calls the registry.
const CRATES_IO: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// The licences that deny.toml allows.
fn allowed(deny: &str) -> Vec<String> {
    let list = deny.split("[licenses]").nth(1).and_then(|t| t.split('[').nth(1)).unwrap_or_default();
    let list = list.split(']').next().unwrap_or_default();
    list.split('"').skip(1).step_by(2).map(str::to_owned).collect()
}

/// Whether a licence expression is met by allowed ones: of a choice one, of a sum all.
fn is_allowed(licence: &str, allowed: &[String]) -> bool {
    let spaced = licence.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut at = 0;
    let met = choice(&words, &mut at, allowed);
    met && at == words.len()
}

fn choice(words: &[&str], at: &mut usize, allowed: &[String]) -> bool {
    let mut met = sum(words, at, allowed);
    while words.get(*at) == Some(&"OR") {
        *at += 1;
        met |= sum(words, at, allowed);
    }
    met
}

fn sum(words: &[&str], at: &mut usize, allowed: &[String]) -> bool {
    let mut met = one(words, at, allowed);
    while words.get(*at) == Some(&"AND") {
        *at += 1;
        met &= one(words, at, allowed);
    }
    met
}

fn one(words: &[&str], at: &mut usize, allowed: &[String]) -> bool {
    if words.get(*at) == Some(&"(") {
        *at += 1;
        let met = choice(words, at, allowed);
        *at += 1;
        return met;
    }
    // A name, and what is excepted from it.
    let from = *at;
    while words.get(*at).is_some_and(|w| !["OR", "AND", "(", ")"].contains(w)) {
        *at += 1;
    }
    allowed.iter().any(|a| *a == words[from..*at].join(" "))
}

fn str_of<'a>(v: &'a Value, key: &str) -> &'a str {
    v[key].as_str().unwrap_or_default()
}

/// Every crate from the registry that the bundle's modules are built of.
fn inside(root: &Path) -> Done<Vec<Value>> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let out = Command::new(cargo)
        .current_dir(root)
        .args(["metadata", "--format-version", "1", "--locked", "--features", "ui,worker"])
        .args(["--filter-platform", "wasm32-unknown-unknown"])
        .output()?;
    if !out.status.success() {
        return Err(String::from_utf8_lossy(&out.stderr).into_owned().into());
    }
    let all: Value = serde_json::from_slice(&out.stdout)?;
    let nodes = all["resolve"]["nodes"].as_array().cloned().unwrap_or_default();
    let node = |id: &str| nodes.iter().find(|n| str_of(n, "id") == id);
    let own = all["packages"].as_array().and_then(|p| p.iter().find(|p| str_of(p, "name") == "shortfall"));
    let mut open = vec![own.map(|p| str_of(p, "id").to_owned()).ok_or("no shortfall among the packages")?];
    let mut seen = BTreeSet::new();
    while let Some(id) = open.pop() {
        if !seen.insert(id.clone()) {
            continue;
        }
        for d in node(&id).and_then(|n| n["deps"].as_array()).into_iter().flatten() {
            // What only builds or tests is not inside.
            let kinds = d["dep_kinds"].as_array().cloned().unwrap_or_default();
            if kinds.iter().any(|k| k["kind"].is_null()) {
                open.push(str_of(d, "pkg").to_owned());
            }
        }
    }
    let packages = all["packages"].as_array().cloned().unwrap_or_default();
    Ok(packages.into_iter().filter(|p| !p["source"].is_null() && seen.contains(str_of(p, "id"))).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_choice_is_allowed_where_one_of_it_is_and_a_sum_where_all_of_it_is() {
        let list = allowed("[licenses]\nallow = [\n  \"MIT\",\n  \"Unicode-3.0\",\n]\n[sources]\n");
        assert_eq!(list, ["MIT", "Unicode-3.0"]);
        for (licence, want) in [
            ("MIT OR Apache-2.0", true),
            ("Apache-2.0/MIT", true),
            ("(MIT OR Apache-2.0) AND Unicode-3.0", true),
            ("(MIT OR Apache-2.0) AND GPL-3.0", false),
            ("GPL-3.0", false),
            ("MIT AND GPL-3.0", false),
            ("", false),
        ] {
            assert_eq!(is_allowed(licence, &list), want, "{licence}");
        }
    }
}
