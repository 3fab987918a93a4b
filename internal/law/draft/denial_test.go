package draft

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/place"
)

// What a kitchen handles besides, and an ingredient nothing is known of, make a
// denial more than can be shown; the ways of denying are those of the row before.
func TestDenialsThatCantBeShown(t *testing.T) {
	rules := []place.WordingRule{
		{ID: "first", Of: []string{"milk"}, Forms: []string{"no {x}", "free from {x}"}, In: []string{"story"}, Beside: []string{"milk"}, Level: "warning", Text: "holds {ingredient}"},
		{ID: "second", Of: []string{"nuts"}, In: []string{"story"}, Beside: []string{"tree nuts"}, May: []string{"unproven", "handled"}, Level: "warning", Text: "holds {ingredient}", Maybe: "beside {ingredient}"},
	}
	for name, x := range map[string]struct {
		handles []string
		unknown string
		want    string
	}{
		"all known":      {nil, "", ""},
		"handled":        {[]string{"almonds"}, "", "beside almonds"},
		"handled others": {[]string{"sesame"}, "", ""},
		"handled, odd":   {[]string{"xyzzy"}, "", "beside xyzzy"},
		"unknown":        {nil, "crunch", "beside crunch"},
	} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Markets = []batch.Market{{Path: "market[0]", Event: "Fair, free from nuts"}}
		})
		d.K.AlsoHandles, d.Set.Nutrition, d.Set.Wordings, d.L = x.handles, nil, rules, nil
		if x.unknown != "" {
			d.Allergy.Unknown = []cook.Unproven{{Name: x.unknown}}
		}
		d.Wordings()
		got := ""
		for _, f := range d.L {
			got += f.Path + f.Message
		}
		if x.want == "" && got != "" || x.want != "" && !(strings.HasSuffix(got, x.want) && strings.HasPrefix(got, "market[0].event")) {
			t.Errorf("%s: %q, want %q", name, got, x.want)
		}
	}
}
