/* Tables that can be sorted, and what the theme leaves undone. Without it every table is readable. */
(function () {
  "use strict";

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
