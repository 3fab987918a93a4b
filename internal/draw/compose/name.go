package compose

import (
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// titleRows is the display name, and the statement of identity when the name
// does not already say it.
func (l *layout) titleRows(on roles, short unit.Length) []row {
	id, hasID := l.block(label.Identity)
	shown := normal(l.title + " " + l.sub)
	complete := hasID && normal(id.Text()) == shown
	var rows []row
	size := l.voices.Title.Size
	if l.look.Title.Best > 0 {
		size = l.look.Title
	}
	add := func(text string, v design.Voice, span design.Range, blk label.Block, lines int, weight, gap float64) {
		if strings.TrimSpace(text) == "" {
			return
		}
		vc := l.voice(v, on)
		if !blk.Exact {
			text = recase(vc, text)
		}
		legal := leastSize(vc, blk, text)
		lo, hi := spanOf(vc, span, short, max(legible, legal))
		say := func(s string) typeset.Para {
			return l.say(vc, blk.ID, []label.Run{{Text: s, Bold: blk.Bold}}, blk.Exact)
		}
		r := row{para: say(whole(text))}
		if soft := l.soften(strings.ReplaceAll(text, string(typeset.LineEnd), " ")); soft != whole(text) && !blk.Exact {
			r.parted = say(soft)
		}
		rows = append(rows, row{
			para: r.para, parted: r.parted,
			least: lo, best: hi, legal: legal, lines: lines, ragged: typeset.Balanced, weight: weight, gap: gap, name: "the name",
			names: true, grows: true, part: l.prominence(blk),
		})
	}
	both := label.Block{}
	if complete {
		both = id
	}
	add(l.title, l.voices.Title, size, both, 3, 3, 0.4)
	sub := both
	if hasID && !complete && normal(id.Text()) == normal(l.sub) {
		sub, complete = id, true
	}
	add(l.sub, l.voices.Subtitle, l.subSize(size), sub, 2, 1.6, 0.32)
	if rest, ok := strings.CutPrefix(hard(id.Text()), hard(l.title)+" "); hasID && !complete && l.sub == "" && l.title != "" && ok && len(rows) == 1 {
		// the statement of identity is the name and a word more: say it once
		rows = rows[:0]
		add(l.title, l.voices.Title, size, id, 3, 3, 0.4)
		add(rest, l.voices.Subtitle, l.subSize(size), id, 2, 1.6, 0.32)
		return rows
	}
	repeats := (l.piece == label.Lid || l.piece == label.Tag) && len(rows) > 0 // the jar's label says it
	if hasID && (!complete || len(rows) == 0) && !repeats {
		add(id.Text(), l.voices.Subtitle, l.subSize(size), id, 2, 1.6, 0.4)
	}
	return rows
}

// prominence is the least size of a block in percent of the largest print
// beside it, on labels that have a display panel.
func (l *layout) prominence(b label.Block) int {
	if l.piece != label.Front && l.piece != label.Wrap {
		return 0
	}
	return b.OfLargest
}

// subSize keeps the subtitle in proportion when a look overrides the title.
func (l *layout) subSize(title design.Range) design.Range {
	v, own := l.voices.Subtitle.Size, l.voices.Title.Size
	f := title.Best / own.Best
	return design.Range{Least: v.Least * f, Best: v.Best * f}
}

// called is the whole name on one line.
func (l *layout) called() string { return strings.TrimSpace(hard(l.title + " " + l.sub)) }

// normal makes texts comparable: letters and figures only.
func normal(s string) string {
	s = hard(s)
	return strings.Join(strings.Fields(strings.ToLower(s)), " ")
}

// displayRow sets a block in a display voice.
func (l *layout) displayRow(b label.Block, v design.Voice, on roles, short unit.Length, lines int, weight float64) row {
	vc := l.voice(v, on)
	runs := cased(vc, b)
	legal := leastSize(vc, b, plain(runs))
	lo, hi := spanOf(vc, v.Size, short, max(legible, legal))
	return row{
		para:  l.say(vc, b.ID, runs, b.Exact),
		least: lo, best: hi, legal: legal, lines: lines, ragged: typeset.Balanced, weight: weight, gap: 0.6, name: string(b.Kind),
	}
}

// textRow sets a block in the text voice as a row of a stack.
func (l *layout) textRow(b label.Block, on roles, short unit.Length) row {
	vc := l.voice(l.voices.Text, on)
	vc.Leading = tight // few lines, in a small space
	runs := emphasised(b)
	legal := leastSize(vc, b, b.Text())
	lo := max(legal, legible)
	return row{
		para:  l.say(vc, b.ID, runs, b.Exact),
		legal: legal, least: lo, best: max(lo, share(short, 0.05)), lines: 6, ragged: typeset.Balanced, weight: 0.5, gap: 0.95, name: string(b.Kind),
	}
}

// whole leaves the soft hyphens out, and hard the ends of lines too.
func whole(s string) string { return strings.ReplaceAll(s, string(typeset.SoftHyphen), "") }
func hard(s string) string {
	return strings.ReplaceAll(whole(s), string(typeset.LineEnd), " ")
}

func plain(runs []label.Run) string {
	s := ""
	for _, r := range runs {
		s += r.Text
	}
	return s
}

// emphasised makes a block bold where the law asks for bold.
func emphasised(b label.Block) []label.Run {
	if !b.Bold {
		return b.Runs
	}
	out := append([]label.Run(nil), b.Runs...)
	for i := range out {
		out[i].Bold = true
	}
	return out
}
