package sheet_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
	"jarmark/templates"
)

func builtin(t testing.TB) *sheet.Catalogue {
	t.Helper()
	c, l := new(sheet.Catalogue).With(templates.FS)
	for _, d := range l {
		t.Errorf("%s: %s: %s", d.File, d.Path, d.Message)
	}
	return c
}

func get(t testing.TB, id string) *sheet.Sheet {
	t.Helper()
	s, ok := builtin(t).Get(id)
	if !ok {
		t.Fatalf("no sheet %s", id)
	}
	return s
}

// TestBuiltinGeometry checks each grid against its paper: margins, cells and
// gaps fill it exactly (paper: ISO 216 A4 210 x 297 mm; ANSI/ASME Y14.1 size
// A, 8.5 x 11 in).
func TestBuiltinGeometry(t *testing.T) {
	c := builtin(t)
	if n := len(c.List()); n < 16 {
		t.Fatalf("%d sheets, want 16 or more", n)
	}
	for _, s := range c.List() {
		short, long := 210*unit.Millimetre, 297*unit.Millimetre
		if strings.HasPrefix(s.ID, "letter-") {
			short, long = 2159*unit.Millimetre/10, 11*unit.Inch
		}
		if strings.HasPrefix(s.ID, "envelope-c6-") { // ISO 269
			short, long = 162*unit.Millimetre, 114*unit.Millimetre
		} else if strings.HasPrefix(s.ID, "envelope-") { // the size its name says
			short, long = 23*unit.Inch/4, 35*unit.Inch/8
		}
		if !strings.HasPrefix(s.ID, "roll-") && s.PaperW != short && s.PaperW != long || !strings.HasPrefix(s.ID, "roll-") && s.PaperW+s.PaperH != short+long {
			t.Errorf("%s: paper of %.2f x %.2f mm", s.ID, s.PaperW.MM(), s.PaperH.MM())
		}
		if s.Auto {
			continue
		}
		w := s.Left + unit.Length(s.Cols-1)*s.PitchX + s.W + s.Right
		h := s.Top + unit.Length(s.Rows-1)*s.PitchY + s.H + s.Bottom
		const hair = 50 * unit.Micrometre
		if d := w - s.PaperW; d > hair || d < -hair {
			t.Errorf("%s: widths add up to %.3f of %.3f mm", s.ID, w.MM(), s.PaperW.MM())
		}
		if d := h - s.PaperH; d > hair || d < -hair {
			t.Errorf("%s: heights add up to %.3f of %.3f mm", s.ID, h.MM(), s.PaperH.MM())
		}
		if s.Symmetric && (s.Left-s.Right > hair || s.Right-s.Left > hair || s.Top-s.Bottom > hair || s.Bottom-s.Top > hair) {
			t.Errorf("%s: said to be symmetric, margins %v %v %v %v", s.ID, s.Left, s.Right, s.Top, s.Bottom)
		}
		cellsApart(t, s)
	}
}

// TestBagCardsFold: above each card for a bag is paper as high as the card, for the back
// of it, and a person's gift and a jar for sale find one on both papers.
func TestBagCardsFold(t *testing.T) {
	papers := map[unit.Length]bool{}
	for _, s := range builtin(t).List() {
		if !strings.Contains(s.ID, "-bag-") {
			continue
		}
		papers[s.PaperW] = true
		if s.Top < s.H || s.PitchY-s.H < s.H || !s.Cut || !s.Takes(string(label.Tag)) || !s.Takes(string(label.BagCard)) {
			t.Errorf("%s: %.1f mm above the first, %.1f mm above the others, cards of %.1f mm, %v", s.ID, s.Top.MM(), (s.PitchY - s.H).MM(), s.H.MM(), s.Pieces)
		}
	}
	if len(papers) != 2 {
		t.Errorf("cards for bags on %d papers", len(papers))
	}
}

// cellsApart looks at every pair of cells, without the pitch.
func cellsApart(t *testing.T, s *sheet.Sheet) {
	t.Helper()
	for i := range s.Cells() {
		a := s.At(i)
		if a.X < 0 || a.Y < 0 || a.X+s.W > s.PaperW || a.Y+s.H > s.PaperH {
			t.Errorf("%s: cell %d is not on the paper", s.ID, i)
		}
		for j := range i {
			b := s.At(j)
			if a.X < b.X+s.W && b.X < a.X+s.W && a.Y < b.Y+s.H && b.Y < a.Y+s.H {
				t.Fatalf("%s: cells %d and %d overlap", s.ID, j, i)
			}
		}
	}
}

// TestEveryPieceHasSheets: on both papers, one made for the piece and plain
// paper besides.
func TestEveryPieceHasSheets(t *testing.T) {
	c := builtin(t)
	for _, p := range label.Pieces {
		for _, paper := range []string{"letter-", "a4-"} {
			grid, plain := false, false
			for _, s := range c.For(string(p), "") {
				if strings.HasPrefix(s.ID, paper) {
					grid, plain = grid || !s.Auto, plain || s.Auto
				}
			}
			if !grid || !plain {
				t.Errorf("%s on %s: made for it %v, plain paper %v", p, paper, grid, plain)
			}
		}
	}
}

// TestRoom: a front label of 95 x 60 mm is too high for 4 x 2 in; on A4 the
// next is the cell of 96 x 63.5 mm, on Letter 4 x 3 in.
func TestRoom(t *testing.T) {
	want := strings.Fields("a4-2x4-96x63.5 letter-2x3-4x3in a4-full a4-plain letter-full letter-plain")
	for _, s := range builtin(t).Room("front", mm(95), mm(60)) {
		if len(want) > 0 && s.ID == want[0] {
			want = want[1:]
		}
		if w, h := max(s.W, s.H), min(s.W, s.H); !s.Auto && (w < mm(95) || h < mm(60)) {
			t.Errorf("%s has no room", s.ID)
		}
	}
	if len(want) > 0 {
		t.Errorf("%v are missing, or out of order", want)
	}
	if n := len(builtin(t).Room("front", mm(400), mm(400))); n > 0 {
		t.Errorf("%d sheets for a label of 400 mm", n)
	}
}

func TestNamesAreDimensions(t *testing.T) {
	for _, s := range builtin(t).List() {
		if s.Auto {
			continue
		}
		if !strings.ContainsAny(s.ID, "0123456789") || s.Title == "" {
			t.Errorf("%s: an id says the size, a title the count and the size", s.ID)
		}
	}
}

const own = `id = "mine"
title = "Mine, from the drawer"
paper = "100 x 150 mm"
cell = "40 x 30 mm"
cols = 2
rows = 4
pitch = "45 x 34 mm"
shape = "rectangle"
corner = "2 mm"

[margin]
left = "7.5 mm"
top = "9 mm"
`

func load(text string) (*sheet.Sheet, diag.List) {
	c, l := new(sheet.Catalogue).With(fstest.MapFS{"sheets/mine.toml": {Data: []byte(text)}})
	s, _ := c.Get("mine")
	return s, l
}

func TestOwnSheet(t *testing.T) {
	s, l := load(own)
	if s == nil || len(l) > 0 {
		t.Fatalf("own sheet not read: %v", l)
	}
	if s.Right != 7500*unit.Micrometre || s.Bottom != 9*unit.Millimetre {
		t.Errorf("remaining margins %v, %v", s.Right, s.Bottom)
	}
	if s.Bleed != 1500*unit.Micrometre {
		t.Errorf("bleed %v; gaps of 5 and 4 mm leave room for 1.5 mm", s.Bleed)
	}
	if got := s.At(3); got != (page.Point{X: unit.MM(52.5), Y: unit.MM(43)}) {
		t.Errorf("cell 3 at %v", got)
	}
}

func TestOwnReplacesBuiltin(t *testing.T) {
	text := strings.ReplaceAll(own, `"mine"`, `"a4-round-40"`)
	c, l := builtin(t).With(fstest.MapFS{"sheets/a4-round-40.toml": {Data: []byte(text)}})
	if s, _ := c.Get("a4-round-40"); len(l) > 0 || s.Title != "Mine, from the drawer" {
		t.Errorf("own sheet did not replace the built-in one: %v", l)
	}
}

// TestOwnSheetMistakes makes one mistake at a time in a sound file: each is
// found at its line, with a hint.
func TestOwnSheetMistakes(t *testing.T) {
	for _, c := range []struct {
		old, new, code, message string
		line                    int
	}{
		{`"mine"`, `"other"`, "sheet-id", `id "other" is not the name of its file`, 1},
		{`title = "Mine, from the drawer"`, `title = " "`, "sheet-title", "no title", 2},
		{`"100 x 150 mm"`, `"10 x 15 mm"`, "sheet-paper", "less than 20 mm", 3},
		{`"100 x 150 mm"`, `"foolscap"`, "sheet-pair", "not a width x height", 3},
		{`"40 x 30 mm"`, `"40"`, "sheet-pair", "not a width x height", 4},
		{`"40 x 30 mm"`, `"40 x 30 ells"`, "sheet-length", "", 4},
		{`"40 x 30 mm"`, `"0 x 30 mm"`, "sheet-pair", "zero side", 4},
		{"cols = 2", "cols = 3", "sheet-off-paper", "3 columns of 40.0 mm are 37.5 mm more than the paper's 100.0 mm takes", 12},
		{"cols = 2", "cols = 0", "sheet-count", "want 1 to 200", 5},
		{"rows = 4", "rows = 5000000", "sheet-count", "want 1 to 200", 6},
		{`"45 x 34 mm"`, `"39 x 34 mm"`, "sheet-overlap", "1.00 mm less than the label", 7},
		{`"rectangle"`, `"heart"`, "sheet-shape", `no shape "heart"`, 8},
		{`corner = "2 mm"`, `corner = "16 mm"`, "sheet-corner", "more than half", 9},
		{`corner = "2 mm"`, `corner = "2 mm"` + "\nsafe = \"15 mm\"", "sheet-safe", "leaves nothing", 10},
		{`corner = "2 mm"`, `corner = "2 mm"` + "\nbleed = \"12 mm\"", "sheet-bleed", "room for 9.0 mm", 10},
		{`corner = "2 mm"`, `corner = "2 mm"` + "\npieces = [\"front\", \"hat\"]", "sheet-piece", `no kind of label "hat"`, 10},
		{`corner = "2 mm"`, `corner = "2 mm"` + "\ngutter = \"3 mm\"", "sheet-gutter", "plain paper", 10},
		{`corner = "2 mm"`, `corner = "2 mm"` + "\nauto = true", "sheet-auto", "no meaning", 4},
		{`corner = "2 mm"`, `corner = "2 mm"` + "\ncolumns = 2", "unknown-key", "", 10},
		{`left = "7.5 mm"`, `left = "-1 mm"`, "sheet-length", "", 12},
		{`top = "9 mm"`, `top = "9 mm"` + "\nright = \"10 mm\"", "sheet-sum", "margin.right is off by -2.5 mm", 14},
		{`left = "7.5 mm"`, `left = "5 mm"`, "sheet-symmetry", "", 0},
	} {
		text := strings.Replace(own, c.old, c.new, 1)
		if c.code == "sheet-symmetry" {
			text = strings.Replace(text, `corner = "2 mm"`, "symmetric = true", 1)
		}
		s, l := load(text)
		d, ok := find(l, c.code)
		switch {
		case s != nil || !ok:
			t.Errorf("%s: not found in %v", c.new, l)
		case !strings.Contains(d.Message, c.message):
			t.Errorf("%s: says %q, want %q", c.new, d.Message, c.message)
		case d.Hint == "" && strings.HasPrefix(c.code, "sheet-"):
			t.Errorf("%s: no hint", c.new)
		case d.File != "sheets/mine.toml" || c.line > 0 && d.Pos.Line != c.line:
			t.Errorf("%s: at %s:%d, want line %d", c.new, d.File, d.Pos.Line, c.line)
		}
	}
}

func find(l diag.List, code string) (diag.Diagnostic, bool) {
	for _, d := range l {
		if d.Code == code {
			return d, true
		}
	}
	return diag.Diagnostic{}, false
}

// FuzzOwnSheet: whatever a file says, it is read or refused with a finding,
// and a sheet that is read can be printed on.
func FuzzOwnSheet(f *testing.F) {
	f.Add(own)
	f.Add("id = \"mine\"\ntitle=\"x\"\npaper=\"a4\"\nauto=true\n")
	f.Add("id = \"mine\"\ntitle=\"x\"\npaper=\"letter\"\ncell=\"4 x 2 in\"\ncols=2\nrows=5\nshape=\"ellipse\"\nsymmetric=true")
	f.Add("paper = \"1e300 x nan mm\"\ncols = -9223372036854775808")
	typefaces, err := face.Load(fonts.FS)
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, l := load(text)
		if s == nil {
			if !l.HasErrors() {
				t.Fatal("refused without a finding")
			}
			return
		}
		w, h := s.W, s.H
		if s.Auto {
			w, h = 10*unit.Millimetre, 10*unit.Millimetre
		}
		d, l := impose([]sheet.Label{{Frame: &page.Frame{W: w, H: h}}}, s, sheet.Options{CutMarks: true})
		if l.HasErrors() || len(d.Pages) != 1 {
			t.Fatalf("sound sheet takes no label: %v", l)
		}
		if d := sheet.Align(s, typefaces); len(d.Pages) != 1 {
			t.Fatal("sound sheet has no alignment page")
		}
	})
}
