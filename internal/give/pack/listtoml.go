package pack

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// tomlList is a gift list in TOML: [[gift]] tables with a batch file's keys.
type tomlList struct {
	Gift []tomlGift `toml:"gift"`
}

type tomlGift struct {
	To       string `toml:"to"`
	From     string `toml:"from"`
	Message  string `toml:"message"`
	Jars     *int   `toml:"jars"`
	Jar      string `toml:"jar"`
	Occasion string `toml:"occasion"`
	Design   string `toml:"design"`
	Lot      string `toml:"lot"`
	Jam      string `toml:"jam"`
	Allergy  string `toml:"allergy"`
}

// IsList reports whether a TOML file is a gift list and no batch: it has gifts
// and nothing else.
func IsList(data []byte) bool {
	f, found := source.Parse("", data)
	if f == nil || found.HasErrors() {
		return false
	}
	gifts := false
	for _, e := range f.Entries() {
		if e.Path != "gift" && !strings.HasPrefix(e.Path, "gift[") {
			return false
		}
		gifts = true
	}
	return gifts
}

func readTOML(file string, data []byte) ([]Entry, diag.List) {
	f, found := source.Parse(file, data)
	if f == nil || found.HasErrors() {
		return nil, found
	}
	var list tomlList
	found = append(found, source.Decode(f, &list)...)
	var out []Entry
	for i, g := range list.Gift {
		path := fmt.Sprintf("gift[%d]", i)
		e := Entry{To: g.To, From: g.From, Message: g.Message, Jar: g.Jar, Occasion: g.Occasion, Design: g.Design, Lot: g.Lot, Jam: g.Jam, Allergy: g.Allergy,
			Jars: 1, File: file, Path: path, Pos: f.Span(path)}
		if g.Jars != nil {
			e.Jars = *g.Jars
		}
		if e.Jars < 1 || e.Jars > maxJars {
			found.Errorf("bad-count", file, path+".jars", "%d is not a number of jars", e.Jars).Hinted("write a whole number from 1")
			continue
		}
		out = append(out, e)
	}
	if len(list.Gift) == 0 && !found.HasErrors() {
		found.Errorf("empty-list", file, "", "the gift list is empty").Hinted("add a [[gift]] table with to = \"...\"")
	}
	return out, f.Locate(found)
}
