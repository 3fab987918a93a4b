package web

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"path/filepath"
	"strings"

	"jarmark/internal/app/store"
)

const jsonType = "application/json"

// handler answers a request or says why not; plain turns that into a page or,
// for scripts, into JSON.
type handler func(w http.ResponseWriter, r *http.Request) error

// problem is an answer that tells the maker what to do about it.
type problem struct {
	Status int    `json:"-"`
	What   string `json:"error"`
	Hint   string `json:"hint,omitempty"`
}

func (p *problem) Error() string { return p.What }

var errNotFound = &problem{http.StatusNotFound, "there is no such page", "go back to the list of batches"}

func badRequest(format string, args ...any) error {
	return &problem{Status: http.StatusBadRequest, What: fmt.Sprintf(format, args...)}
}

// plain answers faults in words.
func (s *site) plain(h handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		err := h(w, r)
		if err == nil {
			return
		}
		s.tell(w, r, s.explain(err))
	})
}

// tell answers with a problem: a script in JSON, a reader with a page.
func (s *site) tell(w http.ResponseWriter, r *http.Request, p *problem) {
	if r.Header.Get("Content-Type") == jsonType {
		answerJSON(w, p.Status, p)
		return
	}
	v := s.view("Something is wrong", "", p)
	v.Root = rootOf(r)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(p.Status)
	if err := s.pages.ExecuteTemplate(w, "problem.html", v); err != nil {
		s.opts.Log.Print(err)
	}
}

// explain words a fault; those of the program itself are logged.
func (s *site) explain(err error) *problem {
	var p *problem
	var tooBig *http.MaxBytesError
	switch {
	case errors.Is(err, context.Canceled):
		return &problem{http.StatusServiceUnavailable, "nobody waits for this any more", ""}
	case errors.As(err, &p):
		return p
	case errors.As(err, &tooBig):
		return &problem{http.StatusRequestEntityTooLarge, "that is more than a batch file can be", ""}
	case errors.Is(err, fs.ErrNotExist):
		return &problem{http.StatusNotFound, "there is no such file in this folder", "it may have been renamed or moved; go back to the list"}
	case errors.Is(err, fs.ErrPermission):
		return &problem{http.StatusForbidden, "the folder does not allow it: " + err.Error(), "check who may read and write there"}
	}
	if p := s.unwritten(err); p != nil {
		return p
	}
	s.opts.Log.Print(err)
	return &problem{http.StatusInternalServerError, err.Error(), ""}
}

// unwritten words why the store left the maker's files as they are.
func (s *site) unwritten(err error) *problem {
	var foreign *store.ForeignError
	var taken *store.TakenError
	what := strings.ReplaceAll(err.Error(), s.folder.dir+string(filepath.Separator), "") + "; nothing was changed"
	switch {
	case errors.As(err, &foreign):
		return &problem{http.StatusConflict, what, "move that file elsewhere, then do it again"}
	case errors.As(err, &taken):
		return &problem{http.StatusConflict, what, "write a lot of its own into one of the two"}
	case errors.Is(err, store.ErrNotText):
		return &problem{http.StatusUnprocessableEntity, what, "saved here it would be garbled: save it as UTF-8 in the program it was written with, then open it here again"}
	case errors.Is(err, store.ErrReadOnly):
		return &problem{http.StatusForbidden, what, "allow writing to it if it may change"}
	case errors.Is(err, store.ErrLinked):
		return &problem{http.StatusForbidden, what, "make it a file of its own, or edit it by hand"}
	case errors.Is(err, store.ErrBusy):
		return &problem{http.StatusConflict, what, "do it again in a moment"}
	}
	return nil
}

// refuse is the guard's short answer, before any page is known.
func refuse(w http.ResponseWriter, status int, why string) {
	answerJSON(w, status, &problem{What: why})
}

func answerJSON(w http.ResponseWriter, status int, v any) {
	data, err := asLine(v)
	if err != nil {
		status = http.StatusInternalServerError
	}
	w.Header().Set("Content-Type", jsonType)
	w.WriteHeader(status)
	_, _ = w.Write(data) // the reader may have gone away: nothing to be done
}

// answerAhead sends a line of an answer at once; the rest follows.
func answerAhead(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", jsonType)
	answerLine(w, v)
	_ = http.NewResponseController(w).Flush() // a writer that can't sends both together
}

// answerLine sends a line of an answer that has begun.
func answerLine(w http.ResponseWriter, v any) {
	data, _ := asLine(v)
	_, _ = w.Write(data) // the reader may have gone away: nothing to be done
}

// asLine is a value as a line of JSON. Nobody takes it for a page (its type says
// what it is, and is not guessed at), so that < and > of drawings stand as they are.
func asLine(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return []byte("{\"error\":\"the answer could not be written\"}\n"), err
	}
	return b.Bytes(), nil
}

// readAsk reads a question about a file and looks at the file's name.
func readAsk(r *http.Request, into any, file *string) error {
	if err := readJSON(r, into); err != nil {
		return err
	}
	return checkName(*file)
}

// readJSON reads the body of a request strictly.
func readJSON(r *http.Request, into any) error {
	d := json.NewDecoder(r.Body)
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		var tooBig *http.MaxBytesError
		if errors.As(err, &tooBig) {
			return err
		}
		return badRequest("the request cannot be read: %v", err)
	}
	return nil
}
