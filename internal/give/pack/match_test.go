package pack

import (
	"fmt"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

// small is batches of few jars, each with one or two sizes.
func small(t *rapid.T) (out []*cook.Result) {
	for i := range rapid.IntRange(1, 3).Draw(t, "batches") {
		r := &cook.Result{Batch: &batch.Batch{Name: []string{"Pear butter", "Plum jam", "Plum chutney"}[i]}, Lot: fmt.Sprintf("L%d", i),
			BestBefore: date(2027, 1+rapid.IntRange(0, 2).Draw(t, "month"), 1)}
		for s := range rapid.IntRange(1, 2).Draw(t, "sizes") {
			n := rapid.IntRange(0, 3).Draw(t, "jars")
			r.Jars = append(r.Jars, cook.JarPlan{Jar: []pantry.Jar{jar8, jar4}[s], Count: n, Sealed: n, How: cook.Given})
		}
		out = append(out, r)
	}
	return out
}

// most tries every way to deal the jars one by one: how many can be given.
func most(wants [][]int, left []int) int {
	if len(wants) == 0 {
		return 0
	}
	best := most(wants[1:], left)
	for _, i := range wants[0] {
		if left[i] > 0 {
			left[i]--
			best = max(best, 1+most(wants[1:], left))
			left[i]++
		}
	}
	return best
}

// TestFairAgainstEveryWay: the list gets as many jars as any way of dealing
// them could give, rows that name something among themselves too; whatever the
// order of the rows.
func TestFairAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := small(t)
		var list []Entry
		for k := range rapid.IntRange(1, 4).Draw(t, "rows") {
			list = append(list, Entry{To: fmt.Sprint("P", k), Jars: rapid.IntRange(1, 2).Draw(t, "wanted"),
				Lot: rapid.SampledFrom([]string{"", "", "L0", "L1"}).Draw(t, "lot"), Jam: rapid.SampledFrom([]string{"", "", "plum", "pear butter"}).Draw(t, "jam"),
				Jar: rapid.SampledFrom([]string{"", "", "us8", "us4"}).Draw(t, "jar")})
		}
		p, _ := Build(rs, Options{List: list})
		may := func(e Entry, s Stock) bool {
			return (e.Lot == "" || e.Lot == s.Lot) && (e.Jar == "" || e.Jar == s.Jar.Key) &&
				(e.Jam == "" || e.Jam == "plum" && s.Lot != "L0" || e.Jam == "pear butter" && s.Lot == "L0")
		}
		var all, named [][]int
		free := make([]int, len(p.Stock))
		for i, s := range p.Stock {
			free[i] = s.Sealed
		}
		got, gotNamed := 0, 0
		for _, e := range list {
			var rows []int
			for i, s := range p.Stock {
				if may(e, s) {
					rows = append(rows, i)
				}
			}
			n := 0
			for _, s := range p.Stops {
				if s.To == e.To {
					n = s.Jars
					for _, l := range s.Lines {
						if !may(e, p.Stock[l.stock]) {
							t.Fatalf("%+v got %+v", e, l)
						}
					}
				}
			}
			if n > e.Jars {
				t.Fatalf("%+v got %d", e, n)
			}
			got += n
			isNamed := e.Lot+e.Jar+e.Jam != ""
			for range e.Jars {
				all = append(all, rows)
				if isNamed {
					named = append(named, rows)
				}
			}
			if isNamed {
				gotNamed += n
			}
		}
		if want := most(all, free); got != want {
			t.Fatalf("%d jars dealt, %d can be: %+v", got, want, list)
		}
		if want := most(named, free); gotNamed != want {
			t.Fatalf("rows that name something got %d, could have %d", gotNamed, want)
		}
	})
}

// TestOrderMakesNoShortage: one jar of A and one of B; who takes either comes
// first in the list, who wants A second.
func TestOrderMakesNoShortage(t *testing.T) {
	rs := both()
	for _, r := range rs {
		r.Batch.Gifts, r.Batch.Markets = nil, nil
		r.Jars = r.Jars[:1]
		r.Jars[0].Count, r.Jars[0].Sealed, r.Jars[0].Part = 1, 1, 0
	}
	for _, second := range []Entry{{To: "Bea", Jam: "apricot", Jars: 1}, {To: "Bea", Lot: "L26201-AP", Jars: 1}, {To: "Bea", Jam: "L26201-AP", Jars: 1}, {To: "Bea", Jam: "Apricott jam with almonds", Jars: 1}} {
		p, found := Build(rs, Options{List: []Entry{{To: "Ann", Jars: 1}, second}})
		if found.HasErrors() || len(p.Stops) != 2 || p.Stops[1].Lines[0].Lot != "L26201-AP" || p.Stops[0].Lines[0].Lot != "L26265-PL" {
			t.Errorf("%+v: %v %+v", second, found, p.Stops)
		}
	}
	// a batch's own gift of any size gives way to one that names the size
	rs = both()
	rs[0].Batch.Markets, rs[1].Batch.Markets = nil, nil
	rs[0].Jars[0].Count, rs[0].Jars[0].Sealed = 1, 1
	rs[0].Batch.Gifts = []batch.Gift{{To: "Ann", Jars: 1, Path: "gift[0]"}, {To: "Bea", Jars: 1, Jar: "us8", Path: "gift[1]"}}
	if _, found := Build(rs, Options{}); found.HasErrors() {
		t.Error(found)
	}
}

// BenchmarkList deals 10,000 rows over 50 lots.
func BenchmarkList(b *testing.B) {
	var rs []*cook.Result
	for i := range 50 {
		r := &cook.Result{Batch: &batch.Batch{Name: fmt.Sprint("Jam ", i)}, Lot: fmt.Sprint("L", i), BestBefore: date(2027, 1, 1)}
		r.Jars = []cook.JarPlan{{Jar: jar8, Count: 200, Sealed: 200, How: cook.Given}}
		rs = append(rs, r)
	}
	var list []Entry
	for i := range 10_000 {
		e := Entry{To: fmt.Sprint("Person ", i), Jars: 1}
		if i >= 5000 {
			e.Lot = fmt.Sprint("L", i%25)
		}
		list = append(list, e)
	}
	for b.Loop() {
		if _, found := Build(rs, Options{List: list}); found.HasErrors() {
			b.Fatal(found[0])
		}
	}
}
