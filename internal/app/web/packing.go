package web

import (
	"mime"
	"net/http"
	"path/filepath"
	"slices"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// kinds of list files, by the end of their name.
var listKinds = map[string]struct{ format, kind string }{
	"list.pdf":   {"pdf", pdfType},
	"list.csv":   {"csv", "text/csv; charset=utf-8"},
	"list.txt":   {"text", "text/plain; charset=utf-8"},
	"notice.txt": {"notice", "text/plain; charset=utf-8"},
}

// packPage is the packing list; Plan is a *pack.Plan, nil without batches.
type packPage struct {
	Plan     any
	Event    string
	Events   []string
	Findings []job.Finding
}

func (s *site) packing(w http.ResponseWriter, r *http.Request) error {
	all, found := s.recall()
	p := packPage{Event: r.URL.Query().Get("event"), Events: events(all.Batches)}
	plan, l := s.env().Plan(all.Batches, packChoices(p.Event))
	if plan != nil && len(all.Batches) > 0 {
		p.Plan = plan
	}
	p.Findings = findingRows(append(found, l...))
	return s.show(w, r, "pack.html", s.view("Packing", "pack", p))
}

// onlyGifts is the word that asks for the gifts alone.
const onlyGifts = "gifts"

func packChoices(event string) job.PackChoices {
	if event == onlyGifts {
		return job.PackChoices{Gifts: true}
	}
	if name, day, dated := cutLast(event, dayMark); dated {
		if d, err := unit.ParseDate(day); err == nil {
			return job.PackChoices{Event: name, Date: d}
		}
	}
	return job.PackChoices{Event: event}
}

// dayMark stands between a market and its day.
const dayMark = " on "

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}

// events lists the markets of all batches, each once, in file order; one that
// is held on several days by its days too.
func events(batches []*job.Batch) (out []string) {
	days := map[string][]string{}
	for _, b := range batches {
		if b.Notes == nil {
			continue
		}
		for _, m := range b.Notes.Markets {
			if m.Event == "" {
				continue
			}
			if days[m.Event] == nil {
				out, days[m.Event] = append(out, m.Event), []string{}
			}
			if d := m.Event + dayMark + m.Date.String(); !m.Date.IsZero() && !slices.Contains(days[m.Event], d) {
				days[m.Event] = append(days[m.Event], d)
			}
		}
	}
	var all []string
	for _, e := range out {
		all = append(all, e)
		if len(days[e]) > 1 {
			slices.Sort(days[e])
			all = append(all, days[e]...)
		}
	}
	return all
}

func (s *site) packingFile(w http.ResponseWriter, r *http.Request) error {
	k, ok := listKinds[r.PathValue("file")]
	all, _ := s.recall()
	if !ok || k.format == "notice" || len(all.Batches) == 0 {
		return errNotFound
	}
	c := packChoices(r.URL.Query().Get("event"))
	c.Format = k.format
	f, l, err := s.env().PackFile(all.Batches, c)
	return s.sendList(w, f, k.kind, l, err)
}

func (s *site) sendList(w http.ResponseWriter, f job.File, kind string, l diag.List, err error) error {
	if err != nil {
		return err
	}
	if f.Data == nil {
		return &problem{Status: http.StatusNotFound, What: firstError(l)}
	}
	return sendFile(w, f.Name, kind, f.Data)
}

// tracePage says who has the jars of lots.
type tracePage struct {
	Lot       string
	Lots      []option
	Histories []*job.History
	Findings  []job.Finding
}

// recall reads all that a recall, a packing list and a season are answered from,
// as the command line does: folders below and linked ones too.
func (s *site) recall() (*job.Recall, diag.List) {
	var in []job.Input
	var left []job.Unread
	for _, u := range store.ReadEverything(s.folder.dir, func(b, k, l store.Doc) {
		in = append(in, job.Input{Batch: s.named(b), Kitchen: s.named(k), Ledger: s.named(l)})
	}) {
		left = append(left, job.Unread{Path: s.named(store.Doc{Name: u.Path}).Name, Why: u.Why})
	}
	return s.env().Recall(in, left, s.choices())
}

// named calls a file as seen from the folder.
func (s *site) named(d store.Doc) job.Doc {
	if rel, err := filepath.Rel(s.folder.dir, d.Name); err == nil && d.Name != "" {
		d.Name = rel
	}
	return job.Doc(d)
}

func (s *site) trace(w http.ResponseWriter, r *http.Request) error {
	recall, found := s.recall()
	p := tracePage{Lot: r.URL.Query().Get("lot"), Findings: findingRows(found)}
	for _, b := range recall.Batches {
		if f := b.Facts(); f.Lot != "" {
			p.Lots = append(p.Lots, option{Value: f.Lot, Text: f.Lot + ", " + f.Name})
		}
	}
	if p.Lot != "" {
		list, l := recall.Histories(job.Sought{What: p.Lot})
		p.Histories = list
		p.Findings = findingRows(append(l, found...))
	}
	return s.show(w, r, "trace.html", s.view("Trace", "trace", p))
}

func (s *site) traceFile(w http.ResponseWriter, r *http.Request) error {
	k, ok := listKinds[r.PathValue("file")]
	if !ok || k.format == "csv" {
		return errNotFound
	}
	recall, _ := s.recall()
	f, l, err := recall.File(job.Sought{What: r.URL.Query().Get("lot")}, k.format)
	return s.sendList(w, f, k.kind, l, err)
}

func firstFault(errs ...error) error {
	for _, e := range errs {
		if e != nil {
			return e
		}
	}
	return nil
}

// disposition lets a browser show the file and save it under its name.
func disposition(name string) string {
	return mime.FormatMediaType("inline", map[string]string{"filename": name})
}
