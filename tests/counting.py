"""Work counted in calls, which are the same on every machine; the benchmarks measure the time."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable


def calls(work: Callable[[], object]) -> int:
    """How many calls some work makes; what is built once and kept is built before."""
    made = 0

    def count(_frame: object, event: str, _argument: object) -> None:
        nonlocal made
        made += event == "call"

    work()
    before = sys.getprofile()
    sys.setprofile(count)
    try:
        work()
    finally:
        sys.setprofile(before)
    return made
