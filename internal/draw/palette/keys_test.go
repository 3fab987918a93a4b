package palette

import (
	"encoding/csv"
	"reflect"
	"slices"
	"strings"
	"testing"

	"jarmark/templates"
)

// Every cell of fruit-colours.csv is read, in the column its heading names:
// another colour or word makes another row.
func TestEveryCellIsRead(t *testing.T) {
	text, err := templates.FS.ReadFile("pantry/fruit-colours.csv")
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 20 {
		t.Fatal(len(rows), err)
	}
	if got := strings.Join(rows[0], ","); got != "key,words,motif,ink,berry,highlight,shade,leaf1,leaf2,leaf3,leaf4,paper,second,deep,gold" {
		t.Fatalf("the columns are %s", got)
	}
	for _, cells := range rows[1:] {
		was := readRow(cells)
		for i, cell := range cells {
			other := slices.Clone(cells)
			if other[i] = "#123456"; cell == other[i] {
				other[i] = "#654321"
			}
			if reflect.DeepEqual(was, readRow(other)) {
				t.Errorf("%s: %s is not read", cells[0], rows[0][i])
			}
		}
	}
}
