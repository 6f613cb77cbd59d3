// Numbers unfold where they stand, level by level. Without this file the links
// lead to a page that has them unfolded.

async function fill(place, address) {
  const response = await fetch(address);
  if (!response.ok) return false;
  place.innerHTML = await response.text();
  return true;
}

// A row of the list becomes a line that unfolds.
for (const row of document.querySelectorAll("li.unfold")) {
  const link = row.querySelector("a");
  const details = document.createElement("details");
  details.className = "working";
  const summary = document.createElement("summary");
  summary.append(link.textContent, ": ", row.querySelector("b"));
  const inside = document.createElement("div");
  details.dataset.part = row.dataset.part;
  details.append(summary, inside);
  row.replaceChildren(details);
}

document.addEventListener(
  "toggle",
  async (event) => {
    const details = event.target;
    if (!(details instanceof HTMLDetailsElement) || !details.open || !details.dataset.part) return;
    const address = details.dataset.part;
    delete details.dataset.part;
    let inside = details.querySelector(":scope > div");
    if (!inside) {
      inside = document.createElement("div");
      const old = [...details.children].filter((c) => c.tagName !== "SUMMARY");
      details.append(inside);
      for (const c of old) c.remove();
    }
    if (!(await fill(inside, address))) details.dataset.part = address;
  },
  true,
);
