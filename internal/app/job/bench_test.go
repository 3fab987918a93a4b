package job_test

import (
	"fmt"
	"testing"

	"jarmark/internal/app/job"
)

// BenchmarkMake is one usual batch end to end, in process: TOML in, finished
// files out, nothing written.
func BenchmarkMake(b *testing.B) {
	env := builtin(b)
	in := demoInput(b, demoBatches[0])
	for b.Loop() {
		if files, found, err := env.Make(env.Load(in, job.Choices{}), job.Choices{}); err != nil || len(files) == 0 {
			b.Fatal(err, found)
		}
	}
}

// BenchmarkLoad is all stages but layout: what check and the page's editor
// wait for.
func BenchmarkLoad(b *testing.B) {
	env := builtin(b)
	in := demoInput(b, demoBatches[0])
	for b.Loop() {
		if batch := env.Load(in, job.Choices{}); !batch.OK() {
			b.Fatal(batch.Findings)
		}
	}
}

// BenchmarkFolder500 is a folder of 500 batches on all cores.
func BenchmarkFolder500(b *testing.B) {
	env := builtin(b)
	var in []job.Input
	for i := range 500 {
		one := demoInput(b, demoBatches[0])
		one.Batch.Name = fmt.Sprintf("batch%03d.toml", i)
		one.Batch.Data = append([]byte(fmt.Sprintf("lot = \"BENCH-%03d\"\n", i)), one.Batch.Data...)
		in = append(in, one)
	}
	for b.Loop() {
		for m := range env.MakeAll(in, job.Choices{}) {
			if m.Err != nil || len(m.Files) == 0 {
				b.Fatal(m.Err, m.Findings)
			}
		}
	}
}
