/* The arithmetic of a plan: the same, function by function, as journal_tools/planning/arithmetic.py and
   sleying.py, and held against the same table of cases. Lengths are in mm, densities in threads or dents
   to the metre, yarn in tex, weights in g, losses and shares are fractions. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var told = tenterhook.journal.sums; /* the constants of the Python, told once */
  var NEAR = told.near, MOST_IN_A_DENT = told.most_in_a_dent;

  function sum(numbers) { return numbers.reduce(function (all, each) { return all + each; }, 0); }

  function orders() {
    var found = {};
    function add(order) { found[order.join("-")] = order; }
    for (var few = 1; few <= MOST_IN_A_DENT; few += 1) add([few]);
    for (few = 0; few < MOST_IN_A_DENT; few += 1) {
      [2, 3, 4].forEach(function (dents) {
        [1, dents - 1].forEach(function (full) {
          var order = Array(dents - full).fill(few).concat(Array(full).fill(few + 1));
          add(few ? order : order.reverse());
        });
      });
    }
    return Object.keys(found).map(function (key) { return found[key]; }).sort(function (a, b) {
      if (a.length !== b.length) return a.length - b.length;
      for (var n = 0; n < a.length; n += 1) if (a[n] !== b[n]) return a[n] - b[n];
      return 0;
    });
  }

  var a = {
    before_loss: function (after, loss) { return after / (1 - loss); },
    after_loss: function (before, loss) { return before * (1 - loss); },
    whole_loss: function (losses) {
      return 1 - losses.reduce(function (left, loss) { return left * (1 - loss); }, 1);
    },
    nearest: function (mm, step) { return Math.floor(mm / step + 0.5 + NEAR) * step; },
    upward: function (mm, step) { return Math.ceil(mm / step - NEAR) * step; },
    downward: function (mm, step) { return Math.floor(mm / step + NEAR) * step; },
    sett_of: function (dentsPerM, sley) { return (dentsPerM * sum(sley)) / sley.length; },
    dents_in: function (width, dentsPerM) { return Math.floor((width * dentsPerM) / 1000 + 0.5 + NEAR); },
    width_of: function (dents, dentsPerM) { return (dents * 1000) / dentsPerM; },
    ends_in: function (dents, sley) {
      return Math.floor(dents / sley.length) * sum(sley) + sum(sley.slice(0, dents % sley.length));
    },
    dents_for: function (ends, sley) {
      var dents = Math.floor(ends / sum(sley)) * sley.length, left = ends % sum(sley);
      for (var n = 0; n < sley.length && left > 0; n += 1) { dents += 1; left -= sley[n]; }
      return dents;
    },
    whole_repeats: function (ends, repeat, beside) {
      return Math.max(1, Math.floor((ends - (beside || 0)) / repeat + 0.5 + NEAR));
    },
    balance: function (repeat) {
      for (var extra = 0; extra < repeat.length; extra += 1) {
        var row = repeat.concat(repeat.slice(0, extra)).map(String);
        if (row.join("|") === row.slice().reverse().join("|")) return extra;
      }
      return 0;
    },
    cloth_for: function (madeUp, hems, hemRatio) { return madeUp + hems * (hemRatio === undefined ? 1 : hemRatio); },
    weave_to: function (cloth, ratio) { return cloth / ratio; },
    picks_for: function (length, picksPerM) { return Math.floor((length * picksPerM) / 1000 + 0.5 + NEAR); },
    warp_for: function (cloth, takeUp) { return cloth / (1 - takeUp); },
    hems_eat: function (depth, turn, edges) { return (depth + turn) * edges; },
    warp_grams: function (ends, warp, tex) { return (ends * warp * tex) / 1e6; },
    weft_mm: function (reed) { return reed * told.weft_over_reed; },
    weft_grams: function (picks, reed, tex) { return (picks * a.weft_mm(reed) * tex) / 1e6; },
    cones: function (short, putUp) { return Math.max(0, Math.ceil(short / putUp - NEAR)); },
    one_in: function (chance) { return Math.max(2, Math.floor(1 / chance + 0.5 + NEAR)); },
    heddles: function (ends, threading, shaft) {
      var on = threading.map(function (end) { return end.indexOf(shaft) >= 0; }), over = ends % on.length;
      return Math.floor(ends / on.length) * on.filter(Boolean).length + on.slice(0, over).filter(Boolean).length;
    },
    /* The best sley order in each reed, the best reed first. */
    sleyings: function (wanted, reeds) {
      function cost(dents, order) {
        var fullest = Math.max.apply(null, order);
        return Math.abs(Math.log(a.sett_of(dents, order) / wanted)) + told.longer[order.length] + told.crowded * fullest +
          told.streaks * Math.max(0, fullest - 3) + (order.indexOf(0) >= 0 ? told.streaks : 0);
      }
      return reeds.filter(function (dents, n) { return reeds.indexOf(dents) === n; }).map(function (dents) {
        var best = a.orders.reduce(function (one, other) { return cost(dents, other) < cost(dents, one) ? other : one; });
        var sett = a.sett_of(dents, best);
        return { dents_per_m: dents, order: best, sett: sett, off: sett / wanted - 1, cost: cost(dents, best) };
      }).sort(function (one, other) {
        var apart = Math.round(one.cost * 1e9) - Math.round(other.cost * 1e9);
        return apart || other.dents_per_m - one.dents_per_m;
      });
    },
    orders: orders()
  };
  tenterhook.arithmetic = a;
})();
