"""What a lay plan makes of an order: as much as a batch would, what may be given up for what, joined pieces, and many
of them."""

import pytest

from calculators.asking.answering import answer, filled
from calculators.batch.walk import BATCH, go
from calculators.drawing.lay_plan import lay_plan
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.markup import html
from calculators.values.measure import CENTIMETRES
from tests.catalogue.lay_plans import LARGE, LAY, RUNNERS, notes, of_washed_cloth
from tests.catalogue.test_every_calculator import assert_is_drawn_on_its_sheet
from tests.trade.lay_plan.lay_check import lay_faults


def test_the_same_cloth_gives_the_same_pieces_here_as_in_a_batch():
    """324 − 2 × 1 − 2 = 320 cm take 6 rows of 46 cm, 326 take 7: the slant of 2 cm makes the difference, and both tell
    it."""

    def here(length, **typed):
        return answer(
            LAY, of_washed_cloth({"cloths": f"Linen | 150 cm | {length}", "pieces": "Napkin | 46 cm | 46 cm", **typed})
        ).results["count"]

    def batch(length, **typed):
        step_results = {
            step_result.calculator.name: step_result
            for step_result in go(
                BATCH, {"usable-cloth": {"folded_length": length, "full_width": "150 cm", **typed}}, of_washed_cloth({})
            )
        }
        return step_results["pieces-from-cloth"].answer.results["count"]

    assert here("325.9 cm") == batch("325.9 cm") == 18
    assert here("326 cm") == batch("326 cm") == 21
    assert here("325.9 cm", skew="0") == batch("325.9 cm", skew="0") == 21


def test_what_is_ordered_by_number_is_not_given_up_for_as_many_as_fit():
    """6 m hold a tablecloth, with one napkin beside its sides; 6 m hold 3 × 15 more. Napkins alone would be 90."""
    cloth = {"cloths": "Linen | 150 cm | 12 m", "selvedge": "0", "end_loss": "0", "skew": "0"}
    reply = answer(
        LAY,
        of_washed_cloth(
            {**cloth, "pieces": "Tablecloth | 240 cm | 300 cm | 1 | no | joined; Napkin | 40 cm | 40 cm | "}
        ),
    )
    assert [row["cut"] for row in reply.results["per_piece"]] == [1, 2, 46] and reply.results["most_pieces"] == 90
    assert (
        "Without “Tablecloth”, 90 pieces could be cut. If you would rather have those, say so under “If not all fit”."
        in notes(reply)
    )


def test_what_was_said_to_count_less_may_be_given_up_for_as_many_as_fit_and_that_is_told():
    cloth = {"cloths": "Linen | 150 cm | 12 m", "selvedge": "0", "end_loss": "0", "skew": "0"}
    asked = "Tablecloth | 240 cm | 300 cm | 1 | no | joined | 1; Napkin | 40 cm | 40 cm | {count} | no | plain | 2"
    told = "“Tablecloth” may have been given up for “Napkin”, of which as many as fit are cut"
    assert told in notes(answer(LAY, of_washed_cloth({**cloth, "pieces": asked.format(count="")})))
    assert told not in notes(answer(LAY, of_washed_cloth({**cloth, "pieces": asked.format(count="100")})))
    assert told not in notes(answer(LAY, of_washed_cloth({**cloth, "pieces": asked.format(count="30")})))


def test_cloth_that_is_needed_reads_alike_everywhere_and_is_told_from_the_last_mark():
    """612 cm is 240.94 in: 241 of cloth, rounded up; a mark at 240 15/16, the nearest."""
    for ruler, cloth, mark in (("in", "about 241 in", "about 240 15/16 in"), ("cm", "612 cm", "612 cm")):
        asking = of_washed_cloth(RUNNERS, wanted_ruler=ruler)
        reply = answer(LAY, asking)
        kinds = {
            each.name: each.kind.show(reply.results[each.name], asking.ruler)
            for each in LAY.results
            if each.name in ("to_start_from", "least_length", "last_mark")
        }
        assert kinds == {"to_start_from": cloth, "least_length": cloth, "last_mark": mark}
        assert f"Buy **{cloth}**" in filled(
            reply.spoken, LAY, asking.ruler
        ) and f"last mark along must read {mark}:" in notes(reply, asking.ruler)
        assert ("Cloth is rounded up to the next division" in notes(reply, asking.ruler)) == (cloth != mark)


@pytest.mark.parametrize(
    ("cloth", "napkins", "said"),
    [
        ("12 m", "", "1 piece from Linen, cut in 3 parts: the whole order."),
        ("12 m", "; Napkin | 40 cm | 40 cm | 12", "13 pieces from Linen, cut in 15 parts: the whole order."),
        ("4 m", "; Napkin | 40 cm | 40 cm | 2", "2 pieces of 3 ordered can be cut."),
    ],
)
def test_a_tablecloth_joined_from_widths_is_one_piece(cloth, napkins, said):
    """A centre of 150 cm and two sides of 47 cm, 300 cm long each; 4 m take the centre or the sides, not both."""
    typed = {
        "cloths": f"Linen | 150 cm | {cloth}",
        "pieces": f"Tablecloth | 240 cm | 300 cm | 1 | no | joined{napkins}",
        "selvedge": "0",
        "end_loss": "0",
        "skew": "0",
        "seam_allowance": "1 cm",
    }
    assert filled(answer(LAY, of_washed_cloth(typed)).spoken, LAY, CENTIMETRES).replace("**", "") == said


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_five_hundred_pieces_are_planned_drawn_and_listed(ruler):
    asking = of_washed_cloth(LARGE, wanted_ruler=ruler)
    reply = answer(LAY, asking)
    assert reply.results["count"] == 500
    for lay in reply.drawn_from.lays:
        assert lay_faults(lay) == []
    assert_is_drawn_on_its_sheet(lay_plan(reply.drawn_from, asking.ruler).svg)
    assert len("".join(html(each) for each in answer_html(LAY, reply, asking))) < 900_000
