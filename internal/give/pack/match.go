package pack

import (
	"slices"

	"jarmark/internal/give/ledger"
)

// matcher deals jars so that as many promises as can be are kept. Promises come
// in the order of their rank; each takes what is free by its own liking, and
// where that is too little, earlier ones change to another jar they may have
// (an augmenting path, L. R. Ford and D. R. Fulkerson, "Maximal flow through a
// network", Canadian Journal of Mathematics 8, 1956). No promise ever loses a
// jar to a later one, and no order of the rows makes a shortage.
type matcher struct {
	batchOf []int
	free    []int      // sealed jars nobody has yet, by stock row
	held    [][]holder // by stock row: who has its jars and may change
	dead    []bool     // rows from which no free jar can be reached any more
}

// holder is the promises of one wording that hold jars of a row.
type holder struct {
	choice *choice
	deals  []*deal
}

// matcher begins with what the ledger leaves free. Promises that were fetched
// are booked by then: jars that came home settle those, so they are not jars
// sold that came back.
func (b *builder) matcher() *matcher {
	n := len(b.plan.Stock)
	now, _ := ledger.Balances(b.made(), b.rows) // told of in balance
	m := &matcher{batchOf: make([]int, n), free: make([]int, n), held: make([][]holder, n), dead: make([]bool, n)}
	for i, s := range b.plan.Stock {
		m.batchOf[i], m.free[i] = s.batch, max(0, now[i].Free()-s.Unsealed)
	}
	return m
}

// serve gives a promise its jars.
func (m *matcher) serve(d *deal) {
	if d.batch < 0 && d.lot == "" {
		m.inTurn(d)
	} else {
		for _, i := range d.choice.rows {
			m.give(d, i, min(d.jars-d.got, m.free[i]))
		}
	}
	for d.got < d.jars && m.exchange(d) {
	}
	for i, n := range cameBack(d.choice.rows, d.counts, d.home()) {
		m.free[i] += n
	}
}

// give books n free jars of a row.
func (m *matcher) give(d *deal, row, n int) {
	if n <= 0 {
		return
	}
	m.free[row] -= n
	d.got += n
	m.hold(d, row, n)
}

// hold notes n more jars of a row with a promise. A market that is over is
// history and changes no more.
func (m *matcher) hold(d *deal, row, n int) {
	d.counts[row] += n
	if d.settled() || d.counts[row] > n {
		return
	}
	for k := range m.held[row] {
		if h := &m.held[row][k]; h.choice == d.choice {
			h.deals = append(h.deals, d)
			return
		}
	}
	m.held[row] = append(m.held[row], holder{d.choice, []*deal{d}})
}

// move changes one jar of the last promise of a wording to another row.
func (m *matcher) move(c *choice, from, to int) {
	k := slices.IndexFunc(m.held[from], func(h holder) bool { return h.choice == c })
	h := &m.held[from][k]
	d := h.deals[len(h.deals)-1]
	if d.counts[from]--; d.counts[from] == 0 {
		h.deals = h.deals[:len(h.deals)-1]
	}
	m.hold(d, to, 1)
}

// step is how a search came to a row: a promise of the wording gives up a jar
// of from for one of it.
type step struct {
	from   int
	choice *choice
}

// exchange finds one more jar for a promise by letting others change theirs.
func (m *matcher) exchange(d *deal) bool {
	came := map[int]step{}
	var queue []int
	reach := func(rows []int, s step) {
		for _, i := range rows {
			if _, seen := came[i]; !seen && !m.dead[i] {
				came[i], queue = s, append(queue, i)
			}
		}
	}
	reach(d.choice.rows, step{from: -1})
	for k := 0; k < len(queue); k++ {
		row := queue[k]
		if m.free[row] > 0 {
			m.shift(d, row, came)
			return true
		}
		for _, h := range m.held[row] {
			if len(h.deals) > 0 {
				reach(h.choice.rows, step{row, h.choice})
			}
		}
	}
	for _, row := range queue { // all full, and none of their holders can leave: so it stays
		m.dead[row] = true
	}
	return false
}

// shift moves one jar along the way a search came.
func (m *matcher) shift(d *deal, row int, came map[int]step) {
	m.free[row]--
	for s := came[row]; s.from >= 0; s = came[row] {
		m.move(s.choice, s.from, row)
		row = s.from
	}
	d.got++
	m.hold(d, row, 1)
}

// inTurn deals jars like cards: one of each batch in turn, from the batch's
// sizes in order, so that three jars are three kinds.
func (m *matcher) inTurn(d *deal) {
	var batches [][]int
	at := map[int]int{}
	for _, i := range d.choice.rows {
		if m.free[i] == 0 {
			continue
		}
		k, seen := at[m.batchOf[i]]
		if !seen {
			k = len(batches)
			at[m.batchOf[i]] = k
			batches = append(batches, nil)
		}
		batches[k] = append(batches[k], i)
	}
	for before := -1; d.got < d.jars && d.got > before; {
		before = d.got
		for _, rows := range batches {
			if k := slices.IndexFunc(rows, func(i int) bool { return m.free[i] > 0 }); k >= 0 && d.got < d.jars {
				m.give(d, rows[k], 1)
			}
		}
	}
}
