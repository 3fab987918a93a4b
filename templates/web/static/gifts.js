// A gift list from a spreadsheet: the file goes into the form, to be seen first.

import { byId } from "./dom.js";
import "./paper.js";

byId("list-file")?.addEventListener("change", async (event) => {
  const [file] = event.target.files;
  if (!file) return;
  byId("text").value = decoded(await file.arrayBuffer());
  byId("list").value ||= file.name.replace(/\.[^.]*$/, "");
});

// decoded reads the encodings that spreadsheets write.
function decoded(bytes) {
  const [a, b] = new Uint8Array(bytes);
  if (a === 0xff && b === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
