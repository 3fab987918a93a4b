package record

import (
	"strconv"
	"strings"
	"sync"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/templates"
)

// words is the page's own wording in one language, from
// templates/web/record-words.csv. To add a language, add a column; an empty
// cell of a regional column ("en-us") is that of its language.
type words struct {
	lang string
	text map[string]string
}

var tables = sync.OnceValue(func() map[string]map[string]string {
	out := templates.ByLanguage("web/record-words.csv")
	for lang, t := range out {
		base, _, _ := strings.Cut(lang, "-")
		for k, v := range t {
			if v == "" {
				t[k] = out[base][k]
			}
		}
		t["bestBefore"] = t["best-before"] // a name a template can write
	}
	return out
})

// wordsFor finds a language and region, else the language ("de-AT" is "de"),
// else English.
func wordsFor(lang string) words {
	lang = strings.ToLower(strings.TrimSpace(lang))
	base, _, _ := strings.Cut(lang, "-")
	for _, l := range []string{lang, base} {
		if t, ok := tables()[l]; ok {
			return words{base, t}
		}
	}
	return words{"en", tables()["en"]}
}

// day writes a date in words: "22 September 2027".
func (w words) day(d unit.Date) string {
	months := strings.Split(w.text["months"], "|")
	if d.Month < 1 || d.Month > len(months) {
		return d.String()
	}
	return fill(w.text["date"], "day", strconv.Itoa(d.Day), "month", months[d.Month-1], "year", strconv.Itoa(d.Year))
}

func (w words) dateWord(r *cook.Result) string {
	if r.Batch.UseBy {
		return w.text["use-by"]
	}
	return w.text["best-before"]
}

// and joins a list: "milk, egg and almond".
func (w words) and(list []string) string {
	if n := len(list); n > 1 {
		return strings.Join(list[:n-1], ", ") + " " + w.text["and"] + " " + list[n-1]
	}
	return strings.Join(list, "")
}

// fill puts values into the {name} places of a phrase, in one pass, so that a
// value that looks like a place stays as it is.
func fill(phrase string, kv ...string) string {
	for i := 0; i < len(kv); i += 2 {
		kv[i] = "{" + kv[i] + "}"
	}
	return strings.NewReplacer(kv...).Replace(phrase)
}

func itoa(n int) string { return strconv.Itoa(n) }
