package job_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// load loads a demo batch that must be ready to print.
func load(t *testing.T, env *job.Env, in job.Input, c job.Choices) *job.Batch {
	t.Helper()
	b := env.Load(in, c)
	for _, d := range b.Findings {
		if d.Severity.String() == "error" {
			t.Fatalf("%s: %s", in.Batch.Name, d.Message)
		}
	}
	return b
}

// printed makes one print run and opens it with PDFium.
func printed(t *testing.T, env *job.Env, b *job.Batch, c job.Choices) (*presstest.File, *page.Doc) {
	t.Helper()
	runs, found := env.Labels(b, c)
	for _, d := range found {
		if d.Severity.String() == "error" {
			t.Fatalf("%s: %s", d.Message, d.Hint)
		}
	}
	if len(runs) != 1 {
		t.Fatalf("%d print runs, want 1", len(runs))
	}
	data, err := env.PDF(runs[0].Doc)
	if err != nil {
		t.Fatal(err)
	}
	return presstest.Open(t, data), runs[0].Doc
}

// TestLabelsSayWhatTheRulesAsk reads the demo's labels back with PDFium:
// every required statement is there, prescribed words letter by letter, and
// the file asks for no scaling (ISO 32000-1, 12.2, PrintScaling).
func TestLabelsSayWhatTheRulesAsk(t *testing.T) {
	env := builtin(t)
	for _, place := range []string{"us-or", "us-ca", "gb", "de", "fr"} {
		t.Run(place, func(t *testing.T) {
			in := demoInput(t, demoBatches[0])
			in.Kitchen.Data = append([]byte("permit = \"HK-4711\"\ncounty = \"Benton\"\n"), in.Kitchen.Data...)
			b := load(t, env, in, job.Choices{Place: place})
			f, doc := printed(t, env, b, job.Choices{})
			if !f.TrueSize() {
				t.Error("the file lets the print dialog scale")
			}
			place := doc.Pages[0].Places[0]
			for _, block := range b.Contents[0].Blocks {
				if !block.Required || block.Kind == label.Identity {
					continue // the identity is set as title and subtitle: see below
				}
				got, want := readBlock(t, f, place, block.ID), presstest.Squeeze(block.Text())
				if got != want && (block.Exact || !strings.EqualFold(got, want)) {
					t.Errorf("%s: the label says %q, not %q", block.ID, got, block.Text())
				}
			}
			text := f.Squeezed(0)
			for _, word := range []string{"strawberry", "rhubarb"} {
				if !strings.Contains(strings.ToLower(text), word) {
					t.Errorf("the name's %q is not on the label", word)
				}
			}
		})
	}
}

// TestPrescribedWords: the sentence Oregon prescribes (OAR 603-025-0325 and
// -0335), kept in testdata apart from the rule sets.
func TestPrescribedWords(t *testing.T) {
	env := builtin(t)
	b := load(t, env, demoInput(t, demoBatches[0]), job.Choices{})
	f, doc := printed(t, env, b, job.Choices{})
	ref, err := os.ReadFile("testdata/prescribed.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range strings.Split(strings.TrimSpace(string(ref)), "\n") {
		if !strings.HasPrefix(want, "#") && !anyBlock(t, f, doc.Pages[0].Places[0], want) {
			t.Errorf("not on the label: %q", want)
		}
	}
}

// grid is a sheet file as this test reads it, apart from internal/draw/sheet.
type grid struct {
	Paper, Cell, Pitch string
	Cols, Rows         int
	Margin             struct{ Left, Top string }
}

// inches reads "4 x 3 in" or "0.2 in" as millimetres.
func inches(t *testing.T, s string) (out []float64) {
	t.Helper()
	s, ok := strings.CutSuffix(s, " in")
	if !ok {
		t.Fatalf("%q is not in inches", s)
	}
	for _, p := range strings.Split(s, " x ") {
		var v float64
		if _, err := fmt.Sscan(p, &v); err != nil {
			t.Fatal(err)
		}
		out = append(out, v*25.4)
	}
	return out
}

// TestGeometryOnTheSheet compares where PDFium finds the labels' type with
// the sheet file, to 0.1 mm: Letter is 8.5 x 11 in (ANSI/ASME Y14.1), cells
// stand at margin + n x pitch, and the net quantity lies in the lowest 30 %
// of the panel (21 CFR 101.7(f)).
func TestGeometryOnTheSheet(t *testing.T) {
	const id = "letter-2x3-4x3in"
	var g grid
	if _, err := toml.DecodeFile("../../../templates/sheets/"+id+".toml", &g); err != nil {
		t.Fatal(err)
	}
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	in.Batch.Data = bytes.Replace(in.Batch.Data, []byte(`jar = "8 fl oz"`), []byte(`jar = "us12"`), 1) // tall enough for the sheet
	b := load(t, env, in, job.Choices{})
	f, doc := printed(t, env, b, job.Choices{Pieces: []label.Piece{label.Front}, Sheet: id})
	w, h := f.Size(0)
	near(t, "paper width", w.MM(), 8.5*25.4)
	near(t, "paper height", h.MM(), 11*25.4)
	cell, pitch := inches(t, g.Cell), inches(t, g.Pitch)
	left, top := inches(t, g.Margin.Left)[0], inches(t, g.Margin.Top)[0]
	frame := doc.Pages[0].Places[0].Frame
	img := f.Render(0, 300)
	const anchor = "Kitchen also handles almonds and milk."
	at, inFrame := f.Find(0, anchor), lineOf(t, frame, "advisory").At
	net, _ := b.Contents[0].Find(label.Net)
	line := lineOf(t, frame, net.ID)
	if len(at) != g.Cols*g.Rows {
		t.Fatalf("%q is on %d labels, want %d", anchor, len(at), g.Cols*g.Rows)
	}
	for i, c := range at {
		x0, y0 := left+float64(i%g.Cols)*pitch[0], top+float64(i/g.Cols)*pitch[1]
		near(t, fmt.Sprintf("label %d across", i), c.At.X.MM(), x0+inFrame.X.MM())
		near(t, fmt.Sprintf("label %d down", i), c.At.Y.MM(), y0+inFrame.Y.MM())
		// The net quantity is letter-spaced, and PDFium does not say where such
		// letters stand: its ink does.
		base, em := y0+line.At.Y.MM(), line.Size.MM()
		ink := inkBox(img, 300, x0+line.At.X.MM()-1, base-em, x0+(line.At.X+line.Box.W).MM()+1, base+em/3)
		if ink.left < x0+line.At.X.MM()-0.1 || ink.left > x0+line.At.X.MM()+em/5 || ink.bottom < base || ink.bottom > y0+cell[1]-2 {
			t.Errorf("label %d: the net quantity's ink is %+.2v, its line begins at %.2f, %.2f mm", i, ink, x0+line.At.X.MM(), base)
		}
		if ink.top < y0+0.7*cell[1] {
			t.Errorf("label %d: the net quantity begins %.1f mm down a panel of %.1f mm", i, ink.top-y0, cell[1])
		}
	}
	inside(t, f, doc)
}

// TestCodesLeadToTheRecord decodes every QR code of the demo's labels off
// pictures at two printers' resolutions with ZXing, a second implementation
// of ISO/IEC 18004, and wants the kitchen's record_url and the lot.
func TestCodesLeadToTheRecord(t *testing.T) {
	env := builtin(t)
	b := load(t, env, demoInput(t, demoBatches[0]), job.Choices{})
	f, doc := printed(t, env, b, job.Choices{})
	for i := range doc.Pages {
		codes := presstest.Codes(&doc.Pages[i])
		if len(codes) != len(doc.Pages[i].Places) {
			t.Errorf("page %d: %d codes on %d labels", i, len(codes), len(doc.Pages[i].Places))
		}
		for _, c := range codes {
			if c.Payload != "https://thornfield.example/jam/L26165-SR/" {
				t.Errorf("the code leads to %q", c.Payload)
			}
			if m := c.At.W / unit.Length(len(c.Modules)); m < 350*unit.Micrometre {
				t.Errorf("modules of %.3f mm, 0.35 is the least that scans from paper", m.MM())
			}
		}
		for _, dpi := range []int{150, 300} {
			for _, err := range presstest.DecodePage(f.Render(i, dpi), &doc.Pages[i], float64(dpi)) {
				t.Errorf("page %d at %d dpi: %v", i, dpi, err)
			}
		}
	}
}

// TestSameBytes: the same files give the same bytes, run after run and with
// many runs at once; SOURCE_DATE_EPOCH's date is the one in the file.
func TestSameBytes(t *testing.T) {
	env := builtin(t)
	c := job.Choices{Created: 1795564800}
	var first []job.File
	for run := range 3 {
		b := load(t, env, demoInput(t, demoBatches[0]), c)
		files, _, err := env.Make(b, c)
		if err != nil || len(files) == 0 {
			t.Fatal(err, len(files))
		}
		if run == 0 {
			first = files
			f := presstest.Open(t, files[0].Data)
			if got := f.Meta("CreationDate"); !strings.HasPrefix(got, "D:20261125000000") {
				t.Errorf("CreationDate %q", got)
			}
			continue
		}
		same(t, first, files)
	}
	var in []job.Input
	for i := range 12 {
		one := demoInput(t, demoBatches[0])
		one.Batch.Name = fmt.Sprintf("batch%d.toml", i)
		one.Batch.Data = append([]byte(fmt.Sprintf("lot = \"TEST-%02d\"\n", i)), one.Batch.Data...)
		in = append(in, one)
	}
	alone := map[int][]job.File{}
	for _, i := range []int{0, 5, 11} {
		files, _, _ := env.Make(load(t, env, in[i], c), c)
		alone[i] = files
	}
	n := 0
	for m := range env.MakeAll(in, c) {
		if m.Index != n || m.Err != nil || len(m.Files) == 0 {
			t.Fatalf("result %d is batch %d: %v, %d files", n, m.Index, m.Err, len(m.Files))
		}
		if want, ok := alone[n]; ok {
			same(t, want, m.Files)
		}
		n++
	}
	if n != len(in) {
		t.Errorf("%d of %d batches made", n, len(in))
	}
}

func same(t *testing.T, want, got []job.File) {
	t.Helper()
	if len(want) != len(got) {
		t.Fatalf("%d files, then %d", len(want), len(got))
	}
	for i := range want {
		if want[i].Name != got[i].Name || !bytes.Equal(want[i].Data, got[i].Data) {
			t.Errorf("%s differs between runs", want[i].Name)
		}
	}
}
