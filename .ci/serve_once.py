"""Start the installed program's pages on the demo, ask for the first one, and stop it again."""

from __future__ import annotations

import contextlib
import socket
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request

SECONDS = 15


def free_port() -> int:
    """Return a port of the loopback that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def first_page(port: int) -> str:
    """Return the first page, as soon as there is one."""
    deadline = time.monotonic() + SECONDS
    while time.monotonic() < deadline:
        with contextlib.suppress(urllib.error.URLError, ConnectionError):
            address = f"http://127.0.0.1:{port}/"
            with urllib.request.urlopen(address, timeout=SECONDS) as answer:
                return str(answer.read().decode())
        time.sleep(0.05)
    raise SystemExit("the pages did not come up")


def main(program: str) -> None:
    """Ask the program for its first page and look for the demo's blanket on it."""
    port = free_port()
    with tempfile.TemporaryDirectory() as elsewhere:
        command = [program, "serve", "--no-browser", "--demo", "--port", str(port)]
        server = subprocess.Popen(command, cwd=elsewhere)  # noqa: S603
        try:
            page = first_page(port)
        finally:
            server.terminate()
            server.wait(SECONDS)
    if "moorland stripes" not in page:
        raise SystemExit("the first page does not show the demo's blanket")


if __name__ == "__main__":
    main(sys.argv[1])
