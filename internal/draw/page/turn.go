package page

import "math"

// SinCos gives sine and cosine of an angle in degrees, exact for quarter
// turns, so that turned text stands true in every output.
func SinCos(degrees float64) (sin, cos float64) {
	switch d := math.Mod(degrees, 360); d {
	case 0:
		return 0, 1
	case 90, -270:
		return 1, 0
	case 180, -180:
		return 0, -1
	case 270, -90:
		return -1, 0
	default:
		return math.Sincos(d * math.Pi / 180)
	}
}
