/** Powers booked in every stage, W, positive into the system; those that cross the boundary come first. */
export const BOUNDARY_POWERS = [
  'shaft',
  'mechanicalLoss',
  'throughflow',
  'condensation',
  'exchanger',
  'pump',
  'heatSink',
  'lines',
  'reservoir',
  'coreBay',
  'casingBay',
  'casingOil',
  'plenumBay',
  'plenumEngine',
] as const;
export const INTERNAL_POWERS = ['airToCore', 'casingToCore', 'casingToPlenum'] as const;
