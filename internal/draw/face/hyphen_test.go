package face_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
)

// Words parted as the published patterns part them: hyphenation, concatenation
// and the long one are worked examples of F. M. Liang, Word Hy-phen-a-tion by
// Com-put-er (Stanford, 1983) and of later implementations of it; the German and
// French words are parted as dictionaries do (from memory). Three letters at
// either end stay together.
func TestSoften(t *testing.T) {
	s := load(t)
	for _, c := range []struct{ lang, want string }{
		{"en", "hyphen-ation"}, {"en-US", "con-cate-na-tion"}, {"en", "super-cal-ifrag-ilis-tic-ex-pi-al-ado-cious"},
		{"en", "mar-malade"}, {"en", "jam"}, {"en-GB", "hyphen-a-tion"}, {"en-GB", "through-out"},
		{"de", "Sta-chel-beer-kon-fi-türe"}, {"de", "Him-beer-frucht-auf-strich"}, {"de-AT", "Johan-nis-beer-ge-lee"},
		{"fr", "con-fi-ture"}, {"fr", "mar-me-lade"}, {"xx", "nothing"}, {"", "nothing"},
		{"de", "Rote Grütze mit Erd-bee-ren"},
	} {
		got := strings.ReplaceAll(s.Soften(strings.ReplaceAll(c.want, "-", ""), c.lang), "\u00ad", "-")
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.lang, got, c.want)
		}
	}
	if own := "Stachelbeer\u00adkonfitüre"; s.Soften(own, "de") != own {
		t.Error("the maker's own mark is not all")
	}
}

// Patterns that are not there, or nonsense, break nothing.
func TestSoftenWithoutPatterns(t *testing.T) {
	font, _ := fonts.FS.ReadFile("Figtree_400Regular.ttf")
	for _, text := range []string{"", "%", "123\n---\n\xff1\n9\n.\n", "1"} {
		s, err := face.Load(fstest.MapFS{"a.ttf": {Data: font}, "hyphen-de.txt": {Data: []byte(text)}})
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range []string{"Stachelbeerkonfitüre", "", "\u00ad\u00ad", "Ω 12"} {
			if got := s.Soften(w, "de"); got != w && strings.ReplaceAll(got, "\u00ad", "") != w {
				t.Errorf("%q of %q", got, w)
			}
			if got := s.Soften(w, "en"); got != w { // no file
				t.Errorf("%q of %q", got, w)
			}
		}
		s.Soften("\xff\xfe", "de")
	}
}
