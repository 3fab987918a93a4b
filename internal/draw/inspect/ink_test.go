package inspect

import (
	"image"
	"image/color"
	"testing"

	"github.com/makiuchi-d/gozxing"
	reader "github.com/makiuchi-d/gozxing/qrcode"
	qrcode "github.com/skip2/go-qrcode"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// The heights measured on outlines are those each typeface states of itself:
// sxHeight and sCapHeight of its OS/2 table (OpenType specification), within
// what type designers round and let letters overshoot, 2 % of the em. A written
// hand has no flat x or H to state.
func TestHeightsAreTheTypefacesOwn(t *testing.T) {
	fs := typefaces(t)
	const size = 10 * mm
	for _, name := range fs.Names() {
		if name == "Caveat_600SemiBold" {
			continue
		}
		data, err := fs.Bytes(name)
		if err != nil {
			t.Fatal(err)
		}
		parsed, err := sfnt.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		m, err := parsed.Metrics(nil, fixed.I(1000), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		f := fs.Face(name)
		for what, pair := range map[string][2]unit.Length{
			"x": {measured(label.XHeight, "", f, size), unit.Length(m.XHeight) * size / 64000},
			"H": {measured(label.Capital, "", f, size), unit.Length(m.CapHeight) * size / 64000},
		} {
			if d := pair[0] - pair[1]; pair[1] > 0 && (d > size/50 || d < -size/50) {
				t.Errorf("%s: %s is %.2f mm by its outline, %.2f mm by its table", name, what, pair[0].MM(), pair[1].MM())
			}
		}
	}
}

// The level read off the format bits is the one a second reader finds and the
// encoder was asked for.
func TestLevelIsRead(t *testing.T) {
	for level, want := range map[qrcode.RecoveryLevel]string{qrcode.Low: "L", qrcode.Medium: "M", qrcode.High: "Q", qrcode.Highest: "H"} {
		m := modules(t, "https://thornfield.example/r/L26165-SR", level)
		if got := string(levelOf(m)); got != want {
			t.Errorf("level %s is read as %s", want, got)
		}
		img := image.NewGray(image.Rect(0, 0, 4*(len(m)+8), 4*(len(m)+8)))
		for y := range img.Rect.Max.Y {
			for x := range img.Rect.Max.X {
				i, j := y/4-4, x/4-4
				if i < 0 || j < 0 || i >= len(m) || j >= len(m) || !m[i][j] {
					img.SetGray(x, y, color.Gray{Y: 255})
				}
			}
		}
		bmp, err := gozxing.NewBinaryBitmapFromImage(img)
		if err != nil {
			t.Fatal(err)
		}
		r, err := reader.NewQRCodeReader().Decode(bmp, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.GetResultMetadata()[gozxing.ResultMetadataType_ERROR_CORRECTION_LEVEL]; got != want {
			t.Errorf("level %s: a second reader finds %v", want, got)
		}
	}
}
