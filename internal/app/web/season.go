package web

import (
	"net/http"

	"jarmark/internal/app/job"
)

// seasonPage is where the jars of the folder are, and what they brought in;
// Lists are *table.List values.
type seasonPage struct {
	Lists    []any
	Jars     []option // of which something may be noted
	Whys     []string
	Today    string
	Findings []job.Finding
}

func (s *site) season(w http.ResponseWriter, r *http.Request) error {
	recall, found := s.recall()
	p := seasonPage{}
	if len(recall.Batches) > 0 {
		season, book, rows, l := s.env().SeasonLists(recall.Batches)
		p.Lists, found = []any{season, book, rows}, append(found, l...)
		p.Jars, p.Whys, p.Today = noteable(recall.Batches), job.LedgerWhys(), s.opts.Today().String()
	}
	p.Findings = findingRows(found)
	return s.show(w, r, "season.html", s.view("Season", "season", p))
}

// noteable are the jars of batches, "LOT/JAR" by value.
func noteable(batches []*job.Batch) (out []option) {
	for _, b := range batches {
		if b.Cooked == nil || b.Cooked.Lot == "" {
			continue
		}
		for _, j := range b.Cooked.Jars {
			out = append(out, option{Value: b.Cooked.Lot + "/" + j.Jar.Key, Text: b.Notes.Name + ", " + j.Jar.Description + ", " + b.Cooked.Lot})
		}
	}
	return out
}

func (s *site) seasonFile(w http.ResponseWriter, r *http.Request) error {
	k, ok := listKinds[r.PathValue("file")]
	recall, _ := s.recall()
	if !ok || len(recall.Batches) == 0 {
		return errNotFound
	}
	f, l, err := s.env().SeasonFile(recall.Batches, k.format)
	return s.sendList(w, f, k.kind, l, err)
}
