/**
 * Heat that the work of deformation leaves in the steel, J/kg: η σ ε/ρ; flow stress Pa, true strain, kg/m³. The share η
 * of the work that becomes heat is 0.9 to 0.95 (common practice, no source). Divide by the heat capacity for kelvins:
 * 100 MPa and a strain of 0.3 warm steel by 5.6 K.
 */
export const deformationHeat = (
  flowStress: number,
  strain: number,
  density: number,
  share = heatShare,
): number => (share * flowStress * strain) / density;

export const heatShare = 0.93;
