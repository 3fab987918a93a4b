package batch

import "jarmark/internal/kit/source"

// rawBatch is a batch file as written; what is absent stays nil.
type rawBatch struct {
	Name        *string         `toml:"name"`
	Kind        *string         `toml:"kind"`
	Made        *source.Loose   `toml:"made"`
	BestBefore  *source.Loose   `toml:"best_before"`
	UseBy       *source.Loose   `toml:"use_by"`
	Lot         *source.Loose   `toml:"lot"`
	Recipe      *string         `toml:"recipe"`
	Unchanged   *bool           `toml:"unchanged"`
	Story       *string         `toml:"story"`
	Origin      *string         `toml:"origin"`
	FruitOrigin *string         `toml:"fruit_origin"`
	Serve       *string         `toml:"serve"`
	Notes       *string         `toml:"notes"`
	Ingredients []rawIngredient `toml:"ingredient"`
	Cook        *rawCook        `toml:"cook"`
	Process     *rawProcess     `toml:"process"`
	Fills       []rawFill       `toml:"fill"`
	Gifts       []rawGift       `toml:"gift"`
	Markets     []rawMarket     `toml:"market"`
	Label       *rawLabel       `toml:"label"`
}

type rawIngredient struct {
	Name      *string       `toml:"name"`
	Amount    *string       `toml:"amount"`
	Form      *string       `toml:"form"`
	Contains  []rawPart     `toml:"contains"`
	Allergens []string      `toml:"allergens"`
	Solids    *float64      `toml:"solids"`
	Skip      *bool         `toml:"skip"`
	Cost      *source.Loose `toml:"cost"`
}

type rawPart struct {
	Name       *string  `toml:"name,short"`
	Percent    *float64 `toml:"percent"`
	Allergen   *string  `toml:"allergen"`
	EUAllergen *string  `toml:"eu_allergen"`
	Allergens  []string `toml:"allergens"`
}

type rawCook struct {
	Method          *string       `toml:"method"`
	Minutes         *float64      `toml:"minutes"`
	SetTest         *string       `toml:"set_test"`
	Temperature     *string       `toml:"temperature"`
	Brix            *float64      `toml:"brix"`
	BrixTemperature *string       `toml:"brix_temperature"`
	PH              *float64      `toml:"ph"`
	PHDate          *source.Loose `toml:"ph_date"`
	PHMeter         *string       `toml:"ph_meter"`
	FinishedPot     *string       `toml:"finished_pot"`
	PotTare         *string       `toml:"pot_tare"`
	Skimmed         *string       `toml:"skimmed"`
}

type rawProcess struct {
	Method     *string  `toml:"method"`
	Minutes    *float64 `toml:"minutes"`
	Altitude   *string  `toml:"altitude"`
	Headspace  *string  `toml:"headspace"`
	Sterilised *bool    `toml:"sterilised"`
	Sterilized *bool    `toml:"sterilized"`
}

type rawFill struct {
	Jar       *string          `toml:"jar"`
	Count     *int             `toml:"count"`
	Sealed    *int             `toml:"sealed"`
	Share     *float64         `toml:"share"`
	Headspace *string          `toml:"headspace"`
	Net       source.OneOrMore `toml:"net"`
	Gross     source.OneOrMore `toml:"gross"`
	Tare      source.OneOrMore `toml:"tare"`
	Declared  *string          `toml:"declared"`
	PartJar   *string          `toml:"part_jar"`
	Price     *source.Loose    `toml:"price"`
}

type rawGift struct {
	To       *string `toml:"to"`
	From     *string `toml:"from"`
	Message  *string `toml:"message"`
	Jars     *int    `toml:"jars"`
	Jar      *string `toml:"jar"`
	Occasion *string `toml:"occasion"`
	Design   *string `toml:"design"`
}

type rawMarket struct {
	Event    *string       `toml:"event"`
	Date     *source.Loose `toml:"date"`
	Jars     *int          `toml:"jars"`
	Jar      *string       `toml:"jar"`
	Price    *source.Loose `toml:"price"`
	CameHome *int          `toml:"came_home"`
}

type rawLabel struct {
	Title    *string          `toml:"title"`
	Subtitle *string          `toml:"subtitle"`
	Design   *string          `toml:"design"`
	Sheet    *string          `toml:"sheet"`
	Kind     *string          `toml:"kind"`
	Colours  source.OneOrMore `toml:"colours"`
	Colors   source.OneOrMore `toml:"colors"`
	InkSaver *bool            `toml:"ink_saver"`
	Serials  *bool            `toml:"serials"`
	Season   *string          `toml:"season"`
	Size     *string          `toml:"size"`
}

// rawKitchen is kitchen.toml as written.
type rawKitchen struct {
	Name        *string          `toml:"name"`
	Address     source.OneOrMore `toml:"address"`
	ShowAddress *bool            `toml:"show_address"`
	Phone       *string          `toml:"phone"`
	Email       *string          `toml:"email"`
	Website     *string          `toml:"website"`
	Permit      *source.Loose    `toml:"permit"`
	County      *string          `toml:"county"`
	Place       *string          `toml:"place"`
	Programme   *string          `toml:"programme"`
	Program     *string          `toml:"program"`
	SaleMode    *string          `toml:"sale_mode"`
	SmallAmount *float64         `toml:"small_amounts"`
	OwnYields   *bool            `toml:"own_yields"`
	NetForm     *string          `toml:"net_form"`
	Language    *string          `toml:"language"`
	RecordURL   *string          `toml:"record_url"`
	Currency    *string          `toml:"currency"`
	Units       *string          `toml:"units"`
	AlsoHandles source.OneOrMore `toml:"also_handles"`
	Altitude    *string          `toml:"altitude"`
	Pets        *string          `toml:"pets"`
	Corporate   *string          `toml:"corporate_name"`
	StateWeb    *string          `toml:"state_website"`
	Jars        []rawJar         `toml:"jar"`
	Ingredients []rawPantry      `toml:"ingredient"`
	Printer     *rawPrinter      `toml:"printer"`
	Supplies    *rawSupplies     `toml:"supplies"`
}

type rawJar struct {
	Key           *string `toml:"key"`
	Description   *string `toml:"description"`
	NamedBy       *string `toml:"named_by"`
	Nominal       *string `toml:"nominal"`
	Brimful       *string `toml:"brimful"`
	Mouth         *string `toml:"mouth"`
	Height        *string `toml:"height"`
	Diameter      *string `toml:"diameter"`
	Circumference *string `toml:"circumference"`
	Panel         *string `toml:"panel"`
	Tare          *string `toml:"tare"`
	Lid           *string `toml:"lid"`
}

// rawPantry is an own ingredient; numbers are g per 100 g of the edible part.
type rawPantry struct {
	Name            *string          `toml:"name"`
	Aliases         source.OneOrMore `toml:"aliases"`
	Kind            *string          `toml:"kind"`
	Water           *float64         `toml:"water"`
	Solids          *float64         `toml:"solids"`
	InsolubleSolids *float64         `toml:"insoluble_solids"`
	Sugars          *float64         `toml:"sugars"`
	Cup             *string          `toml:"cup"`
	Tbsp            *string          `toml:"tbsp"`
	Tsp             *string          `toml:"tsp"`
	Piece           *string          `toml:"piece"`
	Allergen        *string          `toml:"allergen"`
	EUAllergen      *string          `toml:"eu_allergen"`
	Allergens       []string         `toml:"allergens"`
	Sulphites       *bool            `toml:"sulphites"`
	FruitClass      *string          `toml:"fruit_class"`
	Contains        []rawPart        `toml:"contains"`
	Source          *string          `toml:"source"`
}

type rawPrinter struct {
	OffsetX *string  `toml:"offset_x"`
	OffsetY *string  `toml:"offset_y"`
	ScaleX  *float64 `toml:"scale_x"`
	ScaleY  *float64 `toml:"scale_y"`
}

type rawSupplies struct {
	Lids       map[string]int `toml:"lids"`
	Jars       map[string]int `toml:"jars"`
	Labels     map[string]int `toml:"labels"`
	PartSheets map[string]int `toml:"part_sheets"`
	Tags       *int           `toml:"tags"`
	Boxes      *int           `toml:"boxes"`
	BoxHolds   *int           `toml:"box_holds"`
	Ribbon     *string        `toml:"ribbon"`
}
