"""Pictures, drawn by the program: what a message shows becomes a PNG when it is sent.

`paint` is the only door to the drawing library, `board`, `progress`, `roster`, `own_week` draw one kind each, `gallery` keeps the
files and gives them to the channel.
"""

from typing import assert_never

from bot.pictures.board import draw_board
from bot.pictures.own_week import draw_own_week
from bot.pictures.progress import draw_progress
from bot.pictures.roster import draw_roster
from core.pictures import Board, OwnWeekPicture, Picture, ProgressPicture, RosterWeek


def drawn(picture: Picture) -> bytes:
    """The picture as a PNG file; the same values give the same bytes."""
    match picture:
        case Board():
            return draw_board(picture)
        case ProgressPicture():
            return draw_progress(picture)
        case RosterWeek():
            return draw_roster(picture)
        case OwnWeekPicture():
            return draw_own_week(picture)
        case _:
            assert_never(picture)


__all__ = ["drawn"]
