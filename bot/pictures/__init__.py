"""Pictures, drawn by the program: what a message shows becomes a PNG when it is sent.

`paint` is the only door to the drawing library, `board` and `progress` draw one kind each, `gallery` keeps the files and gives them
to the channel.
"""

from bot.pictures.board import draw_board
from bot.pictures.progress import draw_progress
from core.pictures import Board, Picture


def drawn(picture: Picture) -> bytes:
    """The picture as a PNG file; the same values give the same bytes."""
    return draw_board(picture) if isinstance(picture, Board) else draw_progress(picture)


__all__ = ["drawn"]
