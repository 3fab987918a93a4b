package pack

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/give/ledger"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Supplies are counted whole, ribbon in feet or tenths of a metre rounded up;
// what nobody counted is not said.
func TestSupplyAmounts(t *testing.T) {
	for _, x := range []struct {
		s              Supply
		units          string
		need, have, of string
	}{
		{Supply{Need: 3, Have: 0, HaveLength: -1}, unit.US, "3", "0", ""}, {Supply{Need: 3, Have: -1}, unit.US, "3", "", ""}, {Supply{Need: 3, Have: 12}, unit.Metric, "3", "12", ""},
		{Supply{NeedLength: unit.Metre, HaveLength: 0}, unit.Metric, "1.0", "0.0", "m"}, {Supply{NeedLength: unit.Metre + 1, HaveLength: 1250 * unit.Millimetre}, unit.Metric, "1.1", "1.3", "m"},
		{Supply{NeedLength: 3 * unit.Foot, HaveLength: -1}, unit.US, "3", "", "ft"}, {Supply{NeedLength: 3*unit.Foot + 1, HaveLength: unit.Foot}, unit.US, "4", "1", "ft"},
		{Supply{NeedLength: 12 * unit.Metre, HaveLength: 10 * unit.Metre}, unit.Metric, "12.0", "10.0", "m"},
	} {
		if need, have, of := x.s.amounts(x.units); need != x.need || have != x.have || of != x.of {
			t.Errorf("%+v: %q %q %q", x.s, need, have, of)
		}
	}
}

// What an answer cannot know: buyers at markets where there are any, and whether
// presents were handed over.
func TestHonestAnswers(t *testing.T) {
	for name, x := range map[string]struct {
		h    History
		want []string
	}{"nothing unknown": {History{}, nil}, "one buyer": {History{Unknown: 1}, []string{"up to 1 jar at markets"}},
		"a present": {History{Holders: []Holder{{Type: Gift}}}, []string{"Gifts are listed as promised"}},
		"both":      {History{Unknown: 2, Holders: []Holder{{Type: Market}, {Type: Gift}, {Type: Gift}}}, []string{"up to 2 jars", "Gifts are listed"}},
	} {
		got := x.h.honest("")
		if len(got) != len(x.want) {
			t.Errorf("%s: %v", name, got)
			continue
		}
		for i, w := range x.want {
			if !strings.Contains(got[i].What, w) {
				t.Errorf("%s: %q", name, got[i].What)
			}
		}
	}
}

// A jam named nearly right is told as it was read, one named rightly is not; a
// jar nobody may have is told where its row stands.
func TestWordsOfAList(t *testing.T) {
	for jam, told := range map[string]bool{"apricot jam with almoonds": true, "Apricot jam with almonds": false, "": false} {
		_, found := Build(both(), Options{List: []Entry{{To: "Bea", Jars: 1, Jam: jam, File: "f.csv"}}})
		if has(found, "near-jam", "note", "Bea", "is read as Apricot jam with almonds", "f.csv") != told {
			t.Errorf("%q: %v", jam, found)
		}
	}
	at := diag.Pos{Line: 7, Column: 3}
	_, found := Build(both(), Options{List: []Entry{{To: "Bea", Jars: 1, Lot: "L26201-AP", Allergy: "almonds", File: "f.csv", Pos: at}}})
	if i := slices.IndexFunc(found, func(d diag.Diagnostic) bool { return d.Code == "allergy-in-jar" }); i < 0 || found[i].Pos != at || found[i].File != "f.csv" {
		t.Errorf("%v", found)
	}
}

// Jars eaten or broken are first those that did not seal.
func TestUnsealedAreEatenFirst(t *testing.T) {
	for eaten, want := range map[int]int{0: 2, 1: 1, 2: 0, 3: 0} {
		r := apricot(kitchen())
		r.Batch.Markets, r.Jars[0].Sealed = nil, 8
		var rows []ledger.Entry
		if eaten > 0 {
			rows = []ledger.Entry{{Date: date(2026, 8, 1), Lot: r.Lot, Jar: "us8", Count: eaten, Why: ledger.Eaten}}
		}
		p, _ := Build([]*cook.Result{r}, Options{Book: rows, Today: date(2026, 8, 2)})
		if got := p.Stock[0].Unsealed; got != want {
			t.Errorf("%d eaten: %d unsealed", eaten, got)
		}
	}
	for times, want := range map[int]string{0: "", 1: "$0.05", 2: "$0.10", -1: ""} {
		got := ""
		for _, m := range addMoney(nil, usd(5), times) {
			got += m.String()
		}
		if got != want {
			t.Errorf("%d times: %q", times, got)
		}
	}
}

// The one market still to come is what a page asks about; two are too many.
func TestOpenMarket(t *testing.T) {
	p, _ := Build(both(), Options{Event: "Millbrook market", Date: date(2026, 12, 5)})
	if o := p.Open(); o == nil || o.To != "Millbrook market" || o.Date != date(2026, 12, 5) || len(o.Jars) != 2 {
		t.Errorf("%+v", o)
	}
	rs := both()
	rs[0].Batch.Markets[1].CameHome = -1
	if p, _ := Build(rs, Options{}); p.Open() != nil {
		t.Errorf("of two: %+v", p.Open())
	}
	market, gift := p.lineRow(p.Stops[0], p.Stops[0].Lines[0]), p.lineRow(Stop{Type: Gift}, p.Stops[0].Lines[0])
	if len(market.Fields) != 1 || len(gift.Fields) != 0 || !strings.Contains(market.Under, "$") || strings.Contains(gift.Under, "$") {
		t.Errorf("%+v, %+v", market, gift)
	}
	cold := Stop{Type: Gift, To: "Ida", Lines: []Line{{Name: "Curd", Lot: "L", JarText: "8 fl oz", Count: 1, Cold: true}, {Name: "Jam", Lot: "M", JarText: "8 fl oz", Count: 1}}}
	n := 0
	for _, r := range p.stopPart(cold).Rows {
		if strings.Contains(r.What, "keep this one cold") {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d rows of two say to keep it cold", n)
	}
}

// 21 U.S.C. 321(qq) and Annex II of Regulation (EU) 1169/2011 give one name to
// kinds of one thing: who may not eat the one may not eat the other.
func TestClashes(t *testing.T) {
	v := allergen.Default()
	for pair, want := range map[[2]string]bool{
		{"milk", "milk"}: true, {"nuts", "almond"}: true, {"almond", "walnut"}: false, {"shellfish", "molluscs"}: true, {"molluscs", "shellfish"}: true,
		{"spelt", "wheat"}: true, {"wheat", "spelt"}: true, {"triticale", "rye"}: true, {"rye", "barley"}: false, {"milk", "egg"}: false, {"celery", "mustard"}: false,
		{"honey", "milk"}: false,
	} {
		x, okX := v.Substance(pair[0])
		y, okY := v.Substance(pair[1])
		if !okX || !okY {
			t.Fatalf("no %v", pair)
		}
		if got := clashes(x, y); got != want {
			t.Errorf("%v: %v", pair, got)
		}
	}
	if clashes(allergen.Substance{ID: "a", Annex2: []string{allergen.Ask}}, allergen.Substance{ID: "b", Annex2: []string{allergen.Ask}}) {
		t.Error("two groups nobody named are one")
	}
}

// A jar is meant by its key, its description, its short name, or as the pantry
// finds it.
func TestJarMeant(t *testing.T) {
	own := pantry.Jar{Key: "mine", Description: "from the cellar", Nominal: 8 * unit.FluidOunce}
	for words, want := range map[string]bool{"mine": true, "From the  cellar": true, shortJar(own): true, "us8": false, "cellar": false} {
		if got := jarMeant(pantry.Default(), words, own); got != want {
			t.Errorf("%q: %v", words, got)
		}
	}
	us8, _ := pantry.Default().Jar("us8")
	for words, want := range map[string]bool{"half-pint": true, "8 fl oz": true, "pint": false} {
		if got := jarMeant(pantry.Default(), words, us8); got != want {
			t.Errorf("%q: %v", words, got)
		}
	}
}
