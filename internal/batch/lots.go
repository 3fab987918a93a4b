package batch

import (
	"strings"

	"jarmark/internal/diag"
)

// Lots finds lots that two batches both write. Two jars with one lot can't be
// told apart in a recall. Derived lots come later, from package cook.
func Lots(batches []*Batch) diag.List {
	var l diag.List
	first := map[string]string{}
	for _, b := range batches {
		if b == nil || b.Lot == "" {
			continue
		}
		name := ""
		if b.File != nil {
			name = b.File.Name
		}
		key := strings.ToLower(b.Lot)
		other, taken := first[key]
		if !taken {
			first[key] = name
			continue
		}
		l.Errorf("duplicate-lot", name, "lot", "lot %s is also the lot of %s", b.Lot, other).
			Hinted("give each batch a lot of its own, such as " + b.Lot + "-2")
		l = b.File.Locate(l)
	}
	return l
}
