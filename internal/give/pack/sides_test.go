package pack

import (
	"strings"
	"testing"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// The sheet of a stall of one jam is in the kitchen's language; what the label
// says stands over what the kitchen notes.
func TestStallOfOneJam(t *testing.T) {
	r := plum(kitchen())
	r.Kitchen.Language = "de"
	c := &label.Content{Blocks: []label.Block{{Kind: label.Advisory, Runs: []label.Run{{Text: "Kann Spuren von Sellerie enthalten."}}}}}
	for want, content := range map[string]*label.Content{"Kann Spuren von Sellerie enthalten.": c, "almonds": nil} {
		items := Allergens([]Product{{r, content}}, "")
		if len(items) != 1 || !strings.Contains(items[0].Advisory, want) {
			t.Errorf("%+v, want %q", items, want)
		}
		if l := StallSheet(items, ""); l.Title != table.WordsIn("de").Say("Allergens") || l.Title == "Allergens" {
			t.Errorf("the title is %q", l.Title)
		}
	}
	if l := StallSheet(nil, ""); l.Title != "Allergens" || len(l.Parts) != 0 {
		t.Errorf("%+v", l)
	}
}

// Who once bought jars is a market: what the ledger promises there later is one
// stop of it, and no present.
func TestMarketsOfTheLedger(t *testing.T) {
	for why, want := range map[ledger.Why]StopType{ledger.Sold: Market, ledger.Given: Gift} {
		rs := []*cook.Result{apricot(kitchen())}
		rs[0].Batch.Markets = nil
		p, found := Build(rs, Options{Today: date(2026, 8, 1), Book: []ledger.Entry{
			{Date: date(2026, 8, 1), Lot: "L26201-AP", Jar: "us8", Count: 1, Why: why, Who: "Corner shop"},
			{Date: date(2026, 8, 20), Lot: "L26201-AP", Jar: "us8", Count: 2, Why: ledger.Promised, Who: "corner shop"}}})
		if found.HasErrors() || len(p.Stops) != 1 || p.Stops[0].Type != want {
			t.Errorf("%s: %+v %v", why, p.Stops, found)
		}
		if l := p.BookRows(); len(l.Parts) != 1 || len(l.Parts[0].Rows) != 2 {
			t.Errorf("%s: the rows are %+v", why, l.Parts)
		}
	}
}

// A plan counts in the units of its kitchen, unless it is told others.
func TestUnitsOfThePlan(t *testing.T) {
	for told, want := range map[string]string{"": unit.Metric, unit.US: unit.US} {
		k := kitchen()
		k.Units = unit.Metric
		if p, _ := Build([]*cook.Result{plum(k)}, Options{Units: told}); p.Units != want {
			t.Errorf("%q: %q", told, p.Units)
		}
	}
}

// Counted jars = promised + given + sold + lost + left + unsealed.
func TestLedgerOfARow(t *testing.T) {
	s := Stock{Count: 63, Promised: 1, Given: 2, Sold: 4, Lost: 8, Left: 16, Unsealed: 32}
	if !s.Ledger() {
		t.Error("a sum that is right is refused")
	}
	for i, n := range []*int{&s.Promised, &s.Given, &s.Sold, &s.Lost, &s.Left, &s.Unsealed} {
		if *n++; s.Ledger() {
			t.Errorf("term %d is not counted", i)
		}
		*n--
	}
	if s = (Stock{Count: 1, Promised: 2, Left: -1}); s.Ledger() {
		t.Error("fewer than none are left")
	}
}

// The sum of the evening stands on paper alone, set small.
func TestEvening(t *testing.T) {
	p, _ := Build(both(), Options{Event: "Millbrook market", Date: date(2026, 12, 5)})
	for _, l := range p.List().Parts {
		if l.Title == "In the evening" {
			if !l.Compact || l.Not != table.OnSheet|table.OnText|table.OnScreen {
				t.Errorf("%+v", l)
			}
			return
		}
	}
	t.Error("no evening")
}

// A jar size that only another batch filled is told with the sizes of this one.
func TestSizesOfTheBatch(t *testing.T) {
	rs := both()
	rs[1].Jars[0].Jar = jar8w
	rs[0].Batch.Gifts[0].Jar, rs[0].Batch.Gifts = "16 fl oz", rs[0].Batch.Gifts[:1]
	_, found := Build(rs, Options{})
	if d := told(found, "jar-size"); len(d) != 1 || !strings.Contains(d[0].Hint, "4 fl oz") || strings.Contains(d[0].Hint, "wide") {
		t.Errorf("%v", found)
	}
}

// A notice names markets and their days, and ends with how to reach the maker.
func TestNoticeSaysWhereAndHow(t *testing.T) {
	h, _ := Trace("L26265-PL", both(), Options{})
	for reach, end := range map[string]string{"tel. 555 0100": "\n\ntel. 555 0100\n", "": "which food it was.\n"} {
		text := Notice([]*History{h}, reach)
		if !strings.Contains(text, "Harvest fair, 10 Oct 2026") || !strings.HasSuffix(text, end) {
			t.Errorf("%q: %s", reach, text)
		}
	}
	h.Holders = []Holder{{Type: Market, To: "The stall"}}
	if text := Notice([]*History{h}, ""); !strings.Contains(text, "Sold at: The stall.") {
		t.Error(text)
	}
}

// Where of some jars it is not known what they hold, a person with an allergy
// gets the others, unless jam or lot are named.
func TestDoubtfulJars(t *testing.T) {
	for name, x := range map[string]struct {
		row  Entry
		lots string
	}{
		"nothing named": {Entry{To: "Bea", Jars: 1, Allergy: "celery"}, "L26201-AP"},
		"the lot":       {Entry{To: "Bea", Jars: 1, Allergy: "celery", Lot: "L26100-XX"}, "L26100-XX"},
		"the jam":       {Entry{To: "Bea", Jars: 1, Allergy: "celery", Jam: "mystery"}, "L26100-XX"},
	} {
		rs := both()
		doubtful := apricot(rs[0].Kitchen)
		doubtful.Batch.Name, doubtful.Lot, doubtful.BestBefore, doubtful.Batch.Markets = "Mystery jam", "L26100-XX", date(2027, 1, 1), nil
		doubtful.Lines = []cook.Line{{Name: "mystery powder", Mass: 1}}
		p, _ := Build([]*cook.Result{rs[1], doubtful}, Options{Gifts: true, List: []Entry{x.row}})
		if last := p.Stops[len(p.Stops)-1]; len(last.Lines) != 1 || last.Lines[0].Lot != x.lots {
			t.Errorf("%s: %+v", name, last.Lines)
		}
	}
}

// TestMarketWithoutADay: jars sold at a market on a day are taken off the market
// of that name that bears none, unless another is planned for that day. By hand:
// 6 for the fair, 2 sold: 4 are still to pack, and 2 at a fair of its own day
// leave all 6.
func TestMarketWithoutADay(t *testing.T) {
	for planned, want := range map[bool]int{false: 4, true: 6} {
		r := plum(kitchen())
		r.Batch.Gifts = nil
		r.Batch.Markets = []batch.Market{{Event: "fair", Jars: 6, CameHome: -1, Path: "market[0]"}}
		if planned {
			r.Batch.Markets = append(r.Batch.Markets, batch.Market{Event: "fair", Date: date(2026, 10, 3), Jars: 2, CameHome: -1, Path: "market[1]"})
		}
		rows := []ledger.Entry{{Date: date(2026, 10, 3), Lot: "L26265-PL", Jar: "us8", Count: 2, Why: ledger.Sold, Who: "Fair", Price: usd(900), File: "ledger.csv"}}
		p, found := Build([]*cook.Result{r}, Options{Book: rows})
		jars := 0
		for _, s := range p.Stops {
			if s.Date.IsZero() {
				jars += s.Jars
			}
		}
		if b := p.Balances[0]; found.HasErrors() || jars != want || b.Sold != 2 || b.Promised != want {
			t.Errorf("planned %v: %d jars to pack, %+v, %v", planned, jars, b, found)
		}
	}
}
