package store

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// File is one result to write.
type File struct {
	Name string // relative, with forward slashes
	Data []byte
	From string // the batch file it was made from; "" = none of the maker's
}

// Results are files to write into one folder, all or none.
type Results struct {
	Dir    string
	Files  []File
	Inputs []string      // never overwritten, whatever name leads to them
	Force  bool          // replace the maker's files too, keeping a copy of each
	Last   func() []File // more files, made once no other run can write there; may be nil
	Whole  bool          // Files are all that belongs here: what an earlier run made beside them goes

	// Single is for files that lie among the maker's own, not in a folder of ours.
	Single bool
	// Kin is for files the maker named, which are replaced as usual: it says
	// whether the old content is of the kind of the new. nil: the manifest alone
	// says what may be replaced.
	Kin func(name string, old, new []byte) bool
	// Listed takes files the maker named into the manifest.
	Listed bool
}

// Report is what a run did beside writing its files.
type Report struct {
	Kept    [][2]string // the maker's files that made way, and where they are now
	Removed []string    // results of an earlier run that are no longer made
	Stale   []string    // such results that the maker changed: left alone
	Gone    string      // the batch the folder was made from before; it is no more
}

// Publish writes results whole or not at all. A folder of ours is built beside
// the old one, the maker's own files in it included, and takes its place in one
// step; where that cannot be (a folder with inputs in it, a mount, a parent
// that cannot be written) the files are replaced one by one and all put back
// when one of them fails.
func Publish(r Results) (Report, error) {
	for _, f := range r.Files {
		if !filepath.IsLocal(filepath.FromSlash(f.Name)) {
			return Report{}, fmt.Errorf("%q would leave the output folder", f.Name)
		}
	}
	p := &plan{Results: r, dir: real(r.Dir), aside: map[string]string{}, drop: map[string]bool{}}
	made, err := makeDirs(p.lockDir())
	if err == nil {
		err = inTheWay(p.dir)
	}
	if err == nil {
		err = p.publish()
	}
	if err != nil {
		for _, d := range made { // the deepest first, and only while empty
			os.Remove(d)
		}
	}
	return p.report, err
}

// plan is one Publish.
type plan struct {
	Results
	dir    string // where Dir really is
	was    manifest
	aside  map[string]string      // the maker's files that make way: name and copy
	drop   map[string]bool        // stale files of ours
	same   int                    // files that are there already, byte for byte
	inputs map[string]fs.FileInfo // of Inputs, once they are asked for
	report Report
}

// lockDir is the folder whose lock guards dir.
func (p *plan) lockDir() string {
	if p.Single {
		return p.dir
	}
	return filepath.Dir(p.dir)
}

func (p *plan) publish() error {
	unlock, err := lock(p.lockDir())
	beside := err == nil && !p.Single
	if err != nil && !p.Single && !errors.Is(err, ErrBusy) { // a parent that cannot be written
		if st, serr := os.Stat(p.dir); serr == nil && st.IsDir() {
			unlock, err = lock(p.dir)
		}
	}
	if err != nil {
		return err
	}
	defer unlock()
	if beside {
		recoverSwaps(filepath.Dir(p.dir))
	}
	if p.Last != nil {
		p.Files = append(slices.Clone(p.Files), p.Last()...)
	}
	if err := p.judgeAll(); err != nil {
		return err
	}
	if p.same == len(p.Files) && len(p.drop) == 0 && bytes.Equal(p.after().bytes(), p.was.bytes()) {
		return nil // nothing is touched when nothing is new
	}
	if beside && !p.shared() && !mounted(p.dir) {
		err := p.swapIn()
		if err == nil || !errors.Is(err, errNoSwap) {
			return err
		}
	}
	return p.inPlace()
}

// after is the manifest once the files are written.
func (p *plan) after() (m manifest) {
	for _, f := range p.Files {
		m = append(m, wrote{sum(f.Data), f.Name, origin(p.dir, f.From)})
	}
	for _, w := range p.was {
		if !m.has(w.Name) && !p.drop[w.Name] && sumOf(p.at(w.Name)) == w.Sum {
			m = append(m, w)
		}
	}
	return m
}

// inTheWay tells of a file, or a link to nothing, where a folder is to be.
func inTheWay(dir string) error {
	st, err := os.Stat(dir)
	if err != nil {
		st, err = os.Lstat(dir) // a link to nothing is seen so alone
	}
	if err == nil && !st.IsDir() {
		return fmt.Errorf("%s: %w", dir, ErrInTheWay)
	}
	return nil
}

// makeDirs makes a folder and those above it; made are the new ones, the
// deepest first.
func makeDirs(dir string) (made []string, err error) {
	for d := dir; ; d = filepath.Dir(d) {
		if err := inTheWay(d); err != nil {
			return nil, err
		}
		if _, err := os.Stat(d); err == nil || filepath.Dir(d) == d {
			break
		}
		made = append(made, d)
	}
	return made, os.MkdirAll(dir, 0o777)
}
