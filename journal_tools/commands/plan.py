"""`tenterhook plan`: the next warp, from the sizes wanted."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import tell, working

if TYPE_CHECKING:
    from journal_tools.editing.change import Value
    from journal_tools.exchange.new_record import NewRecord
    from journal_tools.planning.planned import Plan
    from journal_tools.planning.wants import Asked
    from journal_tools.records import Journal, Warp

WANTED = {
    "yarn": "The yarn of warp and weft.",
    "weft": "The weft yarn, where it is another.",
    "weave": "The weave.",
    "draft": "The draft's name.",
    "order": "The colours of the warp, such as `20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone`.",
    "floating": "The yarn or colour of floating selvedges.",
    "sett": "Ends to the inch or centimetre, such as 20 or 20/in.",
    "reed": "The reed, where it is to be this one.",
    "beat": "Picks to the inch or centimetre on the loom.",
    "loom": "The loom, by its name or its title.",
    "finish": "The finishing recipe.",
    "hem": "The finished depth of the hem, such as `1 in`; what is turned under is --turn.",
    "turn": "What is turned under inside the hem, at each hemmed edge, such as `3/8 in`; nothing where it is not said.",
    "fringe": "Warp for the fringes, such as `4 in each end`.",
    "piece": "What a piece is called, such as towel.",
    "count": "How many pieces.",
    "made-up": "The size wanted, made up, width x length, such as `18 x 27`.",
    "washed": "The size wanted, washed, where nothing is hemmed.",
}
"""Options that describe a warp that has no record yet."""

DOUBLED = (
    "For firm edges: so many extra ends at each side, each sleyed into a dent beside its neighbour. The cloth is no"
    " wider for them; they are counted among the ends."
)

WOUND = {"order": "order", "floating": "floating_selvedges"}
"""Those of them that a record has under `warp:`."""


def _wanted_options(command: Any) -> Any:
    for name, words in reversed(WANTED.items()):
        command = click.option(f"--{name}", default="", metavar="WORDS", help=words)(command)
    return command


@click.command()
@click.argument("name")
@_wanted_options
@click.option("--least", default="", metavar="LENGTH", help="The shortest piece that will do.")
@click.option("--sample", default="", metavar="LENGTH", help="A sample of this woven length, cut off and washed first.")
@click.option("--gap", default="", metavar="LENGTH", help="Warp between two pieces.")
@click.option("--doubled", type=click.IntRange(0, 20), default=0, help=DOUBLED)
@click.option("--write", is_flag=True, help="Write the plan into the record, or make the record; asks first.")
@click.option("--anyway", is_flag=True, help="Write over what was planned, or what cannot be woven so, unasked.")
@journal_option
@click.option("--json", "as_json", is_flag=True, help="Every figure with its unit, its mean and its range.")
@click.pass_context
def command(
    context: click.Context,
    /,
    name: str,
    least: str,
    sample: str,
    gap: str,
    doubled: int,
    write: bool,
    anyway: bool,
    journal: Path | None,
    as_json: bool,
    **wanted: str,
) -> None:
    """Plan a warp: from its record's `plan:`, or from options where it has no record yet.

    Says what the figures rest on, then what hands do: width in the reed, dents, ends and sley; the length
    to weave under tension and its picks; the warp inch by inch; yarn, cones, cost and hours; what to
    expect nine times in ten, and the risk of coming up short. What the loom cannot do comes first.

    Once a sample or a piece of the warp was measured, the reed stays as it is sleyed, the figures take that
    cloth in, and what they were before is told beside them.

    With --write width in the reed, size on the loom and picks go into the record's plan, and a warp
    without a record gets one; plan again whenever the record has changed. It asks before it writes over
    planned figures, or writes what cannot be woven so; where nobody can answer, --anyway says yes. With --json:

    \b
      limits      what the loom and the yarn cannot do
      stretches   reed, sley, sett, dents, ends, picks, take-up, sample; for each of its pieces what to weave,
                  and mm, low, high (nine in ten) and worst of the batch of width and length, losses, risk;
                  before_this_warp_was_seen: the same without what was measured of this very warp
      lines       where each millimetre of warp goes; warp_mm, wind_mm, and wind_long_mm in the long case
      yarns       grams by colour, on hand, short, put-ups to buy, cost
      hours       at the pace of past warps

    Lengths are in mm, weights in g, losses and chances are fractions. Exit status 1 when there is
    nothing to plan by.

    \b
    For example:
      tenterhook plan tideline-towels-again
      tenterhook plan gull-towels --yarn cottolin-22-2 --weave "plain weave" --sett 24 \\
          --piece towel --count 4 --made-up "18 x 27" --hem "1 in" --write
    """
    place = find(journal)
    said = {key.replace("-", "_"): value.strip() for key, value in wanted.items() if value.strip()}
    with working("Learning from your warps"):
        from journal_tools.records import read_journal

        read = read_journal(place.entries)
        warp, new = _warp(context, read, name, said)
        both = dataclasses.replace(read, warps={**read.warps, warp.name: warp})
        plan = _planned(context, both, warp, _asked(read, least, sample, gap, doubled))
    if as_json:
        from journal_tools.planning.told import as_json as told

        click.echo(json.dumps(told(plan), indent=2, ensure_ascii=False))
    else:
        from journal_tools.commands.plan_shows import show

        show(plan)
    if write:
        from journal_tools.commands.plan_writes import write_down

        if not write_down(place, plan, new, anyway=anyway):
            context.exit(1)


def _warp(context: click.Context, journal: Journal, name: str, said: dict[str, str]) -> tuple[Warp, NewRecord | None]:
    """The warp as its record has it, or as the options describe it."""
    from journal_tools.problems import nearest

    warp = journal.warps.get(name)
    if warp is not None and said:
        options = ", ".join(f"--{key.replace('_', '-')}" for key in said)
        click.echo(
            f"{warp.heading} has a record, which says what is wanted: change it there, and leave out {options}.",
            err=True,
        )
        context.exit(1)
    if warp is not None:
        faults = [problem for problem in journal.problems if problem.file == warp.file and problem.is_fault]
        for fault in faults:
            tell(fault)
        if faults:
            click.echo("Mend that first, so that nothing is left out of the plan.", err=True)
            context.exit(1)
        return warp, None
    if not said:
        near = nearest(name, journal.warps)
        more = f" Did you mean {near}?" if near else ""
        click.echo(
            f'There is no warp called "{name}".{more} For a new one say what is wanted, with --made-up and so on.',
            err=True,
        )
        context.exit(1)
    return _described(context, journal, name, said)


def _described(context: click.Context, journal: Journal, name: str, said: dict[str, str]) -> tuple[Warp, NewRecord]:
    from journal_tools.exchange.new_record import NewRecord, faults_of, staged, standing

    if "loom" in said:
        name_of_loom, unknown = _loom(journal, said["loom"])
        if unknown:
            click.echo(unknown, err=True)
            context.exit(1)
        said = {**said, "loom": name_of_loom}
    fields: dict[str, Any] = {"title": name.replace("-", " ").capitalize()}
    fields |= {
        key: said[key]
        for key in ("loom", "yarn", "weft", "weave", "draft", "sett", "reed", "beat", "hem", "fringe", "finish")
        if key in said
    }
    if "turn" in said:
        if not said.get("hem") or said["hem"].lower() in ("none", "no"):
            raise click.BadParameter("it is turned under a hem; say --hem as well.", param_hint="'--turn'")
        fields["hem"] = {"depth": said["hem"], "turn": said["turn"]}
    wound = {key: said[name] for name, key in WOUND.items() if name in said}
    fields |= {"warp": wound} if wound else {}
    wanted: Mapping[str, Value] = {key: said[key] for key in ("piece", "count", "made_up", "washed") if key in said}
    record = NewRecord("warps", name, {**fields, **({"plan": [wanted]} if wanted else {})})
    stands = standing(journal, record)
    found = staged(journal, [record])
    faults = [*([stands] if stands else []), *faults_of(record), *found.problems]
    for fault in dict.fromkeys(faults):
        tell(fault)
    if faults or name not in found.warps:
        context.exit(1)
    return found.warps[name], record


def _loom(journal: Journal, typed: str) -> tuple[str, str]:
    """The loom's name, and what to say where none is called so."""
    from journal_tools.planning.looms import find_loom, listed
    from journal_tools.problems import nearest

    loom = find_loom(journal, typed)
    if loom is not None or not journal.looms:
        return (loom.name if loom is not None else typed), ""
    near = nearest(typed, [*journal.looms, *(each.heading for each in journal.looms.values())])
    more = f" Did you mean {near}?" if near else ""
    return "", f'There is no loom called "{typed}".{more} Looms here: {listed(journal)}.'


def _asked(journal: Journal, least: str, sample: str, gap: str, doubled: int) -> Asked:
    from journal_tools.planning.wants import Asked
    from journal_tools.quantities import Unreadable, parse_length

    def mm(typed: str, option: str) -> float | None:
        try:
            return float(parse_length(typed, journal.settings.units).mm) if typed else None
        except Unreadable as unreadable:
            raise click.BadParameter(unreadable.right, param_hint=f"'--{option}'") from None

    return Asked(mm(least, "least"), mm(sample, "sample"), mm(gap, "gap"), doubled)


def _planned(context: click.Context, journal: Journal, warp: Warp, asked: Asked) -> Plan:
    from journal_tools.ledger import ledger_of
    from journal_tools.planning.plan import plan_of
    from journal_tools.planning.remembering import remembered
    from journal_tools.planning.wants import NotPlanned

    ledgers = {name: ledger_of(journal, each) for name, each in journal.warps.items()}
    memory, seen = remembered(journal, warp, ledgers)
    try:
        return plan_of(journal, memory, warp, asked, seen, ledgers)
    except NotPlanned as reason:
        click.echo(f"{warp.heading}: {reason}", err=True)
        context.exit(1)
