package batch

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

const sizeLimits = "a jar's size, 5 mm to 1 m"

// jar reads the maker's own, measured jar.
func (r *reader) jar(raw rawJar, path string) pantry.Jar {
	size := func(p *string, key string) unit.Length {
		return r.length(p, path+"."+key, 5*unit.Millimetre, unit.Metre, sizeLimits)
	}
	j := pantry.Jar{
		Key: r.text(raw.Key, path+".key"), Description: r.text(raw.Description, path+".description"),
		NamedBy: r.choice(raw.NamedBy, path+".named_by", "way of naming", []string{"fill", "brimful"}, nil),
		Nominal: r.volume(raw.Nominal, path+".nominal"), Brimful: r.volume(raw.Brimful, path+".brimful"),
		Mouth: size(raw.Mouth, "mouth"), Height: size(raw.Height, "height"), Diameter: size(raw.Diameter, "diameter"),
		Circumference: size(raw.Circumference, "circumference"), Panel: size(raw.Panel, "panel"), Face: size(raw.Face, "face"), Foot: size(raw.Foot, "foot"),
		TareMass: r.mass(raw.Tare, path+".tare"), Lid: r.text(raw.Lid, path+".lid"),
		Measured: true, Source: "measured by the maker",
	}
	if j.NamedBy == "" {
		j.NamedBy = "brimful"
	}
	if r.absent(raw.Key, path+".key") {
		r.errorf("missing-key", path+".key", "the jar has no key").Hinted(`add key = "my8", the word your [[fill]] tables use`)
	}
	if j.Brimful == 0 && j.Nominal == 0 && !has(raw.Brimful) && !has(raw.Nominal) && !pantry.HasJar(j.Key) {
		r.errorf("missing-brimful", path+".brimful", "the jar's size is not given").
			Hinted(`add brimful = "262 ml": weigh it empty and brim-full of water, 1 g is 1 ml; a key of jarmark jars takes it from there`)
	}
	if j.Brimful > 0 && j.Nominal > j.Brimful {
		r.errorf("jar-size", path+".nominal", "the jar can't hold %s when it takes %s to the brim", *raw.Nominal, *raw.Brimful).Hinted("check both volumes")
	}
	if j.Description == "" {
		j.Description = j.Key
	}
	return j
}

// own reads the maker's own ingredient. What is absent is unknown: -1.
func (r *reader) own(raw rawPantry, path string) pantry.Ingredient {
	per100 := func(p *float64, key string) float64 {
		if v := r.number(p, path+"."+key, strings.ReplaceAll(key, "_", " "), 0, 100); v != nil {
			return *v
		}
		return -1
	}
	weight := func(p *string, key string) float64 { return r.mass(p, path+"."+key).Grams() }
	g := pantry.Ingredient{
		Name: r.text(raw.Name, path+".name"), Aliases: r.texts(raw.Aliases, path+".aliases"), Class: strings.ToLower(r.text(raw.Kind, path+".kind")),
		WaterG: per100(raw.Water, "water"), SolubleG: per100(raw.Solids, "solids"),
		OtherSolidsG: per100(raw.InsolubleSolids, "insoluble_solids"), SugarsG: per100(raw.Sugars, "sugars"),
		CupG: weight(raw.Cup, "cup"), TbspG: weight(raw.Tbsp, "tbsp"), TspG: weight(raw.Tsp, "tsp"), PieceG: weight(raw.Piece, "piece"),
		USAllergen: r.text(raw.Allergen, path+".allergen"), SulphiteCheck: truth(raw.Sulphites), FruitClassEU: r.text(raw.FruitClass, path+".fruit_class"),
		Contains: r.parts(raw.Contains, path+".contains"), Source: r.text(raw.Source, path+".source"), Own: true,
		Allergens: r.allergens(raw.Allergens, path+".allergens"),
	}
	g.EUAllergen = g.USAllergen
	if has(raw.EUAllergen) {
		g.EUAllergen = r.text(raw.EUAllergen, path+".eu_allergen")
	}
	if g.Source == "" {
		g.Source = "the maker's own"
	}
	if r.absent(raw.Name, path+".name") {
		r.errorf("missing-name", path+".name", "the ingredient has no name").Hinted(`add name = "green walnuts"`)
	}
	if sum := max(g.WaterG, 0) + max(g.SolubleG, 0) + max(g.OtherSolidsG, 0); sum > 100.5 {
		r.errorf("over-100-grams", path, "water and solids add up to %s g in 100 g", number(sum)).Hinted("check the three values")
	}
	return g
}
