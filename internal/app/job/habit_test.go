package job

import (
	"strings"
	"testing"
)

const planned = `name = "Plum jam"
kind = "jam"
made = 2026-08-01
[[ingredient]]
name = "plums"
amount = "2 kg"
[[ingredient]]
name = "sugar"
amount = "1.5 kg"
[cook]
method = "long boil"
`

// The weighed pots of a folder move the range of a planned batch of the same
// kitchen, are shown, and can be switched off; another kitchen's do not count.
func TestHabitOfAFolder(t *testing.T) {
	e, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	const kitchen = "name = \"Own invention\"\nplace = \"us\"\n"
	in := func(name, text, kitchen, file string) Input {
		return Input{Kitchen: Doc{file, []byte(kitchen)}, Batch: Doc{name, []byte(text)}}
	}
	plan := func(k string, past ...Input) Facts {
		b, _ := e.LoadAll([]Input{in("plan.toml", planned, k, "kitchen.toml")}, Choices{Past: past})
		return b[0].Facts()
	}
	plain := plan(kitchen)
	if plain.YieldLow <= 0 || (plain.YieldHigh-plain.YieldLow)/(plain.YieldHigh+plain.YieldLow) > 0.125 || plain.YieldCoverage != 67 || plain.OwnPots != 0 || plain.Jars[0].Low >= plain.Jars[0].High {
		t.Fatalf("%+v", plain)
	}
	weighed := func(name, pot, file string) Input {
		return in(name, planned+"finished_pot = \""+pot+"\"\n", kitchen, file)
	}
	own := []Input{weighed("a.toml", "3.1 kg", "kitchen.toml"), weighed("b.toml", "3.15 kg", "kitchen.toml")}
	moved := plan(kitchen, own...)
	if moved.OwnPots != 2 || moved.YieldLow <= plain.YieldLow || moved.YieldG != plain.YieldG {
		t.Errorf("not moved: %+v", moved)
	}
	b, _ := e.LoadAll(append([]Input{in("plan.toml", planned, kitchen, "kitchen.toml")}, own...), Choices{})
	said := ""
	for _, r := range b[0].Summary() {
		said += r.Name + ": " + r.Text + "\n"
	}
	if !strings.Contains(said, "your 2 weighed pots come out") || !strings.Contains(said, "lids ready") {
		t.Errorf("not shown:\n%s", said)
	}
	if off := plan(kitchen+"own_yields = false\n", own...); off.OwnPots != 0 || off.YieldLow != plain.YieldLow {
		t.Errorf("not switched off: %+v", off)
	}
	if other := plan(kitchen, weighed("a.toml", "3.1 kg", "other/kitchen.toml"), weighed("b.toml", "3.15 kg", "other/kitchen.toml")); other.OwnPots != 0 {
		t.Errorf("another kitchen's pots count: %+v", other)
	}
	mixed, _ := e.LoadAll([]Input{in("plan.toml", planned, kitchen, "kitchen.toml"), in("off/plan.toml", planned, kitchen+"own_yields = false\n", "off/kitchen.toml")},
		Choices{Past: append(own, weighed("off/a.toml", "3.1 kg", "off/kitchen.toml"), weighed("off/b.toml", "3.15 kg", "off/kitchen.toml"))})
	if mixed[0].Cooked.Range.Own.Pots != 2 || mixed[1].Cooked.Range.Own.Pots != 0 {
		t.Errorf("one kitchen wants it, the other not: %+v %+v", mixed[0].Cooked.Range, mixed[1].Cooked.Range)
	}
	if f := b[1].Facts(); f.YieldLow != f.YieldG || f.YieldHigh != f.YieldG || f.YieldCoverage != 0 {
		t.Errorf("a weighed pot has a range: %+v", f)
	}
}
