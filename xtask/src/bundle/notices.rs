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
        let mut files: Vec<_> = fs::read_dir(folder)?
            .flatten()
            .filter(|e| {
                let n = e.file_name().to_string_lossy().to_uppercase();
                e.path().is_file()
                    && ["LICENSE", "LICENCE", "COPYING", "NOTICE"].iter().any(|x| n.starts_with(x))
            })
            .collect();
        files.sort_by_key(fs::DirEntry::file_name);
        // Of two to choose from, the shorter one.
        let chosen = files.iter().filter_map(|f| fs::read_to_string(f.path()).ok()).min_by_key(String::len);
        let text = chosen.unwrap_or_else(|| format!("Licence: {licence}\n"));
        texts.entry(text.trim().replace("\r\n", "\n")).or_default().insert(format!("{name} ({licence})"));
    }
    let mut out = String::from("Shortfall is built with the work of others, under these licences.\n");
    for (text, crates) in texts {
        let names: Vec<String> = crates.into_iter().collect();
        out.push_str(&format!("\n{}\n\n{}\n\n{text}\n", "=".repeat(72), names.join("\n")));
    }
    Ok(out)
}

/// What cargo calls the registry.
const CRATES_IO: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// The licences that deny.toml allows.
fn allowed(deny: &str) -> Vec<String> {
    let list = deny.split("[licenses]").nth(1).and_then(|t| t.split('[').nth(1)).unwrap_or_default();
    let list = list.split(']').next().unwrap_or_default();
    list.split('"').skip(1).step_by(2).map(str::to_owned).collect()
}

/// Whether one of a crate's licences to choose from, with all that belong to it, is allowed.
fn is_allowed(licence: &str, allowed: &[String]) -> bool {
    let plain = licence.replace(['(', ')'], "").replace('/', " OR ");
    plain.split(" OR ").any(|choice| {
        let mut parts = choice.split(" AND ").map(str::trim).peekable();
        parts.peek().is_some_and(|p| !p.is_empty()) && parts.all(|p| allowed.iter().any(|a| a == p))
    })
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
            ("GPL-3.0", false),
            ("MIT AND GPL-3.0", false),
            ("", false),
        ] {
            assert_eq!(is_allowed(licence, &list), want, "{licence}");
        }
    }
}
