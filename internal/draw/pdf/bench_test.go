package pdf_test

import (
	"bytes"
	"io"
	"runtime/metrics"
	"sync/atomic"
	"testing"
	"time"

	"github.com/go-pdf/fpdf"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
)

// The two runs a maker prints, of 10 000 labels each: all alike, and each with
// its number and a QR code of its own. Each is measured against the same marks
// made by plain calls of fpdf, label by label.

func BenchmarkAlike(b *testing.B)          { benchmark(b, repeated(b, 10_000), pdf.Write) }
func BenchmarkAlikePlainFpdf(b *testing.B) { benchmark(b, repeated(b, 10_000), plainFpdf) }
func BenchmarkOwnCodes(b *testing.B)       { benchmark(b, serials(b, 10_000), pdf.Write) }
func BenchmarkOwnCodesPlainFpdf(b *testing.B) {
	benchmark(b, serials(b, 10_000), plainFpdf)
}

// BenchmarkOneSheet is what a maker waits for on the local page.
func BenchmarkOneSheet(b *testing.B) { benchmark(b, serials(b, 10), pdf.Write) }

type writer func(io.Writer, *page.Doc, *face.Set) error

func benchmark(b *testing.B, d *page.Doc, write writer) {
	fs := faces(b)
	var out counter
	base := heap()
	stop, peak := watch()
	for b.Loop() {
		out = 0
		if err := write(&out, d, fs); err != nil {
			b.Fatal(err)
		}
	}
	close(stop)
	b.ReportMetric(float64(out)/1e6, "MB-file")
	b.ReportMetric(float64(base)/1e6, "MB-labels")
	b.ReportMetric(float64(peak.Load())/1e6, "MB-peak")
}

type counter int

func (c *counter) Write(p []byte) (int, error) { *c += counter(len(p)); return len(p), nil }

// heap gives the bytes of objects on the heap, dead ones not yet swept
// included.
func heap() uint64 {
	s := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(s)
	return s[0].Value.Uint64()
}

// watch notes the highest heap until stopped.
func watch() (chan struct{}, *atomic.Uint64) {
	stop, peak := make(chan struct{}), new(atomic.Uint64)
	go func() {
		for tick := time.NewTicker(time.Millisecond); ; {
			select {
			case <-stop:
				tick.Stop()
				return
			case <-tick.C:
				peak.Store(max(peak.Load(), heap()))
			}
		}
	}()
	return stop, peak
}

// plainFpdf draws a document by fpdf's own calls alone.
func plainFpdf(w io.Writer, d *page.Doc, fs *face.Set) error {
	f := fpdf.New("P", "mm", "A4", "")
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	for _, name := range facesIn(d) {
		data, err := fs.Bytes(name)
		if err != nil {
			return err
		}
		f.AddUTF8FontFromBytes(string(name), "", data)
	}
	for _, pg := range d.Pages {
		f.AddPageFormat("P", fpdf.SizeType{Wd: pg.W.MM(), Ht: pg.H.MM()})
		plainItems(f, page.Point{}, pg.Marks)
		for _, pl := range pg.Places {
			plainItems(f, pl.At, pl.Frame.Items)
			plainItems(f, pl.At, pl.Overlay)
		}
	}
	return f.Output(w)
}

// facesIn lists the typefaces of a document.
func facesIn(d *page.Doc) (out []page.Face) {
	seen := map[page.Face]bool{}
	for _, pg := range d.Pages {
		for _, pl := range pg.Places {
			for _, it := range append(pl.Frame.Items[:len(pl.Frame.Items):len(pl.Frame.Items)], pl.Overlay...) {
				if t, ok := it.(*page.Text); ok && !seen[t.Face] {
					seen[t.Face] = true
					out = append(out, t.Face)
				}
			}
		}
	}
	return out
}

func plainItems(f *fpdf.Fpdf, o page.Point, items []page.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *page.Text:
			f.SetFont(string(it.Face), "", it.Size.Points())
			f.SetTextColor(int(it.Colour.R), int(it.Colour.G), int(it.Colour.B))
			for _, s := range it.Segs {
				f.Text((o.X + it.At.X + s.X).MM(), (o.Y + it.At.Y).MM(), s.S)
			}
		case *page.Path:
			plainPath(f, o, it)
		case *page.Code:
			plainCode(f, o, it)
		}
	}
}

func plainPath(f *fpdf.Fpdf, o page.Point, p *page.Path) {
	style := ""
	if p.Fill != nil {
		f.SetFillColor(int(p.Fill.R), int(p.Fill.G), int(p.Fill.B))
		style += "F"
		if p.EvenOdd {
			style = "F*"
		}
	}
	if p.Stroke != nil {
		f.SetDrawColor(int(p.Stroke.R), int(p.Stroke.G), int(p.Stroke.B))
		f.SetLineWidth(p.Width.MM())
		dash := make([]float64, len(p.Dash))
		for i, l := range p.Dash {
			dash[i] = l.MM()
		}
		f.SetDashPattern(dash, 0)
		f.SetLineCapStyle(map[bool]string{true: "round", false: "butt"}[p.Round])
		style += "D"
	}
	x := func(i int) float64 { return (o.X + p.Pts[i].X).MM() }
	y := func(i int) float64 { return (o.Y + p.Pts[i].Y).MM() }
	i := 0
	for _, op := range p.Ops {
		switch op {
		case page.MoveTo:
			f.MoveTo(x(i), y(i))
			i++
		case page.LineTo:
			f.LineTo(x(i), y(i))
			i++
		case page.CubicTo:
			f.CurveBezierCubicTo(x(i), y(i), x(i+1), y(i+1), x(i+2), y(i+2))
			i += 3
		case page.Close:
			f.ClosePath()
		}
	}
	f.DrawPath(style)
}

func plainCode(f *fpdf.Fpdf, o page.Point, c *page.Code) {
	f.SetFillColor(int(c.Dark.R), int(c.Dark.G), int(c.Dark.B))
	n := len(c.Modules)
	side := c.At.W.MM() / float64(n)
	for y, row := range c.Modules {
		for x := 0; x < n; x++ {
			start := x
			for x < n && row[x] {
				x++
			}
			if x > start {
				f.Rect((o.X+c.At.X).MM()+float64(start)*side, (o.Y+c.At.Y).MM()+float64(y)*side, float64(x-start)*side, side, "F")
			}
		}
	}
}

// TestReferenceDrawsTheSame keeps the comparison honest: both ways print the
// same picture.
func TestReferenceDrawsTheSame(t *testing.T) {
	d := serials(t, 4)
	var plain bytes.Buffer
	if err := plainFpdf(&plain, d, faces(t)); err != nil {
		t.Fatal(err)
	}
	a, b := openRender(t, write(t, d)), openRender(t, plain.Bytes())
	differ := 0
	for i := range a.Pix {
		if v := int(a.Pix[i]) - int(b.Pix[i]); v > 128 || v < -128 {
			differ++
		}
	}
	if share := float64(differ) / float64(len(a.Pix)); share > 0.002 {
		t.Errorf("%.2f %% of the picture differs", 100*share)
	}
}
