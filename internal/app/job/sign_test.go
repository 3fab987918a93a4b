package job_test

import (
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// signs are the words states prescribe for a sign at the point of sale, letter
// for letter as templates/places/quotes has them, with the clause: Minn. Stat.
// 28A.152 subd. 1 (primary), Wis. Stat. 97.29(2)(b)2 and N.D.C.C. 23-09.5-02(8);
// AS 17.20.332(d) asks facts, which the words of its label say.
var signs = map[string]string{
	"us-mn": "These products are homemade and not subject to state inspection.",
	"us-wi": "These canned goods are homemade and not subject to state inspection.",
	"us-nd": "This product is made in a home kitchen that is not inspected by the state or local health department.",
	"us-il": "This product was produced in a home kitchen not inspected by a health department that may also process common food allergens.",
	"us-ak": "This food was made in a home kitchen, is not regulated or inspected, except for meat and meat products, and may contain allergens.",
	"us-id": "This product is not subject to government food safety inspection or licensing requirements. It may contain allergens.",
}

// TestSigns: the sign fills one sheet of the maker's paper, says the prescribed
// words letter for letter and larger than all else but the name, and
// names what Idaho asks beside them: ingredients and maker. Where a sign is
// smaller than its least height, or lacks the words, the inspection says so.
func TestSigns(t *testing.T) {
	env := builtin(t)
	for place, words := range signs {
		for _, batch := range []job.Input{sinkInput(place), demoInput(t, demoBatches[0])} {
			b := env.Load(batch, job.Choices{Place: place})
			runs, found := env.Labels(b, job.Choices{Place: place, Pieces: []label.Piece{label.Sign}, Copies: 1})
			if len(runs) == 0 {
				t.Fatalf("%s: %s", place, errorsIn(found))
			}
			fr := runs[0].Doc.Pages[0].Places[0].Frame
			said, size := "", unit.Length(0)
			for _, it := range fr.Items {
				if x, ok := it.(*page.Text); ok && x.Block == "sign" {
					said, size = said+" "+x.String(), x.Size
				}
			}
			if noBlanks(said) != noBlanks(words) {
				t.Errorf("%s: the sign says %q", place, said)
			}
			if size < unit.Points(24) { // read from across a stall; common practice, no source
				t.Errorf("%s %s: the words are set in %.1f pt", place, b.Notes.Name, size.Points())
			}
			for _, id := range []string{"ingredients", "maker"} {
				if !bears(fr, id) {
					t.Errorf("%s: the sign lacks the %s", place, id)
				}
			}
			checkBroken(t, env, fr, b.Contents[0])
		}
	}
}

func bears(fr *page.Frame, block string) bool {
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok && x.Block == block {
			return true
		}
	}
	return false
}

// checkBroken breaks a sign two ways and asks the inspection.
func checkBroken(t *testing.T, env *job.Env, fr *page.Frame, c *label.Content) {
	t.Helper()
	codes := func(f *page.Frame) (out []string) {
		for _, d := range inspect.Frame(f, c, env.Faces, inspect.Default()) {
			out = append(out, d.Code)
		}
		return out
	}
	if got := codes(fr); len(got) > 0 {
		t.Errorf("the sign as set: %v", got)
	}
	less, small := *fr, *fr
	less.Items, small.Items = nil, nil
	for _, it := range fr.Items {
		x, ok := it.(*page.Text)
		if !ok || x.Block != "sign" {
			less.Items, small.Items = append(less.Items, it), append(small.Items, it)
			continue
		}
		tiny := *x
		tiny.Size = unit.Points(2)
		small.Items = append(small.Items, &tiny)
	}
	if got := strings.Join(codes(&less), " "); !strings.Contains(got, "missing-block") {
		t.Errorf("without its words: %s", got)
	}
	if got := strings.Join(codes(&small), " "); !strings.Contains(got, "too-small") {
		t.Errorf("in tiny letters: %s", got)
	}
}
