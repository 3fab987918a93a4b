// Package templates holds all that may be changed or added without touching
// code: the rules of a place, the words of a language, the pantry's tables,
// label designs, label sheets, starter files, and the pages of the browser.
package templates

import (
	"embed"
	"encoding/csv"
)

// FS holds places/*.toml, languages/*.toml, pantry/*.csv, designs/*.toml,
// sheets/*.toml, new/*.toml and web/*.
//
//go:embed places languages pantry designs sheets new web
var FS embed.FS

// ByLanguage reads a table of words: the first column is the key, every other
// is headed by its language. It gives language -> key -> words.
func ByLanguage(name string) map[string]map[string]string {
	out := map[string]map[string]string{}
	f, err := FS.Open(name)
	if err != nil {
		return out
	}
	defer f.Close()
	rows, _ := csv.NewReader(f).ReadAll() // tests read the tables strictly
	for _, row := range rows[min(1, len(rows)):] {
		for i := 1; i < len(row); i++ {
			lang := rows[0][i]
			if out[lang] == nil {
				out[lang] = map[string]string{}
			}
			out[lang][row[0]] = row[i]
		}
	}
	return out
}

// Site holds site/*, the outer page of the static site and its scripts. It is
// apart from FS, so that the program in a browser does not carry it again.
//
//go:embed site
var Site embed.FS
