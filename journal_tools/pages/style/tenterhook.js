/* Two helpers of the swatch book. Without them every list is whole and every table readable. */
(function () {
  "use strict";
  var AT_A_TIME = 60;

  function all(selector, inside) {
    return Array.prototype.slice.call((inside || document).querySelectorAll(selector));
  }

  /* Tables: a heading becomes a button that sorts by its column. */
  function sortKey(row, column) {
    var cell = row.cells[column];
    var text = cell.dataset.sort || cell.textContent.trim();
    var number = /^[-+−]?[0-9.]+(?=\s*%|$|\s*±)/.exec(text);
    return { text: text, number: number ? Number(number[0].replace("−", "-")) : NaN };
  }

  function compare(a, b) {
    if (a.text === "" || b.text === "") return a.text === b.text ? 0 : NaN; /* what is missing stays last */
    if (!isNaN(a.number) && !isNaN(b.number)) return a.number - b.number;
    return a.text.localeCompare(b.text, document.documentElement.lang || undefined);
  }

  function sort(table, heading, column) {
    var down = heading.getAttribute("aria-sort") === "ascending";
    var body = table.tBodies[0];
    var rows = all("tr", body).map(function (row) { return { row: row, key: sortKey(row, column) }; });
    rows.sort(function (a, b) {
      var order = compare(a.key, b.key);
      if (isNaN(order)) return a.key.text === "" ? 1 : -1;
      return down ? -order : order;
    });
    rows.forEach(function (one) { body.appendChild(one.row); });
    all("th[aria-sort]", table).forEach(function (th) { th.removeAttribute("aria-sort"); });
    heading.setAttribute("aria-sort", down ? "descending" : "ascending");
  }

  all("table[data-sortable]").forEach(function (table) {
    all("thead tr > *", table).forEach(function (heading, column) {
      if (heading.tagName !== "TH") return;
      var button = document.createElement("button");
      button.type = "button";
      button.textContent = heading.textContent;
      heading.textContent = "";
      heading.appendChild(button);
      button.addEventListener("click", function () { sort(table, heading, column); });
    });
  });

  /* A table that is not wider than the page needs no stop of its own on the way through it. */
  all(".wide[tabindex]").forEach(function (box) {
    if (box.scrollWidth <= box.clientWidth) box.removeAttribute("tabindex");
  });

  /* The swatch book: narrowed down by words, yarn, weave and year; sixty cards at a time. */
  function narrowable(form) {
    var list = document.querySelector(".cards");
    if (!list) return;
    var cards = all(".card", list).map(function (card) {
      return {
        card: card,
        words: (card.textContent + " " + (card.dataset.words || "")).toLowerCase(),
        yarn: (card.dataset.yarns || "").split("|"),
        weave: [card.dataset.weave],
        year: [card.dataset.year]
      };
    });
    var count = form.querySelector(".count");
    var more = document.createElement("button");
    var shown = AT_A_TIME;
    more.type = "button";
    more.className = "more";
    list.after(more);

    function fits(one) {
      var words = form.elements.words.value.toLowerCase().split(/\s+/);
      return words.every(function (word) { return one.words.indexOf(word) >= 0; }) &&
        ["yarn", "weave", "year"].every(function (name) {
          var wanted = form.elements[name] && form.elements[name].value;
          return !wanted || one[name].indexOf(wanted) >= 0;
        });
    }

    function show() {
      var fitting = cards.filter(fits);
      var visible = new Set(fitting.slice(0, shown));
      cards.forEach(function (one) {
        var hide = !visible.has(one);
        if (one.card.hidden !== hide) one.card.hidden = hide;
      });
      count.textContent = fitting.length === cards.length
        ? cards.length + " in all" : fitting.length + " of " + cards.length;
      more.hidden = fitting.length <= shown;
      more.textContent = "Show " + Math.min(AT_A_TIME, fitting.length - shown) + " more";
    }

    form.addEventListener("input", function () { shown = AT_A_TIME; show(); });
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    more.addEventListener("click", function () { shown += AT_A_TIME; show(); });
    form.hidden = false;
    show();
  }

  all("form.filter").forEach(narrowable);

  /* What the theme leaves unnamed or unreachable. */
  var dialog = document.querySelector(".md-search");
  if (dialog) {
    dialog.setAttribute("role", "search");
    dialog.setAttribute("aria-label", "Search the journal");
  }
  /* Its search listens to keys alone; words may be pasted or spoken, too. */
  all(".md-search__input").forEach(function (box) {
    box.addEventListener("input", function () { box.dispatchEvent(new KeyboardEvent("keyup")); });
  });
  all(".task-list-item input").forEach(function (box) {
    box.setAttribute("aria-label", box.closest("li").textContent.trim().split("\n")[0]);
  });
  setTimeout(function () {
    all(".md-typeset__scrollwrap").forEach(function (box, n) {
      box.tabIndex = 0;
      box.setAttribute("role", "region");
      box.setAttribute("aria-label", "Table " + (n + 1));
    });
    all(".md-code__nav").forEach(function (nav, n) { nav.setAttribute("aria-label", "Code " + (n + 1)); });
  }, 200);
})();
