package pack

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
type words struct {
	text     map[string]string
	american bool // dates as in the United States: "Dec 5, 2026"
}

// american is English as the United States writes it.
const american = "en-us"

// languageOf is the language a kitchen's lists are in.
func languageOf(k *batch.Kitchen) string {
	lang := k.Place.Language(k.Language)
	if lang == "en" && k.Place.US() {
		return american
	}
	return lang
}

// spoken reads the table: by language, then by the English words.
var spoken = sync.OnceValue(func() map[string]map[string]string { return templates.ByLanguage("languages/packing.csv") })

func wordsIn(lang string) words {
	lang = strings.ToLower(lang)
	base, _, _ := strings.Cut(lang, "-")
	return words{spoken()[base], lang == american}
}

// say gives words in the language, with values filled in as fmt does.
func (w words) say(english string, args ...any) string {
	if t := w.text[english]; t != "" {
		english = t
	}
	if len(args) == 0 {
		return english
	}
	return fmt.Sprintf(english, args...)
}

func (w words) jars(n int) string { return w.say(plural(n, "%d jar", "%d jars"), n) }

func (w words) boxes(n int) string { return w.say(plural(n, "%d box", "%d boxes"), n) }

// day writes a date in the language: "5 Dec 2026", "5. Dezember 2026".
func (w words) day(d unit.Date) string {
	names := strings.Split(w.text["months"], "|")
	if w.american && !d.IsZero() && d.Month >= 1 && d.Month <= 12 {
		return fmt.Sprintf("%s %d, %d", months[d.Month], d.Day, d.Year)
	}
	if len(names) != 12 || d.IsZero() || d.Month < 1 || d.Month > 12 {
		return w.say(day(d))
	}
	return strings.NewReplacer("{d}", strconv.Itoa(d.Day), "{m}", names[d.Month-1], "{y}", strconv.Itoa(d.Year)).Replace(w.text["date"])
}

// brief writes a date in figures, as the language orders them; in the United
// States in words, where figures are read month first.
func (w words) brief(d unit.Date) string {
	if w.american && !d.IsZero() {
		return w.day(d)
	}
	form := w.text["brief"]
	if form == "" || d.IsZero() {
		return d.String()
	}
	return strings.NewReplacer("{d}", fmt.Sprintf("%02d", d.Day), "{m}", fmt.Sprintf("%02d", d.Month), "{y}", strconv.Itoa(d.Year)).Replace(form)
}

// money writes sums with the language's decimal sign, the money sign behind.
func (w words) money(m []unit.Money) string {
	if w.text["decimal"] == "" {
		return moneyList(m)
	}
	var out []string
	for _, v := range m {
		text := v.String()
		number := strings.Trim(text, "$£€ ABCDEFGHIJKLMNOPQRSTUVWXYZ")
		sign := strings.TrimSpace(strings.Replace(text, number, "", 1))
		out = append(out, w.number(number)+"\u00a0"+sign)
	}
	return strings.Join(out, " + ")
}

// number gives a figure the language's decimal sign.
func (w words) number(figure string) string {
	if sign := w.text["decimal"]; sign != "" {
		return strings.Replace(figure, ".", sign, 1)
	}
	return figure
}

// speak gives every part of a plan its language.
func (p *Plan) speak(lang string) {
	w := wordsIn(lang)
	p.in = w
	for _, stops := range [][]Stop{p.Stops, p.Done} {
		for i := range stops {
			stops[i].in = w
			for j := range stops[i].Lines {
				stops[i].Lines[j].in = w
			}
			for j := range stops[i].Boxes {
				stops[i].Boxes[j].in = w
			}
			for j := range stops[i].Wishes {
				stops[i].Wishes[j].in = w
			}
		}
	}
	for i := range p.Stock {
		p.Stock[i].in = w
	}
	for i := range p.Fridge {
		p.Fridge[i].in = w
	}
	for i := range p.Supplies {
		p.Supplies[i].in = w
	}
}
