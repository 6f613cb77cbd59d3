// What is typed and not saved yet is kept on this device, so that a reload or a
// power cut loses nothing. It goes when the server has saved it.

export class Draft {
  constructor(form, name) {
    this.form = form;
    this.key = `rootbell draft ${name}`;
    this.began = this.entries();
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
    try {
      if (this.changed()) localStorage.setItem(this.key, JSON.stringify(this.changes()));
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
    if (!kept) return false;
    let some = false;
    for (const [name, value] of Object.entries(kept)) {
      const field = this.form.elements.namedItem(name);
      if (!field) continue;
      if (field instanceof RadioNodeList) {
        if (field.value !== value) some = true;
        field.value = value;
      } else if (field.type === "checkbox") {
        if (field.checked !== value) some = true;
        field.checked = value;
      } else {
        if (field.value !== value) some = true;
        field.value = value;
      }
    }
    return some;
  }
}

// wasSaved tells whether this page was opened because something was saved.
export const wasSaved = new URLSearchParams(location.search).has("said");

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
