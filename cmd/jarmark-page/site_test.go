//go:build !js

package main

import (
	"archive/zip"
	"bytes"
	"encoding/base64"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// demo is the invented kitchen and batch of the command line.
const demo = "../../testdata/demo/"

// commandLine runs the program of this machine in a folder.
func commandLine(t *testing.T, dir string, args ...string) {
	t.Helper()
	bin := filepath.Join(t.TempDir(), "jarmark")
	if out, err := exec.Command("go", "build", "-o", bin, "jarmark/cmd/jarmark").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	cmd := exec.Command(bin, args...)
	cmd.Dir = dir
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
}

// demoFolder is a folder with the demo's files.
func demoFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(demo)); err != nil {
		t.Fatal(err)
	}
	return dir
}

// bringDemo brings the demo's files in.
func (w *window) bringDemo() {
	w.Helper()
	for _, name := range []string{"kitchen.toml", batch} {
		data, err := os.ReadFile(demo + name)
		if err != nil {
			w.Fatal(err)
		}
		w.run(fmt.Sprintf(`const a = await fetch("app/files/%s", { method: "POST", body: Uint8Array.fromBase64?.(%q) ?? Uint8Array.from(atob(%[2]q), (c) => c.charCodeAt(0)), headers: { "X-Jarmark-Files": "1" } }); if (!a.ok) throw new Error(await a.text())`,
			name, base64.StdEncoding.EncodeToString(data)))
	}
}

const batch = "strawberry-rhubarb.toml"

// kept reads all files of the browser's private folder: what is on the disk.
func (w *window) kept() map[string][]byte {
	w.Helper()
	text := w.run(`
		const out = [];
		const walk = async (dir, at) => {
			for await (const [name, h] of dir.entries()) {
				if (h.kind === "directory") { await walk(h, at + name + "/"); continue; }
				const bytes = new Uint8Array(await (await h.getFile()).arrayBuffer());
				let s = ""; for (let i = 0; i < bytes.length; i += 8192) s += String.fromCharCode(...bytes.subarray(i, i + 8192));
				out.push(at + name + " " + btoa(s));
			}
		};
		await walk(await (await navigator.storage.getDirectory()).getDirectoryHandle("jam"), "");
		return out.join("\n")`)
	files := map[string][]byte{}
	for _, line := range strings.Split(text, "\n") {
		name, code, _ := strings.Cut(line, " ")
		files[name], _ = base64.StdEncoding.DecodeString(code)
	}
	return files
}

const labelsDrawn = `one("#labels figure .art")`

// TestSite is a maker's way through the page without an install, from the
// first visit to a run without a network. What it writes is compared with what
// the command line writes, byte by byte.
func TestSite(t *testing.T) {
	w := visit(t, 1280, 800)
	start := time.Now()
	took := func(what string) {
		t.Logf("%-40s %v", what, time.Since(start).Round(time.Millisecond))
		start = time.Now()
	}
	w.do(chromedp.Navigate(w.base))
	w.until("the sample label shows", `document.querySelector("#start img").naturalWidth > 0`)
	took("sample label")
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	took("list, first visit")
	w.until("the program is ready for a maker", `document.documentElement.dataset.rehearsed`)
	took("the program has rehearsed")
	w.bringDemo()
	took("two files brought in")
	w.run(`location.hash = "batch/` + batch + `"`)
	w.until("own labels are drawn", labelsDrawn)
	took("own label, program running")

	for range 2 {
		t.Logf("%-40s %s", "PDF of one piece, from the click", w.run(`const begun = performance.now(), text = one("#text").value;
			const a = await F.contentWindow.fetch("../do/print", { method: "POST", headers: { "Content-Type": "application/json", "X-Jarmark-Token": one('meta[name="jarmark-token"]').content }, body: JSON.stringify({ file: "`+batch+`", text, pieces: ["wrap"] }) });
			const { url } = await a.json(), pdf = await (await fetch("app/" + url)).text();
			if (!pdf.startsWith("%PDF-")) throw new Error(pdf.slice(0, 200));
			return Math.round(performance.now() - begun) + "ms"`))
	}

	dir := demoFolder(t)
	commandLine(t, dir, "make", batch)
	start = time.Now()
	w.run(`const token = one('meta[name="jarmark-token"]').content;
		const a = await fetch("app/do/make", { method: "POST", headers: { "Content-Type": "application/json", "X-Jarmark-Token": token }, body: JSON.stringify({ files: [] }) });
		const said = await a.text(); if (!said.includes('"made"')) throw new Error(said)`)
	took("everything made")
	same(t, dir, w.kept())

	w.until("the program is kept", `document.documentElement.dataset.kept`)
	w.holds("=== 2")
	w.stop()
	w.do(chromedp.Navigate("about:blank"))
	start = time.Now()
	w.do(chromedp.Navigate(w.base + "/#batch/" + batch))
	w.until("own labels are drawn without a network", labelsDrawn)
	took("own label, warm, without a network")
	w.run(`const f = one('[name="name"]'); f.value = "Bullace jam"; f.dispatchEvent(new Event("input", { bubbles: true }))`)
	w.until("a new label is drawn", `one("#text").value.includes("Bullace jam") && one("#labels .art").shadowRoot.textContent.includes("Bullace")`)
	took("what was typed then, on the label")
	w.run(`await caches.delete("jarmark-" + document.documentElement.dataset.version + "-seen")`)
	w.do(chromedp.Navigate("about:blank"))
	start = time.Now()
	w.do(chromedp.Navigate(w.base + "/#batch/" + batch))
	w.until("own labels are drawn by the program", labelsDrawn)
	took("the same of a folder that was changed")
	w.silent()
}

// TestCompiledCodeIsKept: a browser compiles the program once; on later visits
// it takes the code it kept, as its own trace tells.
func TestCompiledCodeIsKept(t *testing.T) {
	w := visit(t, 1280, 800)
	w.do(chromedp.Navigate(w.base))
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	w.bringDemo()
	w.run(`location.hash = "batch/` + batch + `"`)
	w.until("own labels are drawn", labelsDrawn)
	w.until("the program is kept, and has rehearsed", `document.documentElement.dataset.kept && document.documentElement.dataset.rehearsed`)
	time.Sleep(3 * time.Second) // V8 hands code over two seconds after the last function was compiled well
	w.do(chromedp.Navigate("about:blank"))
	seen := w.traced("disabled-by-default-devtools.timeline", func() {
		w.do(chromedp.Navigate(w.base + "/#batch/" + batch))
		w.until("own labels are drawn", labelsDrawn)
		w.until("the program is there too", `document.documentElement.dataset.kept`)
	})
	if seen["v8.wasm.moduleCacheHit"] == 0 {
		t.Errorf("the program was compiled again: %v", seen)
	}
}

// same compares the browser's folder with that of the command line.
func same(t *testing.T, dir string, kept map[string][]byte) {
	t.Helper()
	n := 0
	err := filepath.WalkDir(filepath.Join(dir, "out"), func(at string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		n++
		rel, _ := filepath.Rel(dir, at)
		want, err := os.ReadFile(at)
		if got := kept[filepath.ToSlash(rel)]; !bytes.Equal(got, want) {
			t.Errorf("%s: %d bytes in the browser, %d on the command line, or not the same", rel, len(got), len(want))
		}
		return err
	})
	if err != nil || n < 8 {
		t.Errorf("%d files compared: %v", n, err)
	}
}

// TestFiles: what the maker saves is on the disk of the browser when the page
// says so; it is there after a restart and in a second window, goes out as a
// zip, comes in again, and a label is downloaded as from a web server.
func TestFiles(t *testing.T) {
	w := visit(t, 390, 800)
	w.do(chromedp.Navigate(w.base))
	w.until("the page shows", `one("h1")?.textContent === "Your batches"`)
	w.bringDemo()
	w.run(`location.hash = "batch/` + batch + `"`)
	w.until("own labels are drawn", labelsDrawn)
	got := t.TempDir()
	w.downloads(got)
	w.run(`one("#print").click(); one("#print-save").click()`)
	pdf := w.arrived(filepath.Join(got, "*.pdf"))
	if !bytes.HasPrefix(pdf, []byte("%PDF-")) || !bytes.Contains(pdf[max(0, len(pdf)-16):], []byte("%%EOF")) {
		t.Errorf("no whole PDF came: %d bytes", len(pdf))
	}

	w.run(`const h = await (await (await navigator.storage.getDirectory()).getDirectoryHandle("jam")).getFileHandle(".jarmark-3-` + batch + `.tmp", { create: true }); // a killed run's
		const to = await h.createWritable(); await to.write("half"); await to.close()`)
	w.run(`one('[name="name"]').value = "Quince & pear jam"; one('[name="name"]').dispatchEvent(new Event("input", { bubbles: true })); one("#save").click()`)
	w.until("it is saved", `one("#state").textContent === "Saved" && one("#text").value.includes("Quince & pear jam")`)
	kept := w.kept()
	if !bytes.Contains(kept[batch], []byte("Quince & pear jam")) || kept[".jarmark-history/"+batch+"/0001.toml"] == nil {
		t.Errorf("not on the disk: %q", names(kept))
	}
	for name := range kept {
		if strings.Contains(name, ".tmp") || strings.Contains(name, "-lock") {
			t.Errorf("left on the disk: %s", name)
		}
	}
	w.do(chromedp.Navigate("about:blank"), chromedp.Navigate(w.base+"/#batch/"+batch))
	w.until("it is there after a restart", `one("h1")?.textContent === "Quince & pear jam"`)

	w.run(`document.getElementById("files-open").click(); document.getElementById("zip-out").click()`)
	w.accessible()
	z := w.arrived(filepath.Join(got, "*.zip"))
	r, err := zip.NewReader(bytes.NewReader(z), int64(len(z)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.File {
		in, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if _, err := b.ReadFrom(in); err != nil || !bytes.Equal(b.Bytes(), kept[f.Name]) {
			t.Errorf("%s in the zip is not what is on the disk: %v", f.Name, err)
		}
	}
	if len(r.File) != len(kept) {
		t.Errorf("%d files in the zip, want %q", len(r.File), names(kept))
	}
	w.silent()
}

func names(files map[string][]byte) (out []string) {
	for n := range files {
		out = append(out, n)
	}
	return out
}
