package job

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// Lots become folders, and many a disk holds one folder for all letter cases.
func TestSameLots(t *testing.T) {
	env, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		lots string
		same int
	}{{"L1 L2", 0}, {"L1 L1", 1}, {"plum Plum PLUM", 2}, {"L-1 L1", 0}, {"L1 l1 L2 l2", 2}} {
		var in []Input
		for i, lot := range strings.Fields(c.lots) {
			in = append(in, Input{Batch: Doc{Name: string(rune('a'+i)) + ".toml", Data: []byte("name = \"Plum jam\"\nkind = \"jam\"\nmade = 2026-09-05\nlot = \"" +
				lot + "\"\n[[ingredient]]\nname = \"plums\"\namount = \"2 kg\"\n[[ingredient]]\nname = \"sugar\"\namount = \"1.6 kg\"\n")}})
		}
		_, across := env.LoadAll(in, Choices{Today: unit.Date{Year: 2026, Month: 10, Day: 1}})
		n := 0
		for _, d := range across {
			if d.Code == "duplicate-lot" && d.Pos.Line == 4 {
				n++
			}
		}
		if n != c.same {
			t.Errorf("%s: %d told, want %d: %v", c.lots, n, c.same, across)
		}
	}
}
