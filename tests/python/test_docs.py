"""Examples of the docs run: docstrings, the README's Python, the example programs."""

import doctest
import inspect
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

import beamcraft

TOP = Path(__file__).resolve().parents[2]
EXAMPLES = sorted((TOP / "beamcraft-py" / "examples").glob("*.py"))


def documented() -> list[tuple[str, str]]:
    found = [("beamcraft", beamcraft.__doc__ or "")]
    for name in beamcraft.__all__:
        doc = inspect.getdoc(getattr(beamcraft, name))
        if doc and ">>>" in doc:
            found.append((name, doc))
    return found


DOCUMENTED = documented()


@pytest.mark.parametrize(("name", "doc"), DOCUMENTED, ids=[name for name, _ in DOCUMENTED])
def test_docstring_example(name: str, doc: str) -> None:
    test = doctest.DocTestParser().get_doctest(doc, {}, name, None, 0)
    assert test.examples
    report: list[str] = []
    doctest.DocTestRunner().run(test, out=report.append)
    assert not report, "".join(report)


def test_functions_say_what_they_take_and_give() -> None:
    for row in beamcraft.calculations():
        doc = inspect.getdoc(getattr(beamcraft, row["name"])) or ""
        for title in ("Returns\n-------", "Raises\n------"):
            assert title in doc, row["name"]
        # A plan takes its whole input as one argument.
        fields = ["spec"] if row["name"] == "plan" else row["input_schema"].get("properties", {})
        for field in fields:
            assert f"\n{field}" in doc, (row["name"], field)


def test_stub_says_the_same_as_help() -> None:
    stub = (Path(beamcraft.__file__).parent / "_native.pyi").read_text(encoding="utf-8")
    for row in beamcraft.calculations():
        first = (inspect.getdoc(getattr(beamcraft, row["name"])) or "").splitlines()[0]
        assert f'"""{first}\n' in stub


def pages() -> list[Path]:
    candidates = [TOP / "README.md", TOP / "beamcraft-py" / "README.md", *sorted((TOP / "docs" / "src").rglob("*.md"))]
    return [page for page in candidates if page.exists() and "```python\n" in page.read_text(encoding="utf-8")]


@pytest.mark.parametrize("page", pages(), ids=lambda page: str(page.relative_to(TOP)))
def test_python_of_a_page_runs(page: Path, tmp_path: Path) -> None:
    blocks = re.findall(r"```python\n(.*?)```", page.read_text(encoding="utf-8"), re.DOTALL)
    script = tmp_path / "page.py"
    # The blocks of a page build on one another.
    script.write_text("\n".join(blocks), encoding="utf-8")
    run(script, tmp_path)


def run(script: Path, folder: Path) -> str:
    done = subprocess.run(
        [sys.executable, "-W", "error", str(script)], cwd=folder, capture_output=True, text=True, env={**os.environ}
    )
    assert done.returncode == 0, done.stderr
    assert not done.stderr
    return done.stdout


@pytest.mark.parametrize("script", EXAMPLES, ids=lambda script: script.name)
def test_example_runs_and_says_something(script: Path, tmp_path: Path) -> None:
    first = run(script, tmp_path)
    assert len(first.splitlines()) > 5
    assert run(script, tmp_path) == first, "the same every time"


def test_there_is_an_example() -> None:
    assert EXAMPLES
