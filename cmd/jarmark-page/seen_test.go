//go:build !js

package main

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	pages "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"jarmark/internal/app/site"
)

// acted lets the outer page be opened without its program ("none"), with one
// that starts when it is let ("held"), or on the next day ("tomorrow", without).
const acted = `if (self === top && location.protocol === "http:") {
	const part = new URLSearchParams(location.search).get("part"), Real = Worker;
	if (part === "none" || part === "tomorrow") globalThis.Worker = class { postMessage() {} };
	if (part === "held") globalThis.Worker = class extends Real {
		#go = new Promise((resolve) => { globalThis.letGo = resolve; });
		postMessage(...all) { this.#go.then(() => super.postMessage(...all)); }
	};
	if (part === "tomorrow") { const Now = Date; globalThis.Date = class extends Now { constructor(...all) { super(...(all.length ? all : [Now.now() + 864e5])); } }; }
}`

// open opens the batch again, in one of these ways.
func (w *window) open(part string) {
	w.Helper()
	w.do(chromedp.Navigate("about:blank"), chromedp.Navigate(w.base+"/?part="+part+"#batch/"+batch))
}

// held is how many answers are kept, by the browser's own count.
const held = `const seenCaches = (await caches.keys()).filter((n) => n.endsWith("-seen")), all = [];
	for (const n of seenCaches) all.push(...await (await caches.open(n)).keys());`

// holds waits until so many answers are kept.
func (w *window) holds(n string) {
	w.Helper()
	w.run(`for (let i = 0; ; i++) { ` + held + ` if (all.length ` + n + `) break; if (i > 600) throw new Error(all.length + " kept, want ` + n + `"); await new Promise((r) => setTimeout(r, 50)); }`)
}

// put writes a file of the folder as another program would.
func (w *window) put(name, js string) {
	w.Helper()
	w.run(`const d = await (await navigator.storage.getDirectory()).getDirectoryHandle("jam"), h = await d.getFileHandle("` + name + `", { create: true });
		const old = await (await h.getFile()).text(), to = await h.createWritable(); await to.write(` + js + `); await to.close()`)
}

// TestSeen: a page opened again shows the maker's label before the program is
// there, takes what is typed, and never shows a label of other files, of
// another day, or of another program.
func TestSeen(t *testing.T) {
	w := visit(t, 1280, 800)
	w.do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, pages.AddScriptToEvaluateOnNewDocument, pages.AddScriptToEvaluateOnNewDocumentParams{Source: acted})
		return err
	}))
	w.do(chromedp.Navigate(w.base))
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	w.bringDemo()
	w.run(`location.hash = "batch/` + batch + `"`)
	w.until("own labels are drawn", labelsDrawn)
	w.holds("=== 2")

	w.open("none")
	w.until("the label is there without a program", labelsDrawn+` && one("#title").textContent === "Strawberry & rhubarb jam"`)

	w.open("tomorrow")
	w.holds("=== 0")
	w.unseen("a label of the day before")

	for _, other := range []struct{ name, js string }{
		{batch, `old.replace("Strawberry & rhubarb", "Sloe")`}, {"kitchen.toml", `old + "\n"`}, {"ledger.csv", `"\n"`}, {"plum.toml", `'name = "Plum"'`},
	} {
		w.open("")
		w.until("own labels are drawn", labelsDrawn)
		w.holds("=== 2")
		w.put(other.name, other.js)
		w.open("none")
		w.holds("=== 0")
		w.unseen("a label of the folder before " + other.name)
	}

	w.open("")
	w.until("the new label is drawn", labelsDrawn+` && one("#title").textContent === "Sloe jam"`)
	w.holds("=== 2")
	w.open("held")
	w.until("the page is there", labelsDrawn)
	w.run(`const f = one('[name="name"]'); f.focus(); f.value = "Medlar jam"; f.dispatchEvent(new Event("input", { bubbles: true })); one("#save").click();
		fetch("app/do/make", { method: "POST", headers: { "Content-Type": "application/json", "X-Jarmark-Token": one('meta[name="jarmark-token"]').content }, body: JSON.stringify({ files: [] }) }); // a write
		await new Promise((r) => setTimeout(r, 100));
		globalThis.after = fetch("app/batch/` + batch + `").then(() => "answered");
		globalThis.after = await Promise.race([after, new Promise((r) => setTimeout(r, 700, "waits"))]);
		letGo()`)
	if got := w.run(`return after`); got != "waits" {
		t.Errorf("after a write the page of before it was %s", got)
	}
	w.until("what was typed before is saved", `one("#state").textContent === "Saved" && one("#text").value.includes("Medlar jam")`)
	if got := w.kept()[batch]; !strings.Contains(string(got), "Medlar jam") {
		t.Errorf("not on the disk: %.200s", got)
	}
	w.holds("=== 2") // kept anew, as it is saved
	w.open("none")
	w.until("the saved label is there without a program", labelsDrawn+` && one("#title").textContent === "Medlar jam"`)

	w.open("")
	w.until("own labels are drawn", labelsDrawn)
	w.run(`globalThis.showDirectoryPicker = async () => (await navigator.storage.getDirectory()).getDirectoryHandle("orchard", { create: true });
		document.getElementById("folder-pick").hidden = false; document.getElementById("folder-pick").click()`)
	w.until("the folder is told", `document.getElementById("where").textContent.includes("orchard")`)
	w.holds("=== 0") // nothing stays of a folder that was left
	w.silent()
}

// unseen fails when a label is shown.
func (w *window) unseen(what string) {
	w.Helper()
	if got := w.run(`return P?.querySelector("#labels .art") || document.documentElement.dataset.seen ? "seen" : "";`); got != "" {
		w.Errorf("shown: %s", what)
	}
}

// TestSeenOfOldProgram: a new program shows nothing an old one drew.
func TestSeenOfOldProgram(t *testing.T) {
	w := visit(t, 1280, 800)
	old, err := built()
	if err != nil {
		t.Fatal(err)
	}
	renewed := t.TempDir()
	wasm, _ := filepath.Glob(filepath.Join(old, "*.wasm"))
	program, err := os.ReadFile(wasm[0])
	if err != nil {
		t.Fatal(err)
	}
	runtime, _ := os.ReadFile(filepath.Join(old, "wasm_exec.js"))
	files, err := site.Files(site.Program{Wasm: append(program, 0, 1, 0), Exec: runtime}) // and an empty custom section
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(renewed, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	dir := old
	server := httptest.NewServer(http.HandlerFunc(func(rw http.ResponseWriter, r *http.Request) { site.Handler(os.DirFS(dir)).ServeHTTP(rw, r) }))
	t.Cleanup(server.Close)
	w.base = server.URL
	w.do(chromedp.Navigate(w.base))
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	w.bringDemo()
	w.run(`location.hash = "batch/` + batch + `"`)
	w.until("own labels are drawn", labelsDrawn)
	w.holds("=== 2")
	first := w.run(`return document.documentElement.dataset.version`)
	dir = renewed
	for range 5 {
		w.open("")
		w.until("own labels are drawn", labelsDrawn)
		now := w.run(`return document.documentElement.dataset.version + " " + (document.documentElement.dataset.seen ?? "")`)
		if !strings.HasPrefix(now, first) {
			if strings.HasSuffix(now, "yes") {
				t.Error("a new program shows what an old one drew")
			}
			return
		}
		w.run(`await (await navigator.serviceWorker.getRegistration()).update()`)
		w.do(chromedp.Navigate("about:blank"))
		time.Sleep(time.Second) // the old service worker gives way when its last page is closed
	}
	t.Error("the new program never came")
}

// TestSeenIsBounded: few answers are kept, none of a folder too large to be
// looked at, and none too large.
func TestSeenIsBounded(t *testing.T) {
	w := visit(t, 1280, 800)
	w.do(chromedp.Navigate(w.base))
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	w.run(`const { Seen, onDisk } = await import("./seen.js"), seen = new Seen("test", "secret");
		const file = (path, size = 1, byte = 0) => ({ path, size, bytes: async () => new Uint8Array([byte]) });
		const is = (what, got, want) => { if (got !== want) throw new Error(what + ": " + got + ", want " + want); };
		is("many files", await seen.mark(Array.from({ length: 501 }, (_, i) => file("f" + i))), null);
		is("large files", await seen.mark([file("a", 9e6), file("b", 9e6)]), null);
		is("order", await seen.mark([file("a"), file("b")]), await seen.mark([file("b"), file("a")]));
		for (const [what, one, other] of [["name", [file("a")], [file("b")]], ["bytes", [file("a")], [file("a", 1, 1)]], ["one more", [file("a")], [file("a"), file("b")]]]) is(what, await seen.mark(one) === await seen.mark(other), false);
		const ask = (i) => ({ method: "GET", path: "/batch/" + i + ".toml" }), answer = (i, size) => ({ ask: ask(i), status: 200, headers: [], body: new Blob(["x".repeat(size)]) });
		for (let i = 0; i < 9; i++) await seen.keep("m", [answer(i, 10)]);
		const count = async () => (await (await caches.open("jarmark-test-seen")).keys()).length;
		is("kept", await count(), 6);
		is("the last", (await seen.recall("m", ask(8))).status, 200);
		is("of another state", await seen.recall("n", ask(8)), null);
		await seen.keep("n", [answer(1, 5e6), { ...answer(2, 10), status: 404 }]);
		is("too large, or no page", await count(), 0);
		const d = await (await navigator.storage.getDirectory()).getDirectoryHandle("tried", { create: true });
		for (const at of ["out", ".jarmark-history", "designs"]) await (await d.getDirectoryHandle(at, { create: true })).getFileHandle("x.toml", { create: true });
		for (const name of ["a.toml", ".a.tmp"]) await d.getFileHandle(name, { create: true });
		is("files", (await onDisk(d)).map((f) => f.path).sort().join(" "), "a.toml designs/x.toml");`)
}
