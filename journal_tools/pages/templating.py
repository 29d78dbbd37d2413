"""From a view to the two panels around a weaver's notes, by Jinja templates that escape."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import quote

from journal_tools.pages import views
from journal_tools.pages.dressing_view import DressingView

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup

TEMPLATES = Path(__file__).parent / "templates"

View = (
    views.WarpView
    | views.YarnView
    | views.DraftView
    | views.ThingView
    | views.FrontView
    | views.ListView
    | views.PlanView
    | DressingView
)


def panels(kind: str, view: View, address: str) -> tuple[str, str]:
    """The safe HTML above and below the notes of a page.

    kind: the template's name: warp, yarn, draft, thing, front, list.
    address: the page's own, without a suffix: it tells how far up the top of the site is.
    """
    UP.prefix = "../" * address.count("/")
    page = environment().get_template(f"{kind}.html").make_module({"view": view})
    return str(page.top()), str(page.bottom())  # type: ignore[attr-defined]


class Up:
    """The way from a page up to the top of the site: `up` in every template.

    It is one for all templates and set anew for each page. Macros that needed a page's own context
    would be read again for every page, which costs half of what filling them does.
    """

    prefix = ""

    def __html__(self) -> str:
        return self.prefix


UP = Up()


@cache
def environment() -> Environment:
    """The templates, with everything escaped and a missing name an error."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    made.filters["address"] = address_part
    made.filters["coded"] = coded
    made.globals["tape"] = tape_part
    made.globals["up"] = UP
    return made


def address_part(address: str) -> str:
    """A site address as it stands in a link: anything that is no address is quoted away."""
    return quote(address, safe="/#?=&%")


def coded(text: str) -> Markup:
    """A sentence in which what stands between backticks is code, all else as it was typed."""
    from markupsafe import Markup, escape

    parts = text.split("`")
    whole = len(parts) if len(parts) % 2 else len(parts) - 1  # the last backtick of an odd number is only a sign
    said = [Markup("<code>{}</code>").format(part) if n % 2 else escape(part) for n, part in enumerate(parts[:whole])]
    return Markup("").join(said) + escape("".join(f"`{part}" for part in parts[whole:]))


def tape_part(tape: views.Tape) -> Markup:
    """The drawn tape of a view, safe to stand in a page."""
    from markupsafe import Markup

    from journal_tools.pictures.tape import tape_svg

    drawn = tape_svg(tape.bars, direction=tape.direction, unit=tape.unit, title=tape.title)
    return Markup(drawn)
