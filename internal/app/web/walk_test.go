//go:build !js

package web

import (
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// clicksToPrint is how many clicks lead from an empty folder to twelve printed
// jars, and fieldsToPrint how many fields are written on the way; DEVELOPERS.md
// tells both.
const clicksToPrint, fieldsToPrint = 8, 9

// A new maker's whole way, on a phone and on a desk: an empty folder, a kitchen,
// a batch, twelve jars, a PDF. Each click is one of a mouse on what is in sight.
func TestBrowserTwelveJarsFromNothing(t *testing.T) {
	for name, wide := range map[string][2]int64{"phone": {390, 844}, "desk": {1280, 800}} {
		t.Run(name, func(t *testing.T) { twelveJars(t, browse(t, t.TempDir(), wide[0], wide[1])) })
	}
}

// below tells whether a click in the middle of an element would meet it.
const below = `(e) => { const [r] = e.getClientRects(); return e.contains(document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2)); }`

func twelveJars(t *testing.T, b *tab) {
	clicks, fields := 0, 0
	click := func(selector string) {
		clicks++
		found := "document.querySelector(`" + selector + "`)"
		b.until(selector+" is there", found+` !== null && !document.querySelector("#labels.busy")`)
		b.do(chromedp.Evaluate[chromedp.Void](found + `.scrollIntoView({block: "center"})`))
		b.until(selector+" can be clicked", `(`+below+`)(`+found+`)`)
		b.do(chromedp.Click(selector, chromedp.NodeVisible))
	}
	write := func(id, text string) {
		fields++
		b.typeIn(id, text)
	}
	b.open("/")
	click(`.banner a`)
	b.until("the kitchen is open", `document.getElementById("f-name") !== null && document.querySelector("#labels figure") !== null`)
	write("f-name", "Hollow Oak Jams")
	write("f-address", "3 Hollow Oak Road\nMillbrook, OR 97000")
	b.onDisk("kitchen.toml", "Hollow Oak Jams")
	b.says("#state", "Saved")
	click(`nav a[href="./"]`)
	click(`a[href="./new"]`)
	b.says("h1", "New batch")
	write("name", "Plum jam")
	click(`form button.main`)
	b.says("#title", "Plum jam")
	click(`[data-goto="ingredients"]`)
	write("f-ingredient[0].name", "plums")
	write("f-ingredient[0].amount", "2.2 kg")
	write("f-ingredient[1].amount", "1.9 kg")
	click(`[data-goto="jars"]`)
	write("f-fill[0].count", "12")
	write("f-fill[0].sealed", "12")
	write("f-fill[0].declared", "9 oz")
	b.says("#labels figcaption", "12 labels")
	down := t.TempDir()
	b.downloads(down)
	click("#print")
	click("#print-save")
	b.arrived(filepath.Join(down, "*.pdf"))
	if clicks != clicksToPrint || fields != fieldsToPrint {
		t.Errorf("%d clicks and %d fields, DEVELOPERS.md says %d and %d", clicks, fields, clicksToPrint, fieldsToPrint)
	}
	b.silent()
}
