package record

import (
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// The demo kitchen is our own invention.
func sample() (*cook.Result, *label.Content) {
	k := &batch.Kitchen{Name: "Thornfield Lane Preserves", Address: []string{"14 Thornfield Lane", "Millbrook, OR 97000"},
		Phone: "555-0100", Email: "nell@thornfield.example", Place: place.Place{ID: "us-or"}, Language: "en", AlsoHandles: []string{"almonds", "milk"},
		Website: "https://thornfield.example"}
	b := &batch.Batch{Name: "Plum & star anise jam", Product: batch.Jam, Made: unit.Date{Year: 2026, Month: 9, Day: 22},
		Story:   "Plums from the tree behind the shed, picked the morning after the first cold night.\nCooked in two pots, slowly.",
		Serve:   "cold ham, or warm scones",
		Notes:   "the second pot caught a little",
		Gifts:   []batch.Gift{{To: "Marguerite", From: "no. 14", Jars: 2}},
		Markets: []batch.Market{{Event: "Millbrook market", Jars: 6, Price: unit.Money{Minor: 900, Currency: "USD"}, CameHome: -1}}}
	r := &cook.Result{Batch: b, Kitchen: k, Lot: "L26265-PL", BestBefore: unit.Date{Year: 2027, Month: 9, Day: 22},
		Keeping: cook.Keeping{Class: cook.Shelf, OpenedDays: 30, UnsealedDays: 28},
		Lines: []cook.Line{{Name: "plums", Mass: 2 * unit.Kilogram}, {Name: "sugar", Mass: 1500 * unit.Gram},
			{Name: "lemon juice", Mass: 40 * unit.Gram}, {Name: "star anise", Mass: 5 * unit.Gram}}}
	c := &label.Content{Title: "Plum", Subtitle: "& star anise jam", Lang: "en", Blocks: []label.Block{
		{ID: "net", Kind: label.Net, Runs: []label.Run{{Text: "Net Wt 10 oz (283 g)"}}},
		{ID: "ingredients", Kind: label.Ingredients, Runs: []label.Run{{Text: "plums, sugar, lemon juice, star anise."}}},
		{ID: "allergens", Kind: label.Allergens, Runs: []label.Run{{Text: "None of the nine major allergens is in this recipe."}}},
		{ID: "advisory", Kind: label.Advisory, Runs: []label.Run{{Text: "Made in a kitchen that also handles almonds and milk."}}},
		{ID: "storage", Kind: label.Storage, Runs: []label.Run{{Text: "Keep sealed jars cool and dark. Once open, refrigerate and eat within a month."}}},
		{ID: "maker", Kind: label.Maker, Runs: []label.Run{{Text: "Made by Thornfield Lane Preserves, 14 Thornfield Lane, Millbrook, OR 97000"}}},
		{ID: "statement-1", Kind: label.Statement, Runs: []label.Run{{Text: "This product is homemade and is not prepared in an inspected food establishment."}}},
	}}
	return r, c
}

func nutty() (*cook.Result, *label.Content) {
	r, c := sample()
	r.Lines = append(r.Lines, cook.Line{Name: "almonds", Mass: 100 * unit.Gram,
		Row: pantry.Ingredient{USAllergen: "tree nut (almond)", EUAllergen: "nuts (almond)"}})
	return r, c
}
