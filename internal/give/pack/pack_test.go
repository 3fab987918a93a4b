package pack

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/templates"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs:\n%s", name, got)
	}
}

func has(l diag.List, code string, words ...string) bool {
	for _, d := range l {
		ok := d.Code == code
		for _, w := range words {
			ok = ok && strings.Contains(d.Message+" "+d.Hint+" "+d.File+" "+d.Path+" "+d.Severity.String(), w)
		}
		if ok {
			return true
		}
	}
	return false
}

func TestGolden(t *testing.T) {
	p, found := Build(both(), Options{})
	if len(found) > 0 {
		t.Errorf("findings %v", found)
	}
	golden(t, "plan.txt", []byte(p.Text()))
	golden(t, "plan.csv", p.CSV())
	ev, _ := Build(both(), Options{Event: "Millbrook Market"})
	golden(t, "market.txt", []byte(ev.Text()))
	gifts, _ := Build(both(), Options{Gifts: true})
	golden(t, "gifts.txt", []byte(gifts.Text()))
	h, _ := Trace("l26265-pl", both(), Options{})
	golden(t, "trace.txt", []byte(h.Text()))
}

// anyResults draws batches with promises that may or may not be kept.
func anyResults(t *rapid.T) []*cook.Result {
	k := kitchen()
	k.Supplies.BoxHolds = rapid.IntRange(0, 20).Draw(t, "holds")
	sizes := []pantry.Jar{jar8, jar4, jar8w}
	words := []string{"", "us8", "4 fl oz", "us8w", "no such jar"}
	var out []*cook.Result
	for i := range rapid.IntRange(1, 4).Draw(t, "batches") {
		r := plum(k)
		r.Lot, r.Jars, r.Batch.Gifts, r.Batch.Markets = fmt.Sprintf("L%d", i), nil, nil, nil
		r.BestBefore = date(2027, 1+rapid.IntRange(0, 11).Draw(t, "month"), 1)
		for s := range rapid.IntRange(0, 3).Draw(t, "sizes") {
			n := rapid.IntRange(-2, 40).Draw(t, "count")
			r.Jars = append(r.Jars, cook.JarPlan{Jar: sizes[s], Count: n, Sealed: n - rapid.IntRange(-1, 5).Draw(t, "unsealed"),
				Fill: unit.Mass(rapid.Int64Range(0, int64(20*unit.Kilogram)).Draw(t, "fill")), How: cook.Given, Checked: true})
		}
		for g := range rapid.IntRange(0, 4).Draw(t, "gifts") {
			r.Batch.Gifts = append(r.Batch.Gifts, batch.Gift{Path: fmt.Sprintf("gift[%d]", g), To: rapid.SampledFrom([]string{"Jo", "Nell", "Marguerite"}).Draw(t, "to"),
				Jars: rapid.IntRange(-1, 9).Draw(t, "jars"), Jar: rapid.SampledFrom(words).Draw(t, "jar")})
		}
		for m := range rapid.IntRange(0, 3).Draw(t, "markets") {
			r.Batch.Markets = append(r.Batch.Markets, batch.Market{Path: fmt.Sprintf("market[%d]", m), Event: rapid.SampledFrom([]string{"fair", "market"}).Draw(t, "event"),
				Date: date(2026, 12, rapid.IntRange(1, 3).Draw(t, "day")), Jars: rapid.IntRange(-1, 20).Draw(t, "jars"), Jar: rapid.SampledFrom(words).Draw(t, "jar"),
				CameHome: rapid.IntRange(-1, 12).Draw(t, "home")})
		}
		out = append(out, r)
	}
	return out
}

// TestSums: whatever is promised, every counted jar is in exactly one place,
// and who goes short is named.
func TestSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		results := anyResults(t)
		var list []Entry
		for range rapid.IntRange(0, 5).Draw(t, "listed") {
			list = append(list, Entry{To: "Ann", Jars: rapid.IntRange(1, 9).Draw(t, "jars")})
		}
		p, found := Build(results, Options{List: list})
		total, inStops, home := 0, 0, 0
		for _, s := range p.Stock {
			if !s.Ledger() || s.Promised < 0 || s.Sold < 0 || s.Unsealed < 0 {
				t.Fatalf("the sums of a size do not work out: %+v", s)
			}
			total += s.Count - s.Left - s.Unsealed
		}
		for _, s := range append(append([]Stop(nil), p.Stops...), p.Done...) {
			checkStop(t, s, p, results, found)
			inStops += s.Jars
			for _, l := range s.Lines {
				home += l.CameHome
			}
		}
		if inStops-home != total {
			t.Fatalf("stops hold %d less %d that came home, stock says %d", inStops, home, total)
		}
		gifts := 0
		for _, s := range p.Stops {
			if s.Type == Gift {
				gifts += s.Jars
			}
		}
		if len(p.Tags) != gifts {
			t.Fatalf("%d tags for %d gift jars", len(p.Tags), gifts)
		}
		for _, l := range strings.Split(p.Text(), "\n") {
			if utf8.RuneCountInString(l) > 80 {
				t.Fatalf("wider than 80: %q", l)
			}
		}
	})
}

func checkStop(t *rapid.T, s Stop, p *Plan, results []*cook.Result, found diag.List) {
	sum, boxed := 0, 0
	for i, l := range s.Lines {
		sum += l.Count
		if i > 0 && l.BestBefore.Before(s.Lines[i-1].BestBefore) {
			t.Fatalf("%s: not first expiry first", s.To)
		}
	}
	for _, b := range s.Boxes {
		boxed += b.Jars
		holds := results[0].Kitchen.Supplies.BoxHolds
		if holds == 0 {
			holds = batch.DefaultBoxHolds
		}
		if b.Jars > holds || b.Gross > DefaultMaxBox && b.Jars > 1 {
			t.Fatalf("a box of %d jars and %v", b.Jars, b.Gross.Grams())
		}
	}
	if sum != s.Jars || len(s.Boxes) > 0 && boxed != sum {
		t.Fatalf("%s: %d jars, lines %d, boxes %d", s.To, s.Jars, sum, boxed)
	}
	if s.Short() > 0 && !found.HasErrors() {
		t.Fatalf("%s is %d short and nobody says so", s.To, s.Short())
	}
}

// TestShort: 21 of 8 fl oz are sealed and 4 sold; Marguerite's two may be of
// 4 fl oz, so 17 are left for the market.
func TestShort(t *testing.T) {
	rs := both()
	rs[0].Batch.Markets[0].Jars = 20
	p, found := Build(rs, Options{})
	if !has(found, "jars-short", "error", "Millbrook market on Dec 5, 2026", "20 jars", "gets 17: 3 short", "21 sealed, 4 promised or sold before", "plum.toml", "market[0].jars") {
		t.Errorf("findings %v", found)
	}
	if s := p.Stops[2]; s.Short() != 3 || !strings.Contains(p.Text(), "3 jars short") {
		t.Errorf("stop %+v", s)
	}
	rs[0].Jars[0].How = cook.Estimated
	if _, found = Build(rs, Options{}); found.HasErrors() || !has(found, "jars-short", "warning", "estimate") {
		t.Errorf("an estimate is no promise broken: %v", found)
	}
}

func TestFindings(t *testing.T) {
	for name, c := range map[string]struct {
		change func([]*cook.Result)
		o      Options
		code   string
		words  []string
	}{
		"size nobody filled": {func(r []*cook.Result) { r[0].Batch.Gifts[0].Jar = "pint" }, Options{}, "jar-size", []string{"error", "Marguerite", `"pint"`, "8 fl oz, 4 fl oz", "gift[0].jar"}},
		"no jars at all":     {func(r []*cook.Result) { r[1].Jars = nil }, Options{}, "jar-size", []string{"no jars were filled"}},
		"more back than out": {func(r []*cook.Result) { r[0].Batch.Markets[1].CameHome = 7 }, Options{}, "came-home", []string{"error", "7 jars", "only 6", "market[1].came_home"}},
		"unknown event":      {nil, Options{Event: "Milbrook market"}, "unknown-event", []string{"error", "did you mean Millbrook market?"}},
		"unknown lot":        {nil, Options{List: []Entry{{To: "Ann", Jars: 1, Lot: "L1"}}}, "unknown-lot", []string{"Ann", "L26201-AP, L26265-PL"}},
		"use by":             {func(r []*cook.Result) { r[1].Batch.UseBy, r[1].BestBefore = true, date(2026, 12, 4) }, Options{}, "past-date", []string{"error", "use-by"}},
		"best before":        {func(r []*cook.Result) { r[1].BestBefore = date(2026, 12, 4) }, Options{}, "past-date", []string{"warning", "best-before"}},
		"on the day itself":  {func(r []*cook.Result) { r[1].BestBefore = date(2026, 12, 5) }, Options{}, "", nil},
		"unchecked seals":    {func(r []*cook.Result) { r[0].Jars[0].Checked = false }, Options{}, "seals-unchecked", []string{"22 jars"}},
		"tags run out":       {func(r []*cook.Result) { r[0].Kitchen.Supplies.Tags = 1 }, Options{}, "supplies-short", []string{"3 needed of hang tags, 1", "2 short"}},
		"ribbon runs out":    {func(r []*cook.Result) { r[0].Kitchen.Supplies.Ribbon = unit.Metre }, Options{}, "supplies-short", []string{"ribbon"}},
		"lids run out": {func(r []*cook.Result) {
			r[0].Jars[0].How, r[0].Kitchen.Supplies.Lids = cook.Estimated, map[string]int{r[0].Jars[0].Jar.Lid: 1}
		}, Options{}, "supplies-short", []string{"needed of lids, ", "1 in the cupboard"}},
		"labels run out":    {func(r []*cook.Result) { r[0].Kitchen.Supplies.Labels["letter-2x5-4x2in"] = 1 }, Options{}, "supplies-short", []string{"needed of labels, ", "1 in the cupboard"}},
		"earlier lot stays": {func(r []*cook.Result) { r[1].Batch.Name = r[0].Batch.Name; r[1].Batch.Markets[0].Jars = 2 }, Options{}, "first-expiry", []string{"8 jars", "L26201-AP"}},
		"in list and file":  {nil, Options{List: []Entry{{To: "marguerite", Jars: 1}}}, "gift-twice", []string{"2 jars"}},
		"absurd count":      {func(r []*cook.Result) { r[0].Jars[0].Count = math.MaxInt }, Options{}, "too-many-jars", []string{"error"}},
	} {
		rs := both()
		if c.change != nil {
			c.change(rs)
		}
		_, found := Build(rs, c.o)
		if c.code == "" && len(found) > 0 || c.code != "" && !has(found, c.code, c.words...) {
			t.Errorf("%s: %v", name, found)
		}
	}
}

// TestCameBack: jars that came home can be promised again.
func TestCameBack(t *testing.T) {
	rs := both()
	rs[0].Batch.Markets[0].Jars = 15 // 21 sealed less 2 gifts less 4 sold
	p, found := Build(rs, Options{})
	if len(found) > 0 || p.Stock[0].Left != 0 || p.Stock[0].Sold != 4 {
		t.Errorf("left %d, sold %d, %v", p.Stock[0].Left, p.Stock[0].Sold, found)
	}
}

// TestListDealsInTurn: three jars from the list are of different lots, first
// expiry first, and make one tag each with the design of the occasion.
func TestListDealsInTurn(t *testing.T) {
	p, found := Build(both(), Options{Gifts: true, List: []Entry{{To: "Ann", From: "Nell", Message: "warm wishes", Occasion: " Birthday ", Jars: 3}}})
	if found.HasErrors() {
		t.Fatal(found)
	}
	s := p.Stops[2]
	if s.To != "Ann" || len(s.Lines) != 2 || s.Lines[0].Lot != "L26201-AP" || s.Lines[0].Count != 2 || s.Lines[1].Lot != "L26265-PL" {
		t.Errorf("%+v", s.Lines)
	}
	want := Tag{To: "Ann", From: "Nell", Message: "warm wishes", Occasion: " Birthday ", Design: "gingham", Lot: "L26201-AP", JarKey: "us8"}
	if len(p.Tags) != 6 || p.Tags[3] != want {
		t.Errorf("tags %+v", p.Tags)
	}
}

// TestOccasions: every occasion's design exists.
func TestOccasions(t *testing.T) {
	text, _ := templates.FS.ReadFile("pantry/occasions.csv")
	rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil || len(rows) < 5 {
		t.Fatal(err)
	}
	for _, r := range rows[1:] {
		if _, err := fs.Stat(templates.FS, "designs/"+r[1]+".toml"); err != nil || r[0] != FoldName(r[0]) {
			t.Errorf("%v: %v", r, err)
		}
	}
	if len(Occasions()) != len(rows)-1 {
		t.Error("an occasion stands twice")
	}
}

func TestNothing(t *testing.T) {
	for _, rs := range [][]*cook.Result{nil, {nil}, {{}}, {{Batch: &batch.Batch{}}}, {{Batch: &batch.Batch{Gifts: []batch.Gift{{}}, Markets: []batch.Market{{Jars: 3, CameHome: -1}}}}}} {
		p, _ := Build(rs, Options{})
		p.Text()
		p.CSV()
		p.Cards()
		p.CameHome("")
		Trace("", rs, Options{})
		for _, r := range rs {
			Cost(r)
		}
		Allergens([]Product{{}}, "x")
		if _, found := p.Doc(faces(t), ""); found.HasErrors() {
			t.Error(found)
		}
	}
	p, _ := Build(nil, Options{})
	if d, found := p.Doc(nil, "a4"); d != nil || !found.HasErrors() {
		t.Error("a page without typefaces")
	}
	if d, found := p.Doc(faces(t), "a7"); d != nil || !found.HasErrors() {
		t.Error("a page on no paper")
	}
}
