package slip

// WaterDensity returns the density (g/mL) of pure, air-free water at a
// temperature (°C) and ordinary pressure. Holds from 0 to 40 °C.
//
// Source: M. Tanaka et al., Metrologia 38 (2001) 301-309, formula 1.
func WaterDensity(celsius float64) float64 {
	const (
		a1 = -3.983035 // °C
		a2 = 301.797   // °C
		a3 = 522528.9  // °C²
		a4 = 69.34881  // °C
		a5 = 999.974950
	)
	off := celsius + a1
	return a5 * (1 - float64(off*off*(celsius+a2))/float64(a3*(celsius+a4))) / 1000
}
