package pdf

import "jarmark/internal/draw/page"

// layers draws the lines to cut along and the black corners of a page, each in a layer
// that can be switched off (ISO 32000-1, 8.11). The line is an ink of its own, "cut",
// over what lies under it, so that a print shop finds it, and prints nothing of it
// (common practice, no source).
func (c *content) layers(pg *page.Page) {
	s := space{top: pg.H}
	c.save()
	c.op("/OC /cut BDC /over gs /cut CS 1 SCN")
	for _, p := range pg.CutLines() {
		c.now.stroke = pack(*p.Stroke) // set: the ink stands for it
		c.path(s, p)
	}
	c.op("EMC")
	c.restore()
	if corners := pg.Corners(); len(corners) > 0 {
		c.op("/OC /registration BDC")
		for _, p := range corners {
			c.path(s, p)
		}
		c.op("EMC")
	}
}
