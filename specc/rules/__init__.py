"""Owns judgement: what a maker would say of the garment before the cloth is cut. One file a rule.

Knows nothing of text or of paper. `RULES` is the table of contents, in reading order; a rule is a function
`check(subject)` that yields diagnostics.
"""

from specc.rules import (
    attached_not_as_cut,
    body_does_not_pass,
    care_harsher_than_fibre,
    closure_sides_differ,
    curve_beyond_hem,
    curve_beyond_trim,
    dart_shows,
    drawstring_on_child,
    edge_unfinished,
    elastic_overheld,
    expectation_not_met,
    fastening_not_sold,
    fibre_not_named,
    fibre_too_little_to_name,
    fibres_out_of_order,
    head_does_not_pass,
    label_not_of_cloth,
    notches_apart,
    overlock_shows,
    pins_in_open_cloth,
    raw_edge_ravels,
    roll_too_short,
    seam_does_not_walk,
    stand_too_narrow,
    stitch_short_on_elastic,
)
from specc.rules.judge import Accepted, Judgement, judge
from specc.rules.subject import Subject

RULES = (
    seam_does_not_walk.check,
    notches_apart.check,
    closure_sides_differ.check,
    expectation_not_met.check,
    head_does_not_pass.check,
    body_does_not_pass.check,
    dart_shows.check,
    overlock_shows.check,
    raw_edge_ravels.check,
    edge_unfinished.check,
    attached_not_as_cut.check,
    elastic_overheld.check,
    curve_beyond_trim.check,
    curve_beyond_hem.check,
    stitch_short_on_elastic.check,
    stand_too_narrow.check,
    fastening_not_sold.check,
    roll_too_short.check,
    drawstring_on_child.check,
    pins_in_open_cloth.check,
    fibre_not_named.check,
    fibres_out_of_order.check,
    fibre_too_little_to_name.check,
    label_not_of_cloth.check,
    care_harsher_than_fibre.check,
)

__all__ = ["RULES", "Accepted", "Judgement", "Subject", "judge"]
