// Printing: the labels on the screen as a PDF, saved or opened.

import { send, words } from "./api.js";
import { byId } from "./dom.js";

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

  async function fetchPDF(download) {
    state.textContent = "Making the PDF …";
    // Opened now, while the click counts: a window opened later is blocked.
    const view = download ? null : open("", "_blank");
    try {
      await live.flush();
      const response = await send("/do/print", {
        file: draft.file, text: draft.text, pieces: labels.pieces,
        skip: whole("print-skip"), copies: whole("print-copies"), inkSaver: byId("print-ink").checked, cutMarks: byId("print-marks").checked,
      });
      deliver(URL.createObjectURL(await response.blob()), view);
      state.textContent = "Done.";
    } catch (fault) {
      view?.close();
      state.textContent = words(fault);
    }
  }

  function deliver(url, view) {
    if (view) { view.location = url; return; }
    const link = document.createElement("a");
    link.href = url;
    link.download = `${draft.file.replace(/\.toml$/, "")}-labels.pdf`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  }
}

function whole(id) {
  const n = parseInt(byId(id).value, 10);
  return n > 0 ? n : 0;
}
