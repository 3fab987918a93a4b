package web

import (
	"net/http"
	"net/url"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// fileDo copies, renames or deletes a batch file, or writes one as UTF-8. Nothing is lost: what is
// taken away stays in the history.
func (s *site) fileDo(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return err
	}
	file, back := r.PostFormValue("file"), "./"
	text, err := s.folder.read(file)
	if err != nil {
		return err
	}
	if file == store.KitchenName && r.PostFormValue("do") != "utf8" {
		return badRequest("the kitchen's file stays where it is")
	}
	switch r.PostFormValue("do") {
	case "again":
		now, l := job.CookAgain(string(text), s.opts.Today())
		if l.HasErrors() {
			return badRequest("%s cannot be copied before it is mended: %s", file, l[0].Message)
		}
		name, err := s.saveAsNew(stem(file)+"-again", []byte(now))
		if err != nil {
			return err
		}
		back = "./batch/" + url.PathEscape(name)
	case "rename":
		err = s.rename(file, strings.TrimSpace(r.PostFormValue("to")), text)
	case "delete":
		err = store.Discard(s.folder.path(file), text)
	case "utf8":
		back, err = s.recode(file, r.PostFormValue("mark"), text)
	default:
		err = badRequest("there is no such thing to do with a file")
	}
	if err != nil {
		return err
	}
	return seeOther(w, back)
}

// rename writes the file under its new name, then takes the old one away.
func (s *site) rename(file, to string, text []byte) error {
	if !strings.HasSuffix(strings.ToLower(to), ".toml") {
		to += ".toml"
	}
	if err := checkName(to); err != nil {
		return err
	}
	if !store.IsBatchName(to) {
		return badRequest("%s is the name of the kitchen's file: choose another", to)
	}
	if _, err := s.folder.root.Lstat(to); err == nil {
		return &problem{http.StatusConflict, "there is a file " + to + " already", "choose another name"}
	}
	if _, err := s.folder.save(to, "", text); err != nil {
		return err
	}
	return store.Discard(s.folder.path(file), text)
}
