// What is typed and not saved yet is kept on this device, so that a reload or a
// power cut loses nothing. It goes when the server has saved it.

export class Draft {
  constructor(form, name) {
    this.form = form;
    this.key = `rootbell draft ${name}`;
    // A page with something to mend shows what was typed and not what is saved.
    this.began = form.dataset.unsaved ? {} : this.entries();
    this.base = form.elements.base?.value;
    this.changedThere = [];
  }

  // entries are the fields that a person types in, by name.
  entries() {
    const out = {};
    for (const field of this.form.elements) {
      if (!field.name || field.type === "hidden" || field.type === "file" || field.tagName === "BUTTON") continue;
      if (field.type === "radio") {
        if (field.checked) out[field.name] = field.value;
      } else {
        out[field.name] = field.type === "checkbox" ? field.checked : field.value;
      }
    }
    return out;
  }

  // changes are the fields that differ from what the server has.
  changes() {
    const now = this.entries();
    return Object.fromEntries(Object.entries(now).filter(([name, value]) => value !== this.began[name]));
  }

  changed() {
    return Object.keys(this.changes()).length > 0;
  }

  keep() {
    const changes = this.changes();
    const were = Object.fromEntries(Object.keys(changes).map((name) => [name, this.began[name]]));
    try {
      if (Object.keys(changes).length > 0) localStorage.setItem(this.key, JSON.stringify({ base: this.base, changes, were }));
      else localStorage.removeItem(this.key);
    } catch {
      // Private windows may keep nothing; the form itself still works.
    }
  }

  drop() {
    try {
      localStorage.removeItem(this.key);
    } catch {
      // as above
    }
  }

  // bringBack fills the form with what was kept; true where something was.
  bringBack() {
    let kept;
    try {
      kept = JSON.parse(localStorage.getItem(this.key) ?? "null");
    } catch {
      return false;
    }
    if (!kept?.changes) return false;
    this.from = kept.base;
    let some = false;
    for (const [name, value] of Object.entries(kept.changes)) {
      const field = this.form.elements.namedItem(name);
      if (!field) continue;
      const end = field.type === "checkbox" ? "checked" : "value";
      if (field[end] === value) continue;
      const was = kept.were?.[name];
      if (was !== undefined && was !== field[end]) this.changedThere.push([field, field[end]]);
      field[end] = value;
      some = true;
    }
    return some;
  }

  // meanwhile tells which of the fields brought back were changed elsewhere
  // since, so that none is overwritten unseen.
  meanwhile() {
    if (this.from === this.base) return "";
    const said = this.changedThere.filter(([field]) => field.labels?.length).map(([field, value]) => `${field.labels[0].textContent.trim()} is ${value} there`);
    return said.length > 0 ? ` The plan was changed elsewhere since: ${said.join(", ")}.` : "";
  }
}

// wasSaved tells whether this page was opened because something was saved. The
// address forgets it, so that a reload is no saving.
export const wasSaved = new URLSearchParams(location.search).has("said");

if (wasSaved) {
  const address = new URL(location.href);
  address.searchParams.delete("said");
  history.replaceState(history.state, "", address);
}

// forget drops every draft whose name begins so.
export function forget(name) {
  try {
    for (const key of Object.keys(localStorage)) {
      if (key.startsWith(`rootbell draft ${name}`)) localStorage.removeItem(key);
    }
  } catch {
    // Private windows may keep nothing.
  }
}
