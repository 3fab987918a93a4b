// The rows of the form: added, moved and taken away on the spot, so that no
// letter typed meanwhile is lost. Their paths are numbered anew each time.

import { byId } from "./dom.js";

const attributes = ["id", "name", "for", "data-path", "data-field", "data-row", "data-problem", "aria-describedby", "aria-label"];

export class Rows {
  constructor(table) {
    this.table = table;
    this.add = document.querySelector(`[data-do="add"][data-path="${table}"]`)?.closest("p");
  }

  get all() { return [...byId("form").querySelectorAll("[data-row]")].filter((row) => row.dataset.row.startsWith(`${this.table}[`)); }

  // append adds an empty row and gives it.
  append() {
    const row = byId("form").querySelector(`template[data-new="${this.table}"]`).content.firstElementChild.cloneNode(true);
    this.insert(row, this.all.length);
    return row;
  }

  // insert puts a row at a place, or at the end, and gives the place.
  insert(row, at) {
    const { all } = this;
    const place = Math.min(at, all.length);
    if (place < all.length) all[place].before(row); else this.add.before(row);
    this.number();
    return place;
  }

  remove(row) {
    row.remove();
    this.number();
  }

  // move lets a row trade places with the one before or after it.
  move(row, by) {
    const { all } = this;
    const other = all[all.indexOf(row) + by];
    if (!other) return;
    if (by < 0) other.before(row); else other.after(row);
    this.number();
  }

  number() {
    const { all } = this;
    all.forEach((row, i) => {
      rename(row, row.dataset.row, `${this.table}[${i}]`);
      const legend = row.querySelector("legend");
      const noun = legend.textContent.replace(/ \S+$/, "");
      legend.textContent = `${noun} ${i + 1}`;
      for (const button of row.querySelectorAll("[data-do]")) button.setAttribute("aria-label", button.getAttribute("aria-label").replace(/ (#|-?\d+)(?= |$)/, ` ${i + 1}`));
      row.querySelector('[data-do="up"]').disabled = i === 0;
      row.querySelector('[data-do="down"]').disabled = i === all.length - 1;
    });
    this.add?.parentElement.querySelector(`[data-none="${this.table}"]`)?.toggleAttribute("hidden", all.length > 0);
  }
}

// rename gives a row and all in it another path.
function rename(row, from, to) {
  if (from === to) return;
  for (const element of [row, ...row.querySelectorAll("*")]) {
    for (const name of attributes) {
      const value = element.getAttribute(name);
      if (value?.includes(from)) element.setAttribute(name, value.replaceAll(from, to));
    }
  }
}

// tableOf and indexOf take a path such as gift[2] apart.
export const tableOf = (path) => path.replace(/\[.*$/, "");

export const indexOf = (path) => Number(/\[(\d+)\]$/.exec(path)?.[1]);
