"""The `demo` command: a folder of its own, a month in it, and what is shown of it."""

from __future__ import annotations

import shutil
import tempfile
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from bot.bootstrap import demo, demo_text, opened_store
from bot.errors import NotADemoFolder
from bot.lock import claimed
from bot.log import to_file
from bot.month.cast import FILE, read_month
from bot.month.excerpts import laid_out
from bot.month.living import Living
from bot.settings import SQLITE_NAME, make_folder, read_settings
from bot.wording import month as words

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from bot.month.cast import Month
    from bot.month.living import Lived

FOLDER = "demo"
MARK = "made-by-the-demo"  # a file in a folder that holds nothing else
IN_MEMORY = Path("/dev/shm")  # noqa: S108 - where there is such a folder, a commit does not wait for a disk


async def run(data: str | None, environ: Mapping[str, str], out: TextIO) -> None:
    """Live the month, and print chosen moments of it. What it leaves is in the folder `demo` of the data folder.

    Raises:
        bot.errors.NotADemoFolder: there is something else in that folder.
    """
    month = read_month(demo_text(FILE))
    folder = read_settings(data, environ).data / FOLDER
    _make_room(folder)
    with claimed(folder), to_file(folder):
        scenario = demo(month.begins.date())
        with _workshop() as workshop:
            async with opened_store(read_settings(str(workshop), {})) as store:
                lived = await Living(month, scenario, folder).live(store)
            shutil.copyfile(workshop / SQLITE_NAME, folder / SQLITE_NAME)
        lines = await _shown(month, lived, scenario.coach, folder)
    out.writelines(f"{line}\n" for line in lines)


async def _shown(month: Month, lived: Lived, coach: str, folder: Path) -> list[str]:
    """Everything that is printed, line by line."""
    lines = [*words.head(coach, *_counted(month, lived))]
    for title, excerpts in ((words.TRAINED, month.trained), (words.REVIEWED, month.reviewed), (words.OWNED, month.owned)):
        lines += words.chapter(title)
        for excerpt in excerpts:
            lines += await laid_out(excerpt, lived, folder)
    return [*lines, *words.end(_short(folder))]


@contextmanager
def _workshop() -> Iterator[Path]:
    """A passing folder for the database, in memory where there is such a place."""
    with tempfile.TemporaryDirectory(prefix="stationcall-", dir=IN_MEMORY if IN_MEMORY.is_dir() else None) as passing:
        yield Path(passing)


def _make_room(folder: Path) -> None:
    """An empty folder with the demo's mark: what an earlier demo left is cleared, anything else is not touched."""
    if folder.exists() and any(folder.iterdir()):
        if not (folder / MARK).exists():
            raise NotADemoFolder(folder)
        shutil.rmtree(folder)
    make_folder(folder)
    (folder / MARK).touch()


def _counted(month: Month, lived: Lived) -> tuple[list[tuple[str, str]], int, int, int]:
    """The people, the weeks, the workouts that were ended, and the texts that were sent."""
    entries = [entry for chat in lived.chats.values() for entry in chat]
    workouts = sum(entry.letter is not None and entry.letter.rendered.kind == "Summary" for entry in entries)
    weeks = round((month.ends - month.begins) / timedelta(weeks=1))
    return (
        [(person.name, person.what) for person in month.people],
        weeks,
        workouts,
        sum(entry.sent is not None for entry in entries),
    )


def _short(folder: Path) -> str:
    """The folder as people write it: from where they are, or from their home."""
    for mark, start in (("", Path.cwd()), ("~/", Path.home())):
        if folder.is_relative_to(start):
            return f"{mark}{folder.relative_to(start).as_posix()}"
    return str(folder)
