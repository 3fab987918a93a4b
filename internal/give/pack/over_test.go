package pack

import (
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
)

func told(l diag.List, code string) (out diag.List) {
	for _, d := range l {
		if d.Code == code {
			out = append(out, d)
		}
	}
	return out
}

// Jars past their date are never packed in silence, and a gift list deals none
// of them unless it names the lot.
func TestJarsPastTheirDate(t *testing.T) {
	rs := both()
	rs[0].BestBefore, rs[1].BestBefore = date(2027, 6, 14), date(2028, 1, 1)
	lot := rs[0].Lot
	for _, c := range []struct {
		today string
		want  int
	}{{"", 0}, {"2027-06-14", 0}, {"2027-06-15", 1}, {"2028-06-15", 2}} {
		o := Options{}
		if c.today != "" {
			o.Today = dateOf(t, c.today)
		}
		if _, l := Build(rs, o); len(told(l, "date-over")) != c.want {
			t.Errorf("%s: %v", c.today, l)
		}
	}
	o := Options{Today: date(2027, 7, 1), List: []Entry{{To: "Ida", Jars: 2}, {To: "Nell", Jars: 1, Lot: lot}}}
	p, _ := Build(rs, o)
	for _, s := range p.Stops {
		for _, line := range s.Lines {
			if s.To == "Ida" && line.Lot == lot {
				t.Error("a list deals jars past their date")
			}
			if s.To == "Nell" && line.Lot != lot {
				t.Error("a row that names the lot does not get it")
			}
		}
	}
	rs[0].Batch.UseBy = true
	rs[0].Batch.Gifts = []batch.Gift{{Path: "gift[0]", To: "Ida", Jars: 1}}
	if _, l := Build(rs, o); len(told(l, "date-over")) != 1 || !l.HasErrors() || !strings.Contains(told(l, "date-over")[0].Message, "use-by") {
		t.Errorf("given after its use-by date: %v", l)
	}
}

// A market held after the date of the jars is told of; one that is over or in
// time is not.
func TestMarketAfterTheDate(t *testing.T) {
	for day, want := range map[string]int{"2027-06-13": 0, "2027-06-14": 0, "2027-06-15": 1} {
		rs := both()
		rs[0].BestBefore = date(2027, 6, 14)
		rs[0].Batch.Markets = []batch.Market{{Path: "market[0]", Event: "fair", Jars: 1, CameHome: -1, Date: dateOf(t, day)}}
		if _, l := Build(rs, Options{Today: date(2026, 12, 1)}); len(told(l, "market-after-date")) != want {
			t.Errorf("%s: %v", day, l)
		}
		rs[0].Batch.Markets[0].CameHome = 0
		if _, l := Build(rs, Options{Today: date(2026, 12, 1)}); len(told(l, "market-after-date")) != 0 {
			t.Errorf("%s, noted as done: %v", day, l)
		}
	}
}

// BenchmarkRecipients shows that ten times the recipients take about ten times
// as long.
func BenchmarkRecipients(b *testing.B) {
	for _, n := range []int{990, 9_900} {
		var list []Entry
		for i := range n {
			list = append(list, Entry{To: "Guest " + strconv.Itoa(i), Jars: 1})
		}
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				Build(both(), Options{List: list})
			}
		})
	}
}

func dateOf(t *testing.T, s string) unit.Date {
	t.Helper()
	d, err := unit.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
