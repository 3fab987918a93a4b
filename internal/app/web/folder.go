package web

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// folder is the maker's folder; nothing outside it is read or written, but for
// a kitchen.toml in a parent folder, which is read and never written.
type folder struct {
	dir  string
	root *os.Root
}

func openFolder(dir string) (*folder, error) {
	abs, err := filepath.Abs(dir)
	if err != nil {
		return nil, err
	}
	root, err := os.OpenRoot(abs)
	if err != nil {
		return nil, err
	}
	return &folder{abs, root}, nil
}

// maxName is the longest file name taken, in bytes.
const maxName = 120

// checkName lets plain names of batch files pass, and the kitchen's.
func checkName(name string) error {
	if plainName(name, ".toml") {
		return nil
	}
	return &problem{http.StatusNotFound, "there is no such batch file", "names end in .toml and stand in the folder itself"}
}

// plainName reports whether a name may stand in the folder, and ends so.
func plainName(name, end string) bool {
	return len(name) > len(end) && len(name) <= maxName && strings.EqualFold(filepath.Ext(name), end) && !strings.HasPrefix(name, ".") &&
		!strings.ContainsAny(name, `/\:`) && !strings.ContainsRune(name, 0) && filepath.IsLocal(name)
}

// ordinary refuses links, folders and devices in the place of a file.
func (f *folder) ordinary(name string) error {
	if err := checkName(name); err != nil {
		return err
	}
	return f.regular(name)
}

func (f *folder) regular(name string) error {
	st, err := f.root.Lstat(name)
	if err != nil {
		return err
	}
	if !st.Mode().IsRegular() {
		return &problem{http.StatusForbidden, name + " is not an ordinary file", "links out of the folder are not followed: put the file itself there"}
	}
	return nil
}

// read reads one file of the folder.
func (f *folder) read(name string) ([]byte, error) {
	if err := f.ordinary(name); err != nil {
		return nil, err
	}
	return f.whole(name)
}

// whole reads an ordinary file, up to the largest a batch may be.
func (f *folder) whole(name string) ([]byte, error) {
	file, err := f.root.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, store.MaxFile+1))
	if err == nil && len(data) > store.MaxFile {
		err = fmt.Errorf("%s: %w", name, store.ErrTooBig)
	}
	return data, err
}

// batches lists the batch files by name; left are those that are no ordinary
// files.
func (f *folder) batches() (out, left []string, err error) {
	paths, err := store.Batches(f.dir)
	for _, p := range paths {
		if name := filepath.Base(p); f.ordinary(name) == nil {
			out = append(out, name)
		} else {
			left = append(left, name)
		}
	}
	return out, left, err
}

// kitchen reads kitchen.toml: the folder's own, else that of a parent folder
// (own is false then). Without one the Doc has a name and no data.
func (f *folder) kitchen() (doc job.Doc, own bool, err error) {
	data, err := f.read(store.KitchenName)
	if err == nil {
		return job.Doc{Name: store.KitchenName, Data: data}, true, nil
	}
	if !errors.Is(err, fs.ErrNotExist) {
		return job.Doc{}, false, err
	}
	up, ok, err := store.KitchenIn(filepath.Dir(f.dir))
	if err != nil || !ok {
		return job.Doc{Name: store.KitchenName}, true, err
	}
	return job.Doc{Name: up.Name, Data: up.Data}, false, nil
}

// input is a batch of the folder, with the text given or, when nil, the
// file's.
func (f *folder) input(name string, text []byte) (job.Input, error) {
	var err error
	if text == nil {
		if text, err = f.read(name); err != nil {
			return job.Input{}, err
		}
	}
	k, _, err := f.kitchen()
	if err != nil {
		return job.Input{Batch: job.Doc{Name: name, Data: text}}, err
	}
	book, err := f.ledger(k)
	return job.Input{Kitchen: k, Batch: job.Doc{Name: name, Data: text}, Ledger: book}, err
}

// ledger reads the ledger beside the kitchen's file. Without one the Doc has a
// name and no data.
func (f *folder) ledger(kitchen job.Doc) (job.Doc, error) {
	if filepath.Dir(kitchen.Name) != "." { // the kitchen lies above
		doc, err := store.Ledger(kitchen.Name, "")
		return job.Doc(doc), err
	}
	st, err := f.root.Lstat(store.LedgerName)
	if errors.Is(err, fs.ErrNotExist) {
		return job.Doc{Name: store.LedgerName}, nil
	}
	if err == nil && !st.Mode().IsRegular() {
		err = &problem{http.StatusForbidden, store.LedgerName + " is not an ordinary file", "links out of the folder are not followed: put the file itself there"}
	}
	if err != nil {
		return job.Doc{Name: store.LedgerName}, err
	}
	doc, err := store.Ledger(f.path(store.KitchenName), "")
	return job.Doc{Name: store.LedgerName, Data: doc.Data}, err
}

// errConflict means the disk holds another text than the edit began from.
var errConflict = errors.New("the file changed on disk")

// save replaces a file when the disk still holds the text whose mark is base;
// an empty base makes a new file. The earlier version goes into the history.
// It gives what was written: the text with the line ends of the file.
func (f *folder) save(name, base string, text []byte) ([]byte, error) {
	return f.saveAs(name, base, text, false)
}

// saveAs is save; of a passing version the history keeps none.
func (f *folder) saveAs(name, base string, text []byte, passing bool) ([]byte, error) {
	if err := checkName(name); err != nil {
		return nil, err
	}
	was, err := f.read(name)
	return f.put(name, base, was, err, text, passing)
}

// put writes text over what was read.
func (f *folder) put(name, base string, was []byte, err error, text []byte, passing bool) ([]byte, error) {
	if errors.Is(err, fs.ErrNotExist) {
		was, err = nil, nil
	}
	if err != nil {
		return nil, err
	}
	if mark(was) != base {
		return nil, errConflict
	}
	if len(text) > store.MaxFile {
		return nil, store.ErrTooBig
	}
	now := lineEnds(was, text)
	err = store.SaveAll([]store.Edit{{Path: f.path(name), Was: was, Now: now, Passing: passing}})
	if errors.Is(err, store.ErrChanged) {
		return nil, errConflict
	}
	return now, err
}

// path is where a file of the folder lies.
func (f *folder) path(name string) string { return filepath.Join(f.dir, filepath.FromSlash(name)) }

// inputs are the files results must never overwrite: batches, the kitchen, and
// the maker's own designs and sheets.
func (f *folder) inputs(batches []*job.Batch) (out []string) {
	for _, b := range batches {
		out = append(out, f.path(b.Input.Batch.Name))
	}
	for _, dir := range []string{"designs", "sheets"} {
		entries, _ := os.ReadDir(f.path(dir)) // often there is none
		for _, e := range entries {
			out = append(out, f.path(dir+"/"+e.Name()))
		}
	}
	return append(out, f.path(store.KitchenName))
}

// mark tells texts apart; that of no file is empty.
func mark(text []byte) string {
	if text == nil {
		return ""
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:16])
}
