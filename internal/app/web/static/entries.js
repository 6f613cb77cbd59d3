// Entries of the logbook that this device keeps until the server has said that
// it has them. Each goes under its own id, however often it is sent.

const mark = "rootbell entry ";
const longest = 20000; // ms to wait for an answer before the line counts as down

// newId is a random UUID of version 4.
export function newId() {
  if (crypto.randomUUID) return crypto.randomUUID();
  const b = crypto.getRandomValues(new Uint8Array(16));
  b[6] = (b[6] & 15) | 64;
  b[8] = (b[8] & 63) | 128;
  const hex = [...b].map((x) => x.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

// keep tells whether the device took the entry.
export function keep(entry) {
  try {
    localStorage.setItem(mark + entry.id, JSON.stringify(entry));
    return true;
  } catch {
    return false; // private windows may keep nothing
  }
}

export function drop(id) {
  try {
    localStorage.removeItem(mark + id);
  } catch {
    // as above
  }
}

// kept are the entries of a garden that wait, the oldest first.
export function kept(garden) {
  const out = [];
  try {
    for (const key of Object.keys(localStorage)) {
      if (!key.startsWith(mark)) continue;
      const entry = JSON.parse(localStorage.getItem(key));
      if (entry?.garden === garden) out.push(entry);
    }
  } catch {
    // what cannot be read is left alone
  }
  return out.sort((a, b) => a.since - b.since);
}

// send gives the server's answer: {stored}, {ask} where a person has to look,
// {error} with its words, {down} where none came. Only {stored} lets it go.
export async function send(entry) {
  let response;
  let answer = {};
  try {
    response = await fetch(entry.action, {
      method: "POST",
      headers: { Accept: "application/json" },
      body: new URLSearchParams(entry.fields),
      signal: AbortSignal.timeout(longest),
    });
    if (response.headers.get("Content-Type")?.startsWith("application/json")) answer = await response.json();
  } catch {
    return { down: true };
  }
  if (answer.stored && answer.id === entry.id) {
    drop(entry.id);
    return answer;
  }
  if (answer.ask) {
    if (!entry.asked) keep({ ...entry, asked: true });
    return answer;
  }
  return { error: answer.error ?? `The server could not take it (${response.status}).` };
}
