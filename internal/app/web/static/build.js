// Build, worked out while one types; holes that are dragged or moved with the
// arrow keys. Without this file the form's buttons do the same.
import { Draft, forget, wasSaved } from "./draft.js";
import { Live } from "./live.js";
import { put, settle } from "./parts.js";
import { tell } from "./problems.js";
import { fieldOfHole, focusAt, focused, holes } from "./holes.js";

const form = document.getElementById("build");
const status = document.getElementById("status");
const rest = document.getElementById("rest");
const work = document.getElementById("work");
const draft = new Draft(form, location.pathname + form.elements.tub.value);

const fieldOf = (path) => form.elements.namedItem(path) ?? fieldOfHole(form, path);

const live = new Live(form, (answer) => {
  work.classList.remove("old");
  if (!answer) {
    status.textContent = "The program does not answer. What you typed is kept on this device; look whether it still runs.";
    return;
  }
  tell(form, answer.problems, fieldOf, rest);
  const hole = focused();
  const waits = put(answer.parts);
  if (hole) focusAt(hole);
  status.textContent = draft.changed() ? answer.status + (waits ? " The lid follows when you leave its table." : "") : "";
});

function changed() {
  draft.keep();
  work.classList.add("old");
  status.textContent = "Working it out.";
  live.soon();
}

form.addEventListener("input", (event) => {
  const hole = /^hole\.(\d+)\.[xy]$/.exec(event.target.name);
  if (hole) form.elements[`hole.${hole[1]}.fixed`].checked = true;
  if (event.target.name?.startsWith("keep.")) {
    draft.keep();
    return;
  }
  changed();
});
form.addEventListener("focusout", (event) => {
  if (!event.relatedTarget?.closest?.("table.holes")) settle();
});
holes(form, changed, live);

if (wasSaved) {
  draft.drop();
  forget("begin");
} else if (draft.bringBack()) {
  status.textContent = `This is what you typed before and did not save.${draft.meanwhile()}`;
  live.ask();
}
