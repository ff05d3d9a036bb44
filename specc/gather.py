"""Owns finding every text a garment is made of: the spec, the files and drawings it uses, the library.

Knows nothing of where texts are kept: it asks a `World`. Knows nothing of what they mean.
"""

from __future__ import annotations

from enum import StrEnum
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, NamedTuple, Protocol

from specc.diagnostics import Collector, Severity, declare
from specc.library.methods import file_of
from specc.names import did_you_mean
from specc.resolve import Gathered
from specc.resolve.codes import out_of_range, wrong_value
from specc.source import DecodingFault, SourceFile
from specc.syntax import parse, tree
from specc.syntax.drawing import read_drawing

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.diagnostics import Diagnostic

NO_FILE = declare("SPC224", "file-not-found", Severity.ERROR, "there is no file `{path}`")
OUTSIDE = declare(
    "SPC225", "file-outside-project", Severity.ERROR, "`{path}` lies outside the project folder"
)
UNREADABLE = declare("SPC226", "file-unreadable", Severity.ERROR, "`{path}` cannot be read: {reason}")
NOT_TEXT = declare(
    "SPC109", "not-utf-8", Severity.ERROR, "`{file}` is not UTF-8 text: byte {byte} cannot be read"
)

# Bounds what a spec from a stranger can make us read.
MOST_FILES = 50


class Refused(StrEnum):
    """Why a file of the project is not to be had."""

    MISSING = "it is not there"
    OUTSIDE = "it lies outside the project folder"
    FOLDER = "it is a folder"
    NO_FILE = "it is no plain file"
    TOO_LARGE = "it is too large for a text that people write"
    FORBIDDEN = "the system does not allow it"


class World(Protocol):
    """What a compilation may see of the outside: files of the project folder and of the library."""

    @property
    def called(self) -> str:
        """What the user reads before a path of the project folder: nothing, or what ends in a slash."""

    def project(self, path: str) -> bytes | Refused:
        """The bytes of a project file (relative path, forward slashes), or why they are not to be had."""

    def project_names(self, folder: str, ending: str) -> tuple[str, ...]:
        """The names with that ending in a folder of the project, in order; none when there is no folder."""

    def library(self, name: str) -> bytes | None:
        """The bytes of the library file `name`.garment; None when there is none."""

    def library_names(self) -> tuple[str, ...]:
        """The names of all library files, in order."""


def gather(source: SourceFile, world: World) -> tuple[Gathered, tuple[Diagnostic, ...]]:
    """The trees of the spec, of the files it uses, of the library files it needs; faults in any of them."""
    say = Collector()
    spec = say.keep(parse(source))
    files = _Files(spec, world, say)
    library = _library((spec, *files.found), world, say)
    return Gathered(spec, files.found, library, files.complete, files.drawings), say.diagnostics


def read(name: str, data: bytes, called: str = "") -> tuple[SourceFile, tuple[Diagnostic, ...]]:
    """The text of a file; bytes that are not UTF-8 are reported and stand as U+FFFD."""
    found = SourceFile.read(name, data, called)
    if not isinstance(found, DecodingFault):
        return found, ()
    told = NOT_TEXT.at(found.span, file=name, byte=f"0x{found.byte:02X}")
    also = f"it looks like {found.encoding}; " if found.encoding else ""
    return found.span.file, (told.help(f"{also}save the file as UTF-8"),)


class _Kind(NamedTuple):
    """A kind of file: the statement that names one, how its name ends, an example, what is in it."""

    statement: str
    ending: str
    example: str
    content: str


_TEXT = _Kind("use", ".garment", "cloths.garment", "text in the language")
_DRAWING = _Kind("outline from", ".svg", "front.svg", "a drawing")


class _Files:
    """The files used, each once and behind those that it uses itself; a circle of uses does no harm.

    `complete`: whether all of them could be had. `drawings` are those of pieces, by where their names stand.
    """

    def __init__(self, spec: tree.Tree, world: World, say: Collector) -> None:
        self.complete = True
        self.drawings: dict[tree.Text, tree.Drawing] = {}
        self._world = world
        self._say = say
        self._found: list[tree.Tree] = []
        self._asked = {spec.file.name}
        self._drawn: dict[str, tree.Drawing | None] = {}
        self._take_uses(spec)
        for file in (*self._found, spec):
            self._take_drawings(file)

    def _take_uses(self, owner: tree.Tree) -> None:
        for use in owner.declarations:
            path = self._path(owner, use.path, _TEXT) if isinstance(use, tree.UseFile) else None
            if not isinstance(use, tree.UseFile) or path is None or path in self._asked:
                continue
            source = self._source(path, use.path, _TEXT)
            if source is not None:
                file = self._say.keep(parse(source))
                self._take_uses(file)
                self._found.append(file)

    def _take_drawings(self, owner: tree.Tree) -> None:
        for outline in _outlines(owner):
            path = self._path(owner, outline.path, _DRAWING)
            if path is None:
                continue
            if path not in self._drawn:
                source = self._source(path, outline.path, _DRAWING)
                self._drawn[path] = None if source is None else self._say.keep(read_drawing(source))
            drawing = self._drawn[path]
            if drawing is None:
                self.complete = False
            else:
                self.drawings[outline.path] = drawing

    @property
    def found(self) -> tuple[tree.Tree, ...]:
        """Their trees."""
        return tuple(self._found)

    def _source(self, path: str, named: tree.Text, kind: _Kind) -> SourceFile | None:
        """The text of a file of the project; None when it is not to be had, which is reported."""
        if len(self._asked) > MOST_FILES:
            if self.complete:
                bounds = f"at most {MOST_FILES}"
                told = out_of_range(named.span, "the number of files used", bounds, found="more")
                self._say.add(told.help("put what belongs together into one file"))
            self.complete = False
            return None
        self._asked.add(path)
        data = self._world.project(path)
        if isinstance(data, Refused):
            self._tell(data, named, path, kind)
            return None
        source, faults = read(path, data, self._world.called + path)
        if faults:  # what stands in the place of such bytes would only be told once more
            self._say.add(*faults)
            self.complete = False
            return None
        return source

    def _path(self, owner: tree.Tree, named: tree.Text, kind: _Kind) -> str | None:
        """The path of the file in the project folder; None when it has none, which is reported."""
        span, written = named.span, named.text
        path = _beside(owner.file.name, written)
        if not written.strip():
            self._say.add(wrong_value(span, kind.statement.split()[0], "the path of a file"))
        elif path is None:
            self._say.add(OUTSIDE.at(span, path=written).help(_INSIDE))
        elif "\\" in written:
            told = NO_FILE.at(span, path=written)
            self._say.add(
                told.help(f'folders end in `/`: `{kind.statement} "{written.replace(chr(92), "/")}"`')
            )
        else:
            return path
        self.complete = False
        return None

    def _tell(self, refused: Refused, named: tree.Text, path: str, kind: _Kind) -> None:
        """Report a file that is not to be had."""
        self.complete = False
        span, written = named.span, named.text
        if refused is Refused.OUTSIDE:
            told = OUTSIDE.at(span, path=written).note("it is a link that leads out of the folder")
            self._say.add(told.help(_INSIDE))
        elif refused is Refused.MISSING:
            folder, _, name = path.rpartition("/")
            before = written.removesuffix(name)
            names = tuple(f"{before}{other}" for other in self._world.project_names(folder, kind.ending))
            ended = f"{written}{kind.ending}"
            near = f"did you mean `{ended}`?" if ended in names else did_you_mean(written, names)
            cure = f"write the path from the file that uses it, with its ending: `{kind.example}`"
            told = NO_FILE.at(span, path=written).help(near or cure)
            self._say.add(
                told if path == written else told.note(f"looked for as `{path}` in the project folder")
            )
        else:
            told = UNREADABLE.at(span, path=written, reason=str(refused))
            self._say.add(told.help(f"name a file of {kind.content}, such as `{kind.example}`"))


_INSIDE = "copy the file into the project and use it by its relative path"


def _outlines(owner: tree.Tree) -> Iterator[tree.Outline]:
    """The drawings that pieces of a file are taken from."""
    for item in owner.declarations:
        inner = item.body if isinstance(item, tree.Block) else (item,)
        for piece in inner:
            if isinstance(piece, tree.Piece):
                yield from (one for one in piece.body if isinstance(one, tree.Outline))


def _beside(owner: str, path: str) -> str | None:
    """The path relative to the project folder; None when it leaves the folder or is absolute."""
    if path.startswith(("/", "\\")) or ":" in path or "\0" in path:
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

    A chart or block stands in a library file of its own name; methods stand together by kind: see `file_of`.
    Where one is not to be had, all are read, so that what there is can be named.
    """
    declarations = [declaration for file in files for declaration in file.declarations]
    own = _declared(declarations)
    wanted: dict[tuple[str, str], str | None] = {}
    for item in declarations:
        match item:
            case tree.UseLibrary(kind=kind, name=name):
                wanted[kind.text, name.text] = name.text
            case tree.ExpectWithin(chart=chart):
                wanted["chart", chart.text] = chart.text
            case (
                tree.Seam(method=method)
                | tree.Finish(method=method)
                | tree.Closure(method=method)
                | tree.SewOn(method=method)
            ):
                wanted["method", method.text] = file_of(method.text)
            case tree.Catch(method=tree.Word() as method):
                wanted["method", method.text] = file_of(method.text)
    wished = {name for key, name in wanted.items() if key not in own}
    wishes = [name for name in world.library_names() if name in wished]
    found = _read_library(wishes, world, say)
    there = own | _declared([declaration for file in found for declaration in file.declarations])
    kinds = {kind for kind, _ in wanted}
    if any(isinstance(item, tree.Piece) for item in declarations):
        kinds |= {"chart", "block"}  # pieces on paper need neither
    if wanted.keys() <= there and {"chart", "block"} <= kinds:
        return found
    others = (name for name in world.library_names() if name not in wishes)
    return (*found, *_read_library(others, world, say))


def _read_library(names: Iterable[str], world: World, say: Collector) -> tuple[tree.Tree, ...]:
    """The trees of those library files that there are."""
    return tuple(
        say.keep(parse(say.keep(read(f"library/{name}.garment", data))))
        for name in names
        if (data := world.library(name)) is not None
    )


def _declared(declarations: list[tree.Declaration]) -> set[tuple[str, str]]:
    return {
        (type(item).__name__.lower(), item.name.text)
        for item in declarations
        if isinstance(item, tree.Chart | tree.Block | tree.Method)
    }
