package compose

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// words is what a label says, less every character no typeface of the design
// draws, so that nothing wrong is printed in its place.
type words struct {
	title, sub string
	apart      bool   // its maker ends a line between them
	jar        string // of a shelf card
	blocks     []label.Block
}

// block finds the first block of a kind.
func (w words) block(k label.Kind) (label.Block, bool) {
	for _, b := range w.all(k) {
		return b, true
	}
	return label.Block{}, false
}

// has reports whether the content has a block of a kind.
func (w words) has(k label.Kind) bool { return len(w.all(k)) > 0 }

// all finds every block of the kinds, in the order of kinds.
func (w words) all(kinds ...label.Kind) []label.Block {
	var out []label.Block
	for _, k := range kinds {
		for _, b := range w.blocks {
			if b.Kind == k && len(b.Runs) > 0 {
				out = append(out, b)
			}
		}
	}
	return out
}

// reader reads words in the faces that will draw them.
type reader struct {
	lang    string
	parts   map[string]string
	undrawn map[string]bool // letters no face draws, told once
	stout   bool            // what is read must stand out
	found   diag.List
}

// readWords reads the content of one piece; what cannot be drawn is found.
func readWords(c *label.Content, p label.Piece, v design.Voices, faces *face.Set) (words, diag.List) {
	of := func(voices ...page.Face) (out []*face.Face) {
		for _, name := range voices {
			out = append(out, faces.Face(name))
		}
		return out
	}
	body, display := of(v.Text.Face, v.Text.Bold, v.Net.Face, v.Small.Face), of(v.Title.Face, v.Subtitle.Face)
	r := reader{lang: c.Lang, parts: c.Parts, undrawn: map[string]bool{}}
	w := words{title: r.named(c.Title, "name", display), sub: r.named(c.Subtitle, "name", display)}
	if t, s := strings.Fields(c.Title), strings.Fields(c.Subtitle); len(t) > 0 && len(s) > 0 {
		_, w.apart = c.Parts[t[len(t)-1]+" "+s[0]]
	}
	for _, b := range c.Blocks {
		in := body
		switch b.Kind {
		case label.Identity, label.Brand:
			in = slices.Concat(body, display)
		case label.To, label.From, label.Message, label.Season:
			in = of(v.Hand.Face, v.Text.Face)
		}
		b.Runs = r.runs(b, in)
		if courtesy(p) && b.Kind != label.Statement {
			b.Min = label.Height{}
		}
		w.blocks = append(w.blocks, b)
	}
	switch p {
	case label.ShelfCard, label.AllergCard, label.Sign:
		w.blocks = append(w.blocks, r.allergens(c, w, of(v.Text.Face))...)
	}
	if p == label.ShelfCard {
		w.jar = r.drawn(c.JarText, "", "the jar", nil)
	}
	return w, r.found
}

// runs reads the runs of a block; none are left of one that says nothing.
func (r *reader) runs(b label.Block, faces []*face.Face) (out []label.Run) {
	said := false
	for _, x := range b.Runs {
		r.stout = b.Bold || x.Bold
		switch {
		case b.Kind == label.Identity && !b.Exact:
			x.Text = r.named(x.Text, b.Path, faces)
		case b.Kind == label.Maker && !b.Exact:
			x.Text = bindNumbers(r.drawn(r.quoted(x.Text, faces), b.Path, string(b.Kind), faces))
		case b.Exact:
			x.Text = r.drawn(x.Text, b.Path, string(b.Kind), faces)
		default:
			x.Text = r.drawn(r.quoted(x.Text, faces), b.Path, string(b.Kind), faces)
		}
		if x.Text != "" {
			out = append(out, x)
			said = said || strings.TrimSpace(x.Text) != ""
		}
	}
	r.stout = false
	if !said {
		return nil
	}
	return out
}

// allergens makes the allergen line of a stall's card where the label has
// none, because the list of ingredients emphasises them there (Regulation (EU)
// 1169/2011, Article 21(1)). A buyer who cannot take up the jar must be able
// to read them all the same.
func (r *reader) allergens(c *label.Content, w words, faces []*face.Face) []label.Block {
	if w.has(label.Allergens) || len(c.AllergenNames) == 0 {
		return nil
	}
	b := label.Block{ID: "allergen-names", Kind: label.Allergens}
	if w := r.drawn(c.AllergenWord, "", "the allergens", faces); w != "" {
		b.Runs = append(b.Runs, label.Run{Text: w + ": ", Bold: true})
	}
	names := r.drawn(strings.Join(c.AllergenNames, ", "), "", "the allergens", faces)
	b.Runs = append(b.Runs, label.Run{Text: names, Bold: len(b.Runs) == 0})
	return []label.Block{b}
}

// drawn keeps what all faces can draw and reports the rest once each.
func (r *reader) drawn(text, path, what string, faces []*face.Face) string {
	return r.kept(text, path, what, faces, false)
}

// named is drawn for a name, which keeps its soft hyphens and line ends.
func (r *reader) named(text, path string, faces []*face.Face) string {
	var b strings.Builder
	words := strings.Split(text, " ")
	for i, w := range words {
		if own, ok := r.parts[w]; ok {
			b.WriteString(own)
		} else {
			b.WriteString(w)
		}
		if i+1 == len(words) {
			break
		}
		if _, ends := r.parts[w+" "+words[i+1]]; ends {
			b.WriteRune(typeset.LineEnd)
		} else {
			b.WriteByte(' ')
		}
	}
	return r.kept(r.quoted(b.String(), faces), path, "the name", faces, true)
}

// quoted sets the quotation marks of the language where the faces have them.
func (r *reader) quoted(text string, faces []*face.Face) string {
	fine := typeset.Quoted(text, r.lang)
	for _, f := range faces {
		if f != nil && strings.ContainsFunc(fine, func(c rune) bool { return strings.ContainsRune(typeset.QuoteMarks, c) && !f.Has(c) }) {
			return text
		}
	}
	return fine
}

func (r *reader) kept(text, path, what string, faces []*face.Face, named bool) string {
	text = norm.NFC.String(strings.ToValidUTF8(text, "\uFFFD")) // e and its accent as one letter
	missing := ""
	kept := strings.Map(func(c rune) rune {
		switch {
		case c == typeset.NBSP || c == ' ' || c == typeset.LineEnd && named:
			return c
		case unicode.IsSpace(c):
			return ' '
		case c == typeset.SoftHyphen && named:
			return c
		case unicode.Is(unicode.Cf, c) || unicode.Is(unicode.Variation_Selector, c):
			return -1 // joiners and marks that print nothing
		}
		for _, f := range faces {
			if f != nil && (!f.Has(c) || r.stout && !named && !f.Stout(c)) {
				if !strings.ContainsRune(missing, c) {
					missing += string(c)
				}
				return -1
			}
		}
		return c
	}, text)
	if key := path + "\n" + missing; missing != "" && !r.undrawn[key] { // a name stands on a label more than once
		r.undrawn[key] = true
		r.found.Errorf("missing-glyph", "", path, "%s: no typeface here draws %s", what, calledAll([]rune(missing))).
			Hinted(helpFor(missing))
	}
	return kept
}

// helpFor says what helps where letters cannot be drawn.
func helpFor(missing string) string {
	switch {
	case strings.ContainsFunc(missing, face.Mark):
		return "the letter under this mark is not made with it, and a mark is not put onto a letter here: write it without the mark"
	case strings.ContainsFunc(missing, face.Shaped):
		return "letters of this script join, stack or bear points, which cannot be set here: write it in Latin, Greek, Cyrillic or Hebrew letters"
	case strings.ContainsFunc(missing, unicode.IsLetter):
		return "put a typeface that has these letters, a TTF or OTF file, into " + face.OwnFolder + "/ beside kitchen.toml (what must stand out needs a bold one), or write it in plain letters"
	}
	return "write it in plain letters; pictures and emoji cannot be printed"
}

// calledAll names up to five letters.
func calledAll(letters []rune) string {
	var names []string
	for _, r := range letters[:min(5, len(letters))] {
		names = append(names, called(r))
	}
	if more := len(letters) - 5; more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return strings.Join(names, ", ")
}

func called(r rune) string {
	if unicode.IsPrint(r) {
		return fmt.Sprintf("%q (U+%04X)", string(r), r)
	}
	return fmt.Sprintf("U+%04X", r)
}

// cased applies a voice's letter case, never to prescribed words.
func cased(v typeset.Voice, b label.Block) []label.Run {
	if b.Exact || (!v.Upper && !v.Lower) {
		return b.Runs
	}
	out := append([]label.Run(nil), b.Runs...)
	for i := range out {
		out[i].Text = recase(v, out[i].Text)
	}
	return out
}

func recase(v typeset.Voice, s string) string {
	switch {
	case v.Upper:
		return strings.ToUpper(s)
	case v.Lower:
		return strings.ToLower(s)
	}
	return s
}

// How many letters of an address are kept on one line: of a part, and of a town
// with the short part after it, its state and postal code.
const (
	mostBound = 16
	mostTown  = 26
	shortPart = 10
)

// bindNumbers keeps the numbers of an address, house and postal code, on the
// line of the word before them, or of the first word of their part.
func bindNumbers(s string) string {
	parts := strings.SplitAfter(s, ", ")
	for i, part := range parts {
		words, line := strings.Split(part, " "), ""
		for j, w := range words {
			numbered := strings.ContainsFunc(w, unicode.IsDigit) || j == 1 && strings.ContainsFunc(words[0], unicode.IsDigit)
			last := line[strings.LastIndexAny(line, " ")+1:]
			switch {
			case j == 0:
				line = w
			case w != "" && numbered && len([]rune(last+w)) < mostBound:
				line += string(typeset.NBSP) + w
			default:
				line += " " + w
			}
		}
		parts[i] = line
		if i > 0 && len([]rune(line)) <= shortPart && strings.ContainsFunc(line, unicode.IsDigit) && !strings.Contains(line, ".") && len([]rune(parts[i-1]+line)) <= mostTown {
			parts[i-1] = strings.TrimSuffix(parts[i-1], " ") + string(typeset.NBSP)
		}
	}
	return strings.Join(parts, "")
}
