/* What a cloth will do, from the few numbers that the journal put into the page.
   A belief is of ln(last size / first size): a mean, the spread that all pieces of a warp share, and
   the spread of each piece beside it. `tail` says how many spreads lie below each chance: fewer warps
   behind a figure make longer tails than a normal law has. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var PARTS = 200; /* the shared part is weighed at so many equal chances */

  function straight(xs, ys, x) {
    var n = 1;
    while (n < xs.length - 1 && x > xs[n]) n += 1;
    return ys[n - 1] + ((ys[n] - ys[n - 1]) * (x - xs[n - 1])) / (xs[n] - xs[n - 1]);
  }

  /* The chance below z on a normal law: Abramowitz and Stegun 7.1.26, good to 1e-7. */
  function normal(z) {
    var x = Math.abs(z) / Math.SQRT2, t = 1 / (1 + 0.3275911 * x);
    var poly = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
    var above = (poly * Math.exp(-x * x)) / 2;
    return z < 0 ? above : 1 - above;
  }

  /* z of a chance on a normal law, by halving: precise enough for a tape, and plain. */
  function deviate(p) {
    var low = -9, high = 9;
    for (var n = 0; n < 50; n += 1) {
      var middle = (low + high) / 2;
      if (normal(middle) < p) low = middle; else high = middle;
    }
    return (low + high) / 2;
  }

  /* tail: {at: chances, spreads: how many spreads away}. Between them, straight on the scale of a normal law. */
  function Belief(mean, shared, own, tail) {
    this.mean = mean;
    this.shared = shared;
    this.own = own;
    this.zs = tail.at.map(deviate);
    this.spreads = tail.spreads;
  }

  Belief.prototype.away = function (p) { return straight(this.zs, this.spreads, deviate(p)); };

  /* ln ratio below which the chance is p, of one piece, or of the mean of many ("batch"). */
  Belief.prototype.quantile = function (p, of) {
    var sd = of === "batch" ? this.shared : Math.hypot(this.shared, this.own);
    return this.mean + sd * this.away(p);
  };

  /* The chance that the smallest of `number` pieces is below a ln ratio. */
  Belief.prototype.chanceWorstBelow = function (ratio, number) {
    var sum = 0;
    this.levels = this.levels || Array.from({ length: PARTS }, function (_, n) { return this.away((n + 0.5) / PARTS); }, this);
    for (var n = 0; n < PARTS; n += 1) {
      var beyond = ratio - this.mean - this.shared * this.levels[n];
      var one = this.own > 0 ? normal(beyond / this.own) : beyond >= 0 ? 1 : 0;
      sum += 1 - Math.pow(1 - one, number);
    }
    return sum / PARTS;
  };

  /* ln ratio below which the smallest of `number` pieces is with chance p. */
  Belief.prototype.worst = function (p, number) {
    var spread = Math.hypot(this.shared, this.own);
    var low = this.mean - 12 * spread, high = this.mean + 12 * spread;
    for (var n = 0; n < 40; n += 1) {
      var middle = (low + high) / 2;
      if (this.chanceWorstBelow(middle, number) < p) low = middle; else high = middle;
    }
    return (low + high) / 2;
  };

  /* What is left of the doubt once one piece of the very warp has been seen (tape and piece in `noise`). */
  Belief.prototype.afterSeeingOne = function (noise) {
    var seen = this.own * this.own + noise * noise, shared = this.shared * this.shared;
    return Math.sqrt((shared * seen) / (shared + seen));
  };

  /* A plain normal law, from {mean, shared, own}. */
  Belief.normal = function (told) {
    var at = [0.005, 0.05, 0.25, 0.5, 0.75, 0.95, 0.995];
    return new Belief(told.mean, told.shared, told.own, { at: at, spreads: at.map(deviate) });
  };

  tenterhook.Belief = Belief;
  tenterhook.normal = normal;
})();
