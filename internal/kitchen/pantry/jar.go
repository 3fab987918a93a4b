package pantry

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

func (p *Pantry) loadFinishes() error {
	t := readTable(p.from, "finishes")
	t.each(func(r row) {
		f := Finish{Name: r.need("finish"), Mouth: unit.MM(r.number("mouth_inside_mm", 0)), Source: r.need("source")}
		f.Memory = memory(f.Source)
		p.finishes = append(p.finishes, f)
	})
	return t.err
}

func (p *Pantry) loadJars() error {
	t := readTable(p.from, "jars")
	t.each(func(r row) {
		j := Jar{
			Key: r.need("key"), Description: r.need("description"), NamedBy: r.need("named_by"),
			Nominal:     nominal(r.need("description"), r.number("nominal_ml", 0)),
			Brimful:     unit.ML((r.number("brimful_ml_low", 0) + r.number("brimful_ml_high", 0)) / 2),
			BrimfulMost: unit.ML(r.number("brimful_ml_high", 0)),
			Mouth:       unit.MM(r.number("mouth_inside_mm", 0)), Height: unit.MM(r.number("height_mm", 0)),
			Diameter: unit.MM(r.number("body_diameter_mm", 0)), Circumference: unit.MM(r.number("circumference_mm", 0)),
			Panel: unit.MM(r.number("straight_panel_height_mm", 0)), Face: unit.MM(r.number("face_mm", 0)), Foot: unit.MM(r.number("foot_circumference_mm", 0)),
			Lid: r.need("neck_finish"), Source: r.need("source"),
		}
		if j.Nominal <= 0 || j.Brimful <= 0 || j.Mouth <= 0 || j.Circumference <= 0 {
			r.fail("nominal_ml", "a size is missing")
		}
		p.jars = append(p.jars, j)
	})
	return t.err
}

var fluidOunces = regexp.MustCompile(`^(\d+) fl oz`)

// nominal gives fluid-ounce jars their exact size; the table rounds to ml.
func nominal(description string, ml float64) unit.Volume {
	if m := fluidOunces.FindStringSubmatch(description); m != nil {
		n, _ := strconv.Atoi(m[1])
		return unit.Volume(n) * unit.FluidOunce
	}
	return unit.ML(ml)
}

func (p *Pantry) finish(lid string) (Finish, bool) {
	words := strings.ReplaceAll(strings.ToLower(lid), "mm", "")
	for _, f := range p.finishes {
		num, _, _ := strings.Cut(f.Name, " ")
		if lid != "" && (strings.HasPrefix(strings.TrimSpace(words), num)) {
			return f, true
		}
	}
	return Finish{}, false
}

// FillVolume gives what a jar holds under a headspace: brimful less the
// cylinder of the mouth. A jar named by its fill that nobody measured holds
// its name at 1/4 in of headspace. Never negative.
func (j Jar) FillVolume(headspace unit.Length) unit.Volume {
	r := j.Mouth.MM() / 2
	air := func(h unit.Length) float64 { return math.Pi * r * r * h.MM() / 1000 } // ml
	ml := j.Brimful.ML() - air(headspace)
	if j.NamedBy != "brimful" && !j.Measured && j.Nominal > 0 || j.Brimful <= 0 {
		ml = j.Nominal.ML() - air(headspace-unit.Inch/4)
	}
	return unit.ML(clamp(ml, 0, 1e6))
}

// MostVolume is more than the jar can hold, filled to the brim: the upper end
// of its range. What nobody measured is from memory, and 5 % more is allowed
// for. 0 = not known.
func (j Jar) MostVolume() unit.Volume {
	most := max(j.Brimful, j.BrimfulMost)
	if !j.Measured {
		most += most / 20
	}
	return most
}

// Jar finds a jar by key or by the words of the trade: "us8", "8 fl oz",
// "8 oz jar", "half-pint", "250 ml", "212 ml", "pint wide mouth". Where
// several fit, the first row of the table is meant: regular mouth.
func (p *Pantry) Jar(words string) (Jar, bool) {
	w := jarWords(words)
	if w == "" {
		return Jar{}, false
	}
	for _, j := range p.jars {
		if strings.EqualFold(strings.TrimSpace(words), j.Key) || w == jarWords(j.Description) || w == jarWords(j.Key) {
			return j, true
		}
	}
	wide := strings.Contains(w, "wide")
	for _, j := range p.jars {
		if strings.Contains(strings.ToLower(j.Description), "wide") == wide && j.called(w) {
			return j, true
		}
	}
	return Jar{}, false
}

// keyed finds a jar by its key alone.
func (p *Pantry) keyed(key string) (Jar, bool) {
	for _, j := range p.jars {
		if strings.EqualFold(strings.TrimSpace(key), j.Key) {
			return j, true
		}
	}
	return Jar{}, false
}

// HasJar reports whether a built-in jar has that key.
func HasJar(key string) bool {
	_, ok := Default().keyed(key)
	return ok
}

func jarWords(s string) string {
	s = strings.ToLower(strings.TrimSpace(strings.TrimSuffix(s, ".")))
	if len(s) > 100 {
		return ""
	}
	for _, cut := range []string{"jars", "jar", ",", "(", ")"} {
		s = strings.ReplaceAll(s, cut, " ")
	}
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "-", " ")), " ")
}

// tradeNames are sizes with a name of their own, in ml or by fluid ounces.
var tradeNames = []struct{ word, size string }{
	{"quarter pint", "4 fl oz"}, {"half pint", "8 fl oz"}, {"1/2 pint", "8 fl oz"}, {"½ pint", "8 fl oz"},
	{"pint", "16 fl oz"}, {"quart", "32 fl oz"}, {"half pound", "195 ml"}, {"1/2 lb", "195 ml"}, {"½ lb", "195 ml"},
	{"half lb", "195 ml"}, {"one pound", "375 ml"}, {"1 lb", "375 ml"}, {"pound", "375 ml"},
}

var sized = regexp.MustCompile(`^(\d+(?:\.\d+)?) ?(fl oz|floz|oz|ounces?|ml|millilit(?:re|er)s?|cl|l|lit(?:re|er)s?)\b`)

var spoken = strings.NewReplacer("fluid ounces", "fl oz", "fluid ounce", "fl oz", "wide mouth", "", "regular mouth", "")

// called reports whether folded words name a jar of this size.
func (j Jar) called(w string) bool {
	w = strings.TrimSpace(spoken.Replace(w))
	for _, n := range tradeNames {
		if w == n.word {
			w = n.size
		}
	}
	m := sized.FindStringSubmatch(w)
	if m == nil || j.Nominal <= 0 {
		return false
	}
	n, _ := strconv.ParseFloat(m[1], 64)
	switch {
	case strings.HasPrefix(m[2], "ml"), strings.HasPrefix(m[2], "milli"):
	case m[2] == "cl":
		n *= 10
	case strings.HasPrefix(m[2], "l"):
		n *= 1000
	default:
		return strings.Contains(j.Description, "fl oz") && math.Abs(n-j.Nominal.ML()/unit.FluidOunce.ML()) < 0.05 ||
			j.Measured && math.Abs(n-j.Nominal.ML()/unit.FluidOunce.ML()) < 0.05
	}
	return math.Abs(n-j.Nominal.ML()) <= 2 || j.inRange(n)
}

var ranged = regexp.MustCompile(`^(\d+)-(\d+) ml`)

// inRange lets "200 ml" find the row "190-200 ml".
func (j Jar) inRange(ml float64) bool {
	m := ranged.FindStringSubmatch(j.Description)
	if m == nil {
		return false
	}
	lo, _ := strconv.ParseFloat(m[1], 64)
	hi, _ := strconv.ParseFloat(m[2], 64)
	return ml >= lo && ml <= hi
}
