/* A plan in a weaver's words: what it rests on before any figure, then what hands do. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var f = tenterhook.figures;

  function many(number, one, several) { return number + " " + (number === 1 ? one : several || one + "s"); }

  /* Where two shafts would do, straight over all that the loom has; an odd one is left empty. */
  function spread(weave, loom) {
    var straight = weave.threading.length === 2 && weave.shafts === 2 && String(weave.threading) === "1,2";
    if (!straight || !(loom.shafts > 2)) return weave.threading;
    var found = [];
    for (var shaft = 1; shaft <= loom.shafts - (loom.shafts % 2); shaft += 1) found.push([shaft]);
    return found;
  }

  function capital(words) { return words.charAt(0).toUpperCase() + words.slice(1); }

  function Words(journal) {
    this.journal = journal;
  }

  Words.prototype.size = function (mm) { return f.shown(mm, this.journal.units.length, this.journal.step.tape); };
  Words.prototype.bare = function (mm) { return f.bare(mm, this.journal.units.length, this.journal.step.tape); };
  Words.prototype.woven = function (mm) { return f.shown(mm, this.journal.units.length, this.journal.step.weave); };
  Words.prototype.wound = function (mm) { return f.wound(mm, this.journal.units.length); };
  Words.prototype.between = function (low, high) { return this.bare(low) + " to " + this.size(high); };
  /* `1 in 6`, or `1 time in 6` at the head of a sentence. */
  Words.prototype.odds = function (chance, first) {
    var rarest = this.journal.sums.rarest, one = first ? "1 time in " : "1 in ";
    if (chance < 1 / rarest) return (first ? "Less than " : "less than ") + one + rarest;
    if (chance > 1 / 2) return first ? "More often than not" : "more than 1 in 2";
    return one + tenterhook.arithmetic.one_in(chance);
  };
  Words.prototype.grams = function (g) { return f.weighed(g, this.journal.units.weight); };
  Words.prototype.dense = function (perMetre) { return f.dense(perMetre, this.journal.units.density); };

  /* What it rests on. guess: whether nothing was measured in the yarn, so that it is one. */
  Words.prototype.restsOn = function (w) {
    var on = this.warps(function (kind) { return [kind.warp, kind.weft].some(function (yarn) { return yarn === w.warp || yarn === w.weft; }); });
    var both = this.warps(function (kind) {
      return kind.weave === w.weave && [kind.warp, kind.weft].some(function (yarn) { return yarn === w.warp || yarn === w.weft; });
    });
    var inWeave = this.warps(function (kind) { return kind.weave === w.weave; }), yarn = this.journal.yarns[w.warp];
    var ours = this.journal.shared ? "" : " of your", warps = ours + " warps";
    if (!on) {
      var by = inWeave ? "It goes by " + (inWeave > 1 ? inWeave + warps : "one" + (ours ? warps : " warp")) + " in " + w.weave + "." : "It goes by common practice.";
      return { guess: true, text: (this.journal.shared ? "nothing in " : "nothing of yours in ") + yarn.title + ". " + by };
    }
    var tells = this.journal.mostly, other = (tells[""] || {})[w.weave];
    function first(weave) { return (tells[w.warp] || {})[weave] || (tells[w.weft] || {})[weave]; }
    var mostly = first(w.weave) || first("");
    var said = "Rests on " + (on > 1 ? on + warps : "one" + (ours ? warps : " warp")) + (on > 1 && mostly ? ", mostly " + mostly : "") + ".";
    if (both < on) said += " " + (both || "None") + " in " + w.weave + ".";
    if (!both && inWeave) {
      said += " The weave goes by " + (inWeave > 1 ? inWeave + " warps" : "one warp") + " in other yarns" +
        (other ? ", " + (inWeave > 1 ? "mostly " : "") + other : "") + ".";
    }
    return { guess: false, text: said };
  };

  Words.prototype.fulled = function (warps) {
    var from = (warps > 1 ? warps + " fulled warps" : "one fulled warp") + (this.journal.shared ? "" : " of yours");
    return { guess: false, text: "Fulled cloth is stopped at its size: its end sizes " + (warps ? "go by " + from : "are a guess from common practice") + "." };
  };

  /* How many warps have a kind of cloth. */
  Words.prototype.warps = function (fits) {
    var journal = this.journal, found = {}, yarns = Object.keys(journal.yarns), weaves = Object.keys(journal.weaves);
    journal.woven.forEach(function (each) {
      if (fits({ warp: yarns[each[1]], weft: yarns[each[2]], weave: weaves[each[3]] })) found[each[0]] = true;
    });
    return Object.keys(found).length;
  };

  Words.prototype.reed = function (sley) {
    var order = sley.order.length === 1 ? (sley.order[0] === 1 ? "one in a dent" : sley.order[0] + " in a dent")
      : sley.order.join("-") + " in the dents";
    return "the " + sley.text + ", " + order;
  };

  /* The sentences, in the order in which they are acted on. */
  Words.prototype.sentences = function (w, plan, fulled) {
    var own = w.hemmed ? "Made up" : w.wash === "settled" ? "Settled" : "Washed", said = [];
    if (plan.useless && !fulled) {
      return [own + ", about " + this.size(plan.width.mm) + " wide and " + this.size(plan.length.mm) + " long, give or take more than a plan can bear."];
    }
    said.push(own + ", expect " + this.size(plan.width.mm) + " wide, nine times in ten " +
      this.between(plan.width.low, plan.width.high) + "; and " + this.size(plan.length.mm) + " long, nine times in ten " +
      this.between(plan.length.low, plan.length.high) + ".");
    if (plan.otherRepeat) {
      said.push("For " + this.size(w.width) + " there are no whole repeats: one " + (plan.otherRepeat.more ? "more" : "less") +
        " comes to " + this.size(plan.otherRepeat.mm) + ".");
    }
    if (w.count > 1) {
      said.push("The shortest of the " + w.count + " is under " + this.size(plan.length.worst) + ", the narrowest under " +
        this.size(plan.width.worst) + " only once in twenty times.");
    }
    if (plan.risk) {
      var short = this.odds(plan.risk.chance, true) + (w.count > 1 ? " one of them" : " it") + " comes up under " + this.woven(plan.risk.limit);
      said.push(plan.risk.more === null ? short + "." : short + "; weave " + this.woven(plan.risk.more) + " more" + (w.count > 1 ? " each" : "") + " (" +
        f.shown(plan.risk.warp, this.journal.units.length, this.journal.step.weave, Math.ceil) + " of warp) and it is " + this.odds(plan.risk.after) + ".");
    }
    return said;
  };

  Words.prototype.sample = function (plan) {
    return "A sample of " + this.woven(plan.sample.mm) + ", washed first, costs " + this.woven(plan.sample.warp) +
      " of warp and would cut the doubt in width from ± " + this.size(plan.sample.now) + " to ± " + this.size(plan.sample.then) + ". " +
      (plan.sample.length ? "Of length it leaves ± " + this.size(plan.sample.length.then) + " of ± " + this.size(plan.sample.length.now) + "."
        : "It says little of length.");
  };

  /* What must be said before the warp is wound. */
  Words.prototype.limits = function (w, plan) {
    var said = [], loom = this.journal.looms[w.loom], weave = this.journal.weaves[w.weave] || {}, off = plan.reed.sley.off;
    if (loom && loom.width && plan.reed.mm > loom.width + 0.001) {
      said.push(this.size(plan.reed.mm) + " in the reed is " + this.size(plan.reed.mm - loom.width) + " wider than " + loom.title +
        " (" + this.size(loom.width) + ")." + this.instead(w, plan, loom, weave));
    }
    if (loom && loom.shafts && weave.shafts > loom.shafts) {
      said.push(capital(w.weave) + " takes " + weave.shafts + " shafts, and " + loom.title + " has " + loom.shafts + ".");
    }
    if (loom && loom.treadles && weave.treadles > loom.treadles) {
      said.push(capital(w.weave) + " ties " + weave.treadles + " treadles, and " + loom.title + " has " + loom.treadles +
        "; some must be pressed together.");
    }
    if (loom && loom.heddles && weave.threading) {
      var threading = spread(weave, loom), shafts = Math.max(weave.shafts, threading.length > 2 && weave.shafts === 2 ? threading.length : 0);
      for (var shaft = 1; shaft <= shafts; shaft += 1) {
        var wanted = tenterhook.arithmetic.heddles(plan.reed.heddled, threading, shaft);
        var has = loom.heddles[shaft] === undefined ? loom.heddles[0] : loom.heddles[shaft];
        if (has !== undefined && wanted > has) {
          said.push("Shaft " + shaft + " takes " + wanted + " heddles and " + loom.title + " has " + has + " on it: " + (wanted - has) + " more to put on.");
        }
      }
    }
    if (Math.abs(off) > w.usual.sett_off) {
      said.push("The true sett is " + this.dense(plan.reed.sley.sett) + ", " + Math.round(Math.abs(off) * 100) + " % " +
        (off > 0 ? "closer" : "more open") + " than the " + this.dense(w.sett) + " wanted" + (w.sley === w.choices[0] ? ": no reed" + (loom && loom.reeds ? " of " + loom.title : "") + " comes nearer." : "."));
    }
    if (w.closeness > 1) said.push(this.dense(w.sett) + " is closer than the yarn can lie in " + w.weave + ", by Ashenhurst’s rule.");
    return said;
  };

  /* The widest that the loom does take, and the other looms that take what is wanted. */
  Words.prototype.instead = function (w, plan, loom, weave) {
    var a = tenterhook.arithmetic, looms = this.journal.looms, dents = Math.floor((loom.width * plan.reed.sley.dents_per_m) / 1000 + this.journal.sums.near);
    var kept = (plan.width.mm + plan.hems[0]) / plan.reed.mm, said = "";
    var fits = a.downward(a.width_of(dents, plan.reed.sley.dents_per_m) * kept - plan.hems[0], this.journal.step.tape);
    if (fits > 0) said = " The widest that fits there comes to " + this.size(fits) + (w.hemmed ? " made up." : w.wash === "settled" ? " settled." : " washed.");
    var others = Object.keys(looms).sort().filter(function (name) {
      var other = looms[name];
      return name !== w.loom && other.width && other.width + 0.001 >= plan.reed.mm && (!other.shafts || other.shafts >= (weave.shafts || 0));
    }).map(function (name) { return looms[name].title; });
    if (!others.length) return said;
    var last = others.length > 2 ? others.slice(0, -1).join(", ") + " or " + others[others.length - 1] : others.join(" or ");
    return said + " " + last + " would take it.";
  };

  /* `20 picks an inch (as in 3 past warps).` */
  Words.prototype.picks = function (w) {
    return this.dense(w.beat).split("/")[0] + " picks " + (this.journal.units.density === "in" ? "an inch" : "a centimetre") +
      (w.beatFrom ? " (" + w.beatFrom + ")" : "") + ".";
  };

  /* `At the pace of 23 past warps it takes 14 hours, 9 to 20.`; "" where too few tell. */
  Words.prototype.hours = function (plan) {
    var pace = this.journal.pace;
    if (!pace) return "";
    function hours(of) { return (of * plan.work).toFixed(0); }
    return "At the pace of " + pace.warps + " past warps it takes " + hours(pace.hours) + " hours, " + hours(pace.low) + " to " + hours(pace.high) + ".";
  };

  /* `Wind 20 bone, 12 times (4 slate, 24 bone): the edges differ.`; "" for one colour. */
  Words.prototype.order = function (reed) {
    if (!reed.order || reed.order.oneColour) return "";
    var ends = reed.order.ends(reed.times), match = ends.every(function (colour, at) { return colour === ends[ends.length - 1 - at]; });
    return "Wind " + reed.order.written(reed.times) + ": " + (match ? "the edges match" : "the edges differ") + ".";
  };

  /* `On The long loom, 48 in wide, 8 shafts.`; "" for any loom. */
  Words.prototype.loom = function (w) {
    var loom = this.journal.looms[w.loom];
    return loom ? "On " + loom.title + (loom.width ? ", " + this.size(loom.width) + " wide" : "") + (loom.shafts ? ", " + loom.shafts + " shafts" : "") + "." : "";
  };

  /* `Hem of 1 in with 3/8 in turned under, both ends, sewn after washing.` */
  Words.prototype.hem = function (w) {
    if (!w.hem.depth || !(w.hemmed || w.hem.first)) return "";
    return "Hem of " + w.typed.hem + " with " + (w.hem.turn ? w.typed.turn : "nothing") + " turned under, " + w.hem.where + ", sewn " +
      (w.hem.first ? "before" : "after") + " washing.";
  };

  Words.prototype.inShort = function (plan) {
    return "Sley " + this.size(plan.reed.mm) + ", weave each to " + this.woven(plan.weave) + ", wind " + this.wound(plan.warp.wind) + ".";
  };

  Words.prototype.wanted = function (w) {
    var finish = this.journal.finishes[w.finish], weft = this.journal.yarns[w.weft].title, warp = this.journal.yarns[w.warp].title;
    return [
      many(w.count, w.piece), this.bare(w.width) + " × " + this.size(w.long) + (w.hemmed ? " made up" : " washed"),
      w.wash === "settled" ? "once settled" : "after the first wash", weft === warp ? warp : warp + " with " + weft, w.weave,
      this.dense(w.sett), finish ? finish.title : "",
      w.fringe ? "fringe of " + w.typed.fringe + " at each end" : ""
    ].filter(Boolean).join(" · ");
  };

  tenterhook.Words = Words;
  tenterhook.many = many;
})();
