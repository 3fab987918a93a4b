package compose

import "jarmark/internal/draw/page"

// order sorts a frame's items into layers, keeping their order inside each:
// backgrounds, drawings, codes, type.
func order(f *page.Frame) {
	layers := [4][]page.Item{}
	for _, it := range f.Items {
		n := 3
		switch t := it.(type) {
		case *page.Path:
			n = 1
			if t.Bleed {
				n = 0
			}
		case *page.Code:
			n = 2
		}
		layers[n] = append(layers[n], it)
	}
	f.Items = f.Items[:0:0]
	for _, l := range layers {
		f.Items = append(f.Items, l...)
	}
}
