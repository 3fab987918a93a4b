package artwork

import (
	"bytes"
	"context"
	"image"
	imagepng "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/png"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/draw/svg"
	"jarmark/internal/kit/unit"
)

// sample draws with everything that is read: an orchard of our own.
const sample = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">
<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="90mm" viewBox="-10 -10 200 150" fill="#2d6a4f" color="teal">
<title>orchard</title>
<style>.leaf{fill:#74a57f;stroke:#1b4332;stroke-width:1.5} .sun{fill:goldenrod}</style>
<rect x="-40" y="100" width="400" height="300" rx="12" fill="#d8c3a5"/>
<circle class="sun" cx="160" cy="20" r="18"/>
<g transform="translate(30 60) rotate(-12)">
 <path class="leaf" d="M0 0C20-40 50-40 60 0S30 40 0 0z"/>
 <path class="leaf" style="fill:none;stroke-linecap:round" d="m2-1q25-18 40-6t18 7"/>
</g>
<path fill-rule="evenodd" d="M100 10l14 43-37-27h46l-37 27z"/>
<path fill="none" stroke="#9b2226" stroke-width="6" stroke-linejoin="miter" stroke-miterlimit="2" d="M20 110l10-18 10 18 16-6-12 20"/>
<path fill="none" stroke="#9b2226" stroke-width="6" stroke-linejoin="bevel" stroke-linecap="square" d="M80 120v-20h20l-12 14"/>
<path fill="none" stroke="currentColor" stroke-width="4" stroke-linejoin="round" stroke-linecap="butt" stroke-dasharray="9 5 2" d="M110 125h60v-25"/>
<g transform="matrix(.8 .3 -.3 .8 130 60)" stroke="#5f0f40" stroke-width="2">
 <ellipse rx="26" ry="14" fill="#e76f51"/>
 <path fill="#f4a261" d="M-20 0a20 12 30 1 0 22-6A9 9 0 0 1-20 0z"/>
 <polyline fill="none" points="-30,20 -20,26 -10,20 0,26 10,20"/>
 <line x1="-30" y1="30" x2="20" y2="30"/>
</g>
<g transform="skewX(-20) translate(40 10)"><polygon points="0 0 16 0 16 16 0 16"/><rect x="20" width="14" height="16" rx="3" ry="6"/></g>
<g transform="scale(1 .5)"><path d="M5 40H25V60h-8z"/></g>
<path display="none" d="M0 0H500V500H0z"/>
<symbol id="bud" viewBox="0 0 20 20"><circle cx="10" cy="10" r="9"/><path fill="#bc4749" d="M4 10l6-5 6 5-6 5z"/></symbol>
<use href="#bud" x="5" y="55" width="24" height="30" fill="#6a994e"/>
<g transform="rotate(8)"><use xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="#twig" x="60" y="-4" fill="#386641"/></g>
<defs><g id="twig"><path d="M0 0h24l-4 5H3z"/><use href="#bud" width="12" height="12" x="26"/></g></defs>
</svg>`

// TestBrowserAgrees: what Chromium makes of a drawing, and what our PNG, our SVG
// in Chromium and our PDF in PDFium make of it, look alike.
func TestBrowserAgrees(t *testing.T) {
	doc, faces, drawn := printedAlike(t, "", sample)
	shot := inBrowser(t, "", sample)
	same(t, "Chromium's picture of the drawing and the PNG", shot, drawn)
	var again bytes.Buffer
	if err := svg.Page(&again, doc, 0, faces); err != nil {
		t.Fatal(err)
	}
	same(t, "Chromium's picture of our SVG and the PNG", screenshot(t, again.String()), drawn)
}

// printedAlike reads a drawing and compares our PNG of it, which it gives, with our
// PDF in PDFium; the pictures are kept by a name.
func printedAlike(t *testing.T, name, drawing string) (*page.Doc, *face.Set, image.Image) {
	t.Helper()
	d, found := Read([]byte(drawing))
	if len(found) > 0 {
		t.Fatal(found)
	}
	doc := sheetOf(d)
	faces, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	const dpi = 150 // 600 dots on 4 in
	drawn, err := png.Page(doc, 0, faces, dpi)
	if err != nil {
		t.Fatal(err)
	}
	keep(t, "png"+name, drawn)
	var file bytes.Buffer
	if err := pdf.Write(&file, doc, faces); err != nil {
		t.Fatal(err)
	}
	printed := presstest.Open(t, file.Bytes()).Render(0, dpi)
	keep(t, "pdfium"+name, printed)
	same(t, "PDFium's picture of the PDF and the PNG", printed, drawn)
	return doc, faces, drawn
}

// inBrowser is Chromium's picture of a drawing, kept by a name. Without a browser the
// test is skipped.
func inBrowser(t *testing.T, name, drawing string) image.Image {
	t.Helper()
	if testing.Short() {
		t.Skip("starts a browser")
	}
	if _, err := exec.LookPath("chromium"); err != nil {
		t.Skip("no chromium here: the drawing is not compared with a browser's")
	}
	shot := screenshot(t, drawing)
	keep(t, "chromium"+name, shot)
	return shot
}

// sheetOf is a page of 4 x 3 in that is the drawing.
func sheetOf(d *Drawing) *page.Doc {
	m := &page.Image{W: int(d.W / page.ArtUnit), H: int(d.H / page.ArtUnit), Art: d.Paths}
	w, h := 4*unit.Inch, 3*unit.Inch-2*unit.Micrometre // PDFium rounds a rounded height up
	f := &page.Frame{W: w, H: h, Items: []page.Item{&page.Picture{At: page.Rect{W: w, H: h}, Image: m}}}
	return &page.Doc{Pages: []page.Page{{W: w, H: h, Places: []page.Placement{{Frame: f}}}}}
}

// same compares two pictures: on average, and by dots that differ by more than
// the edge of a shape can.
func same(t *testing.T, what string, a, b image.Image) {
	t.Helper()
	sameBut(t, what, a, b, 10)
}

// sameBut is same where so many dots may differ.
func sameBut(t *testing.T, what string, a, b image.Image, most int) {
	t.Helper()
	if a.Bounds().Dx() < b.Bounds().Dx() || a.Bounds().Dy() < b.Bounds().Dy() {
		t.Fatalf("%s: %v and %v", what, a.Bounds(), b.Bounds())
	}
	sum, off, n := 0.0, 0, 0
	for y := range min(a.Bounds().Dy(), b.Bounds().Dy()) {
		for x := range min(a.Bounds().Dx(), b.Bounds().Dx()) {
			r, g, bl, _ := a.At(x, y).RGBA()
			r2, g2, bl2, _ := b.At(x, y).RGBA()
			far := 0.0
			for _, v := range [3]float64{float64(r) - float64(r2), float64(g) - float64(g2), float64(bl) - float64(bl2)} {
				v = max(v, -v) / 0xffff
				sum += v / 3
				far = max(far, v)
			}
			if n++; far > 0.35 {
				off++
			}
		}
	}
	t.Logf("%s: %.4f on average, %d of %d dots differ", what, sum/float64(n), off, n)
	if sum/float64(n) > 0.002 || off > most {
		t.Errorf("%s: %.4f on average, %d of %d dots differ", what, sum/float64(n), off, n)
	}
}

// keep writes a picture to look at, where JARMARK_LOOK names a folder.
func keep(t *testing.T, name string, m image.Image) {
	dir := os.Getenv("JARMARK_LOOK")
	if dir == "" {
		return
	}
	var b bytes.Buffer
	if err := imagepng.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+".png"), b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

func screenshot(t *testing.T, drawing string) image.Image {
	t.Helper()
	dir := t.TempDir()
	art, html, shot := filepath.Join(dir, "a.svg"), filepath.Join(dir, "p.html"), filepath.Join(dir, "p.png")
	doc := `<!doctype html><style>*{margin:0}img{display:block;width:600px;height:450px}</style><img src="a.svg">`
	for name, text := range map[string]string{art: drawing, html: doc} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	ctx, stop := context.WithTimeout(context.Background(), 60*time.Second)
	defer stop()
	out, err := exec.CommandContext(ctx, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
		"--user-data-dir="+filepath.Join(dir, "profile"), "--window-size=600,450", "--screenshot="+shot, "file://"+html).CombinedOutput()
	if err != nil {
		t.Skipf("chromium did not run: %v\n%s", err, out)
	}
	r, err := os.Open(shot)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	img, err := imagepng.Decode(r)
	if err != nil {
		t.Fatal(err)
	}
	return img
}
