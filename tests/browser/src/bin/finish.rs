//! Finishes a bundle: content security policy with the hashes of its inline scripts, a service
//! worker that keeps the whole of it or the old one, and brotli copies.

use base64::Engine;
use sha2::{Digest, Sha256};
use std::fs;
use std::io::Write;
use std::path::Path;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let dist = std::env::args().nth(1).ok_or("usage: finish DIST")?;
    let dist = Path::new(&dist);
    let index = dist.join("index.html");
    let html = fs::read_to_string(&index)?;

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
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'{hashes}; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'none'"
    );
    let meta = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
    if !html.contains("Content-Security-Policy") {
        fs::write(
            &index,
            html.replacen("<meta charset=\"utf-8\">", &format!("<meta charset=\"utf-8\">\n  {meta}"), 1),
        )?;
    }

    let mut names: Vec<String> = Vec::new();
    for entry in fs::read_dir(dist)? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if name != "sw.js" && !name.ends_with(".br") {
            names.push(name);
        }
    }
    names.sort();
    let mut all = Sha256::new();
    for n in &names {
        all.update(n.as_bytes());
        all.update(fs::read(dist.join(n))?);
    }
    let version: String = all.finalize().iter().take(8).map(|b| format!("{b:02x}")).collect();
    let list: Vec<String> = names.iter().map(|n| format!("\"./{n}\"")).collect();
    let worker = format!(
        "// Keeps this version whole, or the old one. Nothing is fetched from anywhere else.\n\
         const CACHE = \"shortfall-{version}\";\n\
         const FILES = [\"./\", {}];\n\
         self.addEventListener(\"install\", (e) => e.waitUntil(caches.open(CACHE).then((c) => c.addAll(FILES))));\n\
         self.addEventListener(\"activate\", (e) => e.waitUntil(caches.keys().then((keys) => Promise.all(\n\
         \x20 keys.filter((k) => k.startsWith(\"shortfall-\") && k !== CACHE).map((k) => caches.delete(k))))));\n\
         self.addEventListener(\"fetch\", (e) => e.respondWith(\n\
         \x20 caches.open(CACHE).then((c) => c.match(e.request, {{ ignoreSearch: true }})).then((r) => r || fetch(e.request))));\n",
        list.join(", ")
    );
    fs::write(dist.join("sw.js"), worker)?;

    // The page comes first; the engine is fetched behind it.
    let (mut page, mut engine, mut rooms) = (0, 0, 0);
    for n in names.iter().chain(std::iter::once(&"sw.js".to_owned())) {
        let body = fs::read(dist.join(n))?;
        let mut packed = Vec::new();
        brotli::CompressorWriter::new(&mut packed, 1 << 16, 11, 22).write_all(&body)?;
        if n.starts_with("engine") {
            engine += packed.len();
        } else if n.starts_with("rooms") {
            rooms += packed.len();
        } else if n != "sw.js" {
            page += packed.len();
        }
        fs::write(dist.join(format!("{n}.br")), packed)?;
    }
    println!(
        "first load: {:.0} KiB in brotli; the engine, fetched behind it: {:.0} KiB; the rooms, on first going there: {:.0} KiB",
        page as f64 / 1024.0,
        engine as f64 / 1024.0,
        rooms as f64 / 1024.0
    );
    Ok(())
}
