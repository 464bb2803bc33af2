"""An article as it looks made up: which part lies over which, what is seen on it, and from which sides it is shown."""

from fractions import Fraction

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.drawing import article_made_up as drawing
from calculators.drawing.article_rows import corners_of, rows_on
from calculators.drawing.article_straps import strap_hanging
from calculators.trade.articles.made_up import layers_from_the_back, made_up
from calculators.trade.articles.parts import FlatPart
from calculators.trade.articles.work import MakingUp


def made(name, **typed):
    return answer(calculator_named(name), Asking(typed)).drawn_from


def layers_of(name):
    work = made(name).work
    return layers_from_the_back(work, made_up(work))


@pytest.mark.parametrize(
    ("name", "layers"),
    [
        # “lay the upper back on the front, right sides together, then the lower back over it”, and turn it out
        ("cushion-overlap", [["upper back"], ["lower back"], ["front"]]),
        # “fold the back over the front, then the flap over both”, and turn it out: the flap lies inside
        ("pillowcase", [["back"], ["flap"], ["front"]]),
        ("pot-holder", [["back"], ["wadding"], ["front"]]),
        (
            "oven-glove",  # the pockets lie on the lining, mouths towards the middle
            [["other pocket"], ["other pocket wadding"], ["other pocket lining"], ["pocket"], ["pocket wadding"],
                ["pocket lining"], ["band lining"], ["band wadding"], ["band"]],
        ),
    ],
)  # fmt: skip
def test_its_layers_lie_as_its_order_of_work_lays_them(name, layers):
    assert layers_of(name) == layers


@pytest.mark.parametrize(
    ("name", "front"),
    [
        ("mat-bordered", "border"),  # joined at the wrong side and turned to the right side
        ("curtain-lined", "width"),
        ("curtain-tab-top", "width"),  # its facing is turned to the back
    ],
)
def test_what_is_turned_to_one_side_lies_there_over_all_other_parts(name, front):
    names = [each for layer in layers_of(name) for each in layer]
    lies_in_front = [front in each for each in names]
    assert lies_in_front == sorted(lies_in_front) and 0 < sum(lies_in_front) < len(names)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("napkin", "From the front: napkin."),
        ("cushion-zip", "From the front: front. From the back: lower back, upper back and zip."),
        ("tie-back", "From the front: front."),  # both sides are alike
        ("cushion-boxed", "From the back: top, left strip, upper zip strip, lower zip strip and zip."),
        ("fitted-sheet", "From the front: top, foot drop and right drop."),
        ("apron", "From the front: apron, neck loop and tie."),
        ("curtain-tab-top", "From the back: facing and tab."),  # around it the wrong side is seen
    ],
)
def test_the_back_is_shown_where_it_looks_otherwise(name, said):
    it = made(name)
    picture = drawing.article_made_up(it.work, it.size, Asking({}).ruler)
    assert picture.description.endswith(said)


def test_the_rows_of_a_mitred_hem_meet_where_the_mitre_ends():
    it = made("napkin", width="40 cm", length="50 cm", turn="1 cm", hem="2 cm")
    rows = [each.places for each in rows_on(it.work.operations, it.work.parts[0])]
    assert sorted({(round(x), round(y)) for row in rows for x, y in row}) == [
        (20, 20),
        (20, 480),
        (380, 20),
        (380, 480),
    ]


def test_a_row_of_a_point_ends_where_the_row_beside_it_does():
    it = made("runner-pointed", width="60 cm", table_length="160 cm", drop="20 cm", point="40 cm", hem="3 cm")
    rows = [each.places for each in rows_on(it.work.operations, it.work.parts[0])]
    ends = [place for row in rows for place in row]
    # each half of a point is a triangle of 30, 40 and 50 cm: a hem of 3 cm moves its tip in by 3 × 50 ÷ 30 = 5 cm
    assert len(rows) == 6 and any(abs(x - 300) < 1e-6 and abs(y - 50) < 1e-6 for x, y in ends)
    assert all(sum(abs(x - u) + abs(y - v) < 1e-6 for u, v in ends) == 2 for x, y in ends)


def test_a_row_of_one_side_alone_goes_from_edge_to_edge():
    work = MakingUp()
    part = work.rectangle("curtain", Fraction(1000), Fraction(2000))
    work.hem(part.bottom, turn=Fraction(10), hem=Fraction(100))
    (row,) = rows_on(work.operations, part)
    assert row.places == [(0, 100), (1000, 100)] and row.inset == 100


def test_a_row_deeper_than_its_part_is_not_drawn_beside_it():
    """A binding far wider than what it binds, a hem far deeper than half of a round cloth."""
    for name, typed in (
        ("pot-holder", {"length": "2 cm", "width": "30 cm", "binding_width": "1 m"}),
        ("tablecloth-round", {"table_length": "4 cm", "table_width": "30 cm", "drop": "0", "hem": "1 m", "turn": "0"}),
    ):
        it = made(name, **typed)
        assert [*rows_on(it.work.operations, it.work.parts[0])] == []


def test_corners_come_all_round_in_order():
    part = FlatPart("apron", Fraction(70), Fraction(85), slants={"top left": (Fraction(20), Fraction(30))})
    assert corners_of(part) == [(0, 0), (70, 0), (70, 85), (20, 85), (0, 55), (0, 0)]


def test_a_loop_between_two_places_is_about_as_long_as_it_is_and_a_doubled_one_half_of_it():
    box = (0.0, 0.0, 100.0, 200.0)
    arch = strap_hanging([[(0, 200), (10, 200)], [(90, 200), (100, 200)]], 260, box, 500)
    outer = arch[: len(arch) // 2]
    round_it = sum(((x - u) ** 2 + (y - v) ** 2) ** 0.5 for (x, y), (u, v) in zip(outer, outer[1:]))
    assert 0.85 * 260 < round_it < 1.15 * 260
    doubled = strap_hanging([[(45, 200), (55, 200)]] * 2, 60, box, 500)
    assert max(y for _, y in doubled) == 230


def test_buttons_and_zips_are_seen_on_their_side_only():
    zipped, buttoned = (
        drawing.article_made_up(it.work, it.size, Asking({}).ruler)
        for it in (made("cushion-zip"), made("cushion-buttons"))
    )
    # the hem's row at the opening is stitched through, each button is a ring of twelve corners
    assert [each.get("class") for each in zipped.svg.iter()].count("stitch fine") == 2
    rings = [each for each in buttoned.svg.iter("polygon") if len(each.get("points").split()) == 12]
    assert len(rings) == 3


def test_a_row_through_all_layers_is_seen_from_both_sides():
    it = made("cushion-flanged")
    picture = drawing.article_made_up(it.work, it.size, Asking({}).ruler)
    # four of the border on each side, and the hems of both backs at the opening, of which one is covered
    assert [each.get("class") for each in picture.svg.iter()].count("stitch fine") == 2 * 4 + 2


def test_every_article_is_drawn_made_up():
    for name in articles():
        it = made(name)
        picture = drawing.article_made_up(it.work, it.size, Asking({}).ruler)
        height = float(picture.svg.get("viewBox").split()[3])
        assert 40 < height < 230 and picture.title == "Made up", name
