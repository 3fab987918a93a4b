package web

import (
	"net/http"
	"sync"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// imageCache remembers small pictures of the pickers by what they show.
type imageCache struct {
	sync.Mutex
	m map[string][]byte
}

// maxImages bounds the cache; a picture is some tens of kilobytes.
const maxImages = 400

func (c *imageCache) get(key string, draw func() ([]byte, error)) ([]byte, error) {
	c.Lock()
	data, ok := c.m[key]
	c.Unlock()
	if ok {
		return data, nil
	}
	data, err := draw()
	if err != nil {
		return nil, err
	}
	c.Lock()
	defer c.Unlock()
	if c.m == nil || len(c.m) >= maxImages {
		c.m = map[string][]byte{}
	}
	c.m[key] = data
	return data, nil
}

// picture answers with a small drawing: of a design or piece on the maker's
// own batch (?batch=FILE) or on a sample, of a sheet, or of a batch.
func (s *site) picture(w http.ResponseWriter, r *http.Request) error {
	what, id := r.PathValue("what"), r.PathValue("id")
	in, err := s.pictured(what, id, r.URL.Query().Get("batch"))
	if err != nil {
		return err
	}
	key := what + "/" + id + "/" + mark(in.Batch.Data) + mark(in.Kitchen.Data) + s.own.version()
	data, err := s.images.get(key, func() ([]byte, error) { return s.drawPicture(what, id, in) })
	if err != nil {
		return err
	}
	tag := `"` + mark(data) + `"`
	w.Header().Set("Cache-Control", "no-cache")
	w.Header().Set("ETag", tag)
	if r.Header.Get("If-None-Match") == tag {
		w.WriteHeader(http.StatusNotModified)
		return nil
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	_, err = w.Write(data)
	return ignoreGone(err)
}

// pictured is the batch a picture shows; the zero Input means the sample.
func (s *site) pictured(what, id, file string) (job.Input, error) {
	if what == "batch" {
		file = id
	}
	if file == "" {
		return job.Input{}, nil
	}
	return s.folder.input(file, nil)
}

func (s *site) drawPicture(what, id string, in job.Input) ([]byte, error) {
	if what == "sheet" {
		data, ok := s.env().SheetPicture(id)
		if !ok {
			return nil, errNotFound
		}
		return data, nil
	}
	c := s.choices()
	draw := func(b *job.Batch) ([]byte, diag.List) { return nil, nil }
	switch what {
	case "design":
		draw = func(b *job.Batch) ([]byte, diag.List) { return s.env().DesignPicture(b, id, c) }
	case "piece":
		draw = func(b *job.Batch) ([]byte, diag.List) { return s.env().PiecePicture(b, label.Piece(id), c) }
	case "batch":
		draw = func(b *job.Batch) ([]byte, diag.List) { return s.env().DesignPicture(b, "", c) }
	}
	if in.Batch.Data != nil {
		if data, _ := draw(s.env().Load(in, c)); data != nil {
			return data, nil
		}
	}
	if data, _ := draw(s.env().Sample()); data != nil && what != "batch" {
		return data, nil
	}
	return nil, errNotFound
}
