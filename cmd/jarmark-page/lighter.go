//go:build !js

package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"slices"
	"strings"
)

// lighter puts tables into the overlay without what only a reader of them wants:
// the remarks of the TOML files, and the columns of the ingredients that say where a
// figure is from and that no page shows.
func lighter(dir string, replace map[string]string) error {
	tables, err := filesOf("jarmark/templates", "pantry/ingredients.csv")
	if err != nil {
		return err
	}
	rules, err := filesOf("jarmark/templates", remarked...)
	if err != nil {
		return err
	}
	return errors.Join(carry(dir, replace, tables, unsourced),
		carry(dir, replace, rules, func(text []byte) ([]byte, error) { return unremarked(text), nil }))
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
