package us

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

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
	if word := draft.ProductWord(name); word == "" && p.B.Product != "" && p.B.Product != batch.Spread {
		named := name + " " + kindWord(p.B.Product)
		p.L.Notef("name-lacks-product", p.BatchFile(), "name", "%q does not say what it is, so the label also says %q", name, named).Cited("21 CFR 101.3(b)")
		name = named
	}
	p.add(label.Block{Kind: label.Identity, Runs: []label.Run{{Text: name, Bold: true}}, Bold: true, Zone: label.Panel, Required: true, OfLargest: p.Set.Panel.Identity, Cite: "21 CFR 101.3", Verified: p.Set.Panel.Confidence, Path: "name"})
	p.titles()
}

func kindWord(k batch.ProductType) string {
	switch k {
	case batch.Preserve:
		return "preserves"
	case batch.Spread:
		return "fruit spread"
	}
	return string(k)
}
