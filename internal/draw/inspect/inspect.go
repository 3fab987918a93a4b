// Package inspect looks at finished labels a second time. It measures the ink
// that will be printed, from page items and glyph outlines, and compares it
// with what the content asks for. It shares no layout and no measuring of
// letters with the package that set the label, and may not import it.
//
// A new constraint is one code in the table Codes, one method in the list of
// Frame, and one frame broken on purpose in the test.
package inspect

import (
	"strings"
	"unicode"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// slack is how far measures may disagree by rounding.
const slack = 50 * unit.Micrometre

// Options are what an inspection is told beside the frame and its content.
type Options struct {
	// Reserve is how much above the law's least heights letters must stand, in
	// thousandths of the height (label.PrintReserve).
	Reserve int
}

// Default asks for the reserve that every label is set with.
func Default() Options { return Options{Reserve: label.PrintReserve} }

// inspector verifies one finished frame against the content.
type inspector struct {
	fr    *page.Frame
	c     *label.Content
	faces *face.Set
	opt   Options
	found diag.List

	texts []inked
	codes []*page.Code
	paths []*page.Path // drawings, not backgrounds
	own   []*page.Picture
	under []*page.Path // backgrounds, bottom first
}

// inked is a line of type with the box of its ink.
type inked struct {
	*page.Text
	ink page.Rect
}

// Frame verifies every constraint on a finished frame: letter heights,
// zones, clear space, prescribed words, no overlap of type, codes and
// ornaments, all inside the safe area and shape, contrast, QR level, module
// and quiet zone.
func Frame(fr *page.Frame, c *label.Content, f *face.Set, o Options) diag.List {
	k := &inspector{fr: fr, c: c, faces: f, opt: o}
	if fr == nil || c == nil || f == nil {
		k.found.Errorf("nothing-to-check", "", "", "no finished label to check")
		return k.found
	}
	k.sort()
	for _, look := range []func(){
		k.inside, k.apart, k.heights, k.prominence, k.words, k.net, k.code, k.together, k.contrast,
	} {
		look()
	}
	return k.found
}

// sort splits the items by kind and measures the type.
func (k *inspector) sort() {
	for _, it := range k.fr.Items {
		switch t := it.(type) {
		case *page.Text:
			f := k.faces.Face(t.Face)
			if f == nil {
				k.found.Errorf("unknown-typeface", "", "", "no typeface %q", t.Face)
				continue
			}
			for _, r := range t.String() {
				if !f.Has(r) {
					k.found.Errorf("missing-glyph", "", "", "%q: %s has no U+%04X", t.String(), t.Face, r)
				}
			}
			if b := inkOf(t, f); b.W > 0 {
				k.texts = append(k.texts, inked{t, b})
			}
		case *page.Code:
			k.codes = append(k.codes, t)
		case *page.Picture:
			k.own = append(k.own, t)
		case *page.Path:
			if t.Bleed {
				k.under = append(k.under, t)
			} else {
				k.paths = append(k.paths, t)
			}
		}
	}
}

// inside checks that all but backgrounds lies in the safe area and shape.
func (k *inspector) inside() {
	for _, t := range k.texts {
		if !k.fr.Within(t.ink, slack) {
			k.found.Errorf("outside", "", "", "%q crosses the safe edge", t.String())
		}
	}
	for _, c := range k.codes {
		if !k.fr.Within(c.At, slack) {
			k.found.Errorf("outside", "", "", "the QR code crosses the safe edge")
		}
	}
	for _, p := range k.own {
		if !k.fr.Within(p.At, slack) {
			k.found.Errorf("outside", "", "", "the picture crosses the safe edge")
		}
	}
	for _, p := range k.paths {
		if k.fr.Leaves(p, slack) {
			k.found.Errorf("outside", "", "", "a drawing crosses the safe edge")
			return
		}
	}
}

// apart checks that type, codes and drawings do not meet.
func (k *inspector) apart() {
	k.clearPictures()
	for i, a := range k.texts {
		for _, b := range k.texts[i+1:] {
			if a.At.Y == b.At.Y && a.Block == b.Block {
				continue // one line in two emphases may kern together
			}
			if a.ink.Grow(-slack, -slack).Overlaps(b.ink) {
				k.found.Errorf("overlap", "", "", "%q and %q overlap", a.String(), b.String())
			}
		}
		for _, c := range k.codes {
			if c.WithQuiet().Grow(-slack, -slack).Overlaps(a.ink) {
				k.found.Errorf("overlap", "", "", "%q stands in the quiet zone of the QR code", a.String()).
					Cited("ISO/IEC 18004")
			}
		}
		for _, p := range k.paths {
			if p.Crosses(a.ink.Grow(-slack, -slack)) {
				k.found.Errorf("overlap", "", "", "a drawing crosses %q", a.String())
				break
			}
		}
	}
}

// block finds a content block by id.
func (k *inspector) block(id string) (label.Block, bool) {
	for _, b := range k.c.Blocks {
		if b.ID == id && id != "" {
			return b, true
		}
	}
	return label.Block{}, false
}

// heights measures the letter the law names on every line of every block, and
// asks for the law's least height with the reserve for printing.
func (k *inspector) heights() {
	said := k.said()
	for _, t := range k.texts {
		b, ok := k.block(t.Block)
		if !ok || b.Min.Length <= 0 || !prescribed(b.Kind) && courtesy(label.Piece(k.fr.Piece)) {
			continue
		}
		least := b.Min.With(k.opt.Reserve).Length
		got := measured(b.Min.On, said[voiceOf(t)], k.faces.Face(t.Face), t.Size)
		if got+rounding(least) < least {
			k.found.Errorf("too-small", "", b.Path, "%q is %.2f mm high, least is %.2f mm", t.String(), got.MM(), least.MM()).Cited(b.Cite)
		}
	}
}

// prescribed reports whether words bear a height of their own wherever they
// stand.
func prescribed(k label.Kind) bool { return k == label.Statement || k == label.SignWords }

// prominence compares blocks that must not be less than a part of the largest
// print with it: the statement of identity (21 CFR 101.3(d)).
func (k *inspector) prominence() {
	if !selling(label.Piece(k.fr.Piece)) {
		return
	}
	largest := unit.Length(0)
	for _, t := range k.texts {
		largest = max(largest, t.Size)
	}
	for _, t := range k.texts {
		b, ok := k.block(t.Block)
		if ok && t.Size*100+slack < largest*unit.Length(b.OfLargest) {
			k.found.Errorf("not-prominent", "", b.Path, "%q is set in %.1f pt, less than %d %% of the largest print, %.1f pt",
				t.String(), t.Size.Points(), b.OfLargest, largest.Points()).Cited(b.Cite)
		}
	}
}

// voice is one block in one face and size: its letters are measured together.
type voice struct {
	block string
	face  page.Face
	size  unit.Length
}

func voiceOf(t inked) voice { return voice{t.Block, t.Face, t.Size} }

// words compares what is printed with what the content says.
func (k *inspector) words() {
	printed := map[string]string{}
	for _, it := range k.fr.Items {
		if t, ok := it.(*page.Text); ok {
			printed[t.Block] += t.Words() + " "
		}
	}
	for _, b := range k.c.Blocks {
		got, ok := printed[b.ID]
		if !ok {
			if k.mustBear(b) {
				k.found.Errorf("missing-block", "", b.Path, "the %s label lacks the %s", k.fr.Piece, b.Kind).Cited(b.Cite)
			}
			continue
		}
		want, have := squeeze(b.Text()), squeeze(got)
		if b.Exact && want != have || !strings.EqualFold(straight(want), straight(have)) {
			k.found.Errorf("wrong-words", "", b.Path, "%s: printed %q, not %q", b.Kind, strings.TrimSpace(got), b.Text()).Cited(b.Cite)
		}
	}
}

// mustBear says which required blocks a piece has to carry itself.
func (k *inspector) mustBear(b label.Block) bool {
	if p := label.Piece(k.fr.Piece); p == label.Sign || b.Kind == label.SignWords {
		return p == label.Sign && b.Kind == label.SignWords
	}
	if !b.Required || strings.TrimSpace(b.Text()) == "" {
		return false
	}
	panel := b.Zone == label.Panel || b.Zone == label.Bottom
	switch b.Kind {
	case label.To, label.From, label.Message, label.Price, label.UnitPrice, label.Seal, label.Count, label.Caption, label.Season, label.Serve:
		return false // never facts of the food
	}
	switch label.Piece(k.fr.Piece) {
	case label.Wrap, label.BagCard:
		return true
	case label.Front:
		return panel
	case label.InfoLabel:
		return b.Zone == label.Info
	}
	return false
}

// straight makes quotation marks alike: which ones are set is the language's.
var straight = strings.NewReplacer("\u2018", "'", "\u2019", "'", "\u201a", "'", "\u201c", `"`, "\u201d", `"`, "\u201e", `"`, "\u00ab", `"`, "\u00bb", `"`).Replace

// squeeze leaves out all blanks, where lines may break, and all soft hyphens.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == '\u00ad' {
			return -1
		}
		return r
	}, s)
}
