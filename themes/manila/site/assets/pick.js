/* Picking by keys or a page-turner, and setting this screen: its scale by a bank card, its reader, its ground. */
(function () {
  "use strict";

  const CARD_MM = 85.6; /* long side of a card, ISO/IEC 7810 ID-1 */
  const SMALLEST = 0.0274; /* of the window's width: the action line of the fullest step */
  const section = document.getElementById("this-screen");
  const bar = section.querySelector(".card-bar");
  const length = document.getElementById("bar-length");
  const reach = document.getElementById("reach");
  const screen = seamboardScreen;

  section.hidden = false;
  length.value = String(Math.round(screen.number("mm") ? CARD_MM / screen.number("mm") : CARD_MM / 25.4 * 96));

  function chosen(name, value) {
    const radio = section.querySelector("input[name=" + name + "][value='" + value + "']");
    if (radio) radio.checked = true;
  }
  chosen("distance", String(screen.number("distance") || 3));
  chosen("look", screen.look());

  function tell() {
    bar.style.setProperty("width", length.value + "px");
    const distance = screen.number("distance") || 3;
    const far = screen.reach(SMALLEST * window.innerWidth, 20);
    const words = !far ? reach.dataset.unset : far < distance ? reach.dataset.far : reach.dataset.near;
    reach.textContent = words.replace("{reach}", screen.metres(far)).replace("{distance}", screen.metres(distance));
  }

  length.addEventListener("input", function () {
    screen.set("mm", (CARD_MM / Number(length.value)).toFixed(5));
    tell();
  });
  section.addEventListener("change", function (event) {
    const field = event.target;
    if (field.name === "distance" || field.name === "look") screen.set(field.name, field.value);
    if (field.name === "loop") {
      document.querySelectorAll("a.work-link").forEach(function (link) { screen.put(link, "loop", field.value); });
    }
    tell();
  });
  window.addEventListener("resize", tell);
  tell();

  /* A page-turner goes from one to the next, as it does on the screens; Enter opens. */
  document.addEventListener("keydown", function (event) {
    const way = { PageDown: 1, PageUp: -1 }[event.key];
    if (!way || event.altKey || event.ctrlKey || event.metaKey) return;
    const stops = Array.from(document.querySelectorAll("main summary, main details[open] a, main input"));
    const at = stops.indexOf(document.activeElement);
    const next = stops[at < 0 && way < 0 ? stops.length - 1 : at + way];
    if (!next) return;
    event.preventDefault();
    next.focus();
  });
}());
