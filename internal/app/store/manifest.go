package store

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// ManifestName is the file of a results folder that says what we wrote there:
// plain text, one line a file, in three columns parted by tabs: SHA-256, name,
// and the batch it was made from, as seen from the folder.
const ManifestName = ".jarmark-files"

const manifestHead = `# What jarmark wrote here: SHA-256, name, and the batch it was made from.
# A file that is not listed, or was changed since, is never replaced unasked.
`

// wrote is one line of a manifest.
type wrote struct{ Sum, Name, From string }

type manifest []wrote

func readManifest(dir string) (m manifest) {
	data, err := os.ReadFile(filepath.Join(dir, ManifestName))
	if err != nil {
		return nil
	}
	for line := range strings.Lines(string(data)) {
		cells := strings.Split(strings.TrimRight(line, "\r\n"), "\t")
		if len(cells) != 3 || strings.HasPrefix(line, "#") {
			continue // a line we cannot read claims nothing
		}
		if s, err := strconv.Unquote(cells[2]); err == nil {
			cells[2] = s
		}
		m = append(m, wrote{cells[0], cells[1], cells[2]})
	}
	return m
}

func (m manifest) bytes() []byte {
	m = slices.Clone(m)
	slices.SortFunc(m, func(a, b wrote) int { return strings.Compare(a.Name+a.Sum, b.Name+b.Sum) })
	var b strings.Builder
	b.WriteString(manifestHead)
	for _, w := range m {
		from := w.From
		if strings.ContainsAny(from, "\"\t\r\n") {
			from = strconv.Quote(from)
		}
		b.WriteString(w.Sum + "\t" + w.Name + "\t" + from + "\n")
	}
	return []byte(b.String())
}

// has reports whether we wrote a file of that name, whatever it is now.
func (m manifest) has(name string) bool {
	return slices.ContainsFunc(m, func(w wrote) bool { return w.Name == name })
}

// is reports whether a file is as we wrote it.
func (m manifest) is(name, sum string) bool {
	return sum != "" && slices.ContainsFunc(m, func(w wrote) bool { return w.Name == name && w.Sum == sum })
}

// origin is how a manifest in dir names a batch file; "" stays "".
func origin(dir, from string) string {
	if from == "" {
		return ""
	}
	to := real(from)
	rel, err := filepath.Rel(dir, to)
	if err != nil {
		rel = to // on another drive
	}
	return filepath.ToSlash(rel)
}

// path is where a batch named in a manifest of dir lies.
func (w wrote) path(dir string) string {
	p := filepath.FromSlash(w.From)
	if filepath.IsAbs(p) {
		return p
	}
	return filepath.Join(dir, p)
}
