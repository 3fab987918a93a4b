package batch

import "strings"

// US reports whether the kitchen sells under United States rules, which it
// does until it says otherwise. A nil kitchen counts as none said.
func (k *Kitchen) US() bool {
	return k == nil || k.Place == "" || k.Place == "us" || strings.HasPrefix(k.Place, "us-")
}
