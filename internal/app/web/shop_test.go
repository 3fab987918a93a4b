package web

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"net/http"
	"strings"
	"testing"
)

// fetched prints and gives the file and its name.
func fetched(t *testing.T, h http.Handler, ask printAsk) (string, []byte, http.Header) {
	t.Helper()
	ask.File, ask.Text = "plum.toml", plum
	p := call[printed](t, h, "/do/print", ask, 200)
	w := do(h, request("GET", "/"+p.URL, nil))
	if w.Code != http.StatusOK {
		t.Fatalf("%s: %d", p.Name, w.Code)
	}
	return p.Name, w.Body.Bytes(), w.Header()
}

// TestFilesForOthers: what the command line makes for a print shop or a cutting machine
// the page makes too, and refuses the same.
func TestFilesForOthers(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	name, data, _ := fetched(t, h, printAsk{Pieces: []string{"front"}, forOthers: forOthers{Trimmed: true, CutLines: true}})
	if name != "plum-labels.pdf" || !bytes.Contains(data, []byte("/TrimBox")) || !bytes.Contains(data, []byte("(registration)")) {
		t.Errorf("%s is not for a print shop", name)
	}
	name, data, head := fetched(t, h, printAsk{Pieces: []string{"front"}, forOthers: forOthers{As: "svg", CutLines: true}})
	if !strings.HasSuffix(name, ".svg") || head.Get("Content-Type") != "image/svg+xml" || !bytes.Contains(data, []byte(`id="cut-lines"`)) {
		t.Errorf("%s, %s: no lines to cut", name, head.Get("Content-Type"))
	}
	for _, dpi := range []int{72, 144} {
		name, data, head = fetched(t, h, printAsk{Pieces: []string{"front"}, Copies: 1, forOthers: forOthers{As: "png", DPI: dpi}})
		i := bytes.Index(data, []byte("pHYs"))
		if !strings.HasSuffix(name, ".png") || head.Get("Content-Type") != "image/png" || i < 0 || (int(binary.BigEndian.Uint32(data[i+4:]))*254+5000)/10000 != dpi {
			t.Errorf("%s of %d dots an inch", name, dpi)
		}
	}
	name, data, head = fetched(t, h, printAsk{Pieces: []string{"front"}, Copies: 30, forOthers: forOthers{As: "svg"}})
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil || !strings.HasSuffix(name, ".zip") || head.Get("Content-Type") != "application/zip" || len(z.File) < 2 {
		t.Errorf("%s of several pages: %v", name, err)
	}
	for _, bad := range []forOthers{{As: "exe"}, {As: "zip"}, {As: "png", CutLines: true}, {DPI: 5}, {Profile: []byte("x")}, {As: "svg", Trimmed: true, Profile: []byte("x")}} {
		call[problem](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum, forOthers: bad}, 400)
	}
	b := call[blocked](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum, forOthers: forOthers{Trimmed: true, Profile: []byte("no profile")}}, 422)
	if !strings.Contains(b.Error, "profile") || len(b.Findings) == 0 {
		t.Errorf("%+v", b)
	}
	if w := do(h, request("GET", "/print/x/y.html", nil)); w.Code != http.StatusNotFound {
		t.Error("a page is served as a print")
	}
}
