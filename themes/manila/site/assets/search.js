/* Search in what the pages say, without a server: words, codes, settings, beginnings, typing errors, every language.
   The index is loaded when the field is first used. Letters are folded by the table that made the index. */
(function () {
  "use strict";

  const MOST = 12;
  const FIGURE = /[0-9]/;
  const EXACT = 10, BEGINNING = 7, NEAR = 4;
  const form = document.getElementById("search");
  if (!form) return;
  const field = form.querySelector("input");
  const list = form.querySelector("ul");
  const status = form.querySelector("[role=status]");

  /* ---- letters and words, as builder/rendering/search_fold.py has them ---- */

  function table(data) {
    const map = new Map();
    Object.keys(data.letters).forEach(function (folded) {
      for (const letter of data.letters[folded]) map.set(letter, folded);
    });
    [["dropped", ""], ["gaps", " "]].forEach(function (kind) {
      let at = 0;
      data[kind[0]].split(",").forEach(function (run) {
        const parts = run.split(".");
        at += parseInt(parts[0], 36);
        for (let left = parseInt(parts[1], 36); left > 0; left -= 1, at += 1) map.set(String.fromCharCode(at), kind[1]);
      });
    });
    return map;
  }

  function reader(data) {
    const letters = table(data);
    const paired = data.paired;
    const word = new RegExp("[0-9]+(?:[.,/][0-9]+)+|[" + paired + "]+|[^\\x00-/:-@\\[-`{-\\x7f " + paired + "]+", "gu");
    const pair = new RegExp("^[" + paired + "]", "u");
    function fold(text) {
      let folded = "";
      for (const letter of text) folded += letters.has(letter) ? letters.get(letter) : letter;
      return folded;
    }
    function split(folded) {
      const found = [];
      (folded.match(word) || []).forEach(function (one) {
        if (pair.test(one)) {
          const signs = Array.from(one);
          for (let at = 0; at < Math.max(signs.length - 1, 1); at += 1) found.push(signs.slice(at, at + 2).join(""));
        } else {
          found.push(one[0] >= "0" && one[0] <= "9" ? one.replaceAll(",", ".") : one);
        }
      });
      return found;
    }
    return { fold: fold, split: split, letters: letters };
  }

  /* ---- finding ---- */

  function finder(data, read) {
    const words = data.words.split("\n");
    const packed = data.found.split("\n");
    const opened = new Array(packed.length);
    const pages = data.pages;

    function postings(at) {
      if (!opened[at]) {
        const items = packed[at].split(",");
        const flat = new Int32Array(2 * items.length);
        let page = 0;
        for (let i = 0; i < items.length; i += 1) {
          const number = parseInt(items[i], 36);
          page += Math.floor(number / 10);
          flat[2 * i] = page;
          flat[2 * i + 1] = number % 10;
        }
        opened[at] = flat;
      }
      return opened[at];
    }

    function lower(word) {
      let low = 0, high = words.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (words[middle] < word) low = middle + 1;
        else high = middle;
      }
      return low;
    }

    /* Edits that make the word, or a beginning of it, of what was typed: letters missing, too many, other, swapped.
       Over `most` of them is `most + 1`. */
    function edits(typed, word, most) {
      const width = typed.length;
      let before = null, last = [], row = [];
      for (let i = 0; i <= width; i += 1) last.push(i);
      let best = last[width];
      for (let j = 1; j <= word.length && j <= width + most; j += 1) {
        row = [j];
        let least = j;
        for (let i = 1; i <= width; i += 1) {
          const same = typed[i - 1] === word[j - 1];
          let cost = Math.min(last[i] + 1, row[i - 1] + 1, last[i - 1] + (same ? 0 : 1));
          if (before && i > 1 && typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1]) cost = Math.min(cost, before[i - 2] + 1);
          row.push(cost);
          if (cost < least) least = cost;
        }
        if (row[width] < best) best = row[width];
        if (least > most) break;
        before = last;
        last = row;
      }
      return Math.min(best, most + 1);
    }

    function add(scores, at, quality) {
      const flat = postings(at);
      for (let i = 0; i < flat.length; i += 2) {
        const score = flat[i + 1] * quality;
        if (scores[flat[i]] < score) scores[flat[i]] = score;
      }
    }

    /* How well each page answers one word; null when none does. */
    function plainly(word) {
      const from = lower(word);
      const scores = new Int16Array(pages.length);
      let at = from;
      for (; at < words.length && words[at].startsWith(word); at += 1) add(scores, at, words[at] === word ? EXACT : BEGINNING);
      return at > from ? scores : null;
    }
    function nearly(word) {
      const most = /[0-9]/.test(word) || word.length < 4 ? 0 : word.length < 8 ? 1 : 2;
      const scores = new Int16Array(pages.length);
      let any = false;
      if (!most) return scores;
      for (let at = 0; at < words.length; at += 1) {
        if (words[at].length >= word.length - most && edits(word, words[at], most) <= most) {
          add(scores, at, NEAR);
          any = true;
        }
      }
      return any ? scores : new Int16Array(pages.length);
    }

    function ranked(each, all, more) {
      const found = [];
      for (let page = 0; page < pages.length; page += 1) {
        let total = 0, met = 0;
        for (const scores of each) {
          if (scores[page]) met += 1;
          total += scores[page];
        }
        if (all ? met === each.length : met) found.push([met * 1000 + total + more[page], page]);
      }
      found.sort(function (a, b) { return b[0] - a[0] || a[1] - b[1]; });
      return found.map(function (one) { return one[1]; });
    }

    /* A code typed as two words, `BAR-42`, is one word in the index too: pages that have it come first. */
    function together(typed) {
      const scores = new Int16Array(pages.length);
      for (let i = 1; i < typed.length; i += 1) {
        const word = typed[i - 1] + typed[i];
        const at = lower(word);
        if (FIGURE.test(typed[i - 1].slice(-1)) !== FIGURE.test(typed[i][0]) && words[at] === word) add(scores, at, EXACT);
      }
      return scores;
    }

    function find(query) {
      const typed = read.split(read.fold(query));
      if (!typed.length) return { words: [], pages: [], all: true };
      const plain = typed.map(plainly), more = together(typed);
      let found = ranked(plain.map(function (scores, at) { return scores || nearly(typed[at]); }), true, more);
      if (found.length) return { words: typed, pages: found, all: true };
      const near = typed.map(nearly).map(function (scores, at) {
        return plain[at] ? scores.map(function (score, page) { return Math.max(score, plain[at][page]); }) : scores;
      });
      found = ranked(near, true, more);
      if (found.length) return { words: typed, pages: found, all: true };
      return { words: typed, pages: ranked(near, false, more), all: false };
    }

    return { find: find, pages: pages, labels: data.labels, kinds: data.kinds, edits: edits };
  }

  /* ---- showing ---- */

  let search = null;
  let read = null;
  let shown = [];
  let at = -1;

  /* Folded text with the place of each of its letters in the original. */
  function mapped(text) {
    let folded = "";
    const places = [];
    let place = 0;
    for (const letter of text) {
      const piece = read.letters.has(letter) ? read.letters.get(letter) : letter;
      for (let i = 0; i < piece.length; i += 1) places.push(place);
      folded += piece;
      place += letter.length;
    }
    places.push(place);
    return { folded: folded, places: places };
  }
  function hits(text, words) {
    const found = mapped(text);
    return words.map(function (word) {
      let from = -1;
      do { from = found.folded.indexOf(word, from + 1); }
      while (from > 0 && /[\p{L}\p{N}]/u.test(found.folded[from - 1]));
      return from < 0 ? null : [found.places[from], found.places[from + word.length]];
    }).filter(Boolean);
  }
  function marked(text, words) {
    const part = document.createDocumentFragment();
    let done = 0;
    hits(text, words).sort(function (a, b) { return a[0] - b[0]; }).forEach(function (hit) {
      if (hit[0] < done) return;
      part.append(text.slice(done, hit[0]));
      const mark = document.createElement("mark");
      mark.textContent = text.slice(hit[0], hit[1]);
      part.append(mark);
      done = hit[1];
    });
    part.append(text.slice(done));
    return part;
  }
  function quoted(page, words) {
    const own = hits(page[2] + " " + page[3], words).length;
    let best = null, most = own;
    for (let i = 0; i < page[6].length; i += 3) {
      const count = hits(page[6][i + 2], words).length;
      if (count > most) { most = count; best = { label: search.labels[page[6][i]], anchor: page[6][i + 1], text: page[6][i + 2] }; }
    }
    return best;
  }

  function option(number, found) {
    const page = search.pages[number];
    const quote = quoted(page, found.words);
    const item = document.createElement("li");
    item.role = "option";
    item.id = "search-" + number;
    item.dataset.way = form.dataset.root + page[0] + (quote && quote.anchor && !page[0].includes("#") ? "#" + quote.anchor : "");
    if (page[5]) item.lang = page[5];
    const title = document.createElement("b");
    title.append(marked((page[3] ? page[3] + "  " : "") + page[2], found.words));
    const kind = document.createElement("span");
    kind.className = "note";
    kind.textContent = [search.kinds[page[1]], page[4]].filter(Boolean).join(" · ");
    item.append(title, kind);
    if (quote) {
      const line = document.createElement("span");
      line.append(quote.label ? quote.label + ": " : "", marked(quote.text, found.words));
      item.append(line);
    }
    return item;
  }

  function show() {
    if (!search) return;
    const found = search.find(field.value);
    shown = found.pages.slice(0, MOST);
    at = -1;
    list.replaceChildren.apply(list, shown.map(function (number) { return option(number, found); }));
    const any = shown.length > 0;
    list.hidden = !any;
    field.setAttribute("aria-expanded", String(any));
    field.removeAttribute("aria-activedescendant");
    const words = form.dataset;
    status.textContent = !found.words.length ? "" : !any ? words.none : (found.all ? "" : words.nearly + " ") + words.count.replace("{count}", found.pages.length);
    status.classList.toggle("hidden", any || !found.words.length);
  }

  function hide() {
    list.hidden = true;
    field.setAttribute("aria-expanded", "false");
    field.removeAttribute("aria-activedescendant");
  }

  function pick(next) {
    if (!shown.length) return;
    const items = list.children;
    if (at >= 0) items[at].removeAttribute("aria-selected");
    at = (next + items.length) % items.length;
    items[at].setAttribute("aria-selected", "true");
    items[at].scrollIntoView({ block: "nearest" });
    field.setAttribute("aria-activedescendant", items[at].id);
  }

  function go(item) {
    hide();
    location.href = item.dataset.way;
  }

  field.addEventListener("input", function () { load(); show(); });
  field.addEventListener("keydown", function (event) {
    if (event.key === "ArrowDown") pick(at + 1);
    else if (event.key === "ArrowUp") pick(at < 0 ? -1 : at - 1);
    else if (event.key === "Escape" && !list.hidden) hide();
    else return;
    event.preventDefault();
  });
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    const item = list.children[at < 0 ? 0 : at];
    if (item && !list.hidden) go(item);
  });
  list.addEventListener("pointerdown", function (event) { event.preventDefault(); });
  list.addEventListener("click", function (event) {
    const item = event.target.closest("li");
    if (item) go(item);
  });
  field.addEventListener("blur", hide);
  field.addEventListener("focus", function () { if (field.value) show(); });

  /* ---- loading ---- */

  let asked = false;
  function script(name, then) {
    const one = document.createElement("script");
    one.src = form.dataset.top + "assets/" + name;
    one.addEventListener("load", then);
    document.head.append(one);
  }
  function load() {
    if (asked) return;
    asked = true;
    script("fold.js", function () {
      script("search-" + document.documentElement.lang + ".js", function () {
        read = reader(seamboardFold);
        search = finder(seamboardSearch, read);
        form.seamboard = { find: search.find, fold: read.fold, split: read.split, edits: search.edits };
        form.classList.add("ready");
        show();
      });
    });
  }
  form.hidden = false;
  field.addEventListener("focus", load);
  field.addEventListener("pointerenter", load);
}());
