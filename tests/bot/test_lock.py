"""One process a data folder."""

import os
import signal
import subprocess
import sys

import pytest

from bot.errors import DataFolderBusy
from bot.lock import claimed

HOLDER = """
import pathlib, sys
from bot.lock import claimed
with claimed(pathlib.Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def test_a_second_one_is_refused_with_the_folder_and_what_to_do(tmp_path):
    """In one line, at once."""
    with claimed(tmp_path), pytest.raises(DataFolderBusy) as refused, claimed(tmp_path):
        pass
    said = str(refused.value)
    assert str(tmp_path) in said
    assert "--data" in said
    assert "\n" not in said


def test_the_folder_is_free_again_afterwards(tmp_path):
    """Also after an error inside."""
    with pytest.raises(KeyError), claimed(tmp_path):
        raise KeyError
    with claimed(tmp_path):
        pass


def test_a_process_that_is_killed_frees_the_folder(tmp_path):
    """`kill -9` leaves nothing to clear away by hand."""
    with subprocess.Popen(
        [sys.executable, "-c", HOLDER, str(tmp_path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    ) as holder:
        assert holder.stdout.readline() == b"held\n"
        with pytest.raises(DataFolderBusy), claimed(tmp_path):
            pass
        os.kill(holder.pid, signal.SIGKILL)
        holder.wait()
        with claimed(tmp_path):
            pass
