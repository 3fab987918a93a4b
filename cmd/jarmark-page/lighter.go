//go:build !js

package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// lighter puts tables into the overlay without what only a reader of them wants:
// the remarks of the TOML files, and the columns of the ingredients that say where a
// figure is from and that no page shows.
func lighter(dir string, replace map[string]string) error {
	out, err := exec.Command("go", "list", "-f", "{{.Dir}}", "jarmark/templates").Output()
	if err != nil {
		return fmt.Errorf("go list jarmark/templates: %w", err)
	}
	root := strings.TrimSpace(string(out))
	files := []string{filepath.Join(root, "pantry", "ingredients.csv")}
	for _, pattern := range remarked {
		found, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(pattern)))
		if err != nil || len(found) == 0 {
			return fmt.Errorf("no %s: %w", pattern, errors.Join(err, os.ErrNotExist))
		}
		files = append(files, found...)
	}
	for i, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return err
		}
		if strings.HasSuffix(f, ".csv") {
			text, err = unsourced(text)
		} else {
			text = unremarked(text)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", f, err)
		}
		to := filepath.Join(dir, fmt.Sprintf("lighter%d%s", i, filepath.Ext(f)))
		if err := os.WriteFile(to, text, 0o600); err != nil {
			return err
		}
		replace[f] = to
	}
	return nil
}

// remarked are the TOML files of which the remarks are left out; those of starter
// files and of designs are shown to the maker.
var remarked = []string{"places/*.toml", "places/quotes/*.toml", "languages/*.toml"}

// unremarked takes whole lines of remark out of TOML. A file with strings of several
// lines is left as it is: a line of one may begin so.
func unremarked(text []byte) []byte {
	if bytes.Contains(text, []byte(`"""`)) || bytes.Contains(text, []byte(`'''`)) {
		return text
	}
	lines := slices.DeleteFunc(strings.SplitAfter(string(text), "\n"), func(l string) bool {
		return strings.HasPrefix(strings.TrimSpace(l), "#")
	})
	return []byte(strings.Join(lines, ""))
}

// sourceColumns are the columns of ingredients.csv that tests and readers hold
// figures against and that nothing shows; of the method one word is read.
var sourceColumns = map[string]string{"usda_ndb": "", "usda_sr28_name": "", "total_solids_g": "", "sugars_note": "", "soluble_solids_method": "unknown",
	"cfr101_juice_brix": "", "ph_source": "", "note": ""}

// unsourced empties the source columns of a table, but for the word that is read.
func unsourced(text []byte) ([]byte, error) {
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	for _, row := range rows[1:] {
		for i, name := range rows[0] {
			if keep, ok := sourceColumns[name]; ok && row[i] != keep {
				row[i] = ""
			}
		}
	}
	var b bytes.Buffer
	err = csv.NewWriter(&b).WriteAll(rows)
	return b.Bytes(), err
}
