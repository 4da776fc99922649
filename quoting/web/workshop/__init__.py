"""What was measured and decided, shown."""
