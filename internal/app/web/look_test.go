package web

import (
	"encoding/json"
	"errors"
	"jarmark/internal/app/job"
	"jarmark/internal/law/label"
	"net/http"
	"os"
	"slices"
	"strings"
	"testing"
)

func TestLook(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	a := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap", "lid"}, Form: true}, 200)
	if a.Text != plum || len(a.Labels) != 2 || !strings.HasPrefix(a.Labels[0].SVG, "<svg") || a.Labels[0].Labels != 8 || !strings.Contains(a.Form, `id="f-ingredient[1].name"`) {
		t.Errorf("%d labels, %v", len(a.Labels), a.Findings)
	}
	b := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap"}, Changes: []change{{Do: "set", Path: "name", Value: "Damson jam"}}}, 200)
	if b.Labels[0].SVG == a.Labels[0].SVG || !strings.Contains(b.Labels[0].SVG, "Damson") || !strings.Contains(b.Text, "# from the hedge") {
		t.Error("the label does not follow the change")
	}
	c := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Changes: []change{{Do: "set", Path: "ingredient[0].amount", Value: "2 kq"}}}, 200)
	if len(c.Findings) == 0 || c.Findings[0].Path != "ingredient[0].amount" || c.Findings[0].Line != 8 {
		t.Errorf("%+v", c.Findings)
	}
	kitchen := get(t, dir, "kitchen.toml")
	put(t, dir, "kitchen.toml", strings.Replace(kitchen, `"us"`, `"us-or"`, 1))
	sale := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap"}}, 200)
	gift := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap"}, Gift: true}, 200)
	if len(sale.Labels) != 1 || len(gift.Labels) != 1 || sale.Labels[0].SVG == gift.Labels[0].SVG {
		t.Error("labels for presents are those for sale")
	}
	d := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: "name = plum", Form: true}, 200)
	if len(d.Findings) == 0 || !strings.Contains(d.Form, "Go to the line") || d.Labels == nil {
		t.Errorf("%+v", d)
	}
	if get(t, dir, "plum.toml") != plum {
		t.Error("looking wrote the file")
	}
}

func TestLookAtKitchen(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	changed := strings.Replace(thornfield, "Thornfield Lane Preserves", "Upper Field Jams", 1)
	a := call[lookAnswer](t, h, "/do/look", lookAsk{File: "kitchen.toml", Text: changed + "plaace = 1\n", Pieces: []string{"wrap"}}, 200)
	if len(a.Labels) != 1 || !strings.Contains(a.Labels[0].SVG, "Upper Field") {
		t.Errorf("the batch of the folder does not show the kitchen: %v", a.Findings)
	}
	if len(a.Findings) == 0 || a.Findings[0].File != "kitchen.toml" {
		t.Errorf("%+v", a.Findings)
	}
}

func TestPrintIsRefusedWithAReason(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	b := call[blocked](t, h, "/do/print", printAsk{File: "plum.toml", Text: strings.Replace(plum, "2 kg", "2 kq", 1)}, 422)
	if b.Error == "" || len(b.Findings) == 0 {
		t.Errorf("%+v", b)
	}
	p := call[printed](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum, Pieces: []string{"front", "info"}}, 200)
	w := do(h, request("GET", "/"+p.URL, nil))
	if w.Code != http.StatusOK || !strings.HasPrefix(w.Body.String(), "%PDF") {
		t.Errorf("%d %.200s", w.Code, w.Body)
	}
	for range maxPrints {
		call[printed](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum}, 200)
	}
	if w := do(h, request("GET", "/"+p.URL, nil)); w.Code != http.StatusNotFound {
		t.Errorf("prints are held without end: %d", w.Code)
	}
	if p := call[printed](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum, Proof: true}, 200); p.Name != "plum-label-proof.pdf" {
		t.Errorf("the proof is called %s", p.Name)
	}
	call[problem](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum, Gone: map[string]int{"letter-1x2": -1}}, 400)
}

// BenchmarkPreview is one keystroke on the demo batch: a change in the form,
// all stages, and two labels drawn. It must stay well under 100 ms, which
// passes for "at once" (Miller 1968; Card, Moran and Newell 1983).
func BenchmarkPreview(b *testing.B) { benchmarkPreview(b, 2, "wrap", "lid") }

// BenchmarkPreviewAll is the same with every piece shown.
func BenchmarkPreviewAll(b *testing.B) {
	var all []string
	for _, p := range label.Pieces {
		all = append(all, string(p))
	}
	benchmarkPreview(b, 0, all...) // the demo has tags of several names
}

func benchmarkPreview(b *testing.B, want int, pieces ...string) {
	dir := b.TempDir()
	for _, name := range []string{"kitchen.toml", "strawberry-rhubarb.toml"} {
		data, err := os.ReadFile("../../../testdata/demo/" + name)
		if err != nil {
			b.Fatal(err)
		}
		put(b, dir, name, string(data))
	}
	h := handlerOf(b, dir)
	ask := lookAsk{File: "strawberry-rhubarb.toml", Text: get(b, dir, "strawberry-rhubarb.toml"), Pieces: pieces,
		Changes: []change{{Do: "set", Path: "name", Value: "Strawberry jam"}}}
	call[lookAnswer](b, h, "/do/look", ask, 200) // the first look draws what the others hold
	for b.Loop() {
		if a := call[lookAnswer](b, h, "/do/look", ask, 200); len(a.Labels) != want && want > 0 {
			b.Fatal(a.Findings)
		}
	}
}

// TestLabelsInSightGoAhead: they come as a line of their own, the same
// drawings as in the answer, which does not send them twice. Where all are in
// sight there is one line.
func TestLabelsInSightGoAhead(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	ask := lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap", "lid"}, First: []string{"lid"}}
	w := do(h, request("POST", "/do/look", ask))
	if !w.Flushed {
		t.Error("the line waits for the answer")
	}
	var first ahead
	var all lookAnswer
	d := json.NewDecoder(w.Body)
	if err := errors.Join(d.Decode(&first), d.Decode(&all)); err != nil {
		t.Fatal(err)
	}
	if len(first.First) != 1 || first.First[0].Piece != "lid" || !strings.HasPrefix(first.First[0].SVG, "<svg") {
		t.Fatalf("%+v", first)
	}
	if len(all.Labels) != 2 {
		t.Fatalf("%d labels", len(all.Labels))
	}
	for _, x := range all.Labels {
		if ahead := x.Piece == "lid"; ahead != (x.SVG == "") || ahead != (x.Mark == first.First[0].Mark) {
			t.Errorf("the %s is sent twice, or not at all", x.Piece)
		}
	}
	if w.Code != http.StatusOK || strings.Count(w.Body.String(), "\n") != 0 || d.More() {
		t.Errorf("%d, and more than two lines", w.Code)
	}
	for _, pieces := range [][]string{{"wrap", "lid"}, {"pot"}, nil} {
		ask.First = pieces
		if n := strings.Count(strings.TrimSpace(do(h, request("POST", "/do/look", ask)).Body.String()), "\n"); n != 0 {
			t.Errorf("%v: %d lines ahead", pieces, n)
		}
	}
}

// TestWhatIsMeantMends: where a finding says what was meant, writing that in
// its place takes the finding away and brings no other error.
func TestWhatIsMeantMends(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	look := func(text string) []job.Finding {
		return call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: text, Pieces: []string{"wrap"}}, 200).Findings
	}
	for _, slip := range [][2]string{
		{`kind = "jam"`, `kind = "jem"`}, {`kind =`, `kinnd =`}, {`made = 2026-09-05`, `made = "5 September 2026"`}, {`"2 kg"`, `"4 1/2 puonds"`},
		{`"2 kg"`, `"2000 gr"`}, {`count = 8`, `count = "8"`}, {`name = "Plum`, `naem = "Plum`},
	} {
		if !strings.Contains(plum, slip[0]) {
			t.Fatalf("the plum jam has no %s", slip[0])
		}
		text := strings.Replace(plum, slip[0], slip[1], 1)
		i := slices.IndexFunc(look(text), func(f job.Finding) bool { return f.Instead != "" })
		if i < 0 {
			t.Errorf("%s: nothing is offered: %+v", slip[1], look(text))
			continue
		}
		f := look(text)[i]
		lines := strings.Split(text, "\n")
		letters := []rune(lines[f.Line-1])
		lines[f.Line-1] = string(letters[:f.Column-1]) + f.Instead + string(letters[f.EndColumn-1:])
		for _, left := range look(strings.Join(lines, "\n")) {
			if left.Severity == "error" {
				t.Errorf("%s became %q: %s", slip[1], lines[f.Line-1], left.Message)
			}
		}
	}
}

// A part-used sheet: printing begins after the labels gone, and what is gone
// then is noted in the kitchen, whose other lines stay.
func TestPrintOnAPartUsedSheet(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	look := func() picture {
		a := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"lid"}}, 200)
		if len(a.Labels) != 1 || a.Labels[0].Cells < 9 {
			t.Fatalf("%+v", a)
		}
		return a.Labels[0]
	}
	lid := look()
	ask := printAsk{File: "plum.toml", Text: plum, Pieces: []string{"lid"}, Gone: map[string]int{lid.Sheet: 3}}
	plain := get(t, dir, "kitchen.toml")
	if call[printed](t, h, "/do/print", ask, 200); get(t, dir, "kitchen.toml") != plain {
		t.Error("noted unasked")
	}
	ask.Remember = true
	call[printed](t, h, "/do/print", ask, 200)
	if now := get(t, dir, "kitchen.toml"); !strings.HasPrefix(now, plain) || look().Gone != (3+8)%lid.Cells {
		t.Errorf("%d of %d are gone:\n%s", look().Gone, lid.Cells, now)
	}
	ask.Gone = map[string]int{lid.Sheet: 0}
	if call[printed](t, h, "/do/print", ask, 200); look().Gone != 8%lid.Cells {
		t.Errorf("%d are gone, printed on a new sheet", look().Gone)
	}
	ask.Gone = map[string]int{lid.Sheet: lid.Cells}
	call[blocked](t, h, "/do/print", ask, 422)
	if wrap := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap"}}, 200).Labels[0]; wrap.Cells != 0 {
		t.Errorf("plain paper has %d labels", wrap.Cells)
	}
}
