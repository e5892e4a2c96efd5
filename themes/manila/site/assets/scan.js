/* A hand scanner types the text of a sheet's code and Enter, into whatever page is open. The page says whether that
   paper is the same as this copy's record. The record is loaded when it is first asked for. */
(function () {
  "use strict";

  const dialog = document.getElementById("scan");
  if (!dialog || typeof dialog.showModal !== "function") return;

  const SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  const BURST_MS = 60; /* a scanner's keys follow each other within some 30 ms, a typist's hardly ever within 60 */
  const DAY_MS = 86400000;
  const verdict = dialog.querySelector(".scan-verdict");
  const more = document.getElementById("scan-more");
  const words = dialog.dataset;

  /* ---- reading a code ---- */

  function bare(text) {
    return text.toUpperCase().replace(/O/g, "0").replace(/[IL]/g, "1").replace(/[^0-9A-Z]/g, "");
  }

  /* The check sign is made as the sheet's is: each sign added, then times α, in the field of 32 elements. */
  function timesAlpha(element) {
    const doubled = element << 1;
    return doubled & 32 ? doubled ^ 37 : doubled;
  }
  function sound(tag) {
    if (tag.length !== 9) return false;
    let check = 0;
    for (let at = 0; at < 8; at += 1) {
      const sign = SIGNS.indexOf(tag[at]);
      if (sign < 0) return false;
      check = timesAlpha(check ^ sign);
    }
    return SIGNS[check] === tag[8];
  }

  /* `STEM TAG`, or `STEM TAG LANGUAGE TAG` of a translation. */
  const SCANNED = /^([a-z0-9]+(?:-{1,2}[a-z0-9]+)*) ([0-9a-z]{9})(?: ([a-z]{2,3}(?:-[a-z0-9]+)*) ([0-9a-z]{9}))?$/i;

  /* ---- the answer ---- */

  function filled(text, values) {
    return Object.keys(values).reduce(function (said, name) { return said.split("{" + name + "}").join(values[name]); }, text);
  }
  function day(iso) {
    return new Date(iso + "T00:00:00").toLocaleDateString(document.documentElement.lang, { year: "numeric", month: "short", day: "numeric" });
  }
  function today() {
    const now = new Date();
    return new Date(now.getFullYear(), now.getMonth(), now.getDate());
  }

  function answer(kind, title, work, lines, sheet) {
    dialog.className = kind;
    verdict.querySelector("span").textContent = title;
    dialog.querySelector(".scan-work").textContent = work;
    more.replaceChildren.apply(more, lines.filter(Boolean).map(function (line) {
      const paragraph = document.createElement("p");
      paragraph.textContent = line;
      return paragraph;
    }));
    [["page", "operations/", words.page], ["floor", "floor/", words.floor]].forEach(function (way) {
      const link = dialog.querySelector(".scan-" + way[0]);
      link.hidden = !sheet;
      link.textContent = way[2];
      if (sheet) link.href = (sheet.here ? words.root : words.top) + way[1] + sheet.stem + ".html";
    });
    if (!dialog.open) dialog.showModal();
    verdict.focus();
  }

  function judge(record, stem, tag, language, wordsTag) {
    const made = new Date(record.day + "T00:00:00");
    const days = Math.round((today() - made) / DAY_MS);
    const date = day(record.day);
    if (days < 0) return answer("no", words.clock, "", [filled(words.clockDo, { date: date })]);
    if (record.lasts && days > record.lasts) {
      return answer("no", words.old, "", [filled(words.oldDo, { date: date, days: days, lasts: record.lasts })]);
    }
    const age = days ? filled(words.age, { days: days }) : words.today;
    const sheet = record.sheets[stem];
    if (!sheet) return answer("no", words.unknown, stem, [words.unknownDo, age]);
    const own = document.documentElement.lang;
    const said = (sheet.said || {})[own] || {};
    const work = [sheet.code, said.title || sheet.title].join(" ") + (sheet.station ? " · " + sheet.station : "");
    const to = { stem: stem, here: own === record.language || Boolean(said.title) };
    const size = named(sheet, tag);
    if (sheet.tag !== tag && !size) {
      return answer("no", filled(words.differs, { date: date }), work, [words.differsDo, age], to);
    }
    const ended = sheet.deviation && new Date(sheet.deviation.until + "T00:00:00") < today();
    if (ended) {
      const usual = record.sheets[sheet.deviation.instead] || { code: "", title: sheet.deviation.instead };
      const values = { date: day(sheet.deviation.until), operation: (usual.code + " " + usual.title).trim() };
      return answer("no", words.down, work, [filled(words.downDo, values), age], to);
    }
    if (language && ((sheet.said || {})[language] || {}).tag !== wordsTag) {
      return answer("no", filled(words.wordsDiffer, { date: date }), work, [words.differsDo, age], to);
    }
    return answer("yes", filled(words.same, { date: date }), work, [size && filled(words.size, { size: size }), batches(record, stem, sheet), age], to);
  }

  function named(sheet, tag) {
    const rows = Object.assign({}, sheet.sizes, sheet.colours);
    return Object.keys(rows).find(function (name) { return rows[name] === tag; }) || "";
  }

  function batches(record, stem, sheet) {
    if (sheet.deviation) {
      return filled(words.batches, { batches: sheet.deviation.batches.join(", "), date: day(sheet.deviation.until) });
    }
    const other = Object.keys(record.sheets).map(function (name) { return record.sheets[name]; }).find(function (one) {
      return one.deviation && one.deviation.instead === sheet.operation && new Date(one.deviation.until + "T00:00:00") >= today();
    });
    if (!other) return words.every;
    return filled(words.ordinary, {
      batches: other.deviation.batches.join(", "), operation: other.code + " " + other.title, date: day(other.deviation.until)
    });
  }

  /* ---- the record, loaded once ---- */

  let waiting = null;
  function withRecord(then) {
    if (typeof seamboardRecord !== "undefined") { then(seamboardRecord); return; }
    if (waiting) { waiting.push(then); return; }
    waiting = [then];
    const script = document.createElement("script");
    script.src = words.top + "assets/record.js";
    script.addEventListener("load", function () {
      waiting.forEach(function (one) { one(seamboardRecord); });
      waiting = null;
    });
    script.addEventListener("error", function () {
      waiting = null;
      answer("no", words.unknown, "", [words.unknownDo]);
    });
    document.head.append(script);
  }

  function scanned(text) {
    const found = SCANNED.exec(text.trim());
    if (!found) return false;
    const tag = bare(found[2]);
    const wordsTag = found[4] ? bare(found[4]) : "";
    if (!sound(tag) || (found[4] && !sound(wordsTag))) answer("no", words.misread, "", [words.misreadDo]);
    else withRecord(function (record) { judge(record, found[1].toLowerCase(), tag, (found[3] || "").toLowerCase(), wordsTag); });
    return true;
  }

  /* Typed by hand: the code at the foot, alone or after the operation's number or name. */
  function typed(text) {
    const found = SCANNED.exec(text.trim());
    if (found && found[3]) { scanned(text); return; }
    const letters = bare(text);
    const tag = letters.slice(-9);
    if (!sound(tag)) { answer("no", words.misread, "", [words.misreadDo]); return; }
    const before = letters.slice(0, -9);
    withRecord(function (record) {
      const stems = Object.keys(record.sheets);
      const stem = stems.find(function (one) { return before && (bare(record.sheets[one].code) === before || bare(one) === before); })
        || stems.find(function (one) { return record.sheets[one].tag === tag || named(record.sheets[one], tag); });
      if (stem) judge(record, stem, tag, "", "");
      else if (new Date(record.day + "T00:00:00") <= today()) answer("no", words.noCode, text, [words.unknownDo]);
      else judge(record, "", tag, "", "");
    });
  }

  /* ---- keys that come as fast as a scanner's ---- */

  let keys = "";
  let last = 0;
  let field = null;
  document.addEventListener("keydown", function (event) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const now = event.timeStamp;
    if (now - last > BURST_MS) {
      keys = "";
      field = event.target.closest("input, textarea");
      field = field && { box: field, value: field.value };
    }
    last = now;
    if (event.key === "Enter") {
      const text = keys;
      keys = "";
      if (text.length < 11 || !scanned(text)) return;
      event.preventDefault();
      event.stopPropagation();
      if (field) field.box.value = field.value;
    } else if (event.key.length === 1) {
      keys += event.key;
    }
  }, true);

  dialog.querySelector("button").addEventListener("click", function () { dialog.close(); });
  const form = document.getElementById("check-form");
  if (form) {
    form.addEventListener("submit", function (event) {
      event.preventDefault();
      typed(form.elements.code.value);
    });
  }
}());
