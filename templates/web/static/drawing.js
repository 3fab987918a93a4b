// Drawings of labels. One comes as lines, an element each; of one that follows
// another, the elements that are new are made and the others stay, so that a key
// pressed costs the browser no more than what it changed.

import { make } from "./dom.js";

// linesOf reads a drawing as it was sent: whole, or as what changed since
// another that is held: runs [from, count] of its lines, and new lines.
export function linesOf({ svg, base, lines }, held) {
  if (svg) return svg.split("\n").filter(Boolean);
  const before = held.get(base);
  return lines?.flatMap((part) => typeof part === "string" ? part : before.slice(part[0], part[0] + part[1]));
}

// Drawing is a place for one drawing after another, in a shadow root of its
// own, since drawings share the names of their parts.
export class Drawing {
  constructor() {
    this.host = make("div", { class: "art" });
    this.root = this.host.attachShadow({ mode: "open" });
  }

  show(lines) {
    const open = lines.findIndex((line) => line.startsWith("<g ") && !line.endsWith("/>"));
    const kept = this.svg && lines[0] === this.first && lines[open] === this.group?.line;
    if (!kept) this.begin(lines, open);
    this.head = follow(this.svg, this.head, lines.slice(1, open), this.group.element);
    this.body = follow(this.group.element, this.body, lines.slice(open + 1, -2));
  }

  // begin makes the empty frame: the root, and the group that is clipped.
  begin(lines, open) {
    this.first = lines[0];
    this.svg = fragment(`${lines[0]}${lines[open]}</g></svg>`);
    this.svg.setAttribute("width", "100%");
    this.svg.removeAttribute("height");
    this.svg.style.display = "block";
    this.group = { line: lines[open], element: this.svg.firstChild };
    [this.head, this.body] = [[], []];
    this.root.replaceChildren(this.svg);
  }

  size(label, width) {
    const style = `width: ${width}px; aspect-ratio: ${label.width} / ${label.height}`;
    if (this.styled === style) return;
    this.styled = style;
    this.host.style.width = `${width}px`;
    this.host.style.aspectRatio = `${label.width} / ${label.height}`;
  }
}

// follow lets the children of an element follow other lines; before is where
// they end. It gives them with their lines.
function follow(parent, children, lines, before = null) {
  const pool = new Map();
  for (const child of children) pool.set(child.line, [...(pool.get(child.line) ?? []), child]);
  const now = lines.map((line) => pool.get(line)?.shift() ?? { line });
  for (const rest of pool.values()) for (const { element } of rest) element.remove();
  const fresh = now.filter((child) => !child.element);
  if (fresh.length > 0) {
    const made = fragment(`<svg>${fresh.map((child) => child.line).join("")}</svg>`);
    for (const child of fresh) { child.element = made.firstChild; made.firstChild.remove(); }
  }
  let at = parent.firstChild;
  for (const { element } of now) {
    if (element === at) at = at.nextSibling;
    else parent.insertBefore(element, at);
  }
  return now;
}

// fragment reads one element. The browser's own parser of pages takes half the
// time of its parser of XML.
function fragment(text) {
  const template = document.createElement("template");
  template.innerHTML = text;
  return template.content.firstElementChild;
}
