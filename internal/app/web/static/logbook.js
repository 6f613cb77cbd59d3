// Logbook: an entry is kept on this device before it is sent, and until the
// server has said that it has it.
import { drop, keep, kept, newId, send } from "./entries.js";

const form = document.getElementById("entry");
const status = document.getElementById("status");
const waits = document.getElementById("waits");
const garden = form.dataset.garden;
const draftKey = `rootbell draft logbook ${garden}`;
const ahead = Date.parse(form.dataset.now) - Date.now(); // of the server's clock
const opened = new URLSearchParams(location.search);
const pause = 15000; // ms between two tries while entries wait
let sending = false;
let given = null; // the button whose press goes to the server without script

// Fields that stay from one entry to the next.
const stays = new Set(["tub", "by", "level-way", "ph-with", "ph-step", "ph-calibrated", "ec-with", "ec-scale", "ec-step", "ec-checked", "ec-raw"]);

function entryOf(submitter) {
  const data = new FormData(form, submitter);
  const now = Date.now() + ahead;
  if (!data.get("at")) data.set("at", new Date(now).toISOString());
  return {
    id: data.get("id"),
    garden,
    action: form.getAttribute("action"),
    tub: data.get("tub"),
    fields: [...data.entries()],
    since: now,
  };
}

function inWords(entry) {
  const when = new Date(entry.since).toLocaleString("en-GB", { weekday: "short", day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });
  return `${entry.tub}, ${when}`;
}

function line(parent, strong, text) {
  const p = document.createElement("p");
  const b = document.createElement("b");
  b.textContent = strong;
  p.append(b, ` ${text}`);
  parent.append(p);
  return p;
}

function button(parent, words, press) {
  const b = document.createElement("button");
  b.type = "button";
  b.className = "btn small";
  b.textContent = words;
  b.addEventListener("click", press);
  parent.append(" ", b);
}

// lookAt sends a kept entry as the form itself would, so that the page comes
// back with the question at its field.
function lookAt(entry) {
  const again = document.createElement("form");
  again.method = "post";
  again.action = entry.action;
  for (const [name, value] of entry.fields) {
    const field = document.createElement("input");
    field.type = "hidden";
    field.name = name;
    field.value = value;
    again.append(field);
  }
  document.body.append(again);
  again.submit();
}

function show(words = "") {
  const all = kept(garden).filter((entry) => entry.id !== form.elements.id.value);
  const unsent = all.filter((entry) => !entry.asked);
  waits.replaceChildren();
  if (unsent.length > 0) {
    const count = unsent.length === 1 ? "One entry waits on this device." : `${unsent.length} entries wait on this device.`;
    const end = unsent.length === 1 ? "It is sent when the line is back. Do not type it again." : "They are sent when the line is back. Do not type them again.";
    line(waits, count, `${unsent.map(inWords).join("; ")}. ${words} ${end}`);
  }
  for (const entry of all.filter((e) => e.asked)) {
    const p = line(waits, "One entry of this device has a question.", `${inWords(entry)}. It is not in the book yet.`);
    button(p, "Look at it", () => lookAt(entry));
    button(p, "Throw it away", () => {
      drop(entry.id);
      show();
    });
  }
  waits.hidden = all.length === 0;
}

// retry sends what waits. What was taken shows in the table.
async function retry() {
  if (sending) return;
  sending = true;
  let words = "";
  let came = 0;
  try {
    for (const entry of kept(garden)) {
      if (entry.asked || entry.id === form.elements.id.value) continue;
      const answer = await send(entry);
      if (answer.down) break;
      if (answer.error) words = answer.error;
      if (answer.stored) came += 1;
    }
  } finally {
    sending = false;
  }
  show(words);
  if (came > 0) {
    status.textContent = came === 1 ? "The entry that waited is in the book." : `${came} entries that waited are in the book.`;
    await refresh(form.elements.tub.value);
  }
}

// refresh shows another tub's last readings, or newer ones, beside the form.
async function refresh(tub) {
  try {
    const address = `${form.getAttribute("action")}?tub=${encodeURIComponent(tub.replaceAll(" ", "-"))}`;
    const response = await fetch(address);
    if (!response.ok) return;
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    const last = page.getElementById("last");
    if (last) document.getElementById("last")?.replaceWith(document.adoptNode(last));
    for (const fresh of page.querySelectorAll("#entry .hint[id]")) {
      const old = document.getElementById(fresh.id);
      if (old) old.textContent = fresh.textContent;
    }
  } catch {
    // the old ones stay
  }
}

// begin empties the form for the next entry.
function begin() {
  for (const field of form.elements) {
    if (!field.name || stays.has(field.name) || field.tagName === "BUTTON") continue;
    if (field.type === "checkbox" || field.type === "radio") field.checked = false;
    else field.value = "";
  }
  for (const old of form.querySelectorAll(".err, .qa, [name=answered], [name=corrects]")) old.remove();
  form.elements.id.value = newId();
  dropDraft();
}

function keepDraft() {
  try {
    localStorage.setItem(draftKey, JSON.stringify([...new FormData(form).entries()].filter(([name]) => !["id", "at", "answered"].includes(name))));
  } catch {
    // private windows may keep nothing; the form itself still works
  }
}

function dropDraft() {
  try {
    localStorage.removeItem(draftKey);
  } catch {
    // as above
  }
}

// bringBack fills the form with what was typed and never sent.
function bringBack() {
  let pairs;
  try {
    pairs = JSON.parse(localStorage.getItem(draftKey) ?? "null");
  } catch {
    return;
  }
  if (!pairs || pairs.some(([name]) => name === "corrects")) return;
  let some = false;
  for (const field of form.elements) {
    if (!field.name || field.type === "hidden" || field.tagName === "BUTTON") continue;
    const values = pairs.filter(([name]) => name === field.name).map(([, value]) => value);
    if (field.type === "checkbox" || field.type === "radio") {
      field.checked = values.includes(field.value);
    } else if (values.length > 0 && field.value !== values[0]) {
      field.value = values[0];
      some = true;
    }
  }
  if (some) status.textContent = "This is what you typed before and did not send.";
}

form.addEventListener("submit", async (event) => {
  if (given) return; // the browser sends it
  event.preventDefault();
  if (sending) return;
  const entry = entryOf(event.submitter);
  const safe = keep(entry);
  sending = true;
  status.textContent = "Writing it down …";
  const answer = await send(entry);
  sending = false;
  if (answer.stored) {
    dropDraft();
    location.assign(answer.to);
  } else if (answer.ask) {
    dropDraft();
    given = event.submitter ?? form;
    form.elements.at.value = entry.fields.find(([name]) => name === "at")[1];
    form.requestSubmit(event.submitter);
  } else if (safe && answer.down) {
    begin();
    status.textContent = "The line is down. The entry is kept on this device.";
    show();
  } else {
    // It stays in the form, and on the device where that keeps anything.
    status.textContent = answer.error ?? "The line is down, and this browser keeps nothing. Leave this page open and press again.";
  }
});

form.addEventListener("input", keepDraft);
form.addEventListener("change", (event) => {
  if (event.target.name === "tub" && !form.elements.corrects) refresh(event.target.value);
});
for (const link of document.querySelectorAll(".qa a[href^='#']")) {
  link.addEventListener("click", (event) => {
    event.preventDefault();
    const field = document.querySelector(link.getAttribute("href"));
    field.focus();
    field.select?.();
  });
}

if (["written", "there"].includes(opened.get("said"))) {
  drop(opened.get("entry"));
  dropDraft();
} else if (!document.querySelector("#entry .err, #entry .qa") && !form.elements.corrects) {
  bringBack();
}
show();
retry();
addEventListener("online", retry);
setInterval(() => {
  if (!waits.hidden) retry();
}, pause);
