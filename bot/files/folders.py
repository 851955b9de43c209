"""What is made for trainees in the data folder: for each of them a folder of pictures and one of documents."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

PICTURES, FILES = "pictures", "files"
FOLDERS = (PICTURES, FILES)  # in each, a folder for each trainee, for their owner's eyes alone


def written(folder: Path, name: str, content: bytes) -> Path:
    """A file of this name and content, written whole or not at all."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    file = folder / name
    unfinished = file.with_suffix(".part")
    unfinished.touch(mode=0o600)
    unfinished.write_bytes(content)
    unfinished.replace(file)
    return file


def clear(data: Path, ids: Iterable[int]) -> None:
    """Remove what was made for these trainees; what is still wanted of it is made anew when it is sent."""
    for trainee in ids:
        for kind in FOLDERS:
            shutil.rmtree(data / kind / str(trainee), ignore_errors=True)


def owners(data: Path) -> frozenset[int]:
    """The ids of the trainees for whom something was made."""
    folders = (folder for kind in FOLDERS for folder in (data / kind).glob("*"))
    return frozenset(int(folder.name) for folder in folders if folder.name.isdecimal())
