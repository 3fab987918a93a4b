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

var spelledTime = pattern(`(?i)(^|[^\p{L}-])((?:[\p{L}-]+ )?(?:et )?[\p{L}-]+) ((?:more |full |weitere )?(?:minute[ns]?|mins?|hours?|stunden?|heures?))\b`)

// spelledTimes writes the times of a text in figures: "forty-five minutes". Of
// two words the last may stand alone, unless the first is a number too.
func spelledTimes(s string) string {
	s = betweenWord.ReplaceAllStringFunc(spelledOnes(s), func(m string) string { // "between ten and 15 minutes"
		if n, ok := wordNumbers()[strings.ToLower(betweenWord.FindStringSubmatch(m)[1])]; ok {
			return strconv.Itoa(n) + "-"
		}
		return m
	})
	return rangeWord.ReplaceAllStringFunc(s, func(m string) string { // "fifteen or 20 minutes"
		f := rangeWord.FindStringSubmatch(m)
		n, ok := wordNumbers()[strings.ToLower(f[1])]
		if !ok {
			return m
		}
		return strconv.Itoa(n) + f[2] + f[3]
	})
}

var betweenWord = pattern(`(?i)\b(?:between|zwischen|entre) ([\p{L}-]+) (?:and|und|et) `)

var rangeWord = pattern(`(?i)([\p{L}-]+)( ?(?:-|or|to|bis|oder|ou|à) ?)(\d{1,3} (?:more |full |weitere )?(?:minute[ns]?|mins?|hours?|stunden?|heures?)\b)`)

// goodHour is an hour that may be somewhat longer.
var goodHour = pattern(`(?i)\b(an?|eine|une) (?:good|full|solid|whole|gute|knappe|volle|ganze|bonne|petite|grosse) (hours?|stunde|heure|minutes?)\b`)

func spelledOnes(s string) string {
	s = goodHour.ReplaceAllString(s, "1 $2")
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

// minutes turns "1 1/2" hours into "90".
func minutes(n, u string) (string, bool) {
	v, ok := number(n)
	if strings.HasPrefix(strings.ToLower(u), "h") || strings.HasPrefix(strings.ToLower(u), "st") {
		v *= 60
	}
	return strconv.FormatFloat(v, 'f', -1, 64), ok && v > 0 && v <= 1440
}

func number(s string) (float64, bool) {
	whole, frac := 0.0, strings.TrimSpace(strings.Replace(s, ",", ".", 1))
	if a, b, ok := strings.Cut(strings.ReplaceAll(frac, "-", " "), " "); ok {
		v, err := strconv.ParseFloat(a, 64)
		if err != nil {
			return 0, false
		}
		whole, frac = v, strings.TrimSpace(b)
	}
	if a, b, ok := strings.Cut(frac, "/"); ok {
		x, err := strconv.ParseFloat(strings.TrimSpace(a), 64)
		y, bad := strconv.ParseFloat(strings.TrimSpace(b), 64)
		if err != nil || bad != nil || y == 0 {
			return 0, false
		}
		return whole + x/y, true
	}
	v, err := strconv.ParseFloat(frac, 64)
	return whole + v, err == nil
}
