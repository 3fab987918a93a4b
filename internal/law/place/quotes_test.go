package place

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/kit/unit"

	"jarmark/templates"
)

// Prescribed words are compared letter by letter with the sentence they were
// read in; a set that prescribes words and keeps no quotation fails here.
func TestPrescribedWordsMatchTheirQuotations(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	states := 0
	for _, id := range b.names {
		quotes, err := b.Quotes(id)
		if err != nil {
			t.Error(err)
		}
		at := map[string]Quote{}
		for _, q := range quotes {
			at[q.Value] = q
		}
		r, _, _ := b.set(id)
		if len(r.Programmes) > 0 {
			states++
		}
		for _, p := range r.Programmes {
			for key, words := range map[string]string{"statement": p.Statement, "recommended": p.Recommended, "sign": p.Sign} {
				q, ok := at[p.ID+"."+key]
				if key == "sign" && p.SignAbout != "" { // free words: the label's say it
					_, ok = at[p.ID+".sign_about"]
					q = at[p.ID+".statement"]
				}
				switch {
				case words == "":
				case !ok:
					t.Errorf("%s: %s.%s has no quotation", id, p.ID, key)
				case !strings.Contains(q.Text, words):
					t.Errorf("%s: %s.%s is %q; where it was read stood %q", id, p.ID, key, words, q.Text)
				case q.Confidence != p.Confidence:
					t.Errorf("%s: %s.%s is %s, its quotation %s", id, p.ID, key, p.Confidence, q.Confidence)
				}
			}
		}
	}
	if states != 51 {
		t.Errorf("%d states and DC", states)
	}
}

// A quotation belongs to a value that is there, and a phrase that is quoted
// says the quoted words: what stands between its {values}, stars aside.
func TestQuotationsNameTheirValues(t *testing.T) {
	b, _ := book()
	for _, id := range b.names {
		values := map[string]bool{}
		for _, v := range rulesOf(t, id).Effective() {
			values[v.Row()+"."+v.Key] = true
		}
		quotes, _ := b.quotesOf(id)
		for _, q := range quotes {
			name, phrase := strings.CutPrefix(q.Value, "phrase:")
			if !phrase {
				for _, v := range strings.Split(q.Value, "|") {
					if !values[v] {
						t.Errorf("%s: %q is no value of the set", id, v)
					}
				}
				continue
			}
			lang, key, _ := strings.Cut(name, ":")
			if begin, all := strings.CutSuffix(key, "*"); all {
				checkNames(t, b.words[lang], begin, q)
				continue
			}
			if b.words[lang] == nil || !b.words[lang].Has(key) {
				t.Errorf("%s: no phrase %q", id, q.Value)
				continue
			}
			for _, piece := range pieces(b.words[lang].all()[key]) {
				if !strings.Contains(q.Text, piece) {
					t.Errorf("%s: %s says %q; where it was read stood %q", id, q.Value, piece, q.Text)
				}
			}
		}
	}
}

// otherwise are names that the quoted page writes in another form.
var otherwise = map[string]string{"khorasan-weizen": "khorsan-weizen", "macadamianüsse": "macadamia- oder queenslandnüsse", "sulfite": "sulphite", "lupinen": "lupine",
	"blé de khorasan": "blé", "noix de macadamia": "fruits à coque"}

// checkNames holds a list of names against the sentence they stand in.
func checkNames(t *testing.T, words *Phrases, begin string, q Quote) {
	t.Helper()
	n := 0
	for key, word := range words.all() {
		if !strings.HasPrefix(key, begin) {
			continue
		}
		n++
		name, _, _ := strings.Cut(strings.ToLower(word), " (")
		if !strings.Contains(strings.ToLower(q.Text), cmp.Or(otherwise[name], name)) {
			t.Errorf("%s: %q is not in %q", key, word, q.Text)
		}
	}
	if n == 0 {
		t.Errorf("no phrase begins with %q", begin)
	}
}

func TestPieces(t *testing.T) {
	if got := strings.Join(pieces("*Prepared with* {n} g of fruit per {m}"), "|"); got != "Prepared with|g of fruit per" {
		t.Errorf("%q", got)
	}
}

// A quotation without words, day or trust is a fault of its file.
func TestBadQuotations(t *testing.T) {
	us, err := templates.FS.ReadFile("places/us.toml")
	if err != nil {
		t.Fatal(err)
	}
	const good = "value = \"net.form\"\ntext = \"t\"\nwhere = \"w\"\nread = \"2026-11-26\"\nconfidence = \"primary\"\n"
	for bad, want := range map[string]string{"": "", "confidence = \"primary\"": "hearsay", "text = \"t\"": "value, text", "read = \"2026-11-26\"": "value, text", "value": "colour"} {
		text := good
		switch bad {
		case "confidence = \"primary\"":
			text = strings.Replace(good, "primary", "hearsay", 1)
		case "value":
			text = "colour = 1\n" + good
		case "":
		default:
			text = strings.Replace(good, bad, "", 1)
		}
		b, err := load(Laws{}, fstest.MapFS{"places/us.toml": {Data: us}, "places/quotes/us.toml": {Data: []byte("[[quote]]\n" + text)}}, templates.FS)
		if err != nil {
			t.Fatal(err)
		}
		_, err = b.Quotes("us")
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("without %q: %v, want %q", bad, err, want)
		}
	}
}

// A cap on sales stands with the sentence it was read in, and the sentence says
// the sum, in figures or in words.
func TestSalesCapsMatchTheirQuotations(t *testing.T) {
	b, _ := book()
	words := map[int64]string{10000: "10,000", 50000: "fifty thousand"}
	n := 0
	for _, id := range b.names {
		quotes, _ := b.Quotes(id)
		r, _, _ := b.set(id)
		for _, p := range r.Programmes {
			c := p.SalesCap
			if c.Amount == 0 {
				continue
			}
			n++
			at := slices.IndexFunc(quotes, func(q Quote) bool { return q.Value == p.ID+".sales_cap" })
			if at < 0 {
				t.Errorf("%s: the cap of %d has no quotation", id, c.Amount)
				continue
			}
			figure := fmt.Sprintf("%d,%03d", c.Amount/1000, c.Amount%1000)
			if q := quotes[at]; q.Confidence != c.Confidence || q.Read != c.Read || !strings.Contains(q.Text, figure) && (words[c.Amount] == "" || !strings.Contains(q.Text, words[c.Amount])) {
				t.Errorf("%s: %+v does not stand in %+v", id, c, q)
			}
			if (&Set{rules: r, On: unit.Date{Year: 2026, Month: 11, Day: 26}}).SalesCap("") != c {
				t.Errorf("%s: the cap in force is not that of %s", id, p.ID)
			}
		}
	}
	if n < 11 {
		t.Errorf("%d caps", n)
	}
}
