"""Cut lists beside CP-SAT: the same instances, one thread each, the same time in one run.

Usage: cutting.py RUNNER FOLDER. RUNNER is the program `cutting` of the tests, FOLDER the instances. CP-SAT gets a second
for each instance, or the processor time that the cut list took where that is longer; its own count of work done stands for
the second, so that a busy machine takes nothing from either. Bars are modelled by counts of each length in each bar,
ordered by fill; sheets by optional rectangles that do not overlap, without the rule that every cut goes from
edge to edge, so that there CP-SAT may find more than any saw can cut.
"""

import csv
import json
import subprocess
import sys
import tempfile
from pathlib import Path

from ortools.sat.python import cp_model

BARS = ["1d_falkenauer_u", "1d_falkenauer_t", "1d_scholl_1", "1d_scholl_3", "1d_waescher", "1d_hard28", "1d_kerf_multistock"]
SHEETS = ["2d_guillotine_constrained_classic", "2d_guillotine_constrained_ngcut", "2d_guillotine_constrained_cu_cw"]
LEAST_S = 1.0
# More instances of a set say the same again.
MOST = 8


def first_fit(stock, items):
    """Bars that first fit decreasing opens of each kind, as an upper limit for the model."""
    length = max(bar[0] for bar in stock)
    room = []
    for size, count in sorted(items, reverse=True):
        for _ in range(count):
            place = next((k for k, left in enumerate(room) if left >= size), None)
            if place is None:
                room.append(length)
                place = len(room) - 1
            room[place] -= size
    return len(room)


def solver(seconds):
    engine = cp_model.CpSolver()
    engine.parameters.num_workers = 1
    engine.parameters.max_deterministic_time = seconds
    engine.parameters.max_time_in_seconds = 120.0
    return engine


def answer(engine, model):
    status = engine.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None, False
    return engine.objective_value, status == cp_model.OPTIMAL


def bars(instance, seconds):
    kerf = instance.get("kerf", 0)
    items = [(size + kerf, count) for size, count in instance["items"]]
    stock = instance.get("stock") or [[instance["capacity"], None, 1]]
    stock = [(length + kerf, count, cost) for length, count, cost in stock]
    model = cp_model.CpModel()
    most = first_fit(stock, items)
    if len(stock) > 1:
        total = sum(size * count for size, count in items)
        most = max(most, 2 * total // min(bar[0] for bar in stock) + 1)
    opened, made = [], [[] for _ in items]
    for length, limit, cost in stock:
        before = None
        for _ in range(min(most, limit if limit is not None else most)):
            use = model.new_bool_var("")
            counts = [model.new_int_var(0, min(count, length // size), "") for size, count in items]
            load = sum(size * n for (size, _), n in zip(items, counts))
            model.add(load <= length * use)
            if before is not None:
                model.add(load <= before)
            before = load
            opened.append(cost * use)
            for row, n in zip(made, counts):
                row.append(n)
    for (_, count), row in zip(items, made):
        model.add(sum(row) == count)
    model.minimize(sum(opened))
    return answer(solver(seconds), model)


def sheet(instance, kerf, seconds):
    width, height = (size + kerf for size in instance["stock"][0][:2])
    model = cp_model.CpModel()
    xs, ys, worth = [], [], []
    for w, h, copies, value in instance["items"]:
        w, h, before = w + kerf, h + kerf, None
        if w > width or h > height:
            continue
        room = (width * height) // (w * h)
        for _ in range(room if copies is None else min(copies, room)):
            use = model.new_bool_var("")
            x, y = model.new_int_var(0, width - w, ""), model.new_int_var(0, height - h, "")
            xs.append(model.new_optional_fixed_size_interval_var(x, w, use, ""))
            ys.append(model.new_optional_fixed_size_interval_var(y, h, use, ""))
            if before is not None:
                model.add(use <= before)
            before = use
            worth.append((value, w * h, use))
    model.add_no_overlap_2d(xs, ys)
    model.add(sum(area * use for _, area, use in worth) <= width * height)
    model.maximize(sum(value * use for value, _, use in worth))
    return answer(solver(seconds), model)


def main():
    runner, folder = Path(sys.argv[1]).resolve(), Path(sys.argv[2])
    if not (folder / "best_known.csv").is_file():
        print(f"*** SKIPPED: no instances in {folder} ***")
        return
    print("| set | instances | wins | draws | losses | proven here | proven by CP-SAT |")
    print("|---|---|---|---|---|---|---|")
    for name in BARS + SHEETS:
        with tempfile.TemporaryDirectory() as scratch:
            rows = Path(scratch) / "rows.csv"
            subprocess.run([runner, "--only", name, "--rows", rows, folder], check=True, stdout=subprocess.DEVNULL)
            solved = [row for row in csv.DictReader(rows.open(encoding="utf-8")) if row["set"] == name]
        instances = {row["name"]: row for row in json.loads((folder / f"{name}.json").read_text(encoding="utf-8"))}
        step = -(-len(solved) // MOST)
        wins = draws = losses = ours_proven = theirs_proven = 0
        chosen = solved[::step]
        for row in chosen:
            seconds, value = max(LEAST_S, float(row["seconds"])), float(row["value"])
            instance, kerf = instances[row["instance"]], int(float(row["kerf"]))
            more_is_better = name in SHEETS
            theirs, proven = sheet(instance, kerf, seconds) if more_is_better else bars(instance, seconds)
            ours_proven += row["value"] == row["bound"]
            theirs_proven += proven
            difference = value if theirs is None else (value - theirs if more_is_better else theirs - value)
            if theirs is None or difference > 1e-6:
                wins += 1
            elif difference < -1e-6:
                losses += 1
                print(f"loss: {name} {row['instance']} kerf {kerf}: {value} against {theirs}", file=sys.stderr)
            else:
                draws += 1
        print(f"| `{name}` | {len(chosen)} | {wins} | {draws} | {losses} | {ours_proven} | {theirs_proven} |", flush=True)


if __name__ == "__main__":
    main()
