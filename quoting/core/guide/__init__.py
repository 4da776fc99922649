"""What the maker works from: the rows of a blanket folded into few steps, and its ends."""
