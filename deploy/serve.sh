#!/bin/sh
# Host the messaging account. The token comes from the environment: STATIONCALL_TOKEN. Arguments go to `stationcall serve`.
set -u
extra=""
. "$(dirname "$0")/venv.sh"
exec "$bin/python" -m bot serve "$@"
