package compose

import (
	"fmt"
	"sync"

	qrcode "github.com/skip2/go-qrcode"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// quiet is the blank a QR code needs on all sides, in modules (ISO/IEC 18004,
// clause "quiet zone").
const quiet = 4

// leastModule is the smallest module that scans off paper when the content
// names none: common practice, no source.
const leastModule = 350 * unit.Micrometre

// Codes remembers QR matrices, so that the pieces of one jar, and many jars
// of one batch, encode a payload once. The zero value is ready; it is safe
// for several goroutines.
type Codes struct {
	mu   sync.Mutex
	made map[codeKey]codeValue
}

// mostCodes bounds what is remembered, some 4 MB.
const mostCodes = 1024

type codeKey struct {
	payload string
	level   qrcode.RecoveryLevel
}

type codeValue struct {
	modules [][]bool
	err     error
}

// encode gives the modules of a payload, without the quiet zone; rows from the
// top, true is dark.
func encode(payload string, level qrcode.RecoveryLevel) ([][]bool, error) {
	if payload == "" {
		return nil, fmt.Errorf("the QR code has nothing to say")
	}
	q, err := qrcode.New(payload, level)
	if err != nil {
		return nil, err
	}
	q.DisableBorder = true
	return q.Bitmap(), nil
}

func (c *Codes) get(payload string, level qrcode.RecoveryLevel) ([][]bool, error) {
	if c == nil {
		return encode(payload, level)
	}
	key := codeKey{payload, level}
	c.mu.Lock()
	v, ok := c.made[key]
	c.mu.Unlock()
	if ok {
		return v.modules, v.err
	}
	v.modules, v.err = encode(payload, level)
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.made == nil || len(c.made) >= mostCodes {
		c.made = map[codeKey]codeValue{}
	}
	c.made[key] = v
	return v.modules, v.err
}

// codePlan is a QR code to be placed: its modules and how small it may be.
type codePlan struct {
	modules [][]bool
	least   unit.Length // side without quiet zone
	caption label.Block
	hasCap  bool
}

func (p codePlan) side(n unit.Length) unit.Length { return n * unit.Length(len(p.modules)) }

// blank is the width of the quiet zone for a side.
func (p codePlan) blank(side unit.Length) unit.Length {
	return side * quiet / unit.Length(max(1, len(p.modules)))
}

// planCode encodes the content's payload: level M, or L when room is so small
// that M's modules would not scan. ok is false when there is no code.
func (l *layout) planCode(room unit.Length) (codePlan, bool) {
	if l.content.QR.Payload == "" {
		return codePlan{}, false
	}
	module := l.content.QR.MinModule
	if module <= 0 {
		module = leastModule
	}
	m, err := l.opt.Codes.get(l.content.QR.Payload, qrcode.Medium)
	if err == nil && room > 0 && module*unit.Length(len(m)) > room {
		if l, errL := l.opt.Codes.get(l.content.QR.Payload, qrcode.Low); errL == nil && len(l) < len(m) {
			m = l
		}
	}
	if err != nil {
		l.found.Errorf("qr-payload", "", "", "the text for the QR code cannot be encoded: %v", err).
			Hinted("shorten the record address or the text")
		return codePlan{}, false
	}
	p := codePlan{modules: m}
	p.least = p.side(module)
	p.caption, p.hasCap = l.block(label.Caption)
	return p, true
}

// putCode places a code; box covers the modules. On a dark ground it stands
// on a patch of paper.
func (l *layout) putCode(p codePlan, box page.Rect, on roles) {
	dark := on.text("ink", 7)
	if on.dark {
		b := p.blank(box.W)
		patch := box.Grow(b, b)
		white := l.pal.White
		path := roundPath(patch, b/2)
		path.Fill, path.Block, path.Bleed = &white, "qr", true
		l.put(path)
		dark = palette.Ensure(l.pal.Text, white, 7)
	}
	l.put(&page.Code{Block: "qr", At: box, Modules: p.modules, Quiet: quiet, Dark: dark, Payload: l.content.QR.Payload})
	l.kept = append(l.kept, box.Grow(p.blank(box.W), p.blank(box.W)))
}
