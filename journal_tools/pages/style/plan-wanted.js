/* The form: what is typed, what is usual where nothing is typed, and the address that keeps it. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var f = tenterhook.figures;
  var EDGES = { "both ends": [0, 2], "one end": [0, 1], "all four": [2, 2], sides: [2, 0] };

  function Form(form, journal) {
    this.form = form;
    this.journal = journal;
    this.home = journal.units; /* what a bare number is read in */
    this.tell(journal.units.length, "");
    this.fields = Array.prototype.slice.call(form.elements).filter(function (each) { return each.name; });
    this.first = this.values();
  }

  /* The answer is told in the units that were typed. */
  Form.prototype.tell = function (unit, sett) {
    var home = this.home, said = /(in|inch|[ep]pi|cm)\s*$/i.exec(sett), other = unit === home.length || sett ? home.density : unit === "in" ? "in" : "cm";
    this.journal.units = { length: unit, density: said ? (/cm/i.test(said[1]) ? "cm" : "in") : other, weight: home.weight };
    this.journal.step = this.journal.steps[unit];
  };

  Form.prototype.values = function () {
    var found = {};
    this.fields.forEach(function (each) { found[each.name] = each.value.trim(); });
    return found;
  };

  /* Only what differs from a fresh page, so that the address stays short enough to read. */
  Form.prototype.address = function () {
    var now = this.values(), first = this.first, told = new URLSearchParams();
    Object.keys(now).forEach(function (name) { if (now[name] !== first[name]) told.set(name, now[name]); });
    return String(told);
  };

  Form.prototype.fill = function (address) {
    var told = new URLSearchParams(address), first = this.first;
    this.fields.forEach(function (each) {
      if (each.name === "reed") { each.dataset.wanted = told.get("reed") || ""; return; }
      var value = told.has(each.name) ? told.get(each.name) : first[each.name];
      if (each.tagName !== "SELECT" || Array.prototype.some.call(each.options, function (one) { return one.value === value; })) {
        each.value = value;
      }
    });
  };

  Form.prototype.hint = function (name, text) {
    var hint = document.getElementById("plan-" + name + "-hint");
    var said = text || hint.dataset.plain;
    if (hint.textContent !== said) hint.textContent = said;
  };

  /* A figure of a field: `usual` where it is empty; a field that cannot be read is marked and told. */
  Form.prototype.figure = function (name, read, usual, right, least) {
    var field = this.form.elements[name], typed = field.value.trim();
    var value = typed ? read(typed) : usual;
    var wrong = typed ? !(value >= (least || 0)) || !isFinite(value) : value === undefined;
    if (wrong) field.setAttribute("aria-invalid", "true"); else field.removeAttribute("aria-invalid");
    if (wrong) this.hint(name, typed ? right : "wanted: " + right);
    else if (!typed || field.dataset.said) this.hint(name, "");
    if (wrong) this.wrong.push(name);
    return wrong ? null : value;
  };

  /* As in the newest warp in these yarns and this weave, else by the yarn. */
  Form.prototype.usualOf = function (warp, weft, weave) {
    var yarn = this.journal.yarns[warp], told = ((yarn.usual || {})[weave] || {})[weft] || {};
    var share = (this.journal.weaves[weave] || {}).room;
    var journal = this.journal;
    var guide = share && yarn.wraps ? yarn.wraps * share : share && yarn.room ? journal.sums.working * yarn.room * share : undefined;
    return {
      sett: told.sett || guide, settFrom: told.sett ? "as in " + told.as : guide ? (yarn.wraps ? "by its wraps, a guide" : "by Ashenhurst, a guide") : "",
      beat: told.beat, ratio: told.ratio, beaten: told.beaten, finish: told.finish || ""
    };
  };

  /* Everything that is wanted, in mm and to the metre; null while something cannot be read. */
  Form.prototype.read = function () {
    var form = this, v = this.values(), journal = this.journal, units = this.home, usual = journal.usual;
    this.tell(f.toldIn([v.width, v.long], units.length), v.sett);
    this.wrong = [];
    function length(name, otherwise, least) {
      return form.figure(name, function (typed) { return f.length(typed, units.length); }, otherwise,
        units.length === "in" ? "a length such as 18 1/4" : "a length such as 46.5", least);
    }
    function whole(name, otherwise, least) {
      return form.figure(name, function (typed) { return /^\d{1,5}$/.test(typed) ? Number(typed) : NaN; }, otherwise, "a whole number such as 4", least);
    }
    function density(name, otherwise) {
      return form.figure(name, function (typed) { return f.density(typed, units.density); }, otherwise, "a number such as " + (units.density === "in" ? "24" : "9.5"), 1);
    }
    var weft = v.weft || v.warp, weave = journal.weaves[v.weave] || {}, loom = journal.looms[v.loom] || {};
    var habits = this.usualOf(v.warp, weft, v.weave), warpYarn = journal.yarns[v.warp], weftYarn = journal.yarns[weft];
    this.figure("order", function (typed) { return tenterhook.colours(typed) ? 1 : NaN; }, 0, "stripes such as 12 times (4 slate, 24 bone)");
    var sett = density("sett", habits.sett);
    var beat = density("beat", (habits.ratio && sett ? habits.ratio * sett : habits.beat) ||
      (sett && weave.ends_to_picks ? sett / weave.ends_to_picks : sett));
    var w = {
      piece: v.piece || "piece", count: whole("count", undefined, 1), width: length("width", undefined, 5), long: length("long", undefined, 5),
      hemmed: v.sized === "made_up", wash: v.wash, warp: v.warp, weft: weft, weave: v.weave, finish: v.finish || habits.finish,
      sett: sett, beat: beat, order: v.order, repeat: whole("repeat", weave.repeat || 1, 1), balance: whole("balance", weave.balance || 0),
      hem: {
        depth: length("hem", 0), turn: length("turn", 0), edges: EDGES[v.edges], where: v.edges, first: v.sewn === "before washing"
      },
      fringe: length("fringe", 0), gap: length("gap", usual.gap), loom: v.loom, waste: length("waste", loom.waste || usual.waste),
      header: length("header", usual.header), sample: length("sample", 0), retie: loom.retie || usual.retie, floating: v.floating === "yes",
      step: journal.step, usual: usual, warpTex: warpYarn.tex, weftTex: weftYarn.tex
    };
    if (this.wrong.length) return null;
    /* What was typed stands in the record as it was typed. */
    w.typed = {};
    ["width", "long", "hem", "turn", "fringe"].forEach(function (name) { w.typed[name] = f.asTyped(v[name], units.length); });
    w.typed.sett = v.sett;
    w.typed.beat = v.beat;
    w.title = v.title || w.piece.charAt(0).toUpperCase() + w.piece.slice(1) + (w.count > 1 && !/s$/.test(w.piece) ? "s" : "") + " in " + warpYarn.title;
    var greatest = warpYarn.room && weave.room ? warpYarn.room * weave.room : null;
    w.closeness = greatest ? w.sett / greatest : null;
    w.tapeDoubt = Math.max(journal.step.tape / Math.sqrt(12), journal.sums.cloth_sd);
    w.kind = {
      weave: w.weave, finish: w.finish, warp_yarn: w.warp, weft_yarn: weft, warp_fibre: warpYarn.fibre, weft_fibre: weftYarn.fibre,
      closeness: w.closeness
    };
    w.guessedBeat = !v.beat && !habits.beat;
    w.beatFrom = v.beat ? "" : habits.beat ? "as in " + (habits.beaten > 1 ? habits.beaten + " past warps" : "one past warp")
      : "a guess" + (weave.ends_to_picks ? ", as " + v.weave + " usually has" : ": balanced, as many picks as ends");
    this.reeds(w, loom);
    this.hints(w, v, habits, weave, loom);
    return w;
  };

  /* The reeds of the loom with the sley order that comes nearest in each. */
  Form.prototype.reeds = function (w, loom) {
    var select = this.form.elements.reed, reeds = loom.reeds || this.journal.usual.reeds[this.journal.units.density], units = this.journal.units;
    var kept = select.dataset.wanted || select.value;
    var found = tenterhook.arithmetic.sleyings(w.sett, reeds.map(function (reed) { return reed.per_m; }));
    found.forEach(function (sley) {
      var reed = reeds.filter(function (each) { return each.per_m === sley.dents_per_m; })[0];
      sley.text = reed.text;
      sley.value = reed.text + " " + sley.order.join("-");
    });
    var listed = found.map(function (sley) { return sley.value; }).join("|");
    if (select.dataset.listed !== listed) {
      while (select.options.length > 1) select.remove(1);
      found.forEach(function (sley) {
        select.add(new Option(sley.text + ", " + sley.order.join("-") + " a dent: " + f.dense(sley.sett, units.density), sley.value));
      });
      select.dataset.listed = listed;
      select.value = found.some(function (sley) { return sley.value === kept; }) ? kept : "";
    }
    delete select.dataset.wanted;
    w.choices = found;
    w.reeds = [found[0].dents_per_m];
    w.sley = found.filter(function (sley) { return sley.value === select.value; })[0] || found[0];
  };

  Form.prototype.hints = function (w, v, habits, weave, loom) {
    var units = this.journal.units, form = this, finish = this.journal.finishes[habits.finish];
    var colours = this.journal.yarns[v.warp].colours || [];
    function usually(name, mm, from) { if (!v[name]) form.hint(name, f.shown(mm, units.length, form.journal.step.tape) + (from ? ", " + from : "")); }
    if (!v.sett) this.hint("sett", f.trimmed(w.sett * f.MM[units.density] / 1000, 1) + ", " + habits.settFrom);
    if (!v.beat) this.hint("beat", f.trimmed(w.beat * f.MM[units.density] / 1000, 1) + ", " + w.beatFrom);
    if (!v.order && colours.length > 1) this.hint("order", "for stripes, such as 12 times (4 " + colours[1] + ", 24 " + colours[0] + ")");
    if (!v.repeat) this.hint("repeat", w.repeat > 1 ? w.repeat + ", as the weave has" : "any number");
    if (!v.balance) this.hint("balance", w.balance ? w.balance + ", as the weave has" : "none");
    if (!v.finish) this.hint("finish", finish ? "last time: " + finish.title : "any");
    usually("waste", w.waste, loom.waste ? "as this loom takes" : "a usual allowance");
    usually("gap", w.gap, "where they are cut apart");
    usually("header", w.header, "until the warp is spread");
  };

  tenterhook.Form = Form;
})();
