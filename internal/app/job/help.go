package job

import (
	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/csvfile"
	"jarmark/internal/kit/source"
	"jarmark/internal/kitchen/batch"
)

// Topic explains a file the maker writes: every key or column, from the table
// its reader checks against.
type Topic struct {
	Name  string // as `jarmark help NAME` calls it
	About string
	Parts []TopicPart
}

// TopicPart is one table of a file. Head is "" for the keys at the top.
type TopicPart struct {
	Head string     // "[cook]", "[[fill]]"
	Rows [][]string // key, what it is, unit, example as it is written
}

// Topics lists the files a maker writes.
func Topics() []Topic {
	return []Topic{
		{"batch", "one file for each cooking session, such as plum.toml; only name, kind, made and [[ingredient]] are needed", keyParts(batch.Keys())},
		{"kitchen", "kitchen.toml: who makes the jam and where it is sold; it serves the batches beside and below it", keyParts(batch.KitchenKeys())},
		{"gifts", "a gift list for pack and labels --list: CSV with these columns in any order, or TOML with [[gift]] tables of these keys", columnPart(pack.ListColumns())},
		{"ledger", "ledger.csv beside kitchen.toml: one row for each time jars were promised or left the house", columnPart(ledger.Columns())},
	}
}

func keyParts(keys []source.Key) (out []TopicPart) {
	at := map[string]int{}
	for _, k := range keys {
		head := ""
		switch {
		case k.Table == "contains":
			head = "contains = [{ ... }]"
		case k.Many:
			head = "[[" + k.Table + "]]"
		case k.Table != "":
			head = "[" + k.Table + "]"
		}
		i, seen := at[head]
		if !seen {
			i = len(out)
			at[head] = i
			out = append(out, TopicPart{Head: head})
		}
		out[i].Rows = append(out[i].Rows, []string{k.Key, k.What, k.Unit, k.Example})
	}
	return out
}

func columnPart(columns []csvfile.Column) []TopicPart {
	var p TopicPart
	for _, c := range columns {
		p.Rows = append(p.Rows, []string{c.Name, c.What, c.Unit, c.Example})
	}
	return []TopicPart{p}
}
