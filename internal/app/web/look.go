package web

import (
	"bytes"
	"context"
	"errors"
	"net/http"
	"slices"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// lookAsk is the text being edited and what was done in the form since.
type lookAsk struct {
	File    string   `json:"file"`
	Text    string   `json:"text"`
	Changes []change `json:"changes"`
	Pieces  []string `json:"pieces"`
	Gift    bool     `json:"gift"`  // labels for presents, without the words of the market
	Form    bool     `json:"form"`  // send the form anew
	Have    []string `json:"have"`  // marks of the drawings the browser holds: they are not sent again
	First   []string `json:"first"` // pieces in sight: sent ahead, as a line of its own
}

// lookAnswer is the new text and all that is to be seen of it.
type lookAnswer struct {
	Text     string        `json:"text"`
	Findings []job.Finding `json:"findings"`
	Labels   []picture     `json:"labels"`
	Facts    string        `json:"facts"`   // HTML
	Form     string        `json:"form"`    // HTML; empty = as it was
	Weighed  []string      `json:"weighed"` // what the weighed jars say, in words
	// Removed is the text of each row taken out, by the number of the change,
	// so that it can be put back.
	Removed map[string]string `json:"removed,omitempty"`
}

// ahead is the line sent before the answer: labels that are in sight.
type ahead struct {
	First []picture `json:"first"`
}

// picture is one label to look at.
type picture struct {
	Piece  string            `json:"piece"`
	Title  string            `json:"title"`
	Size   string            `json:"size"`
	Width  float64           `json:"width"` // mm
	Height float64           `json:"height"`
	Sheet  string            `json:"sheet"`
	Labels int               `json:"labels"`
	Sheets int               `json:"sheets"` // all labels of the piece take
	Cells  int               `json:"cells"`  // labels of one sheet; 0: plain paper
	Gone   int               `json:"gone"`   // of them, used up on the first sheet
	Mark   string            `json:"mark"`
	SVG    string            `json:"svg,omitempty"` // an element a line; missing when the browser holds it
	Base   string            `json:"base,omitempty"`
	Lines  []any             `json:"lines,omitempty"` // instead, by a drawing the browser holds (Base): runs of its lines, [from, count], and new ones
	Paths  map[string]string `json:"paths"`
}

// look applies changes and answers with the text, its findings and labels.
// Nothing is written. Labels in sight go ahead as a line of JSON, as soon as
// they are drawn; the answer is the last line.
func (s *site) look(w http.ResponseWriter, r *http.Request) error {
	var ask lookAsk
	if err := readAsk(r, &ask, &ask.File); err != nil {
		return err
	}
	begun := false
	answer, err := s.looked(r.Context(), ask, func(first []picture) {
		begun = true
		answerAhead(w, ahead{first})
	})
	switch {
	case err == nil && begun:
		answerLine(w, answer)
	case err == nil:
		answerJSON(w, http.StatusOK, answer)
	case begun:
		answerLine(w, s.explain(err))
	default:
		return err
	}
	return nil
}

// looked applies the changes and looks at the text; first is given the labels
// in sight, when there are others to come.
func (s *site) looked(r context.Context, ask lookAsk, first func([]picture)) (lookAnswer, error) {
	sections := formOf(ask.File)
	text, found := apply(ask.Text, ask.Changes, sections)
	refused := found.HasErrors()
	in, err := s.inputOf(ask.File, text)
	if err != nil {
		return lookAnswer{}, err
	}
	b := s.env().Load(in, s.chosen(ask, ask.Pieces))
	if near := s.inSight(r, b, ask); len(near) > 0 {
		first(near)
		for _, p := range near {
			ask.Have = append(ask.Have, p.Mark)
		}
	}
	answer, err := s.lookAt(r, in, b, ask, found)
	if err != nil {
		return lookAnswer{}, err
	}
	if s.untouched(ask.File, text) {
		answer.Findings = slices.DeleteFunc(answer.Findings, func(f job.Finding) bool { return f.Severity != diag.Note.String() })
	}
	answer.Text, answer.Removed = text, removedRows(ask.Text, ask.Changes, sections)
	if ask.Form || refused { // a form that shows what was refused is out of step
		answer.Form, err = s.part("form.html", s.withOptions(fillForm(ask.File, text, sections), pictureQuery(ask.File)))
	}
	return answer, errors.Join(err, r.Err()) // a newer request may have taken the place of this one
}

// untouched reports whether a text is a new kitchen's as it comes: what it lacks
// is no slip of anybody's yet.
func (s *site) untouched(file, text string) bool {
	if file != store.KitchenName {
		return false
	}
	starter, _ := s.env().StarterKitchen("us")
	return text == string(starter)
}

// chosen is what is to be shown of a batch.
func (s *site) chosen(ask lookAsk, pieces []string) job.Choices {
	c := s.choices()
	c.Pieces, c.Gift = pieceList(pieces), ask.Gift
	return c
}

// inSight draws the pieces in sight, where there are others to draw after them.
func (s *site) inSight(r context.Context, b *job.Batch, ask lookAsk) []picture {
	c := s.chosen(ask, ask.First)
	if len(c.Pieces) == 0 || len(c.Pieces) >= len(pieceList(ask.Pieces)) || r.Err() != nil {
		return nil
	}
	shown, _ := s.env().Show(b, c) // its findings are told with those of all pieces
	return s.pictures(b, shown, ask.Have)
}

// pictures are labels as they are sent: without what the browser holds already.
func (s *site) pictures(b *job.Batch, shown []job.Shown, have []string) []picture {
	out := []picture{}
	for _, x := range shown {
		p := picture{Piece: string(x.Piece), Title: pieceWords[x.Piece][0], Size: x.Size(), Width: x.W.MM(), Height: x.H.MM(),
			Sheet: x.Sheet, Labels: x.Labels, Sheets: x.Sheets, Cells: x.Cells, Gone: x.Gone, Mark: mark(x.SVG), Paths: x.Paths}
		if b.Input.Batch.Name == job.SampleDoc().Name {
			p.Title = "A sample, not yours: " + strings.ToLower(p.Title)
		}
		s.drawn.send(&p, x.SVG, have)
		out = append(out, p)
	}
	return out
}

// lookAt tells all findings and draws all labels.
func (s *site) lookAt(r context.Context, in job.Input, b *job.Batch, ask lookAsk, found diag.List) (lookAnswer, error) {
	if r.Err() != nil {
		return lookAnswer{}, r.Err() // nobody waits for the pictures any more
	}
	shown, l := s.env().Show(b, s.chosen(ask, ask.Pieces))
	found = append(append(append(found, b.Findings...), s.sameLot(b)...), l...)
	found = append(found, s.ownFound()...)
	if ask.File == store.KitchenName {
		found = about(found, in.Kitchen.Name)
	}
	out := lookAnswer{Findings: findingRows(found.Once().Capped(maxListed)), Labels: s.pictures(b, shown, ask.Have)}
	out.Weighed = s.weighed(b)
	facts, err := s.part("facts.html", map[string]any{"Facts": b.Facts(), "Jars": jarsOf(b)})
	out.Facts = facts
	return out, err
}

// maxListed is how many findings are sent; more help nobody.
const maxListed = 100

// inputOf is the batch being edited. While the kitchen is edited, its labels
// are shown on the first batch of the folder.
func (s *site) inputOf(file, text string) (job.Input, error) {
	if file != store.KitchenName {
		return s.folder.input(file, []byte(text))
	}
	in := job.Input{Kitchen: job.Doc{Name: file, Data: []byte(text)}}
	names, _, err := s.folder.batches()
	for _, n := range names {
		data, err := s.folder.read(n)
		if d := (job.Doc{Name: n, Data: data}); err == nil && !job.IsGiftList(d) {
			in.Batch = d
			return in, nil
		}
	}
	in.Batch = job.SampleDoc()
	return in, err
}

// about keeps the findings about one file.
func about(l diag.List, file string) (out diag.List) {
	for _, d := range l {
		if d.File == file || d.File == "" {
			out = append(out, d)
		}
	}
	return out
}

// pieceList keeps the pieces there are.
func pieceList(words []string) (out []label.Piece) {
	for _, p := range label.Pieces {
		for _, w := range words {
			if string(p) == w {
				out = append(out, p)
				break
			}
		}
	}
	return out
}

func formOf(file string) []section {
	if file == store.KitchenName {
		return kitchenForm
	}
	return batchForm
}

// part renders a part of a page.
func (s *site) part(name string, v any) (string, error) {
	var buf bytes.Buffer
	err := s.pages.ExecuteTemplate(&buf, name, v)
	return buf.String(), err
}
