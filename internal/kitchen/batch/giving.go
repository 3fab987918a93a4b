package batch

import (
	"regexp"
	"strings"

	"jarmark/internal/kit/source"
)

func (r *reader) gift(raw rawGift, path string) Gift {
	g := Gift{Path: path,
		To: r.text(raw.To, path+".to"), From: r.text(raw.From, path+".from"), Message: r.plain(raw.Message, path+".message", 1000, true),
		Jars: r.count(raw.Jars, path+".jars", "the number of jars", 1), Jar: r.text(raw.Jar, path+".jar"),
		Occasion: strings.ToLower(r.text(raw.Occasion, path+".occasion")), Design: r.text(raw.Design, path+".design"),
	}
	if r.absent(raw.To, path+".to") {
		r.errorf("missing-to", path+".to", "the gift has no recipient").Hinted(`add to = "Ida"`)
	}
	if has(raw.Jars) && *raw.Jars == 0 {
		r.l.Warnf("no-jars", r.file, path+".jars", "a gift of no jars").Hinted("write how many jars go, or take the [[gift]] out")
	}
	return g
}

func (r *reader) market(raw rawMarket, path string) Market {
	m := Market{Path: path,
		Event: r.text(raw.Event, path+".event"), Date: r.date(raw.Date, path+".date"),
		Jars: r.count(raw.Jars, path+".jars", "the number of jars", 0), Jar: r.text(raw.Jar, path+".jar"),
		Price: r.price(raw.Price, path+".price"), Fee: r.money(raw.Fee, path+".fee"), CameHome: r.count(raw.CameHome, path+".came_home", "the number of jars", -1),
	}
	if r.absent(raw.Event, path+".event") {
		r.errorf("missing-event", path+".event", "the market has no name").Hinted(`add event = "Saturday market"`)
	}
	if !has(raw.Jars) && !r.broken[path+".jars"] {
		r.errorf("missing-jars", path+".jars", "the market has no number of jars").Hinted("add jars = 6, how many you take along")
	}
	if has(raw.Jars) && *raw.Jars == 0 {
		r.l.Warnf("no-jars", r.file, path+".jars", "no jars go to this market").Hinted("write how many you take along, or take the [[market]] out")
	}
	if m.CameHome > m.Jars && has(raw.Jars) {
		r.errorf("came-home-over-jars", path+".came_home", "%d jars came home, but %d were taken along", m.CameHome, m.Jars).Hinted("check both counts")
		m.CameHome = -1
	}
	return m
}

var hexColour = regexp.MustCompile(`^#(?i:[0-9a-f]{3}|[0-9a-f]{6})$`)

// pieces are the kinds of label, in the words of package label.
var pieces = []string{"front", "info", "wrap", "lid", "tag", "strip", "bag", "case", "shelf", "allergens", "sign"}

var pieceSynonyms = map[string]string{
	"wrap around": "wrap", "lid round": "lid", "round": "lid", "hang tag": "tag", "seal strip": "strip", "seal": "strip", "bag card": "bag", "bag label": "bag",
	"case label": "case", "shelf card": "shelf", "allergen card": "allergens", "back": "info",
}

func (r *reader) label(raw *rawLabel) Label {
	if raw == nil {
		return Label{}
	}
	l := Label{
		Title: r.name(raw.Title, "label.title"), Subtitle: r.name(raw.Subtitle, "label.subtitle"), Design: r.text(raw.Design, "label.design"),
		Sheet: r.text(raw.Sheet, "label.sheet"), Piece: r.choice(raw.Kind, "label.kind", "kind of label", pieces, pieceSynonyms), InkSaver: truth(raw.InkSaver), Serials: truth(raw.Serials),
		Season: r.text(raw.Season, "label.season"), Stamp: r.text(raw.Stamp, "label.stamp"), Words: r.text(raw.Words, "label.words"), Size: r.text(raw.Size, "label.size"),
	}
	l.Colours = r.colours(raw.Colours, "label.colours")
	if len(l.Colours) == 0 {
		l.Colours = r.colours(raw.Colors, "label.colors")
	}
	return l
}

func (r *reader) colours(in []string, path string) []string {
	out := r.texts(in, path)
	for i, c := range in {
		if c = strings.TrimSpace(c); strings.HasPrefix(c, "#") && !hexColour.MatchString(c) {
			r.errorf("bad-colour", source.At(path, i), "%q is not a colour", c).Hinted(`write six digits like "#b3202a", or a fruit's name`)
		}
	}
	return out
}
