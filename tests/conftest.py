"""Owns what every test stands on: repeatable examples, a fixed clock, no network, and golden files."""

from __future__ import annotations

import os
import socket
from pathlib import Path
from typing import TYPE_CHECKING

import hypothesis
import pytest

from tests.goldens import Golden

if TYPE_CHECKING:
    from collections.abc import Iterator

ACCEPTED = "accepted"

hypothesis.settings.register_profile(
    "specc",
    derandomize=True,
    max_examples=60,
    deadline=None,
    # A slow machine is no fault of the program.
    suppress_health_check=[hypothesis.HealthCheck.too_slow],
)
hypothesis.settings.load_profile("specc")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--update",
        action="store_true",
        help="write what the program gives into the golden files chosen with -k, and show what changed",
    )


def pytest_configure(config: pytest.Config) -> None:
    if not config.getoption("--update"):
        return
    if os.environ.get("CI"):
        raise pytest.UsageError("--update is for people, who read what they accept: not where CI is set")
    if not config.getoption("keyword"):
        raise pytest.UsageError("--update needs -k: accept one case at a time")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    accepted = [
        str(change)
        for report in terminalreporter.getreports("passed")
        for name, change in report.user_properties
        if name == ACCEPTED and report.when == "call"
    ]
    if accepted:
        terminalreporter.section("accepted; read it before you commit it")
        terminalreporter.write("\n".join(accepted))


@pytest.fixture(scope="session")
def root() -> Path:
    """The folder of the project."""
    return Path(__file__).resolve().parent.parent


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Golden:
    """Compares a text with a golden file, or writes it there with --update."""
    return Golden(
        update=bool(request.config.getoption("--update")),
        accepted=lambda change: request.node.user_properties.append((ACCEPTED, change)),
    )


@pytest.fixture(autouse=True)
def _fixed_clock(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "0")
    monkeypatch.delenv("FORCE_COLOR", raising=False)


@pytest.fixture(autouse=True, scope="session")
def _no_network() -> Iterator[None]:
    """Nothing is fetched: to reach for another machine is a failure."""

    def refuse(*_: object, **__: object) -> None:
        raise RuntimeError("a test reached for the network")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(socket.socket, "connect", refuse)
        patch.setattr(socket.socket, "connect_ex", refuse)
        patch.setattr(socket, "getaddrinfo", refuse)
        yield
