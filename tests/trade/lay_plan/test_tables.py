"""Tables held in one large number: the same as lists, number by number, and the same plans whichever way tables are
kept."""

from dataclasses import replace
from unittest.mock import patch

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.trade.lay_plan.solving import unconstrained_recursion, width_tables
from calculators.trade.lay_plan.solving.normal_patterns import NormalPatterns
from calculators.trade.lay_plan.solving.packed_fields import PackedFields
from calculators.trade.lay_plan.solving.solvers import solve
from calculators.trade.lay_plan.solving.unconstrained_recursion import UnconstrainedRecursion
from tests.trade.lay_plan.small_tasks import small_tasks

TABLES = st.integers(1, 40).flatmap(
    lambda count: st.lists(st.lists(st.integers(0, 2**31 - 1), min_size=count, max_size=count), min_size=2, max_size=4)
)
ITEMS = st.lists(st.tuples(st.integers(1, 12), st.integers(0, 2**26), st.integers(1, 5)), min_size=1, max_size=5)


def packed(fields, table):
    return sum(number << (fields.bits * field) for field, number in enumerate(table))


@pytest.mark.parametrize("most", [2**31 - 1, 2**60])
@given(tables=TABLES)
def test_the_largest_field_by_field(most, tables):
    fields = PackedFields(len(tables[0]), most)
    assert [max(column) for column in zip(*tables)] == list(
        fields.listed(fields.largest(packed(fields, table) for table in tables))
    )
    one, other = tables[:2]
    assert list(map(max, one, other)) == list(fields.listed(fields.larger(packed(fields, one), packed(fields, other))))


@given(ITEMS, st.integers(1, 40))
def test_knapsacks_are_the_same_in_lists(items, limit):
    positions = NormalPatterns([(size, copies) for size, _, copies in items], limit)
    kept = [width_tables.InFields(positions, 2**31 - 1), width_tables.InLists(positions)]
    tables = [each.nothing for each in kept]
    for size, value, copies in items:
        tables = [each.with_item(table, size, value, copies) for each, table in zip(kept, tables)]
    in_fields, in_lists = (list(each.listed(table)) for each, table in zip(kept, tables))
    assert in_fields == in_lists


@given(st.sets(st.integers(1, 30), max_size=8), st.integers(31, 35))
def test_holding_rises_at_its_points_alone(points, count):
    fields, points = PackedFields(count, 1000), sorted({0, *points})
    rising = [10 * field if field >= (points + [count])[1] else 0 for field in range(count)]
    held = list(fields.listed(fields.holding(points)(packed(fields, rising))))
    assert held == [rising[max(point for point in points if point <= field)] for field in range(count)]


@given(small_tasks(stages=(None,), first_cuts=("any",)))
def test_rows_in_fields_lie_between_true_plans_and_lists(task):
    """Where quantities leave holes among the reachable lengths, fields may bound more closely than lists, never
    less."""
    recursion = UnconstrainedRecursion(task)
    assume(recursion.ways)
    values = [piece.worth for piece in task.pieces]
    in_fields = [list(row) for row in recursion._rows_in_fields(values, 2**20)]
    in_lists = list(recursion._rows_in_lists(values))
    assert all(a <= b for one, other in zip(in_fields, in_lists) for a, b in zip(one, other))
    *_, last = solve(task)
    assert last.result <= in_fields[-1][-1]


@settings(max_examples=40)
@given(small_tasks(stages=(2, 3, None)))
def test_the_same_value_whichever_way_tables_are_kept(task):
    task = task if task.stages else replace(task, first_cut="any")
    *_, in_fields = solve(task)
    with patch.object(width_tables, "DENSE", 0), patch.object(unconstrained_recursion, "DENSE", 0):
        *_, in_lists = solve(task)
    assert in_fields.proven and in_lists.proven
    assert in_fields.result == in_lists.result
