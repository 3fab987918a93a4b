package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// Unread is a file or folder that may hold batches and was not read, and why.
type Unread struct {
	Path string
	Why  string
}

// maxFolders bounds a walk: a link to the top of a disk must not keep a recall
// waiting. What lies beyond is told as unread.
const maxFolders = 50_000

// Everything finds every batch file in a folder and all folders below it: at
// any depth, in any letter case of .toml, through links, each once. What it
// cannot read, or leaves out because it is hidden, it names: an answer over
// these files must say so.
func Everything(dir string) (files []string, unread []Unread) {
	w := walk{folders: map[string]bool{}, seen: map[string]bool{}}
	w.folder(dir)
	sort.Strings(w.files)
	sort.Slice(w.unread, func(i, j int) bool { return w.unread[i].Path < w.unread[j].Path })
	return w.files, w.unread
}

// Below is Everything without a word about hidden folders: for work that may go
// on without an old copy.
func Below(dir string) (files []string, unread []Unread) {
	w := walk{folders: map[string]bool{}, seen: map[string]bool{}, bare: true}
	w.folder(dir)
	sort.Strings(w.files)
	return w.files, w.unread
}

type walk struct {
	bare    bool            // hidden folders are passed over
	folders map[string]bool // by real path: a link may lead back up
	seen    map[string]bool // files by real path
	files   []string
	unread  []Unread
}

func (w *walk) miss(path string, err error) {
	w.unread = append(w.unread, Unread{path, Reason(err)})
}

func (w *walk) folder(dir string) {
	real, err := realPath(dir)
	if err != nil {
		w.miss(dir, err)
		return
	}
	if w.folders[real] {
		return
	}
	if len(w.folders) >= maxFolders {
		w.miss(dir, fmt.Errorf("there are more than %d folders", maxFolders))
		return
	}
	w.folders[real] = true
	entries, err := os.ReadDir(dir) // what was read before a fault is kept
	if err != nil {
		w.miss(dir, err)
	}
	for _, e := range entries {
		w.entry(filepath.Join(dir, e.Name()), e)
	}
}

func (w *walk) entry(path string, e fs.DirEntry) {
	name, mode := e.Name(), e.Type()
	if mode&fs.ModeSymlink != 0 {
		st, err := os.Stat(path)
		switch {
		case err == nil:
			mode = st.Mode().Type()
		case mayHold(name): // a link that leads nowhere
			w.miss(path, err)
			return
		default:
			return
		}
	}
	switch {
	case name == HistoryName: // earlier versions of what is read beside it
	case mode.IsDir() && strings.HasPrefix(name, "."):
		if !w.bare {
			w.hidden(path)
		}
	case mode.IsDir():
		w.folder(path)
	case strings.HasPrefix(name, ".") || !IsBatchName(name):
	case mode.IsRegular():
		w.file(path)
	default:
		w.miss(path, errNotOrdinary)
	}
}

// mayHold reports whether a link of this name may have led to batches: to a
// file of a batch's name, or to a folder.
func mayHold(name string) bool {
	return !strings.HasPrefix(name, ".") && (IsBatchName(name) || filepath.Ext(name) == "")
}

func (w *walk) file(path string) {
	real, err := realPath(path)
	switch {
	case err != nil:
		w.miss(path, err)
	case !w.seen[real]:
		w.seen[real] = true
		w.files = append(w.files, path)
	}
}

// hidden looks for batch files in a hidden folder, such as a trash or a
// backup: their jars would be counted twice, so they are named, not read.
func (w *walk) hidden(dir string) {
	n := 0
	_ = filepath.WalkDir(dir, func(_ string, e fs.DirEntry, err error) error {
		if err == nil && !e.IsDir() && IsBatchName(e.Name()) && !strings.HasPrefix(e.Name(), ".") {
			n++
		}
		return nil // hidden and unreadable is nothing to tell of
	})
	if n > 0 {
		w.miss(dir, fmt.Errorf("hidden folders are left out, and this one holds batch files (%d)", n))
	}
}

func realPath(path string) (string, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	return filepath.EvalSymlinks(abs)
}

var errNotOrdinary = errors.New("not an ordinary file")

// Reason words a fault of the disk without the path, which stands before it.
func Reason(err error) string {
	var pe *fs.PathError
	switch {
	case errors.Is(err, ErrTooBig):
		return fmt.Sprintf("it is too big (over %d MB)", MaxFile>>20)
	case errors.Is(err, fs.ErrNotExist):
		return "it is not there, or is a link that leads nowhere"
	case errors.Is(err, fs.ErrPermission):
		return "it may not be read: permission denied"
	case errors.Is(err, errNotOrdinary):
		return "it is not an ordinary file"
	case errors.As(err, &pe):
		return pe.Err.Error()
	}
	return err.Error()
}

// ReadEverything hands over all that Everything finds, each file with its
// kitchen and ledger (no Data when there is none). One of those that cannot be
// read is named once; its batches are still read.
func ReadEverything(dir string, each func(batch, kitchen, ledger Doc)) (unread []Unread) {
	files, unread := Everything(dir)
	told, ledgers := map[string]bool{}, map[string]Doc{}
	for _, f := range files {
		doc, err := Read(f)
		if err != nil {
			unread = append(unread, Unread{f, Reason(err)})
			continue
		}
		kitchen, _, err := Kitchen(f)
		if at := filepath.Dir(f); err != nil && !told[at] {
			told[at] = true
			unread = append(unread, Unread{filepath.Join(at, KitchenName), "the kitchen file of this folder: " + Reason(err)})
		}
		at := filepath.Dir(kitchen.Name)
		if kitchen.Name == "" {
			at = filepath.Dir(f)
		}
		book, known := ledgers[at]
		if !known {
			if book, err = Ledger(kitchen.Name, f); err != nil {
				unread = append(unread, Unread{book.Name, "the ledger: " + Reason(err)})
			}
			ledgers[at] = book
		}
		each(doc, kitchen, book)
	}
	return unread
}
