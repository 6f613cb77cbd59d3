// Parts of the page take the answer's shape. What is alike stays the same
// element, so that the focus, a press under way and what is unfolded stay.

// put gives each part the answer's HTML. A part in whose table one is typing
// waits until the table is left, because its rows may be numbered anew; put is
// then true.
export function put(parts) {
  for (const [id, html] of Object.entries(parts ?? {})) {
    if (typingIn(id)) {
      waiting.set(id, html);
      continue;
    }
    waiting.delete(id);
    const part = document.getElementById(id);
    if (part) shape(part, html);
  }
  return waiting.size > 0;
}

// settle gives the parts that waited their shape.
export function settle() {
  const held = [...waiting];
  waiting.clear();
  for (const [id, html] of held) shape(document.getElementById(id), html);
}

const waiting = new Map();

const typingIn = (id) => {
  const at = document.activeElement;
  return at?.type === "text" && at.closest("table.holes") && document.getElementById(id)?.contains(at);
};

function shape(part, html) {
  const fresh = document.createElement("template");
  fresh.innerHTML = html;
  morph(part, fresh.content);
  for (const details of part.querySelectorAll("details[open][data-part]")) details.dispatchEvent(new Event("toggle"));
}

function morph(old, fresh) {
  const were = [...old.childNodes];
  const are = [...fresh.childNodes];
  are.forEach((node, i) => {
    const was = were[i];
    if (!was) old.append(node);
    else if (was.nodeName !== node.nodeName) was.replaceWith(node);
    else if (node.nodeType === Node.ELEMENT_NODE) element(was, node);
    else if (was.nodeValue !== node.nodeValue) was.nodeValue = node.nodeValue;
  });
  for (const extra of were.slice(are.length)) extra.remove();
}

function element(was, node) {
  if (was.nodeName === "DETAILS" && headOf(was) !== headOf(node)) was.open = false;
  for (const { name } of [...was.attributes]) {
    if (!node.hasAttribute(name) && name !== "open") was.removeAttribute(name);
  }
  for (const { name, value } of node.attributes) {
    if (was.getAttribute(name) !== value) was.setAttribute(name, value);
  }
  if (was.nodeName === "INPUT") {
    was.value = node.value;
    was.checked = node.checked;
  }
  morph(was, node);
}

const headOf = (details) => details.querySelector("summary")?.textContent.split(":")[0];
