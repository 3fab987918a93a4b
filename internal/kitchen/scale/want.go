// Package scale makes a recipe fit exact jars: it takes a computed batch and a
// list of jars, and gives every ingredient in exact grams and in kitchen
// measures. It knows the kitchen, not the law, and does no printing.
package scale

import (
	"regexp"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
)

// Want is one jar size to fill: "24 x 8 fl oz".
type Want struct {
	Count int
	Jar   string // key or words, as cook takes them
}

// mostJars is the most of one size; more is a slip of the pen.
const mostJars = 10_000

// counted finds the start of each "24 x".
var counted = regexp.MustCompile(`(?:^|[\s,;+&])(\d+)\s*[x×*]\s*`)

const wantHint = `write it like "24 x 8 fl oz, 6 x 4 fl oz"`

// Parse reads a list of jars: "24 x 8 fl oz, 6 x pint, wide mouth". Sizes are
// looked up later, by Scale.
func Parse(s string) (out []Want, l diag.List) {
	if len(s) > 1000 {
		l.Errorf("bad-jars", diag.Command, "", "the list of jars is too long").Hinted(wantHint)
		return nil, l
	}
	at := counted.FindAllStringSubmatchIndex(s, -1)
	if len(at) == 0 || strings.Trim(s[:at[0][0]], " ,;") != "" {
		l.Errorf("bad-jars", diag.Command, "", "%q names no count and jar", s).Hinted(wantHint)
		return nil, l
	}
	for i, m := range at {
		end := len(s)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		w, why := one(s[m[2]:m[3]], s[m[1]:end])
		if why != "" {
			l.Errorf("bad-jars", diag.Command, "", "%q %s", strings.Trim(s[m[0]:end], " ,;+&"), why).Hinted(wantHint)
			continue
		}
		out = append(out, w)
	}
	return out, l
}

func one(count, jar string) (Want, string) {
	n, err := strconv.Atoi(count)
	jar = strings.Trim(jar, " ,;+&\t\n")
	if head, ok := strings.CutSuffix(jar, " and"); ok {
		jar = head
	}
	switch {
	case err != nil || n > mostJars:
		return Want{}, "is more jars than one batch can fill"
	case n == 0:
		return Want{}, "is no jar at all"
	case jar == "":
		return Want{}, "names no jar"
	}
	return Want{n, jar}, ""
}
