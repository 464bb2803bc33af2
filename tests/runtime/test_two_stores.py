"""What is kept stands in two places, and comes back from either when the other is lost, cut, locked or full."""

import shutil
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright

from scripts.after_pages import join_scripts
from scripts.setup import browser as chromium
from scripts.tools.server import open_server
from tests.browser.reader import LESS_PATIENT

PAGE = '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Stores</title></head><body></body></html>'
IMPORTS = """const store = await import('/assets/javascript/store.js');
    const journal = await import('/assets/javascript/journal.js');"""
#: A morning's work: two jobs, one of them changed, one more deleted, a method that is followed.
WORK = """await store.keep('job', 'napkins', 'napkins 1', 0); await store.keep('job', 'napkins', 'napkins 2', 1);
    await store.keepAll('job', 'towels', [{text: 'towels 1'}, {text: 'towels 2'}], 0);
    await store.keep('job', 'spoiled', 'spoiled', 0); await store.remove('job', 'spoiled');
    await store.keep('method', 'mine', 'method', 0); await store.choose('method', 'mine');"""
THERE = """return [(await store.newest('job')).map(({ text }) => text),
    (await store.versions('job', 'towels')).map(({ revision }) => revision),
    (await store.newest('method')).map(({ text }) => text), await store.choice('method')]"""
ALL_OF_IT = [["napkins 2", "towels 2"], [1, 2], ["method"], "mine"]
NOTHING = [[], [], [], ""]
#: Said to a page before it is opened.
NEVER_OPENS = (
    LESS_PATIENT
    + """IDBFactory.prototype.open = () =>
    Object.create(IDBOpenDBRequest.prototype, { addEventListener: { value() {} } });"""
)
FAILS_TO_OPEN = """IDBFactory.prototype.open = () => {
    const request = Object.create(IDBOpenDBRequest.prototype, {
        addEventListener: { value: (name, hear) => name === "error" && setTimeout(hear) },
        removeEventListener: { value() {} },
        error: { value: new DOMException("Internal error opening backing store", "UnknownError") },
    });
    return request;
};"""
NO_PRIVATE_FILES = "delete StorageManager.prototype.getDirectory;"
FULL = "IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };"


class Reader:
    """One profile that is opened again and again."""

    def __init__(self, playwright: Playwright, address: str, profile: Path) -> None:
        self.playwright, self.address, self.profile = playwright, address, profile

    @contextmanager
    def visit(self, said_before: str = "") -> Iterator[Page]:
        context = self.playwright.chromium.launch_persistent_context(
            self.profile, executable_path=chromium.ensure(), args=[*chromium.ARGUMENTS]
        )
        context.add_init_script(said_before)
        page = context.pages[0]
        page.goto(self.address)
        yield page
        context.close()

    def does(self, *scripts: str, said_before: str = ""):
        """What the last of these scripts gives, run in one visit."""
        with self.visit(said_before) as page:
            for script in scripts:
                given = run(page, script)
            return given

    def loses(self, what: str) -> None:
        shutil.rmtree(self.profile / "Default" / what)


def comes(page: Page, script: str, so: Callable[[Any], bool], within: float = 20) -> Any:
    """What this script gives once it is so [s]; what it gave last, where it never is."""
    late = time.monotonic() + within
    while not so(given := run(page, script)) and time.monotonic() < late:
        page.wait_for_timeout(50)
    return given


def run(page: Page, script: str):
    return page.evaluate(f"async () => {{ {IMPORTS} {script} }}")


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """An empty page beside the scripts of what is kept."""
    site = tmp_path_factory.mktemp("site")
    join_scripts.join(site / "assets/javascript", also=("journal.js",))
    (site / "index.html").write_text(PAGE)
    with open_server(site, 0) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.address
        server.shutdown()


@pytest.fixture
def reader(playwright: Playwright, address: str, tmp_path: Path) -> Reader:
    return Reader(playwright, address, tmp_path / "profile")


#: Which of the two files of the journal is in use.
IN_USE = """const files = ['changes-1.a', 'changes-1.b'];
    const sizes = await Promise.all(files.map(journal.sizeOf));
    return files[sizes.findIndex((size) => size)] ?? '';"""
DATABASE, JOURNAL = "IndexedDB", "File System"


def test_a_first_visit_costs_nothing(reader: Reader):
    with reader.visit() as page:
        assert run(page, THERE) == NOTHING
        page.wait_for_timeout(1500)
        assert page.workers == [] and run(page, IN_USE) == ""
        run(page, WORK)
        assert len(page.workers) == 1


def test_a_lost_database_is_back_before_the_first_read_and_it_is_said_once(reader: Reader):
    reader.does(WORK)
    reader.loses(DATABASE)
    with reader.visit() as page:
        assert run(page, THERE) == ALL_OF_IT
        said = run(page, "return await store.whatWasLost()")
        assert said.startswith("This browser had lost") and "2 jobs and 1 house method" in said
        kept = run(page, "return await store.whatKeeps()")
        assert (kept["database"], kept["journal"], kept["trouble"]) == (True, True, "")
        assert kept["restored"]["documents"] == {"job": 2, "method": 1}
    said, kept, there = reader.does("return [await store.whatWasLost(), await store.whatKeeps()].concat([await "
        "(async () => { " + THERE + " })()])")  # fmt: skip
    assert (said, there) == ("", ALL_OF_IT)
    assert kept["restored"]["documents"] == {"job": 2, "method": 1}, "when it was is known later too"


def test_a_lost_journal_is_made_anew_out_of_the_database(reader: Reader):
    reader.does(WORK)
    reader.loses(JOURNAL)
    assert reader.does(THERE, "await store.keep('job', 'runner', 'runner', 0); " + THERE)[0] == [
        "napkins 2", "runner", "towels 2",
    ]  # fmt: skip
    reader.loses(DATABASE)
    assert reader.does(THERE)[0] == ["napkins 2", "runner", "towels 2"]


def test_a_lost_journal_is_made_anew_by_a_look_alone(reader: Reader):
    reader.does(WORK)
    reader.loses(JOURNAL)
    with reader.visit() as page:
        assert run(page, THERE) == ALL_OF_IT
        assert comes(page, IN_USE, bool)
        page.wait_for_timeout(500)  # it is there whole
    reader.loses(DATABASE)
    assert reader.does(THERE) == ALL_OF_IT


def test_what_the_edition_before_kept_goes_into_a_journal(reader: Reader):
    """Its database had no store that says what the journal has."""
    old = """await new Promise((resolve) => {
        const request = indexedDB.open("workroom/", 1);
        request.onupgradeneeded = () => {
            request.result.createObjectStore("versions", { keyPath: ["kind", "id", "revision"] })
                .put({ kind: "job", id: "old", revision: 1, at: "", text: "old" });
            request.result.createObjectStore("marks", { keyPath: ["job", "name"] });
            request.result.createObjectStore("choices", { keyPath: ["name"] });
        };
        request.onsuccess = () => { request.result.close(); resolve(); };
    });"""
    with reader.visit() as page:
        page.evaluate(f"async () => {{ {old} }}")
    reader.does("await store.keep('job', 'new', 'new', 0)")
    reader.loses(DATABASE)
    assert reader.does(THERE)[0] == ["new", "old"]


def test_what_a_killed_window_wrote_into_the_journal_alone_is_in_the_database_before_anything_is_read(reader: Reader):
    reader.does(WORK)
    deed = "[{put: 'versions', row: {kind: 'job', id: 'napkins', revision: 3, at: '', text: 'napkins 3'}}]"
    reader.does(f"await journal.append('changes-1.a', {deed})")
    assert reader.does(THERE)[0] == ["napkins 3", "towels 2"]


@pytest.mark.parametrize("lost", [1, 400])
def test_a_journal_that_lost_its_end_gets_it_from_the_database(reader: Reader, lost: int):
    reader.does(WORK)
    cut = f"await journal.cut('changes-1.a', (await journal.read('changes-1.a')).end - {lost});"
    assert reader.does(cut) is None
    assert reader.does("await store.keep('job', 'runner', 'runner', 0); " + THERE)[0] == [
        "napkins 2", "runner", "towels 2",
    ]  # fmt: skip
    reader.loses(DATABASE)
    assert reader.does(THERE)[0] == ["napkins 2", "runner", "towels 2"]


BEGUN = f"""const file = await (async () => {{ {IN_USE} }})();
    const {{ records: [, , ...rest] }} = await journal.read(file);
    await journal.write(file.replace(/.$/, (end) => (end === 'a' ? 'b' : 'a')),
        [{{ id: 'begun', number: 99 }}, ...rest.slice(0, 2)]);"""


@pytest.mark.parametrize("lost", ["", DATABASE])
def test_a_journal_that_was_only_begun_anew_does_not_count(reader: Reader, lost: str):
    reader.does(WORK)
    reader.does(BEGUN)
    if lost:
        reader.loses(lost)
    assert reader.does(THERE, "await store.keep('job', 'runner', 'runner', 0); " + THERE)[0] == [
        "napkins 2", "runner", "towels 2",
    ]  # fmt: skip


def test_what_was_kept_before_the_journal_was_last_shortened_comes_back(reader: Reader):
    """It grows to twice its size with one long job, over and over; then it is begun anew, and nothing is lost of it."""
    grow = """for (let revision = 0; revision < 220; revision++)
        await store.keep('job', 'long', 'x'.repeat(60_000) + revision, revision);"""
    with reader.visit() as page:
        run(page, WORK)
        before = run(page, IN_USE)
        run(page, grow)
        assert {before, comes(page, IN_USE, lambda name: name != before)} == {"changes-1.a", "changes-1.b"}
    reader.loses(DATABASE)
    assert reader.does("return (await store.newest('job')).map(({ text }) => text.slice(-3))") == ["219", "s 2", "s 2"]


def test_windows_that_keep_at_once_never_lose_or_overwrite(reader: Reader):
    begin = f"""(name) => {{ window.done = (async () => {{ {IMPORTS}
        for (let number = 0; number < 25; number++) {{
            await store.keep('job', name + number, name, 0);
            for (;;) {{
                const revision = (await store.last('job', 'both'))?.revision ?? 0;
                try {{
                    await store.keep('job', 'both', `${{name}} ${{number}}`, revision);
                    break;
                }} catch (problem) {{
                    if (problem.name !== 'Overtaken') throw problem;
                }}
            }}
        }}
    }})(); }}"""
    there = """const jobs = await store.newest('job');
        return [jobs.length, (await store.versions('job', 'both')).map(({ text }) => text)]"""
    with reader.visit() as page:
        other = page.context.new_page()
        other.goto(reader.address)
        for each, name in ((page, "one"), (other, "two")):
            each.evaluate(begin, name)
        for each in (page, other):
            each.evaluate("() => window.done")
        seen = run(page, there)
    assert seen[0] == 51 and sorted(seen[1]) == sorted(f"{name} {n}" for name in ("one", "two") for n in range(25))
    reader.loses(DATABASE)
    assert reader.does(there) == seen


def test_without_private_files_the_database_keeps_alone(reader: Reader):
    with reader.visit(NO_PRIVATE_FILES) as page:
        run(page, WORK)
        assert run(page, THERE) == ALL_OF_IT
        kept = run(page, "return await store.whatKeeps()")
        assert (kept["database"], kept["journal"], page.workers) == (True, False, [])
    reader.does("await store.keep('job', 'runner', 'runner', 0)")
    reader.loses(DATABASE)
    assert reader.does(THERE)[0] == ["napkins 2", "runner", "towels 2"], "the journal was made once it could be"


def test_a_journal_that_cannot_be_written_on_stops_nothing_and_is_made_good_later(reader: Reader):
    with reader.visit() as page:
        page.route("**/journal-worker.js", lambda route: route.abort())
        run(page, WORK)
        assert run(page, THERE) == ALL_OF_IT
        assert run(page, "return (await store.whatKeeps()).journal") is False
    reader.does(THERE, "await store.remove('job', 'towels')")
    reader.loses(DATABASE)
    assert reader.does(THERE)[0] == ["napkins 2"]


def test_what_could_not_be_put_into_the_database_does_not_come_back_by_itself(reader: Reader):
    reader.does(WORK)
    tried = "return await store.keep('job', 'runner', 'runner', 0).catch(({ message }) => message)"
    assert "no room left" in reader.does("await store.newest('job')", FULL, tried)
    assert reader.does(THERE) == ALL_OF_IT


@pytest.mark.parametrize("fault", [NEVER_OPENS, FAILS_TO_OPEN], ids=["never answers", "fails"])
def test_where_the_database_does_not_open_the_journal_carries_on(reader: Reader, fault: str):
    reader.does(WORK)
    more = "await store.keep('job', 'runner', 'runner', 0); return await store.whyNothingLasts()"
    with reader.visit(fault) as page:
        assert run(page, THERE) == ALL_OF_IT
        assert "cannot be opened. The other has everything" in run(page, more)
        kept = run(page, "return await store.whatKeeps()")
        assert (kept["database"], kept["journal"]) == (False, True)
    assert reader.does(THERE)[0] == ["napkins 2", "runner", "towels 2"]


@pytest.mark.parametrize(
    ("fault", "words"),
    [(NEVER_OPENS, "does not answer"), (FAILS_TO_OPEN, "disk may be full or damaged")],
    ids=["never answers", "fails"],
)
def test_where_neither_can_be_had_the_reason_is_said(reader: Reader, fault: str, words: str):
    with reader.visit(fault + NO_PRIVATE_FILES) as page:
        said = run(page, "return await store.whyNothingLasts()")
    assert words in said and "private window" not in said


def test_a_window_of_an_older_edition_that_does_not_let_go_is_named(reader: Reader):
    hold = "() => new Promise((resolve) => (indexedDB.open('workroom/', 1).onsuccess = () => resolve()))"
    with reader.visit(NO_PRIVATE_FILES + LESS_PATIENT) as page:
        page.evaluate(hold)
        other = page.context.new_page()
        other.goto(reader.address)
        assert "Another window does not let go" in run(other, "return await store.whyNothingLasts()")
