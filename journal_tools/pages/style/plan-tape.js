/* A tape for the plan: what stands in the reed, what to weave, and what to expect with its range.
   Letters keep their size, so it is as readable on a telephone; colours come from the stylesheet. */
(function () {
  "use strict";
  var tenterhook = (window.tenterhook = window.tenterhook || {});
  var SVG = "http://www.w3.org/2000/svg";
  var RULE = 34, ROW = 34, BAR = 22;

  function drawn(name, attributes, text) {
    var made = document.createElementNS(SVG, name);
    Object.keys(attributes).forEach(function (key) { made.setAttribute(key, attributes[key]); });
    if (text !== undefined) made.textContent = text;
    return made;
  }

  function pinked(height) { return new Array(Math.floor(height / 8) + 2).join("l5 4 -5 4"); }

  /* What is not sure: a fringe of threads, from the least to the most. */
  function threads(low, high, top, ink) {
    var inner = drawn("svg", { y: top, width: "100%", height: BAR, viewBox: "0 0 100 " + BAR, preserveAspectRatio: "none" }), path = "";
    for (var y = 2; y < BAR; y += 4) path += "M" + low.toFixed(3) + " " + y + "H" + high.toFixed(3);
    inner.appendChild(drawn("path", { class: "doubt line-" + ink, d: path }));
    return inner;
  }

  /* rows: {label, mm, text, low, high, ink}; wanted: mm of the dashed line. unit: "in", "cm" or "mm". */
  tenterhook.tape = function (direction, unit, rows, wanted, spoken, wide) {
    var size = unit === "in" ? 25.4 : 10, sizes = [wanted];
    rows.forEach(function (row) { sizes.push(row.mm, row.low || row.mm, row.high || row.mm); });
    var low = Math.min.apply(null, sizes) / size, high = Math.max.apply(null, sizes) / size;
    var room = Math.max((high - low) * 0.35, 0.5), start = Math.max(0, Math.floor(low - room)), end = Math.ceil(high + (high - low) * 0.04);
    if (end <= start) end = start + 1;
    function at(mm) { return ((mm / size - start) / (end - start)) * 100; }
    function x(mm) { return at(mm).toFixed(3) + "%"; }
    var height = RULE + ROW * rows.length;
    var svg = drawn("svg", { class: "tape", role: "img", "aria-label": spoken, width: "100%", height: height + 26 });
    svg.appendChild(drawn("rect", { class: "strip", width: "100%", height: RULE - 4 }));
    var units = end - start, parts = unit === "in" ? [1, 2, 4, 8] : [1, 2, 10], finest = 1;
    parts.forEach(function (part) { if (units * part <= (wide ? 130 : 50)) finest = part; });
    var every = Math.max(1, Math.ceil(units / (wide ? 20 : 7)));
    for (var n = 0; n <= units * finest; n += 1) {
      var value = start + n / finest, whole = n % finest === 0, numbered = whole && (value - start) % every === 0 && value < end;
      var tall = numbered ? 17 : whole ? 12 : n % (finest / 2) === 0 ? 8 : 5, place = x(value * size);
      svg.appendChild(drawn("line", { class: "tick", x1: place, x2: place, y1: RULE - 4, y2: RULE - 4 - tall }));
      if (!numbered) continue;
      svg.appendChild(drawn("line", { class: "unit", x1: place, x2: place, y1: RULE - 4, y2: height - 6 }));
      svg.appendChild(drawn("text", { class: "number", x: place, dx: 4, y: 13 }, String(value)));
    }
    svg.appendChild(drawn("text", { class: "direction", x: -10, y: RULE - 14 }, direction + ", " + unit));
    rows.forEach(function (row, order) {
      var top = RULE + ROW * order + 3;
      var from = row.low === undefined ? row.mm : row.low;
      svg.appendChild(drawn("rect", { class: "ink-" + row.ink, y: top, width: x(from), height: BAR }));
      if (row.low !== undefined) {
        svg.appendChild(threads(at(row.low), at(row.high), top, row.ink));
        svg.appendChild(drawn("line", { class: "middle", x1: x(row.mm), x2: x(row.mm), y1: top - 1, y2: top + BAR + 1 }));
      }
      svg.appendChild(drawn("text", { class: "label", x: -10, y: top + 15 }, row.label));
      var inside = at(from) > (wide ? 14 : 30);
      svg.appendChild(drawn("text", {
        class: inside ? "value in line-" + row.ink : "value", x: inside ? x(from) : x(row.high === undefined ? row.mm : row.high),
        dx: inside ? -9 : 8, y: top + 16
      }, row.text));
    });
    if (start) svg.appendChild(drawn("path", { class: "torn", d: "M-2 0H0" + pinked(height) + "H-2z" }));
    var last = RULE + ROW * (rows.length - 1);
    svg.appendChild(drawn("line", { class: "planned", x1: x(wanted), x2: x(wanted), y1: last - 1, y2: last + BAR + 7 }));
    var legend = drawn("g", { class: "legend" }), y = height + 14;
    legend.appendChild(drawn("path", { class: "planned", d: "M3 " + (y - 11) + "v15" }));
    legend.appendChild(drawn("text", { x: 12, y: y }, "wanted"));
    legend.appendChild(drawn("path", { class: "doubt line-5", d: [10, 6, 2].map(function (up) { return "M78 " + (y - up) + "h18"; }).join("") }));
    legend.appendChild(drawn("line", { class: "middle", x1: 87, x2: 87, y1: y - 13, y2: y + 2 }));
    legend.appendChild(drawn("text", { x: 103, y: y }, "nine times in ten"));
    svg.appendChild(legend);
    return svg;
  };
})();
