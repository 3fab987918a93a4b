package us

import (
	"fmt"
	"slices"
	"strings"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// outside lists ingredients a standard does not provide for, and those nothing is
// known of: its list of optional ingredients is closed, and some it takes only
// beside certain fruit (mint and green color beside apple, 21 CFR 150.140(c)(8), (9)).
func (p *pass) outside(v verdict) (out, unknown []entry) {
	if len(v.Allows) == 0 {
		return nil, nil
	}
	for _, e := range p.list {
		ln := e.line
		if at := slices.IndexFunc(v.Bound, func(b place.BoundRule) bool { return bound(b, e) }); at >= 0 {
			strange := func(f fruitShare) bool { return !draft.Among(v.Bound[at].Beside, f.Line) }
			if slices.ContainsFunc(v.Fruits, strange) {
				out = append(out, e)
			}
			continue
		}
		listed := draft.Among(v.Counts, ln) && countsAsFruit(ln)
		if listed {
			_, listed = p.counted(v.Product, ln)
		}
		if ln.IsSweet || ln.IsWater || draft.Among(v.Allows, ln) || draft.Among(v.Unnamed, ln) || listed {
			continue
		}
		if ln.Row.Class == "" {
			unknown = append(unknown, e)
			continue
		}
		if ln.Row.Class == "fruit" && ln.Row.Compound == "" && !countsAsFruit(ln) { // fruit that counts for nothing, such as lemon in a name without it
			continue
		}
		out = append(out, e)
	}
	return out, unknown
}

// bound reports whether a rule is about an ingredient or one of its parts: cherries
// with Red 40, beet juice for color.
func bound(b place.BoundRule, e entry) bool {
	if draft.Among(b.Of, e.line) || e.line.Key == "" && draft.Said(e.line.Name, b.Of, nil) != "" {
		return true
	}
	return slices.ContainsFunc(partNames(e), func(part string) bool { return draft.Said(part, b.Of, nil) != "" })
}

// unknownFood is what no table knows: in a batch without a listed fruit it may be one.
func (p *pass) unknownFood() (out []entry) {
	for _, e := range p.list {
		if e.line.Row.Class == "" && !e.line.IsSweet && !e.line.IsWater {
			out = append(out, e)
		}
	}
	return out
}

// unknowns tells that a standard cannot be said to be met beside what nobody knows.
func (p *pass) unknowns(v verdict) {
	for _, e := range v.Unknown {
		p.L.Warnf("standard-unsure", p.BatchFile(), draft.LinePath(e.line), "nothing is known of %s, so whether the standard for %s is met can't be told", e.name, v.Called()).
			Hinted("write it as the table knows it, or an [[ingredient]] of your own in kitchen.toml with its kind").Cited(v.Cite)
	}
}

// outsiders warns of them.
func (p *pass) outsiders(v verdict) {
	for _, e := range v.Outsiders {
		hint := fmt.Sprintf("leave it out, or call it %q", suggested(v.Fruits, p.B.Name, "Fruit Spread"))
		if e.line.Row.Class == "dairy" {
			hint = "an antifoaming agent may not be of animal fat: skim instead; or " + hint[len("leave it out, or "):]
		}
		p.L.Warnf("standard-outsider", p.BatchFile(), draft.LinePath(e.line), "the standard for %s has no place for %s", v.Called(), e.name).Hinted(hint).Cited(v.Cite)
	}
}

// juiceUnweighed tells that a jelly's notes weigh whole fruit, while the
// standard counts strained juice: enough fruit proves nothing.
func (p *pass) juiceUnweighed(v verdict) bool {
	if v.CountedBy != "juice" {
		return false
	}
	for _, f := range v.Fruits {
		if draft.Has(p.Set.Standard.Doubtful, f.Line.Row.Class) && !strings.Contains(strings.ToLower(f.Line.Name), "juice") {
			p.L.Notef("jelly-juice", p.BatchFile(), draft.LinePath(f.Line), "the standard for jelly weighs strained juice, and the notes weigh %s: whether it is met is not known", f.Line.Name).
				Hinted(`weigh the strained juice, and write it as the ingredient: name = "` + f.Named + ` juice"`).Cited(v.Cite)
			return true
		}
	}
	return false
}

// driedWords adds what a label says of dried fruit: "prepared from dried
// apricots", or "in part" beside other fruit (21 CFR 150.110(e)(2)(i)).
func (p *pass) driedWords(v verdict) {
	if v.Dried == "" {
		return
	}
	var names []string
	for _, f := range v.Fruits {
		if f.Line.Row.Class == "dried fruit" {
			names = append(names, strings.ToLower(f.Line.Name))
		}
	}
	if len(names) == 0 {
		return
	}
	key := v.Dried
	if len(names) < len(v.Fruits) {
		key += "-part"
	}
	for i, n := range names {
		if !strings.HasPrefix(n, "dried ") {
			names[i] = "dried " + n
		}
	}
	p.add(label.Block{ID: "dried", Kind: label.Statement, Runs: p.Say.Runs(key, "list", draft.Joined(names, p.Say.Say("us.and"))),
		Required: true, Exact: true, Cite: v.Cite + "(e)(2)(i)", Verified: v.Confidence, Path: "ingredient"})
}

// advice compares a food that has no standard with what the FDA told makers.
func (p *pass) advice(v verdict) {
	p.L.Notef("standard-not-covered", p.BatchFile(), "name", "no federal standard of identity covers this batch: it is called %s", calledWhat(p.B)).
		Hinted("an honest descriptive name is enough").Cited("21 CFR 150; 21 CFR 101.3(b)")
	r, ok := v.RatioOf(p.class(v))
	fruit, _ := v.fruitSum()
	var sweet int64
	for _, ln := range p.R.Lines {
		if ln.IsSweet {
			sweet += int64(ln.Mass / 1000)
		}
	}
	if ok && less(fruit, r.Sweet, sweet, r.Fruit) {
		p.L.Warnf("marmalade-fruit", p.BatchFile(), "name", "the FDA asks for %d parts of peel and juice to %d of sweetener in %s; here %s meet %s", r.Fruit, r.Sweet, v.Called(), kilos(fruit), kilos(sweet)).
			Hinted("use more fruit, or a name that says spread").Cited(v.Cite)
	}
}
