package pack

import (
	"jarmark/internal/give/table"
	"sort"
	"strings"

	"jarmark/internal/give/ledger"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Build plans the jars of one or several batches. A plan is always returned;
// an Error says which promise cannot be kept and by how many jars.
func Build(results []*cook.Result, o Options) (*Plan, diag.List) {
	b := builder{o: o, plan: &Plan{Units: o.Units, today: o.Today, GrossHow: cook.Measured}}
	if b.o.Pantry == nil {
		b.o.Pantry = pantry.Default()
	}
	if b.o.MaxBox <= 0 {
		b.o.MaxBox = DefaultMaxBox
	}
	if b.o.Designs == nil {
		b.o.Designs = Designs()
	}
	for _, r := range results {
		if r != nil && r.Batch != nil {
			b.results = append(b.results, r)
		}
	}
	b.kitchen()
	b.stock()
	b.open()
	b.promised = b.promises()
	b.allot(b.promised)
	b.booked()
	b.balance()
	b.close()
	b.plan.in = table.WordsIn(b.lang)
	b.tell()
	b.gather()
	return b.plan, b.found
}

// builder carries one Build.
type builder struct {
	o         Options
	results   []*cook.Result
	plan      *Plan
	stops     []*stop
	asked     map[string]bool // occasions told of
	byKey     map[stopKey]*stop
	promised  []promise
	found     diag.List
	shared    map[string]*alike
	lang      string // of the first kitchen
	american  bool   // the first kitchen writes days as in America
	jams      map[string]jamRead
	choices   map[wording]*choice
	allergens []cook.Allergy   // of each batch, once asked for
	base      []ledger.Balance // of the ledger's rows alone, one a row of Stock
	credit    map[creditKey]int
	rows      []ledger.Entry  // of the ledger and of all tables and lists
	markets   map[string]bool // folded names
}

func (b *builder) kitchen() {
	for _, r := range b.results {
		if r.Kitchen == nil {
			continue
		}
		if b.lang == "" {
			b.american = r.Kitchen.US()
			b.lang = table.LanguageOf(r.Kitchen)
		}
		if b.plan.Maker == "" {
			b.plan.Maker = r.Kitchen.Name
		}
		if b.plan.Units == "" {
			b.plan.Units = r.Kitchen.Units
		}
		b.plan.permit, b.plan.float = r.Kitchen.Permit, r.Kitchen.Costs.Float
	}
	if b.plan.Units == "" {
		b.plan.Units = unit.US
	}
}

// day is a date in a message.
func (b *builder) day(d unit.Date) string { return d.Words(b.american) }

// fileName is the file findings of a batch are about.
func fileName(r *cook.Result) string {
	if r.Batch == nil || r.Batch.File == nil {
		return ""
	}
	return r.Batch.File.Name
}

// Name is what a batch is called, never empty.
func Name(r *cook.Result) string { return name(r) }

// name is what a batch is called, never empty.
func name(r *cook.Result) string {
	if n := strings.TrimSpace(r.Batch.Name); n != "" {
		return n
	}
	if r.Lot != "" {
		return "lot " + r.Lot
	}
	return "unnamed batch"
}

// close drops what the filter leaves out and sums up.
func (b *builder) close() {
	p := b.plan
	b.filter()
	sort.SliceStable(b.stops, func(i, j int) bool { return b.stops[i].out.Type == Gift && b.stops[j].out.Type == Market })
	for _, s := range b.stops {
		b.finish(s)
		if s.out.CameHome >= 0 && p.Filter == "" {
			p.Done = append(p.Done, s.out)
			continue
		}
		p.Stops = append(p.Stops, s.out)
		p.Tags = append(p.Tags, b.tags(s)...)
		p.Jars += s.out.Jars
		p.Boxes += len(s.out.Boxes)
		p.Net += s.out.Net
		p.Gross += s.out.Gross
		p.GrossHow = weaker(p.GrossHow, s.out.GrossHow)
	}
	b.left()
	b.over()
	b.fridge()
	b.supplies()
	b.advise()
}

// left values the stock that stays.
func (b *builder) left() {
	for i := range b.plan.Stock {
		s := &b.plan.Stock[i]
		if s.Price.Minor == 0 {
			b.plan.Unpriced += s.Left
			continue
		}
		b.plan.Value = addMoney(b.plan.Value, s.Price, s.Left)
	}
}

func addMoney(sum []unit.Money, m unit.Money, times int) []unit.Money {
	if m.Minor == 0 || times <= 0 {
		return sum
	}
	return ledger.Add(sum, m, times)
}

// fridge lists what must not leave the house.
func (b *builder) fridge() {
	for _, s := range b.plan.Stock {
		r := b.results[s.batch]
		if !b.concerned(s.Lot) {
			continue
		}
		if s.Unsealed > 0 {
			b.plan.Fridge = append(b.plan.Fridge, fridgeItem(r, s.JarText, s.Unsealed, 0))
		}
		if part := r.Jars[s.row].Part; part > 0 {
			b.plan.Fridge = append(b.plan.Fridge, fridgeItem(r, s.JarText, 0, part))
		}
	}
}

// concerned reports whether a list has to do with a lot: a whole list with
// all, a filtered one with what it packs.
func (b *builder) concerned(lot string) bool {
	for _, s := range b.plan.Stops {
		for _, l := range s.Lines {
			if l.Lot == lot {
				return true
			}
		}
	}
	return b.plan.Filter == ""
}

func fridgeItem(r *cook.Result, jar string, count int, part unit.Mass) FridgeItem {
	days := max(0, r.Keeping.UnsealedDays)
	f := FridgeItem{Lot: r.Lot, Name: name(r), JarText: jar, Count: count, Part: part, Days: days}
	if days > 0 {
		f.By = r.Batch.Made.AddDays(days)
	}
	return f
}

// cold reports whether sealed jars of the batch must stay cold.
func cold(c cook.Class) bool {
	return c == cook.Cold || c == cook.Freezer || c == cook.Refrigerator
}

func weaker(a, b cook.How) cook.How {
	if a == cook.Estimated || b == cook.Estimated {
		return cook.Estimated
	}
	if a == cook.Given || b == cook.Given {
		return cook.Given
	}
	return cook.Measured
}

// sameName compares names as people write them.
func sameName(a, b string) bool { return FoldName(a) == FoldName(b) }

func FoldName(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }

func giftJars(g batch.Gift) int { return min(max(g.Jars, 1), maxJars) }

// LabelSheet is the sheet that the labels of a row of stock are printed on;
// empty where the batch names none.
func (p *Plan) LabelSheet(s Stock) string { return s.sheet }
