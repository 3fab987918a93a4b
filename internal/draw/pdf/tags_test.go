package pdf_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
)

// listDoc is a list of two pages: a title, a table that goes over both, and a line at the
// foot of each that nobody reads out.
func listDoc() *page.Doc {
	word := func(tag int32, x, y float64, s string) page.Item {
		w := line(regular, 10, x, y, ink, s)
		w.Tag = tag
		return w
	}
	d := &page.Doc{Title: "Packing <list> & more", Author: "Thornfield Lane", Lang: "en", Created: 1_790_000_000,
		Tags: []page.Tag{{Role: "H1"}, {Role: "Table"}, {Role: "TR", Parent: 2}, {Role: "TH", Parent: 3}, {Role: "TH", Parent: 3},
			{Role: "TR", Parent: 2}, {Role: "TD", Parent: 6}, {Role: "TD", Parent: 6}, {Role: "P"}, {Role: "P"}}}
	first := []page.Item{word(1, 20, 20, "Packing"), word(1, 60, 20, "list"), filled(box(20, 22, 100, 0.3), ink),
		word(4, 20, 30, "jar"), word(5, 60, 30, "count"), word(9, 20, 50, "a note that"), word(0, 20, 280, "1 / 2")}
	second := []page.Item{word(9, 20, 20, "goes on"), word(7, 20, 30, "8 fl oz"), word(8, 60, 30, "12"), word(0, 20, 280, "2 / 2")}
	d.Pages = []page.Page{{W: mm(210), H: mm(297), Marks: first}, {W: mm(210), H: mm(297), Marks: second}}
	return d
}

// TestListsAreTagged: what PDF/A-2a asks (ISO 19005-2, by the clauses and test numbers of
// the veraPDF profile PDFA-2A.xml, github.com/veraPDF/veraPDF-validation-profiles, read 27
// November 2026) that can be read off the objects; veraPDF itself was not run.
func TestListsAreTagged(t *testing.T) {
	data := write(t, listDoc())
	presstest.Open(t, data)
	o, file := readObjects(t, data), string(data)
	if !strings.HasPrefix(file, "%PDF-1.6\n%\xE2\xE3\xCF\xD3\n") { // 6.1.2-1, -2
		t.Errorf("begins %q", file[:20])
	}
	if !regexp.MustCompile(`/ID \[<[0-9A-F]{32}> <[0-9A-F]{32}>\]`).MatchString(o.trailer()) || !strings.HasSuffix(file, "%%EOF\n") { // 6.1.3-1, -3
		t.Error(o.trailer())
	}
	for _, banned := range []string{"/Encrypt", "/LZWDecode", "/AA", "/OpenAction", "/JavaScript", "/EmbeddedFiles", "/Annots", "/NeedsRendering", "/Group", "/SMask"} { // 6.1.3-2, 6.1.7-4, 6.5, 6.8, 6.2.10
		if strings.Contains(file, banned) {
			t.Errorf("the file has %s", banned)
		}
	}
	cat := o.catalog()
	icc := o.data[o.follow(cat, "/DestOutputProfile")]
	if after(cat, "/S") != "/GTS_PDFA1 " || len(icc) < 132 || icc[12:20] != "mntrRGB " || icc[8] > 4 { // 6.2.3-1, 6.2.4.2-1, 6.2.4.3-2
		t.Errorf("output intent: %s", cat)
	}
	if after(cat, "/Marked") != "true" || !strings.Contains(cat, "/Lang (en)") { // 6.7.2.2-1, 6.7.4-1
		t.Error(cat)
	}
	x := o.says()
	for key, want := range map[string]string{ // 6.6.4-1 to -3, and 6.6.2.3: as the information dictionary has it
		"http://www.aiim.org/pdfa/ns/id/part": "2", "http://www.aiim.org/pdfa/ns/id/conformance": "A",
		"http://purl.org/dc/elements/1.1/title": "Packing <list> & more", "http://purl.org/dc/elements/1.1/creator": "Thornfield Lane",
		"http://ns.adobe.com/xap/1.0/CreatorTool": "jarmark", "http://ns.adobe.com/pdf/1.3/Producer": "jarmark, fpdf",
	} {
		if x[key] != want {
			t.Errorf("XMP %s: %q, want %q", key, x[key], want)
		}
	}
	got := tell(o, o.by[o.follow(o.by[o.follow(cat, "/StructTreeRoot")], "/K")])
	want := "Document(H1[Packing list ] Table(TR(TH[jar ] TH[count ]) TR(TD[8 fl oz ] TD[12 ])) P[a note that goes on ])"
	if got != want {
		t.Errorf("read out:\n%s\nwant\n%s", got, want)
	}
	everythingMarked(t, o)
}

// everythingMarked: every piece of every page is a part or is not read out, and the tree
// of the way back knows each part by its number (ISO 32000-1, 14.7.4.4, 14.8.2.2).
func everythingMarked(t *testing.T, o *objects) {
	t.Helper()
	back := o.by[o.follow(o.by[o.follow(o.catalog(), "/StructTreeRoot")], "/ParentTree")]
	for i, p := range o.pages() {
		if strings.TrimSpace(after(p, "/StructParents")) != strconv.Itoa(i) {
			t.Errorf("page %d: %s", i+1, p)
		}
		content, open, pieces := o.data[o.follow(p, "/Contents")], 0, 0
		for _, l := range strings.Split(content, "\n") {
			switch {
			case strings.HasSuffix(l, "BDC"):
				pieces++
				open++
			case strings.HasSuffix(l, "BMC"):
				open++
			case strings.HasSuffix(l, "EMC"):
				open--
			case open == 0 && (strings.HasSuffix(l, "ET") || strings.HasSuffix(l, " f")):
				t.Errorf("page %d: unmarked %q", i+1, l)
			}
		}
		row := regexp.MustCompile(fmt.Sprintf(`[\[ ]%d \[([0-9R ]*)\]`, i)).FindStringSubmatch(back)
		if open != 0 || row == nil || strings.Count(row[1], "R") != pieces {
			t.Errorf("page %d: %d open, %d pieces, way back %q of %q", i+1, open, pieces, row, back)
		}
	}
}

// tell reads the tree out: roles, and the words of the marked pieces.
func tell(o *objects, element string) string {
	out := strings.TrimSpace(strings.TrimPrefix(after(element, "/S"), "/"))
	var below []string
	_, kids, _ := strings.Cut(element, "/K [")
	words := ""
	for _, m := range regexp.MustCompile(`<</Type /MCR /Pg (\d+) 0 R /MCID (\d+)>>|(\d+) 0 R `).FindAllStringSubmatch(kids, -1) {
		if m[3] != "" {
			n, _ := strconv.Atoi(m[3])
			below = append(below, tell(o, o.by[n]))
			continue
		}
		pg, _ := strconv.Atoi(m[1])
		words += piece(o, o.by[pg], m[2])
	}
	if words != "" {
		return out + "[" + words + "]"
	}
	return out + "(" + strings.Join(below, " ") + ")"
}

// piece gives the words of one marked piece of a page, by the letters its font says its
// codes stand for.
func piece(o *objects, pg, id string) (words string) {
	_, s, _ := strings.Cut(o.data[o.follow(pg, "/Contents")], "<</MCID "+id+">> BDC\n")
	s, _, _ = strings.Cut(s, "EMC")
	letters := map[string]string{}
	for n, dict := range o.by {
		if strings.HasPrefix(o.data[n], "/CIDInit") && !strings.Contains(dict, "Font") {
			for _, m := range regexp.MustCompile(`<([0-9A-F]{4})> <([0-9A-F]{4})>\n`).FindAllStringSubmatch(o.data[n], -1) {
				r, _ := strconv.ParseInt(m[2], 16, 32)
				letters[m[1]] = string(rune(r))
			}
		}
	}
	for _, m := range regexp.MustCompile(`<([0-9A-F]+)> Tj`).FindAllStringSubmatch(s, -1) {
		for k := 0; k+4 <= len(m[1]); k += 4 {
			words += letters[m[1][k:k+4]]
		}
	}
	return words
}

// TestTagsOfPartsOfADocument: a part of a long list has no element for what is on other
// pages, and labels are not tagged.
func TestTagsOfPartsOfADocument(t *testing.T) {
	d := listDoc()
	d.Pages = d.Pages[1:]
	o := readObjects(t, write(t, d))
	got := tell(o, o.by[o.follow(o.by[o.follow(o.catalog(), "/StructTreeRoot")], "/K")])
	if want := "Document(Table(TR(TD[8 fl oz ] TD[12 ])) P[goes on ])"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	both := repeated(t, 1)
	both.Tags = listDoc().Tags
	if o := readObjects(t, write(t, both)); strings.Contains(o.catalog(), "MarkInfo") {
		t.Error("labels are tagged, and nobody said how they read")
	}
}

// TestFollowedKeepsParts: a list behind another is told of its own parts.
func TestFollowedKeepsParts(t *testing.T) {
	d := listDoc().Followed(listDoc())
	o := readObjects(t, write(t, d))
	got := tell(o, o.by[o.follow(o.by[o.follow(o.catalog(), "/StructTreeRoot")], "/K")])
	one := "H1[Packing list ] Table(TR(TH[jar ] TH[count ]) TR(TD[8 fl oz ] TD[12 ])) P[a note that goes on ]"
	if want := "Document(" + one + " " + one + ")"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
