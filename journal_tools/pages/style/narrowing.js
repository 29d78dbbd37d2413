/* Lists narrowed down by words and choices: cards, and the lines of their table by the same rule.
   What is sought is kept in the address. Without scripts every list is whole. */
(function () {
  "use strict";
  var AT_A_TIME = 60;

  function all(selector, inside) {
    return Array.prototype.slice.call((inside || document).querySelectorAll(selector));
  }

  /* ---- what there is ---- */

  function partsOf(text) {
    return text ? text.split("|") : [];
  }

  /* A card with all that it is found by. Figures are told by its line: [["4", "shafts"], ["longest", "float", "2"]]. */
  function entry(card) {
    var line = card.querySelector(".line");
    var figures = all(".line span", card).map(function (part) { return part.textContent.toLowerCase(); });
    return {
      card: card,
      row: null,
      told: {},
      names: (card.textContent + " " + (card.dataset.words || "")).toLowerCase()
        .replace(line ? line.textContent.toLowerCase() : " ", " "),
      figures: figures.join(", ").split(", ").map(function (part) { return part.split(" "); }),
      yarn: partsOf(card.dataset.yarns),
      weave: [card.dataset.weave],
      year: [card.dataset.year],
      tag: partsOf(card.dataset.tags)
    };
  }

  /* Each line of a table goes to the card that leads to the same page, with what its cells tell. */
  function join(entries) {
    var byPage = new Map();
    entries.forEach(function (one) { byPage.set(one.card.querySelector("a").pathname, one); });
    all("[data-shown-as=table] tbody tr").forEach(function (row) {
      var link = row.querySelector("a");
      var one = link && byPage.get(link.pathname);
      if (!one) return;
      one.row = row;
      Array.prototype.forEach.call(row.cells, function (cell) {
        one.told[cell.dataset.of] = cell.firstChild ? cell.firstChild.textContent.trim() : "";
      });
    });
  }

  /* ---- whether it is what is sought ---- */

  /* A number stands by itself: 2 is not in 2/2, nor 4 in 14. */
  function standsIn(text, number) {
    for (var at = text.indexOf(number); at >= 0; at = text.indexOf(number, at + 1)) {
      if (!/[\d/.]/.test(text.charAt(at - 1) + text.charAt(at + number.length))) return true;
    }
    return false;
  }

  function beginsIn(figure, word) {
    return figure.some(function (each) { return each.indexOf(word) === 0; });
  }

  /* The figures that a word is about: "shafts" that of the shafts, "twill" none. */
  function about(one, word) {
    if (!word || /^\d/.test(word)) return [];
    return one.figures.filter(function (figure) { return /\d/.test(figure.join(" ")) && beginsIn(figure, word); });
  }

  function hasWord(one, word, at, words) {
    if (!/^\d+$/.test(word)) {
      if (/^[\d/.]+$/.test(word)) return standsIn(one.names, word);
      return one.names.indexOf(word) >= 0 || one.figures.some(function (figure) { return beginsIn(figure, word); });
    }
    var figures = about(one, words[at + 1]); /* "4 shafts", else "float 3" */
    if (!figures.length && !/^\d+$/.test(words[at - 2] || "")) figures = about(one, words[at - 1]);
    if (!figures.length) return standsIn(one.names, word);
    return figures.some(function (figure) { return figure.indexOf(word) >= 0; });
  }

  /* A number in a column of the table is wanted as so many at most. */
  function answers(one, select) {
    var wanted = select.value;
    var column = select.dataset.of;
    var told = column ? one.told[column] : undefined;
    if (told !== undefined && /^\d+$/.test(wanted) && /^\d+$/.test(told)) return Number(told) <= Number(wanted);
    return told === wanted || (one[select.name] || []).indexOf(wanted) >= 0;
  }

  /* ---- what is sought, in the address ---- */

  function fields(form) {
    return all("input, select", form);
  }

  /* Tells whether the address says what is sought; "#cloth" and the like do not. */
  function fromAddress(form) {
    var said = new URLSearchParams(location.hash.slice(1));
    if (location.hash.indexOf("=") < 0) return false;
    fields(form).forEach(function (field) {
      var value = said.get(field.name) || "";
      if (field.type === "radio") field.checked = value ? field.value === value : field.defaultChecked;
      else field.value = value;
      if (field.tagName === "SELECT" && field.selectedIndex < 0) field.value = ""; /* no draft gives it any more */
    });
    return true;
  }

  function intoAddress(form) {
    var said = new URLSearchParams();
    fields(form).forEach(function (field) {
      if (field.type === "radio" ? field.checked && !field.defaultChecked : field.value.trim()) {
        said.set(field.name, field.value.trim());
      }
    });
    if (said.toString() || location.hash.indexOf("=") >= 0) {
      history.replaceState(null, "", location.href.split("#")[0] + (said.toString() ? "#" + said : ""));
    }
  }

  /* ---- the list ---- */

  function narrowable(form) {
    var list = document.querySelector(".cards");
    if (!list) return;
    var entries = all(".card", list).map(entry);
    var count = form.querySelector(".count");
    var more = document.createElement("button");
    var shown = AT_A_TIME;
    var later = 0;
    join(entries);
    more.type = "button";
    more.className = "more";
    list.after(more);

    function sought() {
      var words = form.elements.words.value.toLowerCase().replace(/(\d)-(shaft|treadle)/g, "$1 $2")
        .split(/\s+/).filter(Boolean);
      var chosen = all("select", form).filter(function (select) { return select.value; });
      return entries.filter(function (one) {
        return words.every(function (word, at) { return hasWord(one, word, at, words); }) &&
          chosen.every(function (select) { return answers(one, select); });
      });
    }

    function hide(element, hidden) {
      if (element && element.hidden !== hidden) element.hidden = hidden;
    }

    function show() {
      var fitting = sought();
      var fit = new Set(fitting);
      var visible = new Set(fitting.slice(0, shown));
      var as = form.elements.as && form.elements.as.value;
      var counted = form.dataset.counted;
      entries.forEach(function (one) {
        hide(one.card, !visible.has(one));
        hide(one.row, !fit.has(one));
      });
      all("[data-shown-as]").forEach(function (part) { hide(part, part.dataset.shownAs !== as); });
      count.textContent = (fitting.length < entries.length ? fitting.length + " of " : "") + entries.length +
        (counted ? " " + counted : fitting.length < entries.length ? "" : " in all");
      more.hidden = fitting.length <= shown;
      more.textContent = "Show " + Math.min(AT_A_TIME, fitting.length - shown) + " more";
    }

    function changed() {
      shown = AT_A_TIME;
      show();
      clearTimeout(later); /* browsers take only so many changes of an address in a while */
      later = setTimeout(function () { intoAddress(form); }, 200);
    }

    form.addEventListener("input", changed);
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    form.querySelector(".clear").addEventListener("click", function () {
      all("input[type=search], select", form).forEach(function (field) { field.value = ""; });
      changed();
    });
    more.addEventListener("click", function () { shown += AT_A_TIME; show(); });
    window.addEventListener("hashchange", function () { if (fromAddress(form)) { shown = AT_A_TIME; show(); } });
    fromAddress(form);
    form.hidden = false;
    show();
  }

  all("form.filter").forEach(narrowable);
})();
