package face

import (
	"bytes"
	"testing"
)

// TestSubroutinesAreBounded: nine subroutines, each of which calls the next thirty
// times, would run for years; the glyph is refused instead.
func TestSubroutinesAreBounded(t *testing.T) {
	ix := index{count: 9, size: 2, offsets: []byte{0, 1}, data: []byte{0}}
	for i := range ix.count {
		next := []byte{byte(32 + i + 1), 10} // subroutine i+1 of few (bias 107), callsubr
		ix.data = append(append(ix.data, bytes.Repeat(next, 30)...), 11)
		if i == ix.count-1 {
			ix.data = append(ix.data[:len(ix.data)-61], 11)
		}
		ix.offsets = append(ix.offsets, byte(len(ix.data)>>8), byte(len(ix.data)))
	}
	d := drawing{local: ix}
	if err := d.run([]byte{32, 10, 14}, 0); err == nil || d.tokens > mostTokens+1 {
		t.Errorf("%d numbers and operators were read: %v", d.tokens, err)
	}
	d = drawing{local: ix}
	if err := d.run([]byte{40, 10, 40, 10, 14}, 0); err != nil || !d.ended {
		t.Errorf("the last subroutine alone: %v", err)
	}
}
