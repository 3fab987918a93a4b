//go:build !js

package main

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// TestFolder keeps the files in a folder the maker picks. The picker itself
// cannot be clicked here: a folder of the browser's own stands for one of the
// computer. What another program writes there is seen, what the disk refuses
// is told and never called saved, and the folder is found again.
func TestFolder(t *testing.T) {
	w := visit(t, 1280, 800)
	w.do(chromedp.Navigate(w.base))
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	w.bringDemo()
	w.run(`globalThis.root = await navigator.storage.getDirectory();
		globalThis.showDirectoryPicker = () => root.getDirectoryHandle("orchard", { create: true });
		document.getElementById("folder-pick").hidden = false;
		document.getElementById("folder-pick").click()`)
	w.until("the folder is told", `document.getElementById("where").textContent.includes("orchard")`)
	w.until("it is empty", `one("h1")?.textContent === "Your batches" && !P.body.textContent.includes("rhubarb")`)

	const put = `const put = async (name, text) => { const d = await root.getDirectoryHandle("orchard"); const h = await d.getFileHandle(name, { create: true }); const to = await h.createWritable(); await to.write(text); await to.close(); };`
	w.run(put + `await put("plum.toml", 'name = "Plum jam"\nkind = "jam"\n'); await new Promise((r) => setTimeout(r, 1100)); location.hash = "new"`)
	w.until("another page shows", `one("h1") && one("h1").textContent !== "Your batches"`)
	w.run(`location.hash = ""`)
	w.until("a file of another program is seen", `P.body.textContent.includes("Plum jam")`)
	w.run(`location.hash = "batch/plum.toml"`)
	w.until("it opens", `one("#text")?.value.includes("Plum jam") && one("#labels figure, #labels .hush")`)

	w.run(put + `await put("plum.toml", 'name = "Sloe jam"\nkind = "jam"\n')`)
	w.run(`one("#text").value = 'name = "Mine"\n'; one("#text").dispatchEvent(new Event("input", { bubbles: true })); one("#save").click()`)
	w.until("a file changed meanwhile is not written over", `one("#conflict").open && !one("#state").textContent.startsWith("Saved")`)

	w.run(`await root.removeEntry("orchard", { recursive: true })`)
	said := w.run(`const token = one('meta[name="jarmark-token"]').content;
		const a = await fetch("app/do/save", { method: "POST", headers: { "Content-Type": "application/json", "X-Jarmark-Token": token }, body: JSON.stringify({ file: "pear.toml", text: 'name = "Pear"\n', base: "" }) });
		return a.status + " " + await a.text()`)
	if len(said) < 4 || said[:3] != "507" {
		t.Errorf("a save into a folder that is gone: %s", said)
	}
	w.do(chromedp.Navigate("about:blank"), chromedp.Navigate(w.base))
	w.until("the folder is remembered", `document.getElementById("where").textContent.includes("orchard") || document.getElementById("where").textContent.includes("cannot be read")`)
}
