package web

import (
	"net/http"

	"jarmark/internal/app/job"
)

// seasonPage is where the jars of the folder are, and what they brought in;
// Lists are *table.List values.
type seasonPage struct {
	Lists    []any
	Findings []job.Finding
}

func (s *site) season(w http.ResponseWriter, r *http.Request) error {
	recall, found := s.recall()
	p := seasonPage{}
	if len(recall.Batches) > 0 {
		season, book, rows, l := s.env().SeasonLists(recall.Batches)
		p.Lists, found = []any{season, book, rows}, append(found, l...)
	}
	p.Findings = job.FindingRows(found)
	return s.show(w, r, "season.html", s.view("Season", "season", p))
}

func (s *site) seasonFile(w http.ResponseWriter, r *http.Request) error {
	k, ok := listKinds[r.PathValue("file")]
	recall, _ := s.recall()
	if !ok || k.format == "tags" || len(recall.Batches) == 0 {
		return errNotFound
	}
	f, l, err := s.env().SeasonFile(recall.Batches, k.format)
	return s.sendList(w, f, k.kind, l, err)
}
