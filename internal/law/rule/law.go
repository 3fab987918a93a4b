package rule

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Open opens the rules of every place for the laws we hold.
func Open() (*Book, error) { return Load(allLaws) }

var allLaws = Laws{US: usKinds(), EU: euKinds()}

// Declare makes the content of the labels of one jar size. Content is always
// returned unless there is nothing to declare; findings tell what blocks it.
func Declare(r *cook.Result, jar cook.JarPlan, s *Set, o Options) (*label.Content, diag.List) {
	switch {
	case r == nil || s == nil:
		var l diag.List
		l.Errorf("nothing-to-declare", "", "", "there is no batch or no place to declare for")
		return nil, l
	case s.EU != nil:
		return euDeclare(r, jar, s, o)
	}
	return usDeclare(r, jar, s, o)
}
