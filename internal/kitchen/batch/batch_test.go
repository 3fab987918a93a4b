package batch

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
)

var wantForm = regexp.MustCompile(`# want ((?:"(?:[^"\\]|\\.)*" ?)+)$`)

var quotedForm = regexp.MustCompile(`"((?:[^"\\]|\\.)*)"`)

// wants reads the "# want" comments of a fixture by line.
func wants(t *testing.T, text string) map[int][]*regexp.Regexp {
	out := map[int][]*regexp.Regexp{}
	for n, line := range strings.Split(text, "\n") {
		m := wantForm.FindStringSubmatch(line)
		if m == nil {
			if strings.Contains(line, "# want") {
				t.Errorf("line %d: unreadable want: %s", n+1, line)
			}
			continue
		}
		for _, q := range quotedForm.FindAllStringSubmatch(m[1], -1) {
			out[n+1] = append(out[n+1], regexp.MustCompile(strings.ReplaceAll(q[1], `\"`, `"`)))
		}
	}
	return out
}

func TestFixtures(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/batch/*.toml")
	if err != nil || len(files) < 8 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			var l diag.List
			if strings.HasPrefix(filepath.Base(file), "kitchen") {
				_, l = ParseKitchen(file, data, find)
			} else {
				_, l = Parse(file, data, nil)
			}
			compare(t, wants(t, string(data)), l)
		})
	}
}

func compare(t *testing.T, want map[int][]*regexp.Regexp, l diag.List) {
	t.Helper()
	for _, d := range l {
		if d.Hint == "" || d.Code == "" || d.Pos.Line == 0 || d.Pos.Column == 0 {
			t.Errorf("poor finding %+v", d)
		}
		met := false
		for i, re := range want[d.Pos.Line] {
			if re.MatchString(d.Message + "; " + d.Hint) {
				want[d.Pos.Line] = append(want[d.Pos.Line][:i:i], want[d.Pos.Line][i+1:]...)
				met = true
				break
			}
		}
		if !met {
			t.Errorf("line %d: unexpected: %s; %s", d.Pos.Line, d.Message, d.Hint)
		}
	}
	for line, res := range want {
		for _, re := range res {
			t.Errorf("line %d: no finding matches %q", line, re)
		}
	}
}

func read(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("../../../testdata/batch/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestGoodBatch(t *testing.T) {
	b, l := Parse("good.toml", read(t, "good.toml"), nil)
	if len(l) > 0 {
		t.Fatal(l)
	}
	if b.Product != Jam || b.Made != (unit.Date{Year: 2026, Month: 6, Day: 14}) || b.Lot != "L26165-SR" || b.UseBy || b.BestBefore.Year != 2027 {
		t.Errorf("%+v", b)
	}
	in := b.Ingredients
	if in[0].Amount.Mass != 1800*unit.Gram || in[0].Cost.Minor != 950 || in[0].Solids != -1 || in[0].Form != "crushed" {
		t.Errorf("%+v", in[0])
	}
	if in[1].Solids != 90.4 || in[1].Contains[2].USAllergen != "milk" || in[1].Path != "ingredient[1]" || !in[2].Skip || in[2].Contains[1].Name != "cinnamon" || in[2].Amount.Count != 1 {
		t.Errorf("%+v", in[1:])
	}
	if b.Cook.FinishedPot != 3100*unit.Gram || b.Cook.Method != "added pectin" || b.Cook.SetTest != "cold plate" || *b.Cook.Brix != 65.5 {
		t.Errorf("%+v", b.Cook)
	}
	if b.Process.Method != "boiling water" || !b.Process.AltitudeOK || b.Process.Altitude != 305*unit.Foot || b.Process.Headspace != unit.Inch/4 {
		t.Errorf("%+v", b.Process)
	}
	f := b.Fills
	if f[0].Count != 12 || f[0].Sealed != 11 || len(f[0].Net) != 2 || f[0].Declared.Mass != 10*unit.Ounce || f[0].Price.Minor != 900 {
		t.Errorf("%+v", f[0])
	}
	if f[1].Sealed != -1 || f[1].Net[0] != unit.Ounce*52/10 || f[1].Net[1] != unit.Ounce*51/10 {
		t.Errorf("%+v", f[1])
	}
	if b.Gifts[0].Message != "With love,\nand toast" || b.Markets[0].CameHome != 2 || b.Markets[0].Price.Minor != 900 || !b.Label.Serials {
		t.Errorf("%+v %+v %+v", b.Gifts, b.Markets, b.Label)
	}
}

func TestGoodKitchen(t *testing.T) {
	k, l := ParseKitchen("kitchen.toml", read(t, "kitchen-good.toml"), nil)
	if len(l) > 0 {
		t.Fatal(l)
	}
	if k.Place.ID != "us-or" || k.RecordURL != "https://thornfield.example/jam" || k.Currency != "USD" || k.Permit != "12345" || k.Altitude != 300*unit.Foot {
		t.Errorf("%+v", k)
	}
	j := k.Jars[0]
	if j.Brimful != 262*unit.Millilitre || j.Panel != 47_625_000 || j.TareMass != 190*unit.Gram || j.NamedBy != "brimful" {
		t.Errorf("%+v", j)
	}
	if g := k.Ingredients[0]; g.SugarsG != -1 || g.SolubleG != 62.5 || g.CupG != 300 || g.EUAllergen != "milk" || !g.Own {
		t.Errorf("%+v", g)
	}
	if k.Printer.OffsetX != -400_000 || k.Printer.ScaleX != 1.002 || k.Printer.ScaleY != 1 || k.Supplies.Lids["70-450 CT"] != 24 || k.Supplies.Ribbon != 10*3*unit.Foot {
		t.Errorf("%+v %+v", k.Printer, k.Supplies)
	}
	b, _ := Parse("b.toml", []byte("name='x'\n"), k)
	if b.Process.Altitude != 300*unit.Foot || !b.Process.AltitudeOK {
		t.Error("the kitchen's altitude must hold for its batches")
	}
}

func TestKitchenDefaults(t *testing.T) {
	for _, c := range []struct{ text, currency, units string }{
		{"", "USD", "us"}, {`place = "us-or"`, "USD", "us"}, {`place = "eu"`, "EUR", "metric"}, {`place = "gb"`, "GBP", "metric"},
	} {
		k, l := ParseKitchen("kitchen.toml", []byte(c.text), find)
		if len(l) > 0 || k.Currency != c.currency || k.Units != c.units || k.SaleMode != "prepacked" || k.Printer.ScaleX != 1 || k.Supplies.Tags != -1 {
			t.Errorf("%q: %+v %v", c.text, k, l)
		}
	}
	if k, l := ParseKitchen("kitchen.toml", []byte("x = ["), nil); k == nil || !l.HasErrors() {
		t.Error("a broken kitchen file gives defaults and an error")
	}
}

// The built-in demo must read without an error or a warning.
func TestDemo(t *testing.T) {
	data, err := os.ReadFile("../../../testdata/demo/kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	k, l := ParseKitchen("kitchen.toml", data, nil)
	files, _ := filepath.Glob("../../../testdata/demo/*-*.toml")
	if len(l) > 0 || len(files) != 3 {
		t.Fatal(l, files)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if b, l := Parse(file, data, k); len(l) > 0 || !strings.Contains(string(data), "invented") || b.Product == "" {
			t.Error(file, l)
		}
	}
}

func TestMissing(t *testing.T) {
	_, l := Parse("b.toml", []byte("notes = 'nothing yet'\n"), nil)
	var codes []string
	for _, d := range l {
		codes = append(codes, d.Code)
		if d.Severity != diag.Error || d.Pos.Line != 1 {
			t.Errorf("%+v", d)
		}
	}
	if got := strings.Join(codes, " "); got != "missing-name missing-made missing-kind no-ingredients" {
		t.Error(got)
	}
	if _, l := Parse("b.toml", nil, nil); l.Count(diag.Error) != 4 {
		t.Errorf("an empty file: %v", l)
	}
}

func TestSyntaxErrorGivesNoBatch(t *testing.T) {
	if b, l := Parse("b.toml", []byte("name = plum"), nil); b != nil || len(l) != 1 || l[0].Pos.Column != 8 {
		t.Error(b, l)
	}
}

func TestExactColumns(t *testing.T) {
	_, l := Parse("b.toml", read(t, "bad-jars.toml"), nil)
	for _, d := range l {
		if strings.Contains(d.Message, `"10.4" has no unit`) && (d.Pos != diag.Pos{Line: 13, Column: 19, EndColumn: 25}) {
			t.Errorf("%+v", d.Pos)
		}
	}
}

func TestImperialPintIsNotTakenForTheUSOne(t *testing.T) {
	text := []byte("[[ingredient]]\nname='cream'\namount='1 pint'\n[[ingredient]]\nname='water'\namount='2 tbsp'\n")
	for imperial, want := range map[bool]int{true: 1, false: 0} {
		_, l := Parse("b.toml", text, &Kitchen{Place: place.Place{Imperial: imperial}})
		if l.Count(diag.Warning) != want {
			t.Errorf("imperial %v: %v", imperial, l)
		}
	}
}

// find knows a few places, as the sets of rules would give them.
func find(id string) (place.Place, string, bool) {
	rows := map[string][2]string{"us": {"USD", "us"}, "us-or": {"USD", "us"}, "eu": {"EUR", "metric"}, "gb": {"GBP", "metric"}}
	row, ok := rows[id]
	if !ok {
		return place.Place{}, "did you mean gb?", false
	}
	return place.Place{ID: id, Currency: row[0], Units: row[1]}, "", true
}

// A place there are no rules for, and keys that say nothing, are told; none
// passes for another.
func TestKitchenPlaceAndBlanks(t *testing.T) {
	for _, c := range []struct{ text, code, path, place, currency, units string }{
		{"place = 'gb'", "", "", "gb", "GBP", "metric"},
		{"", "", "", "us", "USD", "us"},
		{"place = 'gb'\ncurrency = 'EUR'\nunits = 'us'", "", "", "gb", "EUR", "us"},
		{"place = 'oregon'", "unknown-place", "place", "", "USD", "us"},
		{"place = ''", "blank-value", "place", "", "USD", "us"},
		{"place = ' '", "blank-value", "place", "", "USD", "us"},
		{"place = 'gb'\nunits = ''", "blank-value", "units", "gb", "GBP", "metric"},
		{"currency = ' '", "blank-value", "currency", "us", "USD", "us"},
		{"altitude = ''", "blank-value", "altitude", "us", "USD", "us"},
	} {
		k, l := ParseKitchen("kitchen.toml", []byte("name = 'x'\n"+c.text+"\n"), find)
		if c.code == "" && len(l) > 0 || c.code != "" && (len(l) != 1 || l[0].Code != c.code || l[0].Path != c.path || l[0].Severity != diag.Error || l[0].Hint == "") {
			t.Errorf("%q: %v", c.text, l)
		}
		if c.place != "" && k.Place.ID != c.place || k.PlaceUnknown != (c.place == "") || k.Currency != c.currency || k.Units != c.units {
			t.Errorf("%q: %+v %s %s", c.text, k.Place, k.Currency, k.Units)
		}
	}
}

func manyIngredients(n int, amount string) []byte {
	return []byte("name='x'\nkind='jam'\nmade=2026-06-14\n" + strings.Repeat("[[ingredient]]\nname='plums'\namount='"+amount+"'\n", n))
}

// 100 000 ingredients are read whole; findings stop at a number one can read.
func TestManyIngredients(t *testing.T) {
	many := 100_000
	if testing.Short() {
		many = 10_000
	}
	b, l := Parse("b.toml", manyIngredients(many, "1 g"), nil)
	if b == nil || len(b.Ingredients) != many || len(l) > 0 {
		t.Fatal(len(l))
	}
	if _, l = Parse("b.toml", manyIngredients(2_000, "1 gq"), nil); len(l) != 501 || l[500].Code != "more-findings" {
		t.Fatal(len(l))
	}
}

// BenchmarkMany shows that eight times the ingredients take about eight times
// as long, with and without findings.
func BenchmarkMany(b *testing.B) {
	for _, amount := range []string{"1 g", "1 gq"} {
		for _, n := range []int{2_000, 16_000} {
			data := manyIngredients(n, amount)
			b.Run(fmt.Sprintf("%s/%d", amount, n), func(b *testing.B) {
				for b.Loop() {
					Parse("b.toml", data, nil)
				}
			})
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, name := range []string{"good.toml", "bad-keys.toml", "bad-jars.toml", "kitchen-good.toml"} {
		data, err := os.ReadFile("../../../testdata/batch/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(data))
	}
	f.Fuzz(func(t *testing.T, text string) {
		k, _ := ParseKitchen("kitchen.toml", []byte(text), nil)
		_, l := Parse("b.toml", []byte(text), k)
		for _, d := range l {
			if d.Pos.Line < 1 || d.Hint == "" || d.Message == "" {
				t.Fatalf("%q: poor finding %+v", text, d)
			}
		}
	})
}

// TestSmallAmounts: the four thresholds of 21 CFR 101.4(a)(2), no other.
func TestSmallAmounts(t *testing.T) {
	for text, want := range map[string]float64{"2": 2, "1.5": 1.5, "1": 1, "0.5": 0.5, "3": 0, "-1": 0} {
		k, l := ParseKitchen("kitchen.toml", []byte("name = 'x'\nsmall_amounts = "+text+"\n"), nil)
		if k.SmallAmounts != want || l.HasErrors() != (want == 0) {
			t.Errorf("%s: %v, %v", text, k.SmallAmounts, l)
		}
	}
}
