package pantry

import (
	"testing"

	"jarmark/internal/kit/unit"
)

// A maker's own jar of a built-in key keeps what was measured, and has the rest of the
// built-in one; the brim and the size go together.
func TestOwnJarOverABuiltInOne(t *testing.T) {
	base, ok := Default().Jar("us8")
	if !ok || base.TareMass <= 0 && base.Lid == "" {
		t.Fatalf("%+v", base)
	}
	base.TareMass, base.Lid, base.Panel = 190*unit.Gram, "70-450", unit.MM(60)
	got := overJar(Jar{Key: "us8", Source: "measured"}, base)
	if got.TareMass != base.TareMass || got.Lid != base.Lid || got.Nominal != base.Nominal || got.Brimful != base.Brimful || got.BrimfulMost != base.BrimfulMost || got.NamedBy != base.NamedBy || got.Panel != base.Panel || got.Mouth != base.Mouth || got.Description != base.Description {
		t.Errorf("%+v, want what is in %+v", got, base)
	}
	own := Jar{Key: "us8", Source: "measured", TareMass: 1, Lid: "x", Panel: 1, Mouth: 1, Brimful: base.Brimful + 5, Description: "mine"}
	if got = overJar(own, base); got.TareMass != 1 || got.Lid != "x" || got.Panel != 1 || got.Mouth != 1 || got.Brimful != own.Brimful || got.BrimfulMost != 0 || got.Nominal != base.Nominal || got.Description != "mine" {
		t.Errorf("%+v", got)
	}
	if got = overJar(Jar{Key: "us8", Description: "us8", Brimful: base.Nominal - 1}, base); got.Nominal != 0 || got.Description != base.Description {
		t.Errorf("a brim below the size: %+v", got)
	}
	if got = overJar(Jar{Key: "us8", Brimful: base.Nominal}, base); got.Nominal != base.Nominal {
		t.Errorf("a brim of just the size: %+v", got)
	}
}

// A count goes by the food's own name in any language, its piece, a size or nothing.
func TestCountsByNameInAnyLanguage(t *testing.T) {
	plum, _ := Default().Ingredient("plums")
	for piece, want := range map[string]bool{"": true, "plums": true, "Pflaumen": true, "prunes": true, "large": true, "furlong": false} {
		if ok, odd := plum.CountsBy(piece, "plums"); ok != want || !want && odd == "" {
			t.Errorf("3 %s of plums: %v %q", piece, ok, odd)
		}
	}
}

// A juice or a peel is counted by its fruit in any language, and by no other fruit.
func TestJuiceCountsByItsFruitInAnyLanguage(t *testing.T) {
	p := Default()
	for _, c := range []struct {
		food, piece string
		want        bool
	}{
		{"lemon juice", "lemons", true}, {"lemon juice", "Zitronen", true}, {"lemon juice", "Bio-Zitrone", true}, {"lemon juice", "citrons", true}, {"lemon juice", "gros citron", true},
		{"orange zest", "Orangen", true}, {"lime juice", "Limette", true}, {"lemon juice", "Orangen", false}, {"lemon juice", "pommes", false}, {"orange zest", "furlong", false},
		{"lemons", "gros", true}, {"lemons", "furlong", false},
	} {
		g, _ := p.Ingredient(c.food)
		if ok, odd := p.Counts(g, c.piece, c.food); ok != c.want || !ok && odd == "" {
			t.Errorf("2 %s of %s: %v %q", c.piece, c.food, ok, odd)
		}
	}
}
