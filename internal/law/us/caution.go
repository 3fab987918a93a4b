package us

import (
	"jarmark/internal/law/label"
)

// caution adds the honey line: no federal rule asks it, and doctors do.
func caution(p *pass) {
	if honey := p.Allergy.Honey; len(honey) > 0 {
		p.add(label.Block{Kind: label.Caution, Runs: p.Say.Runs("us.honey"),
			Cite: "infant botulism advice; common practice, no federal rule (from memory, unverified)", Verified: "memory", Path: honey[0].Path})
	}
}
