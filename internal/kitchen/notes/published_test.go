package notes

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/pantry"
)

const published = "../../../testdata/notes/"

// Lines of sixty published recipes as they are printed (testdata/notes, the
// source in the first line of each), each with the reading a person gives it in
// the file beside it. A line may stay unread with a word why; a wrong reading
// fails. Want lines: "amount | name | form"; "cook 1"; "process 10 boiling
// water"; "fill 8 fl oz 5-6 planned" or "got"; "head 1/4 in"; "temp 104 °C"; "ask" (a question
// is put), "orask" (this reading, with a question allowed), "words" (none of
// it is a key), "noval" (no reading without a question).
func TestPublishedRecipes(t *testing.T) {
	files, _ := filepath.Glob(published + "*.txt")
	if len(files) < 60 {
		t.Fatalf("%d recipes", len(files))
	}
	p := pantry.Default()
	total, right := 0, 0
	for _, file := range files {
		lines, want := linesOf(t, file), linesOf(t, strings.TrimSuffix(file, ".txt")+".want")
		if !strings.HasPrefix(lines[0], "# Source: ") || len(lines) != len(want)+1 {
			t.Fatalf("%s: %d lines, %d wanted", file, len(lines)-1, len(want))
		}
		r := Read(strings.Join(lines[1:], "\n"), p)
		for i, l := range r.Lines {
			total++
			switch verdict := judge(l, want[i]); verdict {
			case "":
				right++
			case "unread":
				t.Logf("unread: %s:%d: %s (%s)", filepath.Base(file), i+2, l.Text, strings.Join(l.Says, "; "))
			default:
				t.Errorf("%s:%d: %q: %s", filepath.Base(file), i+2, l.Text, verdict)
			}
			if !l.Read() && len(l.Says)+len(l.Asks) == 0 {
				t.Errorf("%s:%d: %q is dropped without a word", filepath.Base(file), i+2, l.Text)
			}
		}
	}
	t.Logf("%d of %d lines right (%.1f %%)", right, total, 100*float64(right)/float64(total))
	if float64(right) < 0.95*float64(total) {
		t.Errorf("%d of %d lines right, less than 95 %%", right, total)
	}
}

func linesOf(t *testing.T, file string) []string {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSpace(string(data)), "\n")
}

// judge compares one line: "" is right, "unread" is no reading with a word why.
func judge(l Line, want string) string {
	asked := len(l.Asks) > 0
	var missed []string
	plain := false
	for _, w := range strings.Split(want, " ; ") {
		switch w = strings.TrimSpace(w); w {
		case "ask", "fillask", "cookask", "procask":
			if !asked {
				missed = append(missed, "nothing is asked")
			}
		case "noval":
			if l.Read() && !asked && !commented(l) {
				missed = append(missed, fmt.Sprintf("read without a question: %+v %+v %+v", l.Ingredients, l.Keys, l.Fills))
			}
		case "words":
			if l.Read() {
				missed = append(missed, fmt.Sprintf("words are read: %+v %+v %+v", l.Ingredients, l.Keys, l.Fills))
			}
		case "orask":
		default:
			plain = true
			if m := holds(l, w); m != "" {
				missed = append(missed, m)
			}
		}
	}
	if plain && len(missed) == 0 && len(l.Ingredients) > strings.Count(want, "|")/2+strings.Count(want, "|")%2 {
		missed = append(missed, "more is read than stands there")
	}
	switch {
	case len(missed) == 0:
		return ""
	case !l.Read() || asked && strings.Contains(want, "orask"):
		return "unread"
	}
	return strings.Join(missed, "; ") + fmt.Sprintf(" (asked %q)", l.Asks)
}

// wantPaths are the keys of want lines that say less than the key.
var wantPaths = map[string]string{"cook": "cook.minutes", "temp": "cook.temperature", "head": "process.headspace", "process": "process.minutes", "procmin": "process.minutes", "brix": "cook.brix", "ph": "cook.ph",
	"test": "cook.set_test", "pot": "cook.finished_pot", "tare": "cook.pot_tare", "skim": "cook.skimmed", "made": "made", "lot": "lot", "keep": "process.method", "alt": "process.altitude", "brixtemp": "cook.brix_temperature"}

// strict is judge, and no key and no jar read that is not wanted.
func strict(l Line, want string) string {
	verdict := judge(l, want)
	known := map[string]bool{"process.method": strings.Contains(want, "proc"), "process.sterilised": true}
	for _, w := range strings.Split(want, " ; ") {
		head, _, _ := strings.Cut(strings.TrimSpace(w), " ")
		known[wantPaths[head]] = true
	}
	for _, k := range l.Keys {
		if !known[k.Path] && !k.Asked {
			verdict += fmt.Sprintf("; %s = %s is read and does not stand there", k.Path, k.Value)
		}
	}
	if len(l.Fills) > strings.Count(want, "fill ") && !strings.Contains(want, "ask") {
		verdict += fmt.Sprintf("; jars %+v do not stand there", l.Fills)
	}
	return strings.TrimPrefix(verdict, "; ")
}

// commented reports that a line gives nothing but keys another line asks about.
func commented(l Line) bool {
	return len(l.Ingredients)+len(l.Fills) == 0 && !slices.ContainsFunc(l.Keys, func(k Key) bool { return !k.Asked })
}

// holds looks for one wanted reading in a line.
func holds(l Line, want string) string {
	head, rest, _ := strings.Cut(want, " ")
	switch {
	case strings.Contains(want, "|"):
		return food1(l, want)
	case head == "cook":
		return keyed(l, "cook.minutes", rest)
	case head == "procmin":
		return keyed(l, "process.minutes", rest)
	case head == "brix", head == "ph":
		return keyed(l, "cook."+head, rest)
	case head == "alt", head == "brixtemp", head == "test", head == "pot", head == "tare", head == "skim":
		return keyed(l, wantPaths[head], `"`+rest+`"`)
	case head == "made":
		return keyed(l, "made", rest)
	case head == "lot":
		return keyed(l, "lot", `"`+rest+`"`)
	case head == "sealed":
		if !slices.ContainsFunc(l.Fills, func(f Fill) bool { return strconv.Itoa(f.Sealed) == rest }) {
			return fmt.Sprintf("%s: got %+v", want, l.Fills)
		}
		return ""
	case head == "temp":
		return keyed(l, "cook.temperature", `"`+rest+`"`)
	case head == "keep":
		return keyed(l, "process.method", `"`+rest+`"`)
	case head == "head":
		return keyed(l, "process.headspace", `"`+rest+`"`)
	case head == "process":
		n, method, _ := strings.Cut(rest, " ")
		return keyed(l, "process.minutes", n) + keyed(l, "process.method", `"`+method+`"`)
	case head == "fill":
		for _, f := range l.Fills {
			how := map[bool]string{true: "planned", false: "got"}[f.Planned]
			size := cmp.Or(f.Jar, f.Said)
			if strings.HasPrefix(rest, " ") { // of a size no jar has
				size = f.Jar
			}
			if got := fmt.Sprintf("%s %g-%g %s", size, f.Low, f.High, how); got == rest {
				return ""
			}
		}
		return fmt.Sprintf("%s: got %+v", want, l.Fills)
	}
	return "the test does not know " + want
}

func keyed(l Line, path, value string) string {
	if k := l.find(path); k == nil || k.Value != value {
		return fmt.Sprintf("%s is %+v, want %s", path, k, value)
	}
	return ""
}

// food1 looks for an ingredient as wanted; what is told is why the nearest is not it.
func food1(l Line, want string) (miss string) {
	f := strings.Split(want, "|")
	if len(l.Ingredients) == 0 {
		return "not read"
	}
	for _, in := range l.Ingredients {
		if miss = unlike(in, strings.TrimSpace(f[0]), strings.TrimSpace(f[1]), strings.TrimSpace(f[2])); miss == "" {
			return ""
		}
	}
	return miss
}

func unlike(in Ingredient, amount, name, form string) string {
	if got := join(in.Name, in.Names); fold(got) != fold(name) && !sameFood(got, name) {
		return fmt.Sprintf("name %q, want %q", got, name)
	}
	if got := join(in.Amount, in.Amounts); !same(got, amount) {
		return fmt.Sprintf("amount %q, want %q", got, amount)
	}
	said := strings.FieldsFunc(in.Form+" "+strings.ToLower(in.Form)+" "+in.Name, func(r rune) bool { return strings.ContainsRune(" ,/", r) })
	for _, w := range strings.FieldsFunc(form, func(r rune) bool { return strings.ContainsRune(" ,/", r) }) {
		if !slices.Contains(said, w) {
			return fmt.Sprintf("form %q, want %q", in.Form, form)
		}
	}
	return ""
}

// sameFood reports that two names are one row of the table.
func sameFood(a, b string) bool {
	x, ok := pantry.Default().Ingredient(a)
	y, also := pantry.Default().Ingredient(b)
	return ok && also && x.Key == y.Key
}

func join(one string, many []string) string {
	if one != "" {
		return one
	}
	return strings.Join(many, " / ")
}

// fold compares names without state words that change no food.
func fold(s string) string {
	var out []string
	for _, w := range strings.Fields(words.Fold(s)) {
		if !slices.Contains([]string{"fresh", "whole", "white", "ripe", "unsweetened", "regular"}, w) {
			out = append(out, words.Singular(w))
		}
	}
	return strings.Join(out, " ")
}

func same(a, b string) bool {
	as, bs := strings.Split(a, " / "), strings.Split(b, " / ")
	if len(as) != len(bs) {
		return false
	}
	for i := range as {
		x, err := unit.ParseQuantity(as[i])
		y, bad := unit.ParseQuantity(bs[i])
		if err != nil || bad != nil || x.Dim != y.Dim || x.Part != y.Part || math.Abs(x.Count-y.Count) > 1e-9 || x.Mass-y.Mass > 1000 || y.Mass-x.Mass > 1000 || x.Volume != y.Volume {
			return false
		}
	}
	return true
}
