"""Where templates/ and config/ are: inside an installed package, beside it in a checkout.

And where the user's own book is, unless she names another.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent

_CODE = re.compile(r"[a-z]{2,3}(_[A-Z][a-z]{3})?(_([A-Z]{2}|\d{3}))?")
"""Language, script, territory: the parts of a locale's name by Unicode TR 35."""


def templates_folder() -> Path:
    """Return the folder of page templates. Errors: as `_folder`."""
    return _folder("templates")


def config_folder() -> Path:
    """Return the folder of settings and of the demo's files. Errors: as `_folder`."""
    return _folder("config")


def demo_order() -> Path:
    """Return the demo's order file, of a blanket in rows. Errors: as `_folder`."""
    return config_folder() / "demo" / "order.toml"


def demo_squares() -> Path:
    """Return the demo's order file of squares that are joined. Errors: as `_folder`."""
    return config_folder() / "demo" / "squares.toml"


def demo_centre() -> Path:
    """Return the demo's order file of one piece from its centre. Errors: as `_folder`."""
    return config_folder() / "demo" / "centre.toml"


def demo_workshop() -> Path:
    """Return the demo's workshop file. Errors: as `_folder`."""
    return config_folder() / "demo" / "workshop.toml"


def languages_folder() -> Path:
    """Return the folder of the catalogues, one for each language. Errors: as `_folder`."""
    return config_folder() / "languages"


def catalogue_file(language: str) -> Path:
    """Return where the catalogue of a language is, by its code. Errors: as `_folder`."""
    return languages_folder() / f"{language}.po"


@cache
def catalogue_languages() -> tuple[str, ...]:
    """Return the codes of the languages that documents can be in, besides English, in order.

    A file that is not named by such a code, an editor's copy of one say, is no language.
    """
    names = (file.stem for file in languages_folder().glob("*.po"))
    return tuple(sorted(name for name in names if _CODE.fullmatch(name)))


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
