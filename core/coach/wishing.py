"""How a coach's wishes for one trainee change by a deed: the latest about an exercise counts, ending one leaves the others."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.deeds import DeedKind
from core.wishes import CardNote, HeldLoad, Swapped

if TYPE_CHECKING:
    from core.deeds import Deed
    from core.wishes import Wishes


def wished(wishes: Wishes, deed: Deed) -> Wishes:
    """The wishes after a deed; the same where it is about none."""
    slug = deed.exercise
    swaps, holds, notes = wishes.swaps, wishes.holds, wishes.notes
    match deed.kind:
        case DeedKind.SWAP if slug is not None and deed.other is not None:
            return replace(wishes, swaps=(*(one for one in swaps if one.exercise != slug), Swapped(slug, deed.other)))
        case DeedKind.SWAP_ENDED:
            return replace(wishes, swaps=tuple(one for one in swaps if slug not in (None, one.exercise, one.instead)))
        case DeedKind.HOLD:
            return replace(wishes, holds=(*(one for one in holds if one.exercise != slug), HeldLoad(slug, deed.load)))
        case DeedKind.HOLD_ENDED:
            return replace(wishes, holds=tuple(one for one in holds if slug not in (None, one.exercise)))
        case DeedKind.NOTE:
            return replace(wishes, notes=(*(one for one in notes if one.exercise != slug), CardNote(slug, deed.text)))
        case DeedKind.NOTE_ENDED:
            return replace(wishes, notes=tuple(one for one in notes if slug not in (None, one.exercise)))
        case _:
            return wishes
