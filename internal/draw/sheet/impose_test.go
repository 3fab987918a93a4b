package sheet_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

var mm = unit.MM

func labels(n int, w, h, bleed unit.Length) []sheet.Label {
	f := &page.Frame{W: w, H: h, Bleed: bleed, Shape: page.Rectangle}
	out := make([]sheet.Label, n)
	for i := range out {
		out[i].Frame = f
	}
	return out
}

// impose fills sheets and gives their document.
func impose(labels []sheet.Label, s *sheet.Sheet, o sheet.Options) (*page.Doc, diag.List) {
	r, l := sheet.Fill(labels, s, o)
	return r.Doc, l
}

func TestFillsInReadingOrderAndGoesOn(t *testing.T) {
	s := get(t, "letter-2x5-4x2in")
	for _, c := range []struct{ n, skip, pages, used int }{
		{1, 0, 1, 1}, {10, 0, 1, 10}, {11, 0, 2, 1}, {3, 9, 2, 2}, {1, 9, 1, 10}, {25, 5, 3, 10},
	} {
		r, l := sheet.Fill(labels(c.n, s.W, s.H, 0), s, sheet.Options{Skip: c.skip})
		if len(l) > 0 || len(r.Doc.Pages) != c.pages || r.Used != c.used || r.Cells != 10 {
			t.Errorf("%+v: %d pages, %d of %d used, %v", c, len(r.Doc.Pages), r.Used, r.Cells, l)
			continue
		}
		if at := r.Doc.Pages[0].Places[0].At; at != s.At(c.skip) {
			t.Errorf("%+v: first label at %v", c, at)
		}
	}
	// By hand: margins 5/32 and 1/2 in, pitch 4 3/16 x 2 in, so cell 3 (second
	// row, second column) starts at 4 11/32 in, 2 1/2 in.
	if got := s.At(3); got != (page.Point{X: 110331250, Y: 63500000}) {
		t.Errorf("cell 3 at %v", got)
	}
}

func TestRunFindings(t *testing.T) {
	s, plain := get(t, "a4-3x8-70x36"), get(t, "a4-plain")
	nan := math.NaN()
	for _, c := range []struct {
		name   string
		labels []sheet.Label
		s      *sheet.Sheet
		o      sheet.Options
		code   string
		says   string
	}{
		{"skip", labels(1, s.W, s.H, 0), s, sheet.Options{Skip: 24}, "skip-beyond-sheet", "skip 24 of the 24"},
		{"skip back", labels(1, s.W, s.H, 0), s, sheet.Options{Skip: -1}, "skip-beyond-sheet", ""},
		{"skip plain", labels(1, mm(90), mm(90), 0), plain, sheet.Options{Skip: 6}, "skip-beyond-sheet", "skip 6 of the 6"},
		{"none", nil, s, sheet.Options{}, "no-labels", ""},
		{"many", make([]sheet.Label, sheet.MaxLabels+1), s, sheet.Options{}, "too-many-labels", ""},
		{"nil frame", make([]sheet.Label, 2), s, sheet.Options{}, "empty-label", "label 1"},
		{"no sheet", labels(1, 1, 1, 0), nil, sheet.Options{}, "no-sheet", ""},
		{"zero sheet", labels(1, 1, 1, 0), &sheet.Sheet{}, sheet.Options{}, "no-sheet", ""},
		{"size", labels(1, mm(60), mm(36), 0), s, sheet.Options{}, "label-size", "60.0 x 36.0 mm does not match the cells of sheet a4-3x8-70x36, 70.0 x 36.0 mm"},
		{"bleed", labels(1, s.W, s.H, mm(2)), s, sheet.Options{}, "bleed-too-wide", "2.0 mm past"},
		{"scale", labels(1, s.W, s.H, 0), s, sheet.Options{ScaleX: 2}, "printer-scale", ""},
		{"scale nan", labels(1, s.W, s.H, 0), s, sheet.Options{ScaleY: nan}, "printer-scale", ""},
		{"offset", labels(1, s.W, s.H, 0), s, sheet.Options{OffsetY: mm(-30)}, "printer-offset", "-30.0 mm"},
		{"wide", labels(1, mm(300), mm(50), 0), plain, sheet.Options{}, "label-too-big", "15.0 mm too high"},
		{"both", labels(1, mm(300), mm(250), 0), plain, sheet.Options{}, "label-too-big", "52.0 mm too wide and 15.0 mm too high"},
	} {
		d, l := impose(c.labels, c.s, c.o)
		f, ok := find(l, c.code)
		if d != nil || !ok || !strings.Contains(f.Message, c.says) || f.Hint == "" {
			t.Errorf("%s: document %v, findings %v", c.name, d != nil, l)
		}
	}
}

func TestCorrectionOffPaperIsSaid(t *testing.T) {
	s := get(t, "a4-3x8-70x36")
	d, l := impose(labels(3, s.W, s.H, 0), s, sheet.Options{OffsetX: mm(3), ScaleX: 1.001})
	f, ok := find(l, "off-paper")
	if d == nil || !ok || !strings.Contains(f.Message, "3.2 mm") {
		t.Errorf("210 mm x 1.001 + 3 mm is 3.2 mm over: %v", l)
	}
	if d.ScaleX != 1.001 || d.OffsetX != mm(3) {
		t.Error("correction not handed on")
	}
}

func TestLabelOnItsSide(t *testing.T) {
	s := get(t, "letter-2x5-4x2in")
	d, l := impose(labels(1, s.H, s.W, 0), s, sheet.Options{})
	if len(l) > 0 || d.Pages[0].Places[0].Turn != 90 {
		t.Errorf("a 2 x 4 in label fits a 4 x 2 in cell on its side: %v", l)
	}
}

// TestPlainPaperTurnsWhenMoreFit: by hand, A4 less 6 mm all round is
// 198 x 285 mm. With 4 mm between, labels of 100 x 50 mm go 1 x 5 upright
// and 3 x 2 on their side (3 x 50 + 8 <= 198, 2 x 100 + 4 <= 285).
func TestPlainPaperTurnsWhenMoreFit(t *testing.T) {
	r, l := sheet.Fill(labels(7, mm(100), mm(50), 0), get(t, "a4-plain"), sheet.Options{})
	if len(l) > 0 || r.Cells != 6 || len(r.Doc.Pages) != 2 || r.Used != 1 {
		t.Fatalf("%d cells, %d pages, %d used: %v", r.Cells, len(r.Doc.Pages), r.Used, l)
	}
	if pl := r.Doc.Pages[0].Places[4]; pl.Turn != 90 || pl.At != (page.Point{X: mm(6 + (198-158)/2. + 54), Y: mm(6 + 104)}) {
		t.Errorf("fifth label turned %d at %v", pl.Turn, pl.At)
	}
	r, l = sheet.Fill(labels(2, mm(100), mm(50), 0), get(t, "a4-plain"), sheet.Options{Skip: 4})
	if len(l) > 0 || r.Used != 6 || len(r.Doc.Pages) != 1 {
		t.Errorf("two more after four: %d used on %d pages, %v", r.Used, len(r.Doc.Pages), l)
	}
}

// TestNothingOverlaps: whatever is printed, every label lies on the paper,
// none on another, none is lost; and no cut mark touches a label or bleed.
func TestNothingOverlaps(t *testing.T) {
	all := builtin(t).List()
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(all).Draw(t, "sheet")
		var run []sheet.Label
		if s.Auto {
			for range rapid.IntRange(1, 3).Draw(t, "sizes") {
				w, h := rapid.IntRange(10, min(190, int((s.PaperW-s.Left-s.Right).MM()))).Draw(t, "w"), rapid.IntRange(10, 190).Draw(t, "h")
				b := rapid.IntRange(0, 4).Draw(t, "bleed")
				run = append(run, labels(rapid.IntRange(1, 40).Draw(t, "n"), mm(float64(w)), mm(float64(h)), mm(float64(b)))...)
			}
		} else {
			run = labels(rapid.IntRange(1, 90).Draw(t, "n"), s.W, s.H, s.Bleed)
		}
		o := sheet.Options{CutMarks: true}
		if !s.Auto {
			o.Skip = rapid.IntRange(0, s.Cells()-1).Draw(t, "skip")
		}
		r, l := sheet.Fill(run, s, o)
		if l.HasErrors() {
			t.Fatalf("%v", l)
		}
		total := 0
		for i := range r.Doc.Pages {
			total += len(r.Doc.Pages[i].Places)
			checkPage(t, &r.Doc.Pages[i])
		}
		if total != len(run) || r.Used < 1 || r.Used > r.Cells {
			t.Fatalf("%d of %d labels, %d of %d cells", total, len(run), r.Used, r.Cells)
		}
	})
}

func checkPage(t *rapid.T, pg *page.Page) {
	for i, p := range pg.Places {
		a := placed(p, 0)
		if a.X < 0 || a.Y < 0 || a.X+a.W > pg.W || a.Y+a.H > pg.H {
			t.Fatalf("label %d at %v is off the paper", i, a)
		}
		for j, q := range pg.Places[:i] {
			if b := q.Reach(); overlap(a, b) {
				t.Fatalf("labels %d and %d overlap: %v, %v", j, i, a, b)
			}
		}
	}
	for _, m := range pg.Marks {
		path := m.(*page.Path)
		if path.Block != "cut" || path.Width != 88194 {
			t.Fatalf("mark %q of %v", path.Block, path.Width)
		}
		for k := 0; path.Ops[0] != page.CubicTo && k+1 < len(path.Pts) && path.Ops[1] == page.LineTo; k += 2 {
			checkTick(t, pg, path.Pts[k], path.Pts[k+1])
		}
	}
}

func checkTick(t *rapid.T, pg *page.Page, a, b page.Point) {
	r := page.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y}
	if r.W < 0 || r.H < 0 || r.W > 0 == (r.H > 0) || a.X < 0 || a.Y < 0 || b.X > pg.W || b.Y > pg.H {
		t.Fatalf("cut mark from %v to %v", a, b)
	}
	r.X, r.Y, r.W, r.H = r.X-44097, r.Y-44097, r.W+88194, r.H+88194
	for i, p := range pg.Places {
		if overlap(r, p.Reach()) {
			t.Fatalf("cut mark %v touches label %d at %v", r, i, placed(p, 0))
		}
	}
}

func placed(p page.Placement, grow unit.Length) page.Rect {
	w, h := p.Frame.W, p.Frame.H
	if p.Turn == 90 {
		w, h = h, w
	}
	return page.Rect{X: p.At.X - grow, Y: p.At.Y - grow, W: w + 2*grow, H: h + 2*grow}
}

func overlap(a, b page.Rect) bool {
	return a.X < b.X+b.W && b.X < a.X+a.W && a.Y < b.Y+b.H && b.Y < a.Y+a.H
}

func TestCutMarksAreThere(t *testing.T) {
	d, _ := impose(labels(6, mm(80), mm(50), mm(1.5)), get(t, "a4-plain"), sheet.Options{CutMarks: true})
	p := d.Pages[0].Marks[0].(*page.Path)
	// 2 x 3 labels have 6 edges across, each with a mark left, between and
	// right, and 4 edges down, each with a mark above, below and in 2 gutters.
	if want := 6*3 + 4*4; len(p.Ops) != 2*want {
		t.Errorf("%d cut marks, want %d", len(p.Ops)/2, want)
	}
	round := labels(4, mm(40), mm(40), 0)
	round[0].Frame.Shape = page.Ellipse
	d, _ = impose(round, get(t, "a4-plain"), sheet.Options{CutMarks: true})
	p = d.Pages[0].Marks[0].(*page.Path)
	if len(p.Ops) != 4*6 {
		t.Errorf("round labels need their outline to cut along, got %d operations", len(p.Ops))
	}
	tag := labels(2, mm(52), mm(90), 0)
	tag[0].Frame.Shape, tag[1].Frame.Shape = page.TagShape, page.TagShape
	d, _ = impose(tag, get(t, "a4-tag-52x90"), sheet.Options{CutMarks: true})
	if n := slanting(d.Pages[0].Marks[0].(*page.Path), mm(52)*18/100); n != 4 {
		t.Errorf("%d lines across the corners of two tags, want 4", n)
	}
	tag[0].Frame.W, tag[0].Frame.H = mm(250), mm(90) // stands turned on plain paper: its top faces right
	d, _ = impose(tag[:1], get(t, "a4-plain"), sheet.Options{CutMarks: true})
	p = d.Pages[0].Marks[0].(*page.Path)
	at := placed(d.Pages[0].Places[0], 0)
	for i := 0; i < 4; i++ {
		if q := p.Pts[i]; q.X < at.X+at.W/2 || q.X > at.X+at.W || q.Y < at.Y || q.Y > at.Y+at.H {
			t.Errorf("the line across a corner of a turned tag ends at %v, the tag lies at %v", q, at)
		}
	}
	if d, _ = impose(round, get(t, "a4-plain"), sheet.Options{}); d.Pages[0].Marks != nil {
		t.Error("cut marks without being asked")
	}
}

// slanting counts the lines that are neither level nor upright; across, if not
// zero, is how far they must reach, to 0.1 mm.
func slanting(p *page.Path, across unit.Length) (n int) {
	for i := 0; i+1 < len(p.Pts); i += 2 {
		dx, dy := p.Pts[i+1].X-p.Pts[i].X, p.Pts[i+1].Y-p.Pts[i].Y
		if dx != 0 && dy != 0 && (across == 0 || max(dx-across, across-dx) <= mm(0.1)) {
			n++
		}
	}
	return n
}

// TestSheetsToCutSaySo: a sheet whose note tells the maker to cut along the
// marks prints marks.
func TestSheetsToCutSaySo(t *testing.T) {
	for _, s := range builtin(t).List() {
		if told := strings.Contains(s.Note, "along the marks"); told != s.Cut {
			t.Errorf("%s: the note %q, cut = %v", s.ID, s.Note, s.Cut)
		}
	}
}

func BenchmarkImpose100000(b *testing.B) {
	s := get(b, "a4-3x8-70x36")
	run := labels(sheet.MaxLabels, s.W, s.H, 0)
	for b.Loop() {
		if _, l := impose(run, s, sheet.Options{CutMarks: true}); len(l) > 0 {
			b.Fatal(l)
		}
	}
}

// For a print shop each different label is a page: the label, its bleed around
// it, and the trim between; copies alike are one page.
func TestTrimmedPages(t *testing.T) {
	list := append(labels(3, mm(80), mm(50), mm(3)), labels(1, mm(40), mm(40), mm(2))...)
	list[2].Overlay = []page.Item{&page.Text{}}
	doc, l := impose(list, get(t, "a4-plain"), sheet.Options{Trimmed: true, CutMarks: true})
	if len(l) > 0 || len(doc.Pages) != 3 {
		t.Fatalf("%v, %d pages", l, len(doc.Pages))
	}
	for i, want := range []page.Page{{W: mm(86), H: mm(56)}, {W: mm(86), H: mm(56)}, {W: mm(44), H: mm(44)}} {
		p := doc.Pages[i]
		b := p.Places[0].Frame.Bleed
		if p.W != want.W || p.H != want.H || p.Trim != (page.Rect{X: b, Y: b, W: p.W - 2*b, H: p.H - 2*b}) || p.Places[0].At != (page.Point{X: b, Y: b}) || len(p.Marks) > 0 {
			t.Errorf("page %d: %+v", i+1, p)
		}
	}
}

// A roll gives each label a page as long as it needs; what is wider than the
// roll lies along it, and what is wider and longer does not fit.
func TestRoll(t *testing.T) {
	s := get(t, "roll-62mm")
	doc, l := impose(labels(3, mm(50), mm(30), 0), s, sheet.Options{})
	if len(l) > 0 || len(doc.Pages) != 3 || doc.Pages[2].W != mm(62) || doc.Pages[2].H != mm(36) || doc.Pages[2].Places[0].At != (page.Point{X: mm(6), Y: mm(3)}) {
		t.Fatalf("%v %+v", l, doc)
	}
	doc, l = impose(labels(1, mm(220), mm(46), 0), s, sheet.Options{})
	if len(l) > 0 || doc.Pages[0].H != mm(226) || doc.Pages[0].Places[0].Turn != 90 {
		t.Fatalf("%v %+v", l, doc)
	}
	if _, l = impose(labels(1, mm(90), mm(60), 0), s, sheet.Options{}); !l.HasErrors() {
		t.Error("a label of 90 x 60 mm on 62 mm")
	}
}
