// Package facts tells what is known of a batch in one stable form, for programs
// that read `check --json` and facts.json.
package facts

import (
	"encoding/json"
	"path"
	"slices"
	"strings"

	"jarmark/internal/give/record"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Facts is what `check --json` prints: stable, keys are added, never renamed.
// Masses in grams, percentages of 100, dates as YYYY-MM-DD.
type Facts struct {
	File          string      `json:"file"`
	Lot           string      `json:"lot"`
	Name          string      `json:"name"`
	Identity      string      `json:"identity"`
	Made          string      `json:"made"`
	BestBefore    string      `json:"best_before"`
	Place         string      `json:"place"`
	YieldG        float64     `json:"yield_g"`
	YieldHow      cook.How    `json:"yield_how"`
	YieldRule     string      `json:"yield_rule"`
	YieldLow      float64     `json:"yield_low_g"`
	YieldHigh     float64     `json:"yield_high_g"`
	YieldCoverage float64     `json:"yield_coverage_pct,omitempty"`
	OwnPots       int         `json:"own_pots,omitempty"`
	Brix          float64     `json:"brix"`
	BrixHow       cook.How    `json:"brix_how"`
	SolidsG       float64     `json:"solids_g"`
	Evaporated    float64     `json:"evaporated_g"`
	Jars          []JarFact   `json:"jars"`
	Ingred        []Portion   `json:"ingredients"`
	IngredText    string      `json:"ingredient_statement"`
	Allergens     []string    `json:"allergens"`
	AllergText    string      `json:"allergen_statement"`
	Storage       Storage     `json:"storage"`
	Evidence      Evidence    `json:"evidence"`
	Net           string      `json:"net_contents"`
	QR            string      `json:"qr_payload"`
	RecordPath    string      `json:"record_path"`
	Statements    []Statement `json:"statements"`
	Supplies      Supplies    `json:"supplies"`
	Findings      []Finding   `json:"findings"`
}

// JarFact is one jar size.
type JarFact struct {
	Jar       string  `json:"jar"`
	Count     int     `json:"count"`
	Low       int     `json:"low"`
	High      int     `json:"high"`
	Estimated bool    `json:"estimated"`
	Sealed    int     `json:"sealed"`
	FillG     float64 `json:"fill_g"`
	PartG     float64 `json:"part_jar_g,omitempty"`
	Net       NetFact `json:"net"`
}

// NetFact is the declared net content.
type NetFact struct {
	Text  string  `json:"text"`
	Grams float64 `json:"grams"`
}

// Portion is one ingredient as added.
type Portion struct {
	Name    string  `json:"name"`
	Grams   float64 `json:"grams"`
	Percent float64 `json:"percent"`
}

// Proven is one name of a statement and the ingredients it comes from.
type Proven struct {
	Name string   `json:"name"`
	From []string `json:"from"`
}

// Storage is the guidance for a sealed, an opened and an unsealed jar.
type Storage struct {
	Sealed   string `json:"sealed"`
	Opened   string `json:"opened"`
	Unsealed string `json:"unsealed"`
}

// Evidence is what printed statements rest on. None is true only where every
// ingredient and part is known and holds nothing the place names; Unknown names
// those of which nothing is known.
type Evidence struct {
	Allergens []Proven `json:"allergens"`
	Unknown   []string `json:"unknown"`
	None      bool     `json:"none"`
	Confirmed []Ground `json:"confirmed"` // the maker's word that there is no allergen
	Keeping   []Ground `json:"keeping"`
}

// Ground is one fact with its source; path is where the maker wrote it.
type Ground struct {
	Fact   string   `json:"fact"`
	How    cook.How `json:"how"`
	Path   string   `json:"path,omitempty"`
	Source string   `json:"source"`
}

func grounds(list []cook.Evidence) []Ground {
	out := make([]Ground, 0, len(list))
	for _, e := range list {
		out = append(out, Ground{e.Fact, e.How, e.Path, e.Source})
	}
	return out
}

// Statement is one block the rules ask for.
type Statement struct {
	ID     string  `json:"id"`
	Text   string  `json:"text"`
	MinMM  float64 `json:"min_height_mm"`
	Cite   string  `json:"cite"`
	Source string  `json:"verified,omitempty"`
}

// Supplies is what the batch needs from the cupboard.
type Supplies struct {
	Lids   int `json:"lids"`
	Labels int `json:"labels"`
	Tags   int `json:"tags"`
	Boxes  int `json:"boxes"`
}

// Finding is one finding with its place.
type Finding struct {
	Severity string `json:"severity"`
	Code     string `json:"code"`
	Message  string `json:"message"`
	Hint     string `json:"hint"`
	Cite     string `json:"cite"`
	File     string `json:"file"`
	Line     int    `json:"line"`
	Column   int    `json:"column"`
	Path     string `json:"path,omitempty"`

	// Instead is what mends the finding, written from Column to EndColumn.
	Instead   string `json:"instead,omitempty"`
	EndColumn int    `json:"end_column,omitempty"`
}

// Batch is what a batch's facts are gathered from; stages that did not run
// leave their value empty.
type Batch struct {
	File     string
	Name     string
	Made     unit.Date
	Place    string // id of the rules
	Cooked   *cook.Result
	Contents []*label.Content // one a jar size
	Findings diag.List
}

// Of gathers what is known of a batch.
func Of(b Batch) Facts {
	f := Facts{File: path.Base(strings.ReplaceAll(b.File, "\\", "/")), Name: b.Name, Made: dateText(b.Made), Place: b.Place,
		Jars: []JarFact{}, Ingred: []Portion{}, Allergens: []string{}, Statements: []Statement{}, Evidence: Evidence{Allergens: []Proven{}, Unknown: []string{}, Confirmed: []Ground{}, Keeping: []Ground{}}, Findings: Findings(b.Findings)}
	if b.Cooked != nil {
		f.cooked(b.Cooked)
	}
	if len(b.Contents) > 0 && b.Contents[0] != nil {
		f.declared(b.Contents[0])
		for i, c := range b.Contents {
			if n, ok := c.Find(label.Net); ok && i < len(f.Jars) {
				f.Jars[i].Net.Text = n.Text()
			}
		}
	}
	return f
}

// JSON is the facts as they are printed.
func (f Facts) JSON() ([]byte, error) {
	data, err := json.MarshalIndent(f, "", "  ")
	return append(data, '\n'), err
}

func (f *Facts) cooked(r *cook.Result) {
	f.Evidence.Confirmed = grounds(r.Allergy().Confirmed)
	f.Lot, f.BestBefore = r.Lot, dateText(r.BestBefore)
	f.YieldG, f.YieldHow, f.YieldRule = Grams(r.Yield.Mass), r.Yield.How, r.YieldRule
	f.YieldLow, f.YieldHigh, f.YieldCoverage, f.OwnPots = Grams(r.Range.Low), Grams(r.Range.High), r.Range.Coverage, r.Range.Own.Pots
	f.Brix, f.BrixHow = tenth(r.Brix.Value), r.Brix.How
	f.SolidsG, f.Evaporated = Grams(r.Soluble+r.Insoluble), Grams(r.Evaporated)
	f.RecordPath = record.Folder(r.Lot)
	for _, j := range r.Jars {
		f.Jars = append(f.Jars, JarFact{Jar: j.Jar.Key, Count: j.Count, Low: j.Low, High: j.High, Estimated: j.How == cook.Estimated, Sealed: j.Sealed,
			FillG: Grams(j.Fill), PartG: Grams(j.Part), Net: NetFact{Grams: Grams(j.Declared)}})
	}
	for _, l := range r.ByWeight() {
		f.Ingred = append(f.Ingred, Portion{l.Name, Grams(l.Mass), tenth(l.Percent)})
	}
	f.Evidence.Keeping = grounds(slices.Concat(r.Keeping.Reasons, r.Keeping.Times))
	s := r.Supplies
	f.Supplies = Supplies{s.Lids, s.Labels, s.Tags, s.Boxes}
}

func (f *Facts) declared(c *label.Content) {
	f.QR = c.QR.Payload
	f.Allergens = append(f.Allergens, c.AllergenNames...)
	for _, w := range c.AllergenWhy {
		f.Evidence.Allergens = append(f.Evidence.Allergens, Proven{w.Name, w.From})
	}
	f.Evidence.Unknown = append(f.Evidence.Unknown, c.AllergenDoubt...)
	f.Evidence.None = c.NoAllergens
	f.Storage = Storage{c.Keep.Sealed, c.Keep.Opened, c.Keep.Unsealed}
	for _, b := range c.Blocks {
		f.Statements = append(f.Statements, Statement{b.ID, b.Text(), b.Min.Length.MM(), b.Cite, b.Verified})
		switch b.Kind {
		case label.Identity:
			f.Identity = b.Text()
		case label.Ingredients:
			f.IngredText = b.Text()
		case label.Allergens:
			f.AllergText = b.Text()
		case label.Net:
			f.Net = b.Text()
		}
	}
}

// Findings gives findings as `check --json` words them.
func Findings(l diag.List) []Finding {
	out := make([]Finding, 0, len(l))
	for _, d := range l {
		f := Finding{Severity: d.Severity.String(), Code: d.Code, Message: d.Message, Hint: d.Hint, Cite: d.Cite, File: d.File,
			Line: d.Pos.Line, Column: d.Pos.Column, Path: d.Path}
		if d.Pos.EndColumn > d.Pos.Column {
			f.Instead, f.EndColumn = d.Instead, d.Pos.EndColumn
		}
		if f.Instead == "" {
			f.EndColumn = 0
		}
		out = append(out, f)
	}
	return out
}

// Grams is a mass as facts show it, in grams to a tenth.
func Grams(m unit.Mass) float64 { return tenth(m.Grams()) }

// tenth rounds for reading: kitchen scales show no more.
func tenth(v float64) float64 {
	if v < 0 {
		return -tenth(-v)
	}
	return float64(int64(v*10+0.5)) / 10
}

func dateText(d unit.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}
