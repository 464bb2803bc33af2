"""The sheets of the work ticket: what they say of a batch, of a job, and of one in trouble."""

import json

import pytest
from bs4 import BeautifulSoup

from calculators.batch.walk import WALKS
from calculators.documents.job.reading import opened, written_down
from calculators.faces.page.markup import html
from calculators.faces.ticket.page import ticket_page
from tests.faces.ticket_asked import NASTY, ask


@pytest.fixture(scope="module")
def page():
    return BeautifulSoup(html(ticket_page(WALKS["batch"], "../../")), "html.parser")


def test_it_is_complete_before_any_script(page):
    assert page.select_one("figure.drawing svg[aria-label]")
    assert [item.text for item in page.select(".marking:first-child .readings li")] == [
        "46",
        "92",
        "138",
        "184",
        "230",
        "276",
    ]
    assert "must read 276\N{NO-BREAK SPACE}cm" in page.select_one(".check-mark").text
    assert len(page.select(".ticket-step")) == 15
    assert all(step.select_one(".care").text for step in page.select(".ticket-step"))
    assert page.select_one("[data-setting=needle] dd").text == "90/14 universal"


def test_each_sheet_and_each_step_alone_on_a_screen_says_whose_work_it_is(page):
    assert [each.text for each in page.select(".ticket-sheet > h2")] == [
        "The house’s batch",
        "Steps: The house’s batch",
    ]
    places = [each.text for each in page.select(".ticket-step .place")]
    assert places == [f"Step {number} of 15 · The house’s batch" for number in range(1, 16)]
    job = ask("new job", id="j", at="2026-11-25T10:00:00+01:00", walk="batch", name="x")["job"]
    named = BeautifulSoup(
        ask("ticket", kind="job", kept=json.dumps({**json.loads(job), "name": NASTY}))["body"], "html.parser"
    )
    assert named.select_one("#ticket-steps").text == f"Steps: {NASTY}" and not named.select("img")


def test_it_tells_thread_time_and_cost(page):
    """18 pieces of the house: 60 + 18 × 30.73 = 613.14 min; 3.2 m at 18.50, two reels at 3.20 and 613.14 min at 32 an
    hour: 59.20 + 6.40 + 327.01. Waited is 720 + 20 min."""
    told = {
        name: page.select_one(f"[data-setting=sum-{name}] dd").text.replace("\N{NO-BREAK SPACE}", " ")
        for name in ("thread", "time", "cost")
    }
    assert told["thread"].startswith("about 132.") and told["thread"].endswith("m, 2 reels")
    assert told["time"] == "10 h 13 min, 34.1 min a piece; plus 12 h 20 min of waiting"
    assert told["cost"] == "€392.61, €21.81 a piece"


def test_the_ticket_of_a_batch_and_of_a_job_begins_with_the_wash_of_the_cloth_as_the_batch_does():
    """A cloth that loses a tenth: 320 × 0.9 = 288 cm, on the page of the batch, on its ticket, and once it is a job."""
    cloth = {"cloth": "Hemp", "change_length": "−10 %", "change_width": "−10 %"}
    method = json.dumps({"format": "house method", "version": 1, "name": "Ours", "tables": {"cloths": [cloth]}})
    batch = ask("walk", walk="batch", typed={}, method=method)["steps"]["wash-test"]["answer"]
    job = ask("new job", id="j", at="2026-11-25T10:00:00+01:00", walk="batch", method=method)["job"]
    tickets = [ask("ticket", method=method)["body"], ask("ticket", kind="job", kept=job, method=method)["body"]]
    assert all("288\N{NO-BREAK SPACE}cm by 135\N{NO-BREAK SPACE}cm" in each for each in (batch, *tickets))


def _ours(*cloths):
    return json.dumps({"format": "house method", "version": 1, "name": "Ours", "tables": {"cloths": list(cloths)}})


def test_a_job_whose_method_has_no_line_for_its_cloth_says_what_to_do():
    """Three ways on: the other pages follow a method that has it, or has it otherwise, or it is written down nowhere
    yet."""
    hemp, old_hemp = (
        {"cloth": "Hemp", "needle": needle, "change_length": change}
        for needle, change in (("100/16", "−7 %"), ("100/16", "−5 %"))
    )

    def said(kept, now, cloth="hemp", **more):
        job = json.loads(ask("new job", id="j", at="2026-11-25T10:00:00+01:00", walk="batch", method=kept)["job"])
        return BeautifulSoup(
            ask("ticket", kind="job", kept=json.dumps({**job, "cloth": cloth}), method=now, **more)["settle"],
            "html.parser",
        ).text.replace("\N{NO-BREAK SPACE}", " ")

    lacking = said("", _ours(hemp))
    assert (
        "This job keeps “The linen workroom” as it stood, without the cloth “hemp”; “Ours”, which the other pages "
        "follow, has it by now, −7 % along in the wash." in lacking
    )
    assert "To have it here, press “Take over the measures that the other pages follow” in the batch." in lacking
    assert (
        "with older numbers for the cloth “hemp”; “Ours”, which the other pages follow, has other numbers for it by now"
        in said(_ours(old_hemp), _ours(hemp))
    )
    nowhere = said(_ours(hemp), _ours(hemp), "Lawn")
    assert "“Ours” has no cloth “Lawn”" in nowhere and "write them down in your house method, then press" in nowhere
    assert "cloth “" not in said(_ours(hemp), _ours(hemp)) + said(
        _ours(hemp), _ours({**hemp, "why": "Heavy.", "found_on": "3 March"})
    ) + said(_ours(hemp), "")
    loose = BeautifulSoup(
        ask("ticket", kept=json.dumps({"format": "job", "version": 2, "name": "b", "walk": "batch", "cloth": "Lawn"}))[
            "settle"
        ],
        "html.parser",
    ).text
    assert "has no cloth “Lawn”" in loose and "and it stands here." in loose and "press" not in loose
    opened_job = ask(
        "job opened",
        job=json.dumps({"format": "job", "version": 2, "name": "b", "walk": "batch", "cloth": "Hemp"}),
        method=_ours(hemp),
    )["about"]
    assert "has it by now" in opened_job and "Take over the measures" in opened_job


def test_a_cost_with_cloth_for_fewer_pieces_says_so():
    """The house's cloth gives 18 of 46 cm."""

    def cost(**typed):
        return BeautifulSoup(ask("ticket", typed=typed)["body"], "html.parser").select_one(
            "[data-setting=sum-cost] .why"
        )

    assert (
        cost(order={"ordered": "25"})
        .text.replace("\N{NO-BREAK SPACE}", " ")
        .startswith("All 25, with about 469.2 cm of cloth: ")
    )
    assert cost(order={"ordered": "18"}) is None


def test_the_makers_own_figure_stands_in_place_of_the_sum():
    job = opened(
        {
            "format": "job",
            "version": 2,
            "name": "Long table",
            "walk": "batch",
            "time": "most of a day",
            "cost": NASTY,
            "thread": "",
        }
    )
    body = BeautifulSoup(ask("ticket", kind="job", kept=written_down(job.document))["body"], "html.parser")
    assert (
        body.select_one("[data-setting=sum-time] dd").text == "most of a day"
        and body.select_one("[data-setting=sum-time] .why").text == "Your own figure."
    )
    assert body.select_one("[data-setting=sum-cost] dd").text == NASTY and not body.select_one("img")
    assert "2 reels" in body.select_one("[data-setting=sum-thread] dd").text and not body.select_one(
        "[data-setting=sum-thread] .why"
    )


def test_a_price_that_needs_mending_keeps_nobody_from_cutting():
    body = BeautifulSoup(ask("ticket", typed={"thread-time-cost": {"rate": "dear"}})["body"], "html.parser")
    assert len(body.select(".ticket-step")) == 15
    assert all(
        body.select_one(f"[data-setting=sum-{name}] dd").text.startswith("not settled yet")
        for name in ("thread", "time", "cost")
    )


def test_every_id_stands_once_and_every_blank_has_a_name(page):
    ids = [node["id"] for node in page.select("[id]")]
    assert len(ids) == len(set(ids))
    assert all(blank.get("aria-label") for blank in page.select(".sizes input"))


def test_a_batch_in_trouble_says_where_to_mend_it():
    reply = ask("ticket", typed={"usable-cloth": {"selvedge": "36 banana"}})
    assert (
        "What can be used of it" in reply["body"]
        and 'href="../../batch/#batch-0-usable-cloth-selvedge"' in reply["body"]
        and reply["settle"] == ""
    )
    assert "count" in ask("ticket settle", name="bundle", text="x")["refusal"]


@pytest.mark.parametrize("kept", ["{", "[]", '{"format": "job", "version": 99}', "x" * 900_000])
def test_what_cannot_be_read_is_said_in_a_sentence(kept):
    for kind in ("job", "loose"):
        assert ask("ticket", kind=kind, kept=kept)["trouble"].endswith(".")


def test_whatever_was_typed_is_only_ever_text():
    job = {
        "format": "job",
        "version": 1,
        "id": "j",
        "name": NASTY,
        "walk": "batch",
        "cloth": NASTY,
        "notes": NASTY,
        "measured": [{"piece": NASTY, "note": NASTY}, {"piece": "1", "width": NASTY, "note": NASTY}],
    }
    reply = ask("ticket", kind="job", kept=json.dumps(job))
    made = BeautifulSoup(reply["body"] + reply["settle"], "html.parser")
    assert not made.select("img, [onerror]") and NASTY in made.text


@pytest.mark.parametrize("ruler, here", [("cm 1/10", "2 cm"), ("in 1/16", "1/2 in")])
def test_two_figures_of_one_measure_in_an_old_method_are_told_in_one_line_on_the_ticket(ruler, here):
    both = {"cm": "2 cm", "in": "1/2 in"}
    method = {
        "format": "house method",
        "version": 2,
        "id": "old",
        "name": "Old",
        "measures": {"topstitch": {"cm": "1 cm", "in": "1/4 in"}},
    }

    def lines(typed, **more) -> list[str]:
        page = BeautifulSoup(
            ask("ticket", method=json.dumps({**method, **more}), typed=typed, ruler=ruler)["body"], "html.parser"
        )
        assert not page.select(".work .clash")
        return [each.text.replace("\N{NO-BREAK SPACE}", " ") for each in page.select(".plan .clash")]

    told = [
        f"Two measures stand under one name in “Old”: hem depth, 2 cm and 1/2 in (here {here}). Settle which is "
        "meant before you cut."
    ]
    assert lines({}, measures={**method["measures"], "hem": both}) == told
    assert (
        lines({"finished-size": {"hem": "2 cm"}}, measures={"hem": both}) == []
    )  # written by hand: nothing is taken from there
    assert lines({"order": {"piece": "apron"}}, tables={"pieces": [{"piece": "Apron", "hem": both}]}) == told
    assert lines({}, tables={"pieces": [{"piece": "Apron", "hem": both}]}) == []
    assert lines({}) == []  # no part of this ticket
    edge = lines({}, measures={"hem": both, "edge_stitch": {"cm": "2 mm", "in": "1/4 in"}})
    assert len(edge) == 1 and "edge stitch" in edge[0].lower() and "; " in edge[0]
