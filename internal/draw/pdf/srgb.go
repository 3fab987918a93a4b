package pdf

import (
	"encoding/binary"
	"math"
)

// sRGB is what the colours of a page are (IEC 61966-2-1), as an ICC profile of a
// display (ICC.1:2003-09, the version PDF 1.6 knows: ISO 32000-1, table 67): three
// primaries and white, adapted to D50 by the Bradford matrix, and one curve.
func sRGB() []byte {
	xyz := func(v ...float64) []byte { return append([]byte("XYZ \x00\x00\x00\x00"), fixed(v...)...) }
	curve := append([]byte("para\x00\x00\x00\x00\x00\x03\x00\x00"), fixed(2.4, 1/1.055, 0.055/1.055, 1/12.92, 0.04045)...)
	adapted := append([]byte("sf32\x00\x00\x00\x00"), fixed(1.04788, 0.02292, -0.05020, 0.02959, 0.99048, -0.01706, -0.00923, 0.01508, 0.75168)...)
	white := xyz(0.9642, 1, 0.8249)
	tags := []struct {
		name string
		data []byte
	}{
		{"desc", words("sRGB")}, {"cprt", words("no copyright, use freely")}, {"wtpt", white}, {"chad", adapted},
		{"rXYZ", xyz(0.43607, 0.22249, 0.01392)}, {"gXYZ", xyz(0.38515, 0.71687, 0.09708)}, {"bXYZ", xyz(0.14307, 0.06061, 0.71410)},
		{"rTRC", curve}, {"gTRC", nil}, {"bTRC", nil}, // nil: the one before
	}
	head := make([]byte, 128)
	copy(head[8:], "\x04\x10\x00\x00mntrRGB XYZ \x07\xD0\x00\x01\x00\x01\x00\x00\x00\x00\x00\x00acsp")
	copy(head[68:], white[8:])
	table, body := binary.BigEndian.AppendUint32(nil, uint32(len(tags))), []byte(nil)
	from := len(head) + 4 + 12*len(tags)
	var at, size int
	for _, t := range tags {
		if t.data != nil {
			at, size = from+len(body), len(t.data)
			body = append(body, t.data...)
			body = append(body, make([]byte, -len(body)&3)...)
		}
		table = append(table, t.name...)
		table = binary.BigEndian.AppendUint32(table, uint32(at))
		table = binary.BigEndian.AppendUint32(table, uint32(size))
	}
	binary.BigEndian.PutUint32(head, uint32(from+len(body)))
	return append(append(head, table...), body...)
}

// fixed writes numbers as s15Fixed16.
func fixed(v ...float64) (out []byte) {
	for _, x := range v {
		out = binary.BigEndian.AppendUint32(out, uint32(int32(math.Round(x*65536))))
	}
	return out
}

// words is a text in English as an ICC profile has it (multiLocalizedUnicodeType).
func words(s string) []byte {
	out := []byte("mluc\x00\x00\x00\x00\x00\x00\x00\x01\x00\x00\x00\x0CenUS")
	out = binary.BigEndian.AppendUint32(out, uint32(2*len(s)))
	out = binary.BigEndian.AppendUint32(out, 28)
	for i := range len(s) {
		out = append(out, 0, s[i])
	}
	return out
}
