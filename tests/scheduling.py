"""Which tests are run in one process: those that share what is slow to make."""

from __future__ import annotations

from pathlib import PurePosixPath

from xdist.scheduler import LoadScopeScheduling

SHARING_FOLDERS = {"workbook", "comparison"}
"""Where the tests of a whole folder share a round of the spreadsheet program."""


class SharingScheduling(LoadScopeScheduling):
    """Gives out tests file by file, or a whole folder's at once; those of most tests come first."""

    def _split_scope(self, nodeid: str) -> str:
        """Return what a test is given out with."""
        file = PurePosixPath(nodeid.partition("::")[0])
        return str(file.parent if file.parent.name in SHARING_FOLDERS else file)
