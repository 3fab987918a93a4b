package job_test

import (
	"bytes"
	"encoding/json"
	"html"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/law/label"
)

// dates is the best-before date of the batch below as each place writes it on
// the label, on the record's page and on a list (common practice, no source;
// the month in letters, or the year last, so that no one swaps day and month).
var dates = map[string]struct{ label, record, list string }{
	"us-or": {"Jun 14, 2027", "June 14, 2027", "Jun 14, 2027"},
	"gb":    {"14 06 2027", "14 June 2027", "2027-06-14"},
	"de":    {"14.06.2027", "14. Juni 2027", "14.06.2027"},
	"fr":    {"14/06/2027", "14 juin 2027", "14/06/2027"},
}

// TestOneFactOneValue: name, identity, allergens, net contents, date and
// keeping are the same on the label, the record's page, the stall's cards, in
// the code, on the packing list and in check --json.
func TestOneFactOneValue(t *testing.T) {
	env := builtin(t)
	nuts := "\n[[ingredient]]\nname = \"almonds\"\namount = \"60 g\"\n"
	for place, on := range dates {
		for what, more := range map[string]string{"plain": "", "with almonds": nuts} {
			t.Run(place+" "+what, func(t *testing.T) {
				in := demoInput(t, demoBatches[0])
				in.Kitchen.Data = bytes.Replace(in.Kitchen.Data, []byte("record_url"), []byte("# record_url"), 1) // the code bears words
				in.Batch.Data = append(bytes.Clone(in.Batch.Data), more...)
				b := env.Load(in, job.Choices{Place: place})
				out := sayings(t, env, b, place)
				f := factsOf(t, out["facts"])
				if (len(f.Allergens) > 0) != (more != "") {
					t.Fatalf("allergens %v", f.Allergens)
				}
				must := func(where string, facts ...string) {
					for _, want := range facts {
						if !strings.Contains(noBlanks(out[where]), noBlanks(want)) {
							t.Errorf("%s: no %q in %q", where, want, out[where])
						}
					}
				}
				if f.BestBefore != "2027-06-14" {
					t.Errorf("best before %s", f.BestBefore)
				}
				must("label", f.Identity, f.IngredText, f.AllergText, f.Net, f.Lot, on.label, f.Storage.Sealed)
				must("record", f.Identity, after(f.IngredText), f.Net, f.Lot, on.record, `datetime="`+f.BestBefore+`"`, f.Storage.Sealed)
				must("shelf card", f.Net)
				must("code", f.Name, f.Lot, on.label)
				must("packing list", f.Name, f.Lot, on.list)
				for _, a := range append(f.Allergens, after(f.AllergText)) {
					for _, where := range []string{"label", "record", "shelf card", "allergen card"} {
						if !strings.Contains(strings.ToLower(noBlanks(out[where])), strings.ToLower(noBlanks(a))) {
							t.Errorf("%s: no %q in %q", where, a, out[where])
						}
					}
				}
			})
		}
	}
}

// after is a statement without its heading: "Contains: Almonds" says almonds.
func after(s string) string {
	if _, rest, ok := strings.Cut(s, ":"); ok {
		return strings.TrimRight(strings.TrimSpace(rest), ".")
	}
	return s
}

// sayings are the words of every output of a batch, each read off the output
// itself.
func sayings(t *testing.T, env *job.Env, b *job.Batch, place string) map[string]string {
	t.Helper()
	c := job.Choices{Place: place}
	out := map[string]string{"code": b.Contents[0].QR.Payload}
	files, found, err := env.Make(b, c)
	if err != nil || len(files) == 0 {
		t.Fatal(err, errorsIn(append(b.Findings, found...)))
	}
	tag := regexp.MustCompile(`<[^>]*>`)
	for _, f := range files {
		switch {
		case f.Name == "facts.json":
			out["facts"] = string(f.Data)
		case f.Name == "packing-list.txt":
			out["packing list"] = string(f.Data)
		case strings.HasSuffix(f.Name, ".html"):
			out["record"] = html.UnescapeString(tag.ReplaceAllString(string(f.Data), " ")) + string(f.Data)
		}
	}
	for where, p := range map[string]label.Piece{"label": label.Wrap, "shelf card": label.ShelfCard, "allergen card": label.AllergCard} {
		c.Pieces, c.Copies = []label.Piece{p}, 1
		runs, found := env.Labels(b, c)
		if len(runs) == 0 {
			t.Fatal(errorsIn(found))
		}
		for _, it := range runs[0].Doc.Pages[0].Places[0].Frame.Items {
			if x, ok := it.(*page.Text); ok {
				out[where] += x.String() + " "
			}
		}
	}
	return out
}

func factsOf(t *testing.T, data string) (f job.Facts) {
	t.Helper()
	if err := json.Unmarshal([]byte(data), &f); err != nil {
		t.Fatal(err)
	}
	return f
}
