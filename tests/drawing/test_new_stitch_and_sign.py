"""What the contributors' guide promises: one declaration makes a stitch with its drawing, one a sign with its place in
the key."""

import re
from pathlib import Path

import pytest

from tests.copy_of_the_project import copied, guide, run


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project with both examples of the guide in it."""
    house = copied(tmp_path_factory.mktemp("house"), "calculators", "tests", "scripts", "docs", "pyproject.toml")
    for file, table, name in (
        ("calculators/trade/stitches/hand.py", "STITCHES: Mapping[str, Stitch] = {\n", "zigzag"),
        ("calculators/drawing/signs.py", "SIGNS: Mapping[str, Sign] = {\n", "chalk"),
    ):
        (told,) = re.findall(rf'^```py\n(    "{name}".*?)^```', guide(), re.MULTILINE | re.DOTALL)
        source = (house / file).read_text("utf-8")
        assert source.count(table) == 1
        (house / file).write_text(source.replace(table, table + told), "utf-8")
    return house


def test_a_new_stitch_is_drawn_and_told(house: Path):
    told = run(house, "-m", "calculators", "stitch-path", "stitch=zigzag", "stitch_length=6 mm")
    assert "0.6" in told
    program = (
        "from calculators.drawing.stitch import stitch_on_cloth\n"
        "from calculators.trade.stitches.hand import STITCHES\n"
        "from calculators.values.measure import CENTIMETRES\n"
        "made = stitch_on_cloth(STITCHES['zigzag'], 6, CENTIMETRES)\n"
        "print(made.caption, made.description, len(list(made.svg)))"
    )
    assert "Zigzag by hand, right to left. Slant up and down by turns" in run(house, "-c", program)


def test_a_new_sign_stands_in_the_key(house: Path):
    program = (
        "from calculators.faces.page.markup import html\nfrom calculators.faces.page.signs import signs_list\n"
        "print(html(signs_list()))"
    )
    assert "Mark here with chalk." in run(house, "-c", program)


def test_both_are_checked_like_all_others(house: Path):
    told = run(
        house, "-m", "pytest", "-v", "tests/trade/stitches/test_stitches.py", "tests/drawing/test_hands.py", "-k",
        "zigzag or signs or drawing_is_dressed",
    )  # fmt: skip
    assert told.count("[zigzag] PASSED") >= 2 and "failed" not in told
