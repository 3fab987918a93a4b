// Package store is the only part that touches the maker's disk: it finds and
// reads TOML files, and writes results so that they appear whole or not at all.
// It knows nothing of what the files say.
package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// KitchenName is the file that says who the maker is.
const KitchenName = "kitchen.toml"

// MaxFile is the largest batch, kitchen or list file read, in bytes; a batch
// of thousands of ingredients is far smaller.
const MaxFile = 8 << 20

// LedgerName is the book of where jars went, beside the kitchen's file.
const LedgerName = "ledger.csv"

// parents is how many folders above a batch are searched for kitchen.toml.
const parents = 64

// Doc is one file read whole.
type Doc struct {
	Name string // path as the user would write it
	Data []byte
}

// ErrTooBig means a file is larger than MaxFile.
var ErrTooBig = errors.New("file is too big")

// Read reads one regular file of at most MaxFile bytes. Folders, pipes and
// devices are refused, so that a slip of the keyboard cannot hang the program.
func Read(path string) (Doc, error) {
	st, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		if _, there := os.Lstat(path); there == nil { // else it would pass for no file at all
			return Doc{}, fmt.Errorf("%s: %w", path, ErrDangling)
		}
	}
	if err != nil {
		return Doc{}, err
	}
	if !st.Mode().IsRegular() {
		return Doc{}, fmt.Errorf("%s: %w", path, errNotOrdinary)
	}
	f, err := os.Open(path)
	if err != nil {
		return Doc{}, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, MaxFile+1))
	if err != nil {
		return Doc{}, err
	}
	if len(data) > MaxFile {
		return Doc{}, fmt.Errorf("%s: %w (over %d MB)", path, ErrTooBig, MaxFile>>20)
	}
	return Doc{Name: path, Data: data}, nil
}

// Kitchen finds kitchen.toml beside the batch or in a parent folder. ok is
// false when there is none.
func Kitchen(batchPath string) (doc Doc, ok bool, err error) {
	return KitchenIn(filepath.Dir(batchPath))
}

// KitchenIn finds kitchen.toml in a folder or one of its parents.
func KitchenIn(dir string) (doc Doc, ok bool, err error) {
	dir = filepath.Clean(dir)
	for range parents {
		doc, err = Read(filepath.Join(dir, KitchenName))
		if err == nil {
			return doc, true, nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return Doc{}, false, err
		}
		up, perr := parent(dir)
		if perr != nil || up == dir {
			break
		}
		dir = up
	}
	return Doc{}, false, nil
}

// Ledger reads the ledger of a kitchen, or of the batch's folder when there is
// no kitchen. One that is not there yet has a name and no data.
func Ledger(kitchenPath, batchPath string) (Doc, error) {
	if kitchenPath == "" {
		kitchenPath = batchPath
	}
	path := filepath.Join(filepath.Dir(kitchenPath), LedgerName)
	doc, err := Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Doc{Name: path}, nil
	}
	doc.Name = path
	return doc, err
}

// parent keeps relative paths relative while it can ("a/b" -> "a" -> "." ->
// the absolute parent), so that findings show names the maker typed.
func parent(dir string) (string, error) {
	if dir != "." && !strings.HasPrefix(dir, "..") {
		return filepath.Dir(dir), nil
	}
	abs, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	return filepath.Dir(abs), nil
}

// IsBatchName reports whether a file may be a batch by its name: it ends in
// .toml, in any letter case, and is not the kitchen's.
func IsBatchName(name string) bool {
	return strings.EqualFold(filepath.Ext(name), ".toml") && !strings.EqualFold(name, KitchenName)
}

// Batches lists the batch files of a folder by name: every *.toml but the
// kitchen's, hidden files, and copies kept by Save. It does not look deeper.
func Batches(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var out []string
	for _, e := range entries {
		n := e.Name()
		if e.IsDir() || strings.HasPrefix(n, ".") || !IsBatchName(n) {
			continue
		}
		out = append(out, filepath.Join(dir, n))
	}
	sort.Strings(out)
	return out, nil
}
