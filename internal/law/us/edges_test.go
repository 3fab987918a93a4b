package us

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// plainPass is a strawberry jam before any rule has spoken.
func plainPass(t *testing.T) *pass {
	t.Helper()
	return newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
}

// said gives what a rule said as "severity code path".
func said(l diag.List) (out []string) {
	for _, d := range l {
		out = append(out, fmt.Sprintf("%s %s %s", d.Severity, d.Code, d.Path))
	}
	return out
}

// NIST Handbook 133 ch. 2: the average must reach what is promised; a jar that
// holds just that is not short. The larger of the two figures is enforced: 10 oz
// is 283.495 g, and 283 g beside it promise less.
func TestPromiseFromBothSides(t *testing.T) {
	need := unit.Owed(10 * unit.Ounce)
	for _, x := range []struct {
		weighed []unit.Mass
		want    string
	}{
		{nil, "note net-not-checked fill[0]"},
		{[]unit.Mass{need}, ""},
		{[]unit.Mass{need - 1}, "error net-over-average fill[0]"},
		{[]unit.Mass{need - 1, need + 1}, "warning net-jars-short fill[0]"},
		{[]unit.Mass{need - 2, need + 1}, "error net-over-average fill[0]"},
	} {
		p := plainPass(t)
		p.Jar.Weighed = x.weighed
		p.unpromised(10 * unit.Ounce)
		if got := strings.Join(said(p.L), ", "); got != x.want {
			t.Errorf("%v: %q, want %q", x.weighed, got, x.want)
		}
	}
	p := plainPass(t)
	p.Jar.Weighed = []unit.Mass{280 * unit.Gram, 290 * unit.Gram, 270 * unit.Gram}
	p.unpromised(10 * unit.Ounce)
	if got := p.L[0].Message; !strings.Contains(got, "3 weighed jars average 280 g; short: jar 1 (280 g), jar 3 (270 g)") {
		t.Errorf("%q", got)
	}
}

// Of short jars six are named, and how many more there are.
func TestSomeOfMany(t *testing.T) {
	list := strings.Split("a b c d e f g h", " ")
	for n, want := range map[int]string{0: "", 1: "a", 6: "a, b, c, d, e, f", 7: "a, b, c, d, e, f and 1 more", 8: "a, b, c, d, e, f and 2 more"} {
		if got := some(list[:n]); got != want {
			t.Errorf("%d: %q", n, got)
		}
	}
}

// 21 CFR 101.7(j)(1): ounces with pounds beside them from one pound to below
// four; pounds alone are told there and nowhere else.
func TestPoundsAloneAreTold(t *testing.T) {
	for m, want := range map[unit.Mass]bool{unit.Pound - 1: false, unit.Pound: true, 4*unit.Pound - 1: true, 4 * unit.Pound: false} {
		p := plainPass(t)
		p.K.NetForm = "pounds"
		if p.netDual(m) || slices.Contains(said(p.L), "note net-form net_form") != want {
			t.Errorf("%v: %v", m, said(p.L))
		}
	}
	p := plainPass(t)
	set, table := *p.Set, *p.Set.Net
	table.Form, set.Net = "pounds", &table
	p.K.NetForm, p.Set = "dual", &set
	if !p.netDual(2 * unit.Pound) {
		t.Error("the maker's choice does not stand before the set's")
	}
}

// 101.7(f): the lower 30 % is waived up to 5 in²; (i): 1/16 in. up to 5 in²,
// 1/8 in. up to 25 in². A panel nobody measured counts as 25 in², and is told.
func TestPanelEdges(t *testing.T) {
	const in2 = 645.16
	for _, x := range []struct {
		in2    float64
		height unit.Length
		zone   label.Zone
		told   bool
	}{{0, unit.Inch / 8, label.Bottom, true}, {-1, unit.Inch / 8, label.Bottom, true}, {0.001, unit.Inch / 16, label.Panel, false}, {5, unit.Inch / 16, label.Panel, false}, {5.001, unit.Inch / 8, label.Bottom, false}, {25.001, unit.Inch * 3 / 16, label.Bottom, false}} {
		p := plainPass(t)
		p.C.PanelArea = x.in2 * in2
		h, zone := p.netHeight()
		if h != (label.Height{On: label.AnyCase, Length: x.height}) || zone != x.zone || slices.Contains(said(p.L), "warning jar-not-measured fill[0]") != x.told {
			t.Errorf("%v in²: %+v in zone %v, %v", x.in2, h, zone, said(p.L))
		}
	}
}

// 101.7(j)(1), (k): ounces alone below a pint, both below a gallon, the largest
// units alone from there. A volume is rounded down, a whole tenth is kept.
func TestFluidEdges(t *testing.T) {
	for n, want := range map[int64]string{1: "0.1 fl oz (2.95 mL)", 159: "15.9 fl oz (470 mL)", 160: "16 fl oz (1 pt) 473 mL", 165: "16.5 fl oz (1 pt 0.5 oz) 487 mL", 1279: "127.9 fl oz (3 qt 1 pt 15.9 oz) 3.78 L",
		1280: "1 gal (3.78 L)", 2560: "2 gal (7.57 L)", 1290: "1 gal 1 oz (3.81 L)"} {
		if got := fluidWords(unit.Volume(n) * unit.FluidOunce / 10); got != want {
			t.Errorf("%d tenths: %q, want %q", n, got, want)
		}
	}
	if got := fluidWords(8*unit.FluidOunce - 1); !strings.HasPrefix(got, "7.9 fl oz") {
		t.Errorf("rounded up: %q", got)
	}
	if got := wholeMeasures(0); got != "0 oz" {
		t.Errorf("%q", got)
	}
}

// A jar may be promised full to the brim and no more; the brim is unknown at nought.
func TestNetToTheBrim(t *testing.T) {
	brim := jar8(0).Jar.Brimful
	for _, x := range []struct {
		brim, v unit.Volume
		want    string
	}{{brim, brim, "note net-not-checked"}, {brim, brim + 1, "error net-over-jar"}, {0, brim, "note net-not-checked"}} {
		p := plainPass(t)
		p.Jar.Jar.Brimful, p.Jar.DeclVolume = x.brim, x.v
		p.netFluid(place.Product{})
		if got := said(p.L); len(got) == 0 || !strings.HasPrefix(got[0], x.want+" fill[0]") || p.NetVolume != x.v {
			t.Errorf("%v of %v: %v", x.v, x.brim, got)
		}
	}
}

// A state's limits bind at the figure: fruit of a natural pH "below" it, a
// finished pH "up to" it. A pH no meter read only warns.
func TestPHFromBothSides(t *testing.T) {
	high := func(p *pass) float64 { return p.R.Lines[0].Row.PHHigh }(plainPass(t))
	for limit, want := range map[float64]string{0: "", high + 0.01: "", high: "warning fruit-ph ingredient[0]", high - 0.01: "warning fruit-ph ingredient[0]"} {
		p := plainPass(t)
		p.fruitPH(&place.Programme{FruitPH: limit})
		if got := strings.Join(said(p.L), ", "); got != want {
			t.Errorf("fruit under %v: %q, want %q", limit, got, want)
		}
	}
	for _, x := range []struct {
		limit, ph float64
		measured  bool
		want      string
	}{{0, 9, true, ""}, {4.6, 4.6, true, ""}, {4.6, 4.61, true, "error finished-ph cook.ph"}, {4.6, 4.61, false, "warning finished-ph cook.ph"}, {0.5, 0.6, true, "error finished-ph cook.ph"}} {
		p := plainPass(t)
		p.R.PHHigh, p.R.PHMeasured = x.ph, x.measured
		p.finishedPH(&place.Programme{MaxPH: x.limit})
		if got := strings.Join(said(p.L), ", "); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

// The letters of the statement: a height before points, else the 1/16 in. of 21
// CFR 101.2(c) as for every required word.
func TestStatementLetters(t *testing.T) {
	p := plainPass(t)
	for _, x := range []struct {
		height, points float64
		want           label.Height
	}{{0, 0, p.letterO()}, {0, 1, label.Height{On: label.PointSize, Length: unit.Points(1)}}, {0, 10, label.Height{On: label.PointSize, Length: unit.Points(10)}}, {1, 10, label.Height{On: label.AnyCase, Length: 1}}} {
		var pr place.Programme
		setNumber(&pr.MinLetter, x.height)
		setNumber(&pr.MinPoints, x.points)
		if got := p.statementHeight(&pr); got != x.want {
			t.Errorf("%v, %v pt: %+v, want %+v", x.height, x.points, got, x.want)
		}
	}
}

func setNumber[T ~int | ~int64 | ~float64](to *T, v float64) { *to = T(v) }

// a×b < c×d holds beyond 64 bits; a number below nought counts as nought.
func TestLess(t *testing.T) {
	const big = math.MaxInt64
	for _, x := range []struct {
		a, b, c, d int64
		want       bool
	}{{2, 3, 6, 1, false}, {2, 3, 7, 1, true}, {2, 3, 5, 1, false}, {big, big, big, big, false}, {big, big - 1, big, big, true}, {big, big, big, big - 1, false}, {-5, -5, 0, 9, false}, {-5, 1, 1, 1, true}, {1, 1, -7, -7, false},
		{big, 3, big, 4, true}, {big, 4, big, 3, false}, {0, big, 0, big, false}, {big, 8, 1, 1, false}} {
		if got := less(x.a, x.b, x.c, x.d); got != x.want {
			t.Errorf("%d×%d < %d×%d: %v", x.a, x.b, x.c, x.d, got)
		}
	}
	for _, x := range []struct {
		part, whole int64
		want        string
	}{{1, 3, "33.3 %"}, {2, 3, "66.7 %"}, {1, 2000, "0.1 %"}, {0, 0, "0 %"}, {5, 5, "100 %"}} {
		if got := percent(x.part, x.whole); got != x.want {
			t.Errorf("%d of %d: %s", x.part, x.whole, got)
		}
	}
}

// 21 CFR 150.160(b)(2), (c): two to five fruits, each not less than one-fifth by
// weight, one-tenth for cranberry or pineapple and the like.
func TestFiveFruitsAndNotSix(t *testing.T) {
	all := []string{"strawberries", "red raspberries", "blackberries", "blueberries", "apricots", "cranberries"}
	for n, fails := range map[int]bool{2: false, 5: false, 6: true} {
		var list []part
		for _, f := range all[:n] {
			list = append(list, part{f, 1000})
		}
		p := newPass(pot(t, batch.Jam, "Mixed fruit jam", measured(66), append(list, part{"sugar", 5000})...), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		v := p.judge()
		told := slices.ContainsFunc(p.mixture(v), func(w shortfall) bool {
			return w.Path == "name" && w.Certain && strings.Contains(w.Text, "at most 5 fruits, this batch has 6")
		})
		if !v.OK || told != fails {
			t.Errorf("%d fruits: %v %+v", n, told, p.mixture(v))
		}
	}
}

// 150.160(d)(1): not less than 65 per cent; a reading nobody took condemns none.
func TestSolidsAtTheLimit(t *testing.T) {
	for _, x := range []struct {
		value     float64
		how       string
		want, all bool // certain, told at all
	}{{65, string(cook.Measured), false, false}, {64.9, string(cook.Measured), true, true}, {64.9, string(cook.Given), true, true}, {64.9, string(cook.Estimated), false, true}, {0, string(cook.Measured), false, false}, {0.5, string(cook.Measured), true, true}, {math.NaN(), string(cook.Measured), false, false}} {
		p := plainPass(t)
		v := p.judge()
		p.R.Brix.Value = x.value
		setWord(&p.R.Brix.How, x.how)
		why := p.solids(v)
		if (len(why) > 0) != x.all || x.all && (why[0].Certain != x.want || why[0].Path != "cook.brix") {
			t.Errorf("%v %s: %+v", x.value, x.how, why)
		}
	}
}

func setWord[T ~string](to *T, s string) { *to = T(s) }

// What each particular is fulfilled by, and by nothing else.
func TestParticularsAreFulfilled(t *testing.T) {
	give := map[string]func(*pass){
		"address": func(p *pass) { p.K.Address = []string{"14 Thornfield Lane"} },
		"permit":  func(p *pass) { p.K.Permit = "4711" },
		"phone":   func(p *pass) { p.K.Phone = "555 0114" },
		"email":   func(p *pass) { p.K.Email = "jam@thornfield.example" },
		"website": func(p *pass) { p.K.Website = "thornfield.example" },
		"county":  func(p *pass) { p.K.County = "Mill County" },
		"state":   func(p *pass) { p.K.StateWebsite = "example.gov/food" },
		"lot":     func(p *pass) { p.R.Lot = "L1" },
		"made":    func(p *pass) { p.B.Made = unit.Date{Year: 2026, Month: 6, Day: 14} },
	}
	by := map[string]string{"mailing_address": "address", "municipality": "address county", "municipality_or_county": "address county", "county_of_issue": "county", "state_website": "state",
		"contact": "phone email website address", "phone": "phone", "email": "email", "permit_number": "permit", "lot_number": "lot", "date_made": "made", "product_code_with_date_and_lot": "lot"}
	for token, fulfil := range by {
		x, ok := particularNamed(token)
		if !ok {
			t.Fatal(token)
		}
		for what, set := range give {
			p := plainPass(t)
			*p.K, p.R.Lot, p.B.Made = batch.Kitchen{}, "", unit.Date{}
			if x.OK(p) {
				t.Errorf("%s is fulfilled by nothing", token)
			}
			set(p)
			if want := draft.Has(strings.Fields(fulfil), what); x.OK(p) != want {
				t.Errorf("%s by %s: %v", token, what, x.OK(p))
			}
		}
	}
}

// 21 CFR 101.5: name and place of business; blank lines are none. A gift bears
// the name alone.
func TestMakerLines(t *testing.T) {
	for _, x := range []struct {
		name, corporate string
		address         []string
		gift            bool
		want, codes     string
	}{
		{" Thornfield ", "", []string{" 14 Lane ", "", "Millbrook, OR 97000"}, false, "Made by Thornfield, 14 Lane, Millbrook, OR 97000", ""},
		{"Thornfield", "Thornfield Inc.", []string{"14 Lane"}, false, "Made by Thornfield Inc., 14 Lane", ""},
		{"Thornfield", "", nil, false, "Made by Thornfield", "error no-address address"},
		{"", "", nil, false, "", "error no-maker name, error no-address address"},
		{"Thornfield", "", []string{"14 Lane"}, true, "Made by Thornfield", ""},
		{" ", "", []string{"14 Lane"}, true, "", ""},
	} {
		r := strawberry(t)
		*r.Kitchen = batch.Kitchen{Name: x.name, Corporate: x.corporate, Address: x.address}
		p := newPass(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{Gift: x.gift})
		maker(p)
		if got := text(p.C, label.Maker); got != x.want || strings.Join(said(p.L), ", ") != x.codes {
			t.Errorf("%+v: %q, %v", x, got, said(p.L))
		}
	}
}
