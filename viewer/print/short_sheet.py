"""The short lab sheet: two to four pages for a sleeve, one row a step.

Page 1 begins with the cautions; each step stands in one row with its pictures
before (line of cut, hinge) and after, boxes to tick, the cut, what to keep and
the stop sign. The table of muscles comes last where four pages hold it.
"""

from __future__ import annotations

from html import escape

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from meshes.catalogue.plan import cautions
from viewer.print.sheet import (
    AT_THE_END,
    KIT,
    SIDES,
    TUBE_KEY,
    Sheet,
    capital,
    caution_markup,
    in_own_face,
    keep_words,
)
from viewer.print.sheet_pictures import StepPicture, StepPictures
from viewer.print.typeset import Plate, TickBox, rich, words
from viewer.state.step_words import PLAN_NOTE, StepWords, step_words
from viewer.state.tongue import figure, told

MOST_PAGES = 4
SIZES: tuple[tuple[int, float, float], ...] = ((6, 44.0, 10.0), (12, 38.0, 9.5), (99, 27.5, 8.2))
"""(steps at most, height of their pictures in mm, letters in pt): the more steps, the smaller."""


class ShortSheet(Sheet):
    """A sheet of few pages; ``add_step`` for every step, then ``pdf``."""

    def __init__(self, *args) -> None:
        super().__init__(*args)
        count = len(self.order.steps)
        self.plate_mm, self.letters_pt = next(s[1:] for s in SIZES if count <= s[0])
        self.drawn: list[tuple[StepWords, int, StepPicture | None, StepPicture]] = []

    def add_step(self, record, pictures: StepPictures) -> None:
        """Draw the two pictures of a step."""
        side = round(self.plate_mm * mm * self.dots)
        first, second = pictures.pair(record, (side, side), (side, side))
        step = step_words(record, self.model.catalogue)
        self.drawn.append((step, self.number_of[record.id], first, second))

    def pdf(self) -> tuple[bytes, int]:
        """Return the file and its pages: with the table of muscles where it fits."""
        data, pages = self.built(self.story(with_muscles=True))
        if pages <= MOST_PAGES:
            return data, pages
        return self.built(self.story(with_muscles=False))

    def story(self, *, with_muscles: bool) -> list[Flowable]:
        """Return everything in its order, made anew."""
        rows = [self.step_row(*drawn) for drawn in self.drawn]
        key = [
            words(
                told("Dashed: line of cut. Double: hinge. Frame: keep. Tick left and right.")
                + f" {told(TUBE_KEY)}",
                "small",
            ),
            Spacer(0, 3),
        ]
        heading = rich(told("Steps"), "heading", keepWithNext=0)
        story = [*self.head(), KeepTogether([heading, *key, *rows[0]])]
        story += [KeepTogether(row) for row in rows[1:]]
        story.append(self.end_of_day())
        if with_muscles:
            # It follows at once: a page of its own would cost half a page of nothing.
            story += self.muscle_table()[1:]
            story += self.sources()
        else:
            story.append(rich(told("The table of muscles stands in the full sheet."), "note"))
        return story

    def head(self) -> list[Flowable]:
        """Title, form and all cautions, close set."""
        heads = (told("Date"), told("Table"), told("Blades out"), told("Blades in"))
        form = Table(
            [[words(t, "cell") for t in heads], ["", "", "", ""]],
            [self.width / 4] * 4,
            rowHeights=[14, 16],
        )
        form.setStyle(
            in_own_face(
                [
                    ("BOX", (0, 0), (-1, -1), 0.6, black),
                    ("LINEBEFORE", (1, 0), (-1, -1), 0.6, black),
                    ("LEFTPADDING", (0, 0), (-1, -1), 3),
                    ("VALIGN", (0, 0), (-1, -1), "TOP"),
                    ("TOPPADDING", (0, 0), (-1, -1), 1),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
                ]
            )
        )
        first = {"local_rules": 0, "model": 1, "sharps": 2}
        ranked = sorted(cautions(), key=lambda caution: first.get(caution.id, 3))
        lines = [rich(caution_markup(c), "small", spaceAfter=1.5) for c in ranked]
        box = Table([[lines]], [self.width])
        box.setStyle(in_own_face([("BOX", (0, 0), (-1, -1), 1.6, black)]))
        return [
            rich(told("The back: short sheet"), "title"),
            words(f"{told(SIDES[self.order.side])}. {self.about()}", "small"),
            Spacer(0, 4),
            form,
            rich(told("Cautions"), "heading"),
            box,
            rich(f"<b>{told('On the table')}:</b> {escape(told(KIT))}", "small", spaceBefore=4),
            rich(
                told("Cautions and kit: common practice, no source.") + f" {told(PLAN_NOTE)}",
                "note",
            ),
        ]

    def step_row(
        self, step: StepWords, number: int, first: StepPicture | None, second: StepPicture
    ) -> list[Flowable]:
        """One step: number and boxes, pictures, words."""
        side = self.plate_mm * mm
        size = {"fontSize": self.letters_pt, "leading": self.letters_pt * 1.22, "spaceAfter": 1.5}
        minutes = told(
            "{minutes} min a side" if step.each_side else "{minutes} min",
            minutes=figure(step.minutes),
        )
        title = rich(
            f"<b>{number}&nbsp; {escape(step.title)}</b> <i>{minutes}"
            f"{', ' + told('optional') if step.optional else ''}</i>",
            **{**size, "fontSize": self.letters_pt + 1},
        )
        text: list[Flowable] = []
        large = self.letters_pt > 9
        for head, said in (
            (told("Do"), step.do if large or not step.cut else ""),
            (told("Cut"), step.cut),
            (told("Hinge"), hinge_words(step)),
        ):
            if said:
                text.append(rich(f"<b>{head}.</b> {escape(capital(said))}", **size))
        if step.keep:
            keep = Table([[rich(f"<b>{keep_words(step.keep)}</b>", **size)]])
            keep.setStyle(
                in_own_face(
                    [
                        ("BOX", (0, 0), (-1, -1), 1.1, black),
                        ("TOPPADDING", (0, 0), (-1, -1), 0),
                        ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
                    ]
                )
            )
            text.append(keep)
        if step.stop:
            stop = escape(" ".join(step.stop))
            text.append(rich(f"<b>{told('Stop sign')}.</b> {stop}", **{**size, "spaceBefore": 1.5}))
        if step.find and large:
            text.append(rich(f"<b>{told('Find')}:</b> {escape(', '.join(step.find))}", **size))
        gap = 2.5 * mm
        shown = [second] if first is None else [first, second]
        plates = [Plate(picture, side, side) for picture in shown]
        wide = [side + gap] * len(plates)
        head = Table([[title, self.boxes(step)]], [self.width - 26 * mm, 26 * mm])
        head.setStyle(
            in_own_face(
                [
                    ("LINEABOVE", (0, 0), (-1, 0), 1.0, black),
                    ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                    ("ALIGN", (1, 0), (1, 0), "RIGHT"),
                    ("RIGHTPADDING", (1, 0), (1, 0), 0),
                    ("TOPPADDING", (0, 0), (-1, -1), 1.5),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
                    ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ]
            )
        )
        row = Table([[*plates, text]], [*wide, self.width - sum(wide)])
        row.setStyle(
            in_own_face(
                [
                    ("VALIGN", (0, 0), (-1, -1), "TOP"),
                    *[(f"{s}PADDING", (0, 0), (-1, -1), 0) for s in ("LEFT", "RIGHT", "TOP")],
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
                ]
            )
        )
        return [head, row]

    def end_of_day(self) -> Flowable:
        """What is ticked when the table is left, and room for what differs."""
        ticks = [[TickBox(size_mm=3.4), words(told(line), "small")] for line in AT_THE_END]
        left = Table(ticks, [6 * mm, self.width * 0.56 - 6 * mm])
        left.setStyle(
            in_own_face(
                [
                    ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                    *[(f"{s}PADDING", (0, 0), (-1, -1), 1) for s in ("LEFT", "TOP", "BOTTOM")],
                ]
            )
        )
        log = Table([[""]] * 4, [self.width * 0.4], rowHeights=[6.2 * mm] * 4)
        log.setStyle(in_own_face([("LINEBELOW", (0, 0), (-1, -1), 0.5, black)]))
        both = Table(
            [
                [
                    [rich(f"<b>{told('At the end of the day')}</b>", "cell"), left],
                    [
                        rich(f"<b>{told('What differs in this donor (side, step)')}</b>", "cell"),
                        log,
                    ],
                ]
            ],
            [self.width * 0.58, self.width * 0.42],
        )
        both.setStyle(
            in_own_face(
                [("VALIGN", (0, 0), (-1, -1), "TOP"), ("LINEABOVE", (0, 0), (-1, 0), 1.2, black)]
            )
        )
        return KeepTogether([both])


def hinge_words(step: StepWords) -> str:
    """Return where the flap stays and which way it turns; "" for a step that turns none."""
    if not step.hinge or "," in step.fold:
        # What turns both ways says so in the words of its hinge.
        return step.hinge
    return f"{step.hinge}, {step.fold}"
