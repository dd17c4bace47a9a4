//! Monte Carlo: samples in blocks, chunks of fixed size, the same result with any number of threads.
//!
//! Deviate `k` of source `j` is a function of seed, `j` and `k` alone. A chunk is summed in a fixed order, chunks are
//! added in their order, and everything else is counted in whole numbers: so neither the number of threads nor their
//! pace can change a digit. Memory does not grow with the number of samples.

use core::ops::ControlFlow;
use std::thread;

use crate::error::{Error, ErrorCode, Fault, Result};
use crate::numeric::normal::{is_in_quick_tail, quick_quantile_centre, quick_quantile_tail};
use crate::numeric::random::{open_unit, philox_4x32};

use super::first_order::SeamForm;
use super::seam::SeamHold;
use super::source::ErrorDistribution;
use super::stack::GapStatistics;

/// How far a long call has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SampleProgress {
    /// Samples done.
    pub done: u32,
    /// Samples asked for.
    pub total: u32,
}

/// Samples that are worked on together: their deviates of a dozen sources stay in the fastest memory.
const BLOCK: usize = 256;
/// Samples of a chunk; a whole number of blocks.
const CHUNK: u32 = 65_536;
/// Chunks a worker does before the caller hears of it: some tenths of a second.
const CHUNKS_A_ROUND: u32 = 8;
/// Bins of a histogram: a percentile is right to a 2 048th of the range.
pub(super) const BINS: usize = 2_048;
/// Places for closed seams behind the bins: several, because counting one after another into the same place is slow.
const CLOSED_PLACES: usize = 8;
/// Values that are worked on side by side.
const LANES: usize = 8;
/// Added to a small number, leaves its nearest whole number in the low bits.
const TO_WHOLE: f64 = 6_755_399_441_055_744.0;
/// Bins of the histogram that is handed out.
const COARSE_BINS: usize = 32;
/// Second half of the key: keeps these numbers apart from any other use of the same seed.
const STREAM: u32 = 0x746F_6C31;

/// What is drawn.
pub(super) struct Experiment<'a> {
    pub(super) forms: &'a [SeamForm],
    /// Sources by their place; absent where no seam feels them.
    pub(super) sources: Vec<Option<ErrorDistribution>>,
    /// Upper end of the histogram of each seam and, last, of the body's worst seam, mm.
    pub(super) tops_mm: Vec<f64>,
    /// Value near the mean of each, from which deviations are counted, mm.
    pub(super) pivots_mm: Vec<f64>,
    pub(super) burnish_mm: f64,
    pub(super) filler_mm: f64,
    pub(super) seed: u32,
    pub(super) samples: u32,
}

/// Counts of one seam.
#[derive(Clone)]
struct Tally {
    /// Open seams by bin, then closed ones.
    places: Vec<u32>,
    burnishable: u32,
    within_filler: u32,
    largest_mm: f64,
}

impl Tally {
    fn new() -> Self {
        Self { places: vec![0; BINS + CLOSED_PLACES], burnishable: 0, within_filler: 0, largest_mm: 0.0 }
    }

    fn bins(&self) -> &[u32] {
        self.places.split_at_checked(BINS).map_or(&[], |(bins, _)| bins)
    }

    fn closed(&self) -> u32 {
        self.places.iter().skip(BINS).sum()
    }

    fn add(&mut self, other: &Self) {
        for (place, more) in self.places.iter_mut().zip(&other.places) {
            *place += more;
        }
        self.burnishable += other.burnishable;
        self.within_filler += other.within_filler;
        self.largest_mm = self.largest_mm.max(other.largest_mm);
    }
}

/// Sum and sum of squares of the deviations from the pivot.
#[derive(Clone, Copy, Default)]
struct Moments {
    sum: f64,
    square: f64,
}

/// What one thread owns.
struct Worker {
    tallies: Vec<Tally>,
    /// One block of deviates a source.
    deviates: Vec<[f64; BLOCK]>,
}

/// Result of the sampling of one seam.
pub(super) struct Sampled {
    pub(super) gap: GapStatistics,
    pub(super) largest_mm: f64,
    pub(super) resolution_mm: f64,
    pub(super) bin_mm: f64,
    pub(super) counts: Vec<u32>,
}

/// The larger; neither is ever not a number, which lets the compiler use one instruction.
#[inline(always)]
fn larger(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

impl Experiment<'_> {
    /// Draws all samples; nothing if `progress` breaks off.
    pub(super) fn run(
        &self,
        threads: u32,
        progress: &mut dyn FnMut(SampleProgress) -> ControlFlow<()>,
    ) -> Result<Option<Vec<Sampled>>> {
        let chunks = self.samples.div_ceil(CHUNK);
        let count = threads.min(chunks).max(1);
        let mut workers: Vec<Worker> = (0..count).map(|_| self.worker()).collect();
        let mut totals = vec![Moments::default(); self.forms.len() + 1];
        let mut first = 0;
        while first < chunks {
            let end = chunks.min(first.saturating_add(count * CHUNKS_A_ROUND));
            let mut round: Vec<(u32, Vec<Moments>)> = self.round(&mut workers, first, end)?;
            round.sort_by_key(|(chunk, _)| *chunk);
            for (_, moments) in round {
                for (total, more) in totals.iter_mut().zip(moments) {
                    total.sum += more.sum;
                    total.square += more.square;
                }
            }
            first = end;
            let done = self.samples.min(end.saturating_mul(CHUNK));
            if progress(SampleProgress { done, total: self.samples }).is_break() {
                return Ok(None);
            }
        }
        let mut tallies = vec![Tally::new(); totals.len()];
        for worker in &workers {
            tallies.iter_mut().zip(&worker.tallies).for_each(|(tally, more)| tally.add(more));
        }
        let parts = tallies.iter().zip(totals).zip(self.tops_mm.iter().zip(&self.pivots_mm));
        Ok(Some(parts.map(|((tally, total), (top, pivot))| self.summary(tally, total, *top, *pivot)).collect()))
    }

    fn worker(&self) -> Worker {
        Worker { tallies: vec![Tally::new(); self.forms.len() + 1], deviates: vec![[0.0; BLOCK]; self.sources.len()] }
    }

    /// Chunks `first` to `end`, each with its sums; in no order.
    fn round(&self, workers: &mut [Worker], first: u32, end: u32) -> Result<Vec<(u32, Vec<Moments>)>> {
        let step = workers.len() as u32;
        let mut done = Vec::new();
        if let [only] = workers {
            return Ok(self.chunks(only, first, end, 1));
        }
        // A thread that cannot be had is no reason to fail: its share is done here.
        let mut missed = Vec::new();
        let panicked = thread::scope(|scope| {
            let mut handles = Vec::new();
            for (start, worker) in (first..).zip(workers.iter_mut()) {
                let run = move || self.chunks(worker, start, end, step);
                match thread::Builder::new().spawn_scoped(scope, run) {
                    Ok(handle) => handles.push(handle),
                    Err(_) => missed.push(start),
                }
            }
            let mut panicked = false;
            for handle in handles {
                match handle.join() {
                    Ok(part) => done.extend(part),
                    Err(_) => panicked = true,
                }
            }
            panicked
        });
        if panicked {
            return Err(Error::from(Fault::plain(ErrorCode::Panic, "", "a thread that ends", "please report it")));
        }
        for start in missed {
            if let Some(worker) = workers.get_mut((start - first) as usize) {
                done.extend(self.chunks(worker, start, end, step));
            }
        }
        Ok(done)
    }

    fn chunks(&self, worker: &mut Worker, start: u32, end: u32, step: u32) -> Vec<(u32, Vec<Moments>)> {
        let mine = (start..end).step_by(step as usize);
        mine.map(|chunk| (chunk, self.chunk(worker, chunk))).collect()
    }

    fn chunk(&self, worker: &mut Worker, chunk: u32) -> Vec<Moments> {
        let mut moments = vec![Moments::default(); self.forms.len() + 1];
        let (from, to) = (chunk * CHUNK, self.samples.min(chunk.saturating_add(1).saturating_mul(CHUNK)));
        for first in (from..to).step_by(BLOCK) {
            let count = BLOCK.min((to - first) as usize);
            self.draw(&mut worker.deviates, first);
            let (mut worst, mut gaps, mut offset) = ([0.0; BLOCK], [0.0; BLOCK], [0.0; BLOCK]);
            let mut places = worker.tallies.iter_mut().zip(&mut moments).zip(&self.tops_mm).zip(&self.pivots_mm);
            for form in self.forms {
                gaps_of(form, &worker.deviates, &mut offset, &mut gaps);
                worst.iter_mut().zip(&gaps).for_each(|(worst, gap)| *worst = larger(*worst, *gap));
                if let Some((((tally, moments), top), pivot)) = places.next() {
                    self.count(tally, moments, *top, *pivot, gaps.split_at(count).0);
                }
            }
            if let Some((((tally, moments), top), pivot)) = places.next() {
                self.count(tally, moments, *top, *pivot, worst.split_at(count).0);
            }
        }
        moments
    }

    /// Deviates `first` and following of every source that is felt.
    fn draw(&self, deviates: &mut [[f64; BLOCK]], first: u32) {
        for ((source, distribution), block) in (0_u32..).zip(&self.sources).zip(deviates) {
            let Some(distribution) = distribution else { continue };
            let mut units = [0.0; BLOCK];
            for (quarter, four) in (first / 4..).zip(units.chunks_exact_mut(4)) {
                let words = philox_4x32([quarter, 0, source, 0], [self.seed, STREAM]);
                four.iter_mut().zip(words).for_each(|(unit, word)| *unit = open_unit(word));
            }
            match distribution {
                ErrorDistribution::Uniform => {
                    block.iter_mut().zip(&units).for_each(|(deviate, unit)| *deviate = 2.0 * unit - 1.0);
                }
                ErrorDistribution::Normal => {
                    block.iter_mut().zip(&units).for_each(|(deviate, unit)| *deviate = quick_quantile_centre(*unit));
                    for (deviate, unit) in block.iter_mut().zip(&units).filter(|(_, unit)| is_in_quick_tail(**unit)) {
                        *deviate = quick_quantile_tail(*unit);
                    }
                }
            }
        }
    }

    fn count(&self, tally: &mut Tally, moments: &mut Moments, top_mm: f64, pivot_mm: f64, gaps: &[f64]) {
        let scale = if top_mm > 0.0 { BINS as f64 / top_mm } else { 0.0 };
        // Sums side by side, always in the same way; whole numbers are exact in them.
        let mut lanes = Lanes { largest: [tally.largest_mm; LANES], ..Lanes::default() };
        let (eights, rest) = gaps.as_chunks::<LANES>();
        for eight in eights {
            lanes.add(eight, pivot_mm, self.burnish_mm, self.filler_mm);
            for place in places(eight, scale) {
                if let Some(count) = tally.places.get_mut(place as usize) {
                    *count += 1;
                }
            }
        }
        for gap in rest {
            lanes.add_first(*gap, pivot_mm, self.burnish_mm, self.filler_mm);
            let [place, ..] = places(&[*gap; LANES], scale);
            if let Some(count) = tally.places.get_mut(place as usize) {
                *count += 1;
            }
        }
        moments.sum += lanes.sum.iter().sum::<f64>();
        moments.square += lanes.square.iter().sum::<f64>();
        tally.burnishable += lanes.burnishable.iter().sum::<f64>() as u32;
        tally.within_filler += lanes.within_filler.iter().sum::<f64>() as u32;
        tally.largest_mm = lanes.largest.iter().fold(tally.largest_mm, |most, gap| larger(most, *gap));
    }

    fn summary(&self, tally: &Tally, moments: Moments, top_mm: f64, pivot_mm: f64) -> Sampled {
        let n = f64::from(self.samples);
        let mean = moments.sum / n;
        let variance = (moments.square - moments.sum * mean).max(0.0) / (n - 1.0).max(1.0);
        let width_mm = top_mm / BINS as f64;
        let quantile = |share: f64| quantile(tally, width_mm, share * n);
        let share = |count: u32| f64::from(count) / n;
        let burnishable_share = share(tally.burnishable);
        let gap = GapStatistics {
            mean_mm: (pivot_mm + mean).max(0.0),
            sd_mm: variance.sqrt(),
            p5_mm: quantile(0.05),
            p50_mm: quantile(0.5),
            p95_mm: quantile(0.95),
            p99_mm: quantile(0.99),
            burnishable_share,
            fillable_share: share(tally.within_filler - tally.burnishable),
            reject_share: share(self.samples - tally.within_filler),
        };
        let coarse = BINS / COARSE_BINS;
        let mut counts: Vec<u32> = tally.bins().chunks(coarse).map(|bins| bins.iter().sum()).collect();
        if let Some(first) = counts.first_mut() {
            *first += tally.closed();
        }
        Sampled { gap, largest_mm: tally.largest_mm, resolution_mm: width_mm, bin_mm: width_mm * coarse as f64, counts }
    }
}

/// Sums over one block, lane by lane.
#[derive(Default)]
struct Lanes {
    sum: [f64; LANES],
    square: [f64; LANES],
    burnishable: [f64; LANES],
    within_filler: [f64; LANES],
    largest: [f64; LANES],
}

impl Lanes {
    #[inline(always)]
    fn add(&mut self, gaps: &[f64; LANES], pivot_mm: f64, burnish_mm: f64, filler_mm: f64) {
        let one_if = |within: bool| if within { 1.0 } else { 0.0 };
        for (sum, gap) in self.sum.iter_mut().zip(gaps) {
            *sum += gap - pivot_mm;
        }
        for (square, gap) in self.square.iter_mut().zip(gaps) {
            *square += (gap - pivot_mm) * (gap - pivot_mm);
        }
        for (count, gap) in self.burnishable.iter_mut().zip(gaps) {
            *count += one_if(*gap <= burnish_mm);
        }
        for (count, gap) in self.within_filler.iter_mut().zip(gaps) {
            *count += one_if(*gap <= filler_mm);
        }
        for (most, gap) in self.largest.iter_mut().zip(gaps) {
            *most = larger(*most, *gap);
        }
    }

    /// One value, in the first lane.
    fn add_first(&mut self, gap: f64, pivot_mm: f64, burnish_mm: f64, filler_mm: f64) {
        let (mut alone, deviation) = (Lanes::default(), gap - pivot_mm);
        alone.add(&[gap; LANES], pivot_mm, burnish_mm, filler_mm);
        let first = |lanes: &mut [f64; LANES], more: f64| lanes.iter_mut().take(1).for_each(|lane| *lane += more);
        first(&mut self.sum, deviation);
        first(&mut self.square, deviation * deviation);
        first(&mut self.burnishable, alone.burnishable.iter().take(1).sum());
        first(&mut self.within_filler, alone.within_filler.iter().take(1).sum());
        self.largest.iter_mut().for_each(|most| *most = larger(*most, gap));
    }
}

/// Where eight gaps are counted: the bin of an open seam, what lies beyond the top in the last one; a place behind the
/// bins for a closed seam.
#[inline(always)]
fn places(gaps: &[f64; LANES], scale: f64) -> [u32; LANES] {
    let mut places = [0; LANES];
    for ((place, gap), k) in places.iter_mut().zip(gaps).zip(0_u32..) {
        let scaled = gap * scale;
        // Inside the last bin, away from its lower end, which could round to the bin below.
        let last = BINS as f64 - 0.75;
        let within = if scaled < last { scaled } else { last };
        // Rounded down, but for the ends of the bins themselves.
        let bin = ((within - 0.5) + TO_WHOLE).to_bits() as u32;
        *place = if *gap > 0.0 { bin } else { BINS as u32 + k };
    }
    places
}

/// The gap below which `rank` samples lie, evenly within a bin; closed seams are known exactly.
fn quantile(tally: &Tally, width_mm: f64, rank: f64) -> f64 {
    let mut below = f64::from(tally.closed());
    if rank <= below {
        return 0.0;
    }
    for (k, count) in tally.bins().iter().enumerate() {
        let count = f64::from(*count);
        if count > 0.0 && below + count >= rank {
            return (width_mm * (k as f64 + (rank - below) / count)).min(tally.largest_mm);
        }
        below += count;
    }
    tally.largest_mm
}

/// Visible gaps of one seam for a block of deviates; `offset` is room to work in.
fn gaps_of(form: &SeamForm, deviates: &[[f64; BLOCK]], offset: &mut [f64; BLOCK], gaps: &mut [f64; BLOCK]) {
    gaps.fill(form.divergence_rad);
    for term in form.terms.iter().filter(|term| term.divergence_rad != 0.0) {
        let Some(block) = deviates.get(term.source) else { continue };
        gaps.iter_mut().zip(block).for_each(|(sum, deviate)| *sum += term.divergence_rad * deviate);
    }
    for gap in gaps.iter_mut() {
        // 2 sin(d/2) by its series: to one part in 10⁷ at 30°, to the last digits at the errors of a workshop.
        let d = *gap;
        let square = d * d;
        let chord = d * (1.0 - square * (1.0 / 24.0 - square * (1.0 / 1_920.0)));
        *gap = larger(0.0, -form.seam_mm * chord);
    }
    if form.hold != SeamHold::DrawnTight {
        offset.fill(form.offset_mm);
        for term in form.terms.iter().filter(|term| term.offset_mm != 0.0) {
            let Some(block) = deviates.get(term.source) else { continue };
            offset.iter_mut().zip(block).for_each(|(sum, deviate)| *sum += term.offset_mm * deviate);
        }
        gaps.iter_mut().zip(offset).for_each(|(gap, offset)| *gap = larger(*gap, *offset));
    }
}
