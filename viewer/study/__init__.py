"""Tag test, review schedule and results; plain, without a window."""
