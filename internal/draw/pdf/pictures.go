package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"

	"github.com/go-pdf/fpdf"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// picture checks a picture and counts its image.
func (s *survey) picture(p *page.Picture) error {
	switch {
	case p == nil || p.Image.Broken():
		return errors.New("empty picture")
	case p.At.W <= 0 || p.At.H <= 0 || far(p.At.W) || far(p.At.H) || far(p.At.X) || far(p.At.Y):
		return errors.New("a picture has no usable size or place")
	}
	if len(p.Image.Art) > 0 {
		return s.art(p.Image)
	}
	if !slices.Contains(s.images, p.Image) {
		s.images = append(s.images, p.Image)
	}
	return nil
}

// art checks the paths of a drawing.
func (s *survey) art(m *page.Image) error {
	if slices.Contains(s.arts, m) {
		return nil
	}
	s.arts = append(s.arts, m)
	for _, p := range m.Art {
		if err := checkPath(p); err != nil {
			return fmt.Errorf("picture %s: %w", m.Name, err)
		}
	}
	return nil
}

// drawArts makes a form of each drawing of the maker's; its box cuts off what
// reaches out of it (ISO 32000-1, 8.10.1).
func (p *press) drawArts(list []*page.Image) {
	for i, m := range list {
		f := &form{id: fmt.Sprintf("A%d", i+1), w: unit.Length(m.W) * page.ArtUnit, h: unit.Length(m.H) * page.ArtUnit, p: p}
		f.draw = func(c *content) {
			for _, path := range m.Art {
				c.path(space{top: f.h}, path)
			}
		}
		p.arts[m] = f
	}
}

// artsOf adds the forms of drawings among items.
func (p *press) artsOf(out []fpdf.Template, items []page.Item) []fpdf.Template {
	for _, it := range items {
		if q, ok := it.(*page.Picture); ok && p.arts[q.Image] != nil && !slices.Contains(out, fpdf.Template(p.arts[q.Image])) {
			out = append(out, p.arts[q.Image])
		}
	}
	return out
}

// images are the pictures of a document: what fpdf calls them, and what the
// operators do. Each stands in the file once.
type images struct {
	byName map[string]*fpdf.ImageInfoType
	ids    map[*page.Image]string
}

// illustrate puts the images into the file. fpdf names them in its output
// alone, so the name is had from a template that is never placed.
func illustrate(f *fpdf.Fpdf, list []*page.Image) (images, error) {
	out := images{ids: map[*page.Image]string{}}
	for i, img := range list {
		name, kind := fmt.Sprintf("picture%02d", i), "PNG"
		if img.JPEG {
			kind = "JPG"
		}
		opt := fpdf.ImageOptions{ImageType: kind}
		info := f.RegisterImageOptionsReader(name, opt, bytes.NewReader(img.Data))
		probe := f.CreateTemplate(func(p *fpdf.Tpl) {
			p.RegisterImageOptionsReader(name, opt, bytes.NewReader(img.Data))
			p.ImageOptions(name, 0, 0, 1, 1, false, opt, 0, "")
		})
		_, rest, _ := bytes.Cut(probe.Bytes(), []byte("/I"))
		id, _, ok := bytes.Cut(rest, []byte(" Do"))
		if err := f.Error(); err != nil || !ok || info == nil {
			return out, fmt.Errorf("picture %s cannot be embedded: %v", img.Name, err)
		}
		if out.byName == nil {
			out.byName = map[string]*fpdf.ImageInfoType{}
		}
		out.byName[name], out.ids[img] = info, string(id)
	}
	return out, nil
}

// picture draws an image in its box (ISO 32000-1, 8.9.5).
func (c *content) picture(s space, p *page.Picture) {
	c.save()
	c.turn(s, p.At, p.Turn)
	if f := c.arts[p.Image]; f != nil {
		c.number(float64(p.At.W) / float64(f.w))
		c.b = append(c.b, "0 0 "...)
		c.number(float64(p.At.H) / float64(f.h))
		c.point(s, page.Point{X: p.At.X, Y: p.At.Y + p.At.H})
		c.op("cm")
		c.stamp(f)
		c.restore()
		return
	}
	c.length(p.At.W)
	c.b = append(c.b, "0 0 "...)
	c.length(p.At.H)
	c.point(s, page.Point{X: p.At.X, Y: p.At.Y + p.At.H})
	c.op("cm")
	c.op("/I" + c.images[p.Image] + " Do")
	c.restore()
}
