package table

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

func Jars(n int) string {
	return Count(n, "jar", "jars")
}

func Count(n int, one, many string) string { return strconv.Itoa(n) + " " + Plural(n, one, many) }

func Plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// Said leaves out what is blank.
func Said(list []string) (out []string) {
	for _, s := range list {
		if strings.TrimSpace(s) != "" {
			out = append(out, s)
		}
	}
	return out
}

func Join(s []string) string { return strings.Join(s, ", ") }

// MoneyList writes sums of several currencies one after another, for a spreadsheet.
func MoneyList(m []unit.Money) string {
	var out []string
	for _, v := range m {
		out = append(out, v.Plain())
	}
	return strings.Join(out, " + ")
}
