"""Hems and seams on paper: each with its name and its words; a page whose steps are folded away is printed with its
text."""

from playwright.sync_api import Page

from tests.browser.reader import one_window, printed


def words_on_paper(page: Page) -> str:
    """What is printed; words with a halo are drawn twice and count once."""
    with printed(page, "A4") as pdf:
        return " ".join(sheet.dedupe_chars().extract_text() for sheet in pdf.pages)


@one_window
def test_steps_that_stand_open_print_under_their_names_and_with_their_words(page):
    page.goto("./stitch/seams/")
    words = words_on_paper(page)
    for name in ("Plain seam, pressed open", "Felled seam", "French seam"):
        assert f"{name}, step by step" in words
    assert words.count("first row") > 5, "the drawings keep their words"
    assert "What goes wrong" not in words


@one_window
def test_a_page_with_steps_folded_away_is_printed_with_its_text(page):
    page.goto("./projects/curtains/")
    words = words_on_paper(page)
    assert "Order of work" in words and "What goes wrong" in words
    assert words.count("right side") > 5, "and its steps are opened"
    assert page.locator(".print-whole").count() == 0


@one_window
def test_an_article_is_printed_with_its_sizes_its_steps_and_what_can_hurt(page):
    page.goto("./projects/cushion-covers/")
    words = words_on_paper(page)
    for told in ("upper back", "41 cm × 29.5 cm", "Hem the bottom of the", "small children"):
        assert told in words
    assert "To cut: 3 pieces." in words and "Lay them out" not in words, "nothing is left to press"
    assert "What goes wrong" not in words
