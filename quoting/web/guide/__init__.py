"""The working guide: as a paper, and one row at a time while the blanket is on the hook."""
