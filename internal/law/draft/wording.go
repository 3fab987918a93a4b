package draft

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/place"
)

// ownText is a text of the maker's that stands on a label, a tag or the public
// page. As says what it is: "name" (of the food), "brand", "ingredient", "story".
type ownText struct {
	file, path, text, as string
	words                []string // of the text, in lower case
	apart                []string // the text once for each thing it denies together
}

// says finds a word in a text as Said does, and in what it says of each thing.
func (o ownText) says(words, unless []string) string {
	said := Said(o.text, words, unless)
	for i := 0; said == "" && i < len(o.apart); i++ {
		said = Said(o.apart[i], words, unless)
	}
	return said
}

// ownTexts lists them.
func (p *Draft) ownTexts() []ownText {
	b, k := p.BatchFile(), p.KitchenFile()
	out := []ownText{}
	put := func(file, path, text, as string) {
		out = append(out, ownText{file: file, path: path, text: text, as: as})
	}
	for _, t := range [][4]string{{b, "name", p.B.Name, "name"}, {b, "label.title", p.B.Label.Title, "name"}, {b, "label.subtitle", p.B.Label.Subtitle, "name"},
		{b, "label.season", p.B.Label.Season, "story"}, {b, "label.stamp", p.B.Label.Stamp, "story"}, {b, "label.words", p.B.Label.Words, "story"}, {b, "story", p.B.Story, "story"}, {b, "serve", p.B.Serve, "story"},
		{b, "origin", p.B.Origin, "story"}, {b, "fruit_origin", p.B.FruitOrigin, "story"}, {k, "name", p.K.Name, "brand"}} {
		put(t[0], t[1], t[2], t[3])
	}
	for _, ln := range p.R.Lines {
		for _, path := range ln.Paths[:min(1, len(ln.Paths))] {
			put(b, path, ln.Name, "ingredient")
			for _, part := range ln.Contains {
				put(b, path, part.Name, "ingredient")
			}
		}
	}
	for _, m := range p.B.Markets {
		put(b, under(m.Path, "event"), m.Event, "story")
	}
	for _, g := range p.B.Gifts {
		put(b, under(g.Path, "message"), g.Message, "story")
		put(b, under(g.Path, "occasion"), g.Occasion, "story")
	}
	for _, f := range p.B.Photos {
		put(b, under(f.Path, "alt"), f.Alt, "story")
	}
	return out
}

func under(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// Tell adds a finding of a level; on gifts an error is a note.
func (p *Draft) Tell(level, code, file, path, text string) *diag.Diagnostic {
	switch level {
	case "error":
		return p.Duty(code, file, path, "%s", text)
	case "warning":
		return p.L.Warnf(code, file, path, "%s", text)
	}
	return p.L.Notef(code, file, path, "%s", text)
}

// Wordings reports words a rule governs in the maker's own texts, and claims
// about nutrition, by the tables of the set.
func (p *Draft) Wordings() {
	p.quantities()
	texts := slices.DeleteFunc(p.ownTexts(), func(o ownText) bool { return o.text == "" })
	if t := p.Set.Nutrition; t != nil {
		for _, o := range texts {
			if claim := p.claim(o); claim != "" && o.as != "ingredient" { // unsweetened chocolate is called so
				p.Tell(t.Level, "nutrition-claim", o.file, o.path, fmt.Sprintf("%q %s", claim, t.Text)).Hinted(t.Hint).Cited(t.Cite)
			}
		}
	}
	for i := range texts {
		texts[i].text = unwarned(texts[i].text)
		texts[i].words = strings.Fields(Spaced(texts[i].text))
	}
	p.takeApart(texts)
	var forms []string
	denying := texts
	for _, w := range p.Set.Wordings {
		if len(w.Forms) > 0 {
			forms, denying = w.Forms, mayDeny(w, texts)
		}
		if p.ofItsOwn(w, texts, denying, forms) {
			continue
		}
		held, level, text := p.besides(w), w.Level, w.Text
		switch maybe := p.mayHold(w); {
		case held != "":
			level = "error"
		case maybe != "":
			held, level, text = maybe, "warning", w.Maybe
		case len(w.Beside)+len(w.Held) > 0:
			text = w.Else
		}
		if text != "" {
			for _, o := range texts {
				p.tellWording(w, []ownText{o}, w.Candidates(o.words), w.Unless, level, text, held)
			}
			p.tellDenials(w, denying, forms, level, text, held)
		}
	}
}

// mayDeny are the texts with a word of any of the ways a row knows of denying.
func mayDeny(w place.WordingRule, texts []ownText) (out []ownText) {
	for _, o := range texts {
		if w.MayDeny(o.words) {
			out = append(out, o)
		}
	}
	return out
}

// tellDenials reports the ways of denying a thing: "free from nuts". A text that
// names none of them is not looked at for the ways.
func (p *Draft) tellDenials(w place.WordingRule, texts []ownText, forms []string, level, text, held string) {
	for _, o := range texts {
		if o.says(w.Candidates(o.words), w.Unless) != "" {
			continue // told
		}
		plain := Spaced(o.text)
		for _, x := range w.Of {
			if strings.Contains(plain, " "+strings.ToLower(x)) && o.says(filled(forms, x), w.Unless) != "" {
				p.tellWording(w, []ownText{o}, filled(forms, x), w.Unless, level, text, held)
				break
			}
		}
	}
}

// tellWording reports which of the maker's own texts say a rule's words.
func (p *Draft) tellWording(w place.WordingRule, texts []ownText, words, unless []string, level, text, held string) {
	for _, o := range texts {
		word, says := o.says(words, unless), strings.ReplaceAll(text, "{ingredient}", held)
		told := [4]string{w.ID, o.file, o.path, says}
		if word != "" && Has(w.In, o.as) && !p.told[told] {
			if p.told == nil {
				p.told = map[[4]string]bool{}
			}
			p.told[told] = true
			p.Tell(level, w.ID, o.file, o.path, fmt.Sprintf("%q %s", word, says)).Hinted(w.Hint).Cited(w.Cite)
		}
	}
}

// besides names the first ingredient that makes a word untrue; "" = none.
func (p *Draft) besides(w place.WordingRule) string {
	switch {
	case Has(w.Beside, "cold") && p.R.Keeping.Class != cook.Shelf && p.R.Keeping.Class != cook.ShelfShort:
		return "food that keeps cold"
	case Has(w.Beside, "heat") && Has([]string{"boiling water", "steam"}, p.B.Process.Method):
		return "food that was boiled"
	}
	for _, ln := range p.R.Lines {
		if ln.IsSweet && Has(w.Beside, "sweetener") || ln.Row.Class != "" && Has(w.Beside, ln.Row.Class) || ln.Key != "" && Has(w.Beside, ln.Key) || Said(ln.Name, w.Held, nil) != "" {
			return ln.Name
		}
		for _, part := range ln.Contains {
			if Said(part.Name, w.Held, nil) != "" {
				return part.Name
			}
		}
	}
	for _, f := range p.Allergy.Found {
		if denies(w, f) {
			return f.Word
		}
	}
	return ""
}

// denies reports an allergen that the words of a rule say is not there.
func denies(w place.WordingRule, f cook.Found) bool {
	listed := f.US != "" || len(f.Annex2) > 0
	return Has(w.Beside, f.ID) || Has(w.Beside, f.Family) && f.Family != "" || listed && Has(w.Beside, "allergen")
}

// mayHold names the first ingredient whose packet may hold what makes a word
// untrue, where the maker did not copy its list; "" = none.
func (p *Draft) mayHold(w place.WordingRule) string {
	if len(p.Allergy.Unknown) > 0 && Has(w.May, "unproven") {
		return p.Allergy.Unknown[0].Name
	}
	if Has(w.May, "handled") {
		also := cook.Stated(p.K.AlsoHandles, "also_handles")
		for _, f := range also.Found {
			if denies(w, f) {
				return f.Word
			}
		}
		if len(also.Words) > 0 {
			return also.Words[0].Word
		}
	}
	for _, ln := range p.R.Lines {
		if Has(w.May, "sulphited") && p.Sulphited(ln) || len(ln.Contains) == 0 && Said(ln.Row.Compound, w.May, nil) != "" {
			return ln.Name
		}
	}
	return ""
}

// Said finds a word in a text, at word borders, outside of the phrases that make
// it something else; a star in a word stands for anything.
func Said(text string, words, unless []string) string {
	if len(words) == 0 {
		return ""
	}
	plain := Spaced(text)
	for _, u := range unless {
		plain = strings.ReplaceAll(plain, Spaced(u), " | ")
	}
	i := slices.IndexFunc(words, func(w string) bool { return inOrder(plain, strings.Split(w, "*")) })
	if i < 0 {
		return ""
	}
	return words[i]
}

// inOrder reports whether the pieces of a word stand one after another: "artificial
// * flavor" is in "artificial strawberry flavor".
func inOrder(plain string, pieces []string) bool {
	if !glance(plain, pieces[0]) {
		return false
	}
	for _, piece := range pieces {
		_, behind, ok := strings.Cut(plain, Spaced(piece))
		if !ok {
			return false
		}
		plain = " " + behind // pieces share the space between them
	}
	return true
}

// Spaced writes a text as lower-case words and figures between single spaces,
// so that words are found at their borders: " no sugar added ".
func Spaced(text string) string {
	b, in := make([]byte, 0, len(text)+2), false
	b = append(b, ' ')
	for _, r := range strings.ToLower(text) {
		if NotLetter(r) && (r < '0' || r > '9') {
			if in {
				b = append(b, ' ')
			}
			in = false
			continue
		}
		b, in = utf8.AppendRune(b, r), true
	}
	if in || len(b) == 1 {
		b = append(b, ' ')
	}
	return string(b)
}
