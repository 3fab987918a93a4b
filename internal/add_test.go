package internal_test

import (
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestToAdd does what the table "To add" of DEVELOPERS.md says, in a copy of
// the tree: a place, a language, a design, a sheet, a jar, an ingredient and
// its colours, a measure, an unsafe method and an occasion, with no other edit.
// The program then makes a batch of them, and the packages that read them pass
// their own tests.
func TestToAdd(t *testing.T) {
	if testing.Short() {
		t.Skip("builds and tests a copy of the tree")
	}
	tree := copyTree(t)
	addAll(t, tree)
	bin := filepath.Join(t.TempDir(), "jarmark")
	run(t, tree, 0, "go", "build", "-o", bin, "./cmd/jarmark")
	run(t, tree, 0, bin, "places", "zz")
	work := t.TempDir()
	write(t, work, "kitchen.toml", "name = \"Proefkeuken\"\naddress = [\"Voorbeeldstraat 1\", \"1000 AA Proefstad\"]\nplace = \"zz\"\nlanguage = \"nl\"\naltitude = \"0 m\"\n")
	write(t, work, "batch.toml", addedBatch)
	out := run(t, work, 0, bin, "make", "batch.toml")
	if !strings.Contains(out, "labels.pdf") {
		t.Errorf("make wrote no labels:\n%s", out)
	}
	text := run(t, work, 0, bin, "check", "--json", "batch.toml")
	for _, want := range []string{"proefbessen", "a trial lamp heats one spot"} {
		if !strings.Contains(text, want) {
			t.Errorf("check does not know %q:\n%s", want, text)
		}
	}
	run(t, tree, 0, "go", "test", "-short", "-vet=off", "./internal/draw/sheet", "./internal/draw/design", "./internal/draw/palette", "./internal/kitchen/pantry",
		"./internal/law/...", "./internal/give/pack", "./internal/give/record")
	mistakes(t, tree)
}

// mistakes: what is wrong in such files is told with file, line and key. Each
// build takes seconds, so designs and sheets share one.
func mistakes(t *testing.T, tree string) {
	type slip struct{ file, was, now, want string }
	for _, slips := range [][]slip{{
		{"templates/places/zz.toml", "imperial = true", "imperal = true", "zz.toml:10"},
	}, {
		{"templates/designs/proef.toml", "season = ", "saeson = ", "proef.toml:4"},
		{"templates/sheets/letter-2x3-3.9x3in.toml", "corner = ", "cornr = ", "3.9x3in.toml:6"},
	}, {
		{"templates/languages/nl.toml", "\"eu.date.best\" = ", "\"eu.date.bst\" = ", "nl"},
	}} {
		whole := map[string]string{}
		for _, s := range slips {
			whole[s.file] = read(t, tree, s.file)
			broken := strings.Replace(whole[s.file], s.was, s.now, 1)
			if broken == whole[s.file] {
				t.Fatalf("%s has no %q", s.file, s.was)
			}
			write(t, tree, s.file, broken)
		}
		ask := []string{"places", "zz"}
		if len(slips) > 1 {
			ask = []string{"sheets"} // a design or sheet is read when it is asked for
		}
		out := run(t, tree, -1, "go", append([]string{"run", "./cmd/jarmark"}, ask...)...)
		for _, s := range slips {
			key := strings.Trim(strings.TrimSuffix(s.now[:strings.Index(s.now, "=")], " "), `"`)
			if s.want == "nl" {
				key = "eu.date.best" // the one that is missing now
			}
			if !strings.Contains(out, s.want) || !strings.Contains(out, key) {
				t.Errorf("%s with %s: want %q and %q, got:\n%s", s.file, s.now, s.want, key, out)
			}
			write(t, tree, s.file, whole[s.file])
		}
	}
}

const addedBatch = `name = "Proefbessenjam"
kind = "jam"
made = 2026-09-12

[[ingredient]]
name = "trial berries"
amount = "2 proefpots"

[[ingredient]]
name = "sugar"
amount = "1 kg"

[cook]
finished_pot = "1.6 kg"
brix = 71

[process]
method = "trial lamp"

[[fill]]
jar = "proef200"
count = 6
sealed = 6
declared = "250 g"

[label]
kind = "info"
design = "proef"
sheet = "letter-2x3-3.9x3in"
`

func addAll(t *testing.T, tree string) {
	place := strings.NewReplacer(`id = "ie"`, `id = "zz"`, `"Ireland"`, `"Trial land"`, `languages = ["en"]`, `languages = ["nl", "en"]`,
		`also = ["eire", "republic of ireland"]`, "").Replace(read(t, tree, "templates/places/ie.toml"))
	for _, product := range []string{"jam", "extra-jam", "jelly", "extra-jelly", "marmalade", "jelly-marmalade", "chestnut"} {
		place += "\n[[product]]\nid = \"" + product + "\"\nnames = [{ lang = \"nl\", name = \"proef-" + product + "\" }, { lang = \"en\", name = \"" + product + "\" }]\n"
	}
	write(t, tree, "templates/places/zz.toml", place)
	write(t, tree, "templates/languages/nl.toml", read(t, tree, "templates/languages/fr.toml"))
	write(t, tree, "templates/designs/proef.toml", strings.Replace(read(t, tree, "templates/designs/orchard.toml"), `"Orchard"`, `"Proef"`, 1))
	write(t, tree, "templates/sheets/letter-2x3-3.9x3in.toml", strings.NewReplacer("4x3in", "3.9x3in", "4 x 3 in", "3.9 x 3 in",
		`right = "0.2 in"`, `right = "0.3 in"`, "symmetric = true", "symmetric = false").Replace(read(t, tree, "templates/sheets/letter-2x3-4x3in.toml")))
	column(t, tree, "templates/languages/packing.csv", "nl", "fr")
	column(t, tree, "templates/web/record-words.csv", "nl", "fr")
	column(t, tree, "templates/pantry/ingredients.csv", "name_nl", "name_fr")
	row(t, tree, "templates/pantry/jars.csv", "us8", map[string]string{"key": "proef200", "description": "200 ml trial jar", "height_mm": "130", "straight_panel_height_mm": "100"})
	row(t, tree, "templates/pantry/ingredients.csv", "tayberry", map[string]string{"key": "trialberry", "name": "trial berries", "aliases": "", "name_en": "", "name_de": "Probebeeren|Probebeere|Probebeer", "name_fr": "baies d'essai", "name_nl": "proefbessen|proefbes"})
	row(t, tree, "templates/pantry/unsafe-methods.csv", "oven", map[string]string{"method": "trial lamp", "reason": "a trial lamp heats one spot"})
	row(t, tree, "templates/pantry/measures.csv", table(t, tree, "templates/pantry/measures.csv")[1][0], map[string]string{"words": "proefpot|proefpots", "rows": "", "kinds": "", "grams": "500", "ml": "", "says": "a trial pot taken as 500 g", "ask": ""})
	row(t, tree, "templates/pantry/fruit-colours.csv", "plum", map[string]string{"key": "trialberry", "words": "trial berry"})
	row(t, tree, "templates/pantry/occasions.csv", "winter", map[string]string{"occasion": "trial day", "design": "proef"})
}

// column adds a column with the values of another.
func column(t *testing.T, tree, file, name, like string) {
	rows := table(t, tree, file)
	at := index(rows[0], like)
	for i, r := range rows {
		v := r[at]
		if i == 0 {
			v = name
		}
		rows[i] = append(r, v)
	}
	writeTable(t, tree, file, rows)
}

// row adds a row that is another but for the values given.
func row(t *testing.T, tree, file, like string, values map[string]string) {
	rows := table(t, tree, file)
	for _, r := range rows {
		if r[0] != like {
			continue
		}
		next := append([]string(nil), r...)
		for k, v := range values {
			next[index(rows[0], k)] = v
		}
		writeTable(t, tree, file, append(rows, next))
		return
	}
	t.Fatalf("%s has no row %s", file, like)
}

func index(head []string, name string) int {
	for i, h := range head {
		if h == name {
			return i
		}
	}
	panic("no column " + name)
}

func table(t *testing.T, tree, file string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(read(t, tree, file))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func writeTable(t *testing.T, tree, file string, rows [][]string) {
	var b strings.Builder
	if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	write(t, tree, file, b.String())
}

// copyTree copies what builds: sources, templates, fonts and test data.
func copyTree(t *testing.T) string {
	tree := t.TempDir()
	for _, dir := range []string{"cmd", "internal", "templates", "fonts", "testdata"} {
		if err := os.CopyFS(filepath.Join(tree, dir), os.DirFS(filepath.Join("..", dir))); err != nil {
			t.Fatal(err)
		}
	}
	for _, file := range []string{"go.mod", "go.sum"} {
		write(t, tree, file, read(t, "..", file))
	}
	return tree
}

func read(t *testing.T, dir, file string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, file))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func write(t *testing.T, dir, file, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// run runs a program and gives all it says; want -1 takes any end.
func run(t *testing.T, dir string, want int, name string, args ...string) string {
	t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Dir = dir
	out, err := cmd.CombinedOutput()
	if want == 0 && err != nil {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, out)
	}
	return string(out)
}
