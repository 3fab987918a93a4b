package pdf

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"time"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Limits of a page: 3 to 14 400 points (ISO 32000-1, Annex C.2), and of a
// coordinate, far beyond any paper.
const (
	minSide = unit.Length(1_058_334)     // 3 pt
	maxSide = unit.Length(5_080_000_000) // 14 400 pt
	maxAt   = 100 * unit.Metre
)

var languageTag = regexp.MustCompile(`^[A-Za-z0-9]{1,8}(-[A-Za-z0-9]{1,8})*$`)

// survey is one look over the whole document before anything is drawn: it
// refuses what cannot be drawn, and counts what must be shared or embedded.
type survey struct {
	faces  *face.Set
	runes  map[page.Face]*runeSet
	frames map[*page.Frame]int // how often each is placed
	images []*page.Image       // each once, in drawing order
	arts   []*page.Image       // likewise, those of paths
}

func inspect(d *page.Doc, faces *face.Set) (*survey, error) {
	if d == nil || len(d.Pages) == 0 {
		return nil, errors.New("a document needs a page")
	}
	if d.Lang != "" && !languageTag.MatchString(d.Lang) {
		return nil, fmt.Errorf("language %q is not a BCP 47 tag", d.Lang)
	}
	if y := time.Unix(d.Created, 0).UTC().Year(); y < 1 || y > 9999 {
		return nil, fmt.Errorf("year %d does not fit a PDF date", y)
	}
	if !scaleOK(d.ScaleX) || !scaleOK(d.ScaleY) || far(d.OffsetX) || far(d.OffsetY) {
		return nil, errors.New("printer scale or offset is out of range")
	}
	s := &survey{faces: faces, runes: map[page.Face]*runeSet{}, frames: map[*page.Frame]int{}}
	for i := range d.Pages {
		if err := s.page(&d.Pages[i]); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	return s, nil
}

// scaleOK: 0 stands for 1; a correction is near 1, never a reduction.
func scaleOK(v float64) bool { return v == 0 || v >= 0.1 && v <= 10 }

func far(l unit.Length) bool { return l > maxAt || l < -maxAt }

func (s *survey) page(p *page.Page) error {
	if p.W < minSide || p.H < minSide || p.W > maxSide || p.H > maxSide {
		return fmt.Errorf("a page of %.1f x %.1f mm is outside 3 to 14400 pt", p.W.MM(), p.H.MM())
	}
	for i := range p.Places {
		if err := s.place(&p.Places[i]); err != nil {
			return fmt.Errorf("label %d: %w", i+1, err)
		}
	}
	return s.items(p.Marks)
}

func (s *survey) place(p *page.Placement) error {
	f := p.Frame
	switch {
	case f == nil:
		return errors.New("no frame")
	case p.Turn != 0 && p.Turn != 90:
		return fmt.Errorf("turn of %d degrees, want 0 or 90", p.Turn)
	case far(p.At.X) || far(p.At.Y):
		return errors.New("placed outside any paper")
	}
	if s.frames[f]++; s.frames[f] == 1 {
		if f.W <= 0 || f.H <= 0 || f.Bleed < 0 || f.W > maxSide || f.H > maxSide || f.Bleed > maxSide {
			return fmt.Errorf("frame of %.1f x %.1f mm, bleed %.1f mm", f.W.MM(), f.H.MM(), f.Bleed.MM())
		}
		if err := s.items(f.Items); err != nil {
			return err
		}
	}
	return s.items(p.Overlay)
}

func (s *survey) items(list []page.Item) error {
	for _, it := range list {
		var err error
		switch it := it.(type) {
		case *page.Text:
			err = s.text(it)
		case *page.Path:
			err = checkPath(it)
		case *page.Code:
			err = checkCode(it)
		case *page.Picture:
			err = s.picture(it)
		default:
			err = fmt.Errorf("unknown item %T", it)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (s *survey) text(t *page.Text) error {
	if t == nil {
		return errors.New("empty text item")
	}
	if t.Size <= 0 || t.Size > maxSide || far(t.At.X) || far(t.At.Y) || math.IsNaN(t.Turn) || math.IsInf(t.Turn, 0) {
		return fmt.Errorf("text %q has no usable size, place or turn", t.String())
	}
	set := s.runes[t.Face]
	f, err := s.faces.Open(t.Face)
	if err != nil {
		return err
	}
	t = spaced(t, f.Has(' '))
	if set == nil {
		set = new(runeSet)
		s.runes[t.Face] = set
	}
	for _, g := range t.Segs {
		if far(g.X) {
			return fmt.Errorf("text %q is placed outside any paper", t.String())
		}
		for _, r := range g.S {
			if r > 0xFFFF {
				return fmt.Errorf("letter %q (%U) in %q cannot be embedded: only letters up to U+FFFF can", r, r, t.String())
			}
			if !set.has(r) {
				if !f.Has(r) {
					return fmt.Errorf("letter %q (%U) in %q is not in typeface %s", r, r, t.String(), t.Face)
				}
				if o := f.Owner(r); o != f {
					if s.runes[o.Name] == nil {
						s.runes[o.Name] = new(runeSet)
					}
					s.runes[o.Name].add(r)
					continue
				}
				set.add(r)
			}
		}
	}
	return nil
}

// points says how many points each operation takes.
var points = [...]int{page.MoveTo: 1, page.LineTo: 1, page.CubicTo: 3, page.Close: 0}

func checkPath(p *page.Path) error {
	if p == nil {
		return errors.New("empty path item")
	}
	n := 0
	for i, op := range p.Ops {
		if int(op) >= len(points) {
			return fmt.Errorf("unknown path operation %d", op)
		}
		if i == 0 && op != page.MoveTo {
			return errors.New("a path must start with a move")
		}
		n += points[op]
	}
	if n != len(p.Pts) {
		return fmt.Errorf("path operations take %d points, %d given", n, len(p.Pts))
	}
	for _, q := range p.Pts {
		if far(q.X) || far(q.Y) {
			return errors.New("path point outside any paper")
		}
	}
	if n := p.Nib; n != nil && (n.Cap > page.SquareCap || n.Join > page.BevelJoin || !(n.Mitre >= 1 && n.Mitre <= 1e9)) {
		return errors.New("a stroke of unknown ends or corners")
	}
	for _, l := range p.Dash {
		if l < 0 || far(l) {
			return errors.New("dash of negative or impossible length")
		}
	}
	if p.Width < 0 || far(p.Width) {
		return errors.New("stroke of negative or impossible width")
	}
	return nil
}

func checkCode(c *page.Code) error {
	if c == nil || len(c.Modules) == 0 {
		return errors.New("empty QR code")
	}
	for _, row := range c.Modules {
		if len(row) != len(c.Modules) {
			return errors.New("a QR code must be square")
		}
	}
	if c.At.W <= 0 || c.At.H <= 0 || far(c.At.W) || far(c.At.H) || far(c.At.X) || far(c.At.Y) {
		return errors.New("QR code has no usable size or place")
	}
	return nil
}
