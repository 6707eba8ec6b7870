"""The command line: `python -m webapp serve | plan | read | backup`."""

import argparse
import json
import sqlite3
import sys
from pathlib import Path

DEFAULT_PORT = 8000
LARGEST_PORT = 65_535
DEFAULT_DATA = "heatside.sqlite3"
THREADS = 8


class CommandError(Exception):
    """Something the person at the keyboard can put right."""


def main(arguments=None):
    """Run one command; errors go to standard error with exit status 2."""
    options = _parser().parse_args(arguments)
    try:
        options.run(options)
    except (CommandError, OSError, sqlite3.Error) as error:
        print(error, file=sys.stderr)
        return 2
    return 0


def serve(options):
    """Start the web server and say where it is."""
    from waitress import create_server

    from webapp import demo
    from webapp.app import create_app
    from webapp.store.migrations import NewerFile

    try:
        if options.demo:
            demo.load(options.data)
        app = create_app({"DATABASE": options.data, "PROXIES": options.proxies, "WATCH": options.watch})
    except NewerFile as error:
        raise CommandError(error) from error
    server = create_server(app, host=options.host, port=options.port, threads=THREADS, ident=None)
    print(f"Heatside is at http://{options.host}:{options.port}/  (stop with Ctrl-C)", flush=True)
    try:
        server.run()
    except KeyboardInterrupt:
        server.close()


def plan(options):
    """Print the plan for a workout and an athlete's numbers."""
    from webapp import engine
    from webapp.engine.errors import EngineError

    workout = _workout(options.workout)
    settings = {
        "option": options.option or workout["options"][0]["key"],
        "division": options.division or workout["divisions"][0]["key"],
        "style": options.style, "form": 1.0, "seed": 1, "heat_start": None,
    }
    try:
        result = engine.plan(workout, _json(options.numbers), settings)
    except EngineError as error:
        raise CommandError(error) from error
    print(json.dumps(result, ensure_ascii=False, indent=2))


def read(options):
    """Reading a workout out of a coach's text is not there yet."""
    raise CommandError("reading a workout from text is not possible yet: set it with the form at /new")


def backup(options):
    """Copy the data file while the server is running."""
    from webapp.store import database

    if not Path(options.data).exists():
        raise CommandError(f"there is no data file {options.data}")
    if Path(options.file).exists():
        raise CommandError(f"{options.file} exists already: name a new file")
    database.backup(options.data, options.file)
    print(f"copied {options.data} to {options.file}")


def _parser():
    parser = argparse.ArgumentParser(prog="python -m webapp", description="Heatside")
    commands = parser.add_subparsers(required=True, metavar="serve | plan | read | backup")
    _add_serve(commands.add_parser("serve", help="start the web server"))
    command = commands.add_parser("plan", help="print a plan as JSON")
    command.add_argument("workout", metavar="WORKOUT.json")
    command.add_argument("numbers", metavar="NUMBERS.json")
    command.add_argument("--option", help="which option; the first one if not given")
    command.add_argument("--division", help="which division; the first one if not given")
    command.add_argument("--style", choices=("steady", "even", "bold"), default="even")
    command.set_defaults(run=plan)
    command = commands.add_parser("read", help="read a workout from a text (not possible yet)")
    command.add_argument("text", metavar="TEXT.txt")
    command.set_defaults(run=read)
    command = commands.add_parser("backup", help="copy the data file while it is in use")
    command.add_argument("file", metavar="FILE")
    command.add_argument("--data", default=DEFAULT_DATA, metavar="FILE")
    command.set_defaults(run=backup)
    return parser


def _add_serve(command):
    command.add_argument("--port", type=_port, default=DEFAULT_PORT)
    command.add_argument("--host", default="127.0.0.1", help="0.0.0.0 to serve the whole network")
    command.add_argument("--data", default=DEFAULT_DATA, metavar="FILE", help="data file, made if there is none")
    command.add_argument("--demo", action="store_true", help="show the demo workouts on the home page")
    command.add_argument("--proxies", type=int, default=0, help="proxies of your own in front of the server")
    command.add_argument("--watch", action="store_true", help="read changed pages and static files again")
    command.set_defaults(run=serve)


def _port(text):
    """A port as typed: some servers take a larger number for another port without a word."""
    port = int(text)
    if not 0 <= port <= LARGEST_PORT:
        raise argparse.ArgumentTypeError(f"{port} is no port: 0 to {LARGEST_PORT}")
    return port


def _workout(path):
    from webapp.problems import WorkoutError
    from webapp.workouts import checked, completed

    try:
        return completed(checked(_json(path)))
    except WorkoutError as error:
        raise CommandError(f"{path}: {error}") from error


def _json(path):
    from webapp.problems import WorkoutError
    from webapp.workouts import read_json

    try:
        return read_json(Path(path).read_text("utf-8"))
    except (WorkoutError, UnicodeDecodeError) as error:
        raise CommandError(f"{path} is not JSON") from error


if __name__ == "__main__":
    sys.exit(main())
