"""Who is due next: every planned wake-up in memory, the earliest first, at a cost that hardly grows with how many sleep."""

from __future__ import annotations

import heapq
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import datetime


class Wakes:
    """When each trainee is to be looked at, as the database has it, or later after a failure.

    A heap with stale entries: a new plan leaves the old entry where it is, and it is thrown away when it comes up. When stale ones
    are the most, the heap is made anew.
    """

    def __init__(self, planned: Mapping[int, datetime] | None = None) -> None:
        self._planned = dict(planned or {})
        self._heap = [(at, trainee_id) for trainee_id, at in self._planned.items()]
        heapq.heapify(self._heap)

    def plan(self, trainee_id: int, at: datetime | None) -> None:
        """Look at a trainee at an instant instead of before; None: not at all."""
        if at is None:
            self._planned.pop(trainee_id, None)
        elif self._planned.get(trainee_id) != at:
            self._planned[trainee_id] = at
            heapq.heappush(self._heap, (at, trainee_id))
        if len(self._heap) > 2 * len(self._planned) + 16:
            self._heap = [(at, trainee_id) for trainee_id, at in self._planned.items()]
            heapq.heapify(self._heap)

    def planned(self, trainee_id: int) -> datetime | None:
        """When a trainee is to be looked at, None for never."""
        return self._planned.get(trainee_id)

    def next_at(self) -> datetime | None:
        """The earliest instant of all, None when nobody is planned."""
        while self._heap and self._planned.get(self._heap[0][1]) != self._heap[0][0]:
            heapq.heappop(self._heap)
        return self._heap[0][0] if self._heap else None

    def due(self, now: datetime) -> list[int]:
        """Who is due by now, the earliest first, each once. They stay due until they are planned anew."""
        found: dict[int, datetime] = {}
        while self._heap and self._heap[0][0] <= now:
            at, trainee_id = heapq.heappop(self._heap)
            if self._planned.get(trainee_id) == at:
                found[trainee_id] = at
        for trainee_id, at in found.items():
            heapq.heappush(self._heap, (at, trainee_id))
        return list(found)
