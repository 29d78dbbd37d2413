/* The plan as the record of a warp, to be kept under entries/warps/. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var f = tenterhook.figures;

  function plain(text) {
    var safe = /^[A-Za-z0-9][A-Za-z0-9 ,.()\/×'’&+-]*$/.test(text) && !/^(yes|no|true|false|null|on|off|~)$/i.test(text) && !/: | #/.test(text);
    return safe ? text : '"' + text.replace(/\\/g, "\\\\").replace(/"/g, '\\"') + '"';
  }

  /* A name that a record can have: small letters, digits and hyphens. */
  tenterhook.nameOf = function (title) {
    var name = title.toLowerCase().normalize("NFKD").replace(/[̀-ͯ]/g, "").replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    return name || "a-warp";
  };

  tenterhook.record = function (w, plan, journal, home) {
    var units = journal.units, mark = journal.step.tape;
    function size(mm) { return f.bare(mm, units.length, mark) + " " + units.length; }
    function wanted() {
      /* A unit at the end of a size holds for both; feet and inches keep all of theirs. */
      var unit = " " + units.length, wide = w.typed.width, rest = wide.slice(0, -unit.length);
      var both = rest + unit === wide && !/[a-z"'″]/i.test(rest) && w.typed.long.slice(-unit.length) === unit;
      return (both ? rest : wide) + " x " + w.typed.long;
    }
    /* Typed or left out: what the past tells is asked of the past again. */
    function typedDensity(typed) { return /^[\d.,]+$/.test(typed) ? typed + "/" + home.density : typed; }
    var same = w.weft === w.warp, lines = ["---", "title: " + plain(w.title)];
    function add(indent, key, value) { lines.push(indent + key + ":" + (value === undefined ? "" : " " + value)); }
    if (w.loom) add("", "loom", w.loom);
    add("", "yarn", w.warp);
    add("", "warp");
    if (plan.reed.order) {
      add("  ", "yarn", w.warp); /* whose colours they are */
      add("  ", "order", plain(plan.reed.order.written(plan.reed.times)));
    } else add("  ", "ends", plan.reed.heddled);
    add("  ", "wound", f.wound(plan.warp.wind, units.length));
    if (plan.reed.floating) add("  ", "floating_selvedges", w.warp);
    if (!same) add("", "weft", w.weft);
    add("", "weave", plain(w.weave));
    /* Another reed than the nearest was chosen for the sett that it gives, and says it itself. */
    if (w.typed.sett && w.sley === w.choices[0]) add("", "sett", typedDensity(w.typed.sett));
    add("", "reed", plan.reed.sley.text);
    add("", "sley", plan.reed.sley.order.join("-"));
    if (w.typed.beat) add("", "beat", typedDensity(w.typed.beat));
    if (w.hem.depth) {
      add("", "hem");
      add("  ", "depth", w.typed.hem);
      if (w.hem.turn) add("  ", "turn", w.typed.turn);
      add("  ", "edges", w.hem.where);
      add("  ", "sewn", w.hem.first ? "before washing" : "after washing");
    }
    if (w.fringe) { add("", "fringe"); add("  ", "allowed", w.typed.fringe + " each end"); }
    add("", "plan");
    lines.push("  - piece: " + plain(w.piece));
    add("    ", "count", w.count);
    add("    ", "in_reed", size(plan.reed.mm));
    add("    ", "on_loom", f.bare(plan.onLoom.mm, units.length, mark) + " x " + f.shown(plan.weave, units.length, journal.step.weave));
    if (plan.picks) add("    ", "picks", plan.picks);
    if (w.hemmed) add("    ", "made_up", wanted());
    else add("    ", w.wash === "settled" ? "washed 3" : "washed", wanted());
    if (w.finish && w.hemmed && w.wash === "settled") {
      add("", "finish"); /* made up after all its washes, and settled from the third on */
      for (var wash = 0; wash < 3; wash += 1) lines.push("  - " + w.finish);
    } else if (w.finish) add("", "finish", w.finish);
    lines.push("---", "");
    return lines.join("\n");
  };
})();
