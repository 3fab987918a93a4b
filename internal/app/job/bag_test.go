package job_test

import (
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/law/label"
)

// TestBagCardSaysAll: a card over a bag is read in place of the jar in it, so it bears
// every required statement: what must stand on a label "also appears on the outside
// container or wrapper, if any there be, of the retail package of such article, or is
// easily legible through" it (21 U.S.C. 321(k), read 27 Nov 2026); Regulation (EU)
// 1169/2011, Article 12(2). One for each sealed jar, in every design, read back by
// PDFium; and the proof page measures it.
func TestBagCardSaysAll(t *testing.T) {
	env := builtin(t)
	for _, place := range []string{"us-or", "us-mi", "gb", "de", "fr"} {
		in := demoInput(t, demoBatches[0])
		for _, d := range env.Designs.List() {
			c := job.Choices{Place: place, Design: d.ID, Pieces: []label.Piece{label.BagCard}}
			b := load(t, env, in, c)
			f, doc := printed(t, env, b, c)
			first, n := doc.Pages[0].Places[0], 0
			for _, p := range doc.Pages {
				n += len(p.Places)
			}
			if first.Frame.Piece != "bag" || n != b.Cooked.Jars[0].Sealed {
				t.Errorf("%s %s: %d labels called %q", place, d.ID, n, first.Frame.Piece)
			}
			for _, block := range b.Contents[0].Blocks {
				if block.Required && block.Kind != label.Identity && block.Kind != label.SignWords {
					got, want := readBlock(t, f, first, block.ID), presstest.Squeeze(block.Text())
					if got != want && (block.Exact || !strings.EqualFold(got, want)) {
						t.Errorf("%s %s: %s: the card says %q, not %q", place, d.ID, block.ID, got, block.Text())
					}
				}
			}
		}
		c := job.Choices{Place: place, Pieces: []label.Piece{label.BagCard}}
		files, found, err := env.ProofFiles([]job.Input{in}, c, "pdf")
		if err != nil || found.HasErrors() || len(files) == 0 {
			t.Errorf("%s: no proof: %v %v", place, found, err)
		}
	}
}

// TestBagCardFindsItsSheet: a card for a bag goes onto a sheet made for it where it is
// asked for, by any of its names in the batch file.
func TestBagCardFindsItsSheet(t *testing.T) {
	env := builtin(t)
	for _, kind := range []string{"bag", "bag card", "bag label"} {
		in := demoInput(t, demoBatches[0])
		in.Batch.Data = []byte(strings.Replace(string(in.Batch.Data), "[label]\n", "[label]\nkind = \""+kind+"\"\nsheet = \"letter-bag-4x2.5in-2x2\"\n", 1))
		b := load(t, env, in, job.Choices{})
		_, doc := printed(t, env, b, job.Choices{})
		if p := doc.Pages[0]; p.Places[0].Frame.Piece != "bag" || len(p.Places) != 4 {
			t.Errorf("%s: %d labels called %q on a page", kind, len(p.Places), p.Places[0].Frame.Piece)
		}
	}
}

// TestBagCardSaysAllBesideOthers: also where an information label is printed with it.
func TestBagCardSaysAllBesideOthers(t *testing.T) {
	env := builtin(t)
	c := job.Choices{Pieces: []label.Piece{label.InfoLabel, label.BagCard}, Copies: 1}
	runs, found := env.Labels(load(t, env, demoInput(t, demoBatches[0]), c), c)
	if found.HasErrors() {
		t.Fatal(found)
	}
	seen := 0
	for _, r := range runs {
		for _, pl := range r.Doc.Pages[0].Places {
			if pl.Frame.Piece != "bag" {
				continue
			}
			seen++
			for _, id := range []string{"ingredients", "maker", "net"} {
				if lineOf(t, pl.Frame, id) == nil {
					t.Errorf("the card lacks the %s", id)
				}
			}
		}
	}
	if seen != 1 {
		t.Errorf("%d cards", seen)
	}
}
