package web

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"jarmark/fonts"
	"jarmark/templates"
)

// knownTags are the tables WOFF2 names by number (W3C, WOFF File Format 2.0,
// 5.2, Known Table Tags).
var knownTags = strings.Fields(`cmap head hhea hmtx maxp name OS/2 post cvt_ fpgm glyf loca prep CFF_ VORG EBDT EBLC gasp hdmx kern LTSH PCLT VDMX
	vhea vmtx BASE GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG_ sbix acnt avar bdat bloc bsln cvar fdsc feat fmtx fvar gvar hsty just lcar mort
	morx opbd prop trak Zapf Silf Glat Gloc Feat Sill`)

// woff2Tables are the tables of a WOFF2 file that stand in it as in the font.
func woff2Tables(data []byte) (map[string][]byte, error) {
	if len(data) < 48 || string(data[:4]) != "wOF2" {
		return nil, fmt.Errorf("no WOFF2 header")
	}
	r := bytes.NewReader(data[48:])
	number := func() (n int) { // UIntBase128
		for {
			b, err := r.ReadByte()
			if n = n<<7 | int(b&0x7f); b < 0x80 || err != nil {
				return n
			}
		}
	}
	type entry struct {
		tag    string
		length int
		same   bool
	}
	var entries []entry
	for range binary.BigEndian.Uint16(data[12:]) {
		flags, _ := r.ReadByte()
		tag := make([]byte, 4)
		if flags&0x3f == 0x3f { // written out
			_, _ = r.Read(tag)
		} else {
			tag = []byte(knownTags[flags&0x3f])
		}
		e := entry{tag: string(tag), length: number()}
		changed := flags>>6 != 0
		if e.tag == "glyf" || e.tag == "loca" {
			changed = flags>>6 != 3
		}
		if e.same = !changed; changed {
			e.length = number()
		}
		entries = append(entries, e)
	}
	at := len(data) - r.Len()
	all, err := io.ReadAll(brotli.NewReader(bytes.NewReader(data[at : at+int(binary.BigEndian.Uint32(data[20:]))])))
	out := map[string][]byte{}
	for _, e := range entries {
		if e.same && len(all) >= e.length {
			out[e.tag] = all[:e.length]
		}
		all = all[min(len(all), e.length):]
	}
	return out, err
}

// The faces of the page are those the labels are printed with, made small for
// the way: their characters, names and measures are the same bytes.
func TestPageFacesAreThePrintedOnes(t *testing.T) {
	css, _ := fs.ReadFile(templates.FS, "web/static/base.css")
	faces := regexp.MustCompile(`/font/v/(\w+)\.woff2"`).FindAllStringSubmatch(string(css), -1)
	if len(faces) < 4 || strings.Contains(string(css), ".ttf") {
		t.Fatalf("the page asks for %v", faces)
	}
	for _, f := range faces {
		small, err := fs.ReadFile(fonts.Page, f[1]+".woff2")
		if err != nil {
			t.Fatal(err)
		}
		whole, _ := fs.ReadFile(fonts.FS, f[1]+".ttf")
		tables, err := woff2Tables(small)
		if err != nil {
			t.Fatalf("%s: %v", f[1], err)
		}
		for _, tag := range []string{"cmap", "name", "OS/2", "hhea", "GPOS"} {
			if len(tables[tag]) == 0 || !bytes.Contains(whole, tables[tag]) {
				t.Errorf("%s: the table %s is another", f[1], tag)
			}
		}
		if 2*len(small) > len(whole) {
			t.Errorf("%s: %d of %d bytes", f[1], len(small), len(whole))
		}
	}
}

// Every script a page imports, however far down, is asked for with the page.
func TestModules(t *testing.T) {
	got := modules("editor.js")
	if len(got) < 12 || !slices.Contains(got, "sheets.js") || slices.Contains(got, "editor.js") {
		t.Errorf("%q", got)
	}
	for _, name := range append(got, "editor.js") {
		data, err := fs.ReadFile(templates.FS, "web/static/"+name)
		if n := bytes.Count(data, []byte("\nimport ")); err != nil || len(imported.FindAll(data, -1)) < n {
			t.Errorf("%s: %d imports, not all understood: %v", name, n, err)
		}
	}
}
