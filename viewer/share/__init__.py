"""The take-home file: one page that holds the whole back and needs no network."""
