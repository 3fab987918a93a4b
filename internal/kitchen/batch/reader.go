package batch

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// reader turns the texts of one file into domain values, noting what is wrong
// and going on.
type reader struct {
	file     string
	currency string
	imperial bool              // a pint may be meant as the imperial one
	broken   map[string]bool   // paths that already have a finding from source
	marked   map[string]string // words with soft hyphens, see name
	l        diag.List
}

// open reads and decodes a file. ok is false when nothing could be read.
func open(name string, data []byte, into any) (f *source.File, r *reader, ok bool) {
	r = &reader{file: name, broken: map[string]bool{}}
	f, r.l = source.Parse(name, data)
	if r.l.HasErrors() {
		return f, r, false
	}
	r.l = append(r.l, source.Decode(f, into)...)
	for _, d := range r.l {
		r.broken[d.Path] = true
	}
	return f, r, true
}

// done gives all findings in file order, with their places.
func (r *reader) done(f *source.File) diag.List {
	return f.Locate(r.l).Sorted().Capped(source.MaxFindings)
}

func (r *reader) errorf(code, path, format string, args ...any) *diag.Diagnostic {
	return r.l.Errorf(code, r.file, path, format, args...)
}

// wrong notes a parse error of package unit.
func (r *reader) wrong(code, path string, err error) {
	d := r.errorf(code, path, "%s", err)
	var pe *unit.ParseError
	if errors.As(err, &pe) {
		d.Hint = pe.Hint
		if pe.Instead != "" {
			d.Instead = strconv.Quote(pe.Instead)
		}
	}
}

func has[T any](p *T) bool { return p != nil }

// absent reports whether a text the maker must write isn't there, and has no
// finding of its own.
func (r *reader) absent(p *string, path string) bool {
	return (p == nil || strings.TrimSpace(*p) == "") && !r.broken[path]
}

// Lengths of texts in characters: a name fits a label, a story a page.
const (
	shortText = 200
	longText  = 20_000
)

// text reads a short text on one line; "" when absent.
func (r *reader) text(p *string, path string) string {
	return r.plain(p, path, shortText, false)
}

// prose reads a long text of several lines.
func (r *reader) prose(p *string, path string) string {
	return r.plain(p, path, longText, true)
}

func (r *reader) plain(p *string, path string, most int, lines bool) string {
	if !has(p) {
		return ""
	}
	s := norm.NFC.String(strings.TrimSpace(*p)) // a letter and its accent are one sign, as typefaces have it
	if n := utf8.RuneCountInString(s); n > most {
		r.errorf("text-too-long", path, "the text has %d characters, more than %d", n, most).Hinted("shorten it")
		return ""
	}
	for _, c := range s {
		if lines && (c == '\n' || c == '\t' || c == '\r') {
			continue
		}
		if unicode.IsControl(c) || c == '\u2028' || c == '\u2029' {
			r.errorf("control-character", path, "the text has a control character (%U)", c).Hinted(controlHint(c))
			return ""
		}
		if unseen(c) {
			r.errorf("unseen-character", path, "the text has a character that is not seen (%U)", c).
				Hinted("delete it and type the text again: it may come from copying, and can turn round what stands beside it")
			return ""
		}
	}
	return strings.ReplaceAll(s, "\r\n", "\n")
}

// unseen are characters without width, and marks of the direction of writing:
// two names that look alike would differ.
func unseen(c rune) bool {
	return c == '\u00AD' || c == '\uFEFF' || c >= '\u200B' && c <= '\u200F' || c >= '\u202A' && c <= '\u202E' || c >= '\u2060' && c <= '\u206F'
}

func controlHint(c rune) string {
	if c == '\n' || c == '\r' || c == '\u2028' || c == '\u2029' {
		return "write it on one line"
	}
	return "delete it and type the text again"
}

// texts reads a list of short texts; empty ones are dropped.
func (r *reader) texts(in []string, path string) (out []string) {
	if len(in) > 1000 {
		r.errorf("list-too-long", path, "the list has %d entries, more than 1000", len(in)).Hinted("shorten it")
		return nil
	}
	for i := range in {
		if s := r.text(&in[i], source.At(path, i)); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// allergens reads a maker's allergen words. An empty list is kept apart from
// none: it says that there are none. A list of unreadable words says nothing.
func (r *reader) allergens(in []string, path string) []string {
	out := r.texts(in, path)
	if in != nil && len(in) == 0 {
		return []string{}
	}
	return out
}

// choice reads one of a few words; synonyms map a maker's word to ours.
func (r *reader) choice(p *string, path, what string, words []string, synonyms map[string]string) string {
	s := strings.ToLower(r.text(p, path))
	s = strings.Join(strings.Fields(strings.ReplaceAll(s, "-", " ")), " ")
	if to, ok := synonyms[s]; ok {
		return to
	}
	if s == "" {
		return s
	}
	for _, w := range words {
		if s == w {
			return w
		}
	}
	d := r.errorf("unknown-word", path, "%q is not a known %s", *p, what)
	d.Hint = "write one of: " + strings.Join(words, ", ")
	if near, ok := diag.DidYouMean(s, words); ok {
		d.Meant(near)
	}
	return ""
}

// loose reads a text that may stand without quotes.
func (r *reader) loose(p *source.Loose, path string) string {
	if !has(p) {
		return ""
	}
	s := string(*p)
	return r.text(&s, path)
}

func (r *reader) date(p *source.Loose, path string) unit.Date {
	s := r.loose(p, path)
	if s == "" {
		return unit.Date{}
	}
	d, err := unit.ParseDate(s)
	if err != nil {
		r.wrong("bad-date", path, err)
		return unit.Date{}
	}
	if d.Year < 1990 || d.Year > 2100 {
		r.errorf("bad-date", path, "the year %d is not plausible", d.Year).Hinted("check the year; 1990 to 2100 are read")
		return unit.Date{}
	}
	return d
}

func (r *reader) money(p *source.Loose, path string) unit.Money {
	s := r.loose(p, path)
	if s == "" {
		return unit.Money{}
	}
	m, err := unit.ParseMoney(s, r.currency)
	if err != nil {
		r.wrong("bad-money", path, err)
		return unit.Money{}
	}
	if m.Currency != r.currency {
		r.errorf("other-currency", path, "%s is not in the kitchen's currency, %s", m, r.currency).
			Hinted("change it to " + r.currency + ", or set currency in the kitchen file")
		return unit.Money{}
	}
	return m
}

// price reads what a jar is sold for.
func (r *reader) price(p *source.Loose, path string) unit.Money {
	m := r.money(p, path)
	if has(p) && m.Currency != "" && m.Minor == 0 {
		r.l.Warnf("price-zero", r.file, path, "the price is nothing").Hinted("write what the jar is sold for, or leave price out")
	}
	return m
}

func (r *reader) mass(p *string, path string) unit.Mass {
	s := r.text(p, path)
	if s == "" {
		return 0
	}
	m, err := unit.ParseMass(s)
	if err != nil {
		r.wrong("bad-weight", path, err)
	}
	return m
}

func (r *reader) volume(p *string, path string) unit.Volume {
	s := r.text(p, path)
	if s == "" {
		return 0
	}
	// A jar is measured by weighing the water it takes: 1 g is 1 ml.
	if m, err := unit.ParseMass(s); err == nil {
		return unit.Volume(m) * (unit.Millilitre / unit.Volume(unit.Gram))
	}
	v, err := unit.ParseVolume(s)
	if err != nil {
		r.wrong("bad-volume", path, err)
	}
	return v
}

// length reads a length within limits given in the words of the message.
func (r *reader) length(p *string, path string, least, most unit.Length, limits string) unit.Length {
	s := r.text(p, path)
	if s == "" {
		return 0
	}
	n, err := unit.ParseLength(s)
	if err != nil {
		r.wrong("bad-length", path, err)
		return 0
	}
	if n < least || n > most {
		r.errorf("out-of-range", path, "%s is not %s", s, limits).Hinted("check the number and the unit")
		return 0
	}
	return n
}

func (r *reader) temperature(p *string, path string) *float64 {
	s := r.text(p, path)
	if s == "" {
		return nil
	}
	c, err := unit.ParseTemp(s)
	if err != nil {
		r.wrong("bad-temperature", path, err)
		return nil
	}
	return &c
}

// number checks a plain number against its range.
func (r *reader) number(p *float64, path, what string, least, most float64) *float64 {
	if !has(p) {
		return nil
	}
	if !(*p >= least && *p <= most) {
		r.errorf("out-of-range", path, "%s of %s is not between %s and %s", what, number(*p), number(least), number(most)).
			Hinted("check the number")
		return nil
	}
	return p
}

func number(v float64) string { return fmt.Sprintf("%.6g", v) }

// count checks a number of jars or pieces; absent = otherwise.
func (r *reader) count(p *int, path, what string, otherwise int) int {
	if !has(p) {
		return otherwise
	}
	switch {
	case *p < 0:
		r.errorf("out-of-range", path, "%s can't be negative", what).Hinted("write 0 or more")
	case *p > unit.MaxCount:
		r.errorf("out-of-range", path, "%d is more than the %d jars of one batch", *p, unit.MaxCount).Hinted("check the number")
	default:
		return *p
	}
	return otherwise
}

func truth(p *bool) bool { return p != nil && *p }
