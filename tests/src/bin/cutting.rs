//! Judges the cut lists on published instances: `cutting [--steps MILLIONS] [--only SET] [--rows FILE] [FOLDER]`; with
//! `--growth` it prints instead how time and memory grow with the number of parts.
//!
//! The instances are not part of the project. FOLDER holds them as JSON with their best known values in `best_known.csv`;
//! by default it is `../shared/data/cutting` beside the workspace. Prints a table in Markdown; `--rows` writes a line of
//! CSV for each instance, which `tests/peers/cutting.py` reads.

use std::collections::HashMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;

use beamcraft_core::layout::{
    BarPart, BarStock, BoardPart, BoardPartTurn, BoardStock, CutListBarsInput, CutListBoardsInput, CutOrder, LayoutAim,
    LayoutQuality, cut_list_bars, cut_list_boards,
};
use serde_json::Value;

/// Sets in the order of the table, with what each is.
const SETS: &[(&str, Kind)] = &[
    ("1d_falkenauer_u", Kind::Bars),
    ("1d_falkenauer_t", Kind::Bars),
    ("1d_scholl_1", Kind::Bars),
    ("1d_scholl_2", Kind::Bars),
    ("1d_scholl_3", Kind::Bars),
    ("1d_schwerin_1", Kind::Bars),
    ("1d_schwerin_2", Kind::Bars),
    ("1d_waescher", Kind::Bars),
    ("1d_hard28", Kind::Bars),
    ("1d_kerf_multistock", Kind::Bars),
    ("2d_guillotine_constrained_classic", Kind::Worth),
    ("2d_guillotine_constrained_ngcut", Kind::Worth),
    ("2d_guillotine_constrained_cu_cw", Kind::Worth),
    ("2d_guillotine_constrained_chl", Kind::Worth),
    ("2d_guillotine_constrained_atp", Kind::Worth),
    ("2d_guillotine_unconstrained_gcut", Kind::Worth),
    ("2d_guillotine_unconstrained_atp", Kind::Worth),
    ("2d_binpacking_bwmv", Kind::Boards),
    ("2d_multistock_pisinger_sigurd", Kind::Boards),
    ("2d_multistock_hopper_turton_m", Kind::Boards),
    ("2d_multistock_panels_ma", Kind::Boards),
    ("2d_strip_hopper_turton_c", Kind::Strip),
];

#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Bars,
    /// All parts from boards of the least number or cost.
    Boards,
    /// The greatest worth from one board.
    Worth,
    /// The shortest board of a given width that holds all parts.
    Strip,
}

struct Options {
    /// Millions of steps; the defaults of the calculations where none are given.
    steps: Option<f64>,
    only: String,
    rows: Option<PathBuf>,
    folder: PathBuf,
    task: Task,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Task {
    Judge,
    Growth,
}

/// A row of `best_known.csv`.
#[derive(Clone)]
struct Known {
    objective: String,
    kerf: f64,
    value: Option<f64>,
}

/// One instance, solved.
struct Solved {
    instance: String,
    kerf: f64,
    value: f64,
    bound: f64,
    known: Option<f64>,
    /// Processor time.
    seconds: f64,
    /// Time by the clock.
    clock_s: f64,
}

fn main() -> ExitCode {
    let options = match options() {
        Ok(options) => options,
        Err(words) => {
            eprintln!("{words}");
            return ExitCode::FAILURE;
        }
    };
    if options.task == Task::Growth {
        growth(options.steps);
        return ExitCode::SUCCESS;
    }
    if !options.folder.join("best_known.csv").is_file() {
        eprintln!("*** SKIPPED: no instances in {} ***", options.folder.display());
        eprintln!("*** Nothing was judged. Give their folder as an argument. ***");
        return ExitCode::SUCCESS;
    }
    match judge(&options) {
        Ok(()) => ExitCode::SUCCESS,
        Err(words) => {
            eprintln!("{words}");
            ExitCode::FAILURE
        }
    }
}

fn options() -> Result<Options, String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../shared/data/cutting");
    let mut options = Options { steps: None, only: String::new(), rows: None, folder, task: Task::Judge };
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        let mut next = || words.next().ok_or(format!("{word} wants a value"));
        match word.as_str() {
            "--steps" => options.steps = Some(next()?.parse().map_err(|_| "--steps wants a number".to_owned())?),
            "--growth" => options.task = Task::Growth,
            "--only" => options.only = next()?,
            "--rows" => options.rows = Some(next()?.into()),
            folder => options.folder = folder.into(),
        }
    }
    Ok(options)
}

fn judge(options: &Options) -> Result<(), String> {
    let known = best_known(&options.folder)?;
    println!(
        "| set | instances | proven | best known reached | gap to the bound | above the best known | mean | longest |"
    );
    println!("|---|---|---|---|---|---|---|---|");
    let mut rows = String::from("set,instance,kerf,value,bound,known,seconds,clock_s\n");
    for (set, kind) in SETS {
        let path = options.folder.join(format!("{set}.json"));
        if !set.contains(&options.only) || !path.is_file() {
            continue;
        }
        let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
        let list: Vec<Value> = serde_json::from_str(&text).map_err(|error| format!("{set}: {error}"))?;
        let mut solved = Vec::new();
        for instance in &list {
            let name = instance["name"].as_str().unwrap_or_default().to_owned();
            let mut cases = known.get(&(set.to_string(), name.clone())).cloned().unwrap_or_default();
            cases.retain(|case| !case.objective.contains("values ignored"));
            if cases.is_empty() {
                cases.push(Known { objective: String::new(), kerf: 0.0, value: None });
            }
            for case in cases {
                let (start, clock) = (processor_seconds(), Instant::now());
                let (value, bound) = solve(*kind, instance, case.kerf, options.steps)
                    .ok_or_else(|| format!("{set} {name}: cannot be read"))?;
                let (seconds, clock_s) = (processor_seconds() - start, clock.elapsed().as_secs_f64());
                solved.push(Solved {
                    instance: name.clone(),
                    kerf: case.kerf,
                    value,
                    bound,
                    known: case.value,
                    seconds,
                    clock_s,
                });
            }
        }
        for one in &solved {
            let best = one.known.map(|value| value.to_string()).unwrap_or_default();
            let Solved { instance, kerf, value, bound, seconds, clock_s, .. } = one;
            let _ = writeln!(rows, "{set},\"{instance}\",{kerf},{value},{bound},{best},{seconds:.3},{clock_s:.3}");
        }
        println!("{}", line(set, &solved));
        if let Some(path) = &options.rows {
            std::fs::write(path, &rows).map_err(|error| format!("{}: {error}", path.display()))?;
        }
    }
    Ok(())
}

/// Seconds that this process has been on a processor, so that a busy machine does not count; the clock where the system
/// does not say.
fn processor_seconds() -> f64 {
    static START: std::sync::OnceLock<Instant> = std::sync::OnceLock::new();
    let told = std::fs::read_to_string("/proc/self/schedstat").ok();
    let nanoseconds = told.and_then(|text| text.split_whitespace().next()?.parse::<f64>().ok());
    nanoseconds.map_or_else(|| START.get_or_init(Instant::now).elapsed().as_secs_f64(), |n| n * 1e-9)
}

/// A line of the table.
fn line(set: &str, solved: &[Solved]) -> String {
    let count = solved.len().max(1) as f64;
    let proven = solved.iter().filter(|one| one.value == one.bound).count();
    let with_known: Vec<(&Solved, f64)> = solved.iter().filter_map(|one| Some((one, one.known?))).collect();
    let reached = with_known.iter().filter(|(one, known)| one.value == *known).count();
    let gap = |a: f64, b: f64| if a == b { 0.0 } else { 100.0 * (a - b).abs() / a.abs().max(b.abs()) };
    let to_bound: f64 = solved.iter().map(|one| gap(one.value, one.bound)).sum::<f64>() / count;
    let to_known: f64 = with_known.iter().map(|(one, known)| gap(one.value, *known)).sum::<f64>().max(0.0)
        / with_known.len().max(1) as f64;
    let seconds: f64 = solved.iter().map(|one| one.seconds).sum::<f64>() / count;
    let longest = solved.iter().map(|one| one.seconds).fold(0.0, f64::max);
    format!(
        "| `{set}` | {} | {proven} | {reached} of {} | {to_bound:.3} % | {to_known:.3} % | {seconds:.3} s | {longest:.2} s |",
        solved.len(),
        with_known.len()
    )
}

/// Value and bound of an instance.
fn solve(kind: Kind, instance: &Value, kerf: f64, steps: Option<f64>) -> Option<(f64, f64)> {
    let steps = steps.unwrap_or(if kind == Kind::Bars { 100.0 } else { 60.0 });
    match kind {
        Kind::Bars => bars(instance, steps),
        Kind::Boards => boards(instance, kerf, steps, LayoutAim::AllParts),
        Kind::Worth => boards(instance, kerf, steps, LayoutAim::MostWorth),
        Kind::Strip => strip(instance, steps),
    }
}

fn numbers(quality: &LayoutQuality) -> (f64, f64) {
    (quality.value, quality.bound.unwrap_or(f64::NAN))
}

fn bars(instance: &Value, steps: f64) -> Option<(f64, f64)> {
    let stock = match instance.get("stock").and_then(Value::as_array) {
        Some(list) => list.iter().enumerate().map(|(k, bar)| bar_stock(k, bar)).collect::<Option<Vec<_>>>()?,
        None => vec![BarStock {
            name: "bar".to_owned(),
            length_mm: instance["capacity"].as_f64()?,
            count: None,
            price: Some(1.0),
            defects: Vec::new(),
        }],
    };
    let parts = instance["items"].as_array()?.iter().enumerate().map(|(k, item)| {
        Some(BarPart { name: format!("p{k}"), length_mm: item[0].as_f64()?, count: item[1].as_u64()? as u32 })
    });
    let input = CutListBarsInput {
        stock,
        parts: parts.collect::<Option<_>>()?,
        kerf_mm: instance.get("kerf").and_then(Value::as_f64).unwrap_or(0.0),
        trim_mm: 0.0,
        steps_million: steps,
    };
    Some(numbers(&cut_list_bars(&input).ok()?.quality))
}

fn bar_stock(k: usize, bar: &Value) -> Option<BarStock> {
    Some(BarStock {
        name: format!("s{k}"),
        length_mm: bar[0].as_f64()?,
        count: bar[1].as_u64().map(|count| count as u32),
        price: Some(bar[2].as_f64()?),
        defects: Vec::new(),
    })
}

fn boards(instance: &Value, kerf: f64, steps: f64, aim: LayoutAim) -> Option<(f64, f64)> {
    let list = instance["stock"].as_array()?;
    // One kind of sheet is counted; several cost what is stated, or their area.
    let one = list.len() == 1 && aim == LayoutAim::AllParts;
    let priced = list.iter().all(|sheet| sheet[3].as_f64().is_some());
    let stock = list.iter().enumerate().map(|(k, sheet)| {
        Some(BoardStock {
            name: format!("s{k}"),
            length_mm: sheet[0].as_f64()?,
            width_mm: sheet[1].as_f64()?,
            count: if aim == LayoutAim::MostWorth { Some(1) } else { sheet[2].as_u64().map(|count| count as u32) },
            price: if one { Some(1.0) } else { sheet[3].as_f64().filter(|_| priced) },
            defects: Vec::new(),
        })
    });
    let stock = stock.collect::<Option<Vec<_>>>()?;
    let area: f64 = stock.iter().map(|sheet| (sheet.length_mm + kerf) * (sheet.width_mm + kerf)).sum();
    let parts = instance["items"].as_array()?.iter().enumerate().map(|(k, item)| {
        let (length_mm, width_mm) = (item[0].as_f64()?, item[1].as_f64()?);
        // Without a limit: as many as the sheet has room for.
        let room = (area / ((length_mm + kerf) * (width_mm + kerf))).floor().clamp(1.0, 10_000.0);
        Some(BoardPart {
            name: format!("p{k}"),
            length_mm,
            width_mm,
            count: item[2].as_u64().map_or(room as u32, |count| count as u32),
            turn: BoardPartTurn::AlongGrain,
            worth: if aim == LayoutAim::MostWorth { item[3].as_f64() } else { None },
        })
    });
    let input = CutListBoardsInput { stock, parts: parts.collect::<Option<_>>()?, ..plain(aim, kerf, steps) };
    let list = cut_list_boards(&input).ok()?;
    if aim == LayoutAim::AllParts && !list.missing.is_empty() {
        return Some((f64::INFINITY, 0.0));
    }
    Some(numbers(&list.quality))
}

fn plain(aim: LayoutAim, kerf_mm: f64, steps_million: f64) -> CutListBoardsInput {
    CutListBoardsInput {
        stock: Vec::new(),
        parts: Vec::new(),
        groups: Vec::new(),
        aim,
        order: CutOrder::Free,
        stages: None,
        kerf_mm,
        trim_end_mm: 0.0,
        trim_edge_mm: 0.0,
        steps_million,
    }
}

/// Longer and longer boards until all parts have room; the bound is that of the area.
fn strip(instance: &Value, steps: f64) -> Option<(f64, f64)> {
    let width_mm = instance["strip_width"].as_f64()?;
    let parts = instance["items"].as_array()?.iter().enumerate().map(|(k, item)| {
        Some(BoardPart {
            name: format!("p{k}"),
            length_mm: item[1].as_f64()?,
            width_mm: item[0].as_f64()?,
            count: item[2].as_u64().unwrap_or(1) as u32,
            turn: BoardPartTurn::AlongGrain,
            worth: None,
        })
    });
    let parts: Vec<BoardPart> = parts.collect::<Option<_>>()?;
    let area: f64 = parts.iter().map(|part| part.length_mm * part.width_mm * f64::from(part.count)).sum();
    let longest = parts.iter().map(|part| part.length_mm).fold(0.0, f64::max);
    let bound = (area / width_mm).ceil().max(longest);
    let mut length_mm = bound;
    loop {
        let board = BoardStock {
            name: "strip".to_owned(),
            length_mm,
            width_mm,
            count: Some(1),
            price: None,
            defects: Vec::new(),
        };
        let input = CutListBoardsInput {
            stock: vec![board],
            parts: parts.clone(),
            ..plain(LayoutAim::AllParts, 0.0, steps / 10.0)
        };
        if cut_list_boards(&input).ok()?.missing.is_empty() {
            return Some((length_mm, bound));
        }
        length_mm += 1.0;
    }
}

/// Prints how time, memory and gap grow with the number of parts, and what a second core gives.
fn growth(steps: Option<f64>) {
    println!("| parts | bars: time | gap | boards: time | gap | memory so far |");
    println!("|---|---|---|---|---|---|");
    for parts in [10, 30, 100, 300, 1_000, 3_000, 10_000] {
        let (bars, boards) = (bars_of(parts, steps.unwrap_or(100.0)), boards_of(parts, steps.unwrap_or(60.0)));
        let start = processor_seconds();
        let bars = cut_list_bars(&bars).map(|list| list.quality.gap_pct);
        let middle = processor_seconds();
        let boards = cut_list_boards(&boards).map(|list| list.quality.gap_pct);
        let end = processor_seconds();
        let gap = |gap: Option<f64>| gap.map_or_else(|| "-".to_owned(), |gap| format!("{gap:.2} %"));
        println!(
            "| {parts} | {:.3} s | {} | {:.3} s | {} | {} |",
            middle - start,
            gap(bars.ok().flatten()),
            end - middle,
            gap(boards.ok().flatten()),
            peak_memory()
        );
    }
    let solve = || cut_list_boards(&boards_of(300, steps.unwrap_or(60.0))).map(|list| list.quality.value);
    let clock = Instant::now();
    let _ = (solve(), solve());
    let one_after_the_other = clock.elapsed().as_secs_f64();
    let clock = Instant::now();
    std::thread::scope(|scope| {
        let other = scope.spawn(solve);
        let _ = (solve(), other.join());
    });
    println!(
        "\nTwo lists of 300 parts: {one_after_the_other:.2} s one after the other, {:.2} s on two threads, by the clock.",
        clock.elapsed().as_secs_f64()
    );
}

/// As many parts of different lengths.
fn bars_of(parts: u32, steps_million: f64) -> CutListBarsInput {
    let length = |k: u32| 50.0 + f64::from(k * 7_919 % 9_973) * 0.1;
    let stock = BarStock { name: "2400".to_owned(), length_mm: 2_400.0, count: None, price: None, defects: Vec::new() };
    CutListBarsInput {
        stock: vec![stock],
        parts: (0..parts).map(|k| BarPart { name: format!("p{k}"), length_mm: length(k), count: 1 }).collect(),
        kerf_mm: 3.2,
        trim_mm: 5.0,
        steps_million,
    }
}

/// As many parts, ten of each size.
fn boards_of(parts: u32, steps_million: f64) -> CutListBoardsInput {
    let size = |k: u32, least: f64, most: u32| least + f64::from(k * 7_919 % most);
    let sheet = BoardStock {
        name: "sheet".to_owned(),
        length_mm: 2_440.0,
        width_mm: 1_220.0,
        count: None,
        price: None,
        defects: Vec::new(),
    };
    let parts = (0..parts / 10).map(|k| BoardPart {
        name: format!("p{k}"),
        length_mm: size(k, 150.0, 701),
        width_mm: size(k + 3, 60.0, 307),
        count: 10,
        turn: BoardPartTurn::AlongGrain,
        worth: None,
    });
    CutListBoardsInput { stock: vec![sheet], parts: parts.collect(), ..plain(LayoutAim::AllParts, 3.2, steps_million) }
}

/// Most memory that the process has held, where the system says so.
fn peak_memory() -> String {
    let told = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = told.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.map_or_else(|| "-".to_owned(), |line| line.trim().to_owned())
}

/// The best known values by set and instance.
fn best_known(folder: &Path) -> Result<HashMap<(String, String), Vec<Known>>, String> {
    let path = folder.join("best_known.csv");
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    let mut known: HashMap<(String, String), Vec<Known>> = HashMap::new();
    for line in text.lines().skip(1) {
        let mut fields = fields(line).into_iter();
        let mut next = || fields.next().unwrap_or_default();
        let (set, instance, objective) = (next(), next(), next());
        let case = Known { objective, kerf: next().parse().unwrap_or(0.0), value: next().parse().ok() };
        known.entry((set, instance)).or_default().push(case);
    }
    Ok(known)
}

/// Fields of a line of CSV; a quoted field may hold commas.
fn fields(line: &str) -> Vec<String> {
    let (mut list, mut quoted) = (vec![String::new()], false);
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ',' if !quoted => list.push(String::new()),
            letter => list.last_mut().into_iter().for_each(|field| field.push(letter)),
        }
    }
    list
}
