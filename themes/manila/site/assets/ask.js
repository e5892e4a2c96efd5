/* Asks what counts: each key point with three steps to choose from. For oneself; nothing is counted up or kept. */
(function () {
  "use strict";

  const dialog = document.getElementById("ask");
  const opener = document.getElementById("ask-me");
  if (!dialog || !opener || typeof dialog.showModal !== "function") return;

  const steps = Array.from(document.querySelectorAll(".screen.is-step")).filter(function (step) {
    return step.querySelector(".key");
  });
  const title = dialog.querySelector("h2");
  const point = dialog.querySelector(".asked");
  const answers = dialog.querySelector(".answers");
  const told = dialog.querySelector(".told");
  const on = dialog.querySelector(".on");
  let at = 0;
  let right = 0;
  let tried = false;

  function action(step) {
    return step.querySelector("h2").lastChild.parentNode.cloneNode(true);
  }
  function said(step) {
    const heading = action(step);
    heading.querySelectorAll(".hidden").forEach(function (part) { part.remove(); });
    return step.querySelector(".drill").textContent.trim() + "  " + heading.textContent.trim();
  }
  function keyOf(step) { return step.querySelector(".key").textContent.trim(); }

  /* The step and two others whose key points differ, in an order that is the same each time but not the route's. */
  function choices(number) {
    const own = steps[number];
    const others = steps.filter(function (step) { return keyOf(step) !== keyOf(own); });
    const start = (number * 3 + 1) % others.length;
    const unlike = [own].concat(others.slice(start), others.slice(0, start)).slice(0, 3);
    for (let turn = 0; turn < number % unlike.length; turn += 1) unlike.push(unlike.shift());
    return unlike;
  }

  function ask() {
    const own = steps[at];
    title.textContent = dialog.dataset.question;
    point.textContent = keyOf(own);
    told.textContent = "";
    on.hidden = true;
    tried = false;
    answers.replaceChildren.apply(answers, choices(at).map(function (step) {
      const item = document.createElement("li");
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = said(step);
      button.addEventListener("click", function () { answer(step, own, button); });
      item.append(button);
      return item;
    }));
    title.tabIndex = -1;
    title.focus();
  }

  function answer(step, own, button) {
    if (step === own) {
      if (!tried) right += 1;
      told.textContent = dialog.dataset.right;
    } else {
      told.textContent = dialog.dataset.wrong + " " + said(own);
    }
    tried = true;
    button.classList.add(step === own ? "is-right" : "is-wrong");
    on.textContent = dialog.dataset.next;
    on.hidden = false;
    on.focus();
  }

  on.addEventListener("click", function () {
    at += 1;
    if (at < steps.length) { ask(); return; }
    title.textContent = dialog.dataset.end.replace("{right}", right).replace("{all}", steps.length);
    point.textContent = "";
    told.textContent = "";
    answers.replaceChildren();
    on.hidden = true;
    dialog.querySelector(".close").focus();
  });
  dialog.querySelector(".close").addEventListener("click", function () { dialog.close(); });
  dialog.addEventListener("close", function () { opener.closest("details").open = false; });

  opener.hidden = false;
  opener.addEventListener("click", function () {
    at = 0;
    right = 0;
    dialog.showModal();
    ask();
  });
}());
