"""Texts as the parts of a workbook file hold them: no forbidden characters, nothing read as code.

Source: ECMA-376, part 1, 22.9.2.19 (ST_Xstring), XML 1.0.
"""

from __future__ import annotations

import re
from xml.sax.saxutils import escape

from exports.sheets.cells import clean_text

_BEFORE_A_CODE = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")


def uncoded(text: str) -> str:
    """Return a clean text with the low line before what looks like a character's code coded.

    A spreadsheet program reads `_x003D_` as `=`; `_x005F_x003D_` it reads as `_x003D_`.
    """
    clean = clean_text(text)
    return _BEFORE_A_CODE.sub("_x005F_", clean) if "_x" in clean else clean


def xml_text(text: str) -> str:
    """Return such a text ready to stand between two tags."""
    return escape(uncoded(text))
