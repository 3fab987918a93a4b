package batch

import (
	"os"
	"testing"
)

// A usual batch must read in well under a millisecond: the local page reads it
// on every key.
func BenchmarkParse(b *testing.B) {
	data, err := os.ReadFile("../../../testdata/demo/strawberry-rhubarb.toml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if got, l := Parse("demo.toml", data, nil); got == nil || l.HasErrors() {
			b.Fatal(l)
		}
	}
}
