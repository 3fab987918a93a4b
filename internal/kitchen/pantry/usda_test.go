package pantry

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// extract reads the rows of USDA SR28 that the table uses (public domain,
// release 28, 2015/2016, abbreviated file): composition per 100 g, two kitchen
// weights, refuse, and the keys of the rows found to be that food by reading
// both descriptions.
func extract(t *testing.T) map[string]map[string]string {
	t.Helper()
	f, err := os.Open("../../../testdata/usda-sr28-extract.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]map[string]string{}
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = r[i]
		}
		out[m["ndb"]] = m
	}
	return out
}

// disagrees compares two cells as numbers, rounded to two decimals.
func disagrees(a, b string) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX != nil || errY != nil {
		return a != b
	}
	return math.Abs(x-y) > 0.006
}

// Every row with a USDA number bears the number and the values of its own food.
func TestRowsAgreeWithUSDA(t *testing.T) {
	usda := extract(t)
	used := 0
	tableOf("ingredients").each(func(r row) {
		n := r.text("usda_ndb")
		if n == "" {
			if r.text("usda_sr28_name") != "" || strings.HasPrefix(r.text("source"), "USDA") && r.text("composition_of") == "" {
				t.Errorf("%s names USDA and no food of it", r.text("key"))
			}
			return
		}
		used++
		d, ok := usda[n]
		if !ok || !slices.Contains(strings.Split(d["rows"], "|"), r.text("key")) {
			t.Errorf("%s bears %s, which is %q", r.text("key"), n, d["description"])
			return
		}
		for _, col := range []string{"water_g", "protein_g", "fat_g", "carbohydrate_g", "fibre_g"} {
			if disagrees(r.text(col), d[col]) {
				t.Errorf("%s: %s %s, USDA %s has %s", r.text("key"), col, r.text(col), n, d[col])
			}
		}
		for ours, theirs := range map[string]string{"total_sugars_g": "sugars_g", "kcal": "kcal"} {
			if disagrees(r.text(ours), d[theirs]) {
				t.Errorf("%s: %s %s, USDA %s has %s", r.text("key"), ours, r.text(ours), n, d[theirs])
			}
		}
		if got, want := either(r.text("refuse_pct"), "0"), either(d["refuse_pct"], "0"); disagrees(got, want) {
			t.Errorf("%s: refuse %s %%, USDA %s has %s", r.text("key"), got, n, want)
		}
		spoonsAgree(t, r, d)
	})
	if used < 130 {
		t.Errorf("only %d rows bear a USDA number", used)
	}
}

// spoonsAgree compares kitchen weights of the same measure in the same form.
func spoonsAgree(t *testing.T, r row, d map[string]string) {
	for _, i := range []string{"1", "2"} {
		of, w := d["weight"+i+"_of"], d["weight"+i+"_g"]
		for prefix, col := range map[string]string{"1 tbsp": "tbsp_g", "1 tsp": "tsp_g"} {
			if of == prefix && disagrees(r.text(col), w) {
				t.Errorf("%s: %s %s, USDA has %s", r.text("key"), col, r.text(col), w)
			}
		}
		form, cups := strings.CutPrefix(of, "1 cup, ")
		for _, n := range []string{"cup", "cup2"} {
			if cups && form == r.text(n+"_form") && disagrees(r.text(n+"_g"), w) {
				t.Errorf("%s: a cup %s weighs %s, USDA has %s", r.text("key"), form, r.text(n+"_g"), w)
			}
		}
	}
}

// What USDA has not is another row's composition, and says so.
func TestKindredRowsAgree(t *testing.T) {
	at := map[string]row{}
	table := tableOf("ingredients")
	table.each(func(r row) { at[r.text("key")] = r })
	table.each(func(r row) {
		of := r.text("composition_of")
		if of == "" {
			return
		}
		kin, ok := at[of]
		if !ok || r.text("usda_ndb") != "" {
			t.Errorf("%s is of %q, and bears number %q", r.text("key"), of, r.text("usda_ndb"))
			return
		}
		for _, col := range []string{"water_g", "soluble_solids_g", "other_solids_g", "total_sugars_g", "carbohydrate_g", "fibre_g", "protein_g", "fat_g"} {
			if disagrees(r.text(col), kin.text(col)) {
				t.Errorf("%s: %s %q, its relative %s has %q", r.text("key"), col, r.text(col), of, kin.text(col))
			}
		}
	})
}
