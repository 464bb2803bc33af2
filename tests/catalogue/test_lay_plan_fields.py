"""What a lay plan cannot be made of gets one sentence at its field, and what was kept keeps its meaning."""

import pytest

from calculators.asking.answering import answer
from calculators.asking.declaration import InvalidInput
from calculators.faces.page.plain import refusals
from tests.catalogue.lay_plans import LAY, of_washed_cloth
from tests.sentences import is_one_message


@pytest.mark.parametrize(
    ("typed", "field", "part"),
    [
        ({"pieces": "Big | 200 cm | 450 cm | 1 | yes"}, "pieces", "however it lies"),
        ({"pieces": "Wide | 200 cm | 100 cm | 1"}, "pieces", "across"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 1000000"}, "pieces", "from 1 to 1000"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 1000; Other | 40 cm | 40 cm | 1"}, "pieces", "more than 1,000 pieces"),
        ({"pieces": "Dot | 2 cm | 2 cm | "}, "pieces", "more than 1,000 pieces"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 0"}, "pieces", "from 1"),
        ({"pieces": "Napkin | 46 cm | 46 cm | -3"}, "pieces", "not a count"),
        ({"pieces": "Napkin | 0 | 46 cm | 3"}, "pieces", "too small"),
        ({"pieces": "Napkin | 46 cm | 46 cm", "aim": "buy"}, "pieces", "has no number"),
        ({"pieces": ""}, "pieces", "such as"),
        ({"cloths": "Linen | 150 cm"}, "cloths", "no length"),
        ({"cloths": "; ".join(["Linen | 150 cm | 3 m | 24"] * 2)}, "cloths", "more than 24"),
        ({"flaws": "500 cm | 10 cm | 5 cm | 5 cm"}, "flaws", "outside"),
        ({"flaws": "10 cm | 149 cm | 5 cm | 5 cm"}, "flaws", "outside"),
        ({"flaws": "10 cm | 10 cm | 5 cm | 5 cm | Silk"}, "flaws", "no cloth called"),
        ({"repeats": "0 | 30 cm"}, "repeats", "repeat of 0"),
        ({"repeats": "| | 5 cm"}, "repeats", "no distance"),
        ({"repeats": "30 cm | | | 5 cm"}, "repeats", "no distance across"),
        ({"repeats": "30 cm; 40 cm"}, "repeats", "more than one"),
        ({"repeats": "30 cm | | | | Silk"}, "repeats", "no cloth called"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 3 | no | matched"}, "repeats", "no repeat"),
        ({"selvedge": "50 cm", "cloths": "Linen | 100 cm | 1 m"}, "selvedge", "leave nothing"),
        ({"pieces": "Tablecloth | 240 cm | 300 cm | | no | joined"}, "pieces", "Write how many"),
        ({"end_loss": "2.3 m"}, "end_loss", "leave nothing"),
        ({"skew": "2.9 m", "cloths": "Linen | 150 cm | 2.9 m"}, "skew", "slant by 290"),
        ({"aim": "buy", "strips": "along"}, "strips", "across"),
        ({"aim": "shortest", "strips": "sections"}, "strips", "across"),
    ],
)
def test_what_cannot_be_planned_gets_one_sentence_at_its_field(typed, field, part):
    with pytest.raises(InvalidInput) as error:
        answer(LAY, of_washed_cloth(typed))
    sentences = refusals(error.value, LAY, of_washed_cloth(typed))
    assert set(sentences) == {field} and part in sentences[field] and is_one_message(sentences[field]), sentences


def test_numbers_kept_of_what_a_piece_counts_keep_their_meaning():
    """One cloth takes two of one size or one of the other; what counts three is kept before two that count one."""
    typed = {"cloths": "Linen | 100 cm | 50 cm", "selvedge": "0", "end_loss": "0", "skew": "0"}
    asked = "Half | 50 cm | 50 cm | 2; Whole | 100 cm | 50 cm | 1 | no | plain | {}"
    for counts, cut in (("3", [0, 1]), ("1", [2, 0]), ("", [2, 0])):
        assert [
            row["cut"]
            for row in answer(LAY, of_washed_cloth({**typed, "pieces": asked.format(counts)})).results["per_piece"]
        ] == cut
