package table

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
)

// Told is a text of the maker's, and where it stands. Where no typeface draws
// its letters the paper says Instead, so that the row can be found.
type Told struct {
	Text, Instead string // "Γιώργος", "(name: row 4 of friends.csv)"
	File, Path    string
	Pos           diag.Pos
}

// knowing takes the texts a list may have to replace, the longest first, so
// that a name within a longer one does not spoil it.
func (c *Layout) knowing(texts []Told) {
	for _, t := range texts {
		if t.Text = clean(norm.NFC.String(t.Text)); strings.TrimSpace(t.Text) != "" && !c.draws(PlainFace, t.Text) {
			c.hard = append(c.hard, t)
		}
	}
	slices.SortStableFunc(c.hard, func(a, b Told) int { return cmp.Compare(len(b.Text), len(a.Text)) })
}

// draws reports whether a face, or its stand-in, draws all letters.
func (c *Layout) draws(f page.Face, s string) bool {
	face := c.faces.Face(c.faces.Drawing(f, s))
	return !strings.ContainsFunc(s, func(r rune) bool { return !face.Has(r) })
}

// replaced puts in the place of texts that no face draws the same without its
// pictures, where letters are left, else where it stands; and remembers it.
func (c *Layout) replaced(f page.Face, s string) string {
	if len(c.hard) == 0 || c.draws(f, s) {
		return s
	}
	for _, t := range c.hard {
		if !strings.Contains(s, t.Text) {
			continue
		}
		other := strings.Join(strings.Fields(strings.Map(lettersOnly, t.Text)), " ")
		if !strings.ContainsFunc(other, unicode.IsLetter) || !c.draws(PlainFace, other) {
			other = t.Instead
		}
		s = strings.ReplaceAll(s, t.Text, other)
		if key := [2]string{t.Text, t.Instead}; !c.said[key] {
			c.said[key] = true
			d := c.found.Warnf("unprintable-letter", t.File, t.Path, "no typeface of the lists draws all of “%s”: they say “%s”", t.Text, other).
				Hinted("write it in Latin letters, or by hand on the paper")
			d.Pos = t.Pos
		}
	}
	return s
}

// lettersOnly leaves out emoji and other pictures, with what joins them.
func lettersOnly(r rune) rune {
	if unicode.Is(unicode.So, r) || unicode.Is(unicode.Sk, r) && r > unicode.MaxLatin1 || unicode.Is(unicode.Variation_Selector, r) || r == '\u200d' || r == '\u20e3' {
		return -1
	}
	return r
}
