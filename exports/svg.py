"""SVG 1.1 as text: elements, escaped words, and the frame of a picture.

Nothing here writes a `style`, a script or an address, so the strictest content policy holds, and
the same text can go into a page, a PDF or a file of its own.
"""

from __future__ import annotations

import re
from functools import lru_cache
from html import escape

INK = "currentColor"
"""The colour of the text around the picture: dark on light paper, light on dark."""

_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


@lru_cache(maxsize=1024)
def escaped(words: str) -> str:
    """Return words as they may stand in XML; what XML cannot hold (1.0, 2.2) is left out."""
    return escape(_NOT_XML.sub("", words))


def number(value: float) -> str:
    """Return a coordinate to six significant digits, and no longer than it must be."""
    return f"{value:.6g}"


def element(tag: str, *children: str, **attributes: str | float | None) -> str:
    """Return an element around children that are SVG already.

    `stroke_width` becomes `stroke-width` and `class_` `class`; None is left out.
    """
    given = "".join(
        f' {name.rstrip("_").replace("_", "-")}="{_value(value)}"'
        for name, value in attributes.items()
        if value is not None
    )
    return f"<{tag}{given}>{''.join(children)}</{tag}>" if children else f"<{tag}{given}/>"


def _value(value: str | float) -> str:
    return escaped(value) if isinstance(value, str) else number(value)


def text(words: str, x: float, y: float, **attributes: str | float | None) -> str:
    """Return words at a point, escaped."""
    return element("text", escaped(words), x=x, y=y, **attributes)


def path(*steps: str | float, **attributes: str | float | None) -> str:
    """Return a path of the given letters and numbers."""
    return element("path", d=route(*steps), **attributes)


def route(*steps: str | float) -> str:
    """Return letters and numbers as the `d` of a path."""
    return " ".join(step if isinstance(step, str) else number(step) for step in steps)


def picture(
    *children: str,
    width: float,
    height: float,
    title: str,
    description: str,
    prefix: str,
    class_: str,
) -> str:
    """Return a whole picture that fills the width it is given.

    `prefix` begins every id in it, so that two pictures can stand on one page.
    """
    return element(
        "svg",
        element("title", escaped(title), id=f"{prefix}-title"),
        element("desc", escaped(description), id=f"{prefix}-desc"),
        *children,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {number(width)} {number(height)}",
        class_=class_,
        role="img",
        aria_labelledby=f"{prefix}-title {prefix}-desc",
        font_family="system-ui, sans-serif",
        fill="none",
    )
