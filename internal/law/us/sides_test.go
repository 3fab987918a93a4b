package us

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// 21 CFR 101.7(j)(1): from 1 to 4 lb both ounces and pounds stand on the label;
// where a list has room for one, it is the pounds.
func TestNetOfAPoundAndAHalf(t *testing.T) {
	p := newPass(strawberry(t), jar8(24*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	net(p)
	if b, _ := p.C.Find(label.Net); p.Net != "1 lb 8 oz" || !b.Runs[0].Bold || // 21 CFR 101.7(h): boldface (from memory, unverified)
		!strings.Contains(b.Text(), "24 oz") {
		t.Errorf("%q, %q", p.Net, b.Text())
	}
}

// Labels for sale tell that presents may bear them, where there are presents and
// a market statement to leave off.
func TestGiftOrSale(t *testing.T) {
	gift := []batch.Gift{{To: "Ida"}}
	for name, x := range map[string]struct {
		gifts []batch.Gift
		gift  bool
		prog  *place.Programme
		want  bool
	}{"for sale": {gift, false, &place.Programme{}, true}, "no presents": {nil, false, &place.Programme{}, false}, "as presents": {gift, true, &place.Programme{}, false}, "no statement": {gift, false, nil, false}} {
		p := plainPass(t)
		p.B.Gifts, p.O.Gift, p.prog, p.L = x.gifts, x.gift, x.prog, nil
		closing(p)
		if got := slices.Contains(said(p.L), "note gift-or-sale gift"); got != x.want {
			t.Errorf("%s: %v", name, said(p.L))
		}
	}
}

// 21 CFR 150.160(a): butter against foam is refused by name, and all else the
// standard has no place for is left out or the food called otherwise.
func TestHintOfOutsiders(t *testing.T) {
	for class, want := range map[string]string{"dairy": "an antifoaming agent may not be of animal fat: skim instead; or call it", "alcohol": "leave it out, or call it"} {
		p := plainPass(t)
		p.L = nil
		p.outsiders(verdict{Outsiders: []entry{{name: "it", line: cook.Line{Name: "it", Row: pantry.Ingredient{Class: class}}}}})
		if len(p.L) != 1 || !strings.HasPrefix(p.L[0].Hint, want) || strings.Contains(p.L[0].Hint, "or leave it out") {
			t.Errorf("%s: %v", class, p.L)
		}
	}
}

func TestLessAtNought(t *testing.T) {
	for _, x := range [][5]int64{{0, 5, 1, 1, 1}, {5, 0, 1, 3, 1}, {1, 3, 5, 0, 0}, {1, 3, 0, 5, 0}, {2, 3, 3, 2, 0}, {2, 3, 7, 1, 1}, {1 << 62, 4, 1 << 62, 5, 1}, {1 << 62, 5, 1 << 62, 4, 0}, {-3, 1, 0, 0, 0}, {0, 0, 1, -2, 0}} {
		if got := less(x[0], x[1], x[2], x[3]); got != (x[4] == 1) {
			t.Errorf("%d x %d < %d x %d: %v", x[0], x[1], x[2], x[3], got)
		}
	}
}

// Five shortfalls of a mixture are enough to act on.
func TestShortfallsOfAMixture(t *testing.T) {
	for n, want := range map[int]int{4: 3, 6: 5, 9: 5} {
		i := slices.IndexFunc(rulesOf(t, "us").Products, func(p place.Product) bool { return p.Mixture != nil })
		v := verdict{Product: rulesOf(t, "us").Products[i]}
		rule := *v.Mixture
		rule.Most, rule.EachOneIn, rule.OneIn, rule.MostOneIn = 20, 2, nil, nil
		v.Mixture = &rule
		for i := range n { // all but the first are too little
			v.Fruits = append(v.Fruits, fruitShare{Mass: map[bool]int64{true: 1000, false: 1}[i == 0], Line: cook.Line{Name: fmt.Sprintf("fruit %d", i)}})
		}
		if got := len((&pass{}).mixture(v)); got != want {
			t.Errorf("%d fruits: %d shortfalls, want %d", n, got, want)
		}
	}
}

// The same ingredient on two lines is one entry, with what both say of allergens
// and where both stand.
func TestEntriesTogether(t *testing.T) {
	r := pot(t, batch.Jam, "Jam", measured(65), part{"strawberries", 500}, part{"sugar", 600}, part{"strawberries", 300})
	r.Lines[0].Allergens, r.Lines[2].Allergens = []string{"milk"}, []string{"egg"}
	list := entries(r)
	if len(list) != 2 || list[0].mass != 600*unit.Gram && list[0].mass != 800*unit.Gram {
		t.Fatalf("%d entries", len(list))
	}
	for _, e := range list {
		if e.mass == 800*unit.Gram && (!slices.Equal(e.line.Allergens, []string{"milk", "egg"}) || len(e.line.Paths) != 2) {
			t.Errorf("%v at %v", e.line.Allergens, e.line.Paths)
		}
	}
}

// Without a day there is no best-by date, and that is told where it can be mended.
func TestNoBestBefore(t *testing.T) {
	for day, want := range map[unit.Date]bool{{}: true, {Year: 2027, Month: 6, Day: 14}: false} {
		p := plainPass(t)
		p.R.BestBefore, p.L, p.C.Blocks = day, nil, nil
		dates(p)
		_, dated := p.C.Find(label.Date)
		if told := slices.Contains(said(p.L), "note no-best-before made"); told != want || dated == want {
			t.Errorf("%v: %v, dated %v", day, said(p.L), dated)
		}
	}
}

// Honey is cautioned of where the honey stands.
func TestHoneyStandsWhereItIs(t *testing.T) {
	for i, want := range []string{"", "ingredient[0]", "ingredient[0]"} {
		p := plainPass(t)
		p.C.Blocks, p.Allergy.Honey = nil, []cook.Evidence{{Path: "ingredient[0]"}, {Path: "ingredient[1]"}}[:i]
		caution(p)
		if b, _ := p.C.Find(label.Caution); b.Path != want {
			t.Errorf("%d honeys: at %q", i, b.Path)
		}
	}
}

// A note on a state tells its conditions too, and they are not told again.
func TestStateNoteOrConditions(t *testing.T) {
	for _, x := range [][3]string{{"a note", "when", "state-note"}, {"", "when", "statement-when"}, {"a note", "", "state-note"}, {"", "", ""}} {
		p := plainPass(t)
		p.L = nil
		p.trust(&place.Programme{Statement: "Home made.", Note: x[0], When: x[1]})
		got := ""
		for _, d := range p.L[1:] {
			got += d.Code
		}
		if got != x[2] {
			t.Errorf("%q: %q", x, got)
		}
	}
}

// Numbers stand on the label where the state has a place for them; the e-mail where
// there is no telephone, or no street.
func TestNumbersOfAState(t *testing.T) {
	for _, x := range []struct {
		phone   string
		address []string
		want    bool
	}{{"", []string{"14 Thornfield Lane"}, true}, {"555 0114", []string{"14 Thornfield Lane"}, false}, {"555 0114", nil, true}, {"", nil, true}} {
		p := plainPass(t)
		p.K.Phone, p.K.Address, p.K.Email = x.phone, x.address, "jam@thornfield.example"
		p.prog = &place.Programme{Required: [][]string{{"email", "phone"}}}
		if got := slices.Contains(p.numbers(), p.K.Email); got != x.want || !p.shows("email") {
			t.Errorf("%+v: %v", x, p.numbers())
		}
	}
}

// What of a state nobody has read in its law is told, and only where there is any.
func TestUnreadOfAState(t *testing.T) {
	for want, memory := range map[string][]string{"note state-memory place": {"the cap"}, "": nil} {
		p, pr := plainPass(t), &place.Programme{}
		p.L, pr.Memory = nil, memory
		p.unread(pr)
		if got := strings.Join(said(p.L), ", "); got != want {
			t.Errorf("%v: %q", memory, got)
		}
	}
}
