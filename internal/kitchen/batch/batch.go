package batch

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// ProductTypes lists every kind a maker may write, in the order users see.
var ProductTypes = []ProductType{Jam, Preserve, Jelly, Marmalade, Butter, Curd, Chutney, Relish, Conserve, Spread, Syrup}

// Parse reads one batch file. The kitchen lends its currency and altitude; it
// may be nil. With a file that is no TOML the Batch is nil; with other errors
// it holds all that could be read. Findings come in file order with places.
func Parse(name string, data []byte, k *Kitchen) (*Batch, diag.List) {
	var raw rawBatch
	f, r, ok := open(name, data, &raw)
	if !ok {
		return nil, r.done(f)
	}
	r.currency = defaultCurrency
	if k != nil && k.Currency != "" {
		r.currency = k.Currency
	}
	r.imperial = k != nil && k.Place.Imperial
	b := r.batch(raw)
	b.File = f
	if k != nil && !b.Process.AltitudeOK && k.AltitudeOK {
		b.Process.Altitude, b.Process.AltitudeOK = k.Altitude, true
	}
	return b, r.done(f)
}

func (r *reader) batch(raw rawBatch) *Batch {
	b := &Batch{
		Name: r.name(raw.Name, "name"), Product: r.kind(raw), Made: r.date(raw.Made, "made"), Lot: r.lot(raw.Lot),
		Recipe: r.text(raw.Recipe, "recipe"), Unchanged: truth(raw.Unchanged),
		Story: r.prose(raw.Story, "story"), Origin: r.plain(raw.Origin, "origin", shortText, true), FruitOrigin: r.plain(raw.FruitOrigin, "fruit_origin", shortText, true),
		Serve: r.plain(raw.Serve, "serve", 2*shortText, true), Notes: r.prose(raw.Notes, "notes"),
		Hours: orZero(r.number(raw.Hours, "hours", "a number of hours", 0, 1000)),
	}
	b.BestBefore = r.date(raw.BestBefore, "best_before")
	if useBy := r.date(raw.UseBy, "use_by"); !useBy.IsZero() {
		if has(raw.BestBefore) {
			r.errorf("two-dates", "use_by", "a use-by date and a best-before date are both given").Hinted("keep one of them")
		}
		b.BestBefore, b.UseBy = useBy, true
	}
	for i, in := range raw.Ingredients {
		b.Ingredients = append(b.Ingredients, r.ingredient(in, source.At("ingredient", i)))
	}
	b.Cook, b.Process = r.cook(raw.Cook), r.process(raw.Process)
	for i, in := range raw.Fills {
		b.Fills = append(b.Fills, r.fill(in, source.At("fill", i)))
	}
	for i, in := range raw.Gifts {
		b.Gifts = append(b.Gifts, r.gift(in, source.At("gift", i)))
	}
	for i, in := range raw.Markets {
		b.Markets = append(b.Markets, r.market(in, source.At("market", i)))
	}
	b.Label = r.label(raw.Label)
	b.Label.Parts = r.marked
	b.Photos = r.photos(raw.Photos)
	r.complete(b)
	return b
}

// complete asks for what no batch can do without.
func (r *reader) complete(b *Batch) {
	r.missing("missing-name", b.Name == "", "name", `name = "Plum jam"`)
	r.missing("missing-made", b.Made.IsZero(), "made", "made = 2026-06-14, the day it was cooked")
	r.missing("missing-kind", b.Product == "", "kind", `kind = "jam" (or `+productWords(ProductTypes[1:], " ")+")")
	if len(b.Ingredients) == 0 && !r.broken["ingredient"] {
		r.errorf("no-ingredients", "", "the batch has no ingredients").Hinted("add [[ingredient]] with name and amount for each thing in the pot")
	}
	if !b.BestBefore.IsZero() && !b.Made.IsZero() && b.BestBefore.Before(b.Made) {
		path := "best_before"
		if b.UseBy {
			path = "use_by"
		}
		r.errorf("date-order", path, "%s is before the day it was made, %s", b.BestBefore, b.Made).Hinted("check both dates")
	}
	for _, m := range b.Markets {
		if !m.Date.IsZero() && m.Date.Before(b.Made) {
			r.errorf("date-order", m.Path+".date", "%s is before the day it was made, %s", m.Date, b.Made).Hinted("check both dates")
		}
	}
}

// missing reports an absent or empty key, unless it has a finding already.
func (r *reader) missing(code string, absent bool, path, write string) {
	if !absent || r.broken[path] {
		return
	}
	for _, d := range r.l {
		if d.Path == path {
			return
		}
	}
	r.errorf(code, path, "%s is missing", path).Hinted("add " + write)
}

func productWords(kinds []ProductType, sep string) string {
	var out []string
	for _, k := range kinds {
		out = append(out, string(k))
	}
	return strings.Join(out, ","+sep)
}

// kindSynonyms are the words of kind-words.csv, gathered once a process.
var kindSynonyms = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, k := range pantry.Default().KindWords() {
		for _, w := range k.Words {
			out[strings.ToLower(w)] = k.Kind
		}
	}
	return out
})

func (r *reader) kind(raw rawBatch) ProductType {
	return ProductType(r.choice(raw.Kind, "kind", "kind", strings.Split(productWords(ProductTypes, ""), ","), kindSynonyms()))
}

var lotForm = regexp.MustCompile(`^[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?$`)

// lot must be safe as a file name and in a web address.
func (r *reader) lot(p *source.Loose) string {
	s := r.loose(p, "lot")
	if s == "" {
		return ""
	}
	if !lotForm.MatchString(s) || len(s) > 40 {
		r.errorf("bad-lot", "lot", "the lot %q can't be used in file names and web addresses", s).
			Hinted("use letters, digits and hyphens, 40 at most, such as L26165-SR")
		return ""
	}
	if Reserved(s) || strings.EqualFold(s, "record") { // out/record holds the public pages
		r.errorf("bad-lot", "lot", "the lot %q can't be used in file names and web addresses: the name is taken", s).
			Hinted("write a longer one, such as " + s + "-1")
		return ""
	}
	return s
}

func (r *reader) ingredient(raw rawIngredient, path string) Ingredient {
	in := Ingredient{Path: path, Solids: -1, Skip: truth(raw.Skip),
		Name: r.text(raw.Name, path+".name"), Form: r.text(raw.Form, path+".form"), Lot: r.loose(raw.Lot, path+".lot"),
		Allergens: r.allergens(raw.Allergens, path+".allergens"), Cost: r.money(raw.Cost, path+".cost")}
	if r.absent(raw.Name, path+".name") {
		r.errorf("missing-name", path+".name", "the ingredient has no name").Hinted(`add name = "strawberries"`)
	}
	if s := r.number(raw.Solids, path+".solids", "soluble solids", 0, 100); s != nil {
		in.Solids = *s
	}
	in.Contains = r.parts(raw.Contains, path+".contains")
	switch amount := r.text(raw.Amount, path+".amount"); {
	case has(raw.Amount):
		q, err := unit.ParseQuantity(amount)
		if err != nil {
			r.wrong("bad-amount", path+".amount", err)
		}
		in.Amount = q
		r.usMeasure(q, path+".amount")
	case !r.broken[path+".amount"]:
		r.errorf("missing-amount", path+".amount", "the ingredient has no amount").Hinted(`add amount = "1.8 kg"; cups, spoons and pieces do too`)
	}
	return in
}

// Measures that differ where the imperial ones are at home: the imperial gallon
// is 4.54609 l (UK Weights and Measures Act 1985, Schedule 1), the US gallon
// 3.785411784 l (NIST Handbook 44, Appendix C).
var imperialMeasure = regexp.MustCompile(`(?i)[0-9 ](pints?|pts?|quarts?|qts?|gallons?|gals?|fl\.? ?oz|fluid ounces?)\b`)

// usMeasure warns where a pint could be meant as the imperial one.
func (r *reader) usMeasure(q unit.Quantity, path string) {
	if r.imperial && q.Dim == unit.ByVolume && imperialMeasure.MatchString(" "+q.Text) {
		r.l.Warnf("us-measure", r.file, path, "%q is read as the US measure, %s", q.Text, q.Volume.Format(unit.Metric)).
			Hinted("the imperial pint is 568 ml: write ml or a weight").Cited("UK Weights and Measures Act 1985, Schedule 1; NIST Handbook 44, Appendix C")
	}
}

// share is a part as packets write it: "citric acid 3.5 %", "pectin (36,5%)".
var share = regexp.MustCompile(`^(\S.*?)[ (]+(\d+(?:[.,]\d+)?) ?%\)?$`)

// parts reads what a bought ingredient is made of.
func (r *reader) parts(raw []rawPart, path string) (out []pantry.Part) {
	sum := 0.0
	for i, p := range raw {
		at := source.At(path, i)
		part := pantry.Part{Name: r.text(p.Name, at+".name"), USAllergen: r.text(p.Allergen, at+".allergen")}
		part.EUAllergen = part.USAllergen
		if has(p.EUAllergen) {
			part.EUAllergen = r.text(p.EUAllergen, at+".eu_allergen")
		}
		part.Allergens = r.allergens(p.Allergens, at+".allergens")
		if r.absent(p.Name, at+".name") && !r.broken[at] {
			r.errorf("missing-name", at, "the part has no name").Hinted(`write { name = "dextrose" }, as on the packet`)
		}
		if m := share.FindStringSubmatch(part.Name); m != nil && !has(p.Percent) {
			v, err := strconv.ParseFloat(strings.ReplaceAll(m[2], ",", "."), 64)
			if err == nil && v <= 100 {
				part.Name, p.Percent = m[1], &v
			}
		}
		if v := r.number(p.Percent, at+".percent", "percent", 0, 100); v != nil {
			part.Percent = *v
			sum += *v
		}
		out = append(out, part)
	}
	if sum > 100.5 {
		r.errorf("over-100-percent", path, "the parts add up to %s %%", number(sum)).Hinted("they can't be more than 100 %")
	}
	return out
}

func orZero(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}
