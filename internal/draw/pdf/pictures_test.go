package pdf_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	imagepng "image/png"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/png"
	"jarmark/internal/kit/unit"
)

// flag is 40 x 20 pixels: berry, then ink at half strength, the lower half clear
// (a JPEG has no clear part: white).
func flag(t *testing.T, asJPEG bool) *page.Image {
	t.Helper()
	m := image.NewNRGBA(image.Rect(0, 0, 40, 20))
	for y := range 20 {
		for x := range 40 {
			c := color.NRGBA{berry.R, berry.G, berry.B, 255}
			switch {
			case y >= 10 && asJPEG:
				c = color.NRGBA{255, 255, 255, 255}
			case y >= 10:
				c = color.NRGBA{}
			case x >= 20 && asJPEG:
				c = color.NRGBA{100, 100, 100, 255}
			case x >= 20:
				c = color.NRGBA{0, 0, 0, 128}
			}
			m.SetNRGBA(x, y, c)
		}
	}
	out := &page.Image{Name: "flag", W: 40, H: 20, FullW: 40, FullH: 20, Pix: m.Pix, JPEG: asJPEG}
	var b bytes.Buffer
	var err error
	if asJPEG {
		err = jpeg.Encode(&b, m, &jpeg.Options{Quality: 100})
	} else {
		err = imagepng.Encode(&b, m)
	}
	if err != nil {
		t.Fatal(err)
	}
	out.Data = b.Bytes()
	return out
}

func shows(x, y, w, h float64, m *page.Image) *page.Picture {
	return &page.Picture{At: page.Rect{X: mm(x), Y: mm(y), W: mm(w), H: mm(h)}, Image: m}
}

// TestPicturesAreDrawn: PDFium shows a picture in its box, over what lies under
// it where it is clear; our own drawing of the page agrees.
func TestPicturesAreDrawn(t *testing.T) {
	ground := filled(box(0, 0, 90, 100), paper)
	items := []page.Item{ground, shows(10, 10, 40, 20, flag(t, false)), shows(10, 50, 40, 20, flag(t, true))}
	doc := one(items...)
	pdfium := openRender(t, write(t, doc))
	own, err := png.Page(doc, 0, faces(t), 254)
	if err != nil {
		t.Fatal(err)
	}
	half := page.Colour{R: paper.R * 127 / 255, G: uint8(int(paper.G) * 127 / 255), B: uint8(int(paper.B) * 127 / 255)}
	half.R = uint8(int(paper.R) * 127 / 255)
	for _, c := range []struct {
		what string
		x, y float64
		want page.Colour
	}{
		{"left of it", 8, 15, paper}, {"right of it", 52, 15, paper}, {"above it", 20, 8, paper}, {"under it", 20, 32, paper},
		{"its upper left", 20, 15, berry}, {"half clear", 40, 15, half}, {"clear", 20, 25, paper},
		{"a photo", 20, 55, berry}, {"its grey", 40, 55, page.Colour{R: 100, G: 100, B: 100}}, {"its white", 30, 66, white},
	} {
		for name, img := range map[string]*image.RGBA{"PDFium": pdfium, "png": own} {
			got := img.RGBAAt(int(c.x*10), int(c.y*10))
			if far(got.R, c.want.R) || far(got.G, c.want.G) || far(got.B, c.want.B) {
				t.Errorf("%s, %s: %v, want %v", name, c.what, got, c.want)
			}
		}
	}
}

func far(a, b uint8) bool { return max(a, b)-min(a, b) > 4 }

// TestOnePictureOnManyLabels: 400 labels of 40 kinds bear one picture, and the
// file holds it once, and its cover once; the same again gives the same bytes.
func TestOnePictureOnManyLabels(t *testing.T) {
	m := flag(t, false)
	d := repeated(t, 400)
	for i := range d.Pages {
		for j := range d.Pages[i].Places {
			f := *d.Pages[i].Places[j].Frame
			f.Items = append(append([]page.Item(nil), f.Items...), shows(60, 5, 20, 10, m))
			if j%2 == 0 {
				f.W -= unit.Length(j) * unit.Millimetre / 10
			}
			d.Pages[i].Places[j].Frame = &f
		}
	}
	raw := write(t, d)
	if n := bytes.Count(raw, []byte("/Subtype /Image")); n != 2 {
		t.Errorf("%d images, want a picture and its cover", n)
	}
	if !bytes.Equal(raw, write(t, d)) {
		t.Error("the same document gives other bytes")
	}
}

func TestBrokenPicturesAreRefused(t *testing.T) {
	good := flag(t, false)
	cut := *good
	cut.Data = cut.Data[:30]
	for name, p := range map[string]*page.Picture{
		"none": nil, "no image": shows(1, 1, 5, 5, nil), "no pixels": shows(1, 1, 5, 5, &page.Image{}), "no size": shows(1, 1, 0, 5, good),
		"far away": shows(1e6, 1, 5, 5, good), "cut short": shows(1, 1, 5, 5, &cut),
	} {
		if err := pdf.Write(new(bytes.Buffer), one(p), faces(t)); err == nil {
			t.Errorf("%s: written", name)
		}
	}
}
