// Package presstest checks printed output with tools that are not ours: it
// opens, reads and renders PDFs with PDFium (compiled to WebAssembly, nothing
// to install) and reads QR codes off the pictures with gozxing, a port of
// ZXing. Tests alone import it. Lengths count from the top left of the page.
package presstest

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// PDFium is one instance for the test process, used by one call at a time:
// starting it costs more than most tests.
var (
	start  sync.Once
	engine pdfium.Pdfium
	failed error
	mu     sync.Mutex
)

func instance(t testing.TB) pdfium.Pdfium {
	t.Helper()
	start.Do(func() {
		var pool pdfium.Pool
		pool, failed = webassembly.Init(webassembly.Config{
			MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: runtimeConfig(),
		})
		if failed == nil {
			engine, failed = pool.GetInstance(time.Minute)
		}
	})
	if failed != nil {
		t.Fatalf("presstest: PDFium does not start: %v", failed)
	}
	return engine
}

// runtimeConfig keeps the compiled module in the user's cache folder, so that
// only the first test process on a machine compiles it.
func runtimeConfig() wazero.RuntimeConfig {
	c := wazero.NewRuntimeConfig().WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	dir, err := os.UserCacheDir()
	if err != nil {
		return c
	}
	cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(dir, "jarmark-presstest"))
	if err != nil {
		return c
	}
	return c.WithCompilationCache(cache)
}

// File is an opened PDF.
type File struct {
	t   testing.TB
	pdf pdfium.Pdfium
	doc references.FPDF_DOCUMENT
}

// Open opens a PDF until the test ends, and fails the test if PDFium cannot
// or has to repair the cross-reference table.
func Open(t testing.TB, data []byte) *File {
	t.Helper()
	p := instance(t)
	mu.Lock()
	defer mu.Unlock()
	opened, err := p.OpenDocument(&requests.OpenDocument{File: &data})
	if err != nil {
		t.Fatalf("presstest: PDFium cannot open the file: %v", err)
	}
	f := &File{t: t, pdf: p, doc: opened.Document}
	t.Cleanup(f.close)
	valid, err := p.FPDF_DocumentHasValidCrossReferenceTable(
		&requests.FPDF_DocumentHasValidCrossReferenceTable{Document: f.doc})
	if err != nil || !valid.DocumentHasValidCrossReferenceTable {
		t.Fatalf("presstest: cross-reference table is not valid: %v", err)
	}
	return f
}

func (f *File) close() {
	mu.Lock()
	defer mu.Unlock()
	f.pdf.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: f.doc})
}

func (f *File) must(err error) {
	f.t.Helper()
	if err != nil {
		f.t.Fatalf("presstest: %v", err)
	}
}

func (f *File) page(i int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: f.doc, Index: i}}
}
