package pack

import (
	"path/filepath"
	"regexp"
	"strconv"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
)

// Told are the maker's own texts and where each stands, for a paper whose
// typefaces do not draw them. It is made of what Build has read.
func (p *Plan) Told() []table.Told { return p.told }

// tell gathers the names and words of gifts, markets, the ledger and the jams.
func (b *builder) tell() {
	for _, p := range b.promised {
		path, pos := p.path, diag.Pos{}
		if p.entry != nil {
			path, pos = p.entry.Path, p.entry.Pos
		}
		who := "name"
		if p.kind == Market {
			who = "market"
		}
		b.told(who, p.to, p.file, path, pos)
		b.told("giver", p.wish.From, p.file, path, pos)
		b.told("message", p.wish.Message, p.file, path, pos)
	}
	for _, e := range b.o.Book {
		b.told("name", e.Who, e.File, "", e.Pos)
	}
	for _, r := range b.results {
		b.told("jam", r.Batch.Name, fileName(r), "name", diag.Pos{})
	}
}

// tableOf reads "gift[2]": the third [[gift]] of its file.
var tableOf = regexp.MustCompile(`^(gift|market)\[(\d+)\]`)

func (b *builder) told(what, text, file, path string, pos diag.Pos) {
	in := b.plan.in
	where := filepath.Base(file)
	if m := tableOf.FindStringSubmatch(path); m != nil {
		n, _ := strconv.Atoi(m[2])
		where = in.Say("%s %s of %s", in.Say(m[1]), strconv.Itoa(n+1), where)
	} else if pos.Line > 0 {
		where = in.Say("%s %s of %s", in.Say("row"), strconv.Itoa(pos.Line), where)
	}
	b.plan.told = append(b.plan.told, table.Told{Text: text, Instead: "(" + in.Say("%s: %s", in.Say(what), where) + ")", File: file, Path: path, Pos: pos})
}
