package face

import (
	"encoding/binary"
	"fmt"
	"slices"
)

// tables are the tables of a TrueType or OpenType file by tag (OpenType specification,
// "Organization of an OpenType Font").
type tables map[string][]byte

var errShort = fmt.Errorf("the font file is cut short")

// postScript reports whether a file says that its outlines are PostScript (CFF).
func postScript(data []byte) bool { return string(data[:4]) == "OTTO" }

// readTables finds the tables of a file. Where one is lacking, it gives the others
// beside the error.
func readTables(data []byte) (tables, error) {
	if len(data) < 12 {
		return nil, errShort
	}
	out := tables{}
	for i := range int(u16(data[4:])) {
		at := 12 + 16*i
		if at+16 > len(data) {
			return nil, errShort
		}
		from, size := int(u32(data[at+8:])), int(u32(data[at+12:]))
		if from < 0 || size < 0 || from > len(data) || size > len(data)-from {
			return nil, errShort
		}
		out[string(data[at:at+4])] = data[from : from+size]
	}
	need := map[string]int{"head": 54, "hhea": 36, "maxp": 6, "hmtx": 4, "loca": 4, "glyf": 0}
	if postScript(data) {
		need = map[string]int{"head": 54, "hhea": 36, "maxp": 6, "hmtx": 4, "CFF ": 4}
	}
	for tag, size := range need {
		if t, ok := out[tag]; !ok || len(t) < size {
			return out, fmt.Errorf("no table %q", tag)
		}
	}
	return out, nil
}

func u16(b []byte) uint16 { return binary.BigEndian.Uint16(b) }
func u32(b []byte) uint32 { return binary.BigEndian.Uint32(b) }
func i16(b []byte) int    { return int(int16(u16(b))) }

// file lays tables out with their checksums (OpenType specification, table
// directory and head.checkSumAdjustment).
func (t tables) file() []byte {
	var tags []string
	for tag := range t {
		tags = append(tags, tag)
	}
	slices.Sort(tags)
	n, power, log := len(tags), 1, 0
	for power*2 <= n {
		power, log = power*2, log+1
	}
	out := []byte{0, 1, 0, 0}
	for _, v := range []int{n, 16 * power, log, 16 * (n - power)} {
		out = binary.BigEndian.AppendUint16(out, uint16(v))
	}
	copy(t["head"][8:12], []byte{0, 0, 0, 0})
	at, head := len(out)+16*n, 0
	for _, tag := range tags {
		if tag == "head" {
			head = at
		}
		out = append(out, tag...)
		for _, v := range []uint32{checksum(t[tag]), uint32(at), uint32(len(t[tag]))} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		at += (len(t[tag]) + 3) &^ 3
	}
	for _, tag := range tags {
		out = append(out, t[tag]...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	binary.BigEndian.PutUint32(out[head+8:], 0xB1B0AFBA-checksum(out))
	return out
}

// checksum is the sum of big-endian words, zeros added at the end.
func checksum(b []byte) (sum uint32) {
	for ; len(b) >= 4; b = b[4:] {
		sum += u32(b)
	}
	var last [4]byte
	copy(last[:], b)
	return sum + u32(last[:])
}
