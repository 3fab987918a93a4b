package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// write puts results where -o says: stdout for "-", the named file for one
// result, numbered beside it for several; without -o, a name in this folder.
// A file the maker named is replaced as usual; one we named only if it is ours.
func (a *app) write(out, base string, files []job.File, in []job.Input) error {
	if out == "-" {
		if len(files) != 1 {
			return usagef("name a file with -o", "%d files cannot go to stdout", len(files))
		}
		_, err := a.out.Write(files[0].Data)
		return err
	}
	named := out != ""
	if !named {
		out = base
	}
	dir, name := filepath.Split(out)
	if dir == "" {
		dir = "."
	}
	stem, err := stemOf(name, filepath.Ext(files[0].Name))
	if err != nil {
		return err
	}
	r := store.Results{Dir: dir, Single: true, Listed: stem == base}
	if named {
		r.Kin = kin
	}
	for i, f := range files {
		n := stem + filepath.Ext(f.Name)
		if len(files) > 1 {
			n = fmt.Sprintf("%s-%d%s", stem, i+1, filepath.Ext(f.Name))
		}
		r.Files = append(r.Files, store.File{Name: n, Data: f.Data})
	}
	if err := a.publish(r, in); err != nil {
		return err
	}
	for _, f := range r.Files {
		fmt.Fprintln(a.out, filepath.Join(dir, f.Name))
	}
	return nil
}

// foreignEndings are endings that say a file is something else than we make.
const foreignEndings = " .pdf .svg .png .csv .txt .toml .html .htm .json .jpg .jpeg .gif .webp .tif .tiff .heic .bmp .eps .ps .doc .docx .odt .rtf .xls .xlsx .ods .md .zip "

// stemOf is the name without its ending; an ending of another kind is told.
func stemOf(name, want string) (string, error) {
	has := strings.ToLower(filepath.Ext(name))
	switch {
	case has == want:
		return name[:len(name)-len(want)], nil
	case strings.Contains(foreignEndings, " "+has+" "):
		return "", usagef("end the name in "+want+", or choose another --format", "the result is %s, not %s", want[1:], has[1:])
	}
	return name, nil
}

// kin reports whether an earlier file is of the kind of the new one, by what
// its first bytes say: a list of addresses is no packing list though both are
// CSV, and what only bears the ending is neither.
func kin(name string, old, new []byte) bool {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".pdf":
		return bytes.HasPrefix(old, []byte("%PDF-"))
	case ".png":
		return bytes.HasPrefix(old, []byte("\x89PNG\r\n\x1a\n"))
	case ".svg":
		return bytes.Contains(old[:min(len(old), 2000)], []byte("<svg"))
	case ".csv":
		return bytes.Equal(firstLine(old), firstLine(new))
	}
	return ourText.Match(firstLine(old))
}

// ourText is how a packing list, a recall and a scaled recipe begin.
var ourText = regexp.MustCompile(`^(Packing list\b|The season\b|Lot \S+: |.+, for \d+ x )`)

func firstLine(b []byte) []byte {
	line, _, _ := bytes.Cut(b, []byte("\n"))
	return bytes.TrimSpace(line)
}

// publish writes results and tells what it did beside; what was read is never
// written over.
func (a *app) publish(r store.Results, in []job.Input) error {
	r.Force = a.force
	r.Inputs = append(inputNames(in), a.read...)
	did, err := store.Publish(r)
	if err != nil {
		return err
	}
	a.wrote = true
	for _, k := range did.Kept {
		fmt.Fprintf(a.err, "%s was kept as %s\n", k[0], k[1])
	}
	for _, n := range did.Removed {
		fmt.Fprintf(a.err, "%s is no longer made: removed\n", filepath.Join(r.Dir, filepath.FromSlash(n)))
	}
	for _, n := range did.Stale {
		fmt.Fprintf(a.err, "%s is no longer made; it was changed by hand, so it stays\n", filepath.Join(r.Dir, filepath.FromSlash(n)))
	}
	if did.Gone != "" {
		fmt.Fprintf(a.err, "%s was made before from %s, which is there no more\n", r.Dir, did.Gone)
	}
	return nil
}

// storeFiles are files made from one batch file.
func storeFiles(files []job.File, from string) (out []store.File) {
	for _, f := range files {
		out = append(out, store.File{Name: f.Name, Data: f.Data, From: from})
	}
	return out
}

// batchFile is the file of a batch on disk; none for the built-in demo.
func batchFile(in job.Input) string {
	if builtin(in) {
		return ""
	}
	return in.Batch.Name
}

func inputNames(in []job.Input) (names []string) {
	seen := map[string]bool{"": true}
	for _, i := range in {
		for _, n := range []string{i.Batch.Name, i.Kitchen.Name} {
			if !seen[n] && !builtin(i) {
				seen[n] = true
				names = append(names, n)
			}
		}
	}
	return names
}

// ownRead remembers the maker's designs, sheets and typefaces below a folder, and
// the pictures batches name, as read.
func (a *app) ownRead(dir string, in ...job.Input) {
	if dir == "" {
		return
	}
	for _, i := range in {
		for _, name := range job.Pictures(i) {
			a.read = append(a.read, filepath.Join(dir, filepath.FromSlash(name)))
		}
	}
	for _, sub := range []string{"designs", "sheets", "fonts"} {
		entries, _ := os.ReadDir(filepath.Join(dir, sub)) // often there is none
		for _, e := range entries {
			a.read = append(a.read, filepath.Join(dir, sub, e.Name()))
		}
	}
}
