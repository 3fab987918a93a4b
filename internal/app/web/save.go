package web

import (
	"errors"
	"io/fs"
	"net/http"
	"strings"
	"sync"
	"time"

	"jarmark/internal/app/store"
)

// saveAsk is a text to keep; Base is the mark of the text the edit began from.
type saveAsk struct {
	File string `json:"file"`
	Text string `json:"text"`
	Base string `json:"base"`
	// Changes are done in the form and not yet in the text.
	Changes []change `json:"changes"`
	// Passing: saved by itself while the maker works.
	Passing bool `json:"passing"`
}

// saved tells the mark of what is on disk now, and under which name.
type saved struct {
	File string `json:"file"`
	Mark string `json:"mark"`
	Text string `json:"text"` // with the changes in it
}

// conflict is what the disk holds instead of the text the edit began from.
type conflict struct {
	Error  string `json:"error"`
	Theirs string `json:"theirs"`
	Mark   string `json:"mark"`
	Mine   string `json:"mine"` // with the changes in it
	Gone   bool   `json:"gone"` // there is no such file any more
}

func (s *site) save(w http.ResponseWriter, r *http.Request) error {
	var ask saveAsk
	if err := readJSON(r, &ask); err != nil {
		return err
	}
	text, _ := apply(ask.Text, ask.Changes, formOf(ask.File)) // what is refused is told by look
	now, err := s.folder.saveAs(ask.File, ask.Base, []byte(text), ask.Passing && !s.kept.due(ask.File))
	if errors.Is(err, errConflict) {
		return s.answerConflict(w, ask.File, text)
	}
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusOK, saved{ask.File, mark(now), text})
	return nil
}

func (s *site) answerConflict(w http.ResponseWriter, file, mine string) error {
	theirs, err := s.folder.read(file)
	if errors.Is(err, fs.ErrNotExist) {
		theirs, err = nil, nil
	}
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusConflict, conflict{"the file was changed by another program", strings.ReplaceAll(string(theirs), "\r\n", "\n"), mark(theirs), mine, theirs == nil})
	return nil
}

// keeps remembers when an earlier version of a file last went into the history,
// so that what saves itself every second leaves one version every ten minutes.
type keeps struct {
	sync.Mutex
	at map[string]time.Time
}

// keepEvery is how long a sitting goes on before its state is kept again.
const keepEvery = 10 * time.Minute

// due reports whether the version now on disk is to be kept, and notes it.
func (k *keeps) due(file string) bool {
	k.Lock()
	defer k.Unlock()
	if k.at == nil {
		k.at = map[string]time.Time{}
	}
	if now := time.Now(); now.Sub(k.at[file]) > keepEvery {
		k.at[file] = now
		return true
	}
	return false
}

// maxCopies bounds the search for a free name.
const maxCopies = 100

// saveCopy keeps a text beside the file, under a name that is free.
func (s *site) saveCopy(w http.ResponseWriter, r *http.Request) error {
	var ask saveAsk
	if err := readAsk(r, &ask, &ask.File); err != nil {
		return err
	}
	name, err := s.saveAsNew(stem(ask.File)+"-mine", []byte(ask.Text))
	if err != nil {
		return err
	}
	answerJSON(w, http.StatusOK, saved{name, mark([]byte(ask.Text)), ask.Text})
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
