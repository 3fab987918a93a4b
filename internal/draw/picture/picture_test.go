package picture

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// quarters is a picture whose corners are red, green, blue and clear.
func quarters(w, h int) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.NRGBA{A: 255}
			switch {
			case x < w/2 && y < h/2:
				c.R = 255
			case y < h/2:
				c.G = 255
			case x < w/2:
				c.B = 255
			default:
				c = color.NRGBA{}
			}
			m.SetNRGBA(x, y, c)
		}
	}
	return m
}

func asPNG(m image.Image) []byte {
	var b bytes.Buffer
	_ = png.Encode(&b, m)
	return b.Bytes()
}

func asJPEG(m image.Image) []byte {
	var b bytes.Buffer
	_ = jpeg.Encode(&b, m, &jpeg.Options{Quality: 95})
	return b.Bytes()
}

// chunked is a PNG with a chunk after IHDR (ISO/IEC 15948, 5.3).
func chunked(data []byte, kind string, body []byte) []byte {
	c := binary.BigEndian.AppendUint32(nil, uint32(len(body)))
	c = append(append(c, kind...), body...)
	c = binary.BigEndian.AppendUint32(c, crc32.ChecksumIEEE(c[4:]))
	return append(append(append([]byte(nil), data[:33]...), c...), data[33:]...)
}

// sized is a PNG that says it has other measures.
func sized(data []byte, w, h uint32) []byte {
	out := bytes.Clone(data)
	binary.BigEndian.PutUint32(out[16:], w)
	binary.BigEndian.PutUint32(out[20:], h)
	binary.BigEndian.PutUint32(out[29:], crc32.ChecksumIEEE(out[12:29]))
	return out
}

// exif is a JPEG with an Exif part: the way up, and words no one shall read.
func exif(data []byte, turn uint16, secret string) []byte {
	tiff := []byte("MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01")
	tiff = binary.BigEndian.AppendUint16(tiff, turn)
	tiff = append(tiff, 0, 0, 0, 0, 0, 0)
	part := append(append([]byte("Exif\x00\x00"), tiff...), secret...)
	// After a JFIF part, as most programs write it.
	head := append([]byte{0xff, 0xd8, 0xff, 0xe0, 0, 16}, "JFIF\x00\x01\x02\x00\x00\x01\x00\x01\x00\x00"...)
	head = binary.BigEndian.AppendUint16(append(head, 0xff, 0xe1), uint16(len(part)+2))
	return append(append(head, part...), data[2:]...)
}

func TestHostileFilesAreFindings(t *testing.T) {
	good, photo := asPNG(quarters(40, 30)), asJPEG(quarters(40, 30))
	for _, c := range []struct {
		name string
		data []byte
		what string
	}{
		{"empty", nil, "empty"},
		{"cut short", good[:len(good)/2], "broken"},
		{"header alone", good[:33], "broken"},
		{"signature alone", good[:8], "broken"},
		{"a photo cut short", photo[:len(photo)/2], "broken"},
		{"huge", sized(good, 100_000, 100_000), "more than can be read"},
		{"one long row", sized(good, 40_000, 1), "more than can be read"},
		{"largest numbers", sized(good, 1<<31-1, 1<<31-1), "broken"},
		{"no width", sized(good, 0, 30), "broken"},
		{"heavy", append(bytes.Clone(good), make([]byte, MostBytes)...), "21 MB"},
		{"wrong sum", append(bytes.Clone(good[:len(good)-5]), 'x', 1, 2, 3, 4), "broken"},
		{"a drawing of another kind", []byte(`<?xml version="1.0"?><svg xmlns="x"/>`), "no SVG"},
		{"a drawing with words", []byte(svgHead + `<text>Jam</text></svg>`), "<text>"},
		{"a drawing that laughs", []byte(`<!DOCTYPE svg [<!ENTITY a "aa"><!ENTITY b "&a;&a;">]>` + svgHead + `&b;</svg>`), "entities"},
		{"a deep drawing", []byte(svgHead + strings.Repeat("<g>", 90_000)), "deep"},
		{"a drawing of ten megabytes", []byte(svgHead + strings.Repeat(" ", 10<<20) + "</svg>"), "10241 kB"},
		{"a drawing too large to count", []byte(svgHead + `<path d="M0 0L1e999 0"/></svg>`), "too large"},
		{"a packed drawing", []byte("\x1f\x8b\x08\x00"), "SVGZ"},
		{"moving", []byte("GIF89a"), "a GIF"},
		{"of a telephone", []byte("\x00\x00\x00\x18ftypheic"), "a HEIC file"},
		{"of a browser", []byte("RIFF\x00\x00\x00\x00WEBPVP8 "), "a WebP file"},
		{"of a printer", []byte("%PDF-1.7"), "a PDF"},
		{"words", []byte("not a picture"), "no PNG or JPEG"},
	} {
		d, err := Decode(c.data)
		var p *Problem
		if d != nil || !errors.As(err, &p) || !strings.Contains(p.What, c.what) || p.Hint == "" {
			t.Errorf("%s: %v, want a problem that says %q", c.name, err, c.what)
		}
	}
}

// A picture of many layers takes more memory than its pixels.
func TestLayersCountForMemory(t *testing.T) {
	data, err := os.ReadFile("testdata/progressive.jpeg")
	if err != nil {
		t.Fatal(err)
	}
	if d, err := Decode(data); err != nil || d.W != 150 || d.H != 103 {
		t.Fatalf("%v %v", d, err)
	}
	at := bytes.Index(data, []byte{0xff, 0xc2})
	binary.BigEndian.PutUint16(data[at+5:], 5000)
	binary.BigEndian.PutUint16(data[at+7:], 5000)
	if _, err := Decode(data); err == nil || !strings.Contains(err.Error(), "more than can be read") {
		t.Errorf("25 megapixels in layers: %v", err)
	}
}

// Pictures of the PNG test suite and of the Go project, with 16 bits, palette,
// grey with cover, rows in turns: all read, and to the same pixels as plain.
func TestEveryKindOfFileIsRead(t *testing.T) {
	files, _ := filepath.Glob("testdata/*.*g")
	if len(files) < 8 {
		t.Fatal("the pictures are missing")
	}
	seen := map[string]*Decoded{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		d, err := Decode(data)
		if err != nil {
			t.Errorf("%s: %v", f, err)
			continue
		}
		seen[filepath.Base(f)] = d
		for _, grey := range []bool{false, true} {
			m, err := d.Image(20, grey)
			if err != nil || max(m.W, m.H) > 20 || m.FullW != d.W || len(m.Pix) != 4*m.W*m.H {
				t.Errorf("%s: %v", f, err)
			}
			if again, err := Decode(m.Data); err != nil || again.W != m.W {
				t.Errorf("%s: what is made of it cannot be read: %v", f, err)
			}
		}
	}
	a, _ := seen["plain.png"].Image(0, false)
	b, _ := seen["interlaced.png"].Image(0, false)
	if !bytes.Equal(a.Pix, b.Pix) {
		t.Error("rows in turns give other pixels")
	}
	if !strings.Contains(seen["cmyk.jpeg"].Beside, "CMYK") {
		t.Error("printing colours are not told")
	}
	moving, err := Decode(chunked(asPNG(quarters(4, 4)), "acTL", make([]byte, 8)))
	if err != nil || !strings.Contains(moving.Beside, "first picture") {
		t.Errorf("a picture that moves: %v %v", moving, err)
	}
}

// TestUprightAndWithoutWhereAndWhen: every Exif orientation (Exif 2.3, tag
// 0x0112) puts the red corner where a viewer shows it, and nothing of the
// part that says so is left.
func TestUprightAndWithoutWhereAndWhen(t *testing.T) {
	const secret = "N 44.56 W 123.26 garden gate"
	plain := asJPEG(quarters(80, 40))
	corner := map[uint16]image.Point{1: {0, 0}, 2: {1, 0}, 3: {1, 1}, 4: {0, 1}, 5: {0, 0}, 6: {1, 0}, 7: {1, 1}, 8: {0, 1}}
	for turn, at := range corner {
		data := exif(plain, turn, secret)
		d, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		m, err := d.Image(0, false)
		if err != nil {
			t.Fatal(err)
		}
		if (turn >= 5) != (m.W == 40) || m.FullW != m.W || m.FullH != m.H {
			t.Errorf("%d: %d x %d", turn, m.W, m.H)
		}
		x, y := m.W/4+at.X*m.W/2, m.H/4+at.Y*m.H/2
		if p := m.Pix[4*(y*m.W+x):]; p[0] < 200 || p[1] > 60 {
			t.Errorf("%d: the red corner is not at %v", turn, at)
		}
		if bytes.Contains(m.Data, []byte("garden")) || bytes.Contains(m.Data, []byte("Exif")) {
			t.Errorf("%d: the place is still told", turn)
		}
	}
	if c := chunked(asPNG(quarters(4, 4)), "tEXt", []byte("Location\x00"+secret)); true {
		d, err := Decode(c)
		if err != nil {
			t.Fatal(err)
		}
		if m, _ := d.Image(0, false); bytes.Contains(m.Data, []byte("garden")) {
			t.Error("words of a PNG are kept")
		}
	}
}

// A picture made smaller keeps its colours, also at the edge of what is clear.
func TestSmallerKeepsColours(t *testing.T) {
	d, err := Decode(asPNG(quarters(1000, 600)))
	if err != nil {
		t.Fatal(err)
	}
	m, err := d.Image(30, false)
	if err != nil || m.W != 30 || m.H != 18 || m.FullW != 1000 {
		t.Fatalf("%d x %d, %v", m.W, m.H, err)
	}
	at := func(x, y int) [4]byte { return [4]byte(m.Pix[4*(y*m.W+x):]) }
	if at(3, 3) != [4]byte{255, 0, 0, 255} || at(20, 3) != [4]byte{0, 255, 0, 255} || at(3, 14) != [4]byte{0, 0, 255, 255} || at(20, 14)[3] != 0 {
		t.Error("colours moved")
	}
	one, _ := d.Image(1, false)
	if p := one.Pix; p[3] < 188 || p[3] > 194 || p[0] < 80 || p[0] > 90 { // three quarters covered, a third of it red
		t.Errorf("the mean of all is %v", p)
	}
	grey, _ := d.Image(30, true)
	for i := 0; i < len(grey.Pix); i += 4 {
		if p := grey.Pix[i:]; p[0] != p[1] || p[1] != p[2] || p[3] != 255 {
			t.Fatal("grey has a colour")
		}
	}
	if grey.Pix[4*(14*30+20)] != 255 {
		t.Error("what is clear is not white")
	}
}

func TestOnlyFilesOfTheFolder(t *testing.T) {
	dir := t.TempDir()
	good := asPNG(quarters(4, 4))
	for name, data := range map[string][]byte{"home/logo.png": good, "secret.png": good, "home/in/Photo.JPG": good} {
		_ = os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o755)
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	home := filepath.Join(dir, "home")
	links := os.Symlink("../secret.png", filepath.Join(home, "link.png")) == nil && os.Symlink("..", filepath.Join(home, "up")) == nil
	for name, want := range map[string]string{
		"logo.png": "", "./logo.png": "", `in\Photo.JPG`: "", "../secret.png": "outside", "/etc/hostname": "outside", "in/../../secret.png": "outside", "": "outside",
		"C:/logo.png": "outside", "link.png": "a link", "up/secret.png": "a link", "in": "no file", "none.png": "no such file", "logo.png/x": "cannot", "in/photo.png": "no such file", "\x00": "",
	} {
		data, err := Open(os.DirFS(home), name, MostBytes)
		var p *Problem
		switch {
		case want == "" && name != "\x00":
			if err != nil || !bytes.Equal(data, good) {
				t.Errorf("%q: %v", name, err)
			}
		case !errors.As(err, &p) || !strings.Contains(p.What, want) || p.Hint == "":
			if links || want != "a link" {
				t.Errorf("%q: %v, want a problem that says %q", name, err, want)
			}
		}
	}
	var p *Problem
	if _, err := Open(os.DirFS(home), "in/photo.png", MostBytes); !errors.As(err, &p) || !strings.Contains(p.Hint, "in/Photo.JPG") {
		t.Errorf("a near name is not offered: %v", p)
	}
	if _, err := Open(fstest.MapFS{"a.png": {Data: make([]byte, 100)}}, "a.png", 99); err == nil {
		t.Error("a heavy file is read")
	}
	if _, err := Open(nil, "a.png", 99); err == nil {
		t.Error("no folder, and a file")
	}
	if _, err := Open(fstest.MapFS{"pipe.png": {Mode: fs.ModeNamedPipe}}, "pipe.png", 99); err == nil {
		t.Error("a pipe is waited for")
	}
}

func FuzzDecode(f *testing.F) {
	good := asPNG(quarters(12, 8))
	for _, seed := range [][]byte{good, asJPEG(quarters(12, 8)), exif(asJPEG(quarters(8, 8)), 6, "x"), sized(good, 1<<20, 1<<20), chunked(good, "tRNS", []byte{1, 2}), []byte(svgHead + `<path d="M0 0h9v9z"/></svg>`)} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := Decode(data)
		if err != nil {
			return
		}
		m, err := d.Image(16, len(data)%2 == 0)
		if err != nil || m.Broken() {
			t.Fatal(err)
		}
		if m.Art != nil {
			return
		}
		if _, err := Decode(m.Data); err != nil {
			t.Fatalf("what was made of it cannot be read: %v", err)
		}
	})
}
