package cook

import (
	"testing"

	"jarmark/internal/kitchen/pantry"
)

func BenchmarkCompute(b *testing.B) {
	p, batch := pantry.Default(), demo(b)
	for b.Loop() {
		Compute(batch, nil, p)
	}
}
