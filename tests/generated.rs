//! No generated file is stale.

use beamcraft_tests::generate;

#[test]
fn every_generated_file_is_fresh() {
    let stale: Vec<String> = generate::all()
        .into_iter()
        .filter(|file| std::fs::read_to_string(generate::top().join(&file.path)).ok().as_deref() != Some(&*file.text))
        .map(|file| file.path)
        .collect();
    assert!(stale.is_empty(), "stale: {stale:?}; run `cargo run -p beamcraft-tests --bin generate`");
}
