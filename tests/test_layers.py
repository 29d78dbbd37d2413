"""Who may import whom: the partial order of the layers, by a walk of every import statement."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from tests.house import PROJECT, name_of, python_files

# Each layer, and the layers that it may import. The order is partial: drafts and ledger, or pictures
# and editing, know nothing of each other.
BELOW: dict[str, set[str]] = {
    "problems": set(),
    "quantities": set(),
    "notation": {"problems", "quantities"},
    "records": {"problems", "quantities", "notation"},
    "editing": {"problems", "quantities", "records"},
    "drafts": {"problems", "quantities", "notation"},
    "interchange": {"problems", "quantities", "notation", "drafts"},
    "ledger": {"problems", "quantities", "records"},
    "checking": {"problems", "quantities", "notation", "records", "drafts", "ledger"},
    "forecast": {"problems", "quantities", "notation", "records", "drafts", "ledger", "checking"},
    "planning": {
        *("problems", "quantities", "notation", "records", "editing", "drafts", "ledger", "checking"),
        "forecast",
    },
    "dressing": {
        *("problems", "quantities", "notation", "records", "drafts", "ledger", "checking", "planning"),
    },
    "exchange": {"problems", "quantities", "notation", "records", "editing", "drafts", "ledger", "forecast"},
    "pictures": {"problems", "quantities", "drafts"},
    "pages": {
        *("problems", "quantities", "notation", "records", "drafts", "ledger", "checking", "forecast"),
        *("planning", "dressing", "exchange", "interchange", "pictures"),
    },
    "commands": {
        *("problems", "quantities", "notation", "records", "editing", "drafts", "ledger", "checking"),
        *("forecast", "planning", "exchange", "interchange", "pictures", "pages"),
    },
    "__init__": set(),
    "__main__": {"commands"},
}
# What each part may import that is neither its own nor Python's.
OTHERS: dict[str, set[str]] = {
    "quantities": set(),
    "problems": set(),
    "notation": set(),
    "records": {"yaml"},
    "editing": {"yaml"},
    "drafts": {"numpy"},
    "interchange": set(),
    "ledger": set(),
    "checking": set(),
    "forecast": {"numpy", "scipy", "threadpoolctl"},
    "planning": set(),
    "dressing": set(),
    "exchange": {"yaml"},
    "pictures": {"numpy", "PIL", "matplotlib"},
    "pages": {"jinja2", "markdown", "markupsafe", "numpy", "PIL", "yaml"},
    "commands": {"click", "yaml"},
    "__init__": set(),
    "__main__": set(),
}
HEAVY = {"numpy", "scipy", "PIL", "matplotlib", "jinja2", "markdown", "mkdocs", "properdocs"}


def layer_of(path: Path) -> str:
    """The layer that a file of journal_tools belongs to."""
    return path.relative_to(PROJECT / "journal_tools").parts[0].removesuffix(".py")


def imports_in(path: Path, nodes: Iterator[ast.AST] | None = None) -> Iterator[tuple[int, str]]:
    """Every module that a file imports, absolute, with the line; inside functions too unless told."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    package = name_of(path).split("/")[:-1]
    for node in ast.walk(tree) if nodes is None else nodes:
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            start = package[: len(package) + 1 - node.level] if node.level else []
            module = ".".join(start + ([node.module] if node.module else []))
            yield node.lineno, module
            yield from ((node.lineno, f"{module}.{alias.name}") for alias in node.names)


def at_the_top(path: Path) -> Iterator[ast.AST]:
    """What runs when the file is imported: everything but the insides of functions and of type checks."""
    waiting: list[ast.AST] = [ast.parse(path.read_text(encoding="utf-8"))]
    while waiting:
        node = waiting.pop()
        for_types = isinstance(node, ast.If) and ast.unparse(node.test).endswith("TYPE_CHECKING")
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda) or for_types:
            continue
        yield node
        waiting.extend(ast.iter_child_nodes(node))


def test_every_part_has_its_place() -> None:
    """A new part of journal_tools says where it stands before it is used."""
    parts = {layer_of(path) for path in python_files("journal_tools/")}

    assert set() == parts - set(BELOW)
    assert set() == set(BELOW) - parts


def test_the_order_is_one() -> None:
    """What a layer may import may never import it back, by whatever way round."""
    order = list(TopologicalSorter(BELOW).static_order())  # it refuses to go in a ring

    assert order.index("problems") < order.index("records") < order.index("ledger") < order.index("pages")
    assert order.index("quantities") < order.index("drafts") < order.index("pictures") < order.index("pages")
    assert order.index("records") < order.index("editing") < order.index("commands")
    assert order.index("pages") < order.index("commands")


@pytest.mark.parametrize("layer", sorted(BELOW))
def test_imports_point_down(layer: str) -> None:
    """No part of the library imports one that stands above it, or beside it."""
    allowed = {layer, *BELOW[layer]}
    wrong = []
    for path in python_files("journal_tools/"):
        if layer_of(path) != layer:
            continue
        for line, module in imports_in(path):
            package, _, rest = module.partition(".")
            part = rest.split(".")[0]
            if package == "journal_tools" and part in BELOW and part not in allowed:
                wrong.append(f"{name_of(path)}:{line} imports {module}")

    assert [] == wrong


@pytest.mark.parametrize("layer", sorted(OTHERS))
def test_what_is_brought_in(layer: str) -> None:
    """Each part of the library brings in only the packages that it is known to need, and never MkDocs."""
    allowed = {"journal_tools", *sys.stdlib_module_names, *OTHERS[layer]}
    wrong = []
    for path in python_files("journal_tools/"):
        if layer_of(path) == layer:
            for line, module in imports_in(path):
                if module.split(".")[0] not in allowed:
                    wrong.append(f"{name_of(path)}:{line} imports {module}")

    assert [] == wrong


def test_the_plugin_is_thin() -> None:
    """The plugin knows the library, and MkDocs with its Markdown and templates, and nothing else."""
    allowed = {"jinja2", "journal_tools", "markdown", "mkdocs", "site_plugins", *sys.stdlib_module_names}
    wrong = [
        f"{name_of(path)}:{line} imports {module}"
        for path in python_files("site_plugins/")
        for line, module in imports_in(path)
        if module.split(".")[0] not in allowed
    ]

    assert [] == wrong


def test_the_starter_needs_only_python() -> None:
    """start.py runs before anything is installed, so it imports nothing but Python's own."""
    allowed = {"starter", *sys.stdlib_module_names}
    wrong = [
        f"{name_of(path)}:{line} imports {module}"
        for path in python_files("start.py", "starter/")
        for line, module in imports_in(path)
        if module.split(".")[0] not in allowed
    ]

    assert [] == wrong


@pytest.mark.parametrize("layer", ["quantities", "records", "editing", "ledger", "commands"])
def test_nothing_heavy_at_the_top(layer: str) -> None:
    """A command answers at once, because what is slow to load is loaded where it is used."""
    wrong = [
        f"{name_of(path)}:{line} imports {module}"
        for path in python_files("journal_tools/")
        if layer_of(path) == layer
        for line, module in imports_in(path, at_the_top(path))
        if module.split(".")[0] in HEAVY
    ]

    assert [] == wrong


def test_the_command_line_loads_nothing_heavy() -> None:
    """Importing the command line loads no picture, page or site builder, by whatever way round."""
    ask = "import sys, journal_tools.commands.main; print(*sorted({m.split('.')[0] for m in sys.modules}))"
    loaded = subprocess.run(
        [sys.executable, "-c", ask], cwd=PROJECT, capture_output=True, text=True, check=True
    ).stdout.split()

    assert "click" in loaded
    assert set() == HEAVY & set(loaded)
