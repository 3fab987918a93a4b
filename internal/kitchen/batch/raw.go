package batch

import "jarmark/internal/kit/source"

// rawBatch is a batch file as written; what is absent stays nil.
type rawBatch struct {
	Name        *string         `toml:"name" help:"what you call it; the label is named by it||\"Plum & anise jam\""`
	Kind        *string         `toml:"kind" help:"kind of preserve: jam, jelly, marmalade, butter, curd, chutney, relish, conserve, spread or syrup||\"jam\""`
	Made        *source.Loose   `toml:"made" help:"day it was cooked|date|2026-09-05"`
	BestBefore  *source.Loose   `toml:"best_before" help:"best-before date of your own; without it the keeping time counts|date|2027-09-05"`
	UseBy       *source.Loose   `toml:"use_by" help:"use-by date instead, for what spoils soon|date|2026-10-05"`
	Lot         *source.Loose   `toml:"lot" help:"lot of your own; without it made from date and name||\"L26248-PA\""`
	Recipe      *string         `toml:"recipe" help:"the published, tested recipe you followed: jarmark recipes lists them; else a note of yours||\"NCHFP, Fig jam\""`
	Unchanged   *bool           `toml:"unchanged" help:"you changed nothing of that recipe; only then it counts||true"`
	Story       *string         `toml:"story" help:"words for the public page||\"From the old tree behind the barn.\""`
	Origin      *string         `toml:"origin" help:"where the food says it comes from||\"Kent\""`
	FruitOrigin *string         `toml:"fruit_origin" help:"where the fruit comes from, when that is elsewhere||\"Spain\""`
	Serve       *string         `toml:"serve" help:"serving idea for the public page||\"Lovely with warm scones.\""`
	Notes       *string         `toml:"notes" help:"for yourself; never printed or published||\"stirred too late\""`
	Hours       *float64        `toml:"hours" help:"your hours on this batch, for the season's costs|hours|3.5"`
	Ingredients []rawIngredient `toml:"ingredient"`
	Cook        *rawCook        `toml:"cook"`
	Process     *rawProcess     `toml:"process"`
	Fills       []rawFill       `toml:"fill"`
	Gifts       []rawGift       `toml:"gift"`
	Markets     []rawMarket     `toml:"market"`
	Label       *rawLabel       `toml:"label"`
	Photos      []rawPhoto      `toml:"photo"`
}

type rawIngredient struct {
	Name      *string       `toml:"name" help:"the ingredient, as a cook calls it||\"plums\""`
	Amount    *string       `toml:"amount" help:"how much went in; weights are best|weight, volume or count|\"2 kg\""`
	Form      *string       `toml:"form" help:"how it was prepared||\"pitted\""`
	Lot       *source.Loose `toml:"lot" help:"lot or date on its packet, for a recall||\"7731\""`
	Contains  []rawPart     `toml:"contains" help:"its parts, as its packet lists them, each a name or a table (see contains)||[\"sugar\", \"pectin\"]"`
	Allergens []string      `toml:"allergens" help:"its allergens by your own word; [] says that there are none||[\"almonds\"]"`
	Solids    *float64      `toml:"solids" help:"its soluble solids, measured|°Brix|12.5"`
	Skip      *bool         `toml:"skip" help:"taken out again, such as a spice bag||true"`
	Cost      *source.Loose `toml:"cost" help:"what this amount cost|money|\"4.20\""`
}

type rawPart struct {
	Name       *string  `toml:"name,short" help:"the part||\"soy lecithin\""`
	Percent    *float64 `toml:"percent" help:"its share of the ingredient|%|0.5"`
	Allergen   *string  `toml:"allergen" help:"its allergen, in the words of the US list||\"soy\""`
	EUAllergen *string  `toml:"eu_allergen" help:"its allergen, in the words of the EU list||\"soybeans\""`
	Allergens  []string `toml:"allergens" help:"its allergens, several; [] says none||[\"milk\"]"`
}

type rawCook struct {
	Method          *string       `toml:"method" help:"long boil, added pectin, freezer or no cook||\"added pectin\""`
	Minutes         *float64      `toml:"minutes" help:"time at the boil|minutes|25"`
	SetTest         *string       `toml:"set_test" help:"cold plate, sheet, thermometer, refractometer or none||\"cold plate\""`
	Temperature     *string       `toml:"temperature" help:"temperature at the end of the boil|°C or °F|\"104.5 C\""`
	Brix            *float64      `toml:"brix" help:"refractometer reading of the finished, cooled batch|°Brix|65.5"`
	BrixTemperature *string       `toml:"brix_temperature" help:"temperature of that reading, if the instrument does not correct it|°C or °F|\"25 C\""`
	PH              *float64      `toml:"ph" help:"pH of the finished batch|pH|3.4"`
	PHDate          *source.Loose `toml:"ph_date" help:"day of the pH reading|date|2026-09-06"`
	PHMeter         *string       `toml:"ph_meter" help:"meter, and how it was calibrated||\"pen meter, buffers 4.01 and 7.00\""`
	FinishedPot     *string       `toml:"finished_pot" help:"the finished batch on the scale, with the pot if pot_tare is given|weight|\"5.2 kg\""`
	PotTare         *string       `toml:"pot_tare" help:"the empty pot|weight|\"1.4 kg\""`
	Skimmed         *string       `toml:"skimmed" help:"foam taken off|weight|\"60 g\""`
}

type rawProcess struct {
	Method     *string  `toml:"method" help:"boiling water, steam, none, refrigerator or freezer||\"boiling water\""`
	Minutes    *float64 `toml:"minutes" help:"time in the bath, from the boil|minutes|10"`
	Altitude   *string  `toml:"altitude" help:"height above the sea of this cooking; else the kitchen's|m or ft|\"800 ft\""`
	Headspace  *string  `toml:"headspace" help:"room left below the rim|length|\"1/4 in\""`
	Sterilised *bool    `toml:"sterilised" help:"the jars were boiled 10 minutes first||true"`
	Sterilized *bool    `toml:"sterilized" help:"-"`
}

type rawFill struct {
	Jar       *string          `toml:"jar" help:"jar size: jarmark jars lists them||\"8 fl oz\""`
	Count     *int             `toml:"count" help:"jars filled|jars|10"`
	Sealed    *int             `toml:"sealed" help:"of those, jars whose lid is down|jars|10"`
	Share     *float64         `toml:"share" help:"part of the batch for this size, in a plan of several sizes|parts|2"`
	Headspace *string          `toml:"headspace" help:"room left below the rim, if not as in process|length|\"1/4 in\""`
	Net       source.OneOrMore `toml:"net" help:"weights of what is in a few jars, without the jar|weight|[\"10.2 oz\", \"10.4 oz\"]"`
	Gross     source.OneOrMore `toml:"gross" help:"weights of full jars instead, with jar and lid|weight|[\"17.1 oz\", \"17.3 oz\"]"`
	Tare      source.OneOrMore `toml:"tare" help:"weight of an empty jar with lid, or one for each gross|weight|\"6.8 oz\""`
	Declared  *string          `toml:"declared" help:"net content to print; jarmark weigh tells the most you may declare|weight or volume|\"10 oz\""`
	PartJar   *string          `toml:"part_jar" help:"content of a last jar that is not full|weight|\"4 oz\""`
	Sheet     *string          `toml:"sheet" help:"label sheet for this size: jarmark sheets lists them||\"letter-2x5-4x2in\""`
	Price     *source.Loose    `toml:"price" help:"price of a jar|money|\"9.50\""`
}

type rawGift struct {
	To       *string `toml:"to" help:"who gets it||\"Aunt Ida\""`
	From     *string `toml:"from" help:"who gives it||\"all of us\""`
	Message  *string `toml:"message" help:"a few words for the tag||\"summer in a jar\""`
	Jars     *int    `toml:"jars" help:"how many jars|jars|2"`
	Jar      *string `toml:"jar" help:"jar size; any when left out||\"8 fl oz\""`
	Occasion *string `toml:"occasion" help:"winter, harvest, birthday, wedding, thanks||\"winter\""`
	Design   *string `toml:"design" help:"design of the tag||\"snow\""`
}

type rawMarket struct {
	Event    *string       `toml:"event" help:"name of the market||\"Saturday market\""`
	Date     *source.Loose `toml:"date" help:"its day|date|2026-12-05"`
	Jars     *int          `toml:"jars" help:"jars taken there|jars|6"`
	Jar      *string       `toml:"jar" help:"jar size; any when left out||\"8 fl oz\""`
	Price    *source.Loose `toml:"price" help:"price of a jar there|money|\"9.00\""`
	Fee      *source.Loose `toml:"fee" help:"what the stall cost|money|\"25.00\""`
	CameHome *int          `toml:"came_home" help:"jars that came home again|jars|1"`
}

type rawLabel struct {
	Title    *string          `toml:"title" help:"first line of the label, if not the name; in any name a bar (U+007C) between words ends a line, in a word it says where to part it||\"Damson\""`
	Subtitle *string          `toml:"subtitle" help:"line below it||\"with star anise\""`
	Design   *string          `toml:"design" help:"look of the label: jarmark designs lists them||\"orchard\""`
	Sheet    *string          `toml:"sheet" help:"label sheet: jarmark sheets lists them||\"letter-plain\""`
	Kind     *string          `toml:"kind" help:"which label: front, info, wrap, lid, tag, strip, bag, case, shelf, allergens or sign||\"wrap\""`
	Colours  source.OneOrMore `toml:"colours" help:"colours, or fruits to take them from||[\"#7b2d8b\", \"plum\"]"`
	Colors   source.OneOrMore `toml:"colors" help:"-"`
	InkSaver *bool            `toml:"ink_saver" help:"less ink: no filled grounds||true"`
	Serials  *bool            `toml:"serials" help:"number the jars: 07 / 12||true"`
	Season   *string          `toml:"season" help:"a handwritten line||\"autumn 2026\""`
	Stamp    *string          `toml:"stamp" help:"a few words of yours in a seal on front and wrap labels||\"First prize, village fair 2026\""`
	Words    *string          `toml:"words" help:"words of your own among the facts||\"Stirred in a copper pot.\""`
	Size     *string          `toml:"size" help:"size of a label cut from plain paper|length x length|\"80 x 50 mm\""`
}

// rawKitchen is kitchen.toml as written.
type rawKitchen struct {
	Name        *string          `toml:"name" help:"who makes the jam, as it stands on the label||\"Thornfield Lane Preserves\""`
	Address     source.OneOrMore `toml:"address" help:"street, then town with state and postal code||[\"14 Thornfield Lane\", \"Millbrook, OR 97000\"]"`
	ShowAddress *bool            `toml:"show_address" help:"the address may stand on the public page||false"`
	Phone       *string          `toml:"phone" help:"for labels where a place asks for one||\"+1 555 0114\""`
	Email       *string          `toml:"email" help:"for labels where a place asks for one||\"jam@thornfield.example\""`
	Website     *string          `toml:"website" help:"printed as written||\"thornfield.example\""`
	Permit      *source.Loose    `toml:"permit" help:"permit or registration number||\"HK-2026-0047\""`
	County      *string          `toml:"county" help:"county, where a place asks for it||\"Benton County\""`
	Place       *string          `toml:"place" help:"whose label rules: jarmark places lists them||\"us-or\""`
	Programme   *string          `toml:"programme" help:"which of the place's programmes: jarmark places PLACE||\"exempt\""`
	Program     *string          `toml:"program" help:"-"`
	SaleMode    *string          `toml:"sale_mode" help:"GB and NI: prepacked, or ppds for what is packed where it is sold||\"ppds\""`
	SmallAmount *float64         `toml:"small_amounts" help:"US: ingredients of this much or less stand together at the end (2, 1.5, 1 or 0.5)|%|2"`
	OwnYields   *bool            `toml:"own_yields" help:"your weighed pots move the jars to expect||true"`
	NetForm     *string          `toml:"net_form" help:"US, 1 to 4 lb: dual (ounces and pounds) or pounds||\"dual\""`
	Language    *string          `toml:"language" help:"language of the label, where a place has several||\"en\""`
	Second      *string          `toml:"second_language" help:"a second language beside it, where a place has several||\"fr\""`
	RecordURL   *string          `toml:"record_url" help:"where you publish the pages of jarmark record||\"https://thornfield.example/jam\""`
	Currency    *string          `toml:"currency" help:"currency of prices||\"USD\""`
	Units       *string          `toml:"units" help:"us or metric||\"us\""`
	AlsoHandles source.OneOrMore `toml:"also_handles" help:"allergens your kitchen handles besides||[\"almonds\", \"milk\"]"`
	Altitude    *string          `toml:"altitude" help:"height of the kitchen above the sea|m or ft|\"500 ft\""`
	Pets        *string          `toml:"pets" help:"pets in the house, where a place asks||\"dog\""`
	Corporate   *string          `toml:"corporate_name" help:"registered name, where it is another||\"Thornfield Foods LLC\""`
	StateWeb    *string          `toml:"state_website" help:"web address the agency gave you to print||\"food.example.gov\""`
	Jars        []rawJar         `toml:"jar"`
	Ingredients []rawPantry      `toml:"ingredient"`
	Printer     *rawPrinter      `toml:"printer"`
	Supplies    *rawSupplies     `toml:"supplies"`
	Costs       *rawCosts        `toml:"costs"`
	Picture     *rawPicture      `toml:"picture"`
	Type        *rawType         `toml:"type"`
}

type rawJar struct {
	Key           *string `toml:"key" help:"the word your [[fill]] tables use||\"my8\""`
	Description   *string `toml:"description" help:"the jar in words||\"half-pint from the cellar\""`
	NamedBy       *string `toml:"named_by" help:"what nominal means: fill or brimful||\"brimful\""`
	Nominal       *string `toml:"nominal" help:"size it is sold as|volume|\"8 fl oz\""`
	Brimful       *string `toml:"brimful" help:"what it holds to the brim: weigh it empty and full of water|volume|\"262 ml\""`
	Mouth         *string `toml:"mouth" help:"inner width of the mouth|length|\"60 mm\""`
	Height        *string `toml:"height" help:"height without the lid|length|\"100 mm\""`
	Diameter      *string `toml:"diameter" help:"outer width|length|\"72 mm\""`
	Circumference *string `toml:"circumference" help:"tape around the jar where the label goes|length|\"226 mm\""`
	Panel         *string `toml:"panel" help:"height of the straight side|length|\"48 mm\""`
	Face          *string `toml:"face" help:"width of one flat side, of a square or six-sided jar|length|\"38 mm\""`
	Foot          *string `toml:"foot" help:"tape around it at the foot of the side, of a tapered jar|length|\"212 mm\""`
	Tare          *string `toml:"tare" help:"empty, with lid|weight|\"190 g\""`
	Lid           *string `toml:"lid" help:"neck finish, as supplies counts lids||\"70-450 CT\""`
}

// rawPantry is an own ingredient; numbers are g per 100 g of the edible part.
type rawPantry struct {
	Name            *string          `toml:"name" help:"the ingredient||\"green walnuts\""`
	Aliases         source.OneOrMore `toml:"aliases" help:"other words for it||[\"unripe walnuts\"]"`
	Kind            *string          `toml:"kind" help:"fruit, sugar, acid, pectin, nut, spice and so on||\"fruit\""`
	Water           *float64         `toml:"water" help:"water|g in 100 g|82"`
	Solids          *float64         `toml:"solids" help:"soluble solids|g in 100 g|11"`
	InsolubleSolids *float64         `toml:"insoluble_solids" help:"what does not dissolve|g in 100 g|5"`
	Sugars          *float64         `toml:"sugars" help:"sugars|g in 100 g|8"`
	Cup             *string          `toml:"cup" help:"weight of a US cup|weight|\"150 g\""`
	Tbsp            *string          `toml:"tbsp" help:"weight of a tablespoon|weight|\"9 g\""`
	Tsp             *string          `toml:"tsp" help:"weight of a teaspoon|weight|\"3 g\""`
	Piece           *string          `toml:"piece" help:"weight of one|weight|\"25 g\""`
	Allergen        *string          `toml:"allergen" help:"its allergen, in the words of the US list||\"walnuts\""`
	EUAllergen      *string          `toml:"eu_allergen" help:"its allergen, in the words of the EU list||\"walnuts\""`
	Allergens       []string         `toml:"allergens" help:"several; [] says none||[\"walnuts\"]"`
	Sulphites       *bool            `toml:"sulphites" help:"it may hold sulphites: ask its packet||true"`
	FruitClass      *string          `toml:"fruit_class" help:"what the EU directive takes it for||\"citrus\""`
	Contains        []rawPart        `toml:"contains" help:"its parts||[\"sugar\", \"pectin\"]"`
	Source          *string          `toml:"source" help:"where the numbers come from||\"weighed at home\""`
}

type rawPrinter struct {
	OffsetX *string  `toml:"offset_x" help:"shift to the right: jarmark align SHEET tells it|length|\"0.5 mm\""`
	OffsetY *string  `toml:"offset_y" help:"shift down|length|\"-1 mm\""`
	ScaleX  *float64 `toml:"scale_x" help:"true width over printed width||1.002"`
	ScaleY  *float64 `toml:"scale_y" help:"true height over printed height||1.0"`
}

type rawSupplies struct {
	Lids       map[string]int `toml:"lids" help:"lids left, by neck finish|count|{ \"70-450 CT\" = 40 }"`
	Jars       map[string]int `toml:"jars" help:"empty jars left, by jar|count|{ us8 = 24 }"`
	Labels     map[string]int `toml:"labels" help:"labels left, by sheet|count|{ letter-2x5-4x2in = 100 }"`
	PartSheets map[string]int `toml:"part_sheets" help:"labels gone on the open sheet, by sheet|count|{ letter-2x5-4x2in = 3 }"`
	Tags       *int           `toml:"tags" help:"hang tags left|count|30"`
	Boxes      *int           `toml:"boxes" help:"boxes left|count|6"`
	BoxHolds   *int           `toml:"box_holds" help:"jars in a box|jars|12"`
	Ribbon     *string        `toml:"ribbon" help:"ribbon left|length|\"20 m\""`
}

// rawCosts is what things cost beside the ingredients.
type rawCosts struct {
	Jars  map[string]string `toml:"jars" help:"an empty jar, by jar|money|{ us8 = \"0.90\" }"`
	Lid   *source.Loose     `toml:"lid" help:"a lid|money|\"0.25\""`
	Label *source.Loose     `toml:"label" help:"a label|money|\"0.08\""`
	Hour  *source.Loose     `toml:"hour" help:"an hour of your work|money|\"15.00\""`
	Fee   *source.Loose     `toml:"fee" help:"a stall, where the market names no fee of its own|money|\"25.00\""`
	Float *source.Loose     `toml:"float" help:"change you take to a market|money|\"60.00\""`
}
