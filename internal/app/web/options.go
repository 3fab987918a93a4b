package web

import (
	"cmp"
	"slices"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/law/label"
)

// pieceWords names the pieces as people do.
var pieceWords = map[label.Piece][2]string{
	label.Wrap:       {"Wrap-around", "everything on one band around the jar"},
	label.Front:      {"Front", "the name and the net weight"},
	label.InfoLabel:  {"Back", "what is in it, for the back of the jar"},
	label.Lid:        {"Lid", "a round label for the lid"},
	label.Tag:        {"Hang tag", "for a ribbon, with names"},
	label.SealStrip:  {"Seal strip", "over the lid, so that opening shows"},
	label.BagCard:    {"Bag card", "everything on a card over a bag"},
	label.CaseLabel:  {"Case", "for the box"},
	label.ShelfCard:  {"Price card", "for the stall"},
	label.AllergCard: {"Allergen card", "for the stall"},
	label.Sign:       {"Sign", "for the stall, with the words your state asks"},
}

// pieces lists the pieces as choices, the all-round one first.
func (s *site) pieces(query string) (out []option) {
	all := slices.Clone(label.Pieces)
	slices.SortStableFunc(all, func(a, b label.Piece) int { return rank(a) - rank(b) })
	for _, p := range all {
		w := pieceWords[p]
		out = append(out, option{string(p), w[0], w[1], "../picture/piece/" + string(p) + query})
	}
	return out
}

func rank(p label.Piece) int {
	if p == label.Wrap {
		return 0
	}
	return 1
}

func (s *site) designs(query string) (out []option) {
	for _, d := range s.env().Designs.List() {
		out = append(out, option{d.ID, d.Name, d.About, "../picture/design/" + d.ID + query})
	}
	return out
}

// sheets lists the sheets of a piece, those of the maker's paper first.
func (s *site) sheets(piece, paper string) (out []option) {
	for _, sh := range s.env().Sheets.List() {
		if sh.Takes(piece) || sh.Auto {
			out = append(out, option{sh.ID, sh.ID, sh.Title, "../picture/sheet/" + sh.ID})
		}
	}
	slices.SortStableFunc(out, func(a, b option) int { return other(a.Value, paper) - other(b.Value, paper) })
	return out
}

// other is 1 for a sheet of another paper.
func other(sheet, paper string) int {
	if strings.HasPrefix(sheet, paper) {
		return 0
	}
	return 1
}

func (s *site) places() (out []option) {
	for _, p := range s.env().Book.List() {
		out = append(out, option{Value: p.ID, Text: p.Name + " (" + p.ID + ")"})
	}
	slices.SortFunc(out, func(a, b option) int { return strings.Compare(a.Text, b.Text) })
	return out
}

// withOptions fills in the choices that depend on the environment and on what
// the text says already. query asks for pictures of this batch.
func (s *site) withOptions(f filledForm, query string) filledForm {
	piece := cmp.Or(f.value("label.kind"), string(label.Wrap))
	k, _, _ := s.folder.kitchen() // a fault of reading it shows with the batch
	paper := s.env().PaperOf(k)
	for i := range f.Sections {
		switch x := &f.Sections[i]; x.ID {
		case "printer":
			x.Link, x.LinkText = "align/"+paper+"-plain", "Print the alignment page"
		case "ownjars":
			x.Link, x.LinkText = "tape/"+paper+"-plain", "Print a paper tape to measure jars with"
		case "rules":
			x.Link, x.LinkText = "rules/"+cmp.Or(f.value("place"), "us"), "Read these rules, with their sources"
		}
	}
	f.each(func(x *filledField) {
		switch x.optionsFrom {
		case "kinds":
			x.Options = optionsOf(job.ProductWords()...)
		case "methods":
			x.Options = optionsOf(job.ProcessMethods()...)
		case "languages":
			x.Options = optionsOf(s.env().Book.Languages()...)
		case "designs":
			x.Options, x.Value = s.designs(query), cmp.Or(x.Value, job.DefaultDesign())
		case "pieces":
			x.Options, x.Value = s.pieces(query), piece
		case "sheets":
			x.Options = append([]option{{"", "choose for me", "the roomiest that fits, else plain paper", ""}}, s.sheets(piece, paper)...)
		case "places":
			x.Options = s.places()
		}
		x.keepOwn()
	})
	return f
}

// keepOwn shows a value that is none of the choices, so that it isn't lost.
func (x *filledField) keepOwn() {
	if x.As != choice && x.As != cards || x.Value == "" {
		return
	}
	if !slices.ContainsFunc(x.Options, func(o option) bool { return o.Value == x.Value }) {
		x.Options = append(slices.Clone(x.Options), option{Value: x.Value, Text: x.Value, About: "as written in the text"})
	}
}

func (f filledForm) each(do func(*filledField)) {
	for _, s := range f.Sections {
		for _, g := range s.Groups {
			for _, r := range append(slices.Clone(g.Filled), g.Empty) {
				for i := range r.Fields {
					do(&r.Fields[i])
				}
				for i := range r.More {
					do(&r.More[i])
				}
			}
		}
	}
}

func (f filledForm) value(path string) (v string) {
	f.each(func(x *filledField) {
		if x.Path == path {
			v = x.Value
		}
	})
	return v
}

// suggestions are the lists behind fields that take free words.
type suggestions struct{ Pantry, Jars, Designs, Occasions []string }

func (s *site) suggestions(k job.Doc) (out suggestions) {
	for _, i := range s.env().Pantry.Ingredients() {
		out.Pantry = append(out.Pantry, i.Name)
	}
	rows, _ := s.env().JarRows(k) // findings about the kitchen show elsewhere
	for _, r := range rows {
		out.Jars = append(out.Jars, jarWords(r[1]))
	}
	for _, d := range s.env().Designs.List() {
		out.Designs = append(out.Designs, d.ID)
	}
	out.Occasions = []string{"winter", "harvest", "summer", "birthday", "wedding", "thanks"}
	slices.Sort(out.Pantry)
	out.Pantry, out.Jars = slices.Compact(out.Pantry), slices.Compact(out.Jars)
	return out
}

// jarWords is a jar as a maker writes it: the description up to its details.
func jarWords(description string) string { return strings.TrimSpace(description) }
