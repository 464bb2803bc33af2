"""The sentences of a lay plan: what it gives, whether another could do better, and what a small change would bring."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.catalogue.lay_plan.fields import IF_NOT_ALL_FIT
from calculators.catalogue.lay_plan.offers import change_offered, more_offered
from calculators.trade.cloth import LongEdges
from calculators.trade.lay_plan.advice import Advice
from calculators.trade.lay_plan.one_change import cannot_hold, turned_otherwise
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.trade.lay_plan.solving.any_stage_value import is_too_fine
from calculators.trade.lay_plan.what_if import WhatIf
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say


def spoken(outcome: PlannedOrder) -> Phrase:
    """The one sentence that answers first."""
    rules, name = outcome.order.rules, outcome.lays[0].cloth.cloth.name
    if rules.aim == "buy":
        return say(
            "Buy **{length:length_up}** of {cloth:text} for the whole order.", length=outcome.to_start_from, cloth=name
        )
    if rules.aim == "shortest":
        sentence = "The whole order takes **{length:length_up}** of {cloth:text}"
        if outcome.short_by:
            return say(
                sentence + ", and the cloth is {short:length_up} too short.",
                length=outcome.result,
                cloth=name,
                short=outcome.short_by,
            )
        return say(sentence + ".", length=outcome.result, cloth=name)
    made = outcome.made
    total = sum(made)
    if outcome.missing:
        ordered = [
            piece.count if piece.count is not None else count for piece, count in zip(outcome.order.pieces, made)
        ]
        return say("**{total:piece|pieces}** of {wanted:count} ordered can be cut.", total=total, wanted=sum(ordered))
    from_cloths = "{cloth:text}" if len(outcome.lays) == 1 else "{cloths:count} cloths"
    parts = ", cut in {parts:count} parts" if outcome.joins else ""
    end = ": the whole order." if _all_counted(outcome) else "."
    return say(
        f"**{{total:piece|pieces}}** from {from_cloths}{parts}{end}",
        total=total,
        cloth=name,
        cloths=len(outcome.lays),
        parts=sum(outcome.counts.values()),
    )


def _all_counted(outcome: PlannedOrder) -> bool:
    return all(piece.count is not None for piece in outcome.pieces)


def bound_said(outcome: PlannedOrder) -> Phrase:
    """Whether another plan cut the same way could do better: proven, or by how much at most."""
    if outcome.open_ended:
        return _length_bound(outcome)
    aim = outcome.order.rules.aim
    if not outcome.missing and _all_counted(outcome):
        return say("Everything ordered is cut.")
    if aim == "shelf":
        gap = outcome.order.rules.gap
        wanted = sum((piece.count or 0) * (piece.width + gap) * (piece.length + gap) for piece in outcome.pieces)
        if (
            len(outcome.order.cloths) == 1
            and len(outcome.lays) == 1
            and outcome.bound is not None
            and outcome.bound < wanted
        ):
            return say("No plan cut this way can take the whole order from this cloth.")
        return say("It is not proven that no plan takes the whole order.")
    keeps = " that keeps every kind of piece" if outcome.instead and all(outcome.made) else ""
    if outcome.proven:
        return say(f"No plan cut this way{keeps} can give more.")
    if outcome.bound is not None and all(piece.matters == 1 for piece in outcome.pieces):
        return say(
            f"It is not proven that no plan{keeps} gives more: {{more:more piece is|more pieces are}} not ruled out.",
            more=int(outcome.bound - outcome.result),
        )
    return say(f"It is not proven that no other plan{keeps} gives more.")


def _length_bound(outcome: PlannedOrder) -> Phrase:
    if outcome.proven:
        return say("No plan cut this way can use less.")
    if outcome.bound is None:
        return say("It is not proven that no other plan uses less.")
    return say(
        "It is not proven that no plan uses less: up to {gap:length_up} less is not ruled out.",
        gap=outcome.result - outcome.bound,
    )


def next_steps(outcome: PlannedOrder, last_mark: Fraction, advice: Advice, given: SimpleNamespace) -> Iterator[Phrase]:
    """What to do next, and what a change would bring."""
    yield from _wash_still_to_come(given)
    yield from _cut_otherwise(outcome)
    if outcome.missing:
        listed = ", ".join(f"{count} × {outcome.pieces[number].name}" for number, count in outcome.missing.items())
        yield say("Not cut: {listed:text}.", listed=listed)
        yield from _room_taken(outcome)
    if advice.better:
        yield more_offered(*advice.better)
    if outcome.instead and not advice.change:
        yield _left_out_instead(outcome, outcome.instead)
    if advice.change:
        yield change_offered(outcome, advice.change, given)
    if advice.rest:
        yield _bought(outcome, advice.rest, advice.longer)
    if outcome.order.rules.aim == "shortest" and (length := outcome.order.cloths[0].length) is not None:
        yield from _left_of_cloth(outcome, length)
    for change in advice.what_ifs:
        yield from _change_said(outcome, change)
    yield from _starting_edges(outcome, given.ruler)
    yield say(
        brief("one-end")
        + " The last mark along must read {last:length}: if it does not, measure again before cutting.",
        last=last_mark,
    )
    if outcome.open_ended and given.ruler.read(outcome.result) != given.ruler.read(outcome.result, "up"):
        yield say(
            "Cloth is rounded up to the next division of the ruler, so that it is enough; a mark is read at the "
            "nearest."
        )


def _wash_still_to_come(given: SimpleNamespace) -> Iterator[Phrase]:
    if given.change_length or given.change_width:
        yield say(
            "Planned on the cloth as it will be after the wash: {along:percent} along, {across:percent} across.",
            along=given.change_length, across=given.change_width,
        )  # fmt: skip


def _left_out_instead(outcome: PlannedOrder, instead: PlannedOrder) -> Phrase:
    """What could be cut if something were given up that this plan keeps."""
    now, then = outcome.made, instead.made
    fewer = [(piece.name, left) for piece, kept, left in zip(outcome.order.pieces, now, then) if left < kept]
    names = _in_a_row([name for name, _ in fewer])
    without = "Without" if not any(left for _, left in fewer) else "With fewer of"
    if outcome.order.rules.aim == "shelf":
        return say("{without:text} {names:text}, more of the cloth would be used.", without=without, names=names)
    return say(
        "{without:text} {names:text}, {total:piece|pieces} could be cut. If you would rather have those, say so "
            "under {column:text}.",
        without=without, names=names, total=sum(then), column=f"“{IF_NOT_ALL_FIT}”",
    )  # fmt: skip


def _bought(outcome: PlannedOrder, rest: PlannedOrder, longer: Fraction) -> Phrase:
    """What to buy, once nothing else was found to do."""
    turning = ", and no turning," if turned_otherwise(outcome.order) else ""
    why = (
        "The order is larger than the cloth. "
        if cannot_hold(outcome.order)
        else f"No other way of cutting{turning} was found that takes the whole order. "
    )
    then = "; in one length with this cloth, {longer:length_up} more would do." if longer else "."
    return say(
        f"{why}For the rest, buy {{length:length_up}} of {{cloth:text}}{then}",
        length=rest.to_start_from, cloth=rest.lays[0].cloth.cloth.name, longer=longer,
    )  # fmt: skip


def _starting_edges(outcome: PlannedOrder, ruler: Ruler) -> Iterator[Phrase]:
    """The line that marks across start from, of every cloth that is used; where selvedges are trimmed, when."""
    edges: dict[LongEdges, list[str]] = {}
    for lay in outcome.lays:
        names = edges.setdefault(lay.cloth.cloth.edges(outcome.order.rules), [])
        names.extend({lay.cloth.cloth.name} - {*names})
    for each, names in edges.items():
        of_cloth = f" of {_in_a_row(names)}" if len(edges) > 1 else ""
        yield say("Marks across{cloth:text} start from {edge:text}.", cloth=of_cloth, edge=each.start(ruler))
    if any(each.strip for each in edges):
        across_first = all(lay.first_cut == "across" for lay in outcome.lays)
        yield say(
            brief("selvedges")
            if across_first
            else "The selvedges come off with the first cuts along, once every mark is set."
        )


def _room_taken(outcome: PlannedOrder) -> Iterator[Phrase]:
    """That what was ordered by number may have been given up for pieces of which as many as fit are cut."""
    made = list(zip(outcome.order.pieces, outcome.made))
    without_number = [piece.name for piece, count in made if piece.count is None and count]
    given_up = [piece.name for piece, count in made if piece.count is not None and count < piece.count]
    if without_number and given_up:
        yield say(
            "{given_up:text} may have been given up for {taken:text}, of which as many as fit are cut: the plan "
            "counts pieces, and small ones make more. Write how many of {taken:text} you want, and plan again.",
            given_up=_in_a_row(given_up),
            taken=_in_a_row(without_number),
        )


def _in_a_row(names: list[str]) -> str:
    *most, last = (f"“{name}”" for name in names)
    return f"{', '.join(most)} and {last}" if most else last


def _cut_otherwise(outcome: PlannedOrder) -> Iterator[Phrase]:
    """Where the plan is cut in fewer ways than were asked for."""
    strips = outcome.order.rules.strips
    if outcome.hindered and strips in ("sections", "free") and not outcome.proven:
        between = (
            "stepping over what must stay free"
            if any(cloth.flaws for cloth in outcome.order.cloths)
            else "starting where the repeat starts"
        )
        yield say(
            "This plan is cut in plain strips, {between:text}; sections and cuts any way were not tried on this cloth.",
            between=between,
        )
    elif strips == "free" and any(is_too_fine(lay.plan.task) for lay in outcome.lays):
        yield say(
            "This plan is cut in plain strips: there are too many places for a cut to try them all. Sizes in whole "
            "centimetres leave fewer."
        )
    if outcome.open_ended and strips == "either":
        yield say("The least length was looked for in strips across the cloth, not along.")


def _left_of_cloth(outcome: PlannedOrder, length: Fraction) -> Iterator[Phrase]:
    left = length - outcome.to_start_from
    if left > 0:
        yield say("Not touched: {left:length_down} of the cloth, measured before the wash.", left=left)
    elif outcome.short_by:
        yield say("Start from {length:length_up} of cloth, measured before the wash.", length=outcome.to_start_from)


_RULES = {
    "grain": ("Keeping every piece to the grain", "every piece might turn"),
    "one-way": ("The one-way cloth", "pieces might turn on it"),
    "repeat": ("Matching the repeat", "nothing had to match"),
}


def _change_said(outcome: PlannedOrder, change: WhatIf) -> Iterator[Phrase]:
    if change.kind in _RULES:
        rule, otherwise = _RULES[change.kind]
        if change.saved:
            yield say(
                f"{rule} costs {{saved:length_up}} of cloth: so much less would do if {otherwise}.", saved=change.saved
            )
        elif change.pieces:
            yield say(
                f"{rule} costs {{pieces:piece|pieces}}: so many more would fit if {otherwise}.", pieces=change.pieces
            )
        elif change.none and not outcome.missing:
            yield say(f"{rule} costs nothing here.")
    elif change.kind == "more cloth":
        yield say(
            "Cloth {by:length_up} longer would give {pieces:more piece|more pieces}.",
            by=change.by,
            pieces=change.pieces,
        )
    else:
        piece = outcome.order.pieces[change.piece]
        size = (piece.length if change.kind == "shorter" else piece.width) - change.by
        gain = (
            "would save {saved:length_down} of cloth" if change.saved else "would give {pieces:more piece|more pieces}"
        )
        yield say(
            f"“{{name:text}}” {{by:length_up}} {change.kind}, "
            f"{{size:length_down}}{' cut' if piece.finished else ''}, {gain}.",
            name=piece.name,
            by=change.by,
            size=size,
            saved=change.saved,
            pieces=change.pieces,
        )
