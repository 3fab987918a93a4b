package season

import (
	"slices"
	"sort"

	"jarmark/internal/give/pack"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// price reckons what one jar of each row of stock cost: its share of the
// ingredients, the jar, lid and label, and the hours.
func (s *Summary) price(p *pack.Plan, results []*cook.Result, k *batch.Kitchen) {
	c := k.Costs
	s.costs = make([]jarCost, len(p.Stock))
	lacks := map[string]bool{}
	byLot := map[string]*cook.Result{}
	for _, r := range results {
		if r != nil && r.Batch != nil {
			byLot[pack.FoldName(r.Lot)] = r
			s.unpriced(r)
			lacks["work"] = lacks["work"] || c.Hour.Minor > 0 && r.Batch.Hours == 0
		}
	}
	for i, st := range p.Stock {
		r := byLot[pack.FoldName(st.Lot)]
		if r == nil || st.Count == 0 {
			continue
		}
		j, known := ingredients(r, st)
		jar, said := c.Jars[st.Jar.Key]
		lacks["jars"] = lacks["jars"] || !said
		lacks["lids"] = lacks["lids"] || c.Lid.Currency == ""
		lacks["labels"] = lacks["labels"] || c.Label.Currency == ""
		j += jar.Minor + c.Lid.Minor + c.Label.Minor + work(r, c)
		s.costs[i] = jarCost{j, known}
	}
	lacks["work"] = lacks["work"] || c.Hour.Currency == ""
	for w, yes := range lacks {
		if yes {
			s.Uncounted = append(s.Uncounted, w)
		}
	}
	sort.Strings(s.Uncounted)
}

// ingredients is the share of one jar; known is false where one has no cost.
func ingredients(r *cook.Result, st pack.Stock) (minor int64, known bool) {
	costs, _ := pack.Cost(r)
	if costs == nil || len(costs.Unpriced) > 0 {
		return 0, false
	}
	for _, z := range costs.Sizes {
		if z.JarKey == st.Jar.Key {
			return z.Cost.Minor, true
		}
	}
	return 0, false
}

// work is one jar's share of the hours, rounded half up to the coin.
func work(r *cook.Result, c batch.Costs) int64 {
	jars := int64(r.Count())
	if jars == 0 || r.Batch.Hours <= 0 {
		return 0
	}
	return (2*int64(float64(c.Hour.Minor)*r.Batch.Hours+0.5) + jars) / (2 * jars)
}

// unpriced names the ingredients of a batch that have no cost.
func (s *Summary) unpriced(r *cook.Result) {
	var names []string
	for _, l := range r.Lines {
		if l.Cost.Minor <= 0 && !l.IsWater {
			names = append(names, pack.LineName(r, l))
		}
	}
	if len(names) > 0 {
		s.Unpriced = append(s.Unpriced, pack.Name(r)+": "+s.in.And(names))
	}
}

// fees adds what each stall cost: the market's own fee, else the kitchen's.
func (s *Summary) fees(visits map[visitKey]*Visit, results []*cook.Result, k *batch.Kitchen) {
	own := map[visitKey]int64{}
	for _, r := range results {
		if r == nil || r.Batch == nil {
			continue
		}
		for _, m := range r.Batch.Markets {
			if key := (visitKey{pack.FoldName(m.Event), m.Date}); m.Fee.Currency != "" {
				own[key] = max(own[key], m.Fee.Minor)
			}
		}
	}
	for key, v := range visits {
		fee, said := own[key]
		if !said {
			fee = k.Costs.Fee.Minor
			v.NoFee = k.Costs.Fee.Currency == ""
		}
		if v.NoFee && !slices.Contains(s.Uncounted, "stalls") {
			s.Uncounted = append(s.Uncounted, "stalls")
		}
		v.Fee = fee
		s.All.Fee += fee
		monthFee(s.Months, key.date, fee)
		s.Visits = append(s.Visits, *v)
	}
	sort.Slice(s.Visits, func(i, j int) bool {
		a, b := s.Visits[i], s.Visits[j]
		if a.Date != b.Date {
			return a.Date.Before(b.Date)
		}
		return a.Name < b.Name
	})
}

func monthFee(months []Tally, d unit.Date, fee int64) {
	name := monthName(d)
	for i := range months {
		if months[i].Name == name {
			months[i].Fee += fee
		}
	}
}

// needs lists what a season like this one takes, against the cupboard.
func (s *Summary) needs(p *pack.Plan, k *batch.Kitchen) {
	jars, lids, labels, name := map[string]int{}, map[string]int{}, map[string]int{}, map[string]string{}
	for _, st := range p.Stock {
		jars[st.Jar.Key] += st.Count
		lids[st.Jar.Lid] += st.Count
		name[st.Jar.Key] = st.JarText
		labels[p.LabelSheet(st)] += st.Sealed
	}
	put := func(what string, used, have map[string]int) {
		for _, key := range pack.Wanted(used) {
			n := Need{What: s.in.Say(what), Used: used[key], Have: -1}
			if left, said := have[key]; said {
				n.Have = left
			}
			if words := name[key]; what == "jars" && words != "" {
				n.What += ", " + words
			} else if key != "" {
				n.What += ", " + key
			}
			s.Buy = append(s.Buy, n)
		}
	}
	put("jars", jars, k.Supplies.Jars)
	put("lids", lids, k.Supplies.Lids)
	put("labels", labels, k.Supplies.Labels)
}
