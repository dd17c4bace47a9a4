"""Objects of every class, made from the schemas that the module itself reports."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from keyword import iskeyword
from pathlib import Path
from typing import Any

import beamcraft

Schema = dict[str, Any]

CALCULATIONS: dict[str, dict[str, Any]] = {row["name"]: row for row in beamcraft.calculations()}

# A text that a careless writer of literals, tables or JSON trips over.
HOSTILE = "a'b\"c\\d\n<script>&amp;\u2028é\U0001fab5\x01"


def argument(field: str) -> str:
    """Name of a field as Python writes it."""
    return f"{field}_" if iskeyword(field) else field


def structs() -> dict[str, tuple[Schema, Schema]]:
    """Schema and root schema of every struct, by name."""
    found: dict[str, tuple[Schema, Schema]] = {}
    for row in CALCULATIONS.values():
        for root in (row["input_schema"], row["output_schema"]):
            found.setdefault(root["title"], (root, root))
            for name, schema in root.get("$defs", {}).items():
                if schema.get("type") == "object":
                    found.setdefault(name, (schema, root))
    return found


STRUCTS = structs()


def follow(schema: Schema, root: Schema) -> tuple[str, Schema]:
    """Name and schema behind a reference; an empty name where there is none."""
    if "$ref" not in schema:
        return "", schema
    name = schema["$ref"].removeprefix("#/$defs/")
    return name, root["$defs"][name]


def texts(schema: Schema) -> list[str] | None:
    """The texts of a choice without data."""
    choices = schema.get("oneOf")
    if choices and all("const" in choice for choice in choices):
        return [choice["const"] for choice in choices]
    return None


SPECS = Path(__file__).resolve().parents[2] / "beamcraft-core" / "examples" / "specs"

# A plan follows from its spec; its class has no constructor.
MADE_BY_FUNCTION = {"Plan": lambda: beamcraft.plan((SPECS / "ash_shelf_beam.json").read_text(encoding="utf-8"))}


def sample(name: str, numbers: Iterator[float]) -> Any:
    """An object of a class; its values are of the right type and otherwise anything."""
    if name in MADE_BY_FUNCTION:
        return MADE_BY_FUNCTION[name]()
    schema, root = STRUCTS[name]
    fields = schema.get("properties", {})
    values = {argument(field): value_of(inner, root, numbers) for field, inner in fields.items()}
    return getattr(beamcraft, name)(**values)


def value_of(schema: Schema, root: Schema, numbers: Iterator[float]) -> Any:
    name, schema = follow(schema, root)
    if "anyOf" in schema:
        return value_of(schema["anyOf"][0], root, numbers)
    if (choices := texts(schema)) is not None:
        return choices[-1]
    if "oneOf" in schema:
        (content,) = schema["oneOf"][0]["properties"].values()
        return value_of(content, root, numbers)
    kinds = schema["type"]
    kind = kinds if isinstance(kinds, str) else next(kind for kind in kinds if kind != "null")
    if kind == "number":
        return next(numbers)
    if kind == "integer":
        return int(next(numbers))
    if kind == "string":
        return HOSTILE
    if kind == "array":
        count = schema.get("minItems", 0) or 2
        items = [value_of(schema["items"], root, numbers) for _ in range(count)]
        return tuple(items) if is_fixed(schema) else items
    assert kind == "object", schema
    return sample(name, numbers)


def is_fixed(schema: Schema) -> bool:
    return "minItems" in schema and schema["minItems"] == schema.get("maxItems")


def numbers() -> Iterator[float]:
    """Numbers that do not repeat and have no short decimal form."""
    return (k + 1 / 3 for k in itertools.count(1))


def objects() -> dict[str, Any]:
    """One object of every class."""
    return {name: sample(name, numbers()) for name in STRUCTS}


def build(name: str, values: dict[str, Any]) -> Any:
    """The object of a class whose dict is ``values``."""
    return getattr(beamcraft, name)(**arguments(name, values))


def arguments(name: str, values: dict[str, Any]) -> dict[str, Any]:
    """The keyword arguments of a class whose dict is ``values``."""
    schema, root = STRUCTS[name]
    return {argument(field): of_plain(schema["properties"][field], root, value) for field, value in values.items()}


def of_plain(schema: Schema, root: Schema, value: Any) -> Any:
    name, schema = follow(schema, root)
    if "anyOf" in schema:
        return None if value is None else of_plain(schema["anyOf"][0], root, value)
    if isinstance(value, list):
        items = [of_plain(schema["items"], root, item) for item in value]
        return tuple(items) if is_fixed(schema) else items
    if isinstance(value, dict) and "oneOf" in schema:
        ((choice, content),) = value.items()
        inner = next(c["properties"][choice] for c in schema["oneOf"] if choice in c.get("properties", {}))
        return of_plain(inner, root, content)
    if isinstance(value, dict):
        return build(name, value)
    return value
