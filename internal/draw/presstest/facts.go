package presstest

import (
	"image"
	"image/draw"

	"github.com/klippa-app/go-pdfium/requests"

	"jarmark/internal/kit/unit"
)

// Pages counts the pages.
func (f *File) Pages() int {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	r, err := f.pdf.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: f.doc})
	f.must(err)
	return r.PageCount
}

// Size gives the media box of page i (from 0).
func (f *File) Size(i int) (w, h unit.Length) {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	r, err := f.pdf.FPDF_GetPageSizeByIndexF(&requests.FPDF_GetPageSizeByIndexF{Document: f.doc, Index: i})
	f.must(err)
	return unit.Points(float64(r.Size.Width)), unit.Points(float64(r.Size.Height))
}

// Meta gives an entry of the information dictionary: "Title", "CreationDate".
func (f *File) Meta(key string) string {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	r, err := f.pdf.FPDF_GetMetaText(&requests.FPDF_GetMetaText{Document: f.doc, Tag: key})
	f.must(err)
	return r.Value
}

// Lang gives the language of the catalog.
func (f *File) Lang() string {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	r, err := f.pdf.FPDFCatalog_GetLanguage(&requests.FPDFCatalog_GetLanguage{Document: f.doc})
	f.must(err)
	return r.Language
}

// TrueSize reports whether the catalog asks the print dialog not to scale
// (/PrintScaling /None).
func (f *File) TrueSize() bool {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	r, err := f.pdf.FPDF_VIEWERREF_GetPrintScaling(&requests.FPDF_VIEWERREF_GetPrintScaling{Document: f.doc})
	f.must(err)
	return !r.PreferPrintScaling
}

// Render draws page i on white at a resolution.
func (f *File) Render(i, dpi int) *image.RGBA {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	r, err := f.pdf.RenderPageInDPI(&requests.RenderPageInDPI{Page: f.page(i), DPI: dpi})
	f.must(err)
	defer r.CleanupFunc() // the pixels belong to PDFium until here
	src := r.Result.RenderedImage
	out := image.NewRGBA(image.Rect(0, 0, src.Bounds().Dx(), src.Bounds().Dy()))
	draw.Draw(out, out.Bounds(), src, src.Bounds().Min, draw.Src)
	return out
}
