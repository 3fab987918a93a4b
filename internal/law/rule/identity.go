package rule

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// panelTable holds what binds every required statement.
type panelTable struct {
	Letter   int64 `toml:"min_letter_nm"`    // least height, lower-case o (21 CFR 101.2(c))
	Identity int   `toml:"identity_percent"` // of the largest print, as the FDA reads 101.3(d)
	Origin
}

// letterO is the least height of all required words.
func (p *pass) letterO() label.Height {
	if pr := p.prog; pr != nil && pr.Scope == "label" && pr.MinPoints > 0 {
		// The size binds the whole label and 1/16 in on the o still holds: 11
		// points carry an o of 1/16 in in any face whose o is 0.41 em or more.
		return label.Height{On: label.PointSize, Length: unit.Points(float64(max(pr.MinPoints, 11)))}
	}
	return label.Height{On: label.AnyCase, Length: unit.Length(p.Set.Panel.Letter)}
}

// identity adds the name of the food: bold, on the main panel.
func identity(p *pass) {
	name := strings.TrimSpace(p.B.Name)
	if name == "" {
		p.Duty("no-name", p.BatchFile(), "name", "the food has no name").Hinted(`write name = "Strawberry jam"`).Cited("21 CFR 101.3")
		return
	}
	if word := productWord(name); word == "" && p.B.Kind != "" && p.B.Kind != batch.Spread {
		named := name + " " + kindWord(p.B.Kind)
		p.L.Notef("name-lacks-product", p.BatchFile(), "name", "%q does not say what it is, so the label also says %q", name, named).Cited("21 CFR 101.3(b)")
		name = named
	}
	p.add(label.Block{Kind: label.Identity, Runs: []label.Run{{Text: name, Bold: true}}, Bold: true, Zone: label.Panel, Required: true, OfLargest: p.Set.Panel.Identity, Cite: "21 CFR 101.3", Verified: p.Set.Panel.Confidence, Path: "name"})
}

// productWords are the words that tell what sort of preserve a food is, with
// the kind each stands for.
var productWords = []struct{ word, kind string }{
	{"jam", "jam"}, {"jams", "jam"}, {"preserve", "jam"}, {"preserves", "jam"}, {"jelly", "jelly"}, {"jellies", "jelly"},
	{"butter", "butter"}, {"marmalade", "marmalade"}, {"curd", "curd"}, {"chutney", "chutney"}, {"relish", "relish"},
	{"conserve", "conserve"}, {"spread", "spread"}, {"syrup", "syrup"}, {"sauce", "sauce"}, {"compote", "compote"},
}

// productWord gives the kind the last such word of a name stands for; "" = none.
func productWord(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), notLetter)
	for i := len(words) - 1; i >= 0; i-- {
		for _, w := range productWords {
			if words[i] == w.word {
				return w.kind
			}
		}
	}
	return ""
}

func kindWord(k batch.Kind) string {
	switch k {
	case batch.Preserve:
		return "preserves"
	case batch.Spread:
		return "fruit spread"
	}
	return string(k)
}

// display splits a name in two lines for the front: "Strawberry" and "& rhubarb
// jam", "Apricot jam" and "with lavender", "Blackcurrant" and "jelly".
func display(b *batch.Batch) (title, subtitle string) {
	if b.Label.Title != "" {
		return strings.TrimSpace(b.Label.Title), strings.TrimSpace(b.Label.Subtitle)
	}
	title, subtitle = split(strings.Join(strings.Fields(b.Name), " "))
	if b.Label.Subtitle != "" {
		subtitle = strings.TrimSpace(b.Label.Subtitle)
	}
	return title, subtitle
}

func split(name string) (title, subtitle string) {
	low := strings.ToLower(name)
	if len(low) != len(name) { // lower-casing moved bytes: leave it whole
		return name, ""
	}
	for _, cut := range []string{" with ", " & ", " and "} {
		if i := strings.Index(low, cut); i > 0 {
			return name[:i], name[i+1:]
		}
	}
	words := strings.Fields(name)
	n := len(words)
	if n < 2 || productWord(words[n-1]) == "" {
		return name, ""
	}
	at := n - 1
	if n > 2 && strings.EqualFold(words[n-2], "fruit") {
		at--
	}
	return strings.Join(words[:at], " "), strings.Join(words[at:], " ")
}
