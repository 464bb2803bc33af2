"""What a kill left of the database's log is healed at the next start, and only then: a page that was left in peace is
known to have been."""

import pytest
from playwright.sync_api import Page

MARKS = """async () => {
    const answer = (request) => new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = reject;
    });
    const { name } = (await indexedDB.databases()).find(({ name }) => name.includes("open pages")) ?? {};
    if (!name) return null;
    const database = await answer(indexedDB.open(name));
    const marks = await answer(database.transaction("marks").objectStore("marks").getAllKeys());
    database.close();
    return marks.length;
}"""


def marks(page: Page, wanted: int) -> bool:
    for _ in range(50):
        if page.evaluate(MARKS) == wanted:
            return True
        page.wait_for_timeout(100)
    return False


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_a_page_that_is_left_takes_its_mark_with_it(page: Page):
    for path in ("./house/", "./plan/pieces/", "./house/jobs/"):
        page.goto(path)
        assert marks(page, 1), path
    page.reload()
    assert marks(page, 1)
    other = page.context.new_page()
    other.goto("./house/")
    assert marks(page, 2)
    other.close(run_before_unload=True)
    assert marks(page, 1)
