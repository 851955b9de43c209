"""Rules of the house that no linter knows; each failure names the remedy."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from sqlmodel import SQLModel

from bot.store import tables

ROOT = Path(__file__).parents[2]
SOURCES = sorted([*(ROOT / "core").rglob("*.py"), *(ROOT / "bot").rglob("*.py")])
DECISIONS = sorted(
    [*(ROOT / "core" / "session").rglob("*.py"), ROOT / "core" / "reminders.py", *(ROOT / "core" / "safety").rglob("*.py")]
)
CLOCKS = {"bot/clock.py", "bot/alarms.py"}
ZONES = {"core/reminders.py"}


def name(path: Path) -> str:
    """A file's path from the top."""
    return path.relative_to(ROOT).as_posix()


def calls(path: Path) -> list[tuple[str, int]]:
    """What a file calls, by its last name, and the line."""
    found = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            found.append((called, node.lineno))
    return found


@pytest.mark.parametrize("path", SOURCES, ids=name)
def test_only_the_clock_reads_a_clock(path):
    """Time comes from `bot.clock`, so that the simulated one can stand in for it."""
    if name(path) not in CLOCKS:
        lines = path.read_text(encoding="utf-8").splitlines()
        asked = [line for called, line in calls(path) if called in {"now", "utcnow", "monotonic", "perf_counter"}]
        read = [line for line in asked if "clock.now()" not in lines[line - 1]]
        assert not read, f"{name(path)}:{read} reads a clock: take the time from a Clock"


@pytest.mark.parametrize("path", [path for path in SOURCES if name(path).startswith("core/")], ids=name)
def test_zones_are_known_in_one_place(path):
    """Instants are UTC; only `core.reminders` turns them into somebody's wall clock."""
    if name(path) not in ZONES:
        imported = {
            alias.name if isinstance(node, ast.Import) else node.module
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
            if isinstance(node, ast.Import | ast.ImportFrom)
            for alias in node.names
        }
        assert "zoneinfo" not in imported, f"{name(path)} knows zones: ask core.reminders"


@pytest.mark.parametrize("path", DECISIONS, ids=name)
def test_decisions_hold_no_sentences(path):
    """What people read is in `bot.wording`; a decision says a message, never a text."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    docstrings = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef) and node.body and isinstance(node.body[0], ast.Expr)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docstrings:
            assert node.value.count(" ") < 3, f"{name(path)}:{node.lineno} holds a sentence: make it a message with a wording"


@pytest.mark.parametrize("path", [path for path in SOURCES if name(path).startswith("bot/store/")], ids=name)
def test_sets_are_only_ever_added(path):
    """A correction is a new row that points at the old one; no statement changes or deletes a set."""
    text = path.read_text(encoding="utf-8")
    for forbidden in ("update(SET", "delete(SET", "UPDATE set_record", "DELETE FROM set_record"):
        assert forbidden not in text, f"{name(path)} holds {forbidden}: add a row instead"


def test_tables_have_no_behaviour():
    """A table class has columns and nothing else: what is valid is checked in `bot.store.values`."""
    for table in SQLModel.__subclasses__():
        for kind in [table, *table.__subclasses__()]:
            if kind.__module__ == tables.__name__:
                own = [key for key, value in vars(kind).items() if callable(value) and not key.startswith(("_", "model_"))]
                assert not own, f"{kind.__name__} has {own}: move them to bot.store.values"
