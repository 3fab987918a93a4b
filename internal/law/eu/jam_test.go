package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Directive 2001/113/EC Annex II permits juice and peel of citrus in jam of
// other fruit (from memory, unverified): two lemons make no lemon jam.
func TestALemonIsNoFruitOfRhubarbJam(t *testing.T) {
	for _, c := range []struct {
		lemons float64
		want   string
	}{{168, "Rhubarb and ginger jam"}, {700, "Rhubarb, lemon and ginger jam"}} {
		r := cooked(batch.Jam, "Rhubarb and ginger jam", 3250, 66, fruitIn("rhubarb", "rhubarb", 2000, "general"), fruitIn("lemon", "lemons", c.lemons, "general"),
			in{key: "sugar_white", name: "sugar", g: 2000, kind: "sweetener"}, in{key: "ginger_fresh", name: "ginger", g: 50, kind: "spice", class: "ginger"})
		e := tester(t, "ie", "en", unit.Date{Year: 2026, Month: 11, Day: 25}, r, cylinder(68, 60, 250))
		e.identity()
		if b := e.C.Blocks[0]; b.Text() != c.want {
			t.Errorf("%v g of lemons: %q, want %q", c.lemons, b.Text(), c.want)
		}
	}
}

// Worked J1 to J4. Minima: Directive 2001/113/EC Annex I (legislation.gov.uk,
// read) and its 2026 amendment (general class: Irish food authority; currant
// class from memory, unverified). Weighting: Italian transposition Art 2(3).
func TestJamMinima(t *testing.T) {
	two := []share{{Class: "currant", Mass: 600}, {Class: "general", Mass: 400}}
	one := []share{{Class: "general", Mass: 1000}}
	tests := []struct {
		name, set string
		on        unit.Date
		fruit     []share
		want      [2]int // jam, extra jam
	}{
		{"J1 gb", "gb", after, one, [2]int{350, 450}},
		{"J1 eu before", "eu", before, one, [2]int{350, 450}},
		{"J1 eu from", "eu", after, one, [2]int{450, 500}},
		{"J2 gb", "gb", after, two, [2]int{290, 390}},
		{"J2 eu new", "eu", after, two, [2]int{390, 470}},
		{"no fruit", "eu", after, nil, [2]int{450, 500}},
		{"other class", "gb", after, []share{{Class: "ginger", Mass: 1}}, [2]int{150, 250}},
		{"unknown class", "gb", after, []share{{Class: "moon", Mass: 1}}, [2]int{350, 450}},
	}
	for _, c := range tests {
		e := tester(t, c.set, "en", c.on, batchA1(62), cook.JarPlan{})
		for i, id := range []string{"jam", "extra-jam"} {
			p := row(t, e.Set.Products, id)
			if got, memory := leastFruit(p, c.fruit, c.on); got != c.want[i] || memory {
				t.Errorf("%s, %s: %d, want %d", c.name, id, got, c.want[i])
			}
		}
	}
}

func TestJ1Passes(t *testing.T) {
	for _, set := range []string{"eu", "gb"} {
		for _, name := range []string{"Strawberry jam", "Strawberry extra jam"} {
			r := batchA1(62)
			r.Batch.Name = name
			e := tester(t, set, "en", after, r, cylinder(68, 60, 340))
			e.declare()
			if e.L.HasErrors() || textOf(e, label.Identity) != name {
				t.Errorf("%s %s: %q %s", set, name, textOf(e, label.Identity), codes(e.L))
			}
			if got := textOf(e, label.Fruit); got != "prepared with 62 g of fruit per 100 g" {
				t.Errorf("fruit %q", got)
			}
		}
	}
}

// J3: 400 g/kg is jam in Great Britain, not in the EU from 14 June 2026. The
// sugar statement stands in GB and, until that day, in the EU (Art 2(4)).
func TestJ3(t *testing.T) {
	r := cooked(batch.Jam, "Strawberry jam", 1000, 62, fruitIn("strawberry", "strawberries", 400, "general"), in{key: "sugar_white", name: "sugar", g: 650})
	tests := []struct {
		set   string
		on    unit.Date
		ok    bool
		sugar string
	}{
		{"gb", after, true, "total sugar content: 62 g per 100 g"}, // the colon: SI 2003/3120 reg 5(2)(c)
		{"eu", before, true, "total sugar content 62 g per 100 g"},
		{"eu", after, false, ""},
	}
	for _, c := range tests {
		e := tester(t, c.set, "en", c.on, r, cylinder(68, 60, 340))
		e.declare()
		if ok := !strings.Contains(codes(e.L), "error:too-little-fruit"); ok != c.ok || textOf(e, label.Sugar) != c.sugar {
			t.Errorf("%s %v: ok %v sugar %q: %s", c.set, c.on, ok, textOf(e, label.Sugar), codes(e.L))
		}
	}
}

// J4: water of the extract is deducted (Directive 2001/113/EC Annex I, jelly).
func TestJ4(t *testing.T) {
	x := fruitIn("", "redcurrant extract", 900, "general")
	x.parts = []pantry.Part{{Name: "redcurrant juice", Percent: 500.0 / 9}, {Name: "water", Percent: 400.0 / 9}}
	r := cooked(batch.Jelly, "Redcurrant jelly", 1000, 62, x)
	e := tester(t, "gb", "en", after, r, cook.JarPlan{})
	if got := perKilo(e.fruits, r.Yield.Mass); got != 500 {
		t.Errorf("%d g/kg, want 500", got)
	}
}

// Total sugar is measured, never computed (Art 2(4)): without a reading goods
// for sale stop, a gift is only noted.
func TestSugarIsMeasured(t *testing.T) {
	for _, gift := range []bool{false, true} {
		r := batchA1(0)
		r.Brix = cook.Reading{Value: 64, How: cook.Estimated}
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		e.O.Gift = gift
		e.declare()
		want := "error:brix-not-measured"
		if gift {
			want = "note:brix-not-measured"
		}
		if !strings.Contains(codes(e.L), want) || textOf(e, label.Sugar) != "" {
			t.Errorf("gift %v: %s", gift, codes(e.L))
		}
	}
}

// Art 2(1), (2): product and fruit, heaviest first; three fruits or more may
// be "mixed fruit"; marmalade is citrus, and "citrus marmalade" or the fruit's
// name in the EU from 14 June 2026 (Irish food authority).
func TestNames(t *testing.T) {
	sb, rh, ap := fruitIn("strawberry", "strawberries", 900, "general"), fruitIn("rhubarb", "rhubarb", 600, "general"), fruitIn("apple", "apples", 300, "general")
	orange := fruitIn("orange_whole", "oranges", 1800, "general")
	tests := []struct {
		lang, given string
		kind        batch.ProductType
		list        []in
		want        string
	}{
		{"en", "Strawberry & rhubarb jam", batch.Jam, []in{rh, sb}, "Strawberry & rhubarb jam"},
		{"en", "Rhubarb & strawberry jam", batch.Jam, []in{sb, rh}, "Strawberry and rhubarb jam"},
		{"en", "Strawberry preserve", batch.Preserve, []in{sb}, "Strawberry jam"},
		{"en", "Summer's end", batch.Jam, []in{sb, rh, ap}, "Strawberry, rhubarb and apple jam"},
		{"en", "Mixed fruit jam", batch.Jam, []in{sb, rh, ap}, "Mixed fruit jam"},
		{"en", "Marmalade", batch.Marmalade, []in{orange}, "Orange marmalade"},
		{"en", "Orange marmalade", batch.Marmalade, []in{orange}, "Orange marmalade"},
		{"de", "Erdbeer-Rhabarber-Konfitüre", batch.Jam, []in{sb, rh}, "Erdbeer-Rhabarber-Konfitüre"},
		{"de", "Strawberry jam", batch.Jam, []in{sb}, "Erdbeerkonfitüre"},
		{"fr", "Été", batch.Jam, []in{sb, ap}, "Confiture de fraises et de pommes"},
		{"fr", "x", batch.Jam, []in{fruitIn("apricot", "apricots", 1, "general")}, "Confiture d’abricots"},
	}
	for _, c := range tests {
		e := tester(t, "eu", c.lang, after, cooked(c.kind, c.given, 1800, 62, c.list...), cook.JarPlan{})
		e.identity()
		if got := textOf(e, label.Identity); got != c.want {
			t.Errorf("%q: %q, want %q", c.given, got, c.want)
		}
	}
}

func TestJudgements(t *testing.T) {
	sb, ap := fruitIn("strawberry", "strawberries", 600, "general"), fruitIn("apple", "apples", 300, "general")
	tests := []struct {
		name, set, given string
		kind             batch.ProductType
		brix             float64
		list             []in
		want             string // a finding there must be
	}{
		{"apple may not be mixed in extra jam (Annex I)", "gb", "Strawberry and apple extra jam", batch.Jam, 62, []in{sb, ap}, "error:extra-mixture"},
		{"marmalade of strawberries (Annex I)", "gb", "Marmalade", batch.Marmalade, 62, []in{sb}, "error:fruit-not-allowed"},
		{"citrus below 200 g (Annex I)", "gb", "Orange marmalade", batch.Marmalade, 62, []in{fruitIn("orange", "oranges", 199, "general")}, "error:too-little-fruit"},
		{"solids below 60 % (NI SR 2018/78)", "eu", "Strawberry jam", batch.Jam, 59.9, []in{sb}, "error:solids-too-low"},
		{"between 50 and 60 neither name fits in England", "gb", "Reduced sugar strawberry jam", batch.Jam, 55, []in{sb}, "error:solids-too-low"},
		{"jam in a chutney's name", "gb", "Tomato jam", batch.Chutney, 62, []in{sb}, "warning:reserved-name"},
		{"curd below 65 % (SI 2003/3120)", "gb", "Lemon curd", batch.Curd, 40, []in{{name: "butter", g: 9, allergen: "milk"}}, "error:solids-too-low"},
		{"nothing counts as fruit", "eu", "Jam", batch.Jam, 62, []in{{name: "sugar", g: 9}}, "warning:no-fruit"},
	}
	for _, c := range tests {
		e := tester(t, c.set, "en", after, cooked(c.kind, c.given, 1000, c.brix, c.list...), cylinder(68, 60, 340))
		e.declare()
		if !strings.Contains(codes(e.L), c.want) {
			t.Errorf("%s: %s", c.name, codes(e.L))
		}
	}
	// England: reduced sugar jam of 25 to 50 % (leaflet on SI 2003/3120).
	e := tester(t, "gb", "en", after, cooked(batch.Jam, "Reduced sugar strawberry jam", 1000, 45, sb), cylinder(68, 60, 340))
	e.declare()
	if strings.Contains(codes(e.L), "solids-too-low") {
		t.Error(codes(e.L))
	}
}

// Sale modes: a pack for direct sale needs the name and the list (FSA); a
// prepacked one date, lot and address too. Lot: Directive 2011/91/EU Art 3.
func TestSaleModes(t *testing.T) {
	for _, ppds := range []bool{false, true} {
		e := tester(t, "gb", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.ppds = ppds
		e.declare()
		for _, b := range e.C.Blocks {
			needed := map[label.Kind]bool{label.Identity: true, label.Ingredients: true, label.Net: true, label.Fruit: true, label.Sugar: true}
			if want := needed[b.Kind] || !ppds; b.Required != want {
				t.Errorf("ppds %v: %s required %v", ppds, b.Kind, b.Required)
			}
		}
		if textOf(e, label.Lot) != "L TL-1125" {
			t.Errorf("lot %q", textOf(e, label.Lot))
		}
	}
	r := batchA1(62)
	r.Kitchen.Address = nil
	e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
	e.declare()
	if !strings.Contains(codes(e.L), "error:no-address") {
		t.Error(codes(e.L))
	}
}

// National law: in Germany "Marmelade" may stand for Konfitüre from 14 June
// 2026 (KonfV s. 3(2), BGBl. 2025 I Nr. 289) with more than 55 % solids; in
// France 55 % do (Décret 85-872 art. 4).
func TestNational(t *testing.T) {
	r := func(name string, brix float64) *cook.Result {
		return cooked(batch.Jam, name, 1000, brix, fruitIn("strawberry", "strawberries", 600, "general"))
	}
	names := []struct {
		set   string
		on    unit.Date
		given string
		want  string
	}{
		{"de", after, "Erdbeermarmelade", "Erdbeermarmelade"},
		{"de", before, "Erdbeermarmelade", "Erdbeerkonfitüre"},
		{"eu", after, "Erdbeermarmelade", "Erdbeerkonfitüre"},
		{"de", after, "Erdbeermarmelade extra", "Erdbeermarmelade extra"},
	}
	for _, c := range names {
		e := tester(t, c.set, "de", c.on, r(c.given, 62), cook.JarPlan{})
		e.identity()
		if got := textOf(e, label.Identity); got != c.want {
			t.Errorf("%s %v %q: %q, want %q", c.set, c.on, c.given, got, c.want)
		}
	}
	for _, c := range []struct {
		set, lang string
		brix      float64
		ok        bool
	}{{"de", "de", 55, false}, {"de", "de", 55.1, true}, {"fr", "fr", 55, true}, {"fr", "fr", 54.9, false}, {"eu", "fr", 59, false}} {
		e := tester(t, c.set, c.lang, after, r("x", c.brix), cook.JarPlan{})
		e.identity()
		if ok := !strings.Contains(codes(e.L), "solids-too-low"); ok != c.ok {
			t.Errorf("%s %g %%: %s", c.set, c.brix, codes(e.L))
		}
	}
}

func row(t *testing.T, rows []place.Product, id string) place.Product {
	t.Helper()
	for _, p := range rows {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("no product %s", id)
	return place.Product{}
}
