package web

import (
	"errors"
	"io/fs"
	"net/http"

	"jarmark/internal/app/store"
)

// saveAsk is a text to keep; Base is the mark of the text the edit began from.
type saveAsk struct {
	File string `json:"file"`
	Text string `json:"text"`
	Base string `json:"base"`
}

// saved tells the mark of what is on disk now, and under which name.
type saved struct {
	File string `json:"file"`
	Mark string `json:"mark"`
}

// conflict is what the disk holds instead of the text the edit began from.
type conflict struct {
	Error  string `json:"error"`
	Theirs string `json:"theirs"`
	Mark   string `json:"mark"`
}

func (s *site) save(w http.ResponseWriter, r *http.Request) error {
	var ask saveAsk
	if err := readJSON(r, &ask); err != nil {
		return err
	}
	now, err := s.folder.save(ask.File, ask.Base, []byte(ask.Text))
	if errors.Is(err, errConflict) {
		return s.answerConflict(w, ask.File)
	}
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusOK, saved{ask.File, mark(now)})
	return nil
}

func (s *site) answerConflict(w http.ResponseWriter, file string) error {
	theirs, err := s.folder.read(file)
	if errors.Is(err, fs.ErrNotExist) {
		theirs, err = nil, nil
	}
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusConflict, conflict{"the file was changed by another program", string(theirs), mark(theirs)})
	return nil
}

// maxCopies bounds the search for a free name.
const maxCopies = 100

// saveCopy keeps a text beside the file, under a name that is free.
func (s *site) saveCopy(w http.ResponseWriter, r *http.Request) error {
	var ask saveAsk
	if err := readJSON(r, &ask); err != nil {
		return err
	}
	if err := checkName(ask.File); err != nil {
		return err
	}
	name, err := s.saveAsNew(stem(ask.File)+"-mine", []byte(ask.Text))
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusOK, saved{name, mark([]byte(ask.Text))})
	return nil
}

// saveAsNew writes a new file named after base, with a number where the name
// is taken.
func (s *site) saveAsNew(base string, text []byte) (string, error) {
	for i := 1; i <= maxCopies; i++ {
		name := base + ".toml"
		if i > 1 {
			name = base + "-" + itoa(i) + ".toml"
		}
		if name == store.KitchenName {
			continue
		}
		_, err := s.folder.save(name, "", text)
		if errors.Is(err, errConflict) {
			continue
		}
		return name, err
	}
	return "", &problem{http.StatusConflict, "there are too many files of that name", "rename some of them"}
}
