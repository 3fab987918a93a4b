package sheet_test

import (
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/draw/sheet"
)

// Every key of a sheet changes the sheet or is refused, on labels in cells and
// on plain paper alike: none is accepted and then ignored.
func TestEveryKeyIsReadOrRefused(t *testing.T) {
	other := map[string]string{
		"id": `"yours"`, "title": `"Another"`, "note": `"from the attic"`, "pieces": `["lid"]`, "paper": `"120 x 170 mm"`, "landscape": "true",
		"auto": "true", "endless": "true", "shape": `"ellipse"`, "cell": `"39 x 30 mm"`, "corner": `"1 mm"`, "cols": "1", "rows": "3",
		"pitch": `"44 x 34 mm"`, "gutter": `"3 mm"`, "safe": `"1.5 mm"`, "bleed": `"1 mm"`, "symmetric": "true", "cut": "true",
		"margin.left": `"7 mm"`, "margin.top": `"8 mm"`, "margin.right": `"6 mm"`, "margin.bottom": `"7 mm"`,
	}
	keys := sheet.Keys()
	if len(keys) != len(other) {
		t.Errorf("%d keys, %d tried here", len(keys), len(other))
	}
	plain := "id = \"mine\"\ntitle = \"Plain\"\npaper = \"100 x 150 mm\"\nauto = true\n[margin]\nleft = \"5 mm\"\n"
	for _, bases := range [][]string{{own}, {plain, "endless = true\n" + plain}} {
		for _, key := range keys {
			if !slices.ContainsFunc(bases, func(base string) bool { return matters(t, base, key, other[key]) }) {
				t.Errorf("%s = %s is not read in\n%s", key, other[key], bases[0])
			}
		}
	}
}

func matters(t *testing.T, base, key, value string) bool {
	was, l := load(base)
	if was == nil {
		t.Fatal(l)
	}
	text := with(base, key, value)
	is, l := load(text)
	return len(l) > 0 || text == base || !reflect.DeepEqual(was, is)
}

// with is a sheet with a key written otherwise, or added.
func with(text, key, value string) string {
	table, key, inTable := strings.Cut(key, ".")
	if !inTable {
		key = table
	}
	line := regexp.MustCompile(`(?m)^` + key + ` = .*$`)
	switch {
	case line.MatchString(text):
		return line.ReplaceAllLiteralString(text, key+" = "+value)
	case inTable:
		return strings.Replace(text, "["+table+"]\n", "["+table+"]\n"+key+" = "+value+"\n", 1)
	}
	return key + " = " + value + "\n" + text
}
