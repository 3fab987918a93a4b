package pantry

import "testing"

// Names per language: everyday words of German and French, no source.
func TestNamesOfALanguage(t *testing.T) {
	for _, c := range []struct{ words, lang, label, singular, stem string }{
		{"apple", "de", "Äpfel", "Apfel", "Apfel"},
		{"walnut", "de", "Walnüsse", "Walnuss", "Walnuss"},
		{"strawberry", "de", "Erdbeeren", "Erdbeere", "Erdbeer"},
		{"blackcurrant", "de", "schwarze Johannisbeeren", "schwarze Johannisbeere", "Johannisbeer"},
		{"white peach", "de", "weiße Pfirsiche", "weißer Pfirsich", "Pfirsich"},
		{"apricot", "de", "Aprikosen", "Aprikose", "Aprikosen"},
		{"gooseberry", "fr", "groseilles à maquereau", "groseille à maquereau", "groseille à maquereau"},
		{"walnut", "fr", "noix", "noix", "noix"},
		{"cherry", "en", "cherries", "cherry", "cherry"},
		{"zucchini", "en_gb", "courgettes", "courgette", "courgette"},
		{"strawberry", "en_gb", "strawberries", "strawberry", "strawberry"},
		{"molasses", "en", "molasses", "molasses", "molasses"},
	} {
		g, _ := Default().Ingredient(c.words)
		if n, ok := g.Names(c.lang); !ok || n != (Names{c.label, c.singular, c.stem}) {
			t.Errorf("%s in %s: %+v", c.words, c.lang, n)
		}
	}
	if _, ok := (Ingredient{Name: "cordial"}).Names("de"); ok {
		t.Error("an own row has German words")
	}
}

// Every row has words in every language of the table.
func TestEveryRowHasNames(t *testing.T) {
	p := Default()
	if len(p.languages) < 4 {
		t.Fatalf("languages: %v", p.languages)
	}
	for _, g := range p.Ingredients() {
		for _, lang := range p.languages {
			n, ok := g.Names(lang)
			if !ok || n.Label == "" || n.Singular == "" || n.Stem == "" {
				t.Errorf("%s has no words in %s", g.Key, lang)
			}
		}
		if n, _ := g.Names("en"); n.Label != g.Name {
			t.Errorf("%s is called %q and %q", g.Key, g.Name, n.Label)
		}
	}
	x := &table{name: "ingredients", col: map[string]int{"name_en": 0, "name_de": 1}, rows: [][]string{{"", ""}}}
	x.each(func(r row) { readNames(r, "figs") })
	if x.err == nil || x.err.Error() != "ingredients.csv: line 2: name_de: empty" {
		t.Errorf("a row without German words: %v", x.err)
	}
}

func TestFindingAName(t *testing.T) {
	for _, c := range []struct{ words, lang, text, want string }{
		{"strawberry", "de", "Erdbeerkonfitüre extra", "Erdbeer"},
		{"strawberry", "de", "Konfitüre aus Erdbeeren", "Erdbeeren"},
		{"apple", "de", "Quitten-Apfelgelee", "Apfel"},
		{"apple", "de", "Gelee aus Äpfeln", "Äpfeln"},
		{"apple", "en", "Pineapple jam", ""},
		{"apple", "en", "Apple and quince jelly", "Apple"},
		{"plum", "fr", "Confiture de prunes", "prunes"},
		{"prune", "fr", "Confiture de prunes", ""},
		{"walnut", "de", "Feigen mit Walnuss", "Walnuss"},
	} {
		g, _ := Default().Ingredient(c.words)
		n, _ := g.Names(c.lang)
		from, to, ok := n.Find(c.text)
		if got := c.text[from:to]; ok != (c.want != "") || got != c.want {
			t.Errorf("%s in %q: %q", c.words, c.text, got)
		}
	}
}

// A sign between two foods parts them: "apples/pears" are no apple pears. Beside
// words of state it says nothing.
func TestSignsPartFoods(t *testing.T) {
	p := Default()
	for words, key := range map[string]string{
		"apples/pears": "", "pears & apples": "", "apples + pears": "", "sugar/honey": "", "apple pears": "pear_asian", "Apple-pears": "pear_asian",
		"peeled & sliced apples": "apple", "apples, peeled/cored": "apple", "apples &": "apple", "/ apples": "apple", "& + /": "",
	} {
		if g, ok := p.Ingredient(words); ok != (key != "") || g.Key != key {
			t.Errorf("%s: %q, want %q", words, g.Key, key)
		}
	}
}
