package cook

import (
	"os"
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Each finding stands on the line that caused it: testdata/findings.toml names
// them behind "# want".
func TestFindingsStandOnTheirLine(t *testing.T) {
	data, err := os.ReadFile("testdata/findings.toml")
	if err != nil {
		t.Fatal(err)
	}
	b, l := batch.Parse("findings.toml", data, nil)
	if b == nil || len(l) > 0 {
		t.Fatalf("the file itself: %v", l)
	}
	_, l = Compute(b, nil, pantry.Default())
	got := map[int][]string{}
	for _, d := range b.File.Locate(l) {
		if d.Code == "yield-estimated" || d.Code == "reduced-sugar" || d.Code == "pectin-brix" {
			continue // about the [cook] table as a whole
		}
		got[d.Pos.Line] = append(got[d.Pos.Line], d.Code)
	}
	for i, line := range strings.Split(string(data), "\n") {
		_, want, _ := strings.Cut(line, "# want ")
		if found := strings.Join(got[i+1], " "); found != strings.TrimSpace(want) {
			t.Errorf("line %d: found %q, want %q: %s", i+1, found, want, line)
		}
	}
}

// The demo of the project is a good kitchen: no errors or warnings about its
// food, and a year on the shelf.
func TestDemo(t *testing.T) {
	const dir = "../../../testdata/demo/"
	kitchen, err := os.ReadFile(dir + "kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	k, _ := batch.ParseKitchen("kitchen.toml", kitchen, nil)
	files, _ := os.ReadDir(dir)
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".toml") || f.Name() == "kitchen.toml" {
			continue
		}
		data, _ := os.ReadFile(dir + f.Name())
		b, _ := batch.Parse(f.Name(), data, k)
		r, l := Compute(b, k, pantry.Default().With(k.Ingredients, k.Jars))
		for _, d := range l {
			if d.Severity > 0 {
				t.Errorf("%s: %s: %s", f.Name(), d.Path, d.Message)
			}
		}
		if r.Keeping.Class != Shelf || r.MainFruit == "" || r.Lot == "" || r.Count() == 0 {
			t.Errorf("%s: %s, %q, %q, %d jars", f.Name(), r.Keeping.Class, r.MainFruit, r.Lot, r.Count())
		}
	}
}
