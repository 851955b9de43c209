"""The command line: `python -m bot COMMAND`, also installed as `stationcall COMMAND`."""

from __future__ import annotations

import argparse
import asyncio
import io
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from core.errors import StationcallError

if TYPE_CHECKING:
    from collections.abc import Sequence

FAILED, BAD_INPUT = 1, 2


def main(argv: Sequence[str] | None = None) -> int:
    """Run a command; returns the exit code: 0, 2 for bad input, 1 for anything else. Errors are one line on stderr."""
    arguments = _parser().parse_args(argv)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that cannot show a sign still shows the rest
    try:
        return int(arguments.run(arguments))
    except (StationcallError, OSError, UnicodeError) as error:
        print(f"stationcall: {_one_line(error)}", file=sys.stderr)  # noqa: T201 - the command line speaks here
        return BAD_INPUT if isinstance(error, _bad_input()) else FAILED
    except KeyboardInterrupt:
        return FAILED


def _one_line(error: Exception) -> str:
    return " ".join(str(error).split())


def _bad_input() -> tuple[type[Exception], ...]:
    from bot.errors import (  # noqa: PLC0415 - only when something failed
        NotADemoFolder,
        NotAScriptFolder,
        ScriptBroken,
        SettingsWrong,
        TokenRefused,
        TraineeUnknown,
    )

    return (
        NotADemoFolder,
        NotAScriptFolder,
        ScriptBroken,
        SettingsWrong,
        TokenRefused,
        TraineeUnknown,
        FileNotFoundError,
        IsADirectoryError,
        UnicodeError,
    )


class _Parser(argparse.ArgumentParser):
    """A parser whose complaint is one line, like every other error here."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong and where help is, and leave with the code for bad input."""
        self.exit(BAD_INPUT, f"stationcall: {message} (see: {self.prog} --help)\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="stationcall", description="The coach's voice in the trainee's phone.")
    parser.add_argument("--data", metavar="DIR", help="data folder (default: STATIONCALL_DATA, else the user data folder)")
    common = _Parser(add_help=False)
    common.add_argument("--data", metavar="DIR", default=argparse.SUPPRESS, help=argparse.SUPPRESS)
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    chat = commands.add_parser("chat", parents=[common], help="a whole workout in the terminal, no account needed")
    chat.add_argument("--as", dest="name", metavar="NAME", default="you", help="who trains (default: you)")
    chat.add_argument("--speed", type=_speed, default=1.0, metavar="N", help="run the clocks N times faster")
    chat.add_argument("--script", type=Path, metavar="FILE", help="play a file on a simulated clock and print the transcript")
    chat.set_defaults(run=_chat)

    demo = commands.add_parser(
        "demo", parents=[common], help="four weeks of twelve invented people and their coach, in half a minute"
    )
    demo.set_defaults(run=_demo)

    serve = commands.add_parser("serve", parents=[common], help="the messaging account; settings come from the environment")
    serve.set_defaults(run=_serve)

    read = commands.add_parser("read", parents=[common], help="lines on stdin → what they mean, a JSON line each")
    read.set_defaults(run=_read)

    suggest = commands.add_parser("suggest", parents=[common], help="JSON lines on stdin → the next load, a JSON line each")
    suggest.set_defaults(run=_suggest)

    circuit = commands.add_parser("circuit", help="a coach's circuit")
    circuits = circuit.add_subparsers(required=True, metavar="ACTION")
    check = circuits.add_parser("check", parents=[common], help="every fault, the time it takes, what fits")
    check.add_argument("file", type=Path, metavar="FILE")
    check.add_argument("--minutes", type=int, metavar="M", help="what fits in M minutes")
    check.add_argument("--json", action="store_true", help="one JSON object")
    check.set_defaults(run=_circuit_check)

    records = commands.add_parser("records", parents=[common], help="the set records, one a line, newest last")
    records.add_argument("--trainee", metavar="NAME", help="only this trainee's")
    records.add_argument("--json", action="store_true", help="one JSON object a line")
    records.set_defaults(run=_records)
    return parser


def _speed(text: str) -> float:
    try:
        speed = float(text)
    except ValueError:
        speed = 0.0
    if not 0 < speed <= 1000:  # noqa: PLR2004 - named in the sentence below
        raise argparse.ArgumentTypeError(f"{text!r} is not a number above 0 and up to 1000")
    return speed


def _chat(arguments: argparse.Namespace) -> int:
    from bot import bootstrap  # noqa: PLC0415 - each command loads only what it needs
    from bot.channels.script import read_script  # noqa: PLC0415
    from bot.settings import read_settings  # noqa: PLC0415

    if arguments.script is not None:
        script = read_script(arguments.script.read_text(encoding="utf-8"))
        asyncio.run(bootstrap.play(script, arguments.name, arguments.data, os.environ, sys.stdout))
    else:
        asyncio.run(bootstrap.chat(read_settings(arguments.data, os.environ), arguments.name, arguments.speed))
    return 0


def _demo(arguments: argparse.Namespace) -> int:
    from bot.month.run import run  # noqa: PLC0415

    asyncio.run(run(arguments.data, os.environ, sys.stdout))
    return 0


def _serve(arguments: argparse.Namespace) -> int:
    from bot import serving  # noqa: PLC0415
    from bot.settings import read_serve_settings  # noqa: PLC0415

    serving.run(read_serve_settings(arguments.data, os.environ), sys.stdout)
    return 0


def _read(_arguments: argparse.Namespace) -> int:
    from bot.reading_io import run  # noqa: PLC0415

    run(sys.stdin, sys.stdout)
    return 0


def _suggest(_arguments: argparse.Namespace) -> int:
    from bot.suggest_io import run  # noqa: PLC0415

    run(sys.stdin, sys.stdout)
    return 0


def _circuit_check(arguments: argparse.Namespace) -> int:
    from bot.circuit_check import run  # noqa: PLC0415

    return run(arguments.file, arguments.minutes, as_json=arguments.json, out=sys.stdout)


def _records(arguments: argparse.Namespace) -> int:
    from bot import bootstrap  # noqa: PLC0415
    from bot.settings import read_settings  # noqa: PLC0415

    settings = read_settings(arguments.data, os.environ)
    asyncio.run(bootstrap.print_records(settings, arguments.trainee, sys.stdout, as_json=arguments.json))
    return 0


if __name__ == "__main__":
    sys.exit(main())
