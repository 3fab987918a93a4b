package job

import (
	"time"

	"jarmark/internal/kit/unit"
)

// created is the date documents bear: the caller's (SOURCE_DATE_EPOCH), else
// noon UTC of the day the batch was made, so that the same files give the same
// bytes on any day.
func (b *Batch) created(c Choices) int64 {
	if c.Created != 0 {
		return c.Created
	}
	return noon(b.Notes.Made)
}

func noon(d unit.Date) int64 {
	return time.Date(d.Year, time.Month(d.Month), d.Day, 12, 0, 0, 0, time.UTC).Unix()
}
