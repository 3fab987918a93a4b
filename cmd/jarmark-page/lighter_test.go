//go:build !js

package main

import (
	"bytes"
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"jarmark/templates"
)

// What the browser's program carries says the same as the files it was made from.
func TestLighterTablesSayTheSame(t *testing.T) {
	n := 0
	for _, pattern := range remarked {
		files, _ := fs.Glob(templates.FS, pattern)
		for _, f := range files {
			text, err := fs.ReadFile(templates.FS, f)
			if err != nil {
				t.Fatal(err)
			}
			var whole, light map[string]any
			if err := toml.Unmarshal(text, &whole); err != nil {
				t.Fatal(err)
			}
			if err := toml.Unmarshal(unremarked(text), &light); err != nil || !reflect.DeepEqual(whole, light) {
				t.Errorf("%s says another thing without its remarks: %v", f, err)
			}
			n++
		}
	}
	if n < 60 {
		t.Errorf("%d files", n)
	}
	odd := []byte("a = \"\"\"\n# no remark\n\"\"\"\n")
	if !bytes.Equal(unremarked(odd), odd) {
		t.Error("a line of a string was taken for a remark")
	}
}

// Of the ingredients nothing is left out that code reads.
func TestNoCodeReadsTheSourceColumns(t *testing.T) {
	text, err := fs.ReadFile(templates.FS, "pantry/ingredients.csv")
	if err != nil {
		t.Fatal(err)
	}
	light, err := unsourced(text)
	if err != nil || len(light) > len(text)*9/10 {
		t.Fatalf("%d bytes of %d: %v", len(light), len(text), err)
	}
	was, _ := csv.NewReader(bytes.NewReader(text)).ReadAll()
	is, _ := csv.NewReader(bytes.NewReader(light)).ReadAll()
	for i, row := range was {
		for k, cell := range row {
			if _, left := sourceColumns[was[0][k]]; is[i][k] != cell && (i == 0 || !left || cell == sourceColumns[was[0][k]]) {
				t.Errorf("row %s: %s is %q, was %q", row[0], was[0][k], is[i][k], cell)
			}
		}
	}
	files, _ := filepath.Glob("../../internal/*/*/*.go")
	if len(files) < 300 {
		t.Fatalf("%d files of code", len(files))
	}
	kept := map[string]string{"ph_source": "PHSource", "note": "Note"} // read into a row, and shown nowhere: the command line's own tests hold them
	for _, f := range files {
		code, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for name, word := range sourceColumns {
			if word == "" && kept[name] == "" && !strings.HasSuffix(f, "_test.go") && bytes.Contains(code, []byte(`"`+name+`"`)) {
				t.Errorf("%s reads %s", f, name)
			}
		}
	}
	if code, _ := os.ReadFile("../../internal/kitchen/pantry/pantry.go"); bytes.Count(code, []byte(`r.text("soluble_solids_method") == "unknown"`)) != 1 || bytes.Count(code, []byte(`"soluble_solids_method"`)) != 1 {
		t.Error("the method of the soluble solids is read for another word than \"unknown\"")
	}
}
