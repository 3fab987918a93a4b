// Where the maker's files lie: in the browser's private file system, or in a
// folder picked on the computer; and how they go in and out.

const byId = (id) => document.getElementById(id);

// folders drives the bar and its dialog. use(handle) lets the program go on in
// another folder; app is the address of the page.
export function folders({ use, reload, app }) {
  let picked = null; // a folder of the computer
  let locked = null; // one that was picked before, and wants a click again
  const dialog = byId("files");
  const state = byId("files-state");

  byId("files-open").addEventListener("click", () => { state.textContent = ""; dialog.showModal(); });
  byId("folder-pick").hidden = !globalThis.showDirectoryPicker;
  on("folder-pick", async () => take(await showDirectoryPicker({ id: "jarmark", mode: "readwrite" })));
  on("folder-again", async () => {
    if (await locked.requestPermission({ mode: "readwrite" }) === "granted") await take(locked);
  });
  on("folder-private", async () => { await remember(null); picked = locked = null; use(await privately()); tell(); });
  on("zip-out", async () => {
    const answer = await fetch(`${app}files.zip`);
    if (!answer.ok) throw new Error((await answer.json().catch(() => ({}))).error ?? `the program answered ${answer.status}`);
    saveAs(await answer.blob(), `jam-${new Date().toISOString().slice(0, 10)}.zip`);
    return "Your files are in the zip.";
  });
  byId("zip-in").addEventListener("change", (event) => attempt(() => bring([...event.target.files]).finally(() => { event.target.value = ""; })));

  // bring hands files to the program; none that is there is replaced.
  async function bring(files) {
    const told = [];
    for (const file of files) {
      const answer = await fetch(`${app}files/${encodeURIComponent(file.name)}`, { method: "POST", body: file, headers: { "X-Jarmark-Files": "1" } });
      const said = await answer.json().catch(() => ({}));
      if (!answer.ok) throw new Error([said.error ?? `the program answered ${answer.status}`, said.hint].filter(Boolean).join("; "));
      told.push(`${file.name}: ${said.told}`);
    }
    reload();
    return told.join(" ");
  }

  function on(id, work) { byId(id).addEventListener("click", () => attempt(work)); }

  async function attempt(work) {
    state.textContent = "…";
    try {
      state.textContent = (await work()) ?? "";
    } catch (error) { state.textContent = error.name === "AbortError" ? "" : error.message; }
  }

  async function take(folder) {
    await remember(folder);
    [picked, locked] = [folder, null];
    use(folder);
    tell();
  }

  function tell(wrong = "") {
    byId("where").textContent = wrong || (picked ? `Folder “${picked.name}”` : locked ? `Folder “${locked.name}” is closed` : "Files in this browser");
    byId("folder-again").hidden = !locked;
    byId("folder-private").hidden = !picked && !locked;
  }

  return {
    token: () => secret().catch(() => crypto.randomUUID()),
    failed(words) { tell(`The folder cannot be read: ${words}`); },
    // last is the folder of the last time, where the browser lets us in.
    async last() {
      const folder = await recall().catch(() => null);
      if (folder && await folder.queryPermission({ mode: "readwrite" }) === "granted") picked = folder;
      else locked = folder;
      const home = picked ?? await privately();
      tell(home ? "" : "This browser keeps nothing: take your files out before you close it");
      return home;
    },
  };
}

// privately is the browser's own folder for this site; null where there is none.
async function privately() {
  navigator.storage?.persist?.().catch(() => {});
  try {
    return await (await navigator.storage.getDirectory()).getDirectoryHandle("jam", { create: true });
  } catch { return null; }
}

// One handle is kept between visits, in the one store that can hold it.
function table(mode, work) {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open("jarmark", 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore("kept");
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const done = work(opening.result.transaction("kept", mode).objectStore("kept"));
      done.onsuccess = () => { resolve(done.result); opening.result.close(); };
      done.onerror = () => reject(done.error);
    };
  });
}

// secret is what the page's writes must bear, the same in all tabs.
async function secret() {
  const known = await table("readonly", (t) => t.get("token"));
  if (known) return known;
  await table("readwrite", (t) => t.put(crypto.randomUUID(), "token"));
  return secret();
}

const recall = async () => (await table("readonly", (t) => t.get("folder"))) ?? null;
const remember = (folder) => table("readwrite", (t) => (folder ? t.put(folder, "folder") : t.delete("folder")));

export function saveAs(blob, name) {
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
