// Printing: the labels on the screen as a PDF or for others, saved or opened.

import { ask, rooted, words } from "./api.js";
import { byId, make } from "./dom.js";
import { goneFrom, sheetsOf } from "./sheets.js";

export function printing(draft, live, labels) {
  const dialog = byId("printing");
  const state = byId("printing-state");
  byId("print")?.addEventListener("click", () => {
    byId("printing-what").textContent = `These pieces: ${labels.names.join(", ")}.`;
    state.textContent = "";
    sheetsOf(labels.labels);
    dialog.showModal();
  });
  dialog.querySelector("form").addEventListener("submit", (event) => {
    if (event.submitter?.value === "close") return;
    event.preventDefault();
    fetchPDF(true); // Enter in a field too: the button is the form's first
  });
  byId("print-open").addEventListener("click", () => fetchPDF(false));
  byId("print-proof").addEventListener("click", () => fetchPDF(false, true));

  async function fetchPDF(download, proof = false) {
    const [gone, copies] = [goneFrom(), whole("print-copies")];
    if (Object.values(gone).includes(null) || copies === null) {
      state.textContent = `${copies === null ? "Copies" : "Labels gone"}: write a whole number, such as 12.`;
      return;
    }
    state.textContent = "Making it …";
    // Opened now, while the click counts: a window opened later is blocked.
    const view = download ? null : open("", "_blank");
    try {
      await live.flush();
      const [as, dpi] = byId("print-as").value.split(" ");
      const { url, name } = await ask("do/print", {
        file: draft.file, text: draft.text, pieces: labels.pieces,
        gift: labels.gift, gone, copies, remember: byId("print-remember").checked, inkSaver: byId("print-ink").checked, cutMarks: byId("print-marks").checked, proof,
        as, dpi: Number(dpi ?? 0), trimmed: byId("print-trimmed").checked, cutLines: byId("print-lines").checked, profile: await coded(byId("print-profile").files[0]),
      });
      if (view) view.location = rooted(url);
      else make("a", { href: rooted(url), download: name }).click();
      state.textContent = "Done.";
    } catch (fault) {
      view?.close();
      state.textContent = words(fault);
    }
  }
}

// coded is a file as a text that can be sent; none is empty.
const coded = (file) => file ? new Promise((done, fail) => {
  const reader = new FileReader();
  reader.onload = () => done(reader.result.split(",")[1]);
  reader.onerror = () => fail(reader.error);
  reader.readAsDataURL(file);
}) : "";

// whole reads a whole number as people write it, 1,000 too; null is none.
function whole(id) {
  const text = byId(id).value.trim();
  if (text === "") return 0;
  if (!/^\d{1,3}(,\d{3})+$|^\d+$/.test(text)) return null;
  return Number(text.replaceAll(",", ""));
}
