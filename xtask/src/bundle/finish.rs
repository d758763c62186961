//! Finishes a bundle: a hash in every file name, the start script inlined, a content security policy
//! with the hashes of inline scripts, a service worker that keeps the whole of it or the old one, and
//! brotli copies.

use base64::Engine;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::Path;

use super::Done;

/// Files that nothing else names, then files whose text names those; the page comes last.
const LEAVES: [&str; 13] = [
    "engine.js",
    "engine_bg.wasm",
    "notices.txt",
    "rooms.css",
    "rooms.js",
    "rooms_bg.wasm",
    "shortfall.js",
    "shortfall_bg.wasm",
    "style.css",
    "icon.svg",
    "icon-192.png",
    "icon-512.png",
    "icon-maskable.png",
];
const NAMING: [&str; 3] = ["engine-start.js", "rooms-start.js", "manifest.webmanifest"];
/// Files for the host, not for the page.
const FOR_HOSTS: [&str; 3] = ["_headers", "headers.conf", "sw.js"];
/// Most that each download may weigh in brotli, KiB: the page (what slow 4G brings in two seconds), the
/// engine fetched behind it, the rooms when somebody first goes there, the notices that only a reader of
/// them waits for.
const BUDGETS_KIB: [(&str, usize); 4] = [("page", 400), ("engine", 600), ("rooms", 860), ("notices", 60)];

/// Which download a file belongs to; what a phone fetches for its home screen counts for none.
fn download_of(name: &str) -> Option<&'static str> {
    match name {
        n if n.starts_with("engine") => Some("engine"),
        n if n.starts_with("rooms") => Some("rooms"),
        n if n.starts_with("notices") => Some("notices"),
        // What only a home screen fetches; the page's own icon is the drawn one.
        n if n.ends_with(".png") || n == "sw.js" => None,
        _ => Some("page"),
    }
}

fn hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}

/// Puts a hash into a file's name and keeps both names.
fn hash_name(dist: &Path, name: &str, names: &mut BTreeMap<String, String>) -> Done {
    let body = fs::read(dist.join(name))?;
    let (stem, end) = name.rsplit_once('.').ok_or("a name without an ending")?;
    let hashed = format!("{stem}-{}.{end}", &hex(&body)[..16]);
    fs::rename(dist.join(name), dist.join(&hashed))?;
    names.insert(name.to_owned(), hashed);
    Ok(())
}

/// Writes hashed names for plain ones, longest first so that none is part of another.
fn rename_in(text: &str, names: &BTreeMap<String, String>) -> String {
    let mut all: Vec<_> = names.iter().collect();
    all.sort_by_key(|(plain, _)| std::cmp::Reverse(plain.len()));
    all.iter().fold(text.to_owned(), |t, (plain, hashed)| t.replace(plain.as_str(), hashed))
}

/// Finishes what lies in `dist`; `worker` is the service worker's text.
///
/// # Errors
/// When a file is missing, or a download weighs more than it may.
pub fn finish(dist: &Path, worker: &str) -> Done {
    let mut names = BTreeMap::new();
    for name in LEAVES {
        hash_name(dist, name, &mut names)?;
    }
    for name in NAMING {
        let text = fs::read_to_string(dist.join(name))?;
        fs::write(dist.join(name), rename_in(&text, &names))?;
        hash_name(dist, name, &mut names)?;
    }

    let index = dist.join("index.html");
    let boot = fs::read_to_string(dist.join("boot.js"))?;
    fs::remove_file(dist.join("boot.js"))?;
    let html = fs::read_to_string(&index)?;
    let html = rename_in(&html, &names);
    let tag = "<script src=\"boot.js\"></script>";
    if !html.contains(tag) {
        return Err("the page has no start script".into());
    }
    let html = html.replace(tag, &format!("<script>{boot}</script>"));

    let mut files: Vec<String> = Vec::new();
    for entry in fs::read_dir(dist)? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if name != "index.html" && !FOR_HOSTS.contains(&name.as_str()) && !name.ends_with(".br") {
            files.push(name);
        }
    }
    files.sort();
    if let Some(plain) = files.iter().find(|n| !names.values().any(|hashed| hashed == *n)) {
        return Err(format!("{plain} has no hash in its name").into());
    }
    // The version of the whole, from everything but the version itself.
    let mut all = html.clone();
    all.extend(files.iter().map(|n| fs::read(dist.join(n)).map(|b| hex(&b)).unwrap_or_default()));
    let version = hex(all.as_bytes())[..16].to_owned();

    let mut hashes = String::new();
    for part in html.split("<script").skip(1) {
        let Some((attributes, rest)) = part.split_once('>') else { continue };
        if attributes.contains("src=") {
            continue;
        }
        let body = rest.split("</script>").next().unwrap_or_default();
        let hash = base64::engine::general_purpose::STANDARD.encode(Sha256::digest(body.as_bytes()));
        hashes.push_str(&format!(" 'sha256-{hash}'"));
    }
    let policy = format!(
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'{hashes}; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; form-action 'none'"
    );
    let parts = serde_json::to_string(&names)?.replace('"', "&quot;");
    let head = format!(
        "<meta charset=\"utf-8\">\n  <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n  <meta name=\"version\" content=\"{version}\">\n  <meta name=\"parts\" content=\"{parts}\">"
    );
    fs::write(&index, html.replacen("<meta charset=\"utf-8\">", &head, 1))?;

    let list: BTreeMap<String, String> = files
        .iter()
        .map(|n| Ok((format!("./{n}"), hex(&fs::read(dist.join(n))?))))
        .collect::<Result<_, std::io::Error>>()?;
    let worker =
        worker.replace("VERSION", &version).replace("{ /* FILES */ }", &serde_json::to_string_pretty(&list)?);
    fs::write(dist.join("sw.js"), worker)?;

    let mut weights: BTreeMap<&str, usize> = BTreeMap::new();
    for n in files.iter().map(String::as_str).chain(["index.html", "sw.js"]) {
        let body = fs::read(dist.join(n))?;
        let mut packed = Vec::new();
        brotli::CompressorWriter::new(&mut packed, 1 << 16, 11, 22).write_all(&body)?;
        if let Some(download) = download_of(n) {
            *weights.entry(download).or_default() += packed.len();
        }
        fs::write(dist.join(format!("{n}.br")), packed)?;
    }
    let mut over = Vec::new();
    for (download, most_kib) in BUDGETS_KIB {
        let weighs = weights.get(download).copied().unwrap_or(0);
        println!("{download}: {:.0} KiB in brotli, of {most_kib} at most", weighs as f64 / 1024.0);
        if weighs > most_kib * 1024 {
            over.push(download);
        }
    }
    if over.is_empty() { Ok(()) } else { Err(format!("too heavy: {}", over.join(", ")).into()) }
}
