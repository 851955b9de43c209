# Sourced by try.sh and test.sh: a virtual environment in the checkout with pinned versions, made or brought up to date.
# Wants: $extra, the packages beside the program's own ("" or "[test]"). Gives: $bin, the environment's commands.
# Nothing is installed when neither pyproject.toml nor constraints.txt has changed since the last time.

say() { printf '%s\n' "$*" >&2; }

find_python() {
    for name in ${PYTHON:-python3 python3.13 python3.12 python3.11 python}; do
        if "$name" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
            command -v "$name"
            return 0
        fi
    done
    return 1
}

cd "$(dirname "$0")/.." || exit 1
bin=.venv/bin
[ -d .venv/Scripts ] && bin=.venv/Scripts
stamp=.venv/installed${extra}
wanted=$(cat pyproject.toml deploy/constraints.txt | cksum)

if [ "$(cat "$stamp" 2>/dev/null)" != "$wanted" ] || ! "$bin/python" -c '' 2>/dev/null; then
    python=$(find_python) || { say "Stationcall needs Python 3.11 or newer: install it (Debian: apt install python3 python3-venv), then try again."; exit 1; }
    if ! "$python" -c 'import venv, ensurepip' 2>/dev/null; then
        say "Python's venv module is missing: install it (Debian: apt install python3-venv), then try again."
        exit 1
    fi
    say "Making ready (once): the virtual environment .venv with pinned packages …"
    "$bin/python" -c '' 2>/dev/null || "$python" -m venv --clear .venv || exit 1
    bin=.venv/bin
    [ -d .venv/Scripts ] && bin=.venv/Scripts
    install="$bin/python -m pip install --quiet --disable-pip-version-check --constraint deploy/constraints.txt"
    $install hatchling editables || exit 1
    $install --no-build-isolation --editable ".$extra" || exit 1
    printf '%s\n' "$wanted" > "$stamp"
fi
