package proof

import (
	"fmt"
	"jarmark/internal/give/table"
	"strings"

	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Proof is the label of one jar with what the law asks of it, to show an
// inspector. All figures are those of inspect; nothing is computed anew.
type Proof struct {
	Name, Lot, Jar string
	Maker, Place   string // the place whose rules are read
	Design         string
	Law            label.Content // panel and jar measures, language
	American       bool          // dates and inches as in the United States
	Labels         []page.Placement
	Lines          []Line
	Allergens      []label.Why // what each allergen rests on
	Doubt          []string    // ingredients nothing is known of
	None           bool        // it is proven that there are none
	Keeping        []string    // what the keeping promise rests on
	Wrong          []string    // what the inspection found
}

// Line is a required statement, as measured, and how its rule was read.
type Line struct {
	inspect.Line
	Confidence string // "primary", "secondary", "memory"; "" = nothing to read
	ReadOn     string // YYYY-MM-DD
}

// height is a letter's height in the units of the place: "1.66 mm (0.0654 in)";
// a type size in points.
func (p Proof) height(w table.Words, on label.Measure, h unit.Length) string {
	if on == label.PointSize {
		return w.Number(fmt.Sprintf("%.1f", h.Points())) + " pt"
	}
	mm := w.Number(fmt.Sprintf("%.2f", h.MM())) + " mm"
	if !p.American {
		return mm
	}
	return fmt.Sprintf("%s (%.4f in)", mm, float64(h)/float64(unit.Inch))
}

// verdict says whether the line meets its least height; ok is false when it
// is short or missing.
func (p Proof) verdict(w table.Words, l Line) (text string, ok bool) {
	switch {
	case !l.Printed:
		return w.Say("missing"), false
	case l.Short() > 0:
		return w.Say("short by %s", p.height(w, l.Block.Min.On, l.Short())), false
	}
	return w.Say("meets"), true
}

// least says what the law asks of the height of letters.
func (p Proof) least(w table.Words, l Line) string {
	if l.Block.Min.Length <= 0 {
		return w.Say("no height prescribed")
	}
	return w.Say("least %s", p.height(w, l.Block.Min.On, l.Block.Min.Length))
}

// asked lists what else the law asks of the line.
func (p Proof) asked(w table.Words, b label.Block) string {
	var out []string
	ask := func(on bool, what string) {
		if on {
			out = append(out, w.Say(what))
		}
	}
	ask(b.Exact, "letter for letter")
	ask(b.Bold, "bold")
	ask(b.Zone == label.Panel, "on the display panel")
	ask(b.Zone == label.Bottom, "in the lowest 30 % of the display panel")
	ask(b.Clear, "clear space around")
	if b.OfLargest > 0 {
		out = append(out, w.Say("at least %d %% of the largest print", b.OfLargest))
	}
	return strings.Join(out, " · ")
}

// readHow says how a rule was read.
var readHow = map[string]string{"primary": "read in the law", "secondary": "read on a page about the law", "memory": "from memory, not verified"}

// clause is where the duty stands and how that was read.
func (p Proof) clause(w table.Words, l Line) string {
	how := readHow[l.Confidence]
	s := l.Block.Cite
	if how == "" {
		return s
	}
	s = strings.TrimPrefix(s+" · "+w.Say(how), " · ")
	if d, err := unit.ParseDate(l.ReadOn); err == nil {
		s += ", " + w.Day(d)
	}
	return s
}

// lineNames are the names of the statements, as a heading says them.
var lineNames = map[label.Kind]string{
	label.Identity: "Name of the food", label.Net: "Net contents", label.Ingredients: "Ingredients",
	label.Allergens: "Allergens", label.Advisory: "Cross-contact", label.Storage: "Storage", label.Date: "Date",
	label.Lot: "Lot", label.Maker: "Maker", label.Statement: "Prescribed statement", label.Fruit: "Fruit content",
	label.Sugar: "Sugar content", label.Caution: "Caution", label.Brand: "Maker",
}

// name heads a line.
func (l Line) name(w table.Words) string {
	if n := lineNames[l.Block.Kind]; n != "" {
		return w.Say(n)
	}
	return string(l.Block.Kind)
}

// about says what was measured: place, design, stock and jar.
func (p Proof) about(w table.Words) string {
	out := []string{w.Say("rules: %s", p.Place), w.Say("design %s", p.Design), p.Law.JarText}
	for _, pl := range p.Labels {
		out = append(out, w.Number(fmt.Sprintf("%.1f", pl.Frame.W.MM()))+" × "+w.Number(fmt.Sprintf("%.1f mm", pl.Frame.H.MM())))
	}
	if a := p.Law.PanelArea; a > 0 {
		area := w.Number(fmt.Sprintf("%.1f", a/100)) + " cm²"
		if p.American {
			area = fmt.Sprintf("%.1f sq in", a/(25.4*25.4))
		}
		out = append(out, w.Say("display panel %s", area))
	}
	return strings.Join(table.Said(out), " · ")
}
