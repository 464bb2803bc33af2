"""Contents of a strip: they fit, they are counted right, the best are there, and those left out are worth no more."""

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.strip_contents import contents, layers_of
from calculators.trade.lay_plan.solving.strip_table import Orientation, StripShapes

WIDTH = 12
SIZES = st.lists(
    st.tuples(st.integers(1, 12), st.integers(1, 5), st.integers(1, 3), st.integers(0, 20), st.integers(0, 3)),
    min_size=1,
    max_size=5,
)


class Case:
    """Each size: width, height, copies in the table, value, copies taken since."""

    def __init__(self, sizes, width):
        self.widths = [size[0] for size in sizes]
        self.copies = [copies for _, _, copies, _, _ in sizes]
        self.left = [max(0, copies - taken) for _, _, copies, _, taken in sizes]
        self.values = [value for _, _, _, value, _ in sizes]
        self.counts = PackedCounts(self.copies)
        shapes = StripShapes(
            WIDTH,
            [Orientation(number, across, height) for number, (across, height, *_) in enumerate(sizes)],
            self.copies,
        )
        self.layers = layers_of(shapes.fill(self.values)[-1], self.left, self.counts, width)
        self.floor = shapes.widths.floor
        ways = product(*(range(count + 1) for count in self.left))
        self.every = sorted(
            (self.worth(taken) for taken in ways if sum(w * c for w, c in zip(self.widths, taken)) <= width),
            reverse=True,
        )

    def worth(self, taken):
        return sum(value * count for value, count in zip(self.values, taken))

    def check(self, found, width):
        assert len({packed for _, packed, _ in found}) == len(found)
        for worth, packed, space in found:
            taken = self.counts.unpack(packed)
            assert all(count <= there for count, there in zip(taken, self.left))
            assert worth == self.worth(taken)
            assert space == width - sum(across * count for across, count in zip(self.widths, taken)) >= 0


@given(SIZES, st.integers(0, WIDTH), st.integers(0, 40), st.integers(1, 30))
def test_the_best_are_listed_and_what_is_sure_is_all_there(sizes, width, least, most):
    case = Case(sizes, width)
    found, sure = contents(case.layers, case.floor, width, least, most)
    case.check(found, width)
    enough = [worth for worth in case.every if worth >= least]
    assert [worth for worth, _, _ in found] == enough[:most]
    assert (sure == least) == (len(enough) <= most)
    assert sum(worth >= sure for worth in enough) == sum(worth >= sure for worth, _, _ in found)


@given(SIZES, st.integers(0, WIDTH))
def test_a_few_looks_find_good_ones(sizes, width):
    case = Case(sizes, width)
    found, _ = contents(case.layers, case.floor, width, 0, 4, looks=250)
    case.check(found, width)
    assert found[0][0] == case.every[0]


@given(SIZES, st.integers(0, WIDTH), st.integers(1, 30))
def test_all_or_none(sizes, width, most):
    case = Case(sizes, width)
    found, sure = contents(case.layers, case.floor, width, 0, most, all_or_none=True)
    assert (sure > 0) == (len(case.every) > most)
    assert len(found) == (0 if sure else len(case.every))


@given(SIZES, st.integers(0, 4))
def test_one_of_the_wanted_is_in_each(sizes, piece):
    case = Case(sizes, WIDTH)
    piece = min(piece, len(sizes) - 1)
    wanted = case.counts.field(piece)
    every, _ = contents(case.layers, case.floor, WIDTH, 0, 10**6)
    with_it, _ = contents(case.layers, case.floor, WIDTH, 0, 10**6, wanted=wanted)
    assert with_it == [content for content in every if content[1] & wanted]
