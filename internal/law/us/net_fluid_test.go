package us

import (
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// 21 CFR 101.7(m)(3): "A declaration of 1 quart liquid measure shall be
// expressed as "Net 32 fl oz (1 qt)""; (m)(4): "Net 56 fluid oz (1 qt 1 pt 8
// oz)", "but not in terms of quart and ounce". Metric by the definition of NIST
// Handbook 44 App. C, rounded down.
func TestFluidWords(t *testing.T) {
	for _, x := range []struct {
		v    unit.Volume
		want string
	}{
		{8 * unit.FluidOunce, "8 fl oz (236 mL)"},
		{unit.Pint, "16 fl oz (1 pt) 473 mL"},
		{unit.Quart, "32 fl oz (1 qt) 946 mL"},
		{56 * unit.FluidOunce, "56 fl oz (1 qt 1 pt 8 oz) 1.65 L"},
		{4 * unit.Quart, "1 gal (3.78 L)"},
		{250 * unit.Millilitre, "8.4 fl oz (250 mL)"},
		{unit.FluidOunce * 17 / 2, "8.5 fl oz (251 mL)"},
	} {
		if got := fluidWords(x.v); got != x.want {
			t.Errorf("%v: %q, want %q", x.v.ML(), got, x.want)
		}
	}
}

// 101.7(r): relishes "shall be expressed in terms of the U.S. gallon ... fluid
// ounce"; 101.7(a): "in terms of fluid measure if the food is liquid".
func TestMeasureByKind(t *testing.T) {
	for _, x := range []struct {
		kind     batch.ProductType
		name     string
		mass     unit.Mass
		volume   unit.Volume
		text     string
		code     string
		net, jar string
	}{
		{batch.Relish, "Corn relish", 0, 8 * unit.FluidOunce, "8 fl oz", "net-not-checked", "Net 8 fl oz (236 mL)", "8 fl oz jar"},
		{batch.Syrup, "Elderberry syrup", 0, 8 * unit.FluidOunce, "8 fl oz", "net-not-checked", "Net 8 fl oz (236 mL)", "8 fl oz jar"},
		{batch.Relish, "Corn relish", 9 * unit.Ounce, 0, "9 oz", "net-by-measure", "", ""},
		{batch.Relish, "Corn relish", 0, 0, "", "net-not-measured", "", ""},
		{batch.Relish, "Corn relish", 0, 2 * unit.Pint, "2 pt", "net-over-jar", "Net 32 fl oz (1 qt) 946 mL", "32 fl oz jar"},
		{batch.Jam, "Strawberry jam", 0, 8 * unit.FluidOunce, "8 fl oz", "net-by-weight", "", ""},
		{batch.Chutney, "Apple chutney", 9 * unit.Ounce, 0, "9 oz", "net-not-checked", "Net Wt 9 oz (255 g)", "9 oz jar"},
	} {
		r := pot(t, x.kind, x.name, measured(66), part{"strawberries", 5000}, part{"sugar", 5000})
		jar := jar8(x.mass)
		jar.Weighed, jar.DeclVolume, jar.DeclText, jar.Price = nil, x.volume, x.text, unit.Money{Minor: 800, Currency: "USD"}
		c, l := Declare(r, jar, rulesOf(t, "us"), draft.Options{})
		d, ok := found(l, x.code)
		if !ok || text(c, label.Net) != x.net || c.JarText != x.jar || (x.net == "" || x.code == "net-over-jar") != (d.Severity == diag.Error) {
			t.Errorf("%s %q: %q, jar %q, %+v", x.kind, x.text, text(c, label.Net), c.JarText, d)
		}
		if each := text(c, label.UnitPrice); x.volume == 8*unit.FluidOunce && x.net != "" && each != "$1 per fl oz" {
			t.Errorf("%s: %q", x.kind, each)
		}
	}
}
