package record

import (
	"sort"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Entry is one line of the index.
type Entry struct {
	File             string // relative address of the page
	Name, Lot        string
	Contains         []string // allergens of the recipe, as the label names them
	None             bool     // it is proven that there are none
	Made, BestBefore unit.Date
	UseBy            bool
}

// EntryOf is the index line of a batch.
func EntryOf(r *cook.Result, c *label.Content) Entry {
	if r == nil || r.Batch == nil {
		return Entry{}
	}
	var found diag.List
	k := r.Kitchen
	if k == nil {
		k = &batch.Kitchen{}
	}
	p := publisher{r: r, c: c, k: k, w: wordsFor(langOf(r, c, Options{})), found: &found}
	name, sub := p.title()
	return Entry{File: Folder(r.Lot), Name: strings.TrimSpace(name + " " + sub), Lot: r.Lot, Contains: p.contains(), None: p.none(),
		Made: r.Batch.Made, BestBefore: r.BestBefore, UseBy: r.Batch.UseBy}
}

// IndexOptions chooses what the index says.
type IndexOptions struct {
	Lang    string         // empty = the kitchen's
	Kitchen *batch.Kitchen // its name heads the page; may be nil
}

type indexView struct {
	Lang, Title, Maker, Of string
	W                      map[string]string
	Entries                []indexLine
}

type indexLine struct {
	File, Name, Lot, Allergens, DateWord string
	Made, BestBefore                     *when
}

// Index writes the list of batches, the latest first.
func Index(entries []Entry, o IndexOptions) ([]byte, diag.List) {
	var found diag.List
	k := o.Kitchen
	if k == nil {
		k = &batch.Kitchen{}
	}
	w := wordsFor(langOf(&cook.Result{Kitchen: k}, nil, Options{Lang: o.Lang}))
	v := indexView{Lang: w.lang, W: w.text, Maker: strings.TrimSpace(k.Name)}
	v.Of = fill(w.text["of"], "maker", v.Maker)
	if v.Maker == "" {
		v.Of = w.text["batches"]
	}
	v.Title = strings.Join(nonEmpty(w.text["batches"], v.Maker), " · ")
	list := append([]Entry(nil), entries...)
	sort.SliceStable(list, func(i, j int) bool {
		if list[i].Made != list[j].Made {
			return list[j].Made.Before(list[i].Made)
		}
		return list[i].Lot < list[j].Lot
	})
	seen := map[string]bool{}
	for _, e := range list {
		if e.File == "" {
			continue
		}
		if seen[e.File] {
			found.Warnf("lot-twice", "", "", "two batches have the lot %s; the public page of one hides the other's", e.Lot).Hinted("give each batch its own lot")
			continue
		}
		seen[e.File] = true
		v.Entries = append(v.Entries, w.line(e))
	}
	return render("record.index", v, &found), found
}

func (w words) line(e Entry) indexLine {
	l := indexLine{File: e.File, Name: e.Name, Lot: e.Lot, Allergens: w.text["short-list"], DateWord: w.text["best-before"],
		Made: w.when(e.Made), BestBefore: w.when(e.BestBefore)}
	switch {
	case len(e.Contains) > 0:
		l.Allergens = w.and(e.Contains)
	case e.None:
		l.Allergens = w.text["short-none"]
	}
	if e.UseBy {
		l.DateWord = w.text["use-by"]
	}
	return l
}
