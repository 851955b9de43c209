#!/bin/sh
# Everything CI checks: format, lint, types, the import contract, and the tests (the purity test among them).
set -eu
extra="[test]"
. "$(dirname "$0")/venv.sh"
"$bin/python" -m ruff format --check .
"$bin/python" -m ruff check .
"$bin/python" -m mypy
"$bin/lint-imports"
# A worker a core; a file's tests stay together, since they share what is slow to set up.
exec "$bin/python" -m pytest -n auto --dist loadfile "$@"
