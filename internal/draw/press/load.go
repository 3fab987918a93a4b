package press

import (
	"io/fs"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
)

// Load reads the designs and sheets that come with the program and lays the
// maker's own folder over them: own may hold designs/*.toml and sheets/*.toml,
// and may be nil. Findings are about the maker's own files where there are any;
// in the program's they are a fault of the build.
func Load(builtin, own fs.FS, faces *face.Set) (*Press, diag.List) {
	designs, found := design.Load(folder(builtin, "designs"), folder(own, "designs"))
	for i := range found {
		found[i].File = "designs/" + found[i].File // as the folder has it
	}
	sheets, l := sheet.Load(builtin, own)
	return &Press{designs, sheets, faces}, append(found, l...)
}

// folder is one folder of a file system, nil when it is not there.
func folder(f fs.FS, dir string) fs.FS {
	if f == nil {
		return nil
	}
	if st, err := fs.Stat(f, dir); err != nil || !st.IsDir() {
		return nil
	}
	sub, err := fs.Sub(f, dir)
	if err != nil {
		return nil
	}
	return sub
}
