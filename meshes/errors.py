"""The one exception whose message is meant for the person at the keyboard."""


class PeelbackError(Exception):
    """Something the user gave cannot be used; the message is one plain line.

    Parameters
    ----------
    text : str
        British English; with gaps in braces where ``gaps`` fill them.
    gaps
        Kept apart from the text, so that a window can say it in another language.
    """

    def __init__(self, text: str = "", **gaps: object) -> None:
        super().__init__(text.format(**gaps) if gaps else text)
        self.text, self.gaps = text, gaps
