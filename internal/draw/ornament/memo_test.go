package ornament

import (
	"reflect"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

// TestMemoDrawsWhatDrawDraws: whatever was drawn before, wherever the free
// zones were, a drawing is the one it would be alone.
func TestMemoDrawsWhatDrawDraws(t *testing.T) {
	var m Memo
	names := []string{"wreath", "crystals", "garland", "corner", "laurel", "branch"}
	rapid.Check(t, func(t *rapid.T) {
		s := Spec{Palette: spec("plum", page.Rect{}).Palette, Seed: rapid.Uint64Range(1, 2).Draw(t, "seed")}
		s.Rect = page.Rect{W: 40 * unit.Millimetre, H: unit.MM(float64(rapid.IntRange(30, 31).Draw(t, "height")))}
		for range rapid.IntRange(0, 3).Draw(t, "zones") {
			mm := func(name string, lo, hi int) unit.Length {
				return unit.MM(float64(rapid.IntRange(lo, hi).Draw(t, name)))
			}
			s.Keep = append(s.Keep, page.Rect{X: mm("x", -5, 40), Y: mm("y", -5, 35), W: mm("w", 1, 20), H: mm("h", 1, 9)})
		}
		name := rapid.SampledFrom(names).Draw(t, "name")
		got, want := m.Draw(name, s), Draw(name, s)
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("%s with %d zones differs from the one drawn alone", name, len(s.Keep))
		}
	})
}

// TestMemoIsSafe: drawings merged anew at the same time do not write into each
// other (run with -race), and what is the same is held once.
func TestMemoIsSafe(t *testing.T) {
	var m Memo
	var wg sync.WaitGroup
	s := spec("plum", rect(0, 0, 40, 30))
	alone := Draw("wreath", s)
	out := make([][]page.Item, 8)
	for i := range out {
		wg.Go(func() {
			other := s
			other.Keep = []page.Rect{rect(float64(i), 0, 5, 5)}
			m.Draw("wreath", other)
			out[i] = m.Draw("wreath", s)
		})
	}
	wg.Wait()
	for _, got := range out {
		if !reflect.DeepEqual(got, alone) || got[0] != out[0][0] {
			t.Fatal("a drawing made beside others is another one, or held twice")
		}
	}
}

// TestMemoForgets: it holds no more than its bound, about.
func TestMemoForgets(t *testing.T) {
	var m Memo
	s := spec("plum", rect(0, 0, 40, 30))
	m.Draw("wreath", s)
	m.held = mostHeld + 1
	s.Seed++
	m.Draw("wreath", s)
	if len(m.grown) != 1 {
		t.Errorf("%d drawings held", len(m.grown))
	}
}

// TestKeyHoldsAllOfAPalette: a field more must be in the key too.
func TestKeyHoldsAllOfAPalette(t *testing.T) {
	whole := palette.Palette{Leaves: []page.Colour{{R: 1}}, DeepLeaves: []page.Colour{{G: 1}}}
	v := reflect.ValueOf(&whole).Elem()
	for i := range v.NumField() {
		f, was := v.Field(i), whole
		switch x := f.Interface().(type) {
		case string:
			f.SetString("x")
		case bool:
			f.SetBool(true)
		case page.Colour:
			f.Set(reflect.ValueOf(page.Colour{B: 77}))
		case []page.Colour:
			f.Set(reflect.ValueOf([]page.Colour{{R: 3}}))
		default:
			t.Fatalf("%T is not in Palette.Key", x)
		}
		if whole.Key() == was.Key() {
			t.Errorf("%s is not in the key", v.Type().Field(i).Name)
		}
		whole = was
	}
}
