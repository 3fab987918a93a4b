// The list of batches: making everything of all of them.

import { byId } from "./dom.js";
import { making } from "./making.js";

byId("make-all")?.addEventListener("click", async (event) => {
  const button = event.currentTarget;
  button.disabled = true;
  byId("making").hidden = false;
  await making([]);
  button.disabled = false;
});
