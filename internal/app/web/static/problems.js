// What is wrong with what is typed, each thing at its field.

// tell puts each problem at its field and takes away those that are mended. What
// has no field here is said in the list at rest.
export function tell(form, problems, fieldOf, rest) {
  clear(form);
  rest.replaceChildren();
  for (const problem of problems) {
    const field = fieldOf(problem.Field);
    if (field instanceof Element) mark(field, problem);
    else rest.append(sentence(problem));
  }
  rest.hidden = rest.childElementCount === 0;
}

function clear(form) {
  for (const field of form.querySelectorAll("[aria-invalid]")) {
    field.removeAttribute("aria-invalid");
    field.closest(".field")?.classList.remove("bad");
    const ids = (field.getAttribute("aria-describedby") ?? "").split(" ").filter((id) => !id.endsWith("-err"));
    if (ids.join("")) field.setAttribute("aria-describedby", ids.join(" "));
    else field.removeAttribute("aria-describedby");
  }
  for (const old of form.querySelectorAll(".err[data-live], .q > .err")) old.remove();
}

function mark(field, problem) {
  field.setAttribute("aria-invalid", "true");
  const box = field.closest(".field");
  box?.classList.add("bad");
  const said = document.createElement("div");
  said.className = "err";
  said.dataset.live = "yes";
  said.id = `${field.id || field.name}-err`;
  said.append(sentence(problem));
  (box ?? field).after(said);
  field.setAttribute("aria-describedby", `${said.id} ${field.getAttribute("aria-describedby") ?? ""}`.trim());
}

function sentence(problem) {
  const line = document.createElement("p");
  const what = document.createElement("b");
  what.textContent = `${problem.What} `;
  line.append(what, problem.Hint);
  return line;
}
