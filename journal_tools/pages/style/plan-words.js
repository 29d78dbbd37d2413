/* A plan in a weaver's words: what it rests on before any figure, then what hands do. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var f = tenterhook.figures;

  function many(number, one, several) { return number + " " + (number === 1 ? one : several || one + "s"); }

  function Words(journal) {
    this.units = journal.units;
    this.steps = journal.steps;
    this.journal = journal;
  }

  Words.prototype.size = function (mm) { return f.shown(mm, this.units.length, this.steps.tape); };
  Words.prototype.bare = function (mm) { return f.bare(mm, this.units.length, this.steps.tape); };
  Words.prototype.woven = function (mm) { return f.shown(mm, this.units.length, this.steps.weave); };
  Words.prototype.wound = function (mm) { return f.wound(mm, this.units.length); };
  Words.prototype.between = function (low, high) { return this.bare(low) + " to " + this.size(high); };
  Words.prototype.oneIn = function (chance) { return tenterhook.arithmetic.one_in(chance); };
  Words.prototype.grams = function (g) { return f.weighed(g, this.units.weight); };
  Words.prototype.dense = function (perMetre) { return f.dense(perMetre, this.units.density); };

  /* What it rests on. guess: whether nothing was woven in the yarn, so that it is one. */
  Words.prototype.restsOn = function (w) {
    var yarn = this.journal.yarns[w.warp], weave = (yarn.usual || {})[w.weave], number = yarn.warps || 0;
    var others = this.others(w.warp, yarn.fibre);
    var weft = w.weft !== w.warp && this.journal.yarns[w.weft];
    var and = weft && !weft.warps ? " Nothing of yours in " + weft.title + " as warp, so the weft is a guess." : "";
    if (!number) {
      var by = others ? "It goes by " + many(others, "warp") + " in the same fibre." : "It goes by common practice.";
      return { guess: true, text: "Nothing of yours in " + yarn.title + ". " + by + and };
    }
    var mostly = yarn.mostly && number > 1 ? ", mostly " + yarn.mostly : "";
    var inWeave = weave ? (weave.warps < number ? many(weave.warps, "of them", "of them") + " in " + w.weave + "." : "")
      : "None in " + w.weave + ".";
    return {
      guess: false,
      text: ("Rests on " + many(number, "of your warps", "of your warps") + " in " + yarn.title + mostly + ". " + inWeave).trim() + and
    };
  };

  Words.prototype.others = function (name, fibre) {
    var yarns = this.journal.yarns, sum = 0;
    Object.keys(yarns).forEach(function (each) {
      if (each !== name && fibre && yarns[each].fibre === fibre) sum += yarns[each].warps || 0;
    });
    return sum;
  };

  Words.prototype.reed = function (sley) {
    var order = sley.order.length === 1 ? (sley.order[0] === 1 ? "one in a dent" : sley.order[0] + " in a dent")
      : sley.order.join("-") + " in the dents";
    return "the " + sley.text + ", " + order;
  };

  /* The sentences, in the order in which they are acted on. */
  Words.prototype.sentences = function (w, plan) {
    var own = w.hemmed ? "Made up" : w.wash === "settled" ? "Settled" : "Washed", said = [], worst = plan.length.worst;
    said.push(own + ", expect " + this.size(plan.width.mm) + " wide, nine times in ten " +
      this.between(plan.width.low, plan.width.high) + "; and " + this.size(plan.length.mm) + " long, nine times in ten " +
      this.between(plan.length.low, plan.length.high) + ".");
    if (w.count > 1) {
      said.push("The shortest of the " + w.count + " is under " + this.size(worst) + " only once in twenty times, and the narrowest under " +
        this.size(plan.width.worst) + ".");
    }
    if (plan.risk) {
      said.push("1 time in " + this.oneIn(plan.risk.chance) + (w.count > 1 ? " one of them" : " it") + " comes up under " +
        this.woven(plan.risk.limit) + ". Weave " + this.woven(plan.risk.more) + " more" + (w.count > 1 ? " each" : "") + " (" +
        this.woven(plan.risk.warp) + " of warp) and it is 1 in " + this.oneIn(plan.risk.after) + ".");
    }
    return said;
  };

  Words.prototype.sample = function (plan) {
    return "A sample of " + this.woven(plan.sample.mm) + ", washed first, costs " + this.woven(plan.sample.warp) +
      " of warp and would cut the doubt in width from ± " + this.size(plan.sample.now) + " to ± " + this.size(plan.sample.then) +
      ". It says little of length.";
  };

  /* What must be said before the warp is wound. */
  Words.prototype.limits = function (w, plan) {
    var said = [], loom = this.journal.looms[w.loom], weave = this.journal.weaves[w.weave] || {};
    if (loom && loom.width && plan.reed.mm > loom.width + 0.5) {
      said.push(this.size(plan.reed.mm) + " in the reed is more than " + loom.title + " weaves, which is " + this.size(loom.width) + ".");
    }
    if (loom && loom.shafts && weave.shafts > loom.shafts) {
      said.push(w.weave + " wants " + weave.shafts + " shafts; " + loom.title + " has " + loom.shafts + ".");
    }
    if (Math.abs(plan.reed.sley.off) > w.usual.sett_off) {
      said.push("No reed gives " + this.dense(w.sett) + ": the nearest is " + this.dense(plan.reed.sley.sett) + ".");
    }
    if (w.closeness > 1) said.push(this.dense(w.sett) + " is closer than the yarn can lie in " + w.weave + " by Ashenhurst's rule.");
    var finish = this.journal.finishes[w.finish];
    if (finish && finish.fulling) said.push("Fulled cloth is stopped at its size: these figures are of cloth that is only washed.");
    return said;
  };

  Words.prototype.inShort = function (plan) {
    return "Sley " + this.size(plan.reed.mm) + ", weave each to " + this.woven(plan.weave) + ", wind " + this.wound(plan.warp.wind) + ".";
  };

  Words.prototype.wanted = function (w) {
    var finish = this.journal.finishes[w.finish], weft = this.journal.yarns[w.weft].title, warp = this.journal.yarns[w.warp].title;
    return [
      many(w.count, w.piece), this.bare(w.width) + " × " + this.size(w.long) + (w.hemmed ? " made up" : " washed"),
      w.wash === "settled" ? "once settled" : "after the first wash", weft === warp ? warp : warp + " with " + weft, w.weave,
      this.dense(w.sett), finish ? finish.title : ""
    ].filter(Boolean).join(" · ");
  };

  tenterhook.Words = Words;
  tenterhook.many = many;
})();
