package pantry

// Speaking gives the pantry that also finds its built-in rows by their names in
// another language ("de": "Erdbeeren", "Erdbeere"). They win over the English
// words: "raisins" are grapes in French. The receiver is not changed; a language
// the table has no names in gives the receiver.
func (p *Pantry) Speaking(lang string) *Pantry {
	q := *p
	q.spoken = map[string]int{}
	put := func(words string, i int) {
		if form := fold(words); form != "" {
			if _, taken := q.spoken[form]; !taken {
				q.spoken[form] = i
			}
		}
	}
	for i, g := range p.ingredients { // one name for two rows: the first
		if n, ok := g.Words[lang]; ok {
			put(n.Label, i)
		}
	}
	for i, g := range p.ingredients {
		put(g.Words[lang].Singular, i)
	}
	q.juices = map[string]int{}
	for i, g := range p.ingredients {
		if g.FruitClassEU == "" || g.Kind == "juice" {
			continue
		}
		for _, words := range spokenJuices(lang, g.Words[lang]) {
			if _, taken := q.juices[fold(words)]; !taken {
				q.juices[fold(words)] = i
			}
		}
	}
	if len(q.spoken) == 0 || lang == "en" {
		return p
	}
	return &q
}
