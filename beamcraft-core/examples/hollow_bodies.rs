//! Panels of many bodies: `hollow_bodies [--time] <INPUTS >OUTPUTS`, one JSON document a line.
//!
//! Each input is one of `hollow_body`; each output line is its result, or the faults that it is refused for as
//! `{"refused": "…"}`. With `--time` an output line is the median time of the calculation instead, in nanoseconds.

use std::hint::black_box;
use std::io::{self, BufRead, Write};
use std::process::ExitCode;
use std::time::Instant;

use beamcraft_core::shell::{HollowBodyInput, hollow_body};
use beamcraft_core::{json, registry};

/// Runs of each body under `--time`; the median does not mind the slow ones.
const RUNS: usize = 201;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let answer: fn(&str) -> String = match arguments.as_slice() {
        [] => panels,
        [flag] if flag == "--time" => nanoseconds,
        _ => {
            eprintln!("usage: hollow_bodies [--time] <INPUTS >OUTPUTS");
            return ExitCode::FAILURE;
        }
    };
    let mut out = io::stdout().lock();
    for line in io::stdin().lock().lines() {
        let written = line.and_then(|line| writeln!(out, "{}", answer(&line)));
        if let Err(fault) = written {
            eprintln!("{fault}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn panels(input: &str) -> String {
    registry::call("hollow_body", input).unwrap_or_else(|error| refused(&error))
}

fn refused(error: &beamcraft_core::Error) -> String {
    format!("{{\"refused\":{:?}}}", error.to_string())
}

/// Median of some runs of the calculation by itself, the input read beforehand.
fn nanoseconds(input: &str) -> String {
    let input: HollowBodyInput = match json::read(input) {
        Ok(input) => input,
        Err(error) => return refused(&error),
    };
    let mut times: Vec<u128> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            let body = black_box(hollow_body(black_box(&input)));
            let taken = start.elapsed().as_nanos();
            drop(body);
            taken
        })
        .collect();
    times.sort_unstable();
    times.get(RUNS / 2).map_or_else(String::new, u128::to_string)
}
