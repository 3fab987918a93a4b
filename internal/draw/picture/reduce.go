package picture

import (
	"encoding/binary"
	"image"
	"image/color"
	"image/draw"
)

// wide reports whether a file keeps 16 bits of each colour.
func wide(c image.Config) bool {
	switch c.ColorModel {
	case color.NRGBA64Model, color.RGBA64Model, color.Gray16Model:
		return true
	}
	return false
}

// reduced is the picture upright, each pixel the mean of those it stands for.
func (d *Decoded) reduced(most int) *image.NRGBA {
	b := d.img.Bounds()
	w, h := b.Dx(), b.Dy()
	if long := max(w, h); most > 0 && long > most {
		w, h = max(1, w*most/long), max(1, h*most/long)
	}
	small := image.NewNRGBA(image.Rect(0, 0, w, h))
	sums := make([]uint64, 4*w)
	var rows *image.RGBA // of the file, for one row of the result
	for y := range h {
		from, to := span(y, h, b.Dy())
		band := image.Rect(0, 0, b.Dx(), to-from)
		if rows == nil || rows.Rect != band {
			rows = image.NewRGBA(band)
		}
		draw.Draw(rows, band, d.img, image.Pt(b.Min.X, b.Min.Y+from), draw.Src)
		clear(sums)
		for x := range w {
			x0, x1 := span(x, w, b.Dx())
			s := sums[4*x : 4*x+4]
			for r := range to - from {
				row := rows.Pix[r*rows.Stride:]
				for i := 4 * x0; i < 4*x1; i++ {
					s[i&3] += uint64(row[i])
				}
			}
			mean(small.Pix[y*small.Stride+4*x:], s, uint64((to-from)*(x1-x0)))
		}
	}
	return turned(small, d.turn)
}

// span is which of many pixels the i-th of few stands for.
func span(i, few, many int) (from, to int) { return i * many / few, (i + 1) * many / few }

// mean writes the mean of n pixels that were multiplied by their cover.
func mean(out []byte, s []uint64, n uint64) {
	out[3] = byte((s[3] + n/2) / n)
	if s[3] == 0 {
		return
	}
	for i := range 3 {
		out[i] = byte(min(255, (s[i]*255+s[3]/2)/s[3]))
	}
}

// turned sets a picture upright by its EXIF orientation (Exif 2.3, 4.6.4,
// tag 0x0112).
func turned(in *image.NRGBA, how int) *image.NRGBA {
	if how < 2 || how > 8 {
		return in
	}
	w, h := in.Rect.Dx(), in.Rect.Dy()
	outW, outH := w, h
	if how >= 5 {
		outW, outH = h, w
	}
	out := image.NewNRGBA(image.Rect(0, 0, outW, outH))
	for y := range h {
		for x := range w {
			ox, oy := x, y
			switch how {
			case 2:
				ox = w - 1 - x
			case 3:
				ox, oy = w-1-x, h-1-y
			case 4:
				oy = h - 1 - y
			case 5:
				ox, oy = y, x
			case 6:
				ox, oy = h-1-y, x
			case 7:
				ox, oy = h-1-y, w-1-x
			case 8:
				ox, oy = y, w-1-x
			}
			copy(out.Pix[oy*out.Stride+4*ox:], in.Pix[y*in.Stride+4*x:][:4])
		}
	}
	return out
}

// progressive reports whether a JPEG comes in layers, which are all held until
// the last is read.
func progressive(data []byte) bool {
	found := false
	segments(data, func(marker byte, _ []byte) { found = found || marker == 0xc2 })
	return found
}

// segments gives the parts of a JPEG before its first scan.
func segments(data []byte, each func(marker byte, part []byte)) {
	for at := 2; at+4 <= len(data) && data[at] == 0xff && data[at+1] != 0xda; {
		size := int(binary.BigEndian.Uint16(data[at+2:]))
		if size < 2 || at+2+size > len(data) {
			return
		}
		each(data[at+1], data[at+4:at+2+size])
		at += 2 + size
	}
}

// orientation reads how a JPEG is to be turned; 1 where it does not say.
func orientation(data []byte) int {
	how := 1
	segments(data, func(marker byte, part []byte) {
		if marker == 0xe1 && len(part) > 14 && string(part[:6]) == "Exif\x00\x00" {
			how = turnIn(part[6:])
		}
	})
	return how
}

// turnIn looks for the orientation in the first directory of a TIFF structure.
func turnIn(tiff []byte) int {
	var order binary.ByteOrder = binary.BigEndian
	if string(tiff[:2]) == "II" {
		order = binary.LittleEndian
	}
	at := uint64(order.Uint32(tiff[4:]))
	if at+2 > uint64(len(tiff)) {
		return 1
	}
	n := int(order.Uint16(tiff[at:]))
	entries := tiff[at+2:]
	for i := 0; i < n && 12*i+12 <= len(entries); i++ {
		if e := entries[12*i:]; order.Uint16(e) == 0x0112 {
			if v := int(order.Uint16(e[8:])); v >= 1 && v <= 8 {
				return v
			}
		}
	}
	return 1
}
