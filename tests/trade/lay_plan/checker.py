"""Checks a lay plan without knowing how it was made.

Written apart from the solvers and sharing nothing with them but the plan itself. Two views are checked: the tree of
cuts, part
by part, and the placed rectangles alone, which must come apart by edge-to-edge cuts in the stages allowed.
"""

from calculators.trade.lay_plan.solving.plan import Part, Placement, Plan, piece_size

_OTHER = {"across": "along", "along": "across"}
Rectangle = tuple[int, int, int, int]  # x from, x to, y from, y to


def faults(plan: Plan) -> list[str]:
    """Everything wrong with a plan, one sentence each; an empty list for a sound plan."""
    found = _cloth_faults(plan) + _part_faults(plan, plan.cloth) + _quantity_faults(plan)
    placed = plan.placements()
    found += _overlap_faults(placed)
    if not found:
        found += _stage_faults(plan, placed)
    return found


def _cloth_faults(plan: Plan) -> list[str]:
    cloth, task = plan.cloth, plan.task
    wrong = []
    if (cloth.x, cloth.y, cloth.width) != (0, 0, task.width):
        wrong.append(f"The plan does not start from the whole width: {cloth.width} instead of {task.width}.")
    if task.length is not None and cloth.length != task.length:
        wrong.append(f"The plan is made for a cloth {cloth.length} long, but the cloth is {task.length}.")
    return wrong


def _part_faults(plan: Plan, part: Part) -> list[str]:
    if part.width <= 0 or part.length <= 0:
        return [f"A part at {part.x}, {part.y} has no size."]
    if part.piece is not None:
        return _leaf_faults(plan, part, part.piece)
    if not part.parts:
        return []
    wrong = []
    x, y = part.x, part.y
    for inner in part.parts:
        if (inner.x, inner.y) != (x, y):
            wrong.append(f"A cut at {inner.x}, {inner.y} does not continue where the last one ended, {x}, {y}.")
        if part.cut == "across":
            y += inner.length
            if inner.width != part.width:
                wrong.append(f"The cut at {inner.y} does not run from edge to edge.")
        elif part.cut == "along":
            x += inner.width
            if inner.length != part.length:
                wrong.append(f"The cut at {inner.x} does not run from edge to edge.")
        else:
            wrong.append(f"A part at {part.x}, {part.y} is divided, but no cut is named.")
        wrong += _part_faults(plan, inner)
    if part.cut == "across" and y != part.y + part.length or part.cut == "along" and x != part.x + part.width:
        wrong.append(f"The parts of the part at {part.x}, {part.y} do not add up to its size.")
    return wrong


def _leaf_faults(plan: Plan, part: Part, number: int) -> list[str]:
    if part.parts:
        return [f"The part at {part.x}, {part.y} is a piece and yet cut further."]
    piece = plan.task.pieces[number]
    if part.turned and not piece.may_turn:
        return [f"Piece {number} at {part.x}, {part.y} lies turned but may not."]
    width, length = (piece.length, piece.width) if part.turned else (piece.width, piece.length)
    if width > part.width or length > part.length:
        return [f"Piece {number} at {part.x}, {part.y} is larger than the part it is cut from."]
    if width < part.width and length < part.length:
        return [f"Piece {number} at {part.x}, {part.y} needs more than one trimming cut."]
    return []


def _quantity_faults(plan: Plan) -> list[str]:
    wrong = []
    counts = plan.counts()
    for number, piece in enumerate(plan.task.pieces):
        got = counts.get(number, 0)
        if piece.quantity is None:
            continue
        if got > piece.quantity:
            wrong.append(f"Piece {number} is cut {got} times, but only {piece.quantity} are wanted.")
        if plan.task.length is None and got < piece.quantity:
            wrong.append(f"Piece {number} is cut {got} times, but {piece.quantity} are ordered.")
    return wrong


def _overlap_faults(placed: list[Placement]) -> list[str]:
    wrong = []
    current: list[Placement] = []
    for piece in sorted(placed, key=lambda p: p.y):
        current = [other for other in current if other.y + other.length > piece.y]
        for other in current:
            if other.x < piece.x + piece.width and piece.x < other.x + other.width:
                wrong.append(f"Two pieces overlap at {piece.x}, {piece.y}.")
        current.append(piece)
    return wrong


def _stage_faults(plan: Plan, placed: list[Placement]) -> list[str]:
    boxes = [(p.x, p.x + p.width, p.y, p.y + p.length) for p in placed]
    first = ["across", "along"] if plan.task.first_cut == "any" else [plan.task.first_cut]
    if plan.task.stages is None:
        if min(stages_needed(boxes, direction) for direction in first) == float("inf"):
            return ["The pieces do not come apart by edge-to-edge cuts."]
        return []
    wrong = []
    if min(stages_needed(boxes, direction) for direction in first) > plan.task.stages:
        wrong.append(f"The pieces do not come apart in {plan.task.stages} stages of edge-to-edge cuts.")
    if min(_tree_stages(plan, plan.cloth, direction) for direction in first) > plan.task.stages:
        wrong.append(f"The cuts change direction more often than {plan.task.stages} stages allow.")
    return wrong


def stages_needed(boxes: list[Rectangle], direction: str) -> float:
    """How many stages of edge-to-edge cuts, the first in `direction`, set these rectangles apart; infinite when none
    do.

    A last trimming cut is not counted.
    """
    return _stages(boxes, direction, stuck=False)


def _stages(boxes: list[Rectangle], direction: str, stuck: bool) -> float:
    if len(boxes) <= 1:
        return 0
    low, high = (2, 3) if direction == "across" else (0, 1)
    groups: list[list[Rectangle]] = []
    end = None
    for box in sorted(boxes, key=lambda b: b[low]):
        if end is None or box[low] >= end:
            groups.append([])
            end = box[high]
        groups[-1].append(box)
        end = max(end, box[high])
    if len(groups) == 1 and stuck:
        return float("inf")
    return 1 + max(_stages(group, _OTHER[direction], len(groups) == 1) for group in groups)


def _tree_stages(plan: Plan, part: Part, direction: str) -> int:
    """Stages of cuts in the tree when the first stage runs in `direction`; where a piece is only trimmed to size is no
    stage."""
    if not part.parts or _is_trimmed(plan, part):
        return 0
    if part.cut != direction:
        return 1 + _tree_stages(plan, part, _OTHER[direction])
    return max(1, max(_tree_stages(plan, inner, direction) for inner in part.parts))


def _is_trimmed(plan: Plan, part: Part) -> bool:
    """Whether the cuts of a part only take off waste before and after a single piece that needs no other cut."""
    held = [(inner.piece, inner.turned) for inner in part.parts if inner.piece is not None]
    if len(held) != 1 or any(inner.parts for inner in part.parts):
        return False
    width, length = piece_size(plan.task, *held[0])
    return width == part.width if part.cut == "across" else length == part.length
