"""The lab sheet: cautions, plan with tick boxes, steps with pictures, table of muscles, log.

With ``blank`` the pictures carry numbers and lines to write on, and the last
page holds the answers.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterable, Sequence
from html import escape

from reportlab.lib.colors import Color, black
from reportlab.lib.units import mm
from reportlab.platypus import (
    BaseDocTemplate,
    Flowable,
    Frame,
    KeepTogether,
    PageBreak,
    PageTemplate,
    Spacer,
    Table,
    TableStyle,
)

from meshes.catalogue.plan import Caution, cautions
from meshes.catalogue.plan import steps as all_steps
from meshes.catalogue.records import Citation, Entry
from meshes.export import peelback_version, write_bytes
from meshes.model import BackModel
from viewer.print.page_fill import filled_pages
from viewer.print.sheet_order import PAPERS, SheetOrder
from viewer.print.sheet_pictures import StepPictures
from viewer.print.sheet_words import muscles_of
from viewer.print.typeset import (
    BODY_PT,
    FACE,
    SMALL_PT,
    Boxes,
    LineKey,
    Plate,
    TickBox,
    rich,
    style,
    words,
)
from viewer.state.step_words import PLAN_NOTE, StepWords, step_words
from viewer.state.tongue import counted, figure, speaks, told

MARGIN_MM = 15.0
FOOT_MM = 14.0
PICTURE_DPI = 220.0
LEAST_PLATE_MM, MOST_PLATE_MM = 47.0, 100.0
"""Height of the pictures of a step: as high as the page that they share has room for."""
LEAST_BLANK_MM = 55.0
SMALL_PLATE_MM = 47.0
COLUMN_MM = 34.0
GAP_MM = 6.0
"""Between two columns of words."""
GREY = Color(0.93, 0.93, 0.93)
SIDES = {"both": "Both sides", "left": "Left side", "right": "Right side"}
SEXES = {"male": "male", "female": "female"}
TAGS = {"en": "en-GB", "de": "de-DE"}
"""Of the language of the file, for screen readers (BCP 47)."""

STEP_SPACE_PT = 12.0
"""Under the pictures and under the words of a step, together."""

FOOTER = "Teaching model – not for needle or surgical guidance. Local rules come first."

TUBE_KEY = (
    "Pale with a dark edge: nerve. Dark with a pale edge: vessel; both drawn wider than they are."
)

KIT = (
    "Gloves in sizes, eye protection, gown; skin pencil, ruler; blade handle and counted blades in "
    "a tray, blade remover; two pairs of blunt forceps, one toothed; curved and straight scissors, "
    "blunt-ended; blunt probe; wooden spatula; counted pins; wetting fluid, wrap, the donor's own "
    "container, sharps container, wipes; this sheet in a sleeve. Bone tools stay with staff."
)
AT_THE_END = (
    "Blades and pins counted in, and into the sharps container",
    "All tissue with its own donor, in the donor's container",
    "Flaps laid back in order; wetted, wrapped, covered",
    "Both sides compared; what differs is written in the log",
    "Bench wiped, hands washed; injuries and splashes reported",
)


def write_sheet(
    model: BackModel, order: SheetOrder, progress: Callable[[float, str], None] | None = None
) -> int:
    """Draw and write the sheet; returns the number of pages.

    Parameters
    ----------
    progress : callable, optional
        (share 0..1, what) as the pictures are drawn.

    Raises
    ------
    PeelbackError
        The file cannot be written.
    """
    data, pages = sheet_pdf(model, order, progress)
    write_bytes(order.out, data)
    return pages


def sheet_pdf(
    model: BackModel, order: SheetOrder, progress: Callable[[float, str], None] | None = None
) -> tuple[bytes, int]:
    """Return the sheet as PDF and its number of pages."""
    if order.short:
        from viewer.print.short_sheet import ShortSheet

        sheet: Sheet = ShortSheet(model, order)
    else:
        sheet = Sheet(model, order)
    with StepPictures(model, order.side) as pictures:
        for number, step in enumerate(order.steps):
            if progress is not None:
                progress(number / len(order.steps), told(step.title))
            sheet.add_step(step, pictures)
    return sheet.pdf()


class Sheet:
    """The full sheet: ``add_step`` for every step, then ``pdf``."""

    def __init__(self, model: BackModel, order: SheetOrder) -> None:
        self.model, self.order = model, order
        self.page = tuple(side * mm for side in PAPERS[order.paper])
        self.width = self.page[0] - 2 * MARGIN_MM * mm
        self.steps: list[Flowable] = []
        self.answers: list[tuple[str, list[tuple[int, str]]]] = []
        self.next_number = 1
        self.number_of = {step.id: n for n, step in enumerate(all_steps(), start=1)}
        self.marks = SourceMarks()
        self.dots = PICTURE_DPI / 72.0
        self.room = self.page[1] - (2 * MARGIN_MM + 4) * mm
        self.heights: dict[str, float] = {}
        self.page_starts: set[str] = set()
        self.waiting: set[str] = set()
        self.log_beside_plan = False
        style()

    # ------------------------------------------------------------------ pages

    def pdf(self) -> tuple[bytes, int]:
        """Return the file and its number of pages."""
        if self.order.blank:
            return self.built([*self.first_page(), *self.steps, *self.answer_page()])
        first, plan = self.first_page(), self.plan_table()
        # What is written on and ticked at the table stands in front where there is room.
        log, ending = self.log(), self.ending()
        last = []
        if self.log_beside_plan:
            plan += log
        else:
            last.append(KeepTogether(log))
        if self._height([*first, *ending]) < self.room:
            first += ending
        else:
            last.append(KeepTogether(ending))
        story = [*first, PageBreak(), *plan, *self.steps, *self.muscle_table(), *last]
        return self.built([*story, *self.sources()])

    def built(self, story: list[Flowable]) -> tuple[bytes, int]:
        """Set a story into pages."""
        buffer = io.BytesIO()
        title = told(
            "Lab sheet: the back, blank labels" if self.order.blank else "Lab sheet: the back"
        )
        document = BaseDocTemplate(
            buffer,
            pagesize=self.page,
            title=title,
            author="Peelback",
            subject=told(FOOTER),
            creator=f"Peelback {peelback_version()}",
            lang=TAGS.get(speaks()[1], speaks()[1]),
            invariant=1,
        )
        frame = Frame(
            MARGIN_MM * mm,
            (MARGIN_MM + 4) * mm,
            self.width,
            self.room,
            0,
            0,
            0,
            0,
        )
        document.addPageTemplates(PageTemplate("sheet", [frame], onPage=self.footer))
        counted = _Counting()
        document.build(story, canvasmaker=counted.canvas_maker)
        return buffer.getvalue(), counted.pages

    def footer(self, canvas, _document) -> None:
        canvas.saveState()
        canvas.setFont(f"{FACE}-Regular", 8)
        canvas.setLineWidth(0.5)
        y = FOOT_MM * mm
        canvas.line(MARGIN_MM * mm, y, self.page[0] - MARGIN_MM * mm, y)
        canvas.drawString(MARGIN_MM * mm, y - 11, told(FOOTER))
        canvas.restoreState()

    # ------------------------------------------------------------- first page

    def first_page(self) -> list[Flowable]:
        title = told("The back: test yourself" if self.order.blank else "Lab sheet: the back")
        about = told(
            "{sides}, {steps}. {about}",
            sides=told(SIDES[self.order.side]),
            steps=counted(len(self.order.steps), "{count} step", "{count} steps"),
            about=self.about(),
        )
        if self.order.blank:
            labels = [
                told("Date"),
                told("Name or number (optional)"),
                told("Minutes"),
                told("Right answers"),
            ]
        else:
            labels = [
                told("Date"),
                told("Table"),
                told("Who cuts"),
                told("Who reads and ticks"),
                told("Blades out"),
                told("Blades in"),
                told("Course's tag number (optional)"),
                told("Stop at step"),
            ]
        cells = [words(label, "cell") for label in labels]
        blanks = [[cells[i], "", cells[i + 1], ""] for i in range(0, len(cells), 2)]
        form = Table(blanks, [34 * mm, self.width / 2 - 34 * mm] * 2, rowHeights=8 * mm)
        form.setStyle(
            in_own_face(
                [
                    ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                    ("LEFTPADDING", (0, 0), (-1, -1), 2),
                    ("LINEBELOW", (1, 0), (1, -1), 0.6, black),
                    ("LINEBELOW", (3, 0), (3, -1), 0.6, black),
                ]
            )
        )
        ranked = sorted(
            cautions(), key=lambda c: {"local_rules": 0, "model": 1, "sharps": 2}.get(c.id, 3)
        )
        rows = [rich(caution_markup(c), spaceAfter=3.5) for c in ranked]
        box = Table([[rows]], [self.width])
        box.setStyle(
            in_own_face(
                [
                    ("BOX", (0, 0), (-1, -1), 1.6, black),
                    ("LEFTPADDING", (0, 0), (-1, -1), 8),
                    ("RIGHTPADDING", (0, 0), (-1, -1), 8),
                    ("TOPPADDING", (0, 0), (-1, -1), 6),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 4),
                ]
            )
        )
        page = [
            rich(title, "title"),
            words(about, "small"),
            Spacer(0, 6),
            form,
            Spacer(0, 8),
            rich(told("Cautions"), "heading"),
            box,
            Spacer(0, 6),
        ]
        if not self.order.blank:
            page += [
                rich(told("On the table"), "heading"),
                words(told(KIT)),
                rich(
                    told("Cautions and kit: common practice, no source. Your own course decides."),
                    "note",
                ),
            ]
        return page

    def about(self) -> str:
        """Whose back the pictures show, in a sentence."""
        body = self.model.body
        return told(
            "Pictures: Peelback {version}, a computed back ({sex}, {stature} mm tall), standing; "
            "the donor lies prone and is another person.",
            version=peelback_version(),
            sex=told(SEXES[body.sex]),
            stature=figure(body.stature_mm),
        )

    # -------------------------------------------------------------- plan table

    @property
    def letters(self) -> tuple[str, ...]:
        left, right = told("L"), told("R")
        return {"both": (left, right), "left": (left,), "right": (right,)}[self.order.side]

    def boxes(self, step: StepWords) -> Flowable:
        return Boxes(self.letters) if step.each_side else TickBox("")

    def plan_table(self) -> list[Flowable]:
        heads = ("", told("Step"), told("Done"), told("Minutes"), told("First"))
        head = [rich(f"<b>{t}</b>", "cell") for t in heads]
        rows: list[list[object]] = [head]
        for record in self.order.steps:
            step = step_words(record, self.model.catalogue)
            first = ", ".join(str(self.number_of[need]) for need in record.needs)
            optional = f" <i>({told('optional')})</i>" if step.optional else ""
            minutes = figure(step.minutes)
            if step.each_side:
                minutes = told("{minutes} a side", minutes=minutes)
            rows.append(
                [
                    words(str(self.number_of[step.id]), "cell"),
                    rich(escape(step.title) + optional, "cell"),
                    self.boxes(step),
                    words(minutes, "cell"),
                    words(first, "cell"),
                ]
            )
        wide = self.width - (10 + 24 + 24 + 22) * mm
        table = Table(rows, [10 * mm, wide, 24 * mm, 24 * mm, 22 * mm], repeatRows=1)
        table.setStyle(in_own_face([*_GRID, ("VALIGN", (0, 0), (-1, -1), "MIDDLE")]))
        return [
            rich(told("The plan"), "heading"),
            table,
            rich(
                told("‘First’ names the steps that must be done before.") + f" {told(PLAN_NOTE)}",
                "note",
            ),
        ]

    # -------------------------------------------------------------------- steps

    def settle_pages(self, pictures: StepPictures) -> None:
        """Decide which steps share a page and how high their pictures are."""
        blank = self.order.blank
        records = [r for r in self.order.steps if not blank or pictures.has_names(r)]
        fixed = [self._height_beside(step_words(r, self.model.catalogue)) for r in records]
        before = self.first_page() if blank else self.plan_table()
        left = self.room - self._height(before) - 4
        if fixed:
            fixed[0] += self._height(self.steps_heading())
        least = LEAST_BLANK_MM if blank else LEAST_PLATE_MM
        pages = filled_pages(fixed, left, self.room - 1, least * mm, MOST_PLATE_MM * mm)
        self.log_beside_plan = not (pages and pages[0]) and self._height(self.log()) < left
        each = iter(records)
        for number, heights in enumerate(pages):
            for place, height in enumerate(heights):
                record = next(each)
                self.heights[record.id] = height
                if number and not place:
                    self.page_starts.add(record.id)

    def _height(self, flowables: Sequence[Flowable]) -> float:
        """Height of flowables one under the other, points."""
        return sum(
            f.wrap(self.width, 1e6)[1] + f.getSpaceBefore() + f.getSpaceAfter() for f in flowables
        )

    def _height_beside(self, step: StepWords) -> float:
        """Height of a step without its pictures."""
        text = [] if self.order.blank else [self.step_text(step)]
        key = [LineKey((), ())] if step.cut or step.hinge else []
        return self._height([self.step_head(step), *key, *text]) + STEP_SPACE_PT

    def step_head(self, step: StepWords) -> Flowable:
        """Number and title of a step, with its boxes to tick."""
        number = self.number_of[step.id]
        # In a self test nothing is done at a table, so there is nothing to tick.
        boxes = Spacer(0, 0) if self.order.blank else self.boxes(step)
        wide = boxes.wrap(0, 0)[0] + 2
        head = Table(
            [[rich(f"{number}&nbsp; {escape(step.title)}", "step"), boxes]],
            [self.width - wide, wide],
        )
        head.setStyle(
            in_own_face(
                [
                    ("LINEABOVE", (0, 0), (-1, 0), 1.2, black),
                    ("LEFTPADDING", (0, 0), (-1, -1), 0),
                    ("RIGHTPADDING", (0, 0), (-1, -1), 0),
                    ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                    ("TOPPADDING", (0, 0), (-1, -1), 3),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
                ]
            )
        )
        return head

    def add_step(self, record, pictures: StepPictures) -> None:
        """Draw a step; all that its page holds is settled with the first one."""
        if not self.heights:
            self.settle_pages(pictures)
        if record.id not in self.heights:
            return
        self.waiting.add(record.id)
        step = step_words(record, self.model.catalogue)
        height = self.heights[record.id]
        column = COLUMN_MM * mm
        small_wide = SMALL_PLATE_MM * mm
        gap = 3 * mm
        # A picture that stands alone has all the width; it is drawn as wide as it is set.
        wide = self.width - (small_wide + gap if pictures.has_first(record) else 0)

        def pixels(points: float) -> int:
            return round(points * self.dots)

        first, second = pictures.pair(
            record,
            (pixels(small_wide), pixels(height)),
            (pixels(wide - 2 * column), pixels(height)),
        )
        plate = Plate(second, wide, height, column, self.order.blank, self.next_number)
        if self.order.blank and not plate.labels:
            return
        self.next_number += len(plate.labels)
        number = self.number_of[record.id]
        self.answers.append((f"{number} {step.title}", plate.answers))
        if first is None:
            row = Table([[plate]], [self.width])
        else:
            row = Table([[Plate(first, small_wide, height), plate]], [small_wide + gap, wide])
        row.setStyle(in_own_face([(f"{s}PADDING", (0, 0), (-1, -1), 0) for s in _SIDES]))
        under = []
        if first is not None and first.lines:
            under = [
                LineKey(first.lines, (("cut", told("cut")), ("hinge", _hinge_words(step.fold))))
            ]
        text = [] if self.order.blank else [self.step_text(step)]
        above = [] if self.steps else self.steps_heading()
        if self.page_starts & self.waiting:
            self.steps.append(PageBreak())
        self.waiting.clear()
        head = self.step_head(step)
        # The space at the end is less than was settled: rounding must not cost a page.
        space = [Spacer(0, 3), *text, Spacer(0, STEP_SPACE_PT - 4)]
        self.steps.append(KeepTogether([*above, head, row, *under, *space]))

    def steps_heading(self) -> list[Flowable]:
        """The heading over the first step, kept on its page."""
        blank = self.order.blank
        rest = told(
            "Write the names beside the numbers; the answers stand on the last page."
            if blank
            else "Names in bold are kept, not cut."
        )
        return [
            rich(told("At the model, without names" if blank else "Step by step"), "heading"),
            words(
                f"{told('Dashed: line of cut. Double: hinge.')} {rest} {told(TUBE_KEY)}", "small"
            ),
            Spacer(0, 4),
        ]

    def step_text(self, step: StepWords) -> Flowable:
        half = (self.width - GAP_MM * mm) / 2
        left = [
            _line(told("Do"), step.do),
            _line(told("Cut"), step.cut),
            _line(told("Hinge"), step.hinge),
        ]
        if step.stop:
            left.append(_sided(_line(told("Stop sign"), " ".join(step.stop)), double=True))
        right: list[Flowable | None] = []
        if step.keep:
            right += [_boxed(rich(f"<b>{keep_words(step.keep)}</b>")), Spacer(0, 3)]
        if step.find:
            right.extend(_finds(step.find, half))
        columns = [[x for x in left if x], [x for x in right if x]]
        # What has no place of its own goes where there is room.
        for line in (
            _line(told("Caution"), step.caution),
            _line(told("Courses differ"), step.differs, "small"),
        ):
            if line is not None:
                tall = [sum(x.wrap(half, 1e6)[1] + 3 for x in column) for column in columns]
                columns[int(tall[1] < tall[0])].append(line)
        table = Table([[columns[0], "", columns[1]]], [half, GAP_MM * mm, half])
        table.setStyle(
            in_own_face(
                [
                    ("VALIGN", (0, 0), (-1, -1), "TOP"),
                    *[(f"{s}PADDING", (0, 0), (-1, -1), 0) for s in _SIDES],
                ]
            )
        )
        return table

    # ------------------------------------------------------------ muscle table

    def muscle_table(self) -> list[Flowable]:
        muscles = muscles_of(self.order.steps, self.model)
        if not muscles:
            return []
        heads = (told("Muscle"), told("From – to"), told("Nerve; artery"), told("Action"))
        rows: list[list[object]] = [[rich(f"<b>{head}</b>", "cell") for head in heads]]
        for entry in muscles:
            mark = self.marks.of
            latin = entry.latin + ("" if entry.latin_sure or not entry.latin else " (?)")
            ends = [
                f"<b>{told('from')}</b> {escape(ends_of(entry, 'origin'))}",
                f"<b>{told('to')}</b> {escape(ends_of(entry, 'insertion'))}"
                f"{mark(entry, 'attachments')}",
            ]
            nerve = escape(told(entry.nerve) or "–") + mark(entry, "nerve")
            artery = escape(told(entry.artery) or "–") + mark(entry, "artery")
            actions = escape("; ".join(map(told, entry.actions)) or "–") + mark(entry, "actions")
            rows.append(
                [
                    self.muscle_names(entry.english, latin),
                    [rich(line, "cell") for line in ends],
                    [rich(nerve, "cell"), rich(artery, "cell", spaceBefore=2)],
                    rich(actions, "cell"),
                ]
            )
        shares = (0.22, 0.36, 0.23, 0.19)
        table = Table(rows, [self.width * share for share in shares], repeatRows=1)
        # The last rows stay together: one alone on a page reads as forgotten.
        together = [("NOSPLIT", (0, -min(3, len(muscles))), (-1, -1))]
        table.setStyle(in_own_face([*_GRID, ("VALIGN", (0, 0), (-1, -1), "TOP"), *together]))
        note = told(
            "Raised marks name the source below the table's end; m: from memory, p: common practice "
            "without a source, *: place in the source recalled, not read. Latin with (?): recalled."
        )
        return [
            PageBreak(),
            rich(told("Muscles of these steps"), "heading"),
            rich(note, "note"),
            Spacer(0, 4),
            table,
        ]

    @staticmethod
    def muscle_names(english: str, latin: str) -> list[Flowable]:
        """The name as it is said, and the Latin one where that says something new."""
        said = told(english)
        names = [rich(f"<b>{escape(capital(said))}</b>", "cell")]
        long = re.sub(r"^Mm?\. ", "musculus ", said).lower().replace(",", "")
        if latin and latin.lower() not in (said.lower(), long):
            names.append(rich(f"<i>{escape(latin)}</i>", "small"))
        return names

    # ------------------------------------------------------------- last pages

    def log(self) -> list[Flowable]:
        """Rows to write down what differs from the plan."""
        heads = (told("Side"), told("Step"), told("What differs in this donor"))
        head = [rich(f"<b>{t}</b>", "cell") for t in heads]
        log = Table(
            [head, *[["", "", ""]] * 5],
            [18 * mm, 18 * mm, self.width - 36 * mm],
            rowHeights=[None, *[9 * mm] * 5],
        )
        log.setStyle(in_own_face(_GRID))
        return [rich(told("Log of variants"), "heading"), log]

    def ending(self) -> list[Flowable]:
        """What is ticked when the table is left."""
        end = Table(
            [[TickBox(), words(told(line))] for line in AT_THE_END], [8 * mm, self.width - 8 * mm]
        )
        end.setStyle(
            in_own_face(
                [
                    ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                    ("LEFTPADDING", (0, 0), (-1, -1), 0),
                    ("TOPPADDING", (0, 0), (-1, -1), 1.5),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
                ]
            )
        )
        return [rich(told("At the end of the day"), "heading"), end]

    def sources(self) -> list[Flowable]:
        listed = self.marks.listed()
        if not listed:
            return []
        # Run on in one paragraph: line by line, the last two would take a page of their own.
        run = ";&nbsp; ".join(f"<b>{mark}</b>&nbsp;{escape(text)}" for mark, text in listed)
        return [KeepTogether([rich(told("Sources"), "heading"), rich(run, "small")])]

    def answer_page(self) -> list[Flowable]:
        heading = rich(told("Answers"), "heading")
        rows: list[Flowable] = []
        # All answers have to stand on one page: as large as it holds them.
        for points in (BODY_PT, 9.0, SMALL_PT, 7.5):
            size = {"fontSize": points, "leading": points * 1.28, "spaceAfter": points * 0.4}
            rows = [
                rich(f"<b>{escape(title)}:</b> {answers_markup(answers)}", **size)
                for title, answers in self.answers
            ]
            if self._height([heading, *rows]) < self.room:
                break
        return [PageBreak(), heading, *rows]


class SourceMarks:
    """Gives every source a number, in the order in which they are first met."""

    def __init__(self) -> None:
        self._numbers: dict[str, int] = {}

    def of(self, entry: Entry, fact: str) -> str:
        """Return the raised marks of a fact of a row, "" when nothing vouches for it."""
        marks = dict.fromkeys(self._mark(citation) for citation in entry.cited.get(fact, ()))
        return f"<super size=6>\u00a0{','.join(marks)}</super>" if marks else ""

    def _mark(self, citation: Citation) -> str:
        if citation.source == "memory":
            return "m"
        if citation.source == "practice":
            return "p"
        number = self._numbers.setdefault(citation.text, len(self._numbers) + 1)
        return f"{number}{'' if citation.seen else '*'}"

    def listed(self) -> list[tuple[str, str]]:
        """Return (mark, reference) in the order of their numbers."""
        return [(str(number), text) for text, number in self._numbers.items()]


class _Counting:
    """Writes "page 3 of 12" when the number of pages is known."""

    def __init__(self) -> None:
        self.pages = 0

    @property
    def canvas_maker(self):
        from reportlab.pdfgen.canvas import Canvas

        counting = self

        class Counted(Canvas):
            def __init__(self, *args, **more) -> None:
                super().__init__(*args, **{**more, "initialFontName": f"{FACE}-Regular"})
                self._kept: list[dict] = []

            def showPage(self) -> None:  # noqa: N802 (the library's name)
                self._kept.append(dict(self.__dict__))
                self._startPage()

            def save(self) -> None:
                counting.pages = len(self._kept)
                for kept in self._kept:
                    self.__dict__.update(kept)
                    self.setFont(f"{FACE}-Regular", 8)
                    self.drawRightString(
                        self._pagesize[0] - MARGIN_MM * mm,
                        FOOT_MM * mm - 11,
                        told("page {n} of {count}", n=self._pageNumber, count=counting.pages),
                    )
                    super().showPage()
                super().save()

        return Counted


_SIDES = ("LEFT", "RIGHT", "TOP", "BOTTOM")
_GRID = [
    ("GRID", (0, 0), (-1, -1), 0.5, black),
    ("LINEBELOW", (0, 0), (-1, 0), 1.2, black),
    ("BACKGROUND", (0, 0), (-1, 0), GREY),
    ("TOPPADDING", (0, 0), (-1, -1), 3),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 3.5),
    ("LEFTPADDING", (0, 0), (-1, -1), 4),
    ("RIGHTPADDING", (0, 0), (-1, -1), 4),
]


def in_own_face(commands) -> TableStyle:
    """A style in which empty cells, too, ask for no font but ours."""
    return TableStyle([("FONTNAME", (0, 0), (-1, -1), f"{FACE}-Regular"), *commands])


def _line(head: str, text: str, kind: str = "body") -> Flowable | None:
    if not text:
        return None
    return rich(f"<b>{head}.</b> {escape(capital(text))}", kind, spaceAfter=3)


def _boxed(inside: Flowable) -> Flowable:
    table = Table([[inside]])
    table.setStyle(
        in_own_face(
            [
                ("BOX", (0, 0), (-1, -1), 1.4, black),
                ("TOPPADDING", (0, 0), (-1, -1), 2),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 4),
            ]
        )
    )
    return table


def _sided(inside: Flowable, double: bool) -> Flowable:
    table = Table([[inside]], spaceAfter=3)
    rules = [("LINEBEFORE", (0, 0), (0, -1), 1.0, black, 0, None, None, 2 if double else 1, 1.5)]
    table.setStyle(
        in_own_face(
            [
                *rules,
                ("LEFTPADDING", (0, 0), (-1, -1), 8),
                ("TOPPADDING", (0, 0), (-1, -1), 2),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 1),
            ]
        )
    )
    return table


def _finds(names: Sequence[str], width: float) -> list[Flowable]:
    """Names with a box to tick when found, in two columns."""
    tick = told("(tick; a missing thing is reported, not hunted)")
    head = rich(f"<b>{told('Find')}</b> {tick}", "body")
    cells = [[TickBox("", 3.2), words(name, "cell")] for name in names]
    if len(cells) % 2:
        cells.append(["", ""])
    half = len(cells) // 2
    rows = [[*cells[i], *cells[i + half]] for i in range(half)]
    table = Table(rows, [5.5 * mm, width / 2 - 5.5 * mm] * 2)
    table.setStyle(
        in_own_face(
            [
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                *[(f"{s}PADDING", (0, 0), (-1, -1), 0.6) for s in _SIDES],
                ("TOPPADDING", (0, 0), (0, -1), 2.2),
                ("TOPPADDING", (2, 0), (2, -1), 2.2),
            ]
        )
    )
    return [head, table, Spacer(0, 3)]


def _hinge_words(fold: str) -> str:
    return told("hinge, folded {direction}", direction=fold) if fold else told("hinge")


def caution_markup(caution: Caution) -> str:
    """Return a caution in a line, its title bold."""
    return f"<b>{escape(told(caution.title))}.</b> {escape(told(caution.text))}"


def answers_markup(answers: Iterable[tuple[int, str]]) -> str:
    """Return numbered answers in a line; a number is never parted from its answer's first word."""
    return ";&nbsp; ".join(f"<b>{n}</b>&nbsp;{escape(text)}" for n, text in answers)


def keep_words(names: Sequence[str]) -> str:
    """Return what is to be kept, as it stands in its box."""
    return escape(told("KEEP: {names}", names=", ".join(names)))


def ends_of(entry: Entry, kind: str) -> str:
    """Return where a muscle comes from ("origin") or goes to ("insertion")."""
    rules = [told(rule.words) for rule in entry.attachments if rule.kind == kind]
    return "; ".join(dict.fromkeys(rules))


def capital(text: str) -> str:
    return re.sub(r"^\w", lambda first: first[0].upper(), text)
