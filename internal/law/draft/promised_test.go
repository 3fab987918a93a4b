package draft

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// said is what is told of a subtitle over a pot of our own invention: 1000 g of
// strawberries, 900 g of sugar, 60 g of lemon juice, 40 g of water, by the rules of
// a place.
func said(t *testing.T, subtitle string, tell func(d *Draft, o []ownText)) string {
	t.Helper()
	d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
		r.Lines = nil
		for _, x := range []struct {
			name string
			g    float64
		}{{"strawberries", 1000}, {"sugar", 900}, {"lemon juice", 60}, {"water", 40}} {
			row, _ := pantry.Default().Ingredient(x.name)
			r.Lines = append(r.Lines, cook.Line{Name: row.Name, Key: row.Key, Row: row, Mass: unit.Mass(x.g) * unit.Gram, Percent: x.g / 20, PercentFin: x.g / 16, Paths: []string{"ingredient[0]"}})
		}
		r.Batch.Label = batch.Label{Subtitle: subtitle}
	})
	d.L = nil
	for _, o := range d.ownTexts() {
		if o.path == "label.subtitle" {
			o.words = strings.Fields(Spaced(o.text))
			tell(d, []ownText{o})
		}
	}
	return strings.Join(messages(d.L), "; ")
}

func TestSharesInWords(t *testing.T) {
	for text, want := range map[string]string{
		"half fruit": "", "moitié fruits": "", "a third fruit": `warning "a third fruit": the recipe has 50 % fruit of all that went in`, "two thirds fruit": `warning "two thirds fruit": the recipe has 50 % fruit of all that went in`, "three quarters fruit": `warning "three quarters fruit": the recipe has 50 % fruit of all that went in`,
		"a quarter of an hour": "", "twice the fruit": `warning "twice the fruit": nothing here shows than what`, "twice the fun": "", "extra berries": `warning "extra berries": nothing here shows than what`,
		"more fruit than sugar": "", "more sugar than fruit": `warning "more sugar than fruit": the recipe has 45 % and 50 %`, "more joy than sugar": "", "more lemon juice than sugar": `warning "more lemon juice than sugar": the recipe has 3 % and 45 %`,
		"two fruits": "", "one fruit": "", "three fruits": `warning "three fruits": the recipe has 1`, "1 fruit": "", "triple berry": `warning "triple berry": the recipe has 1`, "4-fruit": `warning "4 fruit": the recipe has 1`,
	} {
		got := said(t, text, func(d *Draft, os []ownText) {
			for _, o := range os {
				d.sharesInWords(o, "law")
				d.fruitsOf(o, "law")
			}
		})
		if got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

func TestWholeLists(t *testing.T) {
	row := place.WordingRule{ID: "x", Only: true, In: []string{"name"}, Level: "error", Text: "lacks {ingredient}", Words: []string{"only"}, Unless: []string{"nothing else"}}
	for text, want := range map[string]string{
		"only strawberries": `error "only strawberries" lacks sugar`, "only strawberries, sugar": `error "only strawberries sugar" lacks lemon juice`, "only strawberries, sugar & lemon": "", "only fruit, sugar and lemon juice": "",
		"only strawberries, brown": "", "only strawberries jam": `error "only strawberries jam" lacks sugar`, "only fruit + sugar + lemon juice": "", "only fruit and lemon juice": `error "only fruit and lemon juice" lacks sugar`, "only strawberries from Kent": "", "not only strawberries": "", "Lovely. Only strawberries!": `error "only strawberries" lacks sugar`,
		"strawberries, nothing else": `error "strawberries nothing else" lacks sugar`, "strawberries, nothing else matters": "", "nothing else": "", "only": "", "only and": "",
	} {
		if got := said(t, text, func(d *Draft, os []ownText) { d.only(row, os) }); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

func TestWhatNothingShows(t *testing.T) {
	row := place.WordingRule{ID: "x", Unproven: true, In: []string{"name"}, Level: "note", Text: "is not shown", Words: []string{"no {x}", "without {x}", "{x} free", "{x}frei"}, Unless: []string{"feel free"}}
	for text, want := range map[string]string{
		"no nasties": `note "nasties" is not shown`, "nasty free": `note "nasty" is not shown`, "without added nasties": `note "nasties" is not shown`, "no milk": "", "no rum": "", "no honey, no nasties": `note "nasties" is not shown`,
		"no brown sugar": "", "no granulated sugar": `note "granulated" is not shown`, "no 7": "", "no": "", "feel free": "", "free": "", "no jars left": "", "no marmalade": "", "no added": "", "no, thanks": "", "no nasties: no milk": `note "nasties" is not shown`,
	} {
		if got := said(t, text, func(d *Draft, os []ownText) { d.unproven(row, os) }); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
	if got := deniedFirst("no red and blue berries here", []string{"no {x}"}, nil); len(got) != 1 || strings.Join(got[0], "|") != "red|red and|red and blue" {
		t.Errorf("%q", got)
	}
}

func TestDishes(t *testing.T) {
	row := place.WordingRule{ID: "x", Names: true, In: []string{"name"}, Level: "warning", Text: "needs {ingredient}", Words: []string{"flavored"}}
	for text, want := range map[string]string{
		"strawberry daiquiri": `warning "daiquiri" needs rum`, "daiquiri flavored": "", "cheesecake": `warning "cheesecake" needs cheese`, "strawberry": "",
	} {
		if got := said(t, text, func(d *Draft, os []ownText) { d.dishes(row, os) }); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}
