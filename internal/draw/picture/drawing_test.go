package picture

import (
	"errors"
	"image"
	"image/color"
	"strings"
	"testing"
)

const svgHead = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50">`

// TestDrawing: an SVG stays paths, in black ink alone grey ones as light as a
// picture's dots would be; its problems keep their places; it is no photo.
func TestDrawing(t *testing.T) {
	d, err := Decode([]byte("\xef\xbb\xbf<!-- a logo -->\n" + svgHead + `<path fill="#c81e5a" stroke="red" d="M0 0h9v9z"/><path fill="none" stroke="#fff" d="M0 0h9v9z"/></svg>`))
	if err != nil {
		t.Fatal(err)
	}
	colour, _ := d.Image(900, false)
	grey, _ := d.Image(900, true)
	if colour.Broken() || len(colour.Art) != 2 || colour.W != 2*colour.H || colour.Art[0].Fill.R != 0xc8 || colour.Data != nil {
		t.Errorf("%+v", colour)
	}
	dot := image.NewNRGBA(image.Rect(0, 0, 1, 1))
	dot.SetNRGBA(0, 0, color.NRGBA{0xc8, 0x1e, 0x5a, 255})
	raster, _ := Decode(asPNG(dot))
	want, _ := raster.Image(0, true)
	if got := grey.Art[0].Fill; got.R != want.Pix[0] || got.G != got.R || got.B != got.R || grey.Art[1].Fill != nil || grey.Art[1].Stroke.R != 255 {
		t.Errorf("grey is %v, want %d", got, want.Pix[0])
	}
	if colour.Art[0].Fill.R == grey.Art[0].Fill.R {
		t.Error("the colours are gone")
	}
	var p *Problem
	if _, _, _, err := d.Photo(900); !errors.As(err, &p) || !strings.Contains(p.What, "drawing") {
		t.Errorf("a drawing as a photo: %v", err)
	}
	if _, err := Decode([]byte(svgHead + "\n<text/>\n <image/></svg>")); !errors.As(err, &p) || p.Line != 2 || p.Column != 1 || len(p.More) != 1 || p.More[0].Line != 3 || p.More[0].Column != 2 {
		t.Errorf("%+v", p)
	}
}
