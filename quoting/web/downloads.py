"""Files to be saved, under names that every system takes."""

from __future__ import annotations

import re
import unicodedata
from urllib.parse import quote

from flask import Response

MOST_NAME = 80

PDF = "application/pdf"
WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


def download(content: bytes, title: str, ending: str, kind: str) -> Response:
    """Return a file to be saved, named after a title (RFC 6266, with RFC 8187 for its accents)."""
    full = f"{_tidy(title)}.{ending}"
    plain = unicodedata.normalize("NFKD", full).encode("ascii", "ignore").decode()
    names = f"filename=\"{plain}\"; filename*=UTF-8''{quote(full)}"
    headers = {"Content-Disposition": f"attachment; {names}", "Cache-Control": "no-store"}
    return Response(content, mimetype=kind, headers=headers)


def _tidy(title: str) -> str:
    """Return a title as the name of a file: letters, digits, hyphens."""
    return re.sub(r"[\W_]+", "-", title).strip("-")[:MOST_NAME].lower()
