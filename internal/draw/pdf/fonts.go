package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"sort"
	"strings"
	"unicode/utf16"

	"github.com/go-pdf/fpdf"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// typeface is a face of the document: the letters of it that are used, and what
// the file calls it.
type typeface struct {
	*face.Subset
	id  string // resource name: "F1c2…"
	tag string // its name in the file as fpdf writes it
}

// embed cuts the used letters out of each face and gives it a place in the
// file. fpdf's own way reads the whole face anew for every document and writes
// a map of 65,536 codes, which took three quarters of the time of a run; so it
// is told of a typeface of one-byte codes that is in no file, whose three
// objects finish replaces by those of objects.
//
// fpdf names a font only in its output, so the name is had from a template that
// is never placed.
func embed(f *fpdf.Fpdf, s *survey, faces *face.Set) (map[page.Face]*typeface, error) {
	used := make([]page.Face, 0, len(s.runes))
	for name := range s.runes {
		used = append(used, name)
	}
	sort.Slice(used, func(i, j int) bool { return used[i] < used[j] })
	out := make(map[page.Face]*typeface, len(used))
	for i, name := range used {
		whole, err := faces.Open(name)
		if err != nil {
			return nil, err
		}
		t := &typeface{tag: fmt.Sprintf("face%02d", i)}
		if t.Subset, err = whole.Subset(s.runes[name].rounded(whole)); err != nil {
			return nil, err
		}
		def, err := json.Marshal(map[string]any{"Tp": "TrueType", "Name": t.tag, "Cw": make([]int, 256)})
		if err != nil {
			return nil, err
		}
		f.AddFontFromBytes(t.tag, "", def, nil)
		probe := f.CreateTemplate(func(p *fpdf.Tpl) {
			p.SetFont(t.tag, "", 1)
			p.Text(0, 0, "a")
		})
		id, ok := fontName(probe.Bytes())
		if err := f.Error(); err != nil || !ok {
			return nil, fmt.Errorf("typeface %s cannot be embedded: %v", name, err)
		}
		t.id = id
		out[name] = t
	}
	return out, nil
}

// fontName finds the resource name in "BT /F… 1.00 Tf ET".
func fontName(content []byte) (string, bool) {
	_, rest, ok := bytes.Cut(content, []byte("BT /"))
	if !ok {
		return "", false
	}
	name, _, ok := bytes.Cut(rest, []byte(" "))
	return string(name), ok && len(name) > 1
}

// subsetName is the PostScript name with a tag of six letters that stands for
// the letters kept (ISO 32000-1, 9.6.4).
func (t *typeface) subsetName() string {
	sum := sha256.Sum256(t.Data)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag) + "+" + t.PSName
}

// objects are a font as ISO 32000-1, 9.7 has it: a Type 0 font whose codes are
// the glyph numbers of the subset, its one descendant, its descriptor, and two
// streams, the font file and the letters the codes stand for. n are the numbers
// of the five objects.
func (t *typeface) objects(n [5]int) ([5][]byte, error) {
	name := t.subsetName()
	box, ascent, descent, capHeight := t.Metrics()
	var out [5][]byte
	out[0] = fmt.Appendf(nil, "<</Type /Font\n/Subtype /Type0\n/BaseFont /%s\n/Encoding /Identity-H\n/DescendantFonts [%d 0 R]\n/ToUnicode %d 0 R>>", name, n[1], n[4])
	out[1] = fmt.Appendf(nil, "<</Type /Font\n/Subtype /CIDFontType2\n/BaseFont /%s\n/CIDSystemInfo <</Registry (Adobe)\n/Ordering (Identity)\n/Supplement 0>>\n"+
		"/FontDescriptor %d 0 R\n/CIDToGIDMap /Identity\n/DW 0\n/W [1 [%s]]>>", name, n[2], t.widths())
	out[2] = fmt.Appendf(nil, "<</Type /FontDescriptor\n/FontName /%s\n/Flags 4\n/FontBBox [%d %d %d %d]\n/ItalicAngle 0\n/Ascent %d\n/Descent %d\n/CapHeight %d\n/StemV 80\n/FontFile2 %d 0 R>>",
		name, box[0], box[1], box[2], box[3], ascent, descent, capHeight, n[3])
	for i, data := range [][]byte{t.Data, t.toUnicode()} {
		packed, err := t.Packed(i, data, deflate)
		if err != nil {
			return out, err
		}
		length1 := ""
		if i == 0 {
			length1 = fmt.Sprintf("/Length1 %d\n", len(data))
		}
		out[3+i] = append(fmt.Appendf(nil, "<</Filter /FlateDecode\n%s/Length %d>>\nstream\n", length1, len(packed)), packed...)
		out[3+i] = append(out[3+i], "\nendstream"...)
	}
	return out, nil
}

// widths lists the advances of glyph 1 and on.
func (t *typeface) widths() string {
	var b strings.Builder
	for i, r := range t.Runes {
		if i > 0 {
			b.WriteByte(' ')
		}
		fmt.Fprint(&b, t.Advance(r))
	}
	return b.String()
}

// toUnicode maps codes back to letters (ISO 32000-1, 9.10.3).
func (t *typeface) toUnicode() []byte {
	const most = 100 // entries of one block
	b := []byte("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for i := 0; i < len(t.Runes); i += most {
		block := t.Runes[i:min(i+most, len(t.Runes))]
		b = fmt.Appendf(b, "%d beginbfchar\n", len(block))
		for j, r := range block {
			b = fmt.Appendf(b, "<%04X> <%04X>\n", i+j+1, r)
		}
		b = append(b, "endbfchar\n"...)
	}
	return append(b, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend"...)
}

// runeSet is a set of letters of the Basic Multilingual Plane.
type runeSet [1 << 16 / 64]uint64

func (s *runeSet) has(r rune) bool { return s[r>>6]>>(r&63)&1 == 1 }
func (s *runeSet) add(r rune)      { s[r>>6] |= 1 << (r & 63) }

// figures are embedded all where one of them is used, so that documents that
// differ in a lot's number or a day share their typefaces.
const figures = "0123456789"

// rounded gives the letters to embed, in order.
func (s *runeSet) rounded(f *face.Face) []rune {
	all := *s
	if strings.ContainsFunc(figures, s.has) {
		for _, r := range figures {
			if f.Owner(r) == f && f.Has(r) {
				all.add(r)
			}
		}
	}
	return []rune(all.String())
}

func (s *runeSet) String() string {
	var b strings.Builder
	for i, w := range s {
		for j := 0; w != 0; j, w = j+1, w>>1 {
			if w&1 == 1 {
				b.WriteRune(rune(i*64 + j))
			}
		}
	}
	return b.String()
}

// infoString is text as the information dictionary wants it: UTF-16BE with a
// byte order mark (ISO 32000-1, 7.9.2.2). fpdf's own conversion breaks on
// letters above U+FFFF.
func infoString(s string) string {
	if s == "" {
		return ""
	}
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}

func sizeOf(w, h unit.Length) fpdf.SizeType {
	return fpdf.SizeType{Wd: w.MM(), Ht: h.MM()}
}
