package web

import (
	"net/http"
	"sync"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// printAsk is a text whose labels are to be printed as they are on screen,
// saved or not.
type printAsk struct {
	File     string   `json:"file"`
	Text     string   `json:"text"`
	Pieces   []string `json:"pieces"`
	Skip     int      `json:"skip"`   // labels gone from the first sheet
	Copies   int      `json:"copies"` // 0 = one a sealed jar
	InkSaver bool     `json:"inkSaver"`
	CutMarks bool     `json:"cutMarks"`
	Gift     bool     `json:"gift"`
	Proof    bool     `json:"proof"` // the page that measures the labels, instead of them
}

// blocked says why there is nothing to print.
type blocked struct {
	Error    string        `json:"error"`
	Findings []job.Finding `json:"findings"`
}

// print makes the PDF of the labels and answers with its address.
func (s *site) print(w http.ResponseWriter, r *http.Request) error {
	var ask printAsk
	if err := readJSON(r, &ask); err != nil {
		return err
	}
	if err := checkName(ask.File); err != nil {
		return err
	}
	if ask.Skip < 0 || ask.Copies < 0 {
		return badRequest("labels to skip and copies can't be negative")
	}
	if ask.Copies > job.MaxLabels {
		return badRequest("%d copies are more than the %d labels of one run", ask.Copies, job.MaxLabels)
	}
	in, err := s.inputOf(ask.File, ask.Text)
	if err != nil {
		return err
	}
	c := s.choices()
	c.Pieces, c.Skip, c.Copies = pieceList(ask.Pieces), ask.Skip, ask.Copies
	c.InkSaver, c.CutMarks, c.Gift = ask.InkSaver, ask.CutMarks, ask.Gift
	put, what := s.env.LabelFiles, "labels"
	if ask.Proof {
		put, what = s.env.ProofFiles, "label-proof"
	}
	files, found, err := put([]job.Input{in}, c, "pdf")
	if err != nil {
		return err
	}
	if len(files) == 0 {
		answerJSON(w, http.StatusUnprocessableEntity, blocked{firstError(found), job.FindingRows(found)})
		return nil
	}
	name := stem(ask.File) + "-" + what + ".pdf"
	answerJSON(w, http.StatusOK, printed{"print/" + s.prints.keep(files[0].Data) + "/" + name, name})
	return nil
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
