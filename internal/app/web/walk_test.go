//go:build !js

package web

import (
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// clicksToPrint is how many clicks lead from an empty folder to twelve printed
// jars; DEVELOPERS.md tells it.
const clicksToPrint = 8

// A new maker's whole way: an empty folder, a kitchen, a batch, twelve jars, a
// PDF. Between the clicks are only keys.
func TestBrowserTwelveJarsFromNothing(t *testing.T) {
	dir := t.TempDir()
	b := browse(t, dir, 390, 844)
	clicks := 0
	click := func(selector string) {
		clicks++
		b.until(selector+" is there", `document.querySelector(`+"`"+selector+"`"+`) !== null`)
		b.do(chromedp.Evaluate[chromedp.Void](`{ const e = document.querySelector(` + "`" + selector + "`" + `); e.scrollIntoView({block: "center"}); e.click(); }`))
	}
	b.open("/")
	click(`.banner a`)
	b.until("the kitchen is open", `document.getElementById("f-name") !== null && document.querySelector("#labels figure") !== null`)
	b.typeIn("f-name", "Hollow Oak Jams")
	b.typeIn("f-address", "3 Hollow Oak Road\nMillbrook, OR 97000")
	b.onDisk("kitchen.toml", "Hollow Oak Jams")
	b.says("#state", "Saved")
	click(`nav a[href="./"]`)
	click(`a[href="./new"]`)
	b.says("h1", "New batch")
	b.typeIn("name", "Plum jam")
	click(`form button.main`)
	b.says("#title", "Plum jam")
	click(`[data-goto="ingredients"]`)
	b.typeIn("f-ingredient[0].name", "plums")
	b.typeIn("f-ingredient[0].amount", "2.2 kg")
	b.typeIn("f-ingredient[1].amount", "1.9 kg")
	click(`[data-goto="jars"]`)
	b.typeIn("f-fill[0].count", "12")
	b.typeIn("f-fill[0].sealed", "12")
	b.typeIn("f-fill[0].declared", "9 oz")
	b.says("#labels figcaption", "12 labels")
	down := t.TempDir()
	b.downloads(down)
	click("#print")
	click("#print-save")
	b.arrived(filepath.Join(down, "*.pdf"))
	if clicks != clicksToPrint {
		t.Errorf("%d clicks, DEVELOPERS.md says %d", clicks, clicksToPrint)
	}
	b.silent()
}
