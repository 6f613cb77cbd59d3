// Plan as text: what is typed is kept on this device, and a problem's line is
// one press away.
import { Draft, wasSaved } from "./draft.js";

const form = document.getElementById("plan");
const text = document.getElementById("text");
const status = document.getElementById("status");

if (!text.readOnly) {
  const draft = new Draft(form, location.pathname);
  form.addEventListener("input", () => draft.keep());
  const problems = document.querySelector(".err");
  if (wasSaved) draft.drop();
  else if (!problems && draft.bringBack()) {
    status.textContent = "This is what you typed before and did not save.";
    // What was changed elsewhere since is shown beside it when this is saved.
    form.elements.base.value = draft.from;
  }
}

for (const link of document.querySelectorAll("a[data-line]")) {
  link.addEventListener("click", (event) => {
    event.preventDefault();
    const line = Number(link.dataset.line);
    const lines = text.value.split("\n");
    const start = lines.slice(0, line - 1).reduce((sum, l) => sum + l.length + 1, 0);
    text.focus();
    text.setSelectionRange(start, start + (lines[line - 1] ?? "").length);
    const height = parseFloat(getComputedStyle(text).lineHeight);
    text.scrollTop = Math.max(0, (line - 4) * height);
  });
}
