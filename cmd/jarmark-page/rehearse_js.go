package main

import (
	"net/http"
	"syscall/js"

	"jarmark/internal/app/web"
)

// rehearsal is what is still to be asked of it.
type rehearsal struct {
	begun bool
	left  []*http.Request
}

// rehearse asks the next question of the rehearsal, and tells the function it is
// given whether there are more.
func (p *program) rehearse(_ js.Value, args []js.Value) any {
	then := args[0]
	go func() {
		if !p.before.begun {
			p.before = rehearsal{true, web.Rehearsal(p.dir, p.token)}
		}
		if len(p.before.left) > 0 {
			q := p.before.left[0]
			p.before.left = p.before.left[1:]
			p.answered(unheard{http.Header{}}, q)
		}
		then.Invoke(len(p.before.left) > 0)
	}()
	return nil
}

// unheard is an answer that nobody waits for.
type unheard struct{ header http.Header }

func (u unheard) Header() http.Header         { return u.header }
func (u unheard) WriteHeader(int)             {}
func (u unheard) Write(p []byte) (int, error) { return len(p), nil }
func (u unheard) end()                        { _ = recover() } // it is told when a maker asks the same
