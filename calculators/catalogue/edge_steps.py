"""A hem or a seam step by step: cut through and seen from the side, with the maker's own measures."""

from dataclasses import replace
from types import SimpleNamespace

from calculators.asking.corner_questions import check_turn
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.asking.house_measures import ALLOWANCE, EDGE_STITCH, HEM, TURN
from calculators.asking.house_method import HouseMethod
from calculators.asking.seams import SEAMS, allowance_of
from calculators.drawing.in_step import InStep
from calculators.drawing.picture import Picture, PictureSeries
from calculators.drawing.played_section import played_edge
from calculators.drawing.section import edge_step, edge_step_by_step, frame_of
from calculators.drawing.section_layout import Frame
from calculators.trade.sections.checks import HELD, let_go
from calculators.trade.sections.edge import Edge, EdgeMeasures, EdgeStep
from calculators.trade.sections.edges import EDGES
from calculators.values.kinds import Choice, Count, Length
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say

_AS_SEAM = {"lapped-zip": "zip", "selvedges": "plain"}


def _allowance(method: HouseMethod, ruler: Ruler, edge: str) -> str:
    if edge == "faced":
        return method.measure("facing_allowance", ruler)
    return allowance_of(method, ruler, _AS_SEAM.get(edge, edge if edge in SEAMS else "plain"))


def _check(edge: Edge, with_: EdgeMeasures) -> None:
    """Refuse measures that make no such edge."""
    if edge.turned:
        check_turn(with_.turn, with_.hem)
    if edge.deep and with_.edge_stitch >= with_.hem:
        raise invalid_input(
            "edge_stitch",
            "The row would lie beyond the hem, which is {hem:length} deep. Write less.",
            hem=with_.hem,
        )
    if edge is EDGES["lined"] and not with_.turn:
        raise invalid_input("turn", "The edge of a lining is folded under. Write more than 0.")
    if edge.room and with_.allowance >= edge.room(with_):
        raise invalid_input(
            "seam_allowance",
            "The allowances would reach beyond the facing’s row of stitches. Write less than {room:length}, or a "
            "deeper hem.",
            room=edge.room(with_),
        )


def _work(given: SimpleNamespace) -> Answer:
    edge, with_ = EDGES[given.edge], EdgeMeasures(given.turn, given.hem, given.edge_stitch, given.seam_allowance)
    _check(edge, with_)
    steps = edge.steps(with_)
    if given.step and given.step > len(steps):
        raise invalid_input(
            "step",
            "This edge has {count:count} steps. Ask for one of them, or leave the blank empty to see all.",
            count=len(steps),
        )
    done = steps[-1].section
    results = {"takes": edge.takes(done), "layers": done.most_layers(), "steps": len(steps)}
    notes: tuple[Phrase, ...] = ()
    if let_go(done):
        notes = (
            say(
                "The row comes nearer than {held:length} to a raw edge, which may fray out of it.",
                held=HELD,
            ),
        )
    return Answer(
        results,
        say(
            "**{takes:length}** taken up at each edge; at most {layers:layer|layers} thick.",
            takes=results["takes"],
            layers=results["layers"],
        ),
        notes,
        (
            say(
                "{title:text}: worked out by folding strips of cloth and keeping count of their layers.",
                title=edge.title,
            ),
            *((say("In ISO 4916 it is of class {iso:count}.", iso=edge.iso_4916),) if edge.iso_4916 else ()),
        ),
        drawn_from=(steps, given.step),
    )


def _drawing(drawn_from: tuple[list[EdgeStep], int | None], ruler: Ruler) -> Picture | PictureSeries:
    steps, number = drawn_from
    if number:
        return edge_step(steps, number, ruler)
    return _played(steps, ruler)


def _played(steps: list[EdgeStep], ruler: Ruler, frame: Frame | None = None) -> PictureSeries:
    drawn = edge_step_by_step(steps, ruler, frame)
    return replace(drawn, played=played_edge(steps, drawn.pictures, frame))


def _beside(one: tuple[list[EdgeStep], int | None], other: tuple[list[EdgeStep], int | None], ruler: Ruler) -> InStep:
    frame = frame_of([step.section for steps, _ in (one, other) for step in steps])
    return InStep(*(_played(steps, ruler, frame) for steps, _ in (one, other)))


_EDGE = Field(
    "edge",
    "Hem or seam",
    Choice(options={name: each.title[0].lower() + each.title[1:] if name != "french" else each.title
                    for name, each in EDGES.items()}),
    "How the edge is finished, or two edges are joined.",
    fixed="double",
)  # fmt: skip

CALCULATOR = Calculator(
    name="edge-steps",
    title="A hem or a seam step by step",
    purpose="Every step of a hem, a seam or a closing, cut through and seen from the side, with your own measures.",
    fields=(
        _EDGE,
        Field(
            "hem",
            "Hem",
            HEM,
            "Depth of the finished hem, facing, casing or heading; width of a binding.",
            "hem",
            known_as=("hem",),
        ),
        Field("turn", "First turn", TURN, "Hidden first fold of a double hem.", "turn"),
        Field("edge_stitch", "Edge stitch", EDGE_STITCH, "From the inner edge of the hem to its row.", "edge_stitch"),
        Field(
            "seam_allowance",
            "Seam allowance",
            ALLOWANCE,
            "Taken up at each of the two edges of a seam; for a French seam by both its rows together.",
            fixed={"cm": "1 cm", "in": "3/8 in"},
            from_method=_allowance,
            beside=(_EDGE,),
        ),
        Field(
            "step", "Step to show", Count(least=1, most=20), "One step alone; leave it empty to see all.", optional=True
        ),
    ),
    question="{edge}: hem {hem}, first turn {turn}, seam allowance {seam_allowance}.",
    results=(
        Result("takes", "Taken up at each edge", Length(), "Cloth from the raw edge to the finished fold or seam."),
        Result("layers", "Layers at most", Count(), "Of the finished edge, where it is thickest."),
        Result("steps", "Steps", Count(), "How many steps the edge takes."),
    ),
    work=_work,
    sources=("iso-4916",),
    drawing=_drawing,
    beside=_beside,
    examples=(
        Example(
            {"edge": "double", "hem": "2 cm", "turn": "1 cm"},
            {"takes": 30, "layers": 3},
            "derived: the hem and the turn; the piece, the turn and the hem",
        ),
        Example(
            {"edge": "french", "seam_allowance": "3/8 in"},
            {"takes": 9.525, "layers": 5},
            "derived: two allowances shut in, and the pieces round them, one folded back",
        ),
        Example(
            {"edge": "faced", "hem": "4 cm", "seam_allowance": "6 mm"},
            {"takes": 6, "layers": 4},
            "derived: the seam alone; the piece, both allowances and the facing",
        ),
        Example(
            {"edge": "bound", "hem": "1 cm"},
            {"takes": 0, "layers": 5},
            "derived: the strip goes round the raw edge; its four bands and the piece",
        ),
        Example(
            {"edge": "heading", "hem": "6 cm"},
            {"takes": 60, "layers": 3},
            "derived: the fold alone, its raw edge under the tape; the piece, the fold and the tape",
        ),
    ),
)
