//! What the tasks and the browser tests share: a small static server on a loopback address.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::thread;

/// Starts serving `root` on a free loopback port (or `port`, if not 0) from a background thread.
///
/// # Errors
/// When no port can be bound.
pub fn serve(root: &Path, port: u16) -> std::io::Result<SocketAddr> {
    serve_cached(root, port, "no-cache")
}

/// As [`serve`], telling browsers how long they may keep a file (`Cache-Control`).
///
/// # Errors
/// When no port can be bound.
pub fn serve_cached(root: &Path, port: u16, keep: &'static str) -> std::io::Result<SocketAddr> {
    let listener = TcpListener::bind(("127.0.0.1", port))?;
    let address = listener.local_addr()?;
    let root = root.to_path_buf();
    thread::spawn(move || {
        for stream in listener.incoming().flatten() {
            let root = root.clone();
            thread::spawn(move || {
                let _ = answer(stream, &root, keep);
            });
        }
    });
    Ok(address)
}

fn answer(mut stream: TcpStream, root: &Path, keep: &str) -> std::io::Result<()> {
    let mut head = Vec::new();
    let mut buf = [0u8; 2048];
    while !head.windows(4).any(|w| w == b"\r\n\r\n") && head.len() < 16_384 {
        let n = stream.read(&mut buf)?;
        if n == 0 {
            return Ok(());
        }
        head.extend_from_slice(&buf[..n]);
    }
    let text = String::from_utf8_lossy(&head);
    let target = text.split_whitespace().nth(1).unwrap_or("/");
    let path = target.split(['?', '#']).next().unwrap_or("/").trim_start_matches('/');
    let path = if path.is_empty() { "index.html" } else { path };
    let Some(file) = inside(root, path) else {
        return stream.write_all(b"HTTP/1.1 404 Not Found\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
    };
    // A brotli copy beside the file, where the bundle made one.
    let accepts = text.lines().any(|l| {
        let l = l.to_ascii_lowercase();
        l.starts_with("accept-encoding:") && l.contains("br")
    });
    let packed = PathBuf::from(format!("{}.br", file.display()));
    let (body, encoding) = if accepts && packed.is_file() {
        (std::fs::read(&packed)?, "Content-Encoding: br\r\n")
    } else {
        (std::fs::read(&file)?, "")
    };
    let kind = match file.extension().and_then(|e| e.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    };
    let more = headers_for_all(root);
    write!(
        stream,
        "HTTP/1.1 200 OK\r\nContent-Type: {kind}\r\n{encoding}{more}Cache-Control: {keep}\r\nContent-Length: {}\r\nConnection: close\r\n\r\n",
        body.len()
    )?;
    stream.write_all(&body)
}

/// What the bundle's `_headers` asks hosts to send with every file.
fn headers_for_all(root: &Path) -> String {
    let text = std::fs::read_to_string(root.join("_headers")).unwrap_or_default();
    let lines = text.lines().skip_while(|l| *l != "/*").skip(1).take_while(|l| l.starts_with("  "));
    lines.map(|l| format!("{}\r\n", l.trim())).collect()
}

/// The file at `path` under `root`; `None` when it is missing or lies outside.
fn inside(root: &Path, path: &str) -> Option<PathBuf> {
    let root = root.canonicalize().ok()?;
    let file = root.join(path).canonicalize().ok()?;
    (file.starts_with(&root) && file.is_file()).then_some(file)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn get(address: SocketAddr, path: &str) -> String {
        let mut s = TcpStream::connect(address).expect("connects");
        write!(s, "GET {path} HTTP/1.1\r\nHost: x\r\n\r\n").expect("writes");
        let mut out = Vec::new();
        s.read_to_end(&mut out).expect("reads");
        String::from_utf8_lossy(&out).into_owned()
    }

    #[test]
    fn serves_what_is_inside_and_nothing_else() {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
        let address = serve(&root, 0).expect("binds");
        assert!(get(address, "/lib.rs").starts_with("HTTP/1.1 200"));
        assert!(get(address, "/../Cargo.toml").starts_with("HTTP/1.1 404"));
        assert!(get(address, "/no.rs").starts_with("HTTP/1.1 404"));
    }
}
