package rule

// kind is one sort of statement. Run adds blocks and findings to the pass; it
// reads the batch, never another package's files. Phrases lists the keys it
// cannot do without in every language of a set that uses it.
type kind struct {
	Name    string
	Doc     string
	Phrases []string
	Run     func(*pass)
}

// kindTable lists every kind of statement; a set's `kinds` picks from it, in
// the order given there. A new kind is one file and one line here.
func kindTable() []kind {
	return []kind{
		{"identity", "name of the food, 21 CFR 101.3", nil, identity},
		{"standard", "standards of identity, 21 CFR 150", []string{"us.dried", "us.dried-part"}, standard},
		{"net", "net quantity of contents, 21 CFR 101.7", []string{"us.net", "us.net-fluid"}, net},
		{"ingredients", "list of ingredients, 21 CFR 101.4", []string{"us.ingredients", "us.two-percent"}, ingredients},
		{"allergens", "the nine major allergens, 21 U.S.C. 343(w)", []string{"us.contains", "us.no-allergens", "us.also-contains", "us.advisory", "us.and"}, allergens},
		{"maker", "name and place of business, 21 CFR 101.5", []string{"us.maker", "us.permit", "us.phone", "us.county"}, maker},
		{"statement", "the sentence a home kitchen must print", []string{"us.meaning", "us.pets"}, statement},
		{"storage", "how to keep the jar", storagePhrases, storage},
		{"caution", "honey and infants", []string{"us.honey"}, caution},
		{"date", "best-by, use-by and made-on dates", []string{"us.best", "us.use-by", "us.made"}, dates},
		{"lot", "lot code", []string{"us.lot"}, lot},
		{"nutrition", "nutrition exemption and claims, 21 CFR 101.9(j)", nil, nutrition},
		{"price", "price and unit price of a shelf card", []string{"price.per"}, price},
		{"extras", "brand, season, serving idea, code and its caption, seal and case words", []string{"jar", "caption.page", "caption.text", "seal", "tag.to", "tag.from", "card.allergens", "case.count"}, extras},
		{"closing", "what the maker must still ask", nil, closing},
		{"eu", "all statements of Regulation (EU) 1169/2011 and Directive 2001/113/EC", euPhrases, runEU},
	}
}

// kindNamed finds a kind of the table.
func kindNamed(name string) (kind, bool) {
	for _, k := range kindTable() {
		if k.Name == name {
			return k, true
		}
	}
	return kind{}, false
}
