package pdf_test

import (
	"bytes"
	"fmt"
	"testing"

	qrcode "github.com/skip2/go-qrcode"
	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/kit/unit"
	"jarmark/testdata/demo"
)

// The same two runs with labels a maker prints: the demo's wrap in its own
// design, with every leaf of its ornaments, 10 000 of them. The reference
// draws the same marks label by label with fpdf alone.

func BenchmarkRealAlike(b *testing.B)          { benchmarkReal(b, realAlike(b, 10_000), pdf.Write) }
func BenchmarkRealAlikePlainFpdf(b *testing.B) { benchmarkReal(b, realAlike(b, 10_000), plainFpdf) }
func BenchmarkRealOwnCodes(b *testing.B)       { benchmarkReal(b, realOwnCodes(b, 10_000), pdf.Write) }
func BenchmarkRealOwnCodesPlainFpdf(b *testing.B) {
	benchmarkReal(b, realOwnCodes(b, 10_000), plainFpdf)
}

func benchmarkReal(b *testing.B, d *page.Doc, write writer) {
	b.ResetTimer()
	benchmark(b, d, write)
}

// realAlike is n labels of the demo batch as the program prints them.
func realAlike(tb testing.TB, n int) *page.Doc {
	tb.Helper()
	env, _, err := job.NewEnv(nil)
	if err != nil {
		tb.Fatal(err)
	}
	var in job.Input
	if in.Kitchen.Data, err = demo.FS.ReadFile("kitchen.toml"); err != nil {
		tb.Fatal(err)
	}
	if in.Batch.Data, err = demo.FS.ReadFile("strawberry-rhubarb.toml"); err != nil {
		tb.Fatal(err)
	}
	in.Kitchen.Name, in.Batch.Name = "kitchen.toml", "batch.toml"
	runs, found := env.Labels(env.Load(in, job.Choices{}), job.Choices{Copies: n, Size: "195 x 46 mm"})
	if len(runs) != 1 {
		tb.Fatalf("%d print runs: %v", len(runs), found)
	}
	return runs[0].Doc
}

// realOwnCodes gives every label its number and a code of its own in place of
// the common one.
func realOwnCodes(tb testing.TB, n int) *page.Doc {
	tb.Helper()
	d := realAlike(tb, n)
	bare := *d.Pages[0].Places[0].Frame
	var code *page.Code
	var items []page.Item
	for _, it := range bare.Items {
		if c, ok := it.(*page.Code); ok {
			code = c
			continue
		}
		items = append(items, it)
	}
	if code == nil {
		tb.Fatal("the label has no code")
	}
	bare.Items = items
	i := 0
	for p := range d.Pages {
		for k := range d.Pages[p].Places {
			i++
			own := *code
			own.Payload = fmt.Sprintf("%s%05d", code.Payload, i)
			q, err := qrcode.New(own.Payload, qrcode.Medium)
			if err != nil {
				tb.Fatal(err)
			}
			q.DisableBorder = true
			own.Modules = q.Bitmap()
			number := &page.Text{Face: regular, Size: unit.Points(7), Colour: code.Dark,
				At: page.Point{X: bare.Safe, Y: bare.H - bare.Safe}, Segs: []page.Seg{{S: fmt.Sprintf("%05d / %d", i, n)}}}
			d.Pages[p].Places[k].Frame, d.Pages[p].Places[k].Overlay = &bare, []page.Item{&own, number}
		}
	}
	return d
}

// TestRealReferenceDrawsTheSame: both ways print the same picture of the real
// label, so that the benchmarks compare like with like.
func TestRealReferenceDrawsTheSame(t *testing.T) {
	if testing.Short() {
		t.Skip("draws two pages at a high resolution")
	}
	d := realOwnCodes(t, 2)
	for i := range d.Pages {
		for k := range d.Pages[i].Places {
			if d.Pages[i].Places[k].Turn != 0 {
				t.Skip("the reference does not turn labels")
			}
		}
	}
	var plain bytes.Buffer
	if err := plainFpdf(&plain, d, faces(t)); err != nil {
		t.Fatal(err)
	}
	a, b := openRender(t, write(t, d)), openRender(t, plain.Bytes())
	differ := 0
	for i := range a.Pix {
		if v := int(a.Pix[i]) - int(b.Pix[i]); v > 128 || v < -128 {
			differ++
		}
	}
	if share := float64(differ) / float64(len(a.Pix)); share > 0.004 {
		t.Errorf("%.2f %% of the picture differs", 100*share)
	}
}
