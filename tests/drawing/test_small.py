"""A small drawing has cloth and lines alone, all of them in sight, and nothing else takes its room."""

import copy

import pytest

from calculators.asking.answering import Asking, answer
from calculators.catalogue import catalogue
from calculators.drawing.picture import Picture, Sheet, pictures_of
from calculators.drawing.small import made_small, places_of

ALONE = {"corner-steps": {"step": "5"}}
TRUE_SIZE = {"mitre-gauge", "template"}  # printed, and never small


def drawn(name: str) -> Picture:
    calculator = catalogue()[name]
    asking = Asking(ALONE.get(name, {}))
    assert calculator.drawing
    return pictures_of(calculator.drawing(answer(calculator, asking).drawn_from, asking.ruler))[0]


@pytest.mark.parametrize("name", [name for name, each in catalogue().items() if each.drawing and name not in TRUE_SIZE])
def test_it_has_no_words_no_dimensions_and_no_key_and_fills_its_box(name):
    picture = drawn(name)
    whole = {each.get("points") or each.get("d") for each in picture.svg.iter() if each.get("points") or each.get("d")}
    svg = made_small(picture)
    kept = {each.get("points") or each.get("d") for each in svg.iter()} - {None}
    assert kept and kept <= whole
    assert not list(svg.iter("text")) and not list(svg.iter("rect"))
    assert not [each for each in svg.iter() if "dimension" in each.get("class", "").split()]
    assert svg.get("aria-label") == picture.title
    left, top, width, height = map(float, svg.get("viewBox", "").split())
    xs, ys = zip(*places_of(svg))
    assert (min(xs) - left, min(ys) - top) == pytest.approx((3, 3), abs=0.2)
    assert (left + width - max(xs), top + height - max(ys)) == pytest.approx((3, 3), abs=0.2)


def test_what_is_drawn_as_a_path_is_measured_too():
    sheet = Sheet((0, 0, 100, 50))
    sheet.boxes("kind-1", [[(10, 40), (90, 40), (90, 10), (10, 10)]])
    picture = sheet.finish("A box", "One box.")
    path = copy.deepcopy(picture.svg).find("path")
    assert path is not None and {"H", "V"} <= set(path.get("d", ""))
    _, _, width, height = map(float, made_small(picture).get("viewBox", "").split())
    assert width / height == pytest.approx(2.6, abs=0.1)


def test_a_gauge_is_of_its_own_size_or_none():
    with pytest.raises(ValueError):
        made_small(drawn("mitre-gauge"))


def test_a_drawing_of_words_alone_cannot_be_made_small():
    sheet = Sheet((0, 0, 100, 50))
    sheet.words("nothing but words", (0, 0))
    with pytest.raises(ValueError):
        made_small(sheet.finish("Words", "Only words."))
