// A form that is worked out while one types. What is typed is kept on this
// device until it is saved.
import { Draft, wasSaved } from "./draft.js";
import { Live } from "./live.js";
import { put } from "./parts.js";
import { tell } from "./problems.js";

// worked makes a form live. Fields whose names begin with quiet are only put in
// by a button: typing there is kept and not worked out.
export function worked(form, name, quiet) {
  const status = document.getElementById("status");
  const rest = document.getElementById("rest");
  const work = document.getElementById("work");
  const draft = new Draft(form, name);

  const live = new Live(form, (answer) => {
    work.classList.remove("old");
    if (!answer) {
      status.textContent = "The program does not answer. What you typed is kept on this device; look whether it still runs.";
      return;
    }
    tell(form, answer.problems, (path) => form.elements.namedItem(path), rest);
    put(answer.parts);
    status.textContent = draft.changed() ? answer.status : "";
  });

  form.addEventListener("input", (event) => {
    draft.keep();
    if (quiet && event.target.name?.startsWith(quiet)) return;
    work.classList.add("old");
    status.textContent = "Working it out.";
    live.soon();
  });

  if (wasSaved) draft.drop();
  else if (draft.bringBack()) {
    status.textContent = `This is what you typed before and did not save.${draft.meanwhile()}`;
    live.ask();
  }
}
