package web

import (
	"errors"
	"net/http"
	"sync"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// printAsk is a text whose labels are to be printed as they are on screen,
// saved or not.
type printAsk struct {
	File     string         `json:"file"`
	Text     string         `json:"text"`
	Pieces   []string       `json:"pieces"`
	Gone     map[string]int `json:"gone"`     // labels gone from the first sheet, by sheet
	Remember bool           `json:"remember"` // note in the kitchen what is gone afterwards
	Copies   int            `json:"copies"`   // 0 = one a sealed jar
	InkSaver bool           `json:"inkSaver"`
	CutMarks bool           `json:"cutMarks"`
	Gift     bool           `json:"gift"`
	Proof    bool           `json:"proof"` // the page that measures the labels, instead of them
}

// blocked says why there is nothing to print.
type blocked struct {
	Error    string        `json:"error"`
	Findings []job.Finding `json:"findings"`
}

// print makes the PDF of the labels and answers with its address.
func (s *site) print(w http.ResponseWriter, r *http.Request) error {
	var ask printAsk
	if err := readAsk(r, &ask, &ask.File); err != nil {
		return err
	}
	for _, n := range ask.Gone {
		if n < 0 {
			return badRequest("labels gone from a sheet can't be negative")
		}
	}
	if ask.Copies < 0 {
		return badRequest("copies can't be negative")
	}
	if ask.Copies > job.MaxLabels {
		return badRequest("%d copies are more than the %d labels of one run", ask.Copies, job.MaxLabels)
	}
	in, err := s.inputOf(ask.File, ask.Text)
	if err != nil {
		return err
	}
	c := s.choices()
	c.Pieces, c.Gone, c.Copies = pieceList(ask.Pieces), ask.Gone, ask.Copies
	c.InkSaver, c.CutMarks, c.Gift = ask.InkSaver, ask.CutMarks, ask.Gift
	run, found, err := s.env().Print([]job.Input{in}, c, "pdf")
	what := "labels"
	if ask.Proof {
		what = "label-proof"
		run.Files, found, err = s.env().ProofFiles([]job.Input{in}, c, "pdf")
	}
	if err != nil {
		return err
	}
	if len(run.Files) == 0 {
		answerJSON(w, http.StatusUnprocessableEntity, blocked{firstError(found), findingRows(found)})
		return nil
	}
	if ask.Remember && !ask.Proof {
		if err := s.remember(run.Printed); err != nil {
			return err
		}
	}
	name := stem(ask.File) + "-" + what + ".pdf"
	answerJSON(w, http.StatusOK, printed{"print/" + s.prints.keep(run.Files[0].Data) + "/" + name, name})
	return nil
}

// remember notes in the kitchen's file what is gone from the sheets printed on.
func (s *site) remember(runs []job.Printed) error {
	for range maxCopies { // another window may write meanwhile
		k, own, err := s.folder.kitchen()
		if err != nil || !own || k.Data == nil {
			return firstFault(err, &problem{http.StatusForbidden, "there is no kitchen's file in this folder to note the sheets in", "fill in the kitchen first"})
		}
		now, found := job.RememberSheets(k, runs)
		if found.HasErrors() {
			return badRequest("the sheets could not be noted: %s", firstError(found))
		}
		if _, err = s.folder.saveAs(k.Name, mark(k.Data), now, true); !errors.Is(err, errConflict) {
			return err
		}
	}
	return errConflict
}

// printed says where the PDF is to be fetched.
type printed struct {
	URL  string `json:"url"`
	Name string `json:"name"`
}

// prints holds the last PDF files made, each under a name nobody can guess.
// A file with an address of its own opens in every browser's viewer.
type prints struct {
	sync.Mutex
	data map[string][]byte
	ids  []string
}

// maxPrints is how many files are held, so that they don't fill the memory.
const maxPrints = 8

func (p *prints) keep(data []byte) string {
	p.Lock()
	defer p.Unlock()
	id := freshToken()
	if p.data == nil {
		p.data = map[string][]byte{}
	}
	if len(p.ids) == maxPrints {
		delete(p.data, p.ids[0])
		p.ids = p.ids[1:]
	}
	p.data[id], p.ids = data, append(p.ids, id)
	return id
}

// printedFile answers with a PDF made a moment ago.
func (s *site) printedFile(w http.ResponseWriter, r *http.Request) error {
	s.prints.Lock()
	data := s.prints.data[r.PathValue("id")]
	s.prints.Unlock()
	if data == nil {
		return &problem{http.StatusNotFound, "these labels are no longer at hand", "print them again from their batch"}
	}
	return sendFile(w, r.PathValue("name"), pdfType, data)
}

const pdfType = "application/pdf"

func firstError(l diag.List) string {
	for _, d := range l {
		if d.Severity == diag.Error {
			return d.Message
		}
	}
	return "there is nothing to print"
}

func sendFile(w http.ResponseWriter, name, kind string, data []byte) error {
	w.Header().Set("Content-Type", kind)
	if kind == pdfType {
		// A browser's own viewer is a plug-in to the strict policy.
		w.Header().Set("Content-Security-Policy", "frame-ancestors 'none'")
	}
	w.Header().Set("Content-Disposition", disposition(name))
	_, err := w.Write(data)
	return ignoreGone(err)
}
