"""New journals and new records, made from skeletons that explain themselves."""

from __future__ import annotations

import re
from pathlib import Path

from journal_tools.records.kinds import KINDS
from journal_tools.records.quoting import as_value, quoted
from journal_tools.records.readers import NAME, slug

SKELETONS = Path(__file__).parent / "skeletons"

ONE = {"warp": "warps", "yarn": "yarns", "draft": "drafts", "loom": "looms", "finish": "finishes"}
"""The word for one record, and the folder that it stands in."""

NO_RECORD = ("index", "readme")
"""Files beside the records that are none, and are never read as one."""


class NotStarted(Exception):
    """Nothing was made; the message says why, and what would do."""


def begin(folder: Path, title: str) -> tuple[Path, ...]:
    """Make a journal in a folder that is new or empty, and say which files were made.

    Raises NotStarted when something stands there already, or the folder cannot be written.
    """
    made = (folder / "mkdocs.yml", folder / "entries" / "journal.md", folder / ".gitignore")
    # What stands in journal.md is read as typed; mkdocs.yml would read 1984 as a number.
    titles = {"mkdocs.yml": quoted(_one_line(title)), "journal.md": as_value(_one_line(title))}
    try:
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise NotStarted(f"{folder} is there already and is not empty; name a folder that is new.")
        for kind in KINDS:
            (folder / "entries" / kind).mkdir(parents=True, exist_ok=True)
        for path in made:
            _write_new(path, _skeleton(path.name.removeprefix(".")), title=titles.get(path.name, ""))
    except OSError as error:
        raise NotStarted(f"{folder} cannot be made: {error.strerror or error}.") from error
    return made


def new_record(entries: Path, word: str, name: str, title: str | None, today: str) -> Path:
    """Write the skeleton of one record and say where it is.

    word: warp, yarn, draft, loom or finish. today: as a record writes a date. Raises NotStarted for
    a name that is none or that is taken, and where the file cannot be written.
    """
    if not NAME.fullmatch(name):
        near = slug(name)
        hint = f" such as {near}" if near else ""
        raise NotStarted(f'"{name}" cannot be the name of an entry: small letters, digits and hyphens{hint}.')
    if name in NO_RECORD:
        raise NotStarted(f"{name}.md is left for words about the folder and is no entry; choose another name.")
    path = entries / ONE[word] / f"{name}.md"
    heading = as_value(_one_line(title or name.replace("-", " ").capitalize()))
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        _write_new(path, _skeleton(f"{ONE[word]}.md"), title=heading, today=today)
    except FileExistsError:
        raise NotStarted(f"{path} is there already; it is left as it is.") from None
    except OSError as error:
        raise NotStarted(f"{path} cannot be written: {error.strerror or error}.") from error
    return path


def _skeleton(name: str) -> str:
    return (SKELETONS / name).read_text(encoding="utf-8")


def _one_line(title: str) -> str:
    """A title with single blanks; a byte that is no letter at all becomes a question mark."""
    return " ".join(title.encode("utf-8", "replace").decode("utf-8").split())


def _write_new(path: Path, skeleton: str, **words: str) -> None:
    """Write a file that must not be there yet."""
    text = re.sub(r"\{(\w+)\}", lambda found: words[found[1]], skeleton)
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
