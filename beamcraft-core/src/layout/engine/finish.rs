//! The last bars of a layout, exactly: do the pieces that are left fit so many equal bars?
//!
//! Bar by bar: the longest piece left lies in some bar, so that every filling with it is tried, the fullest first. What
//! all bars together have to spare bounds the waste of each (S. Martello, P. Toth 1990; R. E. Korf, "An improved
//! algorithm for optimal bin packing", IJCAI 2003; recalled).
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::bars::Piece;

/// Fillings of one bar that are looked at.
const MOST_FILLS: usize = 60;

/// How many of each kind of piece lie in a bar.
pub(crate) type Content = Vec<(u32, u32)>;

pub(crate) struct Finish<'p> {
    pieces: &'p [Piece],
    length: i64,
    left: Vec<u32>,
    filled: Vec<Content>,
    nodes: u64,
    most: u64,
}

impl<'p> Finish<'p> {
    /// `pieces` in falling length, `left` of each; gives up after `most` nodes.
    pub(crate) fn new(pieces: &'p [Piece], left: Vec<u32>, length: i64, most: u64) -> Self {
        Self { pieces, length, left, filled: Vec::new(), nodes: 0, most }
    }

    /// The content of each of so many bars, when the pieces fit.
    pub(crate) fn into_bars(mut self, bars: u32) -> (Option<Vec<Content>>, u64) {
        let wanted: i128 = self.pieces.iter().zip(&self.left).map(|(p, n)| i128::from(p.length) * i128::from(*n)).sum();
        let spare = i128::from(self.length) * i128::from(bars) - wanted;
        let fits = i64::try_from(spare).is_ok_and(|spare| spare >= 0 && self.fill(bars, spare));
        (fits.then_some(self.filled), self.nodes)
    }

    fn fill(&mut self, bars: u32, spare: i64) -> bool {
        let Some(first) = self.left.iter().position(|n| *n > 0) else { return true };
        if bars == 0 {
            return false;
        }
        let kinds: Vec<(u32, i64, u32)> = (first..self.left.len())
            .filter(|k| self.left[*k] > 0)
            .map(|k| (k as u32, self.pieces[k].length, self.left[k] - u32::from(k == first)))
            .collect();
        // What the kinds from one on hold together.
        let mut behind = vec![0_i64; kinds.len() + 1];
        for k in (0..kinds.len()).rev() {
            behind[k] = behind[k + 1].saturating_add(kinds[k].1.saturating_mul(i64::from(kinds[k].2)));
        }
        let room = self.length - kinds[0].1;
        let mut fills = Fills { kinds: &kinds, behind: &behind, chosen: vec![(first as u32, 1)], found: Vec::new() };
        fills.choose(0, room, spare, &mut self.nodes, self.most);
        let mut found = fills.found;
        found.sort_by_key(|(waste, _)| *waste);
        for (waste, content) in found {
            for (k, n) in &content {
                self.left[*k as usize] -= n;
            }
            self.filled.push(content);
            if self.fill(bars - 1, spare - waste) {
                return true;
            }
            for (k, n) in self.filled.pop().unwrap_or_default() {
                self.left[k as usize] += n;
            }
            if self.nodes > self.most {
                return false;
            }
        }
        false
    }
}

/// The fillings of one bar that waste little enough.
struct Fills<'k> {
    /// Index, length and number left, in falling length.
    kinds: &'k [(u32, i64, u32)],
    behind: &'k [i64],
    chosen: Content,
    found: Vec<(i64, Content)>,
}

impl Fills<'_> {
    fn choose(&mut self, from: usize, room: i64, spare: i64, nodes: &mut u64, most: u64) {
        *nodes += 1;
        if room <= spare {
            self.keep(room);
        }
        let start = from + self.kinds[from..].partition_point(|(_, length, _)| *length > room);
        for k in start..self.kinds.len() {
            if room - self.behind[k] > spare || self.found.len() >= MOST_FILLS || *nodes > most {
                return;
            }
            let (index, length, left) = self.kinds[k];
            let count = (room / length).min(i64::from(left));
            for n in (1..=count).rev() {
                self.chosen.push((index, n as u32));
                self.choose(k + 1, room - n * length, spare, nodes, most);
                self.chosen.pop();
            }
        }
    }

    fn keep(&mut self, waste: i64) {
        let mut content: Content = Vec::with_capacity(self.chosen.len());
        for (k, n) in &self.chosen {
            match content.last_mut() {
                Some(last) if last.0 == *k => last.1 += n,
                _ => content.push((*k, *n)),
            }
        }
        self.found.push((waste, content));
    }
}
