package draft

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
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
