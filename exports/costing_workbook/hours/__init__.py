"""The sheet of hours: tasks, timings, the parts they add up to, and how far off they may be."""
