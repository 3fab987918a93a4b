package batch

// DefaultBoxHolds is how many jars a box takes that nobody measured (common
// practice, no source).
const DefaultBoxHolds = 12

// PerBox is how many jars one box takes.
func (s Supplies) PerBox() int {
	if s.BoxHolds > 0 {
		return s.BoxHolds
	}
	return DefaultBoxHolds
}
