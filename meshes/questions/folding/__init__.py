"""The parts of folding a sheet back: its grid, what it lies on, its way, what rides on it."""
