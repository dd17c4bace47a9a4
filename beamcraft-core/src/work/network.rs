//! The network of tasks: its order, and what stands in a ring.

use std::collections::HashMap;

use crate::error::{Detail, Error, ErrorCode, closest};

/// Tasks by their place in the list.
pub(super) struct Network {
    /// What each waits for.
    pub(super) before: Vec<Vec<usize>>,
    /// Every task after all that it waits for.
    pub(super) order: Vec<usize>,
}

impl Network {
    /// Reads `(id, ids that it waits for)`.
    ///
    /// # Errors
    /// `duplicate_field` for an id given twice, `unknown_name` for one that is not in the list, `inconsistent` for a ring.
    pub(super) fn new(tasks: &[(&str, &[String])]) -> Result<Self, Error> {
        let mut places = HashMap::with_capacity(tasks.len());
        let mut faults = Vec::new();
        for (k, (id, _)) in tasks.iter().enumerate() {
            if places.insert(*id, k).is_some() {
                faults.push(given_twice(k, id));
            }
        }
        let mut before = Vec::with_capacity(tasks.len());
        for (k, (_, after)) in tasks.iter().enumerate() {
            let mut found = Vec::with_capacity(after.len());
            for (j, id) in after.iter().enumerate() {
                match places.get(id.as_str()) {
                    Some(place) => found.push(*place),
                    None => faults.push(unknown(k, j, id, tasks)),
                }
            }
            before.push(found);
        }
        Error::unless_empty(faults)?;
        let order = ordered(&before);
        if order.len() < tasks.len() {
            return Err(ring(&order, tasks));
        }
        Ok(Self { before, order })
    }

    /// What waits for each task.
    pub(super) fn after(&self) -> Vec<Vec<usize>> {
        let mut after = vec![Vec::new(); self.before.len()];
        for (k, before) in self.before.iter().enumerate() {
            for place in before {
                if let Some(list) = after.get_mut(*place) {
                    list.push(k);
                }
            }
        }
        after
    }
}

/// Tasks whose predecessors all stand before them, first given first; tasks in or behind a ring are missing.
fn ordered(before: &[Vec<usize>]) -> Vec<usize> {
    let mut done = vec![false; before.len()];
    let mut order = Vec::with_capacity(before.len());
    let mut grew = true;
    while grew {
        grew = false;
        for (k, waits) in before.iter().enumerate() {
            let ready = waits.iter().all(|place| done.get(*place).copied().unwrap_or(false));
            if ready && !done.get(k).copied().unwrap_or(true) {
                if let Some(mark) = done.get_mut(k) {
                    *mark = true;
                }
                order.push(k);
                grew = true;
            }
        }
    }
    order
}

#[cold]
fn given_twice(k: usize, id: &str) -> Detail {
    Detail {
        code: ErrorCode::DuplicateField,
        path: format!("tasks[{k}].id"),
        given: format!("\"{id}\""),
        allowed: "an id of its own for every task".to_owned(),
        cure: String::new(),
    }
}

#[cold]
fn unknown(k: usize, j: usize, id: &str, tasks: &[(&str, &[String])]) -> Detail {
    let names = || tasks.iter().map(|(id, _)| *id);
    let shown: Vec<_> = names().take(30).collect();
    let more = if tasks.len() > shown.len() { ", …" } else { "" };
    Detail {
        code: ErrorCode::UnknownName,
        path: format!("tasks[{k}].after[{j}]"),
        given: format!("\"{id}\""),
        allowed: shown.join(", ") + more,
        cure: closest(id, names()).map(|found| format!("did you mean {found}?")).unwrap_or_default(),
    }
}

#[cold]
fn ring(order: &[usize], tasks: &[(&str, &[String])]) -> Error {
    let left: Vec<_> = tasks.iter().enumerate().filter(|(k, _)| !order.contains(k)).map(|(_, (id, _))| *id).collect();
    Error::one(Detail {
        code: ErrorCode::Inconsistent,
        path: "tasks".to_owned(),
        given: format!("tasks that wait for one another in a ring, or for one that does: {}", left.join(", ")),
        allowed: "tasks that can be put in an order".to_owned(),
        cure: "take one of these out of the after list of another".to_owned(),
    })
}
