package table

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/templates"
)

// words is what a list says in one language, by what it says in English, from
// templates/languages/packing.csv. To add a language, add a column. The zero
// value is English.
type Words struct {
	text     map[string]string
	american bool // dates as in the United States: "Dec 5, 2026"
}

// american is English as the United States writes it.
const American = "en-us"

// LanguageOf is the language a kitchen's lists are in.
func LanguageOf(k *batch.Kitchen) string {
	lang := k.Place.Language(k.Language)
	if lang == "en" && k.Place.US() {
		return American
	}
	return lang
}

// spoken reads the table: by language, then by the English words.
var spoken = sync.OnceValue(func() map[string]map[string]string { return templates.ByLanguage("languages/packing.csv") })

func WordsIn(lang string) Words {
	lang = strings.ToLower(lang)
	base, _, _ := strings.Cut(lang, "-")
	return Words{spoken()[base], lang == American}
}

// Knows reports whether the language has words of its own for the English ones.
func (w Words) Knows(english string) bool { return w.text[english] != "" }

// Say gives words in the language, with values filled in as fmt does.
func (w Words) Say(english string, args ...any) string {
	if t := w.text[english]; t != "" {
		english = t
	}
	if len(args) == 0 {
		return english
	}
	return fmt.Sprintf(english, args...)
}

func (w Words) Jars(n int) string { return w.Say(Plural(n, "%d jar", "%d jars"), n) }

func (w Words) Boxes(n int) string { return w.Say(Plural(n, "%d box", "%d boxes"), n) }

// Day writes a date in the language: "5 Dec 2026", "5. Dezember 2026".
func (w Words) Day(d unit.Date) string {
	names := strings.Split(w.text["months"], "|")
	if len(names) != 12 || d.IsZero() || d.Month < 1 || d.Month > 12 {
		return w.Say(d.Words(w.american))
	}
	return strings.NewReplacer("{d}", strconv.Itoa(d.Day), "{m}", names[d.Month-1], "{y}", strconv.Itoa(d.Year)).Replace(w.text["date"])
}

// Month is a month's short name: "Jun", "Juni".
func (w Words) Month(n int) string {
	if names := strings.Split(w.text["months"], "|"); len(names) == 12 && n >= 1 && n <= 12 {
		return names[n-1]
	}
	return unit.MonthWord(n)
}

// Brief writes a date in figures, as the language orders them; in the United
// States in words, where figures are read month first.
func (w Words) Brief(d unit.Date) string {
	if w.american && !d.IsZero() {
		return w.Day(d)
	}
	form := w.text["brief"]
	if form == "" || d.IsZero() {
		return d.String()
	}
	return strings.NewReplacer("{d}", fmt.Sprintf("%02d", d.Day), "{m}", fmt.Sprintf("%02d", d.Month), "{y}", strconv.Itoa(d.Year)).Replace(form)
}

// Money writes sums with the language's decimal sign and thousands, the money
// sign behind: "1.234,50 €" (Unicode CLDR, de and fr: #,##0.00 ¤).
func (w Words) Money(m []unit.Money) string {
	var out []string
	for _, v := range m {
		text := v.String()
		if sign := w.text["decimal"]; sign != "" {
			text = v.Number(sign, w.text["thousands"]) + "\u00a0" + v.Sign()
		}
		out = append(out, text)
	}
	return strings.Join(out, " + ")
}

// number gives a figure the language's decimal sign.
func (w Words) Number(figure string) string {
	if sign := w.text["decimal"]; sign != "" {
		return strings.Replace(figure, ".", sign, 1)
	}
	return figure
}

// And joins names as a sentence does.
func (w Words) And(s []string) string {
	switch len(s) {
	case 0:
		return ""
	case 1:
		return s[0]
	}
	return w.Say("%s and %s", Join(s[:len(s)-1]), s[len(s)-1])
}
