"""An order of several articles: every line as its own page makes it, all sums of all lines, and what is refused."""

import json
from dataclasses import replace
from fractions import Fraction

import pytest

from calculators.articles import articles
from calculators.articles.line import other_fields
from calculators.asking.answering import Asking, answer, filled, read
from calculators.asking.declaration import InvalidInput, Onward
from calculators.catalogue import calculator_named
from calculators.trade.lay_plan.usable import usable_part
from tests.orders import random_orders

ORDER = calculator_named("whole-order")
CLOTHS = json.dumps([[name, "390 cm", "20.00 per m", "0", "0", "no", "trimmed"] for name in
    ("Linen", "Lining", "Border", "Wadding")])  # fmt: skip
every_article = pytest.mark.parametrize("name", articles())


def ordered(lines, **typed):
    """The answer to an order; lines: rows, or the text of them."""
    text = lines if isinstance(lines, str) else json.dumps(lines)
    return answer(ORDER, Asking({"cloths": CLOTHS, **typed, "lines": text}))


def refused(lines, **typed):
    """The one sentence of the refusal, and its field."""
    with pytest.raises(InvalidInput) as raised:
        ordered(lines, **typed)
    ((field, sentence),) = raised.value.sentences.items()
    return field, filled(sentence, ORDER, Asking({}).ruler)


def put_in(name, ruler="", **typed):
    """The line that an article's own page puts into the order, and the answer there."""
    made = answer(calculator_named(name), Asking(typed, wanted_ruler=ruler))
    (note,) = [each for each in made.notes if isinstance(each, Onward) and each.calculator == ORDER.name]
    assert note.adds
    return json.loads(note.carries["lines"]), made


@every_article
@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_what_an_article_puts_into_the_order_is_cut_there_as_on_its_own_page(name, ruler):
    of_the_cloth = {"cloth_width": "390 cm", "measured": "trimmed"}
    asked = {field.name for field in articles()[name].fields}
    typed = {"count": "7"} | {each: text for each, text in of_the_cloth.items() if each in asked}
    typed |= {"table_width": "500 cm"} if name == "tablecloth-joined" else {}
    line, there = put_in(name, ruler, **typed)
    here = ordered(line)
    assert [(row["width"], row["length"], row["count"]) for row in here.results["cutting_list"]] == [
        (*piece.on_the_cloth, 7 * piece.count)
        for piece in sorted(there.drawn_from.pieces, key=lambda piece: _CLOTHS.index(piece.cloth))
    ]
    assert here.results["stitching"] == 7 * there.results["stitching"]
    minutes = read(ORDER, Asking({}))["minutes_batch"]
    assert here.results["time"] - minutes == there.results["time"]


_CLOTHS = ["", "lining", "border", "wadding"]


def test_minutes_of_ones_own_go_along_and_the_house_s_stay_the_house_s():
    (own,), _ = put_in("napkin", minutes_each="40 min", count="3")
    (usual,), _ = put_in("napkin", count="3")
    assert "Minutes for each 40 min" in own[-1] and "Minutes" not in usual[-1]
    once = read(ORDER, Asking({}))["minutes_batch"]
    assert ordered([own]).results["time"] == once + 3 * 40


def test_what_the_lines_cost_each_is_what_the_order_costs():
    for typed in random_orders(seed=7):
        try:
            found = answer(ORDER, Asking({**typed, "rate": "31.00", "price_spool": "3.10"})).results
        except InvalidInput:
            continue
        if found["cost_cloth"] is None:
            continue
        shares = sum(row["count"] * row["each"] for row in found["order_lines"])
        assert shares == found["total"]


def test_random_orders_are_planned_or_refused_in_one_sentence_at_a_blank():
    planned = 0
    for typed in random_orders(seed=1):
        try:
            found = answer(ORDER, Asking(typed)).results
        except InvalidInput as problem:
            assert problem.sentences.keys() <= {"lines", "cloths"}
            continue
        planned += 1
        lines = json.loads(typed["lines"])
        assert found["articles"] == sum(int(line[1]) for line in lines)
        assert {row["article"] for row in found["work_list"]} == {articles()[line[0]].title for line in lines}
        assert found["pieces_to_cut"] == sum(row["count"] for row in found["cutting_list"])
    assert planned >= 4, "nearly all were refused"


def test_every_piece_of_an_order_lies_on_its_cloth():
    for plan in ordered("napkin | 20 | 45 cm | 45 cm; curtain-lined | 2; cushion-piped | 3").drawn_from:
        (lay,) = plan.lays
        wanted = sum(piece.count for piece in plan.order.pieces)
        assert len(lay.placed) == wanted
        width = usable_part(plan.order.cloths[0], plan.order.rules).width
        assert all(placed.box.x >= 0 and placed.box.right <= width for placed in lay.placed)


def test_more_of_an_article_never_takes_less():
    bought = [ordered(f"napkin | {count} | 45 cm | 45 cm").results["cost_cloth"] for count in (1, 7, 8, 9, 40)]
    assert bought == sorted(bought) and bought[0] < bought[-1]


def test_a_lining_is_cut_from_its_own_cloth_and_asked_for_where_there_is_none():
    bought = ordered("curtain-lined | 2").results["cloth_to_buy"]
    assert [row["cloth"] for row in bought] == ["Linen", "Lining"]
    field, sentence = refused("curtain-lined | 2", cloths="Linen | 390 cm")
    assert field == "cloths" and "lining" in sentence and "Row 1" in sentence


def test_a_strip_on_the_bias_lies_on_the_cloth_as_the_square_that_it_is_cut_from():
    rows = ordered("cushion-piped | 1 | 43 cm | 53 cm").results["cutting_list"]
    (strip,) = [row for row in rows if "square" in row["piece"]]
    line, made = put_in("cushion-piped", pad_width="43 cm", pad_length="53 cm")
    piece = made.drawn_from.pieces[-1]
    assert strip["width"] == strip["length"]
    assert piece.width * piece.length < strip["width"] ** 2 < Fraction(5, 2) * piece.width * piece.length


@pytest.mark.parametrize(
    "lines, told",
    [
        ("napkin | 2 | 40 cm | 40 cm | | Hem depth 2", "Hem depth has no unit"),
        ("napkin | 2 | 40 cm | 40 cm | | Hm 2 cm", "none of its measures. They are: First turn, Hem depth"),
        ("napkin | 2 | 40 cm | 40 cm | | Hem depth 2 cm, hem depth 3 cm", "stands there twice"),
        ("napkin | 2 | 40 cm | 40 cm | | Hem depth", "has no value"),
        ("napkin | 2 | 40 cm | 40 cm | | Hem depth 2 kg", "Hem depth: “2 kg” is not a length"),
        ("napkin | 2 | 2 cm | 2 cm", "Nothing is left of the napkin"),
        ("napkin | 2 | 40 cm | 40 cm | Silk", "no cloth called “Silk”"),
        ("napkin | 2 | 400 cm | 40 cm", "gives 390 cm across"),
        ("napkin | 900 | 40 cm | 40 cm; napkin | 900 | 40 cm | 40 cm", "more than 1,000 pieces"),
        ("; napkin | 2 | 40 cm | 40 cm | | Fullness 2", "Fullness 2"),
        ("serviette | 2", "not one of the choices"),
        (" | ", "at least one line"),
    ],
)
def test_what_cannot_be_made_is_said_in_one_sentence_at_the_lines(lines, told):
    field, sentence = refused(lines)
    assert field == "lines" and told in sentence


def test_measures_are_read_however_they_are_parted_and_written():
    usual = ordered("cushion-overlap | 1 | 45 cm | 45 cm").results["cutting_list"]
    texts = ("Overlap 15,5 cm, Hem of the opening 2 cm", "overlap: 15.5 cm\nHEM OF THE OPENING 2 cm", "Overlap 155 mm")
    found = [ordered([["cushion-overlap", "1", "45 cm", "45 cm", "", text]]).results["cutting_list"] for text in texts]
    assert found[0] == found[1] == found[2] != usual


def test_a_size_left_empty_is_said():
    notes = [filled(note, ORDER, Asking({}).ruler) for note in ordered("napkin | 2 | 40 cm").notes]
    assert any("a size is left empty" in note for note in notes)
    assert not any("left empty" in filled(note, ORDER, Asking({}).ruler) for note in ordered("napkin|2|1 m|1 m").notes)


def test_a_sum_without_the_price_of_one_cloth_says_so():
    found = ordered("curtain-lined | 2", cloths="Linen | 390 cm | 20.00 per m; Lining | 390 cm", rate="0")
    assert found.results["cost_cloth"] is None
    assert "without cloth." in filled(found.spoken, ORDER, Asking({}).ruler)
    assert any("Write a price for cloth" in filled(note, ORDER, Asking({}).ruler) for note in found.notes)


def test_the_lay_plan_that_a_cloth_leads_to_buys_as_much():
    found = ordered("napkin | 20 | 45 cm | 45 cm; runner | 2")
    (note,) = [each for each in found.notes if isinstance(each, Onward)]
    plan = answer(calculator_named("lay-plan"), Asking({**note.carries, "change_length": "0", "change_width": "0"}))
    assert plan.results["to_start_from"] == found.results["cloth_to_buy"][0]["length"]


def test_no_two_measures_of_an_article_share_a_name():
    for article in articles().values():
        labels = [field.label.casefold() for field in other_fields(article)]
        assert len(labels) == len(set(labels)), article.name
        assert not any("," in label or ";" in label for label in labels), article.name


def test_the_house_s_own_minutes_are_those_of_the_order():
    asking = Asking({"lines": "napkin | 10 | 40 cm | 40 cm"})
    slower = replace(asking.method, tables={**asking.method.tables, "operations": ()})
    fast, slow = (answer(ORDER, replace(asking, method=method)).results for method in (asking.method, slower))
    assert fast["time"] != slow["time"]


def test_pieces_of_one_article_keep_names_of_their_own_on_the_lay_plan():
    for name in articles():
        size = "500 cm" if name == "tablecloth-joined" else ""
        for note in ordered(f"{name} | 1 | {size}").notes:
            if isinstance(note, Onward):
                names = [row[0] for row in json.loads(note.carries["pieces"])]
                assert len(set(names)) == len(names) and all(len(each) <= 30 for each in names), (name, names)
