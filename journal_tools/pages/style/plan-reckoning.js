/* From what is wanted to what hands do: sley, weave, wind, have yarn for, expect. The same steps as
   journal_tools/planning takes. Lengths in mm, densities to the metre; a figure that nothing tells is null. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var a = tenterhook.arithmetic, told = tenterhook.journal.sums;

  /* What becomes of a size: in the middle, nine times in ten, and the worst of the batch. */
  function expected(start, belief, hems, count) {
    function size(log) { return start * Math.exp(log) - hems; }
    var of = count > 1 ? "batch" : "piece"; /* the mean of one piece is the piece */
    return {
      mm: size(belief.mean),
      low: size(belief.quantile(told.low, of)),
      high: size(belief.quantile(told.high, of)),
      worst: size(belief.worst(told.low, count)),
      loss: 1 - Math.exp(belief.mean)
    };
  }

  /* How often the smallest comes up under a limit, and what a little more would do. */
  function risk(start, belief, hems, count, step, usual) {
    function chance(more, limit) { return belief.chanceWorstBelow(Math.log((limit + hems) / (start + more)), count); }
    var limit = a.downward(start * Math.exp(belief.worst(usual.risk, count)) - hems, step);
    if (limit <= 0) return null;
    while (chance(0, limit) < usual.risk * usual.risk_least) limit += step;
    var now = chance(0, limit), steps = 1;
    if (now <= usual.mended) return null;
    while (chance(steps * step, limit) > usual.mended && steps < told.most_steps) steps += 1;
    var after = chance(steps * step, limit);
    if (after > usual.mended) return { limit: limit, chance: now, more: null, after: null }; /* however much is woven */
    return { limit: limit, chance: now, more: steps * step, after: after };
  }

  /* Dents, ends and repeats nearest to a width in the reed. */
  function across(w, wanted) {
    var found = w.sley ? [w.sley] : a.sleyings(w.sett, w.reeds);
    var sley = found[0], floating = w.floating ? 2 : 0;
    var room = Math.max(1, a.ends_in(a.dents_in(wanted, sley.dents_per_m) - floating, sley.order));
    var repeat = w.repeat > room ? 1 : w.repeat, balance = w.repeat > room ? 0 : w.balance;
    var times = a.whole_repeats(room, repeat, balance), heddled = times * repeat + balance;
    var order = w.order ? new tenterhook.Order(w.order, room) : null, wound = heddled;
    if (order && order.striped) {
      wound = a.whole_repeats(room, order.items.length, order.beside);
      heddled = order.beside + wound * order.items.length;
      times = heddled < repeat + balance ? 0 : Math.floor((heddled - balance) / repeat);
    }
    var dents = a.dents_for(heddled, sley.order) + floating;
    return {
      sley: sley, wanted: wanted, mm: a.width_of(dents, sley.dents_per_m), dents: dents, ends: heddled + floating,
      heddled: heddled, floating: floating, repeats: repeat > 1 ? times : null, over: times ? heddled - times * repeat : 0,
      balanced: times > 0 && heddled - times * repeat === balance, order: order, times: wound
    };
  }

  /* Where each inch of the warp goes; take-up is on top of all that is woven. */
  function warp(w, weave, takeUp) {
    var lines = [
      { name: "header", each: w.header, count: 1 },
      { name: "sample, washed first", each: w.sample, count: 1, woven: true },
      { name: "cut off and tied on again", each: w.sample ? w.retie : 0, count: 1 },
      { name: w.piece, each: weave, count: w.count, woven: true },
      { name: "fringes", each: w.fringe, count: 2 * w.count },
      { name: "gaps between them", each: w.fringe ? 0 : w.gap, count: w.count - 1 },
      { name: "loom waste", each: w.waste, count: 1 }
    ].filter(function (line) { return line.each * line.count > 0; });
    lines.forEach(function (line) { line.mm = line.each * line.count; });
    function sum(found) { return found.reduce(function (all, line) { return all + line.mm; }, 0); }
    var cloth = sum(lines.filter(function (line) { return line.woven; }));
    var taken = a.warp_for(cloth, takeUp) - cloth;
    lines.push({ name: "take-up", mm: taken, each: taken, count: 1, rest: true });
    return { lines: lines, mm: sum(lines), wind: a.upward(sum(lines), w.step.wind) };
  }

  /* A sample tells of width; of length too where it is long enough for a tape to see what it lost. */
  function sample(w, b, takeUp, reed, width, length) {
    var mm = w.sample || w.usual.sample, left = b.width.afterSeeingOne(w.tapeDoubt / reed) / b.width.shared;
    function half(size) { return (size.high - size.low) / 2; }
    var read = Math.SQRT2 * Math.hypot(w.step.tape / Math.sqrt(12) / mm, told.length_share);
    return {
      mm: mm, warp: a.warp_for(mm, takeUp) + w.retie, now: half(width), then: half(width) * left, worth: left < w.usual.worth_a_sample,
      length: mm < w.usual.sample_for_length ? null
        : { now: half(length), then: (half(length) * b.length.afterSeeingOne(read)) / b.length.shared }
    };
  }

  /* What a repeat more or less would come to, where whole repeats are off by what hands can see; null else. */
  function otherRepeat(w, reed, width, loss) {
    var off = width.mm - w.width;
    var ends = reed.order && reed.order.striped ? reed.order.items.length : w.repeat;
    if (Math.abs(off) < w.step.weave || ends < 2 || reed.heddled <= ends) return null;
    var repeat = (ends / reed.sley.sett) * 1000 * (1 - loss);
    return { more: off < 0, mm: width.mm + (off < 0 ? repeat : -repeat) };
  }

  /* w: what is wanted. b: beliefs by name: width, draw, length, takeUp, and off to washed where a hem goes first. */
  tenterhook.reckon = function (w, b) {
    var ratio = w.hem.first ? [Math.exp(b.washWidth.mean), Math.exp(b.washLength.mean)] : [1, 1];
    var hems = [0, 1].map(function (n) {
      /* A hem that is sewn first is in the washed size too. */
      return w.hemmed || w.hem.first ? a.hems_eat(w.hem.depth, w.hem.turn, w.hem.edges[n]) * ratio[n] : 0;
    });
    var reed = across(w, a.weave_to(w.width + hems[0], Math.exp(b.width.mean)));
    var weave = a.upward(a.weave_to(w.long + hems[1], Math.exp(b.length.mean)), w.step.weave);
    var takeUp = 1 - Math.exp(b.takeUp.mean), longest = 1 - Math.exp(b.takeUp.quantile(told.low, "batch"));
    var wound = warp(w, weave, takeUp);
    var more = risk(weave, b.length, hems[1], w.count, w.step.weave, w.usual);
    if (more && more.more) more.warp = a.warp_for(more.more * w.count, takeUp);
    var thrown = w.beat ? a.picks_for(weave, w.beat) * w.count + a.picks_for(w.sample, w.beat) : null;
    var width = expected(reed.mm, b.width, hems[0], w.count), length = expected(weave, b.length, hems[1], w.count);
    var doubt = Math.max((width.high - width.low) / 2 / width.mm, (length.high - length.low) / 2 / length.mm);
    return {
      reed: reed, hems: hems, weave: weave, takeUp: takeUp, warp: wound,
      windLong: a.upward(warp(w, weave, longest).mm, w.step.wind),
      picks: w.beat ? a.picks_for(weave, w.beat) : null,
      onLoom: expected(reed.mm, b.draw, 0, w.count), width: width, length: length, risk: more,
      useless: doubt > w.usual.too_wide,
      sample: sample(w, b, takeUp, reed.mm, width, length), otherRepeat: otherRepeat(w, reed, width, width.loss),
      work: told.end_to_picks * reed.ends + (w.beat ? a.picks_for(weave, w.beat) * w.count : 0),
      yarn: {
        warp: { mm: reed.ends * wound.wind, g: w.warpTex ? a.warp_grams(reed.ends, wound.wind, w.warpTex) : null },
        weft: thrown === null ? null
          : { mm: thrown * a.weft_mm(reed.mm), g: w.weftTex ? a.weft_grams(thrown, reed.mm, w.weftTex) : null }
      }
    };
  };
  tenterhook.expected = expected;
  tenterhook.risk = risk;
})();
