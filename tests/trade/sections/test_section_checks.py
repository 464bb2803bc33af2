"""Every check of an edge finds the fault that it is there for."""

from fractions import Fraction as F

from calculators.trade.sections.checks import crossings, held_by, let_go, open_raw_edges, struck, torn
from calculators.trade.sections.edge import FACING, FIRST_ROW, HEM_ROW, LINING, LOWER, PIECE, SECOND_ROW, UPPER
from calculators.trade.sections.section import CrossSection


def flat() -> CrossSection:
    return CrossSection().lay(PIECE, F(0), 1, right_up=False)


def double_hem() -> CrossSection:
    return flat().fold(F(10), "left").fold(F(30), "left")


def two_pieces(right_sides_in: bool = True) -> CrossSection:
    return CrossSection().lay(LOWER, F(0), -1, right_sides_in).lay(UPPER, F(0), -1, not right_sides_in)


def test_a_turn_deeper_than_its_hem_has_a_layer_too_many():
    assert double_hem().most_layers() == 3
    assert flat().fold(F(25), "left").fold(F(45), "left").most_layers() == 4


def test_a_strip_that_passes_through_a_fold_is_found():
    folded = flat().fold(F(10), "left")
    through = CrossSection().lay("other", F(0), 1, True).layers
    assert list(crossings(CrossSection((*folded.layers[:1], *through, *folded.layers[1:]))))


def test_two_folds_at_one_place_that_pass_through_each_other_are_found():
    pieces = flat().lay(FACING, F(0), 1, True).fold(F(10), "left")
    body, other, turned_other, turned = pieces.layers
    assert list(crossings(pieces)) == []
    assert list(crossings(CrossSection((body, other, turned, turned_other))))


def test_a_row_that_is_torn_is_found():
    sewn = two_pieces().stitch(F(-10), FIRST_ROW)
    assert torn(sewn) == []
    assert torn(sewn.fold(F(-20), "right", strips=(UPPER,))) == [FIRST_ROW]


def test_a_row_beside_an_end_is_found():
    assert let_go(flat().fold(F(20), "left").stitch(F(79, 2), HEM_ROW)) == [(HEM_ROW, PIECE)]
    short = CrossSection().lay(FACING, F(0), 1, True, length=F(30))
    assert let_go(short.stitch(F(59, 2), FIRST_ROW)) == [(FIRST_ROW, FACING)]
    assert let_go(short.stitch(F(29), FIRST_ROW)) == []


def test_a_row_beyond_what_it_should_hold_holds_too_little():
    assert held_by(double_hem().stitch(F(48), HEM_ROW), HEM_ROW) == 3
    assert held_by(double_hem().stitch(F(52), HEM_ROW), HEM_ROW) == 1


def test_a_needle_that_meets_a_rod_is_found():
    casing = double_hem().put_in("rod", F(35), F(10), on=PIECE)
    assert struck(casing.stitch(F(48), HEM_ROW)) == []
    assert struck(casing.stitch(F(38), HEM_ROW)) == [(HEM_ROW, "rod")]


def test_a_fold_through_a_rod_is_found():
    casing = flat().put_in("rod", F(30), F(10), on=PIECE)
    assert list(crossings(casing.fold(F(25), "left"))) == []
    assert list(crossings(casing.fold(F(28), "left")))


def test_a_raw_edge_that_nothing_holds_down_is_open():
    assert open_raw_edges(double_hem()) == [PIECE]
    assert open_raw_edges(double_hem().stitch(F(48), HEM_ROW)) == []


def test_a_raw_edge_beyond_its_row_is_open():
    single = flat().fold(F(20), "left")
    assert open_raw_edges(single.stitch(F(30), HEM_ROW)) == [PIECE]
    assert open_raw_edges(single.neatened(PIECE).stitch(F(30), HEM_ROW)) == []


def test_a_row_that_catches_the_upper_layers_alone_shuts_nothing_in():
    assert open_raw_edges(double_hem().stitch(F(48), HEM_ROW, upper=1)) == [PIECE]


def test_a_seam_whose_second_row_is_missing_leaves_its_edges_open():
    seam = two_pieces(right_sides_in=False).stitch(F(-4), FIRST_ROW)
    turned = seam.fold(F(-4), "left", strips=(UPPER,)).fold(F(-4), "left", over=False, strips=(LOWER,))
    assert open_raw_edges(turned) == [LOWER, UPPER]
    assert open_raw_edges(turned.stitch(F(2), SECOND_ROW)) == []


def test_a_raw_edge_that_lies_just_in_a_fold_is_inside_it():
    piece = CrossSection().lay(PIECE, F(0), 1, True)
    bound = piece.lay(FACING, F(10), -1, False, length=F(20)).fold(F(0), "left", over=False)
    assert set(open_raw_edges(bound)) == {PIECE, FACING}
    assert open_raw_edges(bound.stitch(F(5), FIRST_ROW)) == [FACING]


def test_what_is_cut_off_is_no_longer_neat():
    assert open_raw_edges(flat().neatened(PIECE)) == []
    assert open_raw_edges(flat().neatened(PIECE).trim(PIECE, F(5))) == [PIECE]


def test_a_lining_that_lies_loose_is_open_and_the_hem_below_it_is_not():
    hem = double_hem().stitch(F(48), HEM_ROW)
    lined = CrossSection().lay(LINING, F(40), 1, True).over(hem)
    assert open_raw_edges(lined) == [LINING]


def test_work_turned_over_lies_in_the_other_order_and_its_edge_stays():
    work = double_hem().stitch(F(48), HEM_ROW)
    over = work.turned_over()
    assert [run.low for run in over.layers] == [run.low for run in reversed(work.layers)]
    assert not any(run.right_up == other.right_up for run, other in zip(over.layers, reversed(work.layers)))
    assert over.turned_over() == work
