/* Keys, remote, swipe and a screen that stays awake. Every screen also works without this file: the links do the same. */
(function () {
  "use strict";

  const screens = Array.from(document.querySelectorAll("main > .screen"));
  const SWIPE_PX = 60;
  const FORWARD = ["PageDown", "ArrowRight", "ArrowDown"];
  const BACKWARD = ["PageUp", "ArrowLeft", "ArrowUp"];

  function shown() {
    return document.querySelector("main > .screen:target") || screens[0];
  }

  /* location.replace moves :target and leaves no history entry, so the browser's Back leaves the floor screen. */
  function show(anchor) {
    if (location.hash !== "#" + anchor) location.replace("#" + anchor);
  }

  function follow(kind) {
    const link = shown().querySelector("a." + kind);
    if (link) show(link.hash.slice(1));
  }

  function focusHeading() {
    const heading = shown().querySelector("h2");
    if (heading) heading.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }

  document.addEventListener("keydown", function (event) {
    if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (event.target.closest("input") && event.key.startsWith("Arrow")) return;
    if (FORWARD.includes(event.key)) follow("next");
    else if (BACKWARD.includes(event.key)) follow("back");
    else if (event.key === "Home") show(screens[0].id);
    else if (event.key === "End") show(screens[screens.length - 1].id);
    else return;
    event.preventDefault();
  });

  document.addEventListener("click", function (event) {
    const link = event.target.closest("a[href^='#']");
    if (!link || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    show(link.hash.slice(1));
  });

  window.addEventListener("hashchange", focusHeading);

  /* A size is picked with a key or a finger; the page-turner works on at once. */
  document.addEventListener("click", function (event) {
    if (event.target.matches("input[name=size]") && event.detail > 0) focusHeading();
  });

  /* A swipe is one finger going mostly sideways; a second finger means a pinch. */
  let finger = null;
  document.addEventListener("pointerdown", function (event) {
    if (event.pointerType === "mouse") return;
    finger = event.isPrimary ? { id: event.pointerId, x: event.clientX, y: event.clientY } : null;
  });
  document.addEventListener("pointercancel", function () { finger = null; });
  document.addEventListener("pointerup", function (event) {
    if (!finger || event.pointerId !== finger.id) return;
    const across = event.clientX - finger.x;
    const along = event.clientY - finger.y;
    finger = null;
    if (Math.abs(across) < SWIPE_PX || Math.abs(across) < 2 * Math.abs(along)) return;
    follow(across < 0 ? "next" : "back");
  });

  /* A wake lock is lost whenever the page is hidden, so it is asked for again at each sign of use. */
  let lock = null;
  function stayAwake() {
    if (!("wakeLock" in navigator) || document.visibilityState !== "visible" || (lock && !lock.released)) return;
    navigator.wakeLock.request("screen").then(function (granted) { lock = granted; }, function () { lock = null; });
  }
  ["visibilitychange", "keydown", "pointerup"].forEach(function (kind) {
    document.addEventListener(kind, stayAwake);
  });
  stayAwake();
}());
