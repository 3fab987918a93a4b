// Making everything: follows the run line by line as it goes on.

import { send, words } from "./api.js";
import { byId, make, plural } from "./dom.js";

export async function making(files) {
  const [bar, now, done] = ["making-bar", "making-now", "making-done"].map(byId);
  bar.value = 0;
  done.replaceChildren();
  now.textContent = "Beginning …";
  try {
    let made = 0;
    const response = await send("do/make", { files });
    for await (const step of steps(response.body)) {
      bar.value = (step.done + (step.parts ? step.part / step.parts : 0)) / Math.max(step.total, 1);
      if (step.parts) { now.textContent = `${step.file}: ${step.part} of ${step.parts}`; continue; }
      if (!step.error) made++;
      done.append(make("li", { class: step.error ? "sev" : null }, step.error ? `${step.file}: ${step.error}` : `${step.file}: ${plural(step.made.length, "file", "files")} in ${folder(step.made[0])}`));
      for (const told of step.told ?? []) done.append(make("li", {}, told));
    }
    bar.value = 1;
    now.textContent = `${plural(made, "batch", "batches")} made.`;
  } catch (fault) { now.textContent = words(fault); }
}

const folder = (name) => name.split("/").slice(0, 2).join("/");

// steps reads a stream of one JSON value a line.
async function* steps(body) {
  let rest = "";
  for await (const chunk of read(body.pipeThrough(new TextDecoderStream()))) {
    const lines = (rest + chunk).split("\n");
    rest = lines.pop();
    for (const line of lines) if (line) yield JSON.parse(line);
  }
}

async function* read(stream) {
  const reader = stream.getReader();
  for (let part = await reader.read(); !part.done; part = await reader.read()) yield part.value;
}
