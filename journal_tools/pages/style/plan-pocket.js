/* From the figures that the journal put into the page to what one kind of cloth will do.
   A cloth is a short row of terms (weave, fibres, yarns, finish, how close it is set); the mean is the
   sum of what each term does, and the doubt the sum over each pair of them. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var told = tenterhook.journal.sums;

  /* Closeness as the forecast uses it: 0 at the centre and where unknown, +1 for each 10 % closer. */
  function covariate(closeness) {
    if (!(closeness > 0)) return 0;
    return Math.min(told.clip, Math.max(-told.clip, Math.log(closeness / told.centre) / told.per_unit));
  }

  /* The terms of a kind of cloth: [column, weight], and [prior variance, weight] of what is new. */
  function terms(forecast, span, kind) {
    var known = [[0, 1]], fresh = [], merged = {};
    var direction = span.split(" ")[0], share = forecast.shares[direction], columns = forecast.columns[direction];
    /* A name that nobody knows is a name too: "" has an effect of its own. */
    function add(what, name, weight) {
      var at = (columns[what] || {})[name || ""];
      var key = at === undefined ? what + " " + (name || "") : at;
      merged[key] = (merged[key] || 0) + weight;
    }
    add("weave", kind.weave, 1);
    add("finish", kind.finish, 1);
    add("fibre", kind.warp_fibre, share.warp);
    add("fibre", kind.weft_fibre, share.weft);
    add("yarn", kind.warp_yarn, share.warp);
    add("yarn", kind.weft_yarn, share.weft);
    Object.keys(merged).forEach(function (key) {
      if (/^\d+$/.test(key)) known.push([Number(key), merged[key]]);
      else fresh.push([forecast.spans[span].fresh[key.split(" ")[0]] || 0, merged[key]]);
    });
    var close = covariate(kind.closeness);
    if (close) known.push([1, close]);
    return { known: known, fresh: fresh };
  }

  function at(i, j) { return i >= j ? (i * (i + 1)) / 2 + j : (j * (j + 1)) / 2 + i; }

  /* kind: weave, warp_yarn, weft_yarn, warp_fibre, weft_fibre, finish, closeness. span: "width in_reed washed 1". */
  tenterhook.beliefOf = function (forecast, span, kind) {
    var figures = forecast.spans[span], row = terms(forecast, span, kind);
    var mean = 0, doubt = 0;
    row.known.forEach(function (one) {
      mean += one[1] * figures.mean[one[0]] * told.mean;
      row.known.forEach(function (other) { doubt += one[1] * other[1] * figures.doubt[at(one[0], other[0])]; });
    });
    row.fresh.forEach(function (one) { doubt += one[1] * one[1] * one[0]; });
    var shared = Math.sqrt(Math.max(0, doubt + figures.warp) * figures.unit);
    var tail = { at: forecast.chances, spreads: row.fresh.length ? figures.tail_new : figures.tail };
    return new tenterhook.Belief(mean, shared, Math.sqrt(figures.piece * figures.unit), tail);
  };
  tenterhook.covariate = covariate;
})();
