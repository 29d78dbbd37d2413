"""Many small symmetric matrices at once, quicker than one call of LAPACK for each."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


def inverse(matrices: Floats) -> tuple[Floats, Floats]:
    """Inverses (… × K × K) and ln determinants (…) of positive definite matrices, by Gauss and Jordan."""
    left = np.array(matrices)
    log_det = np.zeros(left.shape[:-2])
    for k in range(left.shape[-1]):
        pivot = left[..., k, k].copy()
        log_det += np.log(pivot)
        row = left[..., k, :] / pivot[..., None]
        column = left[..., :, k].copy()
        left -= column[..., :, None] * row[..., None, :]
        left[..., k, :] = row
        left[..., :, k] = -column / pivot[..., None]
        left[..., k, k] = 1 / pivot
    return left, log_det


def transposed(matrices: Floats) -> Floats:
    """Each matrix turned over."""
    return np.swapaxes(matrices, -1, -2)


def applied(matrices: Floats, vectors: Floats) -> Floats:
    """Each matrix (… × K × K) times its vector (… × K)."""
    found: Floats = np.matmul(matrices, vectors[..., None])[..., 0]
    return found


def solve_for_all(matrices: Floats, right: Floats) -> Floats:
    """What each matrix (… × n × n) takes to the right side (… × n × m)."""
    found: Floats = np.asarray(np.linalg.solve(matrices, right), dtype=np.float64)
    return found


def solve_for(matrices: Floats, right: Floats) -> Floats:
    """What each matrix (… × n × n) takes to a vector (… × n)."""
    return solve_for_all(matrices, right[..., None])[..., 0]


def inverse_of(matrix: Floats) -> Floats:
    """The inverse of one matrix, or of a few."""
    found: Floats = np.asarray(np.linalg.inv(matrix), dtype=np.float64)
    return found


class Sums:
    """Adds rows up by a key: built once for the keys, used for many arrays."""

    def __init__(self, keys: Indices, many: int) -> None:
        """keys: for each row the group 0 … many − 1 that it goes to. Groups without rows sum to 0."""
        self.many = many
        self.order: Indices | None = None
        if np.any(keys[1:] < keys[:-1]):
            self.order = np.argsort(keys, kind="stable")
            keys = keys[self.order]
        self.present, self.starts = np.unique(keys, return_index=True)
        self.plain = self.order is None and len(self.present) == len(keys) == many

    def of(self, rows: Floats) -> Floats:
        """The sums (many × …) of rows (rows × …)."""
        if self.plain:
            return rows
        if self.order is not None:
            rows = rows[self.order]
        if len(self.present) == self.many:
            return np.add.reduceat(rows, self.starts, axis=0)
        sums = np.zeros((self.many, *rows.shape[1:]))
        if len(self.present):
            sums[self.present] = np.add.reduceat(rows, self.starts, axis=0)
        return sums
