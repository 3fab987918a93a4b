package web

import (
	"net/http"
	"net/url"

	"jarmark/internal/app/store"
)

// editorPage is the form and the text of one file.
type editorPage struct {
	File    string
	Kitchen bool
	Name    string
	Text    string
	Mark    string // of the text on disk
	Form    filledForm
	Steps   []section
	Pieces  []option
	Piece   string // the piece shown first
	Lists   suggestions
}

func (s *site) editBatch(w http.ResponseWriter, r *http.Request) error {
	file := r.PathValue("file")
	if file == store.KitchenName {
		return errNotFound
	}
	data, err := s.folder.read(file)
	if err != nil {
		return err
	}
	if !plainText(data) {
		return s.showRecode(w, r, file, data)
	}
	return s.showEditor(w, r, file, data)
}

// parentKitchen is a kitchen.toml above the folder: shown, never written.
type parentKitchen struct{ Name, Text string }

func (s *site) editKitchen(w http.ResponseWriter, r *http.Request) error {
	doc, own, err := s.folder.kitchen()
	if err != nil {
		return err
	}
	if !own {
		return s.show(w, r, "parent.html", s.view("Kitchen", "kitchen", parentKitchen{doc.Name, string(doc.Data)}))
	}
	if doc.Data == nil {
		doc.Data, _ = s.env().StarterKitchen("us")
		return s.showNewKitchen(w, r, doc.Data)
	}
	if !plainText(doc.Data) {
		return s.showRecode(w, r, store.KitchenName, doc.Data)
	}
	return s.showEditor(w, r, store.KitchenName, doc.Data)
}

// showNewKitchen begins a kitchen file that is not on disk yet.
func (s *site) showNewKitchen(w http.ResponseWriter, r *http.Request, text []byte) error {
	p, err := s.editorPage(store.KitchenName, text)
	p.Mark = mark(nil)
	if err != nil {
		return err
	}
	return s.show(w, r, "editor.html", s.view("Kitchen", "kitchen", p))
}

func (s *site) showEditor(w http.ResponseWriter, r *http.Request, file string, text []byte) error {
	p, err := s.editorPage(file, text)
	if err != nil {
		return err
	}
	here := "batches"
	if p.Kitchen {
		here = "kitchen"
	}
	return s.show(w, r, "editor.html", s.view(p.Name, here, p))
}

func (s *site) editorPage(file string, text []byte) (editorPage, error) {
	k, _, err := s.folder.kitchen()
	query := pictureQuery(file)
	form := s.withOptions(fillForm(file, string(text), formOf(file)), query)
	p := editorPage{File: file, Text: string(text), Mark: mark(text), Form: form, Steps: formOf(file), Lists: s.suggestions(k),
		Name: form.value("name"), Kitchen: file == store.KitchenName, Pieces: s.pieces(""), Piece: form.value("label.kind")}
	if p.Name == "" || p.Kitchen {
		p.Name = map[bool]string{true: "Your kitchen", false: stem(file)}[p.Kitchen]
	}
	if p.Piece == "" {
		p.Piece = "wrap"
	}
	return p, err
}

// pictureQuery asks for pictures of the maker's own batch.
func pictureQuery(file string) string {
	if file == store.KitchenName {
		return ""
	}
	return "?batch=" + url.QueryEscape(file)
}

// alive answers a page that waits for the program to be there again.
func (s *site) alive(w http.ResponseWriter, r *http.Request) error {
	answerJSON(w, http.StatusOK, map[string]string{"version": assetVersion()})
	return nil
}

// disk answers with the mark of a file on disk, so that a page left open can
// tell when another program changed it.
func (s *site) disk(w http.ResponseWriter, r *http.Request) error {
	data, err := s.folder.read(r.PathValue("file"))
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusOK, map[string]string{"mark": mark(data)})
	return nil
}
