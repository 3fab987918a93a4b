package job_test

import (
	"bytes"
	"cmp"
	"image"
	"image/color"
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// savePicture writes a picture whole.
func savePicture(t *testing.T, path string, img *image.RGBA) {
	var b bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestCompression}
	if err := e.Encode(&b, paletted(img)); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// paletted brings a picture down to 256 colours: the commonest as they are,
// so that paper stays paper, then averages of what is like each other.
func paletted(img *image.RGBA) *image.Paletted {
	var pal color.Palette
	flat := tally(img, 0)
	for _, c := range flat[:min(110, len(flat))] {
		pal = append(pal, c)
	}
	for _, c := range tally(img, 4) {
		if len(pal) < 256 {
			pal = append(pal, c)
		}
	}
	b := img.Bounds()
	out, seen := image.NewPaletted(b, pal), map[color.RGBA]uint8{}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := img.RGBAAt(x, y)
			i, ok := seen[c]
			if !ok {
				i = uint8(pal.Index(c))
				seen[c] = i
			}
			out.SetColorIndex(x, y, i)
		}
	}
	return out
}

// tally counts the colours of a picture that agree but for the lowest bits of
// each channel, and gives the mean of each kind, the commonest first.
func tally(img *image.RGBA, bits uint) []color.RGBA {
	type sum struct{ n, r, g, b int }
	sums := map[color.RGBA]sum{}
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := img.RGBAAt(x, y)
			k := color.RGBA{c.R >> bits, c.G >> bits, c.B >> bits, 255}
			s := sums[k]
			sums[k] = sum{s.n + 1, s.r + int(c.R), s.g + int(c.G), s.b + int(c.B)}
		}
	}
	rank := func(k color.RGBA) int { return int(k.R)<<16 | int(k.G)<<8 | int(k.B) }
	keys := slices.SortedFunc(maps.Keys(sums), func(a, b color.RGBA) int {
		return cmp.Or(sums[b].n-sums[a].n, rank(a)-rank(b))
	})
	var out []color.RGBA
	for _, k := range keys {
		s := sums[k]
		out = append(out, color.RGBA{uint8((s.r + s.n/2) / s.n), uint8((s.g + s.n/2) / s.n), uint8((s.b + s.n/2) / s.n), 255})
	}
	return out
}
