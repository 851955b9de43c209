"""The core computes and nothing else: no clock, no chance, no files, no sockets, no database.

The import contract in pyproject.toml keeps libraries out; what it cannot see, single names and calls, is looked for here.
"""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CORE = sorted((ROOT / "core").rglob("*.py"))

STANDARD = {
    "__future__",
    "bisect",
    "collections",
    "contextlib",
    "dataclasses",
    "datetime",
    "decimal",
    "enum",
    "fractions",
    "functools",
    "graphlib",
    "heapq",
    "importlib",  # importlib.resources, for data that ships with the package
    "itertools",
    "json",
    "math",
    "operator",
    "re",
    "statistics",
    "string",
    "tomllib",
    "types",
    "typing",
    "unicodedata",
    "zoneinfo",  # in reminders: zone data is static data
}
LIBRARIES = {"dateutil", "lark", "numpy", "rapidfuzz"}
FORBIDDEN_CALLS = {
    "now",
    "utcnow",
    "today",
    "open",
    "input",
    "print",
    "sleep",
    "urandom",
    "getenv",
    "system",
    "read_bytes",
    "write_text",
}


@pytest.mark.parametrize("path", CORE, ids=lambda path: str(path.relative_to(ROOT)))
def test_a_core_file_imports_only_what_computes(path):
    """Standard modules from the list above, libraries that only compute, and the core itself."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            names = [node.module or ""]
        for name in names:
            top = name.split(".")[0]
            assert top in STANDARD | LIBRARIES | {"core"}, f"{path.name} imports {name}: move what needs it to bot"
            assert top != "importlib" or name == "importlib.resources", f"{path.name} imports {name}"


@pytest.mark.parametrize("path", CORE, ids=lambda path: str(path.relative_to(ROOT)))
def test_a_core_file_calls_no_clock_and_no_file(path):
    """Time and text come in as arguments."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            assert name not in FORBIDDEN_CALLS, f"{path.name}:{node.lineno} calls {name}(): take its result as an argument"


def test_importing_the_core_loads_nothing_of_the_shell():
    """A fresh interpreter that imports the conversation loads no database, no bot library and no event loop."""
    code = (
        "import sys, core.session.step\n"
        "bad = [m for m in ('bot', 'asyncio', 'sqlite3', 'sqlalchemy', 'sqlmodel', 'pydantic', 'apscheduler', 'prompt_toolkit',"
        " 'telegram', 'random') if m in sys.modules]\n"
        "print(','.join(bad))"
    )
    loaded = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True).stdout.strip()
    assert set(filter(None, loaded.split(","))) <= ALLOWED_BY_LIBRARIES, f"core brings in {loaded}"


ALLOWED_BY_LIBRARIES = {"random"}  # numpy loads it for its own generators; no core file may import it
