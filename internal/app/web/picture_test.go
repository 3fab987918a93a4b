//go:build !js

package web

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"golang.org/x/image/font/gofont/gobold"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/svg"
	"jarmark/internal/kit/unit"
)

// A maker's picture and typeface, named on the Kitchen page, stand on the label
// on the screen: the picture in its own colour, which no design of ours has, and
// the name in letters of that typeface.
func TestBrowserShowsOwnPictureAndTypeface(t *testing.T) {
	dir := kitchenDir(t)
	magenta := color.NRGBA{R: 0xf0, G: 0x10, B: 0xd0, A: 0xff}
	logo := image.NewNRGBA(image.Rect(0, 0, 600, 400))
	draw.Draw(logo, logo.Bounds(), image.NewUniform(magenta), image.Point{}, draw.Src)
	var data bytes.Buffer
	if err := png.Encode(&data, logo); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "logo.png", data.String())
	if err := os.Mkdir(filepath.Join(dir, "fonts"), 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "fonts/Mine.ttf", string(gobold.TTF))
	b := browse(t, dir, 1280, 900)
	b.open("/kitchen")
	b.step("own")
	b.typeIn("f-picture.file", "logo.png")
	b.typeIn("f-picture.alt", "a bright square")
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("details").forEach((d) => { d.open = true; })`))
	b.typeIn("f-type.title", "Mine.ttf")
	b.saved()
	b.onDisk("kitchen.toml", `"logo.png"`)
	b.open("/batch/plum.toml")
	b.until("the picture is on a label", `[...document.querySelectorAll("#labels .art")].some((a) => a.shadowRoot.querySelector("image") !== null)`)
	b.until("the name is in the maker's letters", `[...document.querySelectorAll("#labels .art")].some((a) => a.shadowRoot.innerHTML.includes(`+strconv.Quote(`d="`+letter(t, gobold.TTF, "T"))+`))`)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("#labels .art").scrollIntoView({block: "center"})`))
	if n := b.pixels(magenta); n < 500 {
		t.Errorf("%d pixels of the picture on the screen", n)
	}
	b.silent()
}

// letter is the path of a letter of a typeface, as a line that begins with it
// begins.
func letter(t *testing.T, ttf []byte, r string) string {
	t.Helper()
	own, err := face.Own("any.ttf", ttf)
	if err != nil {
		t.Fatal(err)
	}
	none, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	line := &page.Text{Face: own.Name, Size: unit.Millimetre, Segs: []page.Seg{{S: r}}}
	if err := svg.Frame(&out, &page.Frame{W: unit.Millimetre, H: unit.Millimetre, Items: []page.Item{line}}, nil, none.With([]*face.Face{own})); err != nil {
		t.Fatal(err)
	}
	_, path, _ := strings.Cut(out.String(), `transform="`)
	_, path, _ = strings.Cut(path, `d="`)
	path, _, _ = strings.Cut(path, `"`)
	if len(path) < 30 {
		t.Fatalf("a short letter: %s", path)
	}
	return path
}

// pixels counts those of a colour on the screen.
func (b *tab) pixels(c color.NRGBA) (n int) {
	b.Helper()
	shot, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	if err != nil {
		b.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		b.Fatal(err)
	}
	near := func(a uint32, v uint8) bool { d := int(a>>8) - int(v); return d > -6 && d < 6 }
	for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
		for x := img.Bounds().Min.X; x < img.Bounds().Max.X; x++ {
			if r, g, bl, _ := img.At(x, y).RGBA(); near(r, c.R) && near(g, c.G) && near(bl, c.B) {
				n++
			}
		}
	}
	return n
}
