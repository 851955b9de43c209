#!/bin/sh
# Everything CI checks: format, lint, types, the import contract, and the tests (the purity test among them).
set -eu
extra="[test]"
. "$(dirname "$0")/venv.sh"
"$bin/python" -m ruff format --check .
"$bin/python" -m ruff check .
"$bin/python" -m mypy
"$bin/lint-imports"
exec "$bin/python" -m pytest "$@"
