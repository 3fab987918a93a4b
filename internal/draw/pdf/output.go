package pdf

import (
	"bytes"
	"fmt"

	"jarmark/internal/draw/page"
)

// trade is what a file bears beside its pages: what it says of itself, the colours its
// numbers stand for, layers and the tree of its parts.
type trade struct {
	doc     *page.Doc
	shop    bool // a page says where to trim it
	layers  bool
	tree    *tree // nil: not tagged
	marks   bool  // black corners
	claimed string
}

func tradeOf(d *page.Doc) *trade {
	t := &trade{doc: d}
	if d == nil {
		return t
	}
	contour := false
	for i := range d.Pages {
		p := &d.Pages[i]
		t.shop = t.shop || p.Trim.W > 0
		contour = contour || p.Trim.W > 0 && p.Contoured()
	}
	t.layers = d.CutLines || contour
	return t
}

// plain reports whether the file bears nothing of the sort.
func (t *trade) plain() bool { return !t.shop && !t.layers && t.tree == nil }

// finish adds the objects, and completes catalog, information and forms.
func (t *trade) finish(f *file, id []byte) error {
	if t.plain() {
		return nil
	}
	icc, err := f.stream("/N 3 ", sRGB(), true)
	if err != nil {
		return err
	}
	catalog, resources, claims := "", fmt.Sprintf("/ColorSpace <</DefaultRGB [/ICCBased %d 0 R]", icc), ""
	if t.layers {
		spot := f.add(fmt.Appendf(nil, "[/Separation /cut [/ICCBased %d 0 R] <</FunctionType 2 /Domain [0 1] /C0 [1 1 1] /C1 [1 0 1] /N 1>>]", icc))
		over := f.add([]byte("<</Type /ExtGState /OP true /op true /OPM 1>>"))
		cut, corners := f.add([]byte("<</Type /OCG /Name (cut)>>")), f.add([]byte("<</Type /OCG /Name (registration)>>"))
		catalog += fmt.Sprintf("/OCProperties <</OCGs [%d 0 R %d 0 R] /D <</Name (layers) /Order [%[1]d 0 R %d 0 R]>>>>\n", cut, corners)
		resources += fmt.Sprintf(" /cut %d 0 R>> /ExtGState <</over %d 0 R>> /Properties <</cut %d 0 R /registration %d 0 R>>\n", spot, over, cut, corners)
	} else {
		resources += ">>\n"
	}
	f.resources(resources)
	if t.tree != nil {
		claims = claimA
		catalog += fmt.Sprintf("/OutputIntents [<</Type /OutputIntent /S /GTS_PDFA1 /OutputConditionIdentifier (sRGB) /Info (sRGB) /DestOutputProfile %d 0 R>>]\n", icc)
		more, err := t.tree.finish(f)
		if err != nil {
			return err
		}
		catalog += more
	}
	if p := t.doc.Profile; t.shop && p != nil {
		claims = claimX
		out, err := f.stream(fmt.Sprintf("/N %d ", p.Inks), p.Data, true)
		if err != nil {
			return err
		}
		catalog += fmt.Sprintf("/OutputIntents [<</Type /OutputIntent /S /GTS_PDFX /OutputConditionIdentifier %s /Info %[1]s /DestOutputProfile %d 0 R>>]\n", literal(p.Name), out)
	}
	about, err := f.stream("/Type /Metadata /Subtype /XML ", metadata(t.doc, claims, id), false)
	if err != nil {
		return err
	}
	f.say(catalog+fmt.Sprintf("/Metadata %d 0 R\n", about), t.tree != nil)
	return nil
}

// literal writes ASCII text as a string; other letters are left out.
func literal(s string) string {
	b := []byte("(")
	for _, r := range s {
		switch {
		case r == '(' || r == ')' || r == '\\':
			b = append(b, '\\', byte(r))
		case r >= ' ' && r <= '~':
			b = append(b, byte(r))
		}
	}
	return string(append(b, ')'))
}

// add appends an object and gives its number.
func (f *file) add(body []byte) int {
	n := len(f.at)
	f.at = append(f.at, len(f.objects))
	f.objects = append(f.objects, object{number: n, parts: [][]byte{body}})
	return n
}

// stream appends a stream, packed or as it is.
func (f *file) stream(entries string, data []byte, packed bool) (int, error) {
	if packed {
		small, err := deflate(nil, data)
		if err != nil {
			return 0, err
		}
		entries, data = entries+"/Filter /FlateDecode ", small
	}
	return f.add(bytes.Join([][]byte{fmt.Appendf(nil, "<<%s/Length %d>>\nstream\n", entries, len(data)), data, []byte("\nendstream")}, nil)), nil
}

// resources adds entries to what every form and page draws with.
func (f *file) resources(entries string) {
	const form, shared = "/Resources \n<<", "<<\n/ProcSet "
	for i := range f.objects {
		o := &f.objects[i]
		switch {
		case o.is(formStart):
			if at := bytes.Index(o.parts[0], []byte(form)); at >= 0 {
				o.insert(at+len(form), entries)
			}
		case o.is(shared): // fpdf leaves its own colour spaces empty here
			o.parts[0] = bytes.Replace(o.parts[0], []byte("/ColorSpace <<\n>>\n"), nil, 1)
			o.insert(len("<<\n"), entries)
		}
	}
}

// insert puts text into an object that is one piece still.
func (o *object) insert(at int, text string) {
	b := o.parts[0]
	o.parts = [][]byte{bytes.Join([][]byte{b[:at], []byte(text), b[at:]}, nil)}
}

// say completes the catalog and tells in the information dictionary what XMP tells: the
// days are of UTC, and nothing is trapped. fpdf's empty list of attached files goes.
func (f *file) say(entries string, titled bool) {
	o := &f.objects[f.at[f.root]]
	if last := len(o.parts) - 1; last >= 0 {
		if at := bytes.Index(o.parts[last], []byte("/Names <<\n/EmbeddedFiles << /Names [\n  \n] >>\n>>\n")); at >= 0 {
			o.parts[last] = bytes.Join([][]byte{o.parts[last][:at], []byte(entries), []byte(">>")}, nil)
		}
	}
	if titled {
		o.parts[0] = bytes.Replace(o.parts[0], []byte("/PrintScaling /None"), []byte("/PrintScaling /None /DisplayDocTitle true"), 1)
	}
	info := &f.objects[f.at[f.info]]
	for _, key := range []string{"/CreationDate (D:", "/ModDate (D:"} {
		if at := bytes.LastIndex(info.parts[0], []byte(key)); at >= 0 {
			info.insert(at+len(key)+len("20060102150405"), "Z")
		}
	}
	info.insert(len("<<\n"), "/Trapped /False\n")
}
