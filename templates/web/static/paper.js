// Lists to hold in the hand: printing, and showing a choice at once.

import { byId } from "./dom.js";

byId("paper")?.addEventListener("click", () => print());
byId("event")?.addEventListener("change", (event) => event.target.form.submit());
