package batch

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

const defaultCurrency = "USD"

// What a kitchen has that says nothing of its printer and its cupboard.
var (
	trueSize = Printer{ScaleX: 1, ScaleY: 1}
	notSaid  = Supplies{Tags: -1, Boxes: -1, Ribbon: -1}
)

// Without a kitchen file the United States' federal rules and measures hold.
func plainKitchen(find place.Finder) *Kitchen {
	k := &Kitchen{
		SaleMode: "prepacked", OwnYields: true, Currency: defaultCurrency, Units: unit.US,
		Printer: trueSize, Supplies: notSaid,
	}
	k.Place, _, _ = find("us")
	return k
}

// ParseKitchen reads kitchen.toml; find knows the places. Empty data means
// there is none: the Kitchen then holds the defaults and no File. It is never
// nil.
func ParseKitchen(name string, data []byte, find place.Finder) (*Kitchen, diag.List) {
	if find == nil {
		find = func(id string) (place.Place, string, bool) { return place.Place{ID: id}, "", true }
	}
	if len(data) == 0 {
		return plainKitchen(find), nil
	}
	var raw rawKitchen
	f, r, ok := open(name, data, &raw)
	if !ok {
		k := plainKitchen(find)
		k.File = f
		return k, r.done(f)
	}
	k := r.kitchen(raw, find)
	k.File = f
	return k, r.done(f)
}

func (r *reader) kitchen(raw rawKitchen, find place.Finder) *Kitchen {
	k := plainKitchen(find)
	for _, b := range []struct {
		p          *string
		path, hint string
	}{
		{raw.Units, "units", `write units = "us" or "metric", or take the line out: the place decides then`},
		{raw.Currency, "currency", `write currency = "USD", or take the line out: the place decides then`},
		{raw.Altitude, "altitude", `write altitude = "500 ft", or take the line out`},
	} {
		r.blank(b.p, b.path, b.hint)
	}
	k.Name, k.Address, k.ShowAddress = r.text(raw.Name, "name"), r.texts(raw.Address, "address"), truth(raw.ShowAddress)
	k.Phone, k.Email, k.Website = r.text(raw.Phone, "phone"), r.text(raw.Email, "email"), r.website(raw.Website, "website")
	k.Corporate, k.StateWebsite = r.text(raw.Corporate, "corporate_name"), r.text(raw.StateWeb, "state_website")
	k.Permit, k.County = r.loose(raw.Permit, "permit"), r.text(raw.County, "county")
	k.Place, k.PlaceUnknown = r.place(raw.Place, k.Place, find)
	k.Programme = r.text(raw.Programme, "programme")
	if k.Programme == "" {
		k.Programme = r.text(raw.Program, "program")
	}
	if m := r.choice(raw.SaleMode, "sale_mode", "way of selling", []string{"prepacked", "ppds"}, nil); m != "" {
		k.SaleMode = m
	}
	k.SmallAmounts = r.smallAmounts(raw.SmallAmount)
	k.OwnYields = raw.OwnYields == nil || *raw.OwnYields
	k.NetForm = r.choice(raw.NetForm, "net_form", "form of the net weight", []string{"pounds", "dual"}, nil)
	k.Language, k.Second = r.language(raw.Language, "language"), r.language(raw.Second, "second_language")
	k.RecordURL = r.webAddress(raw.RecordURL, "record_url")
	k.Currency, k.Units = r.currencyOf(raw.Currency, k.Place.Currency), r.units(raw.Units, k.Place.Units)
	r.currency = k.Currency
	k.AlsoHandles, k.Pets = r.texts(raw.AlsoHandles, "also_handles"), r.text(raw.Pets, "pets")
	k.Altitude, k.AltitudeOK = r.altitude(raw.Altitude, "altitude")
	for i, in := range raw.Jars {
		k.Jars = append(k.Jars, r.jar(in, source.At("jar", i)))
	}
	for i, in := range raw.Ingredients {
		k.Ingredients = append(k.Ingredients, r.own(in, source.At("ingredient", i)))
	}
	k.Printer, k.Supplies, k.Costs = r.printer(raw.Printer), r.supplies(raw.Supplies), r.costs(raw.Costs)
	k.Picture, k.Type = r.picture(raw.Picture), r.typefaces(raw.Type)
	return k
}

var (
	languageForm = regexp.MustCompile(`^[a-z]{2}(-[A-Za-z]{2,4})?$`)
	currencyForm = regexp.MustCompile(`^[A-Z]{3}$`)
)

// place reads where jam is sold. What is written and is no place leaves none
// to judge by: it must not pass for another.
func (r *reader) place(p *string, none place.Place, find place.Finder) (at place.Place, unknown bool) {
	if !has(p) {
		return none, r.broken["place"]
	}
	at, hint, ok := find(*p)
	switch {
	case ok && strings.TrimSpace(*p) != "":
		return at, false
	case strings.TrimSpace(*p) == "":
		r.errorf("blank-value", "place", "place is blank").Hinted(`write place = "us-or" (your state), "eu" or "gb"; jarmark places lists them`)
	default:
		r.errorf("unknown-place", "place", "no rules for the place %q", *p).Hinted(hint)
	}
	return none, true
}

// blank notes a key that is there and says nothing: it would pass for a choice.
func (r *reader) blank(p *string, path, hint string) {
	if has(p) && strings.TrimSpace(*p) == "" {
		r.errorf("blank-value", path, "%s is blank", path).Hinted(hint)
	}
}

func (r *reader) language(p *string, path string) string {
	s := r.text(p, path)
	if s == "" || languageForm.MatchString(s) {
		return s
	}
	r.errorf("bad-language", path, "%q is not a language code", s).Hinted(`write two letters like "en", "de" or "fr"`)
	return ""
}

// currencyOf is the currency: given, or the usual one of the place.
func (r *reader) currencyOf(p *string, usual string) string {
	s := strings.ToUpper(r.text(p, "currency"))
	if currencyForm.MatchString(s) {
		return s
	}
	if s != "" {
		r.errorf("bad-currency", "currency", "%q is not a currency", *p).Hinted("write the three letters of ISO 4217, like USD, EUR or GBP")
	}
	if usual == "" {
		return defaultCurrency
	}
	return usual
}

func (r *reader) units(p *string, usual string) string {
	s := r.choice(p, "units", "system of units", []string{unit.US, unit.Metric}, map[string]string{"si": unit.Metric, "american": unit.US})
	switch {
	case s != "":
		return s
	case usual != "":
		return usual
	}
	return unit.US
}

var urlForm = regexp.MustCompile(`^https?://[A-Za-z0-9]([A-Za-z0-9.-]*[A-Za-z0-9])?(:[0-9]{1,5})?(/[A-Za-z0-9._~/%-]*)?$`)

var siteForm = regexp.MustCompile(`(?i)^(https?://)?[^\s/.:@]+(\.[^\s/.:@]+)*\.[^\s/.:@0-9]{2,}(:[0-9]+)?(/\S*)?$`)

// website is printed as it is written; a word without a point is no address.
func (r *reader) website(p *string, path string) string {
	s := r.text(p, path)
	if s != "" && !siteForm.MatchString(s) {
		r.l.Warnf("bad-url", r.file, path, "%q is no web address", s).Hinted("write it like thornfield.example or https://thornfield.example/jam, or leave it out")
	}
	return s
}

// webAddress reads the base of the public pages, without a closing slash.
func (r *reader) webAddress(p *string, path string) string {
	s := r.text(p, path)
	if s == "" {
		return ""
	}
	if !urlForm.MatchString(s) || len(s) > 120 {
		r.errorf("bad-url", path, "%q is not a web address to build on", s).
			Hinted("write it like https://example.org/jam, without ? or #; a short one makes a smaller code on the label")
		return ""
	}
	return strings.TrimRight(s, "/")
}

func (r *reader) printer(raw *rawPrinter) Printer {
	p := trueSize
	if raw == nil {
		return p
	}
	const limits = "an offset between -25 and 25 mm"
	p.OffsetX = r.length(raw.OffsetX, "printer.offset_x", -25*unit.Millimetre, 25*unit.Millimetre, limits)
	p.OffsetY = r.length(raw.OffsetY, "printer.offset_y", -25*unit.Millimetre, 25*unit.Millimetre, limits)
	if s := r.number(raw.ScaleX, "printer.scale_x", "a scale", 0.9, 1.1); s != nil {
		p.ScaleX = *s
	}
	if s := r.number(raw.ScaleY, "printer.scale_y", "a scale", 0.9, 1.1); s != nil {
		p.ScaleY = *s
	}
	return p
}

// smallAmounts is one of the four thresholds of 21 CFR 101.4(a)(2).
func (r *reader) smallAmounts(p *float64) float64 {
	if p == nil {
		return 0
	}
	if !slices.Contains([]float64{2, 1.5, 1, 0.5}, *p) {
		r.errorf("bad-threshold", "small_amounts", "%s is no threshold for small amounts", number(*p)).
			Hinted("it is 2, 1.5, 1 or 0.5 percent").Cited("21 CFR 101.4(a)(2)")
		return 0
	}
	return *p
}

func (r *reader) supplies(raw *rawSupplies) Supplies {
	s := notSaid
	if raw == nil {
		return s
	}
	s.Lids, s.Jars = r.stock(raw.Lids, "supplies.lids"), r.stock(raw.Jars, "supplies.jars")
	s.Labels, s.PartSheets = r.stock(raw.Labels, "supplies.labels"), r.stock(raw.PartSheets, "supplies.part_sheets")
	s.Tags = r.count(raw.Tags, "supplies.tags", "the number of tags", -1)
	s.Boxes = r.count(raw.Boxes, "supplies.boxes", "the number of boxes", -1)
	s.BoxHolds = r.count(raw.BoxHolds, "supplies.box_holds", "the number of jars in a box", 0)
	if n := len(r.l); has(raw.Ribbon) {
		s.Ribbon = r.length(raw.Ribbon, "supplies.ribbon", 0, 10_000*unit.Metre, "a length of ribbon up to 10000 m")
		if len(r.l) > n { // unreadable: not a ribbon used up
			s.Ribbon = notSaid.Ribbon
		}
	}
	return s
}

func (r *reader) stock(in map[string]int, path string) map[string]int {
	for key, n := range in {
		in[key] = r.count(&n, source.Join(path, key), "the number left", 0)
	}
	return in
}

func (r *reader) costs(raw *rawCosts) (c Costs) {
	if raw == nil {
		return c
	}
	c.Lid, c.Label = r.money(raw.Lid, "costs.lid"), r.money(raw.Label, "costs.label")
	c.Hour, c.Fee, c.Float = r.money(raw.Hour, "costs.hour"), r.money(raw.Fee, "costs.fee"), r.money(raw.Float, "costs.float")
	for key, text := range raw.Jars {
		path := source.Join("costs.jars", key)
		m, err := unit.ParseMoney(text, r.currency)
		if err == nil && m.Currency != r.currency {
			err = fmt.Errorf("%s is not in the kitchen's currency, %s", m, r.currency)
		}
		if err != nil {
			r.wrong("bad-money", path, err)
			continue
		}
		if c.Jars == nil {
			c.Jars = map[string]unit.Money{}
		}
		c.Jars[key] = m
	}
	return c
}
