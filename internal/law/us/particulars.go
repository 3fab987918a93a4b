package us

import (
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// particular is one thing a state may ask on the label: where the maker writes
// it, whether it is there, and which words it prints beside name and address.
// What the federal label asks anyway is always OK here: its own kind reports it.
type particular struct {
	Token, Key string
	File       string // "kitchen" or "batch"
	OK         func(*pass) bool
	Show       string // "permit", "phone", "email", "county", "made", "pets"; "" = printed anyway
	Tell       string // for what no label can hold: a note instead of a check
}

func addressed(p *pass) bool { return len(p.K.Address) > 0 }
func permitted(p *pass) bool { return p.K.Permit != "" }
func phoned(p *pass) bool    { return p.K.Phone != "" }
func always(*pass) bool      { return true }
func reached(p *pass) bool {
	return p.K.Phone != "" || p.K.Email != "" || p.K.Website != "" || addressed(p)
}
func inCounty(p *pass) bool { return p.K.County != "" }
func hasLot(p *pass) bool   { return p.R.Lot != "" }
func hasMade(p *pass) bool  { return !p.B.Made.IsZero() }

// particularTable lists every token a set's `required` may hold.
func particularTable() []particular {
	return []particular{
		{"maker_name", "name", "kitchen", always, "", ""},
		{"business_name", "name", "kitchen", always, "", ""},
		{"address", "address", "kitchen", addressed, "", ""},
		{"mailing_address", "address", "kitchen", addressed, "", ""},
		{"po_box", "address", "kitchen", addressed, "", ""},
		{"city_state", "address", "kitchen", addressed, "", ""},
		{"city_state_zip", "address", "kitchen", addressed, "", ""},
		{"city_state_zip_if_in_directory", "address", "kitchen", addressed, "", ""},
		{"street_address_unless_in_directory", "address", "kitchen", addressed, "", ""},
		{"municipality", "address", "kitchen", func(p *pass) bool { return addressed(p) || inCounty(p) }, "", ""},
		{"municipality_or_county", "county", "kitchen", func(p *pass) bool { return addressed(p) || inCounty(p) }, "county", ""},
		{"county_of_issue", "county", "kitchen", inCounty, "county", ""},
		{"county_of_preparation", "county", "kitchen", inCounty, "county", ""},
		{"state_website", "state_website", "kitchen", func(p *pass) bool { return p.stateWebsite() != "" }, "state_website", ""},
		{"contact", "phone", "kitchen", reached, "phone", ""},
		{"phone", "phone", "kitchen", phoned, "phone", ""},
		{"email", "email", "kitchen", func(p *pass) bool { return p.K.Email != "" }, "email", ""},
		{"id_number", "permit", "kitchen", permitted, "permit", ""},
		{"registration_number", "permit", "kitchen", permitted, "permit", ""},
		{"permit_number", "permit", "kitchen", permitted, "permit", ""},
		{"registration_or_permit_number", "permit", "kitchen", permitted, "permit", ""},
		{"business_license_number_if_any", "permit", "kitchen", always, "permit", ""},
		{"lot_number", "lot", "batch", hasLot, "", ""},
		{"product_code_with_date_and_lot", "lot", "batch", hasLot, "made", ""},
		{"product_name", "name", "batch", always, "", ""},
		{"ingredients", "ingredient", "batch", always, "", ""},
		{"ingredients_headed", "ingredient", "batch", always, "", ""},
		{"ingredients_on_request", "ingredient", "batch", always, "", ""},
		{"qr_or_website_plus_sign", "ingredient", "batch", always, "", ""},
		{"sub_ingredients", "ingredient", "batch", always, "", ""},
		{"allergens", "ingredient", "batch", always, "", ""},
		{"allergens_headed_contains", "ingredient", "batch", always, "", ""},
		{"net_qty", "fill", "batch", always, "", ""},
		{"net_qty_us_and_metric", "fill", "batch", always, "", ""},
		{"count", "fill", "batch", always, "", ""},
		{"date_made", "made", "batch", hasMade, "made", ""},
		{"date_made_if_home_canned", "made", "batch", hasMade, "made", ""},
		{"english", "language", "kitchen", func(p *pass) bool { return p.Say.Lang == "en" }, "", ""},
		{"pets_statement_with_species", "pets", "kitchen", always, "pets", ""},
		{"nutrition_if_claim", "story", "batch", always, "", ""},
		{"nutrition_unless_exempt", "story", "batch", always, "", ""},
		{"federal_label_21_CFR_101", "name", "batch", always, "", ""},
		{"pos_sign", "market", "batch", always, "", "a sign at the point of sale"},
		{"pos_sign_if_unpackaged", "market", "batch", always, "", "a sign at the point of sale for unpackaged food"},
		{"label_or_sign", "market", "batch", always, "", "the statement on the label or on a sign"},
		{"inform_buyer_if_direct_sale", "market", "batch", always, "", "that you tell the buyer when selling directly"},
		{"label_required", "name", "batch", always, "", "a label; which particulars was not read"},
		{"phone_and_date_if_sold_to_store", "phone", "kitchen", always, "", "telephone number and date when sold to a store"},
	}
}

func particularNamed(token string) (particular, bool) {
	for _, x := range particularTable() {
		if x.Token == token {
			return x, true
		}
	}
	return particular{}, false
}

// particulars checks the groups a state asks: any one member of each suffices.
func (p *pass) particulars(pr *place.Programme) {
	for _, group := range pr.Required {
		var missing []particular
		filled := false
		for _, token := range group {
			x, _ := particularNamed(token)
			if x.OK(p) {
				filled = true
			} else {
				missing = append(missing, x)
			}
			if x.Tell != "" {
				p.L.Notef("also-required", p.KitchenFile(), "place", "%s also asks for %s", p.Set.Name, x.Tell).Cited(pr.Law)
			}
		}
		if !filled && len(missing) > 0 && !onlyAddress(missing) {
			p.lacking(pr, missing)
		}
	}
}

// onlyAddress: the federal rule asks for the address too, and says so.
func onlyAddress(missing []particular) bool {
	return !slices.ContainsFunc(missing, func(x particular) bool { return x.Key != "address" })
}

func (p *pass) lacking(pr *place.Programme, missing []particular) {
	var names, keys []string
	for _, x := range missing {
		names = append(names, strings.ReplaceAll(x.Token, "_", " "))
		if where := x.Key + " in " + map[string]string{"kitchen": "kitchen.toml", "batch": "the batch file"}[x.File]; !draft.Has(keys, where) {
			keys = append(keys, where)
		}
	}
	file := p.KitchenFile()
	if missing[0].File == "batch" {
		file = p.BatchFile()
	}
	d := p.L.Errorf("particular-missing", file, missing[0].Key, "%s asks for the %s on the label, and it is not given", p.Set.Name, strings.Join(names, " or "))
	d.Hinted("write " + strings.Join(keys, " or ")).Cited(pr.Law)
	if pr.Confidence == "memory" {
		d.Severity, d.Message = diag.Warning, d.Message+" (from memory, unverified)"
	}
}

// shows reports whether a state's groups let this be printed: "permit", "phone"
// and the like.
func (p *pass) shows(what string) bool {
	if p.prog == nil {
		return false
	}
	for _, group := range p.prog.Required {
		for _, token := range group {
			if x, _ := particularNamed(token); x.Show == what {
				return true
			}
		}
	}
	return false
}
