package batch

import (
	"reflect"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// fileOf is one of the two files a maker writes: a text of it with one key in
// it, and how it is read.
type fileOf struct {
	keys   func() []source.Key
	top    string
	tables map[string]string
	read   func(string) (any, diag.List)
}

var files = map[string]fileOf{
	"batch": {Keys, "name = \"Sample\"\nkind = \"jam\"\nmade = 2026-09-05\n",
		map[string]string{"ingredient": "name = \"plums\"\namount = \"1 kg\"\n", "fill": "jar = \"us8\"\n", "gift": "to = \"Ida\"\njars = 1\n", "market": "event = \"Fair\"\n", "photo": "file = \"a.jpg\"\n"},
		func(text string) (any, diag.List) {
			b, l := Parse("b.toml", []byte(text), nil)
			if b != nil {
				b.File = nil
			}
			return b, l
		}},
	"kitchen": {KitchenKeys, "name = \"Sample\"\nplace = \"us\"\n",
		map[string]string{"jar": "key = \"my\"\nbrimful = \"300 ml\"\n", "ingredient": "name = \"x\"\n", "picture": "file = \"a.png\"\n"},
		func(text string) (any, diag.List) {
			k, l := ParseKitchen("kitchen.toml", []byte(text), find)
			k.File = nil
			return k, l
		}},
}

// sampleBeside are keys that an example needs beside it to make sense.
var sampleBeside = map[string]string{
	"cook.pot_tare":    "finished_pot = \"5.2 kg\"\n",
	"fill.sealed":      "count = 10\n",
	"fill.net":         "count = 10\n",
	"fill.tare":        "count = 10\ngross = [\"17.1 oz\"]\n",
	"fill.gross":       "tare = \"6.8 oz\"\n",
	"market.came_home": "jars = 6\n",
}

func pathOf(k source.Key) string { return strings.TrimPrefix(k.Table+"."+k.Key, ".") }

// with is a text of the file in which the key has a value; without it when the
// value is empty.
func (f fileOf) with(k source.Key, value string) string {
	line := ""
	if value != "" {
		line = k.Key + " = " + value + "\n"
	}
	switch {
	case k.Table == "contains":
		line = "{ " + strings.TrimSpace(line) + " }"
		if k.Key != "name" {
			line = strings.ReplaceAll(`{ name = "x", `+line[2:], ",  }", " }")
		}
		text := f.top + "[[ingredient]]\nname = \"y\"\n" + "contains = [" + line + "]\n"
		if strings.Contains(f.top, "kind") {
			text += "amount = \"1 kg\"\n"
		}
		return text
	case k.Table != "":
		head := "[" + k.Table + "]\n"
		if k.Many {
			head = "[" + head[:len(head)-1] + "]\n"
		}
		return f.top + head + without(f.tables[k.Table], k.Key) + sampleBeside[pathOf(k)] + line
	}
	return without(f.top, k.Key) + line
}

// without takes the line of a key out of a text.
func without(text, key string) string {
	var out []string
	for _, l := range strings.SplitAfter(text, "\n") {
		if !strings.HasPrefix(l, key+" ") {
			out = append(out, l)
		}
	}
	return strings.Join(out, "")
}

func eachKey(t *testing.T, do func(t *testing.T, f fileOf, file string, k source.Key)) {
	for file, f := range files {
		for _, k := range f.keys() {
			t.Run(file+"/"+pathOf(k), func(t *testing.T) { do(t, f, file, k) })
		}
	}
}

// Examples that say what holds anyway, and a value that does not.
var another = map[string]string{"show_address": "true", "own_yields": "false", "units": `"metric"`, "currency": `"CAD"`, "place": `"gb"`, "printer.scale_y": "0.99", "jar.named_by": `"fill"`}

// Every key the readers know is explained; its example reads without a finding
// about it; and what it says arrives in the value that is read.
func TestEveryKeyIsExplainedAndRead(t *testing.T) {
	if n := len(Keys()) + len(KitchenKeys()); n < 120 {
		t.Errorf("only %d keys", n)
	}
	eachKey(t, func(t *testing.T, f fileOf, file string, k source.Key) {
		name := pathOf(k)
		if k.What == "" || k.Example == "" {
			t.Fatal("not explained")
		}
		got, l := f.read(f.with(k, k.Example))
		for _, d := range l {
			if d.Code == "unknown-key" || d.Path == name || strings.HasSuffix(d.Path, "."+k.Key) {
				t.Errorf("the example %s: %v", k.Example, d)
			}
		}
		if v := another[name]; v != "" {
			got, _ = f.read(f.with(k, v))
		}
		if none, _ := f.read(f.with(k, "")); reflect.DeepEqual(got, none) {
			t.Errorf("%s changes nothing in what is read", k.Example)
		}
	})
}

// reach is the least and the most a number may be, and what lies beyond; the
// limits are ours, but pH and percent.
var (
	percent = [4]string{"0", "100", "-0.1", "100.1"}
	pieces9 = [4]string{"0", "100000", "-1", "100001"}
	size    = [4]string{`"5 mm"`, `"1 m"`, `"4.9 mm"`, `"1001 mm"`}
	head    = [4]string{`"1 mm"`, `"2 in"`, `"0.9 mm"`, `"2.1 in"`}
	height  = [4]string{`"-1500 ft"`, `"30000 ft"`, `"-1501 ft"`, `"30001 ft"`}
	minutes = [4]string{"0", "1440", "-1", "1441"}
	shift   = [4]string{`"-25 mm"`, `"25 mm"`, `"-25.1 mm"`, `"25.1 mm"`}
	stretch = [4]string{"0.9", "1.1", "0.89", "1.11"}
	day     = [4]string{"1990-01-01", "2100-12-31", "1989-12-31", "2101-01-01"}
	few     = [4]string{`["1 g"]`, `["100 kg"]`, `["-1 g"]`, `["100001 g"]`}
)

var reaches = map[string][4]string{
	"batch/made": day, "batch/best_before": {"2026-09-05", "2100-12-31", "1989-12-31", "2101-01-01"}, "batch/use_by": {"2026-09-05", "2100-12-31", "1989-12-31", "2101-01-01"},
	"batch/hours": {"0", "1000", "-1", "1001"}, "batch/ingredient.solids": percent, "batch/contains.percent": percent, "kitchen/contains.percent": percent,
	"batch/cook.minutes": minutes, "batch/cook.brix": {"1", "100", "0.9", "100.1"}, "batch/cook.ph": {"0", "14", "-0.1", "14.1"}, "batch/cook.ph_date": day,
	"batch/process.minutes": minutes, "batch/process.altitude": height, "batch/process.headspace": head,
	"batch/fill.count": pieces9, "batch/fill.sealed": {"0", "10", "-1", "100001"}, "batch/fill.share": {"0", "1000", "-1", "1001"}, "batch/fill.headspace": head, "batch/fill.net": few,
	"batch/fill.declared": {`"1 g"`, `"100 kg"`, `"-1 g"`, `"100001 g"`},
	"batch/gift.jars":     pieces9, "batch/market.jars": pieces9, "batch/market.came_home": {"0", "6", "-1", "7"}, "batch/market.date": {"2026-09-05", "2100-12-31", "1989-12-31", "2101-01-01"},
	"kitchen/altitude": height, "kitchen/small_amounts": {"0.5", "2", "0.4", "2.1"},
	"kitchen/jar.mouth": size, "kitchen/jar.height": size, "kitchen/jar.diameter": size, "kitchen/jar.circumference": size, "kitchen/jar.panel": size, "kitchen/jar.face": size, "kitchen/jar.foot": size,
	"kitchen/ingredient.water": percent, "kitchen/ingredient.solids": percent, "kitchen/ingredient.insoluble_solids": percent, "kitchen/ingredient.sugars": percent,
	"kitchen/picture.size":     {`"3 mm"`, `"200 mm"`, `"2.9 mm"`, `"201 mm"`},
	"kitchen/printer.offset_x": shift, "kitchen/printer.offset_y": shift, "kitchen/printer.scale_x": stretch, "kitchen/printer.scale_y": stretch,
	"kitchen/supplies.tags": pieces9, "kitchen/supplies.boxes": pieces9, "kitchen/supplies.box_holds": pieces9, "kitchen/supplies.ribbon": {`"0 m"`, `"10000 m"`, `"-1 m"`, `"10001 m"`},
}

// unbounded are numbers with a unit that no limit of ours holds, or that a test
// of their own bounds.
var unbounded = map[string]bool{"batch/fill.gross": true, "batch/fill.tare": true, "kitchen/supplies.lids": true, "kitchen/supplies.jars": true, "kitchen/supplies.labels": true, "kitchen/supplies.part_sheets": true}

// Each number from both sides of both limits. What lies beyond is one error at
// its key, and leaves what is read as if nothing had been written.
func TestEveryNumberAtItsLimits(t *testing.T) {
	measured := map[string]bool{"date": true, "length": true, "%": true, "°Brix": true, "pH": true, "minutes": true, "hours": true, "jars": true, "count": true, "parts": true, "m or ft": true, "g in 100 g": true}
	eachKey(t, func(t *testing.T, f fileOf, file string, k source.Key) {
		r, ok := reaches[file+"/"+pathOf(k)]
		if !ok {
			if measured[k.Unit] && !unbounded[file+"/"+pathOf(k)] {
				t.Error("a number without limits here")
			}
			return
		}
		about := func(l diag.List) (out []string) {
			for _, d := range l {
				if d.Severity == diag.Error && (d.Path == k.Key || strings.Contains(d.Path, "."+k.Key)) {
					out = append(out, d.Code)
				}
			}
			return out
		}
		none, _ := f.read(f.with(k, ""))
		for i, v := range r {
			got, l := f.read(f.with(k, v))
			if codes := about(l); len(codes) != i/2 {
				t.Errorf("%s: %v", v, l)
			}
			if i >= 2 && !reflect.DeepEqual(got, none) {
				t.Errorf("%s is told and passes:\n%+v\n%+v", v, got, none)
			}
		}
	})
}

// Several lines are for what is told at length; a name stands on one.
func TestWhichTextsHaveLines(t *testing.T) {
	many := map[string]bool{"story": true, "notes": true, "serve": true, "origin": true, "fruit_origin": true, "gift.message": true}
	own := map[string]bool{"place": true} // looked up as it is written
	eachKey(t, func(t *testing.T, f fileOf, file string, k source.Key) {
		if k.Unit != "" || !strings.HasPrefix(k.Example, `"`) || own[pathOf(k)] {
			return
		}
		got, l := f.read(f.with(k, `"a\nb"`))
		none, _ := f.read(f.with(k, ""))
		if told := strings.Contains(codes(l), "control-character"); told == many[pathOf(k)] || told != reflect.DeepEqual(got, none) {
			t.Errorf("%v %+v", l, got)
		}
	})
}

// Words and keys spelt otherwise say the same.
func TestOtherSpellings(t *testing.T) {
	for _, c := range []struct{ file, one, other string }{
		{"batch", "[process]\nsterilised = true", "[process]\nsterilized = true"},
		{"batch", "[label]\ncolours = [\"#123\"]", "[label]\ncolors = [\"#123\"]"},
		{"kitchen", "programme = \"exempt\"", "program = \"exempt\""},
		{"kitchen", "units = \"metric\"", "units = \"SI\""},
		{"kitchen", "currency = \"EUR\"", "currency = \"eur\""},
		{"batch", "[cook]\nmethod = \"added pectin\"", "[cook]\nmethod = \" Added-Pectin\""},
	} {
		f := files[c.file]
		one, l := f.read(f.top + c.one + "\n")
		other, m := f.read(f.top + c.other + "\n")
		none, _ := f.read(f.top)
		if !reflect.DeepEqual(one, other) || reflect.DeepEqual(one, none) || codes(l) != codes(m) {
			t.Errorf("%s, %s: %v %v", c.one, c.other, l, m)
		}
	}
}

// Money of the kitchen and of its batches is in its currency.
func TestMoneyIsInTheCurrencyOfTheKitchen(t *testing.T) {
	k, l := ParseKitchen("k.toml", []byte("place = \"eu\"\n[costs]\nlid = \"0.25\"\nlabel = \"0.08 EUR\"\njars = { us8 = \"0.90\" }\n"), find)
	if len(l) > 0 || k.Costs.Lid != (unit.Money{Minor: 25, Currency: "EUR"}) || k.Costs.Label.Minor != 8 || k.Costs.Jars["us8"] != (unit.Money{Minor: 90, Currency: "EUR"}) {
		t.Errorf("%+v %v", k.Costs, l)
	}
	for text, path := range map[string]string{"lid = \"0.25 GBP\"": "costs.lid", "jars = { us8 = \"0.90 GBP\" }": "costs.jars.us8", "jars = { us8 = \"dear\" }": "costs.jars.us8"} {
		k, l := ParseKitchen("k.toml", []byte("place = \"eu\"\n[costs]\n"+text+"\n"), find)
		if len(l) != 1 || l[0].Path != path || k.Costs.Lid.Currency != "" || len(k.Costs.Jars) > 0 {
			t.Errorf("%s: %+v %v", text, k.Costs, l)
		}
	}
	b, l := Parse("b.toml", []byte(plums+"[[fill]]\njar = \"us8\"\nprice = \"9\"\n"), k)
	if b.Fills[0].Price != (unit.Money{Minor: 900, Currency: "EUR"}) {
		t.Errorf("%+v %v", b.Fills[0], l)
	}
}

// An own ingredient that says little has no more: what is absent is unknown,
// and its figures are the maker's.
func TestOwnIngredientSaysNoMore(t *testing.T) {
	k, l := ParseKitchen("k.toml", []byte("[[ingredient]]\nname = \"green walnuts\"\nallergen = \"walnuts\"\n[[ingredient]]\nname = \"paste\"\nsource = \"weighed\"\nallergen = \"milk\"\neu_allergen = \"\"\n"), find)
	if len(l) > 0 || len(k.Ingredients) != 2 {
		t.Fatal(l)
	}
	w, p := k.Ingredients[0], k.Ingredients[1]
	if w.WaterG != -1 || w.SolubleG != -1 || w.OtherSolidsG != -1 || w.SugarsG != -1 || w.CupG != 0 || w.Source != "the maker's own" || w.EUAllergen != "walnuts" {
		t.Errorf("%+v", w)
	}
	if p.Source != "weighed" || p.USAllergen != "milk" || p.EUAllergen != "" {
		t.Errorf("%+v", p)
	}
}

// What is told of a stock leaves none of it; weights that cannot be read do not
// shift those beside them.
func TestUnreadableAmongReadable(t *testing.T) {
	k, l := ParseKitchen("k.toml", []byte("[supplies]\nlids = { a = 3, b = -1, c = 100001 }\n"), find)
	if len(l) != 2 || !reflect.DeepEqual(k.Supplies.Lids, map[string]int{"a": 3, "b": 0, "c": 0}) {
		t.Errorf("%v %v", k.Supplies, l)
	}
	b, l := Parse("b.toml", []byte(plums+"[[ingredient]]\nname = \"plums\"\namount = \"1 kg\"\n[[fill]]\njar = \"us8\"\ncount = 4\nnet = [\"9 oz\", \"much\"]\n"+
		"gross = [\"400 g\", \"410 g\", \"\", \"90 g\"]\ntare = [\"100 g\", \"x\", \"100 g\", \"100 g\"]\n"), nil)
	var at []string
	for _, d := range l {
		at = append(at, d.Code+" "+d.Path)
	}
	if got := strings.Join(at, ", "); got != "bad-weight fill[0].net[1], bad-weight fill[0].gross[2], tare-over-gross fill[0].gross[3], bad-weight fill[0].tare[1]" {
		t.Error(got)
	}
	if net := b.Fills[0].Net; !reflect.DeepEqual(net, []unit.Mass{9 * unit.Ounce, 300 * unit.Gram}) {
		t.Error(net)
	}
}
