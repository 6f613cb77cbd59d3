// Moving holes. The drawing says how its pixels and the lid's millimetres go
// together; what is moved stands in the table's fields, and is fixed there.

import { settle } from "./parts.js";

const far = 5; // marks of the ruler that a step with Shift takes

// focused is the hole that has the focus, in the drawing or in the table. An
// answer may give it another number, so that only its place tells it again.
export function focused() {
  const at = document.activeElement;
  const hole = at?.closest?.("#lid-figure .hole");
  if (hole) return { ...place(hole), tick: false };
  const row = at?.type === "checkbox" && at.closest(".holes tr");
  const drawn = row && document.querySelector(`#lid-figure .hole[data-n="${row.dataset.n}"]`);
  return drawn ? { ...place(drawn), tick: true } : null;
}

// focusAt gives the focus to the hole at a place.
export function focusAt(at) {
  for (const hole of document.querySelectorAll("#lid-figure .hole")) {
    const here = place(hole);
    if (Math.hypot(here.x - at.x, here.y - at.y) > same || hole.getClientRects().length === 0) continue;
    const spot = at.tick ? document.querySelector(`.holes tr[data-n="${hole.dataset.n}"] [type=checkbox]`) : hole;
    if (document.activeElement !== spot) spot?.focus({ preventScroll: true });
  }
}

// fieldOfHole is the field of the table that a path of the plan means: the
// plan's list has the ticked holes alone.
export function fieldOfHole(form, path) {
  const part = /^tubs\[\d+\]\.lid\.holes\[(\d+)\](?:\.at(?:\[(\d)\])?)?$/.exec(path);
  if (!part) return null;
  const ticked = [...form.querySelectorAll(".holes tr[data-n]")].filter((row) => row.querySelector("[type=checkbox]").checked);
  return ticked[Number(part[1])]?.querySelectorAll("[type=text]")[Number(part[2] ?? 0)] ?? null;
}

const same = 0.06; // mm

const place = (hole) => ({
  x: Number(hole.dataset.atX ?? hole.dataset.x),
  y: Number(hole.dataset.atY ?? hole.dataset.y),
});

// holes lets the holes be moved. While one is held the drawing must stay: live
// is stopped until it is let go.
export function holes(form, changed, live) {
  let held = null;

  const holeOf = (target) => target?.closest?.("#lid-figure .hole");
  const drawing = (hole) => {
    const svg = hole.ownerSVGElement;
    const d = svg.dataset;
    return { svg, scale: Number(d.scale), x0: Number(d.x0), y0: Number(d.y0), step: Number(d.step) };
  };
  const field = (hole, end) => form.elements.namedItem(`hole.${hole.dataset.n}.${end}`);

  // move puts a hole at a mark of the ruler, in mm of the lid.
  function move(hole, xMM, yMM) {
    const d = drawing(hole);
    const at = { x: Math.round(xMM / d.step) * d.step, y: Math.round(yMM / d.step) * d.step };
    const dx = (at.x - Number(hole.dataset.x)) * d.scale;
    const dy = -(at.y - Number(hole.dataset.y)) * d.scale;
    hole.setAttribute("transform", `translate(${dx} ${dy})`);
    hole.dataset.atX = at.x;
    hole.dataset.atY = at.y;
    for (const end of ["x", "y"]) {
      const f = field(hole, end);
      if (f) f.value = `${at[end]} mm`;
    }
    const fixed = field(hole, "fixed");
    if (fixed) fixed.checked = true;
  }

  form.addEventListener("pointerdown", (event) => {
    if (!holeOf(event.target) || event.button !== 0) return;
    event.preventDefault();
    settle(); // the drawing may have waited for the table to be left
    const hole = holeOf(document.elementFromPoint(event.clientX, event.clientY));
    if (!hole) return;
    hole.focus();
    const box = drawing(hole).svg.getBoundingClientRect();
    const view = drawing(hole).svg.viewBox.baseVal;
    held = { hole, x: event.clientX, y: event.clientY, from: place(hole), zoom: view.width / box.width, moved: false, waiting: live.stop() };
    hole.classList.add("held");
    hole.setPointerCapture(event.pointerId);
  });
  form.addEventListener("pointermove", (event) => {
    if (!held) return;
    const { scale } = drawing(held.hole);
    const dx = ((event.clientX - held.x) * held.zoom) / scale;
    const dy = ((event.clientY - held.y) * held.zoom) / scale;
    if (Math.hypot(dx, dy) < 1 && !held.moved) return;
    held.moved = true;
    move(held.hole, held.from.x + dx, held.from.y - dy);
  });
  const drop = () => {
    if (!held) return;
    held.hole.classList.remove("held");
    const { moved, waiting } = held;
    held = null;
    if (moved) changed();
    if (moved || waiting) live.ask();
  };
  form.addEventListener("pointerup", drop);
  form.addEventListener("pointercancel", drop);

  form.addEventListener("keydown", (event) => {
    const hole = holeOf(event.target);
    if (!hole) return;
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    if (way) {
      event.preventDefault();
      const { step } = drawing(hole);
      const at = place(hole);
      const by = step * (event.shiftKey ? far : 1);
      move(hole, at.x + way[0] * by, at.y + way[1] * by);
      changed();
    } else if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      const fixed = field(hole, "fixed");
      if (fixed) {
        fixed.checked = !fixed.checked;
        changed();
      }
    }
  });
}
