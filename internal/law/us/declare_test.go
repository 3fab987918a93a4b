package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

func TestIdentity(t *testing.T) {
	r := strawberry(t)
	c, _ := declare(t, r, "us", draft.Options{})
	b, _ := c.Find(label.Identity)
	if b.Text() != "Strawberry jam" || !b.Bold || b.Zone != label.Panel || b.OfLargest != 50 || b.Min.Length != unit.Inch/16 {
		t.Errorf("%+v", b)
	}
	r.Batch.Name = "Strawberry & thyme"
	if c, _ = declare(t, r, "us", draft.Options{}); text(c, label.Identity) != "Strawberry & thyme jam" {
		t.Errorf("a name that says no product: %q", text(c, label.Identity))
	}
}

// A unit price by hand: $9 for 10 oz is 90¢ per oz.
func TestPrice(t *testing.T) {
	jar := jar8(10 * unit.Ounce)
	for minor, want := range map[int64][2]string{900: {"$9", "90¢ per oz"}, 950: {"$9.50", "95¢ per oz"}, 1205: {"$12.05", "$1.21 per oz"}, 0: {"", ""}} {
		jar.Price = unit.Money{Minor: minor, Currency: "USD"}
		c, _ := Declare(strawberry(t), jar, rulesOf(t, "us"), draft.Options{})
		if got := text(c, label.UnitPrice); got != want[1] || want[0] != "" && text(c, label.Price) != want[0] {
			t.Errorf("%d: %q, %q", minor, text(c, label.Price), got)
		}
	}
}

func TestPayload(t *testing.T) {
	r := strawberry(t)
	for url, want := range map[string]string{"https://thornfield.example/jam": "https://thornfield.example/jam/L26165-TT/", "https://thornfield.example/jam/": "https://thornfield.example/jam/L26165-TT/"} {
		r.Kitchen.RecordURL = url
		if c, _ := declare(t, r, "us-or", draft.Options{}); c.QR.Payload != want || c.QR.MinModule != 350*unit.Micrometre {
			t.Errorf("%s: %+v", url, c.QR)
		}
	}
	r.Kitchen.RecordURL = ""
	c, _ := declare(t, r, "us-or", draft.Options{})
	for _, s := range []string{"Strawberry jam", "L26165-TT", "none of the nine"} {
		if !strings.Contains(c.QR.Payload, s) {
			t.Errorf("plain words lack %q: %q", s, c.QR.Payload)
		}
	}
	for url, code := range map[string]string{"ftp://x.example": "bad-record-url", "thornfield": "bad-record-url", "javascript:alert(1)": "bad-record-url", "http://thornfield.example": "record-url-http"} {
		r.Kitchen.RecordURL = url
		if _, l := declare(t, r, "us-or", draft.Options{}); codeOf(l, code) == "" {
			t.Errorf("%s: no %s in %v", url, code, l)
		}
	}
	r.Kitchen.RecordURL = "https://thornfield.example/" + strings.Repeat("jam", 60)
	if _, l := declare(t, r, "us-or", draft.Options{}); codeOf(l, "qr-long") == "" {
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
		c, l := declare(t, r, "us", draft.Options{})
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
	c, l := declare(t, r, "us", draft.Options{})
	if got := text(c, label.Caution); !strings.Contains(got, "infants") {
		t.Errorf("caution %q", got)
	}
	if d, ok := found(l, "nutrition-claim"); !ok || d.Path != "story" || !l.HasErrors() {
		t.Errorf("claim: %v", l)
	}
	if _, l = declare(t, strawberry(t), "us", draft.Options{}); codeOf(l, "nutrition-claim") != "" {
		t.Error("a claim where there is none")
	}
}
