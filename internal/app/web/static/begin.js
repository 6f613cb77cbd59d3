// The first page: the drawings of what to measure take the shape of what is
// typed, and what is typed is kept on this device.
import { Draft } from "./draft.js";
import { Live, put } from "./live.js";

const form = document.getElementById("begin");
form.dataset.full = "only";
const draft = new Draft(form, "begin " + form.elements.shape.value);
const live = new Live(form, (answer) => {
  if (answer) put(answer.parts);
});

form.addEventListener("input", (event) => {
  draft.keep();
  if (event.target.name === "units") {
    for (const unit of form.querySelectorAll(".unit")) {
      unit.textContent = { cm: "in", in: "cm", L: "gal", gal: "L" }[unit.textContent] ?? unit.textContent;
    }
    const paper = event.target.value === "us" ? "Letter" : "A4";
    form.elements.paper.value = paper;
  }
  live.soon();
});
if (!document.querySelector(".err") && draft.bringBack()) {
  document.getElementById("status").textContent = "This is what you typed before.";
  live.ask();
}
