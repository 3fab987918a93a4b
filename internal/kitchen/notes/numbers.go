package notes

import (
	"strconv"
	"strings"
	"sync"
)

// Numbers in words, in English, German and French, from one to ninety-nine.

var wordNumbers = sync.OnceValue(func() map[string]int {
	m := map[string]int{"an": 1, "eine": 1, "une": 1, "un": 1, "dreissig": 30}
	ones := map[string]string{
		"en": "one two three four five six seven eight nine", "de": "ein zwei drei vier fünf sechs sieben acht neun", "fr": "un deux trois quatre cinq six sept huit neuf"}
	teens := map[string]string{
		"en": "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen", "de": "zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn",
		"fr": "dix onze douze treize quatorze quinze seize dix-sept dix-huit dix-neuf"}
	tens := map[string]string{
		"en": "twenty thirty forty fifty sixty seventy eighty ninety", "de": "zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig", "fr": "vingt trente quarante cinquante soixante"}
	for lang := range ones {
		for i, w := range strings.Fields(ones[lang]) {
			m[w] = i + 1
			for k, t := range strings.Fields(tens[lang]) {
				n := 10*(k+2) + i + 1
				switch lang {
				case "de":
					m[w+"und"+t] = n
				case "fr":
					m[t+"-"+w], m[t+" et "+w], m[t+"-et-"+w] = n, n, n
				default:
					m[t+"-"+w], m[t+" "+w] = n, n
				}
			}
		}
		for i, w := range strings.Fields(teens[lang]) {
			m[w] = 10 + i
		}
		for k, t := range strings.Fields(tens[lang]) {
			m[t] = 10 * (k + 2)
		}
	}
	m["quatre-vingt-dix"], m["quatre-vingts"] = 90, 80
	return m
})

var spelledTime = lazily(`(?i)(^|[^\p{L}-])((?:[\p{L}-]+ )?(?:et )?[\p{L}-]+) ((?:more |full |weitere )?(?:minute[ns]?|mins?|hours?|stunden?|heures?))\b`)

// spelledTimes writes the times of a text in figures: "forty-five minutes". Of
// two words the last may stand alone, unless the first is a number too.
func spelledTimes(s string) string {
	return spelledTime.ReplaceAllStringFunc(s, func(m string) string {
		f := spelledTime.FindStringSubmatch(m)
		low, known := strings.ToLower(f[2]), wordNumbers()
		if n, ok := known[low]; ok {
			return f[1] + strconv.Itoa(n) + " " + f[3]
		}
		before, last, two := strings.Cut(low, " ")
		if n, ok := known[last]; two && ok {
			if _, number := known[before]; number {
				return m // "one two minutes": no number
			}
			return f[1] + f[2][:len(before)] + " " + strconv.Itoa(n) + " " + f[3]
		}
		return m
	})
}
