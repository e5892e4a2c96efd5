/* Keys, remote, swipe and a screen that stays awake; what is asked for beside them: leafing, a clock to practise with.
   Every screen also works without this file: the links do the same. Nothing is measured and nothing kept. */
(function () {
  "use strict";

  const screens = Array.from(document.querySelectorAll("main > .screen"));
  const asked = new URLSearchParams(location.search);
  const SWIPE_PX = 60;
  const FORWARD = ["PageDown", "ArrowDown"];
  const BACKWARD = ["PageUp", "ArrowUp"];
  /* Onward is where the reading goes. */
  (document.documentElement.dir === "rtl" ? BACKWARD : FORWARD).push("ArrowRight");
  (document.documentElement.dir === "rtl" ? FORWARD : BACKWARD).push("ArrowLeft");

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

  function busy(target) {
    return document.querySelector("dialog[open]") || target.closest("details[open], button, select");
  }

  document.addEventListener("keydown", function (event) {
    if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (busy(event.target)) return;
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
    follow((across < 0) === (document.documentElement.dir !== "rtl") ? "next" : "back");
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

  /* The same step in another language, with what was asked for. */
  function keepPlace() {
    document.querySelectorAll(".tongues a").forEach(function (link) {
      link.hash = location.hash;
      ["loop", "clock"].forEach(function (name) {
        if (asked.has(name)) seamboardScreen.put(link, name, asked.get(name) || "1");
      });
    });
  }
  window.addEventListener("hashchange", keepPlace);
  keepPlace();

  const ground = document.getElementById("ground");
  function isDark() {
    const look = seamboardScreen.look();
    return look ? look === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
  }
  function nameGround() { ground.textContent = isDark() ? ground.dataset.light : ground.dataset.dark; }
  ground.hidden = false;
  nameGround();
  ground.addEventListener("click", function () {
    seamboardScreen.set("look", isDark() ? "light" : "dark");
    nameGround();
  });

  /* From how far the screen that is shown can be read: what is read to work at 20 minutes of arc, the rest at 16. */
  const READ = ".say h2, .key, .hazard p, .step-caution, .check .value";
  const OTHER = ".check .what, .check .with, dt, .place";
  function tellReach() {
    const here = shown();
    const line = here.querySelector(".calibration");
    const distance = seamboardScreen.number("distance");
    if (!line || !seamboardScreen.number("mm")) return;
    const far = [[READ, 20], [OTHER, 16]].reduce(function (least, kind) {
      return Array.from(here.querySelectorAll(kind[0])).reduce(function (nearest, part) {
        return Math.min(nearest, seamboardScreen.reach(parseFloat(getComputedStyle(part).fontSize), kind[1]));
      }, least);
    }, Infinity);
    const words = distance && far < distance ? line.dataset.far : line.dataset.near;
    line.textContent = words.replace("{reach}", seamboardScreen.metres(far)).replace("{distance}", seamboardScreen.metres(distance));
    line.classList.toggle("too-far", Boolean(distance && far < distance));
  }
  window.addEventListener("hashchange", tellReach);
  window.addEventListener("resize", tellReach);
  tellReach();

  /* Leafing: each screen stays the seconds asked for, longer where there is more to read; any touch or key stops it. */
  const hold = document.querySelector(".hold");
  const WORDS_A_SECOND = 2;
  let turn = 0;
  const stay = Math.min(Math.max(parseInt(asked.get("loop"), 10) || 0, 0), 600);
  function leaf() {
    clearTimeout(turn);
    const words = shown().innerText.split(/\s+/).length;
    turn = setTimeout(function () {
      const link = shown().querySelector("a.next");
      show(link && shown() !== screens[screens.length - 1] ? link.hash.slice(1) : screens[0].id);
      leaf();
    }, 1000 * Math.max(stay, words / WORDS_A_SECOND));
  }
  function leafing(on) {
    clearTimeout(turn);
    turn = 0;
    hold.textContent = on ? hold.dataset.hold : hold.dataset.go;
    if (on) leaf();
  }
  if (stay) {
    hold.hidden = false;
    leafing(true);
    hold.addEventListener("click", function () { leafing(!turn); });
    ["keydown", "pointerdown"].forEach(function (kind) {
      document.addEventListener(kind, function (event) { if (turn && !hold.contains(event.target)) leafing(false); });
    });
  }

  /* A clock beside the standard time, for somebody who practises and asked for it on the page of the work. */
  const clock = document.querySelector(".clock");
  if (asked.has("clock") && !stay) {
    let since = Date.now();
    const seconds = function (value) { return Math.floor(value / 60) + ":" + String(Math.floor(value % 60)).padStart(2, "0"); };
    const tick = function () {
      const standard = Number(shown().dataset.seconds || 0);
      const own = seconds((Date.now() - since) / 1000);
      clock.textContent = standard ? own + " / " + seconds(standard) : own;
    };
    clock.hidden = false;
    window.addEventListener("hashchange", function () { since = Date.now(); tick(); });
    setInterval(tick, 1000);
    tick();
  }
}());
