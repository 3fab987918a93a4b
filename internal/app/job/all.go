package job

import (
	"fmt"
	"iter"
	"runtime"
	"strings"

	"jarmark/internal/kit/cores"
	"jarmark/internal/kit/diag"
)

// Made is one batch of a MakeAll run; Findings are the batch's and its
// outputs' together.
type Made struct {
	Index    int
	Batch    *Batch
	Files    []File
	Findings diag.List
	Err      error
}

// LoadAll loads batches on all cores and keeps their order. across are
// findings about the batches together, such as a lot used twice.
func (e *Env) LoadAll(in []Input, c Choices) (batches []*Batch, across diag.List) {
	batches = make([]*Batch, len(in))
	cores.Each(len(in), func(i int) { batches[i] = e.of(in[i]).load(in[i], c) })
	e.foresee(batches, c)
	readLedgers(batches)
	return batches, sameLots(batches)
}

// CheckAll is LoadAll that also goes through all that make would make, without
// drawing it, so that check and make never disagree.
func (e *Env) CheckAll(in []Input, c Choices) (batches []*Batch, across diag.List) {
	batches, across = e.LoadAll(in, c)
	dry := c
	dry.dry, dry.Progress = true, nil
	cores.Each(len(batches), func(i int) {
		if b := batches[i]; b.OK() && b.Cooked != nil {
			_, found, _ := e.of(b.Input).Make(b, dry)
			b.add(found)
		}
	})
	return batches, across
}

// MakeAll makes every batch on all cores and yields them in order, each as
// soon as it and those before it are done. Two batches of one lot would write
// into one folder: both are errors. Stopping early is fine.
func (e *Env) MakeAll(in []Input, c Choices) iter.Seq[Made] {
	return func(yield func(Made) bool) {
		batches, across := e.LoadAll(in, c)
		ahead := make(chan struct{}, 4*runtime.GOMAXPROCS(0)) // bounds finished outputs held
		results := make([]chan Made, len(in))
		for i := range results {
			results[i] = make(chan Made, 1)
		}
		stop := make(chan struct{})
		defer close(stop)
		go func() {
			for i, b := range batches {
				select {
				case ahead <- struct{}{}:
				case <-stop:
					return
				}
				go func() { results[i] <- e.makeOne(i, b, across, c) }()
			}
		}()
		for i := range in {
			m := <-results[i]
			<-ahead
			batches[i] = nil // its memory can go
			if !yield(m) {
				return
			}
		}
	}
}

func (e *Env) makeOne(i int, b *Batch, across diag.List, c Choices) (m Made) {
	m = Made{Index: i, Batch: b, Findings: append(diag.List(nil), b.Findings...)}
	for _, d := range across {
		if d.File == b.Input.Batch.Name {
			m.Findings = append(m.Findings, d)
		}
	}
	if m.Findings.HasErrors() {
		return m
	}
	files, l, err := e.of(b.Input).Make(b, c)
	m.Files, m.Err = files, err
	m.Findings = append(m.Findings, l...)
	return m
}

// sameLots finds lots used by more than one batch.
func sameLots(batches []*Batch) diag.List {
	var l diag.List
	first := map[string]*Batch{}
	for _, b := range batches {
		if b.Cooked == nil || b.Cooked.Lot == "" {
			continue
		}
		key := strings.ToLower(b.Cooked.Lot) // one folder on many a disk
		other, taken := first[key]
		if !taken {
			first[key] = b
			continue
		}
		l = append(l, b.SameLot(other.Cooked.Lot, other.Input.Batch.Name)...)
	}
	return l
}

// SameLot finds whether the batch in another file has this one's lot.
func (b *Batch) SameLot(lot, file string) (l diag.List) {
	if b.Cooked == nil || b.Cooked.Lot == "" || !strings.EqualFold(lot, b.Cooked.Lot) {
		return nil
	}
	l.Errorf("duplicate-lot", b.Input.Batch.Name, "lot", "lot %s is also the lot of %s", b.Cooked.Lot, file).
		Hinted(fmt.Sprintf("write a lot of its own here, such as lot = %q", b.Cooked.Lot+"2"))
	return b.locate(l)
}
