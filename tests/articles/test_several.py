"""Several of an article: their minutes, and what goes along to the cloth and to thread and cost."""

from dataclasses import replace
from fractions import Fraction

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking, answer, filled, read
from calculators.asking.declaration import Onward
from calculators.asking.site_method import example_method
from calculators.catalogue import calculator_named
from calculators.drawing.article_rows import rows_on
from calculators.trade.articles.counting import OPERATIONS, counted, thread_by_hand
from calculators.values.phrase import figure_parts

every_article = pytest.mark.parametrize("name", articles())


def onward(name: str, **typed: str) -> dict[str, Onward]:
    """What leads on from an article, by the calculator it leads to."""
    notes = answer(calculator_named(name), Asking(typed)).notes
    return {note.calculator: note for note in notes if isinstance(note, Onward)}


@every_article
@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_the_pieces_of_an_order_are_read_by_the_lay_plan_as_they_were_cut(name, ruler):
    asking = Asking({"count": "25"}, wanted_ruler=ruler)
    made = answer(calculator_named(name), asking)
    leads = [note for note in made.notes if getattr(note, "calculator", "") == "lay-plan"]
    cloths = dict.fromkeys(each.cloth for each in made.drawn_from.pieces)
    for note, cloth in zip(leads, cloths, strict=True):
        plan = read(calculator_named("lay-plan"), Asking(note.carries, wanted_ruler=ruler))
        assert [(each.width, each.length, each.count) for each in plan["pieces"]] == [
            (*each.on_the_cloth, 25 * each.count) for each in made.drawn_from.pieces if each.cloth == cloth
        ]
        assert plan["sizes"] == "cut"


@every_article
def test_thread_and_cost_count_the_stitching_and_the_minutes_of_the_article(name):
    carried = onward(name, count="500")["thread-time-cost"].carries
    article = answer(calculator_named(name), Asking({"count": "500"}))
    costs = answer(calculator_named("thread-time-cost"), Asking({**carried, "minutes_batch": "0"}))
    assert costs.results["stitching"] == 500 * article.drawn_from.work.stitching
    assert costs.results["time"] == article.results["time"] > 0
    assert costs.results["thread"] > 2 * costs.results["stitching"], "upper and lower thread"


@every_article
def test_every_operation_can_be_timed(name):
    made = answer(calculator_named(name), Asking({})).drawn_from
    assert counted(made.work, made.pieces).keys() <= OPERATIONS.keys()


def test_the_minutes_of_a_cushion_with_a_zip_counted_by_hand():
    """3 pieces cut at 3 min, a zip at 18, 1.52 m of seam at 4 min a metre, turned out at 3, pressed at 4: 40.08 min,
    shown and counted as 40.1."""
    asking = Asking({}, method=example_method())
    assert read(calculator_named("cushion-zip"), asking)["minutes_each"] == Fraction("40.1")


def test_minutes_follow_the_size_and_the_house():
    usual, longer = (
        read(calculator_named("napkin"), Asking(typed))["minutes_each"] for typed in ({}, {"length": "200 cm"})
    )
    assert longer - usual == pytest.approx(6.5 * 2 * 1.6)
    method = example_method()
    slower = [
        {**line, "minutes": "100 min"} if line["operation"] == "cut" else line for line in method.tables["operations"]
    ]
    changed = replace(method, tables={**method.tables, "operations": tuple(slower)})
    there = read(calculator_named("napkin"), Asking({}, method=changed))["minutes_each"]
    assert there - usual == pytest.approx(97, abs=0.5), "over an hour in whole minutes"


def test_an_operation_without_minutes_counts_for_nothing_and_one_unread_neither():
    method = example_method()
    for lines in ((), ({"operation": "cut", "minutes": "soon", "for_each": "time"},)):
        changed = replace(method, tables={**method.tables, "operations": lines})
        assert read(calculator_named("napkin"), Asking({}, method=changed))["minutes_each"] == 30, "its own usual"


def test_what_is_bought_is_counted_for_all():
    said = {}
    for name in ("cushion-zip", "cushion-buttons", "bread-cloth"):
        calculator = calculator_named(name)
        for count in ("1", "6"):
            reply = answer(calculator, Asking({"count": count}))
            said[name, count] = figure_parts(filled(reply.notes[0], calculator, Asking({}).ruler))[0][0]
    assert said["cushion-zip", "6"].replace("\N{NO-BREAK SPACE}", " ") == "Also to buy: 6 × zip, 32 cm each."
    one, six = (int(said["cushion-buttons", count].split()[-1].rstrip(".")) for count in ("1", "6"))
    assert six == 6 * one
    assert said["bread-cloth", "6"].startswith("Also to buy, for all: binding, ")


def test_tacking_is_timed_by_itself_and_is_no_row_of_the_machine():
    """A pot holder, 20 by 20 cm: two rows of 80 cm bind it, one of 10 cm closes its loop, none tacks its layers."""
    typed = {"width": "20 cm", "length": "20 cm", "loop_seen": "10 cm", "binding_width": "1 cm"}
    work = answer(calculator_named("pot-holder"), Asking(typed)).drawn_from.work
    tacked = [each for each in work.operations if each.verb == "tack"]
    assert len(tacked) == 1 and tacked[0].stitching == 0
    assert work.stitching == 2 * 800 + 100


def test_what_is_sewn_by_hand_is_no_row_of_the_machine_and_has_its_own_minutes_and_thread():
    """One width of 140 cm, hung 200 cm: slip stitch along the foot and up both sides of the lining, catch stitch up
    both sides; its lining's hem, 128 cm, and the tape by machine."""
    reply = answer(calculator_named("curtain-lined"), Asking(dict(articles()["curtain-lined"].examples[0].given)))
    work = reply.drawn_from.work
    assert work.sewn_by_hand == {"slip": 1_320 + 2 * (2_000 - 20), "catch": 2 * 2_000}
    assert work.stitching == reply.results["stitching"] == 1_280 + 1_320 + 1_280
    found = counted(work, reply.drawn_from.pieces)
    assert found["by hand"].times == 3 and found["by hand"].stitching == sum(work.sewn_by_hand.values())
    slip, catch = 0.27 + 0.15 + 0.27 + 0.85, (2 * (1.3**2 + 1) ** 0.5 + 2 * 0.3) / 2
    assert float(thread_by_hand(work)) == pytest.approx(5_280 * slip + 4_000 * catch, rel=0.001)


@every_article
def test_what_its_steps_say_is_sewn_by_hand_is_counted_so(name):
    operations = answer(calculator_named(name), Asking({})).drawn_from.work.operations
    said = {each.do for each in operations if "slip-stitch" in each.do or "catch-stitch" in each.do}
    assert said == {each.do for each in operations if each.by_hand}


def test_what_is_sewn_by_hand_leaves_no_row_on_the_article_made_up():
    work = answer(calculator_named("curtain-lined"), Asking({})).drawn_from.work
    hems = [each for each in work.operations if each.verb == "hem" and each.lengths.get("hem") and not each.by_hand]
    curtain = next(part for part in work.parts if not part.cloth)
    assert [*rows_on(work.operations, curtain)] == [*rows_on(hems, curtain)]
    by_machine = [replace(each, by_hand="") for each in work.operations]
    assert len([*rows_on(by_machine, curtain)]) > len([*rows_on(work.operations, curtain)])


@pytest.mark.parametrize(
    ("name", "typed", "corner"),
    [
        ("curtain", {"lower_hem": "12 cm", "lower_turn": "11 cm"}, ("12", "11", "2.5", "2.5")),
        ("curtain-lined", {"lower_hem": "9 cm"}, ("9", "9", "4", "0")),
        ("curtain-sheer", {"side_hem": "1.5 cm"}, ("5", "5", "1.5", "1.5")),
        ("curtain-tab-top", {"side_turn": "1 cm"}, ("10", "10", "2.5", "1")),
    ],
)
def test_the_corner_of_a_foot_that_may_be_let_down_is_folded_with_a_turn_for_each_edge(name, typed, corner):
    carried = onward(name, **typed)["corner-steps"].carries
    assert carried == dict(zip(("hem_1", "turn", "hem_2", "turn_2"), (f"{each} cm" for each in corner)))
    given = {**carried, "way": "folded-mitre", "trimming": "whole"}
    steps, _ = answer(calculator_named("corner-steps"), Asking(given)).drawn_from
    assert "Trim" not in {each.name for each in steps} and not any("cut" in each.name.lower() for each in steps[1:])


def test_no_other_article_and_no_foot_without_a_hem_leads_to_such_a_corner():
    for name in articles():
        assert ("corner-steps" in onward(name)) == ("curtain" in name), name


def test_what_a_house_has_no_minutes_for_is_said_unless_the_minutes_are_her_own():
    """A house kept from before has no line for sewing by hand."""
    method = example_method()
    lines = [each for each in method.tables["operations"] if each["operation"] != "by hand"]
    before = replace(method, tables={**method.tables, "operations": lines})

    def told(name, **typed):
        asking = Asking(typed, method=before)
        notes = answer(calculator_named(name), asking).notes
        return [text for note in notes if "no minutes" in (text := filled(note, calculator_named(name), asking.ruler))]

    (said,) = told("curtain-lined")
    assert said.endswith("the time is without it: sew by hand.")
    assert told("napkin") == [] and told("curtain-lined", minutes_each="90 min") == []
    assert not any(
        "no minutes" in note.template
        for name in articles()
        for note in answer(calculator_named(name), Asking({})).notes
    )


def test_a_round_edge_goes_along_to_its_binding():
    """π × 170 cm is 534.08 cm."""
    found = onward("tablecloth-round", table_width="120 cm", table_length="120 cm", drop="25 cm")["binding"].carries
    assert found == {"bound_edge": "534.1 cm", "cut": "bias"}
    assert answer(calculator_named("binding"), Asking(found)).results
    assert {name for name in articles() if "binding" in onward(name)} == {"tablecloth-round"}


def test_a_cloth_wider_than_its_cloth_goes_along_to_be_joined():
    """2 × (160 ÷ 2 + 30 + 1) cm are cut, joined as well as round; of the sides 4 edges of 1 cm go into seams."""
    table = {"table_width": "160 cm", "table_length": "160 cm", "drop": "30 cm", "turn": "0.5 cm", "hem": "0.5 cm"}
    cloth = {"cloth_width": "140 cm", "measured": "trimmed", "selvedge": "1 cm"}
    for name, told in (("tablecloth", "goes in"), ("tablecloth-round", "cut round")):
        joined = onward(name, **table, **cloth)["tablecloth-joined"]
        assert joined.carries == {**table, **cloth} and told in joined.template
        assert "tablecloth-joined" not in onward(name, **table, cloth_width="224 cm", measured="trimmed")
        asking = Asking({**joined.carries, "seam_allowance": "1 cm"})
        cut = answer(calculator_named("tablecloth-joined"), asking).results
        assert cut["centre_length"] == 2220
        assert cut["centre_width"] + 2 * cut["left_side_width"] - 4 * 10 == 2220
    assert {each.name for each in articles().values() if each.joined_as} == {"tablecloth", "tablecloth-round"}
