package pack

import (
	"strings"
	"testing"

	"jarmark/internal/give/ledger"
	"jarmark/internal/kitchen/cook"
)

// TestPromisedJarsAreSetAside: a jar promised stands on the shelf until it is
// handed over, and a recall has it set aside. By hand: 26 filled, 1 not sealed;
// 2 given and 5 promised by the ledger: 18 stay free.
func TestPromisedJarsAreSetAside(t *testing.T) {
	rs := both()
	for _, r := range rs {
		r.Batch.Gifts, r.Batch.Markets = nil, nil
	}
	row := func(why ledger.Why, who string, n int) ledger.Entry {
		return ledger.Entry{Date: date(2026, 11, 2), Lot: "L26265-PL", Jar: "us8", Count: n, Why: why, Who: who, File: "ledger.csv"}
	}
	trace := func(rows ...ledger.Entry) *History {
		h, _ := Trace("L26265-PL", rs, Options{Book: rows})
		return h
	}
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	h := trace(row(ledger.Promised, "Ann", 5), row(ledger.Given, "Bea", 2))
	if text := flat(h.Text()); !strings.Contains(text, "2 given or sold, 5 promised and at home unless handed over, 18 more at home, 1 not sealed") ||
		!strings.Contains(text, "5 × 8 fl oz promised: what was not handed over") || !strings.Contains(text, "Gifts are listed as promised") {
		t.Error(h.Text())
	}
	if sheet := flat(h.Recall().Text()); !strings.Contains(sheet, "up to 24 jars") || !strings.Contains(Sum([]*History{h, h}), "2 lots, 52 jars: 4 given or sold, 10 promised and at home unless handed over, 38 more at home") {
		t.Errorf("%s\n%s", sheet, Sum([]*History{h, h}))
	}
	h = trace(row(ledger.Given, "Bea", 2))
	if text := flat(h.Text()); !strings.Contains(text, "2 given or sold, 23 at home, 1 not sealed") || strings.Contains(text, "promised") || strings.Contains(flat(h.Recall().Text()), "up to") {
		t.Error(h.Text())
	}
}

// TestRefrigeratorPastItsDay: a jar that did not seal and was to be eaten long
// ago is no jar to eat any more; made on Sep 22 and kept three days, it is on
// the 25th and not on the 26th.
func TestRefrigeratorPastItsDay(t *testing.T) {
	r := plum(kitchen())
	r.Keeping.UnsealedDays = 3
	for day, over := range map[int]bool{25: false, 26: true} {
		p, _ := Build([]*cook.Result{r}, Options{Today: date(2026, 9, day)})
		text := strings.Join(strings.Fields(p.Text()), " ")
		if strings.Contains(text, "was to be eaten by 25 Sep 2026") != over || strings.Contains(text, "eat within 3 days") == over {
			t.Errorf("on the %dth: %s", day, text)
		}
	}
}
