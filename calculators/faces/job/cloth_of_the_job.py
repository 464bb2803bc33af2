"""What to do where the method that a batch follows has no line for its cloth, or another than the method followed by
now."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping

from calculators.asking.house_method import HouseMethod, Written, on_ruler
from calculators.faces.page.markup import element

TAKE_OVER = "Take over the measures that the other pages follow"


def newer_line(cloth: str, kept: HouseMethod, now: HouseMethod) -> str:
    """One sentence where the method followed now has a line for a cloth that the kept one lacks or has otherwise; empty
    where it has not.

    cloth: what the job calls it; empty for the cloth that the kept method uses most. kept: the method in the job. now:
    the one that the other pages follow.
    """
    cloth = cloth or on_ruler(kept.measures.get("cloth", ""), kept.ruler())
    here, there = kept.cloth_line(cloth), now.cloth_line(cloth)
    if not there or _facts(there) == _facts(here):
        return ""
    change = on_ruler(there.get("change_length", ""), now.ruler())
    by_now = ("other numbers for it by now" if here else "it by now") + (
        f", {change} along in the wash" if change else ""
    )
    return (
        f"This job keeps “{kept.name}” as it stood, {'with older numbers for' if here else 'without'} the cloth "
        f"“{cloth}”; “{now.name}”, which the other pages follow, has {by_now}."
    )


def what_to_do(cloth: str, kept: HouseMethod, now: HouseMethod, is_job: bool, home: str) -> ET.Element | None:
    """The sentence for a ticket, with the way to mend it; None where there is nothing to do.

    home: the way from the page back to the top of the site.
    """
    batch, house = (
        element("a", {"href": f"{home}batch/"}, "the batch"),
        element("a", {"href": f"{home}house/"}, "your house method"),
    )
    if is_job and (newer := newer_line(cloth, kept, now)):
        return element("p", None, f"{newer} To have it here, press “{TAKE_OVER}” in ", batch, ".")
    if not cloth or kept.cloth_line(cloth):
        return None
    then = (f", then press “{TAKE_OVER}” in ", batch, ".") if is_job else (", and it stands here.",)
    return element(
        "p",
        None,
        f"“{kept.name}” has no cloth “{cloth}”, so needle and thread are not settled: write them down in ",
        house,
        *then,
    )


def _facts(line: Mapping[str, Written]) -> dict[str, Written]:
    return {name: each for name, each in line.items() if name not in ("cloth", "why", "found_on")}
