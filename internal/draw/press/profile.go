package press

import (
	"encoding/binary"
	"strings"
	"unicode/utf16"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
)

const askShop = "ask the print shop for the ICC profile of its press and paper, in four inks"

// Profile reads the ICC profile of a print shop (ICC.1:2010, 7.2 and 7.3): an output
// profile of four inks that leads both ways, as PDF/X asks of the printing condition a
// file is made for. Others are a finding with its reason.
func Profile(file string, data []byte) (*page.Profile, diag.List) {
	why := ""
	switch class := field(data, 12); {
	case len(data) < 132 || field(data, 36) != "acsp" || int(binary.BigEndian.Uint32(data)) != len(data):
		why = "it is no ICC profile, or a damaged one"
	case data[8] != 2 && data[8] != 4:
		why = "it is of another version of ICC than 2 and 4"
	case class != "prtr":
		why = map[string]string{"mntr": "it is the profile of a screen", "scnr": "it is the profile of a camera or scanner"}[class]
		if why == "" {
			why = "it is not the profile of a printing press"
		}
	case field(data, 16) != "CMYK":
		why = "it is not of four inks"
	case tag(data, "A2B0") == nil || tag(data, "B2A0") == nil:
		why = "it does not lead from ink to colour and back"
	default:
		return &page.Profile{Name: calledIn(tag(data, "desc")), Inks: 4, Data: data}, nil
	}
	var l diag.List
	l.Errorf("bad-profile", file, "", "the print shop's profile cannot be used: %s", why).Hinted(askShop)
	return nil, l
}

func field(data []byte, at int) string {
	if at+4 > len(data) {
		return ""
	}
	return string(data[at : at+4])
}

// tag gives the data of a tag; nil where there is none, or it is not in the file.
func tag(data []byte, name string) []byte {
	n := int(min(binary.BigEndian.Uint32(data[128:]), 1000))
	for i := range n {
		at := 132 + 12*i
		if at+12 > len(data) {
			return nil
		}
		if field(data, at) != name {
			continue
		}
		from, size := uint64(binary.BigEndian.Uint32(data[at+4:])), uint64(binary.BigEndian.Uint32(data[at+8:]))
		if size < 8 || from+size > uint64(len(data)) {
			return nil
		}
		return data[from : from+size]
	}
	return nil
}

// unnamed is what a profile without a name is called.
const unnamed = "Custom"

// calledIn reads what a profile is called, of version 2 (textDescriptionType) or 4
// (multiLocalizedUnicodeType, the first language).
func calledIn(desc []byte) string {
	name := ""
	switch {
	case len(desc) >= 12 && field(desc, 0) == "desc":
		n := uint64(binary.BigEndian.Uint32(desc[8:]))
		name = string(desc[12:min(uint64(len(desc)), 12+n)])
	case len(desc) >= 28 && field(desc, 0) == "mluc":
		n, at := uint64(binary.BigEndian.Uint32(desc[20:])), uint64(binary.BigEndian.Uint32(desc[24:]))
		var u []uint16
		for i := at; i+1 < min(at+n, uint64(len(desc))); i += 2 {
			u = append(u, binary.BigEndian.Uint16(desc[i:]))
		}
		name = string(utf16.Decode(u))
	}
	name = strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return -1
		}
		return r
	}, name)
	if name = strings.TrimSpace(name); name == "" {
		return unnamed
	}
	return name[:min(len(name), 120)]
}
