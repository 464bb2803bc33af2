"""What was typed last is put back where nothing newer stands, whatever was typed into which document; a later edit is
never overwritten, and what is not put back is said."""

import json

from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.documents.house_method.change import changed as method_changed
from calculators.documents.house_method.reading import read_method
from calculators.documents.house_method.reading import written_down as method_written
from calculators.documents.job.change import changed as job_changed
from calculators.documents.job.reading import opened, read_job, written_down
from calculators.documents.put_back import Draft, put_back
from calculators.faces.browser import replies
from calculators.values.kind import InvalidValue
from tests.documents.exchange.test_handing import JOB, WRITTEN

NOTHING = {"refused": {}, "said": "", "overtaken": {"paths": [], "said": ""}, "final": True}
LOOSE = {"kind": "loose", "typed": {}, "read_on": "", "method": ""}


def ask(question: str, **more) -> dict:
    return json.loads(list(replies(json.dumps({"ask": question, "ruler": "", **more})))[-1])


def draft(path: str, *texts: str, base: str | None, ruler: str = "cm 1/10", **more) -> dict:
    return {"path": path, "texts": texts, "ruler": ruler, "base": base, **more}


def job_after(text: str, **changes: str) -> str:
    return written_down(job_changed(read_job(text), {path.replace("__", "."): each for path, each in changes.items()}))


def method_after(text: str, *changes: tuple[str, str]) -> str:
    document = read_method(text)[0]
    for path, typed in changes:
        document = method_changed(document, path, typed, "cm")
    return method_written(document)


def in_job(now: str, *drafts: dict) -> dict:
    return ask("put back", kind="job", kept=now, drafts=drafts)


def in_method(now: str, *drafts: dict) -> dict:
    return ask("method put back", method=now, drafts=drafts)


def test_what_was_typed_into_a_job_last_is_restored_with_the_unit_it_was_meant_in():
    reply = in_job(
        JOB,
        draft("typed.finished-size.hem", "3", base=JOB),
        draft("notes", "Shr", "Shrinks more", base=JOB),
        draft("typed.pieces-from-cloth.piece_width", "18", base=JOB, ruler="in 1/16"),
    )
    job = json.loads(reply["job"])
    assert (job["typed"]["finished-size"]["hem"], job["notes"]) == ("3 cm", "Shrinks more")
    assert opened(job).typed["pieces-from-cloth"]["piece_width"] == "18 in"
    assert reply["said"] == "What you typed last was restored."


def test_a_bare_number_beside_it_keeps_the_ruler_it_was_written_on():
    now = job_after(JOB, **{"typed__finished-size__hem": "3 cm"})
    reply = in_job(now, draft("typed.finished-size.turn", "1/2", base=now, ruler="in 1/16"))
    assert opened(json.loads(reply["job"])).typed["finished-size"] == {"hem": "3 cm", "turn": "1/2 in"}


def test_what_had_been_kept_is_not_said_to_be_restored():
    now = job_after(JOB, notes="Shrinks more")
    assert in_job(now, draft("notes", "Shrinks more", base=JOB)) == NOTHING
    assert in_job(now, draft("notes", "Shrinks more", base=None))["said"] == ""


def test_a_text_on_its_way_when_the_next_was_typed_is_not_taken_for_another_window():
    now = job_after(JOB, notes="Shr")
    reply = in_job(now, draft("notes", "Shr", "Shrinks more", base=JOB))
    assert json.loads(reply["job"])["notes"] == "Shrinks more"


def test_what_another_window_wrote_since_stays_and_the_text_is_said():
    now = job_after(JOB, notes="Washed twice", thread="two spools")
    reply = in_job(now, draft("notes", "Shrinks more", base=JOB), draft("cost", "40", base=JOB))
    job = json.loads(reply["job"])
    assert (job["notes"], job["thread"], job["cost"]) == ("Washed twice", "two spools", "40")
    assert reply["said"] == "What you typed last was restored."
    assert reply["overtaken"] == {
        "paths": ["notes"],
        "said": "Not put back, since something newer stands there: Notes “Shrinks more”.",
    }


def test_where_it_is_not_known_what_stood_there_nothing_is_overwritten():
    reply = in_job(JOB, draft("name", "Runners", base=None))
    assert "job" not in reply and "Name “Runners”" in reply["overtaken"]["said"]


def test_what_cannot_be_taken_comes_back_with_its_sentence():
    reply = in_job(JOB, draft("name", "", base=JOB), draft("cost", "40", base=JOB))
    assert json.loads(reply["job"])["cost"] == "40"
    assert reply["refused"]["name"]["text"] == "" and "needs a name" in reply["refused"]["name"]["sentence"]


def test_a_path_of_an_edition_now_gone_is_said_and_stops_nothing():
    for put, kept, kind in ((in_job, JOB, "job"), (in_method, WRITTEN, "method")):
        good = "notes" if kind == "job" else "texts.hems"
        reply = put(kept, draft("shelf.3", "left", base=kept), draft(good, "Kept", base=kept))
        assert "shelf.3 “left”" in reply["overtaken"]["said"] and "Kept" in reply[kind]


def test_ticks_sizes_and_bundle_of_a_ticket_come_back_in_the_job():
    hem = draft("ticks.hem", '{"by": 1}', '{"by": 1}', base=JOB)
    reply = in_job(JOB, hem, draft("7.width", "40.2", base=JOB), draft("7.note", "loose", base=JOB))
    job = json.loads(reply["job"])
    once = json.loads(ask("ticket tick", kind="job", kept=JOB, step="hem", title="Hem", by=1)["job"])
    twice = json.loads(ask("ticket tick", kind="job", kept=json.dumps(once), step="hem", title="Hem", by=1)["job"])
    assert job["ticks"]["hem"] == twice["ticks"]["hem"] != once["ticks"]["hem"]
    assert {"piece": "7", "width": "40.2 cm", "note": "loose"} in job["measured"]
    one_kept = json.loads(in_job(json.dumps(once), hem)["job"])
    assert one_kept["ticks"] == job["ticks"], "a tick that was kept is not ticked twice"
    both_kept = in_job(json.dumps(twice), hem)
    assert "job" not in both_kept
    assert in_job(JOB, draft("ticks.hem", '{"by": 1}', base=JOB))["said"] == "What you ticked last was restored."
    bundle = in_job(JOB, draft("bundle", "4", base=JOB))
    assert json.loads(bundle["job"])["typed"]["bundles"]["bundle"] == "4"
    assert "refused" in bundle and in_job(JOB, draft("bundle", "a few", base=JOB))["refused"]["bundle"]["sentence"]


def test_the_ticket_of_a_batch_that_is_no_job_has_its_ticks_and_bundle_back():
    typed = {"bundles": {"bundle": "6"}}
    reply = ask(
        "put back",
        **{**LOOSE, "typed": typed},
        kept="",
        drafts=[draft("ticks.hem", '{"by": 1}', base=""), draft("bundle", "4", base="", was="6")],
    )
    assert json.loads(reply["loose"])["ticks"]["hem"]
    assert reply["typed"] == {"calculator": "bundles", "field": "bundle", "text": "4"}
    newer = ask("put back", **{**LOOSE, "typed": typed}, kept="", drafts=[draft("bundle", "4", base="", was="5")])
    assert "typed" not in newer and "“4”" in newer["overtaken"]["said"] and "loose" not in newer


def test_a_method_has_back_what_was_typed_into_its_form():
    reply = in_method(
        WRITTEN,
        draft("measures.turn", "1", "12 mm", base=WRITTEN),
        draft("texts.hems", "Press twice", base=WRITTEN),
        draft("measures.hem", "36 banana", base=WRITTEN),
    )
    method = json.loads(reply["method"])
    assert "12 mm" in json.dumps(method["measures"]["turn"]) and method["texts"]["hems"] == "Press twice"
    assert reply["refused"]["measures.hem"]["text"] == "36 banana"
    assert reply["said"] == "What you typed last was restored."


def test_a_line_of_a_method_is_known_by_its_name():
    base = method_after(WRITTEN, ("tables.pieces.0.piece", "Napkin"), ("tables.pieces.1.piece", "Runner"))
    names = [line["piece"] for line in json.loads(base)["tables"]["pieces"]]
    now = method_after(base, ("tables.pieces.0", ""))  # another window took the first line out
    reply = in_method(now, draft("tables.pieces.1.hem", "4", base=base), draft("tables.pieces.0.hem", "5", base=base))
    lines = {line["piece"]: line for line in json.loads(reply["method"])["tables"]["pieces"]}
    assert "4 cm" in json.dumps(lines[names[1]]) and "5 cm" not in json.dumps(lines)
    assert f"{names[0]}, hem" in reply["overtaken"]["said"] and "“5 cm”" in reply["overtaken"]["said"]
    new = len(names)
    added = in_method(
        base,
        draft(f"tables.pieces.{new}.piece", "Apron", base=base),
        draft(f"tables.pieces.{new}.hem", "4", base=base),
    )
    assert json.loads(added["method"])["tables"]["pieces"][-1]["piece"] == "Apron"
    assert "4 cm" in json.dumps(json.loads(added["method"])["tables"]["pieces"][-1])
    theirs = method_after(base, (f"tables.pieces.{new}.piece", "Bib"))
    late = in_method(theirs, draft(f"tables.pieces.{new}.hem", "4", base=base))
    assert (
        "4 cm" not in json.dumps(json.loads(late["method"])["tables"]["pieces"][-1])
        and "“4" in late["overtaken"]["said"]
    )


class Plain:
    """Documents of bare entries; what holds a colon is refused."""

    def changed(self, document, path, text, ruler):
        if ":" in text:
            raise InvalidValue("no colon")
        return {**document, path: text}

    def at(self, document, path):
        return document.get(path, "")

    def moved(self, path, base, now):
        return path

    def label(self, path, document):
        return path

    def words(self, value):
        return value


TEXTS = st.sampled_from(["", "1", "2", "3", "4", "5:"])
STATES = st.dictionaries(st.sampled_from("abc"), TEXTS.filter(lambda text: ":" not in text))
DRAFTS = st.lists(
    st.tuples(st.sampled_from("abc"), st.lists(TEXTS, min_size=1, max_size=3)),
    max_size=3,
    unique_by=lambda each: each[0],
)


@given(STATES, STATES, DRAFTS)
def test_a_later_edit_is_never_overwritten_and_no_text_is_lost(base, now, typed):
    drafts = [Draft(path, tuple(texts), "", base) for path, texts in typed]
    done = put_back(now, drafts, Plain())
    form = Plain()
    for path in "abc":
        texts = dict(typed).get(path)
        stands, stood = form.at(done.document, path), form.at(now, path)
        if texts is None:
            assert stands == stood
            continue
        newer = stood not in (form.at(base, path), *texts)
        assert not newer or stands == stood
        if ":" in texts[-1]:
            assert path in done.refused or path in done.overtaken
        else:
            assert stands == texts[-1] or done.overtaken[path][1] == texts[-1]
            assert newer == (path in done.overtaken)


@given(STATES, STATES, DRAFTS)
def test_putting_back_twice_changes_nothing_more(base, now, typed):
    drafts = [Draft(path, tuple(texts), "", base) for path, texts in typed]
    once = put_back(now, drafts, Plain())
    assume(not once.refused)
    again = put_back(once.document, drafts, Plain())
    assert again.document == once.document and again.paths == []
