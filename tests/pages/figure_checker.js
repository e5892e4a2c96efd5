// What is wrong with a drawn figure: texts on each other or outside it, too small to read on paper, too faint.
//
// checkFigures(paths of <svg> in the page) runs in the page, so that the browser's own font measures count. A text's
// box is that of its ink, not of its line; rotated texts are compared as the parallelograms they are.

(() => {
  const TOUCH = 0.05; // mm that two texts may share: rounding
  const LEAST_CONTRAST = 4.5;
  const FAINT_SHARE = 0.04; // of a text's box may be darker line work that a plate's edge leaves
  const PX_PER_MM = 8;

  const pen = document.createElement("canvas").getContext("2d");

  function inkOf(text) {
    const style = getComputedStyle(text);
    pen.font = `${style.fontWeight} 100px ${style.fontFamily}`;
    pen.letterSpacing = "0px";
    const size = parseFloat(style.fontSize) / 100;
    const measure = pen.measureText(text.textContent);
    const x = Number(text.getAttribute("x") || 0);
    const y = Number(text.getAttribute("y") || 0);
    const shift = { middle: -measure.width / 2, end: -measure.width }[style.textAnchor] || 0;
    return {
      left: x + (shift - measure.actualBoundingBoxLeft) * size,
      right: x + (shift + measure.actualBoundingBoxRight) * size,
      top: y - measure.actualBoundingBoxAscent * size,
      bottom: y + measure.actualBoundingBoxDescent * size,
      capital: pen.measureText("H").actualBoundingBoxAscent * size,
    };
  }

  // The ink's corners in the figure's own millimetres.
  function cornersOf(svg, text) {
    const ink = inkOf(text);
    const toFigure = svg.getScreenCTM().inverse().multiply(text.getScreenCTM());
    const at = (x, y) => {
      const point = new DOMPoint(x, y).matrixTransform(toFigure);
      return [point.x, point.y];
    };
    const corners = [at(ink.left, ink.top), at(ink.right, ink.top), at(ink.right, ink.bottom), at(ink.left, ink.bottom)];
    return { corners, capital: ink.capital * Math.hypot(toFigure.c, toFigure.d), words: text.textContent };
  }

  // How deep two convex shapes lie in each other, mm; negative when apart (separating axes).
  function shared(a, b) {
    let least = Infinity;
    for (const shape of [a, b]) {
      for (let i = 0; i < shape.length; i += 1) {
        const [x0, y0] = shape[i];
        const [x1, y1] = shape[(i + 1) % shape.length];
        const size = Math.hypot(x1 - x0, y1 - y0);
        if (size === 0) continue;
        const axis = [-(y1 - y0) / size, (x1 - x0) / size];
        const spans = [a, b].map((one) => one.map(([x, y]) => x * axis[0] + y * axis[1]));
        const depth = Math.min(Math.max(...spans[0]), Math.max(...spans[1])) - Math.max(Math.min(...spans[0]), Math.min(...spans[1]));
        least = Math.min(least, depth);
      }
    }
    return least;
  }

  function luminance([r, g, b]) {
    const part = (value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    };
    return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  }

  function contrast(a, b) {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  }

  // The figure without its texts, as pixels on white.
  async function groundOf(svg, box) {
    const copy = svg.cloneNode(true);
    copy.querySelectorAll("text").forEach((text) => text.remove());
    copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
    copy.setAttribute("width", box.width * PX_PER_MM);
    copy.setAttribute("height", box.height * PX_PER_MM);
    const picture = new Image();
    picture.src = URL.createObjectURL(new Blob([new XMLSerializer().serializeToString(copy)], { type: "image/svg+xml" }));
    await picture.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.ceil(box.width * PX_PER_MM);
    canvas.height = Math.ceil(box.height * PX_PER_MM);
    const ground = canvas.getContext("2d", { willReadFrequently: true });
    ground.fillStyle = "white";
    ground.fillRect(0, 0, canvas.width, canvas.height);
    ground.drawImage(picture, 0, 0);
    URL.revokeObjectURL(picture.src);
    return ground;
  }

  // Share of a text's box whose ground is too near to the text's colour.
  function faintShare(ground, corners, colour, box) {
    const xs = corners.map(([x]) => (x - box.x) * PX_PER_MM);
    const ys = corners.map(([, y]) => (y - box.y) * PX_PER_MM);
    const left = Math.max(0, Math.floor(Math.min(...xs)));
    const top = Math.max(0, Math.floor(Math.min(...ys)));
    const width = Math.max(1, Math.min(ground.canvas.width, Math.ceil(Math.max(...xs))) - left);
    const height = Math.max(1, Math.min(ground.canvas.height, Math.ceil(Math.max(...ys))) - top);
    const pixels = ground.getImageData(left, top, width, height).data;
    let faint = 0;
    for (let i = 0; i < pixels.length; i += 4) {
      if (contrast(colour, [pixels[i], pixels[i + 1], pixels[i + 2]]) < LEAST_CONTRAST) faint += 1;
    }
    return faint / (pixels.length / 4);
  }

  function colourOf(text) {
    return getComputedStyle(text).fill.match(/[\d.]+/g).slice(0, 3).map(Number);
  }

  async function faultsOf(svg, leastCapital) {
    const name = svg.querySelector("title")?.textContent || "figure";
    const box = svg.viewBox.baseVal;
    const texts = [...svg.querySelectorAll("text")].filter((text) => text.textContent.trim());
    const found = texts.map((text) => cornersOf(svg, text));
    const faults = [];
    found.forEach(({ corners, capital, words }, i) => {
      const outside = corners.some(([x, y]) => x < box.x - TOUCH || y < box.y - TOUCH || x > box.x + box.width + TOUCH || y > box.y + box.height + TOUCH);
      if (outside) faults.push({ name, kind: "outside", words });
      if (capital < leastCapital - 0.02) faults.push({ name, kind: "small", words, capital });
      for (let j = i + 1; j < found.length; j += 1) {
        if (shared(corners, found[j].corners) > TOUCH) faults.push({ name, kind: "overlap", words: `${words} / ${found[j].words}` });
      }
    });
    if (texts.length > 0) {
      const ground = await groundOf(svg, box);
      found.forEach(({ corners, words }, i) => {
        const share = faintShare(ground, corners, colourOf(texts[i]), box);
        if (share > FAINT_SHARE) faults.push({ name, kind: "faint", words, share });
      });
    }
    return faults;
  }

  window.checkFigures = async (selector, leastCapital) => {
    await document.fonts.ready;
    const faults = [];
    const figures = [...document.querySelectorAll(selector)];
    for (const svg of figures) faults.push(...(await faultsOf(svg, leastCapital)));
    return { figures: figures.length, texts: document.querySelectorAll(`${selector} text`).length, faults };
  };
})();
