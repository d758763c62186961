//! Makes the bundle of what cargo built: JavaScript around each module (wasm-bindgen), smaller modules
//! (wasm-opt, where there is one), the page's own files, then [`finish`].
//!
//! Arguments: the folder of the built modules (with a folder for each profile), the project's folder, the bundle's folder.

mod finish;
mod notices;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;

type Done<T = ()> = Result<T, Box<dyn std::error::Error + Send + Sync>>;

/// A module.
struct Module {
    name: &'static str,
    /// The profile that it is built in.
    profile: &'static str,
    /// Loaded as an ES module (the page itself), not as a plain script.
    is_page: bool,
    /// What wasm-opt is to do: for size, or for speed.
    passes: &'static [&'static str],
}

/// For size; control flow is laid out anew between two rounds, which takes off 2 KiB more.
const SMALL: &[&str] = &["-Oz", "--flatten", "--rereloop", "-Oz"];

const MODULES: [Module; 3] = [
    Module { name: "shortfall", profile: "release", is_page: true, passes: SMALL },
    Module { name: "rooms", profile: "release", is_page: false, passes: SMALL },
    Module { name: "engine", profile: "engine", is_page: false, passes: &["-O3"] },
];
/// Of the page's folder, what the bundle does not take as it is.
const NOT_COPIED: [&str; 2] = ["sw.js", "picture.png"];

/// Where the page shows the default set-up before the app has started.
const PICTURE: &str = "<!-- the first picture -->";

fn main() -> Done {
    let mut args = std::env::args_os().skip(1).map(PathBuf::from);
    let (Some(built), Some(root), Some(dist)) = (args.next(), args.next(), args.next()) else {
        return Err("usage: bundle BUILT PROJECT DIST".into());
    };
    let _ = fs::remove_dir_all(&dist);
    fs::create_dir_all(&dist)?;
    // One thread each: the three do not know of each other.
    std::thread::scope(|scope| {
        let all = MODULES.map(|m| {
            let (built, dist) = (&built, &dist);
            scope.spawn(move || module(&m, built, dist))
        });
        all.into_iter()
            .try_for_each(|t| t.join().unwrap_or_else(|_| Err("a module could not be made".into())))
    })?;
    for entry in fs::read_dir(root.join("public"))? {
        let entry = entry?;
        let name = entry.file_name();
        if !NOT_COPIED.iter().any(|n| name == *n) {
            fs::copy(entry.path(), dist.join(&name))?;
        }
    }
    let index = dist.join("index.html");
    let html = fs::read_to_string(&index)?;
    if !html.contains(PICTURE) {
        return Err("the page has no place for the first picture".into());
    }
    fs::write(&index, html.replace(PICTURE, &shortfall::scene::first::picture()))?;
    fs::write(dist.join("notices.txt"), notices::all(&root)?)?;
    finish::finish(&dist, &fs::read_to_string(root.join("public/sw.js"))?)
}

/// One module: its JavaScript and, where wasm-opt is found, a smaller wasm.
fn module(m: &Module, built: &Path, dist: &Path) -> Done {
    let name = m.name;
    let mut b = Bindgen::new();
    b.input_path(built.join(m.profile).join(format!("{name}.wasm"))).out_name(name).typescript(false);
    if m.is_page {
        b.web(true).map_err(|e| e.to_string())?;
    } else {
        b.no_modules(true).map_err(|e| e.to_string())?;
    }
    b.generate(dist).map_err(|e| format!("{name}: {e:?}"))?;
    let glue = dist.join(format!("{name}.js"));
    fs::write(&glue, without_comments(&fs::read_to_string(&glue)?))?;
    let wasm = dist.join(format!("{name}_bg.wasm"));
    let small = dist.join(format!("{name}_small.wasm"));
    let done = Command::new("wasm-opt").args(m.passes).arg(&wasm).arg("-o").arg(&small).status();
    match done {
        Ok(s) if s.success() => Ok(fs::rename(&small, &wasm)?),
        Ok(s) => Err(format!("wasm-opt failed on {name} ({s})").into()),
        Err(e) if e.kind() == std::io::ErrorKind::NotFound => Ok(()),
        Err(e) => Err(format!("wasm-opt cannot be started: {e}").into()),
    }
}

/// JavaScript as wasm-bindgen writes it, without the lines that are comment alone and without indentation: no string of
/// it runs over a line.
fn without_comments(glue: &str) -> String {
    let lines = glue.lines().map(str::trim);
    let kept = lines.filter(|l| !l.is_empty() && !["/**", "*", "//"].iter().any(|c| l.starts_with(c)));
    kept.fold(String::new(), |all, l| all + l + "\n")
}

#[cfg(test)]
mod tests {
    use super::without_comments;

    #[test]
    fn glue_loses_its_comments_and_nothing_else() {
        let glue = "class A {\n    /**\n     * @returns {number}\n     */\n    get x() {\n        // so\n        return a * b; // kept\n    }\n\n}\n";
        assert_eq!(without_comments(glue), "class A {\nget x() {\nreturn a * b; // kept\n}\n}\n");
    }
}
