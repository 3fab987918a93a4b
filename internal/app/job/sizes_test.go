package job

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/press"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// twoSizes is a batch of our own with two jar sizes on two label sheets.
const twoSizes = `name = "Damson jam"
kind = "jam"
made = 2026-09-05
[[ingredient]]
name = "damsons"
amount = "3 kg"
[[ingredient]]
name = "sugar"
amount = "3 kg"
[process]
method = "boiling water"
minutes = 10
[[fill]]
jar = "8 fl oz"
count = 9
sealed = 8
declared = "9 oz"
net = ["9.6 oz", "9.7 oz"]
[[fill]]
jar = "4 fl oz"
count = 12
sealed = 12
declared = "4.5 oz"
net = ["4.8 oz", "4.8 oz"]
sheet = "%s"
`

func runsOf(t *testing.T, sheet string, c Choices) ([]press.Run, diag.List) {
	t.Helper()
	e, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	in := Input{Kitchen: Doc{"kitchen.toml", []byte(sampleKitchen)}, Batch: Doc{"damson.toml", fmt.Appendf(nil, twoSizes, sheet)}}
	return e.runs([]Input{in}, c)
}

// A jar size goes on the sheet its [[fill]] names, the others on the batch's;
// --jar prints one size alone.
func TestSheetOfASize(t *testing.T) {
	lid := []label.Piece{label.Wrap}
	runs, found := runsOf(t, "letter-full", Choices{Pieces: lid})
	if found.HasErrors() || len(runs) != 2 || runs[0].Sheet.ID == "letter-full" || runs[1].Sheet.ID != "letter-full" || runs[0].Labels != 8 || runs[1].Labels != 12 {
		t.Fatalf("%+v %v", runs, found)
	}
	if runs, found = runsOf(t, "letter-full", Choices{Pieces: lid, Jar: "half-pint"}); found.HasErrors() || len(runs) != 1 || runs[0].Labels != 8 {
		t.Errorf("one size: %+v %v", runs, found)
	}
	if _, found = runsOf(t, "letter-fulll", Choices{Pieces: lid}); !hasCode(found.Errors(), "unknown-sheet") || found.Errors()[0].Path != "fill[1].sheet" || found.Errors()[0].Pos.Line == 0 {
		t.Errorf("a sheet nobody knows: %v", found.Errors())
	}
	if _, found = runsOf(t, "letter-full", Choices{Pieces: lid, Jar: "quart"}); !hasCode(found.Errors(), "no-such-jar") || !strings.Contains(found.Errors()[0].Hint, "4 fl oz") {
		t.Errorf("a size that is not there: %v", found.Errors())
	}
}

// A sheet made for fronts takes the front labels of its size, whichever kind the
// batch prints else; those of the other size go where they go without it.
func TestSheetOfASizeForOtherKinds(t *testing.T) {
	front := []label.Piece{label.Front}
	plain, _ := runsOf(t, "", Choices{Pieces: front, Jar: "4 fl oz"})
	runs, found := runsOf(t, "letter-3x4-2x2in", Choices{Pieces: front, Jar: "4 fl oz"})
	if found.HasErrors() || len(runs) != 1 || runs[0].Sheet.ID != "letter-3x4-2x2in" || len(plain) != 1 || plain[0].Sheet.ID == runs[0].Sheet.ID {
		t.Fatalf("%+v %v", runs, found)
	}
	if runs, _ = runsOf(t, "letter-3x4-2x2in", Choices{Pieces: front, Jar: "8 fl oz"}); len(runs) != 1 || runs[0].Sheet.ID == "letter-3x4-2x2in" {
		t.Errorf("the other size: %+v", runs)
	}
	if runs, _ = runsOf(t, "letter-3x4-2x2in", Choices{Pieces: []label.Piece{label.Lid}, Jar: "4 fl oz"}); len(runs) != 1 || runs[0].Sheet.ID == "letter-3x4-2x2in" {
		t.Errorf("lids do not go on it: %+v", runs)
	}
}

// Chosen numbers are printed alone, as jars of the whole count.
func TestChosenNumbers(t *testing.T) {
	runs, found := runsOf(t, "", Choices{Pieces: []label.Piece{label.Wrap}, Jar: "8 fl oz", Numbers: []int{2, 7}})
	if found.HasErrors() || len(runs) != 1 || runs[0].Labels != 2 {
		t.Fatalf("%+v %v", runs, found)
	}
	said := ""
	for _, pl := range runs[0].Doc.Pages[0].Places {
		f := *pl.Frame
		f.Items = pl.Overlay
		said += words(&f)
	}
	if !strings.Contains(said, "2 / 8") || !strings.Contains(said, "7 / 8") || strings.Contains(said, "3 / 8") {
		t.Errorf("printed %q", said)
	}
	if _, found = runsOf(t, "", Choices{Pieces: []label.Piece{label.Wrap}, Jar: "8 fl oz", Numbers: []int{9}}); !hasCode(found.Errors(), "no-such-number") {
		t.Errorf("number 9 of 8: %v", found)
	}
}
