package pantry

import "testing"

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := Load(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWith(b *testing.B) {
	p := Default()
	own := []Ingredient{{Name: "strawberries", SolubleG: 9}}
	for b.Loop() {
		p.With(own, nil)
	}
}

func BenchmarkIngredient(b *testing.B) {
	p := Default()
	for b.Loop() {
		p.Ingredient("fresh chopped strawberries")
	}
}
