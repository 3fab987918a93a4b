package proof

import (
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/marktest"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// everyLine is a proof with a line of each verdict, and labels that lie across
// the paper, upright and turned. Names and laws are our own invention.
func everyLine(lang string) Proof {
	mm := unit.Millimetre
	line := func(kind label.Kind, on label.Measure, least, got unit.Length, printed bool, letter string) Line {
		return Line{Line: inspect.Line{Block: label.Block{Kind: kind, Min: label.Height{On: on, Length: least}, Cite: "Act 1", Bold: true, Exact: got > least, Runs: []label.Run{{Text: strings.Repeat("Plum jam of plums ", 9)}}},
			Letter: letter, Got: got, Printed: printed, Face: table.PlainFace, Size: 3 * mm}, Confidence: "primary", ReadOn: "2026-11-27"}
	}
	frame := func(name string, w, h unit.Length, shape page.Shape) page.Placement {
		return page.Placement{Frame: &page.Frame{Name: name, W: w, H: h, Shape: shape}}
	}
	return Proof{Name: "Plum jam", Lot: "L26165-PL", Maker: "Fernhollow Kitchen", Place: "Oregon", Design: "orchard", American: lang == "en",
		Law:    label.Content{Lang: lang, JarText: "8 fl oz", PanelArea: 4000},
		Labels: []page.Placement{frame("wrap", 180*mm, 50*mm, ""), frame("lid", 60*mm, 60*mm, page.Ellipse), frame("seal", 190*mm, 30*mm, page.Rectangle)},
		Lines: []Line{
			line(label.Net, label.AnyCase, unit.Inch/16, 2*mm, true, "o"), line(label.Identity, label.AnyCase, 4*mm, 3*mm, true, "x"), line(label.Lot, label.XHeight, 1200*unit.Micrometre, 0, false, ""), line(label.Maker, label.PointSize, unit.Points(10), unit.Points(10), true, ""),
			line(label.Storage, label.XHeight, 0, 1*mm, true, "H"), line(label.Date, label.XHeight, 5*mm, 9*mm, true, "M"), line(label.Caution, label.XHeight, 12*mm, 12*mm, true, "M"), line(label.Sugar, label.XHeight, 2*mm, 1900*unit.Micrometre, true, "o"),
		},
		Allergens: []label.Why{{Name: "milk", From: []string{"butter", "cream"}}, {Name: "egg", From: []string{strings.Repeat("eggs of hens ", 12)}}}, None: true, Doubt: []string{"moonstone", "stardust"},
		Keeping: []string{"full sugar", "processed"}, Wrong: []string{"the lot is missing", strings.Repeat("too small by far ", 12)}}
}

// Where each mark of a proof stands, as it was looked at and found right: upright
// and lying paper, one proof and two, and one with nothing to say.
func TestWhereEachMarkOfAProofStands(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	wide := everyLine("en")
	wide.Name = strings.Repeat("A long name of a plum jam ", 3)
	wide.Labels[0].Frame.W = 215 * unit.Millimetre
	bare := Proof{Name: "Plum jam", Law: label.Content{Lang: "en"}}
	upright := everyLine("de")
	upright.Labels[2].Frame.W = 198 * unit.Millimetre // all of an A4 sheet that prints
	var all strings.Builder
	for _, x := range []struct {
		paper  string
		proofs []Proof
	}{{"letter", []Proof{everyLine("en"), bare}}, {"a4", []Proof{upright}}, {"letter", []Proof{bare, wide}}, {"a4", []Proof{everyLine("fr"), everyLine("fr")}}} {
		d, found := Doc(x.proofs, fs, x.paper)
		if d == nil {
			t.Fatal(found)
		}
		all.WriteString(marktest.Drawn(d))
	}
	marktest.Same(t, "testdata/proof.txt", all.String())
	if d, l := Doc(nil, fs, "a4"); d != nil || l != nil {
		t.Errorf("%v %v", d, l)
	}
	if d, l := Doc([]Proof{bare}, fs, "a3"); d != nil || !l.HasErrors() {
		t.Errorf("%v %v", d, l)
	}
}
