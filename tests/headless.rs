//! The headless program, as a shell meets it: closed pipes, a full disc, odd arguments, bad files.
#![cfg(feature = "headless")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use std::io::Write;
use std::process::{Command, Output, Stdio};

fn fall(args: &[&str]) -> Command {
    let mut c = Command::new(env!("CARGO_BIN_EXE_fall"));
    c.args(args);
    c
}

fn said(out: &Output) -> (Option<i32>, String) {
    (out.status.code(), String::from_utf8_lossy(&out.stderr).into_owned())
}

#[test]
fn help_and_example_are_told_and_the_example_falls() {
    // Without a word of what it is to do, as in a plain `cargo run`, it says what it can.
    for args in [&["--help"][..], &[]] {
        let help = fall(args).output().expect("runs");
        assert!(help.status.success() && String::from_utf8_lossy(&help.stdout).contains("--schema"));
    }
    let example = fall(&["--example"]).output().expect("runs").stdout;
    let mut child = fall(&["-"]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().expect("starts");
    child.stdin.take().expect("a pipe").write_all(&example).expect("writes");
    let out = child.wait_with_output().expect("ends");
    assert!(out.status.success());
    let v: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
    assert_eq!(v["outcome"], "stopped");
}

/// Three bugs: each of these ended in a panic.
#[test]
fn a_closed_pipe_a_full_disc_and_an_odd_argument_end_quietly() {
    // Nobody reads.
    let mut child =
        fall(&["--schema"]).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
    drop(child.stdout.take());
    let out = child.wait_with_output().expect("ends");
    assert!(!said(&out).1.contains("panicked"), "{:?}", said(&out));
    #[cfg(target_os = "linux")]
    {
        let full = std::fs::OpenOptions::new().write(true).open("/dev/full").expect("opens");
        let out = fall(&["--schema"]).stdout(full).stderr(Stdio::piped()).output().expect("runs");
        assert_eq!(said(&out).0, Some(1));
        assert!(said(&out).1.starts_with("not written") && !said(&out).1.contains("panicked"));
        use std::os::unix::ffi::OsStrExt;
        let odd = std::ffi::OsStr::from_bytes(b"\xff\xfe.json");
        let out = Command::new(env!("CARGO_BIN_EXE_fall")).arg(odd).output().expect("runs");
        assert_eq!(said(&out).0, Some(2));
        assert!(!said(&out).1.contains("panicked"));
    }
}

#[test]
fn what_is_refused_is_one_line_and_exit_2() {
    let folder = std::env::temp_dir().join(format!("shortfall-fall-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("makes");
    let file = |name: &str, bytes: &[u8]| {
        let at = folder.join(name);
        std::fs::write(&at, bytes).expect("writes");
        at.display().to_string()
    };
    for (args, says) in [
        (vec!["--frobnicate".to_owned()], "no such argument"),
        (vec!["a".to_owned(), "b".to_owned()], "usage"),
        (vec![folder.join("none.json").display().to_string()], "none.json"),
        (vec![file("bytes.json", &[0xff, 0xfe])], "not UTF-8"),
        (vec![file("field.json", b"{\"house\":{\"eave_hight_m\":5}}")], "house.eave_hight_m"),
        (
            vec![file("range.json", b"{\"house\":{\"eave_height_m\":500}}")],
            "house.eave_height_m: out_of_range",
        ),
        (vec![file("newer.json", b"{\"schema\":99}")], "newer"),
    ] {
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        let (code, line) = said(&fall(&args).output().expect("runs"));
        assert_eq!(code, Some(2), "{args:?}: {line}");
        assert!(line.contains(says) && line.trim_end().lines().count() == 1, "{args:?}: {line}");
    }
    let _ = std::fs::remove_dir_all(folder);
}

/// Bugs: a drop that began with the rope stretched, a negative link, an absorber without a length and sizes
/// without end were computed all the same.
#[test]
fn a_drop_that_cannot_be_is_refused_in_a_line() {
    let drop = |text: &str| {
        let mut child = fall(&["--drop", "-"])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("starts");
        child.stdin.take().expect("a pipe").write_all(text.as_bytes()).expect("writes");
        said(&child.wait_with_output().expect("ends"))
    };
    let with = |more: &str| format!(r#"{{"mass_kg":100,"rope_m":2,"rope_modulus_n":50000{more}}}"#);
    assert_eq!(drop(&with(r#","free_fall_m":2"#)).0, Some(0));
    for (more, named) in [
        (r#","free_fall_m":20"#, "free_fall_m"),
        (r#","free_fall_m":2,"link_m":-3"#, "link_m"),
        (r#","free_fall_m":2,"absorber":"e4""#, "max_extension_m"),
        (r#","free_fall_m":2,"absorber":"stated","max_extension_m":1"#, "absorber"),
        (r#","free_fall_m":1e308"#, "free_fall_m"),
    ] {
        let (code, line) = drop(&with(more));
        assert!(code == Some(2) && line.contains(named), "{more}: {code:?} {line}");
    }
}
