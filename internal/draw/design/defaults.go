package design

import "jarmark/internal/draw/ornament"

// The narrow family: its letters are as high as the others' and a fifth less wide.
const narrowPlain, narrowBold = "AsapCondensed_400Regular", "AsapCondensed_700Bold"

// The display cut of the names' own family, for large sizes: a sixth less wide.
const displayBold, displayItalic = "Fraunces144pt_700Bold", "Fraunces144pt_700Bold_Italic"

// defaultVoices speak where a design says nothing. Display sizes are shares
// of the panel's shorter side, text sizes are points.
var defaultVoices = Voices{
	Title: Voice{Face: "Fraunces_600SemiBold", Bold: "Fraunces_700Bold", Narrow: Pair{displayBold, displayBold}, Case: "as written", Leading: 1.02,
		Size: Range{0.085, 0.19}, Colour: "main"},
	Subtitle: Voice{Face: "Fraunces_500Medium_Italic", Bold: "Fraunces_700Bold_Italic", Narrow: Pair{displayItalic, displayItalic}, Case: "as written", Leading: 1.1,
		Size: Range{0.055, 0.115}, Colour: "ink"},
	Brand: Voice{Face: "Figtree_400Regular", Case: "as written", Track: 0.05, Leading: 1.25,
		Size: Range{0.035, 0.058}, Colour: "ink"},
	Net: Voice{Face: "Figtree_700Bold", Narrow: Pair{Face: narrowBold}, Case: "as written", Track: 0.01, Leading: 1.2,
		Size: Range{0.04, 0.062}, Colour: "ink"},
	Text: Voice{Face: "Figtree_400Regular", Bold: "Figtree_700Bold", Narrow: Pair{narrowPlain, narrowBold}, Case: "as written", Leading: 1.4,
		Size: Range{5.5, 10}, Colour: "ink"},
	Small: Voice{Face: "Figtree_400Regular", Bold: "Figtree_700Bold", Narrow: Pair{narrowPlain, narrowBold}, Case: "as written", Leading: 1.35,
		Size: Range{5, 7.5}, Colour: "ink"},
	Hand: Voice{Face: "Caveat_600SemiBold", Case: "as written", Leading: 1.1,
		Size: Range{0.05, 0.1}, Colour: "ink"},
	Price: Voice{Face: "Fraunces_600SemiBold", Case: "as written", Leading: 1,
		Size: Range{0.13, 0.32}, Colour: "main"},
}

var defaultLook = Look{
	Align: "centre", Margin: 0.07, Paper: "paper", Info: "tint",
	Frame: "none", FrameColour: "main", Rule: "hair", RuleColour: "main",
	Divider: "none", Brand: "below", Drawing: "painted", Band: Band{Edge: "none", Fill: "main", Pattern: "plain"},
}

// drawings lists the ornaments there are.
func drawings() []string { return ornament.Names() }
