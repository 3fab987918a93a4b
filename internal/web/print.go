package web

import (
	"net/http"

	"jarmark/internal/diag"
	"jarmark/internal/job"
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
}

// blocked says why there is nothing to print.
type blocked struct {
	Error    string        `json:"error"`
	Findings []job.Finding `json:"findings"`
}

// print answers with the PDF of the labels.
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
	in, err := s.inputOf(ask.File, ask.Text)
	if err != nil {
		return err
	}
	c := s.choices()
	c.Pieces, c.Skip, c.Copies = pieceList(ask.Pieces), ask.Skip, ask.Copies
	c.InkSaver, c.CutMarks = ask.InkSaver, ask.CutMarks
	files, found, err := s.env.LabelFiles([]job.Input{in}, c, "pdf")
	if err != nil {
		return err
	}
	if len(files) == 0 {
		answerJSON(w, http.StatusUnprocessableEntity, blocked{firstError(found), job.FindingRows(found)})
		return nil
	}
	return sendFile(w, stem(ask.File)+"-labels.pdf", "application/pdf", files[0].Data)
}

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
	w.Header().Set("Content-Disposition", disposition(name))
	_, err := w.Write(data)
	return ignoreGone(err)
}
