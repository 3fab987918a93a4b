package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"strconv"
)

// What fpdf cannot be told to write. Print scaling is of PDF 1.6
// (ISO 32000-1, table 150), hence the version.
const (
	version     = "%PDF-1.6"
	preferences = "/ViewerPreferences << /PrintScaling /None >>\n"
	entrySize   = 20 // of one line of the cross-reference table
)

var errLayout = errors.New("the PDF library wrote an unexpected file layout")

// finish writes the file with the catalog completed. The catalog is the last
// object, so the only offset that moves is that of the cross-reference table;
// anything laid out differently is refused, not patched by guess.
func finish(w io.Writer, raw []byte) error {
	xref, startPos, err := findXref(raw)
	if err != nil {
		return err
	}
	cat, trailerDict, err := findCatalog(raw, xref)
	if err != nil {
		return err
	}
	sum := sha256.Sum256(raw)
	id := fmt.Sprintf("/ID [<%X> <%X>]\n", sum[:16], sum[:16])
	parts := [][]byte{
		[]byte(version), raw[len(version):cat],
		[]byte(preferences), raw[cat:trailerDict],
		[]byte(id), raw[trailerDict:startPos],
		fmt.Appendf(nil, "%d\n%%%%EOF\n", xref+len(preferences)),
	}
	for _, p := range parts {
		if _, err := w.Write(p); err != nil {
			return err
		}
	}
	return nil
}

// findXref gives the offset of the cross-reference table, and where in the
// file that offset is written.
func findXref(raw []byte) (xref, startPos int, err error) {
	const mark = "startxref\n"
	i := bytes.LastIndex(raw, []byte(mark))
	if i < 0 || !bytes.HasPrefix(raw, []byte("%PDF-1.")) || len(raw) < len(version) {
		return 0, 0, errLayout
	}
	startPos = i + len(mark)
	digits, rest, _ := bytes.Cut(raw[startPos:], []byte("\n"))
	xref, err = strconv.Atoi(string(digits))
	if err != nil || xref <= 0 || xref >= i || string(rest) != "%%EOF\n" || !bytes.HasPrefix(raw[xref:], []byte("xref\n0 ")) {
		return 0, 0, errLayout
	}
	return xref, startPos, nil
}

// findCatalog gives the offset inside the catalog, after its type, and the
// offset inside the trailer dictionary where more entries may be written.
func findCatalog(raw []byte, xref int) (catalog, trailer int, err error) {
	head, _, _ := bytes.Cut(raw[xref+len("xref\n"):], []byte("\n"))
	var first, count, root int
	if _, err := fmt.Sscanf(string(head), "%d %d", &first, &count); err != nil || first != 0 || count < 2 {
		return 0, 0, errLayout
	}
	table := xref + len("xref\n") + len(head) + 1
	end := table + count*entrySize
	const open = "trailer\n<<\n"
	if end > len(raw) || !bytes.HasPrefix(raw[end:], []byte(open)) {
		return 0, 0, errLayout
	}
	trailer = end + len(open)
	_, dict, _ := bytes.Cut(raw[trailer:], []byte("/Root "))
	if _, err := fmt.Sscanf(string(dict[:min(len(dict), 24)]), "%d 0 R", &root); err != nil || root < 1 || root >= count {
		return 0, 0, errLayout
	}
	at := offsetOf(raw, table, root)
	for n := 1; n < count; n++ {
		if o := offsetOf(raw, table, n); o < 0 || o > at {
			return 0, 0, errLayout
		}
	}
	start := fmt.Sprintf("%d 0 obj\n<<\n/Type /Catalog\n", root)
	if at+len(start) > xref || string(raw[at:at+len(start)]) != start {
		return 0, 0, errLayout
	}
	return at + len(start), trailer, nil
}

func offsetOf(raw []byte, table, n int) int {
	line := raw[table+n*entrySize:]
	v, err := strconv.Atoi(string(line[:10]))
	if err != nil {
		return -1
	}
	return v
}
