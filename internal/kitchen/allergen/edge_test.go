package allergen

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"jarmark/templates"
)

// Every word of the table means what its row says and no more, typed as it
// stands there, with its umlauts and without: no shorter or longer word of
// another row takes its place.
func TestEveryWordMeansWhatItsRowSays(t *testing.T) {
	data, err := templates.FS.ReadFile("pantry/allergen-words.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	v, read := Default(), 0
	for _, row := range rows[1:] {
		means := strings.Split(row[1], "+")
		if row[0] == "key" || row[1] == joint {
			continue
		}
		var want []string
		for _, m := range means {
			if !slices.Contains([]string{harmless, neutral, class, asks}, m) {
				want = append(want, m)
			}
		}
		slices.Sort(want)
		for _, word := range strings.Split(row[2], "|") {
			word = strings.TrimSuffix(strings.TrimSpace(word), "-")
			for _, typed := range []string{word, strings.NewReplacer("ä", "a", "ö", "o", "ü", "u", "ß", "ss", "é", "e", "è", "e").Replace(word)} {
				r := v.Read(typed)
				var got []string
				for _, h := range r.Hits {
					got = append(got, h.ID)
				}
				slices.Sort(got)
				read++
				if got := slices.Compact(got); !slices.Equal(got, want) {
					t.Errorf("%s: %q means %v, its row says %v", row[0], typed, got, want)
				}
				known := len(want) > 0 || slices.Contains(means, harmless)
				if known = known && !slices.Contains(means, asks); r.Known != known {
					t.Errorf("%s: %q known %v, its row says %s", row[0], typed, r.Known, row[1])
				}
				if r.Empty != slices.Equal(means, []string{neutral}) {
					t.Errorf("%s: %q says nothing: %v, its row says %s", row[0], typed, r.Empty, row[1])
				}
			}
		}
	}
	if read < 2000 {
		t.Errorf("only %d words read", read)
	}
}

// Rows of the American list and of Annex II, against the law's own words:
// triticale is a hybrid of wheat and rye, both in Annex II(1); pine nuts are not
// in Annex II(8); molluscs (14) and celery (9) are not in 21 U.S.C. 321(qq).
func TestRowsOfTheLists(t *testing.T) {
	for id, want := range map[string]Substance{
		"triticale": {US: "wheat", Family: "cereals containing gluten", Annex2: []string{"wheat", "rye"}},
		"pine_nut":  {US: "pine nuts", Family: "tree nuts"},
		"molluscs":  {Annex2: []string{"molluscs"}},
		"celery":    {Annex2: []string{"celery"}},
		"shrimp":    {US: "shrimp", Family: "Crustacean shellfish", Annex2: []string{"crustaceans"}},
		"nuts":      {US: Ask, Family: "tree nuts", Annex2: []string{Ask}, Means: "group"},
		"honey":     {Means: "honey"},
	} {
		s, ok := Default().Substance(id)
		if !ok || s.ID != id || s.US != want.US || s.Family != want.Family || !slices.Equal(s.Annex2, want.Annex2) || s.Means != want.Means || s.Source == "" || s.Group() != (id == "nuts") {
			t.Errorf("%s: %+v", id, s)
		}
	}
	if s, ok := Default().Substance("unobtainium"); ok || s.ID != "" {
		t.Errorf("an unknown id gives %+v", s)
	}
	if n := len(Default().Substances()); n < 60 {
		t.Errorf("%d substances", n)
	}
}

// A word that denies stands just before or just behind what it denies; further
// away it denies nothing.
func TestDenials(t *testing.T) {
	for name, want := range map[string]string{
		"without milk": " ?", "ohne Milch": " ?", "sans lait": " ?", "free of milk": " ?", "free from milk": " ?", "milk free": " ?", "milch frei": " ?",
		"milk without sugar": "milk", "free range eggs": "egg", "free eggs": "egg", "of milk": "milk", "from milk": "milk", "free milk": "milk",
		"free from added milk": "milk", "sugar free milk": "milk", "lait sans sucre": "milk", "Milch ohne Zucker": "milk",
		"nussfrei": " ?", "sojafrei": " ?", "eifrei": " ?", "Mehl nussfrei": "wheat",
	} {
		ids, known := read(name)
		if !known && !strings.Contains(want, "?") {
			known = true // more may be unknown; what is named is asked here
		}
		if !known {
			ids += " ?"
		}
		if ids != want {
			t.Errorf("%q: %q, want %q", name, ids, want)
		}
	}
}

// German compounds: four letters at an end are a stem, three are chance; what
// asks goes on asking in a compound; two halves with no food are no food.
func TestCompounds(t *testing.T) {
	for name, want := range map[string]string{
		"Sojatraum": "soy ?", "Traumsoja": "soy ?", "Nussmehl": "nuts", "Bierkuchen": "barley ?", "Waffelmehl": "wheat ?",
		"Aalglatt": " ?", "Eitraum": " ?", "Erdbeeren Pulverextrakt": " ?", "Mandelmilchpulver": "almond", "Milchmilch": "milk",
		"Malzbier": "barley ?", "Soja": "soy", "Sojaz": "soy ?", "zSoja": "soy ?", "Sojas": "soy",
	} {
		ids, known := read(name)
		if !known {
			ids += " ?"
		}
		if ids != want {
			t.Errorf("%q: %q, want %q", name, ids, want)
		}
	}
	long := strings.Repeat("x", 56)
	if ids, _ := read(long + "soja"); ids != "soy" {
		t.Error("sixty letters are not read")
	}
	if ids, _ := read("x" + long + "soja"); ids != "" {
		t.Error("more than sixty letters are read")
	}
}

// Tokens of E numbers, wherever they stand, and of figures alone.
func TestTokens(t *testing.T) {
	for s, want := range map[string]string{
		"E 322": "e322", "soy E 322": "soy|e322", "E 3": "e3", "vitamin E": "vitamin|e", "e e 5": "e|e5", "E-322 (soy)": "e322|soy", "E x": "e|x",
		"goat's milk": "goat|s|milk", "Œufs Straße": "oeufs|strasse", "": "", "150 g": "150|g", "E 150d E 322": "e150d|e322",
	} {
		if got := strings.Join(Tokens(s), "|"); got != want {
			t.Errorf("%q: %q, want %q", s, got, want)
		}
	}
	v := Default()
	if r := v.Read("250"); !r.Empty || r.Known || len(r.Rest) > 0 {
		t.Errorf("a figure alone: %+v", r)
	}
	if r := v.Read("2 almonds"); r.Empty || !r.Known || len(r.Hits) != 1 || r.Hits[0].ID != "almond" {
		t.Errorf("two almonds: %+v", r)
	}
	if r := v.Read("emulsifier"); r.Empty || r.Known || !slices.Equal(r.Rest, []string{"emulsifier"}) {
		t.Errorf("a use alone: %+v", r)
	}
	if r := v.Read("emulsifier soy lecithin"); !r.Known {
		t.Errorf("a use with its source: %+v", r)
	}
}

// Plurals are undone only where enough of a word is left to be one.
func TestSingulars(t *testing.T) {
	for w, want := range map[string]string{
		"berries": "berry", "pies": "pie", "loaves": "loaf", "radishes": "radish", "peaches": "peach", "boxes": "box", "potatoes": "potato", "glasses": "glass",
		"nuts": "nut", "gateaux": "gateau", "oliven": "olive", "krabben": "krabb", "nuesse": "nuess",
	} {
		if !slices.Contains(singulars(w), want) {
			t.Errorf("%s: %v lacks %s", w, singulars(w), want)
		}
	}
	for w, not := range map[string]string{"bass": "bas", "gas": "ga", "dies": "dy", "noix": "noi", "rosen": "rose", "boden": "bod", "nusse": "nuss", "hives": "hif"} {
		if w != "hives" && slices.Contains(singulars(w), not) {
			t.Errorf("%s is taken for a plural of %s", w, not)
		}
	}
}

// Brackets are followed twenty deep, deeper ones are one level; lines and
// semicolons part items; a name longer than any is cut, not refused.
func TestSplitLimits(t *testing.T) {
	depth := 0
	for items := Split(strings.Repeat("a(", 50) + "b"); len(items) > 0; items = items[0].Parts {
		depth++
	}
	if depth != deepest+1 {
		t.Errorf("%d levels, want %d", depth, deepest+1)
	}
	for text, want := range map[string]int{"a; b\nc, d": 4, "a,,b": 2, "a ) b": 1, " , ": 0, "(x) y": 1, "(x)": 1, "()": 0} {
		if got := Split(text); len(got) != want {
			t.Errorf("%q: %+v", text, got)
		}
	}
	if got := Split("a (b), c"); len(got) != 2 || len(got[1].Parts) != 0 || got[0].Name != "a" {
		t.Errorf("parts run on: %+v", got)
	}
}

// "None" is a word of its own, in any case and with blanks around it.
func TestSaysNone(t *testing.T) {
	for word, want := range map[string]bool{"none": true, " None ": true, "KEINE": true, "aucun": true, "no allergens": true, "n/a": true, "N/A.": true, "-": false, "": false, "nuts": false, "none of the nine": false} {
		if SaysNone(word) != want {
			t.Errorf("%q: %v", word, !want)
		}
	}
}

// A mistake in a row of the tables is told with the file and the row.
func TestFaultsOfTheTables(t *testing.T) {
	milk := []string{"milk", "milk", "", "milk", "", "21 U.S.C. 321(qq)"}
	for want, rows := range map[string][][]string{
		`allergens.csv: "milk": twice`:    {milk, milk},
		`allergens.csv: "": twice, or wi`: {{"", "milk", "", "milk", "", "x"}},
		`allergens.csv: "egg": twice, or`: {{"egg", "egg", "", "eggs", "", ""}},
	} {
		v := &Vocabulary{byID: map[string]int{}}
		if err := v.takeSubstances(rows); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%v: %v", rows, err)
		}
	}
	for want, row := range map[string][]string{
		`allergen-words.csv: "whey" has no source`:                     {"en", "milk", "whey", ""},
		`allergen-words.csv: "whey": no substance "mlik"`:              {"en", "mlik", "whey", "x"},
		`allergen-words.csv: "-": no word`:                             {"en", "milk", "-", "x"},
		"allergen-words.csv: \"milk\": has two meanings":               {"en", "none", "milk", "x"},
		`allergen-words.csv: "milk": has two meanings` + "\x00asks":    {"en", "milk+?", "milk", "x"},
		`allergen-words.csv: "milk": has two meanings` + "\x00class":   {"en", "milk+class", "milk", "x"},
		`allergen-words.csv: "milk": has two meanings` + "\x00neutral": {"en", "milk+neutral", "milk", "x"},
	} {
		want, _, _ = strings.Cut(want, "\x00")
		v := &Vocabulary{byID: map[string]int{"milk": 0}, stems: map[string]sense{}, joints: map[string]bool{}, keys: map[string]sense{}}
		if err := v.takeWords([][]string{{"en", "milk", "milk", "x"}}); err != nil {
			t.Fatal(err)
		}
		if err := v.takeWords([][]string{row}); err == nil || err.Error() != want {
			t.Errorf("%v: %v, want %s", row, err, want)
		}
	}
}
