package pantry

import (
	"math"
	"testing"

	"jarmark/internal/kit/unit"
)

func about(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.4f, want %.4f within %.4f", what, got, want, tol)
	}
}

// sucrose-density.csv: the Plato/NBS table at 20 °C (rows that were read),
// formula within 0.06 kg/m³ (0.062 at 35 %); and the reference's own computed columns.
func TestDensityAgainstPlato(t *testing.T) {
	read := 0
	tableOf("sucrose-density").each(func(r row) {
		b := r.number("brix", 0)
		about(t, "20 °C computed", Density(b, 20), r.number("rho_20C", 0), 0.05)
		about(t, "85 °C computed", Density(b, 85), r.number("rho_85C", 0), 0.05)
		if r.text("published_tag") == "Plato/NBS table read (university copy)" {
			read++
			about(t, "Plato/NBS", Density(b, 20), r.number("published_20C", 0), 0.0625)
		}
	})
	if read != 8 {
		t.Errorf("%d published rows, want 8", read)
	}
}

// NBS Circular C440 (1942): lb per US gallon in air at 20 °C, weights against
// brass; the buoyancy of air is 1.2 kg/m³ less that of the brass weights.
func TestDensityAgainstC440(t *testing.T) {
	for b, want := range []float64{8.322, 8.354, 8.387, 8.419, 8.452, 8.486} {
		rho := Density(float64(b), 20)
		inAir := (rho - 1.2) / (1 - 1.2/8400)
		lbPerGallon := inAir * 3.785411784e-3 / 0.45359237
		about(t, "C440", lbPerGallon, want, 0.0015)
	}
}

// USDA household weights (SR28) against the formula at 20 °C, and how far off
// each is; corn syrup and marmalade are no sucrose solutions.
func TestDensityAgainstUSDAHouseholdWeights(t *testing.T) {
	tests := []struct {
		name                  string
		cupG, solids, off, by float64
	}{
		{"honey", 339, 82.9, 0.1, 0.1}, {"maple syrup", 315, 67.6, -0.1, 0.1}, {"orange juice", 248, 11.7, 0.3, 0.1},
		{"apple butter", 282, 43.6, -0.3, 0.1}, {"marmalade", 320, 66.8, 1.9, 0.2}, {"light corn syrup", 341, 77.2, 3.4, 0.2},
	}
	for _, c := range tests {
		off := (c.cupG/unit.Cup.ML()*1000/Density(c.solids, 20) - 1) * 100
		about(t, c.name, off, c.off, c.by)
		t.Logf("%-18s %+.2f %%", c.name, off)
	}
}

// Worked figure of jam-science.md section 5: Choi and Okos give 1316.6 at
// 65 °Brix and 20 °C; the CSV columns hold more.
func TestMixDensity(t *testing.T) {
	tableOf("sucrose-density").each(func(r row) {
		b := r.number("brix", 0)
		s := Solids{Water: 100 - b, Carbohydrate: b}
		about(t, "Choi-Okos 20", MixDensity(s, 20), r.number("choi_okos_20C", 0), 0.2)
		about(t, "Choi-Okos 85", MixDensity(s, 85), r.number("choi_okos_85C", 0), 0.2)
	})
	if MixDensity(Solids{}, 20) != 0 {
		t.Error("nothing has a density")
	}
}

// boiling-elevation.csv: Brown 1912; Lowe 60 % at 103.0, 70 % at 106.5 °C;
// Cruess and McNair 65 °Brix at 103.9 °C (read in Lowe, Experimental Cookery).
func TestBoilingRise(t *testing.T) {
	p := Default()
	for _, c := range []struct{ brix, rise, tol float64 }{
		{50, 2.0, 0}, {62, 3.4, 0}, {64, 4.0, 0}, {66, 4.8, 0}, {68, 5.6, 0}, {70, 6.5, 0}, {74, 8.4, 0}, {80, 12, 0},
		{60, 3.0, 0.17}, {65, 3.9, 0.55},
	} {
		about(t, "rise", between(p.boiling, c.brix), c.rise, c.tol+1e-9)
		if b, ok := p.BrixAtBoilingPoint(BoilingPoint(0)+c.rise, 0); !ok || math.Abs(b-c.brix) > 2.5 {
			t.Errorf("%g °C over water is %g °Brix, want %g", c.rise, b, c.brix)
		}
	}
	// USDA: the jelly point is 8 °F (4.4 °C) over water, 65.1 % on Brown's curve.
	b, ok := p.BrixAtBoilingPoint(BoilingPoint(0)+8/1.8, 0)
	if !ok {
		t.Fatal("the jelly point has no Brix")
	}
	about(t, "Brix at the jelly point", b, 65.1, 0.1)
	for _, bad := range []float64{-5, 90, 100.2, 113, 500, math.NaN(), math.Inf(1)} {
		if b, ok := p.BrixAtBoilingPoint(bad, 0); ok {
			t.Errorf("%g °C gives %g °Brix", bad, b)
		}
	}
}

// altitude.csv: the USDA jelly-point table (220 °F at sea level, 205 at 8000
// ft) within 0.7 °F
// (0.72 at 4000 ft, where the table is rounded to whole degrees), and its boiling points within 0.1 °C.
func TestAltitudeAgainstUSDA(t *testing.T) {
	read := 0
	tableOf("altitude").each(func(r row) {
		alt := unit.Length(r.number("altitude_ft", 0)) * unit.Foot
		c := BoilingPoint(alt)
		about(t, "boiling point", c, r.number("water_boils_C_computed", 0), 0.06)
		if pub := r.number("water_boils_C_published_2", 0); pub > 0 {
			about(t, "boiling point, second table", c, pub, 0.25)
		}
		if usda := r.number("jelly_point_F_USDA_table", 0); usda > 0 {
			read++
			about(t, "jelly point °F", c*1.8+32+8, usda, 0.73)
		}
		for col, key := range map[string]string{"jam_process_min": "jam", "chutney_process_min": "chutney"} {
			if x, ok := Default().ProcessTime(key); !ok || float64(x.At(alt)) != r.number(col, 0) {
				t.Errorf("%s at %s ft: %d min", key, r.text("altitude_ft"), x.At(alt))
			}
		}
		if m := Default().SteriliseMinutes(alt); float64(m) != r.number("sterilise_empty_jars_min", 0) {
			t.Errorf("sterilise at %s ft: %d min", r.text("altitude_ft"), m)
		}
	})
	if read != 9 {
		t.Errorf("%d USDA rows, want 9", read)
	}
}

// boiling-elevation.csv holds Norrish 1966 with K from memory; FAO bulletin
// (section 8.6) has 0.848 for saturated sucrose, 67.89 %.
func TestWaterActivity(t *testing.T) {
	tableOf("boiling-elevation").each(func(r row) {
		b := r.number("sucrose_pct", 0)
		about(t, "aw", WaterActivity(b, 0), r.number("aw_Norrish_sucrose", 0), 0.0015)
		about(t, "aw, 30 % inverted", WaterActivity(b, 0.3), r.number("aw_Norrish_30pct_inverted", 0), 0.0015)
	})
	about(t, "FAO", WaterActivity(67.89, 0), 0.848, 0.007)
}

// refractometer-temp.csv: OIV-MA-AS2-02 Table I (10-17 °C, read), interstate
// standard (18-22 °C, read), ICUMSA 1974 (23-30 °C, from memory, unverified).
func TestBrixTempCorrection(t *testing.T) {
	for _, c := range []struct{ brix, temp, want float64 }{
		{65, 15, -0.38}, {65, 20, 0}, {65, 21, 0.08}, {65, 25, 0.40}, {65, 30, 0.81}, {10, 10, -0.59}, {62.5, 30, 0.81}, {35, 16.5, -0.265},
	} {
		got, ok := Default().BrixTempCorrection(c.brix, c.temp)
		if !ok {
			t.Errorf("no correction at %g °C", c.temp)
		}
		about(t, "correction", got, c.want, 0.0051)
	}
	for _, bad := range []float64{9, 31, 85, math.NaN()} {
		if _, ok := Default().BrixTempCorrection(65, bad); ok {
			t.Errorf("a correction at %g °C", bad)
		}
	}
}
