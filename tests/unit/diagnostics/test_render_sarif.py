"""Diagnostics as review sites read them: SARIF 2.1.0.

`SCHEMA` says what the standard says of the objects that are written, each beside its clause; anything else is
refused.
"""

from __future__ import annotations

import json
from typing import Any

import jsonschema
import pytest

from specc.diagnostics import Edit, Severity, declare
from specc.diagnostics.render_sarif import render_sarif
from specc.source import SourceFile


def shape(required: dict[str, Any], **optional: Any) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": required | optional,
        "required": list(required),
        "additionalProperties": False,
    }


STRING = {"type": "string", "minLength": 1}
FROM_ONE = {"type": "integer", "minimum": 1}
FROM_ZERO = {"type": "integer", "minimum": 0}
MESSAGE = shape({"text": STRING})  # 3.11.8
LEVEL = {"enum": ["none", "note", "warning", "error"]}  # 3.27.10
ARTIFACT = shape({"uri": {**STRING, "format": "uri-reference"}, "uriBaseId": STRING})  # 3.4
REGION = shape(  # 3.30: `startLine` makes it a text region by line and column
    {"startLine": FROM_ONE, "startColumn": FROM_ONE, "endLine": FROM_ONE, "endColumn": FROM_ONE},
    charOffset=FROM_ZERO,
    charLength=FROM_ZERO,
)
LOCATION = shape(  # 3.28
    {"physicalLocation": shape({"artifactLocation": ARTIFACT, "region": REGION})}, message=MESSAGE
)
REPLACEMENT = shape({"deletedRegion": REGION}, insertedContent=shape({"text": {"type": "string"}}))  # 3.57
CHANGE = shape(  # 3.56
    {"artifactLocation": ARTIFACT, "replacements": {"type": "array", "minItems": 1, "items": REPLACEMENT}}
)
RESULT = shape(  # 3.27
    {"ruleId": STRING, "ruleIndex": FROM_ZERO, "level": LEVEL, "message": MESSAGE},
    locations={"type": "array", "items": LOCATION},
    relatedLocations={"type": "array", "items": LOCATION, "uniqueItems": True},
    fixes={  # 3.55
        "type": "array",
        "items": shape(
            {"artifactChanges": {"type": "array", "minItems": 1, "items": CHANGE}}, description=MESSAGE
        ),
    },
)
RULE = shape(  # 3.49
    {"id": STRING},
    name=STRING,
    shortDescription=MESSAGE,
    help=shape({"text": STRING}, markdown=STRING),
    defaultConfiguration=shape({"level": LEVEL}),
)
DRIVER = shape(  # 3.19
    {"name": STRING}, version=STRING, rules={"type": "array", "items": RULE, "uniqueItems": True}
)
RUN = shape(  # 3.14; columnKind SHALL be present when there are results on text (3.14.27)
    {
        "tool": shape({"driver": DRIVER}),
        "columnKind": {"enum": ["utf16CodeUnits", "unicodeCodePoints"]},
        "results": {"type": "array", "items": RESULT},
    }
)
SCHEMA = shape({"version": {"const": "2.1.0"}, "runs": {"type": "array", "items": RUN}})  # 3.13

UNKNOWN = declare("SPC201", "unknown-name", Severity.ERROR, "there is no piece `{name}`")
LOOSE = declare("SPC599", "seam-is-loose", Severity.WARNING, "seam `{seam}` is loose")
FILE = SourceFile("my shirts/é.garment", "# 😀\nseam side: front.side + bakc.side\n")
BAD = FILE.text.index("bakc")


def log(*, name: str = "bakc") -> dict[str, Any]:
    unknown = (
        UNKNOWN.at(FILE.span(BAD, BAD + 4), "no such piece", name=name)
        .see(FILE.span(4, 8))
        .note("the block has two pieces")
        .help("did you mean `back`?")
        .with_fix("write `back`", Edit(FILE.span(BAD, BAD + 4), "back"))
    )
    written = render_sarif([unknown, LOOSE.at(None, seam="side")], [LOOSE, UNKNOWN], version="1.2.3")
    parsed: dict[str, Any] = json.loads(written)
    return parsed


def test_the_log_has_the_shape_of_the_standard() -> None:
    jsonschema.Draft202012Validator(SCHEMA).validate(log())


def test_the_rules_are_the_whole_catalogue_in_order_and_results_point_at_theirs() -> None:
    run = log()["runs"][0]
    rules = run["tool"]["driver"]["rules"]

    assert [rule["id"] for rule in rules] == ["SPC201", "SPC599"]
    assert [rules[result["ruleIndex"]]["id"] for result in run["results"]] == [
        result["ruleId"] for result in run["results"]
    ]
    assert [result["level"] for result in run["results"]] == ["error", "warning"]


def test_columns_count_code_points() -> None:
    run = log()["runs"][0]

    assert run["columnKind"] == "unicodeCodePoints"
    assert run["results"][0]["locations"][0]["physicalLocation"]["region"] == {
        "startLine": 2,
        "startColumn": 25,
        "endLine": 2,
        "endColumn": 29,
        "charOffset": BAD,
        "charLength": 4,
    }


def test_the_name_of_a_file_is_written_as_a_uri() -> None:
    location = log()["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]

    assert location == {"uri": "my%20shirts/%C3%A9.garment", "uriBaseId": "%SRCROOT%"}


def test_facts_and_cures_follow_the_message_and_the_fix_is_data() -> None:
    result = log()["runs"][0]["results"][0]
    replacement = result["fixes"][0]["artifactChanges"][0]["replacements"][0]

    assert result["message"]["text"] == (
        "there is no piece `bakc`\nnote: the block has two pieces\nhelp: did you mean `back`?"
    )
    assert replacement["deletedRegion"]["charOffset"] == BAD
    assert replacement["insertedContent"] == {"text": "back"}


def test_text_of_the_user_is_neither_a_placeholder_nor_a_link() -> None:
    """Braces are doubled (3.11.5); `[...](...)` would be a link (3.11.6)."""
    text = log(name="{0} [here](1)")["runs"][0]["results"][0]["message"]["text"]

    assert text.startswith("there is no piece `{{0}} [here] (1)`")


def test_a_diagnostic_without_a_place_has_no_location() -> None:
    assert "locations" not in log()["runs"][0]["results"][1]


def test_a_code_that_was_not_gathered_is_refused() -> None:
    with pytest.raises(ValueError, match="SPC599"):
        render_sarif([LOOSE.at(None, seam="side")], [UNKNOWN], version="1")
