package web

import (
	"sync"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// lots remembers the lot of each text met, so that a key typed in one batch
// does not work out all the others again.
type lots struct {
	sync.Mutex
	of map[string]string // by the marks of batch and kitchen
}

// maxLots bounds the memory; then it begins anew.
const maxLots = 5000

// sameLot finds other batches of the folder with the lot of the one being
// edited: the list tells of them, and here is where it is mended.
func (s *site) sameLot(b *job.Batch) (found diag.List) {
	names, _, err := s.folder.batches()
	if err != nil || b.Cooked == nil {
		return nil // the list tells of the folder
	}
	for _, n := range names {
		if n == b.Input.Batch.Name {
			continue
		}
		if data, err := s.folder.read(n); err == nil {
			found = append(found, b.SameLot(s.lotOf(job.Input{Kitchen: b.Input.Kitchen, Batch: job.Doc{Name: n, Data: data}}), n)...)
		}
	}
	return found
}

func (s *site) lotOf(in job.Input) string {
	s.lots.Lock()
	defer s.lots.Unlock()
	key := in.Batch.Name + mark(in.Batch.Data) + mark(in.Kitchen.Data)
	lot, known := s.lots.of[key]
	if known {
		return lot
	}
	if b := s.env().Load(in, s.choices()); b.Cooked != nil && !job.IsGiftList(in.Batch) {
		lot = b.Cooked.Lot
	}
	if len(s.lots.of) == 0 || len(s.lots.of) > maxLots {
		s.lots.of = map[string]string{}
	}
	s.lots.of[key] = lot
	return lot
}
