package picture

import (
	"errors"
	"io"
	"io/fs"
	"path"
	"strings"
)

// Open reads a file of the maker's folder, at most so many bytes. A path that leads out of the
// folder, a link and what is no file are refused.
func Open(fsys fs.FS, name string, most int64) ([]byte, error) {
	name = strings.ReplaceAll(strings.TrimSpace(name), `\`, "/")
	if clean := path.Clean(name); name != "" && !strings.HasPrefix(name, "/") {
		name = clean
	}
	if fsys == nil {
		return nil, problem("put the file beside kitchen.toml", "there is no folder to find it in")
	}
	if !fs.ValidPath(name) || name == "." || strings.Contains(name, ":") {
		return nil, problem(`put the file beside kitchen.toml, and write its name alone: "logo.png"`, "it lies outside the kitchen's folder")
	}
	for at := name; at != "."; at = path.Dir(at) {
		st, err := fs.Lstat(fsys, at)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			if at == name {
				return nil, missing(fsys, name)
			}
		case err != nil:
			return nil, problem("check the file and who may read it", "it cannot be read")
		case st.Mode()&fs.ModeSymlink != 0:
			return nil, problem("put a copy of the file itself beside kitchen.toml", "it is a link to another place")
		case at != name:
		case !st.Mode().IsRegular():
			return nil, problem("name a file", "it is no file")
		case st.Size() > most:
			return nil, tooHeavy(st.Size())
		}
	}
	f, err := fsys.Open(name)
	if err != nil {
		return nil, problem("check the file and who may read it", "it cannot be read")
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, problem("check the file and who may read it", "it cannot be read")
	}
	return data, nil
}

// missing tells that a file is not there, and which lies there by nearly its
// name.
func missing(fsys fs.FS, name string) *Problem {
	hint := "put the file beside kitchen.toml"
	entries, _ := fs.ReadDir(fsys, path.Dir(name))
	stem := func(s string) string { return strings.ToLower(strings.TrimSuffix(path.Base(s), path.Ext(s))) }
	for _, e := range entries {
		if stem(e.Name()) == stem(name) && !e.IsDir() {
			hint = "did you mean " + path.Join(path.Dir(name), e.Name()) + "?"
			break
		}
	}
	return problem(hint, "there is no such file in the kitchen's folder")
}
