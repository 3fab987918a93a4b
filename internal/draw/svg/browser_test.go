package svg

import (
	"context"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"jarmark/internal/draw/page"
	pic "jarmark/internal/draw/png"
)

// The browser is the judge: what it makes of our SVG must look like what the
// picture renderer makes of the same label. 192 dpi is two device pixels to
// the CSS pixel of 1/96 in (CSS Values and Units, 6.2).
func TestBrowserAgreesWithPictures(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("no chromium here: the SVG is not compared with a browser's drawing")
	}
	f := sample()
	round := sample()
	round.Shape, round.Corner = page.Ellipse, 0
	tag := sample()
	tag.Shape, tag.W, tag.H = page.TagShape, 50*mm, 80*mm
	turned := sample()
	turned.Items[5].(*page.Code).Turn = 20
	turned.Items = append(turned.Items, &page.Picture{At: page.Rect{X: 20 * mm, Y: 32 * mm, W: 20 * mm, H: 10 * mm}, Turn: -30, Image: &page.Image{W: 100_000, H: 50_000, Art: []*page.Path{turned.Items[1].(*page.Path)}}})
	for name, f := range map[string]*page.Frame{"rectangle": f, "ellipse": round, "tag": tag, "turned": turned} {
		p := page.Page{W: f.W, H: f.H, Places: []page.Placement{{Frame: f}}, Marks: []page.Item{outside(f)}}
		want, err := pic.Page(&page.Doc{Pages: []page.Page{p}}, 0, faces(t), 192)
		if err != nil {
			t.Fatal(err)
		}
		got := screenshot(t, chromium, draw(t, f, faces(t)))
		if d := difference(got, want); d > 0.012 {
			t.Errorf("%s: pictures differ by %.4f of full scale on average", name, d)
		}
	}
}

// outside is white paper with the label cut out of it.
func outside(f *page.Frame) *page.Path {
	p := *f.Outline()
	p.Ops = append([]page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close}, p.Ops...)
	p.Pts = append([]page.Point{{}, {X: f.W}, {X: f.W, Y: f.H}, {Y: f.H}}, p.Pts...)
	p.Fill, p.EvenOdd = &page.Colour{R: 255, G: 255, B: 255}, true
	return &p
}

func screenshot(t *testing.T, chromium, svg string) image.Image {
	t.Helper()
	dir := t.TempDir()
	html, shot := filepath.Join(dir, "p.html"), filepath.Join(dir, "p.png")
	doc := `<!doctype html><style>*{margin:0}svg{display:block}</style>` + svg
	if err := os.WriteFile(html, []byte(doc), 0o644); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(context.Background(), 60*time.Second)
	defer stop()
	out, err := exec.CommandContext(ctx, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
		"--user-data-dir="+filepath.Join(dir, "profile"), "--force-device-scale-factor=2", "--window-size=500,500",
		"--screenshot="+shot, "file://"+html).CombinedOutput()
	if err != nil {
		t.Skipf("chromium did not run: %v\n%s", err, out)
	}
	r, err := os.Open(shot)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	img, err := png.Decode(r)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// difference is the mean distance of the channels over the area of want, 0 to 1.
func difference(got image.Image, want *image.RGBA) float64 {
	sum, n := 0.0, 0
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			r, g, b, _ := got.At(x, y).RGBA()
			w := want.RGBAAt(x, y)
			for _, d := range []int{int(r>>8) - int(w.R), int(g>>8) - int(w.G), int(b>>8) - int(w.B)} {
				sum += max(float64(d), -float64(d)) / 255
				n++
			}
		}
	}
	return sum / float64(n)
}
