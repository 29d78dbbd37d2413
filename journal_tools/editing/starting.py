"""New journals and new records, made from skeletons that explain themselves."""

from __future__ import annotations

import os
from pathlib import Path

from journal_tools.records.journal import KINDS
from journal_tools.records.readers import NAME, slug

SKELETONS = Path(__file__).parent / "skeletons"

ONE = {"warp": "warps", "yarn": "yarns", "draft": "drafts", "loom": "looms", "finish": "finishes"}
"""The word for one record, and the folder that it stands in."""


class NotStarted(Exception):
    """Nothing was made; the message says why, and what would do."""


def begin(folder: Path, title: str) -> tuple[Path, ...]:
    """Make a journal in a folder that is new or empty, and say which files were made.

    Raises NotStarted when something stands there already.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise NotStarted(f"{folder} is there already and is not empty; name a folder that is new.")
    entries = folder / "entries"
    for kind in KINDS:
        (entries / kind).mkdir(parents=True, exist_ok=True)
    made = (folder / "mkdocs.yml", entries / "journal.md", folder / ".gitignore")
    for path in made:
        _write_new(path, _skeleton(path.name.removeprefix(".")), title=_safe_title(title))
    return made


def new_record(entries: Path, word: str, name: str, title: str | None, today: str) -> Path:
    """Write the skeleton of one record and say where it is.

    word: warp, yarn, draft, loom or finish. today: as a record writes a date. Raises NotStarted for
    a name that is none, or that is taken.
    """
    if not NAME.fullmatch(name):
        near = slug(name)
        hint = f" such as {near}" if near else ""
        raise NotStarted(f'"{name}" cannot be the name of an entry: small letters, digits and hyphens{hint}.')
    path = entries / ONE[word] / f"{name}.md"
    if path.exists():
        raise NotStarted(f"{path} is there already; it is left as it is.")
    path.parent.mkdir(parents=True, exist_ok=True)
    _write_new(path, _skeleton(f"{ONE[word]}.md"), title=_safe_title(title or name.replace("-", " ").capitalize()), today=today)
    return path


def _skeleton(name: str) -> str:
    return (SKELETONS / name).read_text(encoding="utf-8")


def _safe_title(title: str) -> str:
    """A title as one line of front matter, quoted where it would not read back as typed."""
    flat = " ".join(title.split())
    plain = flat.replace(" ", "").replace("-", "").replace(",", "").replace(".", "").isalnum()
    if plain and flat[0].isalnum():
        return flat
    doubled = flat.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{doubled}"'


def _write_new(path: Path, skeleton: str, **words: str) -> None:
    """Write a file that must not be there yet."""
    text = skeleton
    for word, said in words.items():
        text = text.replace("{" + word + "}", said)
    with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o644), "w", encoding="utf-8", newline="\n") as file:
        file.write(text)
