package rule

import (
	"net/url"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// minModule is the smallest QR module that phones read from paper (common
// practice, no source).
const minModule = 350 * unit.Micrometre

// longPayload is where a code grows past version 8, whose 49 modules and quiet
// zone take 20 mm at the smallest module (ISO/IEC 18004: 152 bytes at level M).
const longPayload = 152

// extras adds what no law asks: brand, season, serving idea, the code and its
// caption, words for seal strips and cases, and the jar in words.
func extras(p *pass) {
	put := func(k label.Kind, text, path string) {
		if text = strings.TrimSpace(text); text != "" {
			p.add(label.Block{Kind: k, Runs: []label.Run{{Text: text}}, Path: path})
		}
	}
	put(label.Brand, p.k.Name, "name")
	put(label.Season, p.b.Label.Season, "label.season")
	put(label.Serve, p.b.Serve, "serve")
	p.code(put)
	put(label.Seal, p.say.Say("seal"), "")
	for _, k := range []label.Kind{label.To, label.From} {
		// The word before a name, bold; the name is written by hand or follows.
		p.add(label.Block{Kind: k, Runs: []label.Run{{Text: p.say.Say("tag." + string(k)), Bold: true}}})
	}
	p.c.AllergenWord = p.say.Say("card.allergens")
	p.jarWords()
	if p.c.JarText != "" {
		put(label.Count, p.say.Say("case.count", "n", strconv.Itoa(p.caseHolds()), "net", p.jarNet()), p.jar.FillPath)
	}
}

// code sets the QR code: the record page, or plain words without a website.
func (p *pass) code(put func(label.Kind, string, string)) {
	payload, page := p.payload()
	if payload == "" {
		return
	}
	p.c.QR = label.QR{Payload: payload, MinModule: minModule}
	if len(payload) > longPayload {
		p.l.Warnf("qr-long", p.kitchenFile(), "record_url", "the code holds %d bytes, so it needs more than 20 mm", len(payload)).
			Hinted("a shorter record_url makes a smaller code").Cited("ISO/IEC 18004")
	}
	if page {
		put(label.Caption, p.say.Say("caption.page"), "record_url")
	} else {
		put(label.Caption, p.say.Say("caption.text"), "record_url")
	}
}

// payload gives the text of the code, and whether it opens a page.
func (p *pass) payload() (text string, page bool) {
	if p.o.Payload != "" {
		return p.o.Payload, isPage(p.o.Payload)
	}
	base := strings.TrimSpace(p.k.RecordURL)
	if base == "" || p.r.Lot == "" {
		return p.plainWords(), false
	}
	if u, err := url.Parse(base); err != nil || u.Host == "" || u.Scheme != "https" && u.Scheme != "http" {
		p.l.Errorf("bad-record-url", p.kitchenFile(), "record_url", "%q is no web address", base).Hinted(`write it like "https://example.com/jars"`)
		return p.plainWords(), false
	} else if u.Scheme == "http" {
		p.l.Notef("record-url-http", p.kitchenFile(), "record_url", "the record address is not secure, and some phones warn of it").Hinted("use https if the site has it")
	}
	return strings.TrimRight(base, "/") + "/" + url.PathEscape(p.r.Lot) + "/", true
}

func isPage(s string) bool {
	return strings.HasPrefix(s, "https://") || strings.HasPrefix(s, "http://")
}

// plainWords is what a code says without a website: name, lot, allergens.
func (p *pass) plainWords() string {
	var parts []string
	for _, s := range []string{p.b.Name, p.r.Lot} {
		if s = strings.TrimSpace(s); s != "" {
			parts = append(parts, s)
		}
	}
	for _, k := range []label.Kind{label.Allergens, label.Date} {
		if b, ok := p.c.Find(k); ok {
			parts = append(parts, b.Text())
		}
	}
	if _, ok := p.c.Find(label.Allergens); !ok && len(p.c.AllergenNames) > 0 {
		// Where allergens stand inside the list of ingredients, the code names them.
		parts = append(parts, p.say.Say("eu.contains")+listed(p.c.AllergenNames))
	}
	return strings.Join(parts, "\n")
}

// jarWords names the jar by its declared weight: "10 oz jar".
func (p *pass) jarWords() {
	if p.netMass <= 0 && p.netVolume <= 0 {
		return
	}
	p.c.JarText = p.say.Say("jar", "net", p.jarNet())
}

// jarNet is the declared weight in the place's first system.
func (p *pass) jarNet() string {
	if p.netVolume > 0 {
		net, _, _ := strings.Cut(fluidWords(p.netVolume), " (")
		return net
	}
	net := metricWords(p.netMass)
	if p.per() == "oz" {
		net, _, _ = strings.Cut(netWords(p.netMass, false), " (")
	}
	return net
}

// caseHolds is how many jars a full box of this size takes.
func (p *pass) caseHolds() int {
	n := p.k.Supplies.PerBox()
	if p.jar.Sealed > 0 {
		n = min(n, p.jar.Sealed)
	}
	return n
}
