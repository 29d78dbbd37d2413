"""A file replaced whole: it holds the old bytes or the new ones, at every moment."""

from __future__ import annotations

import contextlib
import os
import stat
import tempfile
from pathlib import Path


def replace_bytes(path: Path, old: bytes, new: bytes) -> None:
    """Put `new` in the place of a file that holds `old`, with the file's mode and owner kept.

    Raises OSError when the file cannot be written, or no longer holds `old`: someone else has
    written it meanwhile, and their words must not be lost. The file is then as it was.
    """
    before = path.stat()
    if not os.access(path, os.W_OK):
        raise PermissionError(None, "it may not be written")
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".tmp")
    fresh = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(new)
            stream.flush()
            os.fsync(stream.fileno())
        fresh.chmod(stat.S_IMODE(before.st_mode))
        if hasattr(os, "chown"):
            with contextlib.suppress(PermissionError):
                os.chown(fresh, before.st_uid, before.st_gid)
        if path.read_bytes() != old:
            raise OSError(None, "it was changed by something else meanwhile")
        fresh.replace(path)
    except BaseException:
        fresh.unlink(missing_ok=True)
        raise
    _sync_folder(path.parent)


def _sync_folder(folder: Path) -> None:
    """Let the new name outlive a power cut, where the system can."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
