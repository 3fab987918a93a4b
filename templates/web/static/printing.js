// Printing: the labels on the screen as a PDF, saved or opened.

import { ask, rooted, words } from "./api.js";
import { byId, make } from "./dom.js";

export function printing(draft, live, labels) {
  const dialog = byId("printing");
  const state = byId("printing-state");
  byId("print")?.addEventListener("click", () => {
    byId("printing-what").textContent = `These pieces: ${labels.names.join(", ")}.`;
    state.textContent = "";
    dialog.showModal();
  });
  byId("print-save").addEventListener("click", () => fetchPDF(true));
  byId("print-open").addEventListener("click", () => fetchPDF(false));
  byId("print-proof").addEventListener("click", () => fetchPDF(false, true));

  async function fetchPDF(download, proof = false) {
    state.textContent = "Making the PDF …";
    // Opened now, while the click counts: a window opened later is blocked.
    const view = download ? null : open("", "_blank");
    try {
      await live.flush();
      const { url, name } = await ask("do/print", {
        file: draft.file, text: draft.text, pieces: labels.pieces,
        gift: labels.gift, skip: whole("print-skip"), copies: whole("print-copies"), inkSaver: byId("print-ink").checked, cutMarks: byId("print-marks").checked, proof,
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

function whole(id) {
  const n = parseInt(byId(id).value, 10);
  return n > 0 ? n : 0;
}
