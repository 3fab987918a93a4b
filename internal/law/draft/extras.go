package draft

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

// ExtrasDoc says what the step is for.
const ExtrasDoc = "brand, season, serving idea, code and its caption, seal and case words"

// ExtrasPhrases are what it needs of a language.
var ExtrasPhrases = []string{"jar", "caption.page", "caption.text", "seal", "tag.to", "tag.from", "card.allergens", "case.count"}

// Extras adds what no law asks: brand, season, serving idea, the code and its
// caption, words for seal strips and cases, and the jar in words.
func (p *Draft) Extras() {
	put := func(k label.Kind, text, path string) {
		if text = strings.TrimSpace(text); text != "" {
			p.Add(label.Block{Kind: k, Runs: []label.Run{{Text: text}}, Path: path})
		}
	}
	put(label.Brand, p.K.Name, "name")
	put(label.Season, p.B.Label.Season, "label.season")
	put(label.Serve, p.B.Serve, "serve")
	put(label.Stamp, p.B.Label.Stamp, "label.stamp")
	put(label.Words, p.B.Label.Words, "label.words")
	p.code(put)
	put(label.Seal, p.Say.Say("seal"), "")
	for _, k := range []label.Kind{label.To, label.From} {
		// The word before a name, bold; the name is written by hand or follows.
		p.Add(label.Block{Kind: k, Runs: []label.Run{{Text: p.Say.Say("tag." + string(k)), Bold: true}}})
	}
	p.C.AllergenWord = p.Say.Say("card.allergens")
	if p.Net != "" {
		p.C.JarText = p.Say.Say("jar", "net", p.Net)
		put(label.Count, p.Say.Say("case.count", "n", strconv.Itoa(p.caseHolds()), "net", p.Net), p.Jar.FillPath)
	}
}

// code sets the QR code: the record page, or plain words without a website.
func (p *Draft) code(put func(label.Kind, string, string)) {
	payload, page := p.payload()
	if payload == "" {
		return
	}
	p.C.QR = label.QR{Payload: payload, MinModule: minModule}
	if len(payload) > longPayload {
		p.L.Warnf("qr-long", p.KitchenFile(), "record_url", "the code holds %d bytes, so it needs more than 20 mm", len(payload)).
			Hinted("a shorter record_url makes a smaller code").Cited("ISO/IEC 18004")
	}
	if page {
		put(label.Caption, p.Say.Say("caption.page"), "record_url")
	} else {
		put(label.Caption, p.Say.Say("caption.text"), "record_url")
	}
}

// payload gives the text of the code, and whether it opens a page.
func (p *Draft) payload() (text string, page bool) {
	if p.O.Payload != "" {
		return p.O.Payload, isPage(p.O.Payload)
	}
	base := strings.TrimSpace(p.K.RecordURL)
	if base == "" || p.R.Lot == "" {
		return p.plainWords(), false
	}
	if u, err := url.Parse(base); err != nil || u.Host == "" || u.Scheme != "https" && u.Scheme != "http" {
		p.L.Errorf("bad-record-url", p.KitchenFile(), "record_url", "%q is no web address", base).Hinted(`write it like "https://example.com/jars"`)
		return p.plainWords(), false
	} else if u.Scheme == "http" {
		p.L.Notef("record-url-http", p.KitchenFile(), "record_url", "the record address is not secure, and some phones warn of it").Hinted("use https if the site has it")
	}
	return strings.TrimRight(base, "/") + "/" + url.PathEscape(p.R.Lot) + "/", true
}

func isPage(s string) bool {
	return strings.HasPrefix(s, "https://") || strings.HasPrefix(s, "http://")
}

// plainWords is what a code says without a website: name, lot, allergens.
func (p *Draft) plainWords() string {
	var parts []string
	for _, s := range []string{p.B.Name, p.R.Lot} {
		if s = strings.TrimSpace(s); s != "" {
			parts = append(parts, s)
		}
	}
	for _, k := range []label.Kind{label.Allergens, label.Date} {
		if b, ok := p.C.Find(k); ok {
			parts = append(parts, b.Text())
		}
	}
	if _, ok := p.C.Find(label.Allergens); !ok && len(p.C.AllergenNames) > 0 {
		// Where allergens stand inside the list of ingredients, the code names them.
		parts = append(parts, p.Say.Say("eu.contains")+Listed(p.C.AllergenNames))
	}
	return strings.Join(parts, "\n")
}

// caseHolds is how many jars a full box of this size takes.
func (p *Draft) caseHolds() int {
	n := p.K.Supplies.PerBox()
	if p.Jar.Sealed > 0 {
		n = min(n, p.Jar.Sealed)
	}
	return n
}
