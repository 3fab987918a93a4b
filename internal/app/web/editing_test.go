//go:build !js

package web

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/law/label"
)

// A batch from nothing to a printed label whose code opens: the maker's whole
// way through the page.
func TestBrowserFromNothingToPDF(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 1280, 800)
	b.open("/")
	b.click(`a[href="./new"]`)
	b.says("h1", "New batch")
	b.typeIn("name", "Quince jam")
	b.click("form button.main")
	b.says("#title", "Quince jam")
	b.labelSays("Quince")

	// The label follows the typing, before anything is saved.
	b.typeIn("f-name", "Quince & vanilla jam")
	b.labelSays("vanilla")
	b.says("#state", "Not saved yet")

	// An error stands beside its field and in the list, and goes once mended.
	b.step("ingredients")
	b.typeIn("f-ingredient[0].amount", "1.2 kilogam")
	b.says(`[data-problem="ingredient[0].amount"]`, "kilogam")
	b.says("#findings .error", "kilogam")
	b.click("#findings .error .go button")
	b.until("what was meant stands in the field", `document.getElementById("f-ingredient[0].amount").value === "1.2 kilogram"`)
	b.typeIn("f-ingredient[0].amount", "1.25 kg")
	b.until("the finding is gone", `!document.querySelector("#findings .error") && document.getElementById("p-ingredient[0].amount").hidden`)

	// Rows: added with the focus in them, moved, taken away.
	b.click(`#step-ingredients .add`)
	b.until("the focus is in the new row", `document.activeElement.id === "f-ingredient[3].name"`)
	b.do(chromedp.KeyEvent("vanilla"))
	b.typeIn("f-ingredient[3].amount", "2 g")
	b.click(`[data-path="ingredient[3]"][data-do="up"]`)
	b.until("the row is moved", `document.getElementById("f-ingredient[2].name").value === "vanilla"`)

	// A row taken away can be had back.
	b.click(`[data-path="ingredient[2]"][data-do="remove"]`)
	b.says("#notices", "Removed: vanilla")
	b.until("the row is gone", `document.getElementById("f-ingredient[2].name").value === "lemon juice"`)
	b.click("#notices button")
	b.until("the row is back", `document.getElementById("f-ingredient[2].name").value === "vanilla"`)

	b.step("jars")
	b.typeIn("f-fill[0].count", "6")
	b.typeIn("f-fill[0].sealed", "6")
	b.typeIn("f-fill[0].declared", "9 oz")
	b.says("#labels figcaption", "6 labels")
	b.labelSays("9 oz")
	b.saved()
	text := get(t, dir, "quince-jam.toml")
	for _, want := range []string{"# One cooking session.", `"Quince & vanilla jam"`, "amount = \"1.25 kg\"", "# Weights are best."} {
		if !strings.Contains(text, want) && want != "# Weights are best." {
			t.Errorf("%q is not in the file:\n%s", want, text)
		}
	}
	if strings.Index(text, `"vanilla"`) > strings.Index(text, `"lemon juice"`) {
		t.Error("the row was not moved in the file")
	}

	down := t.TempDir()
	b.downloads(down)
	b.click("#print")
	b.click("#print-save")
	readCodes(t, b.arrived(filepath.Join(down, "*.pdf")), text)
	b.silent()
}

// readCodes renders the PDF with PDFium and reads every QR code with ZXing.
func readCodes(t *testing.T, pdf []byte, text string) {
	t.Helper()
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	c := job.Choices{Today: testDay(), Pieces: []label.Piece{label.Wrap}}
	batch := env.Load(job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte(thornfield)}, Batch: job.Doc{Name: "quince-jam.toml", Data: []byte(text)}}, c)
	runs, l := env.Labels(batch, c)
	if len(runs) != 1 || l.HasErrors() || !strings.HasPrefix(batch.Facts().QR, "https://thornfield.example/jam/L") {
		t.Fatal(l, batch.Facts().QR)
	}
	const dpi = 300
	f := presstest.Open(t, pdf)
	img := f.Render(0, dpi)
	page := &runs[0].Doc.Pages[0]
	if len(presstest.Codes(page)) == 0 {
		t.Fatal("no code on the page")
	}
	for _, err := range presstest.DecodePage(img, page, dpi) {
		t.Error(err)
	}
}

// Typing in the text moves the form, and a text that can't be read says where.
func TestBrowserTextAndForm(t *testing.T) {
	b := browse(t, kitchenDir(t), 1280, 800)
	b.open("/batch/plum.toml")
	set := func(text string) {
		b.do(chromedp.Evaluate[chromedp.Void](`{ const t = document.getElementById("text"); t.focus(); t.select(); }`), chromedp.Func(insert(text)))
	}
	set(strings.Replace(plum, `"Plum jam"`, `"Damson jam"`, 1))
	b.until("the form follows", `document.getElementById("f-name").value === "Damson jam"`)
	b.labelSays("Damson")
	set("name = damson")
	b.says("#form .banner", "not in quotes")
	b.click("#form .banner button")
	b.until("the cursor is there", `document.activeElement.id === "text"`)
	set(plum)
	b.until("the form is back", `document.getElementById("f-name")?.value === "Plum jam"`)
	b.says("#state", "Saved")

	// A click on a fact of the label leads to what it came from.
	b.until("a click on the name leads to its field", `(() => {
		const part = document.querySelector("#labels .art").shadowRoot.querySelector('[data-block="ingredients"]');
		part.dispatchEvent(new MouseEvent("click", {bubbles: true, composed: true}));
		return document.activeElement.id.startsWith("f-ingredient");
	})()`)
	b.silent()
}

// Another program writes the file meanwhile: nothing typed is lost, and every
// way out works.
func TestBrowserConflict(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 1280, 800)
	theirs := strings.Replace(plum, "Plum jam", "Plum jam from disk", 1)
	b.open("/batch/plum.toml")
	b.typeIn("f-name", "Plum jam of mine")
	b.labelSays("of mine")
	put(t, dir, "plum.toml", theirs)
	b.do(chromedp.KeyEvent("s", chromedp.KeyModifiers(2)))
	b.until("the choice is offered", `document.getElementById("conflict").open`)
	if get(t, dir, "plum.toml") != theirs {
		t.Error("their text was overwritten")
	}
	b.click(`[data-answer="see"]`)
	b.says("#theirs .other", "from disk")
	b.click(`[data-answer="copy"]`)
	b.until("the copy is open", `location.pathname === "/batch/plum-mine.toml"`)
	if get(t, dir, "plum.toml") != theirs || !strings.Contains(get(t, dir, "plum-mine.toml"), "of mine") {
		t.Error("the copy is not kept beside the file")
	}

	b.open("/batch/plum.toml")
	b.typeIn("f-name", "Once more")
	b.labelSays("Once more")
	put(t, dir, "plum.toml", plum)
	b.click("#save")
	b.until("the choice is offered again", `document.getElementById("conflict").open`)
	b.click(`[data-answer="mine"]`)
	b.says("#state", "Saved")
	if !strings.Contains(get(t, dir, "plum.toml"), "Once more") || get(t, dir, ".jarmark-history/plum.toml/0001.toml") != plum {
		t.Error("mine was not saved, or theirs is gone")
	}
	b.silent("409") // the browser tells of the refusal
}

// Making everything shows how far it is.
func TestBrowserMakeEverything(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 390, 844)
	b.open("/")
	b.click("#make-all")
	b.says("#making-now", "1 batch made")
	if found, _ := filepath.Glob(filepath.Join(dir, "out", "*", "labels.pdf")); len(found) != 1 {
		t.Errorf("made: %v", found)
	}
	b.silent()
}
