package ornament

import (
	"maps"
	"slices"
	"sync"
)

// drawings lists the ornaments. A new one is a method of sketch and a line
// here.
var drawings = sync.OnceValue(func() map[string]func(*sketch) {
	all := map[string]func(*sketch){
		"wreath":      (*sketch).wreath,
		"fir-wreath":  (*sketch).firWreath,
		"fir":         (*sketch).fir,
		"crystals":    (*sketch).crystals,
		"snowfall":    (*sketch).snowfall,
		"snow-ring":   (*sketch).snowRing,
		"crystal":     func(k *sketch) { k.crystal(k.box.centre(), k.box.short()/2*0.95, k.tint.frost(0)) },
		"berries":     (*sketch).berries,
		"blossom":     (*sketch).blossoms,
		"rules":       (*sketch).ruleDouble,
		"rule-berry":  (*sketch).ruleBerry,
		"frame":       (*sketch).frame,
		"frame-round": (*sketch).frameRound,
		"fruit":       func(k *sketch) { k.hero(k.box.centre(), k.box.short()/2*0.9, 0) },
		"laurel":      (*sketch).laurel,
		"garland":     (*sketch).garland,
		"branch":      (*sketch).branch,
		"bough":       (*sketch).bough,
	}
	for name := range motifs() {
		all[name] = func(k *sketch) {
			k.wear(name)
			k.hero(k.box.centre(), k.box.short()/2*0.9, 0)
		}
	}
	// These are more than the bare motif.
	all["wheat"], all["citrus"], all["blossom"] = (*sketch).wheat, (*sketch).slices, (*sketch).blossoms
	return all
})

// Names lists every ornament in alphabetical order.
func Names() []string {
	return slices.Sorted(maps.Keys(drawings()))
}

// fineness is how far leaves shrink, step by step, to grow around the zones
// that must stay free before any of them is left out.
var fineness = []float64{1, 0.84, 0.7, 0.58}

// smallest is the width below which no ornament can be seen.
const smallest = 500_000
