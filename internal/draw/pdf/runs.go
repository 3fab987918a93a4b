package pdf

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"

	"jarmark/internal/draw/page"
)

// Labels that differ in a name alone bear the same drawings. Every run of
// paths that stands in several frames becomes one form, and is stamped.
const (
	fewFrames  = 4  // of fewer labels nothing is shared
	leastInRun = 24 // points of a run worth a form of its own
)

// sum is the content of a path or a run of them, as hashed.
type sum [sha256.Size]byte

// stretch is a part of a frame's items: drawn in place, or a shared form.
type stretch struct {
	items []page.Item
	form  *form
}

// sharer finds the runs of one document.
type sharer struct {
	p      *press
	byPath map[*page.Path]sum
	count  map[sum]int
	runs   map[sum]int
	forms  map[sum]*form
}

// shareRuns finds what frames that are placed once have in common.
func (p *press) shareRuns(s *survey) {
	var frames []*page.Frame
	for i := range p.doc.Pages {
		for _, pl := range p.doc.Pages[i].Places {
			if s.frames[pl.Frame] == 1 {
				frames = append(frames, pl.Frame)
			}
		}
	}
	if len(frames) < fewFrames {
		return
	}
	h := sharer{p: p, byPath: map[*page.Path]sum{}, count: map[sum]int{}, runs: map[sum]int{}, forms: map[sum]*form{}}
	for _, fr := range frames {
		h.countPaths(fr)
	}
	for _, fr := range frames {
		h.each(fr, func(key sum, _ []page.Item) { h.runs[key]++ }, func([]page.Item) {})
	}
	p.parts = map[*page.Frame][]stretch{}
	for _, fr := range frames {
		h.split(fr)
	}
}

// countPaths counts each path of a frame, once a frame.
func (h *sharer) countPaths(fr *page.Frame) {
	seen := map[sum]bool{}
	for _, it := range fr.Items {
		if q, ok := it.(*page.Path); ok {
			if k := h.sumOf(q); !seen[k] {
				seen[k] = true
				h.count[k]++
			}
		}
	}
}

// sumOf hashes the operators that draw a path.
func (h *sharer) sumOf(q *page.Path) sum {
	if k, ok := h.byPath[q]; ok {
		return k
	}
	c := content{b: h.p.ink.b[:0]}
	c.path(space{}, q)
	h.p.ink.b = c.b
	k := sum(sha256.Sum256(c.b))
	h.byPath[q] = k
	return k
}

// each gives the runs of shared paths of a frame with their key, and what
// stands between them.
func (h *sharer) each(fr *page.Frame, run func(sum, []page.Item), other func([]page.Item)) {
	items := fr.Items
	for i := 0; i < len(items); {
		n, weight := i, 0
		for ; n < len(items); n++ {
			q, ok := items[n].(*page.Path)
			if !ok || h.count[h.sumOf(q)] < 2 {
				break
			}
			weight += len(q.Pts)
		}
		if weight >= leastInRun {
			run(h.key(fr, items[i:n]), items[i:n])
			i = n
			continue
		}
		n = max(n, i+1)
		other(items[i:n])
		i = n
	}
}

// key tells runs apart, and the frames they are placed in by their measures.
func (h *sharer) key(fr *page.Frame, run []page.Item) sum {
	d := sha256.New()
	var b []byte
	for _, l := range [...]int64{int64(fr.W), int64(fr.H), int64(fr.Bleed)} {
		b = binary.LittleEndian.AppendUint64(b, uint64(l))
	}
	d.Write(b)
	for _, it := range run {
		k := h.sumOf(it.(*page.Path))
		d.Write(k[:])
	}
	return sum(d.Sum(nil))
}

func (h *sharer) split(fr *page.Frame) {
	var out []stretch
	h.each(fr, func(key sum, items []page.Item) {
		if h.runs[key] < 2 {
			out = append(out, stretch{items: items})
			return
		}
		f := h.forms[key]
		if f == nil {
			f = &form{id: fmt.Sprintf("R%d", len(h.forms)+1), w: fr.W + 2*fr.Bleed, h: fr.H + 2*fr.Bleed, p: h.p,
				draw: func(c *content) { c.items(frameSpace(fr), items) }}
			h.forms[key] = f
		}
		out = append(out, stretch{form: f})
	}, func(items []page.Item) { out = append(out, stretch{items: items}) })
	h.p.parts[fr] = out
}
