package web

// batchForm is the form of a batch file, in the order a maker works. To add a
// field: one row here, under the TOML name the batch reader knows it by.
var batchForm = []section{
	{ID: "what", Title: "Name", Lead: "The name as it stands on the label, and the day it was cooked.", Groups: []group{{Fields: []field{
		{Key: "name", Label: "Name", As: words, Example: "Plum & anise jam", Needed: true},
		{Key: "kind", Label: "Kind", As: choice, optionsFrom: "kinds", Needed: true},
		{Key: "made", Label: "Made on", As: day, Needed: true},
		{Key: "origin", Label: "Made in", As: words, More: true, Help: "Only if the label is to say where the food comes from.", Example: "Kent"},
		{Key: "fruit_origin", Label: "Fruit from", As: words, More: true, Help: "Where the fruit comes from, when the label names another place.", Example: "Spain"},
		{Key: "serve", Label: "Lovely with", As: words, Help: "A serving idea for tags and the public page.", Example: "warm scones"},
		{Key: "story", Label: "Its story", As: prose, Help: "A few words for the public page."},
		{Key: "recipe", Label: "Tested recipe followed", As: words, More: true, Help: "A published, tested recipe by its id or \"publisher, title\" (NCHFP, Fig jam); anything else is your private note."},
		{Key: "unchanged", Label: "Nothing of it changed", As: yes, More: true, Help: "A tested recipe counts only as it was tested."},
		{Key: "lot", Label: "Lot", As: words, More: true, Help: "Left empty, jarmark makes one from the day and the name."},
		{Key: "best_before", Label: "Best before", As: day, More: true, Help: "Left empty, jarmark works it out."},
		{Key: "use_by", Label: "Use by", As: day, More: true, Help: "Instead of a best-before date, where you choose to."},
		{Key: "notes", Label: "Private notes", As: prose, More: true, Help: "For you alone: these never reach a label or the public page."},
	}}}},
	{ID: "ingredients", Title: "In the pot", Lead: "Everything that went in. Weights are best; cups, spoons and pieces do too.", Groups: []group{{
		Table: "ingredient", Rows: true, Noun: "ingredient", None: "Nothing in the pot yet.", Fields: []field{
			{Key: "name", Label: "Ingredient", As: words, Example: "plums", From: "pantry", Needed: true},
			{Key: "amount", Label: "Amount", As: words, Example: "1.8 kg", Needed: true},
			{Key: "form", Label: "Prepared", As: words, Example: "halved", More: true, Help: "Write \"as bought\" when pits, peel or core are still in the weight; they are taken off."},
			{Key: "contains", Label: "Made of", As: series, Example: "dextrose, citric acid, fruit pectin", More: true, Help: "What its packet lists, in that order."},
			{Key: "allergens", Label: "Allergens in it", As: series, Example: "milk", More: true, Help: "Besides those jarmark knows; read the packet."},
			{Key: "solids", Label: "Soluble solids, %", As: number, More: true, Help: "If you measured them."},
			{Key: "cost", Label: "Cost", As: amount, Example: "4.50", More: true},
			{Key: "skip", Label: "Lifted out before filling", As: yes, More: true, Help: "A spice bag, peel: still named on the label."},
		}}}},
	{ID: "cook", Title: "Cooking", Lead: "What you measured beats every estimate. Leave out what you don't know.", Groups: []group{
		{Table: "cook", Title: "At the stove", Fields: []field{
			{Key: "method", Label: "Method", As: choice, Options: optionsOf("long boil", "added pectin"), Unlike: "not said"},
			{Key: "finished_pot", Label: "Finished jam on the scale", As: words, Example: "2.1 kg", Help: "Without the pot, or give the pot's own weight below."},
			{Key: "brix", Label: "Refractometer, °Brix", As: number, Example: "65.5"},
			{Key: "minutes", Label: "Minutes boiled", As: number, More: true},
			{Key: "set_test", Label: "Set test", As: choice, Options: optionsOf("cold plate", "sheet", "thermometer", "refractometer"), Unlike: "not said", More: true},
			{Key: "temperature", Label: "Temperature at the end", As: words, Example: "219 °F", More: true},
			{Key: "brix_temperature", Label: "Temperature of that reading", As: words, Example: "68 °F", More: true},
			{Key: "ph", Label: "pH, measured", As: number, More: true, Help: "Of the finished, cooled batch."},
			{Key: "ph_date", Label: "Day of that reading", As: day, More: true},
			{Key: "ph_meter", Label: "Meter and calibration", As: words, Example: "pocket meter, buffers 4 and 7 that day", More: true},
			{Key: "pot_tare", Label: "Weight of the empty pot", As: words, Example: "1.4 kg", More: true},
			{Key: "skimmed", Label: "Foam skimmed off", As: words, Example: "60 g", More: true},
		}},
		{Table: "process", Title: "In the canner", Fields: []field{
			{Key: "method", Label: "Processed", As: choice, Unlike: "not said", optionsFrom: "methods"},
			{Key: "minutes", Label: "Minutes", As: number, Example: "10", Help: "Follow a tested recipe, and add time for your altitude."},
			{Key: "altitude", Label: "Altitude", As: words, Example: "500 ft", More: true, Help: "Left empty, your kitchen's."},
			{Key: "headspace", Label: "Headspace", As: words, Example: "1/4 in", More: true},
			{Key: "sterilised", Label: "Jars boiled first", As: yes, More: true},
		}},
	}},
	{ID: "jars", Title: "Jars", Lead: "One row a size. Before cooking leave the counts empty: jarmark estimates them.", Groups: []group{{
		Table: "fill", Rows: true, Noun: "jar size", None: "No jars yet.", Fields: []field{
			{Key: "jar", Label: "Jar", As: words, Example: "8 fl oz", From: "jars", Needed: true},
			{Key: "count", Label: "Filled", As: count, Example: "10"},
			{Key: "sealed", Label: "Sealed", As: count, Help: "Lids that pulled down. The others go in the refrigerator."},
			{Key: "net", Label: "Net weights", As: series, Example: "10.3 oz, 10.5 oz, 10.2 oz", Help: "A few full jars, less the empty jar and lid."},
			{Key: "declared", Label: "Declared", As: words, Example: "10 oz", Help: "What the label says: no more than the lightest jar holds."},
			{Key: "price", Label: "Price", As: amount, Example: "9.00", More: true},
			{Key: "gross", Label: "Gross weights", As: series, Example: "16.1 oz, 16.3 oz", More: true, Help: "Full jars as they stand on the scale."},
			{Key: "tare", Label: "Empty jar and lid", As: series, Example: "5.9 oz", More: true},
			{Key: "part_jar", Label: "In a last part jar", As: words, Example: "4 oz", More: true},
			{Key: "headspace", Label: "Headspace", As: words, Example: "1/4 in", More: true},
			{Key: "share", Label: "Share of the pot", As: number, Example: "0.5", More: true},
		}}}},
	{ID: "gifts", Title: "Gifts", Lead: "Who gets a jar. Each makes a hang tag with the name on it.", Groups: []group{{
		Table: "gift", Rows: true, Noun: "gift", None: "No gifts yet.", Fields: []field{
			{Key: "to", Label: "For", As: words, Example: "Aunt Ida", Needed: true},
			{Key: "jars", Label: "Jars", As: count, Example: "1"},
			{Key: "from", Label: "From", As: words},
			{Key: "message", Label: "Message", As: words, Example: "summer in a jar"},
			{Key: "jar", Label: "Jar size", As: words, From: "jars", More: true},
			{Key: "occasion", Label: "Occasion", As: words, From: "occasions", More: true},
			{Key: "design", Label: "Design of its tag", As: words, From: "designs", More: true},
		}}}},
	{ID: "market", Title: "Market", Lead: "Where the rest is sold. Afterwards say what came home, and the trace is complete.", Groups: []group{{
		Table: "market", Rows: true, Noun: "market", None: "No market yet.", Fields: []field{
			{Key: "event", Label: "Market", As: words, Example: "Saturday market", Needed: true},
			{Key: "date", Label: "Day", As: day},
			{Key: "jars", Label: "Jars taken", As: count},
			{Key: "price", Label: "Price", As: amount, Example: "9.00"},
			{Key: "came_home", Label: "Came home", As: count},
			{Key: "jar", Label: "Jar size", As: words, From: "jars", More: true},
		}}}},
	{ID: "look", Title: "Label", Lead: "How it looks, and what it is printed on.", Groups: []group{{Table: "label", Fields: []field{
		{Key: "design", Label: "Design", As: cards, optionsFrom: "designs"},
		{Key: "kind", Label: "Label for the jar", As: cards, optionsFrom: "pieces"},
		{Key: "sheet", Label: "Sheet in the printer", As: cards, optionsFrom: "sheets"},
		{Key: "title", Label: "First line", As: words, More: true, Help: "Left empty, the first words of the name."},
		{Key: "subtitle", Label: "Second line", As: words, More: true},
		{Key: "season", Label: "Handwritten line", As: words, Example: "winter 2026", More: true},
		{Key: "colours", Label: "Colours", As: series, Example: "plum, #3f6b4a", More: true, Help: "Names of fruit, or colour codes. Left empty, those of the main fruit."},
		{Key: "size", Label: "Size, cut yourself", As: words, Example: "80 x 50 mm", More: true},
		{Key: "ink_saver", Label: "Black only, to save ink", As: yes, More: true},
		{Key: "serials", Label: "Number the jars", As: yes, More: true},
	}}}},
}

func optionsOf(values ...string) (out []option) {
	for _, v := range values {
		out = append(out, option{Value: v, Text: v})
	}
	return out
}
