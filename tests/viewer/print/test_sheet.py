"""The printed sheet read back by other programs: pages, words, fonts, paper."""

from __future__ import annotations

import io
import re
import shutil
import subprocess
from pathlib import Path

import numpy as np
import pypdf
import pypdfium2
import pytest
from PIL import Image
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Table

from meshes.catalogue.plan import cautions, steps
from meshes.errors import PeelbackError
from tests.fakes import toy_model
from viewer.print.sheet import Sheet, SourceMarks, answers_markup, sheet_pdf
from viewer.print.sheet_order import PAPERS, SheetOrder, chosen_steps
from viewer.print.sheet_pictures import (
    StepPicture,
    StepPictures,
    _main_patches,
    _telling_point,
    for_paper,
    smoothed_line,
)
from viewer.print.short_sheet import hinge_words
from viewer.print.typeset import Plate
from viewer.scene.label_layout import Anchor
from viewer.state.languages import spoken_in
from viewer.state.step_words import step_words
from viewer.state.tongue import told
from viewer.state.view_state import ViewState
from viewer.translations.texts import FOLDER, translations

WANTED = "trapezius,latissimus,rhomboids"


def _order(tmp: Path, **more) -> SheetOrder:
    return SheetOrder.checked(out=tmp / "lab.pdf", wanted=WANTED, **more)


@pytest.fixture(scope="module")
def sheets(tmp_path_factory) -> dict[str, bytes]:
    tmp = tmp_path_factory.mktemp("sheet")
    return {
        "A4": sheet_pdf(toy_model(), _order(tmp))[0],
        "Letter": sheet_pdf(toy_model(), _order(tmp, paper="letter", side="left"))[0],
        "blank": sheet_pdf(toy_model(), _order(tmp, blank=True))[0],
        "short": sheet_pdf(toy_model(), _order(tmp, short=True))[0],
    }


def _read(data: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(data))


def _text(data: bytes) -> str:
    return " ".join(" ".join(page.extract_text() for page in _read(data).pages).split())


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_pages_have_the_size_of_the_paper_and_are_numbered(sheets, paper):
    pages = _read(sheets[paper]).pages
    for number, page in enumerate(pages, start=1):
        millimetres = [float(side) * 25.4 / 72 for side in page.mediabox[2:]]
        assert millimetres == pytest.approx(PAPERS[paper], abs=0.1)
        assert f"page {number} of {len(pages)}" in page.extract_text()
        assert "not for needle or surgical guidance" in page.extract_text()


def test_first_page_holds_every_caution(sheets):
    first = " ".join(_read(sheets["A4"]).pages[0].extract_text().split())
    for caution in cautions():
        assert caution.title in first
        assert caution.text in first
    assert first.index("Local rules come first.") < first.index("Sharps.")


def test_every_font_is_embedded(sheets):
    for data in sheets.values():
        fonts = {}
        for page in _read(data).pages:
            for font in page["/Resources"].get("/Font", {}).values():
                font = font.get_object()
                inner = font.get("/DescendantFonts", [font])[0].get_object()
                fonts[font["/BaseFont"]] = inner.get("/FontDescriptor")
        assert len(fonts) >= 2
        assert all("/FontFile2" in d.get_object() for d in fonts.values())


@pytest.mark.skipif(shutil.which("pdffonts") is None, reason="poppler is not installed")
def test_second_reader_finds_fonts_embedded_and_text_that_can_be_selected(sheets, tmp_path):
    for name, data in sheets.items():
        path = tmp_path / f"{name}.pdf"
        path.write_bytes(data)
        listed = subprocess.run(["pdffonts", path], check=True, capture_output=True, text=True)
        fonts = listed.stdout.splitlines()[2:]
        assert len(fonts) >= 2
        # Columns from the right: object (two), unicode map, subset, embedded.
        assert all(line.split()[-5:-2] == ["yes", "yes", "yes"] for line in fonts)
        read = subprocess.run(["pdftotext", path, "-"], check=True, capture_output=True, text=True)
        said = " ".join(read.stdout.split())
        assert "no hand in the line of cut or pull" in said
        assert "Fold trapezius outward" in said


def test_pictures_show_where_nerves_and_vessels_are_seen():
    model = toy_model()
    tubes = {i for i, part in model.parts.items() if part.kind in ("nerve", "artery", "vein")}
    assert tubes
    size = (240, 240)
    round_them = np.concatenate([model.parts[i].mesh.bounds for i in tubes])
    with StepPictures(model) as pictures:
        shown = [i for i, part in model.parts.items() if part.kind == "bone"]
        for others in ([], list(tubes)):
            state = ViewState(removed=frozenset(model.parts) - {*shown, *others})
            pictures._show(state, round_them, size)
            plain = pictures.scene.screenshot(size, overlays=False)
            nerves, vessels = pictures._tubes(plain, size)
            kinds = np.zeros((2, *size[::-1]), bool)
            for y in range(2, size[1], 8):
                for x in range(2, size[0], 8):
                    hit = pictures.scene.pick(x + 0.5, y + 0.5)
                    kind = model.parts[hit.part_id].kind if hit else ""
                    kinds[:, y, x] = kind == "nerve", kind in ("artery", "vein")
            if not others:
                assert not nerves.any() and not vessels.any()
                continue
            assert kinds.any()
            for mask, truth in ((nerves, kinds[0]), (vessels, kinds[1])):
                asked = mask[2::8, 2::8] == truth[2::8, 2::8]
                assert asked.mean() > 0.98
            assert nerves.any()


def test_landmarks_are_named_on_the_skin_in_the_step_that_feels_for_them():
    feel = next(step for step in steps() if step.id == "feel_landmarks")
    with StepPictures(toy_model()) as pictures:
        first, second = pictures.pair(feel, (100, 160), (300, 300))
        hits = [pictures.scene.pick(a.x, a.y) for a in second.anchors]
    assert first is None
    named = [anchor.text for anchor in second.anchors]
    assert {"C7", "inferior angle of the scapula"} <= set(named)
    assert len(named) == len(set(named))
    # Under trapezius it is not felt.
    assert not any("superior angle" in name for name in named)
    # Bone shows in the slit that the toy's skin leaves in the midline.
    assert {hit.part_id.split("_")[0].split(".")[0] for hit in hits} <= {"skin", "vertebra"}


def test_no_picture_is_drawn_in_other_proportions_than_it_is_set(tmp_path):
    model = toy_model()
    alone = 0
    for blank in (False, True):
        sheet = Sheet(model, SheetOrder.checked(out=tmp_path / "a.pdf", blank=blank))
        with StepPictures(model) as pictures:
            for step in sheet.order.steps:
                sheet.add_step(step, pictures)
                alone += not pictures.has_first(step)
        plates = list(plates_in(sheet.steps))
        assert len(plates) > 10
        for plate in plates:
            rows, columns = plate.picture.pixels.shape[:2]
            set_wide = plate.width - 2 * plate.column
            assert columns / rows == pytest.approx(set_wide / plate.height, rel=0.02)
    assert alone > 1


def plates_in(flowables):
    """Yield the pictures among flowables, those in tables and groups too."""
    for each in flowables:
        if isinstance(each, Plate):
            yield each
        elif isinstance(each, (list, tuple)):
            yield from plates_in(each)
        else:
            for name in ("_cellvalues", "_content"):
                yield from plates_in(getattr(each, name, ()))


def test_steps_say_what_to_do_to_keep_to_find_and_when_to_stop(sheets):
    text = _text(sheets["A4"])
    for step in chosen_steps(WANTED):
        assert step.title in text
        for sentence in (step.do, step.caution, *step.stop):
            assert sentence.split(". ")[0].strip(".") in text
    assert "KEEP: accessory nerve" in text
    assert "levator scapulae" in text
    assert "Fold the rhomboids outward" in text
    assert "Open the dura" not in text


def test_muscles_are_told_with_ends_nerve_artery_action_and_marks_of_their_sources(sheets):
    text = _text(sheets["A4"])
    for word in (
        "Rhomboid major",
        "musculus rhomboideus major",
        "medial border of the scapula",
        "dorsal scapular nerve",
        "dorsal scapular artery",
        "m: from memory",
        "Gray H., Anatomy of the Human Body",
    ):
        assert word in text


def test_pictures_are_in_the_pages_and_not_empty(sheets):
    pictures = [
        image.image.convert("L") for page in _read(sheets["A4"]).pages for image in page.images
    ]
    assert len(pictures) == 2 * len(chosen_steps(WANTED))
    for picture in pictures:
        assert np.asarray(picture).std() > 10


def test_blank_version_has_numbers_for_names_and_its_answers_on_the_last_page_only(sheets):
    pages = _read(sheets["blank"]).pages
    last = " ".join(pages[-1].extract_text().split())
    assert "Answers" in last
    named = re.findall(r"(\d+) ([a-z][a-z ,]+)", last.split("Answers")[1])
    assert len(named) >= 3
    for page in pages[:-1]:
        text = page.extract_text()
        assert "levator scapulae" not in text
        assert "KEEP" not in text
    before = " ".join(page.extract_text() for page in pages[:-1])
    for number, _ in named:
        assert re.search(rf"\b{number}\b", before)


def test_self_test_asks_for_a_score_and_not_for_blades_and_begins_on_its_first_page(sheets):
    first = " ".join(_read(sheets["blank"]).pages[0].extract_text().split())
    assert "Right answers" in first
    assert "Blades out" not in first
    assert "On the table" not in first
    assert "5 Fold trapezius outward" in first.replace("\xa0", " ")


def test_what_is_ticked_and_written_at_the_table_stands_before_the_steps(sheets):
    pages = [" ".join(p.extract_text().split()) for p in _read(sheets["A4"]).pages]
    assert "Blades and pins counted in" in pages[0]
    assert sum("Blades and pins counted in" in page for page in pages) == 1
    assert sum("What differs in this donor" in page for page in pages) == 1


def test_one_side_gives_one_box_and_opens_only_that_side(sheets):
    with StepPictures(toy_model(), "left") as pictures:
        step = next(s for s in steps() if s.id == "trapezius")
        removed = pictures.after(step).removed
    assert "trapezius_ascending.left" in removed
    assert not any(part_id.endswith(".right") for part_id in removed)
    assert "Left side" in _text(sheets["Letter"])


def test_optional_steps_are_open_only_where_they_are_needed():
    with StepPictures(toy_model()) as pictures:
        by_id = {step.id: step for step in steps()}
        assert "levator_scapulae.left" not in pictures.before(by_id["splenii"]).removed
        assert "rhomboid_major.left" in pictures.before(by_id["splenii"]).removed


def test_same_model_gives_the_same_bytes(sheets, tmp_path):
    assert sheet_pdf(toy_model(), _order(tmp_path))[0] == sheets["A4"]


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="poppler is not installed")
def test_second_reader_draws_every_page_with_ink_inside_the_margins(sheets, tmp_path):
    for name, data in sheets.items():
        path = tmp_path / f"{name}.pdf"
        path.write_bytes(data)
        subprocess.run(["pdftoppm", "-r", "40", "-png", path, tmp_path / name], check=True)
        pages = sorted(tmp_path.glob(f"{name}-*.png"))
        assert len(pages) == len(_read(data).pages)
        for page in pages:
            ink = np.asarray(Image.open(page).convert("L")) < 128
            assert ink.any()
            edge = round(10 / 25.4 * 40)
            assert not ink[:, :edge].any()
            assert not ink[:, -edge:].any()
            assert not ink[:edge].any()


@pytest.mark.parametrize(
    ("words", "ids"),
    [
        ("trapezius", ["trapezius"]),
        ("7,5", ["trapezius", "rhomboids"]),
        ("9-10", ["serratus_superior", "serratus_inferior"]),
        ("20", ["laminae"]),
        (" 5-6 , rhomboids", ["trapezius", "latissimus", "rhomboids"]),
    ],
)
def test_steps_are_chosen_by_id_number_and_range_in_plan_order(words, ids):
    assert [step.id for step in chosen_steps(words)] == ids


def test_steps_are_chosen_by_the_numbers_that_stand_on_the_sheet(sheets):
    said = _text(sheets["A4"])
    for word in ("5", "6", "7"):
        (step,) = chosen_steps(word)
        assert f"{word} {step.title}" in said.replace("\u00a0", " ")


@pytest.mark.parametrize("words", ["trapez", "0", "22", ",", "5-"])
def test_words_that_are_no_step_are_refused_with_those_there_are(words):
    with pytest.raises(PeelbackError, match=r"steps are 1–21 or feel_landmarks"):
        chosen_steps(words)


def test_ground_of_a_picture_becomes_white_and_flesh_stays_light_enough_for_black_ink():
    pixels = np.full((4, 4, 3), 230, np.uint8)
    pixels[1, 1] = (160, 60, 50)
    paper = for_paper(pixels)
    assert paper[0, 0].min() == 255
    before, after = (Image.fromarray(p).convert("L").getpixel((1, 1)) for p in (pixels, paper))
    assert before < 100 < after < 160


def test_a_border_is_named_at_its_middle_and_a_single_point_at_itself():
    border = np.array([[0, 0, 0], [1, 0, 0], [5, 0, 0]], float)
    assert _telling_point(border).tolist() == [[1, 0, 0]]
    assert _telling_point(border[2]).tolist() == [[5, 0, 0]]


def test_a_frame_keeps_to_the_main_patches_of_what_changes():
    mask = np.zeros((60, 60), bool)
    mask[10:30, 10:20] = mask[10:28, 40:50] = True
    both = mask.copy()
    mask[55, 55] = True
    assert (_main_patches(mask) == both).all()
    assert not _main_patches(np.zeros((5, 5), bool)).any()


def test_close_pictures_keep_every_name_and_show_the_window_large(preview_model):
    wanted = {"suboccipital_triangle": 1.4, "canal": 2.0}
    with StepPictures(preview_model) as pictures:
        for step in steps():
            if step.id not in wanted:
                continue
            size = (400, 460)
            pictures._show(pictures.after(step), pictures._whole(step), size)
            wide = pictures.scene.pose.scale_mm
            names, _ = pictures._names(step)
            before = len(pictures.scene.seen_anchors(names))
            _, picture = pictures.pair(step, (200, 460), size)
            assert wide > wanted[step.id] * pictures.scene.pose.scale_mm
            assert len(picture.anchors) >= before


def test_a_word_wider_than_its_column_stays_inside_the_page():
    anchors = tuple(
        Anchor(text, text, 20.0 + 160 * side, 50.0, 1.0)
        for side, text in enumerate(("M. sternocleidomastoideus", "N. occipitalis major"))
    )
    picture = StepPicture(np.full((200, 200, 3), 255, np.uint8), anchors)
    plate = Plate(picture, 392.0, 200.0, 96.0)
    assert plate._lines_of("N. occipitalis major")[0].startswith("N.\u00a0occipitalis")
    buffer = io.BytesIO()
    canvas = Canvas(buffer, pagesize=(392, 200))
    plate.drawOn(canvas, 0, 0)
    canvas.showPage()
    canvas.save()
    page = pypdfium2.PdfDocument(buffer.getvalue())[0].get_textpage()
    boxes = [page.get_charbox(i) for i in range(page.count_chars())]
    assert min(box[0] for box in boxes) >= 0.0
    assert max(box[2] for box in boxes) <= 392.0


def test_no_answer_is_parted_from_its_number():
    assert answers_markup([(62, "12. Rippe"), (63, "A")]) == (
        "<b>62</b>&nbsp;12. Rippe;&nbsp; <b>63</b>&nbsp;A"
    )


def test_hinge_of_the_short_sheet_says_the_way_once():
    model = toy_model()
    words = {step.id: hinge_words(step_words(step, model.catalogue)) for step in steps()}
    assert words["rhomboids"] == "medial border of the scapula, outward"
    assert words["canal"] == "its edges, pinned out both ways"
    assert words["laminae"] == ""


def test_smoothing_a_cut_line_keeps_its_ends():
    zigzag = np.array([[0, 0], [1, 5], [2, -5], [3, 5], [4, 0]], float)
    line = smoothed_line(zigzag)
    assert line[0] == pytest.approx([0, 0])
    assert line[-1] == pytest.approx([4, 0])
    assert np.abs(line[:, 1]).max() < 2


def test_marks_number_sources_and_tell_memory_from_practice():
    catalogue = toy_model().catalogue
    marks = SourceMarks()
    assert ">" in marks.of(catalogue["trapezius_descending"], "attachments")
    assert "m" in re.sub("<[^>]*>", "", marks.of(catalogue["trapezius_descending"], "actions"))
    assert "1*" in marks.of(catalogue["trapezius_descending"], "nerve")
    assert marks.of(catalogue["trapezius_descending"], "nothing") == ""
    assert marks.listed()[0][1].startswith("Gray H.")


def test_short_sheet_has_two_to_four_pages_with_cautions_first_and_a_row_a_step(sheets):
    pages = _read(sheets["short"]).pages
    assert 2 <= len(pages) <= 4
    first = " ".join(pages[0].extract_text().split())
    for caution in cautions():
        assert caution.text in first
    text = _text(sheets["short"])
    for step in chosen_steps(WANTED):
        assert step.title in text
        assert all(" ".join(cut.words.split())[1:] in text for cut in step.cuts)
        assert all(stop in text for stop in step.stop)
    assert text.count("KEEP:") == len([s for s in chosen_steps(WANTED) if s.keep])


@pytest.mark.parametrize("paper", PAPERS)
def test_short_sheet_of_the_whole_plan_fits_four_pages(tmp_path, paper):
    order = SheetOrder.checked(out=tmp_path / "lab.pdf", paper=paper, short=True)
    data, count = sheet_pdf(toy_model(), order)
    assert count <= 4
    assert all(step.title in _text(data) for step in steps())


def test_short_and_blank_are_two_sheets(tmp_path):
    with pytest.raises(PeelbackError, match="short and blank"):
        SheetOrder.checked(out=tmp_path / "lab.pdf", short=True, blank=True)


@pytest.fixture(scope="module")
def german_sheets(tmp_path_factory) -> dict[str, bytes]:
    tmp = tmp_path_factory.mktemp("german")
    with spoken_in("de"):
        return {
            "full": sheet_pdf(toy_model(), _order(tmp, paper="letter"))[0],
            "short": sheet_pdf(toy_model(), _order(tmp, short=True))[0],
            "blank": sheet_pdf(toy_model(), _order(tmp, blank=True))[0],
        }


def test_a_german_sheet_holds_no_sentence_or_name_of_the_english_one(german_sheets, sheets):
    table = translations(FOLDER / "peelback_de.ts")
    for kind, english in (("full", sheets["A4"]), ("short", sheets["short"])):
        # References stay in the language in which they were published.
        text = _text(german_sheets[kind]).split("Quellen")[0]
        before = _text(english)
        written = [t for t, words in table.items() if len(t) > 11 and words != t and t in before]
        assert len(written) > 40
        left = [t for t in written if t in text and t not in "; ".join(table.values())]
        assert left == []


def test_a_german_sheet_says_its_cautions_answers_and_pages_in_german(german_sheets):
    first = " ".join(_read(german_sheets["full"]).pages[0].extract_text().split())
    assert "Die Hausordnung geht vor" in first
    assert first.index("Hinweise") < first.index("Scharfes und Spitzes")
    pages = _read(german_sheets["full"]).pages
    assert f"Seite 2 von {len(pages)}" in pages[1].extract_text()
    assert "SCHONEN: N. accessorius" in _text(german_sheets["full"])
    assert "Antworten" in _read(german_sheets["blank"]).pages[-1].extract_text()
    assert _read(german_sheets["full"]).trailer["/Root"]["/Lang"] == "de-DE"


@pytest.mark.slow
@pytest.mark.parametrize(("language", "paper"), [("de", "A4"), ("en", "Letter")])
def test_pages_of_the_whole_sheet_are_full(preview_model, tmp_path, language, paper):
    order = SheetOrder.checked(out=tmp_path / "lab.pdf", paper=paper)
    with spoken_in(language):
        data, count = sheet_pdf(preview_model, order)
        titles = [told(step.title) for step in steps()]
    assert count <= 20
    order.out.write_bytes(data)
    subprocess.run(["pdftoppm", "-r", "40", "-gray", "-png", order.out, tmp_path / "p"], check=True)
    texts = [" ".join(page.extract_text().split()) for page in _read(data).pages]

    def page_of(heading: str) -> int:
        # The plan on the second page names each step as well.
        return max(i for i, t in enumerate(texts) if heading in t.replace("\xa0", " "))

    first, last = page_of(f"1 {titles[0]}"), page_of(f"21 {titles[20]}")
    filled = []
    for page in sorted(tmp_path.glob("p-*.png")):
        ink = (np.asarray(Image.open(page)) < 160).any(axis=1)
        # Above the rule of the footer.
        filled.append(float(np.flatnonzero(ink[: round(len(ink) * 0.925)]).max() / len(ink)))
    assert min(filled[:2]) > 0.75
    assert min(filled[:last]) > 0.55
    assert np.mean(filled[first:last]) > 0.80


def test_no_row_of_muscles_is_torn_and_none_is_left_alone_on_the_last_page(tmp_path):
    sheet = Sheet(toy_model(), SheetOrder.checked(out=tmp_path / "lab.pdf"))
    table = next(x for x in sheet.muscle_table() if isinstance(x, Table))
    rows = len(table._cellvalues)
    assert rows > 6
    _, whole = table.wrap(sheet.width, 1e6)
    for height in np.linspace(60, whole - 1, 40):
        pieces = table.split(sheet.width, height)
        if not pieces:
            continue
        counts = [len(piece._cellvalues) for piece in pieces]
        # The head stands on every page; a torn row would count twice.
        assert sum(counts) == rows + len(pieces) - 1
        assert counts[-1] >= 1 + 3
