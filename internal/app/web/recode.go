package web

import (
	"bytes"
	"net/http"
	"net/url"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"

	"jarmark/internal/app/store"
)

// recodePage shows a file that is not UTF-8 as it reads in the encoding it
// seems to have, before it is converted. Unread is true where letters have no
// meaning there.
type recodePage struct {
	File, Encoding, Text, Mark string
	Unread                     bool
}

// plainText reports whether a file can be edited as it is.
func plainText(data []byte) bool { return utf8.Valid(data) && bytes.IndexByte(data, 0) < 0 }

// recoded reads a text that is not UTF-8: UTF-16 by its byte order mark (Unicode
// Standard 23.8) or by where the zero bytes of its plain letters stand, else
// Windows-1252, which the WHATWG Encoding Standard reads every "latin1" as.
func recoded(data []byte) (text, encoding string) {
	switch {
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}):
		return wide(data[2:], 0), "UTF-16"
	case bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		return wide(data[2:], 1), "UTF-16"
	case bytes.IndexByte(data, 0) >= 0:
		return wide(data, 1-bytes.IndexByte(data, 0)%2), "UTF-16"
	}
	out, err := charmap.Windows1252.NewDecoder().Bytes(data)
	if err != nil {
		return "", ""
	}
	return string(out), "Windows-1252"
}

// wide reads pairs of bytes; low is which of a pair counts ones.
func wide(data []byte, low int) string {
	var units []uint16
	for i := 0; i+1 < len(data); i += 2 {
		units = append(units, uint16(data[i+low])|uint16(data[i+1-low])<<8)
	}
	return string(utf16.Decode(units))
}

// showRecode offers to convert a file, instead of an editor that would garble it.
func (s *site) showRecode(w http.ResponseWriter, r *http.Request, file string, data []byte) error {
	p := recodePage{File: file, Mark: mark(data)}
	p.Text, p.Encoding = recoded(data)
	p.Unread = p.Text == "" || strings.ContainsAny(p.Text, "\uFFFD\x00")
	return s.show(w, r, "recode.html", s.view(stem(file), "batches", p))
}

// recode writes a file anew as UTF-8; the file as it was stays in the history.
func (s *site) recode(file, seen string, data []byte) (back string, err error) {
	back = "./batch/" + url.PathEscape(file)
	if file == store.KitchenName {
		back = "./kitchen"
	}
	text, _ := recoded(data)
	switch {
	case plainText(data):
		return back, nil
	case mark(data) != seen:
		return "", &problem{http.StatusConflict, file + " was changed by another program", "look at it again, then convert it"}
	case text == "" || strings.ContainsAny(text, "\uFFFD\x00"):
		return "", &problem{http.StatusUnprocessableEntity, file + " holds letters that no encoding known here explains; nothing was changed", "save it as UTF-8 in the program it was written with"}
	}
	return back, store.SaveAll([]store.Edit{{Path: s.folder.path(file), Was: data, Now: []byte(text), Recode: true}})
}
