"""What a heading of a sheet says: a meaning and a unit, from the words that weavers write there."""

from __future__ import annotations

import re
import unicodedata

from journal_tools.exchange.meaning import LEAVE_OUT, LENGTHS, MEANINGS, Meaning

_UNIT_WORDS = {
    **dict.fromkeys(("in", "ins", "inch", "inches", '"', "''"), "in"),
    **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), "yd"),
    **dict.fromkeys(("ft", "feet", "foot"), "ft"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("g", "gm", "gms", "gram", "grams", "grammes"), "g"),
    **dict.fromkeys(("kg", "kgs", "kilo", "kilos"), "kg"),
    **dict.fromkeys(("oz", "ounce", "ounces"), "oz"),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), "lb"),
    **dict.fromkeys(("epi", "ppi", "dpi", "/in", "/inch", "per inch", "per in", "/ in", "/ inch", "an inch"), "/in"),
    **dict.fromkeys(("epc", "ppc", "/cm", "per cm", "/ cm", "per centimetre", "per centimeter", "a cm"), "/cm"),
    **dict.fromkeys(("/10 cm", "/10cm", "per 10 cm", "per 10cm", "/ 10 cm"), "/10 cm"),
    **dict.fromkeys(("yd/lb", "yds/lb", "yards/lb", "ypp", "yards/pound", "yards per pound", "yd per lb"), "yd/lb"),
    **dict.fromkeys(("m/kg", "metres/kg", "meters/kg", "metres per kg", "meters per kg"), "m/kg"),
}

_SECOND = r"(?:weft )?"
_WHOLE: tuple[tuple[str, str, str], ...] = (
    # What the heading without its unit matches in full, the meaning, and the unit that the words themselves say.
    (r"(?:warp|project)(?: (?:name|title|id|no|nr|number))?|name|title|project|name of (?:the )?warp|what", "warp", ""),
    (r"piece(?: (?:name|no|nr|number))?|item|article|name of (?:the )?piece", "piece", ""),
    (r"count|qty|quantity|pieces|how many|(?:number|no|nr) of (?:pieces|items)|(?:number|no|nr) woven", "how many", ""),
    (r"(?:date|year|when|season|month)(?: (?:started|warped|woven|of warp))?|started|warped|start date", "date", ""),
    (r"finished|completed|done|(?:date|year) (?:finished|completed)|(?:finish|end|finished) date|finished on",
     "date finished", ""),
    (r"(?:warp )?yarns?(?: used)?|warp (?:material|yarn name)|yarn name|material", "yarn", ""),
    (r"weft(?: (?:yarn|yarns|material))?|yarn weft", "weft yarn", ""),
    (r"colou?rs?|colou?rway|(?:warp|yarn) colou?rs?", "colour", ""),
    (r"(?:warp |yarn )?(?:fib(?:re|er)s?(?: content)?|composition)", "fibre", ""),
    (r"weft fib(?:re|er)s?(?: content)?", "weft fibre", ""),
    (r"(?:warp )?(?:yarn )?(?:number|size|grist)|(?:warp )?yarn count", "yarn number", ""),
    (r"weft (?:yarn )?(?:number|size|count|grist)", "weft yarn number", ""),
    (_SECOND + r"(?:yards?|yds?)(?: ?/ ?| per | a |)(?:lbs?|pound)|" + _SECOND + "ypp", "yield", "yd/lb"),
    (_SECOND + r"(?:m|met(?:re|er)s?)(?: ?/ ?| per | a )(?:kg|kilo)", "yield", "m/kg"),
    (_SECOND + r"(?:yarn )?yield", "yield", ""),
    (r"weave(?: structure)?|structure|pattern|weave type|type of weave", "weave", ""),
    (r"e\.?p\.?i\.?|(?:warp )?ends(?: ?/ ?| per | an )(?:in|inch)|sett epi", "sett", "/in"),
    (r"e\.?p\.?c\.?|(?:warp )?ends(?: ?/ ?| per | a )(?:cm|centim(?:et(?:re|er)))", "sett", "/cm"),
    (r"ends(?: ?/ ?| per )10 ?cm", "sett", "/10 cm"),
    (r"(?:warp )?set{1,2}(?: ends| threads)?", "sett", ""),
    (r"p\.?p\.?i\.?|(?:weft )?picks(?: ?/ ?| per | an )(?:in|inch)", "beat", "/in"),
    (r"p\.?p\.?c\.?|(?:weft )?picks(?: ?/ ?| per | a )(?:cm|centim(?:et(?:re|er)))", "beat", "/cm"),
    (r"picks(?: ?/ ?| per )10 ?cm", "beat", "/10 cm"),
    (r"beat", "beat", ""),
    (r"picks|(?:total |number of |no of )picks|pick count|picks? total", "picks", ""),
    (r"(?:total |number of |no of |warp )?ends|ends total|end count", "ends", ""),
    (r"d\.?p\.?i\.?|dents(?: ?/ ?| per )(?:in|inch)", "reed", "/in"),
    (r"dents(?: ?/ ?| per )10 ?cm", "reed", "/10 cm"),
    (r"reed(?: (?:used|size|dent|dents))?|dent reed", "reed", ""),
    (r"sley(?:ing|ed)?(?: order)?|(?:ends|threads) (?:per|a) dent|dents?", "sley", ""),
    (r"loom(?: used| name)?", "loom", ""),
    (r"finish(?:ing)?(?: (?:used|method|recipe))?|wet finish(?:ing)?|wash(?:ing)?(?: method)?|how washed|treatment",
     "finish", ""),
    (r"(?:length of (?:the )?warp|warp (?:length|wound)|length wound|wound|warp length wound|total warp)(?: wound)?",
     "warp wound", ""),
    (r"(?:finished |washed |piece )?weight|weight (?:washed|finished|of piece)", "weight", ""),
    (r"hours|time(?: taken)?|hours (?:worked|spent)", "hours", ""),
    (r"(?:total )?costs?|material costs?", "cost", ""),
    (r"notes?|remarks?|comments?|observations?", "notes", ""),
)  # fmt: skip

_RECKONED = re.compile(r"shrink|\bloss|draw[ -]?in|take[ -]?up|percent|per cent|%")
_WISHED = re.compile(r"plan|target|goal|wanted|desired|expected|intended|aim")
_SIDES = (
    ("width", r"widths?|wide|w|breadth"),
    ("length", r"lengths?|long|l"),
    ("size", r"sizes?|dimensions?|measure\w*"),
)
_STATES = (
    # In this order: "off the loom" has a loom in it, and "before washing" a wash.
    ("made up", r"made up|sewn|after sewing|sewn up"),
    ("hemmed", r"hemmed|after hemming"),
    ("off the loom", r"off(?: the)? loom|off|cut ?off|cut|un ?washed|before (?:the )?wash(?:ing)?|before (?:wet )?"
                     r"finish(?:ing)?|pre ?wash|relaxed|loom ?state|grey|greige"),
    ("washed", r"washed|(?:after )?(?:the )?wash(?:es|ing)?|(?:wet )?finish(?:ed|ing)?|wet|final|fulled|shrunk|"
               r"laundered"),
    ("in the reed", r"(?:in |at )?(?:the )?reed|sley(?:ed)?|in(?: the)? sley"),
    ("on the loom", r"(?:on |at )?(?:the )?loom|on|woven|as woven|weaving|(?:under |on )?tension|(?:at )?fell"),
)  # fmt: skip
_TAILS = (
    re.compile(r"(.+?)\s*[,:;]?\s*((?:/|per|an?) ?(?:10 ?)?(?:in|inch|cm|centimet(?:re|er)))"),
    re.compile(r"(.+)(?:\s*[,:;/-]\s*|\s+)(?:in )?(\S+)"),
    re.compile(r"(.+?)\s*(\"|'')"),
)
_PLAIN = str.maketrans("“”″’_–—", '"""\' --')
_NUMBER_WORDS = {"first": 1, "1st": 1, "second": 2, "2nd": 2, "third": 3, "3rd": 3, "fourth": 4, "4th": 4}


def heading_meaning(heading: str) -> tuple[Meaning, str] | None:
    """The meaning of a heading, and the unit that it states or ""; None for a heading that says neither.

    A column of losses or plans is none that can be taken in; losses are reckoned anew, and left out.
    """
    words = _plain(heading)
    if not words:
        return None
    if _RECKONED.search(words):
        return (LEAVE_OUT, "")
    for text, unit in _readings(words):
        for pattern, name, own in _WHOLE:
            if re.fullmatch(pattern, text):
                name = f"weft {name}" if text.startswith("weft ") and name == "yield" else name
                return _with_unit(MEANINGS[name], own or unit)
        sized = _size(text)
        if sized is not None:
            return _with_unit(sized, unit)
    return None


def _with_unit(meaning: Meaning, unit: str) -> tuple[Meaning, str] | None:
    units = meaning.units if meaning.kind != "size" else MEANINGS["width washed"].units
    if meaning.name == "reed" and unit in LENGTHS:
        return (MEANINGS["width in the reed"], unit)  # a reed is told in dents, a width in inches
    if unit and not units and meaning.kind == "words":
        return None  # "loom (cm)" is no loom
    if meaning.kind == "density" and unit in ("in", "cm"):
        unit = f"/{unit}"
    return (meaning, unit if unit in units else "")


def _plain(heading: str) -> str:
    text = unicodedata.normalize("NFKC", heading).lower()
    text = text.translate(_PLAIN)
    text = re.sub(r"\b(no|nr)\.", r"\1 ", text.replace("#", " no "))
    return " ".join(text.strip(" :;.*?!").split())


def _readings(words: str) -> list[tuple[str, str]]:
    """The heading as it is, and with its unit taken off: in brackets, after a comma, or as its last word."""
    found = [(_bare(words), "")]
    bracket = re.search(r"\s*[(\[{]\s*(?:in )?([^)\]}]*?)\s*[)\]}]\s*", words)
    if bracket is not None:
        inside, rest = bracket[1].strip(" ."), (words[: bracket.start()] + " " + words[bracket.end() :]).strip()
        if (unit := _UNIT_WORDS.get(inside)) is not None:
            return [(_bare(rest), unit), *[(text, unit) for text, _ in _readings(rest)]]
        words = f"{rest} {inside}"
        found.append((_bare(words), ""))
    for pattern in _TAILS:
        tail = pattern.fullmatch(words)
        if tail is not None and (unit := _UNIT_WORDS.get(tail[2].strip(" ."))) is not None:
            found.append((_bare(tail[1]), unit))
    return found


def _bare(words: str) -> str:
    return " ".join(re.sub(r"[,:;()\[\]{}-]", " ", words).split())


def _size(text: str) -> Meaning | None:
    """A width, a length or a size at one state of the cloth, told by a word for each of the two."""
    if _WISHED.search(text):
        return None
    for side, pattern in _SIDES:
        found = re.search(rf"\b(?:{pattern})\b", text)
        if found is None:
            continue
        rest = _bare(text[: found.start()] + " " + text[found.end() :])
        number = 0
        for word, value in _NUMBER_WORDS.items():
            if re.search(rf"\b{word}\b", rest):
                number, rest = value, _bare(re.sub(rf"\b{word}\b", " ", rest))
        if counted := re.search(r"\b(?:no )?([1-9])\b", rest):
            number, rest = int(counted[1]), _bare(rest[: counted.start()] + " " + rest[counted.end() :])
        rest = re.sub(r"^(?:cloth|fabric|piece|of|the) |(?: (?:of|the|cloth|fabric|piece))+$", "", rest)
        for state, words in _STATES:
            if re.fullmatch(words, rest):
                called = f"{state} {number}" if number and state == "washed" else state
                return None if number and state != "washed" else MEANINGS.get(f"{side} {called}")
        return None
    return None
