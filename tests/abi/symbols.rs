//! The library exports what the header declares, and nothing else.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::process::Command;

/// Builds the shared library and says where it is.
fn library() -> PathBuf {
    let built = Command::new(env!("CARGO"))
        .args(["build", "--quiet", "-p", "beamcraft-ffi", "--message-format", "json"])
        .current_dir(beamcraft_tests::generate::top())
        .output()
        .expect("cargo runs");
    assert!(built.status.success(), "{}", String::from_utf8_lossy(&built.stderr));
    let messages = String::from_utf8(built.stdout).expect("UTF-8");
    let libraries = messages.lines().filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok());
    let files = libraries.flat_map(|message| message["filenames"].as_array().cloned().unwrap_or_default());
    let found =
        files.filter_map(|file| file.as_str().map(PathBuf::from)).find(|file| file.ends_with("libbeamcraft.so"));
    found.expect("a shared library")
}

fn output_of(program: &str, arguments: &[&str], file: &std::path::Path) -> String {
    let run = Command::new(program).args(arguments).arg(file).output();
    let run = run.unwrap_or_else(|fault| panic!("{program}: {fault}"));
    assert!(run.status.success(), "{program}: {}", String::from_utf8_lossy(&run.stderr));
    String::from_utf8(run.stdout).expect("UTF-8")
}

/// Every function that the header declares.
fn declared() -> BTreeSet<String> {
    let path = beamcraft_tests::generate::top().join("beamcraft-ffi/include/beamcraft.h");
    let header = std::fs::read_to_string(path).expect("the header");
    let mut names = BTreeSet::new();
    for line in header.lines().filter(|line| !line.starts_with([' ', '/', '#', '*'])) {
        let Some((before, _)) = line.split_once('(') else { continue };
        let name = before.rsplit([' ', '*']).next().unwrap_or_default();
        if name.starts_with("beamcraft_") {
            names.insert(name.to_owned());
        }
    }
    names
}

#[test]
fn the_exported_symbols_are_the_blessed_ones_and_all_declared() {
    let library = library();
    let listed = output_of("nm", &["-D", "--defined-only", "--format=posix"], &library);
    let exported: BTreeSet<String> =
        listed.lines().filter_map(|line| line.split(' ').next()).map(str::to_owned).collect();
    assert_eq!(exported, declared(), "what is exported and what the header declares");
    let text: String = exported.iter().map(|name| format!("{name}\n")).collect();
    let golden = beamcraft_tests::generate::top().join("tests/abi/symbols.txt");
    if std::env::var_os("BEAMCRAFT_BLESS").is_some() {
        std::fs::write(&golden, &text).expect("the list of symbols");
    }
    let known = std::fs::read_to_string(&golden).unwrap_or_default();
    assert_eq!(text, known, "BEAMCRAFT_BLESS=1 rewrites the list");
}

#[test]
fn the_soname_carries_the_abi_number() {
    let dynamic = output_of("readelf", &["-d"], &library());
    let soname = format!("[libbeamcraft.so.{}]", beamcraft::beamcraft_abi_version());
    assert!(dynamic.lines().any(|line| line.contains("SONAME") && line.contains(&soname)), "{dynamic}");
}
