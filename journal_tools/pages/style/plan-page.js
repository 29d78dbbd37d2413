/* Plan a warp: reads the form, reckons, and shows what hands do. Nothing leaves the page. */
(function () {
  "use strict";
  var tenterhook = window.tenterhook, journal = tenterhook.journal, f = tenterhook.figures;
  var element = document.getElementById("plan");
  if (!element || !journal) return;
  var form = new tenterhook.Form(element, journal), words = new tenterhook.Words(journal);
  var answer = document.getElementById("plan-answer"), said = document.getElementById("plan-said"), waiting = 0;

  function make(name, more) {
    var made = document.createElement(name);
    Object.keys(more || {}).forEach(function (key) { made.setAttribute(key, more[key]); });
    Array.prototype.slice.call(arguments, 2).forEach(function (child) {
      if (child !== null && child !== undefined) made.append(child);
    });
    return made;
  }

  function list(kind, all) { return make.apply(null, ["ul", { class: kind }].concat(all.map(function (one) { return make("li", {}, one); }))); }

  function sentence(text, kind) { return make("p", { class: kind || "said" }, text.replace(/(\d) (?=%|\d+\/\d)/g, "$1\u00a0")); }

  function section(title) {
    return make.apply(null, ["section", {}, make("h3", {}, title)].concat(Array.prototype.slice.call(arguments, 1)));
  }

  /* columns: [words, whether numbers]. rows: cells, the first of which is the heading. */
  function table(name, columns, rows, kind) {
    var head = make.apply(null, ["tr", {}].concat(columns.map(function (each) {
      return make("th", { scope: "col", class: each[1] ? "number" : "" }, each[0]);
    })));
    var body = make.apply(null, ["tbody", {}].concat(rows.map(function (row) {
      return make.apply(null, ["tr", { class: row.kind || "" }].concat(row.map(function (cell, n) {
        var made = make(n ? "td" : "th", n ? { class: columns[n][1] ? "number" : "", "data-of": columns[n][0] } : { scope: "row" });
        made.append(Array.isArray(cell) ? cell[0] : cell);
        if (Array.isArray(cell) && cell[1]) made.append(" ", make("small", {}, cell[1]));
        return made;
      })));
    })));
    return make("div", { class: "wide" }, make("table", { class: "figures " + (kind || "") }, make("caption", { class: "unseen" }, name), make("thead", {}, head), body));
  }

  function slip(title, figure, small) {
    return make("div", { class: "slip" }, make("p", { class: "label" }, title), make("p", { class: "big" }, figure), make("p", { class: "small" }, small));
  }

  function beliefs(w) {
    function about(span) { return tenterhook.beliefOf(journal.forecast, span, w.kind); }
    /* Cloth that is fulled is stopped at its size: past decisions stand for a forecast. */
    var fulled = (journal.finishes[w.finish] || {}).fulling && (journal.fulled[w.warp] || journal.fulled[""]);
    if (fulled) {
      return {
        width: tenterhook.Belief.normal(fulled.width), length: tenterhook.Belief.normal(fulled.length), fulled: fulled.warps,
        draw: about("width in_reed on_loom"), takeUp: about("length warp on_loom"),
        washWidth: about("width off_loom " + w.wash), washLength: about("length off_loom " + w.wash)
      };
    }
    return {
      width: about("width in_reed " + w.wash), draw: about("width in_reed on_loom"), washWidth: about("width off_loom " + w.wash),
      length: about("length on_loom " + w.wash), takeUp: about("length warp on_loom"), washLength: about("length off_loom " + w.wash)
    };
  }

  function tapes(w, plan) {
    var wide = answer.clientWidth > 480, own = w.hemmed ? "made up" : w.wash === "settled" ? "settled" : "washed", unit = journal.units.length;
    function expected(size, ink) { return { label: own, mm: size.mm, low: size.low, high: size.high, text: words.size(size.mm), ink: ink }; }
    var width = [
      { label: "in the reed", mm: plan.reed.mm, text: words.size(plan.reed.mm), ink: 1 },
      { label: "on the loom", mm: plan.onLoom.mm, low: plan.onLoom.low, high: plan.onLoom.high, text: words.size(plan.onLoom.mm), ink: 3 },
      expected(plan.width, 5)
    ];
    var length = [{ label: "on the loom", mm: plan.weave, text: words.woven(plan.weave), ink: 1 }, expected(plan.length, 5)];
    return make("figure", { class: "taped" },
      tenterhook.tape("width", unit, width, w.width, "Width: " + width.map(function (row) { return row.label + " " + row.text; }).join(", ") + ".", wide),
      tenterhook.tape("length", unit, length, w.long, "Length: " + length.map(function (row) { return row.label + " " + row.text; }).join(", ") + ".", wide));
  }

  function losses(w, plan, b) {
    function row(name, size, start, belief) {
      return [name, [words.size(size.mm), ""], words.between(size.low, size.high), w.count > 1 ? words.size(size.worst) : "–",
        [f.perCent(size.loss), f.perCent(1 - Math.exp(belief.quantile(0.95, "batch"))).replace(" %", "") + " to " + f.perCent(1 - Math.exp(belief.quantile(0.05, "batch")))]];
    }
    var own = w.hemmed ? "made up" : "washed";
    return table("What to expect", [["size", 0], ["expect", 1], ["nine times in ten", 1], ["worst of " + w.count, 1], ["loss", 1]], [
      row("width on the loom", plan.onLoom, plan.reed.mm, b.draw), row("width " + own, plan.width, plan.reed.mm, b.width),
      row("length " + own, plan.length, plan.weave, b.length)
    ], "stacked");
  }

  function ribbon(plan) {
    var SVG = "http://www.w3.org/2000/svg", svg = document.createElementNS(SVG, "svg"), at = 0;
    [["class", "ribbon"], ["width", "100%"], ["height", "26"], ["viewBox", "0 0 1000 26"], ["preserveAspectRatio", "none"], ["aria-hidden", "true"]]
      .forEach(function (pair) { svg.setAttribute(pair[0], pair[1]); });
    plan.warp.lines.forEach(function (line) {
      var rect = document.createElementNS(SVG, "rect"), share = (line.mm / plan.warp.wind) * 1000;
      [["class", kindOf(line)], ["x", at], ["width", share], ["height", 26]].forEach(function (pair) { rect.setAttribute(pair[0], pair[1]); });
      at += share;
      svg.append(rect);
    });
    return svg;
  }

  function kindOf(line) { return line.woven ? "cloth" : line.rest ? "rest" : "waste"; }

  function went(w, plan) {
    function row(name, mm, small, kind) { var made = [[name, small], words.woven(mm)]; made.kind = kind; return made; }
    var rows = plan.warp.lines.map(function (line) {
      return row(line.name, line.mm, line.count > 1 ? line.count + " of " + words.woven(line.each) : line.rest ? f.perCent(plan.takeUp) : "", kindOf(line));
    });
    rows.push(row("in all", plan.warp.mm, "", "total"), row("to wind", plan.warp.wind, words.wound(plan.warp.wind), "total"));
    var more = plan.windLong > plan.warp.wind ? sentence("Should the warp take up as much as it may, " + words.wound(plan.windLong) + ".", "small") : null;
    return section("Where each " + (journal.units.length === "in" ? "inch" : "centimetre") + " goes", ribbon(plan), table("Where the warp goes", [["what", 0], ["length", 1]], rows, "account"), more);
  }

  function yarn(w, plan) {
    function metres(mm) { return journal.units.length === "in" ? Math.ceil(mm / 914.4).toLocaleString("en") + " yd" : Math.ceil(mm / 1000).toLocaleString("en") + " m"; }
    function row(use, name, need) {
      return [[journal.yarns[name].title, use], need ? metres(need.mm) : "–", need && need.g ? words.grams(need.g * (1 + journal.usual.spare_yarn)) : "not known"];
    }
    /* The warp in all its colours, then each of them by its ends. */
    var needs = {}, told = [], counted = {}, warps = [row("warp", w.warp, plan.yarn.warp)], whole = plan.yarn.warp;
    if (plan.reed.order && plan.reed.order.striped) {
      plan.reed.order.ends(plan.reed.times).forEach(function (colour) { counted[colour] = (counted[colour] || 0) + 1; });
    }
    Object.keys(counted).forEach(function (colour) {
      var share = counted[colour] / plan.reed.ends, some = row("", w.warp, { mm: whole.mm * share, g: whole.g && whole.g * share });
      some[0] = ["of it " + colour, tenterhook.many(counted[colour], "end")];
      warps.push(some);
    });
    [[w.warp, plan.yarn.warp], [w.weft, plan.yarn.weft]].forEach(function (pair) {
      if (pair[1] && pair[1].g) needs[pair[0]] = (needs[pair[0]] || 0) + pair[1].g * (1 + journal.usual.spare_yarn);
    });
    Object.keys(needs).forEach(function (name) {
      var have = (journal.stock || {})[name], title = journal.yarns[name].title;
      if (!have) return;
      var short = needs[name] - have.on_hand;
      told.push(sentence("You need " + words.grams(needs[name]) + " of " + title + " and have " + have.text +
        (short > 0 ? ": " + words.grams(short) + " short." : "."), short > 0 ? "beyond" : "small"));
      if (have.price && have.put_up) told.push(sentence("The yarn in it costs " + ((needs[name] * have.price) / have.put_up).toFixed(2) + " " + have.currency + ".", "small"));
      if (short > 0 && have.put_up) told.push(sentence("Buy " + tenterhook.many(tenterhook.arithmetic.cones(short, have.put_up), have.word) + ".", "small"));
    });
    return section.apply(null, ["Yarn, with " + f.trimmed(journal.usual.spare_yarn * 100, 0) + " % to spare",
      table("Yarn", [["yarn", 0], ["length", 1], ["weight", 1]], warps.concat([row("weft", w.weft, plan.yarn.weft)]))].concat(told));
  }

  function reeds(w, plan) {
    var rows = w.choices.slice(0, 4).map(function (sley) {
      var made = [[sley.text, sley.value === w.sley.value ? "taken" : ""], sley.order.join("-"), words.dense(sley.sett), f.perCent(sley.off).replace(/\.\d/, "")];
      if (sley.value === w.sley.value) made.kind = "whole";
      return made;
    });
    return section("Reeds for " + words.dense(w.sett), table("Reeds", [["reed", 0], ["in a dent", 0], ["true sett", 1], ["off", 1]], rows));
  }

  function show(w, b, plan) {
    var rests = b.fulled === undefined ? words.restsOn(w) : words.fulled(b.fulled), limits = words.limits(w, plan), finish = journal.finishes[w.finish], reed = plan.reed;
    var repeats = reed.repeats && w.repeat > 2 ? ", " + reed.repeats + " repeats" + (reed.over ? " and " + reed.over + (reed.balanced ? " to balance" : " over") : "") : "";
    var parts = [
      make("div", { class: "only-printed" }, make("p", {}, make("strong", {}, w.title), ": ", words.wanted(w)),
        make("p", {}, [words.loom(w), words.hem(w)].filter(Boolean).join(" "))),
      make("p", { class: "rests" }, rests.guess ? make("strong", {}, "A guess: ") : null, rests.text),
      limits.length ? make("div", { class: "problem fault" }, list("", limits)) : null,
      b.fulled !== undefined ? sentence("Stop the fulling at the size wanted; what follows is how far off past ones were stopped.")
        : plan.useless ? make("div", { class: "problem question" }, make("strong", {}, "Sample first: "), "what it will come to is too little known to weave by. " + words.sample(plan)) : null,
      make("div", { class: "slips" },
        slip("Sley", words.size(reed.mm), tenterhook.many(reed.dents, "dent") + " of " + words.reed(w.sley) + "; " + tenterhook.many(reed.ends, "end") + repeats),
        slip(w.count > 1 ? "Weave each" : "Weave", words.woven(plan.weave), "tension on" + (plan.picks ? ", or " + plan.picks + " picks" : "")),
        slip("Wind", words.wound(plan.warp.wind), tenterhook.many(reed.ends, "end")))
    ];
    var hours = words.hours(plan);
    var wind = words.order(reed);
    if (wind) parts.push(sentence(wind));
    words.sentences(w, plan, b.fulled !== undefined).forEach(function (text) { parts.push(sentence(text)); });
    if (!plan.useless && b.fulled === undefined && plan.sample.worth) parts.push(sentence(words.sample(plan), "small"));
    parts.push(sentence(words.picks(w) + (w.guessedBeat ? " The length is what rules." : "")));
    if (hours) parts.push(sentence(hours));
    parts.push(tapes(w, plan), losses(w, plan, b), went(w, plan), yarn(w, plan), reeds(w, plan));
    if (finish && finish.cautions) parts.push(make("section", { class: "caution", "aria-label": "Cautions" }, make("h3", {}, "Take care"), sentence(finish.cautions, "")));
    document.getElementById("plan-shown").replaceChildren.apply(document.getElementById("plan-shown"), parts.filter(Boolean));
    document.getElementById("plan-record").textContent = tenterhook.record(w, plan, journal, form.home);
    document.getElementById("plan-file").textContent = tenterhook.nameOf(w.title) + ".md";
    return words.inShort(plan);
  }

  function tell(text) {
    clearTimeout(waiting);
    waiting = setTimeout(function () { if (said.textContent !== text) said.textContent = text; }, 700);
  }

  function update(keep) {
    var w = form.read();
    answer.classList.toggle("stale", !w);
    if (!w) return missing();
    answer.querySelector(".as-record").hidden = false;
    var b = beliefs(w), plan = tenterhook.reckon(w, b);
    answer.hidden = false;
    tenterhook.shown = { wanted: w, plan: plan };
    var short = show(w, b, plan);
    document.getElementById("plan-short").textContent = short;
    tell(short);
    if (keep) remember();
  }

  /* Nothing can be reckoned yet, or no longer: say which fields it waits for. */
  function missing() {
    var text = "Wanted first: " + form.wrong.map(function (name) { return element.elements[name].labels[0].textContent.toLowerCase(); }).join(", ") + ".";
    if (!tenterhook.shown) {
      answer.hidden = false;
      answer.classList.remove("stale");
      answer.querySelector(".as-record").hidden = true;
      document.getElementById("plan-shown").replaceChildren(sentence(text));
    }
    document.getElementById("plan-short").textContent = text;
    tell(text);
  }

  function remember() {
    var address = form.address();
    try { history.replaceState(null, "", address ? "#" + address : location.pathname + location.search); } catch (refused) { location.replace("#" + address); }
  }

  function copy(text, button) {
    var before = button.textContent;
    function done() { button.textContent = "Copied"; setTimeout(function () { button.textContent = before; }, 1500); tell("Copied."); }
    function byHand() {
      var area = make("textarea", { class: "unseen", "aria-hidden": "true" });
      area.value = text;
      document.body.append(area);
      area.select();
      if (document.execCommand("copy")) done();
      area.remove();
      button.focus();
    }
    if (navigator.clipboard) navigator.clipboard.writeText(text).then(done, byHand); else byHand();
  }

  answer.addEventListener("click", function (event) {
    var what = event.target.dataset.does, record = document.getElementById("plan-record").textContent;
    if (what === "copy") copy(record, event.target);
    if (what === "address") { remember(); copy(location.href, event.target); }
    if (what === "print") window.print();
    if (what === "download") {
      var link = make("a", { download: document.getElementById("plan-file").textContent, href: URL.createObjectURL(new Blob([record], { type: "text/markdown" })) });
      link.click();
      setTimeout(function () { URL.revokeObjectURL(link.href); }, 1000);
    }
  });
  /* An address that holds a plan; any other, such as that of the way past the bar, is none of ours. */
  function filled() {
    var holds = location.hash.indexOf("=") > 0;
    if (holds) form.fill(location.hash.slice(1));
    return holds;
  }

  element.addEventListener("submit", function (event) { event.preventDefault(); });
  element.addEventListener("input", function () { update(true); });
  window.addEventListener("hashchange", function () { if (filled()) update(false); });
  document.getElementById("plan-short").addEventListener("click", function () { answer.scrollIntoView(); answer.focus(); });
  filled();
  update(false);
})();
