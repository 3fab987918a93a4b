package pantry

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/templates"
)

func tableOf(name string) *table { return readTable(templates.FS, name) }

// loaders read one table each into a pantry that holds the ingredients.
var loaders = map[string]func(*Pantry) error{
	"ingredients": (*Pantry).loadIngredients, "ambiguous": (*Pantry).loadAmbiguous, "makes-another": (*Pantry).loadAnother, "short-words": (*Pantry).loadShort, "measures": (*Pantry).loadMeasures, "boil": (*Pantry).loadBoil,
	"finishes": (*Pantry).loadFinishes, "jars": (*Pantry).loadJars, "boiling-elevation": (*Pantry).loadBoiling, "refractometer-temp": (*Pantry).loadTemps,
	"process-times": (*Pantry).loadProcess, "altitude": (*Pantry).loadAltitude, "tested-recipes": (*Pantry).loadRecipes, "never-shelf": (*Pantry).loadNever, "poisonous": (*Pantry).loadPoisons,
	"acid-traces": (*Pantry).loadTraces, "unsafe-methods": (*Pantry).loadUnsafe, "ph-words": (*Pantry).loadPHWords, "kind-words": (*Pantry).loadKinds,
}

// loadRow reads a table of one row.
func loadRow(name string, header, cells []string) (*Pantry, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	_ = w.WriteAll([][]string{header, cells})
	p := &Pantry{from: fstest.MapFS{"pantry/" + name + ".csv": {Data: b.Bytes()}}}
	if name != "ingredients" {
		p.ingredients = Default().ingredients
	}
	err := loaders[name](p)
	p.from = nil
	return p, err
}

func headerOf(t *table) []string {
	out := make([]string, len(t.col))
	for name, i := range t.col {
		out[i] = name
	}
	return out
}

// Columns for the reader of a table, or for a test of it; no code reads them.
var unread = map[string]string{
	"finishes":           "kind headspace_ml_per_mm headspace_ml_at_6.35mm_(1/4in) headspace_ml_at_12.7mm_(1/2in)",
	"jars":               "headspace_ml_at_6.35mm fill_ml_estimate net_g_at_65brix_filled_88C",
	"boiling-elevation":  "bpe_C_other_published other_source aw_Norrish_sucrose aw_Norrish_30pct_inverted bpe_C_Norrish_30pct_inverted source",
	"altitude":           "altitude_m pressure_kPa_std_atm water_boils_C_computed water_boils_F_computed water_boils_C_published_2 jam_process_min chutney_process_min source",
	"refractometer-temp": "source",
	"short-words":        "source",
	"makes-another":      "source",
	"ingredients":        "composition_of usda_ndb usda_sr28_name total_solids_g sugars_note cfr150_soluble_solids_g cfr101_juice_brix kcal sodium_mg sulphite_flag",
}

// Every cell of every table is read: another figure or word makes another row,
// or is refused at its line and column.
func TestEveryCellIsRead(t *testing.T) {
	for name := range loaders {
		tb := tableOf(name)
		header := headerOf(tb)
		for _, col := range strings.Fields(unread[name]) {
			if _, ok := tb.col[col]; !ok {
				t.Errorf("%s: no column %s is left to be unread", name, col)
			}
		}
		for col, at := range tb.col {
			read := false // by one row at least: some lean on other columns
			for _, cells := range tb.rows {
				if strings.TrimSpace(cells[at]) == "" || read {
					continue
				}
				was, err := loadRow(name, header, cells)
				if err != nil { // rows of one table that lean on others
					continue
				}
				for _, add := range []string{"7", " zz"} {
					other := slices.Clone(cells)
					other[at] = add + cells[at]
					if add == " zz" {
						other[at] = cells[at] + add
					}
					is, err := loadRow(name, header, other)
					read = read || err != nil || !reflect.DeepEqual(was, is)
					if err != nil && !strings.Contains(err.Error(), name+".csv: line 2: ") {
						t.Errorf("%s: %s: %v", name, col, err)
					}
				}
			}
			if told := slices.Contains(strings.Fields(unread[name]), col); read == told {
				t.Errorf("%s: %s: read in a row is %t, and listed as unread is %t", name, col, read, told)
			}
		}
	}
}

// An empty figure is nought; of a food it is unknown, which is not nought.
func TestEmptyFigures(t *testing.T) {
	unknown := strings.Fields("water_g soluble_solids_g other_solids_g total_sugars_g carbohydrate_g fibre_g protein_g fat_g")
	for name := range loaders {
		tb := tableOf(name)
		header := headerOf(tb)
		if name == "refractometer-temp" { // an empty correction is no point of the table
			continue
		}
		for col, at := range tb.col {
			for _, cells := range tb.rows[:min(3, len(tb.rows))] {
				if _, err := strconv.ParseFloat(cells[at], 64); err != nil || slices.Contains(strings.Fields(unread[name]), col) || col == "usda_ndb" {
					continue
				}
				empty, nought := slices.Clone(cells), slices.Clone(cells)
				empty[at], nought[at] = "", "0"
				a, errA := loadRow(name, header, empty)
				b, errB := loadRow(name, header, nought)
				same := (errA == nil) == (errB == nil) && reflect.DeepEqual(a, b)
				if same == (name == "ingredients" && slices.Contains(unknown, col)) {
					t.Errorf("%s: %s: empty and nought are the same: %v; %v, %v", name, col, same, errA, errB)
				}
			}
		}
	}
}

// Each rule of a row from both sides, written over a row of the table.
func TestRowsAtTheirLimits(t *testing.T) {
	for _, c := range []struct {
		table, over string // column=value;...
		bad         string // the column that is told; "" = none
	}{
		{"boil", "brix=85", ""}, {"boil", "brix=85.1", "brix"}, {"boil", "brix=-1", "brix"}, {"boil", "brix=0;loss_pct=0", "brix"}, {"boil", "brix=0;loss_pct=75", ""}, {"boil", "loss_pct=75.1", "brix"}, {"boil", "minutes=240;loss_pct=30", ""}, {"boil", "minutes=241;loss_pct=30", "minutes"}, {"boil", "minutes=-1", "minutes"}, {"boil", "minutes=10;loss_pct=0", "minutes"}, {"boil", "loss_pct=-1", "brix"},
		{"boil", "shift=0.8", ""}, {"boil", "shift=0.79", "factor"}, {"boil", "shift=1.25", ""}, {"boil", "shift=1.26", "factor"},
		{"boil", "factor=1", "factor"}, {"boil", "factor=1.01", ""}, {"boil", "factor=1.5", ""}, {"boil", "factor=1.51", "factor"},
		{"boil", "coverage_pct=0", "factor"}, {"boil", "coverage_pct=0.1", ""}, {"boil", "coverage_pct=99.9", ""}, {"boil", "coverage_pct=100", "factor"}, {"boil", "recipes=0", "factor"}, {"boil", "recipes=1", ""},
		{"boil", "name=", "name"}, {"boil", "source=", "source"}, {"boil", "kind=;method=", ""},
		{"jars", "nominal_ml=0;description=odd", "nominal_ml"}, {"jars", "brimful_ml_low=0;brimful_ml_high=0", "nominal_ml"}, {"jars", "mouth_inside_mm=0", "nominal_ml"}, {"jars", "circumference_mm=0", "nominal_ml"}, {"jars", "height_mm=", ""},
		{"process-times", "min_0_1000ft=0", "min_0_1000ft"}, {"process-times", "min_1001_6000ft=0", "min_1001_6000ft"}, {"process-times", "min_above_6000ft=-1", "min_above_6000ft"}, {"process-times", "min_0_1000ft=1", ""},
		{"process-times", "presterilise=maybe", "presterilise"}, {"process-times", "presterilise=no", ""}, {"never-shelf", "knob=perhaps", "knob"}, {"process-times", "jar=bucket", "jar"}, {"process-times", "headspace_in=1/0", "headspace_in"}, {"process-times", "headspace_in=1", "headspace_in"}, {"process-times", "headspace_in=x/4", "headspace_in"}, {"process-times", "headspace_max_in=1/1", ""}, {"process-times", "headspace_min_in=", "headspace_min_in"},
		{"tested-recipes", "main=fig_fresh 0", "main"}, {"tested-recipes", "main=fig_fresh", "main"}, {"tested-recipes", "main=fig_fresh 0.1", ""}, {"tested-recipes", "main=", "main"}, {"tested-recipes", "kinds=", "main"}, {"tested-recipes", "also=", ""}, {"tested-recipes", "also=nutmeg x", "also"},
		{"measures", "grams=;ml=;says=", "grams"}, {"measures", "grams=1", "grams"}, {"measures", "grams=1;ml=", ""}, {"measures", "ask=how much", "grams"}, {"measures", "says=", "grams"}, {"measures", "grams=;ml=;says=;ask=how much", ""}, {"measures", "words=", "grams"}, {"measures", "rows=stone", "rows"}, {"measures", "rows=fig_fresh", ""},
		{"poisonous", "level=note", "level"}, {"poisonous", "en=", "en"}, {"poisonous", "hint=", "hint"}, {"poisonous", "source=", "source"},
		{"never-shelf", "en=", "en"}, {"never-shelf", "de=", "de"}, {"never-shelf", "fr=", "fr"}, {"never-shelf", "keys=;kinds=", ""},
		{"acid-traces", "percent_of_acid_fruit=2", ""}, {"acid-traces", "percent_of_acid_fruit=some", "percent_of_acid_fruit"},
		{"ambiguous", "choices=one", "choices"}, {"ambiguous", "choices=cayenne pepper|fresh chillies", ""}, {"ambiguous", "settled_by=medium", "settled_by"}, {"ambiguous", "settled_by=small", ""},
		{"ingredients", "soluble_solids_g=", "soluble_solids_g"}, {"ingredients", "other_solids_g=", "soluble_solids_g"}, {"ingredients", "soluble_solids_g=100;other_solids_g=1", ""}, {"ingredients", "soluble_solids_g=100;other_solids_g=1.1", "soluble_solids_g"},
		{"ingredients", "soluble_solids_g=0;other_solids_g=0", ""}, {"ingredients", "soluble_solids_g=;soluble_solids_method=unknown", ""}, {"ingredients", "name_de=", "name_de"}, {"ingredients", "name_en=", ""}, {"ingredients", "name_de=a|b|c", ""}, {"ingredients", "name_de=a|b|c|d", "name_de"}, {"process-times", "presterilise=", "presterilise"}, {"ingredients", "kind=", "kind"},
		{"unsafe-methods", "hint=", "hint"}, {"kind-words", "words=;heads=;only_of=", ""}, {"kind-words", "kind=", "kind"}, {"refractometer-temp", "source=", "source"}, {"boiling-elevation", "source=", "source"}, {"altitude", "source=", "source"},
	} {
		tb := tableOf(c.table)
		cells := slices.Clone(tb.rows[0])
		for _, kv := range strings.Split(c.over, ";") {
			k, v, _ := strings.Cut(kv, "=")
			cells[tb.col[k]] = v
		}
		_, err := loadRow(c.table, headerOf(tb), cells)
		if want := fmt.Sprintf("%s.csv: line 2: %s: ", c.table, c.bad); c.bad == "" && err != nil || c.bad != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%s: %s: %v", c.table, c.over, err)
		}
	}
}

// An own row says its own; only what it leaves open comes from the row below,
// field by field.
func TestOverFieldByField(t *testing.T) {
	always := []string{"Name", "Own", "Source", "Memory", "Words", "Aliases", "SulphiteCheck", "Cup2G", "CupForm", "Cup2Form", "PHLow", "PHSource", "Refuse", "OtherSolidsG", "Kin", "AsKin"}
	set := func(g *Ingredient, field string, word string, number float64) (was any) {
		v := reflect.ValueOf(g).Elem().FieldByName(field)
		switch v.Interface().(type) {
		case string:
			v.SetString(word)
		case float64:
			v.SetFloat(number)
		case []string:
			v.Set(reflect.ValueOf([]string{word}))
		case []Part:
			v.Set(reflect.ValueOf([]Part{{Name: word}}))
		default:
			return nil
		}
		return v.Interface()
	}
	open := Ingredient{WaterG: -1, SolubleG: -1, OtherSolidsG: -1, SugarsG: -1}
	for _, f := range reflect.VisibleFields(reflect.TypeOf(open)) {
		if slices.Contains(always, f.Name) {
			continue
		}
		own, base := open, open
		below := set(&base, f.Name, "below", 3)
		if below == nil {
			t.Errorf("%s: a kind of value this test does not know", f.Name)
			continue
		}
		get := func(g Ingredient) any { return reflect.ValueOf(g).FieldByName(f.Name).Interface() }
		if got := get(over(open, base)); !reflect.DeepEqual(got, below) {
			t.Errorf("%s: %v, want %v from below", f.Name, got, below)
		}
		mine := set(&own, f.Name, "mine", 0.5)
		if got := get(over(own, base)); !reflect.DeepEqual(got, mine) {
			t.Errorf("%s: %v, want the own %v", f.Name, got, mine)
		}
	}
	full := Ingredient{Name: "base", Aliases: []string{"b"}, SulphiteCheck: true, CupG: 1, CupForm: "c", Cup2G: 2, Cup2Form: "d", PHLow: 3, PHHigh: 4, PHSource: "s", SolubleG: 1, OtherSolidsG: 30}
	g := over(Ingredient{Name: "own", Aliases: []string{"o"}, SolubleG: 70, OtherSolidsG: -1}, full)
	if fmt.Sprint(g.Aliases) != "[base b o]" || !g.SulphiteCheck || g.CupForm != "c" || g.Cup2G != 2 || g.Cup2Form != "d" || g.PHLow != 3 || g.PHSource != "s" || g.Name != "own" || g.OtherSolidsG != 30 {
		t.Errorf("%+v", g)
	}
	for soluble, other := range map[float64]float64{70: 30, 70.5: 29.5, 100: 0, 101: 0} {
		if g := over(Ingredient{SolubleG: soluble, OtherSolidsG: -1}, full); g.OtherSolidsG != other {
			t.Errorf("%g g of solids leave %g g, want %g", soluble, g.OtherSolidsG, other)
		}
	}
	if g := over(Ingredient{CupG: 5, PHHigh: 3.1}, full); g.CupForm != "" || g.PHLow != 0 || over(Ingredient{}, Ingredient{}).SulphiteCheck {
		t.Errorf("%+v", g)
	}
}
