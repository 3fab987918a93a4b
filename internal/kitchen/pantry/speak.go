package pantry

import (
	"strings"
	"sync"
)

// namesIn are the names of the rows in one language: word -> row.
type namesIn struct{ spoken, juices map[string]int }

// builtIn keeps the names of the built-in table, by language: the rows do not
// change.
var builtIn sync.Map

// Speaking gives the pantry that also finds its built-in rows by their names in
// another language ("de": "Erdbeeren", "Erdbeere"). They win over the English
// words: "raisins" are grapes in French. The receiver is not changed; a language
// the table has no names in gives the receiver.
func (p *Pantry) Speaking(lang string) *Pantry {
	if lang == "en" {
		return p
	}
	names := p.names(lang)
	if len(names.spoken) == 0 {
		return p
	}
	q := *p
	q.spoken, q.juices = names.spoken, names.juices
	return &q
}

func (p *Pantry) names(lang string) namesIn {
	same := len(p.ingredients) > 0 && &p.ingredients[0] == &Default().ingredients[0]
	if kept, ok := builtIn.Load(lang); ok && same {
		return kept.(namesIn)
	}
	n := namesIn{map[string]int{}, map[string]int{}}
	put := func(words string, i int) {
		if form := fold(words); form != "" {
			if _, taken := n.spoken[form]; !taken {
				n.spoken[form] = i
			}
		}
	}
	for i, g := range p.ingredients { // one name for two rows: the first
		if w, ok := g.Words[lang]; ok {
			put(w.Label, i)
		}
	}
	for i, g := range p.ingredients {
		put(g.Words[lang].Singular, i)
	}
	for i, g := range p.ingredients {
		if g.FruitClassEU == "" || g.Class == "juice" {
			continue
		}
		forms := spokenJuices(lang, g.Words[lang])
		for _, a := range g.Aliases {
			if lang == "de" && !strings.ContainsAny(a, " -") { // Holunder: Holundersaft
				forms = append(forms, a+"saft")
			}
		}
		for _, words := range forms {
			if _, taken := n.juices[fold(words)]; !taken {
				n.juices[fold(words)] = i
			}
		}
	}
	if same {
		builtIn.Store(lang, n)
	}
	return n
}
