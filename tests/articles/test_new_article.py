"""What the contributors' guide promises: one file makes an article with its cut pieces, drawing, steps and checks."""

from pathlib import Path

import pytest

from tests.copy_of_the_project import copied, example, run


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project with the guide's example in it."""
    house = copied(tmp_path_factory.mktemp("house"), "calculators", "tests", "scripts", "docs", "pyproject.toml")
    told = example("A bag for the laundry")
    (house / "calculators/articles/laundry_bag.py").write_text(told, "utf-8")
    return house


def test_a_new_article_is_asked_at_a_terminal(house: Path):
    told = run(
        house, "-m", "calculators", "laundry-bag", "width=50 cm", "length=70 cm", "seam_allowance=1 cm", "turn=1 cm"
    )
    assert "52 cm" in told and "146 cm" in told


def test_a_new_article_is_checked_as_all_others_are(house: Path):
    told = run(house, "-m", "pytest", "-p", "no:cacheprovider", "-v", "tests/articles/test_articles.py", "-k",
        "laundry")  # fmt: skip
    assert told.count("[laundry-bag] PASSED") >= 4 and "failed" not in told
