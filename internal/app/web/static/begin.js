// The first page: the drawings of what to measure take the shape of what is
// typed, and what is typed is kept on this device.
import { Draft } from "./draft.js";
import { Live } from "./live.js";
import { put } from "./parts.js";

const form = document.getElementById("begin");
form.dataset.full = "only";
const draft = new Draft(form, "begin " + form.elements.shape.value);
const live = new Live(form, (answer) => {
  if (answer) put(answer.parts);
});

// The units at the fields' ends follow the choice.
const labels = [...form.querySelectorAll(".unit")].map((unit) => [unit, unit.textContent]);
const drawnIn = form.elements.units.value;
const other = { cm: "in", in: "cm", L: "gal", gal: "L" };
function showUnits() {
  for (const [unit, word] of labels) unit.textContent = form.elements.units.value === drawnIn ? word : (other[word] ?? word);
}

form.addEventListener("input", (event) => {
  if (event.target.name === "units") {
    showUnits();
    form.elements.paper.value = event.target.value === "us" ? "Letter" : "A4";
  }
  draft.keep();
  live.soon();
});
if (!document.querySelector(".err") && draft.bringBack()) {
  showUnits();
  document.getElementById("status").textContent = "This is what you typed before.";
  live.ask();
}
