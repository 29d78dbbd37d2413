/* Figures as a weaver reads and types them: lengths, setts, weights, in the journal's own units.
   Inside, a length is in mm, a density is threads to the metre, a weight is in g. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var MM = { in: 25.4, ft: 304.8, yd: 914.4, mm: 1, cm: 10, m: 1000 };
  var WORDS = { '"': "in", "″": "in", inch: "in", inches: "in", ins: "in", "'": "ft", feet: "ft", foot: "ft",
    yard: "yd", yards: "yd", yds: "yd", metre: "m", metres: "m", meter: "m", meters: "m" };
  var SIGNS = { "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
    "⅓": "1/3", "⅔": "2/3" };
  var NUMBER = "(\\d+(?:[.,]\\d+)?)?(?:[\\s-]*(\\d+)/(\\d+))?";

  function plain(typed) {
    return String(typed).replace(/[¼½¾⅛⅜⅝⅞⅓⅔]/g, function (sign) { return " " + SIGNS[sign]; })
      .replace(/[   ]/g, " ").trim().toLowerCase();
  }

  /* "18", "18 1/4", "1/2", "46,5" -> a number; NaN where it is none. */
  function number(typed) {
    var text = plain(typed);
    if (/^\d{1,3},\d{3}$/.test(text)) return NaN; /* a thousand, or a decimal? */
    var slash = /^(\d+)\/(\d+)$/.exec(text);
    if (slash) return Number(slash[2]) ? slash[1] / slash[2] : NaN;
    var found = new RegExp("^" + NUMBER + "$").exec(text);
    if (!found || (found[1] === undefined && found[2] === undefined)) return NaN;
    if (found[3] !== undefined && !Number(found[3])) return NaN;
    return Number((found[1] || "0").replace(",", ".")) + (found[2] ? found[2] / found[3] : 0);
  }

  /* "18 1/4", "46.5 cm", "2 yd 12 in" -> mm; a bare number is in `unit`. */
  function length(typed, unit) {
    var text = plain(typed);
    var parts = text.match(/[^a-z"'″]+[a-z"'″]*/g);
    if (!parts || parts.join("") !== text) return NaN;
    return parts.reduce(function (sum, part) {
      var split = /^([^a-z"'″]+)([a-z"'″]*)$/.exec(part);
      var named = split[2] ? WORDS[split[2]] || split[2] : parts.length === 1 ? unit : "";
      return sum + number(split[1]) * (MM[named] || NaN);
    }, 0);
  }

  /* "24", "24/in", "9.5/cm", "50 per 10 cm" -> threads to the metre; a bare number is to one `unit`. */
  function density(typed, unit) {
    var found = /^([\d.,\s/]+?)(?:\s*(?:\/|per)\s*(\d+)?\s*(in|inch|cm))?$/.exec(plain(typed).replace(/\s*[ep]pi$/, "/in"));
    if (!found) return NaN;
    return (number(found[1]) / (Number(found[2]) || 1)) * (1000 / MM[found[3] === "inch" ? "in" : found[3] || unit]);
  }

  function fraction(value, parts) {
    var whole = Math.floor(value / parts), rest = value % parts;
    while (rest && rest % 2 === 0 && parts % 2 === 0) { rest /= 2; parts /= 2; }
    return (whole || !rest ? String(whole) : "") + (whole && rest ? " " : "") + (rest ? rest + "/" + parts : "");
  }

  function trimmed(value, places) {
    return value.toFixed(places).replace(/(\.\d*?)0+$/, "$1").replace(/\.$/, "");
  }

  /* mm -> "17 7/8" or "45.4": to the nearest mark, or to the mark above with way = Math.ceil. */
  function bare(mm, unit, mark, way) {
    var marks = (way || nearest)(Math.round((mm / mark) * 1e6) / 1e6);
    if (unit === "in") {
      var parts = Math.round(25.4 / mark);
      return fraction(marks, Math.max(parts, 1));
    }
    return trimmed((marks * mark) / MM[unit], 2);
  }

  /* A length as it was typed, with the unit that a bare number was read in. */
  function asTyped(typed, unit) {
    var text = String(typed).trim();
    return text && !/[a-z"'″]/i.test(text) ? text + " " + unit : text;
  }

  /* The unit to tell a plan in: the one that both sizes are typed in, else the journal's. */
  function toldIn(typed, home) {
    var units = typed.map(function (text) {
      var found = /([a-z"'″]+)[^a-z"'″]*$/.exec(plain(text)), unit = found ? WORDS[found[1]] || found[1] : home;
      return { ft: "in", yd: "in", m: "cm" }[unit] || unit;
    });
    return units.every(function (unit) { return unit === units[0]; }) && /^(in|cm|mm)$/.test(units[0]) ? units[0] : home;
  }

  function nearest(value) { return Math.floor(value + 0.5); }

  tenterhook.figures = {
    MM: MM,
    number: number,
    length: length,
    density: density,
    nearest: nearest,
    trimmed: trimmed,
    asTyped: asTyped,
    toldIn: toldIn,
    bare: bare,
    shown: function (mm, unit, mark, way) { return bare(mm, unit, mark, way) + " " + unit; },
    /* Quarter yards, or quarter metres. */
    wound: function (mm, unit) {
      return unit === "in" ? fraction(nearest(mm / 228.6), 4) + " yd" : trimmed(mm / 1000, 2) + " m";
    },
    /* threads to the metre -> "24/in" */
    dense: function (perMetre, unit) { return trimmed((perMetre * MM[unit]) / 1000, 1) + "/" + unit; },
    weighed: function (grams, unit) {
      if (unit === "oz") return trimmed(Math.ceil((grams / 28.349523125) * 4 - 1e-6) / 4, 2) + " oz";
      return Math.ceil(grams / 5 - 1e-6) * 5 + " g";
    },
    perCent: function (fraction) {
      var value = Math.round(fraction * 1000) / 10;
      return (value < 0 ? "−" : "") + Math.abs(value).toFixed(1) + " %";
    }
  };
})();
