"""The marker of a figure: whole or small, built into a page as the browser's Python makes it anew."""

import json
import xml.etree.ElementTree as ET

import pytest

from calculators.faces.browser import replies
from scripts.pages.markers import PageMarkers, UnknownMarker


def built(marker: str) -> ET.Element:
    page = PageMarkers("")
    return ET.fromstring(page.put_back(page.take_out(marker)))


def worked_anew(wanted: str) -> ET.Element:
    asked = {"ask": "numbers", "figures": [json.loads(wanted)], "ruler": ""}
    (reply,) = replies(json.dumps(asked))
    return ET.fromstring(json.loads(reply)["figures"][0])


@pytest.mark.parametrize(
    "marker",
    [
        "{{ figure mitre-marks }}",
        "{{ figure mitre-marks small }}",
        '{{ figure corner-steps small way="mitre" but step="4" }}',
        "{{ figure lay-plan small }}",
    ],
)
def test_what_is_built_is_what_is_worked_anew(marker):
    figure = built(marker)
    wanted = figure.attrib.pop("data-figure")
    assert ET.tostring(figure) == ET.tostring(worked_anew(wanted))
    assert bool(figure.findall(".//{*}text")) != ("small" in marker)


def test_a_step_of_a_page_that_is_filled_in_otherwise_is_the_calculation_of_that_page():
    wanted = json.loads(built('{{ figure corner-steps small way="mitre" but step="4" }}').get("data-figure", ""))
    assert wanted["given"] == {"way": "mitre"} and wanted["but"] == {"step": "4"}


@pytest.mark.parametrize("marker", ["{{ figure mitre-marks tiny }}", '{{ figure corner-steps small way="mitre" }}'])
def test_a_size_that_there_is_not_stops_the_build(marker):
    with pytest.raises(UnknownMarker):
        built(marker)
