"""The journal: what was written is read again, a piece that a broken-off browser left is cut off, and no two windows
come between one another."""

import threading
import zlib
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from scripts.after_pages import join_scripts
from scripts.tools.server import open_server

PAGE = '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Journal</title></head><body></body></html>'
JOURNAL = "const journal = await import('/assets/javascript/journal.js');"
#: Bytes put behind a file by somebody else than the journal, as after a kill.
STRAY = """const root = await navigator.storage.getDirectory();
    const folder = await root.getDirectoryHandle('workroom ' + encodeURIComponent('/'));
    const handle = await folder.getFileHandle(file);
    const content = new Uint8Array(await (await handle.getFile()).arrayBuffer());
    const writable = await handle.createWritable();
    await writable.write(content.slice(0, content.length - lost));
    await writable.write(new Uint8Array(stray));
    await writable.close();"""
#: In the worker: how often a file was opened, and what waits half a minute waits no time.
COUNT_OPENED = """() => {
    const open = FileSystemFileHandle.prototype.createSyncAccessHandle;
    self.opened = [];
    FileSystemFileHandle.prototype.createSyncAccessHandle = function (...how) {
        self.opened.push(this.name);
        return open.apply(this, how);
    };
}"""
SOON = """() => {
    const later = self.setTimeout;
    self.setTimeout = (act, time) => later(act, time > 10_000 ? 10 : time);
}"""
IS_FREE = """async (file) => {
    const root = await navigator.storage.getDirectory();
    const folder = await root.getDirectoryHandle('workroom ' + encodeURIComponent('/'));
    try {
        (await (await folder.getFileHandle(file)).createSyncAccessHandle()).close();
        return true;
    } catch ({ name }) {
        if (name !== "NoModificationAllowedError") throw name;
        return false;
    }
}"""


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """An empty page beside the journal's scripts."""
    site = tmp_path_factory.mktemp("site")
    join_scripts.join(site / "assets/javascript", also=("journal.js", "journal-format.js"))
    (site / "index.html").write_text(PAGE)
    with open_server(site, 0) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.address
        server.shutdown()


@pytest.fixture
def page(browser: Browser, address: str) -> Iterator[Page]:
    context = browser.new_context(base_url=address)
    page = context.new_page()
    page.goto("/")
    yield page
    context.close()


def run(page: Page, script: str, given=None):
    return page.evaluate(f"async (given) => {{ {JOURNAL} {script} }}", given)


def test_what_was_appended_is_read_in_order_from_any_record_on(page: Page):
    assert run(page, "return [await journal.isThere(), await journal.read('a'), await journal.sizeOf('a')]") == [
        True, {"records": [], "end": 0}, 0,
    ]  # fmt: skip
    assert page.workers == [], "reading starts nothing"
    first, second = run(page, "return [await journal.append('a', {x: 1}, 'ä½'), await journal.append('a', [2])]")
    assert first["start"] == 0 and second["start"] == first["end"]
    run(page, "await journal.append('b', 'other'); await journal.append('b', 'one more')")
    page.reload()
    assert run(page, "return await journal.read('a')") == {"records": [{"x": 1}, "ä½", [2]], "end": second["end"]}
    assert run(page, "return (await journal.read('a', given)).records", first["end"]) == [[2]]
    assert run(page, "return await journal.sizeOf('a')") == second["end"]
    assert run(page, "return (await journal.read('a', 0, given)).records", second["end"] - 1) == [{"x": 1}, "ä½"]
    assert run(page, "await journal.write('b', ['new']); return (await journal.read('b')).records") == ["new"]


@pytest.mark.parametrize("stray", [[7] * 5, [7] * 40, [0] * 16, [3, 0, 0, 0, 1, 2, 3, 4, 34, 97, 34]])
@pytest.mark.parametrize("lost", [0, 1])
@pytest.mark.parametrize("append", ["append", "appendOwn"])
def test_a_torn_tail_is_not_read_and_cut_off_before_the_next_record(
    page: Page, stray: list[int], lost: int, append: str
):
    run(page, "await journal.append('a', 'first'); await journal.append('a', 'second')")
    page.reload()
    run(page, f"const {{ file, lost, stray }} = given; {STRAY}", {"file": "a", "lost": lost, "stray": stray})
    left = ["first", "second"][: 2 - lost]
    assert run(page, "return (await journal.read('a')).records") == left
    run(page, f"await journal.{append}('a', 'third')")
    assert run(page, "return (await journal.read('a')).records") == [*left, "third"]


def test_appended_at_a_place_only_where_the_file_ends_there(page: Page):
    end = run(page, "return (await journal.append('a', 1)).end")
    assert run(page, "return await journal.appendAt('a', given, [2])", end)["start"] == end
    there = run(page, "return await journal.appendAt('a', given, [3])", end)
    assert there["start"] == there["end"] > end
    assert run(page, "return (await journal.read('a')).records") == [1, 2]
    run(page, "await journal.cut('a', given)", end)
    assert run(page, "return (await journal.read('a')).records") == [1]
    missing = "return await journal.appendAt('none', 0, [1]).catch(({ name }) => name)"
    assert run(page, missing) == "NotFoundError"


@pytest.fixture
def other(page: Page) -> Page:
    """Another window, whose worker is there."""
    other = page.context.new_page()
    other.goto("/")
    run(other, "await journal.append('other', 1)")
    return other


def test_windows_that_write_at_once_write_one_behind_the_other(page: Page, other: Page):
    begin = """(name) => {
        window.done = import('/assets/javascript/journal.js').then(async (journal) => {
            for (let number = 0; number < 40; number++) {
                const own = journal.appendOwn(name, number);
                await journal.append('a', [name, number]);
                await own;
            }
        });
    }"""
    for each, name in ((page, "one"), (other, "two")):
        each.evaluate(begin, name)
    for each in (page, other):
        each.evaluate("() => window.done")
    records = run(page, "return (await journal.read('a')).records")
    for each, name in ((other, "one"), (page, "two")):
        assert [number for who, number in records if who == name] == list(range(40))
        assert run(each, "return (await journal.read(given)).records", name) == list(range(40))


def test_a_file_of_one_window_is_opened_once_and_read_meanwhile(page: Page, other: Page):
    run(page, "await journal.appendOwn('a')")
    assert run(other, "return await journal.read('a')") == {"records": [], "end": 0}
    page.workers[0].evaluate(COUNT_OPENED)
    append = "for (let number = 0; number < 20; number++) await journal.{}('a', number)"
    run(page, append.format("appendOwn"))
    assert page.workers[0].evaluate("() => self.opened") == []
    for each in (page, other):
        assert run(each, "return (await journal.read('a')).records") == list(range(20))
    run(page, append.format("append"))
    assert page.workers[0].evaluate("() => self.opened") == ["a"] * 19, "as one that other windows write too"
    run(page, "await journal.write('a', ['anew']); await journal.appendOwn('a', 'and on')")
    assert run(other, "return (await journal.read('a')).records") == ["anew", "and on"]


LEAVINGS = {
    "closed": lambda page: page.close(),
    "loaded again": lambda page: page.reload(),
    "put aside": lambda page: page.evaluate("() => dispatchEvent(new Event('pagehide'))"),
    "not written on": lambda page: run(page, "await journal.appendOwn('a', 'last')"),
}


@pytest.mark.parametrize("left", LEAVINGS)
def test_a_file_is_let_go_when_its_window_is(page: Page, other: Page, left: str):
    run(page, "await journal.appendOwn('a', 'first')")
    assert not other.workers[0].evaluate(IS_FREE, "a")
    page.workers[0].evaluate(SOON)
    LEAVINGS[left](page)
    run(other, "await journal.appendOwn('a', 'of the other')")
    assert run(other, "return (await journal.read('a')).records.at(-1)") == "of the other"


def test_a_window_that_was_put_aside_keeps_nothing_open_until_it_is_back(page: Page, other: Page):
    run(page, "await journal.appendOwn('a', 1)")
    page.evaluate("() => dispatchEvent(new Event('pagehide'))")
    for number in (2, 3):
        run(page, "await journal.appendOwn('a', given)", number)
        assert other.workers[0].evaluate(IS_FREE, "a")
    page.evaluate("() => dispatchEvent(new Event('pageshow'))")
    run(page, "await journal.appendOwn('a', 4)")
    assert not other.workers[0].evaluate(IS_FREE, "a")
    assert run(other, "return (await journal.read('a')).records") == [1, 2, 3, 4]


def test_a_file_that_another_window_has_holds_up_no_other_file(page: Page, other: Page):
    run(page, "await journal.appendOwn('a', 1)")
    script = """const order = [];
        const late = journal.append('a', 2).then(() => order.push('a'), () => order.push('a'));
        await journal.append('b', 1);
        order.push('b');
        await late;
        return order;"""
    assert run(other, script) == ["b", "a"]


def test_the_checksum_is_that_of_zip(page: Page):
    texts = ["123456789", "", "ä½ linen", "x" * 5000]
    script = """const { checksum } = await import('/assets/javascript/journal-format.js');
        return given.map((text) => checksum(new TextEncoder().encode(text)))"""
    assert run(page, script, texts) == [zlib.crc32(text.encode()) for text in texts]
    assert zlib.crc32(b"123456789") == 0xCBF43926


def test_without_a_private_file_system_it_says_so(page: Page):
    page.evaluate("() => { delete StorageManager.prototype.getDirectory; }")
    assert run(page, "return [await journal.isThere(), await journal.append('a', 1).catch(() => 'none')]") == [
        False, "none",
    ]  # fmt: skip
