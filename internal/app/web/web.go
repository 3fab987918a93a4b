// Package web is the local page: it shows the batches of one folder, edits
// them by form or as text, and shows their labels while the maker types. It is
// a thin face of job, like the command line; it knows HTTP and TOML paths, not
// law, physics or layout.
//
// It serves this machine alone: requests for another host name, writes from
// another site, and files outside the folder are refused.
package web

import (
	"bytes"
	"html/template"
	"log"
	"net/http"
	"time"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/unit"
)

// Options are what the page needs from outside; all may be left out.
type Options struct {
	Open   func(url string) // told the address once the page is up
	Browse func(url string) // told an address that opens once, within minutes; may be nil
	Key    string           // lets browsers in (Serve); empty = a fresh one
	Today  func() unit.Date // the day rules are read on; nil = the clock's
	Log    *log.Logger      // faults of the page itself; nil = none
	Token  string           // what writes must bear; empty = a fresh one each run
	Framed bool             // the page stands in a frame of its own site, which says what folder it is
}

// site is one folder being served.
type site struct {
	folder *folder
	own    *own
	opts   Options
	token  string
	pages  *template.Template
	images imageCache
	prints prints
	drawn  drawings
	lots   lots
	kept   keeps
}

// New makes the page of a folder. The error is about the folder.
func New(dir string, env *job.Env, o Options) (http.Handler, error) {
	f, err := openFolder(dir)
	if err != nil {
		return nil, err
	}
	pages, err := parsePages()
	if err != nil {
		return nil, err
	}
	if o.Today == nil {
		o.Today = clockDay
	}
	if o.Log == nil {
		o.Log = log.New(nowhere{}, "", 0)
	}
	s := &site{folder: f, own: ownOf(f, env), opts: o, token: o.Token, pages: pages}
	if s.token == "" {
		s.token = freshToken()
	}
	return s.guard(s.routes()), nil
}

// routes is the table of everything the page answers.
func (s *site) routes() http.Handler {
	mux := http.NewServeMux()
	for pattern, h := range map[string]handler{
		"GET /{$}":                 s.list,
		"GET /new":                 s.newBatch,
		"POST /new":                s.createBatch,
		"GET /batch/{file}":        s.editBatch,
		"GET /kitchen":             s.editKitchen,
		"GET /pack":                s.packing,
		"GET /gifts":               s.gifts,
		"POST /gifts":              s.giftsDo,
		"GET /gifts/{file}":        s.giftsFile,
		"GET /season":              s.season,
		"GET /season/{file}":       s.seasonFile,
		"GET /pack/{file}":         s.packingFile,
		"GET /trace":               s.trace,
		"GET /trace/{file}":        s.traceFile,
		"POST /do/look":            s.look,
		"POST /do/save":            s.save,
		"POST /do/copy":            s.saveCopy,
		"POST /do/print":           s.print,
		"POST /do/make":            s.makeAll,
		"POST /file":               s.fileDo,
		"GET /scale/{file}":        s.scale,
		"GET /align/{sheet}":       s.align,
		"GET /tape/{sheet}":        s.tape,
		"GET /pack/stall.pdf":      s.stall,
		"POST /ledger":             s.ledgerDo,
		"GET /ledger/{file}":       s.ledger,
		"GET /rules/{place}":       s.rules,
		"GET /made":                s.made,
		"GET /out/{path...}":       s.madeFileOf,
		"GET /public-pages.zip":    s.publicZip,
		"GET /print/{id}/{name}":   s.printedFile,
		"GET /do/disk/{file}":      s.disk,
		"GET /picture/{what}/{id}": s.picture,
	} {
		mux.Handle(pattern, s.plain(s.fresh(h)))
	}
	for pattern, h := range map[string]handler{ // the same whatever the maker's designs are
		"GET /do/alive":                s.alive,
		"GET /static/{version}/{file}": s.static,
		"GET /font/{version}/{file}":   s.font,
		"GET /favicon.ico":             s.favicon,
	} {
		mux.Handle(pattern, s.plain(h))
	}
	mux.Handle("/", s.plain(func(w http.ResponseWriter, r *http.Request) error { return errNotFound }))
	return mux
}

// choices are the settings of the page that hold for every batch.
func (s *site) choices() job.Choices { return job.Choices{Today: s.opts.Today()} }

func clockDay() unit.Date {
	t := time.Now()
	return unit.Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}
}

// show writes a page whole or not at all.
func (s *site) show(w http.ResponseWriter, r *http.Request, name string, v view) error {
	v.Root = rootOf(r)
	var buf bytes.Buffer
	if err := s.pages.ExecuteTemplate(&buf, name, v); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, err := w.Write(buf.Bytes())
	return ignoreGone(err)
}

// ignoreGone drops faults of writing to a reader who went away.
func ignoreGone(error) error { return nil }

type nowhere struct{}

func (nowhere) Write(p []byte) (int, error) { return len(p), nil }
