package site

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// Limits on what is brought in: far above any jam kitchen, far below what would
// bring a browser down.
const (
	maxFiles = 5000
	maxBytes = 128 << 20 // unpacked
)

// TakeOut writes all files of a folder as a zip, without those of a run at
// work (locks and half-written files).
func TakeOut(w io.Writer, dir fs.FS) error {
	z := zip.NewWriter(w)
	err := fs.WalkDir(dir, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !d.Type().IsRegular() || passing(path.Base(name)) {
			return err
		}
		return addFile(z, dir, name, d)
	})
	return errors.Join(err, z.Close())
}

func addFile(z *zip.Writer, dir fs.FS, name string, d fs.DirEntry) error {
	info, err := d.Info()
	if err != nil {
		return err
	}
	data, err := fs.ReadFile(dir, name)
	if err != nil {
		return err
	}
	to, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: info.ModTime()})
	if err == nil {
		_, err = to.Write(data)
	}
	return err
}

// passing names what a run leaves only while it works.
func passing(name string) bool {
	return name == ".jarmark-lock" || strings.HasPrefix(name, ".jarmark-") && strings.HasSuffix(name, ".tmp")
}

// Brought says what became of the files of a zip, by their names.
type Brought struct {
	New  []string // written
	Same []string // there already, alike
	Left []string // there already with other content: not touched
}

func (b Brought) String() string {
	words := []string{many(len(b.New), "file") + " brought in."}
	if len(b.Same) > 0 {
		words = append(words, many(len(b.Same), "file")+" here already, alike.")
	}
	if len(b.Left) > 0 {
		shown := b.Left[:min(len(b.Left), 5)]
		words = append(words, fmt.Sprintf("Left as they are, because a file of that name here holds something else: %s%s.",
			strings.Join(shown, ", "), map[bool]string{true: " and more"}[len(shown) < len(b.Left)]))
	}
	return strings.Join(words, " ")
}

func many(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// RefusedError says why files are not taken in; nothing was written.
type RefusedError struct{ What, Hint string }

func (e *RefusedError) Error() string { return e.What }

// BringIn writes a file, or all files of a zip, into a folder: all or none, and
// never over one that is there. Names that lead out of the folder, and what is
// neither a zip nor a file of the kitchen, are refused.
func BringIn(dir, name string, data []byte) (Brought, error) {
	files, err := unpack(name, data)
	if err != nil {
		return Brought{}, err
	}
	var b Brought
	for _, f := range files {
		old, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(f.name)))
		switch {
		case errors.Is(err, fs.ErrNotExist):
			b.New = append(b.New, f.name)
		case err == nil && bytes.Equal(old, f.data):
			b.Same = append(b.Same, f.name)
		default:
			b.Left = append(b.Left, f.name)
		}
	}
	return b, writeNew(dir, files, b.New)
}

// writeNew writes the files named; a fault takes back those written before it.
func writeNew(dir string, files []entry, names []string) (err error) {
	wanted := map[string]bool{}
	for _, n := range names {
		wanted[n] = true
	}
	var wrote []string
	defer func() {
		if err != nil {
			for _, n := range wrote {
				os.Remove(n)
			}
		}
	}()
	for _, f := range files {
		if !wanted[f.name] {
			continue
		}
		to := filepath.Join(dir, filepath.FromSlash(f.name))
		if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
			return err
		}
		out, err := os.OpenFile(to, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o666)
		if err != nil {
			return err
		}
		wrote = append(wrote, to)
		_, err = out.Write(f.data)
		if err = errors.Join(err, out.Close()); err != nil {
			return err
		}
	}
	return nil
}

// entry is one file on its way in.
type entry struct {
	name string // with slashes
	data []byte
}

func unpack(name string, data []byte) ([]entry, error) {
	switch ext := strings.ToLower(path.Ext(name)); ext {
	case ".zip":
		return unzip(data)
	case ".toml", ".csv", ".png", ".jpg", ".jpeg", ".svg", ".ttf", ".otf":
		if err := checkPath(name); err != nil || strings.Contains(name, "/") {
			return nil, &RefusedError{fmt.Sprintf("%q is no name for a file here", name), "give it a plain name"}
		}
		if strings.HasSuffix(ext, "tf") {
			name = "fonts/" + name
		}
		return []entry{{name, data}}, nil
	}
	return nil, &RefusedError{fmt.Sprintf("%s is neither a zip nor a file of the kitchen", name), "batches and the kitchen end in .toml, gift lists and the ledger in .csv, pictures in .png, .jpg or .svg, typefaces in .ttf"}
}

func unzip(data []byte) ([]entry, error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, &RefusedError{"that zip cannot be read: " + err.Error(), "take it out of the other browser again"}
	}
	var out []entry
	total := 0
	seen := map[string]bool{}
	for _, f := range z.File {
		if f.FileInfo().IsDir() || passing(path.Base(f.Name)) || foreign(f.Name) {
			continue
		}
		if err := checkPath(f.Name); err != nil || seen[f.Name] || !f.Mode().IsRegular() {
			return nil, &RefusedError{fmt.Sprintf("the zip holds %q, which is no ordinary file name", f.Name), "make the zip anew, of the folder alone"}
		}
		content, err := readEntry(f, maxBytes-total)
		if err != nil {
			return nil, err
		}
		total += len(content)
		seen[f.Name] = true
		out = append(out, entry{f.Name, content})
		if len(out) > maxFiles {
			return nil, &RefusedError{fmt.Sprintf("the zip holds more than %d files", maxFiles), "bring in the folder of the jam alone"}
		}
	}
	return out, nil
}

// readEntry unpacks one file, at most room bytes: a zip may unpack to far more
// than it says.
func readEntry(f *zip.File, room int) ([]byte, error) {
	r, err := f.Open()
	if err != nil {
		return nil, &RefusedError{fmt.Sprintf("%s in the zip cannot be read: %v", f.Name, err), "make the zip anew"}
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, int64(room)+1))
	if err != nil {
		return nil, &RefusedError{fmt.Sprintf("%s in the zip cannot be read: %v", f.Name, err), "make the zip anew"}
	}
	if len(data) > room {
		return nil, &RefusedError{fmt.Sprintf("the zip unpacks to more than %d MB", maxBytes>>20), "bring in the folder of the jam alone"}
	}
	return data, nil
}

// foreign is what systems add to zips of their own.
func foreign(name string) bool {
	return strings.HasPrefix(name, "__MACOSX/") || path.Base(name) == ".DS_Store"
}

// checkPath lets names pass that stay in the folder on every system.
func checkPath(name string) error {
	if !fs.ValidPath(name) || !filepath.IsLocal(filepath.FromSlash(name)) || strings.ContainsAny(name, "\\:\x00") {
		return fs.ErrInvalid
	}
	return nil
}
