"""Interface texts in other languages, and how they are gathered."""
