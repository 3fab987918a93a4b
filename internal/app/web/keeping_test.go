//go:build !js

package web

import (
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// onDisk waits until a file of the folder holds words.
func (b *tab) onDisk(name, words string) {
	b.Helper()
	for range 400 {
		if data, err := os.ReadFile(filepath.Join(b.dir, name)); err == nil && strings.Contains(string(data), words) {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	b.Fatalf("%s does not hold %q:\n%s", name, words, get(b, b.dir, name))
}

// Work is saved by itself; a reload right after a key loses nothing; a program
// that ends and is started again finds the page waiting with the work in it.
func TestBrowserKeepsWork(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 1280, 800)
	b.open("/batch/plum.toml")
	b.typeIn("f-name", "Saved by itself")
	b.onDisk("plum.toml", "Saved by itself")
	b.says("#state", "Saved")

	b.typeIn("f-name", "Reloaded at once")
	b.do(chromedp.Evaluate[chromedp.Void](`location.reload()`))
	b.until("the page is back", `document.getElementById("f-name")?.value === "Reloaded at once"`)
	b.onDisk("plum.toml", "Reloaded at once")

	b.labelSays("Reloaded")
	b.says("#state", "Saved")
	address := b.server.Listener.Addr().String()
	b.server.CloseClientConnections()
	b.server.Close()
	b.typeIn("f-name", "Typed while it was away")
	b.says("#state", "does not answer")
	ln, err := net.Listen("tcp", address)
	if err != nil {
		t.Skip("the port is taken meanwhile:", err)
	}
	b.server = &httptest.Server{Listener: ln, Config: &http.Server{Handler: handlerOf(t, dir)}}
	b.server.Start()
	b.until("it is saved", `document.getElementById("state").textContent === "Saved"`)
	b.onDisk("plum.toml", "Typed while it was away")
	b.says("#state", "Saved")
	b.labelSays("away")
	b.silent("ERR_", "409")
}

// Rows change on the spot: letters typed right after a click are in them, what
// is put back leaves later edits alone, and undo goes over all of it.
func TestBrowserRowsAndUndo(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 1280, 800)
	b.open("/batch/plum.toml")
	b.step("gifts")
	for _, name := range []string{"Ida of Mill", "Bo", "Cy"} {
		b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("#step-gifts .add").click()`), chromedp.KeyEvent(name))
	}
	b.onDisk("plum.toml", "\n[[gift]]\nto = \"Ida of Mill\"\n\n[[gift]]\nto = \"Bo\"\n\n[[gift]]\nto = \"Cy\"\n")
	for range 2 {
		b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-do="remove"][data-path="gift[0]"]').click()`))
	}
	b.typeIn("f-gift[0].message", "for Cy")
	b.do(chromedp.Evaluate[chromedp.Void](`[...document.querySelectorAll("#notices button")].find((x) => x.parentElement.textContent.includes("Ida")).click()`))
	b.until("Ida is back", `document.getElementById("f-gift[0].to").value === "Ida of Mill" && document.getElementById("f-gift[1].message").value === "for Cy"`)
	b.do(chromedp.Evaluate[chromedp.Void](`[...document.querySelectorAll("#notices button")].find((x) => x.parentElement.textContent.includes("Bo")).click()`))
	b.until("Bo is back", `document.getElementById("f-gift[2].message")?.value === "for Cy"`)
	b.onDisk("plum.toml", "to = \"Cy\"\nmessage = \"for Cy\"")
	for range 30 {
		b.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	}
	b.until("all is undone", `document.getElementById("undo").disabled && !document.querySelector("[data-row^=gift]")`)
	b.says("#state", "Saved")
	for range 100 {
		if get(t, dir, "plum.toml") == plum {
			break
		}
		time.Sleep(25 * time.Millisecond)
	}
	if got := get(t, dir, "plum.toml"); got != plum {
		t.Errorf("undone, the file is\n%s", got)
	}
	b.click("#redo")
	b.until("one is done again", `document.querySelectorAll("[data-row^=gift]").length === 1`)
	b.silent()
}

// A file opened with a fault in it gets its form as soon as it can be read; one
// deleted while it is open says so, and can be written again.
func TestBrowserBrokenAndGone(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", strings.Replace(plum, `kind = "jam"`, `kind = jam`, 1))
	b := browse(t, dir, 1280, 800)
	b.open("/batch/plum.toml")
	b.says("#form .banner", "not in quotes")
	b.do(chromedp.Evaluate[chromedp.Void](`{ const t = document.getElementById("text"); t.focus(); t.select(); }`), chromedp.Func(insert(plum)))
	b.until("the form is there", `document.getElementById("f-name")?.checkVisibility() && document.querySelectorAll("[data-goto]").length === 7`)
	b.onDisk("plum.toml", `kind = "jam"`)
	b.says("#state", "Saved")
	time.Sleep(100 * time.Millisecond) // the answer to that save

	if err := os.Remove(filepath.Join(dir, "plum.toml")); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.Evaluate[chromedp.Void](`dispatchEvent(new Event("focus"))`))
	b.says("#state", "gone from the disk")
	b.click("#notices .banner button")
	b.click(`[data-answer="mine"]`)
	b.onDisk("plum.toml", `kind = "jam"`)
	b.silent("404", "409")
}
