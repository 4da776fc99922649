"""One design over several sizes."""
