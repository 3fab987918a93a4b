package main

import (
	"fmt"
	"io"
	"os"
	"time"
)

// progress shows a counter on a terminal once a run takes longer than a
// breath; elsewhere it is silent, so that logs stay clean.
type progress struct {
	w           io.Writer
	total, done int
	began       time.Time
	shown       bool
}

// patience is how long a run may take before a counter appears.
const patience = 400 * time.Millisecond

func (a *app) progress(total int, quiet bool) *progress {
	p := &progress{total: total, began: time.Now()}
	if f, ok := a.err.(*os.File); ok && !quiet && terminal(f) {
		p.w = f
	}
	return p
}

func terminal(f *os.File) bool {
	st, err := f.Stat()
	return err == nil && st.Mode()&os.ModeCharDevice != 0
}

func (p *progress) step() {
	p.done++
	p.show()
}

func (p *progress) show() {
	if p.w == nil || p.total < 2 || time.Since(p.began) < patience {
		return
	}
	p.shown = true
	fmt.Fprintf(p.w, "\r%d of %d batches", p.done, p.total)
}

func (p *progress) end() {
	if p.shown {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}
