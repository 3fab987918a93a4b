package record

import (
	"regexp"
	"strings"
	"unicode"
)

// Postcodes at the end or the start of the line that names the town: US ZIP,
// UK postcode, and four or five digits before the town (much of Europe).
var (
	usTown = regexp.MustCompile(`^(.+?),?\s+([A-Z]{2})\.?,?\s+\d{5}(?:-\d{4})?$`)
	ukTown = regexp.MustCompile(`^(.*?)[,\s]+[A-Z]{1,2}\d[A-Z\d]?\s*\d[A-Z]{2}$`)
	euTown = regexp.MustCompile(`^(?:[A-Z]{1,2}-)?\d{4,5}\s+(.+)$`)
)

// town is the town of an address, or nothing: a line is taken only when its
// postcode shows that it is the town's and no digits of a house are left in
// it. Better no town than a street.
func town(address []string) string {
	lines := nonEmpty(address...)
	if len(lines) == 1 { // all in one line: the street goes before a comma
		lines = strings.SplitN(lines[0], ",", 2)
		lines = nonEmpty(lines...)
	}
	for i := len(lines) - 1; i >= 1; i-- {
		for _, f := range []func(string) string{usName, ukName, euName} {
			if t := f(lines[i]); t != "" && !strings.ContainsFunc(t, unicode.IsDigit) {
				return t
			}
		}
	}
	return ""
}

func usName(line string) string {
	m := usTown.FindStringSubmatch(line)
	if m == nil {
		return ""
	}
	return lastPart(m[1]) + ", " + m[2]
}

func ukName(line string) string {
	m := ukTown.FindStringSubmatch(line)
	if m == nil {
		return ""
	}
	return lastPart(m[1])
}

func euName(line string) string {
	m := euTown.FindStringSubmatch(line)
	if m == nil {
		return ""
	}
	t, _, _ := strings.Cut(m[1], ",")
	return strings.TrimSpace(t)
}

func lastPart(s string) string {
	return strings.TrimSpace(s[strings.LastIndex(s, ",")+1:])
}

// private reports whether a text repeats what must not be published: address
// lines, telephone, mail, people of the gifts, or the private notes.
func (p publisher) private(text string) bool {
	var secrets []string
	if !p.k.ShowAddress {
		for _, a := range p.k.Address {
			if strings.TrimSpace(a) != town(p.k.Address) {
				secrets = append(secrets, a)
			}
		}
	}
	secrets = append(secrets, p.k.Phone, p.k.Email, p.r.Batch.Notes)
	have := squash(text)
	for _, s := range secrets {
		if q := squash(s); len(q) >= 4 && strings.Contains(have, q) {
			return true
		}
	}
	return false
}

// squash keeps letters and digits, so that "555 0100" meets "555-0100".
func squash(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}
