"""The verification rows, read as the Rust runner reads them: strictly, and into the library's own units."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parents[1] / "verification"
FACTORS: dict[str, float] = tomllib.loads((FOLDER / "units.toml").read_text(encoding="utf-8"))
KEYS = {"id", "calculation", "input", "expect", "tolerance", "units", "source", "evidence", "note"}


@dataclass(frozen=True)
class Expected:
    """A value that must come out, in the field's own unit."""

    path: str
    value: float | str
    allowed: float


@dataclass(frozen=True)
class Row:
    id: str
    calculation: str
    input: dict[str, Any]
    expected: tuple[Expected, ...]


def join(path: str, name: str) -> str:
    return f"{path}.{name}" if path else name


class Units:
    """Printed units of a row: the whole path counts first, then its last field."""

    def __init__(self, printed: dict[str, str]) -> None:
        self.printed = printed

    def factor(self, path: str) -> float | None:
        field = path.rsplit(".")[-1].split("[")[0]
        unit = self.printed.get(path, self.printed.get(field))
        return None if unit is None else FACTORS[unit]

    def own(self, path: str, value: Any) -> Any:
        """The value of an input in the library's own units."""
        if isinstance(value, dict):
            return {name: self.own(join(path, name), inner) for name, inner in value.items()}
        if isinstance(value, list):
            return [self.own(f"{path}[{k}]", inner) for k, inner in enumerate(value)]
        if isinstance(value, (int, float)) and (factor := self.factor(path)) is not None:
            return value * factor
        return value


def flatten(path: str, value: Any) -> list[tuple[str, Any]]:
    if isinstance(value, dict):
        return [leaf for name, inner in value.items() for leaf in flatten(join(path, name), inner)]
    if isinstance(value, list):
        return [leaf for k, inner in enumerate(value) for leaf in flatten(f"{path}[{k}]", inner)]
    return [(path, value)]


def read(raw: dict[str, Any]) -> Row:
    assert raw.keys() <= KEYS, f"{raw['id']}: unknown keys {raw.keys() - KEYS}"
    units = Units(raw.get("units", {}))
    expected = []
    for path, value in flatten("", raw["expect"]):
        if isinstance(value, str):
            expected.append(Expected(path, value, 0.0))
            continue
        factor = units.factor(path) or 1.0
        tolerance = raw["tolerance"]
        assert tolerance["why"], raw["id"]
        if "abs" in tolerance:
            allowed = tolerance["abs"] * factor
        else:
            allowed = tolerance["rel"] * abs(value * factor)
        expected.append(Expected(path, value * factor, allowed))
    assert expected, f"{raw['id']} expects nothing"
    return Row(raw["id"], raw["calculation"], units.own("", raw["input"]), tuple(expected))


def read_all() -> list[Row]:
    found = []
    for path in sorted(FOLDER.glob("*.toml")):
        if path.name != "units.toml":
            found += [read(raw) for raw in tomllib.loads(path.read_text(encoding="utf-8"))["row"]]
    assert found
    return found


def at(value: Any, path: str) -> Any:
    """The value at a path such as ``modes[0].value_n``."""
    for step in path.replace("[", ".[").split("."):
        if step:
            value = value[int(step[1:-1])] if step.startswith("[") else value[step]
    return value
