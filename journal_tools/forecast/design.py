"""How the groups of a journal touch its columns, and quick ways from one to the other.

Every warp adds S x x' to a great matrix over the effects, and asks x C x' back from its inverse. Each
pair of columns that meet in some warp has one block there, so both are sums over a list of meetings
that is made once.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.columns import BLOCKS, Columns, columns_of, touched
from journal_tools.forecast.rows import Rows
from journal_tools.forecast.small import Floats, Indices, Sums, transposed


@dataclass(frozen=True)
class Design:
    """The design of a journal of G groups.

    column, share: what each group touches, padded with the last column + 1 and 0 (G × q). cell_a,
    cell_b: groups of one warp, in every order. mirror: the cell with a and b turned round.
    """

    columns: Columns
    column: Indices
    share: Floats
    cell_a: Indices
    cell_b: Indices
    mirror: Indices
    by_pair: Sums
    by_cell: Sums
    by_column: Sums
    meeting_cell: Indices
    meeting_share: Floats
    meeting_pair: Indices
    half_share: Floats
    pair_a: Indices
    pair_b: Indices
    to_lower: tuple[Indices, Indices]
    from_pair: Indices

    def effects(self, real: Floats) -> Floats:
        """x'u of each group (G × K) from effects in real units (many)."""
        padded = np.append(real, 0.0)
        by_column = np.vstack([padded[self.columns.place], np.zeros(self.columns.place.shape[1])])
        found: Floats = np.matmul(self.share[:, None, :], by_column[self.column])[:, 0]
        return found

    def gathered(self, of_groups: Floats) -> Floats:
        """Sum of x ⊗ v (many × …) of vectors v, one a group (G × K × …)."""
        shape = (1,) * (of_groups.ndim - 1)
        rows = self.share.reshape(*self.share.shape, *shape) * of_groups[:, None]
        sums = self.by_column.of(rows.reshape(self.share.size, *of_groups.shape[1:]))[:-1]
        return sums[self.columns.place >= 0]

    def gram(self, of_cells: Floats) -> Floats:
        """Blocks of sum S ⊗ x x' over the pairs of columns (K × K × pairs), from S of each cell.

        Number by number of the K × K: a row of them at a time is too long for the processor's cache. Where
        no warp has two groups, S is symmetric and so are its sums.
        """
        steps = of_cells.shape[-1]
        flat = np.ascontiguousarray(of_cells.transpose(1, 2, 0))
        blocks = np.empty((steps, steps, len(self.pair_a)))
        meeting = np.empty(len(self.meeting_cell))
        symmetric = len(self.cell_a) == len(self.column)
        for a in range(steps):
            for b in range(a if symmetric else 0, steps):
                np.take(flat[a, b], self.meeting_cell, out=meeting, mode="clip")
                meeting *= self.meeting_share
                blocks[a, b] = np.add.reduceat(meeting, self.by_pair.starts) if len(meeting) else 0.0
                if symmetric:
                    blocks[b, a] = blocks[a, b]
        return blocks

    def spread(self, of_pairs: Floats) -> Floats:
        """x C x' of each cell (cells × K × K), from the blocks of C of each pair (K × K × pairs)."""
        steps = len(of_pairs)
        once = np.empty((len(self.cell_a), steps, steps))
        meeting = np.empty(len(self.meeting_pair))
        for a in range(steps):
            for b in range(steps):
                np.take(of_pairs[a, b], self.meeting_pair, out=meeting, mode="clip")
                meeting *= self.half_share
                once[:, a, b] = self.by_cell.of(meeting)
        return once + transposed(once)[self.mirror]


def design_of(rows: Rows) -> Design:
    """Lay out the design of a journal."""
    tells = np.zeros((len(rows.kinds), rows.steps))
    informed = np.diagonal(rows.information, axis1=1, axis2=2) > 0
    np.maximum.at(tells, rows.cell_group, informed[rows.cell_class].astype(float))
    columns = columns_of(rows.kinds, tells, rows.direction)
    none = len(columns.names)
    touches = [touched(kind, columns, columns.undated) for kind in rows.kinds]
    wide = max((len(one) for one in touches), default=0)
    column = np.full((len(touches), wide), none, dtype=np.intp)
    share = np.zeros((len(touches), wide))
    for group, one in enumerate(touches):
        placed = sorted((columns.index[name], part) for name, part in one.items())
        column[group, : len(placed)] = [name for name, _ in placed]
        share[group, : len(placed)] = [part for _, part in placed]
    cell_a, cell_b = np.array(
        [(a, b) for mine in _together(rows) for a in mine for b in mine], dtype=np.intp
    ).reshape(-1, 2).T  # fmt: skip
    at = {pair: number for number, pair in enumerate(zip(cell_a.tolist(), cell_b.tolist(), strict=True))}
    mirror = np.array([at[b, a] for a, b in at], dtype=np.intp)
    a, b = column[cell_a][:, :, None], column[cell_b][:, None, :]
    cell, i, j = np.nonzero((a <= b) & (a < none) & (b < none))
    first, second = column[cell_a[cell], i], column[cell_b[cell], j]
    weight = share[cell_a[cell], i] * share[cell_b[cell], j]
    pairs, pair = np.unique(first * (none + 1) + second, return_inverse=True)
    pair_a, pair_b = pairs // (none + 1), pairs % (none + 1)
    by_pair = Sums(pair, len(pairs))
    order = by_pair.order if by_pair.order is not None else np.arange(len(pair))
    by_pair.order = None  # the meetings are put in that order here, once
    lower, source = _targets(columns, pair_a, pair_b)
    return Design(
        columns=columns,
        column=column,
        share=share,
        cell_a=cell_a,
        cell_b=cell_b,
        mirror=mirror,
        by_pair=by_pair,
        by_cell=Sums(cell, len(cell_a)),
        by_column=Sums(column.ravel(), none + 1),
        meeting_cell=cell[order],
        meeting_share=weight[order],
        meeting_pair=pair,
        half_share=np.where(first == second, 0.5, 1.0) * weight,
        pair_a=pair_a,
        pair_b=pair_b,
        to_lower=(lower, source),
        from_pair=_sources(columns, pair_a, pair_b),
    )


def _together(rows: Rows) -> list[list[int]]:
    """The groups of each warp."""
    found: list[list[int]] = [[] for _ in rows.warps]
    for group, warp in enumerate(rows.warp_of.tolist()):
        found[warp].append(group)
    return found


def _targets(columns: Columns, pair_a: Indices, pair_b: Indices) -> tuple[Indices, Indices]:
    """Where in the flat great matrix the numbers of the pairs' blocks go, and which numbers those are.

    Below the diagonal once; among the years, whose rows and columns are summed up, on both sides.
    """
    n = columns.many
    rows = columns.place[pair_b][:, None, :]  # the later column: further down
    across = columns.place[pair_a][:, :, None]
    down, right = np.broadcast_arrays(rows, across)
    # the blocks' numbers stand as K × K × pairs
    source = np.arange(down.size).reshape(*down.shape[1:], -1).transpose(2, 0, 1)
    good = (down >= 0) & (right >= 0)
    target = down * n + right
    walk = columns.block_of == BLOCKS.index("year")
    both = good & walk[down] & walk[right] & (pair_a != pair_b)[:, None, None]
    other = right * n + down
    return np.concatenate([target[good], other[both]]), np.concatenate([source[good], source[both]])


def _sources(columns: Columns, pair_a: Indices, pair_b: Indices) -> Indices:
    """Where in the flat great matrix, with one 0 after its end, the numbers of each pair stand (K × K × pairs)."""
    n = columns.many
    down, right = np.broadcast_arrays(columns.place[pair_a][:, :, None], columns.place[pair_b][:, None, :])
    return np.where((down >= 0) & (right >= 0), down * n + right, n * n).transpose(1, 2, 0)
