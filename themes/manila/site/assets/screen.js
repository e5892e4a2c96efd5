/* How a screen is set: millimetres of a pixel, distance of the reader, light or dark ground. The browser keeps it where
   it may; where every file has a store of its own, the address carries it from page to page. One global. */
var seamboardScreen = (function () {
  "use strict";

  const KEY = "seamboard.screen";
  const NAMES = ["mm", "distance", "look"];
  const query = new URLSearchParams(location.search);

  function stored() {
    try { return JSON.parse(localStorage.getItem(KEY)) || {}; } catch (refused) { return {}; }
  }

  const values = stored();
  NAMES.forEach(function (name) { if (query.has(name)) values[name] = query.get(name); });

  function number(name) {
    const value = parseFloat(values[name]);
    return value > 0 && value < 100 ? value : 0;
  }

  function set(name, value) {
    if (value === "") delete values[name];
    else values[name] = String(value);
    try { localStorage.setItem(KEY, JSON.stringify(values)); } catch (refused) { /* the address carries it */ }
    apply();
  }

  function apply() {
    const look = values.look === "dark" || values.look === "light" ? values.look : "";
    if (look) document.documentElement.dataset.look = look;
    else delete document.documentElement.dataset.look;
    carry();
  }

  /* Links to other pages of this copy take the settings along. */
  function carry() {
    if (location.protocol !== "file:") return;
    document.querySelectorAll("a[href]").forEach(function (link) {
      const way = link.getAttribute("href");
      if (/^(#|[a-z]+:)/i.test(way) || !/\.html([?#]|$)/.test(way)) return;
      NAMES.forEach(function (name) { put(link, name, values[name]); });
    });
  }

  function put(link, name, value) {
    const parts = link.getAttribute("href").split("#");
    const cut = parts[0].split("?");
    const found = new URLSearchParams(cut[1] || "");
    if (value) found.set(name, value);
    else found.delete(name);
    const text = found.toString();
    link.setAttribute("href", cut[0] + (text ? "?" + text : "") + (parts.length > 1 ? "#" + parts[1] : ""));
  }

  /* From how far letters of a type size [px] can be read at an angle of arc [minutes], metres; 0 when not measured. */
  function reach(px, minutes) {
    const capital = parseFloat(getComputedStyle(document.documentElement).getPropertyValue("--capital")) || 0.668;
    return px * capital * number("mm") / (2 * Math.tan(minutes / 60 * Math.PI / 360)) / 1000;
  }

  function metres(value) {
    return (Math.floor(value * 10) / 10).toLocaleString(document.documentElement.lang, { maximumFractionDigits: 1 });
  }

  apply();
  return { number: number, look: function () { return values.look || ""; }, set: set, put: put, reach: reach, metres: metres };
}());
