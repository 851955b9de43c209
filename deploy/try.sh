#!/bin/sh
# Train in the terminal: no account, no server. Arguments go to `stationcall chat`, such as --speed 10.
set -u
extra=""
. "$(dirname "$0")/venv.sh"
exec "$bin/python" -m bot chat "$@"
