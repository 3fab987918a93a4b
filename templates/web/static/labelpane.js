// The labels as they would be printed.

import { byId, make, plural } from "./dom.js";
import { Drawing, linesOf } from "./drawing.js";

export class LabelPane {
  constructor(first, changed, goTo) {
    this.board = byId("labels");
    this.chips = [...document.querySelectorAll(".chips [data-piece]")];
    this.key = `pieces:${document.querySelector("main").dataset.file}`;
    this.shown = []; // {label, mark, figure, drawing, caption}
    this.drawings = new Map(); // mark -> lines
    this.goTo = goTo;
    const chosen = sessionStorage.getItem(this.key)?.split(" ") || [first];
    this.measure();
    addEventListener("resize", () => this.measure());
    byId("gift").addEventListener("change", changed);
    for (const chip of this.chips) {
      press(chip, chosen.includes(chip.dataset.piece));
      chip.addEventListener("click", () => { this.toggle(chip); changed(); });
    }
  }

  // measure finds how large labels are shown: larger where there is room.
  measure() { this.scale = Math.min(Math.max(scale, this.board.clientWidth / 205), most); }

  get pieces() { return this.chips.filter(pressed).map((chip) => chip.dataset.piece); }

  get labels() { return this.shown.map((place) => place.label); }

  get gift() { return byId("gift").checked; }

  get names() { return this.chips.filter(pressed).map((chip) => chip.textContent.toLowerCase()); }

  // toggle keeps at least one piece.
  toggle(chip) {
    press(chip, !pressed(chip) || this.pieces.length === 1);
    sessionStorage.setItem(this.key, this.pieces.join(" "));
  }

  // choose shows a piece that was chosen in the form.
  choose(piece) {
    for (const chip of this.chips) if (chip.dataset.piece === piece) press(chip, true);
  }

  // have are the marks of the drawings held, so that they are not sent again.
  get have() { return [...this.drawings.keys()]; }

  // inSight are the pieces the maker looks at: they are asked for first.
  get inSight() {
    const near = this.near(this.shown);
    return [...new Set((near.length ? near : this.shown.slice(0, 1)).map((place) => place.label.piece))];
  }

  // near are those places that stand on the screen.
  near(places) {
    const seen = this.board.getBoundingClientRect();
    return places.filter(({ figure }) => { const at = figure.getBoundingClientRect(); return at.top < seen.bottom && at.bottom > seen.top; });
  }

  // ahead draws labels that came before the others, each where its piece stands.
  ahead(labels) {
    const places = [...this.shown];
    for (const label of labels) {
      const at = places.findIndex((place) => place?.label.piece === label.piece);
      if (at < 0) continue;
      const place = places[at];
      places[at] = undefined;
      if (!this.drawings.has(label.mark)) this.drawings.set(label.mark, linesOf(label, this.drawings));
      if (place.mark === label.mark) continue;
      this.place(label, place);
      this.draw(place);
      if (place === this.shown[0]) this.peek([label]);
    }
  }

  show(labels) {
    const drawings = new Map(labels.map((l) => [l.mark, this.drawings.get(l.mark) ?? linesOf(l, this.drawings)]));
    this.drawings = drawings;
    clearTimeout(this.rest);
    if (labels.length === 0) {
      this.shown = [];
      this.board.replaceChildren(make("p", { class: "hush" }, "The labels appear here as soon as the batch can be read and has a jar to label."));
      this.peek(labels);
      return;
    }
    const places = labels.map((label, i) => this.place(label, this.shown[i]));
    const same = places.length === this.shown.length;
    this.shown = places;
    if (!same) this.board.replaceChildren(...places.map((place) => place.figure));
    this.drawn();
    this.peek(labels);
  }

  // place is the frame a label is drawn in, used again from one to the next.
  place(label, before) {
    const place = before ?? this.newPlace();
    place.label = label;
    const words = `${label.title}, ${label.size}, ${plural(label.labels, "label", "labels")} = ${plural(label.sheets, "sheet", "sheets")} of ${label.sheet}`;
    if (place.caption.textContent !== words) place.caption.textContent = words;
    place.drawing.size(label, Math.min(Math.max(label.width * this.scale, smallest), largest * this.scale / scale));
    // A long band is scrolled on a telephone rather than shrunk beyond reading.
    const least = label.width > long ? `${label.width * readable}px` : "";
    if (place.least !== least) place.drawing.host.style.minWidth = place.least = least;
    return place;
  }

  newPlace() {
    const place = { drawing: new Drawing(), caption: make("figcaption"), least: "" };
    place.figure = make("figure", {}, place.drawing.host, place.caption);
    place.drawing.root.addEventListener("click", (event) => {
      const block = event.target.closest?.("[data-block]");
      const path = block && place.label.paths[block.dataset.block];
      if (path) this.goTo(path);
    });
    return place;
  }

  // drawn draws what changed: what is in sight at once, the rest bit by bit
  // as soon as that is on the screen.
  drawn() {
    const changed = this.shown.filter((place) => place.mark !== place.label.mark);
    const near = this.near(changed);
    const first = near.length ? near : changed.slice(0, 1);
    for (const place of first) this.draw(place);
    const rest = changed.filter((place) => !first.includes(place));
    const some = () => {
      const begun = performance.now();
      while (rest.length > 0 && performance.now() - begun < slice) this.draw(rest.shift());
      if (rest.length > 0) this.rest = setTimeout(some);
    };
    if (rest.length > 0) requestAnimationFrame(() => { this.rest = setTimeout(some); });
  }

  draw(place) {
    place.mark = place.label.mark;
    place.drawing.show(this.drawings.get(place.mark));
  }

  // peek keeps the first label in sight below the form, on small screens.
  peek(labels) {
    const place = byId("peek");
    place.hidden = labels.length === 0;
    if (labels.length === 0 || this.peeked === labels[0].mark || getComputedStyle(place).display === "none") return;
    this.peeked = labels[0].mark;
    this.small ??= new Drawing();
    this.small.size(labels[0], Math.min(340, labels[0].width / labels[0].height * 72));
    this.small.show(this.drawings.get(this.peeked));
    if (!this.small.host.isConnected) place.replaceChildren(this.small.host);
  }
}

// Sizes on screen: pixels a millimetre, and limits in pixels.
const [scale, most, readable, long] = [3.1, 4.6, 2.3, 120];
const [smallest, largest] = [170, 720];
const slice = 12; // milliseconds of drawing between two looks at the keyboard

const pressed = (button) => button.getAttribute("aria-pressed") === "true";

const press = (button, on) => button.setAttribute("aria-pressed", String(on));
