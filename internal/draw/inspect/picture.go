package inspect

import "jarmark/internal/draw/page"

// clearPictures checks that nothing stands on a picture of the maker's, whose
// ground is not known, and that it has the proportions of its file.
func (k *inspector) clearPictures() {
	for i, p := range k.own {
		on := p.At.Grow(-slack, -slack)
		for _, t := range k.texts {
			if t.ink.Overlaps(on) {
				k.found.Errorf("overlap", "", "", "%q stands on the picture", t.String())
			}
		}
		for _, c := range k.codes {
			if c.WithQuiet().Overlaps(on) {
				k.found.Errorf("overlap", "", "", "the picture stands in the quiet zone of the QR code").Cited("ISO/IEC 18004")
			}
		}
		for _, d := range k.paths {
			if d.Crosses(on) {
				k.found.Errorf("overlap", "", "", "a drawing crosses the picture")
				break
			}
		}
		for _, o := range k.own[i+1:] {
			if o.At.Overlaps(on) {
				k.found.Errorf("overlap", "", "", "two pictures overlap")
			}
		}
		k.proportions(p)
	}
}

func (k *inspector) proportions(p *page.Picture) {
	if p.Image == nil || p.Image.W < 1 || p.Image.H < 1 {
		k.found.Errorf("stretched", "", "", "a picture has no pixels")
		return
	}
	// As drawn against as filed, within a hundredth and the rounding of a pixel.
	w, h := float64(p.At.W)*float64(p.Image.H), float64(p.At.H)*float64(p.Image.W)
	if w > h*1.01+float64(p.At.H) || h > w*1.01+float64(p.At.W) {
		k.found.Errorf("stretched", "", "", "the picture is drawn %.1f x %.1f mm, which is not its shape", p.At.W.MM(), p.At.H.MM())
	}
}
