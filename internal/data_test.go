package internal_test

import (
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"jarmark/templates"
)

// What a contributor writes into a data file is read: a word, a row or a file
// that nothing asks for would look as if it did something. The keys of designs,
// sheets, places and batches, and the cells of the pantry, are tried one by one
// in the tests of the packages that read them; here stand the words.

// program is the text of all our code but its tests.
func program(t *testing.T) string {
	t.Helper()
	var out strings.Builder
	for _, root := range []string{".", "../cmd"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			data, err := os.ReadFile(path)
			out.Write(data)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return out.String()
}

// texts is every built-in file of a pattern, one after the other.
func texts(t *testing.T, patterns ...string) string {
	t.Helper()
	var out strings.Builder
	for _, p := range patterns {
		names, err := fs.Glob(templates.FS, p)
		if err != nil || len(names) == 0 {
			t.Fatal(p, err)
		}
		for _, n := range names {
			data, err := fs.ReadFile(templates.FS, n)
			if err != nil {
				t.Fatal(err)
			}
			out.Write(data)
		}
	}
	return out.String()
}

func rowsOf(t *testing.T, name string) [][]string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(texts(t, name))).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatal(name, err)
	}
	return rows
}

func cellsUnder(rows [][]string, head string) (out []string) {
	at := slices.Index(rows[0], head)
	for _, r := range rows[1:] {
		out = append(out, r[at])
	}
	return out
}

// family is phrases whose last part names a row of another table.
type family struct {
	prefix string
	ids    []string
}

func TestEveryPhraseIsSaid(t *testing.T) {
	code, places := program(t), texts(t, "places/*.toml")
	pantry := rowsOf(t, "pantry/ingredients.csv")
	foods := cellsUnder(pantry, "key")
	parts := strings.FieldsFunc(strings.Join(cellsUnder(pantry, "compound"), " "), func(r rune) bool { return !unicode.IsLetter(r) })
	var additives []string
	for _, m := range regexp.MustCompile(`(?m)^id = "([\w-]+)"`).FindAllStringSubmatch(places, -1) {
		additives = append(additives, m[1])
	}
	families := []family{{"eu.also.", foods}, {"eu.part.", parts}, {"eu.additive.name.", additives}, {"eu.additive.also.", additives}}
	keys := regexp.MustCompile(`(?m)^"?([\w.-]+)"? = "`).FindAllStringSubmatch(texts(t, "languages/*.toml"), -1)
	if len(keys) < 300 {
		t.Fatalf("%d phrases are few", len(keys))
	}
	for _, m := range keys {
		key := m[1]
		bare := strings.TrimPrefix(key, "eu.") // as package eu says it
		if !said(code+places, key, bare) && !slices.ContainsFunc(families, func(f family) bool {
			id, ok := strings.CutPrefix(key, f.prefix)
			return ok && slices.Contains(f.ids, id)
		}) {
			t.Errorf("languages: nothing says %q", key)
		}
	}
}

// said reports whether one of the words stands in a text as a whole string.
func said(text string, words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, `"`+w+`"`) })
}

func TestEveryWordOfTheListsIsSaid(t *testing.T) {
	code := program(t) + texts(t, "places/*.toml")
	for _, en := range cellsUnder(rowsOf(t, "languages/packing.csv"), "en") {
		if !said(code, strings.ReplaceAll(en, `"`, `\"`)) {
			t.Errorf("packing.csv: nothing says %q", en)
		}
	}
	page := code + texts(t, "web/record.html")
	for _, key := range cellsUnder(rowsOf(t, "web/record-words.csv"), "key") {
		way, isWay := strings.CutPrefix(key, "process-") // a method of processing, its spaces hyphens
		if !said(page, key) && !strings.Contains(page, "{{.W."+key+"}}") && !(isWay && said(code, strings.ReplaceAll(way, "-", " "))) {
			t.Errorf("record-words.csv: nothing says %q", key)
		}
	}
	for _, design := range cellsUnder(rowsOf(t, "pantry/occasions.csv"), "design") {
		if _, err := fs.Stat(templates.FS, "designs/"+design+".toml"); err != nil {
			t.Errorf("occasions.csv: no design %q", design)
		}
	}
}

// A page or a script that nothing shows, imports or names is left behind.
func TestEveryFileOfThePageIsServed(t *testing.T) {
	names, err := fs.Glob(templates.FS, "web/*/*")
	if err != nil || len(names) < 30 {
		t.Fatal(names, err)
	}
	all := program(t) + texts(t, "web/page/*", "web/static/*")
	defined := regexp.MustCompile(`{{define "(\w+)"`)
	for _, n := range names {
		file := filepath.Base(n)
		used := strings.Contains(all, `"`+file+`"`) || strings.Contains(all, "/"+file+`"`)
		for _, m := range defined.FindAllStringSubmatch(texts(t, n), -1) {
			used = used || strings.Contains(all, `{{template "`+m[1]+`"`)
		}
		if !used {
			t.Errorf("%s: nothing asks for it", n)
		}
	}
}
