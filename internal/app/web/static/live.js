// A form that is worked out while one types: the newest question counts, an
// older one still on its way is given up.

const pause = 120; // ms of quiet before asking

export class Live {
  // show is given each answer; without is what is said when none comes.
  constructor(form, show) {
    this.form = form;
    this.show = show;
    this.timer = 0;
    this.asking = null;
  }

  soon() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.ask(), pause);
  }

  async ask() {
    clearTimeout(this.timer);
    this.asking?.abort();
    const mine = new AbortController();
    this.asking = mine;
    for (const effort of this.form.dataset.full === "only" ? ["full"] : ["quick", "full"]) {
      let answer;
      try {
        const response = await fetch(`${this.form.dataset.try}?effort=${effort}`, {
          method: "POST",
          body: new URLSearchParams(new FormData(this.form)),
          signal: mine.signal,
        });
        if (!response.ok) throw new Error(response.statusText);
        answer = await response.json();
      } catch (error) {
        if (error.name === "AbortError" || mine.signal.aborted) return;
        this.show(null);
        return;
      }
      if (mine.signal.aborted) return;
      this.show(answer);
      if (answer.full || answer.problems.length > 0) return;
    }
  }
}

// put swaps parts of the page for the answer's and keeps the place where one
// is: the focus, and what was unfolded.
export function put(parts) {
  const at = document.activeElement;
  const mark = at && (at.id ? `#${CSS.escape(at.id)}` : at.name ? `[name="${CSS.escape(at.name)}"]` : "");
  for (const [id, html] of Object.entries(parts ?? {})) {
    const place = document.getElementById(id);
    if (!place) continue;
    const open = [...place.querySelectorAll("details[open] > summary")].map((s) => s.textContent.split(":")[0]);
    place.innerHTML = html;
    for (const summary of place.querySelectorAll("details > summary")) {
      if (open.includes(summary.textContent.split(":")[0])) summary.parentElement.open = true;
    }
  }
  if (mark && document.activeElement !== at) document.querySelector(mark)?.focus({ preventScroll: true });
}

// tell puts each problem at its field, and takes away those that are mended.
export function tell(form, problems) {
  for (const old of form.querySelectorAll(".err[data-live]")) old.remove();
  for (const field of form.querySelectorAll("[aria-invalid]")) {
    field.removeAttribute("aria-invalid");
    field.closest(".field")?.classList.remove("bad");
  }
  for (const problem of problems) {
    const field = form.elements.namedItem(problem.Field);
    if (!(field instanceof Element)) continue;
    field.setAttribute("aria-invalid", "true");
    const box = field.closest(".field");
    box?.classList.add("bad");
    const said = document.createElement("div");
    said.className = "err";
    said.dataset.live = "yes";
    const line = document.createElement("p");
    const what = document.createElement("b");
    what.textContent = `${problem.What}. `;
    line.append(what, problem.Hint);
    said.append(line);
    (box ?? field).after(said);
  }
}
