"""Where the data live."""

import stat
from pathlib import Path

import pytest

from bot.errors import DataFolderUnusable, SettingsWrong
from bot.settings import make_folder, read_settings


def test_the_command_line_comes_before_the_environment(tmp_path):
    """And the environment before the platform's folder."""
    environ = {"STATIONCALL_DATA": str(tmp_path / "environment")}
    assert read_settings(str(tmp_path / "line"), environ).data == tmp_path / "line"
    assert read_settings(None, environ).data == tmp_path / "environment"
    assert read_settings(None, {}).data.name == "stationcall"


def test_a_folder_may_be_given_from_home():
    """`~` is the user's home."""
    assert read_settings("~/training", {}).data == Path.home() / "training"


def test_the_database_lies_in_the_data_folder_unless_one_is_named(tmp_path):
    """SQLite without being asked; another database by its URL."""
    assert read_settings(str(tmp_path), {}).database.reveal() == f"sqlite:///{tmp_path}/stationcall.sqlite3"
    named = {"STATIONCALL_DATABASE": "postgresql://ana:open-sesame@db/stationcall"}
    assert read_settings(str(tmp_path), named).database.reveal() == named["STATIONCALL_DATABASE"]


def test_a_password_prints_as_stars(tmp_path):
    """Wherever the settings are printed."""
    settings = read_settings(str(tmp_path), {"STATIONCALL_DATABASE": "postgresql://ana:open-sesame@db/stationcall"})
    assert "open-sesame" not in f"{settings} {settings!r} {settings.database} {settings.database!r}"
    assert "***" in str(settings)


def test_the_folder_is_its_owners_alone(tmp_path):
    """It holds health data."""
    make_folder(tmp_path / "a" / "b")
    assert stat.S_IMODE((tmp_path / "a" / "b").stat().st_mode) == 0o700
    make_folder(tmp_path / "a" / "b")


def test_a_folder_that_cannot_be_made_is_named(tmp_path):
    """In one line."""
    (tmp_path / "file").write_text("")
    with pytest.raises(DataFolderUnusable) as refused:
        make_folder(tmp_path / "file" / "folder")
    assert str(tmp_path / "file" / "folder") in str(refused.value)


@pytest.mark.parametrize("number", ["112", "911", "000", "+44 20 7946 0000", " 112 "])
def test_the_emergency_number_is_taken_as_one_dials_it(tmp_path, number):
    """From the environment; without it there is none, and the local one is spoken of."""
    assert read_settings(str(tmp_path), {"STATIONCALL_EMERGENCY_NUMBER": number}).emergency == number.strip()
    assert read_settings(str(tmp_path), {}).emergency is None
    assert read_settings(str(tmp_path), {"STATIONCALL_EMERGENCY_NUMBER": ""}).emergency is None


@pytest.mark.parametrize("number", ["call mum", "1", "112; rm -rf", "９１１", "1" * 40])
def test_an_emergency_number_that_is_none_is_refused(tmp_path, number):
    """A wrong number is worse than none."""
    with pytest.raises(SettingsWrong) as refused:
        read_settings(str(tmp_path), {"STATIONCALL_EMERGENCY_NUMBER": number})
    assert "STATIONCALL_EMERGENCY_NUMBER" in str(refused.value)
