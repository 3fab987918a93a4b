package web

import (
	"encoding/json"
	"net/http"
	"path"
	"path/filepath"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
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
	Error string   `json:"error,omitempty"`
}

// makeAll writes everything of some batches into out/LOT and streams its
// progress, one JSON value a line.
func (s *site) makeAll(w http.ResponseWriter, r *http.Request) error {
	var ask makeAsk
	err := readJSON(r, &ask)
	if err == nil && len(ask.Files) == 0 {
		ask.Files, _, err = s.folder.batches()
	}
	if err != nil {
		return err
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
		tell(s.makeOne(file, i, tell))
	}
	return nil
}

// makeOne makes and publishes one batch.
func (s *site) makeOne(file string, i int, tell func(step)) step {
	done := step{File: file, Done: i + 1}
	in, err := s.folder.input(file, nil)
	if err != nil {
		done.Error = s.explain(err).What
		return done
	}
	c := s.choices()
	c.Progress = func(part, parts int) { tell(step{File: file, Done: i, Part: part, Parts: parts}) }
	b := s.env.Load(in, c)
	found := b.Findings
	files, l, err := s.env.Make(b, c)
	found = append(found, l...)
	switch {
	case err != nil:
		done.Error = s.explain(err).What
	case len(files) == 0:
		done.Error = firstError(found)
	default:
		done.Made, err = s.publish(b.Cooked.Lot, files)
		if err != nil {
			done.Error = s.explain(err).What
		}
	}
	return done
}

// publish writes the files of a lot below out/, never through a link that
// leads elsewhere.
func (s *site) publish(lot string, files []job.File) (names []string, err error) {
	dir := path.Join(outDir, lot)
	var out []store.File
	for _, f := range files {
		name := path.Join(dir, f.Name)
		if !filepath.IsLocal(filepath.FromSlash(name)) {
			return nil, badRequest("%q is not a file of this folder", name)
		}
		if err := s.folder.root.MkdirAll(filepath.FromSlash(path.Dir(name)), 0o755); err != nil {
			return nil, err
		}
		out = append(out, store.File{Name: f.Name, Data: f.Data})
		names = append(names, name)
	}
	return names, store.Publish(filepath.Join(s.folder.dir, filepath.FromSlash(dir)), out)
}
