package compose

import (
	"fmt"
	"jarmark/internal/draw/typeset"
	"strings"
	"unicode"

	"jarmark/internal/draw/face"
	"jarmark/internal/law/label"
)

// clean takes the content's words and leaves out, with a finding, every
// character no typeface of the design draws, so that nothing wrong is printed
// in its place.
func (s *setter) clean() {
	v := s.d.Voices
	body := []*face.Face{s.faces.Face(v.Text.Face), s.faces.Face(v.Text.Bold), s.faces.Face(v.Net.Face), s.faces.Face(v.Small.Face)}
	display := []*face.Face{s.faces.Face(v.Title.Face), s.faces.Face(v.Subtitle.Face)}
	hand := []*face.Face{s.faces.Face(v.Hand.Face), s.faces.Face(v.Text.Face)}
	s.title = s.drawn(s.c.Title, "name", "the name", display)
	s.sub = s.drawn(s.c.Subtitle, "name", "the name", display)
	for _, b := range s.c.Blocks {
		faces := body
		switch b.Kind {
		case label.Identity, label.Brand:
			faces = append(append([]*face.Face(nil), body...), display...)
		case label.To, label.From, label.Message, label.Season:
			faces = hand
		}
		runs := make([]label.Run, 0, len(b.Runs))
		for _, r := range b.Runs {
			r.Text = s.drawn(r.Text, b.Path, string(b.Kind), faces)
			if r.Text != "" {
				runs = append(runs, r)
			}
		}
		b.Runs = runs
		if courtesy(s.piece) && b.Kind != label.Statement {
			b.Min = label.Height{}
		}
		if strings.TrimSpace(b.Text()) == "" {
			b.Runs = nil
		}
		s.blocks = append(s.blocks, b)
	}
	s.nameAllergens()
}

// nameAllergens makes the allergen line of a stall's card where the label has
// none, because the list of ingredients emphasises them there (Regulation (EU)
// 1169/2011, Article 21(1)). A buyer who cannot take up the jar must be able
// to read them all the same.
func (s *setter) nameAllergens() {
	if s.piece != label.ShelfCard && s.piece != label.AllergCard && s.piece != label.Sign || s.has(label.Allergens) || len(s.c.AllergenNames) == 0 {
		return
	}
	text := s.faces.Face(s.d.Voices.Text.Face)
	b := label.Block{ID: "allergen-names", Kind: label.Allergens}
	if w := s.drawn(s.c.AllergenWord, "", "the allergens", []*face.Face{text}); w != "" {
		b.Runs = append(b.Runs, label.Run{Text: w + ": ", Bold: true})
	}
	names := s.drawn(strings.Join(s.c.AllergenNames, ", "), "", "the allergens", []*face.Face{text})
	b.Runs = append(b.Runs, label.Run{Text: names, Bold: len(b.Runs) == 0})
	s.blocks = append(s.blocks, b)
}

// drawn keeps what all faces can draw and reports the rest once each.
func (s *setter) drawn(text, path, what string, faces []*face.Face) string {
	text = strings.ToValidUTF8(text, "\uFFFD")
	missing := ""
	kept := strings.Map(func(r rune) rune {
		switch {
		case r == typeset.NBSP || r == ' ':
			return r
		case unicode.IsSpace(r):
			return ' '
		case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r):
			return -1 // joiners and marks that print nothing
		}
		for _, f := range faces {
			if f != nil && !f.Has(r) {
				if !strings.ContainsRune(missing, r) {
					missing += string(r)
				}
				return -1
			}
		}
		return r
	}, text)
	if missing != "" && !s.told(path, missing) {
		s.found.Errorf("missing-glyph", "", path, "%s: no typeface here draws %s", what, calledAll([]rune(missing))).
			Hinted("write it in plain letters; pictures and emoji cannot be printed")
	}
	return kept
}

// told reports whether these letters of these words of the maker's have been
// found already: a name stands on a label more than once.
func (s *setter) told(path, missing string) bool {
	key := path + "\n" + missing
	if s.undrawn[key] {
		return true
	}
	if s.undrawn == nil {
		s.undrawn = map[string]bool{}
	}
	s.undrawn[key] = true
	return false
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
