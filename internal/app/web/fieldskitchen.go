package web

// kitchenForm is the form of kitchen.toml; see batchForm.
var kitchenForm = []section{
	{ID: "maker", Title: "Who makes it", Lead: "As it stands on every label.", Groups: []group{{Fields: []field{
		{Key: "name", Label: "Name", As: words, Example: "Thornfield Lane Preserves", Needed: true},
		{Key: "address", Label: "Address", As: lines, Help: "Street, then town with state and postal code. Printed where the law wants it."},
		{Key: "phone", Label: "Telephone", As: words},
		{Key: "permit", Label: "Permit or registration number", As: words, Help: "Where your state or country wants one."},
		{Key: "email", Label: "E-mail", As: words, More: true},
		{Key: "website", Label: "Website", As: words, More: true},
		{Key: "show_address", Label: "Show the address on the public page", As: yes, More: true},
	}}}},
	{ID: "rules", Title: "Place and rules", Lead: "Whose label rules hold. Check them with your local office before you sell.", Groups: []group{{Fields: []field{
		{Key: "place", Label: "Place", As: choice, optionsFrom: "places", Unlike: "the federal label of the United States"},
		{Key: "programme", Label: "Programme", As: words, Help: "Where a place has several, such as exempt or licensed."},
		{Key: "county", Label: "County", As: words, More: true},
		{Key: "language", Label: "Language", As: choice, optionsFrom: "languages", Unlike: "the place's", More: true},
		{Key: "sale_mode", Label: "How it is sold", As: choice, Options: optionsOf("prepacked", "ppds"), Unlike: "prepacked", More: true, Help: "ppds: packed where it is sold, Great Britain."},
		{Key: "net_form", Label: "Weights of 1 to 4 lb", As: choice, Options: optionsOf("dual", "pounds"), Unlike: "dual", More: true, Help: "dual: 24 oz (1 lb 8 oz); pounds: without the ounces, United States."},
		{Key: "small_amounts", Label: "Small amounts last", As: number, Example: "2", More: true, Help: "2, 1.5, 1 or 0.5: ingredients of so many percent or less stand together at the end, United States."},
		{Key: "corporate_name", Label: "Corporate name", As: words, More: true, Help: "Printed instead of the name: a corporation goes by its actual name (21 CFR 101.5)."},
		{Key: "state_website", Label: "The agency's web address", As: words, More: true, Help: "Where a state has you print one."},
		{Key: "pets", Label: "Pets in the home", As: words, More: true, Help: "Where a state asks."},
		{Key: "also_handles", Label: "Allergens also in the kitchen", As: series, Example: "almonds, milk"},
	}}}},
	{ID: "ways", Title: "Measures and money", Lead: "How amounts are shown, and where the code on the label leads.", Groups: []group{{Fields: []field{
		{Key: "units", Label: "Measures", As: choice, Options: []option{{Value: "us", Text: "cups, ounces, inches"}, {Value: "metric", Text: "grams, millilitres, millimetres"}}, Unlike: "the place's"},
		{Key: "currency", Label: "Currency", As: words, Example: "USD"},
		{Key: "record_url", Label: "Address of your public pages", As: words, Example: "https://thornfield.example/jam", Help: "Left empty, the code on the label holds plain text."},
		{Key: "altitude", Label: "Altitude of the kitchen", As: words, Example: "500 ft", Help: "Water boils cooler higher up, and jars are processed longer."},
		{Key: "own_yields", Label: "Your weighed pots", As: choice, Options: []option{{Value: "false", Text: "leave them out of the jars to expect"}}, Unlike: "move the jars to expect, from two pots on", More: true},
	}}}},
	{ID: "own", Title: "Your picture and typefaces", Lead: "Files beside the kitchen's: a PNG or JPEG picture, and TTF files in a folder called fonts.", Groups: []group{{Table: "picture", Fields: []field{
		{Key: "file", Label: "Picture", As: words, Example: "logo.png"},
		{Key: "alt", Label: "What it shows", As: words, Example: "a thorn branch"},
		{Key: "where", Label: "Where it stands", As: choice, Options: optionsOf("top", "left", "right", "corner"), Unlike: "as the label is shaped"},
		{Key: "size", Label: "Its height, at most", As: words, Example: "18 mm"},
		{Key: "instead_of", Label: "In the place of", As: choice, Options: optionsOf("ornament", "name", "both", "nothing"), Unlike: "the ornament"},
	}}, {Table: "type", Fields: []field{
		{Key: "title", Label: "Typeface of names", As: words, Example: "Alder-Regular.ttf", More: true},
		{Key: "text", Label: "Typeface of facts", As: words, Example: "Brook-Regular.ttf", More: true},
		{Key: "bold", Label: "Its bold", As: words, Example: "Brook-Bold.ttf", More: true},
		{Key: "hand", Label: "Typeface of handwriting", As: words, Example: "Willow.ttf", More: true},
	}}}},
	{ID: "printer", Title: "Printer", Lead: "If labels sit a little off, print the alignment page of your sheet and write what it tells.", Groups: []group{{Table: "printer", Fields: []field{
		{Key: "offset_x", Label: "Shift right", As: words, Example: "0.5 mm"},
		{Key: "offset_y", Label: "Shift down", As: words, Example: "-1 mm"},
		{Key: "scale_x", Label: "Scale across", As: number, Example: "1.002"},
		{Key: "scale_y", Label: "Scale down", As: number, Example: "0.998"},
	}}}},
	{ID: "cupboard", Title: "Cupboard", Lead: "What lies in the cupboard; the packing list tells what is still to buy. Lids, jars and labels by size stand in the text.", Groups: []group{{Table: "supplies", Fields: []field{
		{Key: "tags", Label: "Hang tags", As: count},
		{Key: "boxes", Label: "Boxes", As: count},
		{Key: "box_holds", Label: "Jars a box holds", As: count, Example: "12"},
		{Key: "ribbon", Label: "Ribbon", As: words, Example: "10 yd"},
	}}}},
	{ID: "ownjars", Title: "Your own jars", Lead: "Weigh a jar empty, then brim-full of water: a gram of water is a millilitre.", Groups: []group{{
		Table: "jar", Rows: true, Noun: "jar", None: "The usual jars are known already.", Fields: []field{
			{Key: "key", Label: "Short name", As: words, Example: "my8", Needed: true},
			{Key: "description", Label: "What it is", As: words, Example: "half-pint from the cellar", Needed: true},
			{Key: "brimful", Label: "Brim-full of water", As: words, Example: "262 ml"},
			{Key: "circumference", Label: "Around", As: words, Example: "226 mm"},
			{Key: "panel", Label: "Height of the straight side", As: words, Example: "48 mm"},
			{Key: "mouth", Label: "Mouth, inside", As: words, Example: "60 mm"},
			{Key: "nominal", Label: "Sold as", As: words, Example: "8 fl oz", More: true},
			{Key: "named_by", Label: "Named by", As: choice, Options: optionsOf("fill", "brimful"), Unlike: "not said", More: true},
			{Key: "tare", Label: "Weight, empty with lid", As: words, Example: "190 g", More: true},
			{Key: "lid", Label: "Lid", As: words, Example: "70-450 CT", More: true},
			{Key: "height", Label: "Height", As: words, More: true},
			{Key: "diameter", Label: "Diameter", As: words, More: true},
		}}}},
}
