package section

// SteelHeat returns steel's enthalpy over 20 C, J/g, without melting, from 20 to 1200 C and beyond with its
// last slope. Source: EN 1993-1-2:2005 3.4.1.2, integrated in closed form.
func SteelHeat(t float64) float64 { return steelEnthalpy(t) }

// SteelConductivity returns steel's conductivity, W/mmK, from 20 to 1200 C and beyond. Source: EN 1993-1-2:2005
// 3.4.1.3.
func SteelConductivity(t float64) float64 {
	m := (&Material{K: SteelMean.K, RhoC: SteelMean.RhoC, Steel: true}).curve()
	return m.conductivity(t)
}
