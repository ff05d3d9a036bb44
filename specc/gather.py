"""Owns finding every text a garment is made of: the spec, the files it uses, the library it speaks of.

Knows nothing of where texts are kept: it asks a `World`. Knows nothing of what they mean.
"""

from __future__ import annotations

from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Protocol

from specc.diagnostics import Collector, Severity, declare
from specc.resolve import Gathered
from specc.source import DecodingFault, SourceFile
from specc.syntax import parse, tree

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic

NO_FILE = declare("SPC224", "file-not-found", Severity.ERROR, "there is no file `{path}`")
OUTSIDE = declare("SPC225", "file-outside-project", Severity.ERROR, "`{path}` lies outside the project folder")
TOO_MANY = declare("SPC226", "too-many-files", Severity.ERROR, "more than {most} files are used")
NOT_TEXT = declare("SPC109", "not-utf-8", Severity.ERROR, "`{file}` is not UTF-8 text: byte {byte} cannot be read")

# Bounds what a spec from a stranger can make us read.
MOST_FILES = 50


class World(Protocol):
    """What a compilation may see of the outside: files of the project folder and the library. Nothing else."""

    @property
    def called(self) -> str:
        """What stands before a path of the project folder where the user reads it: empty, or ending in a slash."""

    def project(self, path: str) -> bytes | None:
        """The bytes of a project file (relative path, forward slashes); None when it is not there."""

    def library(self, name: str) -> bytes | None:
        """The bytes of the library file `name`.garment; None when there is none."""

    def library_names(self) -> tuple[str, ...]:
        """The names of all library files, in order."""


def gather(source: SourceFile, world: World) -> tuple[Gathered, tuple[Diagnostic, ...]]:
    """The trees of the spec, of every file it uses, and of the library files it needs; faults in any of them."""
    say = Collector()
    spec = say.keep(parse(source))
    used = _used(spec, world, say)
    library = _library((spec, *used), world, say)
    return Gathered(spec, used, library, world.library_names()), say.diagnostics


def read(name: str, data: bytes, called: str = "") -> tuple[SourceFile, tuple[Diagnostic, ...]]:
    """The text of a file; bytes that are not UTF-8 are reported and stand as U+FFFD."""
    found = SourceFile.read(name, data, called)
    if not isinstance(found, DecodingFault):
        return found, ()
    told = NOT_TEXT.at(found.span, file=name, byte=f"0x{found.byte:02X}")
    also = f"it looks like {found.encoding}; " if found.encoding else ""
    return found.span.file, (told.help(f"{also}save the file as UTF-8"),)


def _used(spec: tree.Tree, world: World, say: Collector) -> tuple[tree.Tree, ...]:
    """The files used, each once, in the order in which they are met; a circle of uses does no harm."""
    found: dict[str, tree.Tree] = {}
    waiting = [(spec, use) for use in _uses(spec)]
    while waiting:
        owner, use = waiting.pop(0)
        path = _beside(owner.file.name, use.path.text)
        if path is None:
            said = OUTSIDE.at(use.path.span, path=use.path.text)
            say.add(said.help("copy the file into the project and use it by its relative path"))
            continue
        if path in found or path == spec.file.name:
            continue
        if len(found) >= MOST_FILES:
            say.add(TOO_MANY.at(use.span, most=MOST_FILES))
            break
        data = world.project(path)
        if data is None:
            say.add(NO_FILE.at(use.path.span, path=path).help("the path is relative to the file that uses it"))
            continue
        found[path] = say.keep(parse(say.keep(read(path, data, world.called + path))))
        waiting += [(found[path], inner) for inner in _uses(found[path])]
    return tuple(found.values())


def _uses(file: tree.Tree) -> tuple[tree.UseFile, ...]:
    return tuple(declaration for declaration in file.declarations if isinstance(declaration, tree.UseFile))


def _beside(owner: str, path: str) -> str | None:
    """The path relative to the project folder; None when it leaves the folder or is absolute."""
    if path.startswith(("/", "\\")) or ":" in path or "\\" in path or "\0" in path:
        return None
    steps: list[str] = [*PurePosixPath(owner).parent.parts]
    for step in PurePosixPath(path).parts:
        if step != "..":
            steps.append(step)
        elif steps:
            steps.pop()
        else:
            return None
    return "/".join(steps)


def _library(files: tuple[tree.Tree, ...], world: World, say: Collector) -> tuple[tree.Tree, ...]:
    """The library files whose charts, blocks or methods the texts speak of and do not declare themselves.

    A chart or block stands in a library file of its own name; methods stand in `methods.garment`.
    """
    declarations = [declaration for file in files for declaration in file.declarations]
    own = {
        (type(item).__name__.lower(), item.name.text)
        for item in declarations
        if isinstance(item, tree.Chart | tree.Block | tree.Method)
    }
    wanted: dict[str, None] = {}
    for item in declarations:
        match item:
            case tree.UseLibrary(kind=kind, name=name) if (kind.text, name.text) not in own:
                wanted.setdefault(name.text)
            case tree.Seam(method=method) | tree.Finish(method=method) if ("method", method.text) not in own:
                wanted.setdefault("methods")
    found = []
    for wish in wanted:
        data = world.library(wish)
        if data is not None:
            found.append(say.keep(parse(say.keep(read(f"library/{wish}.garment", data)))))
    return tuple(found)

