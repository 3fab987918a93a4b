package job_test

import (
	"fmt"
	"regexp"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// A front label that is alone on its jar bears every statement; where that leaves
// the name smaller than the net quantity, the maker is told of the pair of front
// and back, and only there (our own taste).
func TestCrowdedFrontsAreTold(t *testing.T) {
	env := builtin(t)
	b := load(t, env, demoInput(t, demoBatches[0]), job.Choices{})
	net, _ := b.Contents[0].Find(label.Net)
	told := map[bool]int{}
	for high := 36; high <= 108; high += 6 {
		runs, found := env.Labels(b, job.Choices{Pieces: []label.Piece{label.Front}, Design: "broadside", Sheet: "letter-plain", Size: fmt.Sprintf("90 x %d mm", high)})
		got, partial := false, false
		for _, d := range found {
			got = got || d.Code == "front-crowded"
			partial = partial || d.Code == "front-not-all"
		}
		if len(runs) != 1 || partial {
			continue // it does not bear all
		}
		var name, quantity unit.Length
		for _, it := range runs[0].Doc.Pages[0].Places[0].Frame.Items {
			x, ok := it.(*page.Text)
			switch {
			case !ok:
			case x.Block == net.ID:
				quantity = max(quantity, x.Size)
			case x.Block == "" || x.Block == "identity":
				name = max(name, x.Size)
			}
		}
		if got != (name < quantity) {
			t.Errorf("%d mm: name %.1f pt, net quantity %.1f pt, told %v", high, name.Points(), quantity.Points(), got)
		}
		told[got]++
	}
	if told[true] == 0 || told[false] == 0 {
		t.Errorf("nothing is tried: %v", told)
	}
}

// Oregon wants its sentence beside the name: on a small front the name cannot lead
// the net quantity then. The maker is told what has the room, of the paper in the
// printer, and it has.
func TestCrowdedNamesAreToldWhatHasRoom(t *testing.T) {
	env := builtin(t)
	b := load(t, env, demoInput(t, demoBatches[0]), job.Choices{Place: "us-or"})
	told := map[string]int{}
	for _, design := range env.Designs.IDs() {
		for _, sheet := range []string{"letter-3x4-2x2in", "a4-3x6-63.5x46"} {
			c := job.Choices{Pieces: []label.Piece{label.Front, label.InfoLabel}, Design: design, Sheet: sheet}
			crowded := func() (hint string, told bool) {
				_, found := env.Labels(b, c)
				for _, d := range found {
					if d.Code == "name-crowded" || d.Code == "sign-left-out" {
						hint, told = d.Hint, true
					}
				}
				return hint, told
			}
			hint, small := crowded()
			if !small {
				continue
			}
			named := regexp.MustCompile(`; --(sheet|kind) (\S+) has it$`).FindStringSubmatch(hint)
			if named == nil {
				told["nothing"]++
				c.Pieces, c.Sheet = []label.Piece{label.Wrap}, ""
				if _, small = crowded(); !small {
					t.Errorf("%s %s: a wrap has the room, told %q", design, sheet, hint)
				}
				continue
			}
			if told[named[1]]++; named[1] == "kind" {
				c.Pieces, c.Sheet = []label.Piece{label.Wrap}, ""
			} else if c.Sheet = named[2]; c.Sheet[:2] != sheet[:2] {
				t.Errorf("%s %s: %s is not of the paper in the printer", design, sheet, c.Sheet)
			}
			if hint, small = crowded(); small {
				t.Errorf("%s: %v has no room either: %s", design, named[0], hint)
			}
		}
	}
	if told["kind"] == 0 || told["sheet"] == 0 {
		t.Errorf("not tried: %v", told)
	}
}
