"""The one exception whose message is meant for the person at the keyboard."""


class PeelbackError(Exception):
    """Something the user gave cannot be used; the message is one plain line."""
