"""The ticket as HTML, and the questions a browser asks about it."""

import json

import pytest
from bs4 import BeautifulSoup

from calculators.batch.walk import WALKS
from calculators.documents.job.reading import opened, written_down
from calculators.faces.browser import replies
from calculators.faces.page.markup import html
from calculators.faces.ticket.page import ticket_page

NASTY = '<img src=x onerror="alert(1)">'
LOOSE = {"kind": "loose", "kept": "", "typed": {}, "read_on": "", "home": "../../"}


def ask(question, **more):
    *_, last = replies(json.dumps({"ask": question, **LOOSE, **more}))
    return json.loads(last)


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
    hour: 59.20 + 6.40 + 327.01."""
    told = {
        name: page.select_one(f"[data-setting=sum-{name}] dd").text.replace("\N{NO-BREAK SPACE}", " ")
        for name in ("thread", "time", "cost")
    }
    assert told["thread"].startswith("about 132.") and told["thread"].endswith("m, 2 reels")
    assert (told["time"], told["cost"]) == ("10 h 13 min, 34.1 min a piece", "€392.61, €21.81 a piece")


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


def test_boxes_are_by_bundle_and_five_hundred_pieces_have_few(page):
    assert [len(step.select(".box")) for step in page.select(".ticket-step")][:6] == [1, 1, 1, 1, 3, 3]
    body = ask("ticket", typed={"wash-test": {"cloth_length": "84 m"}, "bundles": {"bundle": "10"}})["body"]
    many = BeautifulSoup(body, "html.parser")
    assert "519 pieces" in many.select_one(".order").text
    assert max(len(step.select(".box")) for step in many.select(".ticket-step")) <= 10
    assert len(many.select(".size-line")) <= 10
    assert "One box is 6 bundles, 60 pieces" in many.select_one(".box-words").text


def test_a_tick_is_kept_and_taken_back():
    one = ask("ticket tick", title="T", step="hem", by=1)
    assert json.loads(one["loose"])["ticks"] == {"hem": 6} and "1 of 3 bundles done: 6 of 18 pieces." in one["done"]
    three = ask(
        "ticket tick",
        title="T",
        step="hem",
        by=1,
        kept=ask("ticket tick", title="T", step="hem", by=1, kept=one["loose"])["loose"],
    )
    assert "3 of 3 bundles done: 18 of 18 pieces." in three["done"]
    assert ask("ticket tick", title="T", step="hem", by=1, kept=three["loose"])["loose"] == three["loose"]
    back = ask("ticket tick", title="T", step="hem", by=-1, kept=one["loose"])
    assert "ticks" not in json.loads(back["loose"])
    once = ask("ticket tick", title="T", step="wash", by=1)
    assert json.loads(once["loose"])["ticks"] == {"wash": 1} and "Done." in once["done"]


def test_what_is_ticked_stands_in_the_sheets_again():
    kept = ask("ticket tick", title="T", step="hem", by=1)["loose"]
    body = BeautifulSoup(ask("ticket", kept=kept)["body"], "html.parser")
    assert len(body.select('[data-ticks="hem"] .box.ticked')) == 1 and not body.select(
        '[data-ticks="turn"] .box.ticked'
    )


def test_a_measured_size_is_kept_with_its_unit_and_compared():
    reply = ask("ticket size", piece="7", side="width", text="40.2")
    assert (reply["shown"], reply["said"], reply["within"]) == (
        "40.2 cm",
        "2 mm wider than the ticket says; within 4 mm.",
        True,
    )
    body = BeautifulSoup(ask("ticket", kept=reply["loose"])["body"], "html.parser")
    assert body.select_one('[name="7.width"]')["value"] == "40.2 cm"
    assert "2\N{NO-BREAK SPACE}mm wider" in body.select_one('[data-size="7.width"]').text
    emptied = ask("ticket size", piece="7", side="width", text=" ", kept=reply["loose"])
    assert json.loads(emptied["loose"])["measured"] == [{"piece": "7"}]


def lines(body):
    return BeautifulSoup(body, "html.parser").select(".sizes .size-line")


@pytest.mark.parametrize(
    ("bundle", "pieces"),
    [("18", "1 2 3 4 5"), ("6", "1 2 7 8 13"), ("4", "1 5 9 13 17"), ("2", "1 3 5 7 9 11 13 15 17")],
)
def test_five_pieces_can_be_measured_and_one_of_every_box(bundle, pieces):
    made = lines(ask("ticket", typed={"bundles": {"bundle": bundle}})["body"])
    assert [line.select_one("input")["name"].removesuffix(".width") for line in made] == pieces.split()
    assert all(
        [blank["name"].partition(".")[2] for blank in line.select("input")]
        == ["width", "length", "diagonal_1", "diagonal_2", "note"]
        for line in made
    )
    assert len({line["aria-label"] for line in made}) == len(made)


def test_fewer_pieces_than_five_have_a_line_each():
    made = lines(ask("ticket", typed={"bundles": {"pieces": "3"}})["body"])
    assert [line.select_one("input")["name"] for line in made] == ["1.width", "2.width", "3.width"]


def measure(kept, **texts):
    reply = {}
    for place, text in texts.items():
        piece, side = place.lstrip("_").split("_", 1)
        reply = ask("ticket size", piece=piece, side=side, text=text, kept=kept)
        kept = reply["loose"]
    return reply


def test_squareness_is_said_once_both_diagonals_are_written_down():
    one = measure("", _1_diagonal_1="56.6")
    assert (one["said"], one["square"], one["is_square"]) == ("", "", True)
    both = measure(one["loose"], _1_diagonal_2="57.2")
    assert (both["square"], both["is_square"]) == (
        "The diagonals differ by 6 mm, more than the 5 mm allowed: not square, put it aside.",
        False,
    )
    assert json.loads(both["loose"])["measured"] == [{"piece": "1", "diagonal_1": "56.6 cm", "diagonal_2": "57.2 cm"}]
    (place,) = BeautifulSoup(ask("ticket", kept=both["loose"])["body"], "html.parser").select('[data-size="1.square"]')
    assert "differ by 6" in place.text and "off" in place["class"]
    taken_back = measure(both["loose"], _1_diagonal_2="")
    assert (taken_back["square"], taken_back["is_square"]) == ("", True)


def test_mean_and_spread_are_of_what_was_typed_and_of_nothing_else():
    one = measure("", _1_width="40.2", _7_length="40")
    assert one["all"] == "", "of one piece there is no mean"
    two = BeautifulSoup(measure(one["loose"], _7_width="39.8")["all"], "html.parser")
    (said,) = (each.text.replace("\N{NO-BREAK SPACE}", " ") for each in two.select("p"))
    assert (
        said == "Width of 2 pieces: 40 cm in the mean, as the ticket says; from the smallest to the largest it is 4 mm."
    )


def test_a_line_that_cannot_be_read_has_no_part_in_the_mean():
    measured = [
        {"piece": "1", "width": "40 cm"},
        {"piece": "2", "width": "banana"},
        {"piece": "99", "width": "41 cm"},
        {"piece": "7", "width": "40.2 cm"},
    ]
    body = BeautifulSoup(
        ask(
            "ticket",
            kept=json.dumps(
                {"format": "job", "version": 2, "id": "batch", "name": "B", "walk": "batch", "measured": measured}
            ),
        )["body"],
        "html.parser",
    )
    assert "Width of 2" in body.select_one(".all-sizes").text and "99, 41" in body.select(".size-line")[-1].text


def test_a_bad_size_is_kept_as_it_was_typed_with_one_sentence_and_no_part_in_the_mean():
    reply = ask("ticket size", piece="7", side="width", text=" 40 x 40 ")
    assert (
        "not a length" in reply["refusal"]
        and reply["shown"] == "40 x 40"
        and not reply["within"]
        and reply["all"] == ""
    )
    assert json.loads(reply["loose"])["measured"] == [{"piece": "7", "width": "40 x 40"}]
    body = BeautifulSoup(ask("ticket", kept=reply["loose"])["body"], "html.parser")
    assert (
        body.select_one('[name="7.width"]')["value"] == "40 x 40"
        and body.select_one('[name="7.width"]')["aria-invalid"] == "true"
    )
    assert "not a length" in body.select_one('[data-size="7.width"]').text
    assert not body.select_one('[name="7.length"]').has_attr("aria-invalid")


def test_a_size_too_long_to_be_one_is_refused_and_not_kept():
    reply = ask("ticket size", piece="7", side="width", text="4" * 500)
    assert set(reply) == {"refusal", "final"} and reply["refusal"]


def test_a_loose_batch_keeps_nothing_that_the_walk_has():
    kept = json.loads(
        ask("ticket tick", title="T", step="hem", by=1, typed={"finished-size": {"hem": "3 cm"}})["loose"]
    )
    assert not {"typed", "method", "read_on"} & set(kept)


def test_a_job_keeps_ticks_sizes_and_what_is_settled_in_its_record():
    job = written_down(
        opened(
            {
                "format": "job",
                "version": 1,
                "id": "j",
                "name": "Long table",
                "walk": "batch",
                "typed": {"finished-size": {"hem": "3 cm"}},
            }
        ).document
    )
    ticked = ask("ticket tick", title="T", kind="job", kept=job, step="hem", by=1)["job"]
    settled = ask("ticket settle", kind="job", kept=ticked, name="bundle", text="9")["job"]
    named = ask("ticket settle", kind="job", kept=settled, name="cloth", text="Half linen, light")["job"]
    document = json.loads(named)
    assert (
        document["ticks"] == {"hem": 6}
        and document["typed"]["bundles"] == {"bundle": "9"}
        and document["cloth"] == "Half linen, light"
    )
    body = BeautifulSoup(ask("ticket", kind="job", kept=named)["body"], "html.parser")
    assert (
        body.select_one("h2").text == "Long table"
        and body.select_one("[data-setting=needle] dd").text == "80/12 universal"
    )
    assert "0 of 2 bundles done: 0 of 18 pieces, and 6 more." in body.select_one('[data-ticks="hem"] .count').text


def test_bundles_ticked_by_number_count_too():
    job = written_down(
        opened(
            {"format": "job", "version": 1, "id": "j", "name": "N", "walk": "batch", "ticks": {"hem": [1, 3]}}
        ).document
    )
    body = BeautifulSoup(ask("ticket", kind="job", kept=job)["body"], "html.parser")
    assert "2 of 3 bundles done" in body.select_one('[data-ticks="hem"] .count').text


def turn(kept, box, **more):
    return ask("ticket tick", title="T", step="hem", box=box, kept=kept, **more)


def test_any_box_is_ticked_and_taken_back_by_itself():
    third = turn("", 13)
    assert (
        json.loads(third["loose"])["ticks"] == {"hem": [3]} and "1 of 3 bundles done: 6 of 18 pieces." in third["done"]
    )
    boxes = BeautifulSoup(third["done"], "html.parser").select("[data-box]")
    assert [(box.get_text().lstrip("✓–"), box["aria-pressed"]) for box in boxes] == [
        ("Bundle 1: T, to piece 6", "false"),
        ("Bundle 2: T, to piece 12", "false"),
        ("Bundle 3: T, to piece 18", "true"),
    ]
    first = ask("ticket tick", title="T", step="hem", by=1, kept=third["loose"])
    assert json.loads(first["loose"])["ticks"] == {"hem": [1, 3]}, "one more is the first that lacks"
    whole = turn(first["loose"], 7)
    assert json.loads(whole["loose"])["ticks"] == {"hem": 18}, "in order again, as pieces"
    assert json.loads(turn(whole["loose"], 1)["loose"])["ticks"] == {"hem": [2, 3]}
    assert "ticks" not in json.loads(turn(third["loose"], 13)["loose"])
    back = ask("ticket tick", title="T", step="hem", by=-1, kept=first["loose"])
    assert json.loads(back["loose"])["ticks"] == {"hem": 6}
    assert turn(third["loose"], 99)["loose"] == third["loose"]


def test_a_box_for_several_bundles_shows_when_only_some_are_done():
    """90 pieces by 6 are 15 bundles, two a box, the last box one."""
    typed = {"wash-test": {"cloth_length": "16 m"}, "bundles": {"pieces": "90"}}
    one = ask("ticket tick", title="T", step="hem", by=1, typed=typed)
    boxes = BeautifulSoup(one["done"], "html.parser").select("[data-box]")
    assert [box["aria-pressed"] for box in boxes] == ["mixed", *["false"] * 7] and boxes[
        -1
    ].get_text() == "Bundle 15: T, to piece 90"
    assert json.loads(turn(one["loose"], 1, typed=typed)["loose"])["ticks"] == {"hem": 12}


def test_bundles_ticked_by_number_never_stand_for_other_pieces():
    """Bundle 3 of 6 is pieces 13 to 18: by 9 that is no whole bundle, by 3 it is the fifth and sixth, by 18 none."""
    third = turn("", 13)["loose"]
    for size, ticks in (("9", None), ("3", {"hem": [5, 6]}), ("18", None)):
        moved = ask("ticket settle", name="bundle", text=size, kept=third)
        assert moved["typed"]["text"] == size and json.loads(moved["loose"]).get("ticks") == ticks
    assert "loose" not in ask(
        "ticket settle", name="bundle", text="9", kept=ask("ticket tick", title="T", step="hem", by=1)["loose"]
    )


def test_two_windows_ticking_lose_nothing():
    base = ask("ticket tick", title="T", step="wash", by=1)["loose"]
    mine, theirs = (ask("ticket tick", title="T", step=step, by=1, kept=base)["loose"] for step in ("turn", "hem"))
    both = ask("loose merge", base=base, mine=mine, theirs=theirs)["loose"]
    assert json.loads(both)["ticks"] == {"wash": 1, "turn": 6, "hem": 6}


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


@pytest.mark.parametrize(
    ("ordered", "words"),
    [
        ("1", "One box is one piece: the number beside it is that piece’s."),
        ("12", "One box is a bundle, 6 pieces: the number beside it is the last of them."),
    ],
)
def test_what_a_box_stands_for_is_said_of_one_piece_too(ordered, words):
    page = BeautifulSoup(ask("ticket", typed={"order": {"ordered": ordered}})["body"], "html.parser")
    assert page.select_one(".box-words").text.split(" *")[0] == words
