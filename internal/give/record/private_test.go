package record

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/kit/place"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// publicFields are the only fields of a batch, a kitchen and a result whose
// words a page may show. A new field is private until it is added here.
var publicFields = map[string]bool{
	"Batch.Name": true, "Batch.Story": true, "Batch.Serve": true,
	"Kitchen.Name": true, "Kitchen.Website": true, "Kitchen.AlsoHandles": true,
	"Result.Lot": true, "Result.Lines.Name": true, "Result.Lines.Allergens": true,
	"Result.Lines.Row.Allergens": true, "Result.Lines.Contains.Allergens": true,
	"Result.Lines.Contains.USAllergen": true, "Result.Lines.Contains.EUAllergen": true,
}

// canary writes a unique word into every text of a value, however deep.
type canary struct {
	words map[string]string // word -> field
	n     int
}

func (c *canary) plant(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.String:
		c.n++
		w := fmt.Sprintf("zq%dqz", c.n)
		c.words[w] = path
		v.SetString(w)
	case reflect.Int, reflect.Int64:
		v.SetInt(1)
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.IsExported() && f.Type.Kind() != reflect.Pointer {
				c.plant(v.Field(i), path+"."+f.Name)
			}
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range 2 {
			c.plant(v.Index(i), path)
		}
	case reflect.Map:
		k, e := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		c.plant(k, path)
		c.plant(e, path)
		v.Set(reflect.MakeMap(v.Type()))
		v.SetMapIndex(k, e)
	}
}

func planted() (*cook.Result, *canary) {
	c := &canary{words: map[string]string{}}
	r := &cook.Result{}
	c.plant(reflect.ValueOf(r).Elem(), "Result")
	r.Batch, r.Kitchen = &batch.Batch{}, &batch.Kitchen{}
	c.plant(reflect.ValueOf(r.Batch).Elem(), "Batch")
	c.plant(reflect.ValueOf(r.Kitchen).Elem(), "Kitchen")
	r.Kitchen.ShowAddress = false
	return r, c
}

// TestPrivate plants a unique word in every text field a batch, kitchen and
// result have; only the words of the public fields may reach any output.
func TestPrivate(t *testing.T) {
	r, c := planted()
	if c.n < 100 {
		t.Fatalf("only %d fields planted", c.n)
	}
	shown := map[string]bool{}
	for _, law := range []string{place.US, place.EU} {
		r.Kitchen.Place.Law = law
		idx, _ := Index([]Entry{EntryOf(r, nil)}, IndexOptions{Kitchen: r.Kitchen})
		for name, text := range map[string]string{"page": page(t, r, nil), "index": string(idx)} {
			for _, w := range regexp.MustCompile(`zq\d+qz`).FindAllString(strings.ToLower(text), -1) {
				field := c.words[w]
				shown[field] = true
				if !publicFields[field] {
					t.Errorf("%s shows the private field %s", name, field)
				}
			}
		}
	}
	for f := range publicFields {
		if !shown[f] {
			t.Errorf("the public field %s is not shown: the test would not see a leak", f)
		}
	}
}

// TestPrivateStatements: a label's statement that repeats a private fact is
// left off the public page, the label's maker block always.
func TestPrivateStatements(t *testing.T) {
	r, c := sample()
	c.Blocks = append(c.Blocks,
		label.Block{ID: "s2", Kind: label.Statement, Runs: []label.Run{{Text: "Made at 14 Thornfield Lane. Call 555 0100."}}},
		label.Block{ID: "s3", Kind: label.Statement, Runs: []label.Run{{Text: "write to NELL@thornfield.example"}}},
		label.Block{ID: "p", Kind: label.Price, Runs: []label.Run{{Text: "$9.00"}}},
		label.Block{ID: "to", Kind: label.To, Runs: []label.Run{{Text: "Marguerite"}}})
	b, found := Page(r, c, Options{})
	if len(found) != 2 {
		t.Errorf("findings %v, want a note for each of the two statements", found)
	}
	all := string(b)
	for _, secret := range []string{"14 Thornfield", "97000", "555", "nell@", "NELL@", "$9", "Marguerite", "no. 14", "second pot", "market"} {
		if strings.Contains(all, secret) {
			t.Errorf("the page shows %q", secret)
		}
	}
	if !strings.Contains(string(b), "Millbrook, OR") {
		t.Error("the town is missing")
	}
	r.Kitchen.ShowAddress = true
	if html := page(t, r, c); !strings.Contains(html, "14 Thornfield Lane<br>Millbrook, OR 97000") {
		t.Error("the chosen address is missing")
	}
}

func TestTown(t *testing.T) {
	for _, c := range []struct {
		address []string
		want    string
	}{
		{[]string{"14 Thornfield Lane", "Millbrook, OR 97000"}, "Millbrook, OR"},
		{[]string{"14 Thornfield Lane, Millbrook, OR 97000-1234"}, "Millbrook, OR"},
		{[]string{"Rose Cottage", "Back Lane, Millbrook OX7 1AA"}, "Millbrook"},
		{[]string{"Rose Cottage", "Back Lane", "Millbrook", "OX7 1AA"}, ""},
		{[]string{"Am Anger 3", "99999 Mühlbach"}, "Mühlbach"},
		{[]string{"Am Anger 3", "D-99999 Mühlbach", "Germany"}, "Mühlbach"},
		{[]string{"14 Thornfield Lane"}, ""},
		{[]string{"Rose Cottage", "Back Lane"}, ""},
		{[]string{"Millbrook, OR 97000"}, ""},
		{nil, ""},
	} {
		if got := town(c.address); got != c.want {
			t.Errorf("town(%q) = %q, want %q", c.address, got, c.want)
		}
	}
}

// TestEachSecretAlone: every fact that must not be published keeps a statement
// off the page by itself, however it is spaced or cased; without one it stays.
// A secret of fewer than four letters is no secret ("ok" is in every text).
func TestEachSecretAlone(t *testing.T) {
	for text, private := range map[string]bool{
		"Ask at (555) 0100.": true, "Ask at 5550101.": false,
		"Mail nell@Thornfield.example": true, "Mail nell at thornfield": false,
		"The second pot caught a little!": true, "The second pot caught": false,
		"Look for 14, THORNFIELD lane": true, "Look for Thornfield Lane": false,
		"Sold at Millbrook, OR 97000": true, "Sold at Millbrook, OR": false,
	} {
		r, c := sample()
		c.Blocks = append(c.Blocks, label.Block{ID: "s", Kind: label.Statement, Runs: []label.Run{{Text: text}}})
		b, found := Page(r, c, Options{})
		if shown := strings.Contains(string(b), text); shown == private || (len(found) > 0) != private {
			t.Errorf("%q: shown %v, findings %v", text, shown, found)
		}
	}
	r, c := sample()
	r.Kitchen.Phone, r.Kitchen.Email, r.Batch.Notes = "", "a@b", "jar"
	c.Blocks = append(c.Blocks, label.Block{ID: "s", Kind: label.Statement, Runs: []label.Run{{Text: "Each jar was sealed."}}})
	if _, found := Page(r, c, Options{}); len(found) > 0 {
		t.Errorf("three letters hide a statement: %v", found)
	}
	r.Batch.Notes = "lids"
	c.Blocks[len(c.Blocks)-1].Runs[0].Text = "All lids were tight."
	if _, found := Page(r, c, Options{}); len(found) != 1 {
		t.Errorf("four letters of the notes are published: %v", found)
	}
}
