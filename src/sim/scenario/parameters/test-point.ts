import type { Group } from '../table.ts';
import { NO_PUBLISHED_FIGURE } from './sources.ts';

const BY_TEMPERATURES = 'what the temperatures in and out give; needed without those';
const BY_EFFECTIVENESS = 'needed without effectiveness';

// Two lines a parameter: the numbers, then the words.
// biome-ignore format: a table is read by rows
export const TEST_POINT = {
  test: {
    airFlow: { label: 'air flow of the test', unit: 'kg/s', min: 0.005, max: 20, usual: [0.02, 8],
      meaning: 'through the core or exchanger, of one of them', whenMissing: 'An effectiveness means nothing without both flows.' },
    coolantFlow: { label: 'coolant flow of the test', unit: 'L/min', min: 0.5, max: 400, usual: [3, 150],
      meaning: 'through it, of the coolant of this file', whenMissing: 'An effectiveness means nothing without both flows.' },
    effectiveness: { label: 'effectiveness of the test', unit: 'share', min: 0.05, max: 1, usual: [0.3, 0.98], misread: { above: 2, unit: '%' }, absent: BY_TEMPERATURES,
      typical: 'it is heat over the most that could pass, 0.60 to 0.85 in a core at full load, and never reaches 1',
      meaning: 'heat over the most that could pass between air in and coolant in, by the smaller heat capacity rate; with less air than coolant (air in - air out)/(air in - coolant in)' },
    airIn: { label: 'air into the test', unit: 'degC', min: -40, max: 350, usual: [-20, 250], absent: BY_EFFECTIVENESS,
      meaning: 'measured before it, steady' },
    airOut: { label: 'air out of the test', unit: 'degC', min: -40, max: 350, usual: [-20, 200], absent: BY_EFFECTIVENESS,
      meaning: 'measured behind it, steady' },
    coolantIn: { label: 'coolant into the test', unit: 'degC', min: -40, max: 150, usual: [-10, 120], absent: BY_EFFECTIVENESS,
      meaning: 'measured before it, steady' },
    ambient: { label: 'outside air of the test', unit: 'degC', min: -50, max: 60, usual: [-40, 50], absent: 'not looked at',
      meaning: 'only shows whether the effectiveness was counted against outside air' },
    airShareOfResistance: { label: 'air share of the resistance', unit: 'share', min: 0.05, max: 0.99, usual: [0.5, 0.97], misread: { above: 2, unit: '%' }, default: 0.8,
      meaning: 'how much of the resistance to heat, air to coolant, is on the air side; the rest with the wall on the coolant side', source: NO_PUBLISHED_FIGURE },
  },
} as const satisfies Record<string, Group>;
