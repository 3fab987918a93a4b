// Small hands for building pieces of the page.

export const byId = (id) => document.getElementById(id);

// make builds an element: make("p", { class: "hint" }, "text", child).
export function make(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(key, "");
    else if (value !== false && value != null) element.setAttribute(key, value);
  }
  element.append(...children.filter((child) => child != null));
  return element;
}

// say tells a listener something, politely.
export function say(text) {
  const said = byId("said");
  if (said && said.textContent !== text) said.textContent = text;
}

// plural is a count with its noun.
export const plural = (n, one, many) => `${n} ${n === 1 ? one : many}`;
