"""What a page says to whoever reads or hears it."""

from __future__ import annotations

from html.parser import HTMLParser


class Shown(HTMLParser):
    """Collects what a page says: its texts, and the names that are read out."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.said: list[str] = []
        self._hidden = False
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._hidden = tag in {"style", "script"}
        self.said += [text or "" for name, text in attrs if name in {"aria-label", "title", "alt"}]

    def handle_data(self, data: str) -> None:
        if not self._hidden:
            self.said.append(data)
