package pdf

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// What fpdf cannot be told to write. Print scaling is of PDF 1.6
// (ISO 32000-1, table 150), hence the version.
const (
	version     = "%PDF-1.6"
	preferences = "/ViewerPreferences << /PrintScaling /None >>\n"
	entrySize   = 20 // of one line of the cross-reference table
	formStart   = "<</Type /XObject\n/Subtype /Form\n"
	eightBit    = "\n%\xE2\xE3\xCF\xD3" // what sends the file takes it for bytes, not text (ISO 32000-1, 7.5.2)
)

var errLayout = errors.New("the PDF library wrote an unexpected file layout")

// finish writes the file with the catalog completed, the fonts in the places
// kept for them, and the forms, which are packed already, marked so. A file laid
// out otherwise than expected is refused before anything is written.
func finish(w io.Writer, raw []byte, fonts []*typeface, t *trade) error {
	f, err := takeApart(raw)
	if err != nil {
		return err
	}
	sum := sha256.New()
	sum.Write(raw)
	for _, t := range fonts {
		sum.Write(t.Data)
		if err := f.font(t); err != nil {
			return err
		}
	}
	if err := f.catalog(); err != nil {
		return err
	}
	id := sum.Sum(nil)[:16]
	if err := t.finish(f, id); err != nil {
		return err
	}
	f.forms()
	return f.write(w, id)
}

// file is what fpdf wrote, object by object.
type file struct {
	head       []byte // before the first object
	objects    []object
	at         []int // by number: index in objects; -1 where there is none
	root, info int
}

// object is one numbered object: the bytes between "N 0 obj\n" and "\nendobj\n",
// in pieces.
type object struct {
	number int
	parts  [][]byte
}

func (o *object) is(prefix string) bool {
	return len(o.parts) == 1 && bytes.HasPrefix(o.parts[0], []byte(prefix))
}

// takeApart finds the objects by the cross-reference table.
func takeApart(raw []byte) (*file, error) {
	xref, err := findXref(raw)
	if err != nil {
		return nil, err
	}
	head, _, _ := bytes.Cut(raw[xref+len("xref\n"):], []byte("\n"))
	zero, many, _ := strings.Cut(string(head), " ")
	count, err := strconv.Atoi(many)
	if err != nil || zero != "0" || count < 2 {
		return nil, errLayout
	}
	table := xref + len("xref\n") + len(head) + 1
	if count > (len(raw)-table)/entrySize {
		return nil, errLayout
	}
	f := &file{at: make([]int, count)}
	if err := f.trailer(raw[table+count*entrySize:]); err != nil {
		return nil, err
	}
	starts := make([]object, count-1)
	offset := make([]int, count)
	for n := 1; n < count; n++ {
		starts[n-1].number, offset[n] = n, offsetOf(raw, table, n)
	}
	slices.SortFunc(starts, func(a, b object) int { return cmp.Compare(offset[a.number], offset[b.number]) })
	f.objects = starts
	for i := range f.objects {
		o, end := &f.objects[i], xref
		if i+1 < len(f.objects) {
			end = offset[f.objects[i+1].number]
		}
		if err := o.cut(raw, offset[o.number], end); err != nil {
			return nil, err
		}
		f.at[o.number] = i
	}
	f.head = raw[len(version):offset[f.objects[0].number]]
	return f, nil
}

// cut takes the object's bytes out of the file.
func (o *object) cut(raw []byte, from, to int) error {
	start, end := fmt.Sprintf("%d 0 obj\n", o.number), []byte("\nendobj\n")
	if from < len(version) || to > len(raw) || from+len(start)+len(end) > to ||
		string(raw[from:from+len(start)]) != start || !bytes.HasSuffix(raw[from:to], end) {
		return errLayout
	}
	o.parts = [][]byte{raw[from+len(start) : to-len(end)]}
	return nil
}

// findXref gives the offset of the cross-reference table.
func findXref(raw []byte) (int, error) {
	const mark = "startxref\n"
	i := bytes.LastIndex(raw, []byte(mark))
	if i < 0 || !bytes.HasPrefix(raw, []byte("%PDF-1.")) || len(raw) < len(version) {
		return 0, errLayout
	}
	digits, rest, _ := bytes.Cut(raw[i+len(mark):], []byte("\n"))
	xref, err := strconv.Atoi(string(digits))
	if err != nil || xref <= 0 || xref >= i || string(rest) != "%%EOF\n" || !bytes.HasPrefix(raw[xref:], []byte("xref\n0 ")) {
		return 0, errLayout
	}
	return xref, nil
}

// trailer reads which objects are catalog and information dictionary.
func (f *file) trailer(raw []byte) error {
	rest, size := string(raw[:min(len(raw), 120)]), 0
	for _, part := range []struct {
		before string
		n      *int
	}{{"trailer\n<<\n/Size ", &size}, {"\n/Root ", &f.root}, {" 0 R\n/Info ", &f.info}} {
		after, ok := strings.CutPrefix(rest, part.before)
		digits := after[:len(after)-len(strings.TrimLeft(after, "0123456789"))]
		var err error
		if *part.n, err = strconv.Atoi(digits); err != nil || !ok {
			return errLayout
		}
		rest = after[len(digits):]
	}
	if !strings.HasPrefix(rest, " 0 R\n>>\nstartxref\n") || size != len(f.at) || f.root < 1 || f.root >= size || f.info < 1 || f.info >= size {
		return errLayout
	}
	return nil
}

func offsetOf(raw []byte, table, n int) int {
	v, err := strconv.Atoi(string(raw[table+n*entrySize:][:10]))
	if err != nil {
		return -1
	}
	return v
}

// catalog asks the print dialog for true size.
func (f *file) catalog() error {
	const start = "<<\n/Type /Catalog\n"
	o := &f.objects[f.at[f.root]]
	if !o.is(start) {
		return errLayout
	}
	o.parts = [][]byte{[]byte(start + preferences), o.parts[0][len(start):]}
	return nil
}

// font puts a typeface in the place of the three objects kept for it.
func (f *file) font(t *typeface) error {
	for i := range f.objects {
		o := &f.objects[i]
		if !o.is("<</Type /Font\n/BaseFont /" + t.tag + "\n") {
			continue
		}
		n, last := o.number, len(f.at)
		if n+2 >= last || !f.objects[f.at[n+1]].is("[") || !f.objects[f.at[n+2]].is("<</Type /FontDescriptor /FontName /"+t.tag+" ") {
			return errLayout
		}
		numbers := [5]int{n, n + 1, n + 2, last, last + 1}
		bodies, err := t.objects(numbers)
		if err != nil {
			return err
		}
		for j, body := range bodies {
			if j >= 3 {
				f.at = append(f.at, len(f.objects))
				f.objects = append(f.objects, object{number: numbers[j]})
			}
			f.objects[f.at[numbers[j]]].parts = [][]byte{body}
		}
		return nil
	}
	return errLayout
}

// forms says of every form that it is packed.
func (f *file) forms() {
	for i := range f.objects {
		if o := &f.objects[i]; o.is(formStart) {
			o.parts = [][]byte{[]byte("<</Filter /FlateDecode\n"), o.parts[0][len("<<"):]}
		}
	}
}

// write lays the objects out anew with their table (ISO 32000-1, 7.5).
func (f *file) write(w io.Writer, id []byte) error {
	c := &counted{w: w}
	c.put([]byte(version+eightBit), f.head)
	offsets := make([]int, len(f.at))
	for _, o := range f.objects {
		offsets[o.number] = c.n
		c.put(fmt.Appendf(nil, "%d 0 obj\n", o.number))
		c.put(o.parts...)
		c.put([]byte("\nendobj\n"))
	}
	xref := c.n
	table := fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", len(f.at))
	for _, at := range offsets[1:] {
		table = fmt.Appendf(table, "%010d 00000 n \n", at)
	}
	c.put(table, fmt.Appendf(nil, "trailer\n<<\n/ID [<%X> <%X>]\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n>>\nstartxref\n%d\n%%%%EOF\n",
		id, id, len(f.at), f.root, f.info, xref))
	return c.err
}

// counted is a writer that knows how far it is, and stops at the first error.
type counted struct {
	w   io.Writer
	n   int
	err error
}

func (c *counted) put(parts ...[]byte) {
	for _, p := range parts {
		if c.err != nil {
			return
		}
		_, c.err = c.w.Write(p)
		c.n += len(p)
	}
}
