/* A colour order that is made longer or shorter by whole repeats: the notation as journal_tools/notation reads
   it, and the part that gives way as journal_tools/planning/order.py chooses it. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var a = tenterhook.arithmetic;
  var MOST = tenterhook.journal.sums.most_threads;
  var ITEM = /\s*(?:(\d+)\s*times\s*\(|(mirrored|pointed)\s*\(|(\()|(?:(\d+)\s+)?([\p{L}\p{N}][\p{L}\p{N}_-]*)|(,)|(\)))\s*/uy;
  var NO_COLOUR = /^(?:[0-9_-]*(?:times)?|[xX])$/;
  var TIMES = /^\s*(\d+)\s*times\s*\(([^]*)\)\s*$/, STRIPE = /^\s*(\d+)\s+(\p{L}[\p{L}\p{N}_-]*)\s*$/u;

  /* Every thread's colour; null for what is no colour order. */
  function colours(text) {
    var plain = text.replace(/[–—−‐‑]/g, "-"), items = [], outer = [], expecting = true;
    ITEM.lastIndex = 0;
    while (expecting || ITEM.lastIndex < plain.length) {
      var found = ITEM.exec(plain);
      if (!found) return null;
      var opens = found[1] !== undefined || found[2] || found[3];
      if (expecting && opens) {
        outer.push({ times: found[1] === undefined ? 1 : Number(found[1]), fold: found[2], before: items });
        items = [];
      } else if (expecting && found[5] && !NO_COLOUR.test(found[5])) {
        var many = found[4] === undefined ? 1 : Number(found[4]);
        if (!many || many > MOST) return null;
        items = items.concat(Array(many).fill(found[5]));
        expecting = false;
      } else if (!expecting && found[6]) {
        expecting = true;
      } else if (!expecting && found[7] && outer.length) {
        var one = outer.pop(), back = one.fold === "pointed" ? items.slice(0, -1).reverse() : one.fold ? items.slice().reverse() : [];
        var inside = items.concat(back);
        if (!one.times || one.before.length + one.times * inside.length > MOST) return null;
        items = one.before;
        for (var n = 0; n < one.times; n += 1) items = items.concat(inside);
      } else return null;
      if (items.length > MOST) return null;
    }
    return outer.length ? null : items;
  }

  /* The items of the outermost list. */
  function parts(text) {
    var depth = 0, found = [""];
    Array.from(text).forEach(function (mark) {
      depth += (mark === "(") - (mark === ")");
      if (mark === "," && !depth) found.push(""); else found[found.length - 1] += mark;
    });
    return found;
  }

  function stripes(items) {
    var found = [];
    items.forEach(function (colour) {
      var last = found[found.length - 1];
      if (last && last[1] === colour) last[0] += 1; else found.push([1, colour]);
    });
    return found.map(function (stripe) { return stripe.join(" "); }).join(", ");
  }

  /* The order of a text, and which part of it gives way: the one of most ends; a few stripes are the repeat. */
  function Order(text, ends) {
    var all = parts(text), sizes = all.map(function (part) { return colours(part).length; });
    var whole = sizes.reduce(function (sum, size) { return sum + size; }, 0), at = sizes.indexOf(Math.max.apply(null, sizes));
    var times = TIMES.exec(all[at]), stripe = STRIPE.exec(all[at]);
    this.before = all.slice(0, at).join(",").trim();
    this.after = all.slice(at + 1).join(",").trim();
    this.repeat = times ? times[2] : stripe ? stripe[2] : all[at].trim().replace(/^\(([^]*)\)$/, "$1");
    this.balanced = 0;
    if (all.length > 1 && whole < ends / 2 && !all.some(function (part) { return TIMES.test(part); })) {
      this.before = this.after = "";
      this.repeat = text.trim();
      this.balanced = a.balance(colours(text));
    }
    this.items = colours(this.repeat);
    this.first = this.before ? colours(this.before) : [];
    this.last = this.after ? colours(this.after) : [];
    this.beside = this.first.length + this.last.length + this.balanced;
    this.oneColour = this.items.length === 1;
    this.striped = !this.oneColour || this.beside > 0;
  }

  Order.prototype.ends = function (times) {
    var all = this.first;
    for (var n = 0; n < times; n += 1) all = all.concat(this.items);
    return all.concat(this.items.slice(0, this.balanced), this.last);
  };

  /* As it was typed, but for the number of repeats. */
  Order.prototype.written = function (times) {
    var repeat = this.repeat.trim();
    var middle = this.oneColour ? times + " " + repeat : times > 1 ? times + " times (" + repeat + ")" : repeat;
    return [this.before, middle, stripes(this.items.slice(0, this.balanced)), this.after].filter(Boolean).join(", ");
  };

  tenterhook.colours = colours;
  tenterhook.Order = Order;
})();
