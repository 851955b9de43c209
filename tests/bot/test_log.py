"""The log holds ids, never what somebody wrote, and stays off the terminal."""

import logging

import pytest

from bot.log import LOG_NAME, to_file, trail


def fail(text):
    """Raise an error that quotes a text, as libraries do."""
    raise ValueError(text)


@pytest.fixture
def logged(tmp_path):
    """Log what the callable does, and return the file's text."""

    def run(act):
        with to_file(tmp_path):
            act()
        return (tmp_path / LOG_NAME).read_text(encoding="utf-8")

    return run


def quoting(logger):
    """Log an exception that quotes what a trainee wrote, from this logger."""

    def act():
        try:
            fail("my knee hurts")
        except ValueError:
            logging.getLogger(logger).exception("trainee %d: a message could not be handled", 7)

    return act


def test_an_exception_is_logged_as_its_type_and_places(logged):
    """Not as what it says: that may be a trainee's own words."""
    text = logged(quoting("bot.assistant"))
    assert "trainee 7: a message could not be handled" in text
    assert "ValueError at test_log.py:" in text
    assert "knee" not in text


def test_other_libraries_are_logged_by_place_alone(logged):
    """Their sentences can quote values as well."""
    text = logged(lambda: logging.getLogger("asyncio").error("Task failed: <ValueError('my knee hurts')>"))
    assert "ERROR asyncio: at test_log:" in text
    assert "knee" not in text
    assert "knee" not in logged(quoting("apscheduler.executors.default"))


def test_nothing_reaches_the_terminal(logged, capfd):
    """The chat is there."""
    logged(quoting("bot.assistant"))
    assert capfd.readouterr() == ("", "")


def test_afterwards_the_logging_is_as_before(tmp_path):
    """No handler stays behind, and no level."""
    root, ours = logging.getLogger(), logging.getLogger("bot")
    before = (list(root.handlers), ours.level)
    with to_file(tmp_path):
        assert root.handlers != before[0]
    assert (list(root.handlers), ours.level) == before


def test_a_trail_names_its_cause():
    """The type of the error beneath is part of it."""
    try:
        try:
            fail("secret")
        except ValueError as error:
            raise KeyError from error
    except KeyError as error:
        said = trail(error)
    assert said.startswith("KeyError at test_log.py:")
    assert "from ValueError at" in said
    assert "secret" not in said
