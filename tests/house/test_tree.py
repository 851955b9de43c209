"""The house is laid out as DEVELOPERS.md says, and kept tidy."""

from __future__ import annotations

import ast
import re
import subprocess
from pathlib import Path

import pytest

from bot import errors as shell_errors
from core import errors as core_errors

ROOT = Path(__file__).parents[2]
NOTES = r"\b(TO" + r"DO|FIX" + r"ME|X" + r"XX|HA" + r"CK)\b"
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "bot", "core", "tests", "deploy", "fixtures", "LICENSE"}


def tracked() -> list[Path]:
    """The files git tracks, or would track."""
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return [ROOT / name for name in listed.stdout.splitlines() if (ROOT / name).exists()]


SOURCES = [path for path in tracked() if path.suffix == ".py"]


def test_the_top_level_holds_only_the_named_entries():
    """README, DEVELOPERS, pyproject, the licence, six folders, and dot-files."""
    names = {path.relative_to(ROOT).parts[0] for path in tracked()}
    assert {name for name in names if not name.startswith(".")} <= TOP


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_a_source_file_leaves_no_notes_to_self_and_never_waits(path):
    """What is not done is an issue, not a comment; nothing sleeps for a fixed time."""
    text = path.read_text(encoding="utf-8")
    for number, line in enumerate(text.splitlines(), start=1):
        assert not re.search(NOTES, line), f"{path.name}:{number}: file an issue instead"
        assert not re.search(r"time\.sleep\(|asyncio\.sleep\([0-9.]*[1-9]", line) or path == Path(__file__), (
            f"{path.name}:{number} sleeps"
        )


def test_no_module_is_called_utils():
    """A module has a subject."""
    assert not [path for path in SOURCES if path.stem in {"utils", "util", "helpers", "misc", "common"}]


@pytest.mark.parametrize("module", [core_errors, shell_errors], ids=["core", "bot"])
def test_the_tree_of_errors_is_drawn_as_it_is(module):
    """The docstring draws every class of the file, and no other."""
    tree = ast.parse(Path(module.__file__).read_text(encoding="utf-8"))
    classes = {node.name for node in tree.body if isinstance(node, ast.ClassDef)}
    drawn = set(re.findall(r"^[│├└─ ]*([A-Z]\w+)(?=\s|$)", (module.__doc__ or "").split("\n\n", 1)[1], re.MULTILINE))
    assert drawn == classes


@pytest.mark.parametrize(
    "path", [path for path in SOURCES if path.relative_to(ROOT).parts[0] == "tests"], ids=lambda path: path.name
)
def test_every_test_states_its_rule(path):
    """A test has a docstring of one or two sentences that says the rule."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.name.startswith("test_"):
            assert ast.get_docstring(node), f"{path.name}:{node.lineno} {node.name} has no docstring"
