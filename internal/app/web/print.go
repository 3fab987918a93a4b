package web

import (
	"cmp"
	"errors"
	"net/http"
	"path"
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
	forOthers
}

// forOthers is what a print shop or a cutting machine wants otherwise.
type forOthers struct {
	As       string `json:"as"`       // pdf, svg or png; "" = pdf
	DPI      int    `json:"dpi"`      // of PNG; 0 = the usual
	Trimmed  bool   `json:"trimmed"`  // each different label a page, with bleed
	CutLines bool   `json:"cutLines"` // a layer of the lines to cut along
	Profile  []byte `json:"profile"`  // the shop's ICC profile
}

// check refuses what does not go together, as the command line does.
func (o *forOthers) check() error {
	if o.As == "" {
		o.As = "pdf"
	}
	switch {
	case printedTypes["."+o.As] == "" || o.As == "zip":
		return badRequest("labels are made as PDF, SVG or PNG, not as %q", o.As)
	case o.DPI != 0 && (o.DPI < 36 || o.DPI > 2400):
		return badRequest("%d dots an inch are not 36 to 2400", o.DPI)
	case o.CutLines && o.As == "png":
		return badRequest("lines to cut along go into a PDF or an SVG, not into a PNG")
	case len(o.Profile) > 0 && (!o.Trimmed || o.As != "pdf"):
		return badRequest("a profile is of the press of a print shop, and goes into the PDF of trimmed labels")
	}
	return nil
}

// blocked says why there is nothing to print.
type blocked struct {
	Error    string        `json:"error"`
	Findings []job.Finding `json:"findings"`
}

// print makes the file of the labels and answers with its address.
func (s *site) print(w http.ResponseWriter, r *http.Request) error {
	var ask printAsk
	if err := readAsk(r, &ask, &ask.File); err != nil {
		return err
	}
	c, found, err := s.printChoices(&ask)
	if err != nil {
		return err
	}
	in, err := s.inputOf(ask.File, ask.Text)
	if err != nil {
		return err
	}
	var run job.PrintRun
	what := "labels"
	switch {
	case found.HasErrors():
	case ask.Proof:
		what = "label-proof"
		run.Files, found, err = s.env().ProofFiles([]job.Input{in}, c, "pdf")
	default:
		run, found, err = s.env().Print([]job.Input{in}, c, ask.As)
	}
	if err != nil {
		return err
	}
	if len(run.Files) == 0 {
		answerJSON(w, http.StatusUnprocessableEntity, blocked{firstError(found), findingRows(found)})
		return nil
	}
	if ask.Remember && !ask.Proof && !ask.Trimmed {
		if err := s.remember(run.Printed); err != nil {
			return err
		}
	}
	data, ext, err := oneOf(run.Files)
	if err != nil {
		return err
	}
	name := stem(ask.File) + "-" + what + ext
	answerJSON(w, http.StatusOK, printed{"print/" + s.prints.keep(data) + "/" + name, name})
	return nil
}

// printChoices are the choices of a run; findings tell what is wrong with a profile.
func (s *site) printChoices(ask *printAsk) (c job.Choices, found diag.List, err error) {
	for _, n := range ask.Gone {
		if n < 0 {
			return c, nil, badRequest("labels gone from a sheet can't be negative")
		}
	}
	if ask.Copies < 0 {
		return c, nil, badRequest("copies can't be negative")
	}
	if ask.Copies > job.MaxLabels {
		return c, nil, badRequest("%d copies are more than the %d labels of one run", ask.Copies, job.MaxLabels)
	}
	if err := ask.check(); err != nil {
		return c, nil, err
	}
	c = s.choices()
	c.Pieces, c.Gone, c.Copies = pieceList(ask.Pieces), ask.Gone, ask.Copies
	c.InkSaver, c.CutMarks, c.Gift = ask.InkSaver, ask.CutMarks, ask.Gift
	c.Trimmed, c.CutLines, c.DPI, c.Whole = ask.Trimmed, ask.CutLines, float64(cmp.Or(ask.DPI, job.DefaultDPI)), true
	if len(ask.Profile) > 0 {
		c.Profile, found = job.ShopProfile("the profile", ask.Profile)
	}
	return c, found, nil
}

// oneOf is a file as it is, and several as a folder of them; ext says which kind.
func oneOf(files []job.File) (data []byte, ext string, err error) {
	if len(files) > 1 {
		data, err = zipped(files)
		return data, ".zip", err
	}
	return files[0].Data, path.Ext(files[0].Name), nil
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

// printedTypes are the kinds of file labels are made as, by the end of their names.
var printedTypes = map[string]string{".pdf": pdfType, ".svg": "image/svg+xml", ".png": "image/png", ".zip": zipType}

// printedFile answers with a file made a moment ago.
func (s *site) printedFile(w http.ResponseWriter, r *http.Request) error {
	s.prints.Lock()
	data := s.prints.data[r.PathValue("id")]
	s.prints.Unlock()
	if data == nil {
		return &problem{http.StatusNotFound, "these labels are no longer at hand", "print them again from their batch"}
	}
	name := r.PathValue("name")
	kind := printedTypes[path.Ext(name)]
	if kind == "" {
		return &problem{http.StatusNotFound, "labels are not made as such a file", "print them again from their batch"}
	}
	return sendFile(w, name, kind, data)
}

const (
	pdfType = "application/pdf"
	zipType = "application/zip"
)

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
