package draft

import (
	"slices"
	"strings"
	"sync"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

var book = sync.OnceValues(func() (*place.Book, error) { return place.Load(place.Laws{}) })

// begun is a draft of an invented batch for a place.
func begun(t *testing.T, id string, change func(*cook.Result, *cook.JarPlan)) *Draft {
	t.Helper()
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	s, l := b.Place(id, unit.Date{Year: 2026, Month: 11, Day: 25})
	if s == nil {
		t.Fatal(l)
	}
	r := &cook.Result{Batch: &batch.Batch{Name: "Plum jam", Serve: "on toast", Label: batch.Label{Season: "autumn 2026"}}, Lot: "L 1",
		Kitchen: &batch.Kitchen{Name: "Thornfield Lane", RecordURL: "https://thornfield.example/jam/"}}
	jar := cook.JarPlan{FillPath: "fill[0]", Sealed: 5, Count: 6, Jar: pantry.Jar{Key: "us8", Circumference: unit.MM(210), Panel: unit.MM(60)}}
	if change != nil {
		change(r, &jar)
	}
	return NewDraft(r, jar, s, Options{})
}

func textOf(d *Draft, k label.Kind) string { b, _ := d.C.Find(k); return b.Text() }

func told(l diag.List, code string) (diag.Severity, bool) {
	for _, d := range l {
		if d.Code == code {
			return d.Severity, true
		}
	}
	return 0, false
}

// What no law asks stands on the label when there is something to say.
func TestExtras(t *testing.T) {
	d := begun(t, "us-or", nil)
	d.Net = "10 oz"
	d.Extras()
	for k, want := range map[label.Kind]string{label.Brand: "Thornfield Lane", label.Season: "autumn 2026", label.Serve: "on toast",
		label.Caption: d.Say.Say("caption.page"), label.Seal: d.Say.Say("seal"), label.To: d.Say.Say("tag.to"), label.From: d.Say.Say("tag.from"),
		label.Count: d.Say.Say("case.count", "n", "5", "net", "10 oz")} {
		if got := textOf(d, k); got != want || got == "" {
			t.Errorf("%s: %q, want %q", k, got, want)
		}
	}
	if d.C.QR.Payload != "https://thornfield.example/jam/L%201/" || d.C.JarText != d.Say.Say("jar", "net", "10 oz") || d.C.AllergenWord == "" {
		t.Errorf("%+v %q", d.C.QR, d.C.JarText)
	}
	bare := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
		r.Batch.Serve, r.Batch.Label.Season, r.Kitchen.Name, r.Kitchen.RecordURL = " ", "", "", ""
	})
	bare.Extras()
	for _, k := range []label.Kind{label.Brand, label.Season, label.Serve, label.Count} {
		if b, ok := bare.C.Find(k); ok {
			t.Errorf("%s says %q", k, b.Text())
		}
	}
	if textOf(bare, label.Caption) != d.Say.Say("caption.text") || bare.C.QR.Payload != "Plum jam\nL 1" || bare.C.JarText != "" {
		t.Errorf("%q %q", textOf(bare, label.Caption), bare.C.QR.Payload)
	}
	// A full box, where the jars of this size are more.
	d = begun(t, "us-or", func(r *cook.Result, j *cook.JarPlan) { j.Sealed = 500 })
	if n := d.caseHolds(); n != d.K.Supplies.PerBox() {
		t.Errorf("a case of %d", n)
	}
	if d.Jar.Sealed = 0; d.caseHolds() != d.K.Supplies.PerBox() {
		t.Error("a size of which nothing is sealed has no case")
	}
}

// The code opens a page only at a web address.
func TestAddressOfTheCode(t *testing.T) {
	for url, want := range map[string]string{
		"https://a.example": "page", "http://a.example": "page record-url-http", "ftp://a.example": "bad-record-url", "https://": "bad-record-url", "a.example/jam": "bad-record-url", "": "",
	} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) { r.Kitchen.RecordURL = url })
		_, page := d.payload()
		got := map[bool]string{true: "page"}[page]
		for _, f := range d.L {
			got += " " + f.Code
		}
		if strings.TrimSpace(got) != want {
			t.Errorf("%q: %q, want %q", url, got, want)
		}
	}
	for payload, page := range map[string]bool{"https://a.example/x": true, "just words": false} {
		d := begun(t, "us-or", nil)
		d.O.Payload = payload
		if text, is := d.payload(); text != payload || is != page {
			t.Errorf("%q: %v", payload, is)
		}
	}
}

// A unit price is the price of so much at the price of the jar, half up.
func TestUnitPrice(t *testing.T) {
	for _, x := range []struct {
		minor, content, per, want int64
		ok                        bool
	}{{900, 10, 1, 90, true}, {650, 240, 1000, 2708, true}, {5, 2, 1, 3, true}, {900, 0, 1, 0, false}, {900, 10, 0, 0, false}, {0, 10, 1, 0, false}, {-1, 10, 1, 0, false}, {1, 1000, 1, 0, false}, {1 << 61, 1, 4, 0, false}} {
		got, ok := unit.Money{Minor: x.minor, Currency: "USD"}.Per(x.content, x.per)
		if ok != x.ok || ok && (got.Minor != x.want || got.Currency != "USD") {
			t.Errorf("%+v: %v %v", x, got, ok)
		}
	}
	for _, x := range []struct {
		minor    int64
		currency string
		want     string
	}{{90, "USD", "90¢"}, {100, "USD", "$1"}, {950, "USD", "$9.50"}, {90, "GBP", "£0.90"}} {
		if got := stallPrice(unit.Money{Minor: x.minor, Currency: x.currency}); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

// The jar's own price, else that of the market that sells this size.
func TestWhichPrice(t *testing.T) {
	market := []batch.Market{{Path: "market[0]", Jar: "us4", Price: unit.Money{Minor: 100}}, {Path: "market[1]", Price: unit.Money{Minor: 0}}, {Path: "market[2]", Jar: "US8", Price: unit.Money{Minor: 700}}}
	for _, x := range []struct {
		own  int64
		want int64
		path string
	}{{0, 700, "market[2]"}, {900, 900, "fill[0]"}} {
		d := begun(t, "us-or", func(r *cook.Result, j *cook.JarPlan) { r.Batch.Markets, j.Price.Minor = market, x.own })
		if m, path := d.jarPrice(); m.Minor != x.want || path != x.path {
			t.Errorf("%+v: %v %s", x, m, path)
		}
	}
	d := begun(t, "us-or", nil)
	if d.Price(); textOf(d, label.Price) != "" {
		t.Error("a price nobody wrote")
	}
	d = begun(t, "us-or", func(r *cook.Result, j *cook.JarPlan) { j.Price = unit.Money{Minor: 800, Currency: "USD"} })
	d.NetVolume = 8 * unit.FluidOunce
	if d.Price(); textOf(d, label.UnitPrice) != "$1 per fl oz" {
		t.Errorf("%q", textOf(d, label.UnitPrice))
	}
}

// A duty is an error, on gifts a note; a plan is told what is to come.
func TestDuties(t *testing.T) {
	for _, x := range []struct {
		gift, plan bool
		duty, wait diag.Severity
	}{{false, false, diag.Error, diag.Error}, {true, false, diag.Note, diag.Note}, {false, true, diag.Error, diag.Note}, {true, true, diag.Note, diag.Note}} {
		d := begun(t, "us-or", func(_ *cook.Result, j *cook.JarPlan) {
			if x.plan {
				*j = cook.JarPlan{}
			}
		})
		d.O.Gift = x.gift
		if d.Jar.Planned() != x.plan {
			t.Skip("what is a plan is another's to say")
		}
		d.Duty("no-lot", "", "", "x")
		d.Awaits("no-net", "", "", "to come", "missing", "hint", "cite")
		if s, _ := told(d.L, "no-lot"); s != x.duty {
			t.Errorf("%+v: a duty is %s", x, s)
		}
		if s, _ := told(d.L, "no-net"); s != x.wait {
			t.Errorf("%+v: what is awaited is %s", x, s)
		}
	}
}

// The kitchen's language where the place has it, by its base too, else the first.
func TestLanguageOfTheLabel(t *testing.T) {
	for _, x := range []struct{ place, asked, got, told string }{
		{"eu", "fr", "fr", ""}, {"eu", "fr-BE", "fr", ""}, {"eu", "", "en", ""}, {"eu", "it", "en", "error"}, {"us-or", "fr", "en", "warning"}, {"de", "", "de", ""},
	} {
		d := begun(t, x.place, func(r *cook.Result, _ *cook.JarPlan) { r.Kitchen.Language = x.asked })
		s, found := told(d.L, "language")
		if d.Say.Lang != x.got || found != (x.told != "") || found && s.String() != x.told {
			t.Errorf("%+v: %s %v", x, d.Say.Lang, d.L)
		}
	}
}

// Of an ingredient in two portions, all must be out for it to be out; one packet
// read is read.
func TestPortions(t *testing.T) {
	d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
		r.Batch.Ingredients = []batch.Ingredient{{Path: "a", Skip: true}, {Path: "b"}, {Path: "c", Skip: true, Contains: []pantry.Part{{Name: "x"}}}}
	})
	for paths, want := range map[string][2]bool{"a": {true, false}, "a b": {false, false}, "a c": {true, true}, "": {false, false}, "z": {false, false}} {
		ln := cook.Line{Paths: strings.Fields(paths)}
		if got := [2]bool{d.TakenOut(ln), d.PacketRead(ln)}; got != want {
			t.Errorf("%q: %v", paths, got)
		}
	}
}

// 21 CFR 101.1(b): 40 % of height times circumference.
func TestPanelArea(t *testing.T) {
	for _, x := range []struct {
		around, panel, height unit.Length
		want                  float64
	}{{unit.MM(200), unit.MM(50), unit.MM(90), 4000}, {unit.MM(200), 0, unit.MM(90), 7200}, {0, unit.MM(50), 0, 0}, {unit.MM(200), 0, 0, 0}, {1, 1, 0, 0.4e-12}} {
		if got := PanelArea(pantry.Jar{Circumference: x.around, Panel: x.panel, Height: x.height}); got < x.want*0.999 || got > x.want*1.001 {
			t.Errorf("%+v: %g", x, got)
		}
	}
}

// A word begins at a word's start, and ends at its end unless it may grow.
func TestFindWord(t *testing.T) {
	for _, x := range []struct {
		text, stem string
		grow, ok   bool
		from, to   int
	}{{"Roasted almonds", "almond", true, true, 8, 15}, {"Roasted almonds", "almond", false, false, 0, 0}, {"salmonds", "almond", true, false, 0, 0}, {"a rum, please", "rum", false, true, 2, 5}, {"x", "", true, false, 0, 0}, {"forum rum", "rum", false, true, 6, 9}} {
		from, to, ok := FindWord(x.text, x.stem, x.grow)
		if ok != x.ok || from != x.from || to != x.to {
			t.Errorf("%+v: %d %d %v", x, from, to, ok)
		}
	}
}

// A kind that is a word too names no maker's own ingredient: nut brittle is no nut.
func TestKindWordsAreNoWords(t *testing.T) {
	for kind := range kindWords {
		if Among([]string{kind}, cook.Line{Name: kind + " brittle"}) {
			t.Errorf("%s brittle passes for %s", kind, kind)
		}
		if !Among([]string{kind}, cook.Line{Key: "x", Row: pantry.Ingredient{Key: "x", Class: kind}}) {
			t.Errorf("a row of the kind %s is not among its kind", kind)
		}
	}
	if !Among([]string{"marron"}, cook.Line{Name: "Marrons glacés"}) || Among([]string{"marron"}, cook.Line{Name: "Marrons glacés", Key: "x", Row: pantry.Ingredient{Key: "x"}}) {
		t.Error("words are for the maker's own ingredients")
	}
	for _, kind := range []string{"dairy", "egg", "nut", "seed", "flavour", "salt", "alcohol", "water", "herb", "additive", "fruit", "juice", "acid", "vegetable", "spice", "sweetener", "gelling", "sugar", "pectin", "honey"} {
		if !kindWords[kind] {
			t.Errorf("%s is a kind of the table", kind)
		}
	}
}

// A broken batch file is heard of once, by who read it.
func TestBrokenBatchIsHeardOnce(t *testing.T) {
	d := begun(t, "us-or", nil)
	d.L.Warnf("no-lot", "", "lot", "of the batch")
	d.L.Warnf("no-maker", "kitchen.toml", "name", "of the kitchen")
	if d.O.Broken = true; len(d.heard()) != 1 || d.heard()[0].File != "kitchen.toml" {
		t.Errorf("%v", d.heard())
	}
}

// The last word that names a product is the product: butter of preserves.
func TestProductWord(t *testing.T) {
	for name, want := range map[string]string{"Plum butter": "butter", "Jam butter": "butter", "Jelly of plums": "jelly", "Red Delight": "", "": "", "Jam": "jam"} {
		if got := ProductWord(name); got != want {
			t.Errorf("%q: %q", name, got)
		}
	}
}

// Words joined and ended as sentences are.
func TestWordsJoined(t *testing.T) {
	for text, want := range map[string]string{"a": "a.", "a.": "a.", "a!": "a!", "": "."} {
		if got := Dotted(text); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
	for n, want := range []string{"", "a", "a and b", "a, b and c"} {
		if got := Joined([]string{"a", "b", "c"}[:n], " and "); got != want {
			t.Errorf("%d: %q", n, got)
		}
	}
}

// A group of allergens is asked about and stands as the maker wrote it; the code
// names what stands in the list of ingredients alone.
func TestEvidenceOfAGroup(t *testing.T) {
	d := begun(t, "eu", func(r *cook.Result, _ *cook.JarPlan) { r.Kitchen.RecordURL = "" })
	d.Allergy = cook.Stated([]string{"nuts", "milk"}, "ingredient[0]")
	ask := func(s allergen.Substance) ([]string, bool) { return []string{s.ID}, s.ID != "milk" }
	d.Evidence(ask, "cite")
	var why []string
	for _, w := range d.C.AllergenWhy {
		why = append(why, w.Name)
	}
	if !slices.Contains(why, "nuts") || !slices.Contains(why, "milk") || d.C.NoAllergens {
		t.Errorf("%v", d.C.AllergenWhy)
	}
	if s, ok := told(d.L, "name-the-species"); !ok || s != diag.Error {
		t.Errorf("%v", d.L)
	}
	if words := d.plainWords(); !strings.HasSuffix(words, d.Say.Say("eu.contains")+Listed(d.C.AllergenNames)) {
		t.Errorf("%q", words)
	}
	d.Add(label.Block{Kind: label.Allergens, Runs: []label.Run{{Text: "Contains: Milk"}}})
	if words := d.plainWords(); strings.Contains(words, d.Say.Say("eu.contains")+Listed(d.C.AllergenNames)) || !strings.HasSuffix(words, "Contains: Milk") {
		t.Errorf("%q", words)
	}
}
