"""Where templates/ and config/ are: inside an installed package, beside it in a checkout.

And where the user's own book is, unless she names another.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def templates_folder() -> Path:
    """Return the folder of page templates. Errors: as `_folder`."""
    return _folder("templates")


def config_folder() -> Path:
    """Return the folder of settings and of the demo's files. Errors: as `_folder`."""
    return _folder("config")


def demo_order() -> Path:
    """Return the demo's order file. Errors: as `_folder`."""
    return config_folder() / "demo" / "order.toml"


def demo_workshop() -> Path:
    """Return the demo's workshop file. Errors: as `_folder`."""
    return config_folder() / "demo" / "workshop.toml"


def catalogue_file(language: str) -> Path:
    """Return where the catalogue of a language is, by its code. Errors: as `_folder`."""
    return config_folder() / "languages" / f"{language}.po"


@cache
def catalogue_languages() -> tuple[str, ...]:
    """Return the codes of the languages that documents can be in, besides English, in order."""
    files = (config_folder() / "languages").glob("*.po")
    return tuple(sorted(file.stem for file in files))


def book_file() -> Path:
    """Return where this user's book is kept; there need not be one yet."""
    import platformdirs

    return platformdirs.user_data_path("quoting", appauthor=False) / "book.db"


def _folder(name: str) -> Path:
    """Return the folder of that name; FileNotFoundError where it is in neither place."""
    for home in (_PACKAGE, _PACKAGE.parent):
        if (home / name).is_dir():
            return home / name
    raise FileNotFoundError(name)
