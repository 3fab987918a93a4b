package face

import (
	"testing"
	"testing/fstest"

	"jarmark/fonts"
	"jarmark/internal/draw/page"
)

// Letters of Vietnamese names (Unicode, Latin Extended Additional) are set in
// the stand-in; a text that it cannot draw whole stays.
func TestDrawing(t *testing.T) {
	s, err := Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ face, text, want page.Face }{
		{"Figtree_400Regular", "Nguyen", "Figtree_400Regular"},
		{"Figtree_400Regular", "Nguyễn", "AsapCondensed_400Regular"},
		{"Figtree_700Bold", "Phở", "AsapCondensed_700Bold"},
		{"Caveat_600SemiBold", "Nguyễn", "Fraunces_500Medium_Italic"},
		{"Caveat_600SemiBold", "жук ễ", "Caveat_600SemiBold"}, // the stand-in lacks Cyrillic
		{"Fraunces_700Bold", "Nguyễn", "Fraunces_700Bold"},
		{"Figtree_400Regular", "梅", "Figtree_400Regular"},
		{"", "Nguyễn", ""},
	} {
		if got := s.Drawing(c.face, string(c.text)); got != c.want {
			t.Errorf("%s of %s: %s, want %s", c.text, c.face, got, c.want)
		}
	}
	for _, rows := range []string{"face,stand_in\nNobody,Figtree_400Regular\n", "face,stand_in\nFigtree_400Regular\n"} {
		own := fstest.MapFS{standInFile: {Data: []byte(rows)}}
		data, _ := fonts.FS.ReadFile("Figtree_400Regular.ttf")
		own["Figtree_400Regular.ttf"] = &fstest.MapFile{Data: data}
		if _, err := Load(own); err == nil {
			t.Errorf("%q was read", rows)
		}
	}
}
