"""A PostgreSQL server of the tests' own: in a temporary folder, on a socket, for no longer."""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import Any

import psycopg

from tests.programs import require_program

USER = "maker"
SERVER_USERS = ("postgres", "nobody")
"""Whom the server is run as where the tests are run by root, which it refuses."""

_NUMBERS = count(1)


class Server:
    """A running server, and how to get a database of one's own on it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def address(self, database: str) -> str:
        return f"postgresql:///{database}?host={self.folder}&user={USER}"

    def new_database(self) -> str:
        """Return the address of a database with nothing in it."""
        name = f"book_{next(_NUMBERS)}"
        self.tell("postgres", f'CREATE DATABASE "{name}"')
        return self.address(name)

    def new_place(self) -> str:
        """Return the address of a schema with nothing in it, which is quicker made."""
        name = f"book_{next(_NUMBERS)}"
        self.tell("postgres", f"CREATE SCHEMA {name}")
        return f"{self.address('postgres')}&options=-c%20search_path%3D{name}"

    def tell(self, database: str, *statements: str) -> None:
        with psycopg.connect(self.address(database), autocommit=True) as connection:
            for statement in statements:
                connection.execute(statement)


@contextmanager
def running_server() -> Iterator[Server]:
    """Start a server and stop it again; without the program the test is skipped, or fails."""
    programs = _folder_of_programs()
    with tempfile.TemporaryDirectory(prefix="quoting-pg-") as made:
        folder, who = Path(made), _server_user()
        if who:
            _give(folder, who["user"])
        data = folder / "data"
        _run(programs / "initdb", "-D", data, "-U", USER, "-A", "trust", "-E", "UTF8", **who)
        options = f"-k {folder} -c listen_addresses= -c fsync=off"
        start = ("-D", data, "-l", folder / "log", "-w", "-o", options, "start")
        _run(programs / "pg_ctl", *start, **who)
        try:
            yield Server(folder)
        finally:
            _run(programs / "pg_ctl", "-D", data, "-w", "-m", "immediate", "stop", **who)


def _folder_of_programs() -> Path:
    """Return the folder of the server's programs, which some systems keep off the path."""
    kept = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"), reverse=True)
    return Path(require_program("initdb", *map(str, kept))).resolve().parent


def _server_user() -> dict[str, Any]:
    if os.name == "nt" or os.geteuid() != 0:
        return {}
    import pwd

    known = {entry.pw_name for entry in pwd.getpwall()}
    user = next(name for name in SERVER_USERS if name in known)
    return {"user": user, "extra_groups": []}


def _give(folder: Path, user: str) -> None:
    shutil.chown(folder, user)


def _run(*command: Any, **who: Any) -> None:
    subprocess.run(
        [str(part) for part in command],
        check=True,
        cwd="/",
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        timeout=120,
        **who,
    )
