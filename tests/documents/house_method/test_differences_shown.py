"""No two methods are said to differ where the same words stand on both sides."""

from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.asking.house_method import FORMAT, VERSION
from calculators.asking.site_method import site_document
from calculators.documents.house_method.check import mended
from calculators.documents.house_method.difference import differences
from calculators.documents.house_method.sections import entries

NAMES = ["turn", "hem", "edge_stitch", "bobbin", "cloth", "money"]
_VALUES = {name: st.sampled_from(["", "3", "3/4 in", "12 mm"]) for name in NAMES}
_documents = st.builds(
    lambda measures, pieces, texts: mended(
        {"format": FORMAT, "version": VERSION, "name": "N", "measures": measures, "tables": pieces, "texts": texts}
    )[0],
    st.dictionaries(
        st.sampled_from(NAMES),
        st.fixed_dictionaries({"value": st.sampled_from(["", "3 m", "1/2 in"]), "why": st.sampled_from(["", "Ours."])}),
        max_size=4,
    ),
    st.sampled_from(
        [
            {},
            {"pieces": []},
            {"pieces": [{"piece": "Napkin"}]},
            {"pieces": [{"piece": "Napkin", "hem": "1/2 in", "why": "Ours."}, {"piece": "Apron"}]},
        ]
    ),
    st.sampled_from([{}, {"hems": "Slowly."}]),
)


@settings(max_examples=300, deadline=None)
@given(_documents, _documents | st.just(site_document()), st.booleans())
def test_a_difference_shows_two_things(one, other, as_followed):
    for each in differences(one, other, as_followed):
        assert each.one != each.other, each


def test_a_reason_given_up_with_its_measure_is_told_from_the_handbooks():
    ours = {"format": FORMAT, "version": VERSION, "name": site_document()["name"], "measures": {"turn": "12 mm"}}
    found = {
        each.label: (each.one, each.other) for each in differences({**ours, "measures": {}}, ours, as_followed=True)
    }
    label = f"{entries()['turn'].label}: why"
    assert found[label][0].startswith("the handbook’s: Wide enough") and found[label][1] == ""
