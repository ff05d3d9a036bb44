"""What a garment is made of: fibres by their names and shares, labels that tell the truth of them, care."""

from __future__ import annotations

import pytest

from specc.library.fibres import fibre_called, fibres
from tests.made import codes, top

NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
HEM = "hem bottom along front.hem, back.hem by double-turned { deep 2 cm }\n"


def told(code: str, cloth: str, more: str = "") -> list[str]:
    """What is said under a code of a top in that cloth."""
    result = top(NECK + HEM + more, cloth=f"cloth stuff {{ width 150 cm; is stable; {cloth} }}\n")
    return [one.message for one in result.diagnostics if one.code.id == code]


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("cotton", "cotton"),
        ("organic cotton", "cotton"),
        ("Merino Wool", "wool"),
        ("elastane", "spandex"),
        ("nylon", "nylon"),
        ("metal fibre", "azlon"),
        ("bamboo", None),
        ("cotton jersey", None),
    ],
)
def test_a_fibre_goes_by_the_name_at_the_end(words: str, name: str | None) -> None:
    found = fibre_called(words)

    assert (found.names[0] if found else None) == name


def test_every_name_belongs_to_one_fibre_and_every_row_says_where_it_is_listed() -> None:
    names = [name.casefold() for fibre in fibres() for name in fibre.names]

    assert len(names) == len(set(names))
    assert all(fibre.lists for fibre in fibres())
    assert {fibre.tumble for fibre in fibres()} == {"no", "low", "any"}


@pytest.mark.parametrize(
    ("says", "warned"),
    [
        ("80% wool, 20% polyamide", 0),
        ("83% wool, 17% nylon", 0),
        ("83.5% wool, 16.5% nylon", 1),
        ("80% wool, 20% other fibers", 0),
        ("100% wool", 1),
        ("100% handmade", 0),
        ("wool", 0),
        ("80% wool, 20% silk", 1),
        ("80% wool", 1),
    ],
)
def test_a_label_may_be_off_by_three_parts_of_a_hundred(says: str, warned: int) -> None:
    fibres_are = "fibre 80% wool, 20% polyamide"
    label = f'label main at back.neck {{ says "{says}" }}\n'

    assert len(told("SPC583", fibres_are, label)) == warned


def test_a_label_of_one_fibre_may_be_off_by_nothing() -> None:
    label = 'label main at back.neck { says "100% wool" }\n'

    assert told("SPC583", "fibre 98% wool, 2% polyamide", label)
    assert not told("SPC583", "fibre 100% merino wool", label)


@pytest.mark.parametrize(
    ("share", "noted"), [("5% silk", 0), ("4% silk", 1), ("4% elastane", 0), ("4% spandex", 0)]
)
def test_a_fibre_under_five_per_cent_is_named_only_if_it_has_a_function(share: str, noted: int) -> None:
    rest = 100 - int(share[0])
    label = f'label main at back.neck {{ says "{rest}% cotton, {share}" }}\n'

    assert len(told("SPC582", f"fibre {rest}% cotton, {share}", label)) == noted


@pytest.mark.parametrize(
    ("fibre", "line", "warned"),
    [
        ("wool", "wash 40 C, wool", 0),
        ("wool", "wash 60 C", 1),
        ("wool", "wash 105 F", 0),
        ("wool", "wash 140 F", 1),
        ("wool", "wash do not wash", 0),
        ("wool", "bleach do not bleach", 0),
        ("wool", "bleach any", 1),
        ("wool", "bleach oxygen, when needed", 0),
        ("linen", "bleach any", 0),
        ("wool", "dry flat, do not tumble", 0),
        ("wool", "dry tumble, low", 1),
        ("acrylic", "dry tumble, low", 0),
        ("acrylic", "dry tumble, normal", 1),
        ("acrylic", "iron 110 C", 0),
        ("acrylic", "iron 150 C", 1),
        ("acrylic", "iron 150 C, not on the stuff", 0),
        ("polypropylene", "iron 110 C", 1),
        ("polypropylene", "iron do not iron", 0),
        ("linen", "iron 200 C", 0),
        ("acetate", "clean dry clean, mild", 0),
    ],
)
def test_care_is_that_of_the_weakest_fibre(fibre: str, line: str, warned: int) -> None:
    assert len(told("SPC584", f"fibre 90% cotton, 10% {fibre}", f"care {{ {line} }}\n")) == warned


def test_a_plain_garment_says_nothing_of_its_fibres() -> None:
    care = "care { wash 40 C, mild; bleach do not bleach; dry line; iron 200 C; clean do not dry clean }\n"
    result = top(
        NECK + HEM + care + 'label main at back.neck { says "100% cotton" }\n',
        cloth="cloth calico { width 150 cm; is stable; fibre 100% cotton }\n",
    )

    assert codes(result) == []


POPLIN = "cloth poplin {{ for back; width 150 cm; {} }}\n"


@pytest.mark.parametrize(
    ("front", "back", "how"),
    [
        ("shrinks 5% length, 3% width", "shrinks 3% length, 2% width", None),
        ("shrinks 5.5% length, 3% width", "shrinks 3% length, 2% width", "5.5% and 3% in length"),
        ("shrinks 3% length, 5% width", "shrinks 3% length, 1% width", "5% and 1% in width"),
        ("shrinks 5% length, 3% width", "weight 120 g/m2", None),
    ],
)
def test_cloths_in_one_seam_shrink_alike_within_two_points(front: str, back: str, how: str | None) -> None:
    said = told("SPC585", front, POPLIN.format(back))

    assert [one.partition("differently: ")[2] for one in said] == ([how] if how else [])


def test_a_lining_that_shrinks_otherwise_is_met_where_its_piece_is_sewn() -> None:
    lining = "cloth silk { for lining; width 140 cm; shrinks 1% length }\nalso cut front, back from silk\n"

    (said,) = told("SPC585", "shrinks 5% length", lining)
    assert "`stuff` and `silk` are sewn together at `shoulder`" in said


def test_what_is_declared_is_used_by_pieces_linings_and_strips() -> None:
    cloths = "cloth lawn { for bias strips; width 140 cm }\ncloth silk { for lining; width 140 cm }\n"
    strip = "trim strip { kind bias strip; cut-from lawn }\n"

    assert told("SPC591", "weight 120 g/m2", cloths + strip) == [
        "cloth `lawn` is declared and nothing is cut from it",
        "cloth `silk` is declared and nothing is cut from it",
        "trim `strip` is declared and nothing takes it",
    ]
    used = "also cut front from silk\n" + NECK.replace(
        "elastic-bound { binding edging }", "bias-bound { strip strip }"
    )
    result = top(HEM + cloths + strip + used)
    assert "SPC591" not in codes(result)


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("weight 15 g/m2", None),
        ("weight 14 g/m2", "14 g/m2 is less than a veil weighs"),
        ("weight 900 g/m2", None),
        ("weight 1400 g/m2", "1400 g/m2 is more than a heavy coating weighs"),
        ("shrinks 15% length", None),
        ("shrinks 16% width", "16% is more than even a loose knit shrinks, which is 15%"),
        ("price 1000 EUR per m", None),
        ("price 11 EUR per cm", "11.00 EUR per cm is more than the dearest cloth costs by the metre"),
        ("price 2400 JPY per m", None),
    ],
)
def test_values_far_from_what_cloth_has_look_mistaken(line: str, what: str | None) -> None:
    said = told("SPC593", line)

    assert [one.partition("mistaken: ")[2] for one in said] == ([what] if what else [])


@pytest.mark.parametrize(
    ("width", "meant"),
    [
        ("140 mm", "`140 cm`"),
        ("2 1/2 cm", None),
        ("14 cm", None),
        ("60 mm", "`60 in`"),
        ("150 in", "`150 cm`"),
    ],
)
def test_another_unit_is_proposed_where_only_one_makes_sense(width: str, meant: str | None) -> None:
    result = top(NECK + HEM, cloth=f"cloth stuff {{ width {width}; is stable }}\n")
    (said,) = (one for one in result.diagnostics if one.code.id == "SPC593")

    proposed = [cure for cure in said.helps if "is meant" in cure and cure.startswith("perhaps")]
    assert proposed == ([f"perhaps {meant} is meant"] if meant else [])
