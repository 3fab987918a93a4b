package web

import (
	"fmt"
	"io/fs"
	"net/http"
	"strings"
	"sync"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// own is what all batches share, with the maker's designs and sheets laid over
// it. A file of theirs that is new or changed is read by the next request; one
// that is broken is left out and told.
type own struct {
	folder *folder

	mu    sync.Mutex
	env   *job.Env
	found diag.List
	seen  string // what was read, by names, sizes and times
}

func ownOf(f *folder, env *job.Env) *own {
	o := &own{folder: f, env: env}
	o.freshen()
	return o
}

// freshen reads the maker's files anew when there are others than before.
func (o *own) freshen() {
	now := o.stamp()
	o.mu.Lock()
	defer o.mu.Unlock()
	if now == o.seen {
		return
	}
	env, found, err := job.NewEnv(o.folder.root.FS())
	if err != nil {
		return // a fault of the program's own tables: those it began with are whole
	}
	o.env, o.found, o.seen = env, found, now
}

func (o *own) stamp() string {
	var b strings.Builder
	for _, dir := range []string{"designs", "sheets", "fonts"} {
		entries, _ := fs.ReadDir(o.folder.root.FS(), dir) // often there is none
		for _, e := range entries {
			if st, err := e.Info(); err == nil {
				fmt.Fprintln(&b, dir, e.Name(), st.Size(), st.ModTime().UnixNano())
			}
		}
	}
	return b.String()
}

// fresh answers with the maker's designs and sheets as they are now.
func (s *site) fresh(h handler) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		s.own.freshen()
		return h(w, r)
	}
}

// env is what all batches share at this moment.
func (s *site) env() *job.Env {
	s.own.mu.Lock()
	defer s.own.mu.Unlock()
	return s.own.env
}

// version tells states of the maker's designs and sheets apart.
func (o *own) version() string {
	o.mu.Lock()
	defer o.mu.Unlock()
	return mark([]byte(o.seen))
}

// ownFound is what is wrong with the maker's designs and sheets.
func (s *site) ownFound() diag.List {
	s.own.mu.Lock()
	defer s.own.mu.Unlock()
	return s.own.found
}
