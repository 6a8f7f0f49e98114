"""Questions asked of a finished model."""
