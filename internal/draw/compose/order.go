package compose

import "jarmark/internal/draw/page"

// order sorts a frame's items into layers, keeping their order inside each:
// backgrounds, drawings, codes, type.
func order(f *page.Frame) {
	sorted := make([]page.Item, 0, len(f.Items)) // as long as it must be: a run holds thousands
	for layer := range 4 {
		for _, it := range f.Items {
			if layerOf(it) == layer {
				sorted = append(sorted, it)
			}
		}
	}
	f.Items = sorted
}

func layerOf(it page.Item) int {
	switch t := it.(type) {
	case *page.Path:
		if t.Bleed {
			return 0
		}
		return 1
	case *page.Code:
		return 2
	}
	return 3
}
