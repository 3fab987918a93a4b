package law

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/eu"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
	"jarmark/internal/law/us"
)

// Load opens the rules of every place for the laws we hold.
func Load() (*place.Book, error) {
	return place.Load(place.Laws{US: us.Law(), EU: eu.Law()})
}

// Declare makes the content of the labels of one jar size. Content is always
// returned unless there is nothing to declare; findings tell what blocks it.
func Declare(r *cook.Result, jar cook.JarPlan, s *place.Set, o draft.Options) (*label.Content, diag.List) {
	switch {
	case r == nil || s == nil:
		var l diag.List
		l.Errorf("nothing-to-declare", "", "", "there is no batch or no place to declare for")
		return nil, l
	}
	declare := func(r *cook.Result) (*label.Content, diag.List) { return us.Declare(r, jar, s, o) }
	if s.EU != nil {
		declare = func(r *cook.Result) (*label.Content, diag.List) { return eu.Declare(r, jar, s, o) }
	}
	c, l := declare(r)
	lang, m := second(r, s, c.Lang)
	if l = append(l, m...); lang == "" {
		return c, l
	}
	return beside(lang, c, l, declare, r)
}
