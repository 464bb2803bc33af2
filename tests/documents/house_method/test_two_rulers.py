"""A measure on two rulers is one measure: after any change, in any document, the other figure follows, agrees, or the
maker is told."""

import json
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking
from calculators.asking.house_method import FORMAT, VERSION, on_ruler
from calculators.asking.site_method import site_document, site_method
from calculators.catalogue import calculator_named
from calculators.documents.exchange.share_link import handed, packed, unpacked
from calculators.documents.house_method.change import changed, lines_of
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.merge import merged
from calculators.documents.house_method.reading import house_of, read_method, written_down
from calculators.documents.house_method.sections import entries, tables
from calculators.documents.house_method.two_rulers import agree, clashes, reading, rewritten
from calculators.documents.job.change import begun
from calculators.documents.job.reading import opened
from calculators.faces.browser import replies
from calculators.faces.house_method.form import form
from calculators.faces.house_method.sheet import sheet
from calculators.faces.page.markup import html
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Length
from calculators.values.measure import Ruler, parse_length
from tests.documents.exchange.whole_file import file_of, read_file, saved
from tests.documents.exchange.whole_file import handed as opened_file

OURS = normal({"format": FORMAT, "version": VERSION, "name": "Ours"})
RULERS = {"cm": Ruler("cm", Fraction(1, 10)), "in": Ruler("in", Fraction(1, 16))}
PLACES = {f"measures.{name}": entry.kind for name, entry in entries().items() if isinstance(entry.kind, Length)} | {
    f"tables.{table.name}.{number}.{column.name}": column.kind
    for table in tables().values()
    for column in table.columns
    if isinstance(column.kind, Length)
    for number in range(len(lines_of(OURS, table.name)))
}
LENGTHS = [
    "0",
    "0.05",
    "0.2",
    "1/16 in",
    "0.5",
    "1/2 in",
    "1",
    "1.2",
    "13 mm",
    "2 cm",
    "3/4 in",
    "2.5",
    "1",
    "3",
    "54 in",
    "60 in",
    "150 cm",
    "3.2 m",
    "3 yd 18 in",
    "32 m",
    "40 yd",
]


def ask(**request):
    return json.loads(list(replies(json.dumps(request)))[-1])


def figures(document, path):
    """Both figures of an entry as every page has them, and whether one of them only follows."""
    method = house_of(document)
    place, name, *cell = path.split(".")
    written = method.measures[name] if place == "measures" else method.tables[name][int(cell[0])].get(cell[1], "")
    return written, path in method.follows


def check_one_measure(document, path, kind):
    """Whether there is a figure here; when there is, it must be right on both rulers."""
    written, follows = figures(document, path)
    if not written:
        return False
    assert not isinstance(written, str), f"{path}: {written} has no figure for the other ruler"
    lengths = [kind.parse(written[side], RULERS[side]) for side in ("cm", "in")]
    assert follows or agree(*lengths, roughly=True) or path in clashes(document), f"{path}: {written}"
    if follows:
        assert agree(*lengths) or max(lengths) < Fraction(1, 5), f"{path}: {written}"
    return True


@settings(max_examples=400, deadline=None)
@given(
    st.sampled_from(sorted(PLACES)),
    st.lists(st.tuples(st.sampled_from(LENGTHS), st.sampled_from(["cm", "mm", "in"])), min_size=1, max_size=4),
)
def test_after_any_change_on_one_ruler_the_other_follows_or_agrees(path, steps):
    document, checked = OURS, 0
    for typed, unit in steps:
        try:
            document = changed(document, path, typed, unit)
        except InvalidValue:
            continue
        assert clashes(document) == {}
        checked += check_one_measure(document, path, PLACES[path])
    assume(checked)


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from(sorted(PLACES)),
    *(st.tuples(st.sampled_from(LENGTHS), st.sampled_from(["cm", "in"])) for _ in range(3)),
)
def test_nor_does_a_merge_a_link_or_a_file_set_an_old_figure_beside_a_new_one(path, first, second, third):
    made = []
    for typed, unit in (first, second, third):
        try:
            made.append(changed(made[0] if made else OURS, path, typed, unit))
        except InvalidValue:
            made.append(made[0] if made else OURS)
    document, _ = merged(*made)
    assert clashes(document) == {}
    linked = handed(json.loads(unpacked(packed(written_down(document))))).document
    in_file = (
        read_file(
            file_of([saved("method", "ours", [{"at": "", "text": written_down(each)} for each in (*made, document)])])
        )
        .kept[0]
        .newest.document
    )
    job = opened(begun("job", "Job", "batch", written_down(document))).document.get("method", document)
    checked = 0
    for each in (document, linked, in_file, job):
        assert clashes(each) == {}
        checked += check_one_measure(each, path, PLACES[path])
    assume(checked)


def test_a_hem_of_half_an_inch_has_no_old_two_centimetres_beside_it():
    document = changed(OURS, "tables.pieces.0.hem", "1/2 in", "in")
    method = house_of(document)
    assert method.tables["pieces"][0]["hem"] == {"in": "1/2 in", "cm": "1.3 cm"}
    for ruler, stands in (("in", "1/2 in 1.3 cm follows"), ("cm", "1.3 cm follows 1/2 in")):
        shown = (
            "".join(map(html, sheet(method, method.ruler(ruler))))
            .replace("\N{NO-BREAK SPACE}", " ")
            .replace("<small>", "")
            .replace("</small>", "")
        )
        assert stands in shown
    for ruler, hem in (("in", 12.7), ("cm", 13)):
        step_results = opened(
            {**begun("job", "Job", "batch", written_down(document)), "typed": {"order": {"piece": "napkin"}}}
        ).step_results(ruler)
        assert next(each for each in step_results if each.calculator.name == "finished-size").asking.value(
            calculator_named("finished-size").field("hem")
        ) == pytest.approx(hem)


def test_round_figures_of_one_measure_may_stand_beside_each_other():
    pair = changed(changed(OURS, "measures.hem", "3/4 in", "in"), "measures.hem", "2 cm", "cm")
    assert pair["measures"]["hem"] == {"cm": "2 cm", "in": "3/4 in"}
    assert changed(pair, "measures.hem", "20 mm", "mm")["measures"]["hem"] == {"cm": "20 mm", "in": "3/4 in"}, (
        "the same length, written otherwise"
    )
    assert changed(pair, "measures.hem", "2.2 cm", "cm")["measures"]["hem"] == "2.2 cm"
    assert changed(pair, "measures.hem", "5 cm", "in")["measures"]["hem"] == "5 cm", (
        "what counts is what is written, not the ruler in hand"
    )
    assert rewritten("13 mm", "5/8 in", entries()["hem"].kind) == "5/8 in"


def test_the_handbooks_own_pairs_pass_and_others_are_told():
    assert clashes(site_document()) == {}
    for name, cm, inch, is_told in (
        ("hem", "2 cm", "1/2 in", True), ("hem", "2 cm", "7/8 in", True), ("hem", "2 cm", "3/4 in", False),
        ("cloth_width", "150 cm", "54 in", True), ("stitch_hem", "2.5 mm", "1/16 in", True),
        ("end_loss", "1 cm", "1/2 in", False),
    ):  # fmt: skip
        assert bool(clashes({**OURS, "measures": {name: {"cm": cm, "in": inch}}})) is is_told, (cm, inch)


@pytest.mark.parametrize("length", ["1/16 in", "1/10 in", "1/4 in", "54 in", "2 mm", "3 mm", "1 mm", "147 cm", "0 cm"])
@pytest.mark.parametrize(
    "ruler",
    [
        Ruler("cm", Fraction(1, 10)),
        Ruler("cm", Fraction(1, 2)),
        Ruler("in", Fraction(1, 2)),
        Ruler("in", Fraction(1, 16)),
    ],
)
def test_a_figure_that_follows_is_rounded_to_its_ruler_and_never_to_another_measure(length, ruler):
    value = parse_length(length)
    text = reading(value, Length(), ruler)
    assert agree(value, parse_length(text))
    if agree(value, ruler.read(value)):
        assert parse_length(text) == ruler.read(value)


OLD = {
    **OURS,
    "id": "ours",
    "measures": {"hem": {"value": {"cm": "2 cm", "in": "1/2 in"}, "why": "Ours."}},
    "tables": {"pieces": [{"piece": "Napkin", "hem": {"cm": "2 cm", "in": "1/2 in"}}]},
}
SENTENCE = (
    "Two measures stand under this one name: 2 cm for the centimetre ruler and 1/2 in for the inch ruler. "
    "Keep one, "
    "and the other ruler follows it."
)


def test_a_document_made_before_is_looked_through_when_it_is_opened():
    text = json.dumps(OLD)
    document, method, messages = read_method(text)
    assert messages == {} and document["measures"]["hem"] == OLD["measures"]["hem"], (
        "nothing is lost before she chooses"
    )
    for shown in (sheet(method, method.ruler()), form(document, method.ruler())):
        page = "".join(map(html, shown)).replace("\N{NO-BREAK SPACE}", " ")
        assert page.count(SENTENCE) == 2
        assert (
            page.count('data-keep-figure="measures.hem"') == 2
            and page.count('data-keep-figure="tables.pieces.0.hem"') == 2
        )
    for path in ("measures.hem", "tables.pieces.0.hem"):
        kept = ask(ask="method change", method=text, path=path, typed="1/2 in", ruler="cm 1/10")
        assert path not in clashes(json.loads(kept["method"]))
        assert (kept["shown"], kept["beside"][:14]) == ("1.3 cm", "Follows 1/2 in")


def test_it_is_told_wherever_it_is_used_or_comes_in():
    job = {
        "format": "job",
        "version": 2,
        "id": "j",
        "name": "Napkins",
        "walk": "batch",
        "method": OLD,
        "typed": {"order": {"piece": "napkin"}},
    }
    plain = SENTENCE.replace(" ", "")
    assert plain in ask(ask="job opened", job=json.dumps(job), method="")["about"].replace(
        "\N{NO-BREAK SPACE}", ""
    ).replace(" ", "")
    for document in (OLD, job):
        body = opened_file(text=json.dumps(document), kept={})["body"]
        assert plain in body.replace("\N{NO-BREAK SPACE}", "").replace(" ", "")
    answer = ask(ask="calculator", calculator="mitre-marks", typed={}, method=json.dumps(OLD), ruler="")["answer"]
    assert "two measures stand under this name" in answer
    assert (
        "two measures stand"
        not in ask(
            ask="calculator",
            calculator="mitre-marks",
            typed={"hem_1": "2 cm", "hem_2": "2 cm"},
            method=json.dumps(OLD),
            ruler="",
        )["answer"]
    )
    walk = ask(ask="walk", walk="batch", typed={"order": {"piece": "napkin"}}, method=json.dumps(OLD), ruler="")[
        "steps"
    ]
    assert "two measures stand" in walk["finished-size"]["answer"]


def test_every_length_of_the_handbook_stands_for_both_rulers():
    for path, kind in PLACES.items():
        check_one_measure(OURS, path, kind)
    assert house_of(OURS).measures == site_method().measures
    assert on_ruler(house_of(OURS).measures["hem"], RULERS["in"]) == "3/4 in"
    assert Asking({}, method=house_of(OURS)).method.follows == {}
