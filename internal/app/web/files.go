package web

import (
	"net/http"
	"net/url"
	"strings"

	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/edit"
	"jarmark/internal/kit/source"
)

// fileDo copies, renames or deletes a batch file. Nothing is lost: what is
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
	if file == store.KitchenName {
		return badRequest("the kitchen's file stays where it is")
	}
	switch r.PostFormValue("do") {
	case "again":
		now, l := cookAgain(string(text), s.opts.Today().String())
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
	default:
		err = badRequest("there is no such thing to do with a file")
	}
	if err != nil {
		return err
	}
	w.Header().Set("Location", back)
	w.WriteHeader(http.StatusSeeOther)
	return nil
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

// ofOnePot are the keys that tell of one pot and its jars: a copy to cook again
// begins without them, since what was measured then proves nothing now.
var ofOnePot = []string{"lot", "best_before", "use_by", "gift", "market", "cook.finished_pot", "cook.brix", "cook.brix_temperature", "cook.ph",
	"cook.ph_date", "cook.temperature", "cook.skimmed", "ingredient[].lot", "fill[].count", "fill[].sealed", "fill[].net", "fill[].gross", "fill[].tare",
	"fill[].declared", "fill[].part_jar"}

// cookAgain makes a plan of a record: the recipe, made today.
func cookAgain(text, today string) (string, diag.List) {
	f, l := source.Parse("", []byte(text))
	if l.HasErrors() {
		return text, l
	}
	for _, key := range ofOnePot {
		table, rest, rows := strings.Cut(key, "[].")
		for i := 0; rows && i < rowCount(f, table); i++ {
			text = without(text, source.At(table, i)+"."+rest)
		}
		if !rows {
			text = without(text, key)
		}
	}
	text, l = set(text, change{Path: "made", Value: today}, field{As: day})
	return text, l
}

// without takes a key, a table or all rows of a table out of a text.
func without(text, path string) string {
	for {
		f, _ := source.Parse("", []byte(text))
		at := path
		if _, rows := f.Entry(source.At(path, 0)); rows && rowCount(f, path) > 0 {
			at = source.At(path, 0)
		} else if _, there := f.Entry(path); !there {
			return text
		}
		now, l := edit.Delete(text, at)
		if l.HasErrors() || now == text {
			return text
		}
		text = now
	}
}
