package job_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/proof"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// proofText is all that stands on the pages of a proof beside its labels,
// without blanks, for lines break anywhere.
func proofText(d *page.Doc) string {
	var b strings.Builder
	for _, p := range d.Pages {
		for _, m := range p.Marks {
			if t, ok := m.(*page.Text); ok {
				b.WriteString(t.String())
			}
		}
	}
	return noBlanks(b.String())
}

func noBlanks(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\u00a0' || r == '\u202f' || r == '\n' }), "")
}

// TestProofDrawsOutEveryRequiredLine: the proof of the kitchen sink has, in
// every place, each required block with its words and its clause, and beside
// it the height that inspect measures on the label drawn above it.
func TestProofDrawsOutEveryRequiredLine(t *testing.T) {
	env := builtin(t)
	for _, place := range env.Book.List() {
		t.Run(place.ID, func(t *testing.T) {
			t.Parallel()
			in := sinkInput(place.ID)
			for _, jar := range []string{"8 fl oz", "16 fl oz"} { // room for all words
				in.Batch.Data = bytes.Replace(in.Batch.Data, []byte(`jar = "`+jar+`"`), []byte(`jar = "us16w"`), 1)
			}
			b := env.Load(in, job.Choices{Place: place.ID})
			c := job.Choices{Place: place.ID, Design: "market-plain", Pieces: []label.Piece{label.Wrap}}
			doc, found := env.Proof(b, c)
			if doc == nil {
				t.Fatalf("no proof: %s", errorsIn(found))
			}
			says := proofText(doc)
			for _, content := range b.Contents {
				frames := framesOf(doc, content)
				for _, l := range inspect.Lines(frames, content, env.Faces) {
					for _, want := range []string{l.Block.Text(), b.Set.Words[content.Lang].Cite(l.Block.Cite), heightText(content.Lang, l.Block.Min.On, l.Got)} {
						if want == "" || !strings.Contains(says, noBlanks(want)) {
							t.Errorf("%s: the proof lacks %q", l.Block.ID, want)
						}
					}
					if !l.Printed || l.Short() > 0 {
						t.Errorf("%s: printed %v, short by %v", l.Block.ID, l.Printed, l.Short())
					}
				}
			}
		})
	}
}

// framesOf are the labels of one content among those of a proof: its net
// contents stand on them, or the rest of its facts do.
func framesOf(d *page.Doc, c *label.Content) (out []*page.Frame) {
	net, _ := c.Find(label.Net)
	for _, p := range d.Pages {
		for i, pl := range p.Places {
			text := ""
			for _, it := range pl.Frame.Items {
				if t, ok := it.(*page.Text); ok && t.Block == net.ID {
					text += t.String()
				}
			}
			if noBlanks(text) == noBlanks(net.Text()) || len(out) > 0 && i > 0 && text == "" {
				out = append(out, pl.Frame)
			}
		}
	}
	return out
}

// heightText is the height as a page says it, written here a second time.
func heightText(lang string, on label.Measure, h unit.Length) string {
	s := fmt.Sprintf("%.2f mm", h.MM())
	if on == label.PointSize {
		s = fmt.Sprintf("%.1f pt", h.Points())
	}
	if lang == "de" || lang == "fr" {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

// TestProofTellsWhatIsShort: the letters of one line made a tenth too low by
// hand get "short by" with the difference, and a line taken off is missing.
func TestProofTellsWhatIsShort(t *testing.T) {
	env := builtin(t)
	b := load(t, env, demoInput(t, demoBatches[0]), job.Choices{Place: "us-or"})
	d, _ := env.Designs.Get("orchard")
	cell := compose.Cell{W: 220 * unit.Millimetre, H: 46 * unit.Millimetre, Safe: 2 * unit.Millimetre}
	fr, found := compose.Label(b.Contents[0], d, label.Wrap, cell, env.Faces, compose.Options{})
	if found.HasErrors() {
		t.Fatal(errorsIn(found))
	}
	least := 1.5875 // 1/16 inch in mm (21 CFR 101.7(i), up to 5 square inches, and 101.2(c))
	var kept []page.Item
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok {
			if x.Block == "maker" {
				continue
			}
			if x.Block == "ingredients" {
				x.Size = x.Size * 9 / 10
			}
		}
		kept = append(kept, it)
	}
	fr.Items = kept
	p := proof.Proof{Name: "x", Lot: "L1", Place: "Oregon", Law: *b.Contents[0], American: true}
	var got float64
	for _, l := range inspect.Lines([]*page.Frame{fr}, b.Contents[0], env.Faces) {
		p.Lines = append(p.Lines, proof.Line{Line: l, Confidence: "memory", ReadOn: "2026-11-26"})
		if l.Block.ID == "ingredients" {
			got = l.Got.MM()
		}
	}
	doc, _ := proof.Doc([]proof.Proof{p}, env.Faces, "letter")
	says := proofText(doc)
	for _, want := range []string{fmt.Sprintf("short by %.2f mm", least-got), "missing", "3 of 5 meet", "from memory, not verified, Nov 26, 2026"} {
		if !strings.Contains(says, noBlanks(want)) {
			t.Errorf("the proof does not say %q: %s", want, says)
		}
	}
}
