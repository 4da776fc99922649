"""Templates compiled once for all the apps of a process, as tests open hundreds of them."""

from __future__ import annotations

from jinja2.bccache import Bucket, BytecodeCache


class CompiledOnce(BytecodeCache):
    """Compiled templates by the key that their name and file give; Jinja looks at the source."""

    def __init__(self) -> None:
        self.kept: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Give a template what was compiled of it, if it was."""
        if bucket.key in self.kept:
            bucket.bytecode_from_string(self.kept[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep what was compiled of a template."""
        self.kept[bucket.key] = bucket.bytecode_to_string()
