"""Shopping lists: of the worktable's order, of a kept one, of all that are agreed."""
