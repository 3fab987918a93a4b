package web

import (
	"encoding/json"
	"net/http"
	"path"
	"path/filepath"
	"slices"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// outDir is where everything of a batch is written, as `jarmark make` does.
const outDir = "out"

// makeAsk names the batches to make everything of; none means all.
type makeAsk struct {
	Files []string `json:"files"`
}

// step is one line of the stream that tells how far a run is. Part and Parts
// count the outputs of one batch.
type step struct {
	File  string   `json:"file"`
	Done  int      `json:"done"`
	Total int      `json:"total"`
	Part  int      `json:"part"`
	Parts int      `json:"parts"`
	Made  []string `json:"made,omitempty"`
	Told  []string `json:"told,omitempty"` // what became of results no longer made
	Error string   `json:"error,omitempty"`
}

// makeAll writes everything of some batches into out/LOT and streams its
// progress, one JSON value a line.
func (s *site) makeAll(w http.ResponseWriter, r *http.Request) error {
	var ask makeAsk
	if err := readJSON(r, &ask); err != nil {
		return err
	}
	all, err := s.loadAll() // together, so that two batches of one lot are found
	if err != nil {
		return err
	}
	if len(ask.Files) == 0 {
		ask.Files = all.names()
	}
	for _, f := range ask.Files {
		if err := checkName(f); err != nil {
			return err
		}
	}
	w.Header().Set("Content-Type", "application/x-ndjson")
	flow := http.NewResponseController(w)
	tell := func(st step) {
		st.Total = len(ask.Files)
		_ = json.NewEncoder(w).Encode(st) // a reader who went away ends the run below
		_ = flow.Flush()
	}
	for i, file := range ask.Files {
		if r.Context().Err() != nil {
			return nil
		}
		tell(s.makeOne(all, file, i, tell))
	}
	return nil
}

// makeOne makes and publishes one batch.
func (s *site) makeOne(all loaded, file string, i int, tell func(step)) step {
	done := step{File: file, Done: i + 1}
	at := slices.IndexFunc(all.batches, func(b *job.Batch) bool { return b.Input.Batch.Name == file })
	if at < 0 {
		_, err := s.folder.read(file)
		if done.Error = "it was written just now: do it again"; err != nil {
			done.Error = s.explain(err).What
		}
		return done
	}
	b := all.batches[at]
	c := s.choices()
	c.Progress = func(part, parts int) { tell(step{File: file, Done: i, Part: part, Parts: parts}) }
	found := append(append(diag.List(nil), b.Findings...), about(all.across, file)...)
	if found.HasErrors() {
		done.Error = firstError(found)
		return done
	}
	files, l, err := s.env().Make(b, c)
	switch {
	case err != nil:
		done.Error = s.explain(err).What
	case len(files) == 0:
		done.Error = firstError(append(found, l...))
	default:
		if done.Made, done.Told, err = s.publish(all, b, files); err != nil {
			done.Error = s.explain(err).What
		}
	}
	return done
}

// publish writes the files of a lot below out/, never through a link that
// leads elsewhere, and tells what it did beside.
func (s *site) publish(all loaded, b *job.Batch, files []job.File) (names, told []string, err error) {
	dir := path.Join(outDir, b.Cooked.Lot)
	for _, d := range []string{outDir, dir} {
		if st, err := s.folder.root.Lstat(d); err == nil && !st.IsDir() {
			return nil, nil, &problem{http.StatusForbidden, d + " is not an ordinary folder", "links out of the folder are not followed"}
		}
	}
	r := store.Results{Dir: s.folder.path(dir), Whole: true, Inputs: s.folder.inputs(all.batches)}
	for _, f := range files {
		name := path.Join(dir, f.Name)
		if !filepath.IsLocal(filepath.FromSlash(name)) {
			return nil, nil, badRequest("%q is not a file of this folder", name)
		}
		r.Files = append(r.Files, store.File{Name: f.Name, Data: f.Data, From: s.folder.path(b.Input.Batch.Name)})
		names = append(names, name)
	}
	did, err := store.Publish(r)
	for _, n := range did.Removed {
		told = append(told, path.Join(dir, n)+" is no longer made: removed")
	}
	for _, n := range did.Stale {
		told = append(told, path.Join(dir, n)+" is no longer made; it was changed by hand, so it stays")
	}
	return names, told, err
}
