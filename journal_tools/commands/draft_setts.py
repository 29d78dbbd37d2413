"""The setts that floats are measured at: as they were typed, else as an interchange file spaces its threads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from journal_tools.commands.draft_changes import CHANGES

if TYPE_CHECKING:
    from journal_tools.commands.draft_found import Found
    from journal_tools.quantities.density import PerUnit


@dataclass(frozen=True)
class Setts:
    """Finished ends and picks to the metre, where they are known. by_file: whether the file's spacing says them."""

    ends_per_m: float | None
    picks_per_m: float | None
    by_file: bool = False

    def sentences(self, unit: PerUnit) -> Iterator[str]:
        """Where they come from, if not from what was typed."""
        if not self.by_file or not self.ends_per_m or not self.picks_per_m:
            return
        from journal_tools.quantities import show_density

        ends, picks = (show_density(each, unit) for each in (self.ends_per_m, self.picks_per_m))
        yield f"The file spaces its threads at {ends} and {picks}: floats are measured so; --sett has another."

    def as_json(self) -> Mapping[str, object]:
        """Plain values."""
        come_from = "file" if self.by_file else "typed" if self.ends_per_m else None
        return {"ends_per_m": self.ends_per_m, "picks_per_m": self.picks_per_m, "setts_from": come_from}


def setts(found: Found, changes: Sequence[str], sett: float | None, beat: float | None) -> Setts:
    """Those that hold for the draft as it has been changed. sett, beat: as typed, to the metre."""
    if sett is not None:
        return Setts(sett, beat or sett)
    read = found.read
    ends, picks = (read.ends_per_m, read.picks_per_m) if read is not None else (None, None)
    if sum(CHANGES[name].exchanges for name in changes) % 2:
        ends, picks = picks, ends
    by_file = bool(ends or picks)
    return Setts(ends or picks or beat, beat or picks or ends, by_file)
