package job

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

const potOfPlums = `# our own invention
name = "Plum jam"
kind = "jam"
made = 2026-09-05
lot = "A1"
[[ingredient]]
name = "plums"       # from the barn
amount = "2 kg"
lot = "field 3"
[[ingredient]]
name = "sugar"
amount = "8 cups"
[[ingredient]]
name = "lemon juice"
amount = "juice of 2 lemons"
[[ingredient]]
name = "liquid pectin"
amount = "1 (3 oz) pouch"
[cook]
minutes = 20
brix = 66
ph = 3.3
[process]
method = "boiling water"
minutes = 10
[[fill]]
jar = "8 fl oz"
count = 12
sealed = 12
net = ["9.6 oz"]
declared = "9 oz"
price = "9.00"
[[gift]]
to = "Ida"
jars = 1
`

// A scaled recipe is a batch file of its own: every amount times one factor, the
// jars to fill, and nothing that was measured on the old pot. What the maker
// wrote beside stays.
func TestScaledRecipeIsANewBatch(t *testing.T) {
	e, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	in := Input{Kitchen: Doc{"kitchen.toml", []byte(sampleKitchen)}, Batch: Doc{"plum.toml", []byte(potOfPlums)}}
	old := e.Load(in, Choices{})
	s, l := e.Scale(old, "24 x 8 fl oz, 6 x 4 fl oz")
	if s == nil || l.HasErrors() {
		t.Fatal(l)
	}
	day := unit.Date{Year: 2026, Month: 11, Day: 1}
	data, l := e.ScaledBatch(old, "24 x 8 fl oz, 6 x 4 fl oz", day)
	if l.HasErrors() {
		t.Fatal(l)
	}
	text := string(data)
	in.Batch = Doc{"more.toml", data}
	b := e.Load(in, Choices{Today: day})
	if b.Cooked == nil || b.Findings.HasErrors() || b.Notes.Made != day || b.Cooked.Lot == "A1" || len(b.Notes.Gifts) > 0 || b.Notes.Cook.Brix != nil || b.Notes.Cook.PH != nil {
		t.Fatalf("%v\n%s", b.Findings, text)
	}
	for i, line := range b.Cooked.Lines {
		was := old.Cooked.Lines[i]
		if got := line.Mass.Grams() / was.Mass.Grams(); line.Name != was.Name || math.Abs(got/s.Factor-1) > 0.01 {
			t.Errorf("%s: %.3f times, want %.3f", line.Name, got, s.Factor)
		}
	}
	if !strings.Contains(text, "# from the barn") || !strings.Contains(text, "minutes = 20") || strings.Contains(text, "field 3") || strings.Contains(text, "declared") {
		t.Errorf("kept too little or too much:\n%s", text)
	}
	if len(b.Cooked.Jars) != 2 || b.Cooked.Jars[0].Jar.Key != "us8" || b.Cooked.Jars[1].Jar.Key != "us4" || !b.Cooked.Jars[0].Planned() {
		t.Errorf("%+v", b.Cooked.Jars)
	}
	// the old pot was measured and the new one is a plan, so jars to expect are
	// the wanted ones within the width of an estimate
	if j := b.Cooked.Jars[0]; j.Count < 18 || j.Count > 30 {
		t.Errorf("%d half-pints to expect, 24 wanted", j.Count)
	}
}
