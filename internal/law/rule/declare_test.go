package rule

import (
	"math"
	"os"
	"strings"
	"testing"

	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"

	"pgregory.net/rapid"
)

func TestDisplay(t *testing.T) {
	for name, want := range map[string][2]string{
		"Strawberry & rhubarb jam": {"Strawberry", "& rhubarb jam"}, "Apricot jam with lavender": {"Apricot jam", "with lavender"},
		"Blackcurrant jelly": {"Blackcurrant", "jelly"}, "Plum & star anise": {"Plum", "& star anise"}, "Quince": {"Quince", ""},
		"Strawberry fruit spread": {"Strawberry", "fruit spread"}, "Apple and pear butter": {"Apple", "and pear butter"},
		"Jam": {"Jam", ""}, "": {"", ""}, "& jam": {"&", "jam"}, "  Fig   jam ": {"Fig", "jam"}, "İncir reçeli with nuts": {"İncir reçeli with nuts", ""},
	} {
		title, sub := display(&batch.Batch{Name: name})
		if [2]string{title, sub} != want {
			t.Errorf("%q: %q, %q", name, title, sub)
		}
	}
	title, sub := display(&batch.Batch{Name: "Fig jam", Label: batch.Label{Title: "Fig", Subtitle: "from our tree"}})
	if title != "Fig" || sub != "from our tree" {
		t.Errorf("%q, %q", title, sub)
	}
}

func TestLidAcross(t *testing.T) {
	for finish, want := range map[string]unit.Length{"70-450 CT": 70, "63 mm lug (also 58)": 63, "": 0, "lug": 0, "99999999999999999999 mm": 0, "7": 0} {
		if got := lidAcross(finish); got != want*unit.Millimetre {
			t.Errorf("%q: %v mm", finish, got.MM())
		}
	}
}

func TestIdentity(t *testing.T) {
	r := strawberry(t)
	c, _ := declare(t, r, "us", Options{})
	b, _ := c.Find(label.Identity)
	if b.Text() != "Strawberry jam" || !b.Bold || b.Zone != label.Panel || b.OfLargest != 50 || b.Min.Length != unit.Inch/16 {
		t.Errorf("%+v", b)
	}
	r.Batch.Name = "Strawberry & thyme"
	if c, _ = declare(t, r, "us", Options{}); text(c, label.Identity) != "Strawberry & thyme jam" {
		t.Errorf("a name that says no product: %q", text(c, label.Identity))
	}
}

// A unit price by hand: $9 for 10 oz is 90¢ per oz.
func TestPrice(t *testing.T) {
	jar := jar8(10 * unit.Ounce)
	for minor, want := range map[int64][2]string{900: {"$9", "90¢ per oz"}, 950: {"$9.50", "95¢ per oz"}, 1205: {"$12.05", "$1.21 per oz"}, 0: {"", ""}} {
		jar.Price = unit.Money{Minor: minor, Currency: "USD"}
		c, _ := Declare(strawberry(t), jar, place(t, "us"), Options{})
		if got := text(c, label.UnitPrice); got != want[1] || want[0] != "" && text(c, label.Price) != want[0] {
			t.Errorf("%d: %q, %q", minor, text(c, label.Price), got)
		}
	}
}

func TestPayload(t *testing.T) {
	r := strawberry(t)
	for url, want := range map[string]string{"https://thornfield.example/jam": "https://thornfield.example/jam/L26165-TT/", "https://thornfield.example/jam/": "https://thornfield.example/jam/L26165-TT/"} {
		r.Kitchen.RecordURL = url
		if c, _ := declare(t, r, "us-or", Options{}); c.QR.Payload != want || c.QR.MinModule != 350*unit.Micrometre {
			t.Errorf("%s: %+v", url, c.QR)
		}
	}
	r.Kitchen.RecordURL = ""
	c, _ := declare(t, r, "us-or", Options{})
	for _, s := range []string{"Strawberry jam", "L26165-TT", "none of the nine"} {
		if !strings.Contains(c.QR.Payload, s) {
			t.Errorf("plain words lack %q: %q", s, c.QR.Payload)
		}
	}
	for url, code := range map[string]string{"ftp://x.example": "bad-record-url", "thornfield": "bad-record-url", "javascript:alert(1)": "bad-record-url", "http://thornfield.example": "record-url-http"} {
		r.Kitchen.RecordURL = url
		if _, l := declare(t, r, "us-or", Options{}); codeOf(l, code) == "" {
			t.Errorf("%s: no %s in %v", url, code, l)
		}
	}
	r.Kitchen.RecordURL = "https://thornfield.example/" + strings.Repeat("jam", 60)
	if _, l := declare(t, r, "us-or", Options{}); codeOf(l, "qr-long") == "" {
		t.Error("a long payload passes")
	}
}

// Groups A and B of the guidance of 24 Feb 1997 (62 FR 8248); full-sugar sealed
// jam takes words of quality.
func TestStorage(t *testing.T) {
	for class, want := range map[cook.Class]string{
		cook.Shelf: "refrigerate and eat within a month", cook.ShelfShort: "Must Be Refrigerated After Opening To Maintain Safety",
		cook.Cold: "Must Be Kept Refrigerated To Maintain Safety", cook.Refrigerator: "Must Be Kept Refrigerated To Maintain Safety",
		cook.Freezer: "Keep frozen", "": "40 °F"} {
		r := strawberry(t)
		r.Keeping.Class, r.Keeping.Reasons = class, []cook.Evidence{{Fact: "not processed", Source: "somewhere"}}
		c, l := declare(t, r, "us", Options{})
		if got := text(c, label.Storage); !strings.Contains(got, want) {
			t.Errorf("%q: %q", class, got)
		}
		if _, warned := found(l, "keeping"); warned != (class != cook.Shelf) {
			t.Errorf("%q: warned %v", class, warned)
		}
		if c.Keep.Sealed == "" || c.Keep.Opened == "" || c.Keep.Unsealed == "" {
			t.Errorf("%q: %+v", class, c.Keep)
		}
	}
}

func TestHoneyAndClaims(t *testing.T) {
	r := pot(t, batch.Jam, "Fig jam", measured(66), part{"figs", 500}, part{"honey", 500})
	r.Batch.Story = "Made the old way, with no added sugar."
	c, l := declare(t, r, "us", Options{})
	if got := text(c, label.Caution); !strings.Contains(got, "infants") {
		t.Errorf("caution %q", got)
	}
	if d, ok := found(l, "nutrition-claim"); !ok || d.Path != "story" || !l.HasErrors() {
		t.Errorf("claim: %v", l)
	}
	if _, l = declare(t, strawberry(t), "us", Options{}); codeOf(l, "nutrition-claim") != "" {
		t.Error("a claim where there is none")
	}
}

// kitchenSink holds every path a rule may report; a finding whose path is no
// place in it would point nowhere.
const sinkBatch = "testdata/sink-batch.toml"
const sinkKitchen = "testdata/sink-kitchen.toml"

func TestPathsResolve(t *testing.T) {
	read := func(name string) *source.File {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, l := source.Parse(name, data)
		if l.HasErrors() {
			t.Fatal(l)
		}
		return f
	}
	files := map[string]*source.File{"batch": read(sinkBatch), "kitchen": read(sinkKitchen)}
	kd, _ := os.ReadFile(sinkKitchen)
	bd, _ := os.ReadFile(sinkBatch)
	k, l := batch.ParseKitchen("kitchen", kd, finder(t))
	if k == nil || l.HasErrors() {
		t.Fatal(l)
	}
	b, l := batch.Parse("batch", bd, k)
	if b == nil || l.HasErrors() {
		t.Fatal(l)
	}
	r, _ := cook.Compute(b, k, pantry.Default())
	seen := map[string]bool{}
	bk, _ := book()
	for _, id := range bk.names {
		for _, gift := range []bool{false, true} {
			for _, jar := range r.Jars {
				c, found := Declare(r, jar, place(t, id), Options{Gift: gift})
				for _, d := range found {
					seen[d.Code] = true
					f := files[d.File]
					if d.File == "" || d.Path == "" {
						continue
					}
					if f == nil {
						t.Errorf("%s: %s names the file %q", id, d.Code, d.File)
						continue
					}
					if _, ok := f.Entry(d.Path); !ok {
						t.Errorf("%s: %s points to %s of the %s, which is no place", id, d.Code, d.Path, d.File)
					}
				}
				for _, x := range c.Blocks {
					_, inBatch := files["batch"].Entry(x.Path)
					_, inKitchen := files["kitchen"].Entry(x.Path)
					if x.Path != "" && !inBatch && !inKitchen {
						t.Errorf("%s: block %s points to %s, which is no place", id, x.ID, x.Path)
					}
				}
			}
		}
	}
	if len(seen) < 15 {
		t.Errorf("the sink stirs up only %d kinds of finding", len(seen))
	}
}

// Whatever comes in, every set declares without a panic, block ids are unique,
// and the same input gives the same label.
func TestAnyBatchDeclares(t *testing.T) {
	bk, err := book()
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		s, _ := bk.Place(rapid.SampledFrom(bk.names).Draw(t, "place"), labelDay)
		r, jar := anyResult(t), anyJar(t)
		o := Options{Gift: rapid.Bool().Draw(t, "gift")}
		c, l := Declare(r, jar, s, o)
		c2, l2 := Declare(r, jar, s, o)
		if len(c.Blocks) != len(c2.Blocks) || len(l) != len(l2) {
			t.Fatal("two runs differ")
		}
		ids := map[string]bool{}
		for i, b := range c.Blocks {
			if ids[b.ID] || b.Text() != c2.Blocks[i].Text() {
				t.Fatalf("block %q twice, or not the same twice", b.ID)
			}
			ids[b.ID] = true
			if b.Text() == "" || strings.Contains(b.Text(), "{") && strings.HasPrefix(s.ID, "us") {
				t.Fatalf("block %s says %q", b.ID, b.Text())
			}
		}
	})
	if c, l := Declare(nil, cook.JarPlan{}, nil, Options{}); c != nil || !l.HasErrors() {
		t.Error("nothing declares")
	}
	if c, _ := Declare(&cook.Result{}, cook.JarPlan{}, place(t, "us-wv"), Options{}); c == nil {
		t.Error("an empty result declares nothing")
	}
}

func anyResult(t *rapid.T) *cook.Result {
	words := rapid.SampledFrom([]string{"", "Strawberry jam", "Fig & honey butter", "ß", "jelly", "Mixed jam with nuts", "*", "日本"})
	mass := rapid.SampledFrom([]unit.Mass{0, 1, unit.Gram, 1000 * unit.Gram, math.MaxInt64 / 100, math.MaxInt64, -5})
	rows := pantry.Default().Ingredients()
	r := &cook.Result{Lot: words.Draw(t, "lot"), Brix: cook.Reading{Value: rapid.SampledFrom([]float64{0, 64, 65, 99, math.NaN(), math.Inf(1), -1}).Draw(t, "brix"), How: cook.Measured},
		Keeping: cook.Keeping{Class: rapid.SampledFrom([]cook.Class{cook.Shelf, cook.ShelfShort, cook.Cold, cook.Freezer, cook.Refrigerator, "", "odd"}).Draw(t, "class"), OpenedDays: rapid.IntRange(-9, 999).Draw(t, "opened")}}
	if rapid.Bool().Draw(t, "batch") {
		r.Batch = &batch.Batch{Name: words.Draw(t, "name"), Kind: rapid.SampledFrom([]batch.Kind{"", batch.Jam, batch.Jelly, batch.Butter, batch.Marmalade, batch.Spread}).Draw(t, "kind"),
			Made: unit.Date{Year: 2026, Month: rapid.IntRange(0, 13).Draw(t, "month"), Day: 3}}
		r.BestBefore = r.Batch.Made.AddMonths(3)
	}
	if rapid.Bool().Draw(t, "kitchen") {
		r.Kitchen = &batch.Kitchen{Name: words.Draw(t, "maker"), Permit: words.Draw(t, "permit"), RecordURL: words.Draw(t, "url"), Language: words.Draw(t, "lang"),
			Programme: words.Draw(t, "programme"), AlsoHandles: []string{words.Draw(t, "also"), ""}}
	}
	for range rapid.IntRange(0, 5).Draw(t, "n") {
		row := rapid.SampledFrom(rows).Draw(t, "row")
		r.Lines = append(r.Lines, cook.Line{Name: row.Name, Key: row.Key, Row: row, Contains: row.Contains, Mass: mass.Draw(t, "mass"), Soluble: mass.Draw(t, "soluble"),
			Allergens: []string{words.Draw(t, "allergen")}, IsFruit: row.Kind == "fruit", IsSweet: row.Kind == "sweetener"})
	}
	return r
}

func anyJar(t *rapid.T) cook.JarPlan {
	mass := rapid.SampledFrom([]unit.Mass{0, 1, 283 * unit.Gram, 10 * unit.Ounce, math.MaxInt64 / 1000, -5})
	length := rapid.SampledFrom([]unit.Length{0, 1, 50 * unit.Millimetre, math.MaxInt64, -1})
	return cook.JarPlan{Jar: pantry.Jar{Panel: length.Draw(t, "panel"), Circumference: length.Draw(t, "around"), Height: length.Draw(t, "height")}, Count: rapid.Int().Draw(t, "count"), Sealed: rapid.Int().Draw(t, "sealed"),
		Declared: mass.Draw(t, "declared"), Fill: mass.Draw(t, "fill"), Weighed: rapid.SliceOfN(mass, 0, 4).Draw(t, "weighed"), Price: unit.Money{Minor: rapid.Int64().Draw(t, "price"), Currency: "USD"}}
}
