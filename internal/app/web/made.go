package web

import (
	"archive/zip"
	"bytes"
	"io"
	"io/fs"
	"net/http"
	"path"
	"slices"
	"sort"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// madeFile is a result in the folder out.
type madeFile struct{ Path, Name string }

// madeLot is the folder of one lot: what may be shown to all, and the rest.
type madeLot struct {
	Lot             string
	Public, Private []madeFile
}

type madePage struct {
	Lots     []madeLot
	Findings []job.Finding
}

// made lists what was made, to open it.
func (s *site) made(w http.ResponseWriter, r *http.Request) error {
	var p madePage
	entries, err := fs.ReadDir(s.folder.root.FS(), outDir)
	if err != nil {
		entries = nil // nothing made yet, or no folder: the page says so
	}
	for _, e := range entries {
		if !e.IsDir() || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		if lot := s.madeOf(e.Name()); len(lot.Public)+len(lot.Private) > 0 {
			p.Lots = append(p.Lots, lot)
		}
	}
	return s.show(w, r, "made.html", s.view("Made", "batches", p))
}

func (s *site) madeOf(lot string) madeLot {
	out := madeLot{Lot: lot}
	_ = fs.WalkDir(s.folder.root.FS(), path.Join(outDir, lot), func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(d.Name(), ".") || !d.Type().IsRegular() || madeKinds[path.Ext(at)] == "" {
			return nil // what cannot be read is not listed
		}
		name := strings.TrimPrefix(at, path.Join(outDir, lot)+"/")
		f := madeFile{at, name}
		if strings.HasPrefix(name, "record/") {
			out.Public = append(out.Public, f)
		} else {
			out.Private = append(out.Private, f)
		}
		return nil
	})
	return out
}

// madeKinds are the kinds of files that are opened, by their ending.
var madeKinds = map[string]string{".pdf": pdfType, ".svg": "image/svg+xml", ".png": "image/png", ".html": "text/html; charset=utf-8",
	".csv": "text/csv; charset=utf-8", ".txt": "text/plain; charset=utf-8", ".json": "text/plain; charset=utf-8"}

// recordPolicy lets a public page show its own style and pictures, and nothing
// else: it is a file of the folder, which anybody may have written.
const recordPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'; base-uri 'none'; form-action 'none'; sandbox"

// madeFileOf answers with one of them.
func (s *site) madeFileOf(w http.ResponseWriter, r *http.Request) error {
	name := path.Join(outDir, r.PathValue("path"))
	kind := madeKinds[path.Ext(name)]
	if kind == "" || strings.Contains(name, "/.") || !fs.ValidPath(name) {
		return errNotFound
	}
	f, err := s.folder.root.Open(name)
	if err != nil {
		return errNotFound
	}
	defer f.Close()
	if st, err := f.Stat(); err != nil || !st.Mode().IsRegular() {
		return errNotFound
	}
	data, err := io.ReadAll(f)
	if err != nil {
		return err
	}
	if err := sendFile(w, path.Base(name), kind, nil); err != nil {
		return err
	}
	if kind != pdfType {
		w.Header().Set("Content-Security-Policy", recordPolicy)
	}
	_, err = w.Write(data)
	return ignoreGone(err)
}

// publicZip is the public pages of all batches, to upload as they are: nothing
// private is in it.
func (s *site) publicZip(w http.ResponseWriter, r *http.Request) error {
	all, err := s.loadAll()
	if err != nil {
		return err
	}
	var fit []*job.Batch
	for _, b := range all.batches {
		if b.Cooked != nil && !b.Findings.Against(diag.Record).HasErrors() {
			fit = append(fit, b)
		}
	}
	pages, _ := s.env().Site(fit)
	if len(pages.Pages) == 0 {
		return &problem{http.StatusNotFound, "there is no public page yet", "a batch has one once its jars are filled and nothing in it is to mend"}
	}
	files := append(pages.Pages, pages.Index(nil, func(string) bool { return false })...)
	sort.Slice(files, func(i, j int) bool { return files[i].Name < files[j].Name })
	files = slices.DeleteFunc(files, func(f job.File) bool { return f.Name == job.LotsName })
	data, err := zipped(files)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", zipType)
	w.Header().Set("Content-Disposition", `attachment; filename="public-pages.zip"`)
	_, err = w.Write(data)
	return ignoreGone(err)
}

// zipped is a folder of files as one.
func zipped(files []job.File) ([]byte, error) {
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for _, f := range files {
		to, err := z.Create(f.Name)
		if err == nil {
			_, err = to.Write(f.Data)
		}
		if err != nil {
			return nil, err
		}
	}
	err := z.Close()
	return buf.Bytes(), err
}
