package presstest

import (
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
)

// Matrix encodes a payload with ZXing's encoder, error level L, without a
// quiet zone: codes for renderer tests that need no compose.
func Matrix(payload string) ([][]bool, error) {
	m, err := qrcode.NewQRCodeWriter().Encode(payload, gozxing.BarcodeFormat_QR_CODE, 0, 0,
		map[gozxing.EncodeHintType]any{gozxing.EncodeHintType_MARGIN: 0})
	if err != nil {
		return nil, err
	}
	out := make([][]bool, m.GetHeight())
	for y := range out {
		out[y] = make([]bool, m.GetWidth())
		for x := range out[y] {
			out[y][x] = m.Get(x, y)
		}
	}
	return out, nil
}
